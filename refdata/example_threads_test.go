package refdata_test

import (
	"fmt"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
)

// A thread by name, with what its figures rest on. Machinery's Handbook, 31 ed.,
// p. 2115, prints 4.70, 4.215 and 3.73 mm for 2 BA.
func ExampleThreads() {
	t, ok := refdata.Threads().ByName("2BA")
	fmt.Println(ok, t.Name, t.Major, t.Effective, t.Minor)
	fmt.Println(t.DiameterOrigin)
	// Output:
	// true 2 BA 4.7 mm 4.215 mm 3.73 mm
	// Machinery's Handbook, 31 ed. 2020, p. 2115, basic dimensions after BS 93:1951 [published]
}

// Threads of one system.
func ExampleThreadsOf() {
	for t := range refdata.ThreadsOf(refdata.BSF).Between(6*units.Millimetre, 8*units.Millimetre) {
		fmt.Println(t.Name, t.ThreadsPerInch, t.TappingDrill)
	}
	// Output:
	// 1/4 BSF 26 5.3 mm
	// 9/32 BSF 26 6.1 mm
	// 5/16 BSF 22 6.8 mm
}

// Systems that have a table, with the number of their threads.
func ExampleSystems() {
	n := 0
	for _, s := range refdata.Systems() {
		n += refdata.ThreadsOf(s).Len()
	}
	fmt.Println(n, refdata.Threads().Len() == n)
	fmt.Println(refdata.Systems()[2], refdata.Systems()[9])
	// Output:
	// 354 true
	// cycle brass
}

// What a bolt of unknown origin might be, by its outside diameter alone.
func ExampleTable_Between() {
	for t := range refdata.Threads().Between(units.Inches(0.245), units.Inches(0.25)) {
		fmt.Printf("%s, %.4g to the inch\n", t.Name, t.ThreadsPerInch)
	}
	// Output:
	// 1/4 BSW, 20 to the inch
	// 1/4 BSF, 26 to the inch
	// 1/4-26 cycle, 26 to the inch
	// 1/4-20 UNC, 20 to the inch
	// 1/4-28 UNF, 28 to the inch
	// 1/4-26 brass, 26 to the inch
}

// Other names of a thread are understood as long as they mean one thread.
func ExampleTable_ByName() {
	for _, name := range []string{"1/4 cei", "M10 × 1.5", "No. 10 UNF", "1/2 BSC"} {
		t, ok := refdata.Threads().ByName(name)
		fmt.Printf("%s: %q %v\n", name, t.Name, ok)
	}
	// Output:
	// 1/4 cei: "1/4-26 cycle" true
	// M10 × 1.5: "M10" true
	// No. 10 UNF: "10-32 UNF" true
	// 1/2 BSC: "" false
}

// A table may be walked as often as one likes.
func ExampleTable_All() {
	for w := range refdata.WireGauge().All() {
		if w.Diameter < 2*units.Millimetre {
			fmt.Println("the first gauge thinner than 2 mm is", w.Gauge, "SWG")
			break
		}
	}
	// Output:
	// the first gauge thinner than 2 mm is 15 SWG
}

// The form of the 20 threads an inch cycle series is an open question, so that
// both rows are served.
func ExampleThread() {
	for _, name := range []string{"1/2-20 cycle 60°", "1/2-20 cycle 55°"} {
		t, _ := refdata.Threads().ByName(name)
		fmt.Println(t.Name, t.Included, "core", t.Minor.In(units.Inch, 4))
	}
	// Output:
	// 1/2-20 cycle 60° 60° core 0.4467 in
	// 1/2-20 cycle 55° 55° core 0.4360 in
}

// A figure a table does not have is unknown, which is not zero.
func ExampleFigure() {
	t, _ := refdata.Threads().ByName("G 1/4")
	area, known := t.StressArea.Get()
	fmt.Println(t.StressArea, area.SI(), known)
	fmt.Println(t.TappingDrill.Or(t.MinorInternal))
	// Output:
	// unknown 0 false
	// 11.445 mm
}

