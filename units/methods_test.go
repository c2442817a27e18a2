package units_test

import (
	"encoding/json"
	"math"
	"testing"

	"example.com/benchbook/units"
)

// scalable is a quantity whose zero is a true zero.
type scalable[Q any] interface {
	units.Quantity
	Times(k float64) Q
	Ratio(other Q) float64
}

// TestTimesAndRatio holds Times and Ratio to being each other's inverse, and text
// and JSON to setting what they are read into.
func TestTimesAndRatio(t *testing.T) {
	scales[units.Length](t)
	scales[units.Area](t)
	scales[units.Volume](t)
	scales[units.Angle](t)
	scales[units.CrankAngle](t)
	scales[units.CamAngle](t)
	scales[units.Mass](t)
	scales[units.Force](t)
	scales[units.Torque](t)
	scales[units.Pressure](t)
	scales[units.SpringRate](t)
	scales[units.Speed](t)
	scales[units.RotationalSpeed](t)
	scales[units.Power](t)
	scales[units.Energy](t)
	scales[units.Density](t)
	scales[units.Acceleration](t)
	scales[units.SpecificEnergy](t)
	scales[units.KinematicViscosity](t)
	scales[units.DynamicViscosity](t)
	scales[units.VolumeFlow](t)
	scales[units.MassFlow](t)
	scales[units.TemperatureDelta](t)
}

func scales[Q scalable[Q]](t *testing.T) {
	t.Helper()
	q := units.FromFigure[Q](6)
	if got := q.Times(4); float64(got) != 24 || got.Ratio(q) != 4 {
		t.Errorf("%s: four times 6 is %v, and %v times it", units.Name(q), float64(got), got.Ratio(q))
	}
	want := units.MustParse[Q](units.Example(q))
	b, err := json.Marshal(want)
	var back Q
	if err != nil || json.Unmarshal(b, &back) != nil || back != want {
		t.Errorf("%s, %v reads as %v", b, err, back)
	}
}

// TestTextMember finds the text among other members, and not one that is within them.
func TestTextMember(t *testing.T) {
	for _, s := range []string{
		`{"text":"5 mm"}`, `{"a":{"text":"9 mm"},"text":"5 mm"}`, `{"a":[1,{"text":"9 mm"}],"text":"5 mm"}`,
		`{"a":"\"","text":"5 mm"}`, `{"a":"text","b":1,"text":"5 mm"}`,
	} {
		var l units.Length
		if err := json.Unmarshal([]byte(s), &l); err != nil || l != 5 {
			t.Errorf("%s reads as %v, %v", s, l, err)
		}
	}
}

// TestFromSI: a metre is 1000 mm, half a turn is π rad.
func TestFromSI(t *testing.T) {
	if l := units.FromSI[units.Length](2); l != 2000 {
		t.Errorf("2 m is %v", l)
	}
	if a := units.FromSI[units.Angle](math.Pi); math.Abs(a.Degrees()-180) > 1e-13 { // one rounding of 180
		t.Errorf("π rad is %v", a)
	}
}

// TestLimits takes what lies at a documented limit and refuses what lies past it.
func TestLimits(t *testing.T) {
	for _, c := range []struct {
		name string
		err  error
		ok   bool
	}{
		{"1/1024 in", fraction(1, 1024), true}, {"1/2048 in", fraction(1, 2048), false}, {"10 km", fraction(1e7, 64), false},
		{"360 BTDC", second(units.ParsePosition("360 BTDC")), true}, {"360 ATDC", second(units.ParsePosition("360 ATDC")), true},
		{"-360 ATDC", second(units.ParsePosition("-360 ATDC")), true}, {"361", second(units.ParsePosition("361 ATDC")), false},
		{"0 K", second(units.Kelvins(0).MarshalText()), true}, {"-1 K", second(units.Kelvins(-1).MarshalText()), false},
		{"1 K", second(units.Kelvins(1).MarshalText()), true},
	} {
		if (c.err == nil) != c.ok {
			t.Errorf("%s: %v", c.name, c.err)
		}
	}
	if f, _, _ := units.NearestFraction(-0.001, 64); f.Negative {
		t.Error("a nought with a sign")
	}
}

func fraction(mm float64, den int) error {
	_, _, err := units.NearestFraction(units.Millimetres(mm), den)
	return err
}

// TestPositionIntoJSON holds a place of the crank to setting what it is read into.
func TestPositionIntoJSON(t *testing.T) {
	var p units.CrankPosition
	if err := json.Unmarshal([]byte(`"25 BTDC"`), &p); err != nil || p != units.Before(units.TDC, 25) {
		t.Errorf("%v, %v", p, err)
	}
}

// TestRounding: no digits left of the point that the uncertainty does not support
// (GUM 7.2.6), and two digits of it where the first is a 1.
func TestRounding(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{units.WithUncertaintyIn(1234, 200, units.Millimetre), "1200 ± 200 mm"},
		{units.WithUncertaintyIn(1234, 30, units.Millimetre), "1230 ± 30 mm"},
		{units.WithUncertaintyIn(1234, 3, units.Millimetre), "1234 ± 3 mm"},
		{units.WithUncertaintyIn(25.4, 0, units.Inch), "1 in"},
		{units.WithUncertaintyIn(50.8, 0, units.Inch), "2 in"},
	} {
		if c.got != c.want {
			t.Errorf("%q, want %q", c.got, c.want)
		}
	}
}
