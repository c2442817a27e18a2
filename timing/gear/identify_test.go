package gear_test

import (
	"math"
	"strings"
	"testing"

	"example.com/benchbook/timing/gear"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
	"pgregory.net/rapid"
)

// sizeOf is the size of a key among those found, or the zero Size.
func sizeOf(got gear.Identified, key string) gear.Size {
	for _, s := range got.Sizes {
		if s.Key == key {
			return s
		}
	}
	return gear.Size{}
}

// read is a caliper's reading of a figure.
func read(x units.Length) measure.Reading[units.Length] {
	return measure.Of(x, units.Millimetres(0.01))
}

// overTips is the greatest a caliper finds over the tips: for an odd number of teeth one
// jaw lies flat across two tips, the other on the one opposite.
func overTips(tip units.Length, teeth int) units.Length {
	if teeth%2 == 0 {
		return tip
	}
	return tip.Times(0.5) + tip.Times(math.Cos(math.Pi/float64(teeth))/2)
}

// A wheel made to a standard size and read without error fits that size without a
// remainder, with its profile shift found: tips, spans and centre as the package's own
// geometry makes them, with odd teeth and helical ones.
func TestIdentifyKnowsItsOwnWheel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := gear.Wheel{
			Teeth: rapid.IntRange(17, 60).Draw(t, "z"), Module: 2, Pressure: rapid.SampledFrom([]units.Angle{20, 14.5}).Draw(t, "pressure"),
			Helix: units.Degrees(float64(rapid.IntRange(-30, 30).Draw(t, "helix"))), Shift: rapid.Float64Range(-0.3, 0.3).Draw(t, "shift"),
		}
		mate := gear.Wheel{Teeth: rapid.IntRange(17, 60).Draw(t, "mate"), Module: 2, Pressure: w.Pressure, Helix: -w.Helix}
		g, err := w.Geometry()
		if err != nil {
			t.Fatal(err)
		}
		over := w.Teeth/10 + 1
		one, _ := w.Span(over)
		two, _ := w.Span(over + 1)
		opt := gear.IdentifyOptions{Shift: 9, Thinning: units.Millimetres(1e-6), Stub: 1e-6} // the shift is free, nothing else
		f := gear.Found{Teeth: w.Teeth, Over: over, Helix: w.Helix}
		which := rapid.IntRange(0, 2).Draw(t, "which")
		switch which {
		case 0:
			f.Tip, f.Span, f.SpanNext = read(overTips(g.Tip, w.Teeth)), read(one.W), read(two.W)
		case 1:
			f.Tip = read(overTips(g.Tip, w.Teeth))
		case 2:
			f.Span = read(one.W)
		}
		if rapid.Bool().Draw(t, "with its mate") {
			w0, m0 := w, mate
			w0.Shift = 0
			c, err := gear.Meshing{Pinion: w0, Wheel: m0}.Contact()
			if err != nil {
				t.Fatal(err)
			}
			f.MateTeeth = mate.Teeth
			f.Centre = measure.Of(c.StandardCentre, 100*units.Millimetre) // says next to nothing of the shift
		}
		got, err := gear.Identify(f, opt)
		if err != nil {
			t.Fatal(err)
		}
		key := "module 2 mm at " + w.Pressure.String()
		s := sizeOf(got, key)
		// A shift spread of 9 draws the shift in by less than a part in 1e5; thinning and
		// stub of a millionth take as little.
		if s.Key == "" || s.ChiSquared > 0.01 || math.Abs(s.Shift-w.Shift) > 1e-3 {
			t.Fatalf("%s: %+v, shift %v", key, s, w.Shift)
		}
		if math.Abs((s.BasePitch - g.BasePitch).Millimetres()) > 1e-9 {
			t.Fatalf("base pitch %v, want %v", s.BasePitch, g.BasePitch)
		}
		if which == 0 && math.Abs((got.Base.Value()-g.BasePitch).Millimetres()) > 1e-9 || got.Base.Taken() != (which == 0) {
			t.Fatalf("base pitch by the spans %v, want %v", got.Base, g.BasePitch)
		}
		if got.Module.Taken() != (which != 2) {
			t.Fatalf("module by the tips %v", got.Module)
		}
		// By the tips as if unshifted: 2 (z/cos b + 2 + 2x)/(z/cos b + 2).
		if n := float64(w.Teeth)/math.Cos(w.Helix.SI()) + 2; which != 2 && math.Abs(got.Module.Value().Millimetres()-2*(n+2*w.Shift)/n) > 1e-9 {
			t.Fatalf("module by the tips %v", got.Module)
		}
	})
}

