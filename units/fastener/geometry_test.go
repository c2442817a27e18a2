package fastener

import (
	"math"
	"testing"

	"example.com/benchbook/units"
)

// TestSectionsAgreeWithTables compares every thread's computed section with the
// figures printed in, or derived into, its reference row.
func TestSectionsAgreeWithTables(t *testing.T) {
	n := 0
	for th := range Threads() {
		row, ok := th.Row()
		if !ok {
			t.Errorf("%v has no row", th)
			continue
		}
		n++
		g, err := th.Geometry()
		if err != nil {
			t.Fatal(err)
		}
		// inch tables print 0.0001 in, metric ones 0.001 mm: half a digit of
		// each, a whole one where a printed figure was itself computed from
		// rounded figures (Unified tables), and 2 thou for the major diameter
		tol := units.Thous(0.0505)
		switch th.System() {
		case UNC, UNF:
			tol = units.Thous(0.11)
		case MetricCoarse, MetricFine, BSPP:
			tol = units.Micrometres(0.51)
		case BA:
			tol = units.Micrometres(0.01) // two and three decimals of exact sums
		}
		for _, c := range []struct {
			what      string
			got, want units.Length
		}{
			{"effective", g.Effective, row.Effective},
			{"minor of bolt", g.MinorBolt, row.Minor},
			{"minor of nut", g.MinorNut, row.MinorInternal},
		} {
			// Machinery's Handbook, 31st ed., p. 1979 prints 0.6763 and 0.9001 in for
			// the minor diameter of these two bolts; D - 1.190786 p, which every
			// other row obeys, gives 0.6756 and 0.9008
			if c.what == "minor of bolt" && (th.Name() == "3/4-16 UNF" || th.Name() == "1-12 UNF") {
				tol = units.Thous(0.75)
			}
			if d := (c.got - c.want).Abs(); d > tol {
				t.Errorf("%v %s = %v, table %v", th, c.what, c.got, c.want)
			}
		}
		if r, ok := row.Radius.Get(); ok && (g.CrestRadius-r).Abs() > units.Thous(0.006) { // five decimals of an inch, four of a mm
			t.Errorf("%v radius = %v, table %v", th, g.CrestRadius, r)
		}
		if a, ok := row.StressArea.Get(); ok {
			// printed areas carry three significant figures at least, or two
			// decimals of mm²
			slack := max(0.006*a.SquareMillimetres(), 0.0051)
			if math.Abs((g.StressArea - a).SquareMillimetres()) > slack {
				t.Errorf("%v stress area = %v, table %v", th, g.StressArea, a)
			}
		}
		if p, ok := row.MinorPrinted.Get(); ok && (g.MinorBolt-p).Abs() > units.Thous(1) { // three decimals, trade rounding
			t.Errorf("%v core = %v, trade list %v", th, g.MinorBolt, p)
		}
	}
	t.Logf("%d rows", n)
	if n < 338 {
		t.Errorf("%d rows, want 338 at least", n)
	}
}

