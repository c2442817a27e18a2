package transmission

import (
	"math"
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

func TestCableEfficiency(t *testing.T) {
	// e^(-0.1 pi/2) = 0.8546, e^(-0.2 pi) = 0.5335: by calculator
	for _, c := range []struct {
		mu   float64
		bend units.Angle
		want string
	}{{0.1, 90 * units.Degree, "0.8546"}, {0.2, 180 * units.Degree, "0.5335"}, {0, 180 * units.Degree, "1.0000"}} {
		e, err := CableEfficiency(measure.Of(units.Value(c.mu), units.Value(0.02)), measure.Of(c.bend, 5*units.Degree))
		if err != nil {
			t.Fatal(err)
		}
		printed(t, "efficiency", e.Value().Value(), c.want)
	}
	if _, err := CableEfficiency(measure.Reading[units.Ratio]{}, measure.Exact(900*units.Degree)); err == nil {
		t.Error("no fault told")
	}
}

// Without friction nothing is lost; with it a screw that just fails to run back
// (lead angle equal to the friction angle) is under a half: tan h/tan 2h = (1 - tan^2
// h)/2.
func TestScrewEfficiency(t *testing.T) {
	lead := units.Millimetres(20 * math.Pi * 0.2)
	for _, c := range []struct{ mu, want float64 }{{0, 1}, {0.2, (1 - 0.04) / 2}} {
		e, err := ScrewEfficiency(lead, 20*units.Millimetre, units.Value(c.mu))
		if err != nil || math.Abs(e.Value()-c.want) > 1e-12 {
			t.Errorf("mu %v: %v, want %v (%v)", c.mu, e, c.want, err)
		}
	}
	if _, err := ScrewEfficiency(300*units.Millimetre, 3*units.Millimetre, units.Value(0.5)); err == nil {
		t.Error("a screw that cannot drive was passed")
	}
}

// Moulded lining: oil cuts its friction by two to five times or more.
func TestLiningFriction(t *testing.T) {
	dry, from, err := LiningFriction("moulded", "dry")
	if err != nil || len(from) == 0 {
		t.Fatal(err)
	}
	oil, _, err := LiningFriction("moulded", "oil")
	if err != nil {
		t.Fatal(err)
	}
	if r := dry.Value().Ratio(oil.Value()); r < 2 || r > 9 {
		t.Errorf("dry %v, oiled %v", dry, oil)
	}
	if dry.Err() != nil || oil.Err() != nil {
		t.Error("a reading without uncertainty")
	}
	if _, _, err := LiningFriction("cheese", "dry"); err == nil {
		t.Error("no fault told")
	}
}
