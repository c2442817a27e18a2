package timing_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	"example.com/benchbook/timing"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// The odds of causes worked by another route than the library's: the covariance of
// all that was read is written out in full and factorised, what is open and unjudged
// is put into it, and an amount that may be a trifle, or is one-sided, is summed by
// Simpson's rule over its prior. Flanks come from bisection and differences of the
// lift curve. What the documentation says of causes is written here anew.

// The figures that may be read.
const (
	fIO = iota // advance of the events, crank degrees
	fIC
	fEO
	fEC
	fInAtTDC // advance told by the lift at TDC
	fExAtTDC
	fInTop // mm beyond the book
	fExTop
	fStop    // crank degrees past true TDC
	fInWheel // advance on the wheel
	fExWheel
	fInGap // mm beyond what was supposed
	fExGap
	figures
)

type vector [figures]float64

func (v vector) plus(w vector, k float64) vector {
	for i := range v {
		v[i] += k * w[i]
	}
	return v
}

// vec makes a vector of pairs of place and value.
func vec(pairs ...float64) (v vector) {
	for i := 0; i < len(pairs); i += 2 {
		v[int(pairs[i])] += pairs[i+1]
	}
	return v
}

// plainLobe is a lobe of the usual shape, top (1 - (x/half)^2)^2.
type plainLobe struct {
	opens, closes, top, half float64
	given                    bool       // its top is known
	rise                     [2]float64 // mm a degree, opening and closing
}

