package fastener

import (
	"math"
	"runtime"
	"slices"
	"strings"
	"testing"

	"example.com/benchbook/units"
)

func special(t *testing.T, f Form, d, p float64) Thread {
	t.Helper()
	th, err := Of("special", f, units.Millimetres(d), units.Millimetres(p))
	if err != nil {
		t.Fatal(err)
	}
	return th
}

func mated(t *testing.T, bolt, nut Thread, length float64, slack units.Length) Mating {
	t.Helper()
	m, err := Mate(bolt, nut, units.Millimetres(length), MateOptions{slack})
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// TestMatingByHand: ten pitches of 1.5 mm in a nut of 1.52 mm drift 0.2 mm. The flanks
// meet at once, the pitches sharing the drift to either side: the bolt stands in by
// 0.2 cot 30° of diameter less what room the effective diameters leave, and binds when
// that has used up the slack.
func TestMatingByHand(t *testing.T) {
	bolt, nut := special(t, MetricForm, 10, 1.5), special(t, MetricForm, 10, 1.52)
	h := math.Sqrt(3) / 2 // H in pitches
	m := mated(t, bolt, nut, 15, units.Millimetres(0.1))
	room := -0.75 * h * 0.02            // effective diameters, D - 3H/4 each
	at := func(turns float64) float64 { // of diameter, after so many turns
		// a coarser nut's groove is wider by a quarter of the difference each side of its middle
		return 2 * ((0.02*turns/2-0.02/4)*math.Sqrt(3) - room/2)
	}
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"drift", m.Drift.Millimetres(), 0.2}, {"room", m.DiameterRoom.Millimetres(), room},
		{"interference", m.Interference.Millimetres(), at(10)}, {"first turn", m.AtFirst.Millimetres(), at(1)},
	} {
		if math.Abs(c.got-c.want) > 1e-6 { // a shift of an arc's end at most
			t.Errorf("%s %v, want %v", c.what, c.got, c.want)
		}
	}
	binds := (0.1/2+room/2)/math.Sqrt(3)/0.01 + 0.5 // at(binds) = 0.1
	if m.Meeting != Binds || m.Turns.SI() > binds || m.Turns.SI() < binds-0.05 {
		t.Errorf("%v after %v turns, want %v", m.Meeting, m.Turns, binds)
	}
	if free := mated(t, bolt, nut, 15, units.Millimetre); free.Meeting == Binds || math.Abs(free.Turns.SI()-10) > 1e-12 {
		t.Errorf("%v after %v turns", free.Meeting, free.Turns)
	}
}

// TestDepthByHand: a bolt below the nut's outside diameter engages as much less of
// (D - D1)/2, D1 = D - 1.082532 P (ISO 724), and a bolt that belongs all of it.
func TestDepthByHand(t *testing.T) {
	for _, name := range []string{"M10", "1/2 BSW", "3/8-26 cycle", "2 BA", "1/4-28 UNF"} {
		th := MustParse(name)
		if m := mated(t, th, th, 0, 0); math.Abs(m.Depth.SI()-1) > 1e-12 || math.Abs(m.Strength.SI()-1) > 1e-12 {
			t.Errorf("%s in itself: depth %v, strength %v", name, m.Depth, m.Strength)
		}
	}
	nut := MustParse("M10")
	for _, d := range []float64{9.9, 9.5, 9, 8.5} {
		m := mated(t, special(t, MetricForm, d, 1.5), nut, 0, units.Millimetre)
		d1 := 10 - 1.082532*1.5
		if want := (d - d1) / (10 - d1); math.Abs(m.Depth.SI()-want) > 1e-5 { // six decimals of the constant
			t.Errorf("%v in M10: depth %v, want %v", d, m.Depth, want)
		}
	}
	// a bolt whose root lies outside the nut's crest engages to its own root only:
	// 0.613435 P a side (ISO 68-1) of 1 mm, in a nut of 3 mm pitch
	m := mated(t, special(t, MetricForm, 10, 1), special(t, MetricForm, 10, 3), 0, units.Millimetre)
	if want := 0.613435 / (0.541266 * 3); math.Abs(m.Depth.SI()-want) > 1e-5 {
		t.Errorf("fine in coarse: depth %v, want %v", m.Depth, want)
	}
}

// reach returns the argument, to the last bit, at which f, rising with it, is want.
// Machines that round products and sums together may pass a figure by that others
// meet: there the test is left out.
func reach(t *testing.T, f func(x float64) float64, lo, hi, want float64) float64 {
	t.Helper()
	for {
		mid := lo + (hi-lo)/2
		switch x := f(mid); {
		case x == want:
			return mid
		case mid == lo || mid == hi:
			if runtime.GOARCH != "amd64" {
				t.Skipf("nothing gives exactly %v: %v at %v", want, x, mid)
			}
			t.Fatalf("nothing gives exactly %v: %v at %v", want, x, mid)
		case x < want:
			lo = mid
		default:
			hi = mid
		}
	}
}

