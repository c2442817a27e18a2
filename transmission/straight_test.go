package transmission

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// The straightened clutch does inside the window about what the budget says the
// real one does. Springs near the hump of their load and arms that swing far bend
// most; the causes need no more than this.
func TestStraightAgreesWithBudget(t *testing.T) {
	clutches := rapid.Custom(func(t *rapid.T) Clutch {
		c, _ := anyClutch(t)
		return c
	})
	n := 4000
	if testing.Short() {
		n = 800
	}
	var off [3][]float64
	for i := range n {
		c := clutches.Example(i)
		s, err := c.resolve(&Condition{})
		if err != nil {
			t.Fatal(err)
		}
		b := s.bounds(&s.fresh)
		low, _ := b.low()
		high, _ := b.high()
		if high-low < 0.3 || s.law == nil && s.train == nil {
			continue
		}
		m := model{s: s.straight(low, high)}
		for _, at := range [...]float64{low, (low + high) / 2, high} {
			v := m.s.fresh
			v[nuts] = at
			var w workings
			w.at(m.s, &v)
			want := s.budget(&s.fresh, at)
			off[0] = append(off[0], math.Abs(w.torque/want.Torque.NewtonMillimetres()-1))
			off[1] = append(off[1], math.Abs(w.lift/want.Lift.Millimetres()-1))
			off[2] = append(off[2], math.Abs(w.hand/want.HandForce.Newtons()-1))
		}
		if d, err := Diagnose(Input{Clutch: c, Signs: Signs{Slips: Yes}}, Options{}); err != nil || d.Reason.Given() || !(d.Causes.Leader().Share > 0) {
			t.Fatal(d.Reason, err)
		}
	}
	for i, what := range [...]string{"torque", "lift", "hand force"} {
		slices.Sort(off[i])
		k := len(off[i])
		mid, most := off[i][k/2], off[i][k*95/100]
		t.Logf("%s: %d settings, off by %.3f at the median, %.3f at most in 95 %%", what, k, mid, most)
		if mid > 0.05 || most > 0.25 {
			t.Errorf("%s is too far off", what)
		}
	}
}
