package fastener

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/benchbook/units"
)

func names(list []StandIn) (out []string) {
	for _, s := range list {
		out = append(out, s.Thread.Name())
	}
	return out
}

func instead(t *testing.T, th Thread, opt StandInOptions) StandIns {
	t.Helper()
	s, err := StandInsFor(th, opt)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func made(t *testing.T, name string, f Form, d, p float64) Thread {
	t.Helper()
	th, err := Of(name, f, units.Millimetres(d), units.Millimetres(p))
	if err != nil {
		t.Fatal(err)
	}
	return th
}

// TestGrowthAllowed: a thread larger by just what is allowed is offered, and none that
// is not larger; nothing told means a quarter of the diameter, 1.7 mm at least.
func TestGrowthAllowed(t *testing.T) {
	th := made(t, "old", MetricForm, 8, 1.25)
	larger := made(t, "larger", MetricForm, 9.25, 1.25)
	g := larger.Major() - th.Major()
	hair := units.Millimetres(math.Nextafter(g.Millimetres(), 0))
	for growth, want := range map[units.Length]int{g: 1, hair: 0} {
		if s := instead(t, th, StandInOptions{Growth: growth, Among: []Thread{larger}}); len(s.Recut) != want {
			t.Errorf("growth of %v to %v: %q", g, growth, names(s.Recut))
		}
	}
	for _, c := range []struct {
		old, new float64
		ok       bool
	}{{6, 7.69, true}, {6, 7.71, false}, {8, 9.99, true}, {8, 10.01, false}, {8, 8, false}, {8, 7.9, false}} {
		s := instead(t, made(t, "old", MetricForm, c.old, 1), StandInOptions{Among: []Thread{made(t, "new", MetricForm, c.new, 1.001)}})
		if (len(s.Recut) == 1) != c.ok {
			t.Errorf("%v to %v: %q", c.old, c.new, names(s.Recut))
		}
	}
}

// TestRecutByHand: M8 stripped and cut to M10 takes 10 - 0.75 1.299038 1.5 = 8.539 mm,
// which cleans the old thread out; M9 of 1.25 takes 7.782 mm, and of its depth of
// 1.218 mm 0.218 still shows the old thread, 18 %.
func TestRecutByHand(t *testing.T) {
	m8 := MustParse("M8")
	s := instead(t, m8, StandInOptions{Among: []Thread{MustParse("M10"), made(t, "M9", MetricForm, 9, 1.25)}})
	if len(s.Recut) != 2 {
		t.Fatalf("%q", names(s.Recut))
	}
	m10, m9 := s.Recut[slices.Index(names(s.Recut), "M10")], s.Recut[slices.Index(names(s.Recut), "M9")]
	for _, c := range []struct {
		what      string
		got, want float64
		slack     float64
	}{
		{"hole of M10", m10.Hole.Millimetres(), 8.5386, 5e-5}, {"hole of M9", m9.Hole.Millimetres(), 7.7822, 5e-5},
		{"old thread left in M9", m9.OldThreadLeft.SI(), 0.2178 / 1.2178, 1e-4}, {"in M10", m10.OldThreadLeft.SI(), 0, 0},
		{"section of M10 to M8, ISO 898-1", m10.Strength.SI(), 58.0 / 36.6, 0.003}, // three figures each
		{"growth", m10.Growth.Millimetres(), 2, 1e-12},
	} {
		if math.Abs(c.got-c.want) > c.slack {
			t.Errorf("%s: %v, want %v", c.what, c.got, c.want)
		}
	}
	const wall, clean = "needs the wall round the hole, and room for its head", "the tapping hole cleans out the old thread"
	for _, c := range []struct {
		what      string
		old, new  Thread
		pro, con  []string
		growth    units.Length
		wantsNone bool
	}{
		{"coarser of the family", m8, MustParse("M10"), []string{"only 2.00 mm larger", clean, "of the same family of threads"}, []string{wall}, 0, false},
		{"fine of the family", m8, MustParse("M10x1"), []string{"only 2.00 mm larger", clean, "of the same family of threads"}, []string{wall}, 0, false},
		{"old thread left", m8, made(t, "M9", MetricForm, 9, 1.25), []string{"only 1.00 mm larger"}, []string{"18 % of the new depth still shows the old thread", "a " + System(0).String() + " bolt on a machine of metric coarse threads: mark it", wall}, 0, false},
		// 16 mm of 1 mm pitch: 0.0625 of the diameter
		{"very fine", MustParse("M14"), made(t, "M16x1", MetricForm, 16, 1), []string{"only 2.00 mm larger", clean}, []string{"a " + System(0).String() + " bolt on a machine of metric coarse threads: mark it", "very fine for its size: shallow, and soon stripped in light alloy", wall}, 0, false},
		{"just not very fine", MustParse("M14"), made(t, "M16", MetricForm, 16, units.Millimetres(16).Times(finePitch).Millimetres()), []string{"only 2.00 mm larger", clean}, []string{"a " + System(0).String() + " bolt on a machine of metric coarse threads: mark it", wall}, 0, false},
		{"strange family", MustParse("1/4 BSF"), MustParse("5/16-18 UNC"), []string{"only 1.59 mm larger"}, nil, 0, false},
		// a fine thread cut anew so coarse that less is left between its roots
		{"weaker", made(t, "fine", MetricForm, 10, 0.5), made(t, "coarse", MetricForm, 10.4, 1.4), nil, nil, 0, true},
	} {
		s := instead(t, c.old, StandInOptions{Among: []Thread{c.new}, Growth: c.growth})
		if c.wantsNone {
			if len(s.Recut) != 0 || s.Reason.Code != "no-stand-in" {
				t.Errorf("%s: %q, %v", c.what, names(s.Recut), s.Reason)
			}
			continue
		}
		if len(s.Recut) != 1 || s.Reason.Given() {
			t.Errorf("%s: %q, %v", c.what, names(s.Recut), s.Reason)
			continue
		}
		r := s.Recut[0]
		if c.con == nil { // only the family matters
			if !slices.Contains(r.Against, "a UNC bolt on a machine of BSF threads: mark it") {
				t.Errorf("%s: against %q", c.what, r.Against)
			}
			continue
		}
		if !slices.Equal(r.For, c.pro) || !slices.Equal(r.Against, c.con) {
			t.Errorf("%s: for %q, against %q", c.what, r.For, r.Against)
		}
	}
}

// TestOddThreadsStandInForTheirOwnKindOnly: pipe and brass threads are for fittings,
// and spokes are rolled.
func TestOddThreadsStandInForTheirOwnKindOnly(t *testing.T) {
	for _, c := range []struct {
		old, new string
		ok       bool
	}{
		{"1/4-26 brass", "5/16-26 brass", true}, {"1/4 BSF", "5/16-26 brass", false}, {"1/4-26 brass", "5/16 BSF", true},
		{"G 1/8", "G 1/4", true}, {"3/8 BSF", "G 1/8", false}, {"G 1/8", "7/16 BSF", true},
		{"15 SWG spoke", "14 SWG spoke", false}, {"1/4 BSF", "5/16 BSF", true},
	} {
		s := instead(t, MustParse(c.old), StandInOptions{Growth: units.Millimetres(5), Among: []Thread{MustParse(c.new)}})
		if (len(s.Recut) == 1) != c.ok {
			t.Errorf("%s for %s: %q", c.new, c.old, names(s.Recut))
		}
	}
}

// TestBoltsThatStandIn: every bolt that Mate calls sound or better, thicker and thinner
// alike, the nearest to the right one first.
func TestBoltsThatStandIn(t *testing.T) {
	th := MustParse("M10")
	var among []Thread
	for i := range 9 {
		d := 9.8 + 0.05*float64((i*5)%9)
		among = append(among, made(t, fmt.Sprintf("%.2f", d), MetricForm, d, 1.5))
	}
	opt := MateOptions{Slack: units.Millimetres(0.5)}
	s := instead(t, th, StandInOptions{Among: among, MateOptions: opt})
	var want []string
	for _, u := range among {
		if m, err := Mate(u, th, 0, opt); err != nil || m.Meeting <= Sound {
			want = append(want, u.Name())
		}
	}
	got := names(s.Bolts)
	slices.Sort(want)
	if sorted := slices.Sorted(slices.Values(got)); !slices.Equal(sorted, want) || len(want) < 7 {
		t.Errorf("%q, want %q", got, want)
	}
	// thick bolts interfere and thin ones hold less: a step either way is a step worse
	off := func(x StandIn) float64 { return math.Abs((x.Thread.Major() - th.Major()).Millimetres()) }
	for i, b := range s.Bolts {
		if math.Abs((b.Growth-b.Thread.Major()+th.Major()).Millimetres()) > 1e-12 || b.Strength != b.Mating.Strength {
			t.Errorf("%v: growth %v, strength %v", b.Thread, b.Growth, b.Strength)
		}
		for _, a := range s.Bolts[:i] {
			if same := (a.Growth > 0) == (b.Growth > 0); same && off(a) > off(b)+1e-9 {
				t.Errorf("%v before %v", a.Thread, b.Thread)
			}
		}
	}
	if got[0] != "10.00" {
		t.Errorf("first %s", got[0])
	}
	if s.Reason.Given() {
		t.Error("bolts stand in, and yet: " + s.Reason.Text)
	}
}

// TestBadnessOfBolts adds the parts up by hand: of the slack 1/4 is used up and 1/2 is
// room at the flanks, either way; 0.2 of the depth and 0.1 of the section are missing.
// What is better than usual is no merit.
func TestBadnessOfBolts(t *testing.T) {
	s := units.Millimetres(0.2)
	for _, c := range []struct {
		m    Mating
		want float64
	}{
		{Mating{Slack: s, Interference: s.Times(0.25), DiameterRoom: s.Times(0.5), Depth: 0.8, Strength: 0.9}, 0.25 + 0.5 + 0.2 + 0.1},
		{Mating{Slack: s, Interference: s.Times(-0.25), DiameterRoom: s.Times(-0.5), Depth: 1.2, Strength: 1.1}, 0.5},
	} {
		if got := c.m.badness(); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%v, want %v", got, c.want)
		}
	}
}

