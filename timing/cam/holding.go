package cam

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Friction is the usual spread of dry to oily steel on steel: common practice.
func Friction() measure.Interval[units.Ratio] {
	return measure.Interval[units.Ratio]{Low: units.Value(0.08), High: units.Value(0.15)}
}

// Metal is how a part gives under load. Its zero value is steel: 207 GPa, 0.3.
type Metal struct {
	Modulus units.Pressure `json:"modulus"` // Young's
	Poisson float64        `json:"poisson"`
}

func (m Metal) filled() Metal {
	if m.Modulus == 0 {
		m.Modulus = units.Gigapascals(207)
		if m.Poisson == 0 {
			m.Poisson = 0.3
		}
	}
	return m
}

// PressFit is a hub on a shaft, parallel bore.
type PressFit struct {
	Joint        units.Length                   // diameter where they meet
	Hub          units.Length                   // outside diameter of the hub
	ShaftBore    units.Length                   // of a hollow shaft; default solid
	Length       units.Length                   // of the joint
	Interference measure.Interval[units.Length] // on the diameter, before fitting; low to high limit
	HubMetal     Metal                          // default steel
	ShaftMetal   Metal                          // default steel
	Friction     measure.Interval[units.Ratio]  // default 0.08 to 0.15
}

// Grip is what a joint holds, as ranges over friction and interference.
type Grip struct {
	Pressure measure.Interval[units.Pressure] `json:"pressure"` // between the faces
	HubHoop  measure.Interval[units.Pressure] `json:"hub_hoop"` // pull round the bore of the hub
	Shaft    measure.Interval[units.Pressure] `json:"shaft"`    // squeeze round the shaft at its bore, or all through a solid one
	Axial    measure.Interval[units.Force]    `json:"axial"`    // to push it along, or off a parallel seat
	Torque   measure.Interval[units.Torque]   `json:"torque"`   // to slip it round
	Basis    refdata.Basis                    `json:"basis"`
}

// Hold returns what a press fit holds: p = delta/(d [(1/Eo)((D^2+d^2)/(D^2-d^2) + nuo)
// + (1/Ei)((d^2+di^2)/(d^2-di^2) - nui)]), delta on the diameter (Shigley's
// Mechanical Engineering Design, eq. 7-39, seen in a published copy; Lame's
// cylinders), axial mu p pi d L, torque that times d/2 (from memory). For long, smooth,
// elastic parts: roughness eats some of the interference. Errors: diameters out of
// order, a length, modulus or interference not above zero, friction outside 0 to 1.
func (f PressFit) Hold() (Grip, error) {
	var l fault.List
	var b refdata.Basis
	above(&l, "joint", f.Joint, "mm")
	above(&l, "hub", f.Hub, "mm")
	above(&l, "length", f.Length, "mm")
	positive(&l, "shaft_bore", f.ShaftBore, "mm")
	if l.Len() == 0 && !(f.ShaftBore < f.Joint && f.Joint < f.Hub) {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "joint", Value: f.Joint.String(), Rule: "shaft bore, joint and hub must grow in that order"})
	}
	if !(f.Interference.Low >= 0 && f.Interference.Low <= f.Interference.High && f.Interference.High > 0 && f.Interference.High < f.Joint.Times(0.02)) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "interference", Value: f.Interference.String(), Unit: "mm", Rule: "low to high limit, above zero and below 2 % of the joint"})
	}
	mu := friction(&l, &b, f.Friction)
	ho, sh := metal(&l, "hub_metal", f.HubMetal), metal(&l, "shaft_metal", f.ShaftMetal)
	if err := l.Err(); err != nil {
		return Grip{}, err
	}
	d, od, di := f.Joint.SI(), f.Hub.SI(), f.ShaftBore.SI()
	hub := (od*od + d*d) / (od*od - d*d)
	shaft := (d*d + di*di) / (d*d - di*di)
	give := d * ((hub+ho.Poisson)/ho.Modulus.SI() + (shaft-sh.Poisson)/sh.Modulus.SI())
	low, high := f.Interference.Low.SI()/give, f.Interference.High.SI()/give
	// At the bore of a hollow shaft the squeeze is twice that of the mean.
	inner := 1.0
	if di > 0 {
		inner = 2 * d * d / (d*d - di*di)
	}
	area := math.Pi * d * f.Length.SI()
	axial := measure.Between(units.Newtons(mu.Low.Value()*low*area), units.Newtons(mu.High.Value()*high*area))
	b.Sources = []refdata.Source{
		{Title: "Shigley's Mechanical Engineering Design", Clause: "eq. 7-39, 7-44, 7-45", Status: refdata.Published},
		{Title: "friction on the joint", Status: refdata.FromMemory},
	}
	b.Cautions = []refdata.Caution{refdata.DeferToManual}
	b.NotChecked = []refdata.Unchecked{{What: "roughness and yield", Why: "faces not measured", Settle: "compare the hub's hoop stress with its metal"}}
	return Grip{
		Pressure: measure.Between(units.Pascals(low), units.Pascals(high)),
		HubHoop:  measure.Between(units.Pascals(low*hub), units.Pascals(high*hub)),
		Shaft:    measure.Between(units.Pascals(low*inner), units.Pascals(high*inner)),
		Axial:    axial,
		Torque:   measure.Between(units.NewtonMetres(axial.Low.SI()*d/2), units.NewtonMetres(axial.High.SI()*d/2)),
		Basis:    b,
	}, nil
}

