package timing_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"example.com/benchbook/timing"
	"example.com/benchbook/timing/crank"
	"example.com/benchbook/timing/gear"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// faultsOf returns the faults of an input, none if it is taken.
func faultsOf(in timing.Input, opt timing.Options) []fault.Fault {
	if _, _, err := timing.Phases(in, opt); err != nil {
		return fault.Faults(err)
	}
	return nil
}

func sound() timing.Input {
	return timing.Input{Engine: engine(), Readings: events("25 BTDC", "65 ABDC", "65 BBDC", "25 ATDC")}
}

func crankOf(x float64) measure.Reading[units.CrankAngle] {
	return measure.Of(units.CrankDegrees(x), units.CrankDegree)
}

func camOf(x float64) measure.Reading[units.CamAngle] {
	return measure.Of(units.CamDegrees(x), units.CamDegree)
}

func barOf(x float64) measure.Reading[units.Pressure] {
	return measure.Of(units.Bars(x), units.Bars(0.1))
}

func ratioOf(x float64) measure.Reading[units.Ratio] {
	return measure.Of(units.Value(x), units.Value(0.01))
}

// lobeFor is a lobe open so many degrees, in a place where any length fits.
func lobeFor(c timing.Cam, length float64) timing.Lobe {
	l := timing.Lobe{Opens: units.After(units.TDC, units.CrankDegrees((205-length)/2)), Closes: units.After(units.BDC, units.CrankDegrees((length-155)/2))}
	if c == timing.Exhaust {
		l.Opens, l.Closes = units.After(units.BDC, l.Opens.After()), units.After(units.TDC, l.Closes.After())
	}
	return l
}

