package transmission

import (
	"math"

	"example.com/benchbook/units/measure"
)

// The figures a cause is weighed by stand in one vector: every part that can be
// read, where the nuts stand, then what the whole clutch does.
const (
	atLift = int(parts) + 1 + iota
	atHand // logarithm of the hand force
	atSlips
	atDrags
	atHeavy
	atSoft
	atKick
	dataLength
)

// outputs are what the whole clutch does, as figures that causes predict: lift
// in mm; logarithm of hand force in newtons; then how far each sign is from
// turning, in the unit of its spread.
const (
	outLift = iota
	outHand
	outSlips
	outDrags
	outHeavy
	outSoft
	outKick
	outs
)

// How surely a rider tells: the spread of the point where a sign is told, and
// the chance that a sign is told wrongly however plain. Common practice, no
// source.
const (
	slipSpread  = 0.10 // of the engine's torque
	dragSpread  = 0.25 // mm of lift
	heavyAt     = 1.25 // times the hand force of a good clutch
	heavySpread = 0.12
	softAt      = 2.0 // mm of cable with nothing moving, beyond the usual
	softSpread  = 1.0
	misheard    = 0.02
)

// model weighs causes for one clutch.
type model struct {
	s         *state
	base      [all]figure // with nothing wrong but ordinary use
	own       [dataLength]float64
	causes    []cause
	usualHand float64 // logarithm of the hand force of a good clutch

	kick figure // what a kick test put the clutch to, N mm

	wholeTaken    bool    // any sign or figure of the whole clutch
	best, elseLog float64 // most that lift and hand force can add to a log likelihood; that of "something else" with its prior
}

// hypothesis is one cause of one clutch, weighed by [measure.Rank].
type hypothesis struct {
	m *model
	c *cause
}

