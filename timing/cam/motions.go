package cam

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Law is a standard law of motion for a rise or a fall.
type Law uint8

// The laws.
const (
	Harmonic  Law = iota // simple harmonic: s = h/2 (1 - cos(pi t))
	Parabolic            // uniform acceleration and retardation: s = 2 h t^2 to half lift, then mirrored
	Cycloidal            // s = h (t - sin(2 pi t)/(2 pi))
)

// String returns the law in words.
func (l Law) String() string {
	switch l {
	case Harmonic:
		return "simple harmonic"
	case Parabolic:
		return "uniform acceleration and retardation"
	case Cycloidal:
		return "cycloidal"
	}
	return "no law"
}

// Rise is a lift gained by a standard law over an angle of the cam.
type Rise struct {
	Law  Law            `json:"law"`
	Lift units.Length   `json:"lift"`
	Over units.CamAngle `json:"over"`
}

func (r Rise) err() error {
	var l fault.List
	above(&l, "lift", r.Lift, "mm")
	if !(r.Over >= units.CamDegree/100 && r.Over <= 360*units.CamDegree) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "over", Unit: "° cam", Rule: "0.01° to a turn of the cam"})
	}
	if r.Law > Cycloidal {
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "law", Rule: "Harmonic, Parabolic or Cycloidal"})
	}
	return l.Err()
}

// At returns the motion at an angle from the start of the rise. Harmonic and
// parabolic: Sarkar, Theory of Machines, 1st ed., chapter 9, illustrations 2 and 5,
// read in a textbook companion; cycloidal: a printed homework table. Parabolic
// motion steps its acceleration at half lift, where the retardation is given.
// Errors: a lift or angle not above zero, an unknown law, a place outside the rise.
func (r Rise) At(from units.CamAngle) (Motion, error) {
	var l fault.List
	l.Under("rise", r.err())
	if l.Len() == 0 && !(from >= 0 && from <= r.Over) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "from", Value: from.String(), Unit: "° cam", Rule: "within the rise"})
	}
	if err := l.Err(); err != nil {
		return Motion{}, err
	}
	m := r.Law.unit(from.Ratio(r.Over))
	h, b := r.Lift.Millimetres(), r.Over.Degrees()
	return Motion{Lift: units.Millimetres(h * m[0]), VelocityMMPerDegree: h * m[1] / b, AccelerationMMPerDegree2: h * m[2] / (b * b), JerkMMPerDegree3: h * m[3] / (b * b * b)}, nil
}

// unit is a lift of 1 over 0 to 1 with its derivatives.
func (l Law) unit(t float64) [4]float64 {
	switch l {
	case Harmonic:
		sin, cos := math.Sincos(math.Pi * t)
		return [4]float64{(1 - cos) / 2, math.Pi / 2 * sin, math.Pi * math.Pi / 2 * cos, -math.Pi * math.Pi * math.Pi / 2 * sin}
	case Parabolic:
		if t < 0.5 {
			return [4]float64{2 * t * t, 4 * t, 4, 0}
		}
		return [4]float64{1 - 2*(1-t)*(1-t), 4 * (1 - t), -4, 0}
	}
	sin, cos := math.Sincos(2 * math.Pi * t)
	return [4]float64{t - sin/(2*math.Pi), 1 - cos, 2 * math.Pi * sin, 4 * math.Pi * math.Pi * cos}
}

// Greatest is the greatest velocity and acceleration of a rise.
type Greatest struct {
	VelocityMMPerDegree      float64            `json:"velocity_mm_per_deg"`      // mm per cam degree
	AccelerationMMPerDegree2 float64            `json:"acceleration_mm_per_deg2"` // mm per cam degree squared
	Speed                    units.Speed        `json:"speed"`                    // at the speed given
	InTime                   units.Acceleration `json:"acceleration_in_time"`
}

