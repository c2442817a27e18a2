package refdata

import (
	_ "embed" // the table
	"strings"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// StartingPoint is where to begin with a needle-and-slide carburettor for a
// displacement and state of tune: ranges of common practice. Jets are numbered
// by the petrol they pass in cubic centimetres a minute under a head of their
// own, which is not published, so that two makers' numbers are not the same.
// At one displacement the larger bore takes the larger jet.
type StartingPoint struct {
	Name         string                  `json:"name"`         // "350 cc, road"
	Displacement units.Volume            `json:"displacement"` // that one carburettor serves
	Tune         Tune                    `json:"tune"`
	Bore         Range[units.Length]     `json:"bore"`
	InchBore     Range[units.Length]     `json:"inch_bore"` // the same in the fractions bores were made in
	MainJet      Range[units.VolumeFlow] `json:"main_jet"`  // the jet's number
	Slide        Range[units.Ratio]      `json:"slide"`     // cutaway number, sixteenths of an inch
	Needle       string                  `json:"needle"`    // "middle groove"
	Pilot        Range[units.VolumeFlow] `json:"pilot"`     // the jet's number
	Origin       Origin                  `json:"origin"`
	Note         string                  `json:"note,omitempty"`
}

// Sources returns every source the row rests on.
func (p StartingPoint) Sources() []Source { return gather(p.Origin) }

// StartingPoints returns starting points; the leading column is the displacement.
func StartingPoints() *Table[StartingPoint, units.Volume] {
	return startingPoints.get(readStartingPoints)
}

// Tune is the state of tune of an engine.
type Tune string

// The states of tune. Only the road tune has figures: for the others practice
// agrees on the direction only.
const (
	RoadTune   Tune = "road"
	SideValve  Tune = "side-valve" // low-speed tunes: smaller bore and jet than the road tune
	SportsTune Tune = "sports"     // larger bore and jet than the road tune
	RacingTune Tune = "racing"     // larger still
)

// Begin is the starting point for any displacement.
type Begin struct {
	// Point is empty if Reason is given. Its ranges between two rows are those of
	// the rows, interpolated end by end in proportion to displacement.
	Point  StartingPoint `json:"point"`
	Below  StartingPoint `json:"below"` // the row at or below the displacement
	Above  StartingPoint `json:"above"` // the row at or above it
	Share  units.Ratio   `json:"share"` // of the way from Below to Above
	Rule   string        `json:"rule"`
	Reason fault.Reason  `json:"reason,omitzero"`
	Basis  Basis         `json:"basis"`
}

// BeginAt returns the starting point for a displacement and a state of tune; ""
// is the road tune. Between two rows every end of a range runs in a straight line
// with displacement: a rule of this table, common practice, no source. Outside
// the table, and for tunes without figures, there is no answer: Reason codes
// "outside-table" and "tune-without-figures". It is an error if the displacement
// is not finite and above zero, or the tune is none of those named here.
func BeginAt(displacement units.Volume, tune Tune) (Begin, error) {
	if tune == "" {
		tune = RoadTune
	}
	var l fault.List
	if !(displacement > 0) || !units.Finite(displacement) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "displacement", Value: displacement.String(), Unit: "cc", Rule: "above zero"})
	}
	switch tune {
	case RoadTune, SideValve, SportsTune, RacingTune:
	default:
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "tune", Value: string(tune), Rule: "road, side-valve, sports or racing"})
	}
	if err := l.Err(); err != nil {
		return Begin{}, err
	}
	b := Begin{
		Rule: "between two rows each end of a range runs in a straight line with displacement; nothing beyond the first and last row",
		Basis: Basis{
			Assumed:  []Assumption{{What: "fuel", Value: "petrol without ethanol", Status: CommonPractice}, {What: "straight line between rows", Value: "in displacement", Status: CommonPractice}},
			Cautions: []Caution{StartingPointsOnly, WeakMixture, PetrolVapour, DeferToManual},
		},
	}
	if tune != RoadTune {
		b.Reason = fault.Reason{Code: "tune-without-figures", Text: "no figures for a " + string(tune) + " tune: practice agrees only that it takes " + tuneDirection(tune) + " than the road tune"}
		return b, nil
	}
	found := false
	for p := range StartingPoints().All() {
		if p.Displacement <= displacement {
			b.Below = p
		}
		if p.Displacement >= displacement {
			b.Above, found = p, true
			break
		}
	}
	if !found || b.Below.Name == "" {
		b.Below, b.Above = StartingPoint{}, StartingPoint{}
		b.Reason = fault.Reason{Code: "outside-table", Text: "the table runs from 125 cc to 650 cc for one carburettor"}
		return b, nil
	}
	if gap := b.Above.Displacement - b.Below.Displacement; gap > 0 {
		b.Share = units.Value((displacement - b.Below.Displacement).Ratio(gap))
	}
	b.Point = b.Below
	b.Point.Name = displacement.String() + ", " + string(tune)
	b.Point.Displacement = displacement
	x := b.Share.Value()
	b.Point.Bore = mix(b.Below.Bore, b.Above.Bore, x)
	b.Point.InchBore = mix(b.Below.InchBore, b.Above.InchBore, x)
	b.Point.MainJet = mix(b.Below.MainJet, b.Above.MainJet, x)
	b.Point.Slide = mix(b.Below.Slide, b.Above.Slide, x)
	b.Point.Pilot = mix(b.Below.Pilot, b.Above.Pilot, x)
	b.Basis.Sources = gather(b.Below.Origin, b.Above.Origin)
	return b, nil
}

