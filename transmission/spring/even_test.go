package spring_test

import (
	"math"
	"slices"
	"testing"

	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// Worked by hand: five springs of 96, 100, 102, 104 and 110 N, each ± 1 N but the
// last ± 2 N. Beside the last the others have the median (100 + 102)/2 = 101 N,
// whose variance is π/2 times 4·1²/4² = 0.25 N²; the difference of 9 N has the
// variance 2² + π/8. Their mean is 512/5 N ± √(4·1² + 2²)/5. Of four springs, the
// three others have one in the middle.
func TestEvenByHand(t *testing.T) {
	loads := []measure.Reading[units.Force]{
		measure.Of(96*newton, 1*newton), measure.Of(104*newton, 1*newton), measure.Of(100*newton, 1*newton), measure.Of(102*newton, 1*newton), measure.Of(110*newton, 2*newton),
	}
	e := ok(spring.Even(loads, spring.EvenOptions{}))(t)
	near(t, "mean", e.Mean.Value().Newtons(), 102.4, 1e-14)
	near(t, "uncertainty of the mean", e.Mean.U().Newtons(), math.Sqrt(8)/5, 1e-14)
	near(t, "spread", e.Spread, 14/102.4, 1e-14)
	last := e.Each[4]
	near(t, "off", last.Off, 9.0/101, 1e-13)
	near(t, "sigmas", last.Sigmas, 9/math.Sqrt(4+math.Pi/8), 1e-14)
	if e.Even || !slices.Equal(e.Odd, []int{0, 4}) { // 96 N is 7 N from the others' 103, 5.4 sigmas

		t.Errorf("%+v", e)
	}
	four := ok(spring.Even(loads[:4], spring.EvenOptions{}))(t)
	near(t, "off, of four", four.Each[1].Off, 104.0/100-1, 1e-13)

	// more than the option it must be: as much is still one of the set
	for name, opt := range map[string]spring.EvenOptions{
		"sigmas": {Sigmas: last.Sigmas, Spread: 0.01}, "off": {Sigmas: 0.5, Spread: 2 * last.Off},
	} {
		if at := ok(spring.Even(loads, opt))(t); len(at.Odd) > 0 && at.Odd[len(at.Odd)-1] == 4 {
			t.Errorf("%s at its option: odd %v", name, at.Odd)
		}
	}
	if at := ok(spring.Even(loads, spring.EvenOptions{Spread: e.Spread, Sigmas: 10}))(t); !at.Even {
		t.Errorf("a spread of just the option: %+v", at)
	}
	if said := e.Basis.Assumed[0].Value; said != "6 %" {
		t.Errorf("assumed %q", said)
	}
}
