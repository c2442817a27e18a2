package fastener

import (
	"math"
	"slices"
	"strconv"
	"sync"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

const (
	defaultWear     = 0.1  // mm
	defaultUndercut = 0.05 // share of threads cut well under size
	// undercutDepth is how far, in pitches, a thread cut under size may stand
	// below the wear allowance: the tolerance class 6g of ISO 965-1 ends 0.24 mm
	// under at M8 and 0.21 mm at M8x1 (from memory).
	undercutDepth = 0.2
	// elseWeight is the share of "something else" before the readings: one
	// thread in fifty found on an old machine is of no system served here.
	elseWeight = 0.02

	// What a sound thread may differ from its table whatever read it: the
	// crests' own roughness, the lead error of a die, the flanks' error.
	ownMajor = 0.01  // mm
	ownPitch = 0.001 // of the pitch
	ownFlank = 0.5   // degrees

	// keep is the ratio of shares, as a logarithm, below which a thread is left
	// out of the list: a millionth of the leader's.
	keep = 13.8
)

// The space a thread of no listed system is spread over evenly: outside
// diameters up to 60 mm, pitches up to 4 mm, flank angles from 45° to 90°.
const (
	elseMajor = 1.0 / 60
	elsePitch = 1.0 / 4
	elseFlank = 1.0 / 45
)

// Identify weighs every thread of the tables by the readings and returns them
// with their odds, the set that these readings cannot tell apart, and the
// readings to take next.
//
// The outside diameter reads y = D - loss + error: the error normal as the
// reading says, the loss even from zero to opt.Wear, and for a share opt.Undercut
// of threads even over a further fifth of a pitch. A hole reads the other way.
// A spoke's thread may also be rolled, standing a depth above its wire. Pitch and
// flank angle are normal. Each has a little of the thread's own error
// added (0.01 mm, 0.1 % of pitch, 0.5°), so that even an exact reading leaves a
// real thread room. The kind of part, if told, weighs as often as the threads of
// a system are met on it. All of it is the library's model, not a standard's.
//
// At least one of Major, Hole, Pitch and Count is needed. Faults are returned
// together. A thread that fits nothing known comes back with a Reason.
func Identify(r Readings, opt IdentifyOptions) (Identification, error) {
	e, err := evidenceOf(r, opt)
	if err != nil {
		return Identification{}, err
	}
	threads, first := tables(), tableFigures()
	if opt.Among != nil {
		threads, first = opt.Among, figuresOf(opt.Among)
	}
	causes, kept, total := e.survivors(threads, first, opt.Weights)
	other := measure.Cause{Text: "a thread of none of these systems", Prior: total * elseWeight / (1 - elseWeight), Hypothesis: fixed(e.elseLogLikelihood())}
	if len(causes) == 0 { // every system was left out, or Among holds no thread
		return Identification{}, fault.Fault{Code: fault.Missing, Path: "options", Rule: "at least one thread must be left in the search"}
	}
	ranking, err := measure.Rank(nil, causes, other)
	if err != nil { // a key twice among the caller's own threads
		return Identification{}, fault.Under("options.among", err)
	}
	id := Identification{Causes: ranking, Pitch: e.pitchReading(r), Candidates: make([]Candidate, 0, len(kept))}
	for i := range ranking.Odds {
		o := &ranking.Odds[i]
		if o.Key == measure.SomethingElse {
			o.Prior = elseWeight
			continue
		}
		for j := range causes {
			if causes[j].Key == o.Key {
				// Rank saw only the survivors; the share before the readings is of all
				o.Prior = causes[j].Prior / total * (1 - elseWeight)
				id.Candidates = append(id.Candidates, Candidate{threads[kept[j]].WithHand(handOf(r.Hand, threads[kept[j]])), *o})
				break
			}
		}
	}
	if ranking.Leader().Key == measure.SomethingElse {
		id.Reason = fault.Reason{Code: "no-known-thread", Text: "no thread of the tables fits these readings well: measure again on a clean, unworn part, or take it as a special"}
	}
	id.Alike = alike(id.Candidates, !id.Reason.Given())
	id.NextReadings = nextReadings(r, ranking, id.Candidates)
	id.Basis = identifyBasis(r, e, opt)
	id.Basis.Sources = threadSources(id.Candidates)
	for _, c := range id.Candidates {
		id.Basis.Sources = owned(id.Basis.Sources, c.Thread)
	}
	return id, nil
}

// handOf keeps a hand the thread already had if none was read.
func handOf(read Hand, t Thread) Hand {
	if read == HandUnknown {
		return t.hand
	}
	return read
}

// fixed is a likelihood worked out beforehand.
type fixed float64

// LogLikelihood returns the figure.
func (f fixed) LogLikelihood(measure.Data) float64 { return float64(f) }

// evidence holds the readings as plain numbers: millimetres and degrees.
type evidence struct {
	major, hole, flank    float64
	sMajor, sHole, sFlank float64 // zero: not taken
	gauge, sGauge         float64
	count, sCount         float64
	wear, undercut        float64
	part                  Part
}

func evidenceOf(r Readings, opt IdentifyOptions) (evidence, error) {
	var l fault.List
	e := evidence{wear: opt.Wear.Millimetres(), undercut: opt.Undercut.SI(), part: r.Part}
	e.major, e.sMajor = length(&l, "major", r.Major, 0.2, 200, ownMajor)
	e.hole, e.sHole = length(&l, "hole", r.Hole, 0.1, 200, ownMajor)
	e.gauge, e.sGauge = length(&l, "pitch", r.Pitch, 0.05, 12, ownPitch*r.Pitch.Value().Millimetres())
	if r.Flank.Taken() {
		l.Under("flank", r.Flank.Err())
		e.flank, e.sFlank = r.Flank.Value().Degrees(), math.Hypot(r.Flank.U().Degrees(), ownFlank)
		if !(e.flank >= 20 && e.flank <= 120) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: "flank", Value: r.Flank.Text(), Unit: "°", Rule: "20° to 120° between the flanks"})
		}
	}
	countPitch(&l, r.Count, &e)
	if r.Hand > Left {
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "hand", Value: strconv.Itoa(int(r.Hand)), Rule: "unknown, right or left"})
	}
	if r.Part > WheelSpoke {
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "part", Value: strconv.Itoa(int(r.Part)), Rule: "one of the parts of this package"})
	}
	if l.Len() == 0 && e.sMajor == 0 && e.sHole == 0 && e.sGauge == 0 && e.sCount == 0 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "major", Rule: "at least a diameter or a pitch must be read"})
	}
	switch {
	case opt.Wear == 0:
		e.wear = defaultWear
	case !(opt.Wear > 0 && opt.Wear <= 2*units.Millimetre):
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "options.wear", Value: opt.Wear.String(), Unit: "mm", Rule: "above 0, up to 2 mm"})
	}
	switch {
	case opt.Undercut == 0:
		e.undercut = defaultUndercut
	case !(opt.Undercut >= 0 && opt.Undercut <= 1):
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "options.undercut", Value: opt.Undercut.String(), Rule: "a share, 0 to 1"})
	}
	for s, w := range opt.Weights {
		if s > Spoke {
			l.Add(fault.Fault{Code: fault.UnknownName, Path: "options.weights", Value: strconv.Itoa(int(s)), Rule: "a system of threads"})
			continue
		}
		if !(w >= 0) || math.IsInf(w, 0) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: "options.weights." + s.String(), Value: strconv.FormatFloat(w, 'g', 4, 64), Rule: "zero to leave a system out, or above"})
		}
	}
	return e, l.Err()
}