// What a group of columns rests on.
func ExampleOrigin() {
	t, _ := refdata.Threads().ByName("1/4 BSF")
	for _, s := range t.ThreadOrigin.Sources() {
		fmt.Println(s)
	}
	fmt.Println(t.DiameterOrigin.Status(), "by", t.DiameterOrigin.Source().Title)
	// Output:
	// BS 84, 2007, sizes and threads an inch, BSW and BSF (read in a gauge maker's list that cites it) [published]
	// derived by BS 84, Parallel screw threads of Whitworth form
}

func ExampleNumberDrills() {
	d, _ := refdata.NumberDrills().ByName("#60")
	fmt.Println(d.Diameter)
	// Output:
	// 1.016 mm
}

func ExampleLetterDrills() {
	d, _ := refdata.LetterDrills().ByName("F")
	fmt.Println(d.Diameter.In(units.Inch, 3))
	// Output:
	// 0.257 in
}

func ExampleMetricDrills() {
	d, _ := refdata.MetricDrills().ByName("M8")
	fmt.Println(d.Diameter, "for a pitch of", d.Pitch)
	// Output:
	// 6.8 mm for a pitch of 1.25 mm
}

func ExampleWireGauge() {
	w, _ := refdata.WireGauge().ByName("10 SWG")
	fmt.Println(w.Diameter.In(units.Inch, 3))
	// Output:
	// 0.128 in
}

// An 8.8 bolt is a little stronger above 16 mm.
func ExamplePropertyClassAt() {
	for _, d := range []units.Length{8 * units.Millimetre, 20 * units.Millimetre} {
		c, _ := refdata.PropertyClassAt("8.8", d)
		fmt.Println(c.Name, c.Proof.Megapascals(), "MPa")
	}
	// Output:
	// 8.8 to 16 mm 580 MPa
	// 8.8 over 16 mm 600 MPa
}

func ExamplePropertyClasses() {
	c, _ := refdata.PropertyClasses().ByName("10.9")
	fmt.Println(c.Tensile.Megapascals(), c.Yield.Megapascals())
	// Output:
	// 1040 940
}

func ExampleGradeAt() {
	g, _ := refdata.GradeAt("5", 3*units.Inch/8)
	fmt.Printf("%s: %.0f ksi\n", g.Name, g.Proof.KilopoundsForcePerSquareInch())
	// Output:
	// 5, 1/4 to 1 in: 85 ksi
}

func ExampleGrades() {
	for g := range refdata.Grades().Between(units.KilopoundsForcePerSquareInch(100), units.KilopoundsForcePerSquareInch(110)) {
		fmt.Println(g.Grade, g.Material)
	}
	// Output:
	// 7 medium-carbon alloy
}

// A 1/4 in Whitworth bolt takes one of two hexagons.
func ExampleWhitworthHexagons() {
	h, _ := refdata.WhitworthHexagons().ByName("1/4")
	fmt.Println(h.Small.Or(0).In(units.Inch, 3), "or", h.Large.In(units.Inch, 3))
	// Output:
	// 0.445 in or 0.525 in
}

func ExampleWhitworthSpanners() {
	s, _ := refdata.WhitworthSpanners().ByName("3/8 BS")
	fmt.Println(s.W, "is", s.BS, "is", s.AcrossFlats.In(units.Inch, 3))
	// Output:
	// 5/16 W is 3/8 BS is 0.600 in
}

func ExampleUnifiedHexagons() {
	h, _ := refdata.UnifiedHexagons().ByName("7/16")
	fmt.Println("bolt", h.Head.In(units.Inch, 4), "nut", h.Nut.In(units.Inch, 4))
	// Output:
	// bolt 0.6250 in nut 0.6875 in
}

func ExampleBAHexagons() {
	h, _ := refdata.BAHexagons().ByName("2 BA")
	fmt.Println(h.AcrossFlats, h.RuleOrigin.Status(), h.BS57Origin.Status())
	// Output:
	// 8.23 mm derived from memory
}

func ExampleMetricHexagons() {
	h, _ := refdata.MetricHexagons().ByName("M10")
	fmt.Println(h.ISO, "now,", h.Old, "before ISO 272")
	// Output:
	// 16 mm now, 17 mm before ISO 272
}
