package refdata

import (
	_ "embed" // the tables

	"example.com/benchbook/units"
)

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

var (
	//go:embed tables/slide_cutaway.csv
	textSlideCutaway string
	slideCutaways    lazy[SlideCutaway, units.Length]
)

func readSlideCutaways() *Table[SlideCutaway, units.Length] {
	return build("slide_cutaway", textSlideCutaway, func(s *scanner) func() SlideCutaway {
		number, mm, half, note, origin := s.must("number"), s.must("computed_mm"), s.must("nearest_half_mm"), s.must("note"), s.originColumns("")
		return func() SlideCutaway {
			return SlideCutaway{Number: s.text(number), Height: needed(s, mm, units.Millimetres), NearestHalf: needed(s, half, units.Millimetres), Origin: s.origin(origin), Note: s.text(note)}
		}
	}, func(c *SlideCutaway) string { return c.Number }, nil, func(c *SlideCutaway) units.Length { return c.Height })
}

var (
	//go:embed tables/throttle_influence.csv
	textThrottleInfluence string
	throttleInfluences    lazy[ThrottleInfluence, units.Ratio]
)

func readThrottleInfluences() *Table[ThrottleInfluence, units.Ratio] {
	return build("throttle_influence", textThrottleInfluence, func(s *scanner) func() ThrottleInfluence {
		part, from, to, by, note, origin := s.must("part"), s.must("lift_from"), s.must("lift_main_to"), s.must("lift_fades_by"), s.must("note"), s.originColumns("")
		return func() ThrottleInfluence {
			return ThrottleInfluence{Part: s.text(part), From: needed(s, from, units.Value), MainTo: needed(s, to, units.Value), FadesBy: needed(s, by, units.Value), Origin: s.origin(origin), Note: s.text(note)}
		}
	}, func(t *ThrottleInfluence) string { return t.Part }, nil, func(t *ThrottleInfluence) units.Ratio { return t.From })
}
