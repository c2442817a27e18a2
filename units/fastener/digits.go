package fastener

import "strconv"

// trimFloat writes a number without trailing zeros, to at most three decimals.
func trimFloat(x float64) string {
	s := strconv.FormatFloat(x, 'f', 3, 64)
	for s[len(s)-1] == '0' {
		s = s[:len(s)-1]
	}
	if s[len(s)-1] == '.' {
		s = s[:len(s)-1]
	}
	return s
}
