package timing

import (
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// How far a cam may stand out before an engine is not turned by hand, or not started:
// past 30° and past 5°, an inlet cam advanced and an exhaust cam retarded counting in
// full, since those bring the valve towards the piston, the other way by half. A
// cause of less than 3 % counts for nothing.
func TestTurningByShift(t *testing.T) {
	at := func(x float64) measure.Reading[units.CrankAngle] { return measure.Exact(units.CrankDegrees(x)) }
	for _, c := range []struct {
		inlet, exhaust, share float64
		byHand, start         bool
	}{
		{0, 0, 0.3, true, true},
		{5, 0, 0.3, true, true}, {5.1, 0, 0.3, true, false}, {30, 0, 0.3, true, false}, {30.1, 0, 0.3, false, false},
		{0, -5, 0.3, true, true}, {0, -5.1, 0.3, true, false}, {0, -30, 0.3, true, false}, {0, -30.1, 0.3, false, false},
		{-10, 0, 0.3, true, true}, {-10.1, 0, 0.3, true, false}, {-60, 0, 0.3, true, false}, {-60.1, 0, 0.3, false, false},
		{0, 10, 0.3, true, true}, {0, 10.1, 0.3, true, false}, {0, 60, 0.3, true, false}, {0, 60.1, 0.3, false, false},
		{40, 0, 0.029, true, true}, {40, 0, 0.03, false, false},
	} {
		r := &Result{
			Causes:    measure.Ranking{Odds: []measure.Odds{{Key: nothingKey, Share: 0.6}, {Key: "other", Share: c.share}}},
			Explained: []Explanation{{Key: "other", Inlet: at(c.inlet), Exhaust: at(c.exhaust)}},
			Inlet:     Phase{Crank: at(0)}, Exhaust: Phase{Crank: at(0)},
		}
		if got := turning(r); got.ByHand != c.byHand || got.Start != c.start || got.Why == "" {
			t.Errorf("inlet %v, exhaust %v, share %v: %+v", c.inlet, c.exhaust, c.share, got)
		}
		// one cam unread, or "nothing wrong" less than likely: no start
		r.Exhaust.Crank = measure.Reading[units.CrankAngle]{}
		if turning(r).Start {
			t.Error("started with a cam unread")
		}
		r.Exhaust.Crank, r.Causes.Odds[0].Share = at(0), 0.59
		if turning(r).Start {
			t.Error("started on 59 %")
		}
	}
}
