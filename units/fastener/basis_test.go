package fastener

import (
	"slices"
	"testing"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// assumed and open list what a basis assumes, and what it says was not checked.
func assumed(b refdata.Basis) (out []string) {
	for _, a := range b.Assumed {
		out = append(out, a.What)
	}
	return out
}

func open(b refdata.Basis) (out []string) {
	for _, n := range b.NotChecked {
		out = append(out, n.What)
	}
	return out
}

func holdList(t *testing.T, what string, got []string, want ...string) {
	t.Helper()
	if !slices.Equal(got, want) {
		t.Errorf("%s: %q, want %q", what, got, want)
	}
}

// TestIdentifyOwnsWhatItTook: a default that a caller gave is no assumption, a
// reading that was taken is not asked for.
func TestIdentifyOwnsWhatItTook(t *testing.T) {
	major, hole := measure.MustRead("6.30 mm", measure.Caliper()), measure.MustRead("5.30 mm", measure.Caliper())
	pitch := mustPitch("26 tpi")
	count := Count{measure.Exact(units.Value(26)), measure.MustRead("25.4 mm ± 0.1", measure.Rule())}
	flank := measure.By(55*units.Degree, measure.Protractor())
	const crests, under, odds = "crests short of the basic diameter by up to", "share of threads cut further under size, to commercial limits", "odds before the readings"
	const diameter, pitchOpen, angle, kind, hand = "diameter", "pitch", "flank angle", "kind of part", "hand of the thread"
	weights := map[System]float64{Spoke: 0.5}
	for _, c := range []struct {
		what    string
		in      Readings
		opt     IdentifyOptions
		assumed []string
		open    []string
	}{
		{"diameter alone", Readings{Major: major}, IdentifyOptions{}, []string{crests, under, odds}, []string{pitchOpen, angle, kind, hand}},
		{"hole alone", Readings{Hole: hole}, IdentifyOptions{}, []string{crests, under, odds}, []string{pitchOpen, angle, kind, hand}},
		{"pitch alone", Readings{Pitch: pitch}, IdentifyOptions{}, []string{odds}, []string{diameter, angle, kind, hand}},
		{"count alone", Readings{Count: count}, IdentifyOptions{}, []string{odds}, []string{diameter, angle, kind, hand}},
		{"wear told", Readings{Major: major, Pitch: pitch}, IdentifyOptions{Wear: units.Millimetres(0.2)}, []string{under, odds}, []string{angle, kind, hand}},
		{"undercut told", Readings{Major: major, Pitch: pitch}, IdentifyOptions{Undercut: 0.1}, []string{crests, odds}, []string{angle, kind, hand}},
		{"weights told", Readings{Major: major, Pitch: pitch}, IdentifyOptions{Weights: weights}, []string{crests, under}, []string{angle, kind, hand}},
		{"all read", Readings{Major: major, Pitch: pitch, Count: count, Flank: flank, Part: Bolt, Hand: Right}, IdentifyOptions{Wear: units.Millimetres(0.2), Undercut: 0.1, Weights: weights}, nil, nil},
	} {
		id, err := Identify(c.in, c.opt)
		if err != nil {
			t.Fatal(err)
		}
		holdList(t, c.what+", assumed", assumed(id.Basis), c.assumed...)
		holdList(t, c.what+", open", open(id.Basis), c.open...)
		if got, want := slices.Contains(id.Basis.Cautions, refdata.RetainingNuts), c.in.Hand == HandUnknown; got != want {
			t.Errorf("%s: caution of retaining nuts %v", c.what, got)
		}
		row, _ := id.Candidates[0].Thread.Row()
		for _, s := range row.ThreadOrigin.Sources() {
			if !slices.Contains(id.Basis.Sources, s) {
				t.Errorf("%s: %v not among %v", c.what, s, id.Basis.Sources)
			}
		}
	}
	// a special thread rests on its form
	th, err := Of("adjuster", CycleForm, units.Millimetres(6.35), units.Millimetres(1))
	if err != nil {
		t.Fatal(err)
	}
	id, err := Identify(Readings{Major: major}, IdentifyOptions{Among: []Thread{th}})
	if err != nil || !slices.Equal(id.Basis.Sources, CycleForm.sources()) {
		t.Errorf("special: %v, %v", id.Basis.Sources, err)
	}
}

func TestHexagonsOwnWhatTheyTook(t *testing.T) {
	const cycle, era = "hexagon of a cycle thread", "era"
	for _, c := range []struct {
		thread  string
		opt     HexOptions
		assumed []string
	}{
		{"3/8-26 cycle", HexOptions{}, []string{cycle, era}},
		{"3/8-26 cycle", HexOptions{Era: AfterWar}, []string{cycle}},
		{"3/8 BSF", HexOptions{}, []string{era}},
		{"M10", HexOptions{}, []string{era}}, {"M10", HexOptions{Era: Modern}, nil}, // 16 and 17 mm
		{"M8", HexOptions{}, nil}, // 13 mm in every era
	} {
		h, err := Hexagons(MustParse(c.thread), c.opt)
		if err != nil {
			t.Fatal(err)
		}
		holdList(t, c.thread, assumed(h.Basis), c.assumed...)
		holdList(t, c.thread, open(h.Basis), "the hexagon itself")
	}
}

func TestSpannersOwnWhatTheyTook(t *testing.T) {
	flats := measure.MustRead("13.00 mm", measure.Caliper())
	const play, opening = "play of a fitting pair", "opening over marked width"
	for allowance, want := range map[units.Length][]string{0: {play, opening}, units.Micrometre: {play}} {
		f, err := SpannersFor(flats, nil, FitOptions{allowance})
		if err != nil {
			t.Fatal(err)
		}
		holdList(t, allowance.String(), assumed(f.Basis), want...)
	}
	// a pairing of markings from memory is owned as far as the spanner is of use
	for s := range refdata.WhitworthSpanners().All() {
		if s.PairingOrigin.Status() != refdata.FromMemory {
			continue
		}
		set := []Spanner{{whitworthMarks(s), s.AcrossFlats}}
		for play, owned := range map[float64]bool{0.02: true, 0.035: true, 0.045: false} { // snug, slack, rounding
			f, err := SpannersFor(measure.Exact(s.AcrossFlats.Times(1/(1+play))), set, FitOptions{units.Micrometre})
			if err != nil {
				t.Fatal(err)
			}
			if got := slices.Contains(f.Basis.Sources, s.PairingOrigin.Source()); got != owned {
				t.Errorf("%s with %v of play (%v): memory owned %v", s.W, play, f.Fits[0].Grip, got)
			}
		}
	}
}

func TestMatesOwnWhatTheyTook(t *testing.T) {
	const room, wear, hands = "room that making leaves", "wear and making of the two in hand", "hand of the threads"
	bolt, nut := MustParse("1/4 BSF"), MustParse("1/4-26 cycle")
	for _, c := range []struct {
		what      string
		bolt, nut Thread
		slack     units.Length
		assumed   []string
		open      []string
	}{
		{"hands not known", bolt, nut, 0, []string{room}, []string{wear, hands}},
		{"hand of the bolt not known", bolt, nut.WithHand(Right), 0, []string{room}, []string{wear, hands}},
		{"hand of the nut not known", bolt.WithHand(Right), nut, 0, []string{room}, []string{wear, hands}},
		{"all told", bolt.WithHand(Right), nut.WithHand(Right), units.Millimetres(0.1), nil, []string{wear}},
	} {
		m, err := Mate(c.bolt, c.nut, 0, MateOptions{c.slack})
		if err != nil {
			t.Fatal(err)
		}
		holdList(t, c.what, assumed(m.Basis), c.assumed...)
		holdList(t, c.what, open(m.Basis), c.open...)
	}
	// the standards of both forms, each once
	for _, n := range []Thread{nut, MustParse("1/4-26 brass")} {
		m, _ := Mate(bolt, n, 0, MateOptions{})
		for _, s := range append(WhitworthForm.sources(), n.form.sources()...) {
			count := 0
			for _, x := range m.Basis.Sources {
				if x == s {
					count++
				}
			}
			if count != 1 {
				t.Errorf("%v in %v: %s stands %d times", bolt, n, s.Title, count)
			}
		}
	}
	for slack, want := range map[units.Length][]string{0: {room}, units.Millimetres(0.1): nil} {
		tw, err := TwinsOf(bolt, TwinOptions{MateOptions: MateOptions{slack}})
		if err != nil {
			t.Fatal(err)
		}
		holdList(t, "twins", assumed(tw.Basis), want...)
		for hand, unseen := range map[Hand]bool{HandUnknown: true, Left: false} {
			in, err := StandInsFor(bolt.WithHand(hand), StandInOptions{MateOptions: MateOptions{slack}})
			if err != nil {
				t.Fatal(err)
			}
			holdList(t, "stand-ins", assumed(in.Basis), want...)
			if slices.Contains(open(in.Basis), "hand of the thread") != unseen {
				t.Errorf("hand %v: %q", hand, open(in.Basis))
			}
		}
	}
}

func TestJointsOwnWhatTheyTook(t *testing.T) {
	const friction, bearing, area = "friction", "bearing of the head", "stress area"
	const hole, stiff, hand = "the hole that holds the bolt", "prevailing torque", "hand of the thread"
	m8, cycle := MustParse("M8"), MustParse("5/16-26 cycle").WithHand(Right)
	outside, inside := units.Millimetres(13), units.Millimetres(9)
	for _, c := range []struct {
		what    string
		j       Joint
		assumed []string
		open    []string
	}{
		{"bare", Joint{Thread: m8}, []string{friction, bearing}, []string{hole, stiff, hand}},
		{"greased", Joint{Thread: m8, Friction: Greased(), NoHead: true}, []string{friction}, []string{hole, stiff, hand}},
		{"friction given", Joint{Thread: m8, Friction: SameFriction(0.1), NoHead: true}, nil, []string{hole, stiff, hand}},
		{"outside given", Joint{Thread: m8, Friction: SameFriction(0.1), BearingOutside: outside}, []string{bearing}, []string{hole, stiff, hand}},
		{"hole given", Joint{Thread: m8, Friction: SameFriction(0.1), BearingHole: inside}, []string{bearing}, []string{hole, stiff, hand}},
		{"both given", Joint{Thread: m8, Friction: SameFriction(0.1), BearingOutside: outside, BearingHole: inside}, nil, []string{hole, stiff, hand}},
		{"right-hand cycle", Joint{Thread: cycle, Friction: SameFriction(0.1), NoHead: true}, []string{area}, []string{hole, stiff}},
	} {
		r, err := Tighten(c.j, TightenOptions{})
		if err != nil {
			t.Fatal(err)
		}
		holdList(t, c.what, assumed(r.Basis), c.assumed...)
		holdList(t, c.what, open(r.Basis), c.open...)
		if got, want := slices.Contains(r.Basis.Cautions, refdata.RetainingNuts), c.j.Thread.Hand() == HandUnknown; got != want {
			t.Errorf("%s: caution of retaining nuts %v", c.what, got)
		}
	}
	oiled, _ := Tighten(Joint{Thread: m8}, TightenOptions{})
	greased, _ := Tighten(Joint{Thread: m8, Friction: Greased()}, TightenOptions{})
	if oiled.Basis.Assumed[0].Value != "oiled, 0.08 to 0.16" || greased.Basis.Assumed[0].Value != "greased" {
		t.Errorf("%v, %v", oiled.Basis.Assumed[0], greased.Basis.Assumed[0])
	}
}

func TestStrippingOwnsWhatItTook(t *testing.T) {
	const shear, limits, steel = "shear strength over tensile", "limits of size", "tensile strength of mild steel"
	m10, cycle := MustParse("M10"), MustParse("3/8-26 cycle")
	all := Engaged{
		Thread: m10, Length: m10.Major(), Hole: MaterialOf("bar", units.Megapascals(500)), BoltEffectiveMin: units.Millimetres(8.8),
		BoltMajorMin: units.Millimetres(9.7), NutEffectiveMax: units.Millimetres(9.2), HoleMinor: units.Millimetres(8.6),
	}
	for _, c := range []struct {
		what    string
		change  func(e *Engaged)
		assumed []string
		value   string
	}{
		{"all given", func(*Engaged) {}, []string{shear}, ""},
		{"steel of the table", func(e *Engaged) { e.Hole = MildSteel() }, []string{shear, steel}, ""},
		{"bolt's flanks not given", func(e *Engaged) { e.BoltEffectiveMin = 0 }, []string{shear, limits}, "worst of class 6g/6H"},
		{"bolt's crests not given", func(e *Engaged) { e.BoltMajorMin = 0 }, []string{shear, limits}, "worst of class 6g/6H"},
		{"nut's flanks not given", func(e *Engaged) { e.NutEffectiveMax = 0 }, []string{shear, limits}, "worst of class 6g/6H"},
		{"nut's crests not given", func(e *Engaged) { e.HoleMinor = 0 }, []string{shear, limits}, "worst of class 6g/6H"},
		{"no limits known", func(e *Engaged) { *e = Engaged{Thread: cycle, Length: cycle.Major()} }, []string{shear, limits}, "basic sizes, nut minor diameter a quarter pitch over"},
	} {
		e := all
		c.change(&e)
		s, err := Strip(e)
		if err != nil {
			t.Fatal(err)
		}
		holdList(t, c.what, assumed(s.Basis), c.assumed...)
		if c.value != "" && s.Basis.Assumed[1].Value != c.value {
			t.Errorf("%s: %v", c.what, s.Basis.Assumed[1])
		}
	}
}
