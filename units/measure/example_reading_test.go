package measure_test

import (
	"fmt"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// What the user wrote, what it was taken for, and what was assumed on the way.
func ExampleReading_Note() {
	load, err := measure.Read("28 lb", measure.SpringBalance())
	fmt.Println(err)
	fmt.Printf("%q is %.1f N, give or take %.1f N\n", load.Text(), load.Value().Newtons(), load.U().Newtons())
	fmt.Printf("%s; uncertainty of the %s\n", load.Note(), load.Instrument())
	// Output:
	// <nil>
	// "28 lb" is 124.6 N, give or take 3.7 N
	// lb read as pounds-force; uncertainty of the spring balance
}

// A pitch counted in threads to the inch keeps the words it was written in.
func ExampleReading_In() {
	top := measure.Of(units.MetresPerSecond(31.42), units.MetresPerSecond(0.8))
	fmt.Println(top, "is", top.In(units.MilePerHour), "or", top.In(units.KilometrePerHour))
	stud := measure.MustRead("7.94 mm", measure.Caliper())
	fmt.Println(stud.In(units.Inch))
	fmt.Println(measure.Exact(units.Millimetres(83)).In(units.Inch))
	// Output:
	// 31.4 ± 0.8 m/s is 70.3 ± 1.8 mile/h or 113 ± 3 km/h
	// 0.3126 ± 0.0008 in
	// 3.26771653543 in
}

func ExampleReading_As() {
	pitch := measure.By(units.Inches(1.0/26), measure.PitchGauge()).As("26 tpi")
	fmt.Println(pitch.Text(), "=", pitch)
	// Output: 26 tpi = 0.977 ± 0.005 mm
}

// A figure without an uncertainty is a fault, and says what to do.
func ExampleReading_Err() {
	err := measure.Of(units.Millimetres(8), 0).Err()
	fmt.Println(fault.Faults(err)[0].Rule)
	// Output: the uncertainty must be above zero; declare a figure exact by name
}

// What a bare figure is worth depends on what it was read with.
func ExampleInstrument_lengths() {
	bore := 78 * units.Millimetre
	for _, with := range []measure.Instrument[units.Length]{
		measure.Rule(), measure.Caliper(), measure.FeelerGauge(), measure.DialGauge(), measure.Micrometer(),
	} {
		fmt.Printf("%-14s %v\n", with.Name, measure.By(bore, with))
	}
	fmt.Printf("%-14s %v\n", measure.PitchGauge().Name, measure.By(units.Millimetre, measure.PitchGauge()))
	// Output:
	// rule           78.0 ± 0.3 mm
	// caliper        78.00 ± 0.02 mm
	// feeler gauge   78.00 ± 0.02 mm
	// dial gauge     78.000 ± 0.010 mm
	// micrometer     78.000 ± 0.005 mm
	// pitch gauge    1.000 ± 0.005 mm
}

// The instruments of the bench that do not read a length.
func ExampleInstrument_others() {
	fmt.Println(measure.MustRead("120 psi", measure.CompressionGauge()))
	fmt.Println(measure.MustRead("12 %", measure.LeakGauge()), "of the pressure lost")
	fmt.Println(measure.MustRead("30°", measure.Protractor()))
	fmt.Println(measure.MustRead("68 °F", measure.Thermometer()))
	fmt.Println(measure.MustRead("1013 hPa", measure.Barometer()))
	fmt.Println(measure.By(units.Value(2.5), measure.Count()), "turns of the screw")
	// Output:
	// 8.3 ± 0.4 bar
	// 0.12 ± 0.03 of the pressure lost
	// 30.0 ± 1.0°
	// 20.0 ± 1.0 °C
	// 1.013 ± 0.002 bar
	// 2.50 ± 0.10 turns of the screw
}

// A range of starting points that was not given holds nothing.
func ExampleInterval() {
	var none measure.Interval[units.Pressure]
	usual := measure.Between(units.Bars(7), units.Bars(9.5))
	fmt.Println(none.Given(), usual.Given(), usual.Holds(6*units.Bar))
	// Output: false true false
}
