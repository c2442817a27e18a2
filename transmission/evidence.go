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
}

// predict works out what the clutch does.
func (m *model) predict(v *vector) (o [outs]float64) {
	s := m.s
	rate := s.count * v[springRate]
	x := s.off(v) + v[nuts]*s.pitch
	clamp := rate * math.Max(x, 0)
	give := s.give(v)
	held := math.Min(v[preload]/give, clamp) // what the rod carries with the hand off
	torque := v[friction] * v[faces] * s.radius * (clamp - held)
	travel := s.liftAt(v, x)
	lift := math.Max(math.Min(travel, s.flush+v[wear]-v[nuts]*s.pitch-s.shortest), 0)
	load := rate * math.Max(x+lift, 0)
	if travel <= 0 {
		load = math.Max(s.spare(v, 0), 0) / give
	}
	hand := load / (v[leverRatio] * v[trainRatio] * s.efficiency * v[cableEfficiency])
	o[outLift] = lift
	o[outHand] = math.Log(math.Max(hand, 1)) // a newton is nothing at the hand
	o[outSlips] = (s.engine - torque) / s.engine / slipSpread
	o[outDrags] = (s.lift(v) - lift) / dragSpread
	o[outHeavy] = (o[outHand] - m.usualHand - math.Log(heavyAt)) / heavySpread
	loose := v[trainRatio] * (v[hubNutBack]*s.hubPitch + v[slack] + v[rodPlay] - s.fresh[rodPlay])
	o[outSoft] = (loose - softAt) / softSpread
	return o
}

// hypothesis is one cause of one clutch, weighed by [measure.Rank].
type hypothesis struct {
	m *model
	c *cause
}

// nodes is over how many equally likely amounts an open amount is averaged.
const nodes = 12

// LogLikelihood returns the log density of the readings. Those of single parts
// are independent, and the open amount's evidence has a closed form (a normal
// smeared evenly over its bounds). What the whole clutch does is then averaged
// over the amount, at equally likely amounts, and over the other parts to second
// order about their means; signs are taken one after the other, each a normal
// figure cut at an uncertain place, with moments matched in between.
func (h hypothesis) LogLikelihood(d measure.Data) float64 {
	m, c := h.m, h.c
	total := 0.0
	var mean, sd vector
	var aim figure // of the open amount, before its bounds
	opened := c.low != c.high
	for p := range all {
		b := m.base[p]
		b.x += c.shift(p)
		taken := p <= nuts && d[p].Taken
		if opened && p == c.open {
			if taken {
				aim = figure{d[p].Value - b.x, math.Hypot(b.u, m.own[p])}
				total += logEven(aim, c.low, c.high)
			}
			mean[p], sd[p] = b.x, b.u
			continue
		}
		if taken {
			total += logNormal(d[p].Value, b.x, math.Hypot(b.u, m.own[p]))
			b = update(b, figure{d[p].Value, m.own[p]})
		}
		mean[p], sd[p] = b.x, b.u
	}
	if !anyTaken(d[atLift:]) {
		return total
	}
	if !opened {
		return total + m.whole(d, &mean, &sd)
	}
	base := figure{mean[c.open], sd[c.open]}
	var l [nodes]float64
	top := math.Inf(-1)
	for k := range l {
		a := amount(aim, c.low, c.high, (float64(k)+0.5)/nodes)
		f := figure{base.x + a, base.u}
		if aim.u > 0 && base.u > 0 {
			f = update(f, figure{d[c.open].Value, m.own[c.open]})
		}
		mean[c.open], sd[c.open] = f.x, f.u
		l[k] = m.whole(d, &mean, &sd)
		top = math.Max(top, l[k])
	}
	sum := 0.0
	for _, x := range l {
		sum += math.Exp(x - top)
	}
	return total + top + math.Log(sum/nodes)
}

// whole returns the log likelihood of what the whole clutch does, its parts
// normal and independent with the given means and deviations.
func (m *model) whole(d measure.Data, mean, sd *vector) float64 {
	y := m.predict(mean)
	var cov [outs][outs]float64
	mid := y
	for p := range all {
		if sd[p] == 0 {
			continue
		}
		v := *mean
		v[p] = m.within(p, mean[p]+sd[p])
		up := m.predict(&v)
		v[p] = m.within(p, mean[p]-sd[p])
		down := m.predict(&v)
		var g [outs]float64
		for i := range g {
			g[i] = (up[i] - down[i]) / 2
			y[i] += (up[i]+down[i])/2 - mid[i]
		}
		for i := range g {
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
		// chance of the answer given: misheard, or the figure past its uncertain turning point
		side := 1.0
		if d[at].Value < 0.5 {
			side = -1
		}
		s := math.Sqrt(cov[i][i] + 1)
		t := side * y[i] / s
		const sure = 1 - 2*misheard
		z := misheard + sure*phi(t)
		slope := sure * density(t) * side / s
		total += math.Log(z)
		a := slope / z
		b := a*a + sure*density(t)*t/(s*s)/z
		learn(&y, &cov, i, a, b)
	}
	return total
}

// within keeps a part inside what it can be, so that no figure is worked out
// for a clutch that cannot exist.
func (m *model) within(p part, x float64) float64 {
	if p < parts {
		return math.Min(math.Max(x, rules[p].low), rules[p].high)
	}
	return x
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

func anyTaken(d measure.Data) bool {
	for _, x := range d {
		if x.Taken {
			return true
		}
	}
	return false
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
