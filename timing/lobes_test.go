package timing_test

import (
	"math"
	"testing"

	"example.com/benchbook/timing"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// The rules of LobesOf with four events each as uncertain as no other, by hand: half
// the sum of squares for a centre, with TDC, the whole for durations and overlap; the
// separation is half the sum of two half sums, and TDC cancels.
func TestLobesOfUnlikeEvents(t *testing.T) {
	at := func(d units.Datum, x, u float64) measure.Position {
		return measure.At(units.After(d, units.CrankDegrees(x)), units.CrankDegrees(u))
	}
	r := timing.Readings{
		InletOpens: at(units.TDC, -25, 1.5), InletCloses: at(units.BDC, 65, 2),
		ExhaustOpens: at(units.BDC, -75, 3), ExhaustCloses: at(units.TDC, 31, 4), TDC: timing.TDCByStop, // 0.3°
	}
	l, err := timing.LobesOf(r, timing.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string][2]float64{
		"inlet centre": {l.InletCentre.Value().Degrees(), 110}, "its u": {l.InletCentre.U().Degrees(), math.Sqrt(6.25/4 + 0.09)},
		"exhaust centre": {l.ExhaustCentre.Value().Degrees(), 112}, "u of it": {l.ExhaustCentre.U().Degrees(), math.Sqrt(25.0/4 + 0.09)},
		"inlet duration": {l.InletDuration.Value().Degrees(), 270}, "u of that": {l.InletDuration.U().Degrees(), 2.5},
		"exhaust duration": {l.ExhaustDuration.Value().Degrees(), 286}, "and u": {l.ExhaustDuration.U().Degrees(), 5},
		"separation": {l.Separation.Value().Degrees(), 111}, "u of separation": {l.Separation.U().Degrees(), math.Sqrt(2.25+4+9+16) / 4},
		"overlap": {l.Overlap.Value().Degrees(), 56}, "u of overlap": {l.Overlap.U().Degrees(), math.Sqrt(2.25 + 16)},
	} {
		if !(math.Abs(c[0]-c[1]) <= 1e-12*math.Abs(c[1])) { // rounding
			t.Errorf("%s %v, want %v", name, c[0], c[1])
		}
	}
	// the specification, of the same figures, is exact
	e := engine()
	e.Exhaust = timing.Lobe{Opens: units.After(units.BDC, -75*units.CrankDegree), Closes: units.After(units.TDC, 31*units.CrankDegree)}
	book := diagnose(t, e, r, timing.Options{}).Book
	for name, c := range map[string][2]float64{
		"inlet centre": {book.InletCentre.Value().Degrees(), 110}, "exhaust centre": {book.ExhaustCentre.Value().Degrees(), 112},
		"inlet duration": {book.InletDuration.Value().Degrees(), 270}, "exhaust duration": {book.ExhaustDuration.Value().Degrees(), 286},
		"separation": {book.Separation.Value().Degrees(), 111}, "overlap": {book.Overlap.Value().Degrees(), 56},
		"u": {book.Separation.U().Degrees() + book.Overlap.U().Degrees(), 0},
	} {
		if !(math.Abs(c[0]-c[1]) <= 1e-12*math.Abs(c[1])) {
			t.Errorf("book: %s %v, want %v", name, c[0], c[1])
		}
	}
}

// One event alone: its own uncertainty, half that of the duration (2°), and TDC's.
func TestPhaseOfOneEvent(t *testing.T) {
	r := timing.Readings{
		InletOpens:    measure.At(units.After(units.TDC, -20*units.CrankDegree), 0.5*units.CrankDegree),
		ExhaustCloses: measure.At(units.After(units.TDC, 20*units.CrankDegree), 0.5*units.CrankDegree), TDC: timing.TDCByDial, // 1°
	}
	in, ex, err := timing.Phases(timing.Input{Engine: engine(), Readings: r}, timing.Options{})
	if err != nil {
		t.Fatal(err)
	}
	for k, c := range [2]struct {
		p    timing.Phase
		want float64
	}{{in, -5}, {ex, 5}} {
		if !(math.Abs(c.p.Crank.Value().Degrees()-c.want) <= 1e-9 && math.Abs(c.p.Crank.U().Degrees()-1.5) <= 1e-12) || c.p.LongerBy.Taken() { // sqrt(0.25 + 1 + 1)
			t.Errorf("cam %d: %v", k, c.p.Crank)
		}
	}
}
