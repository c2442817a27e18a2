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
	for some < min(len(r.Odds), enough) && r.Odds[some].Share >= slight {
		some++
	}
	r.Odds = r.Odds[:some]
	var room [enough]members
	why := room[:some]
	for i := range why {
		at, listed := index()[r.Odds[i].Key]
		if !listed {
			at = members{-1, -1}
		}
		why[i] = at
	}
	open := 0
	for p := range nuts + 1 {
		if unread(d, p) {
			open++
		}
	}
	checks := make([]measure.Check, 0, int(parts))
	looks := make([]measure.Outlook, some*open)
	chances := make([]float64, 0, 3*(1+open+causeCount))
	three := func(low, high float64) []float64 {
		low = min(max(low, 0), 1)
		mid := min(max(high-low, 0), 1-low)
		chances = append(chances, low, mid, max(1-low-mid, 0))
		return chances[len(chances)-3 : len(chances) : len(chances)]
	}
	phi := m.bell.phi
	far := phi(-plainly)
	about := three(far, 1-far) // of most causes, which leave the part alone
	for p := range nuts + 1 {
		if !unread(d, p) {
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
		wide := usual / math.Hypot(usual, span)
		// with something not listed wrong most figures are as ever, some far off
		stray := (1-strays)*far + strays*phi(-plainly*wide)
		strayed := three(stray, 1-stray)
		var moved [causeCount][]float64
		of := func(i int) []float64 {
			if moved[i] != nil {
				return moved[i]
			}
			c := &m.causes[i]
			shift := c.shift(p)
			if c.low != c.high && c.open == p {
				low, high := (shift+c.low)/usual, (shift+c.high)/usual
				moved[i] = three(m.smeared(-plainly, low, high), m.smeared(plainly, low, high))
			} else {
				moved[i] = three(phi(-plainly-shift/usual), phi(plainly-shift/usual))
			}
			return moved[i]
		}
		for i, w := range why {
			look := about
			switch { // two that are listed as a pair move different parts
			case w.a < 0:
				look = strayed
			case m.causes[w.a].moves(p):
				look = of(w.a)
			case m.causes[w.b].moves(p):
				look = of(w.b)
			}
			c.InOrder[i].Chances = look
		}
		checks = append(checks, c)
	}
	return measure.Next(r, checks)
}

// unread tells whether a part could still be read. How the lever is made is not asked.
func unread(d measure.Data, p part) bool { return !d[p].Taken && p != leverRatio }

// plainly is how many of its usual deviations from new a reading is plainly so.
const plainly = 2

// slight is the share of a cause from which it counts in the choice of readings:
// it could not change their order.
const slight = 3e-3

// enough is how many causes have a say in it.
const enough = 12

// smeared is the chance of a figure below z whose mean is evenly likely between
// low and high, by the integral of Phi: z Phi(z) + density(z).
func (m *model) smeared(z, low, high float64) float64 {
	whole := func(z float64) float64 {
		if z > plain {
			return z
		}
		if !(z >= -plain) {
			return 0
		}
		below, dense := m.bell.normal(z)
		return z*below + dense
	}
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
