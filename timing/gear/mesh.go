package gear

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/solve"
)

// Meshing is two wheels that run together.
type Meshing struct {
	Pinion, Wheel Wheel
	Ring          bool         // the wheel is a ring with inside teeth
	Centre        units.Length // default: where the teeth mesh without backlash
}

// Contact is how two wheels mesh.
type Contact struct {
	StandardCentre  units.Length `json:"standard_centre"`  // half the sum of the reference diameters
	Centre          units.Length `json:"centre"`           // as given, or without backlash
	WorkingPressure units.Angle  `json:"working_pressure"` // transverse
	ShiftSum        float64      `json:"shift_sum"`        // x1 + x2 that closes the backlash at this centre
	Approach        units.Length `json:"approach"`         // path from first touch to the pitch point, pinion driving
	Recess          units.Length `json:"recess"`
	Path            units.Length `json:"path"`
	Arc             units.Length `json:"arc"`           // along the pitch circles: path/cos aw
	ContactRatio    float64      `json:"contact_ratio"` // path over base pitch: pairs in mesh on the mean
	Overlap         float64      `json:"overlap"`       // of helical teeth over the lesser face, b sin B/(pi mn)
	PinionAngle     units.Angle  `json:"pinion_angle"`  // turned while one pair is in mesh
	WheelAngle      units.Angle  `json:"wheel_angle"`
	// Interference says that a tip reaches past the other's base circle: the teeth
	// dig in, or were cut away.
	Interference bool `json:"interference"`
	// SlideIn and SlideOut are sliding over rolling speed at first and last touch,
	// by the pitch-line speed.
	SlideIn  float64 `json:"slide_in"`
	SlideOut float64 `json:"slide_out"`
}

// Contact returns working angle, path and arc of contact, and contact ratio: with
// standard centre a0, cos aw = a0 cos at/a, inv aw = inv at + 2 (x1 + x2) tan an/(z1 +
// z2); approach sqrt(Ra^2 - Rb^2) - R sin aw, and so for recess (Khurmi & Gupta,
// Theory of Machines, 14th ed., example 12.3; Bevan, chapter 10; ISO 21771 from
// memory). For a ring, differences stand for sums. Errors: those of [Wheel.Err] under
// "pinion" and "wheel", modules, pressure angles or helices that differ, a centre at
// which they cannot mesh.
func (m Meshing) Contact() (Contact, error) {
	if err := m.err(); err != nil {
		return Contact{}, err
	}
	p, w := m.Pinion.filled().figures(), m.Wheel.filled().figures()
	side := 1.0
	if m.Ring {
		side = -1
		w.da = w.d - 2*w.mn*(m.Wheel.filled().Addendum-w.x) // the tips point in
	}
	a0 := (w.d + side*p.d) / 2
	shifts := w.x + side*p.x
	aw := p.at
	var a float64
	switch {
	case m.Centre != 0:
		a = m.Centre.Millimetres()
		cos := a0 * math.Cos(p.at) / a
		if !(cos < 1) {
			return Contact{}, fault.Fault{Code: fault.OutOfRange, Path: "centre", Value: m.Centre.String(), Unit: "mm", Rule: "closer than the base circles allow"}
		}
		aw = math.Acos(cos)
	default:
		if shifts != 0 {
			aw = uninv(inv(p.at) + 2*shifts*math.Tan(p.an)/(w.z+side*p.z))
		}
		if a = a0 * math.Cos(p.at) / math.Cos(aw); aw-aw != 0 {
			return Contact{}, fault.Fault{Code: fault.OutOfRange, Path: "shift", Rule: "the profile shifts leave no working angle"}
		}
	}
	// Working pitch radii.
	r1 := a * p.z / (w.z + side*p.z)
	r2 := a * w.z / (w.z + side*p.z)
	sin, cos := math.Sincos(aw)
	reach := func(f figures) float64 { return math.Sqrt(max(f.da*f.da-f.db*f.db, 0)) / 2 }
	approach := side * (reach(w) - r2*sin)
	recess := reach(p) - r1*sin
	path := approach + recess
	if !(approach > 0 && recess > 0) {
		return Contact{}, fault.Fault{Code: fault.OutOfRange, Path: "centre", Rule: "the tips do not reach each other: no contact on one side of the pitch point"}
	}
	base := math.Pi * p.mt * math.Cos(p.at)
	face := min(m.Pinion.Face, m.Wheel.Face).Millimetres()
	turn := path / cos
	slide := 1/r1 + side/r2
	return Contact{
		StandardCentre: units.Millimetres(a0), Centre: units.Millimetres(a), WorkingPressure: units.Radians(aw),
		ShiftSum: (w.z + side*p.z) * (inv(aw) - inv(p.at)) / (2 * math.Tan(p.an)),
		Approach: units.Millimetres(approach), Recess: units.Millimetres(recess), Path: units.Millimetres(path),
		Arc: units.Millimetres(turn), ContactRatio: path / base,
		Overlap:     face * math.Abs(math.Sin(m.Pinion.Helix.SI())) / (math.Pi * p.mn),
		PinionAngle: units.Radians(turn / r1), WheelAngle: units.Radians(turn / r2),
		// With a ring only the ring's tips can dig into the pinion.
		Interference: approach > r1*sin*(1+1e-12) || !m.Ring && recess > r2*sin*(1+1e-12),
		SlideIn:      approach * slide, SlideOut: recess * slide,
	}, nil
}

