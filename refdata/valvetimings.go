package refdata

import (
	_ "embed" // the table

	"example.com/benchbook/units"
)

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
	//go:embed tables/valve_timings.csv
	textValveTimings string
	valveTimings     lazy[ValveTiming, units.CrankAngle]
)

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
