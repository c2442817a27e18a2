package spring_test

import (
	"fmt"

	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
)

// A clutch spring of the invented machine between plate and nut.
func ExampleHelical() {
	h, err := spring.NewHelical(spring.HelicalSpec{
		Wire: units.Millimetres(2.64), Outside: units.Millimetres(17.8), Total: 9.5,
		Free: 46 * units.Millimetre, Ends: spring.SquaredGround, Modulus: spring.Steel(),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(h.Rate().In(units.NewtonPerMillimetre, 1), "from", h.Free(), "to", h.Solid().In(units.Millimetre, 1), "solid")

	// Pressed 10 mm by the nut, then 2.5 mm further by the lever.
	held, _ := h.Load(10 * units.Millimetre)
	lifted, ok := h.Load(units.Millimetres(12.5))
	fmt.Println("holds", held.In(units.Newton, 0), "lifted", lifted.In(units.Newton, 0), ok)

	// The nut that makes it hold 200 N.
	s, ok := h.Deflection(200 * units.Newton)
	fmt.Println("200 N at", s.In(units.Millimetre, 1), ok, "of", h.Travel().In(units.Millimetre, 1))
	at := h.AtLoad(200 * units.Newton)
	fmt.Println("stressed to", at.Wahl.In(units.Megapascal, 0), "by Wahl,", at.ToSolid.In(units.Millimetre, 1), "from solid")

	// A coil is as stiff all the way, and its load rises all the way.
	early, _ := h.RateAt(1 * units.Millimetre)
	fmt.Println(early == h.Rate(), h.Limit() == h.Travel())
	// Output:
	// 18.9 N/mm from 46 mm to 25.1 mm solid
	// holds 189 N lifted 237 N true
	// 200 N at 10.6 mm true of 20.9 mm
	// stressed to 531 MPa by Wahl, 10.4 mm from solid
	// true true
}

// Pressing a spring of known wire solid: does it take a set?
func ExampleStrength() {
	_, wires, err := spring.Wires("EN 10270-1 SH", units.Millimetres(2.64))
	if err != nil {
		fmt.Println(err)
		return
	}
	h, err := spring.NewHelical(spring.HelicalSpec{
		Wire: units.Millimetres(2.64), Outside: units.Millimetres(17.8), Total: 9.5,
		Free: 46 * units.Millimetre, Ends: spring.SquaredGround, Wires: wires[0],
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	s := h.Figures().Strength
	fmt.Printf("%s: %.0f %% of it when solid; takes a set: %v\n", s.Tensile.In(units.Megapascal, 0), 100*s.SolidShare, s.TakesSet)
	// Output: 1874 MPa: 44 % of it when solid; takes a set: false
}

// A long spring on a loose seat bows out where the same spring on flat seats
// stays straight.
func ExampleSeating() {
	spec := spring.HelicalSpec{Wire: 3 * units.Millimetre, Mean: 18 * units.Millimetre, Active: 12, Free: 75 * units.Millimetre, Ends: spring.SquaredGround}
	for _, seat := range []spring.Seating{spring.BothFlat, spring.FlatAndPivot} {
		spec.Seating = seat
		h, err := spring.NewHelical(spec)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%v (factor %.2f): ", h.Spec().Seating, seat.LengthFactor())
		if f := h.Figures(); f.CanBuckle {
			fmt.Println("bows out when pressed", f.BucklesAt.In(units.Millimetre, 0))
		} else {
			fmt.Println("stays straight")
		}
	}
	// Output:
	// both ends flat (factor 0.50): stays straight
	// one end flat, one tipping (factor 0.71): bows out when pressed 32 mm
}

// All that is known of a spring may be its rate and two lengths.
func ExampleLinear() {
	e, err := spring.NewLinear(25*units.NewtonPerMillimetre, 46*units.Millimetre, 28*units.Millimetre)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(e.Rate(), "from", e.Free(), "to", e.Least())
	s, ok := e.Deflection(250 * units.Newton)
	fmt.Println("250 N at", s, ok, "of", e.Limit())
	f, ok := e.Load(20 * units.Millimetre)
	fmt.Println("at 20 mm:", f, ok, "since it goes", e.Travel())
	// Output:
	// 25 N/mm from 46 mm to 28 mm
	// 250 N at 10 mm true of 18 mm
	// at 20 mm: 0 N false since it goes 18 mm
}

// Any spring answers the same five questions, whatever it is made of.
func ExampleElement() {
	coil, err1 := spring.NewLinear(25*units.NewtonPerMillimetre, 46*units.Millimetre, 28*units.Millimetre)
	disc, err2 := spring.NewDisc(spring.DiscSpec{Outside: 80 * units.Millimetre, Inside: 40 * units.Millimetre, Thickness: 2 * units.Millimetre, ConeHeight: units.Millimetres(3.4)})
	if err1 != nil || err2 != nil {
		fmt.Println(err1, err2)
		return
	}
	for _, e := range []spring.Element{coil, disc} {
		f, _ := e.Load(1 * units.Millimetre)
		k, _ := e.RateAt(1 * units.Millimetre)
		fmt.Printf("%s and %s at 1 mm; rises to %s of %s\n", f.In(units.Newton, 0), k.In(units.NewtonPerMillimetre, 0), e.Limit().In(units.Millimetre, 1), e.Travel().In(units.Millimetre, 1))
	}
	// Output:
	// 25 N and 25 N/mm at 1 mm; rises to 18.0 mm of 18.0 mm
	// 4467 N and 2796 N/mm at 1 mm; rises to 2.3 mm of 3.4 mm
}

// Past its hump a disc pushes the less the further it is pressed: its rate is
// below zero there, and it snaps. The older printing of the theory reads higher.
func ExampleDisc() {
	spec := spring.DiscSpec{Outside: 80 * units.Millimetre, Inside: 40 * units.Millimetre, Thickness: 2 * units.Millimetre, ConeHeight: units.Millimetres(3.4)}
	d, err := spring.NewDisc(spec)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("hump at", d.Limit().In(units.Millimetre, 2))
	for _, s := range []units.Length{1 * units.Millimetre, 3 * units.Millimetre} {
		k, _ := d.RateAt(s)
		fmt.Println(s, k.In(units.NewtonPerMillimetre, 0))
	}
	spec = d.Spec()
	spec.Formula = spring.AlmenLaszlo
	old, err := spring.NewDisc(spec)
	if err != nil {
		fmt.Println(err)
		return
	}
	a, _ := d.Load(1 * units.Millimetre)
	b, _ := old.Load(1 * units.Millimetre)
	fmt.Printf("%v: %.3f of %v\n", spec.Formula, b.Ratio(a), d.Spec().Formula)
	// Output:
	// hump at 2.31 mm
	// 1 mm 2796 N/mm
	// 3 mm -628 N/mm
	// Almen-Laszlo, older coefficient: 1.008 of EN 16984
}

// How far four springs must be drawn in to press with 1000 N, and how far until
// the first of them is solid.
func ExampleParallel() {
	one, err1 := spring.NewLinear(25*units.NewtonPerMillimetre, 46*units.Millimetre, 28*units.Millimetre)
	four, err2 := spring.NewParallel(spring.Part{Spring: one, Count: 4})
	if err1 != nil || err2 != nil {
		fmt.Println(err1, err2)
		return
	}
	s, ok := four.Deflection(1000 * units.Newton)
	fmt.Println(s, ok, "of", four.Limit())
	_, ok = four.Deflection(2000 * units.Newton)
	fmt.Println("2000 N:", ok, "within", four.Travel())
	// Output:
	// 10 mm true of 18 mm
	// 2000 N: false within 18 mm
}

// A soft and a stiff spring end to end: where 250 N is reached, by which the
// soft one is solid.
func ExampleSeries() {
	soft, err1 := spring.NewLinear(10*units.NewtonPerMillimetre, 30*units.Millimetre, 20*units.Millimetre)
	stiff, err2 := spring.NewLinear(40*units.NewtonPerMillimetre, 30*units.Millimetre, 20*units.Millimetre)
	both, err3 := spring.NewSeries(soft, stiff)
	if err1 != nil || err2 != nil || err3 != nil {
		fmt.Println(err1, err2, err3)
		return
	}
	s, ok := both.Deflection(250 * units.Newton)
	fmt.Println(s.In(units.Millimetre, 2), ok, "of", both.Limit(), "and", both.Travel())
	// Output: 16.25 mm true of 20 mm and 20 mm
}

// A column of three pairs of discs, drawn in until it presses with 8 kN.
func ExampleStack() {
	d, err := spring.NewDisc(spring.DiscSpec{Outside: 50 * units.Millimetre, Inside: units.Millimetres(25.4), Thickness: 2 * units.Millimetre, ConeHeight: units.Millimetres(1.4)})
	if err != nil {
		fmt.Println(err)
		return
	}
	k, err := spring.NewStack(d, 2, 3)
	if err != nil {
		fmt.Println(err)
		return
	}
	s, ok := k.Deflection(8 * units.Kilonewton)
	fmt.Println(s.In(units.Millimetre, 2), ok, "of", k.Limit().In(units.Millimetre, 1), "and", k.Travel().In(units.Millimetre, 1))
	rate, _ := k.RateAt(s)
	one, _ := k.Disc().RateAt(s / 3)
	fmt.Println(rate.In(units.NewtonPerMillimetre, 0), "of", one.In(units.NewtonPerMillimetre, 0), "each")
	// Output:
	// 2.50 mm true of 4.2 mm and 4.2 mm
	// 2459 N/mm of 3688 N/mm each
}

// A spring behind a rocker of two to one: double the load, half the travel, a
// quarter of the give.
func ExampleLevered() {
	e, err := spring.NewLinear(10*units.NewtonPerMillimetre, 40*units.Millimetre, 20*units.Millimetre)
	if err != nil {
		fmt.Println(err)
		return
	}
	v, err := spring.NewLevered(e, 2)
	if err != nil {
		fmt.Println(err)
		return
	}
	s, ok := v.Deflection(200 * units.Newton)
	felt, _ := v.RateAt(s)
	own, _ := e.RateAt(2 * s)
	fmt.Println(s, ok, "of", v.Limit(), "at", felt, "where the spring has", own)
	// Output: 5 mm true of 10 mm at 40 N/mm where the spring has 10 N/mm
}

// A line to draw comes as quantities too.
func ExampleTrace_At() {
	e, err := spring.NewLinear(25*units.NewtonPerMillimetre, 46*units.Millimetre, 28*units.Millimetre)
	if err != nil {
		fmt.Println(err)
		return
	}
	t, err := spring.TraceOf(e, 3)
	if err != nil {
		fmt.Println(err)
		return
	}
	for i := range t.Len() {
		s, f := t.At(i)
		fmt.Println(s, f)
	}
	// Output:
	// 0 mm 0 N
	// 9 mm 225 N
	// 18 mm 450 N
}

// Which ends take a coil's face flat on its seat, and how many coils lie dead.
func ExampleEnds_Ground() {
	for _, e := range []spring.Ends{spring.SquaredGround, spring.PlainGround, spring.Plain} {
		fmt.Println(e, "- ground:", e.Ground(), "dead coils:", e.Dead())
	}
	// Output:
	// squared and ground - ground: true dead coils: 2
	// plain, ground - ground: true dead coils: 1
	// plain - ground: false dead coils: 0
}
