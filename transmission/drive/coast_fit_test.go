package drive_test

import (
	"math"
	"testing"

	"example.com/benchbook/transmission/drive"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
	"pgregory.net/rapid"
)

// stretch is a run down from v1 to v2 m/s in t ± u seconds.
func stretch(v1, v2, t, u float64) drive.Coast {
	return drive.Coast{From: units.MetresPerSecond(v1), To: units.MetresPerSecond(v2), Time: measure.Of(units.Seconds(t), units.Seconds(u))}
}

// Two stretches always give back what they were made with, whatever the machine,
// and however near they lie to each other, down to where they part drag from
// rolling by a few per cent only.
func TestCoastFromTwoStretches(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		x := func(name string, lo, hi float64) float64 { return rapid.Float64Range(lo, hi).Draw(t, name) }
		m, cr, area := x("mass", 150, 500), math.Exp(x("ln cr", math.Log(0.004), math.Log(0.1))), math.Exp(x("ln area", math.Log(0.1), math.Log(3)))
		v := x("first", 15, 35)
		w := v * x("apart", 0.5, 0.95)
		in := drive.CoastInput{Mass: measure.Exact(units.Kilograms(m)), Runs: []drive.Coast{
			stretch(v, 0.9*v, rolled(m, cr, area, 1.225, v, 0.9*v), 0.1), stretch(w, 0.9*w, rolled(m, cr, area, 1.225, w, 0.9*w), 0.1),
		}}
		r := ok(drive.CoastDown(in, drive.CoastOptions{SpeedScale: -1}))(t)
		if r.Reason.Given() {
			t.Fatal(r.Reason)
		}
		// Simpson's rule in 400 steps is right to rounding; what two stretches alike
		// leave of it is divided by how far apart they are
		tol := 1e-7
		if math.Abs(r.DragArea.Value().SquareMetres()/area-1) > tol || math.Abs(r.Rolling.Value().SI()/cr-1) > tol {
			t.Fatalf("drag area %v, made with %g; rolling %v, made with %g; correlation %g", r.DragArea, area, r.Rolling, cr, r.Correlation)
		}
	})
}

// noisy is five stretches with errors given by hand and uncertainties that differ.
func noisy() drive.CoastInput {
	in := drive.CoastInput{Mass: measure.Exact(units.Kilograms(245))}
	for _, p := range [][4]float64{{30, 25, 0.11, 0.1}, {25, 20, -0.13, 0.2}, {20, 15, 0.35, 0.3}, {15, 10, 0.21, 0.15}, {10, 5, -0.4, 0.5}} {
		in.Runs = append(in.Runs, stretch(p[0], p[1], rolled(245, 0.018, 0.6, 1.225, p[0], p[1])+p[2], p[3]))
	}
	return in
}

// The fit is the least sum of squares there is, by walking the motion again with
// figures a little to either side; its misses and chi-square are those of that
// walk.
func TestCoastIsTheLeastSquares(t *testing.T) {
	in := noisy()
	r := ok(drive.CoastDown(in, drive.CoastOptions{}))(t)
	cr, area := r.Rolling.Value().SI(), r.DragArea.Value().SquareMetres()
	sum := func(cr, area float64) float64 {
		s := 0.0
		for _, run := range in.Runs {
			e := (run.Time.Value().Seconds() - rolled(245, cr, area, 1.225, run.From.MetresPerSecond(), run.To.MetresPerSecond())) / run.Time.U().Seconds()
			s += e * e
		}
		return s
	}
	least := sum(cr, area)
	near(t, "chi-square", r.ChiSquare, least, 1e-9)
	for i := range 16 {
		sin, cos := math.Sincos(float64(i) / 16 * 2 * math.Pi)
		if s := sum(cr*(1+1e-4*cos), area*(1+1e-4*sin)); s < least {
			t.Errorf("direction %d: %.9g below %.9g", i, s, least)
		}
	}
	for i, run := range in.Runs {
		want := run.Time.Value().Seconds() - rolled(245, cr, area, 1.225, run.From.MetresPerSecond(), run.To.MetresPerSecond())
		if math.Abs(r.Misses[i].Seconds()-want) > 1e-9 {
			t.Errorf("stretch %d missed by %v, want %g s", i, r.Misses[i], want)
		}
	}
}

