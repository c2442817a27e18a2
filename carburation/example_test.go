package carburation_test

import (
	"fmt"

	"example.com/benchbook/carburation"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// An invented 397 cc single on a carburettor bought from another machine.
func ExampleStart() {
	jet, err := carburation.ReadJet("130 cc/min")
	if err != nil {
		fmt.Println(err)
		return
	}
	cut, _ := carburation.CutawayOf(3.5, carburation.Sixteenths)
	s, err := carburation.Start(carburation.Input{
		Engine: carburation.Engine{Displacement: measure.MustRead("397 cc", measure.Nominal[units.Volume](0.005))},
		Fitted: carburation.Fitted{Bore: measure.MustRead("25.4 mm", measure.Caliper()), MainJet: jet, Cutaway: measure.By(cut, measure.Caliper())},
	}, carburation.Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range s.Outside {
		fmt.Println(p.Text)
	}
	fmt.Println("by physics:", s.MainJet.Physics)
	fmt.Println("by bore:", s.MainJetBore)
	// Output:
	// main jet, flow mark 130 cc/min is below 179 to 256 cc/min
	// by physics: 117 to 252 cc/min, middle 171 cc/min
	// by bore: 0.951 to 1.23 mm, middle 1.08 mm
}

// The same drilled hole in other markings, the head behind a flow told.
func ExampleJet_Size() {
	j, _ := carburation.ReadJet("drill 57")
	s, _ := j.Size(carburation.JetOptions{Head: measure.Exact(units.Metres(0.5))})
	fmt.Printf("bore %s, flow %s, Cd %.2f at Re %.0f\n", s.Bore, s.Flow.Value().In(units.CubicCentimetrePerMinute, 0), s.Coefficient, s.Reynolds)
	// Output: bore 1.09 ± 0.02 mm, flow 139 cc/min, Cd 0.79 at Re 4912
}

// A bare number on a jet is refused, since nobody can know what it counts.
func ExampleReadJet() {
	_, err := carburation.ReadJet("280")
	fmt.Println(err)
	// Output: jet: 280: "280 cc/min" (flow mark, head not known), "280 cc/min at 0.5 m", "1.10 mm", "bore 110" (hundredths of a mm) or "drill 57" (number drill)
}

func ExampleCutawayOf() {
	sixteenths, _ := carburation.CutawayOf(3, carburation.Sixteenths)
	halves, _ := carburation.CutawayOf(3, carburation.HalfMillimetres)
	fmt.Println(sixteenths, halves)
	// Output: 4.7625 mm 1.5 mm
}

// H. N. Gupta, example 9.1, prints a choke of 3.251 cm and a jet of 2.2 mm.
func ExampleChoke_Size() {
	c := carburation.Choke{Coefficient: 0.8, Pressure: units.Bars(1.013), Temperature: units.Kelvins(300), Gas: carburation.Gas{RJoulesPerKilogramKelvin: 287, CpJoulesPerKilogramKelvin: 1005}}
	s, _ := c.Size(units.KilogramsPerMinute(5), units.MetresPerSecond(90), carburation.OnVelocity)
	jet, _ := carburation.Orifice{Coefficient: 0.6}.Size(units.KilogramsPerMinute(0.4), s.Throat.Suction.Times(0.75), units.KilogramsPerCubicMetre(780))
	bore, _ := carburation.CircleDiameter(jet)
	fmt.Printf("%.3f cm, %.1f mm\n", s.Diameter.Centimetres(), bore.Millimetres())
	// Output: 3.251 cm, 2.2 mm
}

func ExampleChoke_At() {
	c := carburation.Choke{Area: units.SquareMillimetres(600), Coefficient: 0.85, Pressure: units.Bars(1.013), Temperature: units.Celsius(15)}
	th, _ := c.At(units.Bars(0.963))
	fmt.Printf("%.1f g/s, %.0f m/s, %.3f of the flow of a fluid of constant density\n", th.Flow.GramsPerSecond(), th.Speed.MetresPerSecond(), th.Expansibility)
	// Output: 54.9 g/s, 91 m/s, 0.973 of the flow of a fluid of constant density
}

// R. K. Rajput, example 11.1, prints 4447.61 Pa.
func ExampleSuction() {
	in := carburation.Intake{Swept: units.CubicMetres(4 * 3.141592653589793 / 4 * 0.1 * 0.1 * 0.12), Speed: units.RevolutionsPerMinute(1800), Efficiency: 0.75, Air: units.KilogramsPerCubicMetre(1.2)}
	d, _ := in.Flow()
	s, _ := carburation.Suction(d.Air, units.KilogramsPerCubicMetre(1.2), carburation.CircleArea(units.Millimetres(28)), 0.8)
	fmt.Printf("%.2f Pa\n", s.Pascals())
	// Output: 4447.61 Pa
}

// R. K. Rajput, example 11.9, prints 11.392599 with the lip and a start at 8.58 m/s.
func ExamplePlainJet_Mixture() {
	p := carburation.PlainJet{ChokeArea: carburation.CircleArea(18 * units.Millimetre), ChokeCoefficient: 0.82, Air: units.KilogramsPerCubicMetre(1.2), Fuel: units.KilogramsPerCubicMetre(750),
		Jet: carburation.Orifice{Area: carburation.CircleArea(units.Millimetres(1.2)), Coefficient: 0.65, Lip: 6 * units.Millimetre, Gravity: units.MetresPerSecondSquared(9.81)}}
	m, _ := p.Mixture(units.Bars(0.065))
	start, _ := p.Jet.StartingSpeed(p.Fuel, p.Air, 1)
	fmt.Printf("%.4f, %.2f m/s\n", m.Value(), start.MetresPerSecond())
	// Output: 11.3926, 8.58 m/s
}

// H. N. Gupta, example 9.8, prints 12.887.
func ExampleCleanerMixture() {
	m, _ := carburation.CleanerMixture(14.5, units.Bars(1.013-0.825), units.Bars(0.05))
	fmt.Printf("%.3f\n", m.Value())
	// Output: 12.887
}

// A. Lichtarowicz et al., 1965: 0.4284 at a Reynolds number of 100, l/d 2.
func ExampleParallelBore() {
	cd, _ := carburation.ParallelBore(100, 2)
	fmt.Printf("%.4f\n", cd)
	// Output: 0.4284
}

// ISO 5167-4:2003, 5.6: 0.994236.
func ExampleExpansibility() {
	e, _ := carburation.Expansibility(0.6, 5.95/6, 1.3)
	fmt.Printf("%.6f\n", e)
	// Output: 0.994236
}

// A jet timed at the bench in a straight tube of 20 mm, with water.
func ExampleFallingHead_Effective() {
	f := carburation.FallingHead{Vessel: carburation.CircleArea(20 * units.Millimetre), From: measure.MustRead("600 mm", measure.Rule()), To: measure.MustRead("300 mm", measure.Rule()), Time: measure.Of(units.Seconds(58.2), units.Seconds(0.3))}
	e, err := f.Effective()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(e)
	size, _ := carburation.TimedJet(e).Size(carburation.JetOptions{})
	fmt.Println(size.Bore)
	// Output:
	// 0.553 ± 0.003 mm²
	// 0.94 ± 0.04 mm
}

func ExampleEmulsion_Draw() {
	e := carburation.Emulsion{Jet: units.SquareMillimetres(0.8), Bleed: units.SquareMillimetres(0.3), Outlet: units.SquareMillimetres(2.5), Head: 15 * units.Millimetre, Rise: 5 * units.Millimetre,
		Air: units.KilogramsPerCubicMetre(1.2), Fuel: units.KilogramsPerCubicMetre(745), Ambient: units.Bars(1.013)}
	for _, kpa := range []float64{1, 3, 10} {
		d, _ := e.Draw(units.Kilopascals(kpa))
		fmt.Printf("%.2f g/s, braked to %.2f\n", d.Fuel.GramsPerSecond(), d.Braked)
	}
	// Output:
	// 0.73 g/s, braked to 0.76
	// 1.21 g/s, braked to 0.74
	// 2.16 g/s, braked to 0.73
}

// H. N. Gupta, example 9.3, prints 0.00379 kg/s of fuel.
func ExampleIntake_Flow() {
	d, _ := carburation.Intake{Swept: units.CubicMetres(4 * 3.141592653589793 / 4 * 0.08 * 0.08 * 0.09), Speed: units.RevolutionsPerMinute(4000), Efficiency: 0.8,
		Air: units.KilogramsPerCubicMetre(1e5 / (287 * 298)), Vapour: units.KilogramsPerCubicMetre(1e5 / (98 * 298)), Mixture: units.Value(0.95 * (0.84*8/3 + 0.16*8) / 0.23)}.Flow()
	fmt.Printf("%.5f kg/s\n", d.Fuel.KilogramsPerSecond())
	// Output: 0.00379 kg/s
}

// The other way: a measured flow of air as volumetric efficiency.
func ExampleIntake_EfficiencyFrom() {
	e, _ := carburation.Intake{Swept: units.CubicCentimetres(397), Speed: units.RevolutionsPerMinute(5000), Air: units.KilogramsPerCubicMetre(1.2)}.EfficiencyFrom(units.GramsPerSecond(16.5))
	fmt.Printf("%.2f\n", e.Value())
	// Output: 0.83
}

// H. B. Keswani, example 9.9, prints 7.4 m/s.
func ExampleOrifice_StartingSpeed() {
	c, _ := carburation.Orifice{Lip: 5 * units.Millimetre}.StartingSpeed(units.KilogramsPerCubicMetre(720), units.KilogramsPerCubicMetre(1.29), 1)
	fmt.Printf("%.1f m/s\n", c.MetresPerSecond())
	// Output: 7.4 m/s
}

// R. K. Rajput, example 11.2, prints 539.13 Pa and 7.72 cm².
func ExampleOrifice_Suction() {
	s, _ := carburation.Orifice{Area: units.SquareMillimetres(2), Coefficient: 0.8, Lip: 5 * units.Millimetre, Gravity: units.MetresPerSecondSquared(9.81)}.Suction(units.KilogramsPerHour(5), units.KilogramsPerCubicMetre(750))
	a, _ := carburation.ChokeArea(units.KilogramsPerHour(80), units.KilogramsPerCubicMetre(1.2), s, 0.8)
	fmt.Printf("%.2f Pa, %.2f cm²\n", s.Pascals(), a.SquareCentimetres())
	// Output: 539.13 Pa, 7.72 cm²
}

// H. B. Keswani, example 9.10, prints 311.03437 kgf/m² and 0.0023027 kg/s.
func ExampleOrifice_Flow() {
	s, _ := carburation.SuctionAtSpeed(units.MetresPerSecond(58), units.KilogramsPerCubicMetre(1.28), 0.84)
	m, _ := carburation.Orifice{Area: units.SquareMillimetres(1.8), Coefficient: 0.6, Lip: units.Millimetres(2.8), Gravity: units.MetresPerSecondSquared(9.81)}.Flow(s, units.KilogramsPerCubicMetre(750))
	fmt.Printf("%.5f kgf/m², %.7f kg/s\n", s.Pascals()/9.81, m.KilogramsPerSecond())
	// Output: 311.03437 kgf/m², 0.0023027 kg/s
}

// A choke 17 times as wide as its jet gives 15 to 1, whatever the speed.
func ExamplePlainJet_JetOverChoke() {
	k, _ := carburation.PlainJet{ChokeCoefficient: 0.84, Jet: carburation.Orifice{Coefficient: 0.66}, Air: units.KilogramsPerCubicMetre(1.2), Fuel: units.KilogramsPerCubicMetre(750)}.JetOverChoke(15)
	fmt.Printf("1/%.1f\n", 1/k)
	// Output: 1/17.2
}

func ExampleChoke_For() {
	c := carburation.Choke{Area: units.SquareMillimetres(600), Coefficient: 0.85, Pressure: units.Bars(1.013), Temperature: units.Celsius(15)}
	th, _ := c.For(units.GramsPerSecond(54.9))
	fmt.Printf("%.1f kPa of suction\n", th.Suction.Kilopascals())
	// Output: 5.0 kPa of suction
}

func ExampleEmptyingTime() {
	t, _ := carburation.EmptyingTime(units.SquareMetres(2), units.SquareMetres(0.0005), 0.61, units.Metres(4), units.Metres(1))
	fmt.Printf("%.4f s\n", t.Seconds())
	// Output: 2961.3164 s
}

func ExampleFlowAt() {
	q, _ := carburation.FlowAt(measure.Of(units.SquareMillimetres(0.553), units.SquareMillimetres(0.003)), measure.Exact(units.Metres(0.5)))
	fmt.Println(q.Value().In(units.CubicCentimetrePerMinute, 0))
	// Output: 104 cc/min
}

func ExampleReynolds() {
	re, _ := carburation.Reynolds(units.CubicCentimetresPerMinute(139), units.Millimetres(1.092), units.SquareMillimetresPerSecond(0.55))
	fmt.Printf("%.0f\n", re)
	// Output: 4911
}

// A flow mark whose head was told passes the same as a bore that was measured.
func ExampleFlowJet() {
	j := carburation.FlowJet(measure.Of(units.CubicCentimetresPerMinute(139), units.CubicCentimetresPerMinute(3)), measure.Of(units.Metres(0.5), units.Metres(0.02)))
	s, _ := j.Size(carburation.JetOptions{})
	fmt.Println(s.Bore, s.Drill)
	// Output: 1.09 ± 0.05 mm #57
}

// H. B. Keswani, example 9.6, prints 52.9 m/s in a choke of 38.5 mm.
func ExampleAirSpeed() {
	v, _ := carburation.AirSpeed(units.KilogramsPerSecond(0.06666), units.KilogramsPerCubicMetre(0.914e4/(29.27*288.5)), carburation.CircleArea(units.Millimetres(38.5)))
	fmt.Printf("%.1f m/s\n", v.MetresPerSecond())
	// Output: 52.9 m/s
}

func ExampleCircleDiameter() {
	d, _ := carburation.CircleDiameter(carburation.CircleArea(units.Millimetres(1.1)))
	fmt.Printf("%.3f mm\n", d.Millimetres())
	// Output: 1.100 mm
}

// R. K. Rajput, example 11.8, prints a choke of 29.61 mm round an emulsion tube
// of four tenths of it.
func ExampleChokeDiameter() {
	rho := units.KilogramsPerCubicMetre(1.013e5 / (287 * 293))
	d, _ := carburation.Intake{Swept: units.CubicCentimetres(1489), Speed: units.RevolutionsPerMinute(4200), Efficiency: 0.75, Air: rho}.Flow()
	c := carburation.Choke{Coefficient: 0.82, Pressure: units.Bars(1.013), Temperature: units.Kelvins(293), Gas: carburation.Gas{RJoulesPerKilogramKelvin: 287, CpJoulesPerKilogramKelvin: 1005}}
	s, _ := c.Size(d.Air, units.MetresPerSecond(85), carburation.OnArea)
	bore, _ := carburation.ChokeDiameter(s.Area, 0.4)
	fmt.Printf("%.2f mm\n", bore.Millimetres())
	// Output: 29.61 mm
}

// The textbook constant of the choke formula is printed as 0.1562.
func ExampleGas_ChokeConstant() {
	k, _ := carburation.Gas{RJoulesPerKilogramKelvin: 287, CpJoulesPerKilogramKelvin: 1005}.ChokeConstant()
	fmt.Printf("%.4f\n", k)
	// Output: 0.1562
}
