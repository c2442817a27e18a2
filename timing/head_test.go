package timing_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/timing"
	"example.com/benchbook/timing/cam"
	"example.com/benchbook/timing/crank"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

var _ timing.LiftCurve = (*cam.Curve)(nil)

// still is a valve held open by the same lift all round.
type still float64

func (s still) Lift(units.CamAngle) (units.Length, error) { return units.Millimetres(float64(s)), nil }

// humped is sin^2 round overlap over 200 degrees of cam.
type humped struct{ lift, centre float64 }

func (h humped) Lift(at units.CamAngle) (units.Length, error) {
	x := math.Mod(at.Degrees()-h.centre+540, 360) - 180
	if math.Abs(x) > 70 {
		return 0, nil
	}
	c := math.Cos(x / 70 * math.Pi / 2)
	return units.Millimetres(h.lift * c * c), nil
}

func bareHead() timing.Head {
	return timing.Head{Slider: crank.Slider{Stroke: 83 * units.Millimetre, Rod: 150 * units.Millimetre}}
}

func degrees(v float64) measure.Reading[units.CrankAngle] {
	return measure.Exact(units.CrankDegrees(v))
}

// With a valve held still the least gap is at TDC, and is what is left of the
// gap of the shut valve; with the rims of two upright valves in line it is the
// gap between them, whatever the lifts.
func TestGapsBySum(t *testing.T) {
	h, e := bareHead(), engine()
	h.Inlet = timing.Valve{ToPiston: measure.Of(9*units.Millimetre, 0.1*units.Millimetre), Tilt: 30 * units.Degree, Head: 40 * units.Millimetre, Curve: still(2.5)}
	h.Exhaust = timing.Valve{ToPiston: measure.Of(9*units.Millimetre, 0.1*units.Millimetre), Head: 38 * units.Millimetre, Curve: still(9.5)}
	g, err := h.Gaps(e, degrees(20), degrees(0))
	if err != nil {
		t.Fatal(err)
	}
	if v := g.Inlet.Gap.Value().Millimetres(); math.Abs(v-6.5) > 1e-9 || g.Inlet.Room != timing.Enough { // rounding
		t.Errorf("inlet %v %v, want 6.5 mm and enough", g.Inlet.Gap, g.Inlet.Room)
	}
	if v := g.Exhaust.Gap.Value().Millimetres(); math.Abs(v+0.5) > 1e-9 || g.Exhaust.Room != timing.Touches || g.Worst() != timing.Touches {
		t.Errorf("exhaust %v %v, want -0.5 mm and touching", g.Exhaust.Gap, g.Exhaust.Room)
	}
	if !g.Valves.NoAnswer.Given() {
		t.Error("a gap between valves that nobody measured")
	}
	h.Inlet.Tilt, h.Between = 0, measure.Of(3*units.Millimetre, 0.1*units.Millimetre)
	h.Inlet.Curve, h.Exhaust.Curve = still(4), still(4)
	if g, err = h.Gaps(e, degrees(0), degrees(0)); err != nil || math.Abs(g.Valves.Gap.Value().Millimetres()-3) > 1e-9 {
		t.Errorf("upright valves %v %v, want 3 mm", g.Valves.Gap, err)
	}
	// two valves at 35° with 5 mm lift each: the rims come together by 2 x 5 sin 35°
	h.Inlet.Tilt, h.Exhaust.Tilt, h.Between = 35*units.Degree, 35*units.Degree, measure.Of(8*units.Millimetre, 0.1*units.Millimetre)
	h.Inlet.Curve, h.Exhaust.Curve = still(5), still(5)
	want := 8 - 10*math.Sin(35*math.Pi/180)
	if g, err = h.Gaps(e, degrees(0), degrees(0)); err != nil || math.Abs(g.Valves.Gap.Value().Millimetres()-want) > 1e-9 {
		t.Errorf("tilted valves %v %v, want %v mm", g.Valves.Gap, err, want)
	}
}

// Advancing the inlet or retarding the exhaust never makes room round overlap.
func TestGapsShrinkTheWayTheyMust(t *testing.T) { rapid.Check(t, checkGaps) }

func FuzzGaps(f *testing.F) {
	fuzzBytes(f)
	f.Fuzz(rapid.MakeFuzz(checkGaps))
}

