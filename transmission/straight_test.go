package transmission

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// The straightened clutch does inside the window what the budget says the real one
// does: torque at both ends of the window exactly, lift and hand force nearby.
func TestStraightAgreesWithBudget(t *testing.T) {
	worst, n := [3]float64{}, 0
	rapid.Check(t, func(t *rapid.T) {
		c, _ := anyClutch(t)
		s, err := c.resolve(&Condition{})
		if err != nil {
			t.Fatal(err)
		}
		b := s.bounds(&s.fresh)
		low, _ := b.low()
		high, _ := b.high()
		if high-low < 0.3 || s.law == nil && s.train == nil {
			return
		}
		n++
		m := model{s: s.straight(low, high)}
		for _, at := range [...]float64{low, (low + high) / 2, high} {
			v := m.s.fresh
			v[nuts] = at
			var w workings
			w.at(&m, &v)
			want := s.budget(&s.fresh, at)
			off := [3]float64{w.torque/want.Torque.NewtonMillimetres() - 1, (w.lift - want.Lift.Millimetres()) / want.Lift.Millimetres(), w.hand/want.HandForce.Newtons() - 1}
			for i := range off {
				worst[i] = math.Max(worst[i], math.Abs(off[i]))
			}
			// a straight line through a rising branch that bends, an arm that swings
			// far out of square at both ends: the causes need no more
			if math.Abs(off[0]) > 0.2 || math.Abs(off[1]) > 0.2 || math.Abs(off[2]) > 0.4 {
				t.Fatalf("at %.2f in %.2f .. %.2f: torque, lift, hand force off by %.2f", at, low, high, off)
			}
		}
		if d, err := Diagnose(Input{Clutch: c, Signs: Signs{Slips: Yes}}, Options{}); err != nil || d.Reason.Given() || !(d.Causes.Leader().Share > 0) {
			t.Fatal(d.Reason, err)
		}
	})
	t.Logf("%d clutches, torque, lift, hand force off by at most %.3f", n, worst)
}
