package fastener

import (
	"math"
	"slices"
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// below returns the first number under x at which f is no longer what it is at x.
func below(f func(x float64) float64, x float64) float64 {
	at := f(x)
	for f(x) == at {
		x = math.Nextafter(x, 0)
	}
	return x
}

// TestRecutAtItsBounds: a hole as large as the old outside diameter cleans the thread
// out; a hole as small as the old core can still be drilled; a bolt of just the old
// section is not said to be weaker.
func TestRecutAtItsBounds(t *testing.T) {
	recutOf := func(old Thread, p float64) func(d float64) (StandIn, bool) {
		return func(d float64) (StandIn, bool) {
			s := instead(t, old, StandInOptions{Growth: units.Millimetres(5), Among: []Thread{made(t, "new", MetricForm, d, p)}})
			if len(s.Recut) == 0 {
				return StandIn{}, false
			}
			return s.Recut[0], true
		}
	}
	figure := func(of func(d float64) (StandIn, bool), x func(StandIn) float64, outside float64) func(d float64) float64 {
		return func(d float64) float64 {
			if s, ok := of(d); ok {
				return x(s)
			}
			return outside
		}
	}
	hole := func(s StandIn) float64 { return s.Hole.Millimetres() }

	const clean = "the tapping hole cleans out the old thread"
	m8 := recutOf(MustParse("M8"), 1.25)
	holes := figure(m8, hole, 0)
	d := reach(t, holes, 9.1, 9.3, 8)
	at, _ := m8(d)
	under, _ := m8(below(holes, d))
	if !slices.Contains(at.For, clean) || slices.Contains(under.For, clean) {
		t.Errorf("hole of 8 mm: %q; a hair less: %q", at.For, under.For)
	}

	// 0.5 mm pitch of 10 mm leaves a core of 9.46 mm, into which 2.5 mm of pitch would cut
	fine := made(t, "fine", MetricForm, 10, 0.5)
	g, err := fine.Geometry()
	if err != nil {
		t.Fatal(err)
	}
	coarse := recutOf(fine, 2.5)
	plain := func(d float64) float64 { // its hole, offered or not
		h, err := TappingHole(made(t, "new", MetricForm, d, 2.5), 0.75, ChartDepth)
		if err != nil {
			t.Fatal(err)
		}
		return h.Millimetres()
	}
	d = reach(t, plain, 11, 13, g.MinorNut.Millimetres())
	_, offered := coarse(d)
	_, still := coarse(below(plain, d))
	if !offered || still {
		t.Errorf("a hole of the old core offered: %v, a hair less: %v", offered, still)
	}

	strength := func(s StandIn) float64 { return s.Strength.SI() }
	said := func(s StandIn) bool {
		return slices.ContainsFunc(s.Against, func(x string) bool { return x == "the bolt has 100 % of the old section" })
	}
	equal := recutOf(fine, 1.9)
	strengths := figure(equal, strength, 0)
	d = reach(t, strengths, 11, 11.6, 1)
	at, _ = equal(d)
	under, _ = equal(below(strengths, d))
	if said(at) || !said(under) {
		t.Errorf("of one section: %q; a hair less: %q", at.Against, under.Against)
	}
}

// TestTwinHoldingAtItsBound: what engages a quarter of the depth is a twin, what
// engages less drops in.
func TestTwinHoldingAtItsBound(t *testing.T) {
	nut := made(t, "nut", MetricForm, 12, 1.2)
	depth := func(d float64) float64 {
		return mated(t, made(t, "bolt", MetricForm, d, 1.2), nut, 0, units.Millimetre).Depth.SI()
	}
	d := reach(t, depth, 12-1.08*1.2, 12, 0.25)
	for _, c := range []struct {
		d     float64
		twins int
	}{{d, 1}, {below(depth, d), 0}} {
		// the bolt of 12 mm does not start in the other's nut, so this way round decides
		tw, err := TwinsOf(nut, TwinOptions{Among: []Thread{made(t, "bolt", MetricForm, c.d, 1.2)}, MateOptions: MateOptions{units.Millimetres(0.3)}})
		if err != nil || len(tw.Twins) != c.twins {
			t.Errorf("bolt of %v: %+v, %v", c.d, tw.Twins, err)
		}
	}
}

// TestFirstToGiveAtEquality: of two that give at one load the bolt is named before its
// thread, and that before the hole's.
func TestFirstToGiveAtEquality(t *testing.T) {
	th := MustParse("M10")
	for diameters, want := range map[float64]Failure{0.3: BoltStrips, 5: BoltBreaks} {
		of := func(pa float64) Stripping {
			return stripped(t, Engaged{Thread: th, Length: th.Major().Times(diameters), BoltTensile: units.Megapascals(800), Hole: MaterialOf("x", units.Pascals(pa))})
		}
		bolt := of(8e8)
		load := min(bolt.BoltBreaks, bolt.BoltStrips).SI()
		holds := func(pa float64) float64 { return of(pa).HoleStrips.Low.SI() }
		pa := reach(t, holds, 1e7, 2e9, load)
		if a, b := of(pa).First, of(below(holds, pa)).First; a != want || b != HoleStrips {
			t.Errorf("over %v diameters: %v, a hair weaker: %v", diameters, a, b)
		}
	}
}

// TestSectionSaidAtItsBounds: 95 % and 105 % of the section are near enough to say
// nothing.
func TestSectionSaidAtItsBounds(t *testing.T) {
	nut := MustParse("M10")
	of := func(d float64) Mating { return mated(t, made(t, "bolt", MetricForm, d, 1.5), nut, 0, units.Millimetre) }
	strength := func(d float64) float64 { return of(d).Strength.SI() }
	says := func(m Mating) bool {
		for _, s := range append(slices.Clone(m.For), m.Against...) {
			if s == "the bolt has 95 % of the section that belongs there" || s == "the bolt has 105 % of the section that belongs there" {
				return true
			}
		}
		return false
	}
	if d := reach(t, strength, 9.5, 10, 0.95); says(of(d)) || !says(of(below(strength, d))) {
		t.Errorf("95 %%: %v", of(d).Text())
	}
	d := reach(t, strength, 10, 10.5, 1.05)
	over := d
	for strength(over) == 1.05 {
		over = math.Nextafter(over, 20)
	}
	if says(of(d)) || !says(of(over)) {
		t.Errorf("105 %%: %v", of(d).Text())
	}
}

// TestPartIsAskedForUntilTold: a brass thread is met on fittings, BSF on bolts.
func TestPartIsAskedForUntilTold(t *testing.T) {
	for part, want := range map[Part]bool{PartUnknown: true, Bolt: false, Fitting: false} {
		id, err := Identify(Readings{Major: measure.MustRead("6.30 mm", measure.Caliper()), Pitch: mustPitch("26 tpi"), Part: part}, IdentifyOptions{})
		if err != nil {
			t.Fatal(err)
		}
		if got := slices.ContainsFunc(id.NextReadings, func(g measure.Gain) bool { return g.Key == "part" }); got != want {
			t.Errorf("%v: part asked for %v", part, got)
		}
	}
}