func friction(l *fault.List, b *refdata.Basis, mu measure.Interval[units.Ratio]) measure.Interval[units.Ratio] {
	if !mu.Given() {
		mu = Friction()
		b.Assumed = append(b.Assumed, refdata.Assumption{What: "friction, steel on steel", Value: "0.08 to 0.15", Status: refdata.CommonPractice})
	}
	if !(mu.Low >= 0 && mu.Low <= mu.High && mu.High <= 1) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "friction", Value: mu.String(), Rule: "low to high within 0 to 1"})
	}
	return mu
}

func metal(l *fault.List, path string, m Metal) Metal {
	m = m.filled()
	above(l, path+".modulus", m.Modulus, "GPa")
	if !(m.Poisson >= 0 && m.Poisson < 0.5) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: path + ".poisson", Rule: "0 to below 0.5"})
	}
	return m
}

// Lame returns the hoop stress, pull positive, at a radius of a thick cylinder under
// pressures inside and out: (pi a^2 - po b^2)/(b^2 - a^2) + (pi - po) a^2 b^2/((b^2 -
// a^2) r^2) (Lame; Bhavikatti, Strength of Materials, example 8.15, read in a
// textbook companion). Errors: radii out of order.
func Lame(inner, outer, at units.Length, inside, outside units.Pressure) (units.Pressure, error) {
	if !(inner >= 0 && inner < outer.Times(1-1e-6) && at >= inner && at <= outer && at >= units.Micrometre) || !sane(outer) || !sane(inside) || !sane(outside) {
		return 0, fault.Fault{Code: fault.OutOfRange, Path: "at", Unit: "mm", Rule: "inner radius, place and outer radius in order, a wall between them, all finite"}
	}
	a, b, r := inner.SI()*inner.SI(), outer.SI()*outer.SI(), at.SI()*at.SI()
	p, q := inside.SI(), outside.SI()
	return units.Pascals((p*a-q*b)/(b-a) + (p-q)*a*b/((b-a)*r)), nil
}

// Taper is a hub on a tapered shaft.
type Taper struct {
	HalfAngle    units.Angle // between the cone's side and its axis; or
	OneIn        float64     // taper one in so many, on the diameter: 8 for 1 in 8
	MeanDiameter units.Length
	Length       units.Length                  // along the axis
	Friction     measure.Interval[units.Ratio] // default 0.08 to 0.15
}

// Locking says whether a taper holds by itself.
type Locking uint8

// The answers.
const (
	Releases    Locking = iota // slides off once the nut is off, whatever the friction
	Doubtful                   // holds only towards the high end of the friction
	SelfLocking                // holds by itself and must be drawn off
)

// String returns the answer in words.
func (l Locking) String() string {
	switch l {
	case Releases:
		return "releases by itself"
	case SelfLocking:
		return "holds by itself"
	}
	return "doubtful: holds only with good friction"
}

// MarshalText returns the text of String.
func (l Locking) MarshalText() ([]byte, error) { return []byte(l.String()), nil }

// TaperGrip is what a taper holds, as ranges over friction.
type TaperGrip struct {
	HalfAngle units.Angle                    `json:"half_angle"`
	Locking   Locking                        `json:"locking"`
	Needs     units.Ratio                    `json:"needs"`  // least friction that holds it: tan of the half angle
	Normal    measure.Interval[units.Force]  `json:"normal"` // between the faces, all round
	Torque    measure.Interval[units.Torque] `json:"torque"` // to slip it, pushed on with the force and left
	// Turning is the torque with the force kept on while the joint already slips
	// round, which spends all friction sideways: the cone clutch's figure, more
	// than a taper drawn up by its nut can be trusted with.
	Turning measure.Interval[units.Torque] `json:"turning"`
	Release measure.Interval[units.Force]  `json:"release"` // to draw it off again; 0 where it releases
	Basis   refdata.Basis                  `json:"basis"`
}

