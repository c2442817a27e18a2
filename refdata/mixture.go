package refdata

import (
	_ "embed" // the tables

	"example.com/benchbook/units"
)

// Fuel is what a fuel is made of and how it burns.
type Fuel struct {
	Name              string                          `json:"name"` // "petrol", "methanol", "petrol E10"
	Formula           string                          `json:"formula"`
	Carbon            Figure[units.Ratio]             `json:"carbon"` // by mass
	Hydrogen          Figure[units.Ratio]             `json:"hydrogen"`
	Oxygen            Figure[units.Ratio]             `json:"oxygen"`
	Density           Range[units.Density]            `json:"density"`
	DensityAt         units.Temperature               `json:"density_at"`
	PrintedAFR        Range[units.Ratio]              `json:"printed_afr"`   // stoichiometric air to fuel by mass, as books have it
	ComputedAFR       units.Ratio                     `json:"computed_afr"`  // from the composition
	Latent            Range[units.SpecificEnergy]     `json:"latent"`        // heat of vaporisation
	HeatingValue      Range[units.SpecificEnergy]     `json:"heating_value"` // lower
	Viscosity         Range[units.KinematicViscosity] `json:"viscosity"`
	ViscosityAt       Figure[units.Temperature]       `json:"viscosity_at"`
	FlashPoint        Range[units.Temperature]        `json:"flash_point"`
	Flammable         Range[units.Ratio]              `json:"flammable"` // share of vapour in air by volume
	CompositionOrigin Origin                          `json:"composition_origin"`
	DensityOrigin     Origin                          `json:"density_origin"`
	PrintedAFROrigin  Origin                          `json:"printed_afr_origin"`
	ComputedAFROrigin Origin                          `json:"computed_afr_origin"`
	LatentOrigin      Origin                          `json:"latent_origin"`
	HeatingOrigin     Origin                          `json:"heating_origin"`
	ViscosityOrigin   Origin                          `json:"viscosity_origin"`
	FlashOrigin       Origin                          `json:"flash_origin"` // flash point and limits
	Note              string                          `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (f Fuel) Sources() []Source {
	return gather(f.CompositionOrigin, f.DensityOrigin, f.PrintedAFROrigin, f.ComputedAFROrigin, f.LatentOrigin, f.HeatingOrigin, f.ViscosityOrigin, f.FlashOrigin)
}

// Fuels returns fuels; the leading column is the computed stoichiometric air-fuel
// ratio by mass.
func Fuels() *Table[Fuel, units.Ratio] { return fuels.get(readFuels) }

// ExhaustGas is the carbon monoxide and oxygen in dry exhaust of petrol at an excess
// air ratio, at equilibrium: indicative only.
type ExhaustGas struct {
	Name   string      `json:"name"` // "0.88"
	Lambda units.Ratio `json:"lambda"`
	AFR    units.Ratio `json:"computed_afr"`
	CO     units.Ratio `json:"computed_co"` // of dry exhaust by volume
	O2     units.Ratio `json:"computed_o2"`
	Origin Origin      `json:"origin"`
	Note   string      `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (l ExhaustGas) Sources() []Source { return gather(l.Origin) }

// ExhaustGases returns exhaust composition by excess air ratio, the leading column.
func ExhaustGases() *Table[ExhaustGas, units.Ratio] { return exhaustGases.get(readExhaustGases) }

// SlideCutaway is a cutaway number in sixteenths of an inch and its height.
type SlideCutaway struct {
	Number      string       `json:"number"` // "3.5"
	Height      units.Length `json:"computed_height"`
	NearestHalf units.Length `json:"nearest_half"` // the nearest step of 0.5 mm
	Origin      Origin       `json:"origin"`
	Note        string       `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (s SlideCutaway) Sources() []Source { return gather(s.Origin) }

// SlideCutaways returns slide cutaways; the leading column is the height.
func SlideCutaways() *Table[SlideCutaway, units.Length] { return slideCutaways.get(readSlideCutaways) }

// ThrottleInfluence says over which part of the slide's lift a part of the
// carburettor decides the mixture.
type ThrottleInfluence struct {
	Part    string      `json:"part"`
	From    units.Ratio `json:"from"`     // lift over bore where it begins to act
	MainTo  units.Ratio `json:"main_to"`  // up to which it decides
	FadesBy units.Ratio `json:"fades_by"` // beyond which it no longer matters
	Origin  Origin      `json:"origin"`
	Note    string      `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (t ThrottleInfluence) Sources() []Source { return gather(t.Origin) }

// ThrottleInfluences returns which part acts where; the leading column is the
// lift where the part begins to act.
func ThrottleInfluences() *Table[ThrottleInfluence, units.Ratio] {
	return throttleInfluences.get(readThrottleInfluences)
}

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
	//go:embed tables/fuels.csv
	textFuels string
	//go:embed tables/lambda_co.csv
	textLambdaCO string
	//go:embed tables/slide_cutaway.csv
	textSlideCutaway string
	//go:embed tables/throttle_influence.csv
	textThrottleInfluence string
	//go:embed tables/jet_drills.csv
	textJetDrills string
	//go:embed tables/jet_coefficients.csv
	textJetCoefficients string

	fuels lazy[Fuel, units.Ratio]

	exhaustGases lazy[ExhaustGas, units.Ratio]

	slideCutaways lazy[SlideCutaway, units.Length]

	throttleInfluences lazy[ThrottleInfluence, units.Ratio]

	jetDrills lazy[JetDrill, units.Length]

	jetCoefficients lazy[JetCoefficient, units.Ratio]
)

func readFuels() *Table[Fuel, units.Ratio] {
	return build("fuels", textFuels, func(s *scanner) func() Fuel {
		name, formula, note := s.must("fuel"), s.must("formula"), s.must("note")
		c, h, o := s.must("c_mass"), s.must("h_mass"), s.must("o_mass")
		density, densityAt, printed, computed := s.rangeColumns("density", "_kg_m3"), s.must("density_t_c"), s.rangeColumns("printed_afr", ""), s.must("computed_afr")
		latent, lhv := s.rangeColumns("latent", "_kj_kg"), s.rangeColumns("lhv", "_mj_kg")
		visc, viscAt, flash, limits := s.rangeColumns("viscosity", "_mm2_s"), s.must("viscosity_t_c"), s.rangeColumns("flash", "_c"), s.rangeColumns("flammable", "_pct")
		var origins [8]originColumns
		for i, g := range []string{"composition", "density", "printed_afr", "computed_afr", "latent", "lhv", "viscosity", "flash"} {
			origins[i] = s.originColumns(g)
		}
		return func() Fuel {
			return Fuel{
				Name: s.text(name), Formula: s.text(formula), Carbon: figure(s, c, units.Value), Hydrogen: figure(s, h, units.Value), Oxygen: figure(s, o, units.Value),
				Density: between(s, density, units.KilogramsPerCubicMetre), DensityAt: needed(s, densityAt, units.Celsius),
				PrintedAFR: between(s, printed, units.Value), ComputedAFR: needed(s, computed, units.Value),
				Latent: between(s, latent, units.KilojoulesPerKilogram), HeatingValue: between(s, lhv, units.MegajoulesPerKilogram),
				Viscosity: between(s, visc, units.SquareMillimetresPerSecond), ViscosityAt: figure(s, viscAt, units.Celsius),
				FlashPoint: between(s, flash, units.Celsius), Flammable: between(s, limits, units.Percents),
				CompositionOrigin: s.origin(origins[0]), DensityOrigin: s.origin(origins[1]), PrintedAFROrigin: s.origin(origins[2]), ComputedAFROrigin: s.origin(origins[3]),
				LatentOrigin: s.origin(origins[4]), HeatingOrigin: s.origin(origins[5]), ViscosityOrigin: s.origin(origins[6]), FlashOrigin: s.origin(origins[7]), Note: s.text(note),
			}
		}
	}, func(f *Fuel) string { return f.Name }, nil, func(f *Fuel) units.Ratio { return f.ComputedAFR })
}

func readExhaustGases() *Table[ExhaustGas, units.Ratio] {
	return build("lambda_co", textLambdaCO, func(s *scanner) func() ExhaustGas {
		lambda, afr, co, o2, note, origin := s.must("lambda"), s.must("computed_afr_petrol"), s.must("computed_co_dry_pct"), s.must("computed_o2_dry_pct"), s.must("note"), s.originColumns("")
		return func() ExhaustGas {
			return ExhaustGas{Name: s.text(lambda), Lambda: needed(s, lambda, units.Value), AFR: needed(s, afr, units.Value), CO: needed(s, co, units.Percents), O2: needed(s, o2, units.Percents), Origin: s.origin(origin), Note: s.text(note)}
		}
	}, func(l *ExhaustGas) string { return l.Name }, nil, func(l *ExhaustGas) units.Ratio { return l.Lambda })
}

func readSlideCutaways() *Table[SlideCutaway, units.Length] {
	return build("slide_cutaway", textSlideCutaway, func(s *scanner) func() SlideCutaway {
		number, mm, half, note, origin := s.must("number"), s.must("computed_mm"), s.must("nearest_half_mm"), s.must("note"), s.originColumns("")
		return func() SlideCutaway {
			return SlideCutaway{Number: s.text(number), Height: needed(s, mm, units.Millimetres), NearestHalf: needed(s, half, units.Millimetres), Origin: s.origin(origin), Note: s.text(note)}
		}
	}, func(c *SlideCutaway) string { return c.Number }, nil, func(c *SlideCutaway) units.Length { return c.Height })
}

func readThrottleInfluences() *Table[ThrottleInfluence, units.Ratio] {
	return build("throttle_influence", textThrottleInfluence, func(s *scanner) func() ThrottleInfluence {
		part, from, to, by, note, origin := s.must("part"), s.must("lift_from"), s.must("lift_main_to"), s.must("lift_fades_by"), s.must("note"), s.originColumns("")
		return func() ThrottleInfluence {
			return ThrottleInfluence{Part: s.text(part), From: needed(s, from, units.Value), MainTo: needed(s, to, units.Value), FadesBy: needed(s, by, units.Value), Origin: s.origin(origin), Note: s.text(note)}
		}
	}, func(t *ThrottleInfluence) string { return t.Part }, nil, func(t *ThrottleInfluence) units.Ratio { return t.From })
}

func readJetDrills() *Table[JetDrill, units.Length] {
	return build("jet_drills", textJetDrills, func(s *scanner) func() JetDrill {
		number, diameter, half, one, note := s.must("number"), s.must("diameter_in"), s.must("computed_flow_half_metre_cc_min"), s.must("computed_flow_one_metre_cc_min"), s.must("note")
		size, flow := s.originColumns("size"), s.originColumns("flow")
		return func() JetDrill {
			return JetDrill{Number: "#" + s.text(number), Diameter: s.needInches(diameter), HalfMetre: needed(s, half, units.CubicCentimetresPerMinute), OneMetre: needed(s, one, units.CubicCentimetresPerMinute), SizeOrigin: s.origin(size), FlowOrigin: s.origin(flow), Note: s.text(note)}
		}
	}, func(j *JetDrill) string { return j.Number }, nil, func(j *JetDrill) units.Length { return j.Diameter })
}

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
