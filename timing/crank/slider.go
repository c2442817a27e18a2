package crank

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Slider is the crank, rod and cylinder line of one cylinder. Give Stroke or
// Throw: without an offset the throw is half the stroke.
//
// The offset is the distance of the gudgeon pin's line from the crank's axis,
// positive towards the side on which the crankpin goes down.
type Slider struct {
	Stroke units.Length `json:"stroke,omitempty"` // from top to bottom dead centre; or
	Throw  units.Length `json:"throw,omitempty"`  // radius of the crankpin's circle
	Rod    units.Length `json:"rod"`              // between centres
	Offset units.Length `json:"offset,omitempty"` // default 0
}

// Err returns every fault: no stroke and no throw, both where they disagree by
// more than 0.1 %, a length that is not above zero or not finite, or a rod too
// short to go round: it must exceed throw plus offset.
func (s Slider) Err() error {
	var l fault.List
	check := func(path string, v units.Length, zero bool) {
		if !sane(v) || v < 0 && path != "offset" || v == 0 && !zero || v != 0 && v.Abs().SI() < tiniest && path != "offset" {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: path, Value: number(v), Unit: "mm", Rule: "must be finite and above zero"})
		}
	}
	check("stroke", s.Stroke, true)
	check("throw", s.Throw, true)
	check("rod", s.Rod, false)
	check("offset", s.Offset, true)
	if s.Stroke == 0 && s.Throw == 0 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "stroke", Unit: "mm", Rule: "give the stroke, or the throw of the crank"})
	}
	if l.Len() > 0 {
		return l.Err()
	}
	g := s.geometry()
	if !(g.l > g.r+math.Abs(g.e)) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "rod", Value: s.Rod.String(), Unit: "mm", Rule: "the rod must be longer than throw plus offset, or the crank cannot go round"})
	} else if s.Stroke > 0 && s.Throw > 0 && math.Abs(g.stroke()-s.Stroke.Millimetres()) > 1e-3*s.Stroke.Millimetres() {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "stroke", Value: s.Stroke.String(), Unit: "mm", Rule: "the throw gives " + units.Millimetres(g.stroke()).In(units.Millimetre, 3)})
	}
	return l.Err()
}

func number(v units.Length) string {
	if !sane(v) {
		return "not a number"
	}
	return v.String()
}

// geometry is a Slider in millimetres and radians, ready for formulas.
type geometry struct{ r, l, e float64 }

// geometry solves the throw from the stroke where that was given. From
// s = sqrt((l+r)^2 - e^2) - sqrt((l-r)^2 - e^2):
// r = s/2 sqrt((4 l^2 - 4 e^2 - s^2)/(4 l^2 - s^2)).
func (s Slider) geometry() geometry {
	g := geometry{r: s.Throw.Millimetres(), l: s.Rod.Millimetres(), e: s.Offset.Millimetres()}
	if s.Throw == 0 {
		h := s.Stroke.Millimetres()
		g.r = h / 2
		if g.e != 0 {
			g.r *= math.Sqrt((4*g.l*g.l - 4*g.e*g.e - h*h) / (4*g.l*g.l - h*h))
		}
	}
	return g
}

// top is the distance of the gudgeon pin from the crank's axis at TDC.
func (g geometry) top() float64 { return math.Sqrt((g.l+g.r)*(g.l+g.r) - g.e*g.e) }

// bottom is the same at BDC.
func (g geometry) bottom() float64 { return math.Sqrt((g.l-g.r)*(g.l-g.r) - g.e*g.e) }

func (g geometry) stroke() float64 { return g.top() - g.bottom() }

// lead is the crank angle, from the crank parallel to the bore, at which the
// piston is at TDC.
func (g geometry) lead() float64 { return math.Asin(g.e / (g.l + g.r)) }

// down is the same at BDC.
func (g geometry) down() float64 { return math.Pi + math.Asin(g.e/(g.l-g.r)) }

// height is the pin's distance from the axis with the crank at th radians from
// parallel to the bore.
func (g geometry) height(th float64) float64 {
	sin, cos := math.Sincos(th)
	q := g.r*sin - g.e
	return g.r*cos + math.Sqrt(g.l*g.l-q*q)
}

