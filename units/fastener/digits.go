package fastener

import "strconv"

// fraction writes n/den in lowest terms, "1/4", "5/16", "1", for n from 1 to den, den
// a power of two.
func fraction(n, den int) string {
	for n%2 == 0 {
		n, den = n/2, den/2
	}
	if den == 1 {
		return strconv.Itoa(n)
	}
	return strconv.Itoa(n) + "/" + strconv.Itoa(den)
}

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
