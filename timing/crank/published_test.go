package crank_test

import (
	"fmt"
	"math"
	"testing"

	"example.com/benchbook/timing/crank"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
	"pgregory.net/rapid"
)

func rpm(x float64) units.RotationalSpeed { return units.RevolutionsPerMinute(x) }

func atdc(x float64) units.CrankPosition { return units.After(units.TDC, units.CrankDegrees(x)) }

// near fails unless got is within a part tol of want, the source's rounding.
func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol*math.Abs(want)) {
		t.Errorf("%s: %.6g, the source has %.6g (within %.2g)", what, got, want, tol)
	}
}

// Khurmi & Gupta, Theory of Machines, 14th ed., example 15.5, p. 528 (read in a
// textbook companion), by the two-term series: 124.91 m/s².
func ExampleSlider_TwoTermMotion() {
	s := crank.Slider{Throw: 150 * units.Millimetre, Rod: 600 * units.Millimetre}
	m, err := s.TwoTermMotion(atdc(60), rpm(450))
	fmt.Println(m.Acceleration.In(units.MetrePerSecondSquared, 2), err)
	// Output: 124.91 m/s² <nil>
}

// The same crank without the series: 6.9054 m/s and 124.949 m/s².
func ExampleSlider_Motion() {
	s := crank.Slider{Throw: 150 * units.Millimetre, Rod: 600 * units.Millimetre}
	m, err := s.Motion(atdc(60), rpm(450))
	fmt.Println(m.Velocity.In(units.MetrePerSecond, 2), m.Acceleration.In(units.MetrePerSecondSquared, 1), err)
	// Output: 6.91 m/s 124.9 m/s² <nil>
}

// Khurmi & Gupta, example 15.3, p. 527: 6.54 m/s at 75°, by the series; the
// exact greatest speed is 6.56 m/s.
func ExampleSlider_GreatestSpeed() {
	s := crank.Slider{Throw: 300 * units.Millimetre, Rod: 1000 * units.Millimetre}
	series, _ := s.TwoTermGreatestSpeed(rpm(200))
	exact, _ := s.GreatestSpeed(rpm(200))
	fmt.Println(series.Speed.In(units.MetrePerSecond, 2), exact.Speed.In(units.MetrePerSecond, 2))
	// Output: 6.54 m/s 6.56 m/s
}

// Khurmi & Gupta, example 15.7, p. 533: 0.35 MPa on a 0.5 m piston at 60°, of
// which the inertia of 250 kg at 250 rev/min takes its part: 14.491 kN m.
func ExampleSlider_Forces() {
	s := crank.Slider{Throw: units.Metres(0.3), Rod: units.Metres(1.2)}
	m, _ := s.TwoTermMotion(atdc(60), rpm(250))
	gas := units.Newtons(0.35e6 * math.Pi / 4 * 0.5 * 0.5)
	inertia := units.Newtons(250 * m.Acceleration.SI())
	f, err := s.Forces(atdc(60), gas-inertia)
	fmt.Println(f.Side.In(units.Kilonewton, 2), f.Rod.In(units.Kilonewton, 2), err)
	// Output: 10.97 kN 50.65 kN <nil>
}

// Mathur & Sharma, Internal Combustion Engine, 8th ed., example 1.1, p. 3 (read in
// a textbook companion): four cylinders of 6.8 by 7.5 cm make 1089.5 cm³.
func ExampleCylinder_Displacement() {
	c := crank.Cylinder{Bore: units.Centimetres(6.8), Slider: crank.Slider{Stroke: units.Centimetres(7.5), Rod: units.Centimetres(15)}}
	v, err := c.Displacement()
	fmt.Println(v.Times(4).In(units.CubicCentimetre, 1), err)
	// Output: 1089.5 cc <nil>
}

