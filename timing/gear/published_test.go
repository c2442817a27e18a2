package gear_test

import (
	"fmt"
	"math"
	"testing"

	"example.com/benchbook/timing/gear"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
	"pgregory.net/rapid"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol*math.Abs(want)) {
		t.Errorf("%s: %.8g, the source has %.8g (within %.2g)", what, got, want, tol)
	}
}

func mm(x float64) units.Length { return units.Millimetres(x) }

// A gear machine maker's handbook, page 96: a pair of 11 and 31 teeth repeats after
// eleven turns of the larger.
func ExampleHunting() {
	r, err := gear.Hunting(31, 11)
	fmt.Println(r.Turns, r.Groups, err)
	// Output: 11 1 <nil>
}

// 24 and 48 teeth with an idler of 35: the idler's mark comes right every 70 turns of
// the crank, the cam every 2. Arithmetic.
func ExampleTrain_MarksMeet() {
	all, _ := gear.Simple(24, 35, 48).MarksMeet()
	pair, _ := gear.Simple(24, 48).MarksMeet()
	fmt.Println(all.Turns, pair.Turns)
	// Output: 70 2
}

// Three keyways on a 40-tooth wheel: a third of a tooth, 3° of the cam, 6° of the
// crank. Arithmetic.
func ExampleKeyed() {
	k := gear.Keyed{Teeth: 40, Keyways: 3}
	step, err := k.Step()
	near, _ := k.Nearest(5 * units.Degree)
	fmt.Println(step, err, near.Shift, near.Keyways, near.Teeth)
	// Output: 3 <nil> 6° 2 26
}

// A camwheel pegged through 11 holes in one ring and 12 in the other: 30/11° of the
// cam a step. To gain 4° of the cam: one step.
func ExampleVernier() {
	v := gear.Vernier{Wheel: 11, Flange: 12}
	step, err := v.Step()
	h, _ := v.Nearest(4 * units.Degree)
	fmt.Println(step, err, h.Wheel, h.Flange, h.Exact)
	// Output: 30/11 <nil> 1 1 30/11
}

// Moving a helical wheel by its axial pitch is one tooth: 48.55 mm for 4 mm normal
// module at 15° (Jindal, Machine Design, 1st ed., example 26-1, p. 698, read in a
// textbook companion), so 0.5 mm on 20 teeth is a hundredth of a tooth.
func ExampleHelical() {
	h := gear.Helical{Teeth: 20, Module: 4 * units.Millimetre, Helix: 15 * units.Degree}
	g, _ := gear.Wheel{Teeth: 20, Module: 4 * units.Millimetre, Helix: 15 * units.Degree}.Geometry()
	tooth, err := h.Shifted(g.AxialPitch)
	fmt.Println(g.AxialPitch.In(units.Millimetre, 2), tooth.In(units.Degree, 6), err)
	// Output: 48.55 mm 18.000000° <nil>
}

// Elements of Metric Gear Technology, table 10-1: 17.8918, 8.5427°, 17.8256, 13.6657.
func ExampleWheel_Geometry() {
	g, err := gear.Wheel{Teeth: 12, Module: 10 * units.Millimetre, Shift: 0.3}.Geometry()
	fmt.Println(g.Thickness.In(units.Millimetre, 4), g.ChordAngle.In(units.Degree, 4), g.Chord.In(units.Millimetre, 4), g.ChordalAddendum.In(units.Millimetre, 4), err)
	// Output: 17.8918 mm 8.5427° 17.8256 mm 13.6657 mm <nil>
}

// Khurmi & Gupta, Theory of Machines, 14th ed., example 12.3, p. 398 (read in a
// textbook companion): path 52.3 mm, arc 55.61 mm.
func ExampleMeshing_Contact() {
	wheel := func(z int) gear.Wheel {
		return gear.Wheel{Teeth: z, Module: 12 * units.Millimetre, Addendum: 10.0 / 12}
	}
	c, err := gear.Meshing{Pinion: wheel(30), Wheel: wheel(80)}.Contact()
	fmt.Println(c.Path.In(units.Millimetre, 1), c.Arc.In(units.Millimetre, 2), err)
	// Output: 52.3 mm 55.61 mm <nil>
}