// length takes a reading of length apart, with the thread's own error added.
func length(l *fault.List, path string, r measure.Reading[units.Length], lo, hi, own float64) (value, s float64) {
	if !r.Taken() {
		return 0, 0
	}
	if !l.Under(path, r.Err()) {
		return 0, 0
	}
	v := r.Value().Millimetres()
	if !(v >= lo && v <= hi) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: path, Value: r.Text(), Unit: "mm",
			Rule: units.Millimetres(lo).String() + " to " + units.Millimetres(hi).String()})
		return 0, 0
	}
	return v, math.Hypot(r.U().Millimetres(), own)
}

// countPitch turns a count over a length into a pitch, p = L/n, with
// (s/p)^2 = (uL/L)^2 + (un/n)^2.
func countPitch(l *fault.List, c Count, e *evidence) {
	switch n, over := c.Pitches, c.Over; {
	case !n.Taken() && !over.Taken():
		return
	case !n.Taken():
		l.Add(fault.Fault{Code: fault.Missing, Path: "count.pitches", Rule: "a length needs the number of pitches in it"})
		return
	case !over.Taken():
		l.Add(fault.Fault{Code: fault.Missing, Path: "count.over", Unit: "mm", Rule: "a count needs the length it was taken over"})
		return
	}
	ok := l.Under("count.pitches", c.Pitches.Err())
	ok = l.Under("count.over", c.Over.Err()) && ok
	if !ok {
		return
	}
	n, over := c.Pitches.Value().SI(), c.Over.Value().Millimetres()
	if !(n >= 1 && n <= 1000) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "count.pitches", Value: c.Pitches.Text(), Rule: "1 to 1000 pitches"})
		return
	}
	p := over / n
	if !(p >= 0.05 && p <= 12) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "count.over", Value: c.Over.Text(), Unit: "mm", Rule: "a length that makes a pitch of 0.05 mm to 12 mm"})
		return
	}
	rel := math.Hypot(math.Hypot(c.Over.U().Millimetres()/over, c.Pitches.U().SI()/n), ownPitch)
	e.count, e.sCount = p, p*rel
}

