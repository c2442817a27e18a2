package transmission

import (
	"math"
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

func kick() KickTest {
	return KickTest{
		Rider: measure.Of(75*units.Kilogram, 1*units.Kilogram), Crank: measure.Of(200*units.Millimetre, 2*units.Millimetre),
		Angle: measure.Of(90*units.Degree, 2*units.Degree), Ratio: 1.5, Losses: 0.9,
	}
}

// kicked is what that proves of the demo with another rider, result and what is set.
func kicked(t *testing.T, kg float64, r KickResult, set func(k *KickTest)) KickProof {
	t.Helper()
	k := kick()
	k.Rider, k.Result = measure.Of(units.Kilograms(kg), 1*units.Kilogram), r
	if set != nil {
		set(&k)
	}
	p, err := demo().Kick(k)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// By hand: 75 kg x 9.80665 x 0.2 m x 0.9 / 1.5 = 88.26 N·m at the clutch, against 61.6
// N·m of engine torque there and 80.08 with its margin.
func TestKickByHand(t *testing.T) {
	p, err := demo().Kick(kick())
	if err != nil {
		t.Fatal(err)
	}
	printed(t, "torque of the rider", p.Tested.Value().NewtonMetres(), "88.26")
	printed(t, "share of engine torque", p.Share.Value().Value(), "1.43")
	// 80.08 x 1.5/(9.80665 x 0.2 x 0.9)
	printed(t, "rider to prove the margin", p.ToProve.Kilograms(), "68.05")
	if p.Proven != Shown || p.Margin != Shown || p.Capacity != AtLeast {
		t.Errorf("%v %v %v", p.Proven, p.Margin, p.Capacity)
	}
}

// A test proves no more than it loads: the result read both ways, and limited by the
// engine turning over.
func TestKickBothWays(t *testing.T) {
	with := func(kg float64, r KickResult, cranking float64) KickProof {
		return kicked(t, kg, r, func(k *KickTest) {
			if cranking > 0 {
				k.Cranking = measure.Of(units.NewtonMetres(cranking), units.NewtonMetres(1))
			}
		})
	}
	for _, c := range []struct {
		kg             float64
		r              KickResult
		cranking       float64
		proven, margin Proof
	}{
		{75, Held, 0, Shown, Shown},
		{75, Slid, 0, Unproven, Unproven},    // less than 88: may still be above 80
		{75, Crept, 0, Shown, Shown},         // it is 88
		{40, Held, 0, Unproven, Unproven},    // 47 held says nothing of 61.6
		{40, Crept, 0, Disproved, Disproved}, // it is 47
		{40, Slid, 0, Disproved, Disproved},
		{60, Held, 0, Shown, Unproven},     // 70.6 held
		{60, Crept, 0, Shown, Disproved},   // it is 70.6
		{60, Slid, 0, Unproven, Disproved}, // less than 70.6
		{75, Held, 20, Unproven, Unproven}, // the engine turns over at 20 x 2.2 = 44
		{75, Turned, 33, Shown, Unproven},  // and at 72.6
	} {
		p := with(c.kg, c.r, c.cranking)
		if p.Proven != c.proven || p.Margin != c.margin {
			t.Errorf("%v kg %v, cranking %v: %v / %v, want %v / %v (%s)", c.kg, c.r, c.cranking, p.Proven, p.Margin, c.proven, c.margin, p.Verdict)
		}
	}
	// the rider told to prove the margin does prove it, and ten per cent more does so for sure
	p := with(75, Held, 0)
	if q := with(p.ToProve.Kilograms()*1.1, Held, 0); q.Margin != Shown {
		t.Errorf("a rider of %v: %v", p.ToProve.Times(1.1), q.Margin)
	}
	if math.IsNaN(p.ToProve.Kilograms()) {
		t.Error("no rider")
	}
}

func TestKickFaults(t *testing.T) {
	_, err := Clutch{}.Kick(KickTest{Result: Turned})
	want := map[string]bool{"demand.engine_torque": true, "demand.primary_ratio": true, "test.rider": true, "test.crank": true, "test.ratio": true, "test.cranking": true}
	for _, f := range fault.Faults(err) {
		if !want[f.Path] || f.Code != fault.Missing {
			t.Errorf("unexpected: %v", f)
		}
		delete(want, f.Path)
	}
	for p := range want {
		t.Errorf("not told: %s", p)
	}
}
