package refdata

import (
	_ "embed" // the table

	"example.com/benchbook/units"
)

// Grade is the strength of inch bolts of one SAE J429 grade over a range of
// diameters.
type Grade struct {
	Name     string         `json:"name"`  // "5, 1/4 to 1 in"
	Grade    string         `json:"grade"` // "5"
	From     units.Length   `json:"from"`  // included unless Over
	Over     bool           `json:"over"`  // the row holds above From only
	UpTo     units.Length   `json:"up_to"` // included
	Material string         `json:"material"`
	Proof    units.Pressure `json:"proof"`
	Yield    units.Pressure `json:"yield"`   // least
	Tensile  units.Pressure `json:"tensile"` // least
	Origin   Origin         `json:"origin"`
	Note     string         `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (g Grade) Sources() []Source { return gather(g.Origin) }

// Grades returns the grades of SAE J429; the leading column is the proof stress.
func Grades() *Table[Grade, units.Pressure] { return grades.get(readGrades) }

// GradeAt returns the row of an SAE grade, "5", that holds for a bolt of nominal
// diameter d, and whether there is one.
func GradeAt(grade string, d units.Length) (Grade, bool) {
	for g := range Grades().All() {
		if g.Grade == grade && (d > g.From || d == g.From && !g.Over) && d <= g.UpTo {
			return g, true
		}
	}
	return Grade{}, false
}

var (
	//go:embed tables/grades_sae.csv
	textGrades string
	grades     lazy[Grade, units.Pressure]
)

func readGrades() *Table[Grade, units.Pressure] {
	return build("grades_sae", textGrades, func(s *scanner) func() Grade {
		grade, from, over, to, material, note := s.must("grade"), s.must("from_in"), s.must("over"), s.must("to_in"), s.must("material"), s.must("note")
		p, y, t, origin := s.must("proof_ksi"), s.must("yield_min_ksi"), s.must("tensile_min_ksi"), s.originColumns("")
		return func() Grade {
			g := Grade{
				Grade: s.text(grade), From: s.inchText(from), Over: s.text(over) == "yes", UpTo: s.inchText(to), Material: s.text(material),
				Proof: units.KilopoundsForcePerSquareInch(s.need(p)), Yield: units.KilopoundsForcePerSquareInch(s.need(y)), Tensile: units.KilopoundsForcePerSquareInch(s.need(t)),
				Origin: s.origin(origin), Note: s.text(note),
			}
			g.Name = g.Grade + ", " + s.text(from) + " to " + s.text(to) + " in"
			if g.Over {
				g.Name = g.Grade + ", over " + s.text(from) + " to " + s.text(to) + " in"
			}
			return g
		}
	}, func(g *Grade) string { return g.Name }, func(g *Grade) []string { return []string{g.Grade} }, func(g *Grade) units.Pressure { return g.Proof })
}
