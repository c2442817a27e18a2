package transmission

import (
	"math"
	"sync"

	"example.com/benchbook/units/measure"
)

// twoTogether is how often two causes are at work at once, as part of all
// clutches looked at: common practice, no source.
const twoTogether = 0.1

// How many pairs are looked at closely at most, from what part of the likeliest cause
// on one may be by a rough look to be among them, how far behind it, in natural
// logarithms, it does not count at all, and from what share it is listed by itself.
const (
	closely   = 12
	nearly    = 0.004
	noMatter  = -9.0
	worthName = 0.004
)

// duo is two causes at once.
type duo struct {
	a, b  uint8
	prior float64 // logarithm
	log   float64 // likelihood
	part  float64 // both together, in parts of the likeliest cause
}

// rough is the weight of two causes by a rough look, in the same parts.
type rough struct {
	part float64
	a, b uint8
}

// pairs weighs causes two at a time.
type pairs struct {
	near    [closely]duo // those looked at closely
	nearest [closely]rough
	count   int
	left    float64 // all others by rough looks, in the same parts
}

// view is what a way of the parts makes of each thing seen of the whole clutch: the
// figure its sight compares, with its variance. Beside the usual it is what is added to
// those; of a sign the figure is in usual deviations towards the answer given, and
// shrink is what the deviation divides it by.
type view [dataLength - atLift]glance

type glance struct{ x, variance, shrink float64 }

func (m *model) view(st *spread, v *view) {
	var w workings
	m.hold.take(m.s, st)
	w.holding(m.s, &st.mean, m.hold.per)
	y := effect{onLift: w.rise, onTorque: w.torque, onIdle: m.s.idle(&st.mean)}
	if m.weighed {
		y[onHand] = math.Log(w.hand)
	}
	var c covariance
	w.widen(m.s, st, m.hold.variance, &c)
	for i := range m.sights.taken {
		v[i].x, v[i].variance = m.sights.list[i].look(m.s, st, &y, &c)
	}
}

// beside puts v beside the usual.
func (m *model) beside(v, usual *view) {
	for k := range m.sights.list[:m.sights.taken] {
		g, u := &v[k], &usual[k]
		g.x -= u.x
		if side := m.sights.list[k].side; side != 0 {
			g.x *= side / math.Sqrt(u.variance)
			g.shrink = math.Sqrt(u.variance / g.variance)
		} else {
			g.variance -= u.variance
		}
	}
}

