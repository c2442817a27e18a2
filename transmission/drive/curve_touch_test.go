package drive

import (
	"math"
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// Power that equals the load to the last bit still pulls: at the end of the curve,
// where engine speed is then the limit with nothing to spare, and at its foot.
func TestCurveThatJustTouchesTheLoad(t *testing.T) {
	s := settled{mass: measure.Input{X: 245}, area: measure.Input{X: 0.6}, cr: measure.Input{X: 0.02}, eta: measure.Input{X: 0.9}, rho: 1.225}
	const metres = 0.4
	need := func(n units.RotationalSpeed) units.Power {
		v := n.RadiansPerSecond() / (2 * math.Pi) * metres
		a, b, c := s.force(v, s.mass.X, s.area.X, s.cr.X)
		return units.Watts((a + b + c) * v / s.eta.X)
	}
	foot, end := units.RadiansPerSecond(200), units.RadiansPerSecond(600)
	at := Curve{[]PowerPoint{{foot, 0}, {end, need(end)}}}.top(s, metres)
	if at.Limit != "engine speed" || at.Spare != 0 || at.Engine != end {
		t.Errorf("end: %+v", at)
	}
	at = Curve{[]PowerPoint{{foot, need(foot)}, {end, 0}}}.top(s, metres)
	if at.Reason.Given() || at.Engine != foot {
		t.Errorf("foot: %+v", at)
	}
}
