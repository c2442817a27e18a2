package timing

import (
	"math"
	"math/bits"

	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// nothingKey and its text stand for "as it should be".
const (
	nothingKey  = "nothing-wrong"
	nothingText = "cams as they should be"
)

// part is one way in which the faults of an engine may have come about. Whether
// a fault of it is a trifle decides to which verdict it counts.
type part struct {
	weight   float64 // ln prior
	told     float64 // ln likelihood of what was seen, other than figures
	fixed    column
	mask     uint32
	judged   [2]int  // place in the mask's amounts that judges each fault, -1 none
	sided    [2]int  // place of each amount that cannot be below zero, -1 none
	trifle   [2]bool // fault is a trifle whatever the readings say
	verdicts [4]int  // bit 0: the first fault counts, bit 1: the second
}

// verdict gathers the parts that come to the same cause.
type verdict struct {
	key, text string
	faults    []*atom
	prior     float64
	top, sum  float64 // ln of the largest term, and the sum over terms relative to it
	best      *part   // that gives most
	misread   int     // the row misread in it, or -1
	bestAt    float64
	pressed   float64             // ln likelihood of compression and leak-down test, if taken
	missed    [rowTDCLift]float64 // of sum, the terms in which each event was misread
}

func (v *verdict) add(logWeight float64, p *part, misread int) {
	if logWeight > v.bestAt || v.best == nil {
		v.best, v.bestAt, v.misread = p, logWeight, misread
	}
	switch {
	case math.IsInf(logWeight, -1):
		return
	case logWeight > v.top:
		scale := math.Exp(v.top - logWeight)
		v.sum *= scale
		for i := range v.missed {
			v.missed[i] *= scale
		}
		v.top = logWeight
	}
	term := math.Exp(logWeight - v.top)
	v.sum += term
	if misread >= 0 {
		v.missed[misread] += term
	}
}

const farMask = 1<<slipFar | 1<<(slipFar+1)

// bench is everything that is weighed for one set of readings.
type bench struct {
	*sheet
	list     []atom
	parts    []part
	verdicts []verdict
	index    map[string]int
	room     *roomModel
	squeeze  *squeeze
	leak     [leakKinds]float64 // ln likelihood of a leak-down test, by the way of leaking
	peak     float64            // ln of the greatest weight of a part so far
	blind    uint32             // amounts anywhere on the circle that nothing read tells of
}

func newBench(s *sheet) (*bench, error) {
	list, err := s.atoms()
	if err != nil {
		return nil, err
	}
	b := &bench{sheet: s, list: list, peak: math.Inf(-1), index: make(map[string]int, 256)}
	b.parts, b.verdicts, b.rates = make([]part, 0, 448), make([]verdict, 0, 224), make([]rate, 0, 64)
	b.squeeze = s.newSqueeze()
	for i := slipFar; i < markWrong; i++ {
		if !s.tells(&s.effects[i]) {
			b.blind |= 1 << i
		}
	}
	b.verdict(nothingKey, nothingText)
	b.scenario(s.opt.Priors.Nothing, nil, nil)
	for i := range list {
		b.scenario(list[i].prior, &list[i], nil)
	}
	if !s.opt.SingleFaults {
		for i := range list {
			for j := range list[i+1:] {
				if a, c := &list[i], &list[i+1+j]; paired(a, c) {
					// faults that come apart from each other: their odds multiply
					b.scenario(a.prior*c.prior/s.opt.Priors.Nothing, a, c)
				}
			}
		}
	}
	return b, nil
}

// tells reports whether anything read goes by an amount.
func (s *sheet) tells(e *effect) bool {
	for i, d := range s.data {
		if d.Taken && e.Column[i] != 0 {
			return true
		}
	}
	return false
}

// far is what makes uniform the wide normals among open amounts. One that nothing
// read tells of was not weighed by its density, and needs nothing.
func (b *bench) far(mask uint32) float64 {
	return farWeight * float64(bits.OnesCount32(mask&farMask&^b.blind))
}

func (b *bench) verdict(key, text string, faults ...*atom) int {
	i, ok := b.index[key]
	if !ok {
		i = len(b.verdicts)
		b.index[key] = i
		b.verdicts = append(b.verdicts, verdict{key: key, text: text, faults: faults, top: math.Inf(-1)})
	}
	return i
}

var rightAlone = []way{{share: 1, judge: -1}}

// scenario adds the parts of up to two faults.
func (b *bench) scenario(prior float64, x, y *atom) {
	var at [4]int
	waysX, waysY := rightAlone, rightAlone
	if x != nil {
		waysX = x.ways
		at[1] = b.verdict(x.key, x.text, x)
	}
	if y != nil {
		waysY = y.ways
		at[2] = b.verdict(y.key, y.text, y)
		at[3] = b.verdict(x.key+"/"+y.key, "", x, y)
	} else {
		at[2], at[3] = at[0], at[1]
	}
	limit := b.opt.Trifle.Degrees()
	for i := range waysX {
		for j := range waysY {
			v, w := &waysX[i], &waysY[j]
			p := part{
				weight: math.Log(prior * v.share * w.share), fixed: v.fixed.plus(w.fixed), mask: v.mask | w.mask,
				judged:   [2]int{place(v.mask|w.mask, v.judge), place(v.mask|w.mask, w.judge)},
				verdicts: at, told: b.told(x, y, v.far || w.far),
			}
			p.sided = [2]int{place(p.mask, b.oneSided(v.mask)), place(p.mask, b.oneSided(w.mask))}
			if y == nil {
				p.judged[1] = -1
			}
			p.weight += b.far(p.mask)
			p.trifle[0] = x != nil && x.family != wholeTurn && v.trifling(limit)
			p.trifle[1] = y != nil && y.family != wholeTurn && w.trifling(limit)
			b.parts = append(b.parts, p)
		}
	}
}

// oneSided returns the amount among those of a way that cannot be below zero, or
// -1; no way has two.
func (b *bench) oneSided(mask uint32) int {
	if mask &= sidedMask; mask == 0 {
		return -1
	}
	return bits.TrailingZeros32(mask)
}

const sidedMask = 3<<heldUp | 3<<wornOff | 3<<heldSteep | 3<<heldFlat

// place returns where in the mask's amounts, counted upwards, one stands.
func place(mask uint32, amount int) int {
	if amount < 0 {
		return -1
	}
	return bits.OnesCount32(mask & (1<<amount - 1))
}

// Chances of what is seen by looking. A look goes wrong one time in twenty: marks
// miscounted, the wrong stroke taken. Common practice, no source.
const lookWrong = 0.05

func look(seen Seen, yes float64) float64 {
	switch seen {
	case Yes:
		return math.Log(yes)
	case No:
		return math.Log(1 - yes)
	}
	return 0
}

// told weighs what was seen: tooth marks and the order of the valves.
func (b *bench) told(x, y *atom, far bool) float64 {
	align, order := 1-lookWrong, 1-lookWrong
	if far {
		order = 0.5
	}
	for _, a := range [2]*atom{x, y} {
		if a == nil {
			continue
		}
		if a.family == tooth || a.family == wholeTurn {
			align = lookWrong
		}
		if a.family == wholeTurn {
			order = lookWrong
		}
	}
	return look(b.read.MarksAlign, align) + look(b.read.Sequence, order)
}

// rate returns the spread of a set of open amounts.
func (b *bench) rate(mask uint32) (*rate, bool) {
	for i := range b.rates {
		if b.rates[i].mask == mask {
			return &b.rates[i], true
		}
	}
	g, free := b.gaussian(mask, column{})
	p, ok := g.Precision(b.data)
	if !ok {
		return nil, false
	}
	b.rates = append(b.rates, rate{mask, p, free})
	return &b.rates[len(b.rates)-1], true
}

// gaussian writes a set of open amounts and a fixed shift as a cause.
func (b *bench) gaussian(mask uint32, shift column) (measure.Gaussian, []int) {
	g := measure.Gaussian{Mean: shift[:], Own: b.own, Shared: b.shared}
	var free []int
	for m := mask; m != 0; m &= m - 1 {
		i := bits.TrailingZeros32(m)
		g.Free = append(g.Free, b.effects[i].Effect)
		free = append(free, i)
	}
	return g, free
}

// residuals puts reading less expectation into q, each cam's rows brought to the
// nearest turn together, so that a cam is not torn apart where the circle closes.
func (b *bench) residuals(at []int, shift *column, q []float64) {
	var first [2]float64
	var have [2]bool
	for k, i := range at {
		v := b.data[i].Value - shift[i]
		if i < rowMaxLift {
			c := i >> 1 & 1
			if i >= rowTDCLift {
				c = i - rowTDCLift
			}
			if have[c] {
				v = first[c] + wrap(v-first[c])
			} else {
				v = wrap(v)
				first[c], have[c] = v, true
			}
		}
		q[k] = v
	}
}

// weigh fills the verdicts. It reports false if a spread cannot be worked out.
func (b *bench) weigh() bool {
	var q, w [rows]float64
	m := &b.opt.Misread
	each := 0.0
	if b.taken > 0 {
		each = m.Chance / float64(b.taken)
	}
	right, usual, wild := math.Log(1-m.Chance), math.Log(each*(1-m.Wild)/2), math.Log(each*m.Wild)
	limit := b.opt.Trifle.Degrees()
	for i := range b.parts {
		p := &b.parts[i]
		r, ok := b.rate(p.mask)
		if !ok {
			return false
		}
		at := r.p.Taken()
		b.residuals(at, &p.fixed, q[:len(at)])
		ll := r.p.Weigh(q[:len(at)], w[:len(at)]) + p.weight + p.told
		b.share(p, r, q[:len(at)], -1, -1, 0, ll+right, limit)
		if each == 0 || ll+r.p.Relief(w[:len(at)]) < b.peak-negligible {
			continue
		}
		for k, row := range at {
			if row >= rowTDCLift {
				break
			}
			for _, by := range [2]float64{m.By.Degrees(), -m.By.Degrees()} {
				if m.Wild < 1 {
					b.share(p, r, q[:len(at)], k, row, -by, ll+usual+r.p.Nudge(k, -by, w[:]), limit)
				}
			}
			if m.Wild > 0 {
				b.share(p, r, q[:len(at)], -1, row, 0, ll+wild+r.p.Widen(k, wildSpread, w[:]), limit)
			}
		}
	}
	return true
}

// negligible is how far, in logarithms, a part may lie below the greatest before
// it is left out: e^-40 changes no share that can be printed.
const negligible = 40.0

// wildSpread is the spread of a misreading that is not by the usual amount.
const wildSpread = 30.0

// share divides the weight of a part among verdicts by the chance that each of
// its faults is no trifle. delta is what is added to the k-th residual; row is the
// event misread, or -1.
func (b *bench) share(p *part, r *rate, q []float64, k, row int, delta, logWeight, limit float64) {
	if logWeight < b.peak-negligible {
		return
	}
	for _, at := range p.sided {
		if at < 0 {
			continue
		}
		// half a normal curve has twice the height, over the half that is there
		value, u := r.p.Amount(at, q)
		if k >= 0 {
			value += r.p.AmountNudge(at, k, delta)
		}
		logWeight += math.Log(math.Erfc(-value / u / math.Sqrt2))
	}
	b.peak = max(b.peak, logWeight)
	var real [2]float64
	for f := range real {
		switch {
		case p.trifle[f]:
		case p.judged[f] < 0:
			real[f] = 1
		default:
			value, u := r.p.Amount(p.judged[f], q)
			if k >= 0 {
				value += r.p.AmountNudge(p.judged[f], k, delta)
			}
			amount := r.free[p.judged[f]]
			e := &b.effects[amount]
			if b.blind>>amount&1 == 1 {
				real[f] = 1 - 2*limit/360
				continue
			}
			if e.sided {
				k := 1 / (u * math.Sqrt2)
				if all := math.Erfc(-value * k); all > 0 {
					real[f] = math.Erfc((limit/e.opening-value)*k) / all
				}
				continue
			}
			real[f] = outside(value*e.opening, u*e.opening, limit)
		}
	}
	if real[0] == 1 && real[1] == 1 {
		b.verdicts[p.verdicts[3]].add(logWeight, p, row)
		return
	}
	for v, at := range p.verdicts {
		chance := 1.0
		for f := range real {
			if v>>f&1 == 1 {
				chance *= real[f]
			} else {
				chance *= 1 - real[f]
			}
		}
		if chance > 0 {
			b.verdicts[at].add(logWeight+math.Log(chance), p, row)
		}
	}
}

// outside is the chance that a normal amount is farther from zero than limit.
func outside(mean, sd, limit float64) float64 {
	if math.Abs(mean)-limit >= 8*sd {
		return 1 // to the last digit; and where a figure is exact, at the limit too
	}
	k := 1 / (sd * math.Sqrt2)
	// two tails, so that small chances keep their digits
	return min((math.Erfc((limit-mean)*k)+math.Erfc((limit+mean)*k))/2, 1)
}

// priors gives each verdict the share of the parts that come to it before the
// readings.
func (b *bench) priors() {
	limit := b.opt.Trifle.Degrees()
	for i := range b.parts {
		p := &b.parts[i]
		var real [2]float64
		r, _ := b.rate(p.mask)
		prior := math.Exp(p.weight - b.far(p.mask))
		for f := range real {
			switch {
			case p.trifle[f]:
			case p.judged[f] < 0:
				real[f] = 1
			default:
				k := r.free[p.judged[f]]
				e := b.effects[k]
				if k == slipFar || k == slipFar+1 {
					real[f] = 1 - 2*limit/360
				} else {
					real[f] = outside(0, e.SD*e.opening, limit)
				}
			}
		}
		for v, at := range p.verdicts {
			chance := 1.0
			for f := range real {
				if v>>f&1 == 1 {
					chance *= real[f]
				} else {
					chance *= 1 - real[f]
				}
			}
			b.verdicts[at].prior += prior * chance
		}
	}
}

// rank hands the verdicts to the ranking engine.
func (b *bench) rank() (measure.Ranking, error) {
	if !b.weigh() {
		return measure.Ranking{}, fault.Fault{Code: fault.OutOfRange, Path: "readings", Rule: "uncertainties must be above zero and within reason"}
	}
	b.priors()
	tested := b.tested()
	if b.read.Leak.Taken() {
		b.leak = b.leakLogs()
	}
	causes := make([]measure.Cause, 0, len(b.verdicts))
	for i := range b.verdicts {
		v := &b.verdicts[i]
		if !(v.prior > 0) {
			continue
		}
		if len(v.faults) == 2 {
			if v.sum == 0 {
				continue // a pair that the readings rule out is not worth a line
			}
			v.text = v.faults[0].text + " and " + v.faults[1].text
		}
		ll := v.top + math.Log(v.sum) - math.Log(v.prior)
		if v.sum == 0 {
			ll = math.Inf(-1)
		}
		if tested && !math.IsInf(ll, -1) {
			v.pressed, _ = b.pressed(v)
			ll += v.pressed
		}
		causes = append(causes, measure.Cause{Key: v.key, Text: v.text, Prior: v.prior, Hypothesis: measure.LogLikelihood(func(measure.Data) float64 { return ll })})
	}
	other := measure.Cause{Text: "something else", Prior: b.opt.Priors.Else, Hypothesis: measure.LogLikelihood(func(measure.Data) float64 {
		if tested {
			return b.otherwise() + b.pressedAnyhow()
		}
		return b.otherwise()
	})}
	return measure.Rank(b.data, causes, other)
}

// otherwise is the log likelihood of the readings if the cause is not listed:
// half the time each event is off by a wide normal amount of its own, half the
// time it is anywhere on the circle.
func (b *bench) otherwise() float64 {
	g, _ := b.gaussian(0, column{})
	g.Own = append([]float64(nil), b.own...)
	for i := range g.Own {
		wide := b.opt.Widths.Else.Degrees()
		if i >= rowMaxLift && i < rowStop || i >= rowGap {
			wide = 1.5 // mm
		}
		g.Own[i] = math.Hypot(g.Own[i], wide)
	}
	near := g.LogLikelihood(b.data)
	rest := append(measure.Data(nil), b.data...)
	far := 0.0
	for i := range rowMaxLift {
		if rest[i].Taken {
			rest[i].Taken = false
			far -= math.Log(360)
		}
	}
	far += g.LogLikelihood(rest)
	hi := max(near, far)
	seen := look(b.read.MarksAlign, 0.5) + look(b.read.Sequence, 0.5)
	return hi + seen + math.Log((math.Exp(near-hi)+math.Exp(far-hi))/2)
}
