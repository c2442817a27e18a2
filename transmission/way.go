package transmission

import (
	"math"

	"example.com/benchbook/units/measure"
)

// way is how a cause leaves the parts of a clutch, their readings taken into
// account.
type way struct {
	log    float64 // of the density of those readings, beside that with nothing wrong
	moved  [len(cause{}.fixed)]seat
	moves  int
	open   part
	levels [mostLevels]figure // of the open part, equally likely
	level  int                // how many; 0 if nothing is open
	whole  figure             // all levels in one
}

// seat is a part put somewhere else.
type seat struct {
	part
	figure
}

// mostLevels is in how many pieces an open amount is looked at: within a piece
// the clutch is taken as straight.
const mostLevels = 4

// way works out how c leaves the parts.
func (m *model) way(d measure.Data, c *cause) (w way) {
	opened := c.low != c.high
	for i := range c.fixed {
		p := c.fixed[i].part
		if c.fixed[i].by == 0 || opened && p == c.open {
			continue
		}
		b := m.start(c, p)
		if p <= nuts && d[p].Taken {
			var log float64
			log, b = m.tell(d, p, b)
			w.log += log - m.told[p]
		}
		w.moved[w.moves] = seat{p, b}
		w.moves++
	}
	if opened {
		w.open = c.open
		m.pieces(d, c, &w)
	}
	return w
}

// pieces puts the amount that c leaves open into levels.
func (m *model) pieces(d measure.Data, c *cause, w *way) {
	base := m.start(c, c.open)
	span := c.high - c.low
	if c.open > nuts || !d[c.open].Taken {
		mid := base.x + (c.low+c.high)/2
		w.whole = figure{mid, math.Sqrt(base.u*base.u + span*span/12)}
		w.level = m.fineness
		step := span / float64(w.level)
		u := math.Sqrt(base.u*base.u + step*step/12)
		for i := range w.levels[:w.level] {
			w.levels[i] = figure{base.x + c.low + (float64(i)+0.5)*step, u}
		}
		return
	}
	told := figure{d[c.open].Value, m.own[c.open]}
	read := figure{told.x - base.x, math.Hypot(base.u, told.u)} // the amount as read, before its bounds
	w.log += logEven(read, c.low, c.high) - m.told[c.open]
	settled := func(amount, u float64) figure {
		f := update(figure{base.x + amount, base.u}, told)
		if base.u > 0 { // the amount moves it by what the reading leaves of it
			u *= f.u * f.u / (base.u * base.u)
		}
		return figure{f.x, math.Hypot(f.u, u)}
	}
	mid := amount(read, c.low, c.high, 0.5)
	if 4*read.u < span { // left open by no more than its reading
		u := told.u
		w.level, w.whole = 1, figure{settled(mid, 0).x, u}
		w.levels[0] = w.whole
		return
	}
	low := c.low
	w.level = m.fineness
	for i := range w.levels[:w.level] {
		high := c.high
		if i < w.level-1 {
			high = amount(read, c.low, c.high, float64(i+1)/float64(w.level))
		}
		w.levels[i] = settled((low+high)/2, (high-low)/math.Sqrt(12))
		low = high
	}
	w.whole = settled(mid, span/math.Sqrt(12))
}

// put leaves the parts as w does, but for what is open.
func (w *way) put(st *spread) {
	for _, s := range w.moved[:w.moves] {
		st.mean[s.part], st.sd[s.part] = s.x, s.u
	}
}

// at puts what is open where f is.
func (w *way) at(st *spread, f figure) { st.mean[w.open], st.sd[w.open] = f.x, f.u }

// piece is what is open in the i-th of n even parts: a level, two of them, or all.
func (w *way) piece(i, n int) figure {
	switch {
	case n == w.level:
		return w.levels[i]
	case n == 1:
		return w.whole
	}
	a, b := w.levels[2*i], w.levels[2*i+1]
	half := (b.x - a.x) / 2
	return figure{a.x + half, math.Sqrt((a.u*a.u+b.u*b.u)/2 + half*half)}
}
