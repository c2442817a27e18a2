package picture

import (
	"math"
	"strconv"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"

	"example.com/benchbook/examples/job"
)

// degrees marks an axis every 90° with a small mark every 30°.
type degrees struct{}

// Ticks returns the marks between two angles.
func (degrees) Ticks(from, to float64) []plot.Tick {
	var all []plot.Tick
	for x := math.Ceil(from/30) * 30; x <= to; x += 30 {
		t := plot.Tick{Value: x}
		if math.Mod(x, 90) == 0 {
			t.Label = strconv.Itoa(int(x))
		}
		all = append(all, t)
	}
	return all
}

// circlePicture draws the events round the crank circle, TDC at the top, turning
// clockwise: specified outside, read inside.
func circlePicture(v job.TimingResult, read pair) (Picture, error) {
	p := sheet("", "")
	p.HideAxes()
	arc := func(e events, radius float64, style int, width vg.Length) func() error {
		return func() error {
			var xys plotter.XYs
			for a := e.opens; a <= e.closes+1e-9; a += (e.closes - e.opens) / 90 {
				xys = append(xys, round(a, radius))
			}
			l, err := line(xys, style, width)
			if err != nil {
				return err
			}
			p.Add(l)
			for _, end := range []float64{e.opens, e.closes} {
				spoke, err := line(plotter.XYs{round(end, radius-0.06), round(end, radius+0.06)}, 0, vg.Points(1))
				if err != nil {
					return err
				}
				p.Add(spoke)
			}
			return nil
		}
	}
	words := func(a, radius float64, text string) func() error {
		return func() error {
			at := round(a, radius)
			return note(p, at.X, at.Y-0.03, text, at.X < 0)
		}
	}
	axis := func(a float64) func() error {
		return func() error {
			l, err := line(plotter.XYs{{}, round(a, 1.25)}, 2, vg.Points(0.7))
			if err == nil {
				p.Add(l)
			}
			return err
		}
	}
	book, r := specified(v.Input.Engine), v.Input.Readings
	err := collect(axis(0), axis(180), axis(90), axis(270),
		arc(book.inlet, 1.15, 1, vg.Points(1.2)), arc(read.inlet, 1.0, 0, vg.Points(2.4)),
		arc(book.exhaust, 0.72, 1, vg.Points(1.2)), arc(read.exhaust, 0.57, 0, vg.Points(2.4)),
		func() error { return note(p, 0.03, 1.28, "TDC", false) },
		func() error { return note(p, 0.03, -1.33, "BDC", false) },
		words(90, 1.28, "inlet, outer pair"), words(270, 1.28, "exhaust, inner pair"),
		words(read.inlet.opens, 1.36, "inlet opens "+r.InletOpens.Value().String()),
		words(read.inlet.closes, 1.36, "inlet closes "+r.InletCloses.Value().String()),
		words(read.exhaust.opens, 1.5, "exhaust opens "+r.ExhaustOpens.Value().String()),
		words(read.exhaust.closes, 1.36, "exhaust closes "+r.ExhaustCloses.Value().String()),
	)
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = -2.6, 2.6, -1.5, 1.5
	return Picture{Name: "timing-circle", Title: "Timing circle", Finding: phaseFinding(v) + "; full: as read, dashed: as specified", plot: p, w: wide, h: tall}, err
}

// round places an angle after TDC on a circle, clockwise from the top.
func round(a, radius float64) plotter.XY {
	s, c := math.Sincos(a * math.Pi / 180)
	return plotter.XY{X: radius * s, Y: radius * c}
}
