package refdata

import (
	"math"
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"pgregory.net/rapid"
)

// At a row the answer is the row; between two, every end lies between theirs.
func TestBeginAt(t *testing.T) {
	for p := range StartingPoints().All() {
		b, err := BeginAt(p.Displacement, "")
		if err != nil || b.Reason.Given() || b.Point.Bore != p.Bore || b.Point.MainJet != p.MainJet || b.Below != p || b.Above != p {
			t.Errorf("%s: %+v, %v", p.Name, b, err)
		}
		if p.Origin.Status() != CommonPractice || p.Tune != RoadTune {
			t.Errorf("%s: %v, %v", p.Name, p.Origin, p.Tune)
		}
		// Inches and millimetres are one range, to a sixteenth and half a millimetre.
		for _, d := range []units.Length{p.Bore.Low.value - p.InchBore.Low.value, p.Bore.High.value - p.InchBore.High.value} {
			if d.Millimetres() > 1.1 || d.Millimetres() < -1.1 {
				t.Errorf("%s: bore %v and %v", p.Name, p.Bore, p.InchBore)
			}
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		cc := rapid.Float64Range(125, 650).Draw(t, "cc")
		b, err := BeginAt(units.CubicCentimetres(cc), RoadTune)
		if err != nil || b.Reason.Given() {
			t.Fatalf("%g cc: %v, %v", cc, b.Reason, err)
		}
		if b.Share < 0 || b.Share > 1 || b.Below.Displacement > b.Above.Displacement {
			t.Fatalf("%g cc: %v of the way from %s to %s", cc, b.Share, b.Below.Name, b.Above.Name)
		}
		lo, hi, ok := b.Point.Bore.Ends()
		if !ok || lo < min(b.Below.Bore.Low.value, b.Above.Bore.Low.value)-1e-9 || hi > max(b.Below.Bore.High.value, b.Above.Bore.High.value)+1e-9 || lo > hi {
			t.Fatalf("%g cc: bore %v", cc, b.Point.Bore)
		}
	})
	for _, c := range []struct {
		cc   float64
		tune Tune
		want string
	}{{124, "", "outside-table"}, {651, "", "outside-table"}, {397, RacingTune, "tune-without-figures"}, {397, SideValve, "tune-without-figures"}} {
		if b, err := BeginAt(units.CubicCentimetres(c.cc), c.tune); err != nil || b.Reason.Code != c.want || b.Point.Name != "" {
			t.Errorf("%g cc, %s: %v, %v", c.cc, c.tune, b.Reason, err)
		}
	}
	if _, err := BeginAt(-1, "touring"); len(fault.Faults(err)) != 2 {
		t.Errorf("faults: %v", err)
	}
}

func TestFriction(t *testing.T) {
	r, sources, ok := Friction("moulded", "oil")
	if !ok || r.Low != 0.04 || r.High != 0.09 || len(sources) != 2 {
		t.Errorf("%v, %v, %v", r, sources, ok)
	}
	if _, _, ok := Friction("cheese", "dry"); ok {
		t.Error("cheese is no lining")
	}
}

func TestSpringStrength(t *testing.T) {
	// Music wire of 1 mm: A itself; of 2 mm: 2211/2^0.145 = 1999.6 MPa.
	s, ok := SpringStrengths().ByName("music wire ASTM A228, handbook")
	if !ok {
		t.Fatal("no music wire")
	}
	if p, ok := s.Tensile(2 * units.Millimetre).Get(); !ok || p.Megapascals() < 1999 || p.Megapascals() > 2000 {
		t.Errorf("%v", p)
	}
	// A law in the logarithm: 1980 - 740 log10(10) = 1240 MPa.
	en, ok := SpringStrengths().ByName("EN 10270-1 SM/DM")
	if p, known := en.Tensile(10 * units.Millimetre).Get(); !ok || !known || math.Abs(p.Megapascals()-1240) > 1e-9 {
		t.Errorf("EN 10270-1 SM of 10 mm: %v", p)
	}
	for _, d := range []units.Length{0, -1, units.Millimetres(50), units.Millimetres(math.NaN())} {
		if p := s.Tensile(d); p.IsKnown() {
			t.Errorf("wire of %v: %v", d, p)
		}
	}
}

func TestRangeHolds(t *testing.T) {
	r := RangeOf[units.Ratio](1, 2)
	for x, want := range map[units.Ratio]bool{0.999: false, 1: true, 1.5: true, 2: true, 2.001: false} {
		if r.Holds(x) != want {
			t.Errorf("%v in %v: %v", x, r, !want)
		}
	}
	open := Range[units.Ratio]{}
	if !open.Holds(-1e9) || open.Given() || open.String() != "unknown" || r.Holds(units.Value(math.NaN())) {
		t.Error("an open range holds everything, and no range holds what is not a number")
	}
}
