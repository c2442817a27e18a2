package job

import (
	"bytes"
	"encoding/json"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// MarshalJSON returns the report as data. The text of a figure that was worked out
// is told to six significant digits, for whoever shows it; its value has them all.
// What a reader of the bench wrote keeps his own digits.
func (r Report) MarshalJSON() ([]byte, error) {
	type plain Report
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(plain(r)); err != nil {
		return nil, err
	}
	return long.ReplaceAllFunc(b.Bytes(), short), nil
}

// long is the text of a quantity with a decimal figure at its head, as the
// quantities and readings write themselves.
var long = regexp.MustCompile(`"text":"-?[0-9]+\.[0-9]+(e[-+]?[0-9]+)?[^"]*","value":`)

// figure is the figure at its head.
var figure = regexp.MustCompile(`-?[0-9]+\.[0-9]+(e[-+]?[0-9]+)?`)

// A figure of more than nine digits was worked out and not written by anybody; it is
// told in six.
const (
	digits  = 6
	written = 9
)

// short tells the figure in fewer digits, if it has more than anybody reads.
func short(text []byte) []byte {
	at := figure.FindIndex(text)
	if at == nil {
		return text
	}
	was := string(text[at[0]:at[1]])
	mantissa, _, _ := strings.Cut(was, "e")
	if len(strings.TrimLeft(strings.ReplaceAll(mantissa, ".", ""), "-0")) <= written {
		return text
	}
	x, err := strconv.ParseFloat(was, 64)
	if err != nil {
		return text
	}
	now := "0" // of no unit here is a thousand-millionth part worth telling
	if math.Abs(x) >= 1e-9 {
		now = strconv.FormatFloat(x, 'g', digits, 64)
		if y, err := strconv.ParseFloat(now, 64); err == nil { // no zeros at the end, no exponent for a large one
			now = strconv.FormatFloat(y, 'g', -1, 64)
			if math.Abs(y) >= 1 && math.Abs(y) < 1e9 {
				now = strconv.FormatFloat(y, 'f', -1, 64)
			}
		}
	}
	return append(append(append([]byte(nil), text[:at[0]]...), now...), text[at[1]:]...)
}
