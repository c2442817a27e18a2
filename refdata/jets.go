package refdata

import (
	_ "embed" // the tables

	"example.com/benchbook/units"
)

// JetDrill is a drilled jet by its number drill, and the petrol it passes.
type JetDrill struct {
	Number     string           `json:"number"` // "#60"
	Diameter   units.Length     `json:"diameter"`
	HalfMetre  units.VolumeFlow `json:"computed_flow_half_metre"` // under 0.5 m of petrol, discharge coefficient 0.80
	OneMetre   units.VolumeFlow `json:"computed_flow_one_metre"`
	SizeOrigin Origin           `json:"size_origin"`
	FlowOrigin Origin           `json:"flow_origin"`
	Note       string           `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (j JetDrill) Sources() []Source { return gather(j.SizeOrigin, j.FlowOrigin) }

// JetDrills returns drilled jets; the leading column is the diameter.
func JetDrills() *Table[JetDrill, units.Length] { return jetDrills.get(readJetDrills) }

// JetCoefficient is the discharge coefficient of a hole or venturi.
type JetCoefficient struct {
	Name          string              `json:"name"`
	Geometry      string              `json:"geometry"`
	LengthOverD   Range[units.Ratio]  `json:"length_over_d"`
	Reynolds      Range[units.Ratio]  `json:"reynolds"` // on the bore; no upper end: from there on
	Discharge     Range[units.Ratio]  `json:"discharge"`
	Uncertainty   Figure[units.Ratio] `json:"uncertainty"`          // of the coefficient, as the source states it
	RelativeError Figure[units.Ratio] `json:"relative_uncertainty"` // the same as a share of it
	Origin        Origin              `json:"origin"`
	Note          string              `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (j JetCoefficient) Sources() []Source { return gather(j.Origin) }

// JetCoefficients returns discharge coefficients; the leading column is the lower
// coefficient.
func JetCoefficients() *Table[JetCoefficient, units.Ratio] {
	return jetCoefficients.get(readJetCoefficients)
}

var (
	//go:embed tables/jet_drills.csv
	textJetDrills string
	jetDrills     lazy[JetDrill, units.Length]
)

func readJetDrills() *Table[JetDrill, units.Length] {
	return build("jet_drills", textJetDrills, func(s *scanner) func() JetDrill {
		number, diameter, half, one, note := s.must("number"), s.must("diameter_in"), s.must("computed_flow_half_metre_cc_min"), s.must("computed_flow_one_metre_cc_min"), s.must("note")
		size, flow := s.originColumns("size"), s.originColumns("flow")
		return func() JetDrill {
			return JetDrill{Number: "#" + s.text(number), Diameter: s.needInches(diameter), HalfMetre: needed(s, half, units.CubicCentimetresPerMinute), OneMetre: needed(s, one, units.CubicCentimetresPerMinute), SizeOrigin: s.origin(size), FlowOrigin: s.origin(flow), Note: s.text(note)}
		}
	}, func(j *JetDrill) string { return j.Number }, nil, func(j *JetDrill) units.Length { return j.Diameter })
}

var (
	//go:embed tables/jet_coefficients.csv
	textJetCoefficients string
	jetCoefficients     lazy[JetCoefficient, units.Ratio]
)

func readJetCoefficients() *Table[JetCoefficient, units.Ratio] {
	return build("jet_coefficients", textJetCoefficients, func(s *scanner) func() JetCoefficient {
		geometry, note, ld, re, cd := s.must("geometry"), s.must("note"), s.rangeColumns("l_over_d", ""), s.rangeColumns("reynolds", ""), s.rangeColumns("cd", "")
		u, pct, origin := s.must("uncertainty"), s.must("uncertainty_pct"), s.originColumns("")
		return func() JetCoefficient {
			j := JetCoefficient{
				Geometry: s.text(geometry), LengthOverD: between(s, ld, units.Value), Reynolds: between(s, re, units.Value), Discharge: between(s, cd, units.Value),
				Uncertainty: figure(s, u, units.Value), RelativeError: figure(s, pct, units.Percents), Origin: s.origin(origin), Note: s.text(note),
			}
			j.Name = j.Geometry
			if j.LengthOverD.Given() {
				j.Name += ", l/d " + j.LengthOverD.String()
			}
			if j.Reynolds.Given() {
				j.Name += ", Re " + j.Reynolds.String()
			}
			return j
		}
	}, func(j *JetCoefficient) string { return j.Name }, func(j *JetCoefficient) []string { return []string{j.Geometry} }, func(j *JetCoefficient) units.Ratio { return j.Discharge.Low.value })
}
