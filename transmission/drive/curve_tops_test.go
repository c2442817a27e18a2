package drive_test

import (
	"testing"

	"example.com/benchbook/transmission/drive"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// A curve holds at both its ends, and is straight between; of two peaks it names
// the slower.
func TestCurveAtItsEnds(t *testing.T) {
	rpm, kw := units.RevolutionsPerMinute, units.Kilowatts
	c := ok(drive.NewCurve(drive.PowerPoint{rpm(2000), kw(6)}, drive.PowerPoint{rpm(4000), kw(12)}, drive.PowerPoint{rpm(5000), kw(12)}, drive.PowerPoint{rpm(6000), kw(9)}))(t)
	for n, want := range map[float64]float64{2000: 6, 3000: 9, 4000: 12, 4500: 12, 5500: 10.5, 6000: 9} {
		p, in := c.At(rpm(n))
		if !in {
			t.Errorf("no power at %g", n)
		}
		near(t, "power", p.Kilowatts(), want, 1e-12)
	}
	for _, n := range []float64{1999.9, 6000.1} {
		if _, in := c.At(rpm(n)); in {
			t.Errorf("power at %g", n)
		}
	}
	if p := c.Peak(); p.Speed != rpm(4000) {
		t.Errorf("peak at %v", p.Speed)
	}
}

// Power that is enough only about the middle of a straight piece, wherever that
// lies, is found, and the fastest of it: the piece is the tangent of the load at a
// speed, raised by a fiftieth, so that the load crosses it close below and
// above.
func TestTopWhereOnlyTheMiddlePulls(t *testing.T) {
	r := drive.Road{
		Mass: measure.Exact(units.Kilograms(245)), DragArea: measure.Exact(units.SquareMetres(0.6)), Rolling: measure.Exact(units.Value(0.02)), Efficiency: measure.Exact(units.Value(0.9)),
	}
	line := drive.Line{Box: ok(drive.BoxOf("5"))(t), Rolling: measure.Exact(units.Metres(2))}
	need := func(rpm float64) float64 {
		v := ok(line.SpeedAt("1", units.RevolutionsPerMinute(rpm)))(t).Value()
		return ok(drive.RoadLoad(r, v))(t).Power.Value().Watts()
	}
	for at := 2100.0; at <= 6000; at += 50 {
		slope := (need(at+1) - need(at-1)) / 2
		power := func(rpm float64) float64 { return need(at)*1.02 + slope*(rpm-at) }
		if power(2000) < 0 {
			continue
		}
		c := ok(drive.NewCurve(
			drive.PowerPoint{units.RevolutionsPerMinute(2000), units.Watts(power(2000))}, drive.PowerPoint{units.RevolutionsPerMinute(7000), units.Watts(power(7000))}))(t)
		// walking down: as fast as the straight still covers the load
		want := at
		for lo, hi := at, 7000.0; hi-lo > 1e-9; {
			mid := (lo + hi) / 2
			if power(mid) >= need(mid) {
				lo = mid
			} else {
				hi = mid
			}
			want = lo
		}
		top := ok(drive.InGears(line, c, r))(t).Gears[0]
		if top.Reason.Given() {
			t.Errorf("about %g rev/min: %v", at, top.Reason)
			continue
		}
		near(t, "engine", top.Engine.RevolutionsPerMinute(), want, 1e-7) // the root is found to 1e-9 rad/s
	}
}

// Power enough at the slowest speed of the curve alone is a top speed, if a poor
// one.
func TestTopAtTheFootOfTheCurve(t *testing.T) {
	line := drive.Line{Box: ok(drive.BoxOf("5"))(t), Rolling: measure.Exact(units.Metres(2))}
	c := ok(drive.NewCurve(drive.PowerPoint{units.RevolutionsPerMinute(2000), units.Kilowatts(10)}, drive.PowerPoint{units.RevolutionsPerMinute(2100), 0}, drive.PowerPoint{units.RevolutionsPerMinute(6000), 0}))(t)
	r := solo()
	r.Climb = 0.216 // some 9.6 kW at 2000 rev/min
	top := ok(drive.InGears(line, c, r))(t).Gears[0]
	if n := top.Engine.RevolutionsPerMinute(); top.Reason.Given() || n < 2000 || n > 2006.25 {
		t.Errorf("%+v", top)
	}
}

// The fastest gear is that of the greatest speed; where none pulls it is none.
func TestFastestGear(t *testing.T) {
	tops := ok(drive.InGears(demo(t), demoCurve(t), solo()))(t)
	best := tops.Gears[0]
	for _, g := range tops.Gears {
		if g.Speed > best.Speed {
			best = g
		}
	}
	if tops.Fastest != best.Gear || best.Gear == "1" {
		t.Errorf("fastest %q, %q goes %v", tops.Fastest, best.Gear, best.Speed)
	}
	wall := solo()
	wall.Climb = 0.5
	line := demo(t)
	line.Box = ok(drive.BoxOf("1.2", "1"))(t)
	none := ok(drive.InGears(line, demoCurve(t), wall))(t)
	if none.Fastest != "" || !none.Gears[0].Reason.Given() {
		t.Errorf("%+v", none)
	}
}

// A table's drop and gap are of the step; steps that stay the same are steady;
// and a change speed that was given is not assumed.
func TestTableSteps(t *testing.T) {
	line := demo(t)
	line.Box = ok(drive.BoxOf("4", "2", "1"))(t)
	tab := ok(line.Table(drive.TableOptions{ChangeAt: units.RevolutionsPerMinute(4800)}))(t)
	if !tab.Steady || len(tab.Uneven) != 0 {
		t.Errorf("even steps are uneven: %v", tab.Uneven)
	}
	near(t, "gap", tab.Gears[0].Gap, 0.5, 1e-15)
	near(t, "drops to", tab.Gears[0].DropsTo.RevolutionsPerMinute(), 2400, 1e-12)
	if len(tab.Basis.Assumed) != 0 {
		t.Errorf("assumed %v", tab.Basis.Assumed)
	}
	if usual := ok(line.Table(drive.TableOptions{}))(t); len(usual.Basis.Assumed) != 1 {
		t.Errorf("assumed %v", usual.Basis.Assumed)
	}
	three := ok(drive.BoxOf("2.42", "1.5", "1"))(t)
	near(t, "gap of 2.42 to 1.5", ok(drive.Line{Box: three}.Table(drive.TableOptions{}))(t).Gears[0].Gap, (2.42-1.5)/2.42, 1e-12)
}
