package ignition_test

import (
	"math"
	"testing"

	"example.com/benchbook/timing/crank"
	"example.com/benchbook/timing/gear"
	"example.com/benchbook/timing/ignition"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// refused is the path of the one fault of an error, "none" if it has no path, "" if
// there is no fault.
func refused(t *testing.T, err error) string {
	t.Helper()
	f := fault.Faults(err)
	switch {
	case len(f) == 0:
		return ""
	case len(f) > 1:
		t.Errorf("%d faults: %v", len(f), err)
	case f[0].Path == "":
		return "none"
	}
	return f[0].Path
}

// What stands at a documented limit is taken, what stands past it refused, by name.
func TestLimits(t *testing.T) {
	read := ignition.Readings{Advanced: at("38 BTDC")}
	with := func(change func(*ignition.Spec)) error {
		in := ignition.Input{Spec: ignition.Spec{Full: at("38 BTDC")}, Read: read}
		change(&in.Spec)
		_, err := ignition.Diagnose(in, ignition.Options{})
		return err
	}
	opt := func(o ignition.Options) error {
		_, err := ignition.Diagnose(ignition.Input{Spec: ignition.Spec{Full: at("38 BTDC")}, Read: read}, o)
		return err
	}
	rangeOf := func(deg float64) error {
		return with(func(s *ignition.Spec) { s.Range = measure.Exact(units.Degrees(deg)) })
	}
	gap := func(spec, read float64) error {
		in := ignition.Input{Spec: ignition.Spec{Full: at("38 BTDC"), Gap: measure.Exact(units.Millimetres(spec))}}
		in.Read.Gap = measure.Exact(units.Millimetres(read))
		_, err := ignition.Diagnose(in, ignition.Options{})
		return err
	}
	prior := func(p float64) error { return opt(ignition.Options{Priors: map[string]float64{"slipped": p}}) }
	retarded := func(deg float64) error {
		_, err := ignition.HalfSpeed().Retarded(units.Before(units.TDC, 38), units.Degrees(deg))
		return err
	}
	rate := func(low, high float64) error {
		return opt(ignition.Options{GapRate: ignition.GapRate{LowDegreesPerMM: low, HighDegreesPerMM: high}})
	}
	shift := func(from, to float64) error {
		_, err := ignition.GapShift(units.Millimetres(from), units.Millimetres(to), ignition.GapRate{}, ignition.HalfSpeed())
		return err
	}
	turned := func(seconds, speed float64) error {
		_, err := ignition.Turned(units.Seconds(seconds), units.RadiansPerSecond(speed))
		return err
	}
	burn := func(delay, distance, flame, speed float64) error {
		_, err := ignition.BurnEnd(units.Before(units.TDC, 20), units.CrankDegrees(delay), units.Metres(distance), units.MetresPerSecond(flame), units.RadiansPerSecond(speed))
		return err
	}
	onRim := func(by, diameter float64) error {
		_, err := ignition.OnRim(units.CrankDegrees(by), units.Millimetres(diameter))
		return err
	}
	rim := func(arc, diameter float64) error {
		_, err := ignition.Where{Rim: measure.Exact(units.Millimetres(arc))}.Locate(ignition.Gauges{RimDiameter: measure.Exact(units.Millimetres(diameter))})
		return err
	}
	mm := measure.MustRead("9 mm", measure.DialGauge())
	two := func(w ignition.Where) error { _, err := w.Locate(ignition.Gauges{Slider: slider()}); return err }
	_, noTrain := ignition.DriveOf(gear.Simple(1, 40))
	_, odd := ignition.DriveOf(gear.Simple(20, 30))
	past := func(x float64) float64 { return math.Nextafter(x, math.Inf(1)) }
	for _, c := range []struct {
		name string
		err  error
		path string // "": taken
	}{
		{"a setting within 90°", opt(ignition.Options{Setting: 90}), ""}, {"more", opt(ignition.Options{Setting: 90.001}), "options.setting"},
		{"TDC within 90°", opt(ignition.Options{TDCError: 90}), ""}, {"more", opt(ignition.Options{TDCError: 90.001}), "options.tdc_error"},
		{"points that stay shut", gap(0.3, 0), ""}, {"less", gap(0.3, -1e-9), "read.gap"}, {"5 mm", gap(5, 0.3), "spec.gap"}, {"less", gap(math.Nextafter(5, 0), 0.3), ""},
		{"no prior", prior(0), "options.priors.slipped"}, {"hardly any", prior(1e-12), ""},
		{"a range of nothing", rangeOf(0), ""}, {"of 90°", rangeOf(90), ""}, {"of more", rangeOf(90.001), "spec.range"}, {"of less than nothing", rangeOf(-0.001), "spec.range"},
		{"retarded by nothing", retarded(0), ""}, {"by 90°", retarded(90), ""}, {"by more", retarded(90.001), "range"}, {"by less than nothing", retarded(-0.001), "range"},
		{"64 sparks", ignition.Drive{Sparks: 64}.Err(), ""}, {"65", ignition.Drive{Sparks: 65}.Err(), "sparks"},
		{"one rate", rate(20, 20), ""}, {"rates crossed", rate(20.1, 20), "options.gap_rate"}, {"a rate of nothing", rate(0, 20), "options.gap_rate"},
		{"a rate below 1000", rate(20, math.Nextafter(1000, 0)), ""}, {"of 1000", rate(20, 1000), "options.gap_rate"},
		{"a gap of nothing", shift(0, 0.3), "from"}, {"a hair", shift(1e-6, 0.3), ""}, {"of 5 mm", shift(0.3, 5), "to"}, {"less", shift(0.3, math.Nextafter(5, 0)), ""},
		{"no time", turned(0, 100), ""}, {"less", turned(-1e-9, 100), "time"}, {"a standing crank", turned(1, 0), ""}, {"backwards", turned(1, -1e-9), "speed"},
		{"1e12 seconds", turned(1e12, 1), ""}, {"more", turned(past(1e12), 1), "time"},
		{"a flame at 1 nm/s", burn(0, 0, 1e-9, 100), ""}, {"slower", burn(0, 0, 9e-10, 100), "speed"},
		{"a crank at 1e-9 rad/s", burn(0, 0, 15, 1e-9), ""}, {"slower", burn(0, 0, 15, 9e-10), "speed"},
		{"a delay below nothing", burn(-1e-9, 0, 15, 100), "delay"}, {"a distance below nothing", burn(0, -1e-9, 15, 100), "distance"},
		{"half a turn on", onRim(180, 100), ""}, {"more", onRim(past(180), 100), "by"}, {"half a turn back", onRim(-180, 100), ""}, {"more", onRim(-past(180), 100), "by"},
		{"no rim", onRim(10, 0), "diameter"}, {"a small one", onRim(10, 1e-6), ""},
		{"the mark itself", rim(0, 100), ""}, {"past it", rim(-1e-6, 100), "rim"}, {"half the rim", rim(50*math.Pi, 100), ""}, {"more", rim(past(50*math.Pi), 100), "rim"},
		{"a rim of no diameter", rim(0, 0), "rim"}, {"a rim of less", rim(-1, -1), "rim"},
		{"no rim's diameter", func() error { _, err := ignition.Where{Rim: mm}.Locate(ignition.Gauges{}); return err }(), "rim_diameter"},
		{"a place in no way", two(ignition.Where{}), "none"},
		{"in one way", two(ignition.Where{Travel: mm}), ""},
		{"in two ways", two(ignition.Where{At: at("30 BTDC").At, Travel: mm}), "none"},
		{"a train of one tooth", noTrain, "train[0].driver"}, {"a spark that falls elsewhere", odd, "ratio"},
		{"a train of another ratio", with(func(s *ignition.Spec) { s.Train = gear.Simple(20, 20) }), "spec.train"},
	} {
		if got := refused(t, c.err); got != c.path {
			t.Errorf("%s: refused at %q, want %q: %v", c.name, got, c.path, c.err)
		}
	}
}

// Full advance, the static figure and the range must agree within three standard
// uncertainties and a degree; a range without doubt is what the two leave.
func TestFiguresMustAgree(t *testing.T) {
	place := func(before, u float64) ignition.Where {
		return ignition.Where{At: measure.At(units.Before(units.TDC, units.CrankDegrees(before)), units.CrankDegrees(u))}
	}
	run := func(s ignition.Spec) (ignition.Result, error) {
		return ignition.Diagnose(ignition.Input{Spec: s, Read: ignition.Readings{Advanced: at("38 BTDC")}}, ignition.Options{})
	}
	// 3 and 4 of the two figures make 5, with 12 of the range (6 at the shaft) 13: what
	// they leave may differ from the range by 3 x 13 + 1 = 40.
	for shaft, path := range map[float64]string{35: "", 35.01: "spec.range", 0: "", 15: ""} {
		r, err := run(ignition.Spec{Full: place(38, 3), Static: place(8, 4), Range: measure.Of(units.Degrees(shaft), 6*units.Degree)})
		if got := refused(t, err); got != path {
			t.Errorf("range %v: refused at %q", shaft, got)
		}
		if err == nil && (r.Range != 30 || r.Full.Value().Before() != 38 || r.Retard.Value().Before() != 8 || r.Full.U() != 3 || r.Retard.U() != 4) {
			t.Errorf("range %v: %v from %v to %v", shaft, r.Range, r.Full, r.Retard)
		}
	}
	if r, err := run(ignition.Spec{Full: place(38, 3), Static: place(38, 4)}); err != nil || r.Range != 0 {
		t.Errorf("one figure for both: %v, %v", r.Range, err)
	}
	if _, err := run(ignition.Spec{Full: place(38, 3), Static: place(38.01, 4)}); refused(t, err) != "spec.static" {
		t.Errorf("static before full: %v", err)
	}
	// The static figure alone: full advance is the range earlier, its doubt both.
	r, err := run(ignition.Spec{Static: place(8, 3), Range: measure.Of(15*units.Degree, 2*units.Degree)})
	if err != nil || r.Full.Value().Before() != 38 || r.Full.U() != 5 || r.Retard.Value().Before() != 8 || r.Retard.U() != 3 {
		t.Errorf("static alone: from %v to %v, %v", r.Full, r.Retard, err)
	}
}

// A start may kick if the retarded spark can fall more than 5° early, or nobody knows.
// Doubt 13 of figures 3, 4 and 12, all exact in binary.
func TestMayKick(t *testing.T) {
	place := func(before, u float64) ignition.Where {
		return ignition.Where{At: measure.At(units.Before(units.TDC, units.CrankDegrees(before)), units.CrankDegrees(u))}
	}
	movable := ignition.Spec{Full: place(38, 3), Static: place(8, 4)}
	fixed := ignition.Spec{Static: place(8, 4), Range: measure.Exact(0 * units.Degree)}
	for name, c := range map[string]struct {
		spec ignition.Spec
		read ignition.Readings
		want bool
	}{
		"retarded, 5° early at most":      {movable, ignition.Readings{Retarded: place(0, 3)}, false},
		"retarded, a little more":         {movable, ignition.Readings{Retarded: place(0.01, 3)}, true},
		"only advanced, and it moves":     {movable, ignition.Readings{Advanced: place(0, 3)}, true},
		"fixed, 5° early at most":         {fixed, ignition.Readings{Advanced: place(0, 3)}, false},
		"fixed, a little more":            {fixed, ignition.Readings{Advanced: place(0.01, 3)}, true},
		"fixed, nothing but the stroke":   {fixed, ignition.Readings{Stroke: ignition.Compression}, true},
		"movable, nothing but the stroke": {movable, ignition.Readings{Stroke: ignition.Compression}, true},
	} {
		r, err := ignition.Diagnose(ignition.Input{Spec: c.spec, Read: c.read}, ignition.Options{TDCError: 12})
		if err != nil || r.MayKick != c.want {
			t.Errorf("%s: %v, early by %v and %v, %v", name, r.MayKick, r.Retarded.Early, r.Advanced.Early, err)
		}
	}
}

// Half a turn out is called early, from whichever side the disc is read.
func TestHalfATurnIsEarly(t *testing.T) {
	for _, read := range []string{"142 ATDC", "218 BTDC"} {
		r, err := ignition.Diagnose(ignition.Input{Spec: spec(), Read: ignition.Readings{Advanced: at(read)}}, ignition.Options{})
		if err != nil || r.Advanced.Early.Value() != 180 || r.Advanced.Shaft != 90 {
			t.Errorf("%s: %v, %v", read, r.Advanced.Early, err)
		}
	}
}

// Figures without any doubt rule out every cause that fixes the angle, in both its
// ways, and leave those that do not.
func TestWithoutDoubt(t *testing.T) {
	const u = 1e-160 // whose square is nothing
	place := func(before float64) ignition.Where {
		return ignition.Where{At: measure.At(units.Before(units.TDC, units.CrankDegrees(before)), u)}
	}
	r, err := ignition.Diagnose(ignition.Input{
		Spec: ignition.Spec{Full: place(38), Range: measure.Of(units.Degrees(15), u)}, Read: ignition.Readings{Advanced: place(50)},
	}, ignition.Options{Setting: u, TDCError: u})
	if err != nil {
		t.Fatal(err)
	}
	for _, key := range []string{"nothing-wrong", "wrong-rotation"} {
		if o, _ := r.Causes.Of(key); o.Share != 0 || !math.IsInf(o.LogLikelihood, -1) {
			t.Errorf("%s: %v, %v", key, o.Share, o.LogLikelihood)
		}
	}
	if o, _ := r.Causes.Of("slipped"); !(o.Share > 0.1) {
		t.Errorf("slipped: %v", o.Share)
	}
}

// A crank without a rod and far off the bore: with the long rod the stroke is shorter,
// and a travel past it is refused.
func TestTravelPastTheLongRodsStroke(t *testing.T) {
	s := crank.Slider{Throw: 40, Offset: 50}
	mid := s
	mid.Rod = s.Throw.Times(1 / 0.26) // halfway between 0.22 and 0.30
	dc, err := mid.DeadCentres()
	if err != nil {
		t.Fatal(err)
	}
	got, err := ignition.Where{Travel: measure.Exact(dc.Stroke)}.Locate(ignition.Gauges{Slider: s})
	if refused(t, err) != "slider.travel" {
		t.Errorf("%+v, %v", got, err)
	}
}
