package transmission

import (
	"fmt"
	"math"
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// demo is an invented clutch, its figures chosen so that one single repair
// opens an empty window; the expected figures of the tests on it were derived by
// hand from the two ledgers. Nothing here is a maker's figure.
func demo() Clutch {
	return Clutch{
		Plates: Plates{Faces: 10, MeanRadius: 60 * units.Millimetre},
		Springs: Springs{Count: 4, Rate: units.NewtonsPerMillimetre(25), FreeLength: 46 * units.Millimetre,
			Shortest: 28 * units.Millimetre, AtFlush: 44 * units.Millimetre},
		Nuts:   Nuts{Pitch: units.Inches(1.0 / 20)},
		HubNut: HubNut{Pitch: units.Inches(1.0 / 20), Hand: RightHand},
		Lever: HandLever{
			Finger: measure.Exact(units.Millimetres(109.6)), Nipple: measure.Exact(38 * units.Millimetre),
			// the hand sum takes 22 mm of pull as 33 degrees on a sector of 38 mm
			Rest: measure.Exact(units.Degrees(0)), Pulled: measure.Exact(units.Radians(22.0 / 38)), Sector: true,
		},
		Train:  []Element{{Name: "release arm", Ratio: 6, Efficiency: 0.90}},
		Demand: Demand{EngineTorque: 28 * units.NewtonMetre, PrimaryRatio: 2.2, Margin: 1.3, HandForce: 130 * units.Newton, FreePlay: units.Millimetres(1.5)},
		New: Condition{
			Friction:  measure.Of(units.Value(0.12), units.Value(0.01)),
			OutOfFlat: measure.Of(units.Millimetres(0.30), units.Millimetres(0.05)),
			RodPlay:   measure.Of(units.Millimetres(0.30), units.Millimetres(0.05)),
			FreePlay:  measure.Of(3*units.Millimetre, units.Millimetres(0.3)),
		},
	}
}

// used is the demo clutch after a life, its retaining nut tight.
func used() Condition {
	return Condition{
		Friction:   measure.Of(units.Value(0.11), units.Value(0.01)),
		SpringSet:  measure.Of(1*units.Millimetre, units.Millimetres(0.05)),
		OutOfFlat:  measure.Of(units.Millimetres(0.50), units.Millimetres(0.05)),
		HubNutBack: measure.Exact(units.Turns(0)),
	}
}

// backedOff is the same with the nut backed off half a turn.
func backedOff() Condition {
	c := used()
	c.HubNutBack = measure.Of(units.Turns(0.5), units.Turns(0.05))
	return c
}

// printed compares at the digits the hand sum prints.
func printed(t *testing.T, what string, got float64, want string) {
	t.Helper()
	decimals := 0
	for i, r := range want {
		if r == '.' {
			decimals = len(want) - i - 1
		}
	}
	if s := fmt.Sprintf("%.*f", decimals, got); s != want {
		t.Errorf("%s = %s (%.5f), hand sum prints %s", what, s, got, want)
	}
}

func window(t *testing.T, c Clutch, found Condition) Window {
	t.Helper()
	w, err := c.Window(found)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// Invented data, derived by hand. The hand sum prints the leverage as 2.885
// where 109.6/38 is 2.8842; no printed digit of an end depends on it.
func TestHandSumNew(t *testing.T) {
	w := window(t, demo(), Condition{})
	printed(t, "wanted torque, N·m", w.TorqueWanted.NewtonMetres(), "80.08")
	printed(t, "lift, mm", w.LiftWanted.Millimetres(), "1.80")
	printed(t, "torque bound", w.Torque.Turns(), "7.18")
	printed(t, "coil bind bound", w.CoilBind.Turns(), "11.18")
	printed(t, "hand force bound", w.HandForce.Turns(), "9.76")
	printed(t, "travel bound", w.Travel.Turns(), "18.78")
	printed(t, "spare tension, N", w.CableSpare.Millimetres()*100, "640")
	printed(t, "width", w.Width.Turns(), "2.58")
	if w.LowLimit != Torque || w.HighLimit != HandForce || !w.Open() {
		t.Errorf("limits %v / %v, open %v", w.LowLimit, w.HighLimit, w.Open())
	}
}

func TestHandSumUsed(t *testing.T) {
	w := window(t, demo(), used())
	printed(t, "low", w.Low.Turns(), "8.77")
	printed(t, "coil bind", w.CoilBind.Turns(), "11.02")
	printed(t, "high", w.High.Turns(), "10.39")
	printed(t, "travel", w.Travel.Turns(), "15.33")
	printed(t, "spare, N", w.CableSpare.Millimetres()*100, "520")
	printed(t, "width", w.Width.Turns(), "1.63")

	worn := used()
	worn.Wear = measure.Exact(1 * units.Millimetre)
	w = window(t, demo(), worn)
	printed(t, "low with 1 mm of wear", w.Low.Turns(), "9.55")
	printed(t, "high with 1 mm of wear", w.High.Turns(), "11.18")
	printed(t, "width with 1 mm of wear", w.Width.Turns(), "1.63")
}

func TestHandSumNutBackedOff(t *testing.T) {
	c := demo()
	w := window(t, c, backedOff())
	printed(t, "low", w.Low.Turns(), "8.77")
	printed(t, "high", w.High.Turns(), "2.37")
	printed(t, "width", w.Width.Turns(), "-6.40")
	printed(t, "spare, N", w.CableSpare.Millimetres()*100, "139")
	if w.LowLimit != Torque || w.HighLimit != Travel || w.Reason.Code != "window-empty-travel" {
		t.Errorf("limits %v / %v, reason %v", w.LowLimit, w.HighLimit, w.Reason)
	}
	b, err := c.At(backedOff(), units.Turns(6))
	if err != nil {
		t.Fatal(err)
	}
	printed(t, "torque at 6 turns, N·m", b.Torque.NewtonMetres(), "56.9")
	printed(t, "engine torque at the clutch, N·m", b.TorqueEngine.NewtonMetres(), "61.6")
	printed(t, "tension at the lift wanted, N", b.TensionWanted.Newtons(), "245.8")
	// The hand sum takes the stretch at the lift wanted, 2.00 mm, and prints
	// 1.82 mm of lift; at the lift there is the cable stretches a little less
	// and the lift is 1.83 mm.
	byHand := (b.Pull-b.PullFreePlay-units.Millimetres(b.TensionWanted.Newtons()/100)).Millimetres()/6 - 0.935
	printed(t, "lift, mm, stretch at the lift wanted", byHand, "1.82")
	printed(t, "lift, mm", b.Lift.Millimetres(), "1.83")
	if !b.Slips || !b.Drags || b.Symptoms() != "slips and drags at once" {
		t.Errorf("symptoms: %s", b.Symptoms())
	}
}

// The table of single repairs, each alone.
func TestHandSumRepairs(t *testing.T) {
	a, err := Adjust(Input{Clutch: demo(), Found: backedOff()}, Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []struct{ key, low, high, width string }{
		{"springs", "7.98", "1.58", "-6.40"},
		{"clean-plates", "7.97", "2.37", "-5.60"},
		{"flat-plates", "8.77", "6.61", "-2.16"},
		{"new-plates", "7.97", "6.61", "-1.36"},
		{"free-play", "8.77", "7.47", "-1.30"},
		{"hub-nut", "8.77", "10.39", "1.63"},
	} {
		found := false
		for _, r := range a.Repairs {
			if r.Key == want.key {
				found = true
				printed(t, want.key+" low", r.Window.Low.Turns(), want.low)
				printed(t, want.key+" high", r.Window.High.Turns(), want.high)
				printed(t, want.key+" width", r.Window.Width.Turns(), want.width)
				if r.Opens != (want.key == "hub-nut") {
					t.Errorf("%s opens: %v", r.Key, r.Opens)
				}
			}
		}
		if !found {
			t.Errorf("no repair %s", want.key)
		}
	}
	if a.Repairs[0].Key != "hub-nut" || len(a.Pairs) != 0 {
		t.Errorf("first repair %s, %d pairs", a.Repairs[0].Key, len(a.Pairs))
	}
	stiff := backedOff()
	stiff.CableStiffness = measure.Exact(units.NewtonsPerMillimetre(200))
	w := window(t, demo(), stiff)
	printed(t, "stiffer cable high", w.High.Turns(), "7.09")
	printed(t, "stiffer cable width", w.Width.Turns(), "-1.67")

	// each 0.1 mm of lost rod motion costs 2.04 turns of the travel bound
	more := backedOff()
	more.RodPlay = measure.Exact(units.Millimetres(0.4))
	d := window(t, demo(), backedOff()).Travel - window(t, demo(), more).Travel
	printed(t, "turns lost to 0.1 mm of rod", d.Turns(), "2.04")
}

// A nut backed off q turns of pitch p takes q p of rod travel and nothing of the
// clamp.
func TestBackedOffNutTakesTravelNotClamp(t *testing.T) {
	c := demo()
	for _, q := range []float64{0.25, 0.5, 1} {
		found := used()
		found.HubNutBack = measure.Of(units.Turns(q), units.Turns(0.05))
		was, _ := c.At(used(), units.Turns(2))
		now, err := c.At(found, units.Turns(2))
		if err != nil {
			t.Fatal(err)
		}
		if now.Clamp != was.Clamp || now.Torque != was.Torque {
			t.Errorf("q %v: clamp %v, was %v", q, now.Clamp, was.Clamp)
		}
		// cable travel at a ratio of 6, to rounding of sums of a few tens of mm
		if got, want := now.PullHubNut.Millimetres(), 6*q*1.27; math.Abs(got-want) > 1e-12 {
			t.Errorf("q %v: takes %v mm of cable, want %v", q, got, want)
		}
	}
}

// A clutch adjusted until it frees may slip and one adjusted until it holds may
// drag: the walk through an empty window sees slip, slip with drag, and drag;
// with the one repair done it sees a setting that does neither.
func TestWalkThroughEmptyWindow(t *testing.T) {
	walk := func(found Condition) (seen map[string]bool) {
		seen = map[string]bool{}
		for n := 0.0; n <= 11; n += 1.0 / 6 {
			b, err := demo().At(found, units.Turns(n))
			if err != nil {
				t.Fatal(err)
			}
			switch {
			case b.ThinMargin && b.Drags:
				seen["both"] = true
			case b.ThinMargin:
				seen["slips"] = true
			case b.Drags || b.Heavy:
				seen["drags"] = true
			default:
				seen["well"] = true
			}
		}
		return seen
	}
	if got := walk(backedOff()); !got["slips"] || !got["both"] || !got["drags"] || got["well"] {
		t.Errorf("nut slack: %v", got)
	}
	if got := walk(used()); !got["slips"] || got["both"] || !got["drags"] || !got["well"] {
		t.Errorf("nut tight: %v", got)
	}
}

// About 25 mm of cable pull frees a clutch, common practice, no source: the
// demo clutch, set in the middle of its window, wants less than that and more
// than half of it.
func TestAboutAnInchOfPullFrees(t *testing.T) {
	w := window(t, demo(), Condition{})
	b, err := demo().At(Condition{}, (w.Low + w.High).Times(0.5))
	if err != nil {
		t.Fatal(err)
	}
	need := b.PullFreePlay + b.PullPlay + units.Millimetres(b.TensionWanted.Newtons()/100) + b.LiftWanted.Times(6)
	if mm := need.Millimetres(); mm > 25 || mm < 12.5 {
		t.Errorf("wants %v of pull", need)
	}
}
