package fastener

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/units"
)

// TestStrippingAreas: areas and least engagement from the limits that FED-STD-H28
// prints for two threads; the areas themselves were worked out apart from this
// library, no printed answer being at hand.
func TestStrippingAreas(t *testing.T) {
	big, err := Of("2 1/2-4 UNC", UnifiedForm, units.Inches(2.5), units.Inches(0.25))
	if err != nil {
		t.Fatal(err)
	}
	steel := units.Megapascals(800)
	for _, c := range []struct {
		th                           Thread
		eb, db, k, en                float64
		area, perBolt, perHole, long float64
		digit                        float64
	}{
		{big, 2.3241, 2.4731, 2.267, 2.3511, 3.999, 4.500, 6.074, 1.777, 0.001},
		{MustParse("2-56 UNC"), 0.0717, 0.0813, 0.0737, 0.0772, 0.00370, 0.1008, 0.1616, 0.0733, 0.0001},
	} {
		e := Engaged{
			Thread: c.th, Length: c.th.Major(), BoltTensile: steel, Hole: MaterialOf("steel", steel),
			BoltEffectiveMin: units.Inches(c.eb), BoltMajorMin: units.Inches(c.db), HoleMinor: units.Inches(c.k), NutEffectiveMax: units.Inches(c.en),
		}
		s, err := Strip(e)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range []struct {
			what       string
			got, want  float64
			lastDigits float64
		}{
			{"stress area", s.StressArea.SquareInches(), c.area, c.digit / 10},
			{"bolt shear per inch", s.BoltShear.SquareInches() / e.Length.Inches(), c.perBolt, c.digit},
			{"hole shear per inch", s.HoleShear.SquareInches() / e.Length.Inches(), c.perHole, c.digit},
			{"least engagement", s.Least.Low.Inches(), c.long, c.digit},
		} {
			if p.what == "stress area" && c.area > 1 {
				p.lastDigits = c.digit
			}
			if math.Abs(p.got-p.want) > 0.51*p.lastDigits {
				t.Errorf("%v %s = %.6f, want %v", c.th, p.what, p.got, p.want)
			}
		}
	}
}

// TestLeastEngagementBalances: at the least engagement the weaker thread strips
// just as the bolt breaks, whatever the materials.
func TestLeastEngagementBalances(t *testing.T) { rapid.Check(t, checkStrip) }

func FuzzStrip(f *testing.F) {
	fuzzBytes(f)
	f.Fuzz(rapid.MakeFuzz(checkStrip))
}

func checkStrip(r *rapid.T) {
	all := tables()
	th := all[rapid.IntRange(0, len(all)-1).Draw(r, "thread")]
	e := Engaged{Thread: th, Length: th.Major(), BoltTensile: units.Megapascals(rapid.Float64Range(300, 1200).Draw(r, "bolt")), Hole: MaterialOf("x", units.Megapascals(rapid.Float64Range(100, 1200).Draw(r, "hole")))}
	s, err := Strip(e)
	if err != nil {
		r.Fatal(err)
	}
	if s.Reason.Given() || s.Least.Low > th.Major().Times(10) {
		return
	}
	e.Length = s.Least.Low
	again, err := Strip(e)
	if err != nil {
		r.Fatal(err)
	}
	if weaker := min(again.BoltStrips, again.HoleStrips.Low); math.Abs((weaker - again.BoltBreaks).SI()) > 1e-9*again.BoltBreaks.SI() {
		r.Fatalf("%v: at %v strips at %v, breaks at %v", th, e.Length, weaker, again.BoltBreaks)
	}
	e.Length = s.Least.Low.Times(0.9)
	if again, _ = Strip(e); again.First == BoltBreaks {
		r.Fatalf("%v: bolt breaks at nine tenths of the least engagement", th)
	}
}

func TestStripSaysWhatIsNotKnown(t *testing.T) {
	th := MustParse("5/16-26 cycle")
	s, err := Strip(Engaged{Thread: th, Length: th.Major()})
	if err != nil || s.Reason.Code != "grade-unknown" || s.BoltShear <= 0 {
		t.Errorf("%+v, %v", s, err)
	}
	alloy, err := Strip(Engaged{Thread: th, Length: th.Major(), BoltTensile: units.Megapascals(800), Hole: LightAlloy()})
	if err != nil || alloy.First != HoleStrips || alloy.Least.Low <= th.Major() {
		t.Errorf("an 8.8 bolt one diameter deep in light alloy: %v, least %v, %v", alloy.First, alloy.Least, err)
	}
	if _, err := Strip(Engaged{Thread: th, Length: th.Major(), HoleMinor: th.Major()}); err == nil {
		t.Error("a hole as large as the bolt was taken")
	}
	if l, err := UsualEngagement(th, LightAlloy()); err != nil || math.Abs(l.Inches()-(2*0.3125+0.062)) > 1e-12 {
		t.Errorf("light alloy: %v, %v", l, err)
	}
	if _, err := UsualEngagement(th, BrassStock()); err == nil {
		t.Error("a rule of thumb for brass")
	}
}