// TestPublishedSizes holds figures read in published tables, as printed.
func TestPublishedSizes(t *testing.T) {
	for _, c := range []struct {
		name                    string
		effective, minor, inner float64 // zero: not printed
		inch                    bool
		digit                   float64
		source                  string
	}{
		// a maker's table of BSW prints 0.3933 for 1/2, unrounded; BS 84's rule gives 0.3932
		{"1/2 BSW", 0.4466, 0.3932, 0, true, 1e-4, "BS 84 basic sizes, published tables"},
		{"1 BSW", 0.9200, 0.8400, 0, true, 1e-4, "BS 84 basic sizes, published tables"},
		{"3/16 BSW", 0.1608, 0.1341, 0, true, 1e-4, "BS 84 basic sizes, published tables"},
		{"1/4 BSF", 0, 0.2008, 0, true, 1e-4, "BS 84 basic sizes, published tables"},
		{"7/16-26 cycle", 0, 0.397, 0, true, 1e-3, "cycle thread list, core diameters"},
		{"1-26 cycle", 0, 0.959, 0, true, 1e-3, "cycle thread list, core diameters"},
		{"2 BA", 4.215, 3.73, 0, false, 1e-3, "Machinery's Handbook, 31st ed., p. 2115"},
		{"16 BA", 0.675, 0.56, 0, false, 1e-3, "Machinery's Handbook, 31st ed., p. 2115"},
		{"G 1/2", 19.793, 18.631, 0, false, 1e-3, "ISO 228-1 basic sizes, trade chart"},
		{"1/4-28 UNF", 0.2268, 0, 0.2113, true, 1e-4, "Machinery's Handbook, 31st ed., p. 1979"},
		{"M10x1.25", 9.188, 0, 8.647, false, 1e-3, "ISO 724 basic sizes"},
		{"M10x1.25", 0, 8.466, 0, false, 1.01e-3, "ISO 724 form; printed from rounded constants"},
	} {
		g, err := MustParse(c.name).Geometry()
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range []struct {
			got  units.Length
			want float64
		}{{g.Effective, c.effective}, {g.MinorBolt, c.minor}, {g.MinorNut, c.inner}} {
			x := p.got.Millimetres()
			if c.inch {
				x = p.got.Inches()
			}
			if p.want != 0 && math.Abs(x-p.want) > 0.501*c.digit {
				t.Errorf("%s: %.5f, printed %v (%s)", c.name, x, p.want, c.source)
			}
		}
	}
}

// TestPublishedStressAreas: ISO 898-1 and ASME B1.1 areas to three figures.
func TestPublishedStressAreas(t *testing.T) {
	for name, want := range map[string]float64{
		"M6": 20.1, "M8": 36.6, "M10": 58.0, "M12": 84.3, "M16": 157, "M20": 245, "M24": 353, "M30": 561, "M36": 817,
	} {
		g, _ := MustParse(name).Geometry()
		// three significant figures: half of the last
		if got := g.StressArea.SquareMillimetres(); math.Abs(got-want) > 0.5*math.Pow(10, math.Floor(math.Log10(want))-2) {
			t.Errorf("%s: %.2f mm², printed %v", name, got, want)
		}
	}
	for name, want := range map[string]float64{"1/4-28 UNF": 0.0364, "3/8-24 UNF": 0.0878, "3/4-16 UNF": 0.373, "1-12 UNF": 0.663} {
		g, _ := MustParse(name).Geometry()
		if got := g.StressArea.SquareInches(); math.Abs(got-want) > 0.5*math.Pow(10, math.Floor(math.Log10(want))-2) {
			t.Errorf("%s: %.5f in², printed %v", name, got, want)
		}
	}
}

// TestFormConstants holds the constants of the forms as their standards print
// them, to the digits printed.
func TestFormConstants(t *testing.T) {
	for _, c := range []struct {
		what            string
		got, want, half float64
	}{
		{"Whitworth H/p", WhitworthForm.triangle(), 0.960491, 5e-7},
		{"Whitworth h/p", WhitworthForm.depth(), 0.640327, 5e-7},
		{"cycle H/p", CycleForm.triangle(), 0.866025, 5e-7},
		{"cycle h/p", CycleForm.depth(), 0.532692, 5e-7},
		{"BA H/p", AssociationForm.triangle(), 1.13634, 5e-6},
		{"metric 5H/8", MetricForm.depth(), 0.541266, 5e-7},
		// the radii follow from the truncation: (H - h)/2 = r (1/sin(half angle) - 1)
		{"Whitworth r/p", radiusOf(WhitworthForm), 0.137329, 5e-7},
		{"cycle r/p", radiusOf(CycleForm), 1.0 / 6, 5e-7},
		{"BA r/p", radiusOf(AssociationForm), associationRadius, 1e-5},
	} {
		if math.Abs(c.got-c.want) > c.half {
			t.Errorf("%s = %.7f, printed %v", c.what, c.got, c.want)
		}
	}
}

func radiusOf(f Form) float64 {
	return (f.triangle() - f.depth()) / 2 / (1/math.Sin(f.Included().SI()/2) - 1)
}
