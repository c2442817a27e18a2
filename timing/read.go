package timing

import (
	"example.com/benchbook/timing/cam"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// ReadEvents reads the four events as the trade writes them, "25 BTDC" or "40
// ABDC ± 1°". A bare figure carries the default of a degree disc; "" or "-" was
// not taken. All else in Readings is left for the caller to fill in. The error
// holds every fault.
func ReadEvents(inletOpens, inletCloses, exhaustOpens, exhaustCloses string) (Readings, error) {
	var r Readings
	var l fault.List
	for i, at := range [4]*measure.Position{&r.InletOpens, &r.InletCloses, &r.ExhaustOpens, &r.ExhaustCloses} {
		text := [4]string{inletOpens, inletCloses, exhaustOpens, exhaustCloses}[i]
		p, err := measure.ReadPosition(text, measure.DegreeDisc())
		if l.Under(fieldOf(EventName(i)), err) {
			*at = p
		}
	}
	if err := l.Err(); err != nil {
		return Readings{}, err
	}
	return r, nil
}

// ReadLobe reads where a cam of a specification opens and closes its valve, "25
// BTDC" and "65 ABDC". Lift and flanks are left for the caller to fill in. The
// error holds every fault.
func ReadLobe(opens, closes string) (Lobe, error) {
	var l fault.List
	o, err := units.ParsePosition(opens)
	l.Under("opens", err)
	c, err := units.ParsePosition(closes)
	l.Under("closes", err)
	if err := l.Err(); err != nil {
		return Lobe{}, err
	}
	return Lobe{Opens: o, Closes: c}, nil
}

// LobeOf returns the lobe of a lift curve at a check lift: events, greatest lift
// and the rise of both flanks there, per crank degree. The curve must be counted
// from overlap TDC with the cam in its place, and taken where the engine's Check
// says. There is no answer, and the lobe is empty, where the curve passes the
// check lift more or less than twice. The error is that of cam.Curve.Events, or
// a nil curve.
func LobeOf(c *cam.Curve, check units.Length) (Lobe, fault.Reason, error) {
	if c == nil {
		return Lobe{}, fault.Reason{}, fault.Fault{Code: fault.Missing, Path: "curve", Rule: "a lift curve is needed"}
	}
	e, err := c.Events(check)
	if err != nil || e.NoAnswer.Given() {
		return Lobe{}, e.NoAnswer, err
	}
	top, _ := c.MaxLift()
	return Lobe{
		Opens: cam.Place(e.Opens), Closes: cam.Place(e.Closes), MaxLift: measure.Exact(top),
		OpeningRise: e.OpeningRise.Times(0.5), ClosingRise: e.ClosingRise.Times(0.5), // a crank degree is half a cam degree
	}, fault.Reason{}, nil
}
