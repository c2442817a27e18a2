package transmission

import (
	"math"
	"sync"

	"example.com/benchbook/units/measure"
)

// amounts are those a cause leaves open, evenly likely between bounds. The zero
// amounts are none.
type amounts struct {
	c    *cause
	base figure // the part without the amount
	read figure // the amount as read, before its bounds; no uncertainty if it was not
	told figure // the reading of the part itself
	fine bool   // the reading is much finer than the bounds
}

func (m *model) amounts(d measure.Data, c *cause) amounts {
	a := amounts{c: c, base: m.start(c, c.open)}
	if c.open <= nuts && d[c.open].Taken {
		a.told = figure{d[c.open].Value, m.own[c.open]}
		a.read = figure{a.told.x - a.base.x, math.Hypot(a.base.u, a.told.u)}
		a.fine = 4*a.read.u < c.high-c.low
	}
	return a
}

// put sets the part to the amount below which a share of its chance lies.
func (a *amounts) put(st *spread, share float64) {
	f := figure{a.base.x + amount(a.read, a.c.low, a.c.high, share), a.base.u}
	if a.read.u > 0 {
		f = update(f, a.told)
	}
	if a.fine { // it is left open by no more than its reading, which the slopes take care of
		f.u = a.told.u
	}
	st.mean[a.c.open], st.sd[a.c.open] = f.x, f.u
}

// node is one place at which the whole clutch is looked at: a share of the open
// amount, deviations of the nuts, and how much it counts.
type node struct{ share, turns, weight float64 }

// spaced returns n nodes evenly over three deviations of the nuts to either side,
// the shares in steps of the golden ratio, which leaves the gaps between them as
// even as can be. Both vary at once, so that few nodes do for the two.
func spaced(n int) []node {
	const golden = 0.6180339887498949
	list := make([]node, n)
	sum := 0.0
	for i := range list {
		t := -3 + 6*(float64(i)+0.5)/float64(n)
		_, share := math.Modf(golden * float64(i+1))
		list[i] = node{share, t, math.Exp(-t * t / 2)}
		sum += list[i].weight
	}
	for i := range list {
		list[i].weight /= sum
	}
	return list
}

// shares returns n nodes of the amount alone.
func shares(n int) []node {
	list := make([]node, n)
	for i := range list {
		list[i] = node{share: (float64(i) + 0.5) / float64(n), weight: 1 / float64(n)}
	}
	return list
}

// The nodes, put together once: where amount and nuts are open, where only one of
// them is, and the many for causes of which few nodes count.
var (
	nodes      = sync.OnceValue(func() []node { return spaced(16) })
	manyNodes  = sync.OnceValue(func() []node { return spaced(89) })
	shareNodes = sync.OnceValue(func() []node { return shares(6) })
	oneNode    = sync.OnceValue(func() []node { return shares(1) })
)

// wideTurns is the spread of nuts from which they are averaged over node by
// node: a turn bends the lift, which has corners at coil bind and at no lift.
const wideTurns = 0.5

// average returns the log likelihood of what was seen of the whole clutch, over
// the open amount and the turns of nuts that were not read. ahead is how far the
// cause is ahead of "something else" by the readings of its parts, in natural
// logarithms: one whose share cannot matter is looked at in one place only.
func (m *model) average(st *spread, a *amounts, ahead float64) float64 {
	turns := figure{st.mean[nuts], st.sd[nuts]}
	if a.c != nil && a.c.open == nuts {
		turns = figure{} // the amount itself
	}
	wide := turns.u > wideTurns
	over := func(list []node) (log, count float64) {
		sum, squares, least := 0.0, 0.0, math.Inf(1)
		for i := range list {
			n := &list[i]
			if a.c != nil {
				a.put(st, n.share)
			}
			if wide {
				st.mean[nuts], st.sd[nuts] = turns.x+turns.u*n.turns, 0
			}
			like, miss := m.whole(st)
			like *= n.weight
			if miss < least { // count from the nearest
				by := 0.0
				if i > 0 {
					by = math.Exp((miss - least) / 2)
				}
				sum, squares, least = sum*by, squares*by*by, miss
			} else if miss > least {
				like *= math.Exp((least - miss) / 2)
			}
			sum += like
			squares += like * like
		}
		return math.Log(sum) - least/2, sum * sum / squares
	}
	switch {
	case ahead+m.most < -hopeless:
		wide = false
		log, _ := over(oneNode())
		return log
	case wide:
		log, count := over(nodes())
		if count < fewNodes && ahead+log > -slightly {
			log, _ = over(manyNodes())
		}
		return log
	case a.c != nil && !a.fine:
		log, _ := over(shareNodes())
		return log
	}
	log, _ := over(oneNode())
	return log
}

// fewNodes is the number of nodes that carry the sum, counted as its square over
// the sum of squares, below which it is taken over many.
const fewNodes = 2

// How far behind "something else", in natural logarithms, the share of a cause
// does not matter, and from where it matters little: 1/3000 and 1/150 of its share.
const (
	hopeless = 8
	slightly = 5
)
