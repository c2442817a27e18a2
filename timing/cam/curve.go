package cam

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Curve is the lift of one cam over one turn of the camshaft: a periodic cubic
// spline with continuous velocity and acceleration. Angles are those of the
// camshaft, growing in the running direction, counted from wherever the readings
// were; lift is at the follower unless its maker says otherwise. Curves do not
// change once made and may be used from several goroutines.
type Curve struct {
	coef  [][4]float64 // lift in mm over each piece by powers of the part run through
	inv   float64      // pieces per degree; NaN if they are uneven
	eve   float64      // one even piece before the first knot, degrees; NaN if they are uneven
	start float64      // angle of the first knot, degrees
	knots []float64    // first angle of each piece, degrees from start; nil if even
	per   []float64    // of uneven pieces: one over the length, per degree
	guide []int32      // for uneven knots: the piece that holds the start of each slot
	slots float64      // slots per degree
}

// turnDegrees is the period.
const turnDegrees = 360.0

// newCurve builds the spline through lifts at knots (degrees from start, growing,
// first zero) with the given second derivatives by degree.
func newCurve(start float64, knots, lift, second []float64) *Curve {
	n := len(knots)
	c := &Curve{coef: make([][4]float64, n)}
	even := true
	for i := range n {
		next, h := (i+1)%n, turnDegrees-knots[i]
		if next > 0 {
			h = knots[next] - knots[i]
		}
		even = even && math.Abs(h-turnDegrees/float64(n)) < 1e-9
		// In t = 0..1 over a piece of h degrees.
		m0, m1 := second[i]*h*h, second[next]*h*h
		c.coef[i] = [4]float64{lift[i], lift[next] - lift[i] - (2*m0+m1)/6, m0 / 2, (m1 - m0) / 6}
	}
	if even {
		c.inv = float64(n) / turnDegrees
		c.startAt(start)
		return c
	}
	c.knots, c.inv = knots, math.NaN()
	c.startAt(start)
	c.per = make([]float64, n)
	for i := range n {
		c.per[i] = 1 / c.length(i)
	}
	slots := 4 * n
	c.slots = float64(slots) / turnDegrees
	c.guide = make([]int32, slots)
	k := 0
	for s := range slots {
		for at := float64(s) / c.slots; k+1 < n && knots[k+1] <= at; k++ {
		}
		c.guide[s] = int32(k)
	}
	return c
}

// startAt puts the first knot at an angle.
func (c *Curve) startAt(degrees float64) { c.start, c.eve = degrees, degrees-1/c.inv }

// piece finds the piece and the part of it run through at x degrees from the
// first knot, x within the turn, and the piece's length in degrees.
func (c *Curve) piece(x float64) (i int, t, h float64) {
	if c.knots == nil {
		u := x * c.inv
		i = min(int(u), len(c.coef)-1)
		return i, u - float64(i), 1 / c.inv
	}
	i = c.uneven(x)
	return i, (x - c.knots[i]) * c.per[i], c.length(i)
}

// uneven finds the piece that holds x degrees from the first knot, x within the turn.
func (c *Curve) uneven(x float64) int {
	i := int(c.guide[min(int(x*c.slots), len(c.guide)-1)])
	for i+1 < len(c.knots) && c.knots[i+1] <= x {
		i++
	}
	return i
}

// length of a piece in degrees.
func (c *Curve) length(i int) float64 {
	switch {
	case c.knots == nil:
		return 1 / c.inv
	case i+1 < len(c.knots):
		return c.knots[i+1] - c.knots[i]
	}
	return turnDegrees - c.knots[i]
}

// knot is the first angle of a piece, degrees from start.
func (c *Curve) knot(i int) float64 {
	if c.knots == nil {
		return float64(i) / c.inv
	}
	return c.knots[i]
}

// within brings degrees into the turn: 0, without a sign, to below 360.
func within(x float64) float64 {
	if x > 0 && x < turnDegrees {
		return x
	}
	if x = math.Mod(x, turnDegrees); x <= 0 {
		x += turnDegrees
	}
	if x < turnDegrees {
		return x
	}
	return 0 // a hair below zero rounds up to the whole turn
}

