package measure

import (
	"math"
	"strings"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Position is a reading of where the crank stood: "25 BTDC ± 1°". The zero
// Position was not taken.
type Position struct {
	datum units.Datum
	after Reading[units.CrankAngle]
	text  string
}

// At returns a reading of a crank position with standard uncertainty u.
func At(p units.CrankPosition, u units.CrankAngle) Position {
	return Position{datum: p.Datum(), after: Of(p.After(), u)}
}

// AtBy returns a reading of a crank position taken with a disc.
func AtBy(p units.CrankPosition, with Instrument[units.CrankAngle]) Position {
	return Position{datum: p.Datum(), after: By(p.After(), with)}
}

// ReadPosition reads text such as "25 BTDC", "40° ABDC ± 1°" or "TDC ± 0.5".
// Without ± the figure carries the instrument's default. Empty text, or "-", is
// a position not taken. The error is a fault.Fault.
func ReadPosition(text string, with Instrument[units.CrankAngle]) (Position, error) {
	head, tail, has := cut(text)
	if !has && (head == "" || head == "-") {
		return Position{}, nil
	}
	p, err := units.ParsePosition(head)
	if err != nil {
		return Position{}, whole(err, text)
	}
	r := Position{datum: p.Datum(), after: By(p.After(), with), text: strings.TrimSpace(text)}
	if has {
		u, err := parseU(tail, "° crank", p.After())
		if err != nil {
			return Position{}, whole(err, text)
		}
		r.after = Of(p.After(), u)
	}
	return r, whole(r.Err(), text)
}

// MustReadPosition is [ReadPosition] for text fixed in a program; it panics on
// bad text.
func MustReadPosition(text string, with Instrument[units.CrankAngle]) Position {
	p, err := ReadPosition(text, with)
	if err != nil {
		panic(err)
	}
	return p
}

// Taken reports whether there is a figure.
func (p Position) Taken() bool { return p.after.Taken() }

// Value returns the position, TDC if not taken: ask [Position.Taken] first.
func (p Position) Value() units.CrankPosition { return units.After(p.datum, p.after.Value()) }

// U returns the standard uncertainty of the position.
func (p Position) U() units.CrankAngle { return p.after.U() }

// Instrument returns the name of the instrument whose default was taken, or "".
func (p Position) Instrument() string { return p.after.Instrument() }

// Text returns the user's own text, or the figure's if there was none.
func (p Position) Text() string {
	if p.text != "" {
		return p.text
	}
	return p.String()
}

// String returns text such as "25° BTDC ± 1.0°", or "not taken": the place to a
// tenth of a degree, or finer where the uncertainty is.
func (p Position) String() string {
	if !p.Taken() {
		return "not taken"
	}
	u, decimals, scale := p.U(), 1, 10.0
	for x := float64(u); x > 0 && x < 0.1 && decimals < 9; x *= 10 {
		decimals, scale = decimals+1, scale*10
	}
	at := units.After(p.datum, units.CrankAngle(math.Round(float64(p.after.Value())*scale)/scale))
	return at.String() + " ± " + strings.TrimSuffix(u.In(units.CrankDegree, decimals), " crank")
}

// Err returns the fault in the figures, or nil.
func (p Position) Err() error {
	if err := p.after.Err(); err != nil {
		return err
	}
	if p.Taken() && !(p.after.Value() >= -360 && p.after.Value() <= 360) {
		return fault.Fault{Code: fault.OutOfRange, Value: p.Text(), Unit: "° crank", Rule: "at most 360° from its dead centre"}
	}
	return nil
}

// MarshalJSON writes {text, value, unit, u}, the value counted after the dead
// centre that the unit names; null if not taken.
func (p Position) MarshalJSON() ([]byte, error) {
	b, err := p.after.MarshalJSON()
	if err != nil || !p.Taken() {
		return b, err
	}
	r := p.after
	r.text = p.Text()
	if b, err = r.MarshalJSON(); err != nil {
		return nil, err
	}
	return []byte(strings.Replace(string(b), `"unit":"° crank"`, `"unit":"° crank after `+p.datum.String()+`"`, 1)), nil
}