// together weighs all pairs of causes that move different parts.
//
// What the parts' readings say of a pair is the sum of what they say of either
// cause. What was seen of the whole clutch is first reckoned as if what the two do
// to it simply added up, which sorts them; those in front are then looked at closely,
// and what the others hold together is put right by what that made of the former.
// Best is the logarithm of the weight of the likeliest cause.
func (m *model) together(d measure.Data, ways *[causeCount]way, factor, best float64) (p pairs) {
	var usual view
	m.view(&m.known, &usual)
	var views [causeCount]view
	var weight [causeCount]float64 // logarithms
	heaviest := math.Inf(-1)
	for i := 1; i < causeCount; i++ {
		weight[i] = m.logPrior[i] + ways[i].log
		heaviest = max(heaviest, weight[i])
	}
	logFactor := math.Log(factor)
	always := logFactor + m.toldSum - best
	for i := 1; i < causeCount; i++ {
		if always+weight[i]+heaviest+m.most < noMatter {
			weight[i] = math.Inf(-1) // with no other could it matter
			continue
		}
		st := m.known
		ways[i].put(&st)
		if ways[i].level > 0 {
			ways[i].at(&st, ways[i].whole)
		}
		m.view(&st, &views[i])
		m.beside(&views[i], &usual)
	}
	for k := range m.sights.list[:m.sights.taken] {
		if side := m.sights.list[k].side; side != 0 {
			usual[k].x *= side / math.Sqrt(usual[k].variance)
		}
	}
	apart := apart()
	for i := 1; i < causeCount; i++ {
		for j := i + 1; j < causeCount; j++ {
			log := always + weight[i] + weight[j]
			if !apart[i][j] || log+m.most < noMatter {
				continue
			}
			part := 1.0 // beside exp(log)
			one, other := &views[i], &views[j]
			for k := range m.sights.list[:m.sights.taken] {
				if m.sights.list[k].side != 0 {
					part *= m.bell.told((usual[k].x + one[k].x + other[k].x) * one[k].shrink * other[k].shrink)
					continue
				}
				like, miss := m.roughly(k, &usual[k], &one[k], &other[k])
				part *= like
				log -= miss / 2
			}
			p.add(rough{part * math.Exp(log), uint8(i), uint8(j)})
		}
	}
	before, after := 0.0, 0.0
	for i := range p.near[:p.count] {
		n, r := &p.near[i], &p.nearest[i]
		n.a, n.b = r.a, r.b
		one, other := &ways[n.a], &ways[n.b]
		st := m.known
		one.put(&st)
		other.put(&st)
		n.prior = logFactor + m.logPrior[n.a] + m.logPrior[n.b]
		n.log = m.toldSum + one.log + other.log
		if m.sights.taken > 0 {
			most := mostLevels
			if r.part < fromWhich {
				most = 2
			}
			n.log += m.average(&st, one, other, most, 2*(n.prior+n.log-best+m.most+hopeless))
		}
		n.part = math.Exp(n.prior + n.log - best)
		before += r.part
		after += n.part
	}
	if before > 0 {
		p.left *= min(max(after/before, 0.2), 5)
	}
	return p
}

// roughly is the likelihood of a figure seen by sight k, like times exp(-miss/2), if
// what two causes add to the usual adds up.
func (m *model) roughly(k int, usual, one, other *glance) (like, miss float64) {
	t := &m.sights.list[k]
	x := usual.x + one.x + other.x
	off := mayBeOff * (math.Abs(one.x) + math.Abs(other.x))
	r := 1 / math.Sqrt(max(usual.variance+one.variance+other.variance, t.variance)+off*off)
	z := x * r
	like, miss = r/math.Sqrt(2*math.Pi), z*z
	if t.on == onLift && m.still > 0 { // or the plate does not stir
		if stuck := m.still * m.bell.told((t.offset-x)*r); stuck > like*math.Exp(-miss/2) {
			return stuck, 0
		}
	}
	return like, miss
}

// mayBeOff is how far off that sum may be, as part of what either adds.
const mayBeOff = 0.15

// add keeps the pair among the nearest, or adds it to the others.
func (p *pairs) add(d rough) {
	if d.part < nearly {
		p.left += d.part
		return
	}
	at := p.count
	if p.count < closely {
		p.count++
	} else if at--; d.part <= p.nearest[at].part {
		p.left += d.part
		return
	} else {
		p.left += p.nearest[at].part
	}
	for ; at > 0 && p.nearest[at-1].part < d.part; at-- {
		p.nearest[at] = p.nearest[at-1]
	}
	p.nearest[at] = d
}

// apart tells which causes may be weighed together: those that move different parts.
// Two that move the same one cannot be told from one that moves it further.
var apart = sync.OnceValue(func() *[causeCount][causeCount]bool {
	s := state{free: 1, plate: 1}
	for p := range all {
		s.fresh[p] = 10 // anything that shows which parts move
	}
	list := s.causes(0, 0, 0)
	var ok [causeCount][causeCount]bool
	for i := range list {
		for j := range list {
			ok[i][j] = i != sound && j != sound && i != j && !list[i].meets(&list[j])
		}
	}
	return &ok
})

// meets reports whether both move the same part.
func (c *cause) meets(o *cause) bool {
	for p := range all {
		if c.moves(p) && o.moves(p) {
			return true
		}
	}
	return false
}

func (c *cause) moves(p part) bool {
	return c.shift(p) != 0 || c.low != c.high && c.open == p
}

const fromWhich = 0.1
