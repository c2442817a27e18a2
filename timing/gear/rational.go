package gear

import (
	"math"
	"math/bits"
	"strconv"
	"strings"

	"example.com/benchbook/units/fault"
)

// Rational is a whole-number fraction in lowest terms: the ratio of a train
// or an angle in degrees that must stay exact. Rationals are comparable with ==.
// The zero value is 0. A result too large for 63 bits becomes invalid, which
// [Rational.Valid] tells; nothing wraps round silently.
type Rational struct {
	num int64
	den int64 // one less than the denominator, so that the zero value is 0/1; below zero: invalid
}

// NewRational returns num/den in lowest terms. It is invalid if den is zero.
func NewRational(num, den int64) Rational {
	if den == 0 || num == -1<<63 || den == -1<<63 {
		return Rational{den: -1}
	}
	if den < 0 {
		num, den = -num, -den
	}
	g := gcd(num, den)
	return Rational{num: num / g, den: den/g - 1}
}

// Num returns the numerator; it carries the sign.
func (r Rational) Num() int64 { return r.num }

// Den returns the denominator, above zero; 0 if r is invalid.
func (r Rational) Den() int64 { return r.den + 1 }

// Valid reports whether r is a number.
func (r Rational) Valid() bool { return r.den >= 0 }

// Float returns r as the nearest float64 where numerator and denominator are
// below 2^53; 0 if r is invalid.
func (r Rational) Float() float64 {
	if !r.Valid() {
		return 0
	}
	return float64(r.num) / float64(r.Den())
}

// String returns text such as "1/2", "-3" or "invalid".
func (r Rational) String() string {
	switch {
	case !r.Valid():
		return "invalid"
	case r.den == 0:
		return strconv.FormatInt(r.num, 10)
	}
	return strconv.FormatInt(r.num, 10) + "/" + strconv.FormatInt(r.Den(), 10)
}

// MarshalText returns the text of String.
func (r Rational) MarshalText() ([]byte, error) { return []byte(r.String()), nil }

// UnmarshalText reads a whole number or a fraction, "-3" or "1/2".
func (r *Rational) UnmarshalText(b []byte) error {
	num, den, isFraction := strings.Cut(string(b), "/")
	if !isFraction {
		den = "1"
	}
	p, err1 := strconv.ParseInt(num, 10, 64)
	q, err2 := strconv.ParseInt(den, 10, 64)
	v := NewRational(p, q)
	if err1 != nil || err2 != nil || q < 1 || !v.Valid() {
		return fault.Fault{Code: fault.BadForm, Path: "ratio", Value: string(b), Rule: "expected a whole number or a fraction, such as 2 or 1/2"}
	}
	*r = v
	return nil
}

// Times returns r times s.
func (r Rational) Times(s Rational) Rational {
	if !r.Valid() || !s.Valid() {
		return Rational{den: -1}
	}
	// Cross-cancel first, so that only a product that truly is too large fails.
	g, h := gcd(r.num, s.Den()), gcd(s.num, r.Den())
	num, ok1 := times(r.num/g, s.num/h)
	den, ok2 := times(r.Den()/h, s.Den()/g)
	if !ok1 || !ok2 {
		return Rational{den: -1}
	}
	return NewRational(num, den)
}

// Over returns r divided by s, invalid if s is zero.
func (r Rational) Over(s Rational) Rational {
	if !s.Valid() {
		return s
	}
	return r.Times(NewRational(s.Den(), s.num))
}

// Plus returns r plus s.
func (r Rational) Plus(s Rational) Rational {
	if !r.Valid() || !s.Valid() {
		return Rational{den: -1}
	}
	g := gcd(r.Den(), s.Den())
	a, ok1 := times(r.num, s.Den()/g)
	b, ok2 := times(s.num, r.Den()/g)
	den, ok3 := times(r.Den(), s.Den()/g)
	sum := a + b
	if !ok1 || !ok2 || !ok3 || (a^sum)&(b^sum) < 0 { // a sum of another sign than both went round
		return Rational{den: -1}
	}
	return NewRational(sum, den)
}

// Abs returns r without its sign.
func (r Rational) Abs() Rational {
	r.num = max(r.num, -r.num)
	return r
}

// Step returns the greatest amount of which both r and s are whole multiples,
// the gcd of two fractions: gcd(u/v, w/x) = gcd(u x, w v)/(v x). It is the
// finest shift that moves of r and of s can make between them.
func (r Rational) Step(s Rational) Rational {
	if !r.Valid() || !s.Valid() {
		return Rational{den: -1}
	}
	g := gcd(r.Den(), s.Den())
	a, ok1 := times(r.num, s.Den()/g)
	b, ok2 := times(s.num, r.Den()/g)
	den, ok3 := times(r.Den(), s.Den()/g)
	if !ok1 || !ok2 || !ok3 {
		return Rational{den: -1}
	}
	return NewRational(gcd(a, b), den)
}

func gcd(a, b int64) int64 {
	a, b = max(a, -a), max(b, -b)
	for b != 0 {
		a, b = b, a%b
	}
	return a
}

// times is a product that tells when it does not fit.
func times(a, b int64) (int64, bool) {
	hi, lo := bits.Mul64(uint64(max(a, -a)), uint64(max(b, -b)))
	if hi != 0 || lo > math.MaxInt64 {
		return 0, false
	}
	if a^b < 0 {
		return -int64(lo), true
	}
	return int64(lo), true
}

// lcm is the least common multiple of two positive numbers.
func lcm(a, b int64) (int64, bool) {
	if a == 0 || b == 0 {
		return 0, true
	}
	return times(a/gcd(a, b), b)
}
