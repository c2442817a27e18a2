package drive_test

import (
	"math"
	"strings"
	"testing"

	"example.com/benchbook/transmission/drive"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// How sizes are read at the limits of each kind: section width, height over width
// and rim, in millimetres.
func TestTyreReadAtItsLimits(t *testing.T) {
	const in = 25.4
	for _, c := range []struct {
		code               string
		kind               drive.TyreKind
		width, aspect, rim float64
	}{
		{"1.5-19", drive.ImperialStandard, 1.5 * in, 1, 19 * in}, {"8-19", drive.ImperialStandard, 8 * in, 1, 19 * in},
		{"3.25-8", drive.ImperialStandard, 3.25 * in, 1, 8 * in}, {"3.25-30", drive.ImperialStandard, 3.25 * in, 1, 30 * in}, {"3.2500000-19", drive.ImperialStandard, 3.25 * in, 1, 19 * in},
		{"40/100-18", drive.MetricTyre, 40, 1, 18 * in}, {"360/30-15", drive.MetricTyre, 360, 0.3, 15 * in}, {"120/120-18", drive.MetricTyre, 120, 1.2, 18 * in},
		// outside inches by width from 20 in, width below 8; millimetres from 400 to
		// 900 by width from 40
		{"20x2.5", drive.BeadedEdge, 2.5 * in, 1, 15 * in}, {"26x7.9", drive.BeadedEdge, 7.9 * in, 1, 10.2 * in},
		{"400x80", drive.BeadedEdge, 80, 1, 240}, {"900x80", drive.BeadedEdge, 80, 1, 740}, {"700x40", drive.BeadedEdge, 40, 1, 620},
		// a vulgar fraction is below one, in sixteenths at the finest, after a whole
		// number; what is none belongs to the tail
		{"26 x 2 1/2", drive.BeadedEdge, 2.5 * in, 1, 21 * in}, {"26 x 2 3/16", drive.BeadedEdge, 2.1875 * in, 1, (26 - 4.375) * in},
		{"26 x 2 3/17", drive.BeadedEdge, 2 * in, 1, 22 * in}, {"26 x 2 2/2", drive.BeadedEdge, 2 * in, 1, 22 * in}, {"26 x 2 3/0", drive.BeadedEdge, 2 * in, 1, 22 * in}, {"26 x 2.5 1/2", drive.BeadedEdge, 2.5 * in, 1, 21 * in},
		{"3 1/4-19", drive.ImperialStandard, 3.25 * in, 1, 19 * in}, {"4.25/85-18", drive.ImperialLow, 4.25 * in, 0.85, 18 * in}, {"4.10-18", drive.ImperialLow, 4.1 * in, 0.9, 18 * in},
		// all that may stand between and after
		{"3.25A19", drive.ImperialStandard, 3.25 * in, 1, 19 * in}, {"120/90Z18", drive.MetricTyre, 120, 0.9, 18 * in}, {"120/90HRZ18", drive.MetricTyre, 120, 0.9, 18 * in},
		{"3.25-19 (54P-9/0) AZaz", drive.ImperialStandard, 3.25 * in, 1, 19 * in}, {"3.25-19A", drive.ImperialStandard, 3.25 * in, 1, 19 * in}, {"3.25-19Z", drive.ImperialStandard, 3.25 * in, 1, 19 * in},
		{"3.25-19 " + strings.Repeat("A", 32), drive.ImperialStandard, 3.25 * in, 1, 19 * in},
	} {
		ty, err := drive.ParseTyre(c.code)
		if err != nil {
			t.Error(err)
			continue
		}
		aspect, _ := ty.Aspect()
		if ty.Kind() != c.kind || math.Abs(ty.Width().Millimetres()-c.width) > 1e-9 || aspect != c.aspect || math.Abs(ty.Rim().Millimetres()-c.rim) > 1e-9 {
			t.Errorf("%q: %v, width %v, height %g, rim %v", c.code, ty.Kind(), ty.Width(), aspect, ty.Rim())
		}
	}
}

// What is refused is told why, in words that begin so.
func TestTyreRefusedWithItsReason(t *testing.T) {
	for code, want := range map[string]string{
		"":                                   "begin with the width",
		"fat":                                "begin with the width",
		"1.2.3-19":                           "begin with the width",
		"MT90-16":                            "a width by letters",
		"mt90-16":                            "a width by letters",
		"120/-18":                            "a slash must be followed",
		"3.25":                               "width and rim are parted",
		"120/90HRVB18":                       "width and rim are parted",
		"3.25-19(54P)":                       "width and rim are parted",
		"3.25-19 54P;":                       "width and rim are parted",
		"26 x 2 .5/2":                        "width and rim are parted",
		"3.25-19 " + strings.Repeat("A", 33): "too long",
		"1.4-19":                             "width must be 1.5 to 8 in",
		"8.25-19":                            "width must be 1.5 to 8 in",
		"26x8":                               "width must be 1.5 to 8 in",
		"19x2.5":                             "width must be 1.5 to 8 in",
		"399x80":                             "width must be 1.5 to 8 in",
		"901x70":                             "width must be 1.5 to 8 in",
		"700x39":                             "width must be 1.5 to 8 in",
		"39/100-18":                          "width must be 1.5 to 8 in",
		"361/30-15":                          "width must be 40 to 360 mm",
		"120/29-18":                          "height must be 30 to 120 %",
		"120/121-18":                         "height must be 30 to 120 %",
		"3.25-7.9":                           "rim must be 8 to 30 in",
		"3.25-30.1":                          "rim must be 8 to 30 in",
	} {
		_, err := drive.ParseTyre(code)
		f := fault.Faults(err)
		if len(f) != 1 || !strings.HasPrefix(f[0].Rule, want) {
			t.Errorf("%q: %v, want %q", code, err, want)
		}
	}
}

// Only a low section that does not say its height has it assumed.
func TestTyreHeightAssumed(t *testing.T) {
	for code, want := range map[string]bool{"4.10-18": true, "4.25/85-18": false, "3.25-19": false, "120/90-18": false, "26x2.5": false} {
		r := ok(ok(drive.ParseTyre(code))(t).Rolling())(t)
		assumed := false
		for _, a := range r.Basis.Assumed {
			assumed = assumed || a.What == "height of the section"
		}
		if assumed != want {
			t.Errorf("%s: height assumed %v", code, assumed)
		}
	}
}

// A share takes in the tyre just that far off.
func TestEquivalentsAtTheShare(t *testing.T) {
	from := ok(drive.ParseTyre("3.25-19"))(t)
	all := ok(from.Equivalents(0.03))(t)
	for _, e := range all {
		within := ok(from.Equivalents(math.Abs(e.Diameter)))(t)
		found := false
		for _, w := range within {
			found = found || w.Tyre == e.Tyre
		}
		if !found {
			t.Errorf("%v, %g off, is left out at that share", e.Tyre, e.Diameter)
		}
	}
}

// A size goes on the same rim if that is as wide across, and not if one of the two
// is held by beads and the other by wires.
func TestEquivalentsOfARim(t *testing.T) {
	from := ok(drive.ParseTyre("3.00-21"))(t)
	for _, e := range ok(from.Equivalents(0.2))(t) {
		same := e.Tyre.Kind() != drive.BeadedEdge && (e.Tyre.Rim()-21*units.Inch).Abs() < units.Micrometre
		if e.SameRim != same {
			t.Errorf("%v on %v: same rim %v", e.Tyre, e.Tyre.Rim(), e.SameRim)
		}
	}
}

// Rims less than a millimetre apart are one, by inches or by millimetres: 26x3
// leaves 508 mm.
func TestRimsAMillimetreApart(t *testing.T) {
	for code, want := range map[string]bool{"668.1x80": true, "668.9x80": true, "669x80": false} {
		found := false
		for _, e := range ok(ok(drive.ParseTyre(code))(t).Equivalents(0.05))(t) {
			if e.Tyre.Code() == "26x3" {
				found = true
				if e.SameRim != want {
					t.Errorf("%s: same rim %v", code, e.SameRim)
				}
			}
		}
		if !found {
			t.Errorf("%s: no 26x3", code)
		}
	}
}
