package ignition_test

import (
	"fmt"
	"testing"

	"example.com/benchbook/timing/ignition"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// A hobbyist's evening, invented readings: a half-speed magneto whose book says 11 mm
// before TDC on full advance.
func Example() {
	r, err := ignition.Diagnose(ignition.Input{
		Spec: ignition.Spec{
			Full:   ignition.MustReadWhere("11 mm BTDC ± 0.1"),
			Range:  measure.MustRead("15° ± 1", measure.Protractor()),
			Gauges: ignition.Gauges{Slider: slider()},
		},
		Read: ignition.Readings{
			Advanced:  ignition.MustReadWhere("68 BTDC"),
			Retarded:  ignition.MustReadWhere("38 BTDC"),
			Stroke:    ignition.Compression,
			TDCByStop: true,
		},
	}, ignition.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("wanted", r.Full, "early by", r.Advanced.Early)
	for _, o := range r.Causes.Within(20) {
		fmt.Println(o.Words()+":", o.Text)
	}
	fmt.Println(r.Remedies[0].Text)
	fmt.Println("may kick back:", r.MayKick)
	// Output:
	// wanted 38.4° BTDC ± 0.2° early by 29.6 ± 1.1° crank
	// as good as certain: the full-advance figure was set with the control on retard: too early by the whole range
	// time it again with the control on full advance, 15.0° of its shaft later
	// may kick back: true
}

func ExampleReadWhere() {
	for _, text := range []string{"38 BTDC ± 1°", "7/16 in before TDC", "60 mm on the rim", ""} {
		w, err := ignition.ReadWhere(text)
		fmt.Println(w, err)
	}
	_, err := ignition.ReadWhere("11")
	fmt.Println(err)
	// Output:
	// 38 BTDC ± 1° <nil>
	// 7/16 in before TDC <nil>
	// 60 mm on the rim <nil>
	// not taken <nil>
	// 11: expected degrees and a side, such as 25 BTDC, 40° ABDC or TDC
}

func TestReadWhere(t *testing.T) {
	for text, want := range map[string]ignition.Where{
		"11 mm BTDC ± 0.1": {Travel: measure.Of(units.Millimetres(11), units.Millimetres(0.1))},
		"11 mm":            {Travel: measure.By(units.Millimetres(11), measure.DialGauge())},
		"25° ATDC":         {At: measure.AtBy(units.After(units.TDC, 25), measure.DegreeDisc())},
		"60 mm rim":        {Rim: measure.By(units.Millimetres(60), measure.Rule())},
	} {
		w, err := ignition.ReadWhere(text)
		if err != nil || w.At.Value() != want.At.Value() || w.Travel.Value() != want.Travel.Value() || w.Travel.U() != want.Travel.U() || w.Rim.Value() != want.Rim.Value() || w.Rim.U() != want.Rim.U() {
			t.Errorf("%q: %v %v", text, w, err)
		}
	}
	for _, bad := range []string{"mm", "BTDC", "x rim", "rim", "11 kg", "40° cam BTDC", "11 mm ± -1"} {
		if w, err := ignition.ReadWhere(bad); err == nil {
			t.Errorf("%q was taken as %v", bad, w)
		}
	}
}

func FuzzReadWhere(f *testing.F) {
	for _, s := range []string{"38 BTDC", "11 mm BTDC ± 0.1", "60 mm on the rim", "± mm", "-", "7/16\" BTDC", "rim", "1' rim"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		w, err := ignition.ReadWhere(s)
		if err == nil && w.Taken() {
			w.Locate(ignition.Gauges{Slider: slider(), RimDiameter: measure.Exact(180 * units.Millimetre)})
		}
	})
}
