package timing

import (
	"encoding/json"
	"math"
	"testing"

	"example.com/benchbook/units"
)

// A plan that is asked about a cam that stands nowhere moves nothing and says why;
// no plan has no moves.
func TestPlanOfNowhere(t *testing.T) {
	tooth := Move{Key: "tooth", Text: "camwheel", Unit: "tooth", Cams: []Cam{Inlet}, Step: 15 * units.CrankDegree, Most: 3}
	p, err := NewPlan([]Move{tooth}, Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e300, -721} {
		at := units.CrankDegrees(x)
		menu := append(p.Menu(at, 0), p.Menu(0, at)...)
		for _, r := range append(menu, p.Best(at, 0), p.Best(0, at)) {
			if !r.Refused.Given() || len(r.Steps) > 0 {
				t.Errorf("%v: %+v", x, r)
			}
			if _, err := json.Marshal(r); err != nil {
				t.Errorf("%v: %v", x, err)
			}
		}
		if len(menu) != 2 {
			t.Errorf("%v: %d remedies", x, len(menu))
		}
	}
	var none *Plan
	if r := none.Best(15, 0); r.Key != leaveKey || r.InletLeft != 15*units.CrankDegree || r.Refused.Given() {
		t.Errorf("no plan: %+v", r)
	}
	none.Menu(15, 0)
}
