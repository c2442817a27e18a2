package spring_test

import (
	"fmt"

	"example.com/benchbook/refdata"
	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Rate of the clutch springs of Bhandari, Design of Machine Elements, ex. 10.7:
// 5 mm wire on a mean diameter of 40 mm, five active coils.
func ExampleRate() {
	k, err := spring.Rate(5*units.Millimetre, 40*units.Millimetre, 5, 81370*units.Megapascal)
	fmt.Println(k.In(units.NewtonPerMillimetre, 6), err)
	// Output: 19.865723 N/mm <nil>
}

// Sadhu Singh, Machine Design, ex. 8.3: 40 N on 3 mm wire of index 6.
func ExampleStress() {
	tau, err := spring.Stress(40*units.Newton, 3*units.Millimetre, 18*units.Millimetre, spring.Wahl)
	fmt.Println(tau.In(units.Megapascal, 2), err)
	// Output: 85.05 MPa <nil>
}

// The same example's load to yield at 650 MPa.
func ExampleLoadAtStress() {
	f, err := spring.LoadAtStress(650*units.Megapascal, 3*units.Millimetre, 18*units.Millimetre, spring.Wahl)
	fmt.Println(f.In(units.Newton, 1), err)
	// Output: 305.7 N <nil>
}

func ExampleFactor() {
	for _, f := range []spring.Factor{spring.Uncorrected, spring.DirectShear, spring.Wahl, spring.Bergstraesser} {
		k, err := f.At(6)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-13s %.4f\n", f, k)
	}
	// Output:
	// uncorrected   1.0000
	// direct shear  1.0833
	// Wahl          1.2525
	// Bergsträsser  1.2381
}

// A clutch spring of the invented machine: what its dimensions say.
func ExampleNewHelical() {
	h, err := spring.NewHelical(spring.HelicalSpec{
		Wire: units.Millimetres(2.64), Outside: units.Millimetres(17.8), Total: 9.5,
		Free: 46 * units.Millimetre, Ends: spring.SquaredGround,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	f := h.Figures()
	fmt.Println("rate       ", f.Rate.In(units.NewtonPerMillimetre, 1))
	fmt.Println("solid      ", f.Solid.In(units.Millimetre, 1), "at", f.SolidLoad.In(units.Newton, 0))
	fmt.Println("work to    ", f.Least.In(units.Millimetre, 1))
	fmt.Println("buckles    ", f.CanBuckle)
	s := h.At(36 * units.Millimetre)
	fmt.Println("at 36 mm   ", s.Load.In(units.Newton, 0), s.Torsion.In(units.Megapascal, 0), s.ToSolid.In(units.Millimetre, 1))
	fmt.Println("at 25 mm   ", h.At(25*units.Millimetre).Reason)
	// Output:
	// rate        18.9 N/mm
	// solid       25.1 mm at 396 N
	// work to     28.0 mm
	// buckles     false
	// at 36 mm    189 N 397 MPa 10.9 mm
	// at 25 mm    the coils touch at 25.08 mm
}

// Every fault of a wrong specification comes at once.
func ExampleNewHelical_faults() {
	_, err := spring.NewHelical(spring.HelicalSpec{Wire: 3 * units.Millimetre, Total: 2, Ends: spring.Squared})
	for _, f := range fault.Faults(err) {
		fmt.Println(f)
	}
	// Output:
	// mean: give the mean, outside or inside diameter of the coils
	// total: 2: must be more than the 2 dead coils, at most 1000
	// free: 0 mm: must be above zero, and of a size a machine can have
}

// Six springs of a known rate, pressed 11 mm.
func ExampleNewLinear() {
	one, err := spring.NewLinear(25*units.NewtonPerMillimetre, 46*units.Millimetre, 28*units.Millimetre)
	if err != nil {
		fmt.Println(err)
		return
	}
	six, err := spring.NewParallel(spring.Part{Spring: one, Count: 6})
	if err != nil {
		fmt.Println(err)
		return
	}
	f, ok := six.Load(11 * units.Millimetre)
	fmt.Println(f, ok)
	_, ok = six.Load(19 * units.Millimetre)
	fmt.Println("at 19 mm:", ok)
	// Output:
	// 1650 N true
	// at 19 mm: false
}

// A spring inside another, 5 mm shorter: it joins after 5 mm.
func ExampleNewParallel() {
	outer, err1 := spring.NewLinear(20*units.NewtonPerMillimetre, 50*units.Millimetre, 30*units.Millimetre)
	inner, err2 := spring.NewLinear(8*units.NewtonPerMillimetre, 45*units.Millimetre, 28*units.Millimetre)
	both, err3 := spring.NewParallel(spring.Part{Spring: outer}, spring.Part{Spring: inner, Gap: 5 * units.Millimetre})
	if err1 != nil || err2 != nil || err3 != nil {
		fmt.Println(err1, err2, err3)
		return
	}
	for _, s := range []units.Length{4 * units.Millimetre, 10 * units.Millimetre} {
		f, _ := both.Load(s)
		k, _ := both.RateAt(s)
		fmt.Println(s, f, k)
	}
	// Output:
	// 4 mm 80 N 20 N/mm
	// 10 mm 240 N 28 N/mm
}

// Two springs end to end: compliances add until the softer is solid.
func ExampleNewSeries() {
	soft, err1 := spring.NewLinear(10*units.NewtonPerMillimetre, 30*units.Millimetre, 20*units.Millimetre)
	stiff, err2 := spring.NewLinear(40*units.NewtonPerMillimetre, 30*units.Millimetre, 20*units.Millimetre)
	both, err3 := spring.NewSeries(soft, stiff)
	if err1 != nil || err2 != nil || err3 != nil {
		fmt.Println(err1, err2, err3)
		return
	}
	for _, s := range []units.Length{5 * units.Millimetre, 15 * units.Millimetre} {
		f, _ := both.Load(s)
		k, _ := both.RateAt(s)
		fmt.Println(f.In(units.Newton, 1), k.In(units.NewtonPerMillimetre, 1))
	}
	// Output:
	// 40.0 N 8.0 N/mm
	// 200.0 N 40.0 N/mm
}

// A disc of DIN 2093, series B, 50 mm (dimensions and its load of 4760 N from
// memory), at three quarters of flat.
func ExampleNewDisc() {
	d, err := spring.NewDisc(spring.DiscSpec{
		Outside: 50 * units.Millimetre, Inside: units.Millimetres(25.4),
		Thickness: 2 * units.Millimetre, ConeHeight: units.Millimetres(1.4),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	s := d.At(units.Millimetres(1.05))
	fmt.Println(s.Load.In(units.Newton, 0), "rate", s.Rate.In(units.NewtonPerMillimetre, 0))
	fmt.Println("stresses II", s.II.In(units.Megapascal, 0), "III", s.III.In(units.Megapascal, 0), "OM", s.OM.In(units.Megapascal, 0))
	fmt.Println("snaps:", d.Figures().Snaps)
	// Output:
	// 4762 N rate 3374 N/mm
	// stresses II 923 MPa III 1140 MPa OM -1056 MPa
	// snaps: false
}

// A flat-topped disc: the same load at two deflections, of which only the first
// is returned.
func ExampleDisc_Deflection() {
	d, err := spring.NewDisc(spring.DiscSpec{Outside: 80 * units.Millimetre, Inside: 40 * units.Millimetre, Thickness: 2 * units.Millimetre, ConeHeight: units.Millimetres(3.4)})
	if err != nil {
		fmt.Println(err)
		return
	}
	f := d.Figures()
	fmt.Println("hump of", f.LimitLoad.In(units.Newton, 0), "at", f.Limit.In(units.Millimetre, 2), "flat at", d.Travel().In(units.Millimetre, 2), "with", f.FlatLoad.In(units.Newton, 0))
	s, ok := d.Deflection(5800 * units.Newton)
	fmt.Println(s.In(units.Millimetre, 3), ok)
	_, ok = d.Deflection(6100 * units.Newton)
	fmt.Println("6100 N:", ok)
	// Output:
	// hump of 6069 N at 2.31 mm flat at 3.40 mm with 5543 N
	// 1.725 mm true
	// 6100 N: false
}

// A clutch pressed by one column of discs, in pairs, oiled.
func ExampleNewStack() {
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
	f, _ := k.Load(3 * units.Millimetre)
	in, out, err := k.Band(3*units.Millimetre, spring.StackFriction{Between: 0.015, Edge: 0.03})
	fmt.Println(k.Height().In(units.Millimetre, 1), f.In(units.Newton, 0), in.In(units.Newton, 0), out.In(units.Newton, 0), err)
	// Output: 16.2 mm 9184 N 9617 N 8788 N <nil>
}

// A disc borne 2 mm inside its edges pushes harder over less travel.
func ExampleDisc_Between() {
	d, err := spring.NewDisc(spring.DiscSpec{Outside: 80 * units.Millimetre, Inside: 40 * units.Millimetre, Thickness: 3 * units.Millimetre, ConeHeight: 2 * units.Millimetre})
	if err != nil {
		fmt.Println(err)
		return
	}
	v, err := d.Between(76*units.Millimetre, 44*units.Millimetre)
	if err != nil {
		fmt.Println(err)
		return
	}
	a, _ := d.Load(1 * units.Millimetre)
	b, _ := v.Load(units.Millimetres(0.8))
	fmt.Printf("%.2f\n", b.Ratio(a))
	// Output: 1.25
}

// A rocking lever of 2:1 between spring and plate.
func ExampleNewLevered() {
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
	f, _ := v.Load(5 * units.Millimetre)
	fmt.Println(f, v.Travel())
	// Output: 200 N 10 mm
}

// Jindal, Machine Design, 2010, ex. 8-3: music wire of 1.626 mm.
func ExampleLaw() {
	w := spring.Law{Name: "music wire", Form: spring.Power, A: 2211 * units.Megapascal, Exponent: 0.145}
	s, _, err := w.At(units.Millimetres(1.626))
	fmt.Println(s.In(units.Megapascal, 1), err)
	// Output: 2060.5 MPa <nil>
}

// Three fits of one wire, each by name; the choice is the reader's.
func ExampleFits() {
	laws, err := spring.Fits("A228", 3*units.Millimetre)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, w := range laws {
		s, _, _ := w.At(3 * units.Millimetre)
		fmt.Println(s.In(units.Megapascal, 0), w.Source.Status)
	}
	// Output:
	// 1885 MPa published
	// 1722 MPa published
	// 1801 MPa published
}

func ExampleWires() {
	span, laws, err := spring.Wires("EN 10270-1 SH", 3*units.Millimetre)
	fmt.Println(span.Low.In(units.Megapascal, 0), len(laws), err)
	// Output: 1829 MPa 1 <nil>
}

func ExampleLawOf() {
	row, _ := refdata.SpringStrengths().ByName("EN 10270-1 SM/DM, handbook")
	s, in, err := spring.LawOf(row).At(2 * units.Millimetre)
	fmt.Println(s.In(units.Megapascal, 0), in, err)
	// Output: 1757 MPa true <nil>
}

func ExampleModulusOf() {
	m, src, err := spring.ModulusOf("A228", 2*units.Millimetre)
	fmt.Println(m.Shear.In(units.Gigapascal, 1), m.Young.In(units.Gigapascal, 1), src.Status, err)
	// Output: 81.0 GPa 196.5 GPa published <nil>
}

// Bhandari ex. 10.7: wire for 300 N at index 8 and 417 MPa.
func ExampleWireFor() {
	d, err := spring.WireFor(300*units.Newton, 8, 417*units.Megapascal, spring.Wahl)
	fmt.Println(d.In(units.Millimetre, 6), err)
	// Output: 4.165688 mm <nil>
}

// Wentzell, Machine Design, 2007, ex. 8.1: 35 lbf on 0.625 in mean diameter.
func ExampleWireForLaw() {
	w := spring.Law{Form: spring.Power, A: units.PoundsForcePerSquareInch(190000 * 1.6457), Exponent: 0.154} // 190 000 at 1 in, times 25.4^0.154
	d, err := spring.WireForLaw(units.PoundsForce(35), units.Inches(0.625), 1.25, 0.263, w)
	fmt.Println(d.In(units.Inch, 2), err)
	// Output: 0.10 in <nil>
}

// Bhandari ex. 10.7: 300 N in 15 mm.
func ExampleCoilsFor() {
	n, err := spring.CoilsFor(20*units.NewtonPerMillimetre, 5*units.Millimetre, 40*units.Millimetre, 81370*units.Megapascal)
	fmt.Printf("%.6f %v\n", n, err)
	// Output: 4.966431 <nil>
}

// Sadhu Singh ex. 8.8: 12.5 N/mm of 4 mm wire in 30 coils.
func ExampleMeanFor() {
	d, err := spring.MeanFor(units.NewtonsPerMillimetre(12.5), 4*units.Millimetre, 30, 85000*units.Megapascal)
	fmt.Println(d.In(units.Millimetre, 2), err)
	// Output: 19.36 mm <nil>
}

// Bhandari ex. 10.7: 7 coils of 5 mm, 1 mm between them when fully worked.
func ExampleFreeFor() {
	solid, _ := spring.SquaredGround.Solid(5*units.Millimetre, 7)
	l0, err := spring.FreeFor(solid, units.Millimetres(15.101389), 7, spring.Clash{Gap: 1 * units.Millimetre})
	fmt.Println(l0.In(units.Millimetre, 6), err)
	// Output: 56.101389 mm <nil>
}

func ExampleEnds() {
	for _, e := range []spring.Ends{spring.SquaredGround, spring.Squared, spring.PlainGround, spring.Plain} {
		solid, _ := e.Solid(3*units.Millimetre, 9)
		pitch, _ := e.Pitch(45*units.Millimetre, 3*units.Millimetre, 9-e.Dead())
		fmt.Println(e, "-", solid, "solid,", pitch.In(units.Millimetre, 2), "pitch")
	}
	// Output:
	// squared and ground - 27 mm solid, 5.57 mm pitch
	// squared, not ground - 30 mm solid, 5.14 mm pitch
	// plain, ground - 27 mm solid, 5.00 mm pitch
	// plain - 30 mm solid, 4.67 mm pitch
}

// Sadhu Singh ex. 8.2: 60 to 140 N on 3 mm wire, 18 mm mean, 1430 MPa.
func ExampleFatigue() {
	m, err := spring.Fatigue(60*units.Newton, 140*units.Newton, 3*units.Millimetre, 18*units.Millimetre, spring.PatentedWire(1430*units.Megapascal))
	fmt.Printf("%.2f %v\n", m.Safety, err)
	// Output: 1.44 <nil>
}

// Sadhu Singh ex. 8.10.
func ExampleWireForFatigue() {
	d, err := spring.WireForFatigue(600*units.Newton, 1000*units.Newton, 6, 1.5, spring.FatigueStrength{Pulsating: 350 * units.Megapascal, Yield: 700 * units.Megapascal})
	fmt.Println(d.In(units.Millimetre, 2), err)
	// Output: 7.28 mm <nil>
}

// A tired spring 1.5 mm short of new has lost its rate times that, at any set
// length.
func ExampleSetLoss() {
	fmt.Println(spring.SetLoss(25*units.NewtonPerMillimetre, 46*units.Millimetre, units.Millimetres(44.5)))
	// Output: 37.5 N
}

// Three loads on a kitchen scale; the readings are invented.
func ExampleFitLine() {
	cal, bal := measure.Caliper(), measure.SpringBalance()
	line, err := spring.FitLine([]spring.LoadReading{
		{Length: measure.MustRead("40 mm", cal), Load: measure.MustRead("118 N", bal)},
		{Length: measure.MustRead("36 mm", cal), Load: measure.MustRead("200 N", bal)},
		{Length: measure.MustRead("32 mm", cal), Load: measure.MustRead("279 N", bal)},
	}, spring.FitOptions{})
	fmt.Println(line.Rate, line.Free, "bent:", line.Bent, err)
	// Output: 20.2 ± 1.1 N/mm 45.8 ± 0.4 mm bent: false <nil>
}

// Which spring is this? Caliper and balance, readings invented.
func ExampleIdentify() {
	cal, bal := measure.Caliper(), measure.SpringBalance()
	id, err := spring.Identify(spring.Readings{
		Wire: measure.MustRead("2.64 mm ± 0.01", cal), Outside: measure.MustRead("17.8 mm", cal),
		Free: measure.MustRead("46 mm", cal), Total: measure.MustRead("9.5", measure.Count()), Ends: spring.SquaredGround,
		Loads: []spring.LoadReading{
			{Length: measure.MustRead("40 mm", cal), Load: measure.MustRead("97 N", bal)},
			{Length: measure.MustRead("36 mm", cal), Load: measure.MustRead("162 N", bal)},
			{Length: measure.MustRead("32 mm", cal), Load: measure.MustRead("226 N", bal)},
		},
	}, spring.IdentifyOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(id)
	for _, o := range id.Causes.Odds[:3] {
		fmt.Println(o.Percent, "%", o.Text)
	}
	fmt.Println("next:", id.NextReadings[0].Text)
	// Output:
	// rate 16.2 ± 0.9 N/mm by load, 18.7 ± 0.5 N/mm by dimensions: they differ by -14 %
	// 29 % it has one coil more than was counted
	// 24 % the spring is what its dimensions say
	// 23 % one coil fewer lies dead at its ends than was taken
	// next: squeeze it solid in a vice, guided on a rod, and measure it
}

func ExampleTraceOf() {
	d, err := spring.NewDisc(spring.DiscSpec{Outside: 80 * units.Millimetre, Inside: 40 * units.Millimetre, Thickness: 2 * units.Millimetre, ConeHeight: 3 * units.Millimetre})
	if err != nil {
		fmt.Println(err)
		return
	}
	t, err := spring.TraceOf(d, 4)
	if err != nil {
		fmt.Println(err)
		return
	}
	for i := range t.Len() {
		x, y := t.XY(i)
		fmt.Printf("%.0f mm %.0f N\n", x, y)
	}
	// Output:
	// 0 mm 0 N
	// 1 mm 3668 N
	// 2 mm 4890 N
	// 3 mm 4890 N
}
