package units

import (
	"strconv"
	"strings"

	"example.com/benchbook/units/fault"
)

// AtCrank returns the crank angle that turns a half-speed camshaft by c: twice
// as much. For any other train use the train's exact ratio.
func (c CamAngle) AtCrank() CrankAngle { return CrankAngle(2 * c) }

// AtHalfSpeedCam returns the angle a half-speed camshaft turns while the crank
// turns c: half as much. For any other train use the train's exact ratio.
func (c CrankAngle) AtHalfSpeedCam() CamAngle { return CamAngle(c / 2) }

// Datum is the dead centre a position is counted from.
type Datum uint8

// The dead centres.
const (
	TDC Datum = iota // top
	BDC              // bottom
)

// String returns "TDC" or "BDC".
func (d Datum) String() string {
	if d == BDC {
		return "BDC"
	}
	return "TDC"
}

// CrankPosition is a place of the crank, so many degrees before or after a
// dead centre. It is not a shift: 25° BTDC is a place, 25° early a movement.
// It says nothing of which of the two turns of a four-stroke cycle is meant.
// The zero value is TDC. Positions are comparable with ==.
type CrankPosition struct {
	datum Datum
	after CrankAngle
}

// Before returns the position the given angle before a dead centre.
func Before(d Datum, by CrankAngle) CrankPosition { return After(d, -by) }

// After returns the position the given angle after a dead centre.
func After(d Datum, by CrankAngle) CrankPosition {
	if by == 0 {
		by = 0 // no negative zero
	}
	return CrankPosition{datum: d, after: by}
}

// Datum returns the dead centre the position is counted from.
func (p CrankPosition) Datum() Datum { return p.datum }

// After returns the angle after the dead centre; it is negative before it.
func (p CrankPosition) After() CrankAngle { return p.after }

// Before returns the angle before the dead centre; it is negative after it.
func (p CrankPosition) Before() CrankAngle { return -p.after }

// FromTDC returns the angle after top dead centre in the running direction,
// counting bottom dead centre as 180°, without reducing whole turns.
func (p CrankPosition) FromTDC() CrankAngle {
	if p.datum == BDC {
		return p.after + 180
	}
	return p.after
}

// String returns text such as "25° BTDC", "40° ABDC" or "TDC".
func (p CrankPosition) String() string {
	if p.after == 0 {
		return p.datum.String()
	}
	side, by := "A", float64(p.after)
	if by < 0 {
		side, by = "B", -by
	}
	return strconv.FormatFloat(by, 'g', -1, 64) + "° " + side + p.datum.String()
}

// AppendText appends the text of String.
func (p CrankPosition) AppendText(b []byte) ([]byte, error) { return append(b, p.String()...), nil }

// MarshalText returns the text of String.
func (p CrankPosition) MarshalText() ([]byte, error) { return p.AppendText(nil) }

// UnmarshalText reads what [ParsePosition] reads.
func (p *CrankPosition) UnmarshalText(b []byte) error {
	q, err := ParsePosition(string(b))
	if err == nil {
		*p = q
	}
	return err
}

const positionRule = "expected degrees and a side, such as 25 BTDC, 40° ABDC or TDC"

// ParsePosition reads a place of the crank as the trade writes it: "25 BTDC",
// "25° BTDC", "12½ ATDC", "40 deg abdc", "25 B.T.D.C.", "25° before TDC", "TDC". A bare
// fraction, 5/16 BTDC, is refused: it is as likely inches of piston travel. A negative figure is the other
// side: "-5 BTDC" is 5° ATDC. The size must be at most 360°. The error is a
// fault.Fault.
func ParsePosition(s string) (CrankPosition, error) {
	t := trim(s)
	given := t
	fail := func(code fault.Code, rule string) (CrankPosition, error) {
		return CrankPosition{}, fault.Fault{Code: code, Value: given, Unit: "° crank", Rule: rule}
	}
	if strings.HasSuffix(t, ".") { // B.T.D.C.
		letters := len(strings.TrimRight(t, ".ABTDCabtdc"))
		t = t[:letters] + strings.ReplaceAll(t[letters:], ".", "")
	}
	if len(t) < 3 {
		return fail(fault.BadForm, positionRule)
	}
	head, tail := t[:len(t)-3], t[len(t)-3:]
	var d Datum
	switch {
	case strings.EqualFold(tail, "TDC"):
		d = TDC
	case strings.EqualFold(tail, "BDC"):
		d = BDC
	default:
		return fail(fault.BadForm, positionRule)
	}
	if trim(head) == "" {
		return CrankPosition{datum: d}, nil
	}
	side, figure := sideOf(head)
	if side == 0 {
		return fail(fault.BadForm, positionRule)
	}
	var by Angle
	if n, rest, ok := scanNumber(figure); ok && trim(rest) == "" { // bare degrees
		if strings.ContainsAny(figure, "/⁄") && n.num < n.den { // 5/16 BTDC is piston travel in the books
			return fail(fault.UnitMissing, "a bare fraction may be inches of piston travel; write degrees with their sign, such as 0.5° BTDC")
		}
		by = Angle(n.signed(n.abs().num / n.den))
	} else {
		var err error
		if by, err = ParseAngle(figure); err != nil {
			f := fault.Faults(err)[0]
			if f.Code == fault.WrongShaft && strings.HasSuffix(figure, "crank") {
				return fail(fault.BadForm, positionRule)
			}
			return fail(f.Code, f.Rule)
		}
	}
	// 5/16" BTDC is piston travel; minutes and seconds alone are nobody's reading
	if marks := strings.TrimRight(figure, "\"″'′"); marks != figure && !strings.ContainsAny(figure, "°ºd") {
		return fail(fault.UnitUnknown, "degrees of crank wanted, such as 25 BTDC; piston travel is a length, not a place of the crank")
	}
	if !(by >= -360 && by <= 360) {
		return fail(fault.OutOfRange, "at most 360° from its dead centre")
	}
	if side == 'b' {
		by = -by
	}
	return After(d, CrankAngle(by)), nil
}

// sideOf parts the figure from the side that stands before TDC or BDC: 'b', 'a',
// or 0 if there is neither.
func sideOf(head string) (side byte, figure string) {
	if t := trim(head); len(t) < len(head) { // a word of its own
		for _, word := range [...]string{"before", "after"} {
			if n := len(t) - len(word); n > 0 && strings.EqualFold(t[n:], word) {
				return word[0], trim(t[:n])
			}
		}
	}
	switch head[len(head)-1] | 0x20 {
	case 'a':
		side = 'a'
	case 'b':
		side = 'b'
	}
	return side, trim(head[:len(head)-1])
}