// pitchReading pools gauge and count by their weights.
func (e evidence) pitchReading(r Readings) measure.Reading[units.Length] {
	switch {
	case e.sCount == 0:
		return r.Pitch
	case e.sGauge == 0:
		return measure.Of(units.Millimetres(e.count), units.Millimetres(e.sCount))
	}
	a, b := 1/sq(e.sGauge), 1/sq(e.sCount)
	return measure.Of(units.Millimetres((a*e.gauge+b*e.count)/(a+b)), units.Millimetres(1/math.Sqrt(a+b)))
}

// figures are what the first look at a thread needs, side by side in memory.
type figures struct {
	major, pitch, included float64
	system                 System
}

func figuresOf(threads []Thread) []figures {
	out := make([]figures, len(threads))
	for i, t := range threads {
		out[i] = figures{t.major.Millimetres(), t.pitch.Millimetres(), t.form.Included().Degrees(), t.system}
	}
	return out
}

var tableFigures = sync.OnceValue(func() []figures { return figuresOf(tables()) })

// look holds the readings for the first look: reciprocal spreads, zero for what
// was not taken.
type look struct {
	evidence
	gaugeW, countW, majorW, holeW, flankW float64
}

func (e *evidence) look() look {
	w := func(s float64) float64 {
		if s == 0 {
			return 0
		}
		return 1 / s
	}
	return look{*e, w(e.sGauge), w(e.sCount), w(e.sMajor), w(e.sHole), w(e.sFlank)}
}

// bound returns an upper bound of the log-likelihood, but for constants that
// all threads share, at the cost of a few multiplications.
func (k *look) bound(f *figures) float64 {
	p, d := f.pitch, f.major
	g, c, a := (k.gauge-p)*k.gaugeW, (k.count-p)*k.countW, (k.flank-f.included)*k.flankW
	m := max(k.major-d-rolled(f.system, p), d-k.wear-undercutDepth*p-k.major, 0) * k.majorW
	// no form is deeper than 1.3 p, and tolerance, wear and undercut end half a
	// pitch and the wear short of the outside diameter
	h := max(d-1.3*p-k.hole, k.hole-d+0.5*p-k.wear, 0) * k.holeW
	return -(g*g + c*c + a*a + m*m + h*h) / 2
}

