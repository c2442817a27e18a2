package gear

import (
	"example.com/benchbook/units/fault"
)

// Recurrence is how often marks come together.
type Recurrence struct {
	Turns  int64 `json:"turns"`  // of the first wheel or spindle from one meeting to the next
	Teeth  int64 `json:"teeth"`  // that pass the mesh between; 0 where there are several meshes
	Groups int64 `json:"groups"` // of teeth that ever meet, gcd of a pair; 1: every tooth meets every other
}

// Hunting returns how often the same two teeth of a pair meet: after lcm(z1, z2)
// teeth, lcm/z1 turns of the first wheel and lcm/z2 of the second (a gear maker's
// handbook, page 96, 11 and 31 teeth: eleven turns of the larger). With a common
// divisor the teeth fall into that many groups that never mix. Errors: a wheel of
// fewer than 2 teeth or more than 100 000.
func Hunting(first, second int) (Recurrence, error) {
	if err := Simple(first, second).Err(); err != nil {
		return Recurrence{}, err
	}
	m, _ := lcm(int64(first), int64(second)) // at most 1e10
	return Recurrence{Turns: m / int64(first), Teeth: m, Groups: gcd(int64(first), int64(second))}, nil
}

// MarksMeet returns after how many turns of the first spindle every wheel's mark
// stands again where it stood, idlers included: the least common multiple of the
// denominators of each spindle's turns per turn of the first (derived). A mark on an
// idler that is out of line proves nothing unless the turns were counted: the cam
// is right again every two turns of the crank. Errors: those of [Train.Err]; too
// many turns to count in 63 bits.
func (t Train) MarksMeet() (Recurrence, error) {
	if err := t.Err(); err != nil {
		return Recurrence{}, err
	}
	turns := int64(1)
	for n := range t.pairs {
		var ok bool
		if turns, ok = lcm(turns, t.ratio(n+1).Den()); !ok {
			return Recurrence{}, fault.Fault{Code: fault.OutOfRange, Path: "train", Value: t.String(), Rule: "the marks do not meet within a number of turns that can be counted"}
		}
	}
	r := Recurrence{Turns: turns, Groups: 1}
	if len(t.pairs) == 1 {
		r.Teeth, _ = times(turns, int64(t.pairs[0].Driver))
		r.Groups = gcd(int64(t.pairs[0].Driver), int64(t.pairs[0].Driven))
	}
	return r, nil
}

// MarksMeet is [Train.MarksMeet] for all spindles of a drive. Errors: those of
// [Drive.Err].
func (d Drive) MarksMeet() (Recurrence, error) {
	if err := d.Err(); err != nil {
		return Recurrence{}, err
	}
	turns := int64(1)
	for _, m := range d {
		line, _, _ := d.line(m.To)
		r, err := d.train(line).MarksMeet()
		if err != nil {
			return Recurrence{}, err
		}
		var ok bool
		if turns, ok = lcm(turns, r.Turns); !ok {
			return Recurrence{}, fault.Fault{Code: fault.OutOfRange, Path: "drive", Rule: "the marks do not meet within a number of turns that can be counted"}
		}
	}
	return Recurrence{Turns: turns, Groups: 1}, nil
}
