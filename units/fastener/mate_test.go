package fastener

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/units"
)

// TestOverlapOfOneFormIsClosed: for two bolts and nuts of one form that differ in
// pitch alone, the flanks decide, and a shift s along the axis costs s cot(a) of
// radius: 1.732 times in 60° threads, 1.921 in 55°, the figures gauge makers use
// for what an error of pitch costs in effective diameter.
func TestOverlapOfOneFormIsClosed(t *testing.T) {
	for _, c := range []struct {
		thread string
		cot    float64
	}{{"M10", 1.7321}, {"1/2-13 UNC", 1.7321}, {"1/2 BSW", 1.9210}, {"2 BA", 2.2727}} {
		th := MustParse(c.thread)
		for _, part := range []float64{0, 0.001, 0.01, 0.03} {
			s := part * th.Pitch().Millimetres()
			got := overlap(th.boltProfile(), th.nutProfile(), s)
			if math.Abs(got-s*c.cot) > 1e-9+5e-5*s { // four printed decimals of the cotangent
				t.Errorf("%s shifted %.4f: %.6f, want %.6f", c.thread, s, got, s*c.cot)
			}
		}
	}
}

// TestProfile: the profile has its table's diameters, half a pitch of metal at the
// effective diameter, and no steps.
func TestProfile(t *testing.T) {
	for th := range Threads() {
		p, s := th.boltProfile(), th.section()
		if d := 2*p.at(0) - th.Major().Millimetres(); math.Abs(d) > 1e-9 {
			t.Fatalf("%v: crest off by %v", th, d)
		}
		// the depth rounded as the standard rounds it opens or closes the root by
		// up to two roundings of 0.0001 in
		if d := 2*p.at(p.pitch/2) - s.bolt; math.Abs(d) > 0.006 {
			t.Fatalf("%v: root off by %v", th, d)
		}
		if d := 2*p.at(p.pitch/4) - s.effective; math.Abs(d) > 1e-9 {
			t.Fatalf("%v: effective diameter off by %v", th, d)
		}
		last := p.at(0)
		for i := 1; i <= 200; i++ {
			r := p.at(p.pitch / 2 * float64(i) / 200)
			if r > last+0.003 || last-r > p.pitch/2/200/p.tan+0.003 { // falls, never steeper than the flank, but for that rounding
				t.Fatalf("%v: step of %v at %d", th, r-last, i)
			}
			last = r
		}
	}
}

func TestEveryThreadBelongsToItself(t *testing.T) {
	for th := range Threads() {
		m, err := Mate(th, th, 0, MateOptions{})
		if err != nil || m.Meeting != Belongs || m.Interference.Abs() > units.Millimetres(0.006) { // two roundings of the depth to 0.0001 in
			t.Errorf("%v in itself: %v, interference %v, %v", th, m.Meeting, m.Interference, err)
		}
	}
	a := MustParse("9/16-20 cycle 60°")
	if m, _ := Mate(a.WithHand(Left), a.WithHand(Right), 0, MateOptions{}); m.Meeting != OtherWound {
		t.Errorf("left in right: %v", m.Meeting)
	}
}

// TestMoreLengthNeverHelps: over a longer nut the overlap grows, and the turns to
// binding do not depend on the length.
func TestMoreLengthNeverHelps(t *testing.T) {
	all := tables()
	rapid.Check(t, func(r *rapid.T) {
		a := all[rapid.IntRange(0, len(all)-1).Draw(r, "bolt")]
		var near []Thread
		for _, u := range all {
			if resembles(a, u) {
				near = append(near, u)
			}
		}
		b := near[rapid.IntRange(0, len(near)-1).Draw(r, "nut")]
		short := a.Major().Times(rapid.Float64Range(0.3, 1.5).Draw(r, "short"))
		long := short.Times(rapid.Float64Range(1, 3).Draw(r, "longer"))
		m, err := Mate(a, b, short, MateOptions{})
		if err != nil {
			r.Fatal(err)
		}
		n, err := Mate(a, b, long, MateOptions{})
		if err != nil {
			r.Fatal(err)
		}
		if n.Interference < m.Interference-units.Millimetres(1e-6) {
			r.Fatalf("%v in %v: %v over %v, %v over %v", a, b, m.Interference, short, n.Interference, long)
		}
		if m.Meeting == Binds && n.Meeting == Binds && math.Abs((m.Turns-n.Turns).SI()) > 0.11 { // both to a twentieth
			r.Fatalf("%v in %v binds after %v or %v", a, b, m.Turns, n.Turns)
		}
	})
}

