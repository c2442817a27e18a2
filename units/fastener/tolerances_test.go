package fastener

import (
	"math"
	"testing"

	"example.com/benchbook/units"
)

// TestPrintedUnifiedLimits: classes 2A and 2B as Machinery's Handbook prints them,
// from memory, in inches.
func TestPrintedUnifiedLimits(t *testing.T) {
	for _, c := range []struct {
		thread                                       string
		majorMax, majorMin, boltMax, boltMin         float64
		minorMin, minorMax, effectiveMin, effectiveM float64
	}{
		{"10-32 UNF", 0.1891, 0.1831, 0.1688, 0.1658, 0.156, 0.164, 0.1697, 0.1736},
		{"8-32 UNC", 0.1631, 0.1571, 0.1428, 0.1399, 0.130, 0.139, 0.1437, 0.1475},
		{"1/4-20 UNC", 0.2489, 0.2408, 0.2164, 0.2127, 0.196, 0.207, 0.2175, 0.2224},
		{"1/4-28 UNF", 0.2490, 0.2425, 0.2258, 0.2225, 0.211, 0.220, 0.2268, 0.2311},
		{"3/8-16 UNC", 0.3737, 0.3643, 0.3331, 0.3287, 0.307, 0.321, 0.3344, 0.3401},
		{"1/2-13 UNC", 0.4985, 0.4876, 0.4485, 0.4435, 0.417, 0.434, 0.4500, 0.4565},
	} {
		l, err := MustParse(c.thread).Limits(0)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range []struct {
			what        string
			got         units.Length
			want, slack float64
		}{
			// the standard rounds allowance, tolerance and basic size apart: 1.2 last
			// digits, of four; minor diameters are printed with three
			{"bolt major max", l.BoltMajorMax.Or(0), c.majorMax, 1.2e-4}, {"bolt major min", l.BoltMajorMin.Or(0), c.majorMin, 1.2e-4},
			{"bolt effective max", l.BoltEffectiveMax.Or(0), c.boltMax, 1.2e-4}, {"bolt effective min", l.BoltEffectiveMin.Or(0), c.boltMin, 1.2e-4},
			{"nut effective min", l.NutEffectiveMin.Or(0), c.effectiveMin, 1.2e-4}, {"nut effective max", l.NutEffectiveMax.Or(0), c.effectiveM, 1.2e-4},
			{"nut minor min", l.NutMinorMin.Or(0), c.minorMin, 6e-4}, {"nut minor max", l.NutMinorMax.Or(0), c.minorMax, 6e-4},
		} {
			if math.Abs(p.got.Inches()-p.want) > p.slack {
				t.Errorf("%s %s = %.5f in, printed %v", c.thread, p.what, p.got.Inches(), p.want)
			}
		}
	}
	// from 1/4 in the nut's minor tolerance is 0.25 p - 0.4 p²; at 8 tpi, the coarsest
	// there can be, the rule of smaller threads would give 0.0255 and not 0.025 in
	quarter, err := Of("1/4-8", UnifiedForm, units.Inches(0.25), units.Inches(0.125))
	if err != nil {
		t.Fatal(err)
	}
	l, _ := quarter.Limits(0)
	if got := (l.NutMinorMax.Or(0) - l.NutMinorMin.Or(0)).Inches(); math.Abs(got-0.025) > 1e-9 {
		t.Errorf("1/4-8: nut minor tolerance %v in", got)
	}
}

// TestPrintedMetricTolerances: class 6g/6H of ISO 965-1, from memory, in micrometres.
// The standard works with the mean of a range of diameters and rounds to preferred
// numbers, so that the formulas agree to 6 %; the fundamental deviation to 1 µm.
func TestPrintedMetricTolerances(t *testing.T) {
	of := func(name string, d, p float64) Thread {
		th, err := Of(name, MetricForm, units.Millimetres(d), units.Millimetres(p))
		if err != nil {
			t.Fatal(err)
		}
		return th
	}
	for _, c := range []struct {
		thread                                   Thread
		deviation, major, bolt, effective, minor float64 // zero: not in the class
	}{
		{of("M1x0.2", 1, 0.2), 17, 56, 0, 0, 0},
		{MustParse("M3"), 20, 106, 75, 100, 140},
		{MustParse("M5"), 24, 150, 95, 125, 200},
		{MustParse("M6"), 26, 180, 112, 150, 236},
		{MustParse("M8"), 28, 212, 118, 160, 265},
		{MustParse("M10"), 32, 236, 132, 180, 300},
		{MustParse("M12"), 34, 265, 150, 200, 335},
		{MustParse("M16"), 38, 280, 160, 212, 375},
	} {
		l, err := c.thread.Limits(0)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range []struct {
			what        string
			high, low   units.Length
			want, slack float64
		}{
			{"deviation", c.thread.Major(), l.BoltMajorMax.Or(0), c.deviation, 1},
			{"deviation of the flanks", l.NutEffectiveMin.Or(0), l.BoltEffectiveMax.Or(0), c.deviation, 1},
			{"major", l.BoltMajorMax.Or(0), l.BoltMajorMin.Or(0), c.major, 0.06 * c.major},
			{"bolt effective", l.BoltEffectiveMax.Or(0), l.BoltEffectiveMin.Or(0), c.bolt, 0.06 * c.bolt},
			{"nut effective", l.NutEffectiveMax.Or(0), l.NutEffectiveMin.Or(0), c.effective, 0.06 * c.effective},
			{"nut minor", l.NutMinorMax.Or(0), l.NutMinorMin.Or(0), c.minor, 0.06 * c.minor},
		} {
			if got := (p.high - p.low).Micrometres(); p.want != 0 && math.Abs(got-p.want) > p.slack {
				t.Errorf("%v %s: %.1f µm, printed %v", c.thread, p.what, got, p.want)
			}
		}
	}
	// 230 P^0.7 holds from 1 mm on; the rule below it would give 243 µm there
	l, _ := MustParse("M6").Limits(0)
	if got := (l.NutMinorMax.Or(0) - l.NutMinorMin.Or(0)).Micrometres(); math.Abs(got-230) > 1e-6 {
		t.Errorf("M6: nut minor tolerance %v µm", got)
	}
}

