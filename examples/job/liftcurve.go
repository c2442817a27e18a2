package job

import (
	"math"
	"strconv"
	"strings"

	"example.com/benchbook/timing"
	"example.com/benchbook/timing/cam"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// LiftCurve is the lift of one cam over the crank, as a dial gauge and a degree
// disc gave it or as the book has it, with the curve drawn through it.
type LiftCurve struct {
	Cam    timing.Cam   `json:"cam"`
	Points []LiftPoint  `json:"points"` // in the order of the file
	Fitted cam.Fitted   `json:"fitted"` // counted from the TDC between exhaust and inlet
	Check  units.Length `json:"check"`  // the lift its events are counted at
	Events cam.Events   `json:"events"` // of the camshaft
	Lobe   timing.Lobe  `json:"lobe"`   // the same as a lobe; empty without events
	// Opens, Closes and MaxLift are those of a curve that was read, with their
	// uncertainty; a book's has none.
	Opens   measure.Position              `json:"opens"`
	Closes  measure.Position              `json:"closes"`
	MaxLift measure.Reading[units.Length] `json:"max_lift"`
	// StandsIn names the readings this curve was taken for because they were not
	// read by themselves.
	StandsIn []string `json:"stands_in,omitempty"`
}

// LiftPoint is one reading of lift.
type LiftPoint struct {
	// At is counted in the running direction from the TDC between exhaust and
	// inlet, so that both turns of the crank are told apart.
	At   units.CrankAngle              `json:"at"`
	Lift measure.Reading[units.Length] `json:"lift"`
}

// discAlike is what all readings off one disc share beside the error of TDC, which
// the verdict adds itself: a disc that sits or is printed off its middle (common
// practice, no source). It keeps a table of many readings from seeming surer than
// the disc it was read from.
const discAlike = units.CrankDegree / 2

// curveRead is a table of lifts of the job file.
type curveRead struct {
	cam    timing.Cam
	path   string // under the section timing
	book   bool
	events bool // the book gives the events as well, and they rule
	points []LiftPoint
}

// fromOverlap counts a place of one cam from the TDC between exhaust and inlet: its
// TDC is that one, and its BDC the one its own stroke has.
func fromOverlap(p units.CrankPosition, c timing.Cam) units.CrankAngle {
	switch {
	case p.Datum() != units.BDC:
		return p.After()
	case c == timing.Exhaust:
		return p.After() - 180*units.CrankDegree
	}
	return p.After() + 180*units.CrankDegree
}

// readCurve reads a table of lifts at key: a list of places with their lifts, or a
// first place, a step and the lifts. Nil if there is none.
func readCurve(s section, key string, c timing.Cam, book bool) *curveRead {
	_, in, _ := strings.Cut(under(s.path, key), ".")
	out := &curveRead{cam: c, path: in, book: book}
	switch n := s.take(key); {
	case n == nil:
		return nil
	case n.kind == isList:
		for _, sub := range s.list(key) {
			at := sub.needPlace("at")
			out.add(fromOverlap(at, c), reading(sub, "lift", measure.DialGauge()))
			sub.close()
		}
	default:
		sub, ok := s.object(key)
		if !ok {
			return nil
		}
		out.even(sub)
		sub.close()
	}
	if len(out.points) == 0 {
		return nil
	}
	return out
}

func (r *curveRead) add(at units.CrankAngle, lift measure.Reading[units.Length]) {
	if lift.Taken() {
		r.points = append(r.points, LiftPoint{at, lift})
	}
}

// even reads lifts taken at equal steps.
func (r *curveRead) even(s section) {
	lifts := s.texts("lifts")
	if len(lifts) == 0 {
		for _, key := range []string{"from", "every"} {
			s.text(key) // may stand there empty
		}
		return
	}
	from := s.needPlace("from")
	every, ok := quantity[units.CrankAngle](s, "every")
	switch text := s.text("every"); {
	case text == "":
		s.fault("every", fault.Missing, "", "needed, such as 10° crank")
	case ok && (every <= 0 || every > 40*units.CrankDegree):
		s.fault("every", fault.OutOfRange, text, "above 0° crank, up to 40° crank")
		ok = false
	}
	if !ok {
		return
	}
	if most := int(720 / every.Degrees()); len(lifts) > most+1 {
		s.fault("lifts", fault.OutOfRange, strconv.Itoa(len(lifts)), "more than two turns of the crank hold at this step")
		return
	}
	at := fromOverlap(from, r.cam)
	for i, t := range lifts {
		lift, err := measure.Read(t, measure.DialGauge())
		s.faults.Under(under(s.path, "lifts["+strconv.Itoa(i)+"]"), err)
		r.add(at+every.Times(float64(i)), lift)
	}
}

// fit draws the curve and takes its events at the check lift. A table of the book
// is gone through, readings are smoothed.
func (r *curveRead) fit(check timing.Check) (*LiftCurve, error) {
	samples := make([]cam.Sample, len(r.points))
	var zero units.Length // the gauge's uncertainty, which its zero carries into all readings alike
	for i, p := range r.points {
		samples[i] = cam.CrankSample(p.At, p.Lift.Value())
		zero = max(zero, p.Lift.U())
	}
	opt := cam.FitOptions{}
	if r.book {
		opt.Criterion, zero = cam.Interpolated, 0
	}
	fitted, err := cam.Fit(samples, opt)
	if err == nil && fitted.Noise < zero && !r.book {
		// No table is better than its gauge: cross-validation now and then follows
		// every reading of a short one.
		fitted, err = cam.Fit(samples, cam.FitOptions{Criterion: cam.KnownNoise, Noise: zero})
	}
	if err != nil {
		return nil, r.faults(err)
	}
	out := &LiftCurve{Cam: r.cam, Points: r.points, Fitted: fitted, Check: check.Lift}
	if out.Events, err = fitted.Events(check.Lift); err != nil {
		return nil, r.faults(err)
	}
	lobe, none, err := timing.LobeOf(fitted.Curve, check.Lift)
	if err != nil || none.Given() {
		return out, err
	}
	// To a tenth of a degree and a hundredth of a millimetre: finer than disc and gauge.
	lobe.Opens, lobe.Closes = tenths(lobe.Opens), tenths(lobe.Closes)
	top := units.Millimetres(math.Round(lobe.MaxLift.Value().Millimetres()*100) / 100)
	lobe.MaxLift = measure.By(top, measure.DialGauge())
	out.Lobe = lobe
	if r.book {
		return out, nil
	}
	out.MaxLift = measure.Of(top, units.Millimetres(math.Hypot(fitted.Doubt.Millimetres(), zero.Millimetres())))
	doubts, err := fitted.Doubts(out.Events, zero, discAlike.AtHalfSpeedCam())
	if err != nil {
		return nil, r.faults(err)
	}
	out.Opens, out.Closes = measure.At(lobe.Opens, doubts.Opens.AtCrank()), measure.At(lobe.Closes, doubts.Closes.AtCrank())
	return out, nil
}

func tenths(p units.CrankPosition) units.CrankPosition {
	return units.After(p.Datum(), units.CrankDegrees(math.Round(p.After().Degrees()*10)/10))
}

// faults gives what the fit found wrong the path it has in the job file.
func (r *curveRead) faults(err error) error {
	var l fault.List
	for _, f := range fault.Faults(err) {
		f.Path = r.path + strings.TrimPrefix(f.Path, "readings")
		l.Add(f)
	}
	return l.Err()
}

// withCurves draws the curves of a job and puts what they show where it belongs.
func withCurves(in *timing.Input, tables []*curveRead) (TimingResult, error) {
	var out TimingResult
	var faults fault.List
	for _, r := range tables {
		check := in.Engine.Check
		if !r.book && in.Readings.Check != nil {
			check = *in.Readings.Check
		}
		c, err := r.fit(check)
		if !faults.Under("", err) {
			continue
		}
		lobe := &in.Engine.Inlet
		to := &out.InletCurve
		switch {
		case r.book && r.cam == timing.Inlet:
			to = &out.InletBook
		case r.book:
			lobe, to = &in.Engine.Exhaust, &out.ExhaustBook
		case r.cam == timing.Exhaust:
			to = &out.ExhaustCurve
		}
		*to = c
		if r.book {
			faults.Under(r.path, c.specify(lobe, r.events))
		} else {
			c.standIn(&in.Readings)
		}
	}
	return out, faults.Err()
}

// specify gives a lobe what the book's curve has of it.
func (c *LiftCurve) specify(l *timing.Lobe, events bool) error {
	if none := c.Events.NoAnswer; none.Given() {
		if events {
			return nil
		}
		return fault.Fault{Code: fault.OutOfRange, Rule: none.Text + "; give the events by themselves"}
	}
	if !events {
		l.Opens, l.Closes = c.Lobe.Opens, c.Lobe.Closes
	}
	l.MaxLift = l.MaxLift.Or(c.Lobe.MaxLift)
	l.OpeningRise, l.ClosingRise = c.Lobe.OpeningRise, c.Lobe.ClosingRise
	return nil
}

// valves gives the search for room between valves and piston the lift that was
// read at the valve, or that the book has, in place of a lobe of usual shape.
func (t *TimingResult) valves(in *timing.Input) error {
	h := in.Engine.Head
	if h == nil || t.InletCurve == nil && t.ExhaustCurve == nil && t.InletBook == nil && t.ExhaustBook == nil {
		return nil
	}
	inlet, exhaust, err := timing.Phases(*in, timing.Options{})
	if err != nil {
		return err
	}
	check := in.Engine.Check
	if in.Readings.Check != nil {
		check = *in.Readings.Check
	}
	for _, v := range []struct {
		valve      *timing.Valve
		read, book *LiftCurve
		phase      timing.Phase
	}{{&h.Inlet, t.InletCurve, t.InletBook, inlet}, {&h.Exhaust, t.ExhaustCurve, t.ExhaustBook, exhaust}} {
		switch {
		case v.read != nil && v.phase.Cam.Taken() && check.At == timing.AtValve:
			// The search wants the cam in its place and moves it itself.
			home, err := v.read.Fitted.Advanced(-v.phase.Cam.Value())
			if err != nil {
				return err
			}
			v.valve.Curve = home
		case v.book != nil && in.Engine.Check.At == timing.AtValve:
			v.valve.Curve = v.book.Fitted.Curve
		}
	}
	return nil
}

// standIn puts the events and the greatest lift of a curve in the place of those
// that were not read by themselves.
func (c *LiftCurve) standIn(r *timing.Readings) {
	name := c.Cam.String()
	opens, closes, lift := &r.InletOpens, &r.InletCloses, &r.InletMaxLift
	if c.Cam == timing.Exhaust {
		opens, closes, lift = &r.ExhaustOpens, &r.ExhaustCloses, &r.ExhaustMaxLift
	}
	if !c.Opens.Taken() {
		return
	}
	for _, e := range []struct {
		what string
		to   *measure.Position
		from measure.Position
	}{{name + " opens", opens, c.Opens}, {name + " closes", closes, c.Closes}} {
		if !e.to.Taken() {
			*e.to = e.from
			c.StandsIn = append(c.StandsIn, e.what)
		}
	}
	if !lift.Taken() {
		*lift = c.MaxLift
		c.StandsIn = append(c.StandsIn, name+" greatest lift")
	}
}

// Earlier returns the curve of the same cam with every event so much earlier, later
// if it is negative: as a table read with the cam moved would give it. Errors: an
// angle that is not finite.
func (c *LiftCurve) Earlier(by units.CrankAngle) (*LiftCurve, error) {
	moved := *c
	curve, err := c.Fitted.Advanced(by.AtHalfSpeedCam())
	if err != nil {
		return nil, err
	}
	moved.Fitted.Curve = curve
	moved.Points = make([]LiftPoint, len(c.Points))
	for i, p := range c.Points {
		moved.Points[i] = LiftPoint{p.At - by, p.Lift}
	}
	if moved.Events, err = curve.Events(c.Check); err != nil || moved.Events.NoAnswer.Given() {
		return &moved, err
	}
	moved.Lobe.Opens, moved.Lobe.Closes = tenths(cam.Place(moved.Events.Opens)), tenths(cam.Place(moved.Events.Closes))
	if c.Opens.Taken() {
		moved.Opens, moved.Closes = measure.At(moved.Lobe.Opens, c.Opens.U()), measure.At(moved.Lobe.Closes, c.Closes.U())
	}
	return &moved, nil
}
