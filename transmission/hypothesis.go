package transmission

import (
	"math"

	"example.com/benchbook/units/measure"
)

// hypothesis is one cause of one clutch, weighed by [measure.Rank].
type hypothesis struct {
	m *model
	c *cause
}

// LogLikelihood returns the log density of the readings. Those of single parts
// are independent, and the open amount's evidence has a closed form (a normal
// smeared evenly over its bounds). What the whole clutch does is then averaged
// over the open amount, over the turns of nuts that were not read, and over all
// other parts to first order about their means; signs are taken one after the
// other, each a normal figure cut at an uncertain place, with moments matched in
// between.
func (h *hypothesis) LogLikelihood(d measure.Data) float64 {
	m, c := h.m, h.c
	total := m.toldSum
	st := m.known
	opened := c.low != c.high
	for i := range c.fixed {
		if p := c.fixed[i].part; c.fixed[i].by != 0 && !(opened && p == c.open) {
			total += m.move(d, &st, p, m.start(c, p))
		}
	}
	var a amounts
	if opened {
		a = m.amounts(d, c)
		if a.read.u > 0 {
			total += logEven(a.read, c.low, c.high) - m.told[c.open]
		}
	}
	if m.sights.taken == 0 {
		return total
	}
	return total + m.average(&st, &a, total+math.Log(c.prior)-m.elseLog)
}

// move puts a part where a cause starts it and returns what that changes of the
// log density of its reading.
func (m *model) move(d measure.Data, st *spread, p part, b figure) float64 {
	by := 0.0
	if p <= nuts && d[p].Taken {
		by, b = m.tell(d, p, b)
		by -= m.told[p]
	}
	st.mean[p], st.sd[p] = b.x, b.u
	return by
}

// start is a part before it was read, if the cause is true but for its open
// amount.
func (m *model) start(c *cause, p part) figure {
	b := m.base[p]
	b.x += c.shift(p)
	if p == nuts && c.open == nuts && c.low != c.high {
		b.u = knownTurns
	}
	return b
}

// knownTurns is how well the end of the window is known from which wrongly set
// nuts are counted.
const knownTurns = 0.3
