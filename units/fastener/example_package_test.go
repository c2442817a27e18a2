package fastener_test

import (
	"fmt"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fastener"
	"example.com/benchbook/units/measure"
)

// From an unmarked stud to advice. The readings are invented.
func Example() {
	pitch, err := fastener.ReadPitch("26 tpi", measure.PitchGauge())
	if err != nil {
		fmt.Println(err)
		return
	}
	id, err := fastener.Identify(fastener.Readings{
		Major: measure.MustRead("7.90 mm", measure.Caliper()),
		Pitch: pitch,
		Flank: measure.By(60*units.Degree, measure.Protractor()),
		Part:  fastener.Bolt,
		Hand:  fastener.Right,
	}, fastener.IdentifyOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	t := id.Thread()
	fmt.Println(t, "-", id.Causes.Leader().Words())
	if way, why := t.Turn(fastener.Undo); !why.Given() {
		fmt.Println("undo it", way)
	}
	if tap, err := fastener.TappingDrill(t, units.Percents(75), fastener.ChartDepth, fastener.MetricDrills()); err == nil {
		fmt.Println("tap in a hole of", tap.Choice.Drill.Name)
	}
	if h, err := fastener.Hexagons(t, fastener.HexOptions{}); err == nil {
		fmt.Println("spanner", h.Hexagons[0].Spanner)
	}
	if tight, err := fastener.Tighten(fastener.Joint{Thread: t}, fastener.TightenOptions{}); err == nil {
		fmt.Println(tight.Reason)
	}
	// Output:
	// 5/16-26 cycle - as good as certain
	// undo it anticlockwise
	// tap in a hole of 7.2 mm
	// spanner 1/4 W, 5/16 BS
	// the strength of this bolt is not known, so no torque is given: take it from the machine's manual, or fit a marked bolt
}

func ExampleIdentification_Thread() {
	id, err := fastener.Identify(fastener.Readings{
		Major: measure.MustRead("4.66 mm", measure.Caliper()),
		Pitch: measure.By(units.Millimetres(0.81), measure.PitchGauge()),
	}, fastener.IdentifyOptions{})
	fmt.Println(id.Thread(), err)
	// Output: 2 BA <nil>
}

func ExampleThread_Row() {
	row, ok := fastener.MustParse("2BA").Row()
	fmt.Println(row.Effective, row.DiameterOrigin.Status(), ok)
	// Output: 4.215 mm published true
}

func ExampleGauge_At() {
	d, err := fastener.SWG.At(10.5) // half way from 10 to 11
	fmt.Println(d.In(units.Inch, 3), err)
	// Output: 0.122 in <nil>
}

func ExampleGauge_Number() {
	n, err := fastener.SWG.Number(units.Inches(0.122))
	fmt.Printf("%.1f %v\n", n, err)
	_, err = fastener.SWG.Number(units.Inches(2))
	fmt.Println(err)
	// Output:
	// 10.5 <nil>
	// diameter: 50.8 mm: 0.0254 mm to 12.7 mm
}

func ExampleGauge_Ends() {
	first, last := fastener.SWG.Ends()
	fmt.Println(first.Mark, last.Mark)
	// Output: 7/0 50
}

func ExampleFits_Best() {
	f, err := fastener.SpannersFor(measure.MustRead("11.28 mm", measure.Caliper()), nil, fastener.FitOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	if best, ok := f.Best(); ok {
		fmt.Println(best.Spanner.Marking, "-", best.Grip)
	}
	// Output: 3/16 W, 1/4 BS - fits
}

func ExampleMaterialOf() {
	m := fastener.MaterialOf("certified bar", units.Megapascals(450))
	fmt.Println(m.Name, m.Tensile.Low.Megapascals())
	// Output: certified bar 450
}

// Grease lowers the torque for the same tension.
func ExampleGreased() {
	j := fastener.Joint{Thread: fastener.MustParse("M8")}
	oiled, err := fastener.TorqueFor(j, units.Kilonewtons(10))
	if err != nil {
		fmt.Println(err)
		return
	}
	j.Friction = fastener.Greased()
	greased, err := fastener.TorqueFor(j, units.Kilonewtons(10))
	fmt.Println(greased.High < oiled.High, err)
	// Output: true <nil>
}
