package job_test

import (
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/examples/job"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// withTable returns the demonstration with a table of lift in the place of its own,
// and readings set or, where nil, taken away.
func withTable(t testing.TB, where, key string, table any, readings map[string]any) []byte {
	t.Helper()
	var root map[string]any
	if err := json.Unmarshal(job.Demo(), &root); err != nil {
		t.Fatal(err)
	}
	in := root["timing"].(map[string]any)[where].(map[string]any)
	in[key] = table
	for k, v := range readings {
		if in[k] = v; v == nil {
			delete(in, k)
		}
	}
	data, err := json.Marshal(root)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

func timingOf(t testing.TB, data []byte) (job.TimingResult, *job.Section) {
	t.Helper()
	r, err := job.Run(data)
	if err != nil {
		t.Fatal(err)
	}
	s := r.Section("timing")
	return s.Result.(job.TimingResult), s
}

// lobeTable is an invented lobe h (1-u²)^2.4, which passes 1 mm at opens and closes,
// degrees of the crank from the TDC of overlap, read every step degrees.
func lobeTable(opens, closes, height float64, step int) (from int, lifts []string) {
	centre, half := (opens+closes)/2, (closes-opens)/2
	reach := half / math.Sqrt(1-math.Pow(1/height, 1/2.4))
	from = int(math.Floor((centre-reach)/10))*10 - 20
	for a := from; a <= int(centre+reach)+20; a += step {
		y := 0.0
		if u := (float64(a) - centre) / reach; u*u < 1 {
			y = height * math.Pow(1-u*u, 2.4)
		}
		lifts = append(lifts, fmt.Sprintf("%.3f mm", y))
	}
	return from, lifts
}

func places(from, step int, lifts []string) (pairs []any, first string) {
	at := func(a int) string {
		if a < 0 {
			return fmt.Sprintf("%d BTDC", -a)
		}
		return fmt.Sprintf("%d ATDC", a)
	}
	for i, l := range lifts {
		pairs = append(pairs, map[string]any{"at": at(from + i*step), "lift": l})
	}
	return pairs, at(from)
}

// Events come back from a table within what rounding to a thousandth and a spline
// through readings every few degrees may do, whichever way it is written, for
// either cam.
func TestTableOfLiftGivesItsEvents(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		cam := rapid.SampledFrom([]string{"inlet", "exhaust"}).Draw(rt, "cam")
		opens := rapid.Float64Range(-40, 0).Draw(rt, "opens")
		closes := opens + rapid.Float64Range(225, 270).Draw(rt, "open for")
		if cam == "exhaust" { // the same on the other side of overlap
			opens, closes = -closes, -opens
		}
		step := rapid.SampledFrom([]int{4, 5, 10}).Draw(rt, "step")
		height := rapid.Float64Range(7, 10).Draw(rt, "height")
		from, lifts := lobeTable(opens, closes, height, step)
		pairs, first := places(from, step, lifts)
		even := map[string]any{"from": first, "every": fmt.Sprintf("%d° crank", step), "lifts": lifts}
		none := map[string]any{cam + "_opens": nil, cam + "_closes": nil, cam + "_max_lift": nil}
		a, _ := timingOf(t, withTable(t, "read", cam+"_curve", even, none))
		b, _ := timingOf(t, withTable(t, "read", cam+"_curve", pairs, none))
		ca, cb := a.InletCurve, b.InletCurve
		if cam == "exhaust" {
			ca, cb = a.ExhaustCurve, b.ExhaustCurve
		}
		if ca.Opens != cb.Opens || ca.Closes != cb.Closes || len(ca.Points) != len(cb.Points) {
			rt.Fatalf("even steps give %v to %v, places %v to %v", ca.Opens, ca.Closes, cb.Opens, cb.Closes)
		}
		// 0.0005 mm of rounding over 0.04 mm a degree, a tenth of a degree of our own
		// rounding, and smoothing within the gauge's hundredth: below half a degree.
		for _, e := range []struct{ got, want float64 }{
			{ca.Events.Opens.AtCrank().Degrees(), opens}, {ca.Events.Closes.AtCrank().Degrees(), closes},
		} {
			if off := math.Remainder(e.got-e.want, 720); math.Abs(off) > 0.5 {
				rt.Errorf("%s event %.2f°, put in %.2f°", cam, math.Remainder(e.got, 720), e.want)
			}
		}
		if off := ca.MaxLift.Value().Millimetres() - height; math.Abs(off) > 0.03 {
			rt.Errorf("greatest lift %v, put in %.3f mm", ca.MaxLift, height)
		}
		if len(ca.StandsIn) != 3 {
			rt.Errorf("stands in for %q", ca.StandsIn)
		}
	})
}

