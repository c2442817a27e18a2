package units

import (
	"math"
	"strconv"

	"example.com/benchbook/units/fault"
)

var inf = math.Inf(1)

// Fraction is a length in inches as a workshop writes it: whole inches and a
// fraction in lowest terms. Its zero value is 0 in.
type Fraction struct {
	Negative        bool
	Whole, Num, Den int
}

// Length returns the fraction as a length, exact for denominators up to 64
// and lengths up to 4 in.
func (f Fraction) Length() Length {
	den := max(f.Den, 1)
	v := float64((f.Whole*den+f.Num)*127) / float64(den*5)
	if f.Negative {
		v = -v
	}
	return Length(v)
}

// String returns text such as "1 3/8 in".
func (f Fraction) String() string {
	var b []byte
	if f.Negative {
		b = append(b, '-')
	}
	if f.Whole != 0 || f.Num == 0 {
		b = strconv.AppendInt(b, int64(f.Whole), 10)
		if f.Num != 0 {
			b = append(b, ' ')
		}
	}
	if f.Num != 0 {
		b = strconv.AppendInt(b, int64(f.Num), 10)
		b = append(b, '/')
		b = strconv.AppendInt(b, int64(f.Den), 10)
	}
	return string(append(b, " in"...))
}

// NearestFraction returns the nearest whole multiple of 1/den inch to l, den a
// power of two from 1 to 1024, and what is left over: l less the fraction.
// Ties go away from zero. l must be below 10 km in size.
func NearestFraction(l Length, den int) (Fraction, Length, error) {
	var faults fault.List
	if den < 1 || den > 1024 || den&(den-1) != 0 {
		faults.Add(fault.Fault{Code: fault.OutOfRange, Path: "den", Value: strconv.Itoa(den), Rule: "a power of two from 1 to 1024"})
	}
	if !(math.Abs(float64(l)) < 1e7) {
		faults.Add(fault.Fault{Code: fault.OutOfRange, Path: "length", Value: l.String(), Unit: "mm", Rule: "below 10 km"})
	}
	if err := faults.Err(); err != nil {
		return Fraction{}, 0, err
	}
	n := int(math.Round(math.Abs(l.Inches()) * float64(den)))
	f := Fraction{Negative: l < 0 && n > 0, Whole: n / den, Num: n % den, Den: den}
	for f.Num%2 == 0 && f.Den > 1 && f.Num > 0 {
		f.Num, f.Den = f.Num/2, f.Den/2
	}
	if f.Num == 0 {
		f.Den = 1
	}
	return f, l - f.Length(), nil
}
