package crank_test

import (
	"fmt"

	"example.com/benchbook/timing/crank"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// The invented 397 cc single.
func single() crank.Cylinder {
	c, _ := crank.Cylinder{Bore: 78 * units.Millimetre, Slider: crank.Slider{Stroke: 83 * units.Millimetre, Rod: 165 * units.Millimetre}}.WithRatio(7.5)
	return c
}

// How far off TDC a gauge of 0.01 mm may leave it at the top of the stroke.
func ExampleSlider_TopDoubt() {
	d, err := single().Slider.TopDoubt(units.Millimetres(0.01))
	fmt.Println(d.In(units.CrankDegree, 1), err)
	// Output: 1.1° crank <nil>
}

// A disc half a millimetre off its centre, the pointer at 100 mm.
func ExampleEccentricDoubt() {
	d, err := crank.EccentricDoubt(units.Millimetres(0.5), 100*units.Millimetre)
	fmt.Println(d.In(units.CrankDegree, 2), err)
	// Output: 0.29° crank <nil>
}

// Kates, Diesel and High-Compression Gas Engines, chapter 4, example 3, p. 63 (read in
// a textbook companion): 9 in stroke, 800 rev/min, 1200 ft/min.
func ExampleSlider_MeanSpeed() {
	s := crank.Slider{Stroke: 9 * units.Inch, Rod: 18 * units.Inch}
	v, err := s.MeanSpeed(units.RevolutionsPerMinute(800))
	fmt.Println(v.In(units.FootPerMinute, 0), err)
	// Output: 1200 ft/min <nil>
}

// A cylinder set 5 mm to one side: the stroke grows and TDC moves.
func ExampleSlider_DeadCentres() {
	d, err := crank.Slider{Throw: 40 * units.Millimetre, Rod: 160 * units.Millimetre, Offset: 5 * units.Millimetre}.DeadCentres()
	fmt.Println(d.Stroke.In(units.Millimetre, 3), d.Lead.In(units.CrankDegree, 2), d.Down.In(units.CrankDegree, 2), err)
	// Output: 80.042 mm 1.43° crank 180.96° crank <nil>
}

// Khurmi & Gupta, Theory of Machines, example 15.6, p. 532 (read in a textbook
// companion): 18.53 kN.
func ExampleSlider_InertiaForce() {
	s := crank.Slider{Stroke: units.Metres(0.2), Rod: units.Metres(0.4)}
	f, err := s.InertiaForce(units.After(units.TDC, 60*units.CrankDegree), units.RevolutionsPerMinute(500), 180*units.Kilogram)
	fmt.Println(f.In(units.Kilonewton, 1), err)
	// Output: 18.5 kN <nil>
}

func ExampleCylinder_TrappedAt() {
	t, err := single().TrappedAt(units.After(units.BDC, 65*units.CrankDegree))
	fmt.Printf("%s up, %.2f to 1 of %.1f to 1, %v\n", t.Rise.In(units.Millimetre, 1), t.Ratio.Value(), t.Static.Value(), err)
	// Output: 19.6 mm up, 5.96 to 1 of 7.5 to 1, <nil>
}

// Keswani, Internal Combustion Engines, example 11.5, p. 248 (read in a textbook
// companion): 10 by 15 cm at 6 to 1, 235.5 cm³ with pi as 3.14.
func ExampleCylinder_WithRatio() {
	c, err := crank.Cylinder{Bore: units.Centimetres(10), Slider: crank.Slider{Stroke: units.Centimetres(15), Rod: units.Centimetres(30)}}.WithRatio(6)
	fmt.Println(c.Clearance.In(units.CubicCentimetre, 1), err)
	// Output: 235.6 cc <nil>
}

func ExampleCylinder_VolumeAt() {
	v, err := single().VolumeAt(units.Before(units.TDC, 38*units.CrankDegree))
	r, _ := single().CompressionRatio()
	fmt.Println(v.In(units.CubicCentimetre, 0), r, err)
	// Output: 113 cc 7.5 <nil>
}

// Rajput, A Textbook of Internal Combustion Engines, example 3.11, p. 101: 3.95.
func ExampleRatioOfPressures() {
	r, err := crank.RatioOfPressures(1*units.Bar, 7*units.Bar, 1.4164)
	fmt.Printf("%.2f %v\n", r.Value(), err)
	// Output: 3.95 <nil>
}

// A hobbyist's afternoon, invented readings: true TDC, then where 11 mm before it is.
func Example() {
	tdc, err := crank.FindTDC(crank.StopReadings{
		Before: measure.MustReadPosition("41 BTDC ± 0.5", measure.DegreeDisc()),
		After:  measure.MustReadPosition("37 ATDC ± 0.5", measure.DegreeDisc()),
		Slider: single().Slider,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	at, err := single().Slider.Positions(11 * units.Millimetre)
	fmt.Println("turn the disc by", tdc.Correction.Value(), "- the stop stood", tdc.StopDepth.In(units.Millimetre, 1), "down")
	fmt.Println("11 mm before TDC is", at.Before.Before().In(units.CrankDegree, 1), err)
	// Output:
	// turn the disc by 2° crank - the stop stood 11.3 mm down
	// 11 mm before TDC is 38.4° crank <nil>
}
