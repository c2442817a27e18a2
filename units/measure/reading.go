package measure

import (
	"math"
	"strconv"
	"strings"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Reading is one figure read from the machine: its value, standard uncertainty,
// the user's own text, and whether it was taken at all. The zero Reading was
// not taken. Readings are comparable and safe to copy.
type Reading[Q units.Quantity] struct {
	value, u   Q
	text       string // as the user wrote it
	instrument string // whose default uncertainty it carries
	note       string // what was assumed in reading the text
	state      state
}

type state uint8

const (
	notTaken state = iota
	taken
	exact
)

// Of returns a reading of value with standard uncertainty u. A u that is not
// above zero, or a figure that is not finite, is kept and told by [Reading.Err].
func Of[Q units.Quantity](value, u Q) Reading[Q] { return Reading[Q]{value: value, u: u, state: taken} }

// By returns a reading of value taken with an instrument, whose default
// uncertainty it carries.
func By[Q units.Quantity](value Q, with Instrument[Q]) Reading[Q] {
	return Reading[Q]{value: value, u: with.uncertainty(value), instrument: with.Name, state: taken}
}

// Exact returns a figure that is known without error: a count, a definition.
func Exact[Q units.Quantity](value Q) Reading[Q] { return Reading[Q]{value: value, state: exact} }

// Read reads text such as "7.94 mm ± 0.02", "7.94 ± 0.02 mm", "5/16 in +/- 2 thou"
// or, with the instrument's default uncertainty, "7.94 mm". The figure after ±
// may leave out the unit if the value has it. Empty text, or "-", is a reading
// not taken. The error is a fault.Fault.
func Read[Q units.Quantity](text string, with Instrument[Q]) (Reading[Q], error) {
	head, tail, has := cut(text)
	if !has {
		if head == "" || head == "-" {
			return Reading[Q]{}, nil
		}
		v, note, err := units.ParseNoted[Q](head)
		if err != nil {
			return Reading[Q]{}, err
		}
		r := By(v, with)
		r.text, r.note = strings.TrimSpace(text), note
		return r, r.Err()
	}
	v, note, err := units.ParseNoted[Q](head)
	var u Q
	if err == nil {
		u, err = parseU(tail, unitOf(head), v)
	} else if missingUnit(err) { // "7.94 ± 0.02 mm": the unit stands once, at the end
		unit := unitOf(tail)
		if unit == "%" { // "7.94 ± 2 %" has no unit at all
			return Reading[Q]{}, whole(err, text)
		}
		if v, note, err = units.ParseNoted[Q](head + " " + unit); err == nil {
			u, err = parseU(tail, unit, v)
		}
	}
	if err != nil {
		return Reading[Q]{}, whole(err, text)
	}
	r := Reading[Q]{value: v, u: u, text: strings.TrimSpace(text), note: note, state: taken}
	return r, whole(r.Err(), text)
}

// MustRead is [Read] for text fixed in a program; it panics on bad text.
func MustRead[Q units.Quantity](text string, with Instrument[Q]) Reading[Q] {
	r, err := Read(text, with)
	if err != nil {
		panic(err)
	}
	return r
}

// As returns r with the text the user wrote for it, where that was not text
// that [Read] reads: "26 tpi" for a pitch.
func (r Reading[Q]) As(text string) Reading[Q] {
	r.text = strings.TrimSpace(text)
	return r
}

// Taken reports whether there is a figure.
func (r Reading[Q]) Taken() bool { return r.state != notTaken }

// IsExact reports whether the figure was declared free of error.
func (r Reading[Q]) IsExact() bool { return r.state == exact }

// Value returns the figure, zero if not taken: ask [Reading.Taken] first.
func (r Reading[Q]) Value() Q { return r.value }

// U returns the standard uncertainty, zero for an exact figure. That of a
// temperature is a difference, in kelvins.
func (r Reading[Q]) U() Q { return r.u }

// Text returns the user's own text, or the figure's if there was none.
func (r Reading[Q]) Text() string {
	if r.text != "" {
		return r.text
	}
	return r.String()
}

// Instrument returns the name of the instrument whose default uncertainty was
// taken, or "".
func (r Reading[Q]) Instrument() string { return r.instrument }

// Note returns what was assumed in reading the text, such as "lb read as
// pounds-force", or "".
func (r Reading[Q]) Note() string { return r.note }

// Or returns r if it was taken, else other.
func (r Reading[Q]) Or(other Reading[Q]) Reading[Q] {
	if r.Taken() {
		return r
	}
	return other
}

// SI returns value and uncertainty in SI units, for [Propagate] and formulas.
// A reading not taken gives zeros.
func (r Reading[Q]) SI() Input { return Input{X: r.value.SI(), U: r.u.SI()} }

// String returns the figure with no more digits than its uncertainty allows,
// "7.94 ± 0.02 mm"; "not taken"; or the bare figure if exact.
func (r Reading[Q]) String() string {
	if !r.Taken() {
		return "not taken"
	}
	return units.WithUncertainty(r.value, r.u)
}

// In returns the text of [Reading.String] in a unit of the caller's choice, a constant
// of the type: r.In(units.MilePerHour) is "70.3 ± 1.7 mile/h"; see
// [units.WithUncertaintyIn].
func (r Reading[Q]) In(unit Q) string {
	if !r.Taken() {
		return "not taken"
	}
	return units.WithUncertaintyIn(r.value, r.u, unit)
}

// Err returns the fault in the figures, or nil: a value must be finite, and its
// uncertainty above zero unless it is exact.
func (r Reading[Q]) Err() error {
	switch {
	case r.state == notTaken:
		return nil
	case !units.Finite(r.value) || !units.Finite(r.u):
		return fault.Fault{Code: fault.OutOfRange, Value: r.value.String(), Rule: "a reading must be finite"}
	case r.state == taken && !(r.u > 0):
		return fault.Fault{Code: fault.OutOfRange, Value: r.Text(), Rule: "the uncertainty must be above zero; declare a figure exact by name"}
	}
	return nil
}

// MarshalJSON writes {text, value, unit, u}; null if not taken.
func (r Reading[Q]) MarshalJSON() ([]byte, error) {
	if !r.Taken() {
		return []byte("null"), nil
	}
	if err := r.Err(); err != nil {
		return nil, err
	}
	v, unit := figure(r.value)
	u, _ := figure(r.u)
	b := append([]byte(nil), `{"text":`...)
	b = quote(b, r.Text())
	b = append(b, `,"value":`...)
	b = strconv.AppendFloat(b, v, 'g', -1, 64)
	b = append(b, `,"unit":`...)
	b = quote(b, unit)
	if r.state == taken {
		b = append(b, `,"u":`...)
		b = strconv.AppendFloat(b, u, 'g', -1, 64)
	}
	return append(b, '}'), nil
}

func figure[Q units.Quantity](q Q) (float64, string) {
	return any(q).(interface{ Figure() (float64, string) }).Figure()
}

// cut splits text at its ± sign.
func cut(text string) (head, tail string, has bool) {
	for _, sign := range [...]string{"±", "+/-", "+-"} {
		if head, tail, has = strings.Cut(text, sign); has {
			return strings.TrimSpace(head), strings.TrimSpace(tail), true
		}
	}
	return strings.TrimSpace(text), "", false
}

// parseU reads the figure after ±: an amount, or a percentage of the value. A
// temperature's is read as a difference.
func parseU[Q units.Quantity](s, unit string, v Q) (Q, error) {
	if p, ok := strings.CutSuffix(s, "%"); ok && unit != "%" {
		if _, temperature := any(v).(units.Temperature); temperature {
			return 0, fault.Fault{Code: fault.UnitUnknown, Value: s, Unit: "%", Rule: "a scale with a zero of its own has no per cent; write a difference, such as ± 2 °C"}
		}
		x, err := units.ParseRatio(p)
		return Q(math.Abs(float64(v)) * x.Value() / 100), err
	}
	if _, temperature := any(v).(units.Temperature); temperature {
		d, err := units.ParseTemperatureDelta(s)
		if missingUnit(err) {
			d, err = units.ParseTemperatureDelta(s + " " + unit)
		}
		return Q(d), err
	}
	u, err := units.Parse[Q](s)
	if missingUnit(err) {
		bare := strings.TrimRight(s, "°º degrs")
		if bare == "" || unit == "" {
			return u, err
		}
		u, err = units.Parse[Q](bare + unit)
	}
	return u, err
}

// unitOf returns what follows the number in s.
func unitOf(s string) string {
	i := strings.LastIndexAny(s, "0123456789½¼¾⅛⅜⅝⅞")
	if i < 0 {
		return ""
	}
	for _, r := range s[i:] {
		return strings.TrimSpace(s[i+len(string(r)):])
	}
	return ""
}

func missingUnit(err error) bool {
	f := fault.Faults(err)
	return len(f) == 1 && f[0].Code == fault.UnitMissing
}

// whole puts the whole text of the reading into a fault of one of its parts.
func whole(err error, text string) error {
	if err == nil {
		return nil
	}
	f := fault.Faults(err)[0]
	f.Value = strings.TrimSpace(text)
	return f
}