// Gupta, Fundamentals of Internal Combustion Engines, 1st ed., example 2.1, p. 44:
// 12.29 bar and 341.3 °C.
func ExampleCompressedPressure() {
	c := crank.Cylinder{
		Bore: units.Centimetres(20), Slider: crank.Slider{Stroke: units.Centimetres(25), Rod: units.Centimetres(50)},
		Clearance: units.CubicCentimetres(1570),
	}
	r, _ := c.CompressionRatio()
	p, _ := crank.CompressedPressure(1*units.Bar, r, 1.4)
	t, _ := crank.CompressedTemperature(units.Kelvins(300), r, 1.4)
	fmt.Printf("%s %.1f °C\n", p.In(units.Bar, 2), t.Celsius())
	// Output: 12.29 bar 341.3 °C
}

// Rajput, A Textbook of Internal Combustion Engines, 2nd ed., example 17.26,
// p. 587: 1.4 bar at a quarter and 3.6 bar at three quarters of the stroke, 5.58.
func ExampleRatioOfTwoPressures() {
	r, err := crank.RatioOfTwoPressures(units.Bars(1.4), 0.25, units.Bars(3.6), 0.75, 1.3)
	fmt.Printf("%.2f %v\n", r.Value(), err)
	// Output: 5.58 <nil>
}

// An invented reading: 41° before and 37° after on a disc set by eye.
func ExampleFindTDC() {
	tdc, err := crank.FindTDC(crank.StopReadings{
		Before: measure.MustReadPosition("41 BTDC ± 0.5", measure.DegreeDisc()),
		After:  measure.MustReadPosition("37 ATDC ± 0.5", measure.DegreeDisc()),
	})
	fmt.Println(tdc.Disc, "| add", tdc.Correction, err)
	// Output: 2° BTDC ± 0.4° | add 2.0 ± 0.4° crank <nil>
}

// The invented 397 cc single at 7.5 to 1 with the inlet shutting 65° after BDC.
func ExampleCylinder_Cranking() {
	c, _ := crank.Cylinder{Bore: 78 * units.Millimetre, Slider: crank.Slider{Stroke: 83 * units.Millimetre, Rod: 165 * units.Millimetre}}.WithRatio(7.5)
	k, err := c.Cranking(units.After(units.BDC, 65*units.CrankDegree), crank.CrankingOptions{})
	fmt.Printf("trapped %.2f, gauge %s to %s, %s to %s to turn, %v\n", k.Trapped.Ratio.Value(),
		k.Gauge.Low.In(units.Bar, 1), k.Gauge.High.In(units.Bar, 1), k.Torque.Low.In(units.NewtonMetre, 0), k.Torque.High.In(units.NewtonMetre, 0), err)
	// Output: trapped 5.96, gauge 7.2 bar to 9.3 bar, 49 N m to 60 N m to turn, <nil>
}