// logLikelihood returns the log density of the readings for a thread.
func (e *evidence) logLikelihood(t *Thread) float64 {
	p, l := t.pitch.Millimetres(), 0.0
	if e.sGauge > 0 {
		l += logNormal(e.gauge-p, e.sGauge)
	}
	if e.sCount > 0 {
		l += logNormal(e.count-p, e.sCount)
	}
	if e.sFlank > 0 {
		l += logNormal(e.flank-t.form.Included().Degrees(), e.sFlank)
	}
	if e.sMajor > 0 {
		short := t.major.Millimetres() - e.major
		m := e.logLoss(short, e.sMajor, e.wear, undercutDepth*p)
		if up := rolled(t.system, p); up > 0 {
			m = logMean(m, e.logLoss(short+up, e.sMajor, e.wear, undercutDepth*p))
		}
		l += m
	}
	if e.sHole > 0 {
		// holes are drilled large on purpose: the tolerance is the main part
		l += e.logLoss(e.hole-t.section().inner, e.sHole, e.wear+nutMinorTolerance(t), undercutDepth*p)
	}
	return l
}

// logLoss returns the log density of a loss seen through a normal error s: the
// loss even over 0 to near, or with the undercut share over 0 to near + more.
func (e *evidence) logLoss(loss, s, near, more float64) float64 {
	even := func(w float64) float64 { return (tail((loss-w)/s) - tail(loss/s)) / w }
	if d := (1-e.undercut)*even(near) + e.undercut*even(near+more); d > 0 {
		return math.Log(d)
	}
	// so far off that the normal's tail underflows
	return -sq(max(-loss, loss-near-more)/s)/2 - 40
}

// rolled returns how far a thread rolled on a spoke stands above the wire, by
// which the tables name it: rolling moves metal from root to crest and removes
// none, so the effective diameter is the wire's and the crest a depth over it.
// Cut and rolled spokes are taken as equally likely.
func rolled(s System, pitch float64) float64 {
	if s == Spoke {
		return CycleForm.depth() * pitch
	}
	return 0
}

// logMean returns the logarithm of the mean of two densities given by theirs.
func logMean(a, b float64) float64 {
	top := max(a, b)
	return top + math.Log((math.Exp(a-top)+math.Exp(b-top))/2)
}

// tail returns the chance that a standard normal exceeds z.
func tail(z float64) float64 { return math.Erfc(z/math.Sqrt2) / 2 }

func logNormal(d, s float64) float64 {
	return -sq(d/s)/2 - math.Log(s) - 0.9189385332046727 // ln sqrt(2 pi)
}

// elseLogLikelihood is that of a thread of no listed system: even over all
// diameters, pitches and angles.
func (e *evidence) elseLogLikelihood() float64 {
	l := 0.0
	if e.part != PartUnknown {
		l = math.Log(1.0 / 3)
	}
	for _, s := range [...]struct{ s, density float64 }{
		{e.sGauge, elsePitch}, {e.sFlank, elseFlank}, {e.sMajor, elseMajor},
	} {
		if s.s > 0 {
			l += math.Log(s.density)
		}
	}
	if e.sCount > 0 {
		if e.sGauge > 0 { // the count agrees with the gauge, whatever the pitch is
			s := math.Hypot(e.sGauge, e.sCount)
			l += logNormal(e.gauge-e.count, s)
		} else {
			l += math.Log(elsePitch)
		}
	}
	if e.sHole > 0 {
		if e.sMajor == 0 {
			l += math.Log(elseMajor)
		} else {
			l += math.Log(1.0 / 4) // the hole is within 4 mm of the bolt
		}
	}
	return l
}

// survivors returns the threads worth weighing, their places, and the prior
// weight of all that were in the search.
func (e *evidence) survivors(threads []Thread, first []figures, weights map[System]float64) (causes []measure.Cause, kept []int, total float64) {
	var byWeight, logWeight [Spoke + 1]float64
	for s := range byWeight {
		byWeight[s] = 1
		if w, ok := weights[System(s)]; ok {
			byWeight[s] = w
		}
		logWeight[s] = math.Log(byWeight[s])
	}
	var logPart [Spoke + 1]float64
	if e.part != PartUnknown {
		for s := range logPart {
			logPart[s] = math.Log(partChances(System(s))[e.part-1])
		}
	}
	// first by their bounds, then the likely ones in full: the bound leaves out a
	// few nats at most
	type candidate struct {
		at      int
		l, post float64 // bound, then log-likelihood; with the weight
	}
	var room [64]candidate
	list, best := room[:0], math.Inf(-1)
	k := e.look()
	for i := range first {
		f := &first[i]
		w := byWeight[f.system]
		if w == 0 || f.pitch == 0 {
			continue
		}
		total += w
		b := k.bound(f) + logWeight[f.system] + logPart[f.system]
		if b < best-2*keep {
			continue
		}
		best = max(best, b)
		list = append(list, candidate{at: i, post: b})
	}
	top := math.Inf(-1)
	for i := range list {
		c := &list[i]
		if c.post < best-2*keep {
			c.post = math.Inf(-1)
			continue
		}
		c.l = e.logLikelihood(&threads[c.at]) + logPart[threads[c.at].system]
		c.post = c.l + logWeight[threads[c.at].system]
		top = max(top, c.post)
	}
	list = slices.DeleteFunc(list, func(c candidate) bool { return c.post < top-keep })
	causes, kept = make([]measure.Cause, 0, len(list)+1), make([]int, 0, len(list)) // Rank adds one
	for _, c := range list {
		t := &threads[c.at]
		causes = append(causes, measure.Cause{Key: t.key, Text: t.name, Prior: byWeight[t.system], Hypothesis: fixed(c.l)})
		kept = append(kept, c.at)
	}
	return causes, kept, total
}