func (m Meshing) err() error {
	var l fault.List
	l.Under("pinion", m.Pinion.Err())
	l.Under("wheel", m.Wheel.Err())
	positive(&l, "centre", m.Centre, "mm")
	p, w := m.Pinion.filled(), m.Wheel.filled()
	if (p.Module - w.Module).Abs() > p.Module.Times(1e-9) {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "wheel.module", Value: w.Module.String(), Rule: "both wheels must have one module; the pinion has " + p.Module.String()})
	}
	if p.Pressure != w.Pressure {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "wheel.pressure", Value: w.Pressure.String(), Rule: "both wheels must have one pressure angle"})
	}
	if p.Helix.Abs() != w.Helix.Abs() {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "wheel.helix", Value: w.Helix.String(), Rule: "on parallel spindles both helices are equal, of opposite hands"})
	}
	if m.Ring && m.Wheel.Teeth <= m.Pinion.Teeth {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "wheel.teeth", Rule: "a ring has more teeth than the pinion in it"})
	}
	return l.Err()
}

// SlideSpeeds are sliding speeds between the flanks.
type SlideSpeeds struct {
	In  units.Speed `json:"in"`  // at first touch
	Out units.Speed `json:"out"` // at last touch
}

// SlideSpeeds returns the sliding speed at first and last touch with the pinion
// turning at a speed: sum of both angular speeds (difference for a ring) times the
// distance along the path from the pitch point (Khurmi & Gupta, example 12.5).
// Errors: those of [Meshing.Contact]; a speed not finite.
func (m Meshing) SlideSpeeds(pinion units.RotationalSpeed) (SlideSpeeds, error) {
	c, err := m.Contact()
	var l fault.List
	l.Under("", err)
	if !sane(pinion) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "speed", Unit: "rev/min", Rule: "must be finite"})
	}
	if err := l.Err(); err != nil {
		return SlideSpeeds{}, err
	}
	r1 := c.Centre.SI() * float64(m.Pinion.Teeth) / float64(m.Wheel.Teeth+m.Pinion.Teeth)
	if m.Ring {
		r1 = c.Centre.SI() * float64(m.Pinion.Teeth) / float64(m.Wheel.Teeth-m.Pinion.Teeth)
	}
	v := math.Abs(pinion.SI()) * r1
	return SlideSpeeds{In: units.MetresPerSecond(c.SlideIn * v), Out: units.MetresPerSecond(c.SlideOut * v)}, nil
}

// LeastTeeth returns the fewest teeth of a pinion that meshes without interference
// with a wheel of ratio times as many, the wheel's addendum given in modules: the
// next whole number above 2 h/(G (sqrt(1 + (1/G)(1/G + 2) sin^2 a) - 1)); for a rack,
// ratio +Inf, 2 h/sin^2 a (Bevan, The Theory of Machines, 3rd ed., chapter 10, example
// 4, p. 334, read in a textbook companion). exact is the figure before rounding up.
// Errors: angle, ratio or addendum out of range.
func LeastTeeth(pressure units.Angle, ratio, addendum float64) (teeth int, exact float64, err error) {
	if !(pressure >= 5*units.Degree && pressure <= 35*units.Degree) || !(ratio >= 1) || !(addendum > 0 && addendum <= 4) {
		return 0, 0, fault.Fault{Code: fault.OutOfRange, Path: "ratio", Rule: "a pressure angle of 5° to 35°, a ratio of 1 or more, an addendum above zero and up to 4 modules"}
	}
	// The same with its difference of near equals taken out; 1/G of a rack is zero.
	s, g := math.Sin(pressure.SI()), 1/ratio
	exact = 2 * addendum * (math.Sqrt(1+g*(g+2)*s*s) + 1) / ((g + 2) * s * s)
	return int(math.Ceil(exact - 1e-9)), exact, nil
}

