package cam

import (
	"math"
	"slices"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/solve"
)

// Events are where the lift passes a check lift, on the camshaft.
type Events struct {
	Check    units.Length   `json:"check"`
	Opens    units.CamAngle `json:"opens"`  // lift rises through the check; 0° to 360°
	Closes   units.CamAngle `json:"closes"` // after Opens, possibly beyond one turn
	Duration units.CamAngle `json:"duration"`
	// OpeningRise and ClosingRise are lift gained, or lost, per cam degree there:
	// a doubt of u in lift is one of u/rise in angle.
	OpeningRise units.Length `json:"opening_rise"`
	ClosingRise units.Length `json:"closing_rise"`
	NoAnswer    fault.Reason `json:"no_answer,omitzero"`
}

// Events returns where the curve passes a check lift, by the exact roots of its
// pieces. There is no answer if it never gets that high or only touches it, never
// that low, or passes it more than twice, which wild readings or a check inside the
// noise of the base circle do. Errors: a check that is not finite.
func (c *Curve) Events(check units.Length) (Events, error) {
	if c.none() {
		return Events{}, noCurve()
	}
	if !sane(check) {
		return Events{}, fault.Fault{Code: fault.OutOfRange, Path: "check", Unit: "mm", Rule: "must be finite"}
	}
	out := Events{Check: check}
	up, down := c.crossings(check.Millimetres())
	switch {
	case len(up) == 0:
		out.NoAnswer = neverPassed(check)
		return out, nil
	case len(up) > 1:
		out.NoAnswer = fault.Reason{Code: "passed-more-than-once", Text: "the lift passes " + check.In(units.Millimetre, 2) + " more than once going up: read again there, or choose a higher check"}
		return out, nil
	}
	const touch = 1e-9 // degrees: there and back within rounding, either way round
	duration := within(down[0] - up[0])
	if math.Abs(half(duration)) < touch {
		out.NoAnswer = neverPassed(check)
		return out, nil
	}
	first := within(c.start + up[0])
	out.Opens, out.Closes, out.Duration = units.CamDegrees(first), units.CamDegrees(first+duration), units.CamDegrees(duration)
	out.OpeningRise = units.Millimetres(c.motion(within(up[0]))[1])
	out.ClosingRise = units.Millimetres(-c.motion(within(down[0]))[1])
	return out, nil
}

func neverPassed(check units.Length) fault.Reason {
	return fault.Reason{Code: "never-reached", Text: "the lift never passes " + check.In(units.Millimetre, 2)}
}

// crossings are the angles from the first knot where lift rises and falls through
// a level.
func (c *Curve) crossings(level float64) (up, down []float64) {
	for i := range c.coef {
		k := c.coef[i]
		f := func(t float64) float64 { return ((k[3]*t+k[2])*t+k[1])*t + k[0] - level }
		// Split the piece where its slope is zero; each part is monotone.
		ends := [4]float64{0, 1, 1, 1}
		n := 1
		for _, t := range quadratic(3*k[3], 2*k[2], k[1]) {
			if t > ends[n-1] && t < 1 {
				ends[n] = t
				n++
			}
		}
		ends[n] = 1
		for j := range n {
			a, b := ends[j], ends[j+1]
			fa, fb := f(a), f(b)
			if b == 1 { // the very figure the next piece begins with, so that none is lost
				fb = c.coef[(i+1)%len(c.coef)][0] - level
			}
			if (fa >= 0) == (fb >= 0) {
				continue
			}
			t, err := solve.Root(f, a, b, 1e-12)
			if err != nil { // passed within rounding of the end
				t = b
			}
			x := c.knot(i) + t*c.length(i)
			if fb >= 0 {
				up = append(up, x)
			} else {
				down = append(down, x)
			}
		}
	}
	return up, down
}

// quadratic are the places, in order, where a t^2 + b t + c changes its sign.
func quadratic(a, b, c float64) []float64 {
	if a == 0 {
		if b == 0 {
			return nil
		}
		return []float64{-c / b}
	}
	disc := b*b - 4*a*c
	if !(disc > 0) {
		return nil
	}
	q := -(b + math.Copysign(math.Sqrt(disc), b)) / 2 // never zero
	roots := []float64{q / a, c / q}
	slices.Sort(roots)
	return roots
}

