package picture

import (
	"math"
	"strconv"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"

	"example.com/benchbook/examples/internal/lift"
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

// Radii of the circle, the read arc inside the specified one.
const (
	inletRead, inletBook     = 1.0, 1.14
	exhaustRead, exhaustBook = 0.58, 0.72
	half                     = 2.0 // of the paper's width
	circleTall               = 82 * vg.Millimeter
)

// circlePicture draws the events round the crank circle, TDC at the top, turning
// clockwise. Each event is named in its own corner, with a line to it.
func circlePicture(v job.TimingResult, inlet, exhaust lift.Pair) (Picture, error) {
	p := sheet("", "")
	p.HideAxes()
	p.X.Padding, p.Y.Padding = 0, 0
	high := half * float64(circleTall/wide)
	arc := func(c lift.Cam, radius float64, style int, width vg.Length) func() error {
		return func() error {
			var xys plotter.XYs
			for i := range 91 {
				xys = append(xys, round(c.Opens+(c.Closes-c.Opens)*float64(i)/90, radius))
			}
			if err := drawn(p, xys, style, width); err != nil {
				return err
			}
			for _, end := range []float64{c.Opens, c.Closes} {
				if err := drawn(p, plotter.XYs{round(end, radius-0.06), round(end, radius+0.06)}, full, width); err != nil {
					return err
				}
			}
			return nil
		}
	}
	r := v.Input.Readings
	corner := func(end, radius, x, y float64, event, place string) func() error {
		return func() error {
			across, up := after, above
			if x < 0 {
				across = before
			}
			if y < 0 {
				up = below
			}
			say(p, x, y, across, up, event, place)
			return drawn(p, plotter.XYs{round(end, radius+0.06), {X: x, Y: y}}, full, vg.Points(0.6))
		}
	}
	axis := func(a float64) func() error {
		return func() error { return drawn(p, plotter.XYs{{}, round(a, 1.24)}, dotted, vg.Points(0.7)) }
	}
	const x, up, down = 0.55, 1.3, -1.22
	err := collect(axis(0), axis(180), axis(90), axis(270),
		corner(inlet.Read.Opens, inletRead, -x, up, "inlet opens", r.InletOpens.Value().String()),
		corner(exhaust.Read.Closes, exhaustRead, x, up, "exhaust closes", r.ExhaustCloses.Value().String()),
		corner(inlet.Read.Closes, inletRead, -x-0.25, down, "inlet closes", r.InletCloses.Value().String()),
		corner(exhaust.Read.Opens, exhaustRead, x+0.25, down, "exhaust opens", r.ExhaustOpens.Value().String()),
		arc(inlet.Book, inletBook, dashed, vg.Points(1.2)), arc(inlet.Read, inletRead, full, vg.Points(2.6)),
		arc(exhaust.Book, exhaustBook, dashed, vg.Points(1.2)), arc(exhaust.Read, exhaustRead, full, vg.Points(2.6)),
		func() error { return turning(p) },
	)
	say(p, 0, 1.27, amid, above, "TDC")
	say(p, 0, -1.27, amid, below, "BDC")
	shout(p, 1.24, 0, after, level, "inlet", shift(v.Verdict.Inlet))
	shout(p, -0.84, 0, before, level, "exhaust", shift(v.Verdict.Exhaust))
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = -half, half, -high, high
	return Picture{Name: "timing-circle", Title: "Timing circle. Dashed: as specified; full: as read; inlet outside, exhaust inside", Finding: phaseFinding(v), plot: p, h: circleTall}, err
}

// turning shows which way the crank turns.
func turning(p *plot.Plot) error {
	var xys plotter.XYs
	for a := -60.0; a <= 50; a += 5 {
		xys = append(xys, round(a, 0.24))
	}
	if err := drawn(p, xys, full, vg.Points(1)); err != nil {
		return err
	}
	return area(p, black, 0, plotter.XYs{round(75, 0.24), round(48, 0.31), round(48, 0.17)})
}

// round places an angle after TDC on a circle, clockwise from the top.
func round(a, radius float64) plotter.XY {
	s, c := math.Sincos(a * math.Pi / 180)
	return plotter.XY{X: radius * s, Y: radius * c}
}
