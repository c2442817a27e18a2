package transmission

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// next ranks the readings not yet taken by what they are expected to tell. Each
// is looked at as three outcomes: plainly below new, about new, plainly above.
func (m *model) next(d measure.Data, r measure.Ranking) ([]measure.Gain, error) {
	checks := make([]measure.Check, 0, dataLength)
	for p := range nuts + 1 {
		if d[p].Taken || p == leverRatio {
			continue
		}
		b := m.base[p]
		c := measure.Check{Outlooks: make(map[string]measure.Outlook, len(r.Odds))}
		own, span := finestTurn, elseTurns
		c.Key, c.Text, c.Work = "nuts", "count the turns of one nut out to flush, and turn it back", units.MinutesOfTime(20)
		if p < parts {
			q := &rules[p]
			c.Key, c.Text, c.Work = q.path, q.settle, units.MinutesOfTime(q.minutes)
			own, span = q.finest*2, q.span
		}
		usual := math.Hypot(b.u, own)
		edge := 2 * usual
		about := m.chances(p, &cause{}, usual, span, edge) // of most causes, which leave p alone
		for _, o := range r.Odds {
			if o.Share < 1e-3 {
				continue
			}
			chances := about
			if why := m.cause(o.Key); why == nil || why.moves(p) {
				chances = m.chances(p, why, usual, span, edge)
			}
			c.Outlooks[o.Key] = measure.Outlook{Chances: chances}
		}
		checks = append(checks, c)
	}
	return measure.Next(r, checks)
}

// chances are those of a reading of p falling below, within and above edge from
// new, if the cause is true.
func (m *model) chances(p part, c *cause, usual, span, edge float64) []float64 {
	var below func(at float64) float64
	switch {
	case c == nil: // not listed
		wide := math.Hypot(usual, span)
		below = func(at float64) float64 { return (1-strays)*phi(at/usual) + strays*phi(at/wide) }
	case c.low != c.high && c.open == p:
		// a normal smeared evenly over the bounds, by the integral of Phi:
		// z Phi(z) + density(z)
		whole := func(z float64) float64 { return z*phi(z) + density(z) }
		shift := c.shift(p)
		below = func(at float64) float64 {
			return usual / (c.high - c.low) * (whole((at-shift-c.low)/usual) - whole((at-shift-c.high)/usual))
		}
	default:
		shift := c.shift(p)
		below = func(at float64) float64 { return phi((at - shift) / usual) }
	}
	low := math.Min(math.Max(below(-edge), 0), 1)
	mid := math.Min(math.Max(below(edge)-low, 0), 1-low)
	return []float64{low, mid, math.Max(1-low-mid, 0)}
}

// moves reports whether the cause moves p.
func (c *cause) moves(p part) bool {
	return c.low != c.high && c.open == p || c.shift(p) != 0
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