func TestPublishedCranks(t *testing.T) {
	s := crank.Slider{Throw: units.Inches(5), Rod: units.Inches(14)}
	m, _ := s.Motion(atdc(60), rpm(1500))
	near(t, "Meriam & Kraige 5/9, rod angle", m.Rod.Degrees(), 18.02, 3e-4)
	near(t, "Meriam & Kraige 5/9, rod speed", m.RodSpeed.SI(), 29.5, 2e-3)

	s = crank.Slider{Throw: units.Inches(9), Rod: units.Inches(36)}
	m, _ = s.Motion(atdc(40), rpm(240))
	near(t, "Bevan 3.4, crankpin", m.Crankpin.FeetPerSecondSquared(), 474, 1.1e-3)
	near(t, "Bevan 3.4, rod acceleration, by drawing", math.Abs(m.RodAccelerationRadiansPerSecond2), 98.7, 0.01)

	s = crank.Slider{Throw: 150, Rod: 600}
	m, _ = s.Motion(atdc(60), rpm(450))
	near(t, "Khurmi 15.2, speed, by drawing", m.Velocity.SI(), 6.833, 0.02)
	near(t, "Khurmi 15.2, acceleration, by drawing", m.Acceleration.SI(), 124.4, 0.02)
	m, _ = s.TwoTermMotion(atdc(60), rpm(450))
	near(t, "Khurmi 15.5, speed", m.Velocity.SI(), 6.9, 0.00725)
	near(t, "Khurmi 15.5, rod speed", m.RodSpeed.SI(), 5.9, 0.0085)
	near(t, "Khurmi 15.5, rod acceleration", -m.RodAccelerationRadiansPerSecond2, 481, 0.00104)

	s = crank.Slider{Stroke: units.Metres(0.2), Rod: units.Metres(0.4)}
	m, _ = s.TwoTermMotion(atdc(60), rpm(500))
	near(t, "Khurmi 15.6, inertia force", 180*m.Acceleration.SI(), 18530, 0.002)

	s = crank.Slider{Stroke: units.Metres(0.5), Rod: units.Metres(0.25 * 4.5)}
	m, _ = s.TwoTermMotion(atdc(45), rpm(180))
	net := units.Newtons((2.2e6-0.1e6)*math.Pi/4*0.3*0.3 - 280*m.Acceleration.SI() + 280*9.81)
	f, _ := s.Forces(atdc(45), net)
	near(t, "Khurmi 15.13, torque", f.Torque.SI(), 27380, 2e-4)
	near(t, "Khurmi 15.13, crankpin effort", f.Tangential.SI(), 109501, 1e-5)
	near(t, "Khurmi 15.13, bearing thrust", f.Radial.SI(), 79438, 1e-5)

	s = crank.Slider{Stroke: units.Inches(24), Rod: units.Inches(60)}
	psi := func(x float64) float64 { return units.PoundsForcePerSquareInch(x).SI() }
	sq := func(d float64) float64 { d *= 0.0254; return math.Pi / 4 * d * d }
	load := units.Newtons(psi(160)*sq(9) - psi(32)*(sq(9)-sq(2)))
	m, _ = s.TwoTermMotion(atdc(40), rpm(60/(2*math.Pi))) // at 1 rad/s the speed is the lever arm
	near(t, "Bevan 12.3, torque by the series", units.NewtonMetres(load.SI()*m.Velocity.SI()).PoundForceFeet(), 6110, 3e-4)
	f, _ = s.Forces(atdc(40), load)
	near(t, "Bevan 12.3, torque; exact is 0.12 % more", f.Torque.PoundForceFeet(), 6110, 1.3e-3)

	straight := crank.Slider{Stroke: units.Centimetres(6), Rod: units.Centimetres(12)}
	load = units.Newtons(50e5*math.Pi/4*0.065*0.065 - 900)
	f, _ = straight.Forces(atdc(90), load)
	near(t, "Gupta 13.2, rod", f.Rod.SI(), 16206, 4e-5)
	near(t, "Gupta 13.2, side", f.Side.SI(), 4050, 0.00124)
	offset := crank.Slider{Throw: units.Centimetres(3), Rod: units.Centimetres(12), Offset: units.Centimetres(0.2)}
	dc, _ := offset.DeadCentres()
	f, _ = offset.Forces(units.After(units.TDC, 90-dc.Lead), load) // the book counts from the crank parallel to the bore
	near(t, "Gupta 13.2, side with offset", f.Side.SI(), 3765, 2e-4)

	square := crank.Slider{Stroke: units.Centimetres(8.6), Rod: units.Centimetres(17.2)}
	m, _ = square.Motion(atdc(20), rpm(3000))
	near(t, "Gupta 16.1, speed", m.Velocity.SI(), 5.71, 9e-4)
	v, _ := square.MeanSpeed(rpm(3000))
	near(t, "Gupta 16.1, mean speed", v.SI(), 8.6, 0.0058)
	c, _ := crank.Cylinder{Bore: units.Centimetres(8.6), Slider: square}.WithRatio(9)
	near(t, "Gupta 16.1, clearance", c.Clearance.CubicCentimetres(), 62.5, 0.002) // the book divides the litre, 500/8
	nine := crank.Slider{Stroke: units.Inches(9), Rod: units.Inches(20)}
	v, _ = nine.MeanSpeed(rpm(800))
	near(t, "Kates 4.3, mean speed", v.FeetPerMinute(), 1200, 4.2e-4)

	c, _ = crank.Cylinder{Bore: units.Centimetres(10), Slider: crank.Slider{Stroke: units.Centimetres(15), Rod: units.Centimetres(30)}}.WithRatio(6)
	near(t, "Keswani 11.5, clearance, pi as 3.14", c.Clearance.CubicCentimetres(), 235.5, 6e-4)
	r, _ := crank.RatioOfPressures(1*units.Bar, 7*units.Bar, 1.41643059490085)
	near(t, "Rajput 3.11", r.Value(), 3.95, 0.00127)
	p, _ := crank.CompressedPressure(units.PoundsForcePerSquareInch(14.7), 7.5, 1.3)
	near(t, "an encyclopaedia's dynamic ratio of 7.5, n 1.3", p.PoundsForcePerSquareInch(), 201.8, 2.5e-4)
}

