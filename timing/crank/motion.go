package crank

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/solve"
)

// Motion is how piston and rod move at one crank position and speed. Downwards,
// away from the head, is positive; the rod's angle is positive when the crankpin
// is on the side it goes down on.
type Motion struct {
	Travel               units.Length       `json:"travel"` // below TDC
	Velocity             units.Speed        `json:"velocity"`
	Acceleration         units.Acceleration `json:"acceleration"`
	JerkMetresPerSecond3 float64            `json:"jerk_m_per_s3"` // metres per second cubed
	// PerDegree is travel gained per crank degree, which turns a tolerance in
	// millimetres into degrees.
	PerDegree                        units.Length          `json:"per_degree"`
	Rod                              units.Angle           `json:"rod"` // between rod and bore
	RodSpeed                         units.RotationalSpeed `json:"rod_speed"`
	RodAccelerationRadiansPerSecond2 float64               `json:"rod_acceleration_rad_per_s2"` // radians per second squared
	Crankpin                         units.Acceleration    `json:"crankpin"`                    // towards the crank's axis, w^2 r
}

// slopes are travel and rod angle with their derivatives by crank angle, in mm
// and radians. With q = r sin th - e and S = sqrt(l^2 - q^2),
// x = top - r cos th - S, and the derivatives of S follow from
// S S' = -q q' differentiated again and again.
type slopes struct{ x, x1, x2, x3, rod, rod1, rod2 float64 }

func (g geometry) slopes(th float64) slopes {
	sin, cos := math.Sincos(th)
	q, q1, q2, q3 := g.r*sin-g.e, g.r*cos, -g.r*sin, -g.r*cos
	s := math.Sqrt(g.l*g.l - q*q)
	s1 := -q * q1 / s
	s2 := -(q1*q1 + q*q2 + s1*s1) / s
	s3 := -(3*q1*q2 + q*q3 + 3*s1*s2) / s
	return slopes{
		x: g.travel(th), x1: g.r*sin - s1, x2: g.r*cos - s2, x3: -g.r*sin - s3,
		rod: math.Asin(q / g.l), rod1: q1 / s, rod2: (q2 - q1*s1/s) / s,
	}
}

func (p slopes) at(w, r float64) Motion {
	return Motion{
		Crankpin:                         units.MetresPerSecondSquared(w * w * r / 1000),
		Travel:                           units.Millimetres(p.x),
		Velocity:                         units.MetresPerSecond(w * p.x1 / 1000),
		Acceleration:                     units.MetresPerSecondSquared(w * w * p.x2 / 1000),
		JerkMetresPerSecond3:             w * w * w * p.x3 / 1000,
		PerDegree:                        units.Millimetres(p.x1 * math.Pi / 180),
		Rod:                              units.Radians(p.rod),
		RodSpeed:                         units.RadiansPerSecond(w * p.rod1),
		RodAccelerationRadiansPerSecond2: w * w * p.rod2,
	}
}

// Motion returns travel, velocity, acceleration and jerk of the piston and the
// swing of the rod at a crank position and a steady crank speed, exactly:
// v = w r sin(th+ph)/cos ph, a = w^2 r [cos(th+ph)/cos ph + lam cos^2 th/cos^3 ph]
// without an offset (Khurmi & Gupta, Theory of Machines, 14th ed., chapter 15,
// read in a textbook companion), with it by differentiating the travel (derived).
// Errors: those of [Slider.Err]; position or speed not finite.
func (s Slider) Motion(at units.CrankPosition, speed units.RotationalSpeed) (Motion, error) {
	if err := s.checkMotion(at, speed); err != nil {
		return Motion{}, err
	}
	g := s.geometry()
	return g.slopes(g.theta(at)).at(speed.SI(), g.r), nil
}

// TwoTermMotion is [Slider.Motion] by the first two terms of the series in the
// rod ratio, as textbooks print it for hand work: v = w r (sin th + lam/2 sin 2th),
// a = w^2 r (cos th + lam cos 2th), rod speed w lam cos th, rod acceleration
// -w^2 lam sin th (Khurmi & Gupta, chapter 15). It is some tenths of a per cent
// off at usual rod ratios, and only for a crank without an offset, which is an
// error otherwise.
func (s Slider) TwoTermMotion(at units.CrankPosition, speed units.RotationalSpeed) (Motion, error) {
	var l fault.List
	l.Under("", s.checkMotion(at, speed))
	if s.Offset != 0 {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "offset", Value: s.Offset.String(), Unit: "mm", Rule: "the two-term series holds without an offset"})
	}
	if err := l.Err(); err != nil {
		return Motion{}, err
	}
	g := s.geometry()
	th, lam := g.theta(at), g.r/g.l
	sin, cos := math.Sincos(th)
	sin2, cos2 := math.Sincos(2 * th)
	return slopes{
		x:  g.r * (1 - cos + lam/4*(1-cos2)),
		x1: g.r * (sin + lam/2*sin2), x2: g.r * (cos + lam*cos2), x3: -g.r * (sin + 2*lam*sin2),
		rod: math.Asin(lam * sin), rod1: lam * cos, rod2: -lam * sin,
	}.at(speed.SI(), g.r), nil
}

