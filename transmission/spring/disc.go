package spring

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// DiscSpec says how a disc spring (a coned washer) is made. Of ConeHeight and
// Overall give one.
type DiscSpec struct {
	Outside    units.Length   `json:"outside"`              // De
	Inside     units.Length   `json:"inside"`               // Di
	Thickness  units.Length   `json:"thickness"`            // t
	ConeHeight units.Length   `json:"cone_height,omitzero"` // h0, free height of the cone, l0 - t
	Overall    units.Length   `json:"overall,omitzero"`     // l0, free height over all
	Young      units.Pressure `json:"young,omitzero"`       // E; zero: 206 GPa (EN 16984, from memory)
	Poisson    float64        `json:"poisson,omitzero"`     // zero: 0.3
	Formula    DiscFormula    `json:"formula,omitzero"`     // zero: EN 16984
}

// DiscFormula is which printing of the Almen-Laszlo theory is used. They share
// everything but the first coefficient.
type DiscFormula uint8

// The formulas.
const (
	// EN16984 takes K1 = ((δ-1)/δ)² / (π ((δ+1)/(δ-1) - 2/ln δ)) (EN 16984,
	// formerly DIN 2092, from memory; loads of DIN 2093 follow within 2 %).
	EN16984 DiscFormula = iota
	// AlmenLaszlo takes M = 6/(π ln δ) ((δ-1)/δ)², as older textbooks print it
	// (Bhandari, Design of Machine Elements, ex. 10.26). Loads come out 0.3 %
	// higher at δ 1.5 and 1.4 % at 2.5.
	AlmenLaszlo
)

// String names the formula.
func (f DiscFormula) String() string {
	if f == AlmenLaszlo {
		return "Almen-Laszlo, older coefficient"
	}
	return "EN 16984"
}

// MarshalText returns the words of String.
func (f DiscFormula) MarshalText() ([]byte, error) { return []byte(f.String()), nil }

// Disc is a disc spring that has been checked. It is an [Element]; deflection
// counts from the free height. The zero value is no spring and has no travel.
type Disc struct {
	spec       DiscSpec
	h, t, de   float64 // mm
	delta      float64
	k1, k2, k3 float64
	scale      float64 // N: 4E/(1-ν²) · t⁴/(K1 De²)
	limit      float64 // mm
}

// NewDisc checks a disc's dimensions and returns it, without contact flats
// (K4 = 1), which is how discs up to 6 mm thick are made. Errors, all together:
// a dimension missing, De/Di outside 1.2 to 5, h0/t outside 0.05 to 3, t above
// a quarter of De - Di, Poisson's ratio outside 0 to 0.49.
func NewDisc(in DiscSpec) (Disc, error) {
	var l fault.List
	okE := positive(&l, "outside", in.Outside)
	okI := positive(&l, "inside", in.Inside)
	okT := positive(&l, "thickness", in.Thickness)
	d := Disc{spec: in, t: in.Thickness.Millimetres(), de: in.Outside.Millimetres(), h: in.ConeHeight.Millimetres()}
	if d.h == 0 {
		d.h = (in.Overall - in.Thickness).Millimetres()
	}
	switch {
	case in.ConeHeight == 0 && in.Overall == 0:
		l.Add(fault.Fault{Code: fault.Missing, Path: "cone_height", Unit: "mm", Rule: "give the cone height or the height over all"})
	case in.ConeHeight != 0 && in.Overall != 0 && !((in.Overall - in.Thickness - in.ConeHeight).Abs() <= 10*units.Micrometre):
		l.Add(fault.Fault{Code: fault.Conflict, Path: "overall", Value: in.Overall.String(), Unit: "mm", Rule: "must be thickness and cone height together"})
	case okT:
		within(&l, "cone_height/thickness", d.h/d.t, 0.05, 3)
	}
	if okE && okI && within(&l, "outside/inside", in.Outside.Ratio(in.Inside), 1.2, 5) && okT {
		if in.Thickness > (in.Outside - in.Inside).Times(0.25) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: "thickness", Value: in.Thickness.String(), Unit: "mm", Rule: "must not be above a quarter of De - Di: too thick for the theory of thin cones"})
		}
	}
	e := 206 * units.Gigapascal
	if in.Young != 0 {
		e = in.Young
	}
	positive(&l, "young", e)
	nu := 0.3
	if in.Poisson != 0 {
		nu = in.Poisson
	}
	within(&l, "poisson", nu, 0, 0.49)
	if in.Formula > AlmenLaszlo {
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "formula", Rule: "EN16984 or AlmenLaszlo"})
	}
	if err := l.Err(); err != nil {
		return Disc{}, err
	}
	d.delta = in.Outside.Ratio(in.Inside)
	r, lg := (d.delta-1)/d.delta, math.Log(d.delta)
	d.k1 = r * r / (math.Pi * ((d.delta+1)/(d.delta-1) - 2/lg))
	if in.Formula == AlmenLaszlo {
		d.k1 = 6 / (math.Pi * lg) * r * r
	}
	d.k2 = 6 / math.Pi * ((d.delta-1)/lg - 1) / lg
	d.k3 = 3 / math.Pi * (d.delta - 1) / lg
	d.scale = 4 * e.Megapascals() / (1 - nu*nu) * d.t * d.t * d.t * d.t / (d.k1 * d.de * d.de)
	d.limit = d.h
	if u := d.h / d.t; u > math.Sqrt2 {
		d.limit = d.t * (u - math.Sqrt((u*u-2)/3))
	}
	return d, nil
}

