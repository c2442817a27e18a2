// True-top finds true top dead centre from two readings at a positive stop, and
// says what the cylinder should show on a compression gauge.
package main

import (
	"flag"

	"example.com/benchbook/examples/internal/slip"
	"example.com/benchbook/timing/crank"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

func main() {
	before := flag.String("before", "42 BTDC", "disc at the stop, turned forwards")
	after := flag.String("after", "37 ATDC", "disc at the stop, turned backwards")
	bore := flag.String("bore", "78 mm", "bore")
	stroke := flag.String("stroke", "83 mm", "stroke")
	rod := flag.String("rod", "165 mm", "connecting rod between centres")
	ratio := flag.String("ratio", "6.8", "compression ratio")
	closes := flag.String("closes", "65 ABDC", "inlet closes")
	slip.Flags()

	slider := crank.Slider{Stroke: slip.Need(units.ParseLength(*stroke)), Rod: slip.Need(units.ParseLength(*rod))}
	top := slip.Need(crank.FindTDC(crank.StopReadings{
		Before: slip.Need(measure.ReadPosition(*before, measure.DegreeDisc())),
		After:  slip.Need(measure.ReadPosition(*after, measure.DegreeDisc())),
		Slider: slider,
	}))
	slip.Certain("true TDC is where the disc shows %v", top.Disc)
	slip.Certain("add %v to every figure after TDC", top.Correction)
	slip.Certain("the stop holds the piston %s below the top", top.StopDepth.In(units.Millimetre, 2))

	cylinder := crank.Cylinder{Bore: slip.Need(units.ParseLength(*bore)), Slider: slider}
	cylinder = slip.Need(cylinder.WithRatio(slip.Need(units.ParseRatio(*ratio))))
	c := slip.Need(cylinder.Cranking(slip.Need(units.ParsePosition(*closes)), crank.CrankingOptions{}))
	slip.Say("likely", "a sound engine shows %s to %s on the gauge", c.Gauge.Low.In(units.Bar, 1), c.Gauge.High.In(units.Bar, 1))
	slip.Basis(top.Basis)
	slip.Basis(c.Basis)
}
