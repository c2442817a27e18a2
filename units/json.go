package units

import (
	"strconv"

	"example.com/benchbook/units/fault"
)

// toJSON writes the one JSON form of a quantity: {text, value, unit}.
func toJSON(k *kind, v float64, unit string) ([]byte, error) {
	t, err := checked(k, nil, v)
	if err != nil {
		return nil, err
	}
	b := append([]byte(nil), `{"text":`...)
	b = strconv.AppendQuote(b, string(t))
	b = append(b, `,"value":`...)
	b = strconv.AppendFloat(b, v, 'g', -1, 64)
	b = append(b, `,"unit":`...)
	b = strconv.AppendQuote(b, unit)
	return append(b, '}'), nil
}

// fromJSON reads a JSON string, or the "text" member of a JSON object. It sees
// only JSON that a decoder has already found to be well formed.
func fromJSON(k *kind, b []byte) (float64, error) {
	bad := k.fail(fault.BadForm, string(b), "expected text such as \""+k.example+"\"")
	s := string(b)
	if s == "null" {
		return 0, bad
	}
	if s != "" && s[0] == '{' {
		var ok bool
		if s, ok = textMember(s[1:]); !ok {
			return 0, bad
		}
	}
	t, err := strconv.Unquote(s)
	if err != nil {
		return 0, bad
	}
	v, _, err := parse(k, t)
	return v, err
}

// textMember returns the quoted value of the top-level key "text".
func textMember(s string) (string, bool) {
	key := ""
	depth := 0
	for i := 0; i < len(s); i++ {
		switch s[i] {
		case '{', '[':
			depth++
		case '}', ']':
			depth--
		case ',':
			if depth == 0 {
				key = ""
			}
		case '"':
			j := i + 1
			for j < len(s) && s[j] != '"' {
				if s[j] == '\\' {
					j++
				}
				j++
			}
			if j >= len(s) {
				return "", false
			}
			if depth == 0 {
				if key == `"text"` {
					return s[i : j+1], true
				}
				key = s[i : j+1]
			}
			i = j
		}
	}
	return "", false
}