// Bevan, The Theory of Machines, 3rd ed., chapter 10, example 4, p. 334 (read in a
// textbook companion): 18 with a rack, 13 with an equal wheel, 15 at three to one.
func ExampleLeastTeeth() {
	rack, _, _ := gear.LeastTeeth(20*units.Degree, math.Inf(1), 1)
	equal, _, _ := gear.LeastTeeth(20*units.Degree, 1, 1)
	three, exact, err := gear.LeastTeeth(20*units.Degree, 3, 1)
	fmt.Printf("%d %d %d (%.2f) %v\n", rack, equal, three, exact, err)
	// Output: 18 13 15 (14.98) <nil>
}

// Khurmi & Gupta, example 13.6 (read in a textbook companion): 72 on the annulus, 32
// on the sun, arm at 18: the sun turns at 58.5, a planet at -46.8 rev/min.
func ExamplePlanetary() {
	p := gear.Planetary{Sun: 32, Planet: 20, Annulus: 72}
	e, _ := p.Epicyclic()
	arm := units.RevolutionsPerMinute(18)
	s, _ := e.First(0, arm)
	planet, err := p.PlanetSpeed(s.First, arm)
	fmt.Printf("%.1f %.1f %v\n", s.First.RevolutionsPerMinute(), planet.RevolutionsPerMinute(), err)
	// Output: 58.5 -46.8 <nil>
}

// An invented pinion: 24 teeth, 56.5 mm over the tips, spans by caliper.
func ExampleIdentify() {
	got, err := gear.Identify(gear.Found{
		Teeth: 24,
		Tip:   measure.MustRead("55.03 mm", measure.Caliper()),
		Over:  3, Span: measure.MustRead("16.30 mm ± 0.01", measure.Caliper()), SpanNext: measure.MustRead("22.56 mm ± 0.01", measure.Caliper()),
	}, gear.IdentifyOptions{})
	lead := got.Causes.Leader()
	fmt.Println(lead.Key, lead.Words(), got.Base, err)
	// Output: DP 12 at 20° as good as certain 6.260 ± 0.014 mm <nil>
}

func TestPublishedTrains(t *testing.T) {
	// Bevan 11.1(a): 26 to 4 with 65, 25, 75 and the fourth wheel sought.
	r, err := gear.Simple(25, 65).Then(30, 75).Ratio()
	if err != nil || r != gear.NewRational(4, 26) {
		t.Errorf("Bevan 11.1a: %v %v", r, err)
	}
	d, err := gear.Simple(20, 60).Then(20, 60).Drive(units.RevolutionsPerMinute(3600), units.PoundForceInches(200), 0)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "Wentzell 11.1, speed", d.Speed.RevolutionsPerMinute(), 400, 1.25e-5)
	near(t, "Wentzell 11.1, torque", d.Torque.PoundForceInches(), 1800, 3e-6)
	near(t, "Wentzell 11.1, power, 63000 for 63025", d.Power.BritishHorsepower(), 11.43, 6e-4)
	d, _ = gear.Simple(20, 65).Then(20, 22, 60).Drive(units.RevolutionsPerMinute(3000), units.PoundForceInches(10), 0)
	near(t, "Wentzell 11.2, speed, turned over", d.Speed.RevolutionsPerMinute(), -307.69, 1.7e-5)
	near(t, "Wentzell 11.2, torque", d.Torque.PoundForceInches(), 97.5, 6e-5)
}

