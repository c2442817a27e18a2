package transmission

import (
	"math"
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Counted from first touch, set and wear drop out: the clamp is turns times pitch
// times rate, whatever they are.
func TestFromTouch(t *testing.T) {
	for _, wear := range []float64{0, 0.7, 2} {
		found := used()
		found.Wear = measure.Of(units.Millimetres(wear), units.Millimetres(0.1))
		a, err := Adjust(Input{Clutch: demo(), Found: found, Setting: Setting{FromTouch: measure.Of(units.Turns(8), units.Turns(0.05))}}, Options{Draws: 100})
		if err != nil {
			t.Fatal(err)
		}
		// 8 turns of 1.27 mm on 100 N/mm
		if got := a.Budget.Clamp.Newtons(); math.Abs(got-1016) > 1e-9 {
			t.Errorf("wear %v: clamp %v N", wear, got)
		}
		if d := a.Budget.Turns - a.Window.Touch - units.Turns(8); d.Abs() > units.Turns(1e-12) {
			t.Errorf("wear %v: stands at %v, touches at %v", wear, a.Budget.Turns, a.Window.Touch)
		}
	}
	_, err := Adjust(Input{Clutch: demo(), Setting: Setting{Nuts: measure.Exact(units.Turns(8)), FromTouch: measure.Exact(units.Turns(8))}}, Options{})
	if f := fault.Faults(err); len(f) != 1 || f[0].Code != fault.Conflict || f[0].Path != "setting.from_touch" {
		t.Error(err)
	}
	_, err = Adjust(Input{Clutch: demo(), Setting: Setting{FromTouch: measure.Exact(units.Turns(500))}}, Options{})
	if f := fault.Faults(err); len(f) != 1 || f[0].Code != fault.OutOfRange {
		t.Error(err)
	}
}

// A kick test that slips points at the force ledger, one that holds away from it,
// and one that just slips at the torque it was put to.
func TestKickAsEvidence(t *testing.T) {
	share := func(r KickResult) (force, travel float64) {
		k := kick()
		k.Rider = measure.Of(55*units.Kilogram, 1*units.Kilogram)
		k.Result = r
		d, err := Diagnose(Input{Clutch: demo(), Signs: Signs{Kick: k}}, Options{})
		if err != nil {
			t.Fatal(err)
		}
		for _, o := range d.Causes.Odds {
			switch o.Key {
			case "plates-oiled", "springs-weak", "plates-worn", "nuts-out", "free-play-none":
				force += o.Share
			case "hub-nut", "free-play-large", "plates-bent", "cable-soft", "lever-short":
				travel += o.Share
			}
		}
		return force, travel
	}
	held, _ := share(Held)
	slid, travel := share(Slid)
	if !(slid > 2*held) || !(slid > 4*travel) {
		t.Errorf("force ledger %.3f held, %.3f slipped; travel %.3f", held, slid, travel)
	}
	if crept, _ := share(Crept); !(crept > held) {
		t.Errorf("just slipping: %.3f, held %.3f", crept, held)
	}
	_, err := Diagnose(Input{Clutch: demo(), Signs: Signs{Kick: KickTest{Rider: measure.Exact(75 * units.Kilogram)}}}, Options{})
	for _, f := range fault.Faults(err) {
		if f.Path != "signs.kick.crank" && f.Path != "signs.kick.ratio" {
			t.Errorf("unexpected: %v", f)
		}
	}
	if err == nil {
		t.Error("a kick test without a lever was passed")
	}
}