// Greatest returns the greatest velocity and acceleration of a rise with the cam
// turning at a speed of its own: harmonic pi w h/(2 b) and pi^2 w^2 h/(2 b^2),
// parabolic 2 w h/b and 4 w^2 h/b^2, cycloidal 2 w h/b and 2 pi w^2 h/b^2 (sources
// as [Rise.At]). Errors: as there; a speed that is not finite.
func (r Rise) Greatest(camSpeed units.RotationalSpeed) (Greatest, error) {
	var l fault.List
	l.Under("rise", r.err())
	if !sane(camSpeed) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "speed", Unit: "rev/min", Rule: "must be finite"})
	}
	if err := l.Err(); err != nil {
		return Greatest{}, err
	}
	v, a := 2.0, 2*math.Pi
	switch r.Law {
	case Harmonic:
		v, a = math.Pi/2, math.Pi*math.Pi/2
	case Parabolic:
		a = 4
	}
	h, b, w := r.Lift.Millimetres(), r.Over.Degrees(), camSpeed.DegreesPerSecond()
	v, a = v*h/b, a*h/(b*b)
	return Greatest{VelocityMMPerDegree: v, AccelerationMMPerDegree2: a, Speed: units.MetresPerSecond(math.Abs(v*w) / 1000), InTime: units.MetresPerSecondSquared(a * w * w / 1000)}, nil
}

// shape is a lobe given by formula: lift and its derivatives by cam radian, in mm,
// at t radians from the start of lift to the nose.
type shape interface {
	half() float64 // radians from start of lift to nose
	rise(t float64) [3]float64
}

// curveOf samples a symmetrical lobe with its nose at an angle, at 1,440 points.
func curveOf(s shape, nose units.CamAngle) (*Curve, error) {
	if !sane(nose) {
		return nil, notFinite()
	}
	const points = 1440
	lift := make([]units.Length, points)
	for i := range points {
		lift[i] = units.Millimetres(s.rise(s.half() - math.Abs(half(turnDegrees*float64(i)/points))*math.Pi/180)[0])
	}
	c, err := InterpolateEven(lift)
	if err != nil {
		return nil, err
	}
	return c.Advanced(-nose)
}

// half brings degrees into -180 to 180.
func half(x float64) float64 {
	if x = within(x); x > turnDegrees/2 {
		x -= turnDegrees
	}
	return x
}

func motionOf(s shape, fromNose units.CamAngle) (Motion, error) {
	if !sane(fromNose) {
		return Motion{}, notFinite()
	}
	x := half(fromNose.Degrees()) * math.Pi / 180
	m := s.rise(s.half() - math.Abs(x))
	if x > 0 { // past the nose the lift falls
		m[1] = -m[1]
	}
	const perDegree = math.Pi / 180
	return Motion{Lift: units.Millimetres(m[0]), VelocityMMPerDegree: m[1] * perDegree, AccelerationMMPerDegree2: m[2] * perDegree * perDegree}, nil
}

// ArcCam is a lobe of circular arcs, base circle, two convex flanks and nose, under
// a flat follower.
type ArcCam struct {
	BaseRadius units.Length   `json:"base_radius"`
	NoseRadius units.Length   `json:"nose_radius"`
	Lift       units.Length   `json:"lift"`
	HalfAngle  units.CamAngle `json:"half_angle"` // from start of lift to nose
}

// ArcShape is what follows from the figures of an [ArcCam].
type ArcShape struct {
	FlankRadius units.Length   `json:"flank_radius"`
	NoseCentre  units.Length   `json:"nose_centre"` // from the axis: base + lift - nose
	FlankAngle  units.CamAngle `json:"flank_angle"` // over which the follower rides the flank
	// HalfWidth is how far contact runs from the follower's axis: the foot must
	// reach at least that.
	HalfWidth units.Length `json:"half_width"`
	arc       arc
}

type arc struct{ rb, rn, d, op, alpha, phi float64 }

func (a arc) half() float64 { return a.alpha }

