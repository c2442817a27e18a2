package gear_test

import (
	"fmt"

	"example.com/benchbook/timing/gear"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// An invented timing chest: is it right for a four-stroke, what does a tooth move, and
// how far is the finest step of its compound train?
func Example() {
	d := gear.Drive{
		{From: "crank", Driver: 24, To: "idler", Driven: 32},
		{From: "idler", Driver: 30, To: "inlet", Driven: 45},
		{From: "idler", Driver: 30, To: "exhaust", Driven: 45},
	}
	if err := d.CheckHalfSpeed("inlet", "exhaust"); err != nil {
		fmt.Println(err)
		return
	}
	steps, _ := d.Steps()
	for _, s := range steps {
		fmt.Println(d[s.Mesh].From, "to", d[s.Mesh].To, "one tooth:", s.Crank, s.Moves)
	}
	t, _ := d.Train("inlet")
	finest, _ := t.FinestStep()
	marks, _ := d.MarksMeet()
	fmt.Println("finest", finest, "degrees; marks meet every", marks.Turns, "turns")
	// Output:
	// crank to idler one tooth: 15° crank [idler inlet exhaust]
	// idler to inlet one tooth: 16° crank [inlet]
	// idler to exhaust one tooth: 16° crank [exhaust]
	// finest 1 degrees; marks meet every 4 turns
}

// A tooth of 14.4° of the crank and a vernier of 60/11°: between them every multiple
// of 12/55°. Arithmetic.
func ExampleFinestStep() {
	fmt.Println(gear.FinestStep(gear.NewRational(72, 5), gear.NewRational(60, 11)))
	// Output: 12/55
}

// 0.10 ± 0.02 mm at each of two meshes of 2 mm module.
func ExampleTrain_LostMotion() {
	j := gear.Slack{Backlash: measure.MustRead("0.10 mm ± 0.02", measure.DialGauge()), Module: 2 * units.Millimetre}
	m, err := gear.Simple(25, 31, 50).LostMotion(j, j)
	fmt.Println(m, err)
	// Output: 0.46 ± 0.06° crank <nil>
}

// Wentzell, Machine Design, 1st ed., example 11.1, p. 217 (read in a textbook
// companion): 400 rev/min and 1800 lbf in.
func ExampleTrain_Drive() {
	d, err := gear.Simple(20, 60).Then(20, 60).Drive(units.RevolutionsPerMinute(3600), units.PoundForceInches(200), 0)
	fmt.Println(d.Speed.In(units.RevolutionPerMinute, 0), d.Torque.In(units.PoundForceInch, 0), err)
	// Output: 400 rev/min 1800 lbf in <nil>
}

func ExampleHelical_ShimFor() {
	h := gear.Helical{Teeth: 48, Module: units.Millimetres(1.75), Helix: 20 * units.Degree}
	shim, err := h.ShimFor(1 * units.Degree) // of the camwheel: 2° of the crank
	fmt.Println(shim.In(units.Millimetre, 2), err)
	// Output: 2.14 mm <nil>
}

func ExampleNormal() {
	n, err := gear.Normal(units.Millimetres(0.1), 20*units.Degree, 0)
	fmt.Println(n.In(units.Millimetre, 3), err)
	// Output: 0.094 mm <nil>
}

func ExampleWheel_Span() {
	s, err := gear.Wheel{Teeth: 24, Module: gear.OfDiametralPitch(12)}.Span(3)
	fmt.Println(s.W.In(units.Millimetre, 3), s.OnFlank, err)
	// Output: 16.333 mm true <nil>
}

// A handbook's example, 32 teeth of 4 DP over wires of 0.432 in: 8.6032 in.
func ExampleWheel_OverPins() {
	m, err := gear.Wheel{Teeth: 32, Module: gear.OfDiametralPitch(4)}.OverPins(units.Inches(0.432))
	fmt.Println(m.M.In(units.Inch, 4), err)
	// Output: 8.6032 in <nil>
}

// Khurmi & Gupta, Theory of Machines, 14th ed., example 12.5 (read in a textbook
// companion): 3973 and 3610 mm/s.
func ExampleMeshing_SlideSpeeds() {
	w := gear.Wheel{Teeth: 20, Module: 5 * units.Millimetre}
	v := w
	v.Teeth = 40
	s, err := gear.Meshing{Pinion: w, Wheel: v}.SlideSpeeds(units.RevolutionsPerMinute(2000))
	fmt.Printf("%.2f %.2f %v\n", s.In.MetresPerSecond(), s.Out.MetresPerSecond(), err)
	// Output: 3.97 3.61 <nil>
}

// Sarkar, Theory of Machines, 1st ed., chapter 4, illustration 2, p. 133 (read in a
// textbook companion): 6.1 mm.
func ExampleMeshing_AddendumForArc() {
	w := gear.Wheel{Teeth: 40, Module: 6 * units.Millimetre}
	h, err := gear.Meshing{Pinion: w, Wheel: w}.AddendumForArc(1.75)
	fmt.Println(h.In(units.Millimetre, 1), err)
	// Output: 6.1 mm <nil>
}

// Khurmi & Gupta, example 12.8: 6.5 mm on the wheel, 16.2 on the pinion.
func ExampleMeshing_AddendaForPart() {
	w := gear.Wheel{Teeth: 20, Module: 10 * units.Millimetre}
	v := w
	v.Teeth = 40
	a, err := gear.Meshing{Pinion: w, Wheel: v}.AddendaForPart(0.5)
	fmt.Println(a.Wheel.In(units.Millimetre, 1), a.Pinion.In(units.Millimetre, 1), err)
	// Output: 6.5 mm 16.2 mm <nil>
}

// Sarkar, chapter 4, illustration 5, p. 136: a centre of about 600 mm, 30 mm circular
// pitch, three to one: 96 and 32 teeth.
func ExampleTeethFor() {
	under, over, err := gear.TeethFor(600*units.Millimetre, gear.OfCircularPitch(30*units.Millimetre), gear.NewRational(3, 1))
	fmt.Println(under.Wheel, under.Pinion, over.Wheel, over.Pinion, err)
	// Output: 93 31 96 32 <nil>
}

// Khurmi & Gupta, example 12.15: 54.65° and 15.35°.
func ExampleCrossedFor() {
	c, err := gear.CrossedFor(175*units.Millimetre, 100*units.Millimetre, 70*units.Degree, 1.5, 80)
	fmt.Println(c.Helix1.In(units.Degree, 2), c.Helix2.In(units.Degree, 2), err)
	// Output: 54.65° 15.35° <nil>
}

// The same pair: 412 N of thrust on the second wheel for 75 N m.
func ExampleLoad() {
	f, err := gear.Load(75*units.NewtonMetre, 100*units.Millimetre, 20*units.Degree, units.Degrees(15.35))
	fmt.Println(f.Axial.In(units.Newton, 0), err)
	// Output: 412 N <nil>
}

// Khurmi & Gupta, example 13.4, first case: 270 rev/min.
func ExampleEpicyclic() {
	e, _ := gear.EpicyclicOf(gear.Simple(36, 45))
	s, err := e.Last(0, units.RevolutionsPerMinute(150))
	fmt.Println(s.Last.In(units.RevolutionPerMinute, 0), err)
	// Output: 270 rev/min <nil>
}

// Bevan, The Theory of Machines, 3rd ed., chapter 11, example 5 (read in a textbook
// companion): 4.71, exactly 80/17.
func ExampleEpicyclic_Fixed() {
	e, _ := gear.EpicyclicOf(gear.Simple(27, 30).Then(21, 24))
	r, err := e.Fixed("first", "arm", "last")
	fmt.Printf("%v %.2f %v\n", r, r.Float(), err)
	// Output: 80/17 4.71 <nil>
}

// Khurmi & Gupta, example 13.9: five turns of the sun for one of the arm on an annulus
// of 56 teeth.
func ExamplePlanetaryFor() {
	p, err := gear.PlanetaryFor(gear.NewRational(5, 1), 56)
	fmt.Println(p.Sun, p.Planet, p.Annulus, p.Assembles(3), p.Assembles(5), err)
	// Output: 14 21 56 false true <nil>
}

// Machinery's Handbook, 31st ed., p. 2299: 12 DP is a module of 2.1167 mm.
func ExampleOfDiametralPitch() {
	m := gear.OfDiametralPitch(12)
	fmt.Println(m.In(units.Millimetre, 4), gear.DiametralPitch(m))
	// Output: 2.1167 mm 12
}