// A centre distance alone tells the module of a pair without shift: it fits without a
// remainder, and a module a quarter larger does not.
func TestIdentifyByTheCentre(t *testing.T) {
	for _, helix := range []units.Angle{0, 25} {
		p := gear.Wheel{Teeth: 20, Module: 2, Helix: helix}
		w := gear.Wheel{Teeth: 40, Module: 2, Helix: -helix}
		c, err := gear.Meshing{Pinion: p, Wheel: w}.Contact()
		if err != nil {
			t.Fatal(err)
		}
		got, err := gear.Identify(gear.Found{Teeth: 20, MateTeeth: 40, Helix: helix, Centre: read(c.StandardCentre)}, gear.IdentifyOptions{Shift: 0.001})
		if s := sizeOf(got, "module 2 mm at 20°"); err != nil || s.Key == "" || s.ChiSquared > 1e-9 {
			t.Errorf("helix %v: %+v, %v", helix, s, err)
		}
		if o, _ := got.Causes.Of("module 2.5 mm at 20°"); o.Share > 1e-6 {
			t.Errorf("helix %v: %v", helix, o)
		}
	}
}

// Stub teeth are shorter at the tips: a tip a tenth of a module down on both sides is
// one spread of the addendum where that is a tenth, whatever the parity of the teeth.
func TestIdentifyStubTeeth(t *testing.T) {
	for _, z := range []int{24, 25} {
		tip := overTips(units.Millimetres(float64(2*z)+2*2*0.9), z)
		got, err := gear.Identify(gear.Found{Teeth: z, Tip: measure.Of(tip, units.Millimetres(1e-4))}, gear.IdentifyOptions{Shift: 1e-9, Stub: 0.1})
		if s := sizeOf(got, "module 2 mm at 20°"); err != nil || math.Abs(s.ChiSquared-1) > 1e-3 { // the reading's own doubt
			t.Errorf("%d teeth: %+v, %v", z, s, err)
		}
	}
}

// Weights before any reading, as the documentation of Identify has them.
func TestIdentifyWeighs(t *testing.T) {
	got, err := gear.Identify(gear.Found{Teeth: 24, Tip: measure.MustRead("52 mm", measure.Caliper())}, gear.IdentifyOptions{})
	if err != nil {
		t.Fatal(err)
	}
	prior := func(key string) float64 {
		o, ok := got.Causes.Of(key)
		if !ok {
			return 0
		}
		return o.Prior
	}
	one, sum := prior("DP 12 at 20°"), 0.0
	for _, o := range got.Causes.Odds {
		if o.Key != measure.SomethingElse {
			sum += o.Prior
		}
	}
	for key, want := range map[string]float64{
		"DP 12 at 14.5°": 1, "module 2 mm at 20°": 12.0 / 7, "module 2 mm at 14.5°": 2.0 / 7,
		"module 2.25 mm at 20°": 4.0 / 7, "module 1 mm at 20°": 12.0 / 7, "module 6.5 mm at 20°": 4.0 / 7,
		"module 7 mm at 20°":  0, // none of an engine
		measure.SomethingElse: 0.02 * sum / one,
	} {
		if r := prior(key) / one; math.Abs(r-want) > 1e-9*want {
			t.Errorf("%s: %v of DP 12, want %v", key, r, want)
		}
	}
}

// The usual span is over a tenth of the teeth and a half, rounded; the next readings
// name it and the one after, and the centre only where there is a mate.
func TestIdentifyAsksNext(t *testing.T) {
	for _, c := range []struct {
		teeth, mate int
		want        string
	}{
		{24, 0, "caliper over 3 teeth, caliper over 4 teeth"},
		{44, 0, "caliper over 5 teeth, caliper over 6 teeth"},
		{45, 0, "caliper over 5 teeth, caliper over 6 teeth"},
		{8, 0, "caliper over 2 teeth, caliper over 3 teeth"},
		{8, 1, "caliper over 2 teeth, caliper over 3 teeth"},
		{24, 2, "caliper over 3 teeth, caliper over 4 teeth, centre distance to its mate, by pins or mandrels"},
	} {
		got, err := gear.Identify(gear.Found{Teeth: c.teeth, MateTeeth: c.mate, Tip: measure.Of(units.Millimetres(float64(2*c.teeth+4)), units.Millimetres(0.3))}, gear.IdentifyOptions{})
		if err != nil {
			t.Fatal(c.teeth, err)
		}
		texts := map[string]bool{}
		for _, n := range got.NextReadings {
			texts[n.Text] = true
		}
		for _, want := range strings.Split(strings.Replace(c.want, "mate, by", "mate; by", 1), ", ") {
			want = strings.Replace(want, "mate; by", "mate, by", 1)
			if !texts[want] {
				t.Errorf("%d teeth: %q is not among %v", c.teeth, want, texts)
			}
			delete(texts, want)
		}
		if len(texts) > 0 {
			t.Errorf("%d teeth: %v as well", c.teeth, texts)
		}
	}
}

