package fastener

import (
	"math"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

func mustPitch(s string) measure.Reading[units.Length] {
	p, err := ReadPitch(s, measure.PitchGauge())
	if err != nil {
		panic(err)
	}
	return p
}

func TestIdentifyKnownCases(t *testing.T) {
	caliper := measure.Caliper()
	for _, c := range []struct {
		what string
		in   Readings
		want string // leader
		also []string
	}{
		{"a clean 1/4 by 26 is BSF or cycle", Readings{Major: measure.MustRead("6.30 mm", caliper), Pitch: mustPitch("26 tpi")}, "1/4 BSF", []string{"1/4-26 cycle", "1/4-26 brass"}},
		{"an adjuster of that size is brass thread", Readings{Major: measure.MustRead("6.30 mm", caliper), Pitch: mustPitch("26 tpi"), Part: Fitting, Flank: measure.By(55*units.Degree, measure.Protractor())}, "1/4-26 brass", nil},
		{"the flank angle settles it", Readings{Major: measure.MustRead("6.30 mm", caliper), Pitch: mustPitch("26 tpi"), Flank: measure.By(60*units.Degree, measure.Protractor())}, "1/4-26 cycle", nil},
		// a 0.080 in wire rolled 62 to the inch stands 0.0086 in above it
		{"a rolled spoke of 14 gauge", Readings{Major: measure.MustRead("2.24 mm", caliper), Pitch: mustPitch("62 tpi"), Part: WheelSpoke}, "14 SWG spoke", nil},
		{"modern M8 at the low limit of 6g", Readings{Major: measure.MustRead("7.76 mm", caliper), Pitch: mustPitch("1.25 mm")}, "M8", nil},
		{"0 BA against M6: the angle", Readings{Major: measure.MustRead("5.94 mm", caliper), Pitch: mustPitch("1 mm"), Flank: measure.By(units.Degrees(47.5), measure.Protractor())}, "0 BA", nil},
		{"a nut by its hole", Readings{Hole: measure.MustRead("6.85 mm", caliper), Pitch: mustPitch("1.25 mm")}, "M8", nil},
		{"count over an inch", Readings{Major: measure.MustRead("9.48 mm", caliper), Count: Count{Pitches: measure.By(20*units.One, measure.Count()), Over: measure.MustRead("25.4 mm ± 0.1", caliper)}}, "3/8 BSF", nil},
	} {
		id, err := Identify(c.in, IdentifyOptions{})
		if err != nil {
			t.Errorf("%s: %v", c.what, err)
			continue
		}
		alike := map[string]bool{}
		for _, a := range id.Alike {
			alike[a.Name()] = true
		}
		if !alike[c.want] {
			t.Errorf("%s: %v, want %s", c.what, id.Alike, c.want)
		}
		if len(c.also) == 0 && id.Thread().Name() != c.want {
			t.Errorf("%s: leader %v, want %s", c.what, id.Thread(), c.want)
		}
		for _, a := range c.also {
			if !alike[a] {
				t.Errorf("%s: %s not among %v", c.what, a, id.Alike)
			}
		}
	}
}

func TestNextReadingIsTheFlankForBSFAgainstCycle(t *testing.T) {
	id, err := Identify(Readings{Major: measure.MustRead("6.30 mm", measure.Caliper()), Pitch: mustPitch("26 tpi")}, IdentifyOptions{Weights: map[System]float64{Brass: 0}})
	if err != nil || len(id.NextReadings) == 0 || id.NextReadings[0].Key != "flank" {
		t.Fatalf("%+v, %v", id.NextReadings, err)
	}
	// two threads at even odds, told apart by 5° with 1.5° of spread: nearly a bit
	if b := id.NextReadings[0].Bits; b < 0.9 || b > 1 {
		t.Errorf("flank angle tells %.3f bits", b)
	}
}

func TestNothingKnownFits(t *testing.T) {
	// an invented thread: 10.9 mm by 1.13 mm is of no system
	id, err := Identify(Readings{Major: measure.MustRead("10.90 mm", measure.Caliper()), Pitch: measure.Of(units.Millimetres(1.13), units.Millimetres(0.005))}, IdentifyOptions{})
	if err != nil || !id.Reason.Given() || !id.Thread().IsZero() || len(id.Alike) != 0 {
		t.Errorf("%v %v %v, %v", id.Reason, id.Thread(), id.Alike, err)
	}
	if id.Causes.Leader().Key != measure.SomethingElse {
		t.Errorf("leader %v", id.Causes.Leader())
	}
}

func TestIdentifyGathersFaults(t *testing.T) {
	_, err := Identify(Readings{
		Major: measure.Of(units.Millimetres(-3), units.Millimetres(0.1)),
		Pitch: measure.Of(units.Millimetres(99), units.Millimetres(0.1)),
		Flank: measure.By(5*units.Degree, measure.Protractor()),
		Count: Count{Pitches: measure.Exact(3 * units.One)},
		Hand:  9,
		Part:  9,
	}, IdentifyOptions{Wear: -1 * units.Millimetre, Undercut: 2, Weights: map[System]float64{BSF: math.NaN()}})
	if f := fault.Faults(err); len(f) != 9 {
		t.Errorf("%d faults: %v", len(f), err)
	}
	_, err = Identify(Readings{Hand: Left}, IdentifyOptions{})
	if f := fault.Faults(err); len(f) != 1 || f[0].Code != fault.Missing {
		t.Errorf("nothing read: %v", err)
	}
}

// TestSystemsAreTheTables: Identify keeps its weights in an array up to Spoke.
func TestSystemsAreTheTables(t *testing.T) {
	for _, s := range refdata.Systems() {
		if s > Spoke {
			t.Errorf("%v lies beyond Spoke", s)
		}
	}
	in := Readings{Major: measure.MustRead("6.30 mm", measure.Caliper())}
	if _, err := Identify(in, IdentifyOptions{Weights: map[System]float64{Spoke + 1: 1}}); err == nil {
		t.Error("a system that does not exist was weighed")
	}
	same, _ := Of("x", CycleForm, units.Millimetres(6.35), units.Millimetres(1))
	if _, err := Identify(in, IdentifyOptions{Among: []Thread{same, same}}); err == nil {
		t.Error("one thread twice was taken")
	}
	if _, err := Identify(in, IdentifyOptions{Among: []Thread{}}); err == nil {
		t.Error("an empty search found something")
	}
	if id, err := Identify(in, IdentifyOptions{Among: []Thread{same}}); err != nil || id.Thread() != same {
		t.Errorf("among one: %v, %v", id.Thread(), err)
	}
}

// TestExactReadingsStaySensible: a figure declared exact must not divide by zero
// nor throw out the thread for a hundredth of a millimetre.
func TestExactReadingsStaySensible(t *testing.T) {
	id, err := Identify(Readings{Major: measure.Exact(units.Millimetres(7.99)), Pitch: measure.Exact(units.Millimetres(1.001))}, IdentifyOptions{})
	if err != nil || id.Thread().Name() != "M8x1" {
		t.Errorf("%v, %v", id.Thread(), err)
	}
}

func logPart(p Part, s System) float64 {
	if p == PartUnknown {
		return 0
	}
	return math.Log(partChances(s)[p-1])
}

// TestIdentifyHoles: nuts read by their hole and pitch, the hole even over the
// nut's tolerance: the true thread is first or alike in 99 % of the trials.
func TestIdentifyHoles(t *testing.T) {
	n := 4000
	if testing.Short() {
		n = 1000
	}
	r := rand.New(rand.NewPCG(3, 4000))
	all, in := tables(), 0
	for i := range n {
		truth := all[i%len(all)]
		hole := truth.section().inner + nutMinorTolerance(&truth)*r.Float64() + 0.05*r.NormFloat64()
		id, err := Identify(Readings{
			Hole:  measure.Of(units.Millimetres(hole), units.Millimetres(0.05)),
			Pitch: measure.By(truth.Pitch().Times(1+0.005*r.NormFloat64()), measure.PitchGauge()),
		}, IdentifyOptions{})
		if err != nil {
			t.Fatal(err)
		}
		for _, a := range id.Alike {
			if a == truth {
				in++
				break
			}
		}
	}
	if got := float64(in) / float64(n); got < 0.99 {
		t.Errorf("first or alike in %.4f of %d trials", got, n)
	}
}

// TestPruningLosesNothing compares the short list with a ranking of all threads.
func TestPruningLosesNothing(t *testing.T) { rapid.Check(t, checkIdentify) }

func FuzzIdentify(f *testing.F) {
	fuzzBytes(f)
	f.Fuzz(rapid.MakeFuzz(checkIdentify))
}

func checkIdentify(r *rapid.T) {
	all := tables()
	th := all[rapid.IntRange(0, len(all)-1).Draw(r, "thread")]
	in := Readings{}
	if rapid.Bool().Draw(r, "major?") {
		in.Major = measure.Of(th.Major().Times(rapid.Float64Range(0.97, 1.02).Draw(r, "major")), units.Millimetres(rapid.Float64Range(0.005, 0.3).Draw(r, "u")))
	} else {
		g, _ := th.Geometry()
		in.Hole = measure.Of(g.MinorNut.Times(rapid.Float64Range(0.98, 1.1).Draw(r, "hole")), units.Millimetres(rapid.Float64Range(0.005, 0.3).Draw(r, "u")))
	}
	if rapid.Bool().Draw(r, "pitch?") {
		in.Pitch = measure.Of(th.Pitch().Times(rapid.Float64Range(0.98, 1.02).Draw(r, "pitch")), th.Pitch().Times(rapid.Float64Range(0.002, 0.05).Draw(r, "up")))
	}
	if rapid.Bool().Draw(r, "flank?") {
		in.Flank = measure.Of(th.Form().Included()+units.Degrees(rapid.Float64Range(-4, 4).Draw(r, "flank")), units.Degree)
	}
	in.Part = Part(rapid.IntRange(0, 3).Draw(r, "part"))
	opt := IdentifyOptions{}
	if rapid.Bool().Draw(r, "weights?") {
		// one system is a thousand or a thousand million times likelier or less likely beforehand
		opt.Weights = map[System]float64{
			System(rapid.IntRange(1, int(Spoke)).Draw(r, "system")): rapid.SampledFrom([]float64{1e-9, 1e-3, 1e3, 1e9}).Draw(r, "weight"),
		}
	}
	id, err := Identify(in, opt)
	if err != nil {
		r.Fatal(err)
	}
	e, err := evidenceOf(in, opt)
	if err != nil {
		r.Fatal(err)
	}
	var causes []measure.Cause
	total := 0.0
	for i := range all {
		w, ok := opt.Weights[all[i].system]
		if !ok {
			w = 1
		}
		total += w
		causes = append(causes, measure.Cause{Key: all[i].key, Text: all[i].name, Prior: w, Hypothesis: fixed(e.logLikelihood(&all[i]) + logPart(in.Part, all[i].system))})
	}
	full, err := measure.Rank(nil, causes, measure.Cause{Prior: total * elseWeight / (1 - elseWeight), Hypothesis: fixed(e.elseLogLikelihood())})
	if err != nil {
		r.Fatal(err)
	}
	for _, o := range full.Odds {
		// 350 threads of a millionth of the leader each are what may be missing
		got, _ := id.Causes.Of(o.Key)
		if math.Abs(got.Share-o.Share) > 4e-4 {
			r.Fatalf("%s: share %v, of all threads %v", o.Key, got.Share, o.Share)
		}
	}
}

func TestTurn(t *testing.T) {
	th := MustParse("1/4 BSF")
	if _, why := th.Turn(Undo); why.Code != "hand-unknown" {
		t.Errorf("advice without the hand: %v", why)
	}
	for _, c := range []struct {
		h    Hand
		a    Action
		want Turn
	}{{Right, Undo, Anticlockwise}, {Right, DoUp, Clockwise}, {Left, Undo, Clockwise}, {Left, DoUp, Anticlockwise}} {
		if got, why := th.WithHand(c.h).Turn(c.a); got != c.want || why.Given() {
			t.Errorf("%v %v: %v, %v", c.h, c.a, got, why)
		}
	}
}

func TestReadPitch(t *testing.T) {
	for in, mm := range map[string]float64{"26 tpi": 25.4 / 26, "1.25 mm": 1.25, "11 1/2 TPI": 25.4 / 11.5, "1 mm ± 0.01": 1} {
		p, err := ReadPitch(in, measure.PitchGauge())
		if err != nil || math.Abs(p.Value().Millimetres()-mm) > 1e-12 || !(p.U() > 0) {
			t.Errorf("%q = %v, %v", in, p, err)
		}
	}
	if p, err := ReadPitch("", measure.PitchGauge()); err != nil || p.Taken() {
		t.Errorf("empty: %v, %v", p, err)
	}
	if _, err := ReadPitch("0 tpi", measure.PitchGauge()); err == nil {
		t.Error("0 tpi was taken")
	}
}
