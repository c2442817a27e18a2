package drive_test

import (
	"fmt"

	"example.com/benchbook/transmission/drive"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// Khurmi & Gupta, Theory of Machines, 2009, ex. 13.1: a motor at 975 rev/min
// through 20/50, 25/75 and 26/65.
func ExampleTrain() {
	r, err := drive.Train{{Driver: 20, Driven: 50}, {Driver: 25, Driven: 75}, {Driver: 26, Driven: 65}}.Ratio()
	fmt.Println(r, 975*r.Den()/r.Num(), "rev/min", err)
	// Output: 75/4 (18.750) 52 rev/min <nil>
}

func ExampleParseRatio() {
	for _, s := range []string{"46/18", "46:18", "2.42"} {
		r, err := drive.ParseRatio(s)
		fmt.Println(r, err)
	}
	// Output:
	// 23/9 (2.556) <nil>
	// 23/9 (2.556) <nil>
	// 121/50 (2.420) <nil>
}

func ExamplePair() {
	r, err := drive.Pair{Driver: 22, Driven: 48}.Ratio()
	fmt.Println(r, err)
	// Output: 24/11 (2.182) <nil>
}

// Jindal, Machine Design, 2010, ex. 29-2.
func ExampleNewLayshaft() {
	b, err := drive.NewLayshaft(drive.Layshaft{
		Constant: drive.Pair{Driver: 23, Driven: 47},
		Indirect: []drive.Mesh{
			{Name: "first", Pair: drive.Pair{Driver: 20, Driven: 50}},
			{Name: "second", Pair: drive.Pair{Driver: 33, Driven: 37}},
		},
		Direct: "top",
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, g := range b.Gears() {
		fmt.Println(g.Name, g.Ratio)
	}
	// Output:
	// first 235/46 (5.109)
	// second 1739/759 (2.291)
	// top 1
}

// The invented machine: 397 cc single, four speeds, tyre by its code.
func ExampleLine() {
	box, err := drive.BoxOf("2.42", "1.61", "1.21", "1")
	if err != nil {
		fmt.Println(err)
		return
	}
	tyre, err := drive.ParseTyre("3.50-19")
	if err != nil {
		fmt.Println(err)
		return
	}
	rolling, err := tyre.Rolling()
	if err != nil {
		fmt.Println(err)
		return
	}
	line := drive.Line{
		Primary: drive.Train{{Driver: 22, Driven: 48}},
		Box:     box,
		Final:   drive.Train{{Driver: 18, Driven: 46}},
		Rolling: rolling.Reading,
	}
	table, err := line.Table(drive.TableOptions{ChangeAt: units.RevolutionsPerMinute(5000)})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, g := range table.Gears {
		fmt.Printf("%s %.2f %s at 1000 rev/min", g.Name, g.Overall.Float(), g.PerThousand.Value().In(units.MilePerHour, 1))
		if g.Step.Given() {
			fmt.Printf(", change at 5000 drops to %s", g.DropsTo.In(units.RevolutionPerMinute, 0))
		}
		fmt.Println()
	}
	// Output:
	// 1 13.49 5.6 mile/h at 1000 rev/min, change at 5000 drops to 3326 rev/min
	// 2 8.98 8.4 mile/h at 1000 rev/min, change at 5000 drops to 3758 rev/min
	// 3 6.75 11.1 mile/h at 1000 rev/min, change at 5000 drops to 4132 rev/min
	// 4 5.58 13.5 mile/h at 1000 rev/min
}

func ExampleLine_SpeedAt() {
	line := drive.Line{Primary: drive.Train{{Driver: 22, Driven: 48}}, Final: drive.Train{{Driver: 18, Driven: 46}}, Rolling: measure.MustRead("1975 mm ± 20", measure.Rule())}
	line.Box, _ = drive.BoxOf("2.42", "1.61", "1.21", "1")
	v, err := line.SpeedAt("4", units.RevolutionsPerMinute(5000))
	fmt.Println(v.Value().In(units.MilePerHour, 1), "±", v.U().In(units.MilePerHour, 1), err)
	n, err := line.EngineAt("4", units.MilesPerHour(60))
	fmt.Println(n, err)
	// Output:
	// 66.0 mile/h ± 0.7 mile/h <nil>
	// 4540 ± 50 rev/min <nil>
}

func ExampleLine_Sawtooth() {
	line := drive.Line{Final: drive.Train{{Driver: 18, Driven: 90}}, Rolling: measure.Exact(2 * units.Metre)}
	line.Box, _ = drive.BoxOf("2", "1")
	t, err := line.Sawtooth(units.RevolutionsPerMinute(5000))
	if err != nil {
		fmt.Println(err)
		return
	}
	for i := range t.Len() {
		x, y := t.XY(i)
		fmt.Printf("%.1f mile/h %.0f rev/min\n", x, y)
	}
	// Output:
	// 0.0 mile/h 0 rev/min
	// 37.3 mile/h 5000 rev/min
	// 37.3 mile/h 2500 rev/min
	// 74.6 mile/h 5000 rev/min
}

// Sprockets that come nearest to 5.2 overall behind a 48/22 primary.
func ExampleSprocketOptions() {
	rest, _ := drive.NewRatio(48, 22)
	options, err := drive.SprocketOptions(5.2, rest, drive.SprocketChoice{FrontLeast: 16, FrontMost: 20, RearLeast: 42, RearMost: 46})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, o := range options[:3] {
		fmt.Printf("%d/%d %.3f %+.1f %%\n", o.Rear, o.Front, o.Overall.Float(), 100*o.Off)
	}
	// Output:
	// 43/18 5.212 +0.2 %
	// 45/19 5.167 -0.6 %
	// 46/19 5.282 +1.6 %
}

// Jindal, Machine Design, 2010, ex. 30-3: 3/8 in chain, 21 and 42 teeth, fifty
// pitches apart.
func ExampleChainLength() {
	p := units.Millimetres(9.52)
	r, err := drive.ChainLength(drive.Sprockets{Pitch: p, Front: 21, Rear: 42}, p.Times(50), drive.Series)
	fmt.Println(r.Length.In(units.Millimetre, 2), err)
	// Output: 1254.01 mm <nil>
}

func ExampleCentreFor() {
	s := drive.Sprockets{Pitch: units.Inches(0.625), Front: 18, Rear: 46}
	for _, m := range []drive.Method{drive.Series, drive.Tangent} {
		r, err := drive.CentreFor(s, 106, m)
		fmt.Println(r.Centre.In(units.Millimetre, 2), m, err)
	}
	// Output:
	// 583.08 mm series formula <nil>
	// 583.08 mm tangents to the pitch circles <nil>
}

// Which chain suits an adjuster of 30 mm?
func ExampleFitChain() {
	s := drive.Sprockets{Pitch: units.Inches(0.625), Front: 18, Rear: 46}
	f, err := drive.FitChain(s, 560*units.Millimetre, 590*units.Millimetre, drive.FitOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range f.Fits {
		fmt.Printf("%d pitches at %s, %.1f %% of wear to spare, one kind of link on each rear tooth: %v\n", c.Pitches, c.Centre.In(units.Millimetre, 1), 100*c.TakesUp, c.Rear.OneKindOfLink)
	}
	// Output:
	// 104 pitches at 567.1 mm, 2.8 % of wear to spare, one kind of link on each rear tooth: true
	// 106 pitches at 583.1 mm, 0.8 % of wear to spare, one kind of link on each rear tooth: true
}

func ExampleWearSharing() {
	for _, z := range []int{18, 19} {
		s, err := drive.WearSharing(108, z)
		fmt.Println(z, "teeth:", s.LinksATooth, "links a tooth,", s.Circuits, "circuits, even:", s.Even, err)
	}
	// Output:
	// 18 teeth: 6 links a tooth, 1 circuits, even: false <nil>
	// 19 teeth: 108 links a tooth, 19 circuits, even: true <nil>
}

// Bhandari, Design of Machine Elements, ex. 14.7: a 10B chain, its least
// breaking load from the table.
func ExampleChainPull() {
	p, err := drive.ChainPull(drive.PullInput{Number: "10B", Teeth: 19, Speed: units.RevolutionsPerMinute(1400), Power: units.Kilowatts(12.9537)})
	fmt.Println(p.Pull.In(units.Newton, 2), err)
	fmt.Printf("%.2f\n", p.Safety)
	// Output:
	// 1840.56 N <nil>
	// 12.06
}

func ExampleChainWear() {
	w, err := drive.ChainWear(measure.MustRead("388 mm ± 0.5", measure.Rule()), 24, units.Inches(0.625), drive.WearOptions{})
	fmt.Println(w.Elongation.Value().In(units.Percent, 2), w.Verdict, err)
	// Output: 1.84% watch <nil>
}

// A maker's table of sprockets for 06B chain has 51.83 mm for 17 teeth.
func ExamplePitchDiameter() {
	d, err := drive.PitchDiameter(units.Millimetres(9.525), 17)
	fmt.Println(d.In(units.Millimetre, 2), err)
	p, err := drive.PitchFor(d, 17)
	fmt.Println(p.In(units.Millimetre, 3), err)
	// Output:
	// 51.84 mm <nil>
	// 9.525 mm <nil>
}

func ExampleFormOf() {
	f, err := drive.FormOf(units.Inches(0.625), units.Millimetres(10.16), 18)
	fmt.Println(f.RootMost.In(units.Millimetre, 2), f.TipLeast.In(units.Millimetre, 2), f.TipMost.In(units.Millimetre, 2), err)
	// Output:
	// 81.16 mm 95.72 mm 101.10 mm <nil>
}

// 120/90-18 is 673.2 mm across by a tyre maker's sidewall guide.
func ExampleParseTyre() {
	for _, code := range []string{"120/90-18", "3.25-19", "4.10 H 18", "26 x 2½", "700x80"} {
		t, err := drive.ParseTyre(code)
		fmt.Println(t, "-", t.Kind(), t.Diameter().In(units.Millimetre, 1), err)
	}
	_, err := drive.ParseTyre("MT90-16")
	fmt.Println(err)
	// Output:
	// 120/90-18 - metric 673.2 mm <nil>
	// 3.25-19 - imperial standard 647.7 mm <nil>
	// 4.10 H 18 - imperial low section 644.7 mm <nil>
	// 26 x 2½ - beaded edge 660.4 mm <nil>
	// 700x80 - beaded edge 700.0 mm <nil>
	// tyre: MT90-16: a width by letters is not read; measure it, or give the size it stands for as 130/90-16 or 5.00-16
}

func ExampleTyre_Rolling() {
	t, err := drive.ParseTyre("3.25-19")
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := t.Rolling()
	fmt.Println(r.Reading, "from", r.Range.Low.In(units.Millimetre, 0), "to", r.Range.High.In(units.Millimetre, 0), err)
	// Output:
	// 1980 ± 30 mm from 1904 mm to 2048 mm <nil>
}

// Three turns under the rider's weight came to 5.94 m on the floor.
func ExampleRollOut() {
	u, err := drive.RollOut(measure.MustRead("5.94 m ± 10 mm", measure.Rule()), 3)
	fmt.Println(u, err)
	// Output:
	// 1980 ± 3 mm <nil>
}

func ExampleRoadLoad() {
	r, err := drive.RoadLoad(drive.Road{Mass: measure.MustRead("245 kg ± 5", measure.Nominal[units.Mass](0.02))}, units.MilesPerHour(50))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.Drag.In(units.Newton, 0), r.Rolling.In(units.Newton, 0), r.Power)
	for _, a := range r.Basis.Assumed {
		fmt.Println("assumed", a.What, a.Value)
	}
	// Output:
	// 168 N 48 N 5.5 ± 0.7 kW
	// assumed drag area 0.55 ± 0.08 m², rider upright, no fairing
	// assumed rolling resistance over weight 0.020 ± 0.003, on tarmac
	// assumed efficiency from crankshaft to road 0.88 ± 0.04
	// assumed density of the air 1.225 kg/m³, standard atmosphere at sea level
}

// Çengel & Cimbala, Fluid Mechanics, 2010, ex. 11-1: a drag coefficient of 0.35.
func ExampleDragAreaFrom() {
	a, err := drive.DragAreaFrom(300*units.Newton, units.KilogramsPerCubicMetre(1.204), units.KilometresPerHour(95))
	fmt.Printf("%.2f %v\n", a.Ratio(units.SquareMetres(2.07)), err)
	// Output: 0.35 <nil>
}

func ExampleRollingAt() {
	c, err := drive.RollingAt(units.Bars(1.8), units.MilesPerHour(50))
	fmt.Println(c.In(units.One, 4), err)
	// Output:
	// 0.0242 <nil>
}

func ExampleTopSpeed() {
	t, err := drive.TopSpeed(drive.Road{Mass: measure.MustRead("245 kg ± 5", measure.Nominal[units.Mass](0.02))}, measure.MustRead("17 kW ± 0.5", measure.Nominal[units.Power](0.03)))
	fmt.Println(t.Speed.Value().In(units.MilePerHour, 0), "±", t.Speed.U().In(units.MilePerHour, 0), err)
	// Output:
	// 76 mile/h ± 4 mile/h <nil>
}

func invented() (drive.Line, drive.Curve, drive.Road) {
	line := drive.Line{Primary: drive.Train{{Driver: 22, Driven: 48}}, Final: drive.Train{{Driver: 18, Driven: 46}}, Rolling: measure.MustRead("1975 mm ± 20", measure.Rule())}
	line.Box, _ = drive.BoxOf("2.42", "1.61", "1.21", "1")
	at := func(rpm, kw float64) drive.PowerPoint {
		return drive.PowerPoint{Speed: units.RevolutionsPerMinute(rpm), Power: units.Kilowatts(kw)}
	}
	curve, _ := drive.NewCurve(at(2000, 6), at(3000, 10), at(4000, 14), at(5000, 16.8), at(5500, 17), at(6000, 16))
	return line, curve, drive.Road{Mass: measure.MustRead("245 kg ± 5", measure.Nominal[units.Mass](0.02))}
}

func ExampleInGears() {
	line, curve, road := invented()
	tops, err := drive.InGears(line, curve, road)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, g := range tops.Gears {
		fmt.Println(g.Gear, g.Speed.In(units.MilePerHour, 0), g.Engine.In(units.RevolutionPerMinute, 0), g.Limit)
	}
	// Output:
	// 1 33 mile/h 6000 rev/min engine speed
	// 2 49 mile/h 6000 rev/min engine speed
	// 3 65 mile/h 6000 rev/min engine speed
	// 4 76 mile/h 5718 rev/min power
}

func ExampleNewCurve() {
	_, curve, _ := invented()
	p, ok := curve.At(units.RevolutionsPerMinute(4500))
	fmt.Println(p.In(units.Kilowatt, 1), ok, curve.Peak().Power, curve.Len())
	// Output: 15.4 kW true 17 kW 6
}

func ExampleThrusts() {
	line, curve, road := invented()
	traces, err := drive.Thrusts(line, curve, road, 50)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, t := range traces {
		x, y := t.XY(t.Len() - 1)
		fmt.Printf("%s ends at %.0f mile/h, %.0f N\n", t.Name, x, y)
	}
	// Output:
	// gear 1 ends at 33 mile/h, 962 N
	// gear 2 ends at 49 mile/h, 640 N
	// gear 3 ends at 65 mile/h, 481 N
	// gear 4 ends at 79 mile/h, 398 N
	// road ends at 79 mile/h, 471 N
}

// Which sprockets suit the invented machine, solo and with a sidecar?
func ExampleSuit() {
	line, curve, road := invented()
	in := drive.SuitInput{
		Line: line, Peak: measure.MustRead("17 kW ± 0.5", measure.Nominal[units.Power](0.03)), PeakAt: curve.Peak().Speed, Road: road,
		Choice: drive.SprocketChoice{FrontLeast: 15, FrontMost: 20, RearLeast: 46},
	}
	solo, err := drive.Suit(in, drive.SuitOptions{Most: 1})
	if err != nil {
		fmt.Println(err)
		return
	}
	in.Road.Sidecar, in.Road.Mass = true, measure.MustRead("370 kg ± 10", measure.Nominal[units.Mass](0.02))
	pair, err := drive.Suit(in, drive.SuitOptions{Most: 1})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range []drive.Suited{solo, pair} {
		o := s.Options[0]
		fmt.Printf("%d/%d, %.2f overall for %.2f ± %.2f wanted, %s\n", o.Rear, o.Front, o.Overall.Float(), s.Fastest.Value().SI(), s.Fastest.U().SI(), s.Top.Speed.Value().In(units.MilePerHour, 0))
	}
	fmt.Printf("sidecar %.0f %% lower\n", 100*drive.Compare(solo, pair).Lower)
	// Output:
	// 46/19, 5.28 overall for 5.31 ± 0.28 wanted, 76 mile/h
	// 46/16, 6.27 overall for 6.33 ± 0.37 wanted, 64 mile/h
	// sidecar 19 % lower
}

// Khurmi & Gupta, Theory of Machines, 2009, ex. 3.15; the book rounds to 22.
func ExampleBestPull() {
	in := drive.PullAway{
		Torque: units.NewtonMetres(200), Mass: units.Kilograms(1500), Resistance: units.Newtons(300 + 1500*9.81*0.25), Radius: units.Millimetres(300),
		Efficiency: 0.85, WheelsKilogramSquareMetres: 8, EngineKilogramSquareMetres: 1,
	}
	best, err := drive.BestPull(in)
	fmt.Printf("%.0f %v\n", best.Overall, err)
	a, err := in.Pull(22)
	fmt.Printf("%.2f m/s² %v\n", a.Acceleration.MetresPerSecondSquared(), err)
	// Output:
	// 22 <nil>
	// 1.38 m/s² <nil>
}

func ExampleReadSpeedometer() {
	two, _ := drive.NewRatio(2, 1)
	s, err := drive.ReadSpeedometer(drive.SpeedometerInput{Rolling: measure.MustRead("1975 mm ± 20", measure.Rule()), Drive: two, TurnsAMile: 1600})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(s.Factor, "of the truth; at a true 60 it shows", s.At[5].Indicated.In(units.MilePerHour, 1))
	fmt.Printf("%.2f turns of the cable for one of the wheel would read true\n", s.DriveWanted)
	// Output:
	// 1.019 ± 0.010 of the truth; at a true 60 it shows 61.1 mile/h
	// 1.96 turns of the cable for one of the wheel would read true
}

func ExampleSpeedometerDrive() {
	d, err := drive.SpeedometerDrive(measure.MustRead("1975 mm ± 20", measure.Rule()), 1600)
	fmt.Println(d, err)
	// Output:
	// 1.96 ± 0.02 <nil>
}

// UN Regulation 39, clause 5.3, with an allowance of 4 km/h.
func ExampleGreatestIndicated() {
	v, err := drive.GreatestIndicated(units.KilometresPerHour(50), units.KilometresPerHour(4))
	fmt.Println(v.In(units.KilometrePerHour, 0), err)
	// Output: 59 km/h <nil>
}
