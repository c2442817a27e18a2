package gear

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Epicyclic is a train whose spindles ride on an arm: its value is turns of the last
// wheel for one of the first with the arm held, signed. Take it from a [Train] with
// [Train.Ratio]: Simple(sun, planet).ThenInternal(planet, annulus).
type Epicyclic struct {
	Value Rational `json:"value"`
}

// EpicyclicOf returns the epicyclic of a train with its arm let go. The error is
// that of [Train.Err].
func EpicyclicOf(t Train) (Epicyclic, error) {
	r, err := t.Ratio()
	return Epicyclic{r}, err
}

// Speeds are those of the three members, one sense positive.
type Speeds struct {
	First units.RotationalSpeed `json:"first"`
	Last  units.RotationalSpeed `json:"last"`
	Arm   units.RotationalSpeed `json:"arm"`
}

func (e Epicyclic) err(speeds ...units.RotationalSpeed) error {
	var l fault.List
	if !e.Value.Valid() || e.Value.Num() == 0 {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "value", Value: e.Value.String(), Rule: "a train value that is not zero"})
	}
	for _, s := range speeds {
		if !sane(s) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: "speed", Unit: "rev/min", Rule: "must be finite"})
		}
	}
	return l.Err()
}

// Last returns all speeds, that of the last wheel sought: last - arm = e (first -
// arm) (Khurmi & Gupta, Theory of Machines, 14th ed., chapter 13: its table gives
// the same line). Errors: a value of zero, speeds not finite.
func (e Epicyclic) Last(first, arm units.RotationalSpeed) (Speeds, error) {
	if err := e.err(first, arm); err != nil {
		return Speeds{}, err
	}
	return Speeds{first, arm + (first - arm).Times(e.Value.Float()), arm}, nil
}

// First is [Epicyclic.Last] with the first wheel's speed sought.
func (e Epicyclic) First(last, arm units.RotationalSpeed) (Speeds, error) {
	if err := e.err(last, arm); err != nil {
		return Speeds{}, err
	}
	return Speeds{arm + (last - arm).Times(1/e.Value.Float()), last, arm}, nil
}

// Arm is [Epicyclic.Last] with the arm's speed sought: (last - e first)/(1 - e).
// Errors: as there; a value of exactly one, which locks first and last together.
func (e Epicyclic) Arm(first, last units.RotationalSpeed) (Speeds, error) {
	if err := e.err(first, last); err != nil {
		return Speeds{}, err
	}
	if e.Value == NewRational(1, 1) {
		return Speeds{}, fault.Fault{Code: fault.Conflict, Path: "value", Value: "1", Rule: "with a train value of one the arm may turn at any speed"}
	}
	v := e.Value.Float()
	return Speeds{first, last, (last - first.Times(v)).Times(1 / (1 - v))}, nil
}

// Fixed returns the exact turns of one member for a turn of another with the third
// held. Members are "first", "last", "arm". With the last held, first over arm is
// 1 - 1/e, and so on. Errors: a value of zero or one, unknown or equal members.
func (e Epicyclic) Fixed(held, of, per string) (Rational, error) {
	if err := e.err(); err != nil {
		return Rational{}, err
	}
	one := NewRational(1, 1)
	minus := func(r Rational) Rational { return r.Times(NewRational(-1, 1)) }
	// last - e first - (1 - e) arm = 0: the coefficients.
	k := map[string]Rational{"first": minus(e.Value), "last": one, "arm": e.Value.Plus(minus(one))}
	a, ok1 := k[of]
	b, ok2 := k[per]
	if _, ok := k[held]; !ok || !ok1 || !ok2 || held == of || held == per || of == per {
		return Rational{}, fault.Fault{Code: fault.UnknownName, Path: "held", Value: held + ", " + of + ", " + per, Rule: "three different ones of first, last and arm"}
	}
	r := minus(b.Over(a))
	if !r.Valid() {
		return Rational{}, fault.Fault{Code: fault.Conflict, Path: "value", Value: e.Value.String(), Rule: "this member does not move the other"}
	}
	return r, nil
}

// Torques are those on the three members, from outside, one sense positive; they
// add up to nothing.
type Torques struct {
	First units.Torque `json:"first"`
	Last  units.Torque `json:"last"`
	Arm   units.Torque `json:"arm"`
}

// Torques returns the torques on the members for one on the first, without losses:
// with the arm held the last carries -first/e, and the arm balances both (Khurmi &
// Gupta, chapter 13; power in equals power out). Errors: a value of zero, a torque
// not finite.
func (e Epicyclic) Torques(first units.Torque) (Torques, error) {
	if err := e.err(); err != nil {
		return Torques{}, err
	}
	if !sane(first) {
		return Torques{}, fault.Fault{Code: fault.OutOfRange, Path: "torque", Unit: "N m", Rule: "must be finite"}
	}
	last := first.Times(-1 / e.Value.Float())
	return Torques{First: first, Last: last, Arm: (first + last).Times(-1)}, nil
}

