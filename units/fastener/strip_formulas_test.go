package fastener

import (
	"math"
	"testing"

	"example.com/benchbook/units"
)

func stripped(t *testing.T, e Engaged) Stripping {
	t.Helper()
	s, err := Strip(e)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestStripTakesTheWorstOfItsClass: what is not given is the limit of size at an
// engagement of one diameter, so that giving it changes nothing.
func TestStripTakesTheWorstOfItsClass(t *testing.T) {
	for _, name := range []string{"M10", "3/8-16 UNC", "3/8 BSF"} {
		th := MustParse(name)
		l, err := th.Limits(0)
		if err != nil {
			t.Fatal(err)
		}
		e := Engaged{Thread: th, Length: th.Major(), BoltTensile: units.Megapascals(800), Hole: MildSteel()}
		bare := stripped(t, e)
		e.HoleMinor, e.NutEffectiveMax = l.NutMinorMax.Or(0), l.NutEffectiveMax.Or(0)
		e.BoltMajorMin, e.BoltEffectiveMin = l.BoltMajorMin.Or(0), l.BoltEffectiveMin.Or(0)
		given := stripped(t, e)
		for _, c := range [][2]float64{
			{bare.BoltShear.SI(), given.BoltShear.SI()}, {bare.HoleShear.SI(), given.HoleShear.SI()}, {bare.Least.High.SI(), given.Least.High.SI()},
		} {
			if math.Abs(c[0]/c[1]-1) > 1e-12 {
				t.Errorf("%s: %v by itself, %v as given", name, c[0], c[1])
			}
		}
	}
	// cycle threads have no limits: basic sizes, the nut's crest a quarter pitch out
	th := MustParse("3/8-26 cycle")
	g, _ := th.Geometry()
	e := Engaged{Thread: th, Length: th.Major()}
	bare := stripped(t, e)
	e.HoleMinor, e.NutEffectiveMax, e.BoltMajorMin, e.BoltEffectiveMin = g.MinorNut+th.Pitch().Times(0.25), g.Effective, th.Major(), g.Effective
	if given := stripped(t, e); math.Abs(bare.BoltShear.Ratio(given.BoltShear)-1) > 1e-12 || math.Abs(bare.HoleShear.Ratio(given.HoleShear)-1) > 1e-12 {
		t.Errorf("%v: %v by itself, %v as given", th, bare, given)
	}
}

// TestStripLoads: half the tensile strength times the area sheared, the whole of it
// times the stress area; J is the ratio of what the threads hold.
func TestStripLoads(t *testing.T) {
	th := MustParse("M10")
	s := stripped(t, Engaged{Thread: th, Length: units.Millimetres(8), BoltTensile: units.Megapascals(800), Hole: LightAlloy()})
	for _, c := range []struct {
		what      string
		got, want float64 // N = N/mm² mm²
	}{
		{"bolt breaks", s.BoltBreaks.Newtons(), 800 * s.StressArea.SquareMillimetres()},
		{"bolt strips", s.BoltStrips.Newtons(), 400 * s.BoltShear.SquareMillimetres()},
		{"hole at its weakest", s.HoleStrips.Low.Newtons(), 65 * s.HoleShear.SquareMillimetres()}, // 130 and 220 N/mm²
		{"hole at its strongest", s.HoleStrips.High.Newtons(), 110 * s.HoleShear.SquareMillimetres()},
		{"J at the weakest", s.Relative.High.SI(), s.BoltStrips.Ratio(s.HoleStrips.Low)},
		{"J at the strongest", s.Relative.Low.SI(), s.BoltStrips.Ratio(s.HoleStrips.High)},
	} {
		if math.Abs(c.got/c.want-1) > 1e-12 {
			t.Errorf("%s: %v, want %v", c.what, c.got, c.want)
		}
	}
}

func TestStripNamesTheWeakest(t *testing.T) {
	th := MustParse("M10")
	for _, c := range []struct {
		what       string
		length     float64 // in diameters
		bolt, hole float64 // N/mm²
		first      Failure
	}{
		{"deep in hard steel", 2, 800, 800, BoltBreaks},
		{"shallow in harder steel", 0.3, 400, 1200, BoltStrips},
		{"shallow in alloy", 0.5, 800, 150, HoleStrips},
	} {
		e := Engaged{Thread: th, Length: th.Major().Times(c.length), BoltTensile: units.Megapascals(c.bolt), Hole: MaterialOf("x", units.Megapascals(c.hole))}
		s := stripped(t, e)
		least := min(s.BoltBreaks, s.BoltStrips, s.HoleStrips.Low)
		if loads := map[Failure]units.Force{BoltBreaks: s.BoltBreaks, BoltStrips: s.BoltStrips, HoleStrips: s.HoleStrips.Low}; s.First != c.first || loads[s.First] != least {
			t.Errorf("%s: %v, loads %v", c.what, s.First, loads)
		}
	}
}

func TestStripSaysWhyThereIsNoAnswer(t *testing.T) {
	th := MustParse("M10")
	// crests of a hundredth of a millimetre on a bolt of 50 mm: the tolerances are more
	fine, err := Of("fine", WhitworthForm, units.Millimetres(50), units.Millimetres(0.05))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		e    Engaged
		code string
	}{
		{Engaged{Thread: th, Length: th.Major(), Hole: MildSteel()}, "grade-unknown"},
		{Engaged{Thread: th, Length: th.Major(), BoltTensile: 8e8}, "material-unknown"},
		{Engaged{Thread: fine, Length: fine.Major(), BoltTensile: 8e8, Hole: MildSteel()}, "nothing-engaged"},
	} {
		if s := stripped(t, c.e); s.Reason.Code != c.code || s.First != 0 || s.Least.High != 0 {
			t.Errorf("%v: %v, first %v, least %v", c.e.Thread, s.Reason, s.First, s.Least)
		}
	}
}
