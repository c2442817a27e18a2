package picture

import (
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"

	"example.com/benchbook/examples/job"
	"example.com/benchbook/units"
)

// carburettorPictures draws the mixture over the opening of the slide with its
// band, and below it the pilot's share of the fuel.
func carburettorPictures(v job.CarburettorResult) ([]Picture, error) {
	if len(v.Mixture) == 0 {
		return nil, nil
	}
	const rich, weak = 0.2, 1.5 // what the paper shows of lambda
	p := sheet("opening of the slide", "lambda: below 1 rich, above weak")
	var middle, low, high, share plotter.XYs
	for _, e := range v.Mixture {
		x := e.Lift.Value()
		middle = append(middle, plotter.XY{X: x, Y: e.Lambda.Value()})
		low = append(low, plotter.XY{X: x, Y: e.LambdaBand.Low.Value()})
		high = append(high, plotter.XY{X: x, Y: e.LambdaBand.High.Value()})
		share = append(share, plotter.XY{X: x, Y: rich + 0.3*e.PilotShare})
	}
	first, last := middle[0].X, middle[len(middle)-1].X
	err := collect(
		func() error {
			ring := append(plotter.XYs{}, low...)
			for i := len(high) - 1; i >= 0; i-- {
				ring = append(ring, high[i])
			}
			a, err := area(pale, ring)
			if err == nil {
				p.Add(a)
			}
			return err
		},
		func() error {
			ring := append(plotter.XYs{{X: first, Y: rich}}, share...)
			a, err := area(grey, append(ring, plotter.XY{X: last, Y: rich}))
			if err == nil {
				p.Add(a)
			}
			return err
		},
		func() error { return drawn(p, middle, 0, vg.Points(1.8)) },
		func() error { return drawn(p, plotter.XYs{{X: first, Y: 1}, {X: last, Y: 1}}, 2, vg.Points(1)) },
		func() error {
			return note(p, 0.37, rich+0.09, "dark: the pilot's share of the fuel, the rest is the main jet's", false)
		},
		func() error {
			return note(p, 0.5, high[len(high)-1].Y+0.07, "pale: 90 % band of an engine not yet measured", false)
		},
	)
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, 1.02, rich, weak
	full := v.Mixture[len(v.Mixture)-1]
	finding := "full throttle at lambda " + full.Lambda.In(units.One, 2) + ", anywhere from " + full.LambdaBand.Low.In(units.One, 2) + " to " + full.LambdaBand.High.In(units.One, 2) + " until one lambda reading sets the model right"
	return []Picture{{Name: "mixture", Title: "Mixture over the throttle, " + full.Speed.In(units.RevolutionPerMinute, 0), Finding: finding, plot: p, w: wide, h: tall}}, err
}
