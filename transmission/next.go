package transmission

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// next ranks the readings not yet taken by what they are expected to tell. Each
// is looked at as three outcomes: plainly below new, about new, plainly above.
func (m *model) next(d measure.Data, r measure.Ranking) ([]measure.Gain, error) {
	some := 0 // the causes that count; the rest has no say
	for some < len(r.Odds) && r.Odds[some].Share >= slight {
		some++
	}
	r.Odds = r.Odds[:some]
	why := make([]*cause, some) // nil is not listed
	for i, o := range r.Odds {
		why[i] = m.cause(o.Key)
	}
	checks := make([]measure.Check, 0, int(parts))
	looks := make([]measure.Outlook, some*int(parts))
	for p := range nuts + 1 {
		if d[p].Taken || p == leverRatio {
			continue
		}
		c := measure.Check{InOrder: looks[:some:some]}
		looks = looks[some:]
		own, span := finestTurn, elseTurns
		c.Key, c.Text, c.Work = "nuts", "count the turns of one nut out to flush, and turn it back", units.MinutesOfTime(20)
		if p < parts {
			q := &rules[p]
			c.Key, c.Text, c.Work = q.path, q.settle, units.MinutesOfTime(q.minutes)
			own, span = q.finest*2, q.span
		}
		usual := math.Hypot(m.base[p].u, own)
		about := three(phi(-plainly), phi(plainly)) // of most causes, which leave p alone
		for i, w := range why {
			switch {
			case w == nil:
				wide := usual / math.Hypot(usual, span)
				c.InOrder[i].Chances = three(strayed(-plainly, wide), strayed(plainly, wide))
			case w.low != w.high && w.open == p:
				shift := w.shift(p)
				low, high := (shift+w.low)/usual, (shift+w.high)/usual
				c.InOrder[i].Chances = three(smeared(-plainly, low, high), smeared(plainly, low, high))
			case w.shift(p) != 0:
				shift := w.shift(p) / usual
				c.InOrder[i].Chances = three(phi(-plainly-shift), phi(plainly-shift))
			default:
				c.InOrder[i].Chances = about
			}
		}
		checks = append(checks, c)
	}
	return measure.Next(r, checks)
}

// plainly is how many of its usual deviations from new a reading is plainly so.
const plainly = 2

// slight is the share of a cause from which it counts in the choice of readings:
// it could not change their order.
const slight = 1e-3

// three are the chances of a reading plainly below new, about it, and plainly
// above, from those of it standing below either edge.
func three(low, high float64) []float64 {
	low = math.Min(math.Max(low, 0), 1)
	mid := math.Min(math.Max(high-low, 0), 1-low)
	return []float64{low, mid, math.Max(1-low-mid, 0)}
}

// strayed is the chance of a figure below z usual deviations with something not
// listed wrong; wide is the usual deviation in part of a strayed figure's.
func strayed(z, wide float64) float64 { return (1-strays)*phi(z) + strays*phi(z*wide) }

// smeared is the chance of a figure below z whose mean is evenly likely between
// low and high, by the integral of Phi: z Phi(z) + density(z).
func smeared(z, low, high float64) float64 {
	whole := func(z float64) float64 { return z*phi(z) + density(z) }
	return (whole(z-low) - whole(z-high)) / (high - low)
}

// shift is what the cause moves p by for certain.
func (c *cause) shift(p part) float64 {
	by := 0.0
	for _, f := range c.fixed {
		if f.part == p {
			by += f.by
		}
	}
	return by
}
