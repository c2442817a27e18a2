package ignition

import (
	"strings"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// ReadWhere reads a place of the spark as books and mechanics write it: "38 BTDC ±
// 1°", "11 mm", "11 mm BTDC ± 0.1", "7/16 in before TDC", "60 mm on the rim". Without
// ± degrees carry a disc's doubt, travel a dial gauge's, a rim a rule's. Empty text or
// "-" is not taken. The error is a fault.Fault.
func ReadWhere(text string) (Where, error) {
	t := strings.TrimSpace(text)
	if t == "" || t == "-" {
		return Where{}, nil
	}
	for _, words := range [...]string{"on the rim", "on rim", "rim"} {
		if head, ok := strings.CutSuffix(t, words); ok {
			r, err := measure.Read(head, measure.Rule())
			return Where{Rim: r}, badWhere(t, r.Taken(), err)
		}
	}
	if at, err := measure.ReadPosition(t, measure.DegreeDisc()); err == nil {
		return Where{At: at}, nil
	} else if !strings.ContainsAny(t, "mi\"'") { // no unit of length in it
		return Where{}, err
	}
	length := t
	for _, words := range [...]string{"before TDC", "BTDC", "btdc"} {
		if head, tail, ok := strings.Cut(t, words); ok {
			length = strings.TrimSpace(head) + " " + strings.TrimSpace(tail)
			break
		}
	}
	r, err := measure.Read[units.Length](length, measure.DialGauge())
	return Where{Travel: r}, badWhere(t, r.Taken(), err)
}

func badWhere(text string, taken bool, err error) error {
	if err == nil && taken {
		return nil
	}
	f := fault.Fault{Code: fault.BadForm, Rule: "expected degrees, piston travel or a distance on the rim, such as 38 BTDC, 11 mm BTDC or 60 mm on the rim"}
	if all := fault.Faults(err); len(all) > 0 && all[0].Code != fault.NotANumber {
		f = all[0]
	}
	f.Value = text
	return f
}

// MustReadWhere is [ReadWhere] for text fixed in a program; it panics on bad text.
func MustReadWhere(text string) Where {
	w, err := ReadWhere(text)
	if err != nil {
		panic(err)
	}
	return w
}

// UnmarshalText reads what [ReadWhere] reads, so that a place may stand as one text in
// a file.
func (w *Where) UnmarshalText(b []byte) error {
	v, err := ReadWhere(string(b))
	if err == nil {
		*w = v
	}
	return err
}

// String returns the user's own text for the figure, or "not taken".
func (w Where) String() string {
	switch {
	case w.At.Taken():
		return w.At.Text()
	case w.Travel.Taken():
		return w.Travel.Text() + " before TDC"
	case w.Rim.Taken():
		return w.Rim.Text() + " on the rim"
	}
	return "not taken"
}