// What was read by itself rules; a curve that says otherwise is told.
func TestEventsReadByThemselvesRule(t *testing.T) {
	var table map[string]any
	demo := map[string]any{}
	if err := json.Unmarshal(job.Demo(), &demo); err != nil {
		t.Fatal(err)
	}
	table = demo["timing"].(map[string]any)["read"].(map[string]any)["inlet_curve"].(map[string]any)
	for _, c := range []struct {
		opens string
		again bool
	}{{"19 BTDC", false}, {"31 BTDC", true}} {
		r, s := timingOf(t, withTable(t, "read", "inlet_curve", table, map[string]any{"inlet_opens": c.opens}))
		if got := r.Input.Readings.InletOpens.Text(); got != c.opens {
			t.Errorf("inlet opens %s, read %s", got, c.opens)
		}
		if again := len(s.DoFirst) > 0 && strings.HasPrefix(s.DoFirst[0], "read again where inlet opens"); again != c.again {
			t.Errorf("%s against the curve's %s: do first %q", c.opens, r.InletCurve.Opens, s.DoFirst)
		}
		if r.InletCurve.StandsIn[0] != "inlet closes" {
			t.Errorf("stands in for %q", r.InletCurve.StandsIn)
		}
	}
}

// A table of the book gives the specification's events, lift and flanks.
func TestSpecifiedTable(t *testing.T) {
	from, lifts := lobeTable(-10, 228, 8.2, 10)
	pairs, _ := places(from, 10, lifts)
	r, _ := timingOf(t, withTable(t, "specified", "inlet_curve", pairs, map[string]any{"inlet_opens": nil, "inlet_closes": nil, "inlet_max_lift": nil}))
	lobe := r.Input.Engine.Inlet
	// by a spline through every tenth degree, told to a tenth
	if o, c := lobe.Opens.Before().Degrees(), lobe.Closes.After().Degrees(); math.Abs(o-10) > 0.2 || math.Abs(c-48) > 0.2 {
		t.Errorf("specified %v to %v, put in 10 BTDC to 48 ABDC", lobe.Opens, lobe.Closes)
	}
	if lobe.OpeningRise <= 0 || lobe.MaxLift.Value() < 8.15*units.Millimetre || r.InletBook == nil {
		t.Errorf("lobe %+v", lobe)
	}
	if f := r.Verdict.Causes.Leader().Text; !strings.Contains(f, "inlet") || !strings.Contains(f, "exhaust") {
		t.Errorf("the planted faults against the same lobe: %s", f)
	}
	// the room left is looked for along both curves
	if r.Input.Engine.Head.Inlet.Curve == nil || r.Verdict.Gaps.Inlet.NoAnswer.Given() {
		t.Errorf("gap %+v", r.Verdict.Gaps.Inlet)
	}
}

