package transmission

import (
	"math/rand/v2"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// What to read next is what the ranking engine says when every cause tells what it
// expects of every reading, in the same order; bits to its rounding.
func TestNextIsThatOfTheEngine(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 2026))
	for range 200 {
		sim := draw(rng, 0.2+2*rng.Float64())
		d, err := Diagnose(sim.in, Options{})
		if err != nil {
			t.Fatal(err)
		}
		r := d.Causes
		n := 0
		for n < min(len(r.Odds), enough) && r.Odds[n].Share >= slight {
			n++
		}
		r.Odds = r.Odds[:n]
		m := &sim.m
		var checks []measure.Check
		for p := range nuts + 1 {
			_, taken, _ := sim.in.Found.at(p)
			if taken || p == leverRatio || p == nuts && sim.in.Setting.Nuts.Taken() {
				continue
			}
			c := measure.Check{Key: "nuts", Text: "count the turns of one nut out to flush, and turn it back", Work: units.MinutesOfTime(20)}
			if p < parts {
				c = measure.Check{Key: rules[p].path, Text: rules[p].settle, Work: units.MinutesOfTime(rules[p].minutes)}
			}
			for _, o := range r.Odds {
				low := phi(-plainly)
				look := newOutlook(low, 1-low)
				if at, listed := index()[o.Key]; !listed {
					look = m.strayed(p)
				} else if m.causes[at.a].moves(p) {
					look = m.moved(p, at.a)
				} else if m.causes[at.b].moves(p) {
					look = m.moved(p, at.b)
				}
				c.InOrder = append(c.InOrder, measure.Outlook{Chances: look[:]})
			}
			checks = append(checks, c)
		}
		want, err := measure.Next(r, checks)
		if err != nil {
			t.Fatal(err)
		}
		near := cmp.FilterPath(func(p cmp.Path) bool { return p.Last().String() == ".Bits" }, cmpopts.EquateApprox(0, 1e-9))
		if diff := cmp.Diff(want, d.NextReadings, near); diff != "" {
			t.Error(diff)
		}
	}
}