func (a arc) rise(t float64) [3]float64 {
	switch {
	case t <= 0:
		return [3]float64{}
	case t < a.phi:
		sin, cos := math.Sincos(t)
		return [3]float64{a.op * (1 - cos), a.op * sin, a.op * cos}
	}
	sin, cos := math.Sincos(a.alpha - t)
	return [3]float64{a.d*cos - (a.rb - a.rn), a.d * sin, -a.d * cos}
}

// Shape returns flank radius and joins: nose centre d = base + lift - nose,
// OP = (d^2 - (rb-rn)^2)/(2 ((rb-rn) - d cos a)), flank radius OP + rb,
// sin phi = d sin a/(flank - rn) (Bevan, The Theory of Machines, 3rd ed., chapter
// 9, example 5; from memory of the notation). Errors: figures not above zero, a half
// angle below 1° or of 180° and more, or arcs that do not close: d cos a must be below rb - rn.
func (c ArcCam) Shape() (ArcShape, error) {
	l := c.check()
	if err := l.Err(); err != nil {
		return ArcShape{}, err
	}
	rb, rn, alpha := c.BaseRadius.Millimetres(), c.NoseRadius.Millimetres(), c.HalfAngle.SI()
	d := rb + c.Lift.Millimetres() - rn
	sin, cos := math.Sincos(alpha)
	if !(d*cos < rb-rn && rn < rb) {
		return ArcShape{}, fault.Fault{Code: fault.Conflict, Path: "half_angle", Value: c.HalfAngle.String(), Rule: "no convex flank joins this base circle and nose: nose centre times cos(half angle) must be less than base less nose radius"}
	}
	op := (d*d - (rb-rn)*(rb-rn)) / (2 * ((rb - rn) - d*cos))
	phi := math.Asin(min(d*sin/(op+rb-rn), 1))
	if !(op > 0 && phi < alpha) {
		return ArcShape{}, fault.Fault{Code: fault.Conflict, Path: "half_angle", Value: c.HalfAngle.String(), Rule: "no convex flank joins this base circle and nose"}
	}
	return ArcShape{
		FlankRadius: units.Millimetres(op + rb), NoseCentre: units.Millimetres(d), FlankAngle: units.FromSI[units.CamAngle](phi),
		HalfWidth: units.Millimetres(op * math.Sin(phi)), arc: arc{rb, rn, d, op, alpha, phi},
	}, nil
}

func (c ArcCam) check() fault.List {
	var l fault.List
	above(&l, "base_radius", c.BaseRadius, "mm")
	above(&l, "nose_radius", c.NoseRadius, "mm")
	above(&l, "lift", c.Lift, "mm")
	if !(c.HalfAngle >= units.CamDegree && c.HalfAngle < 180*units.CamDegree) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "half_angle", Unit: "° cam", Rule: "1° to below 180° of the cam"})
	}
	return l
}

// At returns the motion of a flat follower at an angle from the nose: flank
// s = OP (1 - cos t), nose s = d cos(a - t) - (rb - rn). The jerk is left zero.
// Errors: those of [ArcCam.Shape]; an angle not finite.
func (c ArcCam) At(fromNose units.CamAngle) (Motion, error) {
	s, err := c.Shape()
	if err != nil {
		return Motion{}, err
	}
	return motionOf(s.arc, fromNose)
}

// Curve returns the lift curve with the nose at an angle. Errors: as [ArcCam.At].
func (c ArcCam) Curve(nose units.CamAngle) (*Curve, error) {
	s, err := c.Shape()
	if err != nil {
		return nil, err
	}
	return curveOf(s.arc, nose)
}

// TangentCam is a lobe with straight flanks, tangent to base circle and nose, under
// a roller.
type TangentCam struct {
	BaseRadius units.Length   `json:"base_radius"`
	Lift       units.Length   `json:"lift"`
	HalfAngle  units.CamAngle `json:"half_angle"` // from start of lift to nose
	Roller     units.Length   `json:"roller"`     // its radius
}

