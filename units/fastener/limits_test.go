package fastener

import (
	"math"
	"testing"

	"example.com/benchbook/units"
)

// TestPublishedUnifiedLimits: limits of classes 2A and 2B printed with the worked
// areas of FED-STD-H28 for these two threads. Four decimals of an inch.
func TestPublishedUnifiedLimits(t *testing.T) {
	big, err := Of("2 1/2-4 UNC", UnifiedForm, units.Inches(2.5), units.Inches(0.25))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		thread                           Thread
		boltE, boltMajor, nutMinor, nutE float64
	}{
		{big, 2.3241, 2.4731, 2.267, 2.3511},
		{MustParse("2-56 UNC"), 0.0717, 0.0813, 0.0737, 0.0772},
	} {
		l, err := c.thread.Limits(0)
		if err != nil {
			t.Fatal(err)
		}
		for _, p := range []struct {
			what string
			got  units.Length
			want float64
		}{
			{"bolt effective min", l.BoltEffectiveMin.Or(0), c.boltE}, {"bolt major min", l.BoltMajorMin.Or(0), c.boltMajor},
			{"nut minor max", l.NutMinorMax.Or(0), c.nutMinor}, {"nut effective max", l.NutEffectiveMax.Or(0), c.nutE},
		} {
			// the standard rounds allowance, tolerance and basic size apart: 1.2 last digits
			slack := 0.00012
			if p.want == 2.267 { // printed to three decimals
				slack = 0.0005
			}
			if math.Abs(p.got.Inches()-p.want) > slack {
				t.Errorf("%v %s = %.5f in, printed %v", c.thread, p.what, p.got.Inches(), p.want)
			}
		}
	}
}

func TestLimitsAreInOrder(t *testing.T) {
	for th := range Threads() {
		l, err := th.Limits(0)
		if err != nil {
			t.Fatal(err)
		}
		if th.Form() == CycleForm {
			if !l.Reason.Given() {
				t.Errorf("%v has limits", th)
			}
			continue
		}
		if l.NutMinorMax.Or(0) <= l.NutMinorMin.Or(0) || l.BoltEffectiveMax.Or(0) > l.NutEffectiveMin.Or(0) || l.BoltMajorMax.Or(0) > th.Major() {
			t.Errorf("%v: %+v", th, l)
		}
		if min, ok := l.BoltMajorMin.Get(); ok && min <= l.NutMinorMax.Or(0) {
			t.Errorf("%v: smallest bolt passes largest nut", th)
		}
	}
}