// Spec returns the specification as it was given.
func (d Disc) Spec() DiscSpec { return d.spec }

// Travel returns the deflection to flat, h0.
func (d Disc) Travel() units.Length { return units.Millimetres(d.h) }

// Limit returns the deflection where the load stops rising: flat, or for h0/t
// above √2 the hump at s = h0 - t √((h0²/t² - 2)/3), derived from dF/ds = 0.
func (d Disc) Limit() units.Length { return units.Millimetres(d.limit) }

// Load returns F = a t⁴/(K1 De²) x [(u - x)(u - x/2) + 1] with x = s/t, u = h0/t
// and a = 4E/(1 - ν²), for s from 0 to flat (EN 16984, formerly DIN 2092, from
// memory).
func (d Disc) Load(s units.Length) (units.Force, bool) {
	x := s.Millimetres()
	if !(x >= 0 && x <= d.h) || d.t == 0 {
		return 0, false
	}
	return units.Newtons(d.load(x)), true
}

func (d Disc) load(s float64) float64 {
	u, x := d.h/d.t, s/d.t
	return d.scale * x * ((u-x)*(u-x/2) + 1)
}

// RateAt returns dF/ds = a t³/(K1 De²) [u² - 3ux + 1.5x² + 1] for s from 0 to
// flat. Beyond [Disc.Limit] it is negative: there the disc snaps.
func (d Disc) RateAt(s units.Length) (units.SpringRate, bool) {
	x := s.Millimetres()
	if !(x >= 0 && x <= d.h) || d.t == 0 {
		return 0, false
	}
	return units.NewtonsPerMillimetre(d.slope(x)), true
}

func (d Disc) slope(s float64) float64 {
	u, x := d.h/d.t, s/d.t
	return d.scale / d.t * (u*u - 3*u*x + 1.5*x*x + 1)
}

// Deflection returns where the load is first reached, for loads from 0 to that
// at [Disc.Limit]. Up to flat the load is concave in s, its second derivative
// going as s - h0, so Newton's method from the free disc comes up to the answer from
// below and cannot pass it (derived).
func (d Disc) Deflection(f units.Force) (units.Length, bool) {
	if d.t == 0 || !(f >= 0) || f.Newtons() > d.load(d.limit) {
		return 0, false
	}
	return units.Millimetres(d.deflection(f.Newtons())), true
}

func (d Disc) deflection(f float64) float64 {
	u, want := d.h/d.t, f/d.scale
	x := 0.0
	// At the hump, where the slope is nil, each step halves what is left: sixty
	// reach the last bit even there.
	for range 60 {
		left := want - x*((u-x)*(u-x/2)+1)
		slope := u*u - 3*u*x + 1.5*x*x + 1
		if !(left > 0) || !(slope > 0) {
			break
		}
		step := left / slope
		if x+step == x {
			break
		}
		x += step
	}
	return min(x*d.t, d.limit)
}
