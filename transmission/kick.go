package transmission

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// KickTest is a rider standing on the kick lever against full compression, in
// clutch engaged: what did it do?
type KickTest struct {
	Rider    measure.Reading[units.Mass]   // 20 to 200 kg
	Crank    measure.Reading[units.Length] // kick lever from spindle to pedal, 80 to 400 mm
	Angle    measure.Reading[units.Angle]  // of the lever from plumb where it stands, 20° to 160°; 90° is level. Not taken: 90° ± 15°
	Ratio    float64                       // clutch turns to one of the kick spindle, 0.3 to 10
	Losses   float64                       // work reaching the clutch over work put in, 0.3 to 1; 0 takes 0.9
	Cranking measure.Reading[units.Torque] // that turns the engine over compression, at the crank, 1 to 500 N m; not taken: the engine is taken to hold
	Result   KickResult
}

// KickResult is what the clutch did under the rider's weight.
type KickResult uint8

// The results.
const (
	Held   KickResult = iota // did not slip
	Crept                    // just slipped
	Slid                     // slipped away
	Turned                   // the engine turned over; the clutch did not slip
)

// String returns the result in words.
func (k KickResult) String() string {
	switch k {
	case Held:
		return "held"
	case Crept:
		return "just slipped"
	case Slid:
		return "slipped"
	case Turned:
		return "engine turned over, clutch held"
	}
	return "unknown result"
}

// KickProof is what a kick test proves of the clutch.
type KickProof struct {
	Rider    measure.Reading[units.Torque] `json:"rider"`    // the rider's weight puts on the clutch
	Engine   measure.Reading[units.Torque] `json:"engine"`   // at which the engine would turn over compression instead; not taken if not known
	Tested   measure.Reading[units.Torque] `json:"tested"`   // what the clutch was put to: the lesser of these
	Capacity Bound                         `json:"capacity"` // what Tested says of the clutch's capacity
	// Share is Tested over the greatest engine torque at the clutch: a test of the
	// road only if it is near one or above.
	Share   measure.Reading[units.Ratio] `json:"share"`
	Verdict string                       `json:"verdict"`
	Proven  Proof                        `json:"proven"`   // against the greatest engine torque
	Margin  Proof                        `json:"margin"`   // against that with its margin
	ToProve units.Mass                   `json:"to_prove"` // rider who would just put the greatest engine torque with its margin on it, engine not turning
	Basis   refdata.Basis                `json:"basis"`
}

// Bound is how a tested torque bounds the capacity.
type Bound uint8

// The bounds.
const (
	AtLeast Bound = iota // capacity is at least the tested torque
	About                // capacity is the tested torque
	Below                // capacity is less than the tested torque
)

// String returns the bound in words.
func (b Bound) String() string {
	switch b {
	case AtLeast:
		return "at least"
	case About:
		return "about"
	case Below:
		return "below"
	}
	return "unknown bound"
}

// MarshalText returns the words of String.
func (b Bound) MarshalText() ([]byte, error) { return []byte(b.String()), nil }

// Proof is whether a test shows that the clutch carries a torque.
type Proof uint8

// The proofs.
const (
	Unproven  Proof = iota // the test says nothing either way
	Shown                  // it carries it
	Disproved              // it does not
)

// String returns the proof in words.
func (p Proof) String() string {
	switch p {
	case Unproven:
		return "not proved either way"
	case Shown:
		return "shown"
	case Disproved:
		return "disproved"
	}
	return "unknown proof"
}

// MarshalText returns the words of String.
func (p Proof) MarshalText() ([]byte, error) { return []byte(p.String()), nil }