// Uncertainties and correlation are those of the inverse normal matrix, its slopes
// by walking the motion at figures to either side; mass adds to the drag area's
// alone, and the speedometer's scale as far as it moves each.
func TestCoastUncertainties(t *testing.T) {
	in := noisy()
	plain := ok(drive.CoastDown(in, drive.CoastOptions{SpeedScale: -1}))(t)
	cr, area := plain.Rolling.Value().SI(), plain.DragArea.Value().SquareMetres()
	var aa, ab, bb float64
	for _, run := range in.Runs {
		v1, v2, u := run.From.MetresPerSecond(), run.To.MetresPerSecond(), run.Time.U().Seconds()
		const h = 1e-4
		da := (rolled(245, cr*(1+h), area, 1.225, v1, v2) - rolled(245, cr*(1-h), area, 1.225, v1, v2)) / (2 * h * u)
		db := (rolled(245, cr, area*(1+h), 1.225, v1, v2) - rolled(245, cr, area*(1-h), 1.225, v1, v2)) / (2 * h * u)
		aa, ab, bb = aa+da*da, ab+da*db, bb+db*db
	}
	det := aa*bb - ab*ab
	relative := func(r drive.CoastResult) (rolling, drag float64) {
		return r.Rolling.U().Ratio(r.Rolling.Value()), r.DragArea.U().Ratio(r.DragArea.Value())
	}
	// central differences of h and of the function's own step: some 1e-7
	ur, ud := relative(plain)
	near(t, "rolling", ur, math.Sqrt(bb/det), 1e-5)
	near(t, "drag", ud, math.Sqrt(aa/det), 1e-5)
	near(t, "correlation", plain.Correlation, -ab/math.Sqrt(aa*bb), 1e-5)

	in.Mass = measure.Of(units.Kilograms(245), units.Kilograms(10))
	mr, md := relative(ok(drive.CoastDown(in, drive.CoastOptions{SpeedScale: -1}))(t))
	near(t, "rolling with mass", mr, ur, 1e-9)
	near(t, "drag with mass", md, math.Hypot(ud, 10.0/245), 1e-9)

	in.Mass = measure.Exact(units.Kilograms(245))
	scaled := func(k float64) drive.CoastResult {
		moved := in
		moved.Runs = nil
		for _, run := range in.Runs {
			moved.Runs = append(moved.Runs, drive.Coast{From: run.From.Times(k), To: run.To.Times(k), Time: run.Time})
		}
		return ok(drive.CoastDown(moved, drive.CoastOptions{SpeedScale: -1}))(t)
	}
	hi, lo := scaled(1.03), scaled(0.97)
	sr, sd := relative(ok(drive.CoastDown(in, drive.CoastOptions{SpeedScale: 0.03}))(t))
	near(t, "rolling with the speedometer", sr, math.Hypot(ur, math.Log(hi.Rolling.Value().Ratio(lo.Rolling.Value()))/2), 1e-6)
	near(t, "drag with the speedometer", sd, math.Hypot(ud, math.Log(hi.DragArea.Value().Ratio(lo.DragArea.Value()))/2), 1e-6)
}

// A fit that runs off to what no machine has is no run down: rolling resistance
// below 2e-5 of the weight or above 160 kN, air's below 3e-4 or above 400 N s²/m².
func TestCoastThatRunsOff(t *testing.T) {
	made := func(m, cr, area float64) drive.CoastResult {
		in := drive.CoastInput{Mass: measure.Exact(units.Kilograms(m))}
		for _, p := range [][2]float64{{30, 25}, {20, 15}, {10, 5}} {
			in.Runs = append(in.Runs, stretch(p[0], p[1], rolled(m, cr, area, 1.225, p[0], p[1]), 0.01))
		}
		return ok(drive.CoastDown(in, drive.CoastOptions{}))(t)
	}
	for _, c := range []struct {
		what        string
		m, cr, area float64
		found       bool
	}{
		{"little rolling", 245, 4e-5, 0.6, true}, {"no rolling", 245, 1e-5, 0.6, false},
		{"little drag", 245, 0.02, 7e-4, true}, {"no drag", 245, 0.02, 4e-4, false},
		{"heavy", 7.8e5, 0.02, 50, true}, {"too heavy", 8.4e5, 0.02, 50, false},
		{"a barn door", 2.45e4, 0.02, 30, true}, {"a barn", 2.45e5, 0.02, 700, false},
	} {
		r := made(c.m, c.cr, c.area)
		if r.Reason.Given() == c.found {
			t.Errorf("%s: %+v", c.what, r)
			continue
		}
		if c.found {
			near(t, c.what+", rolling", r.Rolling.Value().SI(), c.cr, 1e-6)
			near(t, c.what+", drag", r.DragArea.Value().SquareMetres(), c.area, 1e-6)
		}
	}
}

// Stretches so alike that drag and rolling are correlated to a part in 10^12 part
// nothing, however well they were timed: of 30 to 25 m/s, a part in a million apart.
func TestCoastOfStretchesAlike(t *testing.T) {
	for apart, parted := range map[float64]bool{1e-8: false, 0.7e-6: false, 1.5e-6: true, 1e-3: true} {
		for _, u := range []float64{1e-6, 1e-3, 0.1, 3} {
			in := drive.CoastInput{Mass: measure.Exact(units.Kilograms(245))}
			for _, k := range []float64{1, 1 + apart} {
				in.Runs = append(in.Runs, stretch(30*k, 25*k, rolled(245, 0.018, 0.6, 1.225, 30*k, 25*k), u))
			}
			r, err := drive.CoastDown(in, drive.CoastOptions{SpeedScale: -1})
			if err != nil || (r.Reason.Code == "not-a-run-down") == parted {
				t.Errorf("%g apart, ± %g s: %v, %+v", apart, u, err, r)
			}
		}
	}
}

// What was given is not assumed.
func TestCoastAssumes(t *testing.T) {
	in := noisy()
	count := func(in drive.CoastInput, opt drive.CoastOptions) int {
		return len(ok(drive.CoastDown(in, opt))(t).Basis.Assumed)
	}
	all := count(in, drive.CoastOptions{})
	if all != 3 || count(in, drive.CoastOptions{Turning: 0.03}) != 2 || count(in, drive.CoastOptions{SpeedScale: 0.01}) != 2 {
		t.Errorf("%d assumed", all)
	}
	in.Density = units.KilogramsPerCubicMetre(1.2)
	if count(in, drive.CoastOptions{}) != 2 || count(in, drive.CoastOptions{Turning: -1, SpeedScale: -1}) != 0 {
		t.Error("what was given is assumed")
	}
}
