package transmission

import (
	"fmt"
	"strings"
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

func show(d Diagnosis) string {
	var b strings.Builder
	for _, f := range d.Findings {
		fmt.Fprintf(&b, "  %4.1f %% %-16s %s\n", f.Share*100, f.Key, f.Text)
	}
	for i, g := range d.NextReadings {
		if i < 4 {
			fmt.Fprintf(&b, "    next %.2f bit %s: %s\n", g.Bits, g.Key, g.Text)
		}
	}
	return b.String()
}

// Invented cases: what an owner may bring, and what must come first.
func TestCasesComeFirst(t *testing.T) {
	mm := func(x, u float64) measure.Reading[units.Length] {
		return measure.Of(units.Millimetres(x), units.Millimetres(u))
	}
	at := func(n float64) Setting { return Setting{Nuts: measure.Of(units.Turns(n), units.Turns(0.1))} }
	for _, c := range []struct {
		want    string
		setting Setting
		found   Condition
		signs   Signs
	}{
		{"hub-nut", at(8.2), Condition{FreePlay: mm(3, 0.3), HubNutBack: measure.Of(units.Turns(0.5), units.Turns(0.1))}, Signs{Slips: No, Drags: Yes, LightThen: Yes}},
		{"hub-nut", at(8.2), Condition{FreePlay: mm(3, 0.3), RodPlay: mm(0.3, 0.05), SpringSet: mm(0.1, 0.1)}, Signs{Drags: Yes, LightThen: Yes, Lift: mm(1.2, 0.05)}},
		{"springs-weak", at(8.2), Condition{SpringSet: mm(2.1, 0.05)}, Signs{Slips: Yes, Drags: No}},
		{"plates-oiled", at(8.4), Condition{SpringSet: mm(0.1, 0.05), FreePlay: mm(3, 0.3), Wear: mm(0.1, 0.1)}, Signs{Slips: Yes, Drags: No, Heavy: No}},
		{"plates-bent", at(8.2), Condition{OutOfFlat: mm(1.1, 0.1)}, Signs{Drags: Yes, Slips: No}},
		{"free-play-large", at(8.2), Condition{FreePlay: mm(11, 0.5)}, Signs{Drags: Yes}},
		{"cable-soft", at(8.2), Condition{CableStiffness: measure.Of(units.NewtonsPerMillimetre(35), units.NewtonsPerMillimetre(4))}, Signs{Drags: Yes}},
		{"plates-worn", at(8.2), Condition{Wear: mm(2.4, 0.1), FreePlay: mm(3, 0.3)}, Signs{Slips: Yes}},
		{"nuts-out", at(4.0), Condition{FreePlay: mm(3, 0.3)}, Signs{Slips: Yes, Drags: No}},
		{"nuts-in", at(12.5), Condition{FreePlay: mm(3, 0.3)}, Signs{Heavy: Yes, Slips: No}},
		{"free-play-none", at(8.4), Condition{FreePlay: mm(0, 0.3)}, Signs{Slips: Yes, Drags: No}},
		{"nothing", at(8.4), Condition{FreePlay: mm(3, 0.3)}, Signs{Slips: No, Drags: No, Heavy: No, LightThen: No}},
	} {
		d, err := Diagnose(Input{Clutch: demo(), Setting: c.setting, Found: c.found, Signs: c.signs}, Options{})
		if err != nil {
			t.Fatal(c.want, err)
		}
		if got := d.Causes.Leader().Key; got != c.want {
			t.Errorf("%s: leader %s\n%s", c.want, got, show(d))
		} else {
			t.Logf("%s\n%s", c.want, show(d))
		}
	}
}

// Every cause has its words, and causes of the same figure do not share a key;
// a prior for a key that is not there is a fault, one for what is not listed is not.
func TestPriors(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range KnownCauses() {
		if c.Key == "" || c.Text == "" || c.Do == "" || !(c.Prior > 0) || seen[c.Key] || c.Key != "nothing" && !(c.Work > 0) {
			t.Errorf("%+v", c)
		}
		seen[c.Key] = true
	}
	in := Input{Clutch: demo(), Signs: Signs{Slips: Yes}}
	if _, err := Diagnose(in, Options{Priors: map[string]float64{"gremlins": 1}}); err == nil {
		t.Error("an unknown cause was passed")
	}
	d, err := Diagnose(in, Options{Priors: map[string]float64{measure.SomethingElse: 1e6}})
	if err != nil || d.Causes.Leader().Key != measure.SomethingElse {
		t.Error(d.Causes.Leader(), err)
	}
	if _, err := Diagnose(in, Options{Priors: map[string]float64{"hub-nut": -1}}); err == nil {
		t.Error("a prior below zero was passed")
	}
}

// Bad input gives every fault with its path, also of the signs.
func TestDiagnoseFaults(t *testing.T) {
	in := Input{Clutch: demo(), Signs: Signs{Slips: 7, Lift: measure.Of(99*units.Millimetre, units.Millimetre), HandForce: measure.Of(50*units.Newton, 0)}}
	in.Clutch.Springs.Count = -1
	_, err := Diagnose(in, Options{})
	want := map[string]bool{"clutch.springs.count": true, "signs.slips": true, "signs.lift": true, "signs.hand_force": true}
	for _, f := range fault.Faults(err) {
		if !want[f.Path] {
			t.Errorf("unexpected: %v", f)
		}
		delete(want, f.Path)
	}
	for p := range want {
		t.Errorf("not told: %s", p)
	}
}

// A clutch that cannot work even as new is a reason, not an error and not a ranking.
func TestNoWindowAsNew(t *testing.T) {
	c := demo()
	c.Springs.Rate = units.NewtonsPerMillimetre(5)
	d, err := Diagnose(Input{Clutch: c, Signs: Signs{Slips: Yes}}, Options{})
	if err != nil || d.Reason.Code != "no-window-as-new" || len(d.Causes.Odds) != 0 || len(d.Basis.Cautions) == 0 {
		t.Errorf("%+v %v", d.Reason, err)
	}
}