func (s Slider) checkMotion(at units.CrankPosition, speed units.RotationalSpeed) error {
	var l fault.List
	l.Under("", s.check(at))
	if !sane(speed) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "speed", Unit: "rev/min", Rule: "must be finite"})
	}
	return l.Err()
}

// Peak is where the piston moves fastest on the way down, and how fast.
type Peak struct {
	At    units.CrankPosition `json:"at"`
	Speed units.Speed         `json:"speed"`
}

// GreatestSpeed returns the greatest speed of the piston on the way down at a
// steady crank speed, and where it is reached; without an offset it is the same
// on the way up. It is the zero of the exact acceleration. Errors: those of
// [Slider.Motion].
func (s Slider) GreatestSpeed(speed units.RotationalSpeed) (Peak, error) {
	if err := s.checkMotion(units.CrankPosition{}, speed); err != nil {
		return Peak{}, err
	}
	g := s.geometry()
	th, err := solve.Root(func(th float64) float64 { return g.slopes(th).x2 }, g.lead(), g.down(), 1e-12)
	if err != nil {
		return Peak{}, fault.Under("greatest speed", err)
	}
	return Peak{
		At:    units.After(units.TDC, units.FromSI[units.CrankAngle](th-g.lead())),
		Speed: units.MetresPerSecond(speed.SI() * g.slopes(th).x1 / 1000),
	}, nil
}

// TwoTermGreatestSpeed is [Slider.GreatestSpeed] by the two-term series:
// cos th + lam cos 2th = 0 (Khurmi & Gupta, example 15.3, p. 527). Errors: those
// of [Slider.TwoTermMotion].
func (s Slider) TwoTermGreatestSpeed(speed units.RotationalSpeed) (Peak, error) {
	if _, err := s.TwoTermMotion(units.CrankPosition{}, speed); err != nil {
		return Peak{}, err
	}
	g := s.geometry()
	lam := g.r / g.l
	at := units.After(units.TDC, units.FromSI[units.CrankAngle](math.Acos((math.Sqrt(1+8*lam*lam)-1)/(4*lam))))
	m, err := s.TwoTermMotion(at, speed)
	return Peak{At: at, Speed: m.Velocity}, err
}

// MeanSpeed returns the mean piston speed: two strokes a turn. Errors: those of
// [Slider.Err]; a speed that is not finite.
func (s Slider) MeanSpeed(speed units.RotationalSpeed) (units.Speed, error) {
	if err := s.checkMotion(units.CrankPosition{}, speed); err != nil {
		return 0, err
	}
	return units.MetresPerSecond(s.geometry().stroke() / 1000 * speed.SI() / math.Pi), nil
}

// DeadCentres says where top and bottom lie and how far apart.
type DeadCentres struct {
	Throw  units.Length `json:"throw"`
	Stroke units.Length `json:"stroke"`
	// Lead is the crank angle at TDC counted from the crank parallel to the
	// bore, asin(e/(l+r)); zero without an offset.
	Lead units.CrankAngle `json:"lead"`
	// Down is the crank angle from TDC to BDC: 180° + asin(e/(l-r)) - lead.
	Down units.CrankAngle `json:"down"`
}

// DeadCentres returns throw, stroke and the dead centres. With an offset the
// stroke is sqrt((l+r)^2 - e^2) - sqrt((l-r)^2 - e^2), longer than two throws
// (derived). Errors: those of [Slider.Err].
func (s Slider) DeadCentres() (DeadCentres, error) {
	if err := s.Err(); err != nil {
		return DeadCentres{}, err
	}
	g := s.geometry()
	return DeadCentres{
		Throw: units.Millimetres(g.r), Stroke: units.Millimetres(g.stroke()),
		Lead: units.FromSI[units.CrankAngle](g.lead()), Down: units.FromSI[units.CrankAngle](g.down() - g.lead()),
	}, nil
}