// Travel returns how far the piston is below TDC, in mm, with the crank at a
// position; dead centres are the piston's own, also with an offset. Without an
// offset: r (1 - cos th) + l - sqrt(l^2 - r^2 sin^2 th) (Gupta, Fundamentals of
// Internal Combustion Engines, 1st ed., example 16.1, p. 519, read in a textbook
// companion). Errors: those of [Slider.Err], or a position that is not finite.
func (s Slider) Travel(at units.CrankPosition) (units.Length, error) {
	if err := s.check(at); err != nil {
		return 0, err
	}
	g := s.geometry()
	return units.Millimetres(g.travel(g.theta(at))), nil
}

// theta is a position as radians from the crank parallel to the bore. BDC is
// not half a turn from TDC where there is an offset.
func (g geometry) theta(at units.CrankPosition) float64 {
	if at.Datum() == units.BDC {
		return g.down() + at.After().SI()
	}
	return g.lead() + at.After().SI()
}

// travel is r (1 - cos) + l - sqrt(...) in a form that keeps its digits near TDC.
func (g geometry) travel(th float64) float64 {
	if g.e == 0 {
		sin, half := math.Sin(th), math.Sin(th/2)
		q := g.r * sin
		return 2*g.r*half*half + q*q/(g.l+math.Sqrt(g.l*g.l-q*q))
	}
	return g.top() - g.height(th)
}

func (s Slider) check(at units.CrankPosition) error {
	var l fault.List
	l.Under("", s.Err())
	if !sane(at.After()) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "position", Unit: "° crank", Rule: "must be finite"})
	}
	return l.Err()
}

// Sides are the two crank positions at which the piston stands at one height.
type Sides struct {
	Before units.CrankPosition `json:"before"` // on the way up, before TDC
	After  units.CrankPosition `json:"after"`  // on the way down, after TDC
}

// Positions returns where the crank stands with the piston the given travel
// below TDC, both roots. Without an offset, with D = r + l - x:
// cos th = (D^2 + r^2 - l^2)/(2 r D); with one,
// th = atan2(e, D) +/- acos((D^2 + e^2 + r^2 - l^2)/(2 r sqrt(D^2 + e^2))),
// D counted from the TDC height; derived, and checked by Khurmi & Gupta, Theory
// of Machines, example 15.9 (33° by drawing). Errors: those of [Slider.Err], or a
// travel outside zero to the stroke.
func (s Slider) Positions(travel units.Length) (Sides, error) {
	var l fault.List
	l.Under("", s.Err())
	if l.Len() == 0 {
		if g := s.geometry(); !(travel >= 0 && travel.Millimetres() <= g.stroke()*(1+rounding)) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: "travel", Value: number(travel), Unit: "mm", Rule: "0 to the stroke, " + units.Millimetres(g.stroke()).In(units.Millimetre, 2)})
		}
	}
	if err := l.Err(); err != nil {
		return Sides{}, err
	}
	g := s.geometry()
	up, down := g.roots(travel.Millimetres())
	return Sides{
		Before: units.Before(units.TDC, units.FromSI[units.CrankAngle](max(g.lead()-up, 0))),
		After:  units.After(units.TDC, units.FromSI[units.CrankAngle](max(down-g.lead(), 0))),
	}, nil
}

// rounding lets a travel equal to the stroke pass whose last bits differ.
const rounding = 1e-12

// roots are the two crank angles from parallel to the bore, before and after TDC.
func (g geometry) roots(x float64) (up, down float64) {
	d := g.top() - x
	m := math.Hypot(d, g.e)
	// 1 - cos keeps its digits near TDC: 2 r m (1 - cos) = l^2 - (m - r)^2.
	versed := (g.l - m + g.r) * (g.l + m - g.r) / (2 * g.r * m)
	half := 2 * math.Asin(math.Sqrt(min(max(versed/2, 0), 1)))
	mid := math.Atan2(g.e, d)
	return mid - half, mid + half
}
