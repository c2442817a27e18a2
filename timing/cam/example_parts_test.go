package cam_test

import (
	"fmt"

	"example.com/benchbook/timing/cam"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// A cam with straight flanks under a roller, as invented here, and the same with its
// follower worn to a larger roller.
func ExampleTangentCam_Curve() {
	made := cam.TangentCam{BaseRadius: 15 * units.Millimetre, Lift: 8 * units.Millimetre, HalfAngle: 60 * units.CamDegree, Roller: 10 * units.Millimetre}
	var shape cam.TangentShape
	shape, err := made.Shape()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("nose", shape.NoseRadius.In(units.Millimetre, 1), "flank", shape.FlankAngle.In(units.CamDegree, 1))
	curve, err := made.Curve(55 * units.CamDegree)
	if err != nil {
		fmt.Println(err)
		return
	}
	larger, why, err := curve.WithFollower(cam.Roller(10*units.Millimetre), cam.Roller(14*units.Millimetre), made.BaseRadius)
	if err != nil || why.Given() {
		fmt.Println(why, err)
		return
	}
	for _, c := range []*cam.Curve{curve, larger} {
		e, err := c.Events(1 * units.Millimetre)
		fmt.Println(e.Duration.AtCrank().In(units.CrankDegree, 0), err)
	}
	// Output:
	// nose 7.0 mm flank 29.0° cam
	// 176° crank <nil>
	// 181° crank <nil>
}

// The cam pressed 4° of the camshaft further on: every event 8° of the crank earlier.
func ExampleCurve_Advanced() {
	c, err := arcCam().Curve(55 * units.CamDegree)
	if err != nil {
		fmt.Println(err)
		return
	}
	moved, err := c.Advanced(4 * units.CamDegree)
	if err != nil {
		fmt.Println(err)
		return
	}
	before, _ := c.Events(1 * units.Millimetre)
	after, _ := moved.Events(1 * units.Millimetre)
	fmt.Println(cam.Place(before.Opens).After().In(units.CrankDegree, 0), "->", cam.Place(after.Opens).After().In(units.CrankDegree, 0), "after", cam.Place(after.Opens).Datum())
	// Output: 2° crank -> -6° crank after TDC
}

// What a valve passes over a cycle, and what 0.2 mm more clearance costs.
func ExampleValve_FlowArea() {
	c, err := arcCam().Curve(55 * units.CamDegree)
	if err != nil {
		fmt.Println(err)
		return
	}
	seat := cam.Seat{Head: 40 * units.Millimetre, Port: 35 * units.Millimetre, Stem: 8 * units.Millimetre, Width: 2 * units.Millimetre}
	for _, gap := range []units.Length{units.Millimetres(0.1), units.Millimetres(0.3)} {
		v := cam.Valve{Cam: c, Clearance: gap}
		top, err := v.Lift(55 * units.CamDegree)
		if err != nil {
			fmt.Println(err)
			return
		}
		var area cam.FlowArea
		area, err = v.FlowArea(seat, units.RevolutionsPerMinute(4000))
		fmt.Println("lift", top.In(units.Millimetre, 1), "- at most", area.Greatest.In(units.SquareMillimetre, 0), err)
		fmt.Printf("  %.2f mm² s a cycle\n", area.AreaTimeMM2Seconds)
	}
	// Output:
	// lift 7.9 mm - at most 744 mm² <nil>
	//   4.41 mm² s a cycle
	// lift 7.7 mm - at most 721 mm² <nil>
	//   4.21 mm² s a cycle
}

// A parallel key under a camwheel, at stresses allowed for mild steel; and whether
// the taper alone would do, from oily to dry.
func ExampleKey_Holds() {
	var holds cam.KeyHolds
	holds, err := cam.Key{Shaft: 16 * units.Millimetre, Width: 5 * units.Millimetre, Height: 5 * units.Millimetre, Length: 12 * units.Millimetre}.Holds(50*units.Megapascal, 100*units.Megapascal)
	fmt.Println("key", holds.Torque, "- shear", holds.Shear, "bearing", holds.Bearing, err)
	taper := cam.Taper{OneIn: 8, MeanDiameter: 16 * units.Millimetre, Length: 20 * units.Millimetre, Friction: cam.Friction()}
	grip, err := taper.Hold(5 * units.Kilonewton)
	fmt.Println("taper", grip.Torque.Low.In(units.NewtonMetre, 0), "to", grip.Torque.High.In(units.NewtonMetre, 0), err)
	// Output:
	// key 24 N m - shear 24 N m bearing 24 N m <nil>
	// taper 22 N m to 28 N m <nil>
}

// How long the faces of a cone must be for a force between them at an allowed mean
// pressure. The figures are invented.
// Budynas & Nisbett, Shigley's Mechanical Engineering Design, 8th ed., solution to
// problem 16-19: a cone of 306 to 330 mm over 60 mm that carries 200 N m at a friction
// of 0.26 takes 0.949 kN, with 82.2 kPa at its small end.
func ExampleTaper_Bedded() {
	cone := cam.Taper{OneIn: 2.5, MeanDiameter: 318 * units.Millimetre, Length: 60 * units.Millimetre, Friction: measure.Between(units.Value(0.26), units.Value(0.26))}
	var b cam.Bedded
	b, err := cone.Bedded(units.Newtons(948.8))
	fmt.Println(b.Turning.High.In(units.NewtonMetre, 0), b.Small.In(units.Millimetre, 0), b.Large.In(units.Millimetre, 0), err)
	fmt.Printf("%.1f kPa\n", b.Pressure.Pascals()/1000)
	// Output:
	// 200 N m 306 mm 330 mm <nil>
	// 82.2 kPa
}

func ExampleTaper_FaceFor() {
	l, err := cam.Taper{OneIn: 8, MeanDiameter: 16 * units.Millimetre, Length: 20 * units.Millimetre}.FaceFor(30*units.Kilonewton, 30*units.Megapascal)
	fmt.Println(l.In(units.Millimetre, 1), err)
	// Output: 19.9 mm <nil>
}
