package refdata

import (
	_ "embed" // the table
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

var (
	//go:embed tables/gear_modules.csv
	textGearModules string
	gearModules     lazy[GearModule, units.Length]
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
