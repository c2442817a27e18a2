package crank

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// CompressedPressure returns the absolute pressure after gas at an absolute
// pressure is squeezed to a part of its volume: p ratio^n (Gupta, Fundamentals of
// Internal Combustion Engines, 1st ed., example 2.1, p. 44, read in a textbook
// companion). n is 1.4 for air without loss of heat, 1.2 to 1.3 when turned by
// foot. Errors: a pressure not above zero, a ratio below 1, an index outside 1
// to 1.67.
func CompressedPressure(p units.Pressure, ratio units.Ratio, index float64) (units.Pressure, error) {
	var l fault.List
	above(&l, "pressure", p, "bar, absolute")
	checkPolytropic(&l, ratio, index)
	if err := l.Err(); err != nil {
		return 0, err
	}
	return units.Pascals(p.SI() * math.Pow(ratio.Value(), index)), nil
}

// CompressedTemperature returns the temperature after the same squeeze:
// T ratio^(n-1), T absolute. Errors: as [CompressedPressure].
func CompressedTemperature(t units.Temperature, ratio units.Ratio, index float64) (units.Temperature, error) {
	var l fault.List
	above(&l, "temperature", t, "K")
	checkPolytropic(&l, ratio, index)
	if err := l.Err(); err != nil {
		return 0, err
	}
	return units.Kelvins(t.SI() * math.Pow(ratio.Value(), index-1)), nil
}

// RatioOfPressures returns the ratio of volumes that raises one absolute pressure
// to another: (p2/p1)^(1/n) (Rajput, A Textbook of Internal Combustion Engines,
// example 3.11, p. 101, read in a textbook companion). Errors: as
// [CompressedPressure]; the second pressure below the first.
func RatioOfPressures(p1, p2 units.Pressure, index float64) (units.Ratio, error) {
	var l fault.List
	above(&l, "p1", p1, "bar, absolute")
	above(&l, "p2", p2, "bar, absolute")
	checkPolytropic(&l, 1, index)
	if l.Len() == 0 && p2 < p1 {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "p2", Value: p2.String(), Rule: "compression raises the pressure"})
	}
	if err := l.Err(); err != nil {
		return 0, err
	}
	return units.Value(math.Pow(p2.Ratio(p1), 1/index)), nil
}

// RatioOfTwoPressures returns the compression ratio from absolute pressures at
// two points of the compression stroke, each given by the part of the stroke run
// from BDC: with q = (p2/p1)^(1/n) and clearance c in strokes,
// (c + 1 - f1)/(c + 1 - f2) = q; the ratio is 1 + 1/c (Rajput, example 17.26,
// p. 587, read in a textbook companion). Errors: as [RatioOfPressures]; parts not
// in order within 0 to 1; pressures that no clearance explains.
func RatioOfTwoPressures(p1 units.Pressure, f1 float64, p2 units.Pressure, f2 float64, index float64) (units.Ratio, error) {
	q, err := RatioOfPressures(p1, p2, index)
	var l fault.List
	l.Under("", err)
	if !(f1 >= 0 && f1 < f2 && f2 <= 1) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "f1", Rule: "parts of the stroke from 0 to 1, the first below the second"})
	}
	if err := l.Err(); err != nil {
		return 0, err
	}
	c := ((1 - f1) - q.Value()*(1-f2)) / (q.Value() - 1)
	if !(c > 0) || math.IsInf(c, 0) {
		return 0, fault.Fault{Code: fault.Conflict, Path: "p2", Value: p2.String(), Rule: "no clearance volume gives these two pressures with this index"}
	}
	return units.Value(1 + 1/c), nil
}

func above[Q units.Quantity](l *fault.List, path string, v Q, unit string) {
	if !(v.SI() >= tiniest) || !sane(v) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: path, Unit: unit, Rule: "must be finite and above zero"})
	}
}

func checkPolytropic(l *fault.List, ratio units.Ratio, index float64) {
	if !(ratio >= 1) || !sane(ratio) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "ratio", Value: ratio.String(), Rule: "must be finite and at least 1"})
	}
	if !(index >= 1 && index <= 1.67) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "index", Rule: "a polytropic index is 1 (heat all lost) to 1.67"})
	}
}