// Doubts are the standard uncertainties of events, of the camshaft.
type Doubts struct {
	Opens    units.CamAngle `json:"opens"`
	Closes   units.CamAngle `json:"closes"`
	Duration units.CamAngle `json:"duration"`
	Centre   units.CamAngle `json:"centre"` // halfway between them
}

// Doubts returns the uncertainty of events read off the curve: each event's is the
// curve's own doubt over the rise there; an error of the gauge's zero, common to
// both, moves them apart and leaves the centre (derived). wheel is the standard
// uncertainty of the camshaft angle itself, common to all readings. Zero where
// there is no event. Errors: a wheel or zero below nothing.
func (f Fitted) Doubts(e Events, zero units.Length, wheel units.CamAngle) (Doubts, error) {
	var l fault.List
	if !(f.Doubt >= 0 && f.Doubt <= 100*units.Millimetre) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "doubt", Value: f.Doubt.String(), Unit: "mm", Rule: "0 to 100 mm, as Fit gives it"})
	}
	positive(&l, "zero", zero, "mm")
	positive(&l, "wheel", wheel, "° cam")
	if err := l.Err(); err != nil || e.NoAnswer.Given() {
		return Doubts{}, err
	}
	ro, rc := e.OpeningRise.Millimetres(), e.ClosingRise.Millimetres()
	if !(ro > 1e-9 && rc > 1e-9) {
		return Doubts{}, fault.Fault{Code: fault.OutOfRange, Path: "events", Rule: "lift must rise at opening and fall at closing"}
	}
	d, z, w := f.Doubt.Millimetres(), zero.Millimetres(), wheel.Degrees()
	o, c := d/ro, d/rc
	return Doubts{
		Opens:    units.CamDegrees(math.Hypot(math.Hypot(o, z/ro), w)),
		Closes:   units.CamDegrees(math.Hypot(math.Hypot(c, z/rc), w)),
		Duration: units.CamDegrees(math.Hypot(math.Hypot(o, c), z/ro+z/rc)),
		Centre:   units.CamDegrees(math.Hypot(math.Hypot(math.Hypot(o, c)/2, (z/ro-z/rc)/2), w)),
	}, nil
}

// Centres are the several things that are called the centre of a lobe, counted on
// from the opening, possibly beyond one turn. They agree on a symmetrical lobe; where
// they do not, say which was used.
type Centres struct {
	// ByEvents is halfway between opening and closing at the check lift: free of
	// clearance and of the gauge's zero where both flanks are alike.
	ByEvents units.CamAngle `json:"by_events"`
	// ByPeak is where the lift is greatest: the trade's "full lift", vague on a
	// gauge since the nose is flat.
	ByPeak units.CamAngle `json:"by_peak"`
	// ByArea halves the area under the lift above the check.
	ByArea units.CamAngle `json:"by_area"`
	// ByMirror is the axis about which the lobe above the check is most nearly
	// its own mirror image: least mean square of rise against fall.
	ByMirror units.CamAngle `json:"by_mirror"`
	// Asymmetry is the root mean square lift between the lobe and its mirror image.
	Asymmetry units.Length `json:"asymmetry"`
	MaxLift   units.Length `json:"max_lift"`
	NoAnswer  fault.Reason `json:"no_answer,omitzero"`
}

// Centres returns the centre of the lobe by each definition, the parts above a
// check lift being taken. No answer where [Curve.Events] has none. Errors: as there.
func (c *Curve) Centres(check units.Length) (Centres, error) {
	e, err := c.Events(check)
	if err != nil || e.NoAnswer.Given() {
		return Centres{NoAnswer: e.NoAnswer}, err
	}
	o := within(e.Opens.Degrees() - c.start)
	s := o + e.Duration.Degrees()
	peak, lift := c.peak()
	if peak < o {
		peak += turnDegrees
	}
	byArea, err := c.halfArea(o, s, check.Millimetres())
	if err != nil {
		return Centres{}, err
	}
	mirror, rms := c.mirror((o+s)/2, (s-o)/2, check.Millimetres())
	at := func(x float64) units.CamAngle { return e.Opens + units.CamDegrees(x-o) }
	return Centres{
		ByEvents: at((o + s) / 2), ByPeak: at(peak), ByArea: at(byArea), ByMirror: at(mirror),
		Asymmetry: units.Millimetres(rms), MaxLift: units.Millimetres(lift),
	}, nil
}

