package transmission

import (
	"math"

	"example.com/benchbook/units/measure"
)

// outlook is what one expects of a reading: the chances that it is plainly below new,
// about new, and plainly above.
type outlook [3]float64

func newOutlook(low, high float64) outlook {
	low = min(max(low, 0), 1)
	mid := min(max(high-low, 0), 1-low)
	return outlook{low, mid, max(1-low-mid, 0)}
}

// next ranks the readings not yet taken by what they are expected to tell of the
// causes that count; the rest has no say.
func (m *model) next(d measure.Data, r measure.Ranking) []measure.Gain {
	some := 0
	var room [enough]members
	for some < min(len(r.Odds), enough) && r.Odds[some].Share >= slight {
		at, listed := index()[r.Odds[some].Key]
		if !listed {
			at = members{nobody, nobody}
		}
		room[some] = at
		some++
	}
	return m.tellers(d, r.Odds[:some], room[:some])
}

// tellers gathers, reading by reading, the causes that expect the same of it. Most
// leave a part alone.
func (m *model) tellers(d measure.Data, odds []measure.Odds, who []members) []measure.Gain {
	var told [parts + 1]expected
	count := 0
	far := m.bell.phi(-plainly)
	for p := range nuts + 1 {
		if d[p].Taken || p == leverRatio { // how the lever is made is not asked
			continue
		}
		var room [2 + enough]class
		classes := append(room[:0], class{outlook: newOutlook(far, 1-far)}, class{outlook: m.strayed(p)})
		for i, w := range who {
			share := odds[i].Share
			switch { // two that are listed as a pair move different parts
			case w.a == nobody:
				classes[1].share += share
			case m.causes[w.a].moves(p):
				classes = append(classes, class{share, m.moved(p, w.a)})
			case m.causes[w.b].moves(p):
				classes = append(classes, class{share, m.moved(p, w.b)})
			default:
				classes[0].share += share
			}
		}
		told[count] = newExpected(p, classes)
		count++
	}
	return inOrder(told[:count])
}

// usualReading is by how much a reading of a part differs from new with nothing wrong,
// and how far something not listed may move it.
func (m *model) usualReading(p part) (usual, span float64) {
	own, span := finestTurn, elseTurns
	if p < parts {
		own, span = rules[p].finest*2, rules[p].span
	}
	return math.Hypot(m.base[p].u, own), span
}

// strayed is what one expects with something not listed wrong: most figures are as
// ever, some far off.
func (m *model) strayed(p part) outlook {
	usual, span := m.usualReading(p)
	low := (1-strays)*m.bell.phi(-plainly) + strays*m.bell.phi(-plainly*usual/math.Hypot(usual, span))
	return newOutlook(low, 1-low)
}

// moved is what one expects of a part that a cause moves.
func (m *model) moved(p part, by int) outlook {
	c := &m.causes[by]
	usual, _ := m.usualReading(p)
	shift := c.shift(p)
	if c.low != c.high && c.open == p {
		low, high := (shift+c.low)/usual, (shift+c.high)/usual
		return newOutlook(m.smeared(-plainly, low, high), m.smeared(plainly, low, high))
	}
	return newOutlook(m.bell.phi(-plainly-shift/usual), m.bell.phi(plainly-shift/usual))
}

// plainly is how many of its usual deviations from new a reading is plainly so.
const plainly = 2

// nobody stands for no cause on the list.
const nobody = -1

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
