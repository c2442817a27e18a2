package spring

import (
	"math"

	"example.com/benchbook/units/fault"
)

// Factor is a factor on the torsional stress of a coiled wire, by the name it
// goes by. They differ in what they take in: Uncorrected is torsion alone.
type Factor uint8

// The factors, C = D/d being the spring index.
const (
	// Uncorrected is 1: the stress 8FD/(πd³) that EN 13906-1 checks a static
	// spring with (from memory).
	Uncorrected Factor = iota
	// DirectShear is 1 + 0.5/C: torsion and direct shear, no curvature
	// (Jindal, Machine Design, 2010, ex. 8-6).
	DirectShear
	// Wahl is (4C - 1)/(4C - 4) + 0.615/C: curvature and direct shear
	// (Sadhu Singh, Machine Design, ex. 8.3).
	Wahl
	// Bergstraesser is (4C + 2)/(4C - 3), which is (C + 0.5)/(C - 0.75), the
	// factor k of EN 13906-1 (Shigley eq. 10-5; both from memory).
	Bergstraesser
)

// String names the factor.
func (f Factor) String() string {
	switch f {
	case Uncorrected:
		return "uncorrected"
	case DirectShear:
		return "direct shear"
	case Wahl:
		return "Wahl"
	case Bergstraesser:
		return "Bergsträsser"
	}
	return "unknown factor"
}

// MarshalText returns the words of String.
func (f Factor) MarshalText() ([]byte, error) { return []byte(f.String()), nil }

// At returns the factor for spring index C = D/d, a pure number, for C of 1.2
// to 100; the formulas are meant for 4 to 20. Errors: C outside its range, an
// unknown factor.
func (f Factor) At(index float64) (float64, error) {
	var l fault.List
	checkFactor(&l, f)
	checkIndex(&l, "index", index)
	if err := l.Err(); err != nil {
		return 0, err
	}
	return f.at(index), nil
}

func (f Factor) at(c float64) float64 {
	switch f {
	case DirectShear:
		return 1 + 0.5/c
	case Wahl:
		return (4*c-1)/(4*c-4) + 0.615/c
	case Bergstraesser:
		return (4*c + 2) / (4*c - 3)
	}
	return 1
}

const (
	leastIndex    = 1.2 // below this the coil cannot be made and Wahl's factor runs away
	greatestIndex = 100
)

func checkIndex(l *fault.List, path string, c float64) {
	if !(c >= leastIndex && c <= greatestIndex) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: path, Value: number(c), Rule: "mean coil diameter over wire must be 1.2 to 100"})
	}
}

func checkFactor(l *fault.List, f Factor) {
	if f > Bergstraesser {
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "factor", Value: f.String(), Rule: "Uncorrected, DirectShear, Wahl or Bergstraesser"})
	}
}

func finite(x float64) bool { return x-x == 0 && !math.IsInf(x, 0) }
