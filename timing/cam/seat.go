package cam

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/solve"
)

// Seat is a poppet valve and its seat.
type Seat struct {
	Head  units.Length // outside diameter of the valve
	Port  units.Length // inside diameter of the seat
	Stem  units.Length // diameter
	Width units.Length // of the seat, measured along the radius
	Angle units.Angle  // of the seat from the plane of the head; default 45°
}

func (s Seat) filled() (Seat, error) {
	if s.Angle == 0 {
		s.Angle = 45 * units.Degree
	}
	var l fault.List
	above(&l, "head", s.Head, "mm")
	above(&l, "port", s.Port, "mm")
	positive(&l, "stem", s.Stem, "mm")
	above(&l, "width", s.Width, "mm")
	if l.Len() == 0 && !(s.Port <= s.Head && s.Stem < s.Port && s.Width.Times(2) < s.Head) {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "port", Value: s.Port.String(), Rule: "stem, port and head must grow in that order, and the seat fit on the head"})
	}
	if !(s.Angle > 0 && s.Angle < 80*units.Degree) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "angle", Unit: "°", Rule: "above 0° and below 80°"})
	}
	return s, l.Err()
}

// Opening is the way a lifted valve leaves open.
type Opening struct {
	Area    units.Area `json:"area"`    // least, by the stage below
	Curtain units.Area `json:"curtain"` // pi head lift
	Stage   int        `json:"stage"`   // 1 along the seat, 2 past it, 3 the port itself
}

// Opening returns the least area a lift leaves open, in three stages (Heywood,
// Internal Combustion Engine Fundamentals, 1988, chapter 6, from memory): along the
// seat, pi L cos b (Dv - 2 w + (L/2) sin 2b); past it, pi Dm sqrt((L - w tan b)^2 +
// w^2) with Dm = Dv - w; then the port less the stem. The stages do not join
// smoothly, so the least of the second and third is taken. Errors: diameters out of
// order, a lift below zero.
func (s Seat) Opening(lift units.Length) (Opening, error) {
	s, err := s.filled()
	var l fault.List
	l.Under("seat", err)
	positive(&l, "lift", lift, "mm")
	if err := l.Err(); err != nil {
		return Opening{}, err
	}
	a, stage := s.area(lift.Millimetres())
	return Opening{
		Area: units.SquareMillimetres(a), Stage: stage,
		Curtain: units.SquareMillimetres(math.Pi * s.Head.Millimetres() * lift.Millimetres()),
	}, nil
}

func (s Seat) area(lift float64) (mm2 float64, stage int) {
	dv, w := s.Head.Millimetres(), s.Width.Millimetres()
	sin, cos := math.Sincos(s.Angle.SI())
	port := math.Pi / 4 * (s.Port.Millimetres()*s.Port.Millimetres() - s.Stem.Millimetres()*s.Stem.Millimetres())
	if lift <= w/(sin*cos) {
		return min(math.Pi*lift*cos*(dv-2*w+lift*sin*cos), port), 1
	}
	past := math.Pi * (dv - w) * math.Hypot(lift-w*sin/cos, w)
	if past < port {
		return past, 2
	}
	return port, 3
}

// FlowArea is the opening of a valve summed over its lift.
type FlowArea struct {
	AreaAngleMM2Degrees float64       `json:"area_angle_mm2_deg"` // mm² x crank degrees
	AreaTimeMM2Seconds  float64       `json:"area_time_mm2_s"`    // mm² x seconds, at the speed given; 0 if none was
	Mean                units.Area    `json:"mean"`               // over the time the valve is off its seat
	Greatest            units.Area    `json:"greatest"`
	Basis               refdata.Basis `json:"basis"`
}

// FlowArea returns the area a valve opens, summed over crank angle and, at a crank
// speed, over time: the sum over angle divided by 6 N, N in rev/min (derived). A
// speed of zero leaves time out. Errors: those of [Valve.Err] and [Seat.Opening]; a
// speed below zero, or above it and below a thousandth of a turn a minute.
func (v Valve) FlowArea(s Seat, crankSpeed units.RotationalSpeed) (FlowArea, error) {
	var l fault.List
	l.Under("", v.Err())
	s, err := s.filled()
	l.Under("seat", err)
	positive(&l, "speed", crankSpeed, "rev/min")
	if crankSpeed > 0 && crankSpeed < units.RevolutionsPerMinute(1e-3) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "speed", Value: crankSpeed.String(), Unit: "rev/min", Rule: "0, or 0.001 rev/min and more"})
	}
	if err := l.Err(); err != nil {
		return FlowArea{}, err
	}
	const steps = 1440
	var out FlowArea
	open, greatest := 0, 0.0
	for i := range steps {
		y, _, _ := v.Rocker.valve(v.Cam.lift(turnDegrees * float64(i) / steps))
		if y -= v.Clearance.Millimetres(); y <= 0 {
			continue
		}
		a, _ := s.area(y)
		out.AreaAngleMM2Degrees += a * 2 * turnDegrees / steps
		greatest = max(greatest, a)
		open++
	}
	out.Greatest = units.SquareMillimetres(greatest)
	if open > 0 {
		out.Mean = units.SquareMillimetres(out.AreaAngleMM2Degrees / (float64(open) * 2 * turnDegrees / steps))
	}
	if w := crankSpeed.DegreesPerSecond(); w > 0 {
		out.AreaTimeMM2Seconds = out.AreaAngleMM2Degrees / w
	}
	out.Basis.Sources = []refdata.Source{{Title: "Heywood, Internal Combustion Engine Fundamentals (1988)", Clause: "chapter 6", Status: refdata.FromMemory}}
	return out, nil
}

// LiftForPort returns the least lift whose opening is the port's: more lifts the
// valve without opening it further. Errors: those of [Seat.Opening].
func (s Seat) LiftForPort() (units.Length, error) {
	s, err := s.filled()
	if err != nil {
		return 0, fault.Under("seat", err)
	}
	port, _ := s.area(math.MaxFloat32)
	x, err := solve.Root(func(x float64) float64 {
		a, stage := s.area(x)
		if stage == 3 {
			return 1
		}
		return a - port*(1-1e-9)
	}, 0, s.Head.Millimetres(), 1e-9)
	if err != nil {
		return 0, fault.Under("seat", err)
	}
	return units.Millimetres(x), nil
}

// PortFor returns the port diameter at which a mean gas speed is met, bore x
// sqrt(mean piston speed/gas speed), and the lift at which a conical seat opens as
// much, port/(4 cos b) (Khurmi & Gupta, A Textbook of Machine Design, chapter 32,
// p. 1202, seen in excerpts). Errors: figures not above zero, a seat angle of 80° or
// more.
func PortFor(bore units.Length, meanPiston, gas units.Speed, seat units.Angle) (port, lift units.Length, err error) {
	var l fault.List
	above(&l, "bore", bore, "mm")
	above(&l, "mean_piston", meanPiston, "m/s")
	above(&l, "gas", gas, "m/s")
	if !(seat >= 0 && seat < 80*units.Degree) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "seat", Unit: "°", Rule: "0° to below 80°"})
	}
	if err := l.Err(); err != nil {
		return 0, 0, err
	}
	port = bore.Times(math.Sqrt(meanPiston.Ratio(gas)))
	return port, port.Times(1 / (4 * math.Cos(seat.SI()))), nil
}