func TestFaultyTables(t *testing.T) {
	for name, c := range map[string]struct {
		table any
		path  string
		code  fault.Code
	}{
		"a lift in inches of nothing": {map[string]any{"from": "70 BTDC", "every": "10° crank", "lifts": []string{"0 mm", "3 stone"}}, "timing.read.inlet_curve.lifts[1]", fault.UnitUnknown},
		"no step":                     {map[string]any{"from": "70 BTDC", "lifts": []string{"0 mm"}}, "timing.read.inlet_curve.every", fault.Missing},
		"a step backwards":            {map[string]any{"from": "70 BTDC", "every": "-10° crank", "lifts": []string{"0 mm"}}, "timing.read.inlet_curve.every", fault.OutOfRange},
		"too few":                     {map[string]any{"from": "70 BTDC", "every": "10° crank", "lifts": []string{"0 mm", "1 mm"}}, "timing.read.inlet_curve", fault.OutOfRange},
		"a place too far":             {[]any{map[string]any{"at": "400 BTDC", "lift": "1 mm"}}, "timing.read.inlet_curve[0].at", fault.OutOfRange},
		"no place":                    {[]any{map[string]any{"lift": "1 mm"}}, "timing.read.inlet_curve[0].at", fault.Missing},
		"neither list nor object":     {"1 mm", "timing.read.inlet_curve", fault.BadForm},
		"a table that ends half way":  {map[string]any{"from": "70 BTDC", "every": "10° crank", "lifts": []string{"0 mm", "0 mm", "0 mm", "0.5 mm", "1 mm", "2 mm", "3 mm", "4 mm", "5 mm", "6 mm"}}, "timing.read.inlet_curve", fault.Missing},
	} {
		_, err := job.Run(withTable(t, "read", "inlet_curve", c.table, map[string]any{"inlet_opens": "19 BTDC"}))
		faults := fault.Faults(err)
		if len(faults) != 1 || faults[0].Path != c.path || faults[0].Code != c.code {
			t.Errorf("%s: %v, want %s at %s", name, err, c.code, c.path)
		}
	}
	// a table that says nothing at the check lift is told, and no fault
	data := withTable(t, "read", "inlet_curve", map[string]any{"from": "70 BTDC", "every": "10° crank", "lifts": flat(35)}, nil)
	_, s := timingOf(t, data)
	told := false
	for _, f := range s.Findings {
		told = told || f.Key == "inlet-curve" && strings.Contains(f.Text, "never passes")
	}
	if !told {
		t.Errorf("a flat table: %v", s.Findings)
	}
}

func flat(n int) []string {
	all := make([]string, n)
	for i := range all {
		all[i] = "0.01 mm"
	}
	return all
}

// Lift round the disc in the place of two events: the curve gives both, and the
// greatest lift, with their uncertainty.
func ExampleLiftCurve() {
	report, err := job.Run(job.Demo())
	if err != nil {
		fmt.Println(err)
		return
	}
	inlet := report.Section("timing").Result.(job.TimingResult).InletCurve
	var first job.LiftPoint = inlet.Points[0]
	fmt.Printf("%d readings, the first %v at %v\n", len(inlet.Points), first.Lift, first.At)
	fmt.Println("opens", inlet.Opens, "closes", inlet.Closes)
	fmt.Println("taken for", strings.Join(inlet.StandsIn, ", "))
	// Output:
	// 35 readings, the first 0.020 ± 0.010 mm at -70° crank
	// opens 19° BTDC ± 0.6° closes 37.8° ABDC ± 0.6°
	// taken for inlet opens, inlet closes, inlet greatest lift
}

// What would be read with the same cam turned ten degrees later.
func ExampleLiftCurve_Earlier() {
	report, err := job.Run(job.Demo())
	if err != nil {
		fmt.Println(err)
		return
	}
	inlet := report.Section("timing").Result.(job.TimingResult).InletCurve
	moved, err := inlet.Earlier(-10 * units.CrankDegree)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(inlet.Opens, "becomes", moved.Opens)
	// Output: 19° BTDC ± 0.6° becomes 9° BTDC ± 0.6°
}
