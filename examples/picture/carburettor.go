package picture

import (
	"strconv"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"

	"example.com/benchbook/examples/job"
	"example.com/benchbook/units"
)

// What the paper shows of lambda, and where the pilot's share stands under it.
const (
	rich, weak  = 0.2, 1.5
	shareFoot   = -0.42
	shareHeight = 0.42
)

// carburettorPictures draws the mixture over the opening of the slide with its
// band, and below it the pilot's share of the fuel.
func carburettorPictures(v job.CarburettorResult) ([]Picture, error) {
	if len(v.Mixture) == 0 {
		return nil, nil
	}
	p := sheet("opening of the slide", "lambda")
	inside := func(l float64) float64 { return min(max(l, rich), weak) }
	var middle, ring, share plotter.XYs
	for _, e := range v.Mixture {
		x := e.Lift.Value()
		middle = append(middle, plotter.XY{X: x, Y: inside(e.Lambda.Value())})
		ring = append(ring, plotter.XY{X: x, Y: inside(e.LambdaBand.Low.Value())})
		share = append(share, plotter.XY{X: x, Y: shareFoot + shareHeight*e.PilotShare})
	}
	for i := len(v.Mixture) - 1; i >= 0; i-- {
		e := v.Mixture[i]
		ring = append(ring, plotter.XY{X: e.Lift.Value(), Y: inside(e.LambdaBand.High.Value())})
	}
	first, last := v.Mixture[0], v.Mixture[len(v.Mixture)-1]
	x0, x1 := first.Lift.Value(), last.Lift.Value()
	shares := append(plotter.XYs{{X: x0, Y: shareFoot}}, share...)
	err := collect(
		func() error { return area(p, pale, 0, ring) },
		func() error { return drawn(p, plotter.XYs{{X: 0, Y: 1}, {X: x1, Y: 1}}, dotted, vg.Points(1.2)) },
		func() error { return drawn(p, middle, full, vg.Points(2.2)) },
		func() error { return box(p, white, vg.Points(0.8), x0, shareFoot, x1, shareFoot+shareHeight) },
		func() error { return area(p, grey, 0, append(shares, plotter.XY{X: x1, Y: shareFoot})) },
	)
	shout(p, 0.01, 1.04, after, above, "weak")
	shout(p, 0.01, 0.96, after, below, "rich")
	say(p, x1, weak-0.03, before, below, "pale: 90 % band until lambda is read")
	say(p, x0+0.02, shareFoot+shareHeight-0.03, after, below, "pilot gives "+percent(first.PilotShare))
	say(p, x1-0.02, shareFoot+shareHeight-0.03, before, below, percent(last.PilotShare)+", main jet the rest")
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, 1.02, shareFoot, weak
	p.Y.Tick.Marker = lambdas{}
	finding := "Full throttle: lambda " + last.Lambda.In(units.One, 2) + " by the model, anywhere from " +
		last.LambdaBand.Low.In(units.One, 2) + " to " + last.LambdaBand.High.In(units.One, 2) + " until it is read"
	return []Picture{{Name: "mixture", Title: "Mixture over the throttle by the model, " + last.Speed.In(units.RevolutionPerMinute, 0), Finding: finding, plot: p, h: 84 * vg.Millimeter}}, err
}

func percent(share float64) string { return strconv.FormatFloat(100*share, 'f', 0, 64) + " %" }

// lambdas marks the axis above the pilot's share only.
type lambdas struct{}

// Ticks returns the marks.
func (lambdas) Ticks(float64, float64) []plot.Tick {
	var all []plot.Tick
	for i := 2; i <= 14; i += 4 {
		y := float64(i) / 10
		all = append(all, plot.Tick{Value: y, Label: strconv.FormatFloat(y, 'f', 1, 64)}, plot.Tick{Value: y + 0.2})
	}
	return append(all, plot.Tick{Value: 1})
}