func checkGaps(t *rapid.T) {
	h, e := bareHead(), engine()
	gap := measure.Of(units.Millimetres(rapid.Float64Range(2, 15).Draw(t, "gap")), 0.05*units.Millimetre)
	lift := rapid.Float64Range(4, 11).Draw(t, "lift")
	tilt := units.Degrees(rapid.Float64Range(0, 45).Draw(t, "tilt"))
	h.Inlet = timing.Valve{ToPiston: gap, Tilt: tilt, Head: 40 * units.Millimetre, Curve: humped{lift, 55}}
	h.Exhaust = timing.Valve{ToPiston: gap, Tilt: tilt, Head: 38 * units.Millimetre, Curve: humped{lift, -55}}
	h.Between = measure.Of(units.Millimetres(rapid.Float64Range(2, 30).Draw(t, "between")), 0.05*units.Millimetre)
	a := rapid.Float64Range(-30, 30).Draw(t, "a")
	b := a + rapid.Float64Range(0, 20).Draw(t, "more")
	less, err := h.Gaps(e, degrees(a), degrees(-a))
	if err != nil {
		t.Fatal(err)
	}
	more, err := h.Gaps(e, degrees(b), degrees(-b))
	if err != nil {
		t.Fatal(err)
	}
	const tiny = units.Length(1e-9) // the search ends far below this
	// Valve to valve there may be two valleys all but level, either side of TDC;
	// the search goes down the one that is lower at its places three degrees apart.
	// The other may be lower by what half a step bends, some 0.005 mm/deg² of it.
	const valleys = units.Length(0.01)
	if more.Inlet.Gap.Value() > less.Inlet.Gap.Value()+tiny || more.Exhaust.Gap.Value() > less.Exhaust.Gap.Value()+tiny || more.Valves.Gap.Value() > less.Valves.Gap.Value()+valleys {
		t.Fatalf("advanced by %v: %+v, by %v: %+v", a, less, b, more)
	}
	// no place on a grid of its own is nearer than the least found
	for x := -180.0; x <= 180; x += 0.37 {
		l, _ := h.Inlet.Curve.Lift(units.CrankDegrees(x + a).AtHalfSpeedCam())
		p, _ := h.Slider.Travel(units.After(units.TDC, units.CrankDegrees(x)))
		if g := gap.Value().Millimetres() + p.Millimetres()*math.Cos(tilt.SI()) - l.Millimetres(); g < less.Inlet.Gap.Value().Millimetres()-1e-6 {
			t.Fatalf("at %v° the gap is %v, least %v", x, g, less.Inlet.Gap)
		}
	}
}

// A move that would bring valve and piston together is refused and goes last.
func TestRemedyRefused(t *testing.T) {
	e := engine()
	h := bareHead()
	lift := measure.Of(9*units.Millimetre, 0.05*units.Millimetre)
	e.Inlet.MaxLift, e.Exhaust.MaxLift = lift, lift
	h.Inlet.ToPiston, h.Exhaust.ToPiston = measure.Of(6*units.Millimetre, 0.1*units.Millimetre), measure.Of(6*units.Millimetre, 0.1*units.Millimetre)
	e.Head = &h
	late := events("10 BTDC", "80 ABDC", "65 BBDC", "25 ATDC")
	before := diagnose(t, e, late, timing.Options{})
	if before.Remedies[0].Refused.Given() || before.Remedies[0].Gaps.Inlet.Room != timing.Enough || before.Gaps.Worst() != timing.Enough {
		t.Errorf("room enough, yet %+v", before.Remedies[0])
	}
	if !(before.Remedies[0].Gaps.Inlet.Gap.Value() < before.Gaps.Inlet.Gap.Value()) {
		t.Error("advancing the inlet takes no room")
	}
	// as much room as the cam standing late needs, and no more
	h.Inlet.ToPiston = measure.Of(h.Inlet.ToPiston.Value()-before.Remedies[0].Gaps.Inlet.Gap.Value(), 0.1*units.Millimetre)
	after := diagnose(t, e, late, timing.Options{})
	if after.Remedies[0].Refused.Given() {
		t.Errorf("a refused move leads: %+v", after.Remedies[0])
	}
	last := after.Remedies[len(after.Remedies)-1]
	if last.Refused.Code != timing.ValvesTouch || last.Gaps.Inlet.Room != timing.Touches {
		t.Errorf("nothing refused: %+v", after.Remedies)
	}
	h.Inlet.ToPiston = measure.Of(0*units.Millimetre, 0.1*units.Millimetre)
	if now := diagnose(t, e, late, timing.Options{}); now.Turning.ByHand {
		t.Error("valve on piston, and it may be turned")
	}
}
