package fastener

import (
	"math"
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// integrals returns the integral and the mean of a density given by its logarithm, by
// the trapezium rule over a range in steps of a hundredth of its least spread.
func integrals(log func(x float64) float64, lo, hi, step float64) (whole, mean float64) {
	for x := lo; x < hi; x += step {
		d := math.Exp(log(x)) * step
		whole += d
		mean += d * x
	}
	return whole, mean / whole
}

// TestDensities: what a thread says of each reading is a density, so it adds up to one
// over all readings; and its mean is that of the model. A crest stands short by half
// the wear, and by a further tenth of the pitch in the share that is undercut; a spoke
// stands half a depth of 0.532692 p above its wire, cut and rolled ones being as many;
// a hole is large by as much, and by half its tolerance.
func TestDensities(t *testing.T) {
	const wear, undercut, s = 0.1, 0.3, 0.02
	for _, name := range []string{"M8", "1/4 BSF", "3/8-26 cycle", "2 BA", "14 SWG spoke", "3/8-16 UNC"} {
		th := MustParse(name)
		d, p := th.Major().Millimetres(), th.Pitch().Millimetres()
		g, _ := th.Geometry()
		loss := wear/2 + undercut*0.2*p/2
		rise := 0.0
		if th.System() == Spoke {
			rise = 0.532692 * p / 2
		}
		inner := g.MinorNut.Millimetres()
		tolerance := nutMinorTolerance(&th)
		for _, c := range []struct {
			what string
			e    func(x float64) evidence
			at   float64 // about which the density lies
			mean float64
		}{
			{"gauge", func(x float64) evidence { return evidence{gauge: x, sGauge: s} }, p, p},
			{"count", func(x float64) evidence { return evidence{count: x, sCount: s} }, p, p},
			{"flank", func(x float64) evidence { return evidence{flank: x, sFlank: s} }, th.Form().Included().Degrees(), th.Form().Included().Degrees()},
			{"major", func(x float64) evidence {
				return evidence{major: x, sMajor: s, wear: wear, undercut: undercut}
			}, d, d - loss + rise},
			{"hole", func(x float64) evidence {
				return evidence{hole: x, sHole: s, wear: wear, undercut: undercut}
			}, inner, inner + loss + tolerance/2},
		} {
			log := func(x float64) float64 {
				e := c.e(x)
				return e.logLikelihood(&th)
			}
			whole, mean := integrals(log, c.at-2, c.at+2, s/100)
			// the error function and the rule are good for seven digits
			if math.Abs(whole-1) > 1e-6 || math.Abs(mean-c.mean) > 1e-5 {
				t.Errorf("%s, %s: integral %v, mean %v, want 1 and %v", name, c.what, whole, mean, c.mean)
			}
		}
	}
}

// TestFarTails: where the normal's tail is no number any more, the logarithm still
// falls as the square of the distance from the nearest loss there can be.
func TestFarTails(t *testing.T) {
	const near, more, s = 0.1, 0.25, 0.05
	e := evidence{undercut: 0.05}
	edge := map[float64]func(z float64) float64{
		-1: func(z float64) float64 { return -z * s },
		+1: func(z float64) float64 { return near + more + z*s },
	}
	for side, loss := range edge {
		last := e.logLoss(loss(30), s, near, more)
		for z := 31.0; z < 100; z++ {
			got := e.logLoss(loss(z), s, near, more)
			// the step to the tail's bound is 40 and the density's own factors a few
			if !(got < last) || math.Abs(got+z*z/2) > 50 {
				t.Fatalf("side %v, %v spreads off: %v after %v, about %v expected", side, z, got, last, -z*z/2)
			}
			last = got
		}
	}
}

// TestFirstLook: the first look is half the square of how many spreads a reading lies
// from the figures a thread can have, and no thread is likelier than that by more than
// its density at the best.
func TestFirstLook(t *testing.T) {
	const s, wear, undercut = 0.03, 0.1, 0.05
	off := func(x, lo, hi float64) float64 { return max(lo-x, x-hi, 0) / s }
	all, first := tables(), tableFigures()
	for i := range all {
		th := &all[i]
		d, p, angle := th.Major().Millimetres(), th.Pitch().Millimetres(), th.Form().Included().Degrees()
		rise := 0.0
		if th.System() == Spoke {
			rise = 0.532692 * p
		}
		for _, by := range []float64{-0.7, -0.35, -0.11, -0.04, 0, 0.04, 0.11, 0.35, 0.7} {
			for _, c := range []struct {
				what string
				e    evidence
				z    float64
				most float64 // the highest density there is
			}{
				{"gauge", evidence{gauge: p + by, sGauge: s}, by / s, 1 / (s * math.Sqrt(2*math.Pi))},
				{"count", evidence{count: p + by, sCount: s}, by / s, 1 / (s * math.Sqrt(2*math.Pi))},
				{"flank", evidence{flank: angle + by, sFlank: s}, by / s, 1 / (s * math.Sqrt(2*math.Pi))},
				{"major", evidence{major: d + by, sMajor: s}, off(d+by, d-wear-0.2*p, d+rise), 1 / wear},
				// no form is deeper than 1.3 p, and none open to within 0.5 p of the outside
				{"hole", evidence{hole: d - p + by, sHole: s}, off(d-p+by, d-1.3*p, d-0.5*p+wear), 1 / wear},
			} {
				c.e.wear, c.e.undercut = wear, undercut
				k := c.e.look()
				got := k.bound(&first[i])
				if math.Abs(got+c.z*c.z/2) > 1e-5*(1+c.z*c.z) { // six digits of the cycle's depth
					t.Fatalf("%v, %s off by %v: bound %v, want %v", th, c.what, by, got, -c.z*c.z/2)
				}
				if l := c.e.logLikelihood(th); l > got+math.Log(c.most)+0.1 { // 0-80 UNF opens 0.01 p further than that
					t.Fatalf("%v, %s off by %v: log-likelihood %v past its bound %v", th, c.what, by, l, got+math.Log(c.most))
				}
			}
		}
	}
}

// TestMeanOfLogarithms against the plain mean.
func TestMeanOfLogarithms(t *testing.T) {
	for _, c := range [][2]float64{{1, 1}, {0.2, 3}, {5, 0.01}} {
		if got, want := logMean(math.Log(c[0]), math.Log(c[1])), math.Log((c[0]+c[1])/2); math.Abs(got-want) > 1e-14 {
			t.Errorf("%v: %v, want %v", c, got, want)
		}
	}
	if got := logMean(-2000, -2000-math.Log(3)); math.Abs(got-(-2000+math.Log(2.0/3))) > 1e-12 { // far below what exp can do
		t.Errorf("%v", got)
	}
}

// normal returns the logarithm of the normal density.
func normal(x, s float64) float64 { return -x*x/(2*s*s) - math.Log(s*math.Sqrt(2*math.Pi)) }

// TestSomethingElseIsEven: a thread of no listed system has outside diameters up to
// 60 mm, pitches up to 4 mm and angles over 45° alike, one part in three of each kind;
// a count agrees with its gauge, and a hole lies within 4 mm of its bolt. It has 2 %
// before the readings.
func TestSomethingElseIsEven(t *testing.T) {
	major, hole := measure.Of(units.Millimetres(10), units.Millimetres(0.05)), measure.Of(units.Millimetres(8.6), units.Millimetres(0.05))
	gauge := measure.Of(units.Millimetres(1.5), units.Millimetres(0.01))
	count := Count{measure.Exact(units.Value(10)), measure.Of(units.Millimetres(15.2), units.Millimetres(0.1))}
	flank := measure.Of(60*units.Degree, units.Degree)
	// spreads with a thread's own thousandth of the pitch
	sGauge, sCount := math.Hypot(0.01, 0.0015), 1.52*math.Hypot(0.1/15.2, 0.001)
	both := normal(0.02, math.Hypot(sGauge, sCount))
	ln := math.Log
	th := special(t, MetricForm, 10, 1.5)
	for _, c := range []struct {
		what string
		in   Readings
		want float64
	}{
		{"major", Readings{Major: major}, -ln(60)},
		{"hole", Readings{Hole: hole}, -ln(60)},
		{"major and hole", Readings{Major: major, Hole: hole}, -ln(60) - ln(4)},
		{"gauge", Readings{Pitch: gauge}, -ln(4)},
		{"count", Readings{Count: count}, -ln(4)},
		{"gauge and count", Readings{Pitch: gauge, Count: count}, -ln(4) + both},
		{"major and flank", Readings{Major: major, Flank: flank}, -ln(60) - ln(45)},
		{"major of a bolt", Readings{Major: major, Part: Bolt}, -ln(60) - ln(3)},
		{"all", Readings{Major: major, Hole: hole, Pitch: gauge, Count: count, Flank: flank, Part: Bolt}, -ln(60) - ln(4) - ln(4) + both - ln(45) - ln(3)},
	} {
		id, err := Identify(c.in, IdentifyOptions{Among: []Thread{th}})
		if err != nil {
			t.Fatal(err)
		}
		other, _ := id.Causes.Of(measure.SomethingElse)
		if math.Abs(other.LogLikelihood-c.want) > 1e-9 {
			t.Errorf("%s: %v, want %v", c.what, other.LogLikelihood, c.want)
		}
		it := id.Candidates[0].Odds
		if got, want := ln(other.Share/it.Share), ln(0.02/0.98)+other.LogLikelihood-it.LogLikelihood; math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: odds against the thread %v, want %v", c.what, got, want)
		}
	}
}

