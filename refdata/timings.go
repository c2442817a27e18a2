package refdata

import (
	_ "embed" // the tables
	"strings"

	"example.com/benchbook/units"
)

// GearModule is a standard size of gear tooth, by module or diametral pitch.
type GearModule struct {
	Name           string       `json:"name"`            // "module 2.5 mm", "DP 12"
	System         string       `json:"system"`          // "module", "diametral pitch"
	Series         string       `json:"series"`          // "I" preferred, "II", "fine"
	Module         units.Length `json:"module"`          // 1 in / diametral pitch where that defines it
	DiametralPitch float64      `json:"diametral_pitch"` // teeth an inch of diameter; 25.4 mm / module where that defines it
	Origin         Origin       `json:"origin"`
	Note           string       `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (g GearModule) Sources() []Source { return gather(g.Origin) }

// GearModules returns standard modules and diametral pitches; the leading column
// is the module.
func GearModules() *Table[GearModule, units.Length] { return gearModules.get(readGearModules) }

// GearBacklash is the backlash that AGMA recommends between coarse-pitch gears, in
// the normal plane, for a band of centre distance and diametral pitch.
type GearBacklash struct {
	Name     string              `json:"name"`
	Centre   Range[units.Length] `json:"centre"`
	DPFrom   float64             `json:"dp_from"` // diametral pitch
	DPTo     float64             `json:"dp_to"`
	Backlash Range[units.Length] `json:"backlash"`
	Origin   Origin              `json:"origin"`
	Note     string              `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (g GearBacklash) Sources() []Source { return gather(g.Origin) }

// GearBacklashes returns recommended backlash; the leading column is the lower
// end of the band of centre distance.
func GearBacklashes() *Table[GearBacklash, units.Length] {
	return gearBacklashes.get(readGearBacklashes)
}

// LeastBacklash is the least backlash that a formula gives for a module, and for
// a centre distance if it asks for one, in the normal plane.
type LeastBacklash struct {
	Name    string               `json:"name"`
	Formula string               `json:"formula"`
	Centre  Figure[units.Length] `json:"centre"` // unknown if the rule does not ask for it
	Module  units.Length         `json:"module"`
	Least   units.Length         `json:"least"`
	Most    Figure[units.Length] `json:"most"`
	Origin  Origin               `json:"origin"`
	Note    string               `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (l LeastBacklash) Sources() []Source { return gather(l.Origin) }

// LeastBacklashes returns least backlash by formula; the leading column is the
// backlash.
func LeastBacklashes() *Table[LeastBacklash, units.Length] {
	return leastBacklashes.get(readLeastBacklashes)
}

// DialGauge is the largest error a dial gauge of one range may have.
type DialGauge struct {
	Name          string              `json:"name"` // "0.01 mm, 5 mm to 10 mm"
	Graduation    units.Length        `json:"graduation"`
	Range         Range[units.Length] `json:"range"` // above the first, up to the second
	Hysteresis    units.Length        `json:"hysteresis"`
	Repeatability units.Length        `json:"repeatability"`
	TenthTurn     units.Length        `json:"tenth_turn"` // largest error of indication over a tenth of a turn
	HalfTurn      units.Length        `json:"half_turn"`
	OneTurn       units.Length        `json:"one_turn"`
	FullRange     units.Length        `json:"full_range"`
	Origin        Origin              `json:"origin"`
	Note          string              `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (d DialGauge) Sources() []Source { return gather(d.Origin) }

// DialGauges returns the errors allowed to dial gauges; the leading column is the
// upper end of the measuring range.
func DialGauges() *Table[DialGauge, units.Length] { return dialGauges.get(readDialGauges) }

// ValveTiming is the timing of a class of engine as books give it. None says at
// what lift it was taken, and books differ widely: use it to see that a reading is
// of this world, never as a specification.
type ValveTiming struct {
	Class         string                  `json:"class"`
	InletOpens    Range[units.CrankAngle] `json:"inlet_opens"`    // before TDC; negative is after
	InletCloses   Range[units.CrankAngle] `json:"inlet_closes"`   // after BDC
	ExhaustOpens  Range[units.CrankAngle] `json:"exhaust_opens"`  // before BDC
	ExhaustCloses Range[units.CrankAngle] `json:"exhaust_closes"` // after TDC
	CheckLift     string                  `json:"check_lift"`     // "not stated"
	Origin        Origin                  `json:"origin"`
	Note          string                  `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (v ValveTiming) Sources() []Source { return gather(v.Origin) }

// ValveTimings returns valve timings as books give them for classes of engine;
// the leading column is the least closing of the inlet after bottom dead centre.
func ValveTimings() *Table[ValveTiming, units.CrankAngle] { return valveTimings.get(readValveTimings) }

var (
	//go:embed tables/gear_modules.csv
	textGearModules string
	//go:embed tables/gear_backlash.csv
	textGearBacklash string
	//go:embed tables/gear_backlash_formula.csv
	textLeastBacklash string
	//go:embed tables/dial_gauges.csv
	textDialGauges string
	//go:embed tables/valve_timings.csv
	textValveTimings string

	gearModules lazy[GearModule, units.Length]

	gearBacklashes lazy[GearBacklash, units.Length]

	leastBacklashes lazy[LeastBacklash, units.Length]

	dialGauges lazy[DialGauge, units.Length]

	valveTimings lazy[ValveTiming, units.CrankAngle]
)

func readGearModules() *Table[GearModule, units.Length] {
	return build("gear_modules", textGearModules, func(s *scanner) func() GearModule {
		system, series, m, dp, note, origin := s.must("system"), s.must("series"), s.must("module_mm"), s.must("dp_per_in"), s.must("note"), s.originColumns("")
		return func() GearModule {
			g := GearModule{System: s.text(system), Series: s.text(series), Origin: s.origin(origin), Note: s.text(note)}
			if n, ok := s.number(dp); ok {
				g.Name, g.DiametralPitch, g.Module = "DP "+s.text(dp), n, units.Inches(1/n)
				return g
			}
			g.Module = needed(s, m, units.Millimetres)
			g.Name, g.DiametralPitch = "module "+s.text(m)+" mm", 25.4/g.Module.Millimetres()
			return g
		}
	}, func(g *GearModule) string { return g.Name }, func(g *GearModule) []string {
		if m, ok := strings.CutPrefix(g.Name, "module "); ok {
			return []string{m, strings.TrimSuffix(m, " mm"), "m " + m}
		}
		return []string{strings.TrimPrefix(g.Name, "DP ") + " DP"}
	}, func(g *GearModule) units.Length { return g.Module })
}

func readGearBacklashes() *Table[GearBacklash, units.Length] {
	return build("gear_backlash", textGearBacklash, func(s *scanner) func() GearBacklash {
		from, to, dpFrom, dpTo := s.must("centre_from_in"), s.must("centre_to_in"), s.must("dp_from"), s.must("dp_to")
		b, note, origin := s.rangeColumns("backlash", "_in"), s.must("note"), s.originColumns("")
		return func() GearBacklash {
			return GearBacklash{
				Name:   s.text(from) + " to " + s.text(to) + " in, DP " + s.text(dpFrom) + " to " + s.text(dpTo),
				Centre: Range[units.Length]{s.inches(from), s.inches(to)}, DPFrom: s.need(dpFrom), DPTo: s.need(dpTo),
				Backlash: Range[units.Length]{s.inches(b.low), s.inches(b.high)}, Origin: s.origin(origin), Note: s.text(note),
			}
		}
	}, func(g *GearBacklash) string { return g.Name }, nil, func(g *GearBacklash) units.Length { return g.Centre.Low.value })
}

func readLeastBacklashes() *Table[LeastBacklash, units.Length] {
	return build("gear_backlash_formula", textLeastBacklash, func(s *scanner) func() LeastBacklash {
		formula, a, m, least, most, note, origin := s.must("formula"), s.must("centre_mm"), s.must("module_mm"), s.must("least_mm"), s.must("most_mm"), s.must("note"), s.originColumns("")
		return func() LeastBacklash {
			b := LeastBacklash{
				Name: s.text(formula), Formula: s.text(formula), Centre: figure(s, a, units.Millimetres), Module: needed(s, m, units.Millimetres),
				Least: needed(s, least, units.Millimetres), Most: figure(s, most, units.Millimetres), Origin: s.origin(origin), Note: s.text(note),
			}
			if b.Centre.known {
				b.Name += ", centres " + s.text(a) + " mm"
			}
			b.Name += ", module " + s.text(m) + " mm"
			return b
		}
	}, func(b *LeastBacklash) string { return b.Name }, nil, func(b *LeastBacklash) units.Length { return b.Least })
}

func readDialGauges() *Table[DialGauge, units.Length] {
	return build("dial_gauges", textDialGauges, func(s *scanner) func() DialGauge {
		grad, over, to, note, origin := s.must("graduation_mm"), s.must("range_over_mm"), s.must("range_to_mm"), s.must("note"), s.originColumns("")
		hy, re, tenth, half, one, full := s.must("hysteresis_um"), s.must("repeatability_um"), s.must("tenth_turn_um"), s.must("half_turn_um"), s.must("one_turn_um"), s.must("full_range_um")
		return func() DialGauge {
			return DialGauge{
				Name:       s.text(grad) + " mm, " + s.text(over) + " mm to " + s.text(to) + " mm",
				Graduation: needed(s, grad, units.Millimetres), Range: between(s, rangeColumns{over, to}, units.Millimetres),
				Hysteresis: needed(s, hy, units.Micrometres), Repeatability: needed(s, re, units.Micrometres), TenthTurn: needed(s, tenth, units.Micrometres),
				HalfTurn: needed(s, half, units.Micrometres), OneTurn: needed(s, one, units.Micrometres), FullRange: needed(s, full, units.Micrometres),
				Origin: s.origin(origin), Note: s.text(note),
			}
		}
	}, func(d *DialGauge) string { return d.Name }, nil, func(d *DialGauge) units.Length { return d.Range.High.value })
}

func readValveTimings() *Table[ValveTiming, units.CrankAngle] {
	return build("valve_timings", textValveTimings, func(s *scanner) func() ValveTiming {
		class, check, note, origin := s.must("class"), s.must("check_lift"), s.must("note"), s.originColumns("")
		ivo, ivc, evo, evc := s.rangeColumns("ivo_btdc", ""), s.rangeColumns("ivc_abdc", ""), s.rangeColumns("evo_bbdc", ""), s.rangeColumns("evc_atdc", "")
		return func() ValveTiming {
			return ValveTiming{
				Class: s.text(class), InletOpens: between(s, ivo, units.CrankDegrees), InletCloses: between(s, ivc, units.CrankDegrees),
				ExhaustOpens: between(s, evo, units.CrankDegrees), ExhaustCloses: between(s, evc, units.CrankDegrees),
				CheckLift: s.text(check), Origin: s.origin(origin), Note: s.text(note),
			}
		}
	}, func(v *ValveTiming) string { return v.Class }, nil, func(v *ValveTiming) units.CrankAngle { return v.InletCloses.Low.Or(0) })
}
