package units_test

import (
	"strings"
	"testing"

	"example.com/benchbook/units"
	"pgregory.net/rapid"
)

// The text in any unit reads back to the figure within the last digit of its
// uncertainty, and names the unit.
func TestWithUncertaintyInReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		unit := rapid.SampledFrom([]units.Length{units.Millimetre, units.Inch, units.Thou, units.Metre, units.Foot}).Draw(t, "unit")
		q := units.Millimetres(rapid.Float64Range(-5000, 5000).Draw(t, "q"))
		u := units.Millimetres(rapid.Float64Range(1e-4, 10).Draw(t, "u"))
		text := units.WithUncertaintyIn(q, u, unit)
		value, rest, ok := strings.Cut(text, " ± ")
		symbol := rest[strings.LastIndex(rest, " ")+1:]
		back, err := units.ParseLength(value + " " + symbol)
		// One significant digit of u, so that the value is off by half of it at most.
		if !ok || err != nil || (back-q).Abs() > u.Times(0.51) {
			t.Fatalf("%v in %v is %q, read as %v, %v", q, unit, text, back, err)
		}
		if unit == units.Thou && symbol != "thou" {
			t.Fatalf("%q is not in thou", text)
		}
	})
}

func TestWithUncertaintyInOtherUnits(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{units.WithUncertaintyIn(units.Millimetres(25.4), units.Millimetres(0.02), units.Millimetres(2)), "25.40 ± 0.02 mm"}, // no unit of 2 mm
		{units.WithUncertaintyIn(units.Celsius(20), units.Kelvins(1), units.Kelvins(1)), "20.0 ± 1.0 °C"},
		{units.WithUncertaintyIn(units.Turns(9.25), units.Turns(0.05), units.Turn), "9.25 ± 0.05 turn"},
		{units.WithUncertaintyIn(units.Turns(9.25), 0, units.Turn), "9.25 turn"},
		{units.WithUncertaintyIn(units.CrankDegrees(15), units.CrankDegrees(1), units.CrankDegree), "15.0 ± 1.0° crank"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}
