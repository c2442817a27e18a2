package measure

import "unicode/utf8"

// quote appends s as a JSON string. What is no UTF-8 becomes the replacement
// character. The quoting of Go's own strings will not do: JSON has no \x00 or \a.
func quote(b []byte, s string) []byte {
	const digits = "0123456789abcdef"
	b = append(b, '"')
	for _, c := range s {
		switch {
		case c == '"' || c == '\\':
			b = append(b, '\\', byte(c))
		case c < ' ' || c == 0x7f:
			b = append(b, '\\', 'u', '0', '0', digits[c>>4], digits[c&15])
		default:
			b = utf8.AppendRune(b, c)
		}
	}
	return append(b, '"')
}
