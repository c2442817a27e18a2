package spring

import (
	"strconv"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Stack is a column of equal disc springs: packets of discs lying the same way
// round, set against each other in turn. It is an [Element]. Loads are without
// friction; see [Stack.Band]. The zero value has no travel.
type Stack struct {
	disc             Disc
	parallel, series int
}

// NewStack returns a stack of series packets of parallel discs each: the load of
// one disc times parallel at the deflection of one times series. Errors: a disc
// not made by [NewDisc], counts outside 1 to 1000.
func NewStack(d Disc, parallel, series int) (Stack, error) {
	var l fault.List
	if d.t == 0 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "disc", Rule: "make it with NewDisc"})
	}
	for _, c := range []struct {
		path string
		n    int
	}{{"parallel", parallel}, {"series", series}} {
		if c.n < 1 || c.n > 1000 {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: c.path, Value: strconv.Itoa(c.n), Rule: "must be 1 to 1000"})
		}
	}
	if err := l.Err(); err != nil {
		return Stack{}, err
	}
	return Stack{d, parallel, series}, nil
}

// Disc returns the disc it is built of.
func (k Stack) Disc() Disc { return k.disc }

// Height returns the free height: series times (l0 + (parallel - 1) t).
func (k Stack) Height() units.Length {
	one := k.disc.h + k.disc.t*float64(k.parallel)
	return units.Millimetres(one * float64(k.series))
}

// Travel returns the deflection to flat.
func (k Stack) Travel() units.Length { return k.disc.Travel().Times(float64(k.series)) }

// Limit returns the deflection where the load stops rising.
func (k Stack) Limit() units.Length { return k.disc.Limit().Times(float64(k.series)) }

// Load returns the load for s from 0 to flat.
func (k Stack) Load(s units.Length) (units.Force, bool) {
	f, ok := k.disc.Load(k.each(s))
	return f.Times(float64(k.parallel)), ok
}

// Deflection returns where a load is first reached, for loads from 0 to that at
// Limit.
func (k Stack) Deflection(f units.Force) (units.Length, bool) {
	if top, ok := k.Load(k.Limit()); !ok || f > top {
		return 0, false
	}
	one := units.Newtons(k.disc.load(k.disc.limit))
	s, ok := k.disc.Deflection(min(f.Times(1/float64(k.parallel)), one)) // the greatest not a last bit beyond itself
	return min(s.Times(float64(k.series)), k.Limit()), ok
}

// RateAt returns dF/ds for s from 0 to flat: the disc's times parallel over
// series.
func (k Stack) RateAt(s units.Length) (units.SpringRate, bool) {
	r, ok := k.disc.RateAt(k.each(s))
	if !ok {
		return 0, false
	}
	return r.Times(float64(k.parallel) / float64(k.series)), true
}

func (k Stack) each(s units.Length) units.Length {
	if s == k.Travel() {
		return k.disc.Travel() // not a last bit beyond it
	}
	return s.Times(1 / float64(k.series))
}

// StackFriction is the loss between stacked discs, as shares of the load.
type StackFriction struct {
	Between float64 `json:"between"` // each pair of faces inside a packet, wM, 0 to 0.1
	Edge    float64 `json:"edge"`    // at the edges, wR, 0 to 0.1
}

// Band returns the load while being pressed together (higher) and while opening
// (lower) at deflection s: F·n/(1 ∓ wM (n - 1) ∓ wR) for packets of n (EN 16984,
// formerly DIN 2092, from memory). With oil, wM of 0.002 to 0.03 and wR of 0.01
// to 0.05 are usual, thin discs low and thick ones high (DIN 2092, from memory).
// Errors: s outside the travel, shares outside 0 to 0.1, or so many discs in a
// packet that the formula leaves no load.
func (k Stack) Band(s units.Length, w StackFriction) (pressing, opening units.Force, err error) {
	var l fault.List
	f, ok := k.Load(s)
	if !ok {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "deflection", Value: s.String(), Unit: "mm", Rule: "must be 0 to flat, " + k.Travel().String()})
	}
	within(&l, "friction.between", w.Between, 0, 0.1)
	within(&l, "friction.edge", w.Edge, 0, 0.1)
	loss := w.Between*float64(k.parallel-1) + w.Edge
	if !(loss < 0.9) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "friction", Value: number(loss), Rule: "the losses of one packet must add up to less than 0.9"})
	}
	if err := l.Err(); err != nil {
		return 0, 0, err
	}
	return f.Times(1 / (1 - loss)), f.Times(1 / (1 + loss)), nil
}
