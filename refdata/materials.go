package refdata

import (
	_ "embed" // the tables
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// FrictionMaterial is a clutch or brake lining in one condition, as one book has
// it: books disagree, and each keeps its row.
type FrictionMaterial struct {
	Name       string                    `json:"name"`      // "moulded, oil, tribology handbook"
	Material   string                    `json:"material"`  // "moulded"
	Condition  string                    `json:"condition"` // "dry" or "oil"
	Friction   Range[units.Ratio]        `json:"friction"`
	Kind       string                    `json:"kind,omitempty"` // "dynamic", "static and dynamic", "" if the book does not say
	Pressure   Range[units.Pressure]     `json:"pressure"`
	Hottest    Figure[units.Temperature] `json:"hottest"`    // for short times
	Continuous Figure[units.Temperature] `json:"continuous"` //
	// Power that the lining may take, in W/mm².
	WattsPerSquareMillimetre Range[units.Ratio] `json:"watts_per_square_millimetre"`
	Origin                   Origin             `json:"origin"`
	Note                     string             `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (f FrictionMaterial) Sources() []Source { return gather(f.Origin) }

// FrictionMaterials returns clutch and brake linings; the leading column is the
// lower coefficient of friction.
func FrictionMaterials() *Table[FrictionMaterial, units.Ratio] {
	return frictionMaterials.get(readFrictionMaterials)
}

// Friction returns the coefficient of friction of a material ("moulded",
// "paper", "cork") in a condition ("dry", "oil") over all books that have it,
// their sources, and whether any has.
func Friction(material, condition string) (measure.Interval[units.Ratio], []Source, bool) {
	var all measure.Interval[units.Ratio]
	var origins []Origin
	for m := range FrictionMaterials().All() {
		if m.Material != material || m.Condition != condition {
			continue
		}
		low, high, _ := m.Friction.Ends()
		if origins == nil {
			all = measure.Between(low, high)
		}
		all = measure.Between(min(all.Low, low), max(all.High, high))
		origins = append(origins, m.Origin)
	}
	return all, gather(origins...), origins != nil
}

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

// DiscSpring is a disc spring of DIN 2093, with the load at 75 % flat as
// remembered and as computed.
type DiscSpring struct {
	Name           string         `json:"name"`   // "A 20 x 10.2 x 1.1"
	Series         string         `json:"series"` // "A" stiff, "B", "C" soft
	Outside        units.Length   `json:"outside"`
	Inside         units.Length   `json:"inside"`
	Thickness      units.Length   `json:"thickness"`
	Cone           units.Length   `json:"cone"` // h0, free height less thickness
	Free           units.Length   `json:"free"` // l0
	Load           units.Force    `json:"load"` // at 0.75 h0, as remembered
	ComputedLoad   units.Force    `json:"computed_load"`
	ComputedII     units.Pressure `json:"computed_sigma_ii"`
	ComputedIII    units.Pressure `json:"computed_sigma_iii"`
	ComputedOM     units.Pressure `json:"computed_sigma_om"`
	SizeOrigin     Origin         `json:"size_origin"` // size and Load
	ComputedOrigin Origin         `json:"computed_origin"`
	Note           string         `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (d DiscSpring) Sources() []Source { return gather(d.SizeOrigin, d.ComputedOrigin) }

// DiscSprings returns disc springs; the leading column is the outside diameter.
func DiscSprings() *Table[DiscSpring, units.Length] { return discSprings.get(readDiscSprings) }

var (
	//go:embed tables/friction_materials.csv
	textFriction string
	//go:embed tables/spring_moduli.csv
	textSpringModuli string
	//go:embed tables/spring_strength.csv
	textSpringStrength string
	//go:embed tables/disc_springs.csv
	textDiscSprings string

	frictionMaterials lazy[FrictionMaterial, units.Ratio]

	springModuli lazy[SpringModulus, units.Pressure]

	springStrengths lazy[SpringStrength, units.Pressure]

	discSprings lazy[DiscSpring, units.Length]
)

func readFrictionMaterials() *Table[FrictionMaterial, units.Ratio] {
	return build("friction_materials", textFriction, func(s *scanner) func() FrictionMaterial {
		material, condition, book, kind, note := s.must("material"), s.must("condition"), s.must("book"), s.must("kind"), s.must("note")
		mu, p, w := s.rangeColumns("friction", ""), s.rangeColumns("pressure", "_kpa"), s.rangeColumns("power", "_w_mm2")
		hot, cont, origin := s.must("temp_max_c"), s.must("temp_continuous_c"), s.originColumns("")
		return func() FrictionMaterial {
			return FrictionMaterial{
				Name: s.text(material) + ", " + s.text(condition) + ", " + s.text(book), Material: s.text(material), Condition: s.text(condition),
				Friction: between(s, mu, units.Value), Kind: s.text(kind), Pressure: between(s, p, units.Kilopascals),
				Hottest: figure(s, hot, units.Celsius), Continuous: figure(s, cont, units.Celsius), WattsPerSquareMillimetre: between(s, w, units.Value),
				Origin: s.origin(origin), Note: s.text(note),
			}
		}
	}, func(m *FrictionMaterial) string { return m.Name }, func(m *FrictionMaterial) []string { return []string{m.Material + ", " + m.Condition} },
		func(m *FrictionMaterial) units.Ratio { return m.Friction.Low.value })
}

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

func readDiscSprings() *Table[DiscSpring, units.Length] {
	return build("disc_springs", textDiscSprings, func(s *scanner) func() DiscSpring {
		series, note, de, di, t := s.must("series"), s.must("note"), s.must("de_mm"), s.must("di_mm"), s.must("t_mm")
		h0, l0, load, comp := s.must("h0_mm"), s.must("l0_mm"), s.must("load_at_75_pct_n"), s.must("computed_load_n")
		ii, iii, om := s.must("computed_sigma_ii_mpa"), s.must("computed_sigma_iii_mpa"), s.must("computed_sigma_om_mpa")
		size, computed := s.originColumns("size"), s.originColumns("computed")
		return func() DiscSpring {
			return DiscSpring{
				Name: s.text(series) + " " + s.text(de) + " x " + s.text(di) + " x " + s.text(t), Series: s.text(series),
				Outside: needed(s, de, units.Millimetres), Inside: needed(s, di, units.Millimetres), Thickness: needed(s, t, units.Millimetres),
				Cone: needed(s, h0, units.Millimetres), Free: needed(s, l0, units.Millimetres), Load: needed(s, load, units.Newtons),
				ComputedLoad: needed(s, comp, units.Newtons), ComputedII: needed(s, ii, units.Megapascals), ComputedIII: needed(s, iii, units.Megapascals), ComputedOM: needed(s, om, units.Megapascals),
				SizeOrigin: s.origin(size), ComputedOrigin: s.origin(computed), Note: s.text(note),
			}
		}
	}, func(d *DiscSpring) string { return d.Name }, nil, func(d *DiscSpring) units.Length { return d.Outside })
}
