package gear_test

import (
	"math"
	"math/big"
	"testing"

	"example.com/benchbook/timing/gear"
	"pgregory.net/rapid"
)

func toBig(r gear.Rational) *big.Rat { return big.NewRat(r.Num(), r.Den()) }

// holds reports whether a fraction has numerator and denominator within 63 bits, the
// least integer apart.
func holds(x *big.Rat) bool {
	return x.Num().IsInt64() && x.Denom().IsInt64() && x.Num().Int64() != math.MinInt64
}

// commonMeasure is the greatest amount of which two fractions are whole multiples.
func commonMeasure(x, y *big.Rat) *big.Rat {
	den := new(big.Int).Mul(x.Denom(), y.Denom())
	a := new(big.Int).Mul(x.Num(), y.Denom())
	b := new(big.Int).Mul(y.Num(), x.Denom())
	return new(big.Rat).SetFrac(new(big.Int).GCD(nil, nil, a.Abs(a), b.Abs(b)), den)
}

// Rationals do what math/big does, and say so when 63 bits do not hold it: products
// and quotients exactly then, sums and common measures of small ones always, of large
// ones they may give up but never give another figure.
func TestRationalAgainstBig(t *testing.T) { rapid.Check(t, checkRational) }

func FuzzRational(f *testing.F) {
	fuzzBytes(f)
	f.Fuzz(rapid.MakeFuzz(checkRational))
}

func checkRational(t *rapid.T) {
	part := rapid.OneOf(rapid.Int64Range(-12, 12), rapid.Int64Range(-1e6, 1e6), rapid.Int64Range(-math.MaxInt64, math.MaxInt64),
		rapid.Map(rapid.Int64Range(0, 3), func(k int64) int64 { return math.MaxInt64 - k }))
	draw := func(name string) gear.Rational {
		den := part.Filter(func(x int64) bool { return x != 0 }).Draw(t, name+" below")
		num := part.Draw(t, name+" above")
		r := gear.NewRational(num, den)
		if want := new(big.Rat).SetFrac(big.NewInt(num), big.NewInt(den)); !r.Valid() || toBig(r).Cmp(want) != 0 || r.Den() != want.Denom().Int64() {
			t.Fatalf("%d/%d is %v", num, den, r)
		}
		return r
	}
	r, s := draw("r"), draw("s")
	small := func(x gear.Rational) bool { return x.Den() <= 1e6 && toBig(x.Abs()).Cmp(big.NewRat(1e6, 1)) <= 0 }
	for _, c := range []struct {
		name  string
		got   gear.Rational
		want  *big.Rat
		exact bool // valid whenever 63 bits hold it
	}{
		{"times", r.Times(s), new(big.Rat).Mul(toBig(r), toBig(s)), true},
		{"plus", r.Plus(s), new(big.Rat).Add(toBig(r), toBig(s)), small(r) && small(s)},
		{"step", r.Step(s), commonMeasure(toBig(r), toBig(s)), small(r) && small(s)},
		{"abs", r.Abs(), new(big.Rat).Abs(toBig(r)), true},
	} {
		if c.got.Valid() && toBig(c.got).Cmp(c.want) != 0 || c.exact && c.got.Valid() != holds(c.want) || !holds(c.want) && c.got.Valid() {
			t.Fatalf("%v %s %v: %v, want %v", r, c.name, s, c.got, c.want)
		}
	}
	if s.Num() == 0 {
		if r.Over(s).Valid() {
			t.Fatalf("%v over nothing", r)
		}
	} else if want := new(big.Rat).Quo(toBig(r), toBig(s)); r.Over(s).Valid() != holds(want) || holds(want) && toBig(r.Over(s)).Cmp(want) != 0 {
		t.Fatalf("%v over %v: %v", r, s, r.Over(s))
	}
	var back gear.Rational
	if text, _ := r.MarshalText(); back.UnmarshalText(text) != nil || back != r {
		t.Fatalf("%s reads as %v", text, back)
	}
}

// The edges of 63 bits: 2^63 - 1 = 7 x 1317624576693539401, 2^63 + 1 = 3 x
// 3074457345618258603; and sums to them and past them.
func TestEdgesOf63Bits(t *testing.T) {
	whole := func(n int64) gear.Rational { return gear.NewRational(n, 1) }
	most := whole(math.MaxInt64)
	invalid := gear.NewRational(1, 0)
	for _, c := range []struct {
		name string
		got  gear.Rational
		want string
	}{
		{"the most as a product", whole(7).Times(whole(1317624576693539401)), "9223372036854775807"},
		{"its negative", whole(-7).Times(whole(1317624576693539401)), "-9223372036854775807"},
		{"one more", whole(2).Times(whole(1 << 62)), "invalid"},
		{"two more", whole(3).Times(whole(3074457345618258603)), "invalid"},
		{"the most as a sum", whole(math.MaxInt64 - 1).Plus(whole(1)), "9223372036854775807"},
		{"one more", most.Plus(whole(1)), "invalid"},
		{"the least", whole(-math.MaxInt64 + 1).Plus(whole(-1)), "-9223372036854775807"},
		{"one less", whole(-math.MaxInt64).Plus(whole(-1)), "invalid"},
		{"two less", whole(-math.MaxInt64).Plus(whole(-2)), "invalid"},
		{"opposites", most.Plus(whole(-math.MaxInt64)), "0"},
		{"a denominator too large", gear.NewRational(1, math.MaxInt64).Plus(gear.NewRational(1, math.MaxInt64-1)), "invalid"},
		{"a step too fine", gear.NewRational(1, math.MaxInt64).Step(gear.NewRational(1, math.MaxInt64-1)), "invalid"},
		{"a step too great", most.Step(gear.NewRational(1, 2)), "invalid"},
		{"of a negative", whole(-4).Step(whole(-6)), "2"},
		{"no number times", invalid.Times(whole(1)), "invalid"}, {"times no number", whole(1).Times(invalid), "invalid"},
		{"no number plus", invalid.Plus(whole(1)), "invalid"}, {"plus no number", whole(1).Plus(invalid), "invalid"},
		{"no number's step", invalid.Step(whole(1)), "invalid"}, {"a step of no number", whole(1).Step(invalid), "invalid"},
		{"over no number", whole(1).Over(invalid), "invalid"},
		{"the least integer", gear.NewRational(math.MinInt64, 3), "invalid"}, {"below", gear.NewRational(3, math.MinInt64), "invalid"},
	} {
		if got := c.got.String(); got != c.want || c.got.Valid() != (c.want != "invalid") {
			t.Errorf("%s: %s, want %s", c.name, got, c.want)
		}
	}
	if invalid.Float() != 0 || invalid.Den() != 0 {
		t.Error(invalid.Float(), invalid.Den())
	}
	var r gear.Rational
	for text, want := range map[string]string{"-3": "-3", "3/1": "3", "6/4": "3/2", "0": "0"} {
		if err := r.UnmarshalText([]byte(text)); err != nil || r.String() != want {
			t.Errorf("%s: %v, %v", text, r, err)
		}
	}
	for _, bad := range []string{"", "1/0", "1/-2", "1/2/3", "-9223372036854775808", "1/9223372036854775808"} {
		if r.UnmarshalText([]byte(bad)) == nil {
			t.Errorf("%q was taken", bad)
		}
	}
}
