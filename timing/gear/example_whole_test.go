package gear_test

import (
	"fmt"

	"example.com/benchbook/timing/gear"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// A train as it stands in the timing chest: a compound idler, then what each tooth
// is worth. Teeth are invented.
func ExampleTrain() {
	t, err := gear.ParseTrain("24:32, 30:45")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(t.Equal(gear.Simple(24, 32).Then(30, 45)), t.IsHalfSpeed())
	for i := range t.Len() {
		var p gear.Pair = t.Pair(i)
		w, err := t.ToothWorth(i)
		if err != nil {
			fmt.Println(err)
			return
		}
		var worth gear.Worth = w
		soFar, err := t.RatioAt(i + 1)
		fmt.Println(p.Driver, "to", p.Driven, "- turns", soFar, "of the crank's; a tooth is", worth.Crank, err)
	}
	// Output:
	// true true
	// 24 to 32 - turns -3/4 of the crank's; a tooth is 15° crank <nil>
	// 30 to 45 - turns 1/2 of the crank's; a tooth is 16° crank <nil>
}

// A chain to the magneto turns the same way as the crank; so does a ring with inside
// teeth.
func ExampleLink() {
	for _, t := range []gear.Train{gear.Train{}.ThenChain(15, 30), gear.Train{}.ThenInternal(15, 30), gear.Simple(15, 30)} {
		var link gear.Link = t.Pair(0).Link
		r, err := t.Ratio()
		fmt.Println(link == gear.External, r, err)
	}
	// Output:
	// false 1/2 <nil>
	// false 1/2 <nil>
	// true -1/2 <nil>
}

// Five keyways in a pinion of 24 teeth: where the crank can be set within half a
// tooth, exactly.
func ExampleKeyed_Settings() {
	k := gear.Keyed{Teeth: 24, Keyways: 5}
	settings, err := k.Settings()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range settings {
		fmt.Println(s.Keyways, "keyways on,", s.Teeth, "teeth back:", s.Exact, "degrees")
	}
	// Output:
	// 2 keyways on, 10 teeth back: -6 degrees
	// 1 keyways on, 5 teeth back: -3 degrees
	// 0 keyways on, 0 teeth back: 0 degrees
	// 4 keyways on, 19 teeth back: 3 degrees
	// 3 keyways on, 14 teeth back: 6 degrees
}

// Exact arithmetic: three teeth on at a camwheel of 50, eight holes back on a vernier
// of 11 and 12, in degrees of the cam; and the finest shift that the two can make.
func ExampleRational() {
	tooth, hole := gear.NewRational(360, 50), gear.NewRational(360, 11*12)
	shift := tooth.Times(gear.NewRational(3, 1)).Plus(hole.Times(gear.NewRational(-8, 1)))
	fmt.Printf("%v is %d/%d, nearly %.3f\n", shift, shift.Num(), shift.Den(), shift.Float())
	fmt.Println("finest", tooth.Step(hole), "- teeth to a hole", tooth.Over(hole))
	fmt.Println("by zero:", shift.Over(gear.Rational{}).Valid())
	// Output:
	// -12/55 is -12/55, nearly -0.218
	// finest 6/55 - teeth to a hole 66/25
	// by zero: false
}

// The spindle that drives the rest of the timing chest, found from its meshes.
func ExampleDrive_Root() {
	d := gear.Drive{
		{From: "idler", Driver: 32, To: "inlet", Driven: 48},
		{From: "crank", Driver: 24, To: "idler", Driven: 32},
	}
	fmt.Println(d.Root())
	// Output: crank
}

// Two epicyclics in a row, 7.5 kW in at 1500 rev/min and out at 500, a fifth lost on
// the way: the ring that is held must bear 66.85 N m (Khurmi & Gupta, Theory of
// Machines, 14th ed., example 13.23, p. 469, read in a textbook companion).
func ExampleHoldTorque() {
	t, err := gear.HoldTorque(units.Kilowatts(7.5), units.RevolutionsPerMinute(-1500), units.RevolutionsPerMinute(-500), 0.8)
	var held gear.Held = t
	fmt.Println(held.Hold.In(units.NewtonMetre, 2), err)
	// Output: -66.85 N m <nil>
}

// A hub gear with its sun held: the wheel's speed for the sprocket's, the torque that
// the sun must bear, and the speed of the arm from the other two.
func ExampleEpicyclic_Torques() {
	e, err := gear.PlanetaryOf(24, 15).Epicyclic()
	if err != nil {
		fmt.Println(err)
		return
	}
	turns, err := e.Arm(0, units.RevolutionsPerMinute(100)) // sun held, annulus driven
	fmt.Println("arm", turns.Arm.In(units.RevolutionPerMinute, 1), err)
	var t gear.Torques
	t, err = e.Torques(10 * units.NewtonMetre) // on the sun
	fmt.Println("annulus", t.Last, "arm", t.Arm, err)
	// Output:
	// arm 69.2 rev/min <nil>
	// annulus 22.5 N m arm -32.5 N m <nil>
}

// Which way a camwheel must be shimmed depends on the hand of its teeth.
func ExampleHand() {
	for _, hand := range []gear.Hand{gear.RightHand, gear.LeftHand} {
		h := gear.Helical{Teeth: 48, Module: units.Millimetres(1.75), Helix: 20 * units.Degree, Hand: hand}
		shim, err := h.ShimFor(1 * units.Degree)
		fmt.Println(shim.In(units.Millimetre, 2), err)
	}
	// Output:
	// 2.14 mm <nil>
	// -2.14 mm <nil>
}

// Backlash felt by a blade, 0.10 mm square to the flank, is more along the pitch
// circle; drawing the centres 0.05 mm apart adds to it.
func ExampleBacklashOpened() {
	along, err := gear.Circumferential(units.Millimetres(0.10), 20*units.Degree, 0)
	fmt.Println(along.In(units.Millimetre, 3), err)
	more, err := gear.BacklashOpened(units.Millimetres(0.05), 20*units.Degree)
	fmt.Println(more.In(units.Millimetre, 3), err)
	// Output:
	// 0.106 mm <nil>
	// 0.036 mm <nil>
}

// What standard tooth a wheel may have, and how far its profile then seems shifted.
// The readings are invented.
func ExampleSize() {
	got, err := gear.Identify(gear.Found{
		Teeth: 24,
		Tip:   measure.MustRead("55.03 mm", measure.Caliper()),
		Over:  3, Span: measure.MustRead("16.30 mm ± 0.01", measure.Caliper()), SpanNext: measure.MustRead("22.56 mm ± 0.01", measure.Caliper()),
	}, gear.IdentifyOptions{})
	if err != nil || len(got.Sizes) == 0 {
		fmt.Println(got.Causes.Leader().Text, err)
		return
	}
	var size gear.Size = got.Sizes[0]
	fmt.Println(size.Key, "base pitch", size.BasePitch.In(units.Millimetre, 2))
	fmt.Printf("profile shift %.2f ± %.2f modules\n", size.Shift, size.ShiftU)
	// Output:
	// DP 12 at 20° base pitch 6.25 mm
	// profile shift -0.01 ± 0.02 modules
}
