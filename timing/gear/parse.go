package gear

import (
	"strconv"
	"strings"

	"example.com/benchbook/units/fault"
)

const trainRule = "expected teeth such as 24:48, with an idler 24:35:48, on one spindle 24:32, 30:45, a chain 17 chain 34, a ring 30 in 90"

// ParseTrain reads a train as teeth: a colon where wheels mesh, a comma where the
// next wheel is fixed to the spindle of the one before, "chain" for sprockets and
// "in" for a ring with inside teeth: "24:48", "24:35:48", "24:32, 30:45". The error
// is a fault of the text, or those of [Train.Err].
func ParseTrain(s string) (Train, error) {
	fail := func() (Train, error) {
		return Train{}, fault.Fault{Code: fault.BadForm, Path: "train", Value: s, Unit: "teeth", Rule: trainRule}
	}
	if len(s) > 1000 || strings.TrimSpace(s) == "" {
		return fail()
	}
	var t Train
	for group := range strings.SplitSeq(s, ",") {
		words := strings.Fields(strings.ReplaceAll(group, ":", " : "))
		if len(words) < 3 || len(words)%2 == 0 {
			return fail()
		}
		before, ok := teeth(words[0])
		for i := 1; i < len(words); i += 2 {
			next, ok2 := teeth(words[i+1])
			if !ok || !ok2 {
				return fail()
			}
			var link Link
			switch words[i] {
			case ":":
				link = External
			case "in":
				link = Internal
			case "chain":
				link = Chain
			default:
				return fail()
			}
			t.pairs = append(t.pairs, Pair{Driver: before, Driven: next, Link: link, Idler: i > 1})
			before = next
		}
	}
	if err := t.Err(); err != nil {
		return Train{}, err
	}
	return t, nil
}

// teeth reads a whole number of at most six digits.
func teeth(s string) (int, bool) {
	n, err := strconv.Atoi(s)
	return n, err == nil && len(s) <= 6 && s[0] != '+' && s[0] != '-'
}

// MarshalText returns the text of String; a train with faults is an error.
func (t Train) MarshalText() ([]byte, error) {
	if err := t.Err(); err != nil {
		return nil, err
	}
	return []byte(t.String()), nil
}

// UnmarshalText reads what [ParseTrain] reads; empty text is the zero Train.
func (t *Train) UnmarshalText(b []byte) error {
	if len(b) == 0 {
		*t = Train{}
		return nil
	}
	u, err := ParseTrain(string(b))
	if err == nil {
		*t = u
	}
	return err
}
