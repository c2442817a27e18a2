package fastener_test

import (
	"fmt"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fastener"
)

// An unmarked bolt gets no torque.
func ExampleTighten() {
	t := fastener.MustParse("5/16-26 cycle").WithHand(fastener.Right)
	r, err := fastener.Tighten(fastener.Joint{Thread: t}, fastener.TightenOptions{})
	fmt.Println(r.Reason.Code, err)

	// the same bolt, marked 8.8
	steel, err := fastener.Class("8.8", t)
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err = fastener.Tighten(fastener.Joint{Thread: t, Strength: steel}, fastener.TightenOptions{})
	fmt.Printf("%.0f N m %v gives %.1f to %.1f kN, %v\n", r.Torque.NewtonMetres(), r.DoUp, r.Tension.Low.Kilonewtons(), r.Tension.High.Kilonewtons(), err)
	// Output:
	// grade-unknown <nil>
	// 16 N m clockwise gives 9.5 to 17.5 kN, <nil>
}

// Shigley, Mechanical Engineering Design, 9th ed., example 8-3, p. 440 prints
// 3551 lbf in for 25 kip.
func ExampleTorqueFor() {
	j := fastener.Joint{
		Thread:            fastener.MustParse("3/4-16 UNF"),
		Friction:          fastener.SameFriction(0.15),
		EffectiveDiameter: units.Inches(0.7093), // the book's mean diameter
		BearingHole:       units.Inches(0.75),
		BearingOutside:    units.Inches(1.125),
	}
	q, err := fastener.TorqueFor(j, units.PoundsForce(25000))
	fmt.Printf("%.0f lbf in, %v\n", q.High.PoundForceInches(), err)
	// Output: 3551 lbf in, <nil>
}

func ExampleTensionFor() {
	j := fastener.Joint{Thread: fastener.MustParse("3/8-26 cycle")}
	f, err := fastener.TensionFor(j, units.PoundForceFeet(20))
	fmt.Printf("%.0f to %.0f kN, %v\n", f.Low.Kilonewtons(), f.High.Kilonewtons(), err)
	// Output: 14 to 25 kN, <nil>
}

func ExampleClass() {
	s, err := fastener.Class("8.8", fastener.MustParse("M8"))
	fmt.Println(s.Name, s.Yield.Megapascals(), err)
	// Output: 8.8 640 <nil>
}

func ExampleGrade() {
	s, err := fastener.Grade("5", fastener.MustParse("3/8-24 UNF"))
	fmt.Println(s.Name, s.Proof.KilopoundsForcePerSquareInch(), err)
	// Output: SAE 5 85 <nil>
}

// An invented stud, 3/8-26 cycle of class 8.8, screwed one diameter into a
// light alloy crankcase.
func ExampleStrip() {
	t := fastener.MustParse("3/8-26 cycle")
	s, err := fastener.Strip(fastener.Engaged{
		Thread: t, Length: t.Major(),
		BoltTensile: units.Megapascals(800),
		Hole:        fastener.LightAlloy(),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(s.First)
	fmt.Printf("to break the stud first: %.0f to %.0f mm of full thread\n", s.Least.Low.Millimetres(), s.Least.High.Millimetres())
	// Output:
	// the thread of the hole strips
	// to break the stud first: 18 to 31 mm of full thread
}

func ExampleUsualEngagement() {
	l, err := fastener.UsualEngagement(fastener.MustParse("5/16 BSW"), fastener.LightAlloy())
	fmt.Println(l.In(units.Millimetre, 1), err)
	// Output: 17.4 mm <nil>
}