// Kick returns what a kick test proves of the clutch: at the clutch the rider
// puts m g L sin(angle) losses / ratio on it (statics, derived here), unless the
// engine turns over first, which limits it to the cranking torque times the
// primary ratio. Shown and Disproved allow for twice the uncertainty. Errors:
// figures missing or outside their range, as fault.Fault.
func (c Clutch) Kick(test KickTest) (KickProof, error) {
	var l fault.List
	torque := c.Demand.EngineTorque.NewtonMetres()
	need(&l, "demand.engine_torque", torque, "N m", 0.5, 1000)
	need(&l, "demand.primary_ratio", c.Demand.PrimaryRatio, "", 0.2, 10)
	margin := or(c.Demand.Margin, defaultMargin)
	need(&l, "demand.margin", margin, "", 1, 5)
	if !test.Angle.Taken() {
		test.Angle = measure.Of(90*units.Degree, 15*units.Degree)
	}
	given(&l, "test.rider", &test.Rider, "kg", 1, 20, 200)
	given(&l, "test.crank", &test.Crank, "mm", 1000, 80, 400)
	given(&l, "test.angle", &test.Angle, "°", 180/math.Pi, 20, 160)
	if test.Cranking.Taken() {
		given(&l, "test.cranking", &test.Cranking, "N m", 1, 1, 500)
	}
	need(&l, "test.ratio", test.Ratio, "", 0.3, 10)
	losses := or(test.Losses, defaultKickLosses)
	need(&l, "test.losses", losses, "", 0.3, 1)
	if test.Result > Turned {
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "test.result", Rule: "must be held, crept, slid or turned"})
	}
	if test.Result == Turned && !test.Cranking.Taken() {
		l.Add(fault.Fault{Code: fault.Missing, Path: "test.cranking", Unit: "N m", Rule: "is needed when the engine turned over: it is what the clutch was put to"})
	}
	if err := l.Err(); err != nil {
		return KickProof{}, err
	}
	var p KickProof
	arm := losses / test.Ratio
	var err error
	p.Rider, err = measure.Propagate[units.Torque](func(x []float64) float64 {
		return x[0] * gravity * x[1] * x[2] * arm
	}, test.Rider.SI(), test.Crank.SI(), sine(test.Angle.SI()))
	l.Under("test", err)
	p.Tested = p.Rider
	if test.Cranking.Taken() {
		p.Engine, err = measure.Propagate[units.Torque](func(x []float64) float64 { return x[0] * c.Demand.PrimaryRatio }, test.Cranking.SI())
		l.Under("test", err)
		if p.Engine.Value() < p.Rider.Value() || test.Result == Turned {
			p.Tested = p.Engine
		}
	}
	engine := torque * c.Demand.PrimaryRatio
	p.Share, err = measure.Propagate[units.Ratio](func(x []float64) float64 { return x[0] / engine }, p.Tested.SI())
	l.Under("test", err)
	p.Capacity = [...]Bound{Held: AtLeast, Crept: About, Slid: Below, Turned: AtLeast}[test.Result]
	p.Proven, p.Margin = proof(p.Tested, p.Capacity, engine), proof(p.Tested, p.Capacity, engine*margin)
	p.ToProve = units.Kilograms(engine * margin / (gravity * test.Crank.Value().Metres() * math.Sin(test.Angle.Value().Radians()) * arm))
	p.Verdict = p.words()
	p.Basis = refdata.Basis{
		Sources:    []refdata.Source{{Title: "torque of a rider's weight through the kick starter, statics", Status: refdata.Derived}, refdata.Practice()},
		Assumed:    []refdata.Assumption{},
		NotChecked: []refdata.Unchecked{{What: "slip under a shock", Why: "the test is of standing weight", Settle: "a hill in top gear on a road test, after the brakes"}},
		Cautions:   []refdata.Caution{refdata.KickBack, refdata.BrakesBeforeRoad, refdata.DeferToManual},
	}
	if test.Losses == 0 {
		p.Basis.Assumed = append(p.Basis.Assumed, refdata.Assumption{What: "losses of the kick starter", Value: number(defaultKickLosses), Status: refdata.CommonPractice})
	}
	if c.Demand.Margin == 0 {
		p.Basis.Assumed = append(p.Basis.Assumed, refdata.Assumption{What: "torque margin", Value: number(defaultMargin), Status: refdata.CommonPractice})
	}
	return p, l.Err()
}

// sine is the sine of an angle. A lever thought level is off level either way, and the
// sine less in both: to second order, E (sin(a+e) - sin a)² = (cos a u)² + 3/4 (sin a
// u²)² for a normal e.
func sine(a measure.Input) measure.Input {
	sin, cos := math.Sincos(a.X)
	return measure.Input{X: sin, U: math.Hypot(cos*a.U, math.Sqrt(0.75)*sin*a.U*a.U)}
}

const (
	defaultKickLosses = 0.9
	gravity           = 9.80665 // m/s2, standard (CGPM 1901)
)

// given notes a reading that is missing, or not within its range in the unit that is so
// many to the SI unit.
func given[Q units.Quantity](l *fault.List, path string, r *measure.Reading[Q], unit string, perSI, low, high float64) {
	switch x := math.Round(r.SI().X*perSI*1e9) / 1e9; { // a limit in degrees is one in radians too
	case !r.Taken():
		l.Add(fault.Fault{Code: fault.Missing, Path: path, Unit: unit, Rule: "is needed"})
	case r.Err() != nil:
		l.Under(path, r.Err())
	case !(x >= low && x <= high):
		l.Add(outside(path, x, unit, low, high))
	}
}

// proof compares what was tested with a torque, twice the uncertainty allowed.
func proof(tested measure.Reading[units.Torque], b Bound, against float64) Proof {
	t, u := tested.Value().NewtonMetres(), tested.U().NewtonMetres()
	switch {
	case b != Below && t-2*u >= against:
		return Shown
	case b != AtLeast && t+2*u <= against:
		return Disproved
	}
	return Unproven
}

func (p *KickProof) words() string {
	share := "the clutch was put to " + p.Tested.String() + ", " + number(math.Round(p.Share.Value().Percents())) + " % of the engine's greatest torque there: "
	switch {
	case p.Margin == Shown:
		return share + "it carries the engine with its margin"
	case p.Proven == Shown:
		return share + "it carries the engine; the margin is " + p.Margin.String()
	case p.Proven == Disproved:
		return share + "it will slip under the engine"
	case p.Margin == Disproved:
		return share + "it has not the margin wanted; whether it carries the engine is not proved either way"
	}
	return share + "this does not prove that it carries the engine; a rider of " + p.ToProve.In(units.Kilogram, 0) + " would put the torque with its margin on it"
}
