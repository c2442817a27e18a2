package spring

import (
	"math"
	"slices"
	"strconv"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/solve"
)

// Part is one kind of spring among several that are pressed together side by
// side, or one inside another.
type Part struct {
	Spring Element
	Count  int          // zero: one
	Gap    units.Length // movement before it is touched: how much shorter it is than the longest; zero: touched at once
}

func (p Part) count() float64 { return float64(max(p.Count, 1)) }

// Parallel is a set of springs that share one deflection: side by side or
// nested. It is an [Element]. The zero value has no travel.
type Parallel struct {
	parts         []Part
	limit, travel units.Length
}

// NewParallel returns springs that share one deflection; their loads add, those
// with a gap joining later. Its travel ends where the first of them is solid or
// flat, and its Limit where the first of them reaches its own Limit. Errors: no
// part, a part without a spring, a count below zero or above 1000, a gap below
// zero or beyond where the others end.
func NewParallel(parts ...Part) (Parallel, error) {
	var l fault.List
	if len(parts) == 0 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "parts", Rule: "at least one spring"})
	}
	far := units.Millimetres(math.Inf(1))
	p := Parallel{parts: slices.Clone(parts), limit: far, travel: far}
	for i, c := range parts {
		at := "parts." + strconv.Itoa(i)
		if c.Spring == nil || !(c.Spring.Limit() > 0) || !units.Finite(c.Spring.Limit()) {
			l.Add(fault.Fault{Code: fault.Missing, Path: at + ".spring", Rule: "must be a spring with some travel"})
			continue
		}
		if c.Count < 0 || c.Count > 1000 {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: at + ".count", Value: strconv.Itoa(c.Count), Rule: "must be 0 (one) to 1000"})
		}
		notNegative(&l, at+".gap", c.Gap)
		p.limit = min(p.limit, c.Gap+c.Spring.Limit())
		p.travel = min(p.travel, c.Gap+c.Spring.Travel())
	}
	for i, c := range parts {
		if l.Len() == 0 && c.Gap >= p.limit {
			l.Add(fault.Fault{Code: fault.Conflict, Path: "parts." + strconv.Itoa(i) + ".gap", Value: c.Gap.String(), Unit: "mm", Rule: "never touched: the others end at " + p.limit.String()})
		}
	}
	if err := l.Err(); err != nil {
		return Parallel{}, err
	}
	return p, nil
}

// Travel returns where the first part is solid or flat.
func (p Parallel) Travel() units.Length { return p.travel }

// Limit returns where the first part reaches its own Limit.
func (p Parallel) Limit() units.Length { return p.limit }

// Load returns the sum of the loads, for s from 0 to Travel.
func (p Parallel) Load(s units.Length) (units.Force, bool) {
	if !(s >= 0 && s <= p.travel) || len(p.parts) == 0 {
		return 0, false
	}
	return p.load(s), true
}

func (p Parallel) load(s units.Length) units.Force {
	var sum units.Force
	for i := range p.parts {
		c := &p.parts[i]
		f, _ := c.Spring.Load(min(max(s-c.Gap, 0), c.Spring.Travel()))
		sum += f.Times(c.count())
	}
	return sum
}

// RateAt returns the sum of the rates of the parts that are touched, for s from
// 0 to Travel; at the very point where a part joins, the rate with it.
func (p Parallel) RateAt(s units.Length) (units.SpringRate, bool) {
	if !(s >= 0 && s <= p.travel) || len(p.parts) == 0 {
		return 0, false
	}
	var sum units.SpringRate
	for i := range p.parts {
		c := &p.parts[i]
		if s >= c.Gap {
			r, _ := c.Spring.RateAt(min(s-c.Gap, c.Spring.Travel()))
			sum += r.Times(c.count())
		}
	}
	return sum, true
}

// Deflection returns where a load is reached before Limit.
func (p Parallel) Deflection(f units.Force) (units.Length, bool) {
	if len(p.parts) == 0 || !(f >= 0) || f > p.load(p.limit) {
		return 0, false
	}
	if f == 0 {
		return 0, true // a gap common to all parts leaves the load at zero for a while
	}
	s, err := solve.Inverse(func(s units.Length) float64 { return p.load(s).Newtons() }, f.Newtons(), 0, p.limit, p.limit.Times(1e-13))
	return s, err == nil
}

// Series is a column of springs that share one load. It is an [Element]. The
// zero value has no travel.
type Series struct {
	parts []Element
	top   units.Force
	limit units.Length
}

// NewSeries returns springs set end to end: the load is the same in all, the
// deflections add. A coil that has gone solid stays so while the others go on.
// If a part is a disc that snaps, travel ends at its hump, because what follows
// is not stable. Errors: no part, a part without travel.
func NewSeries(parts ...Element) (Series, error) {
	var l fault.List
	if len(parts) == 0 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "parts", Rule: "at least one spring"})
	}
	s := Series{parts: slices.Clone(parts)}
	hump := units.Newtons(math.Inf(1))
	for i, c := range parts {
		if c == nil || !(c.Limit() > 0) || !units.Finite(c.Limit()) {
			l.Add(fault.Fault{Code: fault.Missing, Path: "parts." + strconv.Itoa(i), Rule: "must be a spring with some travel"})
			continue
		}
		f, _ := c.Load(c.Limit())
		if c.Limit() < c.Travel() {
			hump = min(hump, f)
		}
		s.top = max(s.top, f)
	}
	if err := l.Err(); err != nil {
		return Series{}, err
	}
	s.top = min(s.top, hump)
	s.limit = s.deflection(s.top)
	return s, nil
}

func (s Series) deflection(f units.Force) units.Length {
	var sum units.Length
	for _, c := range s.parts {
		x, ok := c.Deflection(f)
		if !ok {
			x = c.Limit() // solid
		}
		sum += x
	}
	return sum
}

// Travel returns where the last part is solid or flat, or the first to snap does.
func (s Series) Travel() units.Length { return s.limit }

// Limit returns the same as [Series.Travel].
func (s Series) Limit() units.Length { return s.limit }

// Deflection returns the sum of the deflections at a load from 0 to that at
// Limit.
func (s Series) Deflection(f units.Force) (units.Length, bool) {
	if len(s.parts) == 0 || !(f >= 0 && f <= s.top) {
		return 0, false
	}
	return min(s.deflection(f), s.limit), true
}

// Load returns the load at a deflection of 0 to Travel.
func (s Series) Load(x units.Length) (units.Force, bool) {
	if len(s.parts) == 0 || !(x >= 0 && x <= s.limit) {
		return 0, false
	}
	if x == s.limit {
		return s.top, true
	}
	if x <= s.deflection(0) { // a part's own last bit
		return 0, true
	}
	f, err := solve.Inverse(func(f units.Force) float64 { return s.deflection(f).Millimetres() }, x.Millimetres(), 0, s.top, s.top.Times(1e-13))
	return f, err == nil
}

// RateAt returns 1/Σ(1/rate) over the parts not yet solid.
func (s Series) RateAt(x units.Length) (units.SpringRate, bool) {
	f, ok := s.Load(x)
	if !ok {
		return 0, false
	}
	give := 0.0
	for _, c := range s.parts {
		at, ok := c.Deflection(f)
		if !ok {
			continue
		}
		if r, ok := c.RateAt(at); ok {
			if r.NewtonsPerMillimetre() == 0 { // on the hump
				return 0, true
			}
			give += 1 / r.NewtonsPerMillimetre()
		}
	}
	if give == 0 {
		return 0, false
	}
	return units.NewtonsPerMillimetre(1 / give), true
}