// MaxLift returns the greatest lift and where, first from the start of the curve if
// several are as high.
func (c *Curve) MaxLift() (units.Length, units.CamAngle) {
	if c.none() {
		return 0, 0
	}
	x, y := c.peak()
	return units.Millimetres(y), units.CamDegrees(within(c.start + x))
}

func (c *Curve) peak() (x, y float64) {
	y = math.Inf(-1)
	for i := range c.coef {
		k := c.coef[i]
		try := func(t float64) {
			if v := ((k[3]*t+k[2])*t+k[1])*t + k[0]; v > y {
				x, y = c.knot(i)+t*c.length(i), v
			}
		}
		try(0)
		for _, t := range quadratic(3*k[3], 2*k[2], k[1]) {
			if t > 0 && t < 1 {
				try(t)
			}
		}
	}
	return x, y
}

// integral of lift over 0 to x degrees from the first knot, mm degrees; x may run
// into the next turn.
func (c *Curve) integral(x float64) float64 {
	sum := 0.0
	for x >= turnDegrees {
		sum += c.integral(math.Nextafter(turnDegrees, 0))
		x -= turnDegrees
	}
	last, part, _ := c.piece(x)
	for i := 0; i <= last; i++ {
		t, k := 1.0, c.coef[i]
		if i == last {
			t = part
		}
		sum += c.length(i) * t * (k[0] + t*(k[1]/2+t*(k[2]/3+t*k[3]/4)))
	}
	return sum
}

// halfArea is where the area above a level from o to s is halved. The lift stands
// above the level all the way, so there is such a place.
func (c *Curve) halfArea(o, s, level float64) (float64, error) {
	base := c.integral(o)
	want := (c.integral(s) - base - level*(s-o)) / 2
	return solve.Inverse(func(x float64) float64 { return c.integral(x) - base - level*(x-o) }, want, o, s, 1e-9)
}

// mirror finds the axis m near mid that makes lift(m+u) and lift(m-u) most alike
// for lift above the level, u up to half the duration. Golden section over ± an
// eighth of it.
func (c *Curve) mirror(mid, half, level float64) (m, rms float64) {
	const points = 240
	miss := func(m float64) float64 {
		sum := 0.0
		for i := range points {
			u := half * (float64(i) + 0.5) / points
			d := max(c.lift(within(m+u)), level) - max(c.lift(within(m-u)), level)
			sum += d * d
		}
		return sum / points
	}
	lo, hi := mid-half/4, mid+half/4
	ratio := (math.Sqrt(5) - 1) / 2
	for hi-lo > 1e-6 {
		if a, b := hi-ratio*(hi-lo), lo+ratio*(hi-lo); miss(a) < miss(b) {
			hi = b
		} else {
			lo = a
		}
	}
	m = (lo + hi) / 2
	return m, math.Sqrt(miss(m))
}

// Area is what lies under a lift curve.
type Area struct {
	LiftAngleMMDegrees float64      `json:"lift_angle_mm_deg"` // lift summed over angle above the check, mm x cam degrees
	MeanLift           units.Length `json:"mean_lift"`         // over the duration
	LiftTimeMMSeconds  float64      `json:"lift_time_mm_s"`    // at the speed given, mm x seconds; 0 if none was
}