// TestMeetingsAtTheirBounds: the bounds of the doc comment belong to the better
// meeting, and a hair past them the worse one is named.
func TestMeetingsAtTheirBounds(t *testing.T) {
	hair := func(x units.Length) units.Length { return units.Millimetres(math.Nextafter(x.Millimetres(), 0)) }
	// a pair that interferes: M10 in a nut of a slightly finer pitch
	bolt, nut := special(t, MetricForm, 10, 1.5), special(t, MetricForm, 10, 1.49)
	m := mated(t, bolt, nut, 15, units.Millimetre)
	if !(m.AtFirst > 0 && m.Interference > m.AtFirst) {
		t.Fatalf("at first %v, then %v", m.AtFirst, m.Interference)
	}
	for _, c := range []struct {
		what     string
		slack    units.Length
		at, past Meeting
	}{
		{"the first turn uses up the slack", m.AtFirst, Binds, DoesNotGo},
		{"the last turn uses up the slack", m.Interference, Tight, Binds},
		{"the last turn uses up half the slack", m.Interference.Times(2), Sound, Tight},
	} {
		if got := mated(t, bolt, nut, 15, c.slack).Meeting; got != c.at {
			t.Errorf("%s: %v, want %v", c.what, got, c.at)
		}
		if got := mated(t, bolt, nut, 15, hair(c.slack)).Meeting; got != c.past {
			t.Errorf("a hair past, %s: %v, want %v", c.what, got, c.past)
		}
	}
	// a bolt that is thin: room at the effective diameter up to the slack
	thin, m10 := special(t, MetricForm, 9.9, 1.5), MustParse("M10")
	room := mated(t, thin, m10, 0, units.Millimetre).DiameterRoom
	if a, b := mated(t, thin, m10, 0, room).Meeting, mated(t, thin, m10, 0, hair(room)).Meeting; a != Sound || b != Weak {
		t.Errorf("room as the slack: %v, a hair more: %v", a, b)
	}
	if a, b := mated(t, thin, m10, 0, room).Text(), mated(t, thin, m10, 0, hair(room)).Text(); strings.Contains(a, "slack by") || !strings.Contains(b, "slack by") {
		t.Errorf("room as the slack: %s; a hair more: %s", a, b)
	}
	// and depth of three quarters and of one
	depth := func(d float64) Mating { return mated(t, special(t, MetricForm, d, 1.5), m10, 0, units.Millimetre) }
	for want, c := range map[float64][2]Meeting{0.75: {Sound, Weak}, 0.25: {Weak, DropsIn}} {
		d := reach(t, func(d float64) float64 { return depth(d).Depth.SI() }, 8.5, 10, want)
		below := d
		for depth(below).Depth.SI() == want {
			below = math.Nextafter(below, 0)
		}
		if a, b := depth(d).Meeting, depth(below).Meeting; a != c[0] || b != c[1] {
			t.Errorf("depth %v: %v, a hair less: %v", want, a, b)
		}
		// what is too shallow for a sound fit is said
		if said := func(m Mating) bool { return strings.Contains(m.Text(), "of the usual depth of thread engages") }; want == 0.75 && (said(depth(d)) || !said(depth(below))) {
			t.Errorf("at %v: %s; below: %s", want, depth(d).Text(), depth(below).Text())
		}
	}
}

// TestMatingTexts: what is said for and against, in the order of the doc.
func TestMatingTexts(t *testing.T) {
	m10 := MustParse("M10")
	for _, c := range []struct {
		what      string
		bolt, nut Thread
		length    float64
		slack     units.Length
		pro, con  []string
	}{
		{"itself", m10, m10, 0, 0, []string{"same pitch", "same angle between the flanks", "same effective diameter"}, nil},
		// 0.1 mm of diameter, 0.1 mm of slack and a hair
		{"thin", special(t, MetricForm, 9.9, 1.5), m10, 0, units.Millimetres(0.11), []string{"same pitch", "same angle between the flanks", "effective diameters 0.10 mm apart, within what making leaves"}, nil},
		{"thinner", special(t, MetricForm, 9.5, 1.5), m10, 0, units.Millimetres(0.11), []string{"same pitch", "same angle between the flanks"}, []string{"slack by 0.50 mm at the effective diameter", "only 69 % of the usual depth of thread engages", "the bolt has 89 % of the section that belongs there"}},
		{"thick", special(t, MetricForm, 10.3, 1.5), m10, 0, units.Millimetres(0.4), []string{"same pitch", "same angle between the flanks", "the bolt has 107 % of the section that belongs there"}, []string{"the bolt is 0.30 mm too thick at the effective diameter"}},
		// 0.02 mm a turn; by the formula of TestMatingByHand it binds after 3.30 turns
		{"coarser nut", special(t, MetricForm, 10, 1.5), special(t, MetricForm, 10, 1.52), 15, units.Millimetres(0.11), []string{"same angle between the flanks", "same effective diameter"}, []string{"pitches run 0.20 mm apart over 15.0 mm", "binds after 3.3 turns"}},
		{"left in right", m10.WithHand(Left), m10.WithHand(Right), 0, 0, []string{"same pitch", "same angle between the flanks", "same effective diameter"}, []string{"one is left-hand, the other right-hand"}},
	} {
		m := mated(t, c.bolt, c.nut, c.length, c.slack)
		if !slices.Equal(m.For, c.pro) || !slices.Equal(m.Against, c.con) {
			t.Errorf("%s (%v): for %q, against %q; want %q, %q", c.what, m.Meeting, m.For, m.Against, c.pro, c.con)
		}
	}
	if got := mated(t, m10, m10, 0, 0).Text(); got != "a M10 bolt in a M10 nut belongs" {
		t.Error(got)
	}
}