// TestBadnessOfRecuts: growth in diameters, an eighth for a strange family and for a
// very fine pitch each, half of the old thread left.
func TestBadnessOfRecuts(t *testing.T) {
	m8 := MustParse("M8")
	for _, c := range []struct {
		what string
		s    StandIn
		want float64
	}{
		{"one family", StandIn{Thread: MustParse("M10"), Growth: units.Millimetres(2)}, 0.25},
		{"its fine one", StandIn{Thread: MustParse("M10x1.25"), Growth: units.Millimetres(2)}, 0.25},
		{"a strange one", StandIn{Thread: MustParse("3/8 BSF"), Growth: units.Millimetres(1)}, 0.125 + 0.125},
		{"old thread left", StandIn{Thread: MustParse("M10"), Growth: units.Millimetres(2), OldThreadLeft: 0.2}, 0.25 + 0.1},
		{"just not very fine", StandIn{Thread: made(t, "x", MetricForm, 10, units.Millimetres(10).Times(finePitch).Millimetres()), Growth: units.Millimetres(2)}, 0.25 + 0.125},
		{"very fine, of no family", StandIn{Thread: made(t, "x", MetricForm, 10, 0.5), Growth: units.Millimetres(2)}, 0.25 + 0.125 + 0.125},
	} {
		if got := c.s.badness(m8); math.Abs(got-c.want) > 1e-12 {
			t.Errorf("%s: %v, want %v", c.what, got, c.want)
		}
	}
	// the list is in that order
	s := instead(t, MustParse("1/4 BSF"), StandInOptions{Most: 40})
	for i := range s.Recut[1:] {
		if s.Recut[i].badness(s.Thread) > s.Recut[i+1].badness(s.Thread) {
			t.Errorf("%v before %v", s.Recut[i].Thread, s.Recut[i+1].Thread)
		}
	}
	if eight := instead(t, MustParse("1/4 BSF"), StandInOptions{}); len(s.Recut) <= 8 || len(eight.Recut) != 8 {
		t.Errorf("%d of %d", len(eight.Recut), len(s.Recut))
	}
}

