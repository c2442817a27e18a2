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

// Over how many equally likely values an open amount is averaged, and over how
// many the turns of nuts that were not read. Evenly spread nodes serve the amount
// better than Gauss's, since what the clutch does has corners.
const (
	amountNodes = 6
	nutNodes    = 7
)

// hopeless is how far, in natural logarithms, a cause must be behind "something
// else" by its parts alone for its share not to matter: one node then does.
const hopeless = 14

// LogLikelihood returns the log density of the readings. Those of single parts
// are independent, and the open amount's evidence has a closed form (a normal
// smeared evenly over its bounds). What the whole clutch does is then averaged
// over the open amount, over the turns of nuts that were not read, and over all
// other parts to first order about their means; signs are taken one after the
// other, each a normal figure cut at an uncertain place, with moments matched in
// between.
func (h hypothesis) LogLikelihood(d measure.Data) float64 {
	m, c := h.m, h.c
	total := m.toldSum
	st := m.known
	opened := c.low != c.high
	for i := range c.fixed {
		if p := c.fixed[i].part; c.fixed[i].by != 0 && !(opened && p == c.open) {
			total += m.move(d, &st, p, m.start(c, p))
		}
	}
	if !opened {
		if m.sights.taken == 0 {
			return total
		}
		return total + m.overNuts(&st, m.hopeless(c, total))
	}
	base := m.start(c, c.open)
	var read figure // the open amount as read, before its bounds
	if c.open <= nuts && d[c.open].Taken {
		read = figure{d[c.open].Value - base.x, math.Hypot(base.u, m.own[c.open])}
		total += logEven(read, c.low, c.high) - m.told[c.open]
	}
	if m.sights.taken == 0 {
		return total
	}
	far := m.hopeless(c, total)
	// a reading much finer than the bounds leaves the amount open by no more than
	// itself, which the slopes take care of
	fine := read.u > 0 && 4*read.u < c.high-c.low
	at := func(share float64) float64 {
		f := figure{base.x + amount(read, c.low, c.high, share), base.u}
		if read.u > 0 {
			f = update(f, figure{d[c.open].Value, m.own[c.open]})
		}
		if fine {
			f.u = m.own[c.open]
		}
		st.mean[c.open], st.sd[c.open] = f.x, f.u
		return m.overNuts(&st, far)
	}
	if far || fine {
		return total + at(0.5)
	}
	var l [amountNodes]float64
	for i := range l {
		l[i] = at((float64(i) + 0.5) / amountNodes)
	}
	return total + logSum(l[:]) - math.Log(amountNodes)
}

// hopeless reports whether a cause is too far behind "something else", by the
// readings of its parts and the most that the rest can add, for its share to matter.
func (m *model) hopeless(c *cause, total float64) bool {
	return total+m.most+math.Log(c.prior) < m.elseLog-hopeless
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

// overNuts averages what the whole clutch does over the turns of nuts that were
// not read.
func (m *model) overNuts(st *spread, far bool) float64 {
	turns := figure{st.mean[nuts], st.sd[nuts]}
	if far || turns.u <= wideTurns {
		return m.whole(st)
	}
	var l [nutNodes]float64
	for i := range l {
		st.mean[nuts], st.sd[nuts] = turns.x+turns.u*nutAt[i], 0
		l[i] = nutLog[i] + m.whole(st)
	}
	st.mean[nuts], st.sd[nuts] = turns.x, turns.u
	return logSum(l[:])
}

// wideTurns is the spread of nuts from which they are averaged over node by
// node: a turn bends the lift, which has corners at coil bind and at no lift.
const wideTurns = 0.5

// Nodes of the seven-point Gauss-Hermite rule for a standard normal, and the
// logarithms of their weights (Abramowitz and Stegun, table 25.10, from memory:
// nodes times root two, weights over root pi; a test checks its moments).
var (
	nutAt  = [nutNodes]float64{-3.7504397177257425, -2.3667594107345416, -1.1544053947399682, 0, 1.1544053947399682, 2.3667594107345416, 3.7504397177257425}
	nutLog = [nutNodes]float64{math.Log(0.00054826885597221875), math.Log(0.030757123967586491), math.Log(0.24012317860501272), math.Log(0.45714285714285713), math.Log(0.24012317860501272), math.Log(0.030757123967586491), math.Log(0.00054826885597221875)}
)

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
