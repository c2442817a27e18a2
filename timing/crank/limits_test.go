package crank_test

import (
	"math"
	"testing"

	"example.com/benchbook/timing/crank"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// refused is the path of the one fault of an error; "" if there is none.
func refused(t *testing.T, err error) string {
	t.Helper()
	if err == nil {
		return ""
	}
	f := fault.Faults(err)
	if len(f) != 1 {
		t.Errorf("%d faults: %v", len(f), err)
	}
	return f[0].Path
}

// just is the next figure up.
func just(x float64) float64 { return math.Nextafter(x, math.Inf(1)) }

// What stands at a documented limit is taken, what stands past it refused, by name.
func TestLimits(t *testing.T) {
	whole := single()
	bore := func(b units.Length) error { c := whole; c.Bore = b; return c.Err() }
	ratio := func(r float64) error { _, err := whole.WithRatio(units.Value(r)); return err }
	mass := func(m units.Mass) error { _, err := whole.Slider.InertiaForce(atdc(20), rpm(500), m); return err }
	force := func(n float64) error { _, err := whole.Slider.Forces(atdc(20), units.Newtons(n)); return err }
	press := func(p float64) error { _, err := crank.CompressedPressure(units.Pascals(p), 7, 1.3); return err }
	index := func(n float64) error { _, err := crank.CompressedPressure(units.Bar, 7, n); return err }
	raise := func(p2 units.Pressure) error { _, err := crank.RatioOfPressures(2*units.Bar, p2, 1.3); return err }
	parts := func(f1, f2 float64) error {
		_, err := crank.RatioOfTwoPressures(units.Bar, f1, units.Bars(1.5), f2, 1)
		return err
	}
	hole := func(t crank.LeakTester, supply, held units.Pressure) error {
		_, err := t.Hole(supply, held)
		return err
	}
	orifice := func(d float64) error {
		return hole(crank.LeakTester{Orifice: units.Millimetres(d)}, 6*units.Bar, units.Bar)
	}
	ambient := func(p float64) error { return hole(crank.LeakTester{Ambient: units.Bars(p)}, 6*units.Bar, units.Bar) }
	supply := func(p units.Pressure) error { return hole(crank.LeakTester{}, p, p.Times(0.5)) }
	least := units.Pressure(6 * units.Bar).Times(1e-6)
	volume := func(at units.CrankPosition) error { _, err := whole.VolumeAt(at); return err }
	doubt := func(x float64) error { _, err := whole.Slider.TopDoubt(units.Millimetres(x)); return err }
	eccentric := func(off float64) error {
		_, err := crank.EccentricDoubt(units.Millimetres(off), 100*units.Millimetre)
		return err
	}
	for _, c := range []struct {
		name string
		err  error
		path string // "": taken
	}{
		{"no bore", bore(0), "bore"}, {"a bore of a picometre", bore(units.FromSI[units.Length](1e-12)), ""},
		{"a ratio of one", ratio(1), "ratio"}, {"just above one", ratio(just(1)), ""},
		{"no mass", mass(0), ""}, {"less than none", mass(-units.Kilogram), "mass"},
		{"a teranewton", force(1e12), ""}, {"more", force(just(1e12)), "force"},
		{"a piconewton to the square metre", press(1e-12), ""}, {"less", press(9.99e-13), "pressure"},
		{"heat all lost", index(1), ""}, {"more than all", index(math.Nextafter(1, 0)), "index"},
		{"one atom to the molecule", index(1.67), ""}, {"less", index(just(1.67)), "index"},
		{"not raised", raise(2 * units.Bar), ""}, {"lowered", raise(units.Bars(1.99)), "p2"},
		{"from BDC", parts(0, 0.5), ""}, {"before BDC", parts(-1e-9, 0.5), "f1"},
		{"to TDC", parts(0.5, 1), ""}, {"past TDC", parts(0.5, just(1)), "f1"}, {"twice at one place", parts(0.5, 0.5), "f1"},
		{"an orifice of 0.01 mm", orifice(0.01), ""}, {"less", orifice(0.0099), "orifice"},
		{"an orifice of 20 mm", orifice(20), ""}, {"more", orifice(20.01), "orifice"},
		{"ambient of 0.1 bar", ambient(0.1), ""}, {"less", ambient(0.099), "ambient"},
		{"ambient of 10 bar", ambient(10), ""}, {"more", ambient(10.01), "ambient"},
		{"a supply of 0.01 bar", supply(units.Bars(0.01)), ""}, {"less", supply(units.Bars(0.0099)), "supply"},
		{"a supply of 100 bar", supply(units.Bars(100)), ""}, {"more", supply(units.Bars(100.1)), "supply"},
		{"a millionth held", hole(crank.LeakTester{}, 6*units.Bar, least), ""}, {"less", hole(crank.LeakTester{}, 6*units.Bar, least.Times(0.999)), "held"},
		{"all held", hole(crank.LeakTester{}, 6*units.Bar, 6*units.Bar), ""},
		{"a place that is none", volume(atdc(math.NaN())), "position"},
		{"a gauge of nothing", doubt(0), "resolution"}, {"below zero", doubt(-1), "resolution"},
		{"a gauge of the whole stroke", doubt(83), "resolution"}, {"of less", doubt(82.9), ""},
		{"a disc on its centre", eccentric(0), ""}, {"off the other way", eccentric(-0.1), "off"},
		{"at its pointer", eccentric(100), "off"}, {"just inside", eccentric(99.9), ""},
	} {
		if got := refused(t, c.err); got != c.path {
			t.Errorf("%s: refused at %q, want %q", c.name, got, c.path)
		}
	}
}

// A crank goes round while its rod is longer than throw plus offset, whichever side
// the offset is on, and throw and stroke may differ by 0.1 %.
func TestSliderLimits(t *testing.T) {
	mm := units.Millimetres
	pico := units.FromSI[units.Length](1e-12)
	for _, c := range []struct {
		name string
		s    crank.Slider
		path string
	}{
		{"rod as long as throw plus offset", crank.Slider{Throw: 40, Rod: 48, Offset: 8}, "rod"},
		{"rod just longer", crank.Slider{Throw: 40, Rod: mm(just(48)), Offset: 8}, ""},
		{"rod longer than throw less offset", crank.Slider{Throw: 40, Rod: 45, Offset: 8}, "rod"},
		{"and on the other side", crank.Slider{Throw: 40, Rod: 45, Offset: -8}, "rod"},
		// A throw of 500.5 mm makes a stroke of 1001, a thousandth more than 1000, in
		// figures that are exact in binary.
		{"a thousandth apart", crank.Slider{Throw: mm(500.5), Stroke: 1000, Rod: 2000}, ""},
		{"half a thousandth", crank.Slider{Throw: mm(500.25), Stroke: 1000, Rod: 2000}, ""},
		{"two thousandths", crank.Slider{Throw: 501, Stroke: 1000, Rod: 2000}, "stroke"},
		// Nothing contradicts a stroke that stands alone, not even the rounding of a
		// rod a thousand million times as long.
		{"a stroke alone", crank.Slider{Stroke: mm(0.001), Rod: mm(1e13)}, ""},
		{"a picometre", crank.Slider{Throw: pico, Rod: 10}, ""},
		{"less than a picometre", crank.Slider{Throw: pico.Times(0.999), Rod: 10}, "throw"},
	} {
		if got := refused(t, c.s.Err()); got != c.path {
			t.Errorf("%s: refused at %q, want %q", c.name, got, c.path)
		}
	}
}

// Travel runs from nothing at TDC to the stroke at BDC, both taken; a stroke whose
// last bits differ is the stroke.
func TestTravelLimits(t *testing.T) {
	s := single().Slider
	if at, err := s.Positions(0); err != nil || at.Before.Before() != 0 || at.After.After() != 0 {
		t.Errorf("at the top: %v, %v", at, err)
	}
	bottom := units.Millimetres(83 * (1 + 1e-12))
	at, err := s.Positions(bottom)
	if err != nil || math.Abs(at.Before.Before().Degrees()-180) > 1e-4 || math.Abs(at.After.After().Degrees()-180) > 1e-4 { // the slope is nought there
		t.Errorf("at the bottom: %v, %v", at, err)
	}
	for _, x := range []units.Length{units.Millimetres(-1e-9), units.Millimetres(just(bottom.Millimetres()))} {
		if _, err := s.Positions(x); refused(t, err) != "travel" {
			t.Errorf("%v: %v", x, err)
		}
	}
}

// The inlet may shut at BDC, from which the ratio left is the whole, to TDC, where it
// is one, also where an offset moves both.
func TestInletClosesFromBottomToTop(t *testing.T) {
	for _, offset := range []units.Length{0, 6, -6} {
		c, err := crank.Cylinder{Bore: 78, Slider: crank.Slider{Throw: 41, Rod: 165, Offset: offset}}.WithRatio(8)
		if err != nil {
			t.Fatal(err)
		}
		dc, _ := c.Slider.DeadCentres()
		all := 360*units.CrankDegree - dc.Down // from BDC to the TDC that follows
		for _, at := range []struct {
			closes units.CrankPosition
			ratio  float64
		}{
			{units.After(units.BDC, 0), 8},
			{units.After(units.BDC, units.FromSI[units.CrankAngle](-1e-9)), 8}, // a nanoradian is rounding
			{units.After(units.TDC, dc.Down-360*units.CrankDegree+1e-6), 0},    // the same place, but of the turn before
			{units.After(units.TDC, dc.Down+1e-6), 8},
			{units.After(units.TDC, 360), 1},
			{units.After(units.BDC, all-1e-6), 1},
			{units.After(units.BDC, all+1e-6), 0},
			{units.After(units.BDC, units.FromSI[units.CrankAngle](-2e-9)), 0},
			{units.After(units.BDC, -1), 0},
		} {
			got, err := c.TrappedAt(at.closes)
			if at.ratio == 0 {
				if refused(t, err) != "inlet.closes" {
					t.Errorf("offset %v, closes %v: %v, %v", offset, at.closes, got, err)
				}
			} else if err != nil || math.Abs(got.Ratio.Value()-at.ratio) > 1e-9 {
				t.Errorf("offset %v, closes %v: %v to one, want %v, %v", offset, at.closes, got.Ratio, at.ratio, err)
			}
		}
	}
}

// Two pressures that need no clearance at all have no compression ratio: half the
// stroke at an index of one doubles the pressure by itself.
func TestNoClearanceLeft(t *testing.T) {
	if _, err := crank.RatioOfTwoPressures(units.Bar, 0, 2*units.Bar, 0.5, 1); refused(t, err) != "p2" {
		t.Error(err)
	}
}

// The half turn is 180°, not -180°, and a reading of the stop that comes back to
// itself is one reading.
func TestStopReadingsRoundTheDisc(t *testing.T) {
	find := func(before, after float64) (crank.TDC, error) {
		return crank.FindTDC(crank.StopReadings{Before: measure.At(atdc(before), 1), After: measure.At(atdc(after), 1)})
	}
	got, err := find(140, 220)
	if err != nil || got.HalfArc != 40 || got.Midpoint != atdc(180) || got.Disc.Value() != atdc(180) || got.Correction.Value() != -180 {
		t.Errorf("%+v, %v", got, err)
	}
	if _, err := find(5, -355); refused(t, err) != "after" {
		t.Error(err)
	}
}
