package job

import (
	"bytes"
	"encoding/json"
	"math"
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
	return shortened(b.Bytes()), nil
}

// A figure of more than nine digits was worked out and not written by anybody; it is
// told in six.
const (
	digits  = 6
	written = 9
)

// shortened tells in fewer digits the figure at the head of the text of every
// quantity and reading, which write themselves with their text first.
func shortened(data []byte) []byte {
	mark := []byte(`{"text":"`)
	out := make([]byte, 0, len(data))
	for {
		i := bytes.Index(data, mark)
		if i < 0 {
			return append(out, data...)
		}
		out = append(out, data[:i+len(mark)]...)
		data = data[i+len(mark):]
		n := 0
		for n < len(data) && (data[n] >= '0' && data[n] <= '9' || strings.IndexByte("+-.e", data[n]) >= 0) {
			n++
		}
		out = append(out, short(string(data[:n]))...)
		data = data[n:]
	}
}

func short(figure string) string {
	mantissa, _, _ := strings.Cut(figure, "e")
	if !strings.Contains(mantissa, ".") || len(strings.TrimLeft(strings.ReplaceAll(mantissa, ".", ""), "-0")) <= written {
		return figure
	}
	x, err := strconv.ParseFloat(figure, 64)
	if err != nil {
		return figure
	}
	if math.Abs(x) < 1e-9 { // of no unit here is a thousand-millionth part worth telling
		return "0"
	}
	x, _ = strconv.ParseFloat(strconv.FormatFloat(x, 'g', digits, 64), 64) // our own text reads
	if math.Abs(x) >= 1 && math.Abs(x) < 1e9 {
		return strconv.FormatFloat(x, 'f', -1, 64)
	}
	return strconv.FormatFloat(x, 'g', -1, 64)
}
