package cam

import (
	"math"
	"slices"
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Readings within a millionth of a degree are one place, weighed by how many they are,
// also where the place is the turn's own seam; the order they come in does not count.
func TestReadingsAtOnePlace(t *testing.T) {
	s := func(at, lift float64) Sample {
		return Sample{At: units.CamDegrees(at), Lift: units.Millimetres(lift)}
	}
	for _, c := range []struct {
		name          string
		samples       []Sample
		at, y, weight []float64
	}{
		{"thrice", []Sample{s(300, 3), s(0, 0), s(40, 1), s(80, 2), s(120, 3), s(120, 9), s(160, 2), s(200, 1), s(240, 1), s(120+0.9e-6, 0)},
			[]float64{0, 40, 80, 120, 160, 200, 240, 300}, []float64{0, 1, 2, 4, 2, 1, 1, 3}, []float64{1, 1, 1, 3, 1, 1, 1, 1}},
		{"a millionth apart is apart", []Sample{s(0, 5), s(1e-6, 1), s(40, 1), s(80, 2), s(120, 3), s(160, 2), s(200, 1), s(240, 1)},
			[]float64{0, 1e-6, 40, 80, 120, 160, 200, 240}, []float64{5, 1, 1, 2, 3, 2, 1, 1}, []float64{1, 1, 1, 1, 1, 1, 1, 1}},
		{"over the seam", []Sample{s(0, 6), s(360-0.9e-6, 2), s(720, 3), s(-0.5e-6, 5), s(40, 1), s(80, 2), s(120, 3), s(160, 2), s(200, 1), s(240, 1), s(320, 7)},
			[]float64{0, 40, 80, 120, 160, 200, 240, 320}, []float64{4, 1, 2, 3, 2, 1, 1, 7}, []float64{4, 1, 1, 1, 1, 1, 1, 1}},
		{"near the seam", []Sample{s(0, 6), s(360-1.1e-6, 2), s(40, 1), s(80, 2), s(120, 3), s(160, 2), s(200, 1), s(240, 1)},
			[]float64{0, 40, 80, 120, 160, 200, 240, 360 - 1.1e-6}, []float64{6, 1, 2, 3, 2, 1, 1, 2}, []float64{1, 1, 1, 1, 1, 1, 1, 1}},
	} {
		var l fault.List
		at, y, weight := gather(&l, c.samples)
		if err := l.Err(); err != nil {
			t.Error(c.name, err)
			continue
		}
		same := func(a, b float64) bool { return math.Abs(a-b) < 1e-12 }
		if !slices.Equal(at, c.at) || !slices.EqualFunc(y, c.y, same) || !slices.Equal(weight, c.weight) {
			t.Errorf("%s:\n%v %v %v, want\n%v %v %v", c.name, at, y, weight, c.at, c.y, c.weight)
		}
	}
	// Eight readings at seven places are seven.
	var l fault.List
	gather(&l, []Sample{s(0, 6), s(360, 2), s(40, 1), s(80, 2), s(120, 3), s(160, 2), s(200, 1), s(240, 1)})
	if all := fault.Faults(l.Err()); len(all) != 1 || all[0].Path != "readings" || all[0].Value != "7" {
		t.Error(all)
	}
}

// The gaps of a turn are what it takes from each reading to the next, and make it up.
func TestGapsMakeUpTheTurn(t *testing.T) {
	if got, want := gaps([]float64{10, 40, 100, 350}), []float64{30, 60, 250, 20}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
}
