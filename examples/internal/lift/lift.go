// Package lift says what a picture of valve lift has to show of a job: where each
// cam opens and closes, as read and as specified, the curve between, the points it
// was drawn through. The printed pictures and those of the browser page both draw
// from it.
//
// Angles are crank degrees from the top dead centre between exhaust and inlet,
// lifts mm.
package lift

import (
	"math"

	"example.com/benchbook/examples/job"
	"example.com/benchbook/timing"
	"example.com/benchbook/timing/cam"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// Cam is one cam as it is to be drawn.
type Cam struct {
	Opens, Closes float64 // where it passes the check lift
	Check, Max    float64
	// Known reports whether there is anything to draw.
	Known bool
	// Points are the readings the curve was drawn through, none for a plain lobe.
	Points []Point
	curve  *cam.Curve
}

// Point is one reading.
type Point struct{ At, Lift float64 }

// Pair is one cam as specified and as read.
type Pair struct{ Book, Read Cam }

// Of returns both cams of a job.
func Of(v job.TimingResult) (inlet, exhaust Pair) {
	e, r := v.Input.Engine, v.Input.Readings
	check := e.Check.Lift
	inlet.Book = booked(timing.Inlet, e.Inlet, check, v.InletBook)
	exhaust.Book = booked(timing.Exhaust, e.Exhaust, check, v.ExhaustBook)
	if r.Check != nil {
		check = r.Check.Lift
	}
	inlet.Read = read(timing.Inlet, r.InletOpens, r.InletCloses, r.InletMaxLift, check, v.InletCurve, inlet.Book.Max)
	exhaust.Read = read(timing.Exhaust, r.ExhaustOpens, r.ExhaustCloses, r.ExhaustMaxLift, check, v.ExhaustCurve, exhaust.Book.Max)
	return inlet, exhaust
}

// place counts an event from the overlap TDC: a cam's BDC is that of its own stroke.
func place(c timing.Cam, p units.CrankPosition) float64 {
	at := p.After().Degrees()
	if p.Datum() == units.BDC {
		at += [2]float64{180, -180}[c]
	}
	return at
}

// standIn is the lift drawn where none was given, in mm.
const standIn = 8

func booked(c timing.Cam, l timing.Lobe, check units.Length, curve *job.LiftCurve) Cam {
	out := Cam{Opens: place(c, l.Opens), Closes: place(c, l.Closes), Check: check.Millimetres(), Max: standIn, Known: true}
	if l.MaxLift.Taken() {
		out.Max = l.MaxLift.Value().Millimetres()
	}
	out.along(curve)
	out.Points = nil // a book's figures are no readings
	return out
}

func read(c timing.Cam, opens, closes measure.Position, top measure.Reading[units.Length], check units.Length, curve *job.LiftCurve, book float64) Cam {
	out := Cam{Opens: place(c, opens.Value()), Closes: place(c, closes.Value()), Check: check.Millimetres(), Max: book, Known: opens.Taken() && closes.Taken()}
	if top.Taken() {
		out.Max = top.Value().Millimetres()
	}
	out.along(curve)
	return out
}

func (c *Cam) along(curve *job.LiftCurve) {
	if curve == nil {
		return
	}
	c.curve = curve.Fitted.Curve
	for _, p := range curve.Points {
		c.Points = append(c.Points, Point{p.At.Degrees(), (p.Lift.Value() - curve.Fitted.Zero).Millimetres()})
	}
}

// Measured reports whether the curve was drawn through readings of lift rather than
// a plain lobe through its events.
func (c Cam) Measured() bool { return c.curve != nil }

// Centre is halfway between the events.
func (c Cam) Centre() float64 { return (c.Opens + c.Closes) / 2 }

// shape returns centre and half width at no lift of a plain lobe, lift times cos²,
// through the events; ok is false if no such lobe passes through them. It shows
// where the cam stands, not how it was ground.
func (c Cam) shape() (centre, reach float64, ok bool) {
	if c.Max <= c.Check || c.Check < 0 || c.Closes <= c.Opens {
		return 0, 0, false
	}
	half := (c.Closes - c.Opens) / 2
	return c.Centre(), half / (2 / math.Pi * math.Acos(math.Sqrt(c.Check/c.Max))), true
}

// Span is where the cam lifts; ok is false if it nowhere does.
func (c Cam) Span() (from, to float64, ok bool) {
	if !c.Known {
		return 0, 0, false
	}
	if c.curve != nil {
		half := max((c.Closes-c.Opens)/2*1.5, 1)
		return c.Centre() - half, c.Centre() + half, true
	}
	centre, reach, ok := c.shape()
	return centre - reach, centre + reach, ok
}

// At is the lift at a place, never below zero.
func (c Cam) At(x float64) float64 {
	if c.curve != nil {
		l, err := c.curve.Lift(units.CrankDegrees(x).AtHalfSpeedCam())
		if err != nil {
			return 0
		}
		return max(l.Millimetres(), 0)
	}
	centre, reach, ok := c.shape()
	u := (x - centre) / reach
	if !ok || u < -1 || u > 1 {
		return 0
	}
	s := math.Cos(math.Pi / 2 * u)
	return c.Max * s * s
}

// Overlap returns where both valves are off their seats as far as the check lift;
// ok is false if one closes before the other opens, or was not read.
func Overlap(inlet, exhaust Cam) (from, to float64, ok bool) {
	return inlet.Opens, exhaust.Closes, inlet.Known && exhaust.Known && inlet.Opens < exhaust.Closes
}
