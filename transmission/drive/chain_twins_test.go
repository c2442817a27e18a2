package drive

import (
	"strings"
	"testing"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// A twin has the leader's pitch to 10 µm and its width to less than 2 mm. It runs
// on the same sprockets if width and roller are within 50 µm, does not seat if the
// roller is 0.2 mm off, and otherwise differs in width. The figures are such that
// their differences are exact, at each limit and on either side of it.
func TestTwinsAtTheirLimits(t *testing.T) {
	chain := func(number string, pitch, width, roller float64) refdata.Chain {
		return refdata.Chain{Number: number, Pitch: units.Millimetres(pitch), InnerWidth: units.Millimetres(width), Roller: units.Millimetres(roller)}
	}
	for _, c := range []struct {
		what       string
		lead, twin refdata.Chain
		why        string // "": no twin
	}{
		{"alike", chain("a", 1, 1, 1), chain("b", 1, 1, 1), "same pitch, width and roller"},
		{"10 µm of pitch", chain("a", 0.01, 1, 1), chain("b", 0.02, 1, 1), "same pitch, width and roller"},
		{"11 µm of pitch", chain("a", 1, 1, 1), chain("b", 1.011, 1, 1), ""},
		{"2 mm of width", chain("a", 1, 2, 1), chain("b", 1, 4, 1), ""},
		{"1.9 mm of width", chain("a", 1, 2, 1), chain("b", 1, 3.9, 1), "inner width of 3.90 mm in place of 2.00 mm"},
		{"49 µm of width", chain("a", 1, 1, 1), chain("b", 1, 1.049, 1), "same pitch, width and roller"},
		{"50 µm of width", chain("a", 1, 0.05, 1), chain("b", 1, 0.1, 1), "inner width of"},
		{"49 µm of roller", chain("a", 1, 1, 1), chain("b", 1, 1, 1.049), "same pitch, width and roller"},
		{"50 µm of roller", chain("a", 1, 1, 0.05), chain("b", 1, 1, 0.1), "inner width of"},
		{"199 µm of roller", chain("a", 1, 1, 1), chain("b", 1, 1, 1.199), "inner width of"},
		{"200 µm of roller", chain("a", 1, 1, 0.2), chain("b", 1, 1, 0.4), "roller of 0.40 mm in place of 0.20 mm"},
	} {
		r := measure.Ranking{Odds: []measure.Odds{{Key: "a", Share: 0.7}, {Key: "b", Share: 0.3}}}
		got := twins(r, map[string]refdata.Chain{"a": c.lead, "b": c.twin})
		if c.why == "" {
			if len(got) != 0 {
				t.Errorf("%s: %+v", c.what, got)
			}
			continue
		}
		if len(got) != 1 || got[0].Number != "b" || !strings.HasPrefix(got[0].Why, c.why) {
			t.Errorf("%s: %+v, want %q", c.what, got, c.why)
		}
	}
}
