package timing_test

import (
	"math"

	"example.com/benchbook/units/measure"
)

// An exact posterior of the simulated world, by sums over grids of a quarter of
// a degree: dead centre, slips, clearances, durations. Rounding to whole degrees
// and misreadings are as they were drawn, not as normal errors. Nothing here
// comes from the library.

const step = 0.25

// ring is a function on the circle of one turn, at multiples of step.
type ring [int(360 / step)]float64

func at(x float64) int {
	i := int(math.Round(x/step)) % len(ring{})
	if i < 0 {
		i += len(ring{})
	}
	return i
}

// node is the number of steps in x, and turned a place on the ring.
func node(x float64) int { return int(math.Round(x / step)) }

func turned(i int) int {
	const n = len(ring{})
	for i < 0 {
		i += n
	}
	for i >= n {
		i -= n
	}
	return i
}

func phi(x float64) float64 { return math.Erfc(-x/math.Sqrt2) / 2 }

func density(x, sd float64) float64 {
	return math.Exp(-x*x/2/sd/sd) / sd / math.Sqrt(2*math.Pi)
}

// chance is how likely the reading r is, as a function of the advance the event
// truly has against the mark.
func (m simMode) chance(r float64) *ring {
	var p ring
	for k := -40; k <= 40; k++ { // ten degrees: ten standard errors
		x := math.Round(r/step)*step + float64(k)*step
		d := r - x
		if m.whole {
			p[at(x)] = phi(d+0.5) - phi(d-0.5)
		} else {
			p[at(x)] = density(d, 1)
		}
	}
	return &p
}

// mirrored is the chance of a reading of a disc read the wrong way round, given
// the same advance: the place book - x is read as its mirror image.
func (m simMode) mirrored(r, book float64) *ring {
	var p ring
	q := m.chance(r) // of a residual 2 book - x
	for i := range p {
		p[i] = q[at(2*book-float64(i)*step)]
	}
	return &p
}

// spread is a density of half the extra duration, at multiples of step.
type spread struct {
	n []int
	w []float64
}

// halves is the density of half the duration's scatter, less a clearance that is
// in the part wanted: 0 none, 1 a trifle, 2 no trifle.
func halves(gap int, by float64) spread {
	var s spread
	if gap == 0 {
		for k := -24; k <= 24; k++ { // six standard deviations
			x := float64(k) * step
			s.n, s.w = append(s.n, node(x+by)), append(s.w, density(x, 1)*step)
		}
		return s
	}
	const fine = 0.05
	for k := -160; k <= 160; k++ {
		x := float64(k) * step
		w := 0.0
		for g := -4.8 * simGap; g <= 4.8*simGap; g += fine {
			if (math.Abs(g) >= trifle) == (gap == 2) {
				w += density(g, simGap) * fine * density(x+g, 1)
			}
		}
		s.n, s.w = append(s.n, node(x+by)), append(s.w, w*step)
	}
	return s
}

// cam is the likelihood of the two readings of a cam given its shift: with
// nothing misread, and with one of the two misread, an eighth for each way.
type camLikelihood struct{ plain, misread ring }

// support lists where a ring is above zero.
func (p *ring) support() []int {
	var all []int
	for i, v := range p {
		if v > 1e-30 {
			all = append(all, i)
		}
	}
	return all
}

// missed is the chance of a reading if its event was misread: one of four
// events, ten degrees either way.
func (p *ring) missed() *ring {
	var q ring
	for _, i := range p.support() {
		x := float64(i) * step
		q[at(x+10)] += p[i] / 8
		q[at(x-10)] += p[i] / 8
	}
	return &q
}

func likelihood(o, k *ring, s spread) *camLikelihood {
	var c camLikelihood
	om, km := o.missed(), k.missed()
	add := func(into, o, k *ring) {
		for _, a := range o.support() {
			for j, n := range s.n { // opening x + u, closing x - u
				into[turned(a-n)] += s.w[j] * o[a] * k[turned(a-2*n)]
			}
		}
	}
	add(&c.plain, o, k)
	add(&c.misread, om, k)
	add(&c.misread, o, km)
	return &c
}

// slips is the density of a slip in the part wanted, 1 a trifle, 2 none, times
// step.
func slips(part int) *ring {
	var w ring
	for i := range w {
		s := simWrap(float64(i) * step)
		v := ((1-simFar)*density(s, 10) + simFar/360) * step
		switch d := math.Abs(s) - trifle; {
		case math.Abs(d) < step/2: // the node at the limit counts half
			w[i] = v / 2
		case (d > 0) == (part == 2):
			w[i] = v
		}
	}
	return &w
}

// slipped averages over a slip.
func (c *camLikelihood) slipped(part int) *camLikelihood {
	var out camLikelihood
	w := cached("slips"+string(rune('0'+part)), func() *ring { return slips(part) })
	over := w.support()
	add := func(into, from *ring) {
		for _, j := range from.support() {
			for _, k := range over {
				i := j - k
				if i < 0 {
					i += len(into)
				}
				into[i] += w[k] * from[j]
			}
		}
	}
	add(&out.plain, &c.plain)
	add(&out.misread, &c.misread)
	return &out
}