// TangentShape is what follows from the figures of a [TangentCam].
type TangentShape struct {
	NoseRadius units.Length   `json:"nose_radius"`
	NoseCentre units.Length   `json:"nose_centre"` // from the axis
	FlankAngle units.CamAngle `json:"flank_angle"` // over which the roller rides the flank
	tangent    tangent
}

type tangent struct{ rb, d, l, alpha, phi float64 } // rb with the roller

func (g tangent) half() float64 { return g.alpha }

func (g tangent) rise(t float64) [3]float64 {
	switch {
	case t <= 0:
		return [3]float64{}
	case t < g.phi:
		sin, cos := math.Sincos(t)
		return [3]float64{g.rb * (1/cos - 1), g.rb * sin / (cos * cos), g.rb * (2 - cos*cos) / (cos * cos * cos)}
	}
	u := g.alpha - t
	sin, cos := math.Sincos(u)
	q := math.Sqrt(g.l*g.l - g.d*g.d*sin*sin)
	// A slider-crank with the nose centre as crankpin; u runs backwards.
	q1 := -g.d * g.d * sin * cos / q
	q2 := -(g.d*g.d*(cos*cos-sin*sin) + q1*q1) / q
	return [3]float64{g.d*cos + q - g.rb, g.d*sin - q1, -g.d*cos + q2}
}

// Shape returns the nose: d = lift/(1 - cos a), nose radius base + lift - d,
// tan phi = d sin a/(base + roller) (geometry of the tangents, derived). Errors:
// figures not above zero, a half angle below 1° or of 90° and more, or no room for a
// nose.
func (c TangentCam) Shape() (TangentShape, error) {
	var l fault.List
	above(&l, "base_radius", c.BaseRadius, "mm")
	above(&l, "lift", c.Lift, "mm")
	above(&l, "roller", c.Roller, "mm")
	if !(c.HalfAngle >= units.CamDegree && c.HalfAngle < 90*units.CamDegree) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "half_angle", Unit: "° cam", Rule: "1° to below 90° of the cam"})
	}
	if err := l.Err(); err != nil {
		return TangentShape{}, err
	}
	rb, h, alpha := c.BaseRadius.Millimetres(), c.Lift.Millimetres(), c.HalfAngle.SI()
	d := h / (1 - math.Cos(alpha))
	rn := rb + h - d
	if !(rn > 0) {
		return TangentShape{}, fault.Fault{Code: fault.Conflict, Path: "half_angle", Value: c.HalfAngle.String(), Rule: "the flanks meet before this lift: there is no nose"}
	}
	rr := c.Roller.Millimetres()
	phi := math.Atan(d * math.Sin(alpha) / (rb + rr))
	return TangentShape{
		NoseRadius: units.Millimetres(rn), NoseCentre: units.Millimetres(d), FlankAngle: units.FromSI[units.CamAngle](phi),
		tangent: tangent{rb + rr, d, rn + rr, alpha, phi},
	}, nil
}

// At returns the motion of the roller at an angle from the nose: flank
// s = (rb+rr)(sec t - 1), acceleration (rb+rr)(2 - cos^2 t)/cos^3 t by radian
// squared, nose as a slider-crank, -d (1 + d/(rn+rr)) at its top (Khurmi & Gupta,
// Theory of Machines, chapter 20; start value read in a question bank, the rest
// derived). The jerk is left zero. Errors: those of [TangentCam.Shape]; an angle not
// finite.
func (c TangentCam) At(fromNose units.CamAngle) (Motion, error) {
	s, err := c.Shape()
	if err != nil {
		return Motion{}, err
	}
	return motionOf(s.tangent, fromNose)
}

// Curve returns the lift curve with the nose at an angle. Errors: as [TangentCam.At].
func (c TangentCam) Curve(nose units.CamAngle) (*Curve, error) {
	s, err := c.Shape()
	if err != nil {
		return nil, err
	}
	return curveOf(s.tangent, nose)
}
