package refdata

import (
	_ "embed" // the table

	"example.com/benchbook/units"
)

// PlugThread is a sparking plug by its thread and reach.
type PlugThread struct {
	Name    string              `json:"name"`    // "14 mm, 12.7 mm reach"
	Thread  string              `json:"thread"`  // name in Threads: "M14x1.25"
	Reach   units.Length        `json:"reach"`   // length of thread with its gasket seat
	Hexagon Range[units.Length] `json:"hexagon"` // across flats
	Origin  Origin              `json:"origin"`
	Note    string              `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (p PlugThread) Sources() []Source { return gather(p.Origin) }

// PlugThreads returns sparking plug threads with their usual reaches, status
// common practice; the leading column is the reach. A plug that reaches too far
// may meet piston or valve: measure the head.
func PlugThreads() *Table[PlugThread, units.Length] { return plugThreads.get(readPlugThreads) }

var (
	//go:embed tables/plug_threads.csv
	textPlugs   string
	plugThreads lazy[PlugThread, units.Length]
)

func readPlugThreads() *Table[PlugThread, units.Length] {
	return build("plug_threads", textPlugs, func(s *scanner) func() PlugThread {
		plug, thread, reach, note, origin := s.must("plug"), s.must("thread"), s.must("reach_mm"), s.must("note"), s.originColumns("")
		hexagon := s.rangeColumns("hexagon", "_mm")
		return func() PlugThread {
			return PlugThread{
				Name: s.text(plug) + ", " + s.text(reach) + " mm reach", Thread: s.text(thread), Reach: needed(s, reach, units.Millimetres),
				Hexagon: between(s, hexagon, units.Millimetres), Origin: s.origin(origin), Note: s.text(note),
			}
		}
	}, func(p *PlugThread) string { return p.Name }, nil, func(p *PlugThread) units.Length { return p.Reach })
}
