package transmission

import (
	"encoding/json"
	"math"
	"reflect"
	"regexp"
	"strings"
	"testing"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// results are one of each kind, full and empty.
func results(t *testing.T) map[string]any {
	t.Helper()
	in := Input{Clutch: demo(), Found: backedOff(), Setting: Setting{Nuts: measure.Of(units.Turns(6), units.Turns(0.1))}, Signs: Signs{Slips: Yes, Drags: Yes}}
	adjust, err := Adjust(in, Options{})
	if err != nil {
		t.Fatal(err)
	}
	in.Found.Friction = measure.Of(units.Value(0.07), units.Value(0.01))
	pairs, err := Adjust(in, Options{})
	if err != nil {
		t.Fatal(err)
	}
	diagnosis, err := Diagnose(in, Options{})
	if err != nil {
		t.Fatal(err)
	}
	region, err := demo().Region(used())
	if err != nil {
		t.Fatal(err)
	}
	proof, err := demo().Kick(kick())
	if err != nil {
		t.Fatal(err)
	}
	trim, err := plate(4).Even(rimOf(plate(4), []float64{0, 0.7, 0, -0.2}, 0.01))
	if err != nil {
		t.Fatal(err)
	}
	capacity, err := demo().Plates.Carry(units.Value(0.12), units.Newtons(1000))
	if err != nil {
		t.Fatal(err)
	}
	mix, err := plate(4).Mixed(fitted([]float64{46, 45.5, 44.8, 46}, []float64{25, 25, 24, 26}), units.Turns(8), Condition{})
	if err != nil {
		t.Fatal(err)
	}
	two, err := Diagnose(twoWrong(), Options{})
	if err != nil {
		t.Fatal(err)
	}
	trials := []Weighed{
		{Effort: measure.Of(24*units.Newton, units.Newton), Load: measure.Of(200*units.Newton, units.Newton), EffortTravel: measure.Exact(20 * units.Millimetre), LoadTravel: measure.Exact(units.Millimetre)},
		{Effort: measure.Of(54*units.Newton, units.Newton), Load: measure.Of(600*units.Newton, units.Newton)},
	}
	advantage, err := trials[0].Advantage()
	if err != nil {
		t.Fatal(err)
	}
	law, err := FitEffort(trials)
	if err != nil {
		t.Fatal(err)
	}
	return map[string]any{"mix": mix, "two at once": two, "advantage": advantage, "law": law, "adjustment": adjust, "with pairs": pairs, "diagnosis": diagnosis, "region": region, "kick": proof, "trim": trim, "capacity": capacity}
}

// Every result goes out as JSON in snake case, and every field of ours is tagged.
func TestResultsAsData(t *testing.T) {
	key := regexp.MustCompile(`"([^"]+)":`)
	snake := regexp.MustCompile(`^[a-z0-9_]+$`)
	for name, r := range results(t) {
		b, err := json.Marshal(r)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		for _, k := range key.FindAllStringSubmatch(string(b), -1) {
			if !snake.MatchString(k[1]) && !strings.Contains(k[1], " ") {
				t.Errorf("%s: key %q", name, k[1])
			}
		}
		if strings.Contains(string(b), "NaN") || strings.Contains(string(b), "Inf") {
			t.Errorf("%s holds a figure that is not finite", name)
		}
	}
}

// Verdicts carry sources, the usual cautions, what was assumed and what was not
// checked with the cheapest reading that would settle it.
func TestBasisIsFull(t *testing.T) {
	a, err := Adjust(Input{Clutch: demo()}, Options{})
	if err != nil {
		t.Fatal(err)
	}
	d, err := Diagnose(Input{Clutch: demo(), Signs: Signs{Slips: Yes}}, Options{})
	if err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(a.Basis, d.Basis) {
		t.Error("the two verdicts rest on different things")
	}
	has := map[refdata.Caution]bool{}
	for _, c := range a.Basis.Cautions {
		has[c] = true
	}
	for _, c := range []refdata.Caution{refdata.SpringsUnderLoad, refdata.AsbestosLinings, refdata.RetainingNuts, refdata.BrakesBeforeRoad} {
		if !has[c] {
			t.Errorf("no caution %s", c)
		}
	}
	for _, u := range a.Basis.NotChecked {
		if u.What == "" || u.Why == "" || u.Settle == "" {
			t.Errorf("not checked: %+v", u)
		}
	}
	for _, s := range a.Basis.Sources {
		if s.Status == 0 {
			t.Errorf("no status: %v", s)
		}
	}
	// every reading left out is told
	if n := len(a.Basis.NotChecked); n < int(parts) {
		t.Errorf("only %d told as not checked", n)
	}
}

// A measured pull that disagrees with lever and sweep by more than twice the
// uncertainty of the difference is reported, and the measured one is used.
func TestPullThatDisagrees(t *testing.T) {
	for _, c := range []struct {
		pull float64
		says bool
	}{{22.5, false}, {18, true}, {26, true}} {
		in := Input{Clutch: demo(), Found: Condition{CablePull: measure.Of(units.Millimetres(c.pull), units.Millimetres(0.5))}}
		a, err := Adjust(in, Options{})
		if err != nil {
			t.Fatal(err)
		}
		if a.Pull.Disagree != c.says || (a.Pull.Text != "") != c.says || a.Pull.Used != units.Millimetres(c.pull) {
			t.Errorf("%v mm: %+v", c.pull, a.Pull)
		}
		if got := a.Pull.FromLever.Value().Millimetres(); math.Abs(got-22) > 1e-9 {
			t.Errorf("from the lever %v", got)
		}
	}
}

// What the hot path works out of the lever is what its methods say.
func TestLeverFigures(t *testing.T) {
	for _, sector := range []bool{false, true} {
		h := HandLever{
			Finger: measure.Of(110*units.Millimetre, 2*units.Millimetre), Nipple: measure.Of(36*units.Millimetre, units.Millimetres(0.5)),
			Rest: measure.Of(-20*units.Degree, 2*units.Degree), Pulled: measure.Of(14*units.Degree, 2*units.Degree), Sector: sector,
		}
		c := demo()
		c.Lever = h
		s, err := c.resolve(&Condition{})
		if err != nil {
			t.Fatal(err)
		}
		p, _ := h.Pull()
		i, _ := h.Leverage()
		// first order by slopes there, by central differences here: a degree or two
		// bends a sine by less than a thousandth
		near := func(a, b float64) bool { return math.Abs(a/b-1) < 1e-3 }
		if !near(s.v[cablePull], p.Value().Millimetres()) || !near(s.u[cablePull], p.U().Millimetres()) || !near(s.v[leverRatio], i.Value().Value()) || !near(s.u[leverRatio], i.U().Value()) {
			t.Errorf("sector %v: %v ± %v, %v ± %v; methods %v, %v", sector, s.v[cablePull], s.u[cablePull], s.v[leverRatio], s.u[leverRatio], p, i)
		}
	}
}

// The chance that the window is open agrees with the first-order figure where one
// limit binds at each end, and goes from nothing to one as the nut is tightened.
func TestChances(t *testing.T) {
	at := func(q float64, alone bool) Adjustment {
		f := used()
		f.HubNutBack = measure.Of(units.Turns(q), units.Turns(0.02))
		c := demo()
		if alone { // travel, with no other limit near, and figures fine enough that nothing bends
			f.CableStiffness = measure.Of(units.NewtonsPerMillimetre(100), units.NewtonsPerMillimetre(2))
			f.CableEfficiency = measure.Of(units.Value(0.8), units.Value(0.01))
			f.Friction = measure.Of(units.Value(0.11), units.Value(0.002))
			f.RunOut = measure.Of(units.Millimetres(0.1), units.Millimetres(0.01)) // well clear of zero, where draws are cut
			c.Demand.HandForce, c.Springs.Shortest = 1000*units.Newton, 5*units.Millimetre
		}
		a, err := Adjust(Input{Clutch: c, Found: f}, Options{Draws: 20000})
		if err != nil {
			t.Fatal(err)
		}
		return a
	}
	a := at(0.25, true)
	z := a.Width.Value().Ratio(a.Width.U())
	// twenty thousand draws are good to 0.4 points; the rest is what still bends
	if want := phi(z); math.Abs(a.ChanceOpen-want) > 0.02 {
		t.Errorf("open by draws %.3f, by first order %.3f (%v)", a.ChanceOpen, want, a.Width)
	}
	if b := at(0.6, false); b.ChanceOpen > 0.01 || b.ChanceWorkable > b.ChanceOpen {
		t.Errorf("nut well off: %v", b.ChanceOpen)
	}
	if b := at(0, false); b.ChanceOpen < 0.7 || b.ChanceWorkable > b.ChanceOpen {
		t.Errorf("nut tight: %v open, %v workable", b.ChanceOpen, b.ChanceWorkable)
	}
	if at(0.25, true).ChanceOpen != a.ChanceOpen {
		t.Error("the same seed gives another answer")
	}
}

// Advice stays inside the window, in whole flats, and names the first repair when
// turning nuts cannot help.
func TestAdviceInFlats(t *testing.T) {
	for n := 0.0; n <= 12; n += 0.37 {
		a, err := Adjust(Input{Clutch: demo(), Found: used(), Setting: Setting{Nuts: measure.Of(units.Turns(n), units.Turns(0.05))}}, Options{Draws: 100})
		if err != nil {
			t.Fatal(err)
		}
		to := n + float64(a.Advice.Flats)/6
		if !a.Advice.Adjust || to < a.Window.Low.Turns() || to > a.Window.High.Turns() {
			t.Errorf("from %.2f to %.2f of %.2f .. %.2f: %s", n, to, a.Window.Low.Turns(), a.Window.High.Turns(), a.Advice.Text)
		}
	}
	a, err := Adjust(Input{Clutch: demo(), Found: backedOff(), Setting: Setting{Nuts: measure.Of(units.Turns(6), units.Turns(0.05))}}, Options{Draws: 100})
	if err != nil {
		t.Fatal(err)
	}
	if a.Advice.Adjust || a.Advice.Flats != 0 || !strings.Contains(a.Advice.Text, "retaining nut") {
		t.Error(a.Advice.Text)
	}
}