// Over how many equally likely values an open amount is averaged, and over how
// many the turns of nuts that were not read.
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
// over the open amount, and over the turns of nuts that were not read, at
// equally likely values, and over all other parts to first order about their
// means; signs are taken one after the other, each a normal figure cut at an
// uncertain place, with moments matched in between.
func (h hypothesis) LogLikelihood(d measure.Data) float64 {
	m, c := h.m, h.c
	total := 0.0
	var st spread
	var aim figure // of the open amount, before its bounds
	opened := c.low != c.high
	for p := range all {
		b := m.start(c, p)
		taken := p <= nuts && d[p].Taken
		if opened && p == c.open {
			if taken {
				aim = figure{d[p].Value - b.x, math.Hypot(b.u, m.own[p])}
				total += logEven(aim, c.low, c.high)
			}
		} else if taken {
			total += logNormal(d[p].Value, b.x, math.Hypot(b.u, m.own[p]))
			b = update(b, figure{d[p].Value, m.own[p]})
		}
		st.mean[p], st.sd[p] = b.x, b.u
	}
	if !m.wholeTaken {
		return total
	}
	n, far := 1, total+m.best+math.Log(c.prior) < m.elseLog-hopeless
	// a reading much finer than the bounds leaves the amount open by no more than
	// itself, which the slopes take care of
	fine := opened && aim.u > 0 && 4*aim.u < c.high-c.low
	if opened && !far && !fine {
		n = amountNodes
	}
	base := figure{st.mean[c.open], st.sd[c.open]}
	turns, turnsU := st.mean[nuts], st.sd[nuts]
	every := 1
	if turnsU > wideTurns && !far {
		every = nutNodes
	}
	var l [amountNodes * nutNodes]float64
	top, k := math.Inf(-1), 0
	for i := range n {
		if opened {
			f := base
			a := amount(aim, c.low, c.high, (float64(i)+0.5)/float64(n))
			f.x += a
			if aim.u > 0 && base.u > 0 {
				f = update(f, figure{d[c.open].Value, m.own[c.open]})
			}
			if fine {
				f.u = m.own[c.open]
			}
			st.mean[c.open], st.sd[c.open] = f.x, f.u
		}
		for j := range every {
			if every > 1 {
				st.mean[nuts], st.sd[nuts] = turns+turnsU*nutAt[j], 0
			}
			l[k] = m.whole(d, &st)
			if every > 1 {
				l[k] += nutLog[j]
			}
			top = math.Max(top, l[k])
			k++
		}
	}
	sum := 0.0
	for _, x := range l[:k] {
		sum += math.Exp(x - top)
	}
	return total + top + math.Log(sum/float64(n))
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

// spread is a state whose parts are normal and independent.
type spread struct{ mean, sd vector }

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

// whole returns the log likelihood of what the whole clutch does.
func (m *model) whole(d measure.Data, st *spread) float64 {
	var w workings
	w.at(m, &st.mean)
	y := w.out
	var cov [outs][outs]float64
	for p := range all {
		if st.sd[p] == 0 {
			continue
		}
		g := w.slope(p)
		for i := range g {
			g[i] *= st.sd[p]
			for j := range i + 1 {
				cov[i][j] += g[i] * g[j]
			}
		}
	}
	for i := range cov {
		for j := range i {
			cov[j][i] = cov[i][j]
		}
	}
	total := 0.0
	for i, at := range [...]int{atLift, atHand} {
		if !d[at].Taken {
			continue
		}
		variance := cov[i][i] + m.own[at]*m.own[at]
		miss := d[at].Value - y[i]
		total += -0.5 * (miss*miss/variance + math.Log(2*math.Pi*variance))
		learn(&y, &cov, i, miss/variance, 1/variance)
	}
	for i := outSlips; i < outs; i++ {
		at := atSlips + i - outSlips
		if !d[at].Taken {
			continue
		}
		if d[at].Value == crept { // the figure itself is read: at its turning point, within its spread
			variance := cov[i][i] + 1
			total += -0.5 * (y[i]*y[i]/variance + math.Log(2*math.Pi*variance))
			learn(&y, &cov, i, -y[i]/variance, 1/variance)
			continue
		}
		// chance of the answer given: misheard, or the figure past its uncertain turning point
		side := 1.0
		if d[at].Value < 0.5 {
			side = -1
		}
		s := math.Sqrt(cov[i][i] + 1)
		t := side * y[i] / s
		const sure = 1 - 2*misheard
		z := misheard + sure*phi(t)
		slope := sure * density(t) / s
		total += math.Log(z)
		a := slope / z
		learn(&y, &cov, i, side*a, a*a+slope*t/s/z)
	}
	return total
}

// learn moves mean and covariance by what output i told: a is the slope of the
// log likelihood in that output's mean, b what its curvature takes.
func learn(y *[outs]float64, cov *[outs][outs]float64, i int, a, b float64) {
	c := cov[i]
	for j := range y {
		y[j] += c[j] * a
		for k := range y {
			cov[j][k] -= c[j] * c[k] * b
		}
	}
}

func update(b, reading figure) figure {
	if b.u == 0 {
		return b
	}
	if reading.u == 0 {
		return figure{reading.x, 0}
	}
	w := b.u * b.u / (b.u*b.u + reading.u*reading.u)
	return figure{b.x + w*(reading.x-b.x), b.u * math.Sqrt(1-w)}
}

// crept stands in the data for a clutch that just slipped under a kick test.
const crept = 2

// weigh notes what was taken, and how likely it is if nothing listed is wrong.
func (m *model) weigh(d measure.Data) {
	for _, x := range d[atLift:] {
		m.wholeTaken = m.wholeTaken || x.Taken
	}
	for _, at := range [...]int{atLift, atHand} {
		if d[at].Taken {
			m.best -= math.Log(m.own[at] * math.Sqrt(2*math.Pi))
		}
	}
	m.elseLog = elsewhere{m}.LogLikelihood(d) + math.Log(elsePrior)
}

func phi(t float64) float64     { return 0.5 * math.Erfc(-t/math.Sqrt2) }
func density(t float64) float64 { return math.Exp(-t*t/2) / math.Sqrt(2*math.Pi) }

func logNormal(x, mean, u float64) float64 {
	z := (x - mean) / u
	return -z*z/2 - math.Log(u*math.Sqrt(2*math.Pi))
}

// logEven is the log density of a reading whose amount f.x, with deviation f.u,
// is evenly likely between low and high: (Phi - Phi)/(high - low), in its tails by
// the difference of scaled tails so that it does not fall to nothing.
func logEven(f figure, low, high float64) float64 {
	a, b := (low-f.x)/f.u, (high-f.x)/f.u
	return logBetween(a, b) - math.Log(high-low)
}

// logBetween is log(Phi(b) - Phi(a)) for a < b.
func logBetween(a, b float64) float64 {
	if a > 0 {
		a, b = -b, -a // use the side where both are small
	}
	if b < -37 { // Erfc has underflowed: leading term of the tail (Abramowitz and Stegun 26.2.12, from memory)
		return -b*b/2 - math.Log(-b*math.Sqrt(2*math.Pi))
	}
	return math.Log(phi(b) - phi(a))
}

// amount is the open amount below which a part q of its chance lies, after a
// reading f, or evenly between the bounds if f.u is zero.
func amount(f figure, low, high, q float64) float64 {
	if f.u == 0 {
		return low + q*(high-low)
	}
	a, b := (low-f.x)/f.u, (high-f.x)/f.u
	switch { // far outside: it hugs the nearer bound with an exponential tail
	case a > 5:
		return math.Min(low-f.u/a*math.Log1p(-q), high)
	case b < -5:
		return math.Max(high-f.u/b*math.Log(q), low)
	}
	t := phi(a) + q*(phi(b)-phi(a))
	return math.Min(math.Max(f.x-f.u*math.Sqrt2*math.Erfcinv(2*t), low), high)
}
