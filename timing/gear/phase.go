package gear

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Keyed is a wheel that can be put on its spindle in several ways: with equally
// spaced keyways, or keyways cut at listed angles.
type Keyed struct {
	Teeth   int // of the wheel
	Keyways int // equally spaced; or
	// Offsets are angles of keyways that are not equally spaced, from one of them,
	// in degrees and exact.
	Offsets []Rational
}

// Setting is one way to move a keyed wheel or a vernier plate.
type Setting struct {
	Keyways int         `json:"keyways"` // on from the present one; index into Offsets where those are given
	Teeth   int         `json:"teeth"`   // taken back at the mesh, above zero against the move
	Shift   units.Angle `json:"shift"`   // what the spindle gains, within half a tooth
	Exact   Rational    `json:"exact"`   // the same in degrees
}

func (k Keyed) err() error {
	var l fault.List
	if k.Teeth < 2 || k.Teeth > mostTeeth {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "teeth", Value: strconv.Itoa(k.Teeth), Unit: "teeth", Rule: "a wheel has 2 to 100000 teeth"})
	}
	switch {
	case len(k.Offsets) > 0 && k.Keyways != 0:
		l.Add(fault.Fault{Code: fault.Conflict, Path: "keyways", Rule: "give a number of equal keyways, or their offsets"})
	case len(k.Offsets) == 0 && (k.Keyways < 1 || k.Keyways > 1000):
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "keyways", Value: strconv.Itoa(k.Keyways), Rule: "1 to 1000 keyways"})
	}
	for i, o := range k.Offsets {
		if !o.Valid() || math.Abs(o.Float()) > 360 || o.Den() > 1_000_000 {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: "offsets[" + strconv.Itoa(i) + "]", Value: o.String(), Unit: "°", Rule: "within a turn, in millionths of a degree at the finest"})
		}
	}
	return l.Err()
}

// Step returns the finest shift that equal keyways give together with whole teeth:
// 360°/lcm(keyways, teeth) at the wheel (derived). If the keyways divide the teeth
// they gain nothing over a tooth. Errors: a wheel or number out of range, or listed
// offsets, whose settings [Keyed.Settings] lists instead.
func (k Keyed) Step() (Rational, error) {
	if err := k.err(); err != nil {
		return Rational{}, err
	}
	if len(k.Offsets) > 0 {
		return Rational{}, fault.Fault{Code: fault.Conflict, Path: "offsets", Rule: "uneven keyways have no one step: list their settings"}
	}
	m, _ := lcm(int64(k.Keyways), int64(k.Teeth))
	return NewRational(360, m), nil
}

// Settings returns every different shift within half a tooth either way that the
// keyways and whole teeth give, in order, each once by the least number of keyways:
// 360 (j/k - t/z) for j keyways and t teeth; for uneven ones their offsets less whole
// teeth (derived). Errors: those of [Keyed.Step], offsets apart.
func (k Keyed) Settings() ([]Setting, error) {
	if err := k.err(); err != nil {
		return nil, err
	}
	tooth := NewRational(360, int64(k.Teeth))
	n := len(k.Offsets)
	if n == 0 {
		n = k.Keyways
	}
	var all []Setting
	seen := map[Rational]bool{}
	for j := range n {
		by := NewRational(360*int64(j), int64(max(k.Keyways, 1)))
		if len(k.Offsets) > 0 {
			by = k.Offsets[j]
		}
		teeth := int64(math.Round(by.Over(tooth).Float()))
		left := by.Plus(tooth.Times(NewRational(-teeth, 1)))
		if seen[left] || !left.Valid() {
			continue
		}
		seen[left] = true
		all = append(all, Setting{Keyways: j, Teeth: int(teeth), Shift: units.Degrees(left.Float()), Exact: left})
	}
	slices.SortFunc(all, func(a, b Setting) int { return cmp.Compare(a.Shift, b.Shift) })
	return all, nil
}

