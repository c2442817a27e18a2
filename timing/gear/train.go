package gear

import (
	"slices"
	"strconv"
	"strings"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Link says how a wheel drives the next one.
type Link uint8

// The links.
const (
	External Link = iota // outside teeth on outside teeth: the sense turns over
	Internal             // a ring with inside teeth: the sense stays
	Chain                // chain or toothed belt: the sense stays
)

// String returns "mesh", "internal mesh" or "chain".
func (l Link) String() string {
	switch l {
	case Internal:
		return "internal mesh"
	case Chain:
		return "chain"
	}
	return "mesh"
}

// MarshalText returns the text of String.
func (l Link) MarshalText() ([]byte, error) { return []byte(l.String()), nil }

// UnmarshalText reads the text of String; empty text is a plain mesh.
func (l *Link) UnmarshalText(b []byte) error {
	switch string(b) {
	case "", "mesh":
		*l = External
	case "internal mesh":
		*l = Internal
	case "chain":
		*l = Chain
	default:
		return fault.Fault{Code: fault.UnknownName, Path: "link", Value: string(b), Rule: "mesh, internal mesh or chain"}
	}
	return nil
}

// Pair is one place where a wheel drives another.
type Pair struct {
	Driver int  `json:"driver"` // teeth
	Driven int  `json:"driven"` // teeth
	Link   Link `json:"link"`
	Idler  bool `json:"idler"` // the driver is the very wheel the pair before drives
}

// Train is a row of wheels from a first spindle to a last one, of any depth.
// Build one with [Simple] and go on with [Train.Then]:
//
//	gear.Simple(24, 48)              // pinion and camwheel
//	gear.Simple(24, 35, 48)          // with an idler between
//	gear.Simple(24, 32).Then(30, 45) // the 30 fixed to the 32
//
// Its ratio is held as whole numbers, so that "exactly one to two" is a test of
// equality. Tooth counts are not checked on the way; [Train.Err] tells what is
// wrong, and so does every method that returns an error. The zero Train is one
// spindle and no wheels.
type Train struct{ pairs []Pair }

// Simple returns the train of wheels that each mesh with the next, given by
// their teeth. All but the first and last are idlers.
func Simple(teeth ...int) Train { return Train{}.Then(teeth...) }

// Then returns the train with more wheels: the first is fixed to the spindle
// of the last wheel so far, and each meshes with the next.
func (t Train) Then(teeth ...int) Train { return t.add(External, teeth) }

// ThenInternal returns the train with one more pair, the second wheel a ring
// with inside teeth.
func (t Train) ThenInternal(driver, ring int) Train { return t.add(Internal, []int{driver, ring}) }

// ThenChain returns the train with one more pair of sprockets or pulleys, which
// turn the same way.
func (t Train) ThenChain(driver, driven int) Train { return t.add(Chain, []int{driver, driven}) }

func (t Train) add(l Link, teeth []int) Train {
	pairs := slices.Clone(t.pairs)
	if len(teeth) == 1 { // a wheel that drives nothing is told by Err
		teeth = append(slices.Clone(teeth), 0)
	}
	for i := range max(len(teeth)-1, 0) {
		pairs = append(pairs, Pair{Driver: teeth[i], Driven: teeth[i+1], Link: l, Idler: i > 0})
	}
	return Train{pairs}
}

// mostTeeth bounds a wheel; no gear of an engine comes near.
const mostTeeth = 100_000

// Err returns every fault of the train: a wheel of fewer than 2 or more than
// 100 000 teeth, or a ratio too large for exact arithmetic in 63 bits.
func (t Train) Err() error {
	var l fault.List
	for i, p := range t.pairs {
		for _, w := range [...]struct {
			name  string
			teeth int
		}{{"driver", p.Driver}, {"driven", p.Driven}} {
			if w.teeth < 2 || w.teeth > mostTeeth {
				l.Add(fault.Fault{Code: fault.OutOfRange, Path: "train[" + strconv.Itoa(i) + "]." + w.name, Value: strconv.Itoa(w.teeth) + " teeth", Unit: "teeth", Rule: "a wheel has 2 to 100000 teeth"})
			}
		}
	}
	if l.Len() == 0 && !t.ratio(len(t.pairs)).Valid() {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "train", Value: t.String(), Rule: "the exact ratio must fit 63 bits"})
	}
	return l.Err()
}

// Len returns the number of meshes.
func (t Train) Len() int { return len(t.pairs) }

// Pair returns mesh i, counted from 0 at the first spindle; the zero Pair where there
// is no such mesh.
func (t Train) Pair(i int) Pair {
	if i < 0 || i >= len(t.pairs) {
		return Pair{}
	}
	return t.pairs[i]
}

// Equal reports whether two trains have the same wheels in the same order.
func (t Train) Equal(u Train) bool { return slices.Equal(t.pairs, u.pairs) }

// String writes the train as [ParseTrain] reads it: "24:32, 30:45".
func (t Train) String() string {
	var b strings.Builder
	for i, p := range t.pairs {
		if !p.Idler {
			if i > 0 {
				b.WriteString(", ")
			}
			b.WriteString(strconv.Itoa(p.Driver))
		}
		switch p.Link {
		case Internal:
			b.WriteString(" in ")
		case Chain:
			b.WriteString(" chain ")
		default:
			b.WriteByte(':')
		}
		b.WriteString(strconv.Itoa(p.Driven))
	}
	return b.String()
}

