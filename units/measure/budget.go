package measure

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Budget says how much each input of a figure adds to its uncertainty, and so
// which reading is worth taking better.
type Budget[Q units.Quantity] struct {
	Value    Q         `json:"value"`
	Slopes   []float64 `json:"slopes"`   // change of the figure per change of each input, SI units
	Parts    []Q       `json:"parts"`    // slope times uncertainty of each input, above or below zero
	Combined Q         `json:"combined"` // root of the sum of their squares
	Limit    Q         `json:"limit"`    // sum of their sizes: all at their worst at once
}

// BudgetOf takes the slopes of f at the inputs and adds up their parts both
// ways: by squares, if the U of an input is a standard uncertainty (GUM 5.1.2),
// and straight, if it is a limit that the input never passes. f takes and
// returns SI units. The slopes are those at the point itself (five-point
// differences, five or more digits of a smooth f), not over ± u as [Propagate]
// takes them; the two agree where f is straight over ± u. It is an error if f
// is nil, is not finite near the inputs, or has no slope that can be told. The result
// of a temperature must be asked for as a difference.
func BudgetOf[Q units.Quantity](f func(x []float64) float64, in ...Input) (Budget[Q], error) {
	var faults fault.List
	finite[Q]("budget", nil, &faults)
	if f == nil {
		faults.Add(noFunction())
	}
	if err := faults.Err(); err != nil {
		return Budget[Q]{}, err
	}
	x := make([]float64, len(in))
	for i, v := range in {
		x[i] = v.X
	}
	y := f(x)
	b := Budget[Q]{Value: units.FromSI[Q](y), Slopes: make([]float64, len(in)), Parts: make([]Q, len(in))}
	var squares, sum float64
	for i, v := range in {
		if v.U != 0 {
			b.Slopes[i] = slope(f, x, i, v)
		}
		part := b.Slopes[i] * v.U
		b.Parts[i] = units.FromSI[Q](part)
		squares += part * part
		sum += math.Abs(part)
	}
	b.Combined, b.Limit = units.FromSI[Q](math.Sqrt(squares)), units.FromSI[Q](sum)
	if y-y != 0 || squares-squares != 0 {
		return Budget[Q]{}, fault.Fault{Code: fault.OutOfRange, Path: "budget", Rule: "the function is not finite near the readings"}
	}
	return b, nil
}

// slope is the change of f with its i-th input. A step of a hundredth of the
// uncertainty, or of 1e-5 of the figure where that is more, keeps both the bend
// of f (fourth power of the step) and the rounding below the sixth digit.
func slope(f func([]float64) float64, x []float64, i int, v Input) float64 {
	h := max(math.Abs(v.U)/100, math.Abs(v.X)*1e-5)
	at := func(d float64) float64 { x[i] = v.X + d; return f(x) }
	far, near := at(2*h)-at(-2*h), at(h)-at(-h)
	x[i] = v.X
	return (8*near - far) / (12 * h)
}
