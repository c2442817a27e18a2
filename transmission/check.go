package transmission

import (
	"strconv"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

func length(r *measure.Reading[units.Length]) (figure, bool, error) {
	if !r.Taken() {
		return figure{}, false, nil
	}
	return figure{r.Value().Millimetres(), r.U().Millimetres()}, true, r.Err()
}

func stiffness(r *measure.Reading[units.SpringRate]) (figure, bool, error) {
	if !r.Taken() {
		return figure{}, false, nil
	}
	return figure{r.Value().NewtonsPerMillimetre(), r.U().NewtonsPerMillimetre()}, true, r.Err()
}

func ratio(r *measure.Reading[units.Ratio]) (figure, bool, error) {
	if !r.Taken() {
		return figure{}, false, nil
	}
	return figure{r.Value().Value(), r.U().Value()}, true, r.Err()
}

func turned(r *measure.Reading[units.Angle]) (figure, bool, error) {
	if !r.Taken() {
		return figure{}, false, nil
	}
	return figure{r.Value().Turns(), r.U().Turns()}, true, r.Err()
}

// number writes a figure for a message.
func number(x float64) string { return strconv.FormatFloat(x, 'g', 5, 64) }

func outside(path string, x float64, unit string, low, high float64) fault.Fault {
	value, rule := number(x), "must be from "+number(low)+" to "+number(high)
	if unit != "" {
		value, rule = value+" "+unit, rule+" "+unit
	}
	return fault.Fault{Code: fault.OutOfRange, Path: path, Value: value, Unit: unit, Rule: rule}
}

// need notes a figure that is not within its range, or was left at zero where
// zero cannot be meant.
func need(l *fault.List, path string, x float64, unit string, low, high float64) {
	switch {
	case x == 0 && low > 0:
		l.Add(fault.Fault{Code: fault.Missing, Path: path, Unit: unit, Rule: "is needed"})
	case !(x >= low && x <= high):
		l.Add(outside(path, x, unit, low, high))
	}
}
