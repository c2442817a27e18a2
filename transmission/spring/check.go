package spring

import (
	"strconv"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

func number(x float64) string { return strconv.FormatFloat(x, 'g', 6, 64) }

// positive notes a fault if q is not above zero and finite.
func positive[Q units.Quantity](l *fault.List, path string, q Q) bool {
	if q > 0 && units.Finite(q) {
		return true
	}
	code := fault.OutOfRange
	if q == 0 {
		code = fault.Missing
	}
	l.Add(fault.Fault{Code: code, Path: path, Value: said(q), Unit: units.Example(q), Rule: "must be above zero"})
	return false
}

// notNegative notes a fault if q is below zero or not finite.
func notNegative[Q units.Quantity](l *fault.List, path string, q Q) bool {
	if q >= 0 && units.Finite(q) {
		return true
	}
	l.Add(fault.Fault{Code: fault.OutOfRange, Path: path, Value: said(q), Unit: units.Example(q), Rule: "must not be below zero"})
	return false
}

// within notes a fault if x is outside [low, high].
func within(l *fault.List, path string, x, low, high float64) bool {
	if x >= low && x <= high {
		return true
	}
	l.Add(fault.Fault{Code: fault.OutOfRange, Path: path, Value: number(x), Rule: "must be " + number(low) + " to " + number(high)})
	return false
}

func said[Q units.Quantity](q Q) string { return q.String() }