// AddendumForArc returns the addendum, equal on both wheels, that gives an arc of
// contact of so many circular pitches (Bevan, chapter 10, example 5, p. 338; Sarkar,
// Theory of Machines, chapter 4, illustration 2). Fields Addendum of the meshing are
// not used. Errors: those of [Meshing.Contact]; an arc no addendum gives.
func (m Meshing) AddendumForArc(pitches float64) (units.Length, error) {
	if err := m.err(); err != nil {
		return 0, err
	}
	arc := func(h float64) float64 {
		n := m
		n.Pinion.Addendum, n.Wheel.Addendum = h, h
		c, err := n.Contact()
		if err != nil {
			return -1
		}
		return c.Arc.Ratio(c.Centre)*float64(m.Pinion.Teeth+m.Wheel.Teeth)/(2*math.Pi) - pitches
	}
	if m.Ring {
		return 0, fault.Fault{Code: fault.OutOfRange, Path: "ring", Rule: "for outside teeth"}
	}
	h, err := solve.Root(arc, 1e-6, 3.999, 1e-12)
	if err != nil {
		return 0, fault.Fault{Code: fault.OutOfRange, Path: "pitches", Rule: "no addendum above zero and up to 4 modules gives an arc of so many pitches"}
	}
	return m.Pinion.Module.Times(h), nil
}

// Addenda are those of both wheels.
type Addenda struct {
	Pinion units.Length `json:"pinion"`
	Wheel  units.Length `json:"wheel"`
	Path   units.Length `json:"path"`
	Arc    units.Length `json:"arc"`
}

// AddendaForPart returns the addenda at which approach and recess are each a part of
// the greatest they can be without interference, r1 sin a and r2 sin a (Khurmi &
// Gupta, example 12.8; Sarkar, chapter 4, illustration 3, both for a half). Spur
// wheels without shift. Errors: those of [Meshing.Contact]; a part outside 0 to 1.
func (m Meshing) AddendaForPart(part float64) (Addenda, error) {
	err := m.err()
	var l fault.List
	l.Under("", err)
	if !(part > 0 && part <= 1) || m.Ring || m.Pinion.Helix != 0 || m.Pinion.Shift != 0 || m.Wheel.Shift != 0 {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "part", Rule: "above 0 up to 1, for plain spur wheels with outside teeth"})
	}
	if err := l.Err(); err != nil {
		return Addenda{}, err
	}
	p, w := m.Pinion.filled().figures(), m.Wheel.filled().figures()
	sin, cos := math.Sincos(p.an)
	r1, r2 := p.d/2, w.d/2
	approach, recess := part*r1*sin, part*r2*sin
	tip := func(r, past float64) float64 { return math.Hypot(r*cos, r*sin+past) - r }
	return Addenda{
		Pinion: units.Millimetres(tip(r1, recess)), Wheel: units.Millimetres(tip(r2, approach)),
		Path: units.Millimetres(approach + recess), Arc: units.Millimetres((approach + recess) / cos),
	}, nil
}

// OnCentre is a pair of wheels of an exact ratio and the centre distance they need
// without profile shift.
type OnCentre struct {
	Pinion int          `json:"pinion"`
	Wheel  int          `json:"wheel"`
	Centre units.Length `json:"centre"`
}

// TeethFor returns the largest wheels of an exact ratio, wheel over pinion, that do
// not need more than a centre distance, and the smallest that need more: m (z1 +
// z2)/2 on either side of it (Sarkar, Theory of Machines, chapter 4, illustration 5,
// takes the larger). Whole teeth change the centre: rounding each of several pairs on
// one centre apart breaks it (Khurmi & Gupta, example 13.3). Below is zero if not even
// the smallest wheels fit. Errors: figures not above zero; no wheels of 2 to 100 000
// teeth.
func TeethFor(centre, module units.Length, ratio Rational) (below, beyond OnCentre, err error) {
	var l fault.List
	above(&l, "centre", centre, "mm")
	above(&l, "module", module, "mm")
	if !ratio.Valid() || ratio.Num() <= 0 || ratio.Num() > mostTeeth || ratio.Den() > mostTeeth {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "ratio", Value: ratio.String(), Rule: "a ratio of whole teeth, above zero"})
	}
	if err := l.Err(); err != nil {
		return OnCentre{}, OnCentre{}, err
	}
	p, q := int(ratio.Den()), int(ratio.Num())
	unit := module.Times(float64(p+q) / 2)
	k := math.Floor(centre.Ratio(unit) * (1 + 1e-12))
	if float64(max(p, q))*(k+1) > mostTeeth {
		return OnCentre{}, OnCentre{}, fault.Fault{Code: fault.OutOfRange, Path: "centre", Value: centre.String(), Rule: "the wheels would have more than 100000 teeth"}
	}
	at := func(k int) OnCentre {
		if min(p, q)*k < 2 {
			return OnCentre{}
		}
		return OnCentre{p * k, q * k, unit.Times(float64(k))}
	}
	next := int(k) + 1
	for min(p, q)*next < 2 {
		next++
	}
	return at(int(k)), at(next), nil
}

