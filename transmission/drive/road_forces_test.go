package drive_test

import (
	"math"
	"testing"

	"example.com/benchbook/refdata"
	"example.com/benchbook/transmission/drive"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// Worked by hand, 250 kg up a slope of sine 0.28 (cosine 0.96) at 20 m/s against
// a wind of 5 m/s, CdA 0.6 m², air of 1.2 kg/m³: drag 0.6·0.6·25² = 225 N, slope
// 0.28 m g, rolling 0.96 m g times 0.02, or by Cossalter's law at 2 bar and
// 72 km/h. A wind of 25 m/s from behind pushes with 0.36·5² = 9 N.
func TestForcesByHand(t *testing.T) {
	const weight = 250 * 9.80665
	r := drive.Road{
		Mass: measure.Exact(units.Kilograms(250)), DragArea: measure.Exact(units.SquareMetres(0.6)), Rolling: measure.Exact(units.Value(0.02)),
		Efficiency: measure.Exact(units.Value(0.9)), Density: units.KilogramsPerCubicMetre(1.2), Climb: 0.28, Headwind: units.MetresPerSecond(5),
	}
	at := units.MetresPerSecond(20)
	f := ok(drive.RoadLoad(r, at))(t)
	near(t, "drag", f.Drag.Newtons(), 225, 1e-12)
	near(t, "rolling", f.Rolling.Newtons(), 0.96*0.02*weight, 1e-12)
	near(t, "slope", f.Slope.Newtons(), 0.28*weight, 1e-12)
	near(t, "total", f.Total.Value().Newtons(), 225+(0.96*0.02+0.28)*weight, 1e-12)
	near(t, "power", f.Power.Value().Watts(), f.Total.Value().Newtons()*20/0.9, 1e-12)
	r.Headwind = units.MetresPerSecond(-25)
	near(t, "wind behind", ok(drive.RoadLoad(r, at))(t).Drag.Newtons(), -9, 1e-12)
	r.Rolling, r.Pressure = measure.Reading[units.Ratio]{}, units.Bars(2)
	near(t, "rolling by pressure", ok(drive.RoadLoad(r, at))(t).Rolling.Newtons(), 0.96*(0.0085+0.009+1.59e-6*72*72/2)*weight, 1e-12)
}

// The law by pressure is named where it is used, and its end at 165 km/h where it
// is passed.
func TestLawByPressureIsNamed(t *testing.T) {
	uses := func(b refdata.Basis) (law, beyond bool) {
		for _, s := range b.Sources {
			law = law || s.Clause == "rolling resistance by pressure and speed"
		}
		for _, n := range b.NotChecked {
			beyond = beyond || n.What == "rolling resistance"
		}
		return law, beyond
	}
	for _, c := range []struct {
		bar, kmh    float64
		law, beyond bool
	}{{0, 165, false, false}, {0, 170, false, false}, {2, 165, true, false}, {2, 165.1, true, true}} {
		r := solo()
		r.Pressure = units.Bars(c.bar)
		law, beyond := uses(ok(drive.RoadLoad(r, units.KilometresPerHour(c.kmh)))(t).Basis)
		if law != c.law || beyond != c.beyond {
			t.Errorf("%g bar, %g km/h: law named %v, its end %v", c.bar, c.kmh, law, beyond)
		}
	}
}

// At top speed the parts are those of the road load there, and so is the share of
// the air.
func TestTopSpeedParts(t *testing.T) {
	r := solo()
	r.Climb = 0.05
	top := ok(drive.TopSpeed(r, measure.Exact(units.Kilowatts(17))))(t)
	f := ok(drive.RoadLoad(r, top.Speed.Value()))(t)
	near(t, "share of the air", top.DragShare, f.Drag.Ratio(f.Drag+f.Rolling+f.Slope), 1e-12)
	near(t, "at the tyre", top.AtTyre.Watts(), 17000*0.88, 1e-12)
	if top.Drag != f.Drag || top.Rolling != f.Rolling || top.Slope != f.Slope {
		t.Errorf("%+v against %+v", top, f)
	}
}

// Traces of thrust end with the road's own, point for point the road load; a
// trace has nothing beyond its ends.
func TestRoadTrace(t *testing.T) {
	r := solo()
	r.Climb = 0.1
	traces := ok(drive.Thrusts(demo(t), demoCurve(t), r, 7))(t)
	road := traces[len(traces)-1]
	if road.Name != "road" || road.Len() != 7 {
		t.Fatalf("%s, %d points", road.Name, road.Len())
	}
	for i := range road.Len() {
		v, f := road.XY(i)
		near(t, "force", f, ok(drive.RoadLoad(r, units.MilesPerHour(v)))(t).Total.Value().Newtons(), 1e-12)
	}
	curve := demoCurve(t)
	for _, i := range []int{-1, 7, math.MaxInt, math.MinInt} {
		if x, y := road.XY(i); x != 0 || y != 0 {
			t.Errorf("point %d: %g, %g", i, x, y)
		}
	}
	for _, i := range []int{-1, curve.Len(), math.MinInt} {
		if x, y := curve.XY(i); x != 0 || y != 0 {
			t.Errorf("point %d of the curve: %g, %g", i, x, y)
		}
	}
	if x, y := curve.XY(5); math.Abs(x-6000) > 1e-9 || math.Abs(y-16) > 1e-12 {
		t.Errorf("last point: %g, %g", x, y)
	}
}