// A wheel of no standard size leaves none to show, and no table to name; one of a
// standard size names its table.
func TestIdentifyNoStandardSize(t *testing.T) {
	big, err := gear.Identify(gear.Found{Teeth: 10, Tip: measure.MustRead("500 mm", measure.Caliper())}, gear.IdentifyOptions{})
	if err != nil || big.Causes.Leader().Key != measure.SomethingElse || len(big.Sizes) != 0 || len(big.Basis.Sources) != 2 {
		t.Errorf("%v, %v, %+v, %v", big.Causes.Leader(), big.Sizes, big.Basis.Sources, err)
	}
	usual, err := gear.Identify(gear.Found{Teeth: 24, Tip: measure.MustRead("52 mm", measure.Caliper())}, gear.IdentifyOptions{})
	if err != nil || len(usual.Basis.Sources) < 3 {
		t.Errorf("%+v, %v", usual.Basis.Sources, err)
	}
}

// Something else is a module anywhere about that of the tips, within its own size, its
// shift and addendum as uncertain as any: 500 mm over ten teeth are 41.67 mm.
func TestSomethingElseGoesByTheTips(t *testing.T) {
	got, err := gear.Identify(gear.Found{Teeth: 10, Tip: read(500)}, gear.IdentifyOptions{Shift: 5, Stub: 2})
	o, _ := got.Causes.Of(measure.SomethingElse)
	const m = 500.0 / 12
	v := 0.01*0.01 + (2*m*5)*(2*m*5) + (2*m*2)*(2*m*2) + 500*500
	if want := -0.5 * math.Log(2*math.Pi*v); err != nil || math.Abs(o.LogLikelihood-want) > 1e-9 {
		t.Errorf("%v, by hand %v, %v", o.LogLikelihood, want, err)
	}
}

// What stands at a limit of Identify is taken, what stands past it refused.
func TestIdentifyLimits(t *testing.T) {
	tip := measure.MustRead("52 mm", measure.Caliper())
	found := func(f gear.Found, opt gear.IdentifyOptions) error {
		if f.Teeth == 0 {
			f.Teeth = 24
		}
		if !f.Tip.Taken() {
			f.Tip = tip
		}
		return second(gear.Identify(f, opt))
	}
	centre := func(mate int) error { return found(gear.Found{Centre: tip, MateTeeth: mate}, gear.IdentifyOptions{}) }
	none := gear.IdentifyOptions{}
	hold(t, []limit{
		{"60°", found(gear.Found{Helix: 60}, none), ""}, {"of the other hand", found(gear.Found{Helix: -60}, none), ""}, {"more", found(gear.Found{Helix: units.Degrees(up(60))}, none), "helix"},
		{"a mate of two teeth", centre(2), ""}, {"of one", centre(1), "mate_teeth"}, {"of 100000", centre(100_000), ""}, {"of more", centre(100_001), "mate_teeth"},
		{"a span over one", found(gear.Found{Over: 1}, none), ""}, {"over less", found(gear.Found{Over: -1}, none), "over"},
		{"over all but two", found(gear.Found{Over: 22}, none), ""}, {"over all but one", found(gear.Found{Over: 23}, none), "over"},
		{"spreads below 10", found(gear.Found{}, gear.IdentifyOptions{Shift: down(10)}), ""}, {"of 10", found(gear.Found{}, gear.IdentifyOptions{Shift: 10}), "options"},
		{"of nothing at all", found(gear.Found{}, gear.IdentifyOptions{Stub: -1e-9}), "options"}, {"a thinning of less", found(gear.Found{}, gear.IdentifyOptions{Thinning: -1e-9}), "options.thinning"},
		{"nothing read", second(gear.Identify(gear.Found{Teeth: 24}, none)), "span"},
	})
}