type centre struct {
	n []int
	w []float64
}

// centres is the density of the error of the dead centre, lag included; mark 0
// none, 1 wrong by a trifle, 2 wrong by more.
func (m simMode) centres(mark int) centre {
	sd := math.Hypot(m.tdc, m.lagU)
	var c centre
	if mark == 0 {
		for k := -int(6*sd/step) - 1; k <= int(6*sd/step)+1; k++ {
			x := float64(k) * step
			c.n, c.w = append(c.n, k-node(m.lag)), append(c.w, density(x-float64(node(m.lag))*step+m.lag, sd)*step)
		}
		return c
	}
	const fine = 0.05
	for k := -180; k <= 180; k++ {
		x := float64(k) * step
		w := 0.0
		for g := -45.0; g <= 45; g += fine {
			if (math.Abs(g) >= trifle) == (mark == 2) {
				w += density(g, 8) * fine * density(x-g+m.lag, sd)
			}
		}
		c.n, c.w = append(c.n, k), append(c.w, w*step)
	}
	return c
}

// exactCache keeps the densities, which do not depend on readings.
var exactCache = map[string]any{}

func cached[T any](key string, f func() T) T {
	if v, ok := exactCache[key]; ok {
		return v.(T)
	}
	v := f()
	exactCache[key] = v
	return v
}

// posterior returns the share of every verdict.
func (m simMode) posterior(c *simCase, classes []simClass, total float64) map[string]float64 {
	var o [4]*ring
	for i := range o {
		o[i] = m.chance(c.read[i])
	}
	// likelihoods of a cam by what is wrong with it, made when wanted
	type want struct {
		cam, gap, slip int
		rival          bool
	}
	known := map[want]*camLikelihood{}
	var get func(w want) *camLikelihood
	get = func(w want) *camLikelihood {
		if l, ok := known[w]; ok {
			return l
		}
		var l *camLikelihood
		if w.slip > 0 {
			base := w
			base.slip = 0
			l = get(base).slipped(w.slip)
		} else {
			by := 0.0
			if w.rival {
				by = 10
			}
			s := cached("halves"+string(rune('0'+w.gap))+string(rune('0'+int(by))), func() spread { return halves(w.gap, by) })
			l = likelihood(o[2*w.cam], o[2*w.cam+1], s)
		}
		known[w] = l
		return l
	}
	share := map[string]float64{}
	sum := 0.0
	put := func(key string, v float64) { share[key] += v; sum += v }
	one := func(in, ex *camLikelihood, fi, fe float64, t centre) float64 {
		v := 0.0
		ni, ne := node(fi), node(fe)
		for k, n := range t.n {
			i, e := turned(n+ni), turned(n+ne)
			v += t.w[k] * ((1-m.misread)*in.plain[i]*ex.plain[e] + m.misread*(in.misread[i]*ex.plain[e]+in.plain[i]*ex.misread[e]))
		}
		return v
	}
	for _, k := range classes {
		prior := k.prior / total * (1 - m.outside)
		// each open fault may be a trifle (1) or not (2)
		open := make([]*simFault, 0, 2)
		for _, f := range k.faults {
			if f.slip > 0 || f.gap > 0 || f.mark {
				open = append(open, f)
			}
		}
		for mask := range 1 << len(open) {
			part := map[*simFault]int{}
			for i, f := range open {
				part[f] = 1 + mask>>i&1
			}
			w := [2]want{{cam: 0}, {cam: 1}}
			var fi, fe float64
			mark, key := 0, ""
			backwards := false
			for _, f := range k.faults {
				fi += f.in
				fe += f.ex
				switch {
				case f.slip > 0:
					w[f.slip-1].slip = part[f]
				case f.gap > 0:
					w[f.gap-1].gap = part[f]
				case f.rival > 0:
					w[f.rival-1].rival = true
				case f.mark:
					mark = part[f]
				case f.disc:
					backwards = true
				}
				if part[f] != 1 {
					if key != "" {
						key += "/"
					}
					key += f.key
				}
			}
			if key == "" {
				key = "nothing-wrong"
			}
			t := cached(m.name+string(rune('0'+mark)), func() centre { return m.centres(mark) })
			if backwards {
				s := cached("halves00", func() spread { return halves(0, 0) })
				in := likelihood(m.mirrored(c.read[0], simBook[0]), m.mirrored(c.read[1], simBook[1]), s)
				ex := likelihood(m.mirrored(c.read[2], simBook[2]), m.mirrored(c.read[3], simBook[3]), s)
				put(key, prior*one(in, ex, 0, 0, t))
				continue
			}
			put(key, prior*one(get(w[0]), get(w[1]), fi, fe, t))
		}
	}
	if m.outside > 0 {
		v := m.outside
		for i := range o {
			p := 0.0
			for j := range o[i] {
				if o[i][j] > 0 {
					p += density(simWrap(float64(j)*step), 30) * step * o[i][j]
				}
			}
			v *= p
		}
		put(measure.SomethingElse, v)
	}
	for k := range share {
		share[k] /= sum
	}
	return share
}