// Planetary is a sun, planets and an annulus by teeth.
type Planetary struct {
	Sun     int `json:"sun"`
	Planet  int `json:"planet"`
	Annulus int `json:"annulus"`
}

// PlanetaryOf returns the planetary whose annulus follows from sun and planet:
// annulus = sun + 2 planet, one module, no profile shift (Khurmi & Gupta, examples
// 13.6 and 13.7).
func PlanetaryOf(sun, planet int) Planetary { return Planetary{sun, planet, sun + 2*planet} }

// PlanetaryFor returns the teeth that give an exact ratio of turns of the sun for one
// of the arm with the annulus held, on an annulus of given teeth: 1 + annulus/sun
// (Khurmi & Gupta, example 13.9). Errors: a ratio that no whole teeth give.
func PlanetaryFor(sunPerArm Rational, annulus int) (Planetary, error) {
	r := sunPerArm.Plus(NewRational(-1, 1))
	s := NewRational(int64(annulus), 1).Over(r)
	sun := int(s.Num())
	p := Planetary{sun, (annulus - sun) / 2, annulus}
	if s.Den() != 1 || int64(sun) != s.Num() || p.Err() != nil {
		return Planetary{}, fault.Fault{Code: fault.Conflict, Path: "ratio", Value: sunPerArm.String(), Rule: "no whole numbers of teeth give this ratio with this annulus"}
	}
	return p, nil
}

// Err returns the faults: teeth out of range, or an annulus that is not sun + 2
// planet, which needs profile shift.
func (p Planetary) Err() error {
	var l fault.List
	for _, z := range [...]int{p.Sun, p.Planet, p.Annulus} {
		checkTeeth(&l, z)
	}
	if l.Len() == 0 && p.Annulus != p.Sun+2*p.Planet {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "annulus", Unit: "teeth", Rule: "with plain teeth the annulus has sun + 2 planet"})
	}
	return l.Err()
}

// Epicyclic returns the train sun to annulus, value -sun/annulus. The error is that
// of [Planetary.Err].
func (p Planetary) Epicyclic() (Epicyclic, error) {
	if err := p.Err(); err != nil {
		return Epicyclic{}, err
	}
	return EpicyclicOf(Simple(p.Sun, p.Planet).ThenInternal(p.Planet, p.Annulus))
}

// PlanetSpeed returns the planet's own speed, for the speeds of sun and arm: arm -
// (sun - arm) sun/planet. The error is that of [Planetary.Err].
func (p Planetary) PlanetSpeed(sun, arm units.RotationalSpeed) (units.RotationalSpeed, error) {
	if err := p.Err(); err != nil {
		return 0, err
	}
	if !sane(sun) || !sane(arm) {
		return 0, fault.Fault{Code: fault.OutOfRange, Path: "speed", Unit: "rev/min", Rule: "must be finite"}
	}
	return arm - (sun - arm).Times(float64(p.Sun)/float64(p.Planet)), nil
}

// Assembles reports whether a number of planets, evenly spaced, can be put in:
// (sun + annulus)/n must be whole (from memory).
func (p Planetary) Assembles(planets int) bool {
	return p.Err() == nil && planets > 0 && (p.Sun+p.Annulus)%planets == 0
}

// Driven is what comes out at the end of a train.
type Driven struct {
	Speed  units.RotationalSpeed `json:"speed"`  // signed
	Torque units.Torque          `json:"torque"` // size, without losses times the efficiency
	Power  units.Power           `json:"power"`
}

// Drive returns speed, torque and power at the last spindle for those at the first:
// torque over the ratio (Wentzell, Machine Design, 1st ed., examples 11.1 and 11.2,
// read in a textbook companion). efficiency of zero means no losses. Errors: those of
// [Train.Err]; speed or torque not finite, an efficiency outside 0 to 1.
func (t Train) Drive(speed units.RotationalSpeed, torque units.Torque, efficiency float64) (Driven, error) {
	r, err := t.Ratio()
	var l fault.List
	l.Under("", err)
	if !sane(speed) || !sane(torque) || !(efficiency >= 0 && efficiency <= 1) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "efficiency", Rule: "finite speed and torque, an efficiency of 0 (for none lost) to 1"})
	}
	if err := l.Err(); err != nil {
		return Driven{}, err
	}
	if efficiency == 0 {
		efficiency = 1
	}
	out := Driven{Speed: speed.Times(r.Float()), Torque: torque.Times(efficiency / math.Abs(r.Float()))}
	out.Power = units.Watts(math.Abs(out.Speed.SI() * out.Torque.SI()))
	return out, nil
}
