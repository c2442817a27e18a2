package drive

import (
	"encoding/json"
	"math/bits"
	"strconv"
	"strings"

	"example.com/benchbook/units/fault"
)

// Ratio is an exact ratio of speeds, driver over driven, which is driven over
// driver in teeth: 46/19 turns the driver 46 times for 19 of the driven. It is
// comparable and in lowest terms. The zero value is no ratio.
type Ratio struct{ num, den int64 }

// NewRatio returns num/den in lowest terms. Errors: a part not above zero.
func NewRatio(num, den int64) (Ratio, error) {
	if num <= 0 || den <= 0 {
		return Ratio{}, fault.Fault{Code: fault.OutOfRange, Path: "ratio", Value: strconv.FormatInt(num, 10) + "/" + strconv.FormatInt(den, 10), Rule: "both parts must be above zero"}
	}
	g := gcd(num, den)
	return Ratio{num / g, den / g}, nil
}

// OneToOne returns 1/1, a gear that goes straight through.
func OneToOne() Ratio { return Ratio{1, 1} }

// ParseRatio reads "46/19", "46:19" or a decimal such as "2.42", which is taken
// as exactly 242/100. Errors: [fault.BadForm], or parts outside 1e-6 to 1e6.
func ParseRatio(s string) (Ratio, error) {
	t := strings.TrimSpace(s)
	bad := fault.Fault{Code: fault.BadForm, Path: "ratio", Value: s, Rule: "write teeth as 46/19, or a decimal such as 2.42"}
	a, b, two := strings.Cut(strings.ReplaceAll(t, ":", "/"), "/")
	if !two {
		b = "1"
	}
	n1, d1, ok1 := decimal(strings.TrimSpace(a))
	n2, d2, ok2 := decimal(strings.TrimSpace(b))
	if !ok1 || !ok2 {
		return Ratio{}, bad
	}
	// each part is at most 1e6 with 6 decimals, so the products fit
	return NewRatio(n1*d2, n2*d1)
}

// decimal reads digits with at most six of them on either side of the point.
func decimal(s string) (num, den int64, ok bool) {
	whole, part, _ := strings.Cut(s, ".")
	if len(whole) > 6 || len(part) > 6 || whole == "" && part == "" {
		return 0, 0, false
	}
	den = 1
	for _, c := range whole + part {
		if c < '0' || c > '9' {
			return 0, 0, false
		}
		num = num*10 + int64(c-'0')
	}
	for range part {
		den *= 10
	}
	return num, den, num > 0
}

// Num returns the numerator, in lowest terms.
func (r Ratio) Num() int64 { return r.num }

// Den returns the denominator, in lowest terms.
func (r Ratio) Den() int64 { return r.den }

// Float returns the ratio as the nearest float64; 0 if there is none.
func (r Ratio) Float() float64 {
	if r.den == 0 {
		return 0
	}
	return float64(r.num) / float64(r.den)
}

// Given reports whether there is a ratio.
func (r Ratio) Given() bool { return r.den != 0 }

// Inverse returns the ratio the other way round.
func (r Ratio) Inverse() Ratio { return Ratio{r.den, r.num} }

// Times returns the product, exact. It is an error if the parts no longer fit in
// 63 bits, or if either is no ratio.
func (r Ratio) Times(s Ratio) (Ratio, error) {
	if !r.Given() || !s.Given() {
		return Ratio{}, fault.Fault{Code: fault.Missing, Path: "ratio", Rule: "both ratios must be given"}
	}
	// cross-reduce first, so that only a product that cannot be reduced overflows
	g, h := gcd(r.num, s.den), gcd(s.num, r.den)
	n, ok1 := product(r.num/g, s.num/h)
	d, ok2 := product(r.den/h, s.den/g)
	if !ok1 || !ok2 {
		return Ratio{}, fault.Fault{Code: fault.OutOfRange, Path: "ratio", Value: r.String() + " × " + s.String(), Rule: "too many digits to stay exact"}
	}
	return Ratio{n, d}, nil
}

// Over returns r/s, exact: the step between two gears. Errors as for
// [Ratio.Times].
func (r Ratio) Over(s Ratio) (Ratio, error) { return r.Times(s.Inverse()) }

// Compare returns -1, 0 or 1 as r is less than, the same as, or more than s.
func (r Ratio) Compare(s Ratio) int {
	ah, al := bits.Mul64(uint64(r.num), uint64(s.den))
	bh, bl := bits.Mul64(uint64(s.num), uint64(r.den))
	switch {
	case ah < bh || ah == bh && al < bl:
		return -1
	case ah == bh && al == bl:
		return 0
	}
	return 1
}

// String returns the fraction and its value: "46/19 (2.421)"; a whole ratio
// without the bracket.
func (r Ratio) String() string {
	switch {
	case !r.Given():
		return "no ratio"
	case r.den == 1:
		return strconv.FormatInt(r.num, 10)
	}
	return strconv.FormatInt(r.num, 10) + "/" + strconv.FormatInt(r.den, 10) + " (" + strconv.FormatFloat(r.Float(), 'f', 3, 64) + ")"
}

// MarshalJSON writes {text, value, num, den}; null if there is none.
func (r Ratio) MarshalJSON() ([]byte, error) {
	if !r.Given() {
		return []byte("null"), nil
	}
	return json.Marshal(struct {
		Text  string  `json:"text"`
		Value float64 `json:"value"`
		Num   int64   `json:"num"`
		Den   int64   `json:"den"`
	}{r.String(), r.Float(), r.num, r.den})
}

func product(a, b int64) (int64, bool) {
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	return int64(lo), hi == 0 && lo < 1<<63
}

func gcd(a, b int64) int64 {
	for b != 0 {
		a, b = b, a%b
	}
	return a
}
