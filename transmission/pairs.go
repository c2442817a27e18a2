package transmission

import (
	"math"
	"sync"

	"example.com/benchbook/units/measure"
)

// twoTogether is how often two causes are at work at once, as part of all
// clutches looked at: common practice, no source.
const twoTogether = 0.1

// How many pairs are looked at closely at most, how far behind the likeliest cause,
// in natural logarithms, one may be by a rough look to be among them, from where it
// does not count at all, and from what share it is listed by itself.
const (
	closely   = 12
	nearly    = 5.5
	noMatter  = 9.0
	worthName = 0.004
)

// duo is two causes at once.
type duo struct {
	a, b  uint8
	prior float64 // logarithm
	log   float64 // likelihood
}

// rough is the logarithm of the weight of two causes by a rough look.
type rough struct {
	score float64
	a, b  uint8
}

// pairs weighs causes two at a time.
type pairs struct {
	near    [closely]duo // those looked at closely
	nearest [closely]rough
	count   int
	left    float64 // their likelihood times prior, by rough looks, in parts of exp(best)
	best    float64
}

// view is what a way of the parts makes of each thing seen of the whole clutch: the
// figure its sight compares, with its variance.
type view [dataLength - atLift]glance

type glance struct{ x, variance, root, inverse float64 } // with the root of the variance, and the inverse of that

func (m *model) view(st *spread) (v view) {
	var w workings
	w.at(m.s, &st.mean)
	y := effect{onLift: w.rise, onTorque: w.torque, onIdle: m.s.idle(&st.mean)}
	if m.weighed {
		y[onHand] = math.Log(w.hand)
	}
	var c covariance
	w.widen(m.s, st, &c)
	for i := range m.sights.taken {
		t := &m.sights.list[i]
		v[i].x, v[i].variance = t.look(m.s, st, &y, &c)
		v[i].root = math.Sqrt(v[i].variance)
		v[i].inverse = 1 / v[i].root
	}
	return v
}

// together weighs all pairs of causes that move different parts.
//
// What the parts' readings say of a pair is the sum of what they say of either
// cause. What was seen of the whole clutch is first reckoned as if what the two do
// to it simply added up, which sorts them; those in front are then looked at closely,
// and what the others hold together is put right by what that made of the former.
func (m *model) together(d measure.Data, ways *[causeCount]way, factor, best float64) (p pairs) {
	p.best = best
	usual := m.view(&m.known)
	var views [causeCount]view
	var weight [causeCount]float64
	heaviest := math.Inf(-1)
	for i := 1; i < causeCount; i++ {
		weight[i] = m.logPrior[i] + ways[i].log
		heaviest = max(heaviest, weight[i])
	}
	logFactor := math.Log(factor)
	always := logFactor + m.toldSum
	for i := 1; i < causeCount; i++ {
		if always+weight[i]+heaviest+m.most < best-noMatter {
			weight[i] = math.Inf(-1) // with no other could it matter
			continue
		}
		st := m.known
		ways[i].put(&st)
		if ways[i].level > 0 {
			ways[i].at(&st, ways[i].whole)
		}
		views[i] = m.view(&st).beside(&usual)
	}
	apart := apart()
	for i := 1; i < causeCount; i++ {
		for j := i + 1; j < causeCount; j++ {
			score := always + weight[i] + weight[j]
			if !apart[i][j] || score+m.most < best-noMatter {
				continue
			}
			one, other := &views[i], &views[j]
			for k := range m.sights.list[:m.sights.taken] {
				if side := m.sights.list[k].side; side != 0 {
					x := usual[k].x + one[k].x + other[k].x
					score += m.bell.told(side * x * one[k].root * other[k].root * usual[k].inverse)
				} else {
					score += m.roughly(k, &usual[k], &one[k], &other[k])
				}
			}
			p.add(rough{score, uint8(i), uint8(j)})
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
		n.log = m.toldSum + one.log + other.log
		if m.sights.taken > 0 {
			n.log += m.average(&st, one, other, false)
		}
		n.prior = logFactor + m.logPrior[n.a] + m.logPrior[n.b]
		before += math.Exp(r.score - best)
		after += math.Exp(n.prior + n.log - best)
	}
	if before > 0 {
		p.left *= min(max(after/before, 0.2), 5)
	}
	return p
}

// beside returns what v adds to the usual: to the figures, and by what factor to the
// inverse of their deviations.
func (v view) beside(usual *view) view {
	for k := range v {
		v[k].x -= usual[k].x
		v[k].variance -= usual[k].variance
		if v[k].root > 0 {
			v[k].root = usual[k].root / v[k].root
		}
	}
	return v
}

// roughly is the log likelihood of a figure seen by sight k, if what two causes add to
// the usual adds up.
func (m *model) roughly(k int, usual, one, other *glance) float64 {
	t := &m.sights.list[k]
	x := usual.x + one.x + other.x
	off := mayBeOff * (math.Abs(one.x) + math.Abs(other.x))
	v := max(usual.variance+one.variance+other.variance, t.variance) + off*off
	fits := -x*x/(2*v) - 0.5*math.Log(2*math.Pi*v)
	if t.on == onLift && m.still > 0 { // or the plate does not stir
		fits = max(fits, math.Log(m.still)+m.bell.told((t.offset-x)/math.Sqrt(v)))
	}
	return fits
}

// mayBeOff is how far off that sum may be, as part of what either adds.
const mayBeOff = 0.15

// add keeps the pair among the nearest, or adds it to the others.
func (p *pairs) add(d rough) {
	if d.score < p.best-nearly {
		p.leave(d.score)
		return
	}
	at := p.count
	if p.count < closely {
		p.count++
	} else if at--; d.score <= p.nearest[at].score {
		p.leave(d.score)
		return
	} else {
		p.leave(p.nearest[at].score)
	}
	for ; at > 0 && p.nearest[at-1].score < d.score; at-- {
		p.nearest[at] = p.nearest[at-1]
	}
	p.nearest[at] = d
}

func (p *pairs) leave(score float64) {
	if score > p.best-noMatter {
		p.left += math.Exp(score - p.best)
	}
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