// Derivatives agree with differences of the next lower one, also with an offset.
// Central differences at 1e-4 rad are good to about 1e-8 of the figure.
func TestMotionDifferentiates(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := slider(t)
		deg := rapid.Float64Range(-180, 180).Draw(t, "angle")
		w := units.RadiansPerSecond(1)
		const h = 1e-4
		at := func(d float64) crank.Motion {
			m, err := s.Motion(atdc(deg+d*180/math.Pi), w)
			if err != nil {
				t.Fatal(err)
			}
			return m
		}
		m, up, down := at(0), at(h), at(-h)
		r := s.Throw.SI()
		for _, c := range []struct {
			name      string
			got, want float64
		}{
			{"velocity", m.Velocity.SI(), (up.Travel - down.Travel).SI() / (2 * h)},
			{"acceleration", m.Acceleration.SI(), (up.Velocity - down.Velocity).SI() / (2 * h)},
			{"jerk", m.JerkMetresPerSecond3, (up.Acceleration - down.Acceleration).SI() / (2 * h)},
			{"rod speed", m.RodSpeed.SI() * r, (up.Rod - down.Rod).SI() / (2 * h) * r},
			{"rod acceleration", m.RodAccelerationRadiansPerSecond2 * r, (up.RodSpeed - down.RodSpeed).SI() / (2 * h) * r},
		} {
			if math.Abs(c.got-c.want) > 1e-6*r {
				t.Fatalf("%s %g, by differences %g", c.name, c.got, c.want)
			}
		}
	})
}

// Whatever the disc's zero, stop and offset, FindTDC finds where TDC is.
func TestFindTDC(t *testing.T) { rapid.Check(t, checkFindTDC) }

func FuzzFindTDC(f *testing.F) {
	fuzzBytes(f)
	f.Fuzz(rapid.MakeFuzz(checkFindTDC))
}

func checkFindTDC(t *rapid.T) {
	s := slider(t)
	stroke, _ := s.Travel(units.After(units.BDC, 0))
	x := stroke.Times(rapid.Float64Range(0.02, 0.6).Draw(t, "depth"))
	at, _ := s.Positions(x)
	zero := units.CrankDegrees(rapid.Float64Range(-180, 180).Draw(t, "zero"))
	disc := func(p units.CrankPosition) measure.Position {
		return measure.At(units.After(units.TDC, p.FromTDC()+zero), 1)
	}
	got, err := crank.FindTDC(crank.StopReadings{Before: disc(at.Before), After: disc(at.After), Slider: s})
	if err != nil {
		t.Fatal(err)
	}
	miss := math.Mod(got.Disc.Value().FromTDC().Degrees()-zero.Degrees()+540+360, 360) - 180
	if math.Abs(miss) > 1e-6 || math.Abs((got.StopDepth-x).Millimetres()) > 1e-6 {
		t.Fatalf("off by %g°, depth %v for %v", miss, got.StopDepth, x)
	}
	if u := got.Disc.U(); math.Abs(u.Degrees()-math.Sqrt2/2) > 1e-12 {
		t.Fatalf("u %v", u)
	}
}

