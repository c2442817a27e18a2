package refdata_test

import (
	"fmt"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
)

// Every table, and what it rests on.
func ExampleTables() {
	for _, t := range refdata.Tables() {
		if t.Name == "threads_ba" {
			fmt.Println(t.Title, t.Rows, "rows, version", t.Version)
			for _, s := range t.Sources {
				fmt.Println("-", s.Title)
			}
			for _, d := range t.Disagreements {
				fmt.Println("*", d.Row, d.What+":", d.Served)
			}
		}
	}
	// Output:
	// British Association threads 17 rows, version 1
	// - Machinery's Handbook, 31 ed. 2020
	// - Stress area of the mean of effective and minor diameter
	// * 4 BA tapping drill: none: the list gives 0.1108 in, the minor diameter in inches
}

// Figures on which published tables differ.
func ExampleDisagreements() {
	for _, d := range refdata.Disagreements() {
		if d.Table == "hex_metric" && d.Row == "M22" {
			fmt.Printf("%s, %s: %s; %s\n", d.Row, d.What, d.Served, d.Other)
		}
	}
	// Output:
	// M22, width across flats: 34 mm, ISO 272; 32 mm, DIN before it
}

func ExampleLeftOut() {
	fmt.Println(refdata.LeftOut()[0].What)
	// Output:
	// any maker's data
}

func ExampleHash() {
	fmt.Println(len(refdata.Hash()))
	// Output:
	// 64
}

func ExampleRange() {
	v, _ := refdata.ValveTimings().ByName("petrol engine, everyday limits")
	fmt.Println(v.InletCloses, v.InletCloses.Holds(55*units.CrankDegree))
	// Output:
	// at most 60° crank true
}

// Books differ on the friction of a lining in oil: the range covers them all.
func ExampleFriction() {
	mu, sources, _ := refdata.Friction("moulded", "oil")
	fmt.Println(mu)
	for _, s := range sources {
		fmt.Println(s.Title)
	}
	// Output:
	// 0.04 to 0.09
	// The Tribology Handbook
	// Juvinall and Marshek, Fundamentals of Machine Component Design
}

func ExampleFrictionMaterials() {
	for m := range refdata.FrictionMaterials().All() {
		if m.Material == "cork" {
			fmt.Println(m.Name, m.Friction)
		}
	}
	// Output:
	// cork, dry, design text 0.3 to 0.5
	// cork, oil, design text 0.15 to 0.25
}

func ExampleSpringModuli() {
	m, _ := refdata.SpringModuli().ByName("chrome-vanadium A231/A232")
	fmt.Printf("%.1f GPa, torsion to %v of tensile strength\n", m.Shear.Gigapascals(), m.TorsionLimit)
	// Output:
	// 77.2 GPa, torsion to 0.65 to 0.75 of tensile strength
}

// The strength of 4 mm music wire: 2211/4^0.145 MPa.
func ExampleSpringStrengths() {
	s, _ := refdata.SpringStrengths().ByName("music wire ASTM A228, handbook")
	p, known := s.Tensile(4 * units.Millimetre).Get()
	fmt.Printf("%.0f MPa %v\n", p.Megapascals(), known)
	_, known = s.Tensile(12 * units.Millimetre).Get()
	fmt.Println("12 mm:", known)
	// Output:
	// 1808 MPa true
	// 12 mm: false
}

func ExampleDiscSprings() {
	d, _ := refdata.DiscSprings().ByName("A 20 x 10.2 x 1.1")
	fmt.Println(d.Load, d.SizeOrigin.Status())
	fmt.Println(d.ComputedLoad, d.ComputedOrigin.Status())
	// Output:
	// 1530 N from memory
	// 1520.8 N derived
}

func ExampleChains() {
	c, _ := refdata.Chains().ByName("10B")
	fmt.Println(c.ImperialName, c.Pitch, c.Strength, c.StrengthOrigin.Status())
	// Output:
	// 5/8 x 3/8 (also called 5/8 x .380) 15.875 mm 22200 N published
}

func ExampleTyres() {
	t, _ := refdata.Tyres().ByName("3.50-19")
	fmt.Println(t.ComputedDiameter, t.ComputedRolling)
	// Output:
	// 660.4 mm 2014 mm
}

func ExampleFuels() {
	f, _ := refdata.Fuels().ByName("petrol E10")
	fmt.Println(f.ComputedAFR, f.ComputedAFROrigin.Status())
	// Output:
	// 14.01 derived
}