func TestPublishedGeometry(t *testing.T) {
	in := units.Inch
	g, _ := gear.Wheel{Teeth: 48, Module: gear.OfCircularPitch(in.Times(0.75))}.Geometry()
	near(t, "Bevan 10.1", g.Reference.Inches(), 11.459, 4.4e-5)
	g, _ = gear.Wheel{Teeth: 20, Module: mm(4), Helix: 15 * units.Degree}.Geometry()
	near(t, "Jindal 26-1, transverse module", g.TransverseModule.Millimetres(), 4.14, 1.3e-3)
	near(t, "Jindal 26-1, transverse angle", g.TransversePressure.Degrees(), 20.647, 3e-5)
	near(t, "Jindal 26-1, tip", g.Tip.Millimetres(), 90.8, 6e-4)
	near(t, "Jindal 26-1, root", g.Root.Millimetres(), 72.8, 7e-4)
	g, _ = gear.Wheel{Teeth: 50, Module: mm(4), Helix: 15 * units.Degree}.Geometry()
	near(t, "Jindal 26-1, tip of the wheel", g.Tip.Millimetres(), 215, 2.4e-3)
	near(t, "Jindal 26-1, root of the wheel", g.Root.Millimetres(), 197, 2.6e-3)
	// Table 10-4 gives transverse figures: mn = mt cos b, xn = xt/cos b.
	beta := units.Degrees(22.5)
	cosB := math.Cos(beta.SI())
	normal := units.Radians(math.Atan(math.Tan(units.Degrees(20).SI()) * cosB))
	g, err := gear.Wheel{Teeth: 20, Module: mm(4 * cosB), Pressure: normal, Helix: beta, Shift: 0.3 / cosB}.Geometry()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "metric handbook 10-4, thickness", g.Thickness.Millimetres(), 6.6119, 8e-6)
	near(t, "metric handbook 10-4, virtual teeth", g.VirtualTeeth, 25.362, 2e-6)
	near(t, "metric handbook 10-4, angle", g.ChordAngle.Degrees(), 4.04196, 1.3e-6)
	g, _ = gear.Wheel{Teeth: 1000, Module: mm(3)}.Geometry() // thickness does not depend on teeth: a rack's
	near(t, "metric handbook 10-2, rack", g.Thickness.Millimetres(), 4.7124, 1.1e-5)
	near(t, "change wheel on a comparator", gear.OfCircularPitch(in.Times(0.1245)).Millimetres(), 1.0067, 2e-4)
	near(t, "change wheel, diametral pitch", gear.DiametralPitch(gear.OfCircularPitch(in.Times(0.1245))), 25.23, 2e-4)
	for dp, m := range map[float64]float64{10: 2.54, 12: 2.1167, 14: 1.8143, 16: 1.5875, 20: 1.27} {
		near(t, "Machinery's Handbook 31, p. 2299", gear.OfDiametralPitch(dp).Millimetres(), m, 3e-5)
	}
	// Handbook over-wires example: 32 teeth, 4 DP, 20°, wires 1.728/DP.
	p, err := gear.Wheel{Teeth: 32, Module: gear.OfDiametralPitch(4)}.OverPins(in.Times(1.728 / 4))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "over wires, 8.6032 in", p.M.Inches(), 8.6032, 6e-6)

	pair := func(z1, z2 int, m, a float64) gear.Meshing {
		return gear.Meshing{Pinion: gear.Wheel{Teeth: z1, Module: mm(m), Addendum: a}, Wheel: gear.Wheel{Teeth: z2, Module: mm(m), Addendum: a}}
	}
	h, _ := pair(25, 25, math.Pi, 1).AddendumForArc(1.6)
	near(t, "Bevan 10.5", h.Millimetres()/(math.Pi*math.Pi), 0.32, 0.016)
	h, _ = pair(40, 40, 6, 1).AddendumForArc(1.75)
	near(t, "Sarkar 4.2", h.Millimetres(), 6.1, 0.0083)
	a, _ := pair(20, 40, 10, 1).AddendaForPart(0.5)
	near(t, "Khurmi 12.8, wheel", a.Wheel.Millimetres(), 6.5, 0.0077)
	near(t, "Khurmi 12.8, pinion", a.Pinion.Millimetres(), 16.2, 0.0031)
	near(t, "Khurmi 12.8, path", a.Path.Millimetres(), 51.3, 0.001)
	near(t, "Khurmi 12.8, arc", a.Arc.Millimetres(), 54.6, 0.001)
	a, _ = pair(24, 48, 6, 1).AddendaForPart(0.5)
	near(t, "Sarkar 4.3, pinion", a.Pinion.Millimetres(), 11.7, 0.0043)
	near(t, "Sarkar 4.3, wheel", a.Wheel.Millimetres(), 4.7, 0.011)
	near(t, "Sarkar 4.3, arc", a.Arc.Millimetres(), 39.3, 0.0013)
	c, _ := pair(30, 80, 12, 10.0/12).Contact()
	near(t, "Khurmi 12.3, arc", c.Arc.Millimetres(), 55.61, 9e-5)
	near(t, "Khurmi 12.3, ratio", c.ContactRatio, 1.5, 0.034)
	c, _ = pair(17, 49, 6, 1).Contact()
	near(t, "Khurmi 12.6, pinion angle", c.PinionAngle.Degrees(), 34.6, 0.0015)
	near(t, "Khurmi 12.6, wheel angle", c.WheelAngle.Degrees(), 12, 0.042)
	near(t, "Khurmi 12.6, slide in", c.SlideIn, 0.41, 0.0123)
	near(t, "Khurmi 12.6, slide out", c.SlideOut, 0.354, 0.0015)
	c, _ = pair(20, 40, 5, 1).Contact()
	near(t, "Khurmi 12.5, pinion angle", c.PinionAngle.Degrees(), 29.43, 1.8e-4)
	v, _ := pair(20, 40, 5, 1).SlideSpeeds(units.RevolutionsPerMinute(2000))
	near(t, "Khurmi 12.5, in", v.In.SI()*1000, 3973, 1.3e-4)
	near(t, "Khurmi 12.5, out", v.Out.SI()*1000, 3610, 1.5e-4)
	under, over, err := gear.TeethFor(mm(600), gear.OfCircularPitch(mm(30)), gear.NewRational(3, 1))
	if over.Pinion != 32 || over.Wheel != 96 || under.Pinion != 31 || !(under.Centre <= 600 && over.Centre > 600) || err != nil {
		t.Errorf("Sarkar 4.5: %+v or %+v, %v", under, over, err)
	}
	near(t, "Sarkar 4.5, D_A in cm", 10*3*over.Centre.Millimetres()/200, 91.7, 6e-4)
	x, err := gear.CrossedFor(mm(175), mm(100), 70*units.Degree, 1.5, 80)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "Khurmi 12.15, first", x.Helix1.Degrees(), 54.65, 1e-4)
	near(t, "Khurmi 12.15, second", x.Helix2.Degrees(), 15.35, 3.3e-4)
	load, _ := gear.Load(75*units.NewtonMetre, x.Diameter2, 20*units.Degree, x.Helix2)
	near(t, "Khurmi 12.15, thrust of the second", load.Axial.SI(), 412, 1.3e-3)
	w := gear.Wheel{Teeth: 16, Module: gear.OfDiametralPitch(8)}
	c, _ = gear.Meshing{Pinion: w, Wheel: gear.Wheel{Teeth: 32, Module: w.Module}}.Contact()
	near(t, "Wentzell 11.3, centre", c.Centre.Inches(), 3, 1e-9)
}

