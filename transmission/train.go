package transmission

import (
	"math"
	"strconv"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// HandLever is the clutch lever on the bar. Left at zero, it is not known: the
// pull is then a reading, or 22 ± 2 mm, and the leverage 2.9 ± 0.3.
type HandLever struct {
	Finger measure.Reading[units.Length] // pivot to the middle of the fingers' pull, 20 to 300 mm
	Nipple measure.Reading[units.Length] // pivot to the cable nipple, 5 to 100 mm
	// Rest and Pulled are the angles of the nipple's radius before (negative)
	// and past (positive) square to the cable, hand off and lever at the bar,
	// -80° to 80°. On a lever whose cable wraps a sector only their difference
	// counts.
	Rest, Pulled measure.Reading[units.Angle]
	Sector       bool // the cable wraps a round sector, so its arm stays the same
}

// Pull returns how much cable the lever pulls from rest to the bar:
// r (sin pulled - sin rest) with r the radius of the nipple, or r times the
// sweep in radians for a sector (geometry). The reading is not taken if one of
// the three figures is not. Errors: a figure outside its range, a sweep that is
// not above zero.
func (h HandLever) Pull() (measure.Reading[units.Length], error) {
	var l fault.List
	h.check(&l, "")
	if !h.swept() || l.Len() > 0 {
		return measure.Reading[units.Length]{}, l.Err()
	}
	return measure.Propagate[units.Length](func(x []float64) float64 {
		return pull(x[0], x[1], x[2], h.Sector)
	}, h.Nipple.SI(), h.Rest.SI(), h.Pulled.SI())
}

// Leverage returns finger force to cable tension with the lever at the bar:
// a/(r cos pulled), a/r for a sector. It is not taken if a figure is not.
// Errors: a figure outside its range.
func (h HandLever) Leverage() (measure.Reading[units.Ratio], error) {
	var l fault.List
	h.check(&l, "")
	if !h.Finger.Taken() || !h.Nipple.Taken() || l.Len() > 0 {
		return measure.Reading[units.Ratio]{}, l.Err()
	}
	return measure.Propagate[units.Ratio](func(x []float64) float64 {
		return leverage(x[0], x[1], x[2], h.Sector)
	}, h.Finger.SI(), h.Nipple.SI(), h.Pulled.SI())
}

// pull is in the unit of radius; angles are in radians.
func pull(radius, rest, pulled float64, sector bool) float64 {
	if sector {
		return radius * (pulled - rest)
	}
	return radius * (math.Sin(pulled) - math.Sin(rest))
}

func leverage(finger, radius, pulled float64, sector bool) float64 {
	if sector {
		return finger / radius
	}
	return finger / (radius * math.Cos(pulled))
}

func (h *HandLever) swept() bool {
	return h.Nipple.Taken() && h.Rest.Taken() && h.Pulled.Taken()
}

func (h *HandLever) check(l *fault.List, path string) {
	in := func(field string, f figure, taken bool, err error, unit string, low, high float64) {
		if err != nil {
			l.Under(path+field, err)
		} else if taken && !(f.x >= low && f.x <= high) {
			l.Add(outside(path+field, f.x, unit, low, high))
		}
	}
	f, taken, err := length(&h.Finger)
	in("finger", f, taken, err, "mm", 20, 300)
	f, taken, err = length(&h.Nipple)
	in("nipple", f, taken, err, "mm", 5, 100)
	f, taken, err = turned(&h.Rest)
	in("rest", figure{f.x * 360, f.u}, taken, err, "°", -80, 80)
	f, taken, err = turned(&h.Pulled)
	in("pulled", figure{f.x * 360, f.u}, taken, err, "°", -80, 80)
	if h.Rest.Taken() && h.Pulled.Taken() && !(h.Pulled.Value() > h.Rest.Value()) {
		l.Add(fault.Fault{Code: fault.Conflict, Path: path + "pulled", Value: h.Pulled.Text(), Rule: "must be past the angle at rest, " + h.Rest.Text()})
	}
}

// figures puts pull and leverage with their first-order uncertainty where the
// condition keeps them. It is what Pull and Leverage give, without allocating.
func (h *HandLever) figures(f *[parts]figure, l *fault.List) {
	h.check(l, "lever.")
	r, rest, end := h.Nipple.SI(), h.Rest.SI(), h.Pulled.SI()
	if h.swept() {
		p := pull(r.X, rest.X, end.X, h.Sector) * 1000
		a, b := rest.U, end.U
		if !h.Sector {
			a, b = math.Cos(rest.X)*a, math.Cos(end.X)*b
		}
		a, b = a*r.X*1000, b*r.X*1000
		c := p * r.U / r.X
		f[cablePull] = figure{p, math.Sqrt(a*a + b*b + c*c)}
	}
	if h.Finger.Taken() && h.Nipple.Taken() {
		a := h.Finger.SI()
		i := leverage(a.X, r.X, end.X, h.Sector)
		turn := 0.0
		if !h.Sector {
			turn = math.Tan(end.X) * end.U
		}
		b, c := a.U/a.X, r.U/r.X
		f[leverRatio] = figure{i, i * math.Sqrt(b*b+c*c+turn*turn)}
	}
}

// mostElements is far more than any train has, and keeps the product of their
// ratios a number.
const mostElements = 50

// release reduces the train to one ratio, one efficiency, the cable travel it
// loses, and the cable travel its own stretch takes for each newton at the
// pressure plate. With r and e the ratio and efficiency of each element, the
// force at the output of element j is the plate's over all r e after it, and its
// travel counts at the cable times all r up to it (statics, derived here). A
// train whose ratio changes on the way is kept whole.
func (c *Clutch) release(s *state, l *fault.List) {
	ratio := &s.fresh[trainRatio]
	*ratio, s.efficiency = 1, 1
	if len(c.Train) == 0 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "train", Rule: "needs at least one element, such as the release arm with its ratio"})
	}
	if len(c.Train) > mostElements {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "train", Value: strconv.Itoa(len(c.Train)), Rule: "at most 50 elements"})
		return
	}
	for i := range c.Train {
		e := &c.Train[i]
		if e.swing != (swing{}) {
			s.train = c.Train
		}
		eff := or(e.Efficiency, 1)
		k, lost := e.Stiffness.NewtonsPerMillimetre(), e.Lost.Millimetres()
		if !(e.Ratio >= 0.05 && e.Ratio <= 200 && eff >= 0.05 && eff <= 1 && (k == 0 || k >= 10 && k <= 1e9) && lost >= 0 && lost <= 50) || e.swing != (swing{}) {
			if !e.check(l, "train["+strconv.Itoa(i)+"]") {
				continue
			}
		}
		*ratio *= e.Ratio
		s.efficiency *= eff
		s.lost += *ratio * lost
		// what came before acts through this element too: its force there is the
		// plate's divided by this element's ratio and efficiency as well
		s.stretch /= e.Ratio * eff
		if k > 0 {
			s.stretch += *ratio / k
		}
	}
}
