package fastener

import (
	"strconv"
	"strings"
	"sync"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Gauge is a series of sizes known by number or letter. It is a function from
// the mark to the diameter that can be turned round; between two marks it is
// taken as straight.
type Gauge uint8

// The gauges. The zero value is none of them.
const (
	SWG         Gauge = iota + 1 // Standard Wire Gauge, 7/0 (largest) to 50
	NumberDrill                  // #1 (largest) to #97
	LetterDrill                  // A (smallest) to Z
)

// String returns the name of the gauge.
func (g Gauge) String() string {
	switch g {
	case SWG:
		return "SWG"
	case NumberDrill:
		return "number drill"
	case LetterDrill:
		return "letter drill"
	}
	return "no gauge"
}

// MarshalText returns the words of String.
func (g Gauge) MarshalText() ([]byte, error) { return []byte(g.String()), nil }

// GaugeSize is one size of a gauge.
type GaugeSize struct {
	Gauge    Gauge        `json:"gauge"`
	Mark     string       `json:"mark"`   // "10", "4/0", "#7", "F"
	Number   float64      `json:"number"` // the mark as a number, see [Gauge.At]
	Diameter units.Length `json:"diameter"`
}

var gaugeSizes = sync.OnceValue(func() (all [LetterDrill + 1][]GaugeSize) {
	for w := range refdata.WireGauge().All() {
		all[SWG] = append(all[SWG], GaugeSize{SWG, w.Gauge, markNumber(w.Gauge), w.Diameter})
	}
	for d := range refdata.NumberDrills().All() {
		all[NumberDrill] = append(all[NumberDrill], GaugeSize{NumberDrill, d.Name, markNumber(d.Name[1:]), d.Diameter})
	}
	for d := range refdata.LetterDrills().All() {
		all[LetterDrill] = append(all[LetterDrill], GaugeSize{LetterDrill, d.Name, float64(d.Name[0]-'A') + 1, d.Diameter})
	}
	return all
})

// markNumber turns "10" into 10, "0" into 0 and "4/0" into -3.
func markNumber(mark string) float64 {
	if n, ok := strings.CutSuffix(mark, "/0"); ok {
		k, _ := strconv.Atoi(n)
		return 1 - float64(k)
	}
	k, _ := strconv.Atoi(mark)
	return float64(k)
}

func (g Gauge) sizes() []GaugeSize {
	if g < SWG || g > LetterDrill {
		return nil
	}
	return gaugeSizes()[g]
}

func (g Gauge) unknown() error {
	return fault.Fault{Code: fault.UnknownName, Path: "gauge", Rule: "SWG, NumberDrill or LetterDrill"}
}

// Ends returns the first and the last size of the gauge: its domain and range.
// The zero sizes for no gauge.
func (g Gauge) Ends() (first, last GaugeSize) {
	s := g.sizes()
	if len(s) == 0 {
		return
	}
	return s[0], s[len(s)-1]
}

// Diameter returns the diameter of a mark: "10", "4/0", "7", "#7", "f". Faults:
// no gauge, a mark it does not have.
func (g Gauge) Diameter(mark string) (units.Length, error) {
	s := g.sizes()
	if s == nil {
		return 0, g.unknown()
	}
	m := strings.TrimPrefix(strings.TrimSpace(mark), "#")
	for _, z := range s {
		if strings.EqualFold(strings.TrimPrefix(z.Mark, "#"), m) {
			return z.Diameter, nil
		}
	}
	return 0, fault.Fault{Code: fault.UnknownName, Path: "mark", Value: mark, Rule: g.String() + " runs from " + s[0].Mark + " to " + s[len(s)-1].Mark}
}

// At returns the diameter at a number, straight between marks. 1/0 is 0, 2/0 is
// -1 and so on to 7/0, which is -6; letters count from A, which is 1. Faults: no
// gauge, a number outside its ends.
func (g Gauge) At(number float64) (units.Length, error) {
	s := g.sizes()
	if s == nil {
		return 0, g.unknown()
	}
	for i := range len(s) - 1 {
		if a, b := s[i], s[i+1]; number >= a.Number && number <= b.Number {
			t := number - a.Number // marks are one apart
			return a.Diameter.Times(1-t) + b.Diameter.Times(t), nil
		}
	}
	return 0, fault.Fault{Code: fault.OutOfRange, Path: "number", Value: strconv.FormatFloat(number, 'g', 6, 64), Rule: trimFloat(s[0].Number) + " to " + trimFloat(s[len(s)-1].Number)}
}

// Number returns the number at a diameter: the inverse of [Gauge.At]. Faults: no
// gauge, a diameter outside its range.
func (g Gauge) Number(d units.Length) (float64, error) {
	s := g.sizes()
	if s == nil {
		return 0, g.unknown()
	}
	for i := range len(s) - 1 {
		a, b := s[i], s[i+1]
		if d >= min(a.Diameter, b.Diameter) && d <= max(a.Diameter, b.Diameter) {
			return a.Number + (d - a.Diameter).Ratio(b.Diameter-a.Diameter), nil
		}
	}
	return 0, g.outside(d, s)
}

// Nearest returns the size whose diameter is nearest, the first of two as near, and
// how much larger d is. Faults: no gauge, a diameter outside its range by more than half its first or
// last step.
func (g Gauge) Nearest(d units.Length) (GaugeSize, units.Length, error) {
	s := g.sizes()
	if s == nil {
		return GaugeSize{}, 0, g.unknown()
	}
	best := s[0]
	for _, z := range s[1:] {
		if (d - z.Diameter).Abs() < (d - best.Diameter).Abs() {
			best = z
		}
	}
	// half a step beyond either end
	beyond := func(end, next GaugeSize) units.Length {
		return end.Diameter + (end.Diameter - next.Diameter).Times(0.5)
	}
	a, b := beyond(s[0], s[1]), beyond(s[len(s)-1], s[len(s)-2])
	if !(d >= min(a, b) && d <= max(a, b)) {
		return GaugeSize{}, 0, g.outside(d, s)
	}
	return best, d - best.Diameter, nil
}

func (g Gauge) outside(d units.Length, s []GaugeSize) error {
	lo, hi := s[0].Diameter, s[len(s)-1].Diameter
	return fault.Fault{Code: fault.OutOfRange, Path: "diameter", Value: d.String(), Unit: "mm", Rule: min(lo, hi).String() + " to " + max(lo, hi).String()}
}