// half returns the half angle in radians.
func (t Taper) half(l *fault.List) float64 {
	a := t.HalfAngle.SI()
	switch {
	case t.OneIn != 0 && t.HalfAngle != 0:
		l.Add(fault.Fault{Code: fault.Conflict, Path: "one_in", Rule: "give the half angle or the taper on the diameter, not both"})
	case t.OneIn != 0:
		a = math.Atan(1 / (2 * t.OneIn))
	}
	if !(a > 1e-6 && a < math.Pi/4) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "half_angle", Unit: "°", Rule: "above 0° (by at least 0.0001°) and below 45°"})
	}
	return a
}

// Hold returns what a taper pushed home by an axial force holds. Pushing on, N =
// W/(sin a + mu cos a) (Khurmi & Gupta, Theory of Machines, 14th ed., example 10.32,
// read in a textbook companion); torque mu N d/2; drawing off N (mu cos a - sin a); it
// locks itself if tan a < mu (derived; Tayal, Engineering Mechanics, example 6.9, for
// the wedge). Turning is mu W d/(2 sin a) (Jindal, Machine Design, example 22-8).
// Errors: no angle or two, a diameter or force not above zero, friction out of range.
func (t Taper) Hold(push units.Force) (TaperGrip, error) {
	var l fault.List
	var b refdata.Basis
	a := t.half(&l)
	above(&l, "mean_diameter", t.MeanDiameter, "mm")
	above(&l, "push", push, "N")
	mu := friction(&l, &b, t.Friction)
	if err := l.Err(); err != nil {
		return TaperGrip{}, err
	}
	sin, cos := math.Sincos(a)
	w, r := push.SI(), t.MeanDiameter.SI()/2
	normal := func(m float64) float64 { return w / (sin + m*cos) }
	lo, hi := mu.Low.Value(), mu.High.Value()
	release := func(m float64) float64 { return max(normal(m)*(m*cos-sin), 0) }
	out := TaperGrip{
		HalfAngle: units.Radians(a), Needs: units.Value(math.Tan(a)),
		Normal:  measure.Between(units.Newtons(normal(lo)), units.Newtons(normal(hi))),
		Torque:  measure.Between(units.NewtonMetres(lo*normal(lo)*r), units.NewtonMetres(hi*normal(hi)*r)),
		Turning: measure.Between(units.NewtonMetres(lo*w*r/sin), units.NewtonMetres(hi*w*r/sin)),
		Release: measure.Between(units.Newtons(release(lo)), units.Newtons(release(hi))),
		Locking: lock(math.Tan(a), lo, hi),
	}
	b.Sources = []refdata.Source{
		{Title: "Khurmi & Gupta, Theory of Machines, 14th ed.", Clause: "example 10.32", Read: "a textbook companion", Status: refdata.Published},
		{Title: "equilibrium on a cone", Status: refdata.Derived},
	}
	b.NotChecked = []refdata.Unchecked{{What: "contact over the whole cone", Why: "not seen", Settle: "marking blue: the large end must bear all round"}}
	b.Cautions = []refdata.Caution{refdata.RetainingNuts, refdata.DeferToManual}
	out.Basis = b
	return out, nil
}

func lock(need, lo, hi float64) Locking {
	switch {
	case need < lo:
		return SelfLocking
	case need < hi:
		return Doubtful
	}
	return Releases
}

// Locks returns whether the taper holds by itself: tan of the half angle below the
// friction. Errors: as [Taper.Hold].
func (t Taper) Locks() (Locking, error) {
	var l fault.List
	a := t.half(&l)
	mu := friction(&l, new(refdata.Basis), t.Friction)
	return lock(math.Tan(a), mu.Low.Value(), mu.High.Value()), l.Err()
}

// DriveUp returns the interference on the diameter that driving a taper up from
// first touch by a distance gives, 2 s tan a. Use it with [PressFit]. Derived.
// Errors: as [Taper.Hold]; a distance below zero.
func (t Taper) DriveUp(by units.Length) (units.Length, error) {
	var l fault.List
	a := t.half(&l)
	positive(&l, "by", by, "mm")
	if err := l.Err(); err != nil {
		return 0, err
	}
	return by.Times(2 * math.Tan(a)), nil
}

// FaceFor returns the slant length of a cone that carries a normal force at a
// mean pressure: N/(pi d p) (Khurmi & Gupta, example 10.32). Errors: as [Taper.Hold];
// a pressure not above zero.
func (t Taper) FaceFor(normal units.Force, pressure units.Pressure) (units.Length, error) {
	var l fault.List
	above(&l, "mean_diameter", t.MeanDiameter, "mm")
	above(&l, "normal", normal, "N")
	above(&l, "pressure", pressure, "MPa")
	if err := l.Err(); err != nil {
		return 0, err
	}
	return units.Metres(normal.SI() / (math.Pi * t.MeanDiameter.SI() * pressure.SI())), nil
}

