package spring

import (
	"strconv"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

func number(x float64) string { return strconv.FormatFloat(x, 'g', 6, 64) }

// Figures beyond these, in SI units, belong to no machine; keeping within them
// keeps every formula here from overflowing.
const leastSI, mostSI = 1e-9, 1e12

// positive notes a fault if q is not above zero and of a size that a machine can
// have.
func positive[Q units.Quantity](l *fault.List, path string, q Q) bool {
	if x := q.SI(); x >= leastSI && x <= mostSI {
		return true
	}
	code := fault.OutOfRange
	if q == 0 {
		code = fault.Missing
	}
	l.Add(fault.Fault{Code: code, Path: path, Value: said(q), Unit: units.Example(q), Rule: "must be above zero, and of a size a machine can have"})
	return false
}

// notNegative notes a fault if q is below zero or beyond any machine.
func notNegative[Q units.Quantity](l *fault.List, path string, q Q) bool {
	if x := q.SI(); x >= 0 && x <= mostSI {
		return true
	}
	l.Add(fault.Fault{Code: fault.OutOfRange, Path: path, Value: said(q), Unit: units.Example(q), Rule: "must not be below zero, and of a size a machine can have"})
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