func ExampleExhaustGases() {
	for e := range refdata.ExhaustGases().Between(0.87, 0.91) {
		fmt.Printf("%s: %.1f %% CO\n", e.Name, e.CO.Percents())
	}
	// Output:
	// 0.88: 4.4 % CO
	// 0.90: 3.7 % CO
}

func ExampleSlideCutaways() {
	c, _ := refdata.SlideCutaways().ByName("3.5")
	fmt.Println(c.Height, "or", c.NearestHalf)
	// Output:
	// 5.556 mm or 5.5 mm
}

func ExampleThrottleInfluences() {
	for t := range refdata.ThrottleInfluences().All() {
		if t.From <= 0.5 && 0.5 <= t.FadesBy {
			fmt.Println("half open:", t.Part)
		}
	}
	// Output:
	// half open: needle jet and straight part of needle
	// half open: needle position and taper
}

func ExampleJetDrills() {
	j, _ := refdata.JetDrills().ByName("#60")
	fmt.Println(j.Diameter, j.HalfMetre)
	// Output:
	// 1.016 mm 122 cc/min
}

func ExampleJetCoefficients() {
	j, _ := refdata.JetCoefficients().ByName("short cylindrical tube")
	fmt.Println(j.Discharge, j.Origin.Source().Title)
	// Output:
	// 0.81 to 0.82 Encyclopaedia Britannica, Hydraulics, 11 ed.
}

func ExampleStandardAtmosphere() {
	a, _ := refdata.StandardAtmosphere().ByName("1000 m")
	fmt.Println(a.PrintedPressure.Or(0).Pascals(), a.Pressure.Pascals())
	// Output:
	// 89874.6 89874.6
}

func ExampleMoistAirDensities() {
	m, _ := refdata.MoistAirDensities().ByName("10 °C, 97325.3 Pa, 40 %")
	fmt.Println(m.PrintedDensity, m.Density)
	// Output:
	// 1.19569 kg/m³ 1.19569 kg/m³
}

func ExampleGearModules() {
	g, _ := refdata.GearModules().ByName("12 DP")
	fmt.Println(g.Module.In(units.Millimetre, 4))
	// Output:
	// 2.1167 mm
}

func ExampleGearBacklashes() {
	for b := range refdata.GearBacklashes().Between(0, units.Inches(1)) {
		lo, hi, _ := b.Backlash.Ends()
		fmt.Println(b.Name, lo.In(units.Inch, 3), hi.In(units.Inch, 3))
	}
	// Output:
	// 0 to 5 in, DP 10 to 19.99 0.005 in 0.015 in
}

func ExampleLeastBacklashes() {
	b, _ := refdata.LeastBacklashes().ByName("AGMA 2002-B88, centres 75 mm, module 2 mm")
	fmt.Println(b.Least)
	// Output:
	// 0.1575 mm
}

func ExampleDialGauges() {
	for d := range refdata.DialGauges().Between(10*units.Millimetre, 10*units.Millimetre) {
		fmt.Printf("%.0f µm over one turn\n", d.OneTurn.Micrometres())
	}
	// Output:
	// 10 µm over one turn
}

func ExampleValveTimings() {
	v, _ := refdata.ValveTimings().ByName("slow stationary, 150-600 rev/min, c. 1910s")
	fmt.Println(v.InletOpens, "before TDC;", v.CheckLift)
	// Output:
	// -10° crank before TDC; not stated
}

func ExampleStartingPoints() {
	p, _ := refdata.StartingPoints().ByName("350 cc")
	fmt.Println(p.Bore, "|", p.MainJet, "|", p.Origin.Status())
	// Output:
	// 24 mm to 27 mm | 170 cc/min to 240 cc/min | common practice
}

// The invented 397 cc single lies between two rows.
func ExampleBeginAt() {
	b, err := refdata.BeginAt(units.CubicCentimetres(397), refdata.RoadTune)
	if err != nil {
		fmt.Println(err)
		return
	}
	lo, hi, _ := b.Point.MainJet.Ends()
	fmt.Printf("between %s and %s: main jet %.0f to %.0f cc/min\n", b.Below.Name, b.Above.Name, lo.CubicCentimetresPerMinute(), hi.CubicCentimetresPerMinute())
	b, _ = refdata.BeginAt(units.CubicCentimetres(1000), refdata.RoadTune)
	fmt.Println(b.Reason)
	// Output:
	// between 350 cc, road and 500 cc, road: main jet 179 to 256 cc/min
	// the table runs from 125 cc to 650 cc for one carburettor
}
