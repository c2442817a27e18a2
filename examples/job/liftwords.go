package job

import (
	"math"
	"slices"
	"strconv"

	"example.com/benchbook/refdata"
	"example.com/benchbook/timing"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// apart is how many standard uncertainties may lie between an event that was read
// by itself and the same event by the curve.
const apart = 3

// say puts into words what the curve shows, what it was taken for, and whether the
// events that were read by themselves agree with it.
func (c *LiftCurve) say(s *Section, in timing.Input) {
	name := c.Cam.String()
	text := name + " lift curve through " + strconv.Itoa(len(c.Points)) + " readings"
	if none := c.Events.NoAnswer; none.Given() {
		s.Findings = append(s.Findings, Finding{Key: name + "-curve", Text: text + ": no events by it, " + none.Text})
		return
	}
	text += ": passes " + dial(c.Check) + " at " + c.Opens.Value().String() + " and " + c.Closes.Value().String() +
		", greatest lift " + c.MaxLift.Value().In(units.Millimetre, 2)
	if n := len(c.StandsIn); n == 1 {
		text += "; it stands in for " + c.StandsIn[0]
	} else if n > 1 {
		text += "; it stands in for " + strconv.Itoa(n) + " readings"
	}
	opens, closes := in.Readings.InletOpens, in.Readings.InletCloses
	if c.Cam == timing.Exhaust {
		opens, closes = in.Readings.ExhaustOpens, in.Readings.ExhaustCloses
	}
	for _, e := range []struct {
		what       string
		read, here measure.Position
	}{{name + " opens", opens, c.Opens}, {name + " closes", closes, c.Closes}} {
		if slices.Contains(c.StandsIn, e.what) {
			continue
		}
		off := (e.read.Value().FromTDC() - e.here.Value().FromTDC()).Degrees()
		off = math.Abs(off - 360*math.Round(off/360)) // a disc shows one turn only
		if off > apart*math.Hypot(e.read.U().Degrees(), e.here.U().Degrees()) {
			s.DoFirst = append(s.DoFirst, "read again where "+e.what+": by itself "+e.read.Value().String()+", by the lift curve "+e.here.Value().String())
		}
	}
	s.Findings = append(s.Findings, Finding{Key: name + "-curve", Text: text})
}

// dial says a lift as a gauge shows it, in millimetres, or in inches where only they are round.
func dial(l units.Length) string {
	if mm := l.Millimetres() * 100; math.Abs(mm-math.Round(mm)) < 1e-6 {
		return l.String()
	}
	return l.In(units.Inch, 3)
}

// rows tells the table beside the other readings, and marks those it stands in for.
func (c *LiftCurve) rows(s *Section) {
	for i, r := range s.Read {
		if slices.Contains(c.StandsIn, r.What) {
			s.Read[i].Note = "from the lift curve"
		}
	}
	f := c.Fitted
	s.Read = append(s.Read, Row{
		What:   c.Cam.String() + " lift curve",
		Figure: strconv.Itoa(len(c.Points)) + " readings",
		Note:   "noise " + f.Noise.In(units.Millimetre, 3) + ", zero off by " + f.Zero.In(units.Millimetre, 2),
	})
}

// basis is what the curve rests on.
func (c *LiftCurve) basis() refdata.Basis {
	b := c.Fitted.Basis
	b.Assumed = slices.Clone(b.Assumed)
	for i := range b.Assumed {
		b.Assumed[i].What = c.Cam.String() + " " + b.Assumed[i].What
	}
	b.Assumed = append(b.Assumed, refdata.Assumption{What: "what all readings off one disc share, in the events of a lift curve",
		Value: discAlike.In(units.CrankDegree, 1), Status: refdata.CommonPractice})
	return b
}