// TestSpreadsOfPitch: gauge and count are normal, with a thousandth of the pitch of the
// thread's own, (s/p)² = (uL/L)² + (un/n)² for the count.
func TestSpreadsOfPitch(t *testing.T) {
	th := special(t, MetricForm, 20, 3)
	for _, c := range []struct {
		what string
		in   Readings
		off  float64
		s    float64
	}{
		{"exact gauge", Readings{Pitch: measure.Exact(units.Millimetres(3.004))}, 0.004, 0.003004},
		{"gauge", Readings{Pitch: measure.Of(units.Millimetres(3.004), units.Millimetres(0.004))}, 0.004, math.Hypot(0.004, 0.003004)},
		{"exact count", Readings{Count: Count{measure.Exact(units.Value(8)), measure.Exact(units.Millimetres(24.08))}}, 0.01, 0.00301},
		// 10/8 mm over 8.0 ± 0.1 pitches, and 0.05 mm over 24.08
		{"count", Readings{Count: Count{measure.Of(units.Value(8), units.Value(0.1)), measure.Of(units.Millimetres(24.08), units.Millimetres(0.05))}}, 0.01, 3.01 * math.Sqrt(0.1*0.1/64+0.05*0.05/(24.08*24.08)+1e-6)},
	} {
		id, err := Identify(c.in, IdentifyOptions{Among: []Thread{th}})
		if err != nil {
			t.Fatal(err)
		}
		if got, want := id.Candidates[0].Odds.LogLikelihood, normal(c.off, c.s); math.Abs(got-want) > 1e-9 {
			t.Errorf("%s: %v, want %v", c.what, got, want)
		}
	}
}

