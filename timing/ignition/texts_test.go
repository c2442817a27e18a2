package ignition_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/benchbook/refdata"
	"example.com/benchbook/timing/crank"
	"example.com/benchbook/timing/gear"
	"example.com/benchbook/timing/ignition"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

func diagnose(t *testing.T, in ignition.Input, opt ignition.Options) ignition.Result {
	t.Helper()
	r, err := ignition.Diagnose(in, opt)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// What is to be done about each fault and which way the shaft is to be turned: back by
// half of what the crank shows. 38° before TDC, 15° of control, 20 to 40 teeth.
func TestRemedyTurnsItBack(t *testing.T) {
	sure := func(key string) ignition.Options { return ignition.Options{Priors: map[string]float64{key: 100}} }
	for _, c := range []struct {
		cause, adv, ret string
		turn            units.Angle
		text            string
	}{
		{"slipped", "75 ATDC", "105 ATDC", 56.5, "free the drive on its taper, clean both faces dry, and set it 56.5° of its shaft earlier"},
		{"slipped", "58 BTDC", "28 BTDC", -10, "free the drive on its taper, clean both faces dry, and set it 10.0° of its shaft later"},
		{"slipped", "38 BTDC", "8 BTDC", 0, "free the drive on its taper, clean both faces dry, and set it as it stands"},
		{"slipped", "", "18 BTDC", -5, "free the drive on its taper, clean both faces dry, and set it 5.0° of its shaft later"},
		{"slipped", "", "", 0, "read full advance, then time it anew"},
		{"timed-on-retard", "68 BTDC", "38 BTDC", -15, "time it again with the control on full advance, 15.0° of its shaft later"},
		{"timed-on-advance", "8 BTDC", "22 ATDC", 15, "time it again with the control on full advance, 15.0° of its shaft earlier"},
		{"timed-on-advance", "", "", 15, "time it again with the control on full advance, 15.0° of its shaft earlier"},
		{"crank-as-shaft", "76 BTDC", "46 BTDC", -19, "time it again by the disc on the crank, 19.0° of its shaft later"},
		{"shaft-as-crank", "19 BTDC", "11 ATDC", 9.5, "time it again by the disc on the crank, 9.5° of its shaft earlier"},
		{"tooth-1:+1", "56 BTDC", "26 BTDC", -9, "re-mesh the drive, 9.0° of its shaft later"},
		{"tooth-1:-2", "2 BTDC", "28 ATDC", 18, "re-mesh the drive, 18.0° of its shaft earlier"},
		{"half-turn", "38 BTDC", "8 BTDC", 180, "free the drive and turn the ignition shaft half a turn, then time it on compression at full advance"},
		{"wrong-rotation", "38 BTDC", "68 BTDC", 0, "do not start it: fit an instrument, or points plate and advance, made for this rotation"},
		{"control-short", "22 BTDC", "8 BTDC", 0, "free and oil the advance control or weights, see both stops reached, then read again"},
		{"gap", "50 BTDC", "20 BTDC", 0, "set the points gap, then read the timing again before moving anything else"},
		{"tdc-mark", "44 BTDC", "14 BTDC", 0, "find TDC by a positive stop and mark it anew; do not move the ignition yet"},
		{measure.SomethingElse, "120 ATDC", "44 BTDC", 0, "take the next readings before moving anything"},
	} {
		in := ignition.Input{Spec: spec()}
		in.Spec.Train = gear.Simple(20, 40)
		in.Spec.Gap = measure.MustRead("0.30 mm", measure.FeelerGauge())
		in.Read.Gap = measure.MustRead("0.30 mm", measure.FeelerGauge())
		if c.cause == "gap" {
			in.Read.Gap = measure.MustRead("0.50 mm", measure.FeelerGauge())
		}
		for _, x := range []struct {
			text string
			to   *ignition.Where
		}{{c.adv, &in.Read.Advanced}, {c.ret, &in.Read.Retarded}} {
			if x.text != "" {
				*x.to = at(x.text)
			}
		}
		r := diagnose(t, in, sure(c.cause))
		i := slices.IndexFunc(r.Remedies, func(x ignition.Remedy) bool { return x.For == c.cause })
		if i < 0 {
			t.Errorf("%s: none among %+v", c.cause, r.Remedies)
			continue
		}
		if got := r.Remedies[i]; (got.Turn-c.turn).Abs() > 1e-9 || got.Text != c.text {
			t.Errorf("%s: %v, %q", c.cause, got.Turn, got.Text)
		}
	}
}

// A turn is named from the twentieth of a degree that rounds to a tenth.
func TestAHairOfATurn(t *testing.T) {
	in := ignition.Input{Spec: ignition.Spec{Full: at("TDC"), Range: measure.Exact(0 * units.Degree)}}
	for read, want := range map[string]string{"0.1 ATDC": "0.1° of its shaft earlier", "0.098 ATDC": "as it stands", "0.2 BTDC": "0.1° of its shaft later"} {
		in.Read.Advanced = at(read)
		r := diagnose(t, in, ignition.Options{Priors: map[string]float64{"slipped": 100}})
		if !strings.HasSuffix(r.Remedies[0].Text, "and set it "+want) {
			t.Errorf("%s: %q", read, r.Remedies[0].Text)
		}
	}
}

// The words for causes that have a size in them.
func TestCauseTexts(t *testing.T) {
	text := func(in ignition.Input, key string) string {
		in.Read.Advanced = at("38 BTDC")
		o, _ := diagnose(t, in, ignition.Options{}).Causes.Of(key)
		return o.Text
	}
	train := ignition.Input{Spec: spec()}
	train.Spec.Train = gear.Simple(20, 32).Then(32, 40) // a tooth of 32 is 18° of the crank, one of 40 too
	odd := ignition.Input{Spec: spec()}
	odd.Spec.Train = gear.Simple(24, 32).Then(30, 45) // 15° and 16°
	fast := ignition.Input{Spec: spec()}
	fast.Spec.Drive = ignition.EngineSpeed()
	for _, c := range []struct {
		in        ignition.Input
		key, want string
	}{
		{train, "tooth-1:-2", "ignition drive 2 teeth late at mesh 1"},
		{train, "tooth-1:-1", "ignition drive 1 tooth late at mesh 1"},
		{train, "tooth-1:+1", "ignition drive 1 tooth early at mesh 1"},
		{train, "tooth-1:+2", "ignition drive 2 teeth early at mesh 1"},
		{train, "tooth-2:+1", ""}, // no other than at mesh 1
		{odd, "tooth-2:+1", "ignition drive 1 tooth early at mesh 2"},
		{ignition.Input{Spec: spec()}, "tooth-1:+1", ""},
		{fast, "half-turn", "ignition shaft half a turn out: the spark falls 180° of the crank away"},
		{train, "half-turn", "ignition shaft half a turn out: right on the disc, but the spark falls on overlap"},
	} {
		if got := text(c.in, c.key); got != c.want {
			t.Errorf("%s: %q, want %q", c.key, got, c.want)
		}
	}
	in := ignition.Input{Spec: odd.Spec, Read: ignition.Readings{Advanced: at("38 BTDC")}}
	r := diagnose(t, in, ignition.Options{})
	one, _ := r.Causes.Of("tooth-1:-1")
	two, _ := r.Causes.Of("tooth-1:-2")
	nothing, _ := r.Causes.Of("nothing-wrong")
	if got, want := one.Prior/two.Prior, 3.0; got < want-1e-9 || got > want+1e-9 { // 0.03 and 0.01 by the documentation
		t.Errorf("one tooth is %v as likely as two", got)
	}
	if got := nothing.Prior / one.Prior; got < 40.0/3-1e-9 || got > 40.0/3+1e-9 {
		t.Errorf("nothing wrong is %v as likely as a tooth", got)
	}
}

// What is told as assumed and as not looked at, and only that.
func TestToldAsAssumed(t *testing.T) {
	assumed := func(r ignition.Result) (what []string) {
		for _, a := range r.Basis.Assumed {
			what = append(what, a.What+": "+a.Value)
		}
		return what
	}
	unchecked := func(r ignition.Result) (what []string) {
		for _, u := range r.Basis.NotChecked {
			what = append(what, u.What)
		}
		return what
	}
	own := ignition.Options{Setting: 1, TDCError: 1, GapRate: ignition.GapRate{LowDegreesPerMM: 20, HighDegreesPerMM: 30}}
	fixed := measure.Exact(0 * units.Degree)
	rodless := ignition.Gauges{Slider: crank.Slider{Stroke: 83}}
	deep := ignition.MustReadWhere("11 mm ± 0.1")
	for name, c := range map[string]struct {
		in                 ignition.Input
		opt                ignition.Options
		assumed, unchecked []string
	}{
		"nothing given": {
			ignition.Input{Spec: ignition.Spec{Full: at("38 BTDC")}, Read: ignition.Readings{Advanced: at("38 BTDC")}}, ignition.Options{},
			[]string{"range of the advance, at the ignition shaft: 12.5° ± 4°", "how well a good setting sits: 1.5° of the crank", "error of TDC: 1.5° crank", "slope of the points cam: 15° to 50° of its shaft per mm"},
			[]string{"full retard, where a start is made", "which stroke the spark falls on", "points gap", "strength of the spark"},
		},
		"all given": {
			ignition.Input{Spec: spec(), Read: ignition.Readings{Advanced: at("38 BTDC"), Retarded: at("8 BTDC"), Stroke: ignition.Compression, Gap: measure.MustRead("0.3 mm", measure.FeelerGauge())}}, own,
			nil, []string{"strength of the spark"},
		},
		"a stop, at engine speed, fixed": {
			ignition.Input{Spec: ignition.Spec{Full: at("38 BTDC"), Range: fixed, Drive: ignition.EngineSpeed()}, Read: ignition.Readings{Retarded: at("38 BTDC"), TDCByStop: true}}, ignition.Options{Setting: 1},
			[]string{"error of TDC: 0.5° crank", "slope of the points cam: 15° to 50° of its shaft per mm"},
			[]string{"full advance", "points gap", "strength of the spark"},
		},
		"travel without a rod, twice": {
			ignition.Input{Spec: ignition.Spec{Full: deep, Range: fixed, Gauges: rodless}, Read: ignition.Readings{Advanced: deep, Stroke: ignition.Overlap}}, own,
			[]string{"rod length: 3.3 to 4.5 throws"},
			[]string{"points gap", "strength of the spark"},
		},
	} {
		r := diagnose(t, c.in, c.opt)
		if got := assumed(r); !slices.Equal(got, c.assumed) {
			t.Errorf("%s: assumed %q", name, got)
		}
		if got := unchecked(r); !slices.Equal(got, c.unchecked) {
			t.Errorf("%s: not checked %q", name, got)
		}
	}
	m, err := ignition.GapShift(units.Millimetres(0.3), units.Millimetres(0.4), ignition.GapRate{LowDegreesPerMM: 20, HighDegreesPerMM: 30}, ignition.HalfSpeed())
	if err != nil || len(m.Basis.Assumed) != 0 {
		t.Errorf("a rate of one's own is assumed: %+v, %v", m.Basis.Assumed, err)
	}
	m, _ = ignition.GapShift(units.Millimetres(0.3), units.Millimetres(0.4), ignition.GapRate{}, ignition.HalfSpeed())
	if len(m.Basis.Assumed) != 1 || m.Basis.Assumed[0].Status != refdata.CommonPractice {
		t.Errorf("the usual rate is not told: %+v", m.Basis.Assumed)
	}
}

// What is wrong with a place that cannot be read, and one that reads from a file.
func TestWhereTexts(t *testing.T) {
	for text, want := range map[string]string{
		"mm":            "mm: expected degrees, piston travel or a distance on the rim, such as 38 BTDC, 11 mm BTDC or 60 mm on the rim",
		"rim":           "rim: expected degrees, piston travel or a distance on the rim, such as 38 BTDC, 11 mm BTDC or 60 mm on the rim",
		"11 mm ± -1 mm": "11 mm ± -1 mm: the uncertainty must be above zero; declare a figure exact by name",
	} {
		_, err := ignition.ReadWhere(text)
		if err == nil || err.Error() != want {
			t.Errorf("%q: %v", text, err)
		}
	}
	var w ignition.Where
	if err := w.UnmarshalText([]byte("38 BTDC")); err != nil || w.String() != "38 BTDC" {
		t.Errorf("%v, %v", w, err)
	}
	if err := w.UnmarshalText([]byte("rim")); err == nil || w.String() != "38 BTDC" { // what cannot be read leaves it
		t.Errorf("%v, %v", w, err)
	}
}