// A figure at its documented limit is taken, one just past it refused at its path.
func TestLimits(t *testing.T) {
	type at = func(in *timing.Input, o *timing.Options, x float64)
	type row struct {
		path    string
		set     at
		taken   []float64
		refused []float64
	}
	rows := []row{
		{path: "engine.check.lift", set: func(in *timing.Input, _ *timing.Options, x float64) { in.Engine.Check.Lift = units.Millimetres(x) }, taken: []float64{0, 20}, refused: []float64{-0.001, 20.001}},
		{path: "engine.check.clearance", set: func(in *timing.Input, _ *timing.Options, x float64) { in.Engine.Check.Clearance = units.Millimetres(x) }, taken: []float64{0, 5}, refused: []float64{-0.001, 5.001}},
		{path: "readings.check.lift", set: func(in *timing.Input, _ *timing.Options, x float64) {
			in.Readings.Check = &timing.Check{Lift: units.Millimetres(x)}
		}, taken: []float64{0, 20}, refused: []float64{-0.001, 20.001}},
		{path: "engine.inlet.opens", set: func(in *timing.Input, _ *timing.Options, x float64) {
			in.Engine.Inlet.Opens, in.Engine.Inlet.Closes = units.After(units.TDC, units.CrankDegrees(x)), units.After(units.BDC, units.CrankDegrees(math.Copysign(40, x)+10))
		}, taken: []float64{-120, 120, 0, 480}, refused: []float64{-120.1, 120.1, math.Inf(1)}},
		{path: "engine.inlet.closes", set: func(in *timing.Input, _ *timing.Options, x float64) {
			in.Engine.Inlet.Closes = units.After(units.BDC, units.CrankDegrees(x))
		}, taken: []float64{-120, 120, 0}, refused: []float64{-120.1, 120.1, math.Inf(-1)}},
		{path: "engine.exhaust.opens", set: func(in *timing.Input, _ *timing.Options, x float64) {
			in.Engine.Exhaust.Opens, in.Engine.Exhaust.Closes = units.After(units.BDC, units.CrankDegrees(x)), units.After(units.TDC, units.CrankDegrees(math.Copysign(40, x)+10))
		}, taken: []float64{-120, 120}, refused: []float64{-120.1, 120.1}},
		{path: "engine.exhaust.closes", set: func(in *timing.Input, _ *timing.Options, x float64) {
			in.Engine.Exhaust.Closes = units.After(units.TDC, units.CrankDegrees(x))
		}, taken: []float64{-120, 105}, refused: []float64{-120.1, 120.1}},
		{path: "engine.inlet.closes", set: func(in *timing.Input, _ *timing.Options, x float64) { in.Engine.Inlet = lobeFor(timing.Inlet, x) }, taken: []float64{60, 350}, refused: []float64{59.9, 350.1}},
		{path: "engine.exhaust.closes", set: func(in *timing.Input, _ *timing.Options, x float64) {
			in.Engine.Exhaust = lobeFor(timing.Exhaust, x)
		}, taken: []float64{60, 350}, refused: []float64{59.9, 350.1}},
		{path: "engine.inlet.max_lift", set: func(in *timing.Input, _ *timing.Options, x float64) { in.Engine.Inlet.MaxLift = mm(x, 0.1) }, taken: []float64{1, 30}, refused: []float64{0.999, 30.001}},
		{path: "engine.exhaust.max_lift", set: func(in *timing.Input, _ *timing.Options, x float64) {
			in.Engine.Check.Lift = 10 * units.Millimetre // and above it by more than a tenth
			in.Engine.Exhaust.MaxLift = mm(x, 0.1)
		}, taken: []float64{11.001}, refused: []float64{11}},
		{path: "engine.inlet.key_angle", set: func(in *timing.Input, _ *timing.Options, x float64) { in.Engine.Inlet.KeyAngle = camOf(x) }, taken: []float64{-360, 360}, refused: []float64{-360.1, 360.1}},
		{path: "engine.inlet.opening_rise", set: func(in *timing.Input, _ *timing.Options, x float64) {
			in.Engine.Inlet.OpeningRise = units.Millimetres(x)
		}, taken: []float64{0, 0.001, 1}, refused: []float64{-0.001, 0.0009, 1.001}},
		{path: "engine.exhaust.closing_rise", set: func(in *timing.Input, _ *timing.Options, x float64) {
			in.Engine.Exhaust.ClosingRise = units.Millimetres(x)
		}, taken: []float64{0, 0.001, 1}, refused: []float64{-0.001, 0.0009, 1.001}},
		{path: "engine.rocker", set: func(in *timing.Input, _ *timing.Options, x float64) { in.Engine.Rocker = ratioOf(x) }, taken: []float64{0.2, 5}, refused: []float64{0.199, 5.001}},
		{path: "engine.inlet_shim", set: func(in *timing.Input, _ *timing.Options, x float64) {
			in.Engine.InletShim = timing.Shim{Each: units.CrankDegrees(x), Most: 2}
		}, taken: []float64{-30, 30, 0.5}, refused: []float64{-30.1, 30.1, 0}},
		{path: "readings.tdc_late", set: func(in *timing.Input, _ *timing.Options, x float64) { in.Readings.TDCLate = crankOf(x) }, taken: []float64{-180, 180}, refused: []float64{-180.1, 180.1}},
		{path: "readings.lag", set: func(in *timing.Input, _ *timing.Options, x float64) { in.Readings.Lag = crankOf(x) }, taken: []float64{-30, 30}, refused: []float64{-30.1, 30.1}},
		{path: "readings.inlet_max_lift", set: func(in *timing.Input, _ *timing.Options, x float64) { in.Readings.InletMaxLift = mm(x, 0.1) }, taken: []float64{0.001, 30}, refused: []float64{0, -0.001, 30.001}},
		{path: "readings.exhaust_max_lift", set: func(in *timing.Input, _ *timing.Options, x float64) { in.Readings.ExhaustMaxLift = mm(x, 0.1) }, taken: []float64{0.001, 30}, refused: []float64{0, -0.001, 30.001}},
		{path: "readings.inlet_clearance", set: func(in *timing.Input, _ *timing.Options, x float64) { in.Readings.InletClearance = mm(x, 0.1) }, taken: []float64{0, 30}, refused: []float64{-0.001, 30.001}},
		{path: "readings.exhaust_lift_at_tdc", set: func(in *timing.Input, _ *timing.Options, x float64) { in.Readings.ExhaustLiftAtTDC = mm(x, 0.1) }, taken: []float64{0, 30}, refused: []float64{-0.001, 30.001}},
		{path: "readings.inlet_on_wheel", set: func(in *timing.Input, _ *timing.Options, x float64) { in.Readings.InletOnWheel = camOf(x) }, taken: []float64{-180, 180}, refused: []float64{-180.1, 180.1}},
		{path: "readings.compression_dry", set: func(in *timing.Input, _ *timing.Options, x float64) { in.Readings.CompressionDry = barOf(x) }, taken: []float64{0, 40}, refused: []float64{-0.001, 40.001}},
		{path: "readings.leak.supply", set: func(in *timing.Input, _ *timing.Options, x float64) {
			in.Readings.Leak = timing.LeakTest{Supply: barOf(x), Held: barOf(0)}
		}, taken: []float64{0.5, 20}, refused: []float64{0.499, 20.001}},
		{path: "readings.leak.held", set: func(in *timing.Input, _ *timing.Options, x float64) {
			in.Readings.Leak = timing.LeakTest{Supply: barOf(20), Held: barOf(x)}
		}, taken: []float64{0, 20}, refused: []float64{-0.001, 20.001}},
		{path: "readings.leak.lost", set: func(in *timing.Input, _ *timing.Options, x float64) {
			in.Readings.Leak = timing.LeakTest{Lost: ratioOf(x)}
		}, taken: []float64{0, 1}, refused: []float64{-0.001, 1.001}},
		{path: "readings.leak.at", set: func(in *timing.Input, _ *timing.Options, x float64) { // from BDC, where compression begins
			in.Readings.Leak = timing.LeakTest{Lost: ratioOf(0.1), At: units.After(units.BDC, units.CrankDegrees(x))}
		}, taken: []float64{0, 270}, refused: []float64{-0.1, 270.1}},
		{path: "readings.leak.at", set: func(in *timing.Input, _ *timing.Options, x float64) {
			in.Readings.Leak = timing.LeakTest{Lost: ratioOf(0.1), At: units.After(units.TDC, units.CrankDegrees(x))}
		}, taken: []float64{-180, 90}, refused: []float64{-180.1, 90.1}},
		{path: "options.trifle", set: func(_ *timing.Input, o *timing.Options, x float64) { o.Trifle = units.CrankDegrees(x) }, taken: []float64{0, 0.001, 30}, refused: []float64{-0.001, 30.001}},
		{path: "options.near", set: func(_ *timing.Input, o *timing.Options, x float64) { o.Near = units.CrankDegrees(x) }, taken: []float64{0, 0.001, 30}, refused: []float64{-0.001, 30.001}},
		{path: "options.widths.slip_anywhere", set: func(_ *timing.Input, o *timing.Options, x float64) { o.Widths.SlipAnywhere = x }, taken: []float64{-1, 0, 1}, refused: []float64{1.001}},
		{path: "options.misread.chance", set: func(_ *timing.Input, o *timing.Options, x float64) { o.Misread.Chance = x }, taken: []float64{-1, 0, 0.5}, refused: []float64{0.501}},
		{path: "options.misread.wild", set: func(_ *timing.Input, o *timing.Options, x float64) { o.Misread.Wild = x }, taken: []float64{-1, 0, 1}, refused: []float64{1.001}},
		{path: "options.priors.nothing", set: func(_ *timing.Input, o *timing.Options, x float64) { o.Priors.Nothing = x }, taken: []float64{0, 1e-9, 1e9}, refused: []float64{-1, 1.001e9}},
		{path: "options.priors.else", set: func(_ *timing.Input, o *timing.Options, x float64) { o.Priors.Else = x }, taken: []float64{0, 1e-9, 1e9}, refused: []float64{-1, 1.001e9}},
		{path: "options.priors.worn", set: func(_ *timing.Input, o *timing.Options, x float64) { o.Priors.Worn = x }, taken: []float64{-1, 0, 1e9}, refused: []float64{1.001e9}},
	}
	for path, field := range map[string]func(w *timing.Widths) *units.CrankAngle{
		"tdc_by_eye": func(w *timing.Widths) *units.CrankAngle { return &w.TDCByEye }, "tdc_wrong": func(w *timing.Widths) *units.CrankAngle { return &w.TDCWrong },
		"duration": func(w *timing.Widths) *units.CrankAngle { return &w.Duration }, "else": func(w *timing.Widths) *units.CrankAngle { return &w.Else },
	} {
		rows = append(rows, row{path: "options.widths." + path, set: func(_ *timing.Input, o *timing.Options, x float64) { *field(&o.Widths) = units.CrankDegrees(x) }, taken: []float64{0, 0.001, 180}, refused: []float64{-0.001, 180.001}})
	}
	for path, field := range map[string]func(w *timing.Widths) *units.Length{
		"clearance": func(w *timing.Widths) *units.Length { return &w.Clearance }, "worn": func(w *timing.Widths) *units.Length { return &w.Worn },
	} {
		rows = append(rows, row{path: "options.widths." + path, set: func(_ *timing.Input, o *timing.Options, x float64) { *field(&o.Widths) = units.Millimetres(x) }, taken: []float64{0, 0.001, 10}, refused: []float64{-0.001, 10.001}})
	}
	rows = append(rows, row{path: "options.work", set: func(_ *timing.Input, o *timing.Options, x float64) { o.Work.Shim = units.Hours(x) }, taken: []float64{0, 0.001, 1000}, refused: []float64{-0.001, 1000.001}})
	for _, c := range rows {
		for _, x := range c.taken {
			in, opt := sound(), timing.Options{}
			c.set(&in, &opt, x)
			if f := faultsOf(in, opt); len(f) > 0 {
				t.Errorf("%s %v is at the limit, yet refused: %v", c.path, x, f)
			}
		}
		for _, x := range append(c.refused, math.NaN()) {
			in, opt := sound(), timing.Options{}
			c.set(&in, &opt, x)
			f := faultsOf(in, opt)
			if !slices.ContainsFunc(f, func(f fault.Fault) bool {
				return f.Path == c.path && (f.Code == fault.OutOfRange || x != x)
			}) {
				t.Errorf("%s %v is past the limit; faults %v", c.path, x, f)
			}
		}
	}
}