// TestPooledPitch: gauge and count together are the mean weighed by the inverse squares
// of their spreads; alone, each is itself.
func TestPooledPitch(t *testing.T) {
	gauge := measure.Of(units.Millimetres(3), units.Millimetres(0.004))
	count := Count{measure.Exact(units.Value(8)), measure.Of(units.Millimetres(24.16), units.Millimetres(0.032))}
	id := func(r Readings) measure.Reading[units.Length] {
		got, err := Identify(r, IdentifyOptions{})
		if err != nil {
			t.Fatal(err)
		}
		return got.Pitch
	}
	if got := id(Readings{Pitch: gauge}); got != gauge {
		t.Errorf("gauge alone: %v", got)
	}
	if got := id(Readings{Major: measure.Exact(20 * units.Millimetre)}); got.Taken() {
		t.Errorf("neither: %v", got)
	}
	// 0.003 and 0.00302 of the thread's own: spreads of 0.005 and, 3.02 × (0.032/24.16) being 0.004, 0.005012
	sg, sc := 0.005, math.Hypot(0.004, 0.00302)
	got := id(Readings{Count: count})
	if math.Abs(got.Value().Millimetres()-3.02) > 1e-12 || math.Abs(got.U().Millimetres()-sc) > 1e-12 {
		t.Errorf("count alone: %v", got)
	}
	wg, wc := 1/(sg*sg), 1/(sc*sc)
	got = id(Readings{Pitch: gauge, Count: count})
	if want := (3*wg + 3.02*wc) / (wg + wc); math.Abs(got.Value().Millimetres()-want) > 1e-12 || math.Abs(got.U().Millimetres()-math.Sqrt(1/(wg+wc))) > 1e-12 {
		t.Errorf("%v, want %v", got, want)
	}
}

