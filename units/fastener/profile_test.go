package fastener

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/units"
)

// TestProfileIsArcsAndFlanks draws the section of bolt and nut by hand: straight
// flanks through the effective diameter a quarter pitch from the ridge, circles of
// the crest's radius that reach the outside and the minor diameter, and flats where
// the form has no rounding.
func TestProfileIsArcsAndFlanks(t *testing.T) {
	const d, p = 12, 1.5 // mm; 0.6 p needs no rounding in BA
	for form := WhitworthForm; form <= UnifiedForm; form++ {
		th, err := Of("x", form, units.Millimetres(d), units.Millimetres(p))
		if err != nil {
			t.Fatal(err)
		}
		g, err := th.Geometry()
		if err != nil {
			t.Fatal(err)
		}
		c, a := g.CrestRadius.Millimetres(), form.Included().SI()/2
		clear := 0.0 // taps clear the outside diameter of flat-crested threads by H/16
		if c == 0 {
			clear = g.Triangle.Millimetres() / 16
		}
		for _, part := range []struct {
			what        string
			p           profile
			top, bottom float64
		}{
			{"bolt", th.boltProfile(), d / 2.0, g.MinorBolt.Millimetres() / 2},
			{"nut", th.nutProfile(), d/2.0 + clear, g.MinorNut.Millimetres() / 2},
		} {
			for i := -150; i <= 450; i++ {
				z := p * float64(i) / 300
				off := math.Abs(z - p*math.Round(z/p)) // from the nearest ridge
				flank := g.Effective.Millimetres()/2 + (p/4-off)/math.Tan(a)
				want := min(max(flank, part.bottom), part.top)
				switch y := p/2 - off; {
				case off < c*math.Cos(a): // on a circle about the axis of the ridge
					want = part.top - c + c*math.Cos(math.Asin(off/c))
				case y < c*math.Cos(a): // and of the groove
					want = part.bottom + c - c*math.Cos(math.Asin(y/c))
				}
				// the circles touch the flanks but for the five digits of BA's radius
				if got := part.p.at(z); math.Abs(got-want) > 2e-5 {
					t.Fatalf("%v %s: radius %v at %v, want %v", form, part.what, got, z, want)
				}
			}
		}
	}
}

// TestOverlapIsTheWorst: no point of the axis shows more of the bolt inside the nut,
// and one shows as much.
func TestOverlapIsTheWorst(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		// of no system, so that no depth is rounded and circle and flank touch
		draw := func(what string) Thread {
			form := rapid.SampledFrom([]Form{WhitworthForm, CycleForm, MetricForm, UnifiedForm}).Draw(r, what)
			th, err := Of(what, form, units.Millimetres(rapid.Float64Range(9, 11).Draw(r, what+" diameter")), units.Millimetres(rapid.Float64Range(1.4, 1.6).Draw(r, what+" pitch")))
			if err != nil {
				r.Fatal(err)
			}
			return th
		}
		a, b := draw("bolt"), draw("nut")
		bolt, nut := a.boltProfile(), b.nutProfile()
		shift := rapid.Float64Range(0, 0.5).Draw(r, "shift") * nut.pitch
		got := overlap(bolt, nut, shift)
		const n = 2000
		worst, about := math.Inf(-1), math.Inf(-1)
		for i := -40; i <= n+40; i++ { // a little of the next turns too, where the search may look
			z := bolt.pitch * (float64(i)/n - 0.5)
			d := bolt.at(z) - nut.at(z-shift)
			about = max(about, d)
			if i >= 0 && i <= n {
				worst = max(worst, d)
			}
		}
		// between two points of this count the flanks fall by no more than the
		// step over the tangent, which is 0.44 at least
		// a corner narrower than a step of the first look may stand unseen beside a
		// blunter one: 2e-3 p at most found in 20,000 draws
		if got < worst-2e-3*bolt.pitch || got > about+bolt.pitch/n/0.44 {
			r.Fatalf("%v in %v off by %v: overlap %v, counted out %v", a, b, shift, got, worst)
		}
	})
}

// TestGeometryOfRootAndLead: ISO 68-1 and ASME B1.1 print 0.144338 p for the root
// radius, BS 84 0.137329 p; the lead angle is that of the helix unrolled.
func TestGeometryOfRootAndLead(t *testing.T) {
	for name, r := range map[string]float64{"M10": 0.144338, "3/8-16 UNC": 0.144338, "1/2 BSW": 0.137329, "3/8-26 cycle": 1.0 / 6} {
		th := MustParse(name)
		g, err := th.Geometry()
		if err != nil {
			t.Fatal(err)
		}
		if got := g.RootRadius.Ratio(th.Pitch()); math.Abs(got-r) > 5e-7 { // six decimals
			t.Errorf("%s: root radius %.7f p, printed %v", name, got, r)
		}
		round := g.Effective.Millimetres() * math.Pi
		if rise := round * math.Tan(g.Lead.SI()); math.Abs(rise-th.Pitch().Millimetres()) > 1e-12 { // last bits
			t.Errorf("%s: rises %v in a turn of %v, pitch %v", name, rise, round, th.Pitch())
		}
	}
}

// TestRoundCrestOnAFlatFlank: a Whitworth crest in a metric groove bears as a wire
// of the crest's radius c does, where its tangent is the flank's: c sin 30° above its
// middle and c cos 30° beside it.
func TestRoundCrestOnAFlatFlank(t *testing.T) {
	const d, p = 10, 1.5
	bolt, err := Of("bolt", WhitworthForm, units.Millimetres(d), units.Millimetres(p))
	if err != nil {
		t.Fatal(err)
	}
	nut := MustParse("M10")
	b, _ := bolt.Geometry()
	n, _ := nut.Geometry()
	c := b.CrestRadius.Millimetres()
	for i := range 20 {
		shift := 0.01 * p * float64(i)
		crest := d/2.0 - c + 0.5*c
		flank := n.Effective.Millimetres()/2 + (p/4-math.Sqrt(3)/2*c-shift)*math.Sqrt(3)
		for _, s := range []float64{shift, -shift} { // either way round
			if got := overlap(bolt.boltProfile(), nut.nutProfile(), s); math.Abs(got-(crest-flank)) > 1e-9 { // a smooth peak closed in on
				t.Errorf("shifted %v: %v, want %v", s, got, crest-flank)
			}
		}
	}
}