func TestPublishedEpicyclics(t *testing.T) {
	rpm := units.RevolutionsPerMinute
	e := func(tr gear.Train) gear.Epicyclic {
		x, err := gear.EpicyclicOf(tr)
		if err != nil {
			t.Fatal(err)
		}
		return x
	}
	s, _ := e(gear.Simple(36, 45)).Last(0, rpm(150))
	near(t, "Khurmi 13.4, A fixed", s.Last.RevolutionsPerMinute(), 270, 1e-12)
	s, _ = e(gear.Simple(36, 45)).Last(rpm(-300), rpm(150))
	near(t, "Khurmi 13.4, case 2", s.Last.RevolutionsPerMinute(), 510, 1e-12)
	s, _ = e(gear.Simple(75, 45).Then(90, 30)).Last(0, rpm(-100))
	near(t, "Khurmi 13.5", s.Last.RevolutionsPerMinute(), 400, 1e-12)
	p, _ := gear.PlanetaryOf(40, 25).Epicyclic() // annulus 90
	s, _ = p.Arm(rpm(-1), rpm(0.5))
	near(t, "Khurmi 13.7, case 1", s.Arm.RevolutionsPerMinute(), 0.04, 0.125)
	near(t, "Khurmi 13.7, exact 1/26", s.Arm.RevolutionsPerMinute(), 1.0/26, 1e-12)
	s, _ = p.Arm(rpm(-1), 0)
	near(t, "Khurmi 13.7, case 2", s.Arm.RevolutionsPerMinute(), -0.308, 1.7e-3)
	if q, err := gear.PlanetaryFor(gear.NewRational(5, 1), 56); err != nil || q != (gear.Planetary{Sun: 14, Planet: 21, Annulus: 56}) {
		t.Errorf("Khurmi 13.9: %+v %v", q, err)
	}
	r, err := e(gear.Simple(27, 30).Then(21, 24)).Fixed("first", "arm", "last")
	if err != nil || r != gear.NewRational(80, 17) {
		t.Errorf("Bevan 11.5, 4.71: %v %v", r, err)
	}
	// Sarkar 4.17: a 20 drives b 25, with c 50 on its spindle; d 60 outside, e a ring.
	d, ring := e(gear.Simple(20, 25).Then(50, 60)), e(gear.Simple(20, 25).ThenInternal(50, 60))
	for _, c := range []struct{ d, want float64 }{{0, -800}, {100, -300}} {
		arm, _ := d.Arm(rpm(200), rpm(c.d))
		out, _ := ring.Last(rpm(200), arm.Arm)
		near(t, "Sarkar 4.17", out.Last.RevolutionsPerMinute(), c.want, 2e-5)
	}
	// Khurmi 13.11: A 12, planets B 30 and C 14; D of 12 + 30 + 14, E of 12 + 2 x 30.
	rps := units.RevolutionsPerSecond
	arm, _ := e(gear.Simple(12, 30).ThenInternal(14, 12+30+14)).Arm(rps(-1), rps(5))
	near(t, "Khurmi 13.11, arm", arm.Arm.SI(), 27.989, 1.8e-5)
	out, _ := e(gear.Simple(12, 30).ThenInternal(30, gear.PlanetaryOf(12, 30).Annulus)).Last(rps(-1), arm.Arm)
	near(t, "Khurmi 13.11, E", out.Last.SI(), 33.7, 1.5e-4)
	// Sarkar 4.12: 15 drives 30, whose spindle carries the first wheel; reverted, so
	// the first has 22 + 70 - 24 = 68 teeth.
	first, _ := gear.Simple(15, 30).Drive(rpm(100), 0, 0)
	out, _ = e(gear.Simple(68, 24).Then(22, 70)).Last(first.Speed, rpm(300))
	near(t, "Sarkar 4.12", out.Last.RevolutionsPerMinute(), -11.7, 4.3e-3)
	// Khurmi 13.16, bevels of 40 and 30 with an idler between.
	y, _ := gear.Epicyclic{Value: gear.NewRational(-4, 3)}.Last(rpm(-100), rpm(100))
	near(t, "Khurmi 13.16", y.Last.RevolutionsPerMinute(), 366.7, 2e-4)
	// Torques balance and do no work on the whole.
	rapid.Check(t, func(t *rapid.T) {
		teeth := rapid.IntRange(8, 90)
		ep, err := gear.EpicyclicOf(gear.Simple(teeth.Draw(t, "a"), teeth.Draw(t, "b")).Then(teeth.Draw(t, "c"), teeth.Draw(t, "d")))
		if err != nil {
			t.Fatal(err)
		}
		q, _ := ep.Torques(10)
		sp, _ := ep.Last(rpm(rapid.Float64Range(-3000, 3000).Draw(t, "n")), rpm(rapid.Float64Range(-3000, 3000).Draw(t, "m")))
		sum := q.First.SI()*sp.First.SI() + q.Last.SI()*sp.Last.SI() + q.Arm.SI()*sp.Arm.SI()
		size := math.Abs(q.First.SI()*sp.First.SI()) + math.Abs(q.Last.SI()*sp.Last.SI()) + math.Abs(q.Arm.SI()*sp.Arm.SI())
		if math.Abs((q.First+q.Last+q.Arm).SI()) > 1e-9*q.Arm.Abs().SI()+1e-9 || math.Abs(sum) > 1e-9*size+1e-9 {
			t.Fatalf("torques %+v speeds %+v", q, sp)
		}
	})
}