// apart is the ratio of likelihoods from which two threads count as told apart:
// Kass and Raftery, Bayes Factors, J. Am. Stat. Assoc. 90 (1995) 773, call a
// factor of 20 strong (from memory). The ranking's own groups ask for 3 only;
// a thread forced into the wrong casting deserves more.
const apart = 20

// alike returns the threads the readings cannot tell from the likeliest, which
// is first; none if nothing known is likely. There is one candidate at least.
func alike(c []Candidate, known bool) []Thread {
	if !known {
		return nil
	}
	out := []Thread{c[0].Thread}
	for _, o := range c[1:] {
		if c[0].Odds.LogLikelihood-o.Odds.LogLikelihood < math.Log(apart) {
			out = append(out, o.Thread)
		}
	}
	return out
}

// threadSources returns where size and pitch of the likeliest thread are from.
func threadSources(c []Candidate) []refdata.Source {
	row, ok := c[0].Thread.Row()
	if !ok {
		return c[0].Thread.form.sources()
	}
	return row.ThreadOrigin.Sources()
}

func identifyBasis(r Readings, e evidence, opt IdentifyOptions) refdata.Basis {
	b := refdata.Basis{
		Cautions: []refdata.Caution{refdata.OldBolts},
	}
	if r.Major.Taken() || r.Hole.Taken() {
		if opt.Wear == 0 {
			b.Assumed = append(b.Assumed, refdata.Assumption{What: "crests short of the basic diameter by up to", Value: "0.1 mm", Status: refdata.CommonPractice})
		}
		if opt.Undercut == 0 {
			b.Assumed = append(b.Assumed, refdata.Assumption{What: "share of threads cut further under size, to commercial limits", Value: "5 %", Status: refdata.CommonPractice})
		}
	} else {
		b.NotChecked = append(b.NotChecked, refdata.Unchecked{What: "diameter", Why: "not read", Settle: "caliper over the crests"})
	}
	if opt.Weights == nil {
		b.Assumed = append(b.Assumed, refdata.Assumption{What: "odds before the readings", Value: "every thread of the tables alike", Status: refdata.CommonPractice})
	}
	if e.sGauge == 0 && e.sCount == 0 {
		b.NotChecked = append(b.NotChecked, refdata.Unchecked{What: "pitch", Why: "not read", Settle: "thread gauge, or a count over an inch"})
	}
	if e.sFlank == 0 {
		b.NotChecked = append(b.NotChecked, refdata.Unchecked{What: "flank angle", Why: "not read", Settle: "55° and 60° gauge held to the light"})
	}
	if r.Part == PartUnknown {
		b.NotChecked = append(b.NotChecked, refdata.Unchecked{What: "kind of part", Why: "not told", Settle: "say whether it is a bolt, a fitting or a spoke"})
	}
	if r.Hand == HandUnknown {
		b.NotChecked = append(b.NotChecked, refdata.Unchecked{What: "hand of the thread", Why: "not looked at", Settle: "hold it upright: right-hand threads rise to the right"})
		b.Cautions = append(b.Cautions, refdata.RetainingNuts)
	}
	return b
}
