package measure_test

import (
	"fmt"

	"example.com/benchbook/units/measure"
)

// Many causes that differ only in what they expect share one spread: it is
// worked out once, and each cause then costs a few sums. Four events were read
// on one disc whose dead centre may be a degree out; the last was not taken,
// and the third looks misread. The readings are invented.
func ExamplePrecision() {
	spread := measure.Gaussian{
		Mean: []float64{0, 0, 0, 0}, Own: []float64{1, 1, 1, 1},
		Shared: []measure.Effect{{Name: "TDC mark", SD: 1, Column: []float64{1, 1, 1, 1}}},
		Free:   []measure.Effect{{Name: "slip", SD: 20, Column: []float64{1, 1, 0, 0}}},
	}
	read := measure.Data{{Value: 16, Taken: true}, {Value: 15, Taken: true}, {Value: 6, Taken: true}, {}}
	p, ok := spread.Precision(read)
	fmt.Println(ok, "taken:", p.Taken())

	// Residuals of a cause that expects no shift: reading less expectation.
	q, w := []float64{16, 15, 6}, make([]float64, 3)
	fmt.Printf("log density %.1f\n", p.Weigh(q, w))
	slip, u := p.Amount(0, q)
	fmt.Printf("slip %.1f ± %.1f\n", slip, u)

	// The same cause, had the third reading been 5 less.
	fmt.Printf("third 5 less: log density %+.1f, slip %+.1f\n", p.Nudge(2, -5, w), p.AmountNudge(0, 2, -5))
	// The same cause, the third reading good to 30 only; nothing done to one
	// reading can better that by much.
	fmt.Printf("third set aside: %+.1f of at most %+.1f\n", p.Widen(2, 30, w), p.Relief(w))
	// Output:
	// true taken: [0 1 2]
	// log density -15.9
	// slip 12.5 ± 1.0
	// third 5 less: log density +8.7, slip +2.5
	// third set aside: +5.8 of at most +8.9
}
