package spring

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// HelicalSpec says how a compression spring of round wire, cold coiled to a
// cylinder at even pitch, is made. Of Mean, Outside and Inside give one; of
// Active and Total give one.
type HelicalSpec struct {
	Wire    units.Length  `json:"wire"`             // wire diameter d, above 0
	Mean    units.Length  `json:"mean,omitzero"`    // mean coil diameter D
	Outside units.Length  `json:"outside,omitzero"` // over the coils, D + d
	Inside  units.Length  `json:"inside,omitzero"`  // inside the coils, D - d
	Active  float64       `json:"active,omitzero"`  // coils that work, n
	Total   float64       `json:"total,omitzero"`   // all coils, nt; Active is then nt less the dead coils of Ends
	Free    units.Length  `json:"free"`             // length unloaded, L0
	Ends    Ends          `json:"ends,omitzero"`    // zero: taken as squared and ground, and said so
	Solid   units.Length  `json:"solid,omitzero"`   // length with coils touching, if measured; zero: by Ends
	Modulus Modulus       `json:"modulus,omitzero"` // zero: EN 10270-1 patented drawn steel
	Wires   Law           `json:"wires,omitzero"`   // strength of the wire by size; zero: strength not looked at
	Seating Seating       `json:"seating,omitzero"` // zero: both ends flat between parallel plates
	Density units.Density `json:"density,omitzero"` // of the wire; zero: 7850 kg/m³, steel, from memory
}

// Modulus is the pair of elastic constants of a spring material. Its zero value
// stands for steel at G 81.5 GPa and E 206 GPa (EN 13906-1 for EN 10270-1 wire,
// from memory).
type Modulus struct {
	Shear units.Pressure `json:"shear"` // G
	Young units.Pressure `json:"young"` // E
}

// Steel returns the elastic constants of patented drawn steel wire, G 81.5 GPa
// and E 206 GPa (EN 13906-1 for EN 10270-1 wire, from memory).
func Steel() Modulus { return Modulus{81.5 * units.Gigapascal, 206 * units.Gigapascal} }

// Seating is how the ends of a compression spring are held; it sets the length
// that counts for buckling. The zero value is two flat parallel seats.
type Seating uint8

// The ways of seating (Shigley table 10-2, from memory).
const (
	BothFlat     Seating = iota // both ends flat between parallel plates, factor 0.5
	FlatAndPivot                // one flat, one free to tip, factor 0.707
	BothPivot                   // both free to tip, factor 1
	OneFree                     // one clamped, the other free to wander, factor 2
)

// LengthFactor returns the part of the length that bows as one half-wave.
func (s Seating) LengthFactor() float64 {
	switch s {
	case FlatAndPivot:
		return math.Sqrt2 / 2
	case BothPivot:
		return 1
	case OneFree:
		return 2
	}
	return 0.5
}

// String names the seating.
func (s Seating) String() string {
	switch s {
	case BothFlat:
		return "both ends flat"
	case FlatAndPivot:
		return "one end flat, one tipping"
	case BothPivot:
		return "both ends tipping"
	case OneFree:
		return "one end clamped, one free"
	}
	return "unknown seating"
}

// MarshalText returns the words of String.
func (s Seating) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// Helical is a coil spring that has been checked. It is an [Element]; deflection
// counts from the free length. The zero value is no spring and has no travel.
type Helical struct {
	spec                           HelicalSpec // as given
	d, mean, n, total, free, solid float64     // mm
	g, e                           float64     // MPa
	k                              float64     // N/mm
	measuredSolid                  bool
}

// NewHelical checks a spring's dimensions and returns it. The rate is
// k = G d⁴/(8 D³ n). Errors, all together: a dimension missing or given twice in
// ways that disagree, D/d outside 1.2 to 100, no active coil, a free length not
// above the solid length, an unknown choice.
func NewHelical(in HelicalSpec) (Helical, error) {
	var l fault.List
	h := Helical{spec: in}
	wire := positive(&l, "wire", in.Wire)
	h.d = in.Wire.Millimetres()
	h.mean = meanDiameter(&l, in)
	if wire && h.mean > 0 {
		checkIndex(&l, "mean_diameter", h.mean/h.d)
	}
	if in.Ends >= endKinds {
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "ends", Value: in.Ends.String(), Rule: "one of the end types of this package"})
	}
	if in.Seating > OneFree {
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "seating", Value: in.Seating.String(), Rule: "one of the seatings of this package"})
	}
	h.n, h.total = coils(&l, in)
	m := in.Modulus
	if m == (Modulus{}) {
		m = Steel()
	}
	if positive(&l, "modulus.shear", m.Shear) && positive(&l, "modulus.young", m.Young) && !(m.Young > m.Shear.Times(1.01) && m.Young <= m.Shear.Times(3)) {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "modulus.young", Value: m.Young.String(), Unit: "GPa", Rule: "must lie between G and 3 G"})
	}
	h.g, h.e = m.Shear.Megapascals(), m.Young.Megapascals()
	if in.Density != 0 {
		positive(&l, "density", in.Density)
	}
	if in.Wires != (Law{}) {
		l.Under("wires", in.Wires.check())
	}
	notNegative(&l, "solid", in.Solid)
	if h.solid = in.Solid.Millimetres(); in.Solid > 0 {
		h.measuredSolid = true
		if h.solid < 0.9*h.d*(h.total-1.5) {
			l.Add(fault.Fault{Code: fault.Conflict, Path: "solid", Value: in.Solid.String(), Unit: "mm", Rule: "too short for that many coils of that wire"})
		}
	} else {
		h.solid = solidLength(in.Ends, h.d, h.total)
	}
	h.free = in.Free.Millimetres()
	if positive(&l, "free", in.Free) && l.Len() == 0 && !(h.free > h.solid) {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "free", Value: in.Free.String(), Unit: "mm", Rule: "must be longer than the solid length, " + units.Millimetres(h.solid).String()})
	}
	if err := l.Err(); err != nil {
		return Helical{}, err
	}
	h.k = rate(h.d, h.mean, h.n, h.g)
	return h, nil
}