// TestNearTwinsOfTheTrade: the pairs the trade warns of come out of the geometry.
func TestNearTwinsOfTheTrade(t *testing.T) {
	for _, c := range [][2]string{
		{"1/4 BSF", "1/4-26 cycle"}, {"1/2 BSW", "1/2-13 UNC"}, {"5/16-26 cycle", "M8x1"}, {"2 BA", "10-32 UNF"},
		{"2 BA", "M5"}, {"10-32 UNF", "M5"}, {"0 BA", "M6"}, {"3/8-26 cycle", "3/8-24 UNF"}, {"1/4 BSF", "1/4-28 UNF"}, {"M8", "5/16-18 UNC"},
	} {
		for _, d := range [][2]string{c, {c[1], c[0]}} {
			tw, err := TwinsOf(MustParse(d[0]), TwinOptions{})
			if err != nil {
				t.Fatal(err)
			}
			found := false
			for _, x := range tw.Twins {
				found = found || x.Thread.Name() == d[1]
			}
			if !found {
				t.Errorf("%s has no twin %s", d[0], d[1])
			}
		}
	}
	// and what does not start, or belongs, is none
	for _, c := range [][2]string{{"M6", "M6x0.75"}, {"5/16-26 cycle", "5/16 BSF"}, {"1/4 BSF", "1/4-26 brass"}, {"M8", "M10"}, {"1/4 BSF", "1/4 BSF"}} {
		tw, _ := TwinsOf(MustParse(c[0]), TwinOptions{})
		for _, x := range tw.Twins {
			if x.Thread.Name() == c[1] {
				t.Errorf("%s has twin %s: %s", c[0], c[1], x.Text)
			}
		}
	}
}

// TestTwinsAreMutual: if one is a twin of the other, so is the other of the one.
func TestTwinsAreMutual(t *testing.T) {
	step := 1
	if testing.Short() {
		step = 23 // every 23rd thread: the whole takes a second, ten under race
	}
	all := tables()
	for i := 0; i < len(all); i += step {
		tw, err := TwinsOf(all[i], TwinOptions{})
		if err != nil {
			t.Fatal(err)
		}
		for _, x := range tw.Twins {
			back, _ := TwinsOf(x.Thread, TwinOptions{Among: []Thread{all[i]}})
			if len(back.Twins) != 1 {
				t.Errorf("%v is a twin of %v, not the other way", x.Thread, all[i])
			}
		}
	}
}

func TestStandIns(t *testing.T) {
	has := func(list []StandIn, name string) bool {
		for _, s := range list {
			if s.Thread.Name() == name {
				return true
			}
		}
		return false
	}
	s, err := StandInsFor(MustParse("1/4 BSF"), StandInOptions{})
	if err != nil || !has(s.Bolts, "1/4-26 brass") || has(s.Bolts, "1/4-26 cycle") || !has(s.Recut, "5/16 BSF") {
		t.Errorf("1/4 BSF: %+v, %v", s, err)
	}
	s, err = StandInsFor(MustParse("5/16-26 cycle"), StandInOptions{})
	if err != nil || len(s.Recut) == 0 || s.Recut[0].Thread.Name() != "3/8-26 cycle" || s.Recut[0].OldThreadLeft != 0 || s.Recut[0].Strength <= 1 {
		t.Errorf("5/16-26 cycle: %+v, %v", s.Recut, err)
	}
	step := 1
	if testing.Short() {
		step = 11 // every eleventh thread
	}
	for i := 0; i < len(tables()); i += step {
		th := tables()[i]
		s, err := StandInsFor(th.WithHand(Left), StandInOptions{})
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range s.Recut {
			if c.Growth <= 0 || c.OldThreadLeft > oldThreadLimit || c.Thread.Hand() != Left || c.Hole <= 0 {
				t.Errorf("%v: %+v", th, c)
			}
			e, _ := Engagement(c.Thread, c.Hole, ChartDepth)
			if math.Abs(e.Percents()-75) > 1e-6 {
				t.Errorf("%v: hole %v gives %v", c.Thread, c.Hole, e)
			}
		}
		for _, b := range s.Bolts {
			if b.Mating.Meeting > Sound || b.Thread.Hand() != Left {
				t.Errorf("%v: %+v", th, b)
			}
		}
	}
}

func TestMatingSaysWhy(t *testing.T) {
	m, err := Mate(MustParse("5/16-26 cycle"), MustParse("M8x1"), 0, MateOptions{})
	if err != nil || m.Meeting != Binds || m.Turns < 1 || m.Turns > 6 || !strings.Contains(m.Text(), "pitches run") {
		t.Errorf("%v, %v", m.Text(), err)
	}
	if _, err := Mate(Thread{}, Thread{}, -1, MateOptions{Slack: -1}); err == nil {
		t.Error("no bolt and no nut were taken")
	}
}
