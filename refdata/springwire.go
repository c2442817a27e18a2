package refdata

import (
	_ "embed" // the tables
	"math"

	"example.com/benchbook/units"
)

// SpringModulus is the elasticity of a spring material, for a range of wire
// diameters where the table splits it, and how far it may be stressed.
type SpringModulus struct {
	Name         string                 `json:"name"` // "music wire ASTM A228, 0.84 to 1.6 mm"
	Material     string                 `json:"material"`
	Wire         Range[units.Length]    `json:"wire"`
	Young        Figure[units.Pressure] `json:"young"`
	Shear        units.Pressure         `json:"shear"`
	TensionLimit Range[units.Ratio]     `json:"tension_limit"` // elastic limit as a share of tensile strength
	TorsionLimit Range[units.Ratio]     `json:"torsion_limit"` // the same in torsion
	ModuliOrigin Origin                 `json:"moduli_origin"`
	LimitsOrigin Origin                 `json:"limits_origin"`
	Note         string                 `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (s SpringModulus) Sources() []Source { return gather(s.ModuliOrigin, s.LimitsOrigin) }

// SpringModuli returns the elastic moduli of spring materials; the leading column
// is the shear modulus.
func SpringModuli() *Table[SpringModulus, units.Pressure] { return springModuli.get(readSpringModuli) }

// SpringStrength is a law for the tensile strength of spring wire by its
// diameter.
type SpringStrength struct {
	Name        string              `json:"name"` // "music wire ASTM A228, handbook, 0.1 mm to 6.5 mm"
	Material    string              `json:"material"`
	Fit         string              `json:"fit"`         // "handbook", "older fit", "second fit": laws for one material that differ by up to 10 %
	Wire        Range[units.Length] `json:"wire"`        // where the law holds; unknown if the source does not say
	Logarithmic bool                `json:"logarithmic"` // strength = A - M log10(d); otherwise A / d^M
	A           float64             `json:"a_mpa"`       // MPa at d = 1 mm
	M           float64             `json:"m"`           // exponent, or MPa a decade
	FitOrigin   Origin              `json:"fit_origin"`
	RangeOrigin Origin              `json:"range_origin"`
	Note        string              `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (s SpringStrength) Sources() []Source { return gather(s.FitOrigin, s.RangeOrigin) }

// Tensile returns the tensile strength of wire of diameter d: A / d^M, or
// A - M log10(d), d in millimetres. It is not known outside the range of the
// law, nor for a diameter that is not above zero.
func (s SpringStrength) Tensile(d units.Length) Figure[units.Pressure] {
	mm := d.Millimetres()
	if !(mm > 0) || math.IsInf(mm, 0) || !s.Wire.Holds(d) {
		return Figure[units.Pressure]{}
	}
	if s.Logarithmic {
		return Known(units.Megapascals(s.A - s.M*math.Log10(mm)))
	}
	return Known(units.Megapascals(s.A / math.Pow(mm, s.M)))
}

// SpringStrengths returns laws for the strength of spring wire; the leading
// column is the strength of wire 1 mm in diameter.
func SpringStrengths() *Table[SpringStrength, units.Pressure] {
	return springStrengths.get(readSpringStrengths)
}

var (
	//go:embed tables/spring_moduli.csv
	textSpringModuli string
	springModuli     lazy[SpringModulus, units.Pressure]
)

func readSpringModuli() *Table[SpringModulus, units.Pressure] {
	return build("spring_moduli", textSpringModuli, func(s *scanner) func() SpringModulus {
		material, note, wire := s.must("material"), s.must("note"), rangeColumns{s.must("wire_from_mm"), s.must("wire_to_mm")}
		e, g, tension, torsion := s.must("e_gpa"), s.must("g_gpa"), s.rangeColumns("tension_limit", "_pct"), s.rangeColumns("torsion_limit", "_pct")
		moduli, limits := s.originColumns("moduli"), s.originColumns("limits")
		return func() SpringModulus {
			m := SpringModulus{
				Material: s.text(material), Wire: between(s, wire, units.Millimetres), Young: figure(s, e, units.Gigapascals), Shear: needed(s, g, units.Gigapascals),
				TensionLimit: between(s, tension, units.Percents), TorsionLimit: between(s, torsion, units.Percents),
				ModuliOrigin: s.origin(moduli), LimitsOrigin: s.origin(limits), Note: s.text(note),
			}
			m.Name = m.Material
			if m.Wire.Given() {
				m.Name += ", " + m.Wire.String()
			}
			return m
		}
	}, func(m *SpringModulus) string { return m.Name }, func(m *SpringModulus) []string { return []string{m.Material} },
		func(m *SpringModulus) units.Pressure { return m.Shear })
}

var (
	//go:embed tables/spring_strength.csv
	textSpringStrength string
	springStrengths    lazy[SpringStrength, units.Pressure]
)

func readSpringStrengths() *Table[SpringStrength, units.Pressure] {
	return build("spring_strength", textSpringStrength, func(s *scanner) func() SpringStrength {
		material, fit, law, note := s.must("material"), s.must("fit"), s.must("law"), s.must("note")
		wire, a, m := rangeColumns{s.must("wire_from_mm"), s.must("wire_to_mm")}, s.must("a_mpa"), s.must("m")
		oFit, oRange := s.originColumns("fit"), s.originColumns("range")
		return func() SpringStrength {
			t := SpringStrength{
				Material: s.text(material), Fit: s.text(fit), Wire: between(s, wire, units.Millimetres), Logarithmic: s.text(law) == "logarithm",
				A: s.need(a), M: s.need(m), FitOrigin: s.origin(oFit), RangeOrigin: s.origin(oRange), Note: s.text(note),
			}
			t.Name = t.Material + ", " + t.Fit
			if t.Wire.Given() {
				t.Name += ", " + t.Wire.String()
			}
			return t
		}
	}, func(t *SpringStrength) string { return t.Name }, func(t *SpringStrength) []string { return []string{t.Material + ", " + t.Fit, t.Material} },
		func(t *SpringStrength) units.Pressure { return units.Megapascals(t.A) })
}
