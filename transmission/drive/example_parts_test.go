package drive_test

import (
	"fmt"

	"example.com/benchbook/transmission/drive"
	"example.com/benchbook/units"
)

// Whole ratios from teeth, and what changing one sprocket does to the lot.
func ExampleRatio() {
	primary, err1 := drive.NewRatio(48, 22)
	final, err2 := drive.NewRatio(46, 18)
	onePlus, err3 := drive.NewRatio(46, 19)
	if err1 != nil || err2 != nil || err3 != nil {
		fmt.Println(err1, err2, err3)
		return
	}
	top, err := primary.Times(final)
	fmt.Println("top gear", top, err)
	change, err := onePlus.Over(final)
	fmt.Println("a tooth more at the box:", change, err)
	fmt.Println("taller:", onePlus.Compare(final) < 0)
	fmt.Println("the wheel turns", final.Inverse(), "for one of the box")
	// Output:
	// top gear 184/33 (5.576) <nil>
	// a tooth more at the box: 18/19 (0.947) <nil>
	// taller: true
	// the wheel turns 9/23 (0.391) for one of the box
}

// A box whose top gear goes straight through, gears given in any order.
func ExampleNewBox() {
	first, err := drive.ParseRatio("2.42")
	if err != nil {
		fmt.Println(err)
		return
	}
	second, err := drive.ParseRatio("1.61")
	if err != nil {
		fmt.Println(err)
		return
	}
	box, err := drive.NewBox(drive.Gear{Name: "top", Ratio: drive.OneToOne()}, drive.Gear{Name: "first", Ratio: first}, drive.Gear{Name: "second", Ratio: second})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, g := range box.Gears() {
		fmt.Println(g.Name, g.Ratio)
	}
	g, ok := box.Gear("second")
	fmt.Printf("second is %.2f %v; top is %q\n", g.Ratio.Float(), ok, box.Top().Name)
	// Output:
	// first 121/50 (2.420)
	// second 161/100 (1.610)
	// top 1
	// second is 1.61 true; top is "top"
}

// Crankshaft turns for one of the wheel.
func ExampleLine_Overall() {
	line, _, _ := invented()
	for _, g := range line.Box.Gears() {
		r, err := line.Overall(g.Name)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s: %.2f\n", g.Name, r.Float())
	}
	// Output:
	// 1: 13.49
	// 2: 8.98
	// 3: 6.75
	// 4: 5.58
}

// The points of a power curve come back in order of speed.
func ExampleCurve_Points() {
	curve, err := drive.NewCurve(
		drive.PowerPoint{Speed: units.RevolutionsPerMinute(5500), Power: units.Kilowatts(17)},
		drive.PowerPoint{Speed: units.RevolutionsPerMinute(2000), Power: units.Kilowatts(6)},
	)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range curve.Points() {
		fmt.Println(p.Speed, p.Power)
	}
	// Output:
	// 2000 rev/min 6 kW
	// 5500 rev/min 17 kW
}

// What the code on the sidewall says of the tyre.
func ExampleTyre() {
	for _, code := range []string{"3.25-19", "90/90-19"} {
		t, err := drive.ParseTyre(code)
		if err != nil {
			fmt.Println(err)
			return
		}
		height, marked := t.Aspect()
		fmt.Printf("%s: %s wide on a %s rim, height %.2f of it (marked: %v)\n", t.Code(), t.Width().In(units.Millimetre, 0), t.Rim().In(units.Inch, 0), height, marked)
	}
	// Output:
	// 3.25-19: 83 mm wide on a 19 in rim, height 1.00 of it (marked: false)
	// 90/90-19: 90 mm wide on a 19 in rim, height 0.90 of it (marked: true)
}