// Without a leak the run is the polytropic formula itself; 1e-9 is rounding.
func TestCrankingWithoutLeak(t *testing.T) {
	c, _ := crank.Cylinder{Bore: 78, Slider: crank.Slider{Stroke: 83, Rod: 165}}.WithRatio(7.5)
	tight := crank.CrankingOptions{Leak: measure.Between(0, 1e-18*units.SquareMetre), Index: measure.Between[units.Ratio](1.3, 1.3)}
	k, err := c.Cranking(units.After(units.BDC, 50), tight)
	if err != nil {
		t.Fatal(err)
	}
	want, _ := crank.CompressedPressure(units.Atmosphere, k.Trapped.Ratio, 1.3)
	near(t, "pressure", k.Absolute.High.SI(), want.SI(), 1e-9)
	near(t, "pressure, a hole of nothing", k.Absolute.Low.SI(), want.SI(), 1e-9)
	if !(k.Trapped.Ratio < k.Trapped.Static) {
		t.Error("late closing must trap less than the whole stroke")
	}
}

// A later inlet closing, a wider leak and slower turning each lower the pressure.
func TestCrankingMonotone(t *testing.T) { rapid.Check(t, checkCranking) }

func FuzzCranking(f *testing.F) {
	fuzzBytes(f)
	f.Fuzz(rapid.MakeFuzz(checkCranking))
}

func checkCranking(t *rapid.T) {
	c, _ := crank.Cylinder{Bore: 78, Slider: crank.Slider{Stroke: 83, Rod: 165}}.WithRatio(units.Value(rapid.Float64Range(5, 10).Draw(t, "ratio")))
	ivc := rapid.Float64Range(0, 100).Draw(t, "ivc")
	leak := rapid.Float64Range(0.05, 5).Draw(t, "leak")
	run := func(ivc, leak, speed float64) float64 {
		k, err := c.Cranking(units.After(units.BDC, units.CrankDegrees(ivc)), crank.CrankingOptions{
			Leak:  measure.Between(units.SquareMillimetres(leak), units.SquareMillimetres(leak)),
			Speed: measure.Between(rpm(speed), rpm(speed)), Index: measure.Between[units.Ratio](1.25, 1.25),
		})
		if err != nil {
			t.Fatal(err)
		}
		return k.Gauge.Low.SI()
	}
	base := run(ivc, leak, 300)
	if !(run(ivc+5, leak, 300) < base) || !(run(ivc, leak*1.5, 300) < base) || !(run(ivc, leak, 200) < base) {
		t.Fatal("pressure went the wrong way")
	}
}

func TestCrankFaults(t *testing.T) {
	nan := math.NaN()
	bad := crank.Cylinder{Bore: -1, Slider: crank.Slider{Rod: 10}, Clearance: units.CubicMetres(nan)}
	if _, err := bad.Displacement(); err == nil {
		t.Error("bad cylinder taken")
	}
	good := crank.Cylinder{Bore: 78, Slider: crank.Slider{Stroke: 83, Rod: 165}}
	if _, err := good.CompressionRatio(); err == nil {
		t.Error("no clearance taken")
	}
	good, _ = good.WithRatio(8)
	if _, err := good.TrappedAt(units.Before(units.TDC, 200)); err == nil {
		t.Error("inlet closing before BDC taken")
	}
	if _, err := good.Cranking(units.After(units.BDC, 40), crank.CrankingOptions{Index: measure.Interval[units.Ratio]{Low: 2, High: 1}}); err == nil {
		t.Error("bad index taken")
	}
	if _, err := good.Slider.Positions(units.Millimetres(nan)); err == nil {
		t.Error("NaN travel taken")
	}
	if _, err := good.Slider.Motion(atdc(nan), rpm(1)); err == nil {
		t.Error("NaN angle taken")
	}
	if _, err := crank.FindTDC(crank.StopReadings{Before: measure.At(atdc(-40), 1)}); err == nil {
		t.Error("one-sided stop taken")
	}
	if _, err := crank.FindTDC(crank.StopReadings{Before: measure.At(atdc(5), 1), After: measure.At(atdc(365), 1)}); err == nil {
		t.Error("two equal readings taken")
	}
	if _, err := crank.RatioOfTwoPressures(1*units.Bar, 0.2, 50*units.Bar, 0.3, 1.3); err == nil {
		t.Error("impossible pressures taken")
	}
}