// Crossed is a pair of helical wheels of one hand on spindles that cross.
type Crossed struct {
	Helix1      units.Angle  `json:"helix1"`
	Helix2      units.Angle  `json:"helix2"`
	Diameter1   units.Length `json:"diameter1"`
	Diameter2   units.Length `json:"diameter2"`
	NormalPitch units.Length `json:"normal_pitch"` // circular, square to the teeth
}

// CrossedFor returns the helix angles of crossed helical wheels from the centre
// distance, the second wheel's diameter and teeth, the shaft angle, and the ratio G
// of the first wheel's teeth to the second's: d1 cos b1 = G d2 cos b2 with b1 + b2
// the shaft angle (Khurmi & Gupta, example 12.15, read in a textbook companion).
// Errors: figures out of range.
func CrossedFor(centre, diameter2 units.Length, shafts units.Angle, ratio float64, teeth2 int) (Crossed, error) {
	var l fault.List
	above(&l, "centre", centre, "mm")
	above(&l, "diameter2", diameter2, "mm")
	checkTeeth(&l, teeth2)
	if !(shafts > 0 && shafts <= 90*units.Degree) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "shafts", Unit: "°", Rule: "spindles crossing at above 0° up to 90°"})
	}
	if !(ratio > 0) || math.IsInf(ratio, 0) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "ratio", Rule: "must be finite and above zero"})
	}
	d1 := centre.Times(2) - diameter2
	if l.Len() == 0 && !(d1 > 0) {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "diameter2", Value: diameter2.String(), Rule: "must leave room for the first wheel on this centre"})
	}
	if err := l.Err(); err != nil {
		return Crossed{}, err
	}
	// d1 cos b1 = G d2 cos (S - b1).
	k := ratio * diameter2.Ratio(d1)
	sin, cos := math.Sincos(shafts.SI())
	b1 := math.Atan2(1-k*cos, k*sin)
	b2 := shafts.SI() - b1
	return Crossed{
		Helix1: units.Radians(b1), Helix2: units.Radians(b2), Diameter1: d1, Diameter2: diameter2,
		NormalPitch: diameter2.Times(math.Pi * math.Cos(b2) / float64(teeth2)),
	}, nil
}

// ToothLoad is what a torque does at the teeth of a wheel.
type ToothLoad struct {
	Tangential units.Force `json:"tangential"` // 2 T/d
	Axial      units.Force `json:"axial"`      // Ft tan b: the thrust that shims and end float take
	Radial     units.Force `json:"radial"`     // Ft tan an/cos b
}

// Load returns the forces at the reference circle of a wheel of a diameter that
// carries a torque (Jindal, Machine Design, example 26-2; Khurmi & Gupta, example
// 12.15; read in textbook companions). Errors: diameter not above zero, angles or
// torque out of range.
func Load(torque units.Torque, diameter units.Length, pressure, helix units.Angle) (ToothLoad, error) {
	var l fault.List
	above(&l, "diameter", diameter, "mm")
	if !(pressure > 0 && pressure < 45*units.Degree) || !(helix.Abs() < 80*units.Degree) || !sane(torque) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "pressure", Unit: "°", Rule: "a pressure angle of 0° to 45°, a helix below 80°, a finite torque"})
	}
	if err := l.Err(); err != nil {
		return ToothLoad{}, err
	}
	f := 2 * torque.SI() / diameter.SI()
	return ToothLoad{
		Tangential: units.Newtons(f), Axial: units.Newtons(f * math.Tan(helix.SI())),
		Radial: units.Newtons(f * math.Tan(pressure.SI()) / math.Cos(helix.SI())),
	}, nil
}