// TestPriors: the shares before the readings are those of the weights over all threads
// of the search, 98 % together.
func TestPriors(t *testing.T) {
	in := Readings{Major: measure.MustRead("6.30 mm", measure.Caliper())}
	n, bsf := 0.0, 0.0
	for th := range Threads() {
		n++
		if th.System() == BSF {
			bsf++
		}
	}
	for _, c := range []struct {
		weights map[System]float64
		total   float64
	}{{nil, n}, {map[System]float64{BSF: 3}, n + 2*bsf}, {map[System]float64{BSF: 0}, n - bsf}} {
		id, err := Identify(in, IdentifyOptions{Weights: c.weights})
		if err != nil {
			t.Fatal(err)
		}
		for _, k := range id.Candidates {
			w, ok := c.weights[k.Thread.System()]
			if !ok {
				w = 1
			}
			if math.Abs(k.Odds.Prior-0.98*w/c.total) > 1e-12 {
				t.Errorf("weights %v: %v has %v before the readings", c.weights, k.Thread, k.Odds.Prior)
			}
		}
		if other, _ := id.Causes.Of(measure.SomethingElse); other.Prior != 0.02 {
			t.Errorf("something else has %v", other.Prior)
		}
	}
}

// TestWeightAgainstReading: a thread whose pitch is 6.3 spreads off loses 20 nats by it,
// and wins 21 if its system is e^21 times likelier beforehand: it leads by e.
func TestWeightAgainstReading(t *testing.T) {
	near, far := MustParse("1/4 BSF"), MustParse("1/4-28 UNF")
	p := near.Pitch().Millimetres()
	s := (p - far.Pitch().Millimetres()) / math.Sqrt(40)
	u := math.Sqrt(s*s - 1e-6*p*p) // and a thousandth of the pitch of the thread's own
	id, err := Identify(Readings{Pitch: measure.Of(near.Pitch(), units.Millimetres(u))}, IdentifyOptions{Among: []Thread{near, far}, Weights: map[System]float64{UNF: math.Exp(21)}})
	if err != nil || len(id.Candidates) != 2 || id.Candidates[0].Thread != far {
		t.Fatalf("%v, %v", id.Candidates, err)
	}
	if got := math.Log(id.Candidates[0].Odds.Share / id.Candidates[1].Odds.Share); math.Abs(got-1) > 1e-9 {
		t.Errorf("leads by e^%v", got)
	}
}
