package drive

import (
	"slices"
	"testing"

	"example.com/benchbook/units/fault"
)

// The faults of a gearing that nothing is known of stand under the fields that the
// caller fills in.
func TestSuitNamesItsOwnFields(t *testing.T) {
	_, err := Suit(SuitInput{}, SuitOptions{})
	var paths []string
	for _, f := range fault.Faults(err) {
		paths = append(paths, f.Path)
	}
	for _, want := range []string{"peak", "peak_at", "gear", "line.rolling", "road.mass"} {
		if !slices.Contains(paths, want) {
			t.Errorf("no fault of %s among %v", want, paths)
		}
	}
	if slices.Contains(paths, "road.power") {
		t.Errorf("a road has no power: %v", paths)
	}
}