// ratio is turns of the spindle after n meshes per turn of the first, signed.
func (t Train) ratio(n int) Rational {
	r := NewRational(1, 1)
	for _, p := range t.pairs[:n] {
		s := NewRational(int64(p.Driver), int64(p.Driven))
		if p.Link == External {
			s.num = -s.num
		}
		r = r.Times(s)
	}
	return r
}

// Ratio returns the turns of the last spindle for one turn of the first, exact
// and signed: below zero if they turn opposite ways. (-1)^k times the product of
// driver teeth over driven teeth, k the number of outside meshes; an idler's
// teeth cancel and it only adds a turn of sense (Khurmi & Gupta, Theory of
// Machines, 14th ed., example 13.1; Wentzell, Machine Design, example 11.2,
// both read in a textbook companion). The error is that of [Train.Err].
func (t Train) Ratio() (Rational, error) { return t.RatioAt(len(t.pairs)) }

// RatioAt is [Train.Ratio] at the spindle after the first n meshes.
func (t Train) RatioAt(n int) (Rational, error) {
	if err := t.Err(); err != nil {
		return Rational{}, err
	}
	if n < 0 || n > len(t.pairs) {
		return Rational{}, noMesh(n, len(t.pairs)+1)
	}
	return t.ratio(n), nil
}

// IsHalfSpeed reports whether the last spindle turns exactly once for two turns
// of the first, either way round: 2 x product of drivers = product of driven.
// It is false for a train with faults.
func (t Train) IsHalfSpeed() bool {
	return t.Err() == nil && t.ratio(len(t.pairs)).Abs() == NewRational(1, 2)
}

// CheckHalfSpeed returns nil if [Train.IsHalfSpeed], else why the train cannot
// drive a four-stroke cam: its own faults, or a fault.Conflict that says what
// it does turn.
func (t Train) CheckHalfSpeed() error {
	if err := t.Err(); err != nil {
		return err
	}
	if r := t.ratio(len(t.pairs)).Abs(); r != NewRational(1, 2) {
		return fault.Fault{Code: fault.Conflict, Path: "train", Value: t.String(), Unit: "teeth", Rule: "a four-stroke cam must turn exactly 1/2 turn for each turn of the crank; these wheels give " + r.String()}
	}
	return nil
}

// Worth is what one tooth at one mesh is worth. All figures are exact fractions
// rounded once.
type Worth struct {
	Mesh       int              `json:"mesh"`        // counted from 0 at the first spindle
	Wheel      units.Angle      `json:"wheel"`       // at the driven wheel: 360°/teeth
	Last       units.Angle      `json:"last"`        // at the last spindle
	Crank      units.CrankAngle `json:"crank"`       // at the first spindle, the crank
	LastExact  Rational         `json:"last_exact"`  // Last in degrees
	CrankExact Rational         `json:"crank_exact"` // Crank in degrees
}

// ToothWorth returns how far the last spindle is moved by meshing the driven
// wheel of mesh i (from 0) one tooth further on, in degrees of that wheel, of
// the last spindle and of the first, which is the crank in an engine. Moving it
// forward in its own sense of rotation advances everything it drives. At the
// driven wheel it is 360°/teeth; through the train it scales with the ratio.
// Derived from the definition of the pitch. Errors: those of [Train.Err], or no
// such mesh.
func (t Train) ToothWorth(i int) (Worth, error) {
	if err := t.Err(); err != nil {
		return Worth{}, err
	}
	if i < 0 || i >= len(t.pairs) {
		return Worth{}, noMesh(i, len(t.pairs))
	}
	wheel := NewRational(360, int64(t.pairs[i].Driven))
	crank := wheel.Over(t.ratio(i + 1).Abs())
	last := crank.Times(t.ratio(len(t.pairs)).Abs())
	if !crank.Valid() || !last.Valid() {
		return Worth{}, fault.Fault{Code: fault.OutOfRange, Path: "train", Value: t.String(), Rule: "the exact worth of a tooth must fit 63 bits"}
	}
	return Worth{
		Mesh: i, Wheel: units.Degrees(wheel.Float()), Last: units.Degrees(last.Float()), Crank: units.CrankDegrees(crank.Float()),
		LastExact: last, CrankExact: crank,
	}, nil
}

// CamToothWorth is [Train.ToothWorth] at the camshaft that ends a half-speed
// train, in camshaft degrees; twice that shows on the crank. Errors: those of
// [Train.CheckHalfSpeed], or no such mesh.
func (t Train) CamToothWorth(i int) (units.CamAngle, error) {
	if err := t.CheckHalfSpeed(); err != nil {
		return 0, err
	}
	w, err := t.ToothWorth(i)
	return units.CamDegrees(w.LastExact.Float()), err
}

// FinestStep returns the smallest shift that moving whole teeth at the meshes of
// the train can make, in degrees of the crank: the greatest common measure of
// all tooth worths. For a simple half-speed train it is one tooth, 720°/camwheel
// teeth, whatever the idlers; a compound train may reach finer. Zero for a train
// without meshes. Errors: those of [Train.Err].
func (t Train) FinestStep() (Rational, error) {
	var step Rational
	for i := range t.pairs {
		w, err := t.ToothWorth(i)
		if err != nil {
			return Rational{}, err
		}
		step = step.Step(w.CrankExact)
	}
	if !step.Valid() {
		return Rational{}, fault.Fault{Code: fault.OutOfRange, Path: "train", Value: t.String(), Rule: "the exact step must fit 63 bits"}
	}
	return step, t.Err()
}

func noMesh(i, n int) error {
	return fault.Fault{Code: fault.OutOfRange, Path: "mesh", Value: strconv.Itoa(i), Rule: "the train has meshes 0 to " + strconv.Itoa(n-1)}
}