// TestNothingStandsIn: the reason is given only when there is neither bolt nor recut.
func TestNothingStandsIn(t *testing.T) {
	th := MustParse("M10")
	bolt, cut := made(t, "bolt", MetricForm, 9.98, 1.5), made(t, "cut", MetricForm, 12, 1.5)
	for _, c := range []struct {
		among []Thread
		none  bool
	}{{[]Thread{}, true}, {[]Thread{bolt}, false}, {[]Thread{cut}, false}, {[]Thread{bolt, cut}, false}} {
		if s := instead(t, th, StandInOptions{Among: c.among}); s.Reason.Given() != c.none {
			t.Errorf("among %v: bolts %q, recut %q, %v", c.among, names(s.Bolts), names(s.Recut), s.Reason)
		}
	}
}

// TestTwinsNearestFirst: by how far the sizes are apart, those of another angle after
// those as near of the same.
func TestTwinsNearestFirst(t *testing.T) {
	th := made(t, "asked", WhitworthForm, 10, 1)
	far, near := made(t, "1 % longer pitch", WhitworthForm, 10, 1.02), made(t, "half of that", WhitworthForm, 10, 1.01)
	thick, angle := made(t, "thicker too", WhitworthForm, 10.03, 1.01), made(t, "other angle", CycleForm, 10, 1)
	other := made(t, "other angle, half of that", CycleForm, 10, 1.01)
	tw, err := TwinsOf(th, TwinOptions{Length: units.Millimetres(20), Among: []Thread{thick, far, other, near, angle}})
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, x := range tw.Twins {
		got = append(got, x.Thread.Name())
	}
	want := []string{"other angle", "half of that", "other angle, half of that", "thicker too", "1 % longer pitch"}
	if !slices.Equal(got, want) {
		t.Errorf("%q, want %q", got, want)
	}
	for _, x := range tw.Twins {
		if !strings.HasPrefix(x.Text, "never mix asked and "+x.Thread.Name()+": its bolt in your nut ") {
			t.Error(x.Text)
		}
	}
}

