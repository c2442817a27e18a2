package fastener

import (
	"strconv"
	"strings"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// TPI returns the pitch of n threads per inch, n from 0.1 to 10 000.
func TPI(n float64) (units.Length, error) {
	if !(n >= 0.1 && n <= 1e4) {
		return 0, fault.Fault{Code: fault.OutOfRange, Path: "threads per inch", Value: strconv.FormatFloat(n, 'g', 6, 64), Unit: "tpi", Rule: "0.1 to 10000"}
	}
	return units.Millimetres(25.4 / n), nil
}

// ParsePitch reads a pitch as a length, "1.25 mm", or per inch, "26 tpi".
func ParsePitch(s string) (units.Length, error) {
	head, per := cutPerInch(s)
	if !per {
		return units.ParseLength(s)
	}
	n, err := units.ParseRatio(strings.TrimSpace(head))
	if err != nil {
		return 0, err
	}
	return TPI(n.SI())
}

// cutPerInch takes the words for threads per inch off the end.
func cutPerInch(s string) (head string, per bool) {
	s = strings.ToLower(strings.TrimSpace(s))
	for _, words := range [...]string{"tpi", "t.p.i.", "threads per inch", "threads an inch"} {
		if head, per = strings.CutSuffix(s, words); per {
			return head, true
		}
	}
	return s, false
}

// ReadPitch reads a pitch taken with a thread gauge: "26 tpi", "1.25 mm" or
// "1.25 mm ± 0.01". Empty text, or "-", is a reading not taken.
func ReadPitch(s string, with measure.Instrument[units.Length]) (measure.Reading[units.Length], error) {
	head, per := cutPerInch(s)
	if !per {
		return measure.Read(s, with)
	}
	p, err := ParsePitch(head + "tpi")
	if err != nil {
		return measure.Reading[units.Length]{}, err
	}
	return measure.By(p, with).As(s), nil
}