// bisect returns x between lo and hi where f, falling, reaches zero.
func bisect(lo, hi float64, f func(float64) float64) float64 {
	for range 200 {
		if mid := (lo + hi) / 2; f(mid) > 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return (lo + hi) / 2
}

func usual(top, half, x float64) float64 {
	if math.Abs(x) >= half {
		return 0
	}
	return top * math.Pow(1-x*x/half/half, 2)
}

// newLobe is a lobe open from one place to another at a lift, on the scale at the
// valve with the clearance added.
func newLobe(opens, closes, top, at float64) plainLobe {
	l := plainLobe{opens: opens, closes: closes, top: top, given: top > 0}
	if !l.given {
		l.top = 8
	}
	x := (closes - opens) / 2
	l.half = bisect(x, 100*x, func(half float64) float64 { return at - usual(l.top, half, x) })
	l.rise[0] = l.slope(max(at, 0.1)) // no flatter than at a tenth of a millimetre
	l.rise[1] = l.rise[0]
	return l
}

func (l *plainLobe) middle() float64 { return (l.opens + l.closes) / 2 }

// place is how far from the middle a lift is reached.
func (l *plainLobe) place(lift float64) float64 {
	return bisect(0, l.half, func(x float64) float64 { return usual(l.top, l.half, x) - lift })
}

// slope is by differences; a step of 1e-4° is off by some 1e-10.
func (l *plainLobe) slope(lift float64) float64 {
	const h = 1e-4
	x := l.place(lift)
	return (usual(l.top, l.half, x-h) - usual(l.top, l.half, x+h)) / 2 / h
}

// advanceOf is by how much the lobe is early if it has this lift at overlap TDC.
func (l *plainLobe) advanceOf(c int, lift float64) float64 {
	if c == 0 { // rising flank, before the middle
		return l.middle() - l.place(lift)
	}
	return l.middle() + l.place(lift)
}

// loose is an amount left open, or an error in common.
type loose struct {
	sd      float64 // 0: anywhere on the circle
	sided   bool    // not below zero
	opening float64 // degrees of an opening to a unit; 0: never a trifle
	by      vector
}

// form is one way for a fault to come about.
type form struct {
	share float64
	fixed vector
	open  []loose // the first may be judged, or sided
	far   bool
	of    [2]*form // of two things at once
}

// moves reports whether a fixed shift is no trifle.
func (f *form) moves() bool {
	for _, i := range [...]int{fIO, fIC, fEO, fEC} {
		if math.Abs(simWrap(f.fixed[i])) >= trifleOf {
			return true
		}
	}
	return f.fixed[fInTop] != 0 || f.fixed[fExTop] != 0
}

// guess is one cause, or two at once.
type guess struct {
	prior       float64
	forms       []form
	tooth, turn bool
	parts       [2]string // of two things at once
}

// world is what was read, as figures, and the errors in common.
type world struct {
	e      timing.Engine
	r      timing.Readings
	lobes  [2]plainLobe
	taken  []int
	value  vector
	own    vector
	common []loose
}

func boolOf(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

// newWorld takes the lobes in degrees after overlap TDC, as the check of the book
// has them.
func newWorld(e timing.Engine, r timing.Readings, places [4]float64) *world {
	w := &world{e: e, r: r}
	rocker := 1.0
	if e.Rocker.Taken() {
		rocker = e.Rocker.Value().Value()
	}
	scale := func(k timing.Check, lift float64) float64 {
		if k.At == timing.AtFollower {
			return lift * rocker
		}
		return lift + k.Clearance.Millimetres()
	}
	read := e.Check
	if r.Check != nil {
		read = *r.Check
	}
	book, found := scale(e.Check, e.Check.Lift.Millimetres()), scale(read, read.Lift.Millimetres())
	tdc := map[timing.TDCBy]float64{timing.TDCByEye: 1.5, timing.TDCByStop: 0.3, timing.TDCByDial: 1, timing.TDCByMark: 1.5}[r.TDC]
	take := func(i int, value, u float64) {
		w.taken = append(w.taken, i)
		w.value[i], w.own[i] = value, u
	}
	lag := 0.0
	if r.Lag.Taken() {
		lag = r.Lag.Value().Degrees()
		w.common = append(w.common, loose{sd: r.Lag.U().Degrees(), by: both()})
	}
	w.common = append(w.common, loose{sd: tdc, by: both().plus(vec(fStop, 1), 1)})
	if r.TDCLate.Taken() {
		take(fStop, r.TDCLate.Value().Degrees(), r.TDCLate.U().Degrees())
	}
	for c, spec := range []timing.Lobe{e.Inlet, e.Exhaust} {
		top := 0.0
		if spec.MaxLift.Taken() {
			top = scale(e.Check, spec.MaxLift.Value().Millimetres())
		}
		l := newLobe(places[2*c], places[2*c+1], top, book)
		per := 1.0
		if e.Check.At == timing.AtFollower {
			per = rocker
		}
		if x := spec.OpeningRise.Millimetres(); x > 0 {
			l.rise = [2]float64{x * per, x * per}
		}
		if x := spec.ClosingRise.Millimetres(); x > 0 {
			l.rise[1] = x * per
		}
		w.lobes[c] = l
		later := 0.0 // at the lift that was read
		if found != book {
			later = l.place(book) - l.place(found)
			w.common = append(w.common, loose{sd: 0.3 * math.Abs(later), by: vec(float64(2*c), -1, float64(2*c+1), 1)})
		}
		w.common = append(w.common, loose{sd: 2, by: vec(float64(2*c), 0.5, float64(2*c+1), -0.5)})
		p := [2]measure.Position{r.InletOpens, r.InletCloses}
		atTDC, most, wheel, gap := r.InletLiftAtTDC, r.InletMaxLift, r.InletOnWheel, r.InletClearance
		if c == 1 {
			p = [2]measure.Position{r.ExhaustOpens, r.ExhaustCloses}
			atTDC, most, wheel, gap = r.ExhaustLiftAtTDC, r.ExhaustMaxLift, r.ExhaustOnWheel, r.ExhaustClearance
		}
		for k := range p {
			if p[k].Taken() {
				at := p[k].Value().FromTDC().Degrees()
				take(2*c+k, simWrap([2]float64{l.opens + later, l.closes - later}[k]-at)+lag, p[k].U().Degrees())
			}
		}
		if atTDC.Taken() && l.given {
			if y := scale(read, atTDC.Value().Millimetres()); y >= 0.1 && y <= 0.9*l.top {
				take(fInAtTDC+c, l.advanceOf(c, y)+lag, math.Hypot(atTDC.U().Millimetres()/l.slope(y), 3))
			}
		}
		per = 1
		if read.At == timing.AtFollower {
			per = rocker
		}
		if most.Taken() && l.given {
			u := math.Hypot(most.U().Millimetres(), spec.MaxLift.U().Millimetres()) * per
			take(fInTop+c, scale(read, most.Value().Millimetres())-l.top, math.Hypot(u, 0.1))
		}
		if wheel.Taken() {
			take(fInWheel+c, 2*wheel.Value().Degrees(), 2*wheel.U().Degrees())
		}
		if gap.Taken() {
			take(fInGap+c, (gap.Value() - read.Clearance).Millimetres(), max(gap.U().Millimetres(), 0.03))
		}
	}
	return w
}

// one is both events of a cam, and its lift at TDC, earlier by a degree.
func one(c int) vector { return vec(float64(2*c), 1, float64(2*c+1), 1, float64(fInAtTDC+c), 1) }

func both() vector { return one(0).plus(one(1), 1) }

// longerBy is a cam open a degree longer, half at each end.
func longerBy(c int) vector {
	side := 0.5
	if c == 1 {
		side = -0.5
	}
	return vec(float64(2*c), 0.5, float64(2*c+1), -0.5, float64(fInAtTDC+c), side)
}

// wider is a clearance wider by a millimetre, with flanks so many times as steep as
// the usual shape has them: events at the valve, and what the lift at TDC makes of it.
func (w *world) wider(c int, steep float64) (events, atTDC vector) {
	l := &w.lobes[c]
	slope := l.slope(max(usual(l.top, l.half, l.middle()), 0.1))
	if c == 1 {
		slope = -slope
	}
	return vec(float64(2*c), -1/l.rise[0]/steep, float64(2*c+1), 1/l.rise[1]/steep), vec(float64(fInAtTDC+c), -1/slope/steep)
}

// the density of all that was read with a shift taken off, for amounts a: the
// exponent is quadratic in them.
type normalOf struct {
	chol mat.Cholesky
	rows []int
	ln   float64 // of the factor before the exponential
}

func (w *world) normal(extra vector, open []loose) *normalOf {
	n := len(w.taken)
	s := mat.NewSymDense(n, nil)
	all := append(append([]loose(nil), w.common...), open...)
	for i, a := range w.taken {
		for j, b := range w.taken {
			v := 0.0
			if i == j {
				v = w.own[a]*w.own[a] + extra[a]*extra[a]
			}
			for _, x := range all {
				v += x.sd * x.sd * x.by[a] * x.by[b]
			}
			s.SetSym(i, j, v)
		}
	}
	d := &normalOf{rows: w.taken}
	if !d.chol.Factorize(s) {
		panic("not positive definite")
	}
	d.ln = -float64(n)/2*math.Log(2*math.Pi) - d.chol.LogDet()/2
	return d
}

// dot is x' C^-1 y.
func (d *normalOf) dot(x, y vector) float64 {
	n := len(d.rows)
	a, b := mat.NewVecDense(n, nil), mat.NewVecDense(n, nil)
	for i, r := range d.rows {
		a.SetVec(i, x[r])
		b.SetVec(i, y[r])
	}
	var s mat.VecDense
	if d.chol.SolveVecTo(&s, b) != nil {
		panic("singular")
	}
	return mat.Dot(a, &s)
}

func simpson(f func(float64) float64, lo, hi float64) float64 {
	if !(hi > lo) {
		return 0
	}
	const n = 800
	h := (hi - lo) / n
	sum := f(lo) + f(hi)
	for i := 1; i < n; i++ {
		sum += f(lo+float64(i)*h) * float64(2+2*(i&1))
	}
	return sum * h / 3
}

const trifleOf = 3.0 // degrees of an opening

// fits returns the density of what was read under a form of a fault, in the part
// that counts and in that which is a trifle, each with the part of its prior.
func (w *world) fits(f *form, delta, extra vector) (counts, trifles, prior float64) {
	r := w.value.plus(f.fixed, -1).plus(delta, -1)
	if len(f.open) == 0 {
		d := w.normal(extra, nil)
		v := math.Exp(d.ln - d.dot(r, r)/2)
		if f.moves() {
			return v, 0, 1
		}
		return 0, v, 0
	}
	a := f.open[0]
	if a.opening == 0 && !a.sided {
		// nothing to judge: all in closed form, those anywhere on the circle by an
		// integral without ends over 360
		var flat []loose
		var in []loose
		for _, x := range f.open {
			if x.sd == 0 {
				flat = append(flat, x)
			} else {
				in = append(in, x)
			}
		}
		d := w.normal(extra, in)
		q := d.dot(r, r)
		ln := d.ln
		for i, x := range flat { // of one cam each: they do not meet but through what is common
			for _, y := range flat[:i] { // Gram and Schmidt
				if yy := d.dot(y.by, y.by); yy > 0 { // else nothing read goes by it
					x.by = x.by.plus(y.by, -d.dot(x.by, y.by)/yy)
				}
			}
			flat[i] = x
			xx, xr := d.dot(x.by, x.by), d.dot(x.by, r)
			if xx == 0 {
				continue
			}
			q -= xr * xr / xx
			ln += math.Log(2*math.Pi/xx)/2 - math.Log(360)
		}
		return math.Exp(ln - q/2), 0, 1
	}
	d := w.normal(extra, f.open[1:])
	rr, rb, bb := d.dot(r, r), d.dot(r, a.by), d.dot(a.by, a.by)
	before := func(x float64) float64 { return density(x, a.sd) }
	precision := bb + 1/(a.sd*a.sd)
	lo, hi := math.Inf(-1), math.Inf(1)
	switch {
	case a.sd == 0:
		lo, hi, precision = -180, 180, max(bb, 1e-5)
		before = func(float64) float64 { return 1.0 / 360 }
	case a.sided:
		lo = 0
		before = func(x float64) float64 { return 2 * density(x, a.sd) }
	}
	// twelve standard deviations round where it is likely
	at, u := rb/precision, 12/math.Sqrt(precision)
	part := func(f func(float64) float64, at, u, from, to float64) float64 {
		return simpson(f, max(at-u, lo, from), min(at+u, hi, to))
	}
	like := func(x float64) float64 { return math.Exp(d.ln-(rr-2*x*rb+x*x*bb)/2) * before(x) }
	limit := 0.0 // one-sided and never a trifle
	if a.opening != 0 {
		limit = trifleOf / math.Abs(a.opening)
	}
	if a.sided { // what lies far below zero has its mass at zero
		from := max(at-u, 0)
		to := max(at+u, 12/math.Sqrt(precision))
		return simpson(like, max(from, limit), to), simpson(like, from, min(limit, to)), 2 * phi(-limit/a.sd)
	}
	counts = part(like, at, u, limit, math.Inf(1)) + part(like, at, u, math.Inf(-1), -limit)
	prior = 2 * phi(-limit/a.sd)
	if a.sd == 0 {
		prior = 1 - 2*limit/360
	}
	return counts, part(like, at, u, -limit, limit), prior
}

// variant is what misreading does to one event.
type variant struct {
	weight       float64
	delta, extra vector
}

// variants: one event in fifty engines is misread, by ten degrees either way, but for
// a share with a spread of thirty.
func (w *world) variants(wild float64) []variant {
	const chance = 0.02
	all := []variant{{weight: 1 - chance}}
	events := 0.0
	for _, i := range w.taken {
		if i <= fEC {
			events++
		}
	}
	for _, i := range w.taken {
		if i <= fEC {
			at, each := float64(i), chance/events
			all = append(all, variant{weight: each * (1 - wild) / 2, delta: vec(at, 10)}, variant{weight: each * (1 - wild) / 2, delta: vec(at, -10)}, variant{weight: each * wild, extra: vec(at, 30)})
		}
	}
	return all
}

func seen(s timing.Seen, yes float64) float64 {
	switch s {
	case timing.Yes:
		return yes
	case timing.No:
		return 1 - yes
	}
	return 1
}

// left is the verdict on two things at once, if the open one counts, or does not:
// what is a trifle is no fault.
func (g *guess) left(f *form, open bool) string {
	key := "nothing-wrong"
	for i, of := range f.of {
		if counts := of.moves(); counts && len(of.open) == 0 || open && len(of.open) > 0 {
			if key == "nothing-wrong" {
				key = g.parts[i]
			} else {
				key += "/" + g.parts[i]
			}
		}
	}
	return key
}

// belief is what a verdict should come out with.
type belief struct{ share, prior float64 }

// posterior returns the share of every verdict; guesses are by key.
func (w *world) posterior(guesses map[string]*guess, otherwise, wild float64) map[string]belief {
	all := map[string]belief{}
	add := func(key string, share, prior float64) {
		b := all[key]
		all[key] = belief{b.share + share, b.prior + prior}
	}
	variants := w.variants(wild)
	for key, g := range guesses {
		align, order := 0.95, 0.95
		if g.tooth || g.turn {
			align = 0.05
		}
		for i := range g.forms {
			f := &g.forms[i]
			o := order
			if f.far {
				o = 0.5
			}
			if g.turn {
				o = 0.05
			}
			told := seen(w.r.MarksAlign, align) * seen(w.r.Sequence, o)
			weight := g.prior * f.share
			for k, v := range variants {
				counts, trifles, prior := w.fits(f, v.delta, v.extra)
				if g.turn { // of no moment to the events, and none the less a fault
					counts, trifles, prior = counts+trifles, 0, 1
				}
				real, rest := key, "nothing-wrong"
				if g.parts[0] != "" {
					real, rest = g.left(f, true), g.left(f, false)
					if len(f.open) == 0 {
						counts, trifles, prior = counts+trifles, 0, 1
					}
				}
				if k > 0 { // before the readings once only
					weight = 0
				}
				add(real, g.prior*f.share*told*v.weight*counts, weight*prior)
				add(rest, g.prior*f.share*told*v.weight*trifles, weight*(1-prior))
			}
		}
	}
	// not listed: each figure off by a wide amount of its own; or events and lifts at
	// TDC anywhere
	wide := vector{30, 30, 30, 30, 30, 30, 1.5, 1.5, 30, 30, 30, 1.5, 1.5}
	near := w.normal(wide, nil)
	v := math.Exp(near.ln-near.dot(w.value, w.value)/2) / 2
	rest := *w
	rest.taken = nil
	far := 0.5
	for _, i := range w.taken {
		if i <= fExAtTDC {
			far /= 360
		} else {
			rest.taken = append(rest.taken, i)
		}
	}
	if len(rest.taken) > 0 {
		d := rest.normal(wide, nil)
		far *= math.Exp(d.ln - d.dot(w.value, w.value)/2)
	}
	add(measure.SomethingElse, otherwise*(v+far)*seen(w.r.MarksAlign, 0.5)*seen(w.r.Sequence, 0.5), otherwise)
	var share, prior float64
	for _, b := range all {
		share, prior = share+b.share, prior+b.prior
	}
	for k, b := range all {
		all[k] = belief{b.share / share, b.prior / prior}
	}
	return all
}

// compare tells where a ranking is not what was worked here.
func (w *world) compare(t *testing.T, opt timing.Options, want map[string]belief) {
	t.Helper()
	got, err := timing.Causes(timing.Input{Engine: w.e, Readings: w.r}, opt)
	if err != nil {
		t.Fatal(err)
	}
	// pairs that the readings rule out are not listed, so that the rest share what they
	// had before: all by as much
	first, _ := got.Of("nothing-wrong")
	scale := first.Prior / want["nothing-wrong"].prior
	for _, o := range got.Odds {
		b, ok := want[o.Key]
		// A wide normal stands for the circle, 0.2 % off at its far side, and costs the
		// spread of the amount some digits, which tells by up to a per cent where only
		// the tail of it counts; so small a share as 1e-12 the library may leave out.
		if !ok || !(math.Abs(o.Share-b.share) <= 0.01*b.share+1e-12) || !(math.Abs(o.Prior-b.prior*scale) <= 1e-9) {
			t.Errorf("%s: share %.6g of %.6g before; worked apart %.6g of %.6g (listed %v)", o.Key, o.Share, o.Prior, b.share, b.prior, ok)
		}
	}
	for k, b := range want {
		if _, ok := got.Of(k); !ok && b.share > 1e-12 {
			t.Errorf("%s is not listed: %.3g", k, b.share)
		}
	}
}

func mm(v, u float64) measure.Reading[units.Length] {
	return measure.Of(units.Millimetres(v), units.Millimetres(u))
}