// TestTwinsAtTheirBounds: what starts in the loosest pair, which has twice the middle
// slack, is a twin; a bolt that belongs either way round is none.
func TestTwinsAtTheirBounds(t *testing.T) {
	a, b := made(t, "a", MetricForm, 10, 1.5), made(t, "b", MetricForm, 10.2, 1.5)
	m, err := Mate(b, a, 0, MateOptions{})
	if err != nil {
		t.Fatal(err)
	}
	half := m.AtFirst.Times(0.5)
	twins := func(slack units.Length) int {
		tw, err := TwinsOf(a, TwinOptions{Among: []Thread{b}, MateOptions: MateOptions{slack}})
		if err != nil {
			t.Fatal(err)
		}
		return len(tw.Twins)
	}
	if twins(half) != 1 {
		t.Errorf("%v into a slack of %v is no twin", m.AtFirst, half)
	}
	// its bolt does not start, but the other bolt in its nut does, loosely: a twin still
	tw, _ := TwinsOf(a, TwinOptions{Among: []Thread{b}, MateOptions: MateOptions{units.Millimetres(math.Nextafter(half.Millimetres(), 0))}})
	if len(tw.Twins) != 1 || tw.Twins[0].AsBolt.atLoosest() != "does not start" {
		t.Errorf("%+v", tw.Twins)
	}
	at, _ := TwinsOf(a, TwinOptions{Among: []Thread{b}, MateOptions: MateOptions{half}})
	if at.Twins[0].AsBolt.atLoosest() != "starts if the pair is loose, then binds" {
		t.Error(at.Twins[0].Text)
	}
	// sound both ways is no twin
	if s := made(t, "s", MetricForm, 10.01, 1.5); func() int { tw, _ := TwinsOf(a, TwinOptions{Among: []Thread{s}}); return len(tw.Twins) }() != 0 {
		t.Error("a hundredth thicker is a twin")
	}
}