// Lift returns the lift at a camshaft angle. It allocates nothing. The error is
// that the angle is not finite.
func (c *Curve) Lift(at units.CamAngle) (units.Length, error) {
	if c != nil {
		// Pieces are counted from 1: what lies within one of nought either way
		// comes to nought, and one comparison sends it the long way with all that
		// is outside the turn or no number. So does NaN for uneven pieces.
		u := (at.Degrees() - c.eve) * c.inv
		i := int(u)
		if piece := uint(i - 1); piece < uint(len(c.coef)) {
			k, t := &c.coef[piece], u-float64(i)
			return units.Millimetres(k[0] + t*k[1] + t*t*(k[2]+t*k[3])), nil
		}
	}
	return c.anywhere(at)
}

// anywhere is Lift for uneven pieces and angles outside the turn.
func (c *Curve) anywhere(at units.CamAngle) (units.Length, error) {
	if c.none() {
		return 0, noCurve()
	}
	x := at.Degrees() - c.start
	if x-x != 0 {
		return 0, notFinite()
	}
	x = within(x)
	if c.knots == nil {
		return units.Millimetres(c.lift(x)), nil
	}
	i := c.uneven(x)
	k, t := &c.coef[i], (x-c.knots[i])*c.per[i]
	return units.Millimetres(k[0] + t*k[1] + t*t*(k[2]+t*k[3])), nil
}

// lift in millimetres at x degrees from the first knot, x within the turn.
func (c *Curve) lift(x float64) float64 {
	i, t, _ := c.piece(x)
	k := &c.coef[i]
	return ((k[3]*t+k[2])*t+k[1])*t + k[0]
}

// none reports that there is no curve: nil, or the zero value.
func (c *Curve) none() bool { return c == nil || len(c.coef) == 0 }

//go:noinline
func noCurve() error {
	return fault.Fault{Code: fault.Missing, Path: "curve", Rule: "a lift curve is needed: fit one to readings, or take a known cam's"}
}

//go:noinline
func notFinite() error {
	return fault.Fault{Code: fault.OutOfRange, Path: "at", Unit: "° cam", Rule: "an angle must be finite"}
}

// Motion is lift and its derivatives by camshaft angle, in millimetres and degrees
// of the camshaft.
type Motion struct {
	Lift                     units.Length `json:"lift"`
	VelocityMMPerDegree      float64      `json:"velocity_mm_per_deg"`      // mm per cam degree
	AccelerationMMPerDegree2 float64      `json:"acceleration_mm_per_deg2"` // mm per cam degree squared
	JerkMMPerDegree3         float64      `json:"jerk_mm_per_deg3"`         // mm per cam degree cubed
}

// Motion returns lift, velocity, acceleration and jerk at a camshaft angle. The
// jerk of a cubic spline is constant over each piece. The second difference of
// readings with noise s at a spacing of h radians has a standard deviation of
// sqrt(6) s/h^2 (derived): smooth before believing an acceleration. The error is
// that the angle is not finite.
func (c *Curve) Motion(at units.CamAngle) (Motion, error) {
	if c.none() {
		return Motion{}, noCurve()
	}
	x := at.Degrees() - c.start
	if x-x != 0 {
		return Motion{}, notFinite()
	}
	m := c.motion(within(x))
	return Motion{Lift: units.Millimetres(m[0]), VelocityMMPerDegree: m[1], AccelerationMMPerDegree2: m[2], JerkMMPerDegree3: m[3]}, nil
}

// motion in mm and degrees at x degrees from the first knot.
func (c *Curve) motion(x float64) [4]float64 {
	i, t, h := c.piece(x)
	k := &c.coef[i]
	return [4]float64{
		((k[3]*t+k[2])*t+k[1])*t + k[0],
		((3*k[3]*t+2*k[2])*t + k[1]) / h,
		(6*k[3]*t + 2*k[2]) / (h * h),
		6 * k[3] / (h * h * h),
	}
}

// TimeMotion is a motion at a speed.
type TimeMotion struct {
	Lift                 units.Length       `json:"lift"`
	Velocity             units.Speed        `json:"velocity"`
	Acceleration         units.Acceleration `json:"acceleration"`
	JerkMetresPerSecond3 float64            `json:"jerk_m_per_s3"` // metres per second cubed
}

