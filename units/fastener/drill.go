package fastener

import (
	"cmp"
	"slices"
	"strconv"
	"sync"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
)

// Drill is a drill of a named size.
type Drill struct {
	Name     string       `json:"name"` // "#7", "F", "17/64 in", "6.8 mm"
	Diameter units.Length `json:"diameter"`
}

// String returns the name: "#7".
func (d Drill) String() string { return d.Name }

// NumberDrills returns the number drills, #97 to #1, smallest first.
func NumberDrills() []Drill { return named(refdata.NumberDrills()) }

// LetterDrills returns the letter drills, A to Z, smallest first.
func LetterDrills() []Drill { return named(refdata.LetterDrills()) }

func named(t *refdata.Table[refdata.Drill, units.Length]) []Drill {
	out := make([]Drill, 0, t.Len())
	for d := range t.All() {
		out = append(out, Drill{d.Name, d.Diameter})
	}
	return sorted(out)
}

// FractionDrills returns the drills of 1/64 in to 1 in by 64ths, exact.
func FractionDrills() []Drill {
	out := make([]Drill, 0, 64)
	for n := 1; n <= 64; n++ {
		out = append(out, Drill{fraction(n, 64) + " in", units.Inches(float64(n) / 64)})
	}
	return out
}

// MetricDrills returns the metric drills a workshop stocks: by 0.1 mm from 0.5
// to 14 mm, by 0.5 mm to 50 mm (common practice, no source), and the tapping
// drills of ISO 2306 besides; smallest first.
func MetricDrills() []Drill {
	var out []Drill
	add := func(mm float64) {
		d := units.Millimetres(mm)
		out = append(out, Drill{strconv.FormatFloat(mm, 'f', -1, 64) + " mm", d})
	}
	for n := 5; n < 140; n++ {
		add(float64(n) / 10)
	}
	for n := 28; n <= 100; n++ {
		add(float64(n) / 2)
	}
	for d := range refdata.MetricDrills().All() {
		if !slices.ContainsFunc(out, func(o Drill) bool { return same(o.Diameter, d.Diameter) }) {
			add(d.Diameter.Millimetres())
		}
	}
	return sorted(out)
}

// Drills returns number, letter, fractional and metric drills together,
// smallest first.
func Drills() []Drill { return slices.Clone(allDrills()) }

var allDrills = sync.OnceValue(func() []Drill {
	return sorted(slices.Concat(NumberDrills(), LetterDrills(), FractionDrills(), MetricDrills()))
})

func sorted(d []Drill) []Drill {
	slices.SortStableFunc(d, func(a, b Drill) int { return cmp.Compare(a.Diameter, b.Diameter) })
	return d
}
