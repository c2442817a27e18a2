package measure_test

import (
	"fmt"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// True top found five times over, the disc set up anew each time (invented
// readings). The scatter of the mean, and what the disc itself adds.
func ExampleRepeat() {
	set, err := measure.Repeat(units.CrankDegrees(0.5), units.CrankDegrees(-0.5), units.CrankDegrees(0), units.CrankDegrees(1), units.CrankDegrees(0.5))
	fmt.Println(set.Reading(), err)
	fmt.Println(set.By(measure.DegreeDisc()))
	k, _ := measure.Coverage(0.95, float64(set.Freedom))
	fmt.Printf("95 in 100 within %.2f times that of the mean alone\n", k)
	// Output:
	// 0.3 ± 0.3° crank <nil>
	// 0.3 ± 1.0° crank
	// 95 in 100 within 2.78 times that of the mean alone
}

func ExampleRepeated() {
	set, err := measure.Repeat(7.93*units.Millimetre, 7.95*units.Millimetre, 7.94*units.Millimetre)
	fmt.Println(set.Readings, set.Mean.In(units.Millimetre, 2), set.Deviation.In(units.Millimetre, 3), set.Error.In(units.Millimetre, 3), err)
	// Output: 3 7.94 mm 0.010 mm 0.006 mm <nil>
}

// Readings all alike show no scatter; the instrument's own uncertainty remains.
func ExampleRepeated_By() {
	set, _ := measure.Repeat(8*units.Millimetre, 8*units.Millimetre)
	fmt.Println(set.Reading().Err())
	fmt.Println(set.By(measure.Caliper()))
	// Output:
	// 8 mm: the uncertainty must be above zero; declare a figure exact by name
	// 8.00 ± 0.02 mm
}

// JCGM 100:2008, table G.2: 2.12 for 95 % and 16 degrees of freedom.
func ExampleCoverage() {
	for _, p := range []float64{0.95, 0.9545, 0.99} {
		k, err := measure.Coverage(p, 16)
		fmt.Printf("%.2f %v\n", k, err)
	}
	// Output:
	// 2.12 <nil>
	// 2.17 <nil>
	// 2.92 <nil>
}

// A mean of five readings and an instrument whose limits are known: nearly all
// of the uncertainty is the first, so few degrees of freedom remain.
func ExampleFreedom() {
	nu, err := measure.Freedom(measure.Component{U: 0.03, Freedom: 4}, measure.Component{U: 0.02})
	fmt.Printf("%.1f %v\n", nu, err)
	// Output: 8.3 <nil>
}

// Which reading is worth taking better? The power of a brake test, after
// Doebelin & Manik, Measurement Systems, 5th ed., example 3.2 (as a companion
// prints it: 36.798728 W all at their worst, 22.075337 W by squares).
func ExampleBudgetOf() {
	power := func(x []float64) float64 { return 2 * 3.141592653589793 * x[0] * x[1] * x[2] / x[3] }
	b, err := measure.BudgetOf[units.Power](power,
		measure.Input{X: 1202, U: 1},        // turns
		measure.Input{X: 45, U: 0.18},       // newtons
		measure.Input{X: 0.397, U: 0.00127}, // metres
		measure.Input{X: 60, U: 0.5})        // seconds
	fmt.Printf("%.6f W, %.6f W, %v\n", b.Limit.Watts(), b.Combined.Watts(), err)
	for i, name := range []string{"turns", "force", "arm", "time"} {
		fmt.Printf("%s %.1f W\n", name, b.Parts[i].Watts())
	}
	// Output:
	// 36.798728 W, 22.075337 W, <nil>
	// turns 1.9 W
	// force 9.0 W
	// arm 7.2 W
	// time -18.7 W
}

// A spring balance hung with known weights (invented readings): it shows too
// little up the scale.
func ExampleCalibrate() {
	var shown, actual []units.Force
	for _, p := range [][2]float64{{5, 5}, {9.5, 10}, {14.5, 15}, {19, 20}, {24, 25}} {
		shown, actual = append(shown, units.PoundsForce(p[0])), append(actual, units.PoundsForce(p[1]))
	}
	c, err := measure.Calibrate(shown, actual, 0, measure.Instrument[units.Force]{})
	fmt.Println(err)
	pull := c.Correct(measure.Of(units.PoundsForce(22), units.PoundsForce(0.5)))
	fmt.Println(pull.Value().In(units.PoundForce, 1), pull.U().In(units.PoundForce, 1))
	fmt.Println(c.Checked.Holds(units.PoundsForce(28)))
	// Output:
	// <nil>
	// 23.0 lbf 0.5 lbf
	// false
}

// JCGM 100:2008, annex H.3: the thermometer's correction at 30 °C is -0.1494 °C
// with 0.0041 °C. Temperatures are given as differences from 0 °C.
func ExampleCalibration_Correction() {
	shown := []float64{21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511}
	correction := []float64{-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160}
	var t, actual []units.TemperatureDelta
	for i := range shown {
		t = append(t, units.KelvinsDelta(shown[i]))
		actual = append(actual, units.KelvinsDelta(shown[i]+correction[i]))
	}
	c, err := measure.Calibrate(t, actual, units.KelvinsDelta(20), measure.Instrument[units.TemperatureDelta]{})
	at30 := c.Correction(units.KelvinsDelta(30))
	fmt.Printf("%.4f with %.4f, correlation %.3f, %v\n", at30.Value().SI(), at30.U().SI(), c.Correlation, err)
	// Output: -0.1494 with 0.0041, correlation -0.930, <nil>
}
