package units_test

import (
	"encoding/json"
	"fmt"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// A constant reads as the bench says it; a variable goes through a constructor.
func Example() {
	stroke := 83 * units.Millimetre
	bore := units.Inches(3.071)
	fmt.Println(stroke.In(units.Inch, 3), bore.In(units.Millimetre, 1), stroke > bore)
	// Output: 3.268 in 78.0 mm true
}

func ExampleParse() {
	for _, s := range []string{"5/16 in", `1 3/8"`, "5' 11½\"", "8 thou", "12.7mm"} {
		l, err := units.Parse[units.Length](s)
		fmt.Println(l, err)
	}
	// Output:
	// 7.9375 mm <nil>
	// 34.925 mm <nil>
	// 1816.1 mm <nil>
	// 0.2032 mm <nil>
	// 12.7 mm <nil>
}

func ExampleParseLength() {
	l, _ := units.ParseLength("5/16 in")
	fmt.Println(l)
	_, err := units.ParseLength("12")
	fmt.Println(err)
	// Output:
	// 7.9375 mm
	// 12: say the unit of this length: mm, in, thou, m, cm, µm, ft, yd, mile, km
}

// A unit of several sizes is refused with the choices.
func ExampleParseVolume() {
	_, err := units.ParseVolume("2 gallons")
	f := fault.Faults(err)[0]
	fmt.Println(f.Code, "-", f.Rule)
	// Output: unit-ambiguous - gallons has more than one size; write imp gal or US gal
}

// The wanted type leads, and says so where it had to choose.
func ExampleParseNoted() {
	f, note, _ := units.ParseNoted[units.Force]("28 lb")
	fmt.Printf("%.1f N: %s\n", f.Newtons(), note)
	m, note, _ := units.ParseNoted[units.Mass]("28 lb")
	fmt.Printf("%.1f kg %s\n", m.Kilograms(), note)
	// Output:
	// 124.6 N: lb read as pounds-force
	// 12.7 kg
}

func ExampleMustParse() {
	fmt.Println(units.MustParse[units.Pressure]("120 psi").In(units.Bar, 2))
	// Output: 8.27 bar
}

// Formulas take SI numbers out, work, and put the answer back in its type.
func ExampleFromSI() {
	force, area := 28*units.PoundForce, units.SquareInches(0.25)
	p := units.FromSI[units.Pressure](force.SI() / area.SI())
	fmt.Println(p.In(units.PoundForcePerSquareInch, 0))
	// Output: 112 psi
}

func ExampleFromFigure() {
	v, unit := units.Inches(0.3125).Figure()
	fmt.Println(v, unit, units.FromFigure[units.Length](v))
	// Output: 7.9375 mm 7.9375 mm
}

func ExampleNearestFraction() {
	f, over, err := units.NearestFraction(8*units.Millimetre, 64)
	fmt.Println(f, "and", over.In(units.Thou, 1), err)
	// Output: 5/16 in and 2.5 thou <nil>
}

// The text of a figure holds no more digits than its uncertainty allows.
func ExampleWithUncertainty() {
	fmt.Println(units.WithUncertainty(units.Millimetres(7.93847), units.Millimetres(0.02)))
	// Output: 7.94 ± 0.02 mm
}

func ExampleWithUncertaintyIn() {
	fmt.Println(units.WithUncertaintyIn(units.MetresPerSecond(31.42), units.MetresPerSecond(1.7), units.MilePerHour))
	// Output: 70 ± 4 mile/h
}

// One tooth of a 45-tooth wheel on the cam, seen at the crank.
func ExampleCamAngle_AtCrank() {
	tooth := units.CamDegrees(360.0 / 45)
	fmt.Println(tooth, "is", tooth.AtCrank())
	// Output: 8° cam is 16° crank
}

func ExampleCrankAngle_AtHalfSpeedCam() {
	fmt.Println((110 * units.CrankDegree).AtHalfSpeedCam())
	// Output: 55° cam
}

// The shaft is part of the text, and the other shaft is refused.
func ExampleParseCrankAngle() {
	a, err := units.ParseCrankAngle("18° crank")
	fmt.Println(a, err)
	_, err = units.ParseCrankAngle("9° cam")
	fmt.Println(err)
	// Output:
	// 18° crank <nil>
	// 9° cam: degrees of the crank wanted, such as 16° crank
}

func ExampleParsePosition() {
	p, err := units.ParsePosition("25 BTDC")
	fmt.Println(p, p.FromTDC(), err)
	p, err = units.ParsePosition("40 degrees after BDC")
	fmt.Println(p, p.FromTDC(), err)
	// Output:
	// 25° BTDC -25° crank <nil>
	// 40° ABDC 220° crank <nil>
}

// A place is not a movement: 25° BTDC is where, 5° later is how far.
func ExampleCrankPosition() {
	spark := units.Before(units.TDC, 25*units.CrankDegree)
	later := units.After(units.TDC, spark.After()+5*units.CrankDegree)
	fmt.Println(spark, "->", later)
	// Output: 25° BTDC -> 20° BTDC
}

func ExampleBefore() {
	fmt.Println(units.Before(units.BDC, 40*units.CrankDegree))
	// Output: 40° BBDC
}

func ExampleAfter() {
	fmt.Println(units.After(units.BDC, 40*units.CrankDegree).FromTDC())
	// Output: 220° crank
}

func ExampleLength_In() {
	l := units.Inches(0.3125)
	fmt.Println(l.In(units.Millimetre, 2), l.In(units.Thou, 1), l.In(units.Inch, 4))
	// Output: 7.94 mm 312.5 thou 0.3125 in
}

func ExampleLength_Ratio() {
	stroke, rod := 83*units.Millimetre, 166*units.Millimetre
	fmt.Println(rod.Ratio(stroke))
	// Output: 2
}

func ExampleTemperature() {
	t, _ := units.ParseTemperature("68 °F")
	fmt.Println(t, t.Kelvins())
	// Output: 20 °C 293.15
}

func ExampleFinite() {
	fmt.Println(units.Finite(3*units.Millimetre), units.Finite(units.Millimetres(1e300)*1e300))
	// Output: true false
}

// Every quantity is written as text, value and unit, and read back from any text.
func ExampleTorque_json() {
	b, _ := json.Marshal(30 * units.PoundForceFoot)
	fmt.Println(string(b))
	var t units.Torque
	err := json.Unmarshal([]byte(`"30 lbf ft"`), &t)
	fmt.Printf("%.2f N m %v\n", t.NewtonMetres(), err)
	// Output:
	// {"text":"40.67453844994201 N m","value":40.67453844994201,"unit":"N m"}
	// 40.67 N m <nil>
}

// Miles to the gallon run the other way up, and the gallon has to be named.
func ExampleParseFuelConsumption() {
	c, err := units.ParseFuelConsumption("62 mile/imp gal")
	fmt.Printf("%.2f L/100 km, %.1f mile/US gal %v\n", c.LitresPer100Kilometres(), c.MilesPerUSGallon(), err)
	_, err = units.ParseFuelConsumption("62 mpg")
	fmt.Println(err)
	// Output:
	// 4.56 L/100 km, 51.6 mile/US gal <nil>
	// 62 mpg: mpg has more than one size; write mile/imp gal or mile/US gal
}
