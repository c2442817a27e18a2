package units_test

import (
	"testing"

	"example.com/benchbook/units"
)

// TestFiguresAtTheEdge reads figures that end where the text does, or where a longer
// form might have begun; each expected figure is worked from 25.4 mm to the inch.
func TestFiguresAtTheEdge(t *testing.T) {
	for _, c := range []struct {
		text string
		mm   float64
	}{
		{"\u00a05 mm\u00a0", 5}, {"\u20035 mm\u2003", 5}, {"\t5 mm\r", 5}, {"5\t\rmm", 5},
		{"1 4/4 in", -1}, {"1 5/4 in", -1}, {"1 3/0 in", -1}, {"1 in/", -1}, {"5/ in", -1}, {"1e mm", -1},
		{"3 ft 6 ft", -1}, {"1 ft 12 in", -1}, {"1 ft 11.5 in", 23.5 * 25.4},
	} {
		l, err := units.ParseLength(c.text)
		if c.mm < 0 {
			if err == nil {
				t.Errorf("%q reads as %v", c.text, l)
			}
		} else if err != nil || (l-units.Length(c.mm)).Abs() > 1e-12 { // two roundings of half a metre at most
			t.Errorf("%q reads as %v, %v; want %v mm", c.text, l, err, c.mm)
		}
	}
}

// TestWholeInchesAreWritten in lowest terms, nought among them.
func TestWholeInchesAreWritten(t *testing.T) {
	for _, c := range []struct {
		l    units.Length
		want string
	}{{0, "0 in"}, {25.4, "1 in"}, {-25.4, "-1 in"}, {-12.7, "-1/2 in"}, {12.7, "1/2 in"}} {
		if f, _, err := units.NearestFraction(c.l, 64); err != nil || f.String() != c.want {
			t.Errorf("%v is %v, %v; want %s", c.l, f, err, c.want)
		}
	}
}