// Counts and names, the same way.
func TestCountsAndNames(t *testing.T) {
	type set = func(in *timing.Input, o *timing.Options)
	lobe := timing.Lobe{Opens: units.Before(units.TDC, 38), Closes: units.After(units.BDC, 78)}
	rivals := func(all ...timing.Rival) set {
		return func(in *timing.Input, _ *timing.Options) { in.Engine.Rivals = all }
	}
	vernier := func(wheel, cam int) set {
		return func(in *timing.Input, _ *timing.Options) {
			in.Engine.ExhaustVernier = timing.Vernier{Wheel: wheel, Cam: cam}
		}
	}
	shims := func(n int) set {
		return func(in *timing.Input, _ *timing.Options) {
			in.Engine.InletShim = timing.Shim{Each: units.CrankDegree, Most: n}
		}
	}
	teeth := func(n int) set { return func(_ *timing.Input, o *timing.Options) { o.Teeth = n } }
	keyways := func(n int) set { return func(in *timing.Input, _ *timing.Options) { in.Engine.Keyways = n } }
	drive := func(d gear.Drive) set { return func(in *timing.Input, _ *timing.Options) { in.Engine.Drive = d } }
	mesh := func(from string, driver int, to string, driven int) gear.Mesh {
		return gear.Mesh{From: from, Driver: driver, To: to, Driven: driven}
	}
	looked := func(f func(r *timing.Readings) *timing.Seen, v timing.Seen) set {
		return func(in *timing.Input, _ *timing.Options) { *f(&in.Readings) = v }
	}
	for _, c := range []struct {
		name string
		set  set
		path string // "": taken
		code fault.Code
	}{
		{"vernier of one hole each", vernier(1, 1), "", ""},
		{"vernier of 400 holes each", vernier(400, 400), "", ""},
		{"vernier of 400 on one", vernier(400, 1), "", ""},
		{"vernier of one on 400", vernier(1, 400), "", ""},
		{"rings that meet in 1000 ways", vernier(125, 8), "", ""},
		{"rings that meet in 1001 ways", vernier(91, 11), "engine.exhaust_vernier", fault.OutOfRange},
		{"401 holes in the wheel", vernier(401, 1), "engine.exhaust_vernier", fault.OutOfRange},
		{"401 holes in the cam", vernier(1, 401), "engine.exhaust_vernier", fault.OutOfRange},
		{"no hole in the wheel", vernier(0, 5), "engine.exhaust_vernier", fault.OutOfRange},
		{"no hole in the cam", vernier(5, 0), "engine.exhaust_vernier", fault.OutOfRange},
		{"one shim", shims(1), "", ""},
		{"100 shims", shims(100), "", ""},
		{"no shim of some worth", shims(0), "engine.inlet_shim", fault.OutOfRange},
		{"101 shims", shims(101), "engine.inlet_shim", fault.OutOfRange},
		{"24 keyways", keyways(24), "", ""},
		{"25 keyways", keyways(25), "engine.keyways", fault.OutOfRange},
		{"keyways below none", keyways(-1), "engine.keyways", fault.OutOfRange},
		{"teeth 1", teeth(1), "", ""},
		{"teeth 12", teeth(12), "", ""},
		{"teeth 13", teeth(13), "options.teeth", fault.OutOfRange},
		{"teeth -1", teeth(-1), "options.teeth", fault.OutOfRange},
		{"one name for both places", rivals(timing.Rival{Name: "a", Lobe: lobe}, timing.Rival{Name: "a", Cam: timing.Exhaust, Lobe: lobeFor(timing.Exhaust, 250)}), "", ""},
		{"one name twice", rivals(timing.Rival{Name: "a", Lobe: lobe}, timing.Rival{Name: "a", Lobe: lobe}), "engine.rivals[1].name", fault.Conflict},
		{"a rival without a name", rivals(timing.Rival{Lobe: lobe}), "engine.rivals[0].name", fault.Missing},
		{"a rival for a third place", rivals(timing.Rival{Name: "a", Cam: 2, Lobe: lobe}), "engine.rivals[0].cam", fault.UnknownName},
		{"a rival without events", rivals(timing.Rival{Name: "a"}), "engine.rivals[0].lobe.opens", fault.Missing},
		{"a rival open too briefly", rivals(timing.Rival{Name: "a", Lobe: lobeFor(timing.Inlet, 59)}), "engine.rivals[0].lobe.closes", fault.OutOfRange},
		{"a lobe that opens at TDC", func(in *timing.Input, _ *timing.Options) { in.Engine.Inlet.Opens = units.CrankPosition{} }, "", ""},
		{"a lobe that closes at TDC", func(in *timing.Input, _ *timing.Options) { in.Engine.Exhaust.Closes = units.CrankPosition{} }, "", ""},
		{"no lobe", func(in *timing.Input, _ *timing.Options) { in.Engine.Inlet = timing.Lobe{} }, "engine.inlet.opens", fault.Missing},
		{"an inlet that closes at TDC", func(in *timing.Input, _ *timing.Options) { in.Engine.Inlet.Closes = units.CrankPosition{} }, "engine.inlet.closes", fault.OutOfRange},
		{"fixings by name", func(in *timing.Input, _ *timing.Options) {
			in.Engine.InletFixing, in.Engine.ExhaustFixing = timing.OnePiece, timing.Pressed
		}, "", ""},
		{"a fourth inlet fixing", func(in *timing.Input, _ *timing.Options) { in.Engine.InletFixing = 3 }, "engine.inlet_fixing", fault.UnknownName},
		{"a fourth exhaust fixing", func(in *timing.Input, _ *timing.Options) { in.Engine.ExhaustFixing = 3 }, "engine.exhaust_fixing", fault.UnknownName},
		{"at the follower", func(in *timing.Input, _ *timing.Options) { in.Engine.Check.At = timing.AtFollower }, "", ""},
		{"a third place of lift", func(in *timing.Input, _ *timing.Options) { in.Engine.Check.At = 2 }, "engine.check.at", fault.UnknownName},
		{"TDC by mark", func(in *timing.Input, _ *timing.Options) { in.Readings.TDC = timing.TDCByMark }, "", ""},
		{"a fifth way to TDC", func(in *timing.Input, _ *timing.Options) { in.Readings.TDC = 4 }, "readings.tdc", fault.UnknownName},
		{"marks", looked(func(r *timing.Readings) *timing.Seen { return &r.MarksAlign }, 3), "readings.marks_align", fault.UnknownName},
		{"sequence", looked(func(r *timing.Readings) *timing.Seen { return &r.Sequence }, 3), "readings.sequence", fault.UnknownName},
		{"magneto", looked(func(r *timing.Readings) *timing.Seen { return &r.MagnetoMarks }, 3), "readings.magneto_marks", fault.UnknownName},
		{"breather", looked(func(r *timing.Readings) *timing.Seen { return &r.Leak.AtBreather }, 3), "readings.leak.at_breather", fault.UnknownName},
		{"magneto's marks out", looked(func(r *timing.Readings) *timing.Seen { return &r.MagnetoMarks }, timing.No), "", ""},
		{"quiet breather", looked(func(r *timing.Readings) *timing.Seen { return &r.Leak.AtBreather }, timing.No), "", ""},
		{"a camshaft and an inlet spindle", drive(gear.Drive{mesh("crank", 24, timing.Camshaft, 48), mesh("crank", 24, timing.InletSpindle, 48)}), "engine.drive", fault.Conflict},
		{"a camshaft and an exhaust spindle", drive(gear.Drive{mesh("crank", 24, timing.Camshaft, 48), mesh("crank", 24, timing.ExhaustSpindle, 48)}), "engine.drive", fault.Conflict},
		{"no exhaust spindle", drive(gear.Drive{mesh("crank", 24, timing.InletSpindle, 48)}), "engine.drive", fault.Missing},
		{"a magneto beside the cams", drive(append(timing.TwoCamwheels(24, 48), mesh(timing.InletSpindle, 48, "magneto", 48))), "", ""},
		{"a camshaft at full speed", drive(timing.OneCamwheel(24, 24)), "engine.drive.camshaft.train", fault.Conflict},
		{"a cylinder without a bore", func(in *timing.Input, _ *timing.Options) {
			in.Engine.Cylinder = crank.Cylinder{Slider: crank.Slider{Stroke: 83 * units.Millimetre, Rod: 150 * units.Millimetre}, Clearance: 60 * units.CubicCentimetre}
		}, "engine.cylinder.bore", ""},
		{"a cylinder without a clearance", func(in *timing.Input, _ *timing.Options) {
			in.Engine.Cylinder = crank.Cylinder{Bore: 78 * units.Millimetre, Slider: crank.Slider{Stroke: 83 * units.Millimetre, Rod: 150 * units.Millimetre}}
		}, "engine.cylinder.clearance", ""},
		{"a head without a stroke", func(in *timing.Input, _ *timing.Options) { in.Engine.Head = &timing.Head{} }, "engine.head.slider.stroke", ""},
		{"more combinations than a plan holds", func(in *timing.Input, _ *timing.Options) {
			in.Engine.InletVernier, in.Engine.InletShim = timing.Vernier{Wheel: 125, Cam: 8}, timing.Shim{Each: units.CrankDegree, Most: 4}
		}, "engine.moves", fault.OutOfRange}, // 25 teeth, 1001 holes, 9 shims: 225 225
		{"as many as it holds", func(in *timing.Input, _ *timing.Options) {
			in.Engine.InletVernier, in.Engine.InletShim = timing.Vernier{Wheel: 125, Cam: 8}, timing.Shim{Each: units.CrankDegree, Most: 3}
		}, "", ""},
	} {
		in, opt := sound(), timing.Options{}
		c.set(&in, &opt)
		f := faultsOf(in, opt)
		if c.path == "" && len(f) > 0 || c.path != "" && !slices.ContainsFunc(f, func(f fault.Fault) bool { return f.Path == c.path && (c.code == "" || f.Code == c.code) }) {
			t.Errorf("%s: want a fault %s at %q, got %v", c.name, c.code, c.path, fmt.Sprint(f))
		}
	}
}
