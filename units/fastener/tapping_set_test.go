package fastener

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/units"
)

// TestTappingNeighbours: smaller and larger are the next sizes of the set to either
// side, found by sorting.
func TestTappingNeighbours(t *testing.T) {
	th := MustParse("M10")
	rapid.Check(t, func(r *rapid.T) {
		var set []Drill
		for range rapid.IntRange(1, 8).Draw(r, "drills") {
			n := rapid.IntRange(840, 880).Draw(r, "hundredths")
			set = append(set, Drill{"x", units.Millimetres(float64(n) / 100)})
		}
		tap, err := TappingDrill(th, 0.75, ChartDepth, set)
		if err != nil || tap.Reason.Given() {
			r.Fatal(tap.Reason, err)
		}
		var sizes []units.Length
		for _, d := range set {
			sizes = append(sizes, d.Diameter)
		}
		slices.Sort(sizes)
		sizes = append(append([]units.Length{0}, slices.Compact(sizes)...), 0)
		i := slices.Index(sizes[1:], tap.Choice.Drill.Diameter) + 1
		if tap.Smaller.Drill.Diameter != sizes[i-1] || tap.Larger.Drill.Diameter != sizes[i+1] {
			r.Fatalf("%v of %v: smaller %v, larger %v", tap.Choice, sizes, tap.Smaller, tap.Larger)
		}
		for _, c := range []Choice{tap.Smaller, tap.Choice, tap.Larger} {
			if e, _ := Engagement(th, c.Drill.Diameter, ChartDepth); c.Drill.Diameter != 0 && c.Engagement != e {
				r.Fatalf("%v gives %v", c, e)
			}
		}
	})
}

// TestTappingTakesTheFirstOfOneSize: of drills of one size the first of the set is
// named, the choice and its neighbours alike.
func TestTappingTakesTheFirstOfOneSize(t *testing.T) {
	var set []Drill
	for _, mm := range []float64{8.4, 8.5, 8.6} {
		for _, name := range []string{"first", "second", "third"} {
			set = append(set, Drill{name, units.Millimetres(mm)})
		}
	}
	tap, err := TappingDrill(MustParse("M10"), 0.77, ChartDepth, set)
	if err != nil || tap.Choice.Drill != set[3] || tap.Smaller.Drill != set[0] || tap.Larger.Drill != set[6] {
		t.Errorf("%+v, %v", tap, err)
	}
}

// TestTappingBounds: a drill that misses by 15 points, or stands a hundredth of a
// millimetre inside the basic minor diameter of the nut, is the last that serves.
func TestTappingBounds(t *testing.T) {
	th := MustParse("M10")
	g, err := th.Geometry()
	if err != nil {
		t.Fatal(err)
	}
	serves := func(d units.Length, e units.Ratio, c Convention) bool {
		tap, err := TappingDrill(th, e, c, []Drill{{"x", d}})
		if err != nil {
			t.Fatal(err)
		}
		return !tap.Reason.Given()
	}
	least := g.MinorNut - units.Millimetres(0.01)
	if !serves(least, 1, BasicHeight) || serves(units.Millimetres(math.Nextafter(least.Millimetres(), 0)), 1, BasicHeight) {
		t.Errorf("a drill of %v", least)
	}
	// M10 of 1.624 mm in all: 15 points are 0.2436 mm
	wanted, err := TappingHole(th, 0.6, BasicHeight)
	if err != nil {
		t.Fatal(err)
	}
	for miss, ok := range map[float64]bool{0.2434: true, 0.2438: false, -0.2434: true, -0.2438: false} {
		if serves(wanted+units.Millimetres(miss), 0.6, BasicHeight) != ok {
			t.Errorf("%v mm past the hole: serves %v", miss, !ok)
		}
	}
}