// meanDiameter settles the one diameter that was given.
func meanDiameter(l *fault.List, in HelicalSpec) float64 {
	given, mean := 0, 0.0
	for _, c := range []struct {
		path string
		q    units.Length
		add  units.Length
	}{{"mean", in.Mean, 0}, {"outside", in.Outside, -in.Wire}, {"inside", in.Inside, in.Wire}} {
		if c.q == 0 {
			continue
		}
		if !positive(l, c.path, c.q) {
			return 0
		}
		m := (c.q + c.add).Millimetres()
		if !(m > 0) {
			l.Add(fault.Fault{Code: fault.Conflict, Path: c.path, Value: c.q.String(), Unit: "mm", Rule: "must leave a mean diameter above zero with that wire"})
			return 0
		}
		// two of them may be given if they agree to a caliper's reading
		if given > 0 && math.Abs(m-mean) > 0.1+0.01*mean {
			l.Add(fault.Fault{Code: fault.Conflict, Path: c.path, Value: c.q.String(), Unit: "mm", Rule: "disagrees with the other diameter and the wire"})
			return 0
		}
		if given == 0 {
			mean = m
		}
		given++
	}
	if given == 0 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "mean", Unit: "mm", Rule: "give the mean, outside or inside diameter of the coils"})
	}
	return mean
}

// coils settles active and total coils.
func coils(l *fault.List, in HelicalSpec) (active, total float64) {
	dead := in.Ends.Dead()
	switch {
	case in.Active != 0 && in.Total != 0:
		if checkActive(l, in.Active); in.Total < in.Active || !finite(in.Total) {
			l.Add(fault.Fault{Code: fault.Conflict, Path: "total", Value: number(in.Total), Rule: "must not be less than the active coils"})
		}
		return in.Active, in.Total
	case in.Active != 0:
		checkActive(l, in.Active)
		return in.Active, in.Active + dead
	case in.Total != 0:
		if !(in.Total > dead) || in.Total > 1000 {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: "total", Value: number(in.Total), Rule: "must be more than the " + number(dead) + " dead coils, at most 1000"})
		}
		return in.Total - dead, in.Total
	}
	l.Add(fault.Fault{Code: fault.Missing, Path: "total", Rule: "give the total or the active coils"})
	return 0, 0
}

// solidLength is Shigley table 10-1 (from memory): ground ends take half a wire
// off each end.
func solidLength(e Ends, d, total float64) float64 {
	if e.Ground() {
		return d * total
	}
	return d * (total + 1)
}

// Spec returns the specification as it was given.
func (h Helical) Spec() HelicalSpec { return h.spec }

// Rate returns the rate.
func (h Helical) Rate() units.SpringRate { return units.NewtonsPerMillimetre(h.k) }

// Free returns the free length.
func (h Helical) Free() units.Length { return units.Millimetres(h.free) }

// Solid returns the solid length: as measured, else by the end type.
func (h Helical) Solid() units.Length { return units.Millimetres(h.solid) }

// Travel returns the deflection to solid.
func (h Helical) Travel() units.Length { return units.Millimetres(h.free - h.solid) }

// Limit returns the deflection to solid, as [Helical.Travel] does: a coil's load
// rises all the way.
func (h Helical) Limit() units.Length { return h.Travel() }

// Load returns k·s for s from 0 to solid.
func (h Helical) Load(s units.Length) (units.Force, bool) {
	x := s.Millimetres()
	if !(x >= 0 && x <= h.free-h.solid) || h.k == 0 {
		return 0, false
	}
	return units.Newtons(h.k * x), true
}

// Deflection returns F/k for loads from 0 to that at solid.
func (h Helical) Deflection(f units.Force) (units.Length, bool) {
	if travel := h.free - h.solid; f >= 0 && f.Newtons() <= h.k*travel && h.k > 0 {
		return units.Millimetres(min(f.Newtons()/h.k, travel)), true
	}
	return 0, false
}

// RateAt returns the rate for s from 0 to solid.
func (h Helical) RateAt(s units.Length) (units.SpringRate, bool) {
	x := s.Millimetres()
	if !(x >= 0 && x <= h.free-h.solid) || h.k == 0 {
		return 0, false
	}
	return units.NewtonsPerMillimetre(h.k), true
}
