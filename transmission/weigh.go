package transmission

import "math"

// nutPlace is where nuts that were not read are looked at: deviations from where they
// should be, how much it counts, and the deviation left there. Together the places are
// normal, to about a hundredth in the chance of a figure below any. Both tables are read only.
type nutPlace struct{ at, weight float64 }

const (
	leftOfThree = 0.72
	leftOfFour  = 0.617
)

var (
	threePlaces = [...]nutPlace{{-1.3, 0.1425}, {0, 0.715}, {1.3, 0.1425}}
	fourPlaces  = [...]nutPlace{{-1.65, 0.0655}, {-0.55, 0.4345}, {0.55, 0.4345}, {1.65, 0.0655}}
)

// wideTurns is the spread of nuts from which they are looked at place by place: a
// turn bends the lift, which has corners at coil bind and at no lift.
const wideTurns = 0.5

// sum adds up likelihoods given as like times exp(-miss/2).
type sum struct{ of, least float64 }

func newSum() sum { return sum{least: math.Inf(1)} }

func (s *sum) add(like, miss float64) {
	if miss < s.least { // count from the nearest
		if s.of > 0 {
			s.of *= math.Exp((miss - s.least) / 2)
		}
		s.least = miss
	} else if miss > s.least {
		like *= math.Exp((s.least - miss) / 2)
	}
	s.of += like
}

func (s *sum) log() float64 { return math.Log(s.of) - s.least/2 }

// average returns the log likelihood of what was seen of the whole clutch if it is
// as st and the ways of one cause or two leave it, over what those leave open and
// over nuts that were not read. What is open is looked at in so many pieces at most; if
// none, there is one look at all that, nuts too. Figures that miss by more than far do not
// matter.
func (m *model) average(st *spread, a, b *way, most int, far float64) float64 {
	total := newSum()
	turns := figure{st.mean[nuts], st.sd[nuts]}
	if most == 0 || turns.u <= wideTurns || a.opens(nuts) || b != nil && b.opens(nuts) {
		m.levels(st, a, b, 1, most, far, &total)
		return total.log()
	}
	places, left := threePlaces[:], leftOfThree
	if m.figures { // they tell finer
		places, left = fourPlaces[:], leftOfFour
	}
	if b != nil {
		most = 1
	}
	for _, p := range places {
		st.mean[nuts], st.sd[nuts] = turns.x+turns.u*p.at, turns.u*left
		m.levels(st, a, b, p.weight, most, far, &total)
	}
	return total.log()
}

// levels adds what was seen at every level of what is open.
func (m *model) levels(st *spread, a, b *way, weight float64, most int, far float64, total *sum) {
	most = max(most, 1)
	na, nb := min(a.level, most), 0
	if b != nil {
		nb = min(b.level, most)
	}
	weight /= float64(max(na, 1) * max(nb, 1))
	for i := range max(na, 1) {
		if na > 0 {
			a.at(st, a.piece(i, na))
		}
		for j := range max(nb, 1) {
			if nb > 0 {
				b.at(st, b.piece(j, nb))
			}
			like, miss := m.whole(st, &m.sights, far)
			total.add(like*weight, miss)
			if m.still > 0 {
				like, miss = m.whole(st, &m.stuck, far)
				total.add(like*weight*m.still, miss)
			}
		}
	}
}

// opens reports whether what is open is p.
func (w *way) opens(p part) bool { return w.level > 0 && w.open == p }

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