// Key is a parallel key between shaft and wheel.
type Key struct {
	Shaft  units.Length // diameter
	Width  units.Length
	Height units.Length // half of it bears in each part
	Length units.Length
}

// KeyHolds is what a key carries.
type KeyHolds struct {
	Shear   units.Torque `json:"shear"`   // width x length x stress x d/2
	Bearing units.Torque `json:"bearing"` // height/2 x length x stress x d/2
	Torque  units.Torque `json:"torque"`  // the lesser
}

// Holds returns the torque a key carries at allowed stresses in shear and bearing
// (Wentzell, Machine Design, 1st ed., example 15.1, p. 332; Sadhu Singh, Machine
// Design, examples 7.4 and 7.8; both read in textbook companions). A key on a taper
// only locates: size the taper for the torque. Errors: a figure not above zero.
func (k Key) Holds(shear, bearing units.Pressure) (KeyHolds, error) {
	var l fault.List
	above(&l, "shaft", k.Shaft, "mm")
	above(&l, "width", k.Width, "mm")
	above(&l, "height", k.Height, "mm")
	above(&l, "length", k.Length, "mm")
	above(&l, "shear", shear, "MPa")
	above(&l, "bearing", bearing, "MPa")
	if err := l.Err(); err != nil {
		return KeyHolds{}, err
	}
	r := k.Shaft.SI() / 2
	s := units.NewtonMetres(shear.SI() * k.Width.SI() * k.Length.SI() * r)
	b := units.NewtonMetres(bearing.SI() * k.Height.SI() / 2 * k.Length.SI() * r)
	return KeyHolds{Shear: s, Bearing: b, Torque: min(s, b)}, nil
}

// LengthFor returns how long a key must be for a torque: the longer of shear and
// bearing. Errors: as [Key.Holds], its own length not counted; a torque not above
// zero.
func (k Key) LengthFor(torque units.Torque, shear, bearing units.Pressure) (units.Length, error) {
	k.Length = units.Metre
	h, err := k.Holds(shear, bearing)
	var l fault.List
	l.Under("", err)
	above(&l, "torque", torque, "N m")
	if err := l.Err(); err != nil {
		return 0, err
	}
	return units.Metres(torque.SI() / h.Torque.SI()), nil
}

// KeySlack returns how far a wheel can turn on its shaft with a slack between key
// and way: c/r (derived). Errors: a slack below zero, a shaft not above it.
func KeySlack(slack, shaft units.Length) (units.CamAngle, error) {
	var l fault.List
	positive(&l, "slack", slack, "mm")
	above(&l, "shaft", shaft, "mm")
	if err := l.Err(); err != nil {
		return 0, err
	}
	return units.FromSI[units.CamAngle](2 * slack.Ratio(shaft)), nil
}

// Splines is a splined shaft in a hub.
type Splines struct {
	Number       int
	Inner, Outer units.Length // diameters of root and tip
	Length       units.Length
}

// Torque returns what splines carry at a mean pressure on their flanks: p n L
// (D^2 - d^2)/8, one face of height (D - d)/2 at radius (D + d)/4 (Sadhu Singh,
// Machine Design, example 7.3, read in a textbook companion). Errors: fewer than 1
// spline, diameters out of order, a figure not above zero.
func (s Splines) Torque(pressure units.Pressure) (units.Torque, error) {
	var l fault.List
	if s.Number < 1 {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "number", Rule: "at least one spline"})
	}
	above(&l, "inner", s.Inner, "mm")
	above(&l, "length", s.Length, "mm")
	above(&l, "pressure", pressure, "MPa")
	if !(s.Outer > s.Inner) || !sane(s.Outer) {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "outer", Unit: "mm", Rule: "finite and more than the inner diameter"})
	}
	if err := l.Err(); err != nil {
		return 0, err
	}
	d, o := s.Inner.SI(), s.Outer.SI()
	return units.NewtonMetres(pressure.SI() * float64(s.Number) * s.Length.SI() * (o*o - d*d) / 8), nil
}

// ShiftForce returns the force that slides a hub along its splines while they carry
// a torque: mu T over the mean radius (D + d)/4 (Sadhu Singh, Machine Design, example
// 7.3). Errors: as [Splines.Torque], its pressure apart; a torque below zero, friction
// outside 0 to 1.
func (s Splines) ShiftForce(torque units.Torque, friction units.Ratio) (units.Force, error) {
	_, err := s.Torque(units.Pascal)
	var l fault.List
	l.Under("", err)
	positive(&l, "torque", torque, "N m")
	if !(friction >= 0 && friction <= 1) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "friction", Rule: "within 0 to 1"})
	}
	if err := l.Err(); err != nil {
		return 0, err
	}
	return units.Newtons(friction.Value() * torque.SI() * 4 / (s.Inner + s.Outer).SI()), nil
}