// TestWhitworthTolerancesByHand works the rule of BS 84 for threads whose roots come
// out even: 1 in by 16, engaged over 1 in, is T = 0.002 + 0.003 + 0.005/4 = 0.00625 in,
// the major diameter has T + 0.01/4 = 0.00875 in; engaged over 4 in T is 0.003 more.
func TestWhitworthTolerancesByHand(t *testing.T) {
	of := func(tpi float64) Thread {
		p, err := TPI(tpi)
		if err != nil {
			t.Fatal(err)
		}
		th, err := Of("1 in", WhitworthForm, units.Inch, p)
		if err != nil {
			t.Fatal(err)
		}
		return th
	}
	for length, more := range map[units.Length]float64{0: 0, units.Inch: 0, units.Inches(4): 0.003} {
		l, err := of(16).Limits(length)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range []struct {
			what      string
			high, low units.Length
			want      float64
		}{
			{"allowance", units.Inch, l.BoltMajorMax.Or(0), 0},
			{"major", l.BoltMajorMax.Or(0), l.BoltMajorMin.Or(0), 0.00875 + more},
			{"bolt effective", l.BoltEffectiveMax.Or(0), l.BoltEffectiveMin.Or(0), 0.00625 + more},
			{"nut effective", l.NutEffectiveMax.Or(0), l.NutEffectiveMin.Or(0), 0.00625 + more},
		} {
			if got := (p.high - p.low).Inches(); math.Abs(got-p.want) > 1e-12 {
				t.Errorf("over %v %s: %v in, want %v", length, p.what, got, p.want)
			}
		}
	}
	// an eighth of an inch by 16: the root of the diameter is a half, so 0.001 less
	small, err := Of("1/8 in", WhitworthForm, units.Inches(0.125), units.Inches(0.0625))
	if err != nil {
		t.Fatal(err)
	}
	l, _ := small.Limits(units.Inch)
	if got := (l.NutEffectiveMax.Or(0) - l.NutEffectiveMin.Or(0)).Inches(); math.Abs(got-0.00525) > 1e-12 {
		t.Errorf("1/8 in by 16: nut effective %v in", got)
	}
	// 0.2 p and 4, 5 or 7 thou for the minor diameter of the nut
	for tpi, thou := range map[float64]float64{40: 4, 26: 4, 24: 5, 22: 5, 20: 7, 16: 7, 8: 7} {
		l, _ := of(tpi).Limits(0)
		if got := (l.NutMinorMax.Or(0) - l.NutMinorMin.Or(0)).Thous(); math.Abs(got-200/tpi-thou) > 1e-9 {
			t.Errorf("%v tpi: nut minor tolerance %v thou, want %v", tpi, got, 200/tpi+thou)
		}
	}
}

// TestAssociationTolerances: BS 93 gives bolts of 0 to 10 BA 0.025 mm of allowance,
// smaller ones none, and nuts 0.375 p over the minor diameter; the rest is not known.
func TestAssociationTolerances(t *testing.T) {
	for name, allowance := range map[string]float64{"0 BA": 0.025, "2 BA": 0.025, "10 BA": 0.025, "11 BA": 0, "16 BA": 0} {
		th := MustParse(name)
		l, err := th.Limits(0)
		if err != nil {
			t.Fatal(err)
		}
		if got := (th.Major() - l.BoltMajorMax.Or(0)).Millimetres(); math.Abs(got-allowance) > 1e-12 {
			t.Errorf("%s: allowance %v", name, got)
		}
		if got := (l.NutMinorMax.Or(0) - l.NutMinorMin.Or(0)).Ratio(th.Pitch()); math.Abs(got-0.375) > 1e-12 {
			t.Errorf("%s: nut minor tolerance %v p", name, got)
		}
		if _, ok := l.BoltMajorMin.Get(); ok || l.Reason.Code != "limits-part" {
			t.Errorf("%s: %+v", name, l)
		}
	}
}

// TestSlackIsTheMiddleOfTheLimits: between a bolt and a nut of the middle of metric
// 6g/6H stand the allowance and half of both tolerances.
func TestSlackIsTheMiddleOfTheLimits(t *testing.T) {
	for _, name := range []string{"M3", "M6", "M10", "M20"} {
		th := MustParse(name)
		l, err := th.Limits(0)
		if err != nil {
			t.Fatal(err)
		}
		bolt := (l.BoltEffectiveMin.Or(0) + l.BoltEffectiveMax.Or(0)).Times(0.5)
		nut := (l.NutEffectiveMin.Or(0) + l.NutEffectiveMax.Or(0)).Times(0.5)
		m, err := Mate(th, th, 0, MateOptions{})
		if err != nil || (m.Slack-nut+bolt).Abs() > units.Millimetres(1e-9) {
			t.Errorf("%s: slack %v, middle of the limits %v, %v", name, m.Slack, nut-bolt, err)
		}
	}
}
