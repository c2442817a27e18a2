package solve_test

import (
	"fmt"
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/solve"
)

// The classic: cos x = x.
func ExampleRoot() {
	x, err := solve.Root(func(x float64) float64 { return math.Cos(x) - x }, 0, 1, 1e-12)
	fmt.Printf("%.6f %v\n", x, err)
	// Output: 0.739085 <nil>
}

// How deep must a 30 mm ball be set into a plate so that it is open by 20 mm?
func ExampleInverse() {
	open := func(depth units.Length) float64 {
		h := depth.Millimetres()
		return 2 * math.Sqrt(h*(30-h))
	}
	depth, err := solve.Inverse(open, 20, 0, 15*units.Millimetre, units.Micrometre)
	fmt.Println(depth.In(units.Millimetre, 2), err)
	// Output: 3.82 mm <nil>
}