func tuneDirection(t Tune) string {
	if t == SideValve {
		return "a smaller bore and jet"
	}
	return "a larger bore and jet"
}

// mix returns the range x of the way from a to b, open where either is.
func mix[Q units.Quantity](a, b Range[Q], x float64) Range[Q] {
	end := func(p, q Figure[Q]) Figure[Q] {
		if !p.known || !q.known {
			return Figure[Q]{}
		}
		return Known(units.FromSI[Q](p.value.SI()*(1-x) + q.value.SI()*x))
	}
	if x == 0 {
		return a
	}
	return Range[Q]{end(a.Low, b.Low), end(a.High, b.High)}
}

var (
	//go:embed tables/starting_points.csv
	textStartingPoints string

	startingPoints lazy[StartingPoint, units.Volume]
)

func readStartingPoints() *Table[StartingPoint, units.Volume] {
	return build("starting_points", textStartingPoints, func(s *scanner) func() StartingPoint {
		cc, tune, needle, note := s.must("displacement_cc"), s.must("tune"), s.must("needle"), s.must("note")
		bore, inLow, inHigh := s.rangeColumns("bore", "_mm"), s.must("bore_low_in"), s.must("bore_high_in")
		main, slide, pilot := s.rangeColumns("main_jet", "_cc_min"), s.rangeColumns("slide", ""), s.rangeColumns("pilot", "_cc_min")
		origin := s.originColumns("")
		return func() StartingPoint {
			return StartingPoint{
				Name: s.text(cc) + " cc, " + s.text(tune), Displacement: needed(s, cc, units.CubicCentimetres), Tune: Tune(s.text(tune)),
				Bore: between(s, bore, units.Millimetres), InchBore: RangeOf(s.inchText(inLow), s.inchText(inHigh)),
				MainJet: between(s, main, units.CubicCentimetresPerMinute), Slide: between(s, slide, units.Value), Needle: s.text(needle),
				Pilot: between(s, pilot, units.CubicCentimetresPerMinute), Origin: s.origin(origin), Note: s.text(note),
			}
		}
	}, func(p *StartingPoint) string { return p.Name }, func(p *StartingPoint) []string { return []string{strings.TrimSuffix(p.Name, ", road")} },
		func(p *StartingPoint) units.Volume { return p.Displacement })
}