// Area returns the area under the lift between opening and closing at a check lift,
// the lift counted from zero: integral of L over angle, and over time at a crank
// speed, angle/(6 N/2) with N in rev/min; a speed of zero leaves time out. All zero
// where there are no events. Errors: those of [Curve.Events]; a speed below zero,
// or above it and below 0.001 rev/min.
func (c *Curve) Area(check units.Length, crankSpeed units.RotationalSpeed) (Area, error) {
	e, err := c.Events(check)
	var l fault.List
	l.Under("", err)
	if positive(&l, "speed", crankSpeed, "rev/min"); crankSpeed > 0 && crankSpeed < units.RevolutionsPerMinute(1e-3) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "speed", Value: crankSpeed.String(), Unit: "rev/min", Rule: "0, or at least a thousandth of a turn a minute"})
	}
	if err := l.Err(); err != nil || e.NoAnswer.Given() {
		return Area{}, err
	}
	o := within(e.Opens.Degrees() - c.start)
	a := c.integral(o+e.Duration.Degrees()) - c.integral(o)
	out := Area{LiftAngleMMDegrees: a, MeanLift: units.Millimetres(a / e.Duration.Degrees())}
	if w := crankSpeed.DegreesPerSecond() / 2; w > 0 {
		out.LiftTimeMMSeconds = a / w
	}
	return out, nil
}

// Overlap is how long and how far two valves are open together.
type Overlap struct {
	Cam           units.CamAngle   `json:"cam"`         // from inlet opening to exhaust closing; below zero for a pause
	Crank         units.CrankAngle `json:"crank"`       // twice that
	AreaMMDegrees float64          `json:"area_mm_deg"` // the lesser of both lifts over it, mm x cam degrees
	SplitAt       units.CamAngle   `json:"split_at"`    // where both lifts are equal
	SplitBy       units.Length     `json:"split_by"`    // that lift
	NoAnswer      fault.Reason     `json:"no_answer,omitzero"`
}

// OverlapOf returns the overlap of an exhaust and an inlet cam whose curves are
// counted from one angle of the camshaft, at one check lift. Errors: those of
// [Curve.Events], under "exhaust" and "inlet".
func OverlapOf(exhaust, inlet *Curve, check units.Length) (Overlap, error) {
	var l fault.List
	ex, err := exhaust.Events(check)
	l.Under("exhaust", err)
	in, err := inlet.Events(check)
	l.Under("inlet", err)
	if err := l.Err(); err != nil {
		return Overlap{}, err
	}
	for _, e := range [...]Events{ex, in} {
		if e.NoAnswer.Given() {
			return Overlap{NoAnswer: e.NoAnswer}, nil
		}
	}
	d := math.Mod(ex.Closes.Degrees()-in.Opens.Degrees(), turnDegrees)
	switch {
	case d > turnDegrees/2:
		d -= turnDegrees
	case d < -turnDegrees/2:
		d += turnDegrees
	}
	out := Overlap{Cam: units.CamDegrees(d), Crank: units.CamDegrees(d).AtCrank()}
	if d <= 0 {
		return out, nil
	}
	at := func(c *Curve, x float64) float64 { return c.lift(within(x - c.start)) }
	from := in.Opens.Degrees()
	const steps = 2000 // trapezia: exact to about 1e-6 of the area
	prev := min(at(exhaust, from), at(inlet, from))
	for i := 1; i <= steps; i++ {
		x := from + d*float64(i)/steps
		v := min(at(exhaust, x), at(inlet, x))
		out.AreaMMDegrees += (v + prev) / 2 * d / steps
		prev = v
	}
	if x, err := solve.Root(func(x float64) float64 { return at(exhaust, x) - at(inlet, x) }, from, from+d, 1e-9); err == nil {
		out.SplitAt, out.SplitBy = units.CamDegrees(within(x)), units.Millimetres(at(inlet, x))
	}
	return out, nil
}

// Place returns the crank position of a camshaft angle counted from the TDC of
// overlap, as the trade says it: from the nearest dead centre, halfway between two
// from the one to come. An angle that is not finite comes to TDC itself.
func Place(fromOverlap units.CamAngle) units.CrankPosition {
	x := within(fromOverlap.Degrees()) * 2 // 0 to 720 of the crank
	switch {
	case x < 90:
		return units.After(units.TDC, units.CrankDegrees(x))
	case x < 270:
		return units.After(units.BDC, units.CrankDegrees(x-180))
	case x < 450:
		return units.After(units.TDC, units.CrankDegrees(x-360))
	case x < 630:
		return units.After(units.BDC, units.CrankDegrees(x-540))
	}
	return units.After(units.TDC, units.CrankDegrees(x-720))
}
