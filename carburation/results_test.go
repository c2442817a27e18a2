package carburation_test

import (
	"encoding/json"
	"math"
	"strings"
	"testing"

	"example.com/benchbook/carburation"
	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// Every result can be written as data, in snake case, and holds no NaN.
func TestResultsAsData(t *testing.T) {
	m := must(carburation.NewModel(demo(), carburation.Options{}))
	taught, calibration, err := m.Calibrate(carburation.LambdaReading{Lift: 1, Speed: rev(5000), Lambda: measure.By[units.Ratio](0.9, carburation.LambdaSensor())})
	if err != nil {
		t.Fatal(err)
	}
	_ = taught
	jet := must(carburation.ReadJet("280 cc/min"))
	empty := carburation.Setup{}
	for name, v := range map[string]any{
		"start":         must(carburation.Start(carburation.Input{Engine: engineOf(500), Fitted: carburation.Fitted{MainJet: jet}}, carburation.Options{})),
		"start outside": must(carburation.Start(carburation.Input{Engine: engineOf(60)}, carburation.Options{})),
		"input":         carburation.Input{Engine: engineOf(500), Fitted: carburation.Fitted{MainJet: jet}}, "setup": demo(), "empty setup": empty,
		"explained": must(m.Explain(0.5, rev(4000))), "map": must(m.Map([]units.Ratio{0.01, 0.5}, []units.RotationalSpeed{rev(400), rev(4000)})),
		"settings": must(m.Settings(carburation.Targets{})), "calibration": calibration, "jet": must(jet.Size(carburation.JetOptions{})),
		"correction": must(carburation.Correct(carburation.Change{Now: carburation.Surroundings{Fuel: "ethanol"}})), "advice": must(carburation.Advise(carburation.Symptoms{Full: carburation.Seen{Runs: carburation.Weak}}, carburation.AdviseOptions{})),
		"feed": must(carburation.FuelFeed(carburation.Feed{Need: units.CubicCentimetresPerMinute(100)})),
	} {
		b, err := json.Marshal(v)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		var tree any
		if err := json.Unmarshal(b, &tree); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		walk(t, name, tree)
	}
}

func walk(t *testing.T, path string, v any) {
	switch x := v.(type) {
	case map[string]any:
		for k, y := range x {
			if strings.ToLower(k) != k || strings.Contains(k, "-") && !strings.Contains(path, "priors") {
				t.Errorf("%s: key %q is not in snake case", path, k)
			}
			walk(t, path+"."+k, y)
		}
	case []any:
		for _, y := range x {
			walk(t, path, y)
		}
	case string:
		if strings.Contains(x, "NaN") || strings.Contains(x, "Inf") {
			t.Errorf("%s: %q", path, x)
		}
	}
}

// The derived rows of discharge coefficients in the tables are this package's
// correlation, to the three decimals they keep.
func TestCoefficientsAgainstTable(t *testing.T) {
	n := 0
	for row := range refdata.JetCoefficients().All() {
		ld, _, ok1 := row.LengthOverD.Ends()
		re, _, ok2 := row.Reynolds.Ends()
		cd, _, ok3 := row.Discharge.Ends()
		if row.Geometry != "parallel bore, square entry" || !ok1 || !ok2 || !ok3 {
			continue
		}
		n++
		if got := must(carburation.ParallelBore(re.Value(), ld.Value())); math.Abs(got-cd.Value()) > 0.00051 {
			t.Errorf("%s: %v, table %v", row.Name, got, cd)
		}
	}
	if n < 50 {
		t.Errorf("%d rows", n)
	}
	for row := range refdata.SlideCutaways().All() {
		k := must(units.ParseRatio(row.Number))
		if c := must(carburation.CutawayOf(k.Value(), carburation.Sixteenths)); math.Abs(c.Millimetres()-row.Height.Millimetres()) > 0.00051 {
			t.Errorf("number %s: %v, table %v", row.Number, c, row.Height)
		}
	}
}