// Nearest returns the setting whose shift, whole teeth included, lies nearest a
// wanted one, of two as near that with the lesser shift within half a tooth: Teeth
// then counts those too. Errors: those of [Keyed.Settings]; a
// shift not finite or beyond a turn.
func (k Keyed) Nearest(want units.Angle) (Setting, error) {
	all, err := k.Settings()
	if err != nil {
		return Setting{}, err
	}
	if !(want.Abs() <= 360*units.Degree) {
		return Setting{}, fault.Fault{Code: fault.OutOfRange, Path: "want", Unit: "°", Rule: "within a turn"}
	}
	tooth := NewRational(360, int64(k.Teeth))
	best, miss := Setting{}, math.Inf(1)
	for _, s := range all {
		n := int64(math.Round((want.Degrees() - s.Exact.Float()) / tooth.Float()))
		s.Exact = s.Exact.Plus(tooth.Times(NewRational(n, 1)))
		s.Shift, s.Teeth = units.Degrees(s.Exact.Float()), s.Teeth-int(n)
		if d := math.Abs(s.Exact.Float() - want.Degrees()); d < miss-1e-12 {
			best, miss = s, d
		}
	}
	return best, nil
}

// Vernier is a wheel held to its flange by a peg or bolt through one of two rings of
// holes, such as 11 in one and 12 in the other.
type Vernier struct {
	Wheel  int // holes in the wheel
	Flange int // holes in the flange
}

// Holes is one way to peg a vernier.
type Holes struct {
	Steps  int         `json:"steps"`  // of the finest shift
	Wheel  int         `json:"wheel"`  // holes on from the present one in the wheel
	Flange int         `json:"flange"` // holes on from the present one in the flange
	Shift  units.Angle `json:"shift"`  // wheel against flange
	Exact  Rational    `json:"exact"`  // the same in degrees
	Left   units.Angle `json:"left"`   // wanted less got
}

func (v Vernier) err() error {
	for _, n := range [...]int{v.Wheel, v.Flange} {
		if n < 1 || n > 10_000 {
			return fault.Fault{Code: fault.OutOfRange, Path: "holes", Value: strconv.Itoa(n), Rule: "each ring has 1 to 10000 holes"}
		}
	}
	return nil
}

// Step returns the finest shift of a vernier, 360°/lcm of its two rings; with n and
// n + 1 holes 360°/(n (n + 1)) (derived). Errors: a ring of no holes or more than
// 10 000.
func (v Vernier) Step() (Rational, error) {
	if err := v.err(); err != nil {
		return Rational{}, err
	}
	m, _ := lcm(int64(v.Wheel), int64(v.Flange))
	return NewRational(360, m), nil
}

// Nearest returns which holes to use for a wanted shift, and what is left: with L
// the lcm of p and q holes, to turn by k steps solve i L/p - j L/q = k modulo L
// (derived). Errors: those of [Vernier.Step]; a shift not finite or beyond a turn.
func (v Vernier) Nearest(want units.Angle) (Holes, error) {
	step, err := v.Step()
	if err != nil {
		return Holes{}, err
	}
	if !(want.Abs() <= 360*units.Degree) {
		return Holes{}, fault.Fault{Code: fault.OutOfRange, Path: "want", Unit: "°", Rule: "within a turn"}
	}
	all, p, q := step.Den()*360/step.Num(), int64(v.Wheel), int64(v.Flange) // all: L
	k := int64(math.Round(want.Degrees() / step.Float()))
	var best Holes
	for i := range p { // the least holes in the wheel that serve; all/p and all/q share no factor, so some do
		left := ((i*(all/p)-k)%all + all) % all
		if left%(all/q) == 0 {
			best = Holes{Steps: int(k), Wheel: int(i), Flange: int(left / (all / q))}
			break
		}
	}
	best.Exact = step.Times(NewRational(k, 1))
	best.Shift = units.Degrees(best.Exact.Float())
	best.Left = want - best.Shift
	return best, nil
}

// FinestStep returns the greatest angle of which all given steps are whole
// multiples, in degrees: what moves of those sizes can reach between them. With no
// limit on moves what is left over is at most half of it. Zero for no steps.
func FinestStep(steps ...Rational) Rational {
	var g Rational
	for _, s := range steps {
		g = g.Step(s.Abs())
	}
	return g
}