// At returns the motion in time with the crank at a steady speed and the cam at half
// of it: velocity, acceleration and jerk times the first, second and third power of
// the cam's degrees a second (derived). The error is that the speed is not finite.
func (m Motion) At(crankSpeed units.RotationalSpeed) (TimeMotion, error) {
	if !sane(crankSpeed) {
		return TimeMotion{}, fault.Fault{Code: fault.OutOfRange, Path: "speed", Unit: "rev/min", Rule: "must be finite"}
	}
	w := crankSpeed.DegreesPerSecond() / 2
	out := TimeMotion{
		Lift:                 m.Lift,
		Velocity:             units.MetresPerSecond(m.VelocityMMPerDegree * w / 1000),
		Acceleration:         units.MetresPerSecondSquared(m.AccelerationMMPerDegree2 * w * w / 1000),
		JerkMetresPerSecond3: m.JerkMMPerDegree3 * w * w * w / 1000,
	}
	if j := out.JerkMetresPerSecond3; !sane(out.Lift) || !sane(out.Velocity) || !sane(out.Acceleration) || j-j != 0 {
		return TimeMotion{}, fault.Fault{Code: fault.OutOfRange, Path: "motion", Rule: "motion and speed must be finite, and small enough to multiply"}
	}
	return out, nil
}

// plotted is the number of points of a Curve as a drawing: every half degree.
const plotted = 721

// Len returns the number of points of the curve as a drawing: one every half cam
// degree, first and last the same place.
func (c *Curve) Len() int { return plotted }

// XY returns point i of the curve as a drawing: 0 to 360 cam degrees, and
// millimetres. With Len it is what plotting packages ask for. It is (0, 0) outside 0
// to Len()-1.
func (c *Curve) XY(i int) (x, y float64) {
	if i < 0 || i >= plotted || c.none() {
		return 0, 0
	}
	x = turnDegrees * float64(i) / (plotted - 1)
	return x, c.lift(within(x - c.start))
}

// Trace is one derivative of a curve as a drawing.
type Trace struct {
	curve *Curve
	order int
}

// Trace returns the curve's derivative of an order as a drawing, in mm per cam
// degree to that power: 0 lift, 1 velocity, 2 acceleration, 3 jerk. Errors: another
// order.
func (c *Curve) Trace(order int) (Trace, error) {
	if c.none() {
		return Trace{}, noCurve()
	}
	if order < 0 || order > 3 {
		return Trace{}, fault.Fault{Code: fault.OutOfRange, Path: "order", Rule: "0 lift, 1 velocity, 2 acceleration, 3 jerk"}
	}
	return Trace{c, order}, nil
}

// Len returns the number of points; 0 for the zero Trace.
func (t Trace) Len() int {
	if t.curve == nil {
		return 0
	}
	return plotted
}

// XY returns point i: cam degrees, and mm per cam degree to the order's power.
func (t Trace) XY(i int) (x, y float64) {
	if i < 0 || i >= t.Len() {
		return 0, 0
	}
	x = turnDegrees * float64(i) / (plotted - 1)
	return x, t.curve.motion(within(x - t.curve.start))[t.order]
}

// Advanced returns the curve with every event earlier by a camshaft angle, later
// if it is negative. The error is that the angle is not finite.
func (c *Curve) Advanced(by units.CamAngle) (*Curve, error) {
	if c.none() {
		return nil, noCurve()
	}
	if !sane(by) {
		return nil, notFinite()
	}
	d := *c
	d.startAt(math.Mod(c.start-by.Degrees(), turnDegrees))
	return &d, nil
}

// Reversed returns the curve of the cam put on back to front, or run the other
// way: mirrored about angle zero.
func (c *Curve) Reversed() *Curve {
	if c.none() {
		return c
	}
	n := len(c.coef)
	d := &Curve{coef: make([][4]float64, n), inv: c.inv, slots: c.slots}
	d.startAt(-c.start)
	for i := range n {
		k := c.coef[n-1-i]
		// t to 1 - t.
		d.coef[i] = [4]float64{k[0] + k[1] + k[2] + k[3], -(k[1] + 2*k[2] + 3*k[3]), k[2] + 3*k[3], -k[3]}
	}
	if c.knots == nil {
		return d
	}
	knots := make([]float64, n)
	for i := 1; i < n; i++ {
		knots[i] = turnDegrees - c.knots[n-i]
	}
	lift, second := make([]float64, n), make([]float64, n)
	for i := range n {
		h := c.length(n - 1 - i)
		lift[i], second[i] = d.coef[i][0], 2*d.coef[i][2]/(h*h)
	}
	return newCurve(d.start, knots, lift, second)
}
