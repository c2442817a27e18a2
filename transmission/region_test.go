package transmission

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// Both adjusters together: at any turn of the play adjuster the window of the nuts
// is open just where the region says, and a clutch found with that free play has
// that window.
func TestRegionAgainstWindows(t *testing.T) {
	open := 0
	rapid.Check(t, func(t *rapid.T) {
		c, found := anyClutch(t)
		// let travel bind often: strong hands, much play
		c.Demand.HandForce = 1000 * units.Newton
		c.Play = PlayAdjuster{Pitch: units.Millimetres(rapid.Float64Range(0.5, 1.5).Draw(t, "play pitch")), AtRod: rapid.Bool().Draw(t, "at rod")}
		r, err := c.Region(found)
		if err != nil {
			t.Fatal(err)
		}
		if r.Reason.Given() {
			least := found
			least.FreePlay = measure.Exact(units.Millimetres(2))
			if w, _ := c.Window(least); w.Open() {
				t.Fatalf("no setting, yet %v is open with the least play", w.Low)
			}
			return
		}
		open++
		for _, m := range [...]float64{r.Least.Turns() - 0.01, r.Least.Turns() + 0.01, rapid.Float64Range(r.Least.Turns(), r.Most.Turns()).Draw(t, "turns")} {
			play := r.FreePlay.Millimetres() - m*r.PerTurn.Millimetres()
			if play < 2 || play > 40 {
				continue
			}
			at := found
			at.FreePlay = measure.Exact(units.Millimetres(play))
			w, err := c.Window(at)
			if err != nil {
				t.Fatal(err)
			}
			if inside := m >= r.Least.Turns() && m <= r.Most.Turns(); inside != w.Open() && math.Abs(w.Width.Turns()) > 1e-6 {
				t.Fatalf("turns %v of %v .. %v: width %v", m, r.Least.Turns(), r.Most.Turns(), w.Width.Turns())
			}
		}
	})
	t.Logf("%d with a region", open)
}

// A turn at the rod counts the train's ratio at the lever.
func TestPlayAdjusterAtRod(t *testing.T) {
	c := demo()
	c.Play = PlayAdjuster{Pitch: 1 * units.Millimetre}
	cable, err := c.Region(Condition{})
	if err != nil {
		t.Fatal(err)
	}
	c.Play.AtRod = true
	rod, err := c.Region(Condition{})
	if err != nil {
		t.Fatal(err)
	}
	if cable.PerTurn != units.Millimetre || math.Abs(rod.PerTurn.Millimetres()-6) > 1e-12 {
		t.Errorf("a turn takes up %v at the cable, %v at the rod", cable.PerTurn, rod.PerTurn)
	}
	// 3 mm of play down to 1.5 mm
	printed(t, "turns at the cable", cable.Most.Turns(), "1.50")
	printed(t, "turns at the rod", rod.Most.Turns(), "0.25")
}
