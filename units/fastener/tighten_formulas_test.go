package fastener

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// TestNutFactor: K is defined by T = K F D.
func TestNutFactor(t *testing.T) {
	th := MustParse("M10")
	j := Joint{Thread: th, Friction: Oiled()}
	r, err := Tighten(j, TightenOptions{})
	if err != nil {
		t.Fatal(err)
	}
	q, err := TorqueFor(j, units.Kilonewtons(10))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range [][2]float64{{r.NutFactor.Low.SI(), q.Low.NewtonMetres()}, {r.NutFactor.High.SI(), q.High.NewtonMetres()}} {
		if kfd := c[0] * 10e3 * 0.010; math.Abs(kfd/c[1]-1) > 1e-12 {
			t.Errorf("K F D = %v N m, torque %v", kfd, c[1])
		}
	}
}

// TestBearingsNotGiven: a head bears from 1.1 to 1.5 diameters; of the two the one
// given may not be passed by the other: a bearing hole stays within 0.95 of the
// outside, an outside is 1.2 of the hole at least.
func TestBearingsNotGiven(t *testing.T) {
	th := MustParse("M10")
	for _, c := range []struct {
		what                        string
		outside, hole               float64 // mm, as given
		outsideTaken, bearingInside float64
	}{
		{"neither", 0, 0, 15, 11},
		{"a wide washer", 20, 0, 20, 11},
		{"a narrow collar", 10.5, 0, 10.5, 0.95 * 10.5},
		{"a plain hole", 0, 10.2, 15, 10.2},
		{"a wide hole", 0, 14, 1.2 * 14, 14},
	} {
		j := Joint{Thread: th, Friction: SameFriction(0.12), BearingOutside: units.Millimetres(c.outside), BearingHole: units.Millimetres(c.hole)}
		got, err := TorqueFor(j, units.Kilonewtons(10))
		if err != nil {
			t.Fatal(err)
		}
		j.BearingOutside, j.BearingHole = units.Millimetres(c.outsideTaken), units.Millimetres(c.bearingInside)
		want, err := TorqueFor(j, units.Kilonewtons(10))
		if err != nil || math.Abs(got.Low.Ratio(want.Low)-1) > 1e-12 {
			t.Errorf("%s: %v, with both given %v, %v", c.what, got.Low, want.Low, err)
		}
	}
}

// TestLimitHoldsAtBothEnds: where the head rubs much and is well known, and the thread
// is not, the torque to the limit is least at the highest thread friction; the torque
// set must not pass it there either.
func TestLimitHoldsAtBothEnds(t *testing.T) {
	th := MustParse("M8")
	steel, err := Class("8.8", th)
	if err != nil {
		t.Fatal(err)
	}
	binding := 0
	rapid.Check(t, func(r *rapid.T) {
		lo := rapid.Float64Range(0.02, 0.1).Draw(r, "thread")
		hi := lo + rapid.Float64Range(0.1, 0.3).Draw(r, "more")
		head := units.Value(rapid.Float64Range(0.05, 0.3).Draw(r, "head"))
		j := Joint{
			Thread: th, Strength: steel, BearingOutside: units.Millimetres(rapid.Float64Range(13, 120).Draw(r, "outside")), BearingHole: units.Millimetres(9),
			Friction: Friction{Thread: measure.Between(units.Value(lo), units.Value(hi)), Head: measure.Between(head, head)},
		}
		got, err := Tighten(j, TightenOptions{OfProof: 1})
		if err != nil {
			r.Fatal(err)
		}
		var ends []units.Torque // each end of the friction by itself
		for _, mu := range []float64{lo, hi} {
			k := j
			k.Friction.Thread = measure.Between(units.Value(mu), units.Value(mu))
			alone, err := Tighten(k, TightenOptions{OfProof: 1})
			if err != nil {
				r.Fatal(err)
			}
			if got.Torque.SI() > alone.LimitTorque.Low.SI()*(1+1e-9) {
				r.Fatalf("at %v: torque %v past the limit %v", mu, got.Torque, alone.LimitTorque.Low)
			}
			ends = append(ends, alone.LimitTorque.Low)
		}
		if low, high := min(ends[0], ends[1]), max(ends[0], ends[1]); math.Abs(got.LimitTorque.Low.Ratio(low)-1) > 1e-9 || math.Abs(got.LimitTorque.High.Ratio(high)-1) > 1e-9 {
			r.Fatalf("limit torque %v, each end alone %v", got.LimitTorque, ends)
		}
		if got.Aim < got.Limit.High && got.Aim < got.ProofLoad {
			binding++
		}
	})
	if binding == 0 {
		t.Error("the far end never decided")
	}
}
