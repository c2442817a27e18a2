package picture

import (
	"math"
	"strconv"
	"strings"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"

	"example.com/benchbook/examples/internal/lift"
	"example.com/benchbook/examples/job"
	"example.com/benchbook/timing"
	"example.com/benchbook/units"
)

func timingPictures(v job.TimingResult) ([]Picture, error) {
	all, err := oddsPicture("timing", "Valve timing", v.Verdict.Causes)
	if err != nil {
		return nil, err
	}
	inlet, exhaust := lift.Of(v)
	if !inlet.Read.Known || !exhaust.Read.Known {
		return all, nil
	}
	curves, err := liftPicture(v, inlet, exhaust)
	if err != nil {
		return nil, err
	}
	circle, err := circlePicture(v, inlet, exhaust)
	if err != nil {
		return nil, err
	}
	return append([]Picture{curves, circle}, all...), nil
}

func phaseFinding(v job.TimingResult) string {
	return "Inlet " + shift(v.Verdict.Inlet) + ", exhaust " + shift(v.Verdict.Exhaust)
}

// shift says how a cam stands.
func shift(p timing.Phase) string {
	a := p.Crank.Value()
	switch {
	case a.Abs() < units.CrankDegree:
		return "right"
	case a < 0:
		return degree(-a) + " late"
	}
	return degree(a) + " early"
}

func degree(a units.CrankAngle) string {
	return strings.TrimSuffix(a.In(units.CrankDegree, 1), " crank")
}

// liftPicture draws lift over the crank: specified dashed, as read full with the
// readings as rings, an arrow from where each lobe should stand to where it stands.
func liftPicture(v job.TimingResult, inlet, exhaust lift.Pair) (Picture, error) {
	p := sheet("crank degrees from the TDC of overlap", "lift, mm")
	top := max(inlet.Book.Max, exhaust.Book.Max, inlet.Read.Max, exhaust.Read.Max)
	curve := func(c lift.Cam, style int, width vg.Length) func() error {
		return func() error {
			from, to, ok := c.Span()
			if !ok {
				return nil
			}
			var xys plotter.XYs
			for i := range 161 {
				x := from + (to-from)*float64(i)/160
				xys = append(xys, plotter.XY{X: x, Y: c.At(x)})
			}
			return drawn(p, xys, style, width)
		}
	}
	both := func() error {
		from, to, ok := lift.Overlap(inlet.Read, exhaust.Read)
		if !ok {
			return nil
		}
		xys := plotter.XYs{{X: from, Y: 0}}
		for i := range 41 {
			x := from + (to-from)*float64(i)/40
			xys = append(xys, plotter.XY{X: x, Y: min(inlet.Read.At(x), exhaust.Read.At(x))})
		}
		say(p, (from+to)/2, top*0.8, amid, level, "both", "open", strconv.FormatFloat(to-from, 'f', 0, 64)+"°")
		return area(p, grey, 0, append(xys, plotter.XY{X: to, Y: 0}))
	}
	points := func(c lift.Cam) func() error {
		return func() error {
			var xys plotter.XYs
			for _, q := range c.Points {
				xys = append(xys, plotter.XY{X: q.At, Y: q.Lift})
			}
			if len(xys) == 0 {
				return nil
			}
			return rings(p, xys)
		}
	}
	r := v.Input.Readings
	cam := func(name string, c lift.Pair, phase timing.Phase) func() error {
		return func() error {
			at, should := c.Read.Centre(), c.Book.Centre()
			shout(p, (at+should)/2, top*1.13, amid, above, name, shift(phase))
			for _, x := range []float64{c.Read.Opens, c.Read.Closes} {
				if err := drawn(p, plotter.XYs{{X: x, Y: 0}, {X: x, Y: c.Read.Check}}, full, vg.Points(2)); err != nil {
					return err
				}
			}
			if math.Abs(at-should) < 4 {
				return nil
			}
			return arrow(p, should, at, top*1.09, 9, top*0.03)
		}
	}
	err := collect(both,
		curve(exhaust.Book, dashed, vg.Points(1)), curve(inlet.Book, dashed, vg.Points(1)),
		curve(exhaust.Read, full, vg.Points(1.8)), curve(inlet.Read, full, vg.Points(1.8)),
		points(exhaust.Read), points(inlet.Read),
		cam("exhaust", exhaust, v.Verdict.Exhaust),
		cam("inlet", inlet, v.Verdict.Inlet),
		func() error {
			return drawn(p, plotter.XYs{{X: -300, Y: 0}, {X: 300, Y: 0}}, full, vg.Points(0.8))
		},
	)
	// Events in words under the lobes: exhaust in the first row, inlet in the second.
	say(p, -298, -top*0.05, after, below, "exhaust opens "+r.ExhaustOpens.Value().String())
	say(p, 12, -top*0.05, after, below, "exhaust closes "+r.ExhaustCloses.Value().String())
	say(p, -12, -top*0.17, before, below, "inlet opens "+r.InletOpens.Value().String())
	say(p, 298, -top*0.17, before, below, "inlet closes "+r.InletCloses.Value().String())
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = -300, 300, -top*0.28, top*1.37
	p.X.Tick.Marker = degrees{}
	p.Y.Tick.Marker = lifts{top}
	title := "Valve lift. Dashed: as specified; full: as read"
	if inlet.Read.Measured() || exhaust.Read.Measured() {
		title += "; rings: readings"
	}
	if !inlet.Read.Measured() || !exhaust.Read.Measured() {
		title += "; a plain lobe through the events where lift was not read"
	}
	return Picture{Name: "valve-lift", Title: title, Finding: phaseFinding(v), plot: p, h: tall}, err
}

// lifts marks an axis every second millimetre up to a greatest.
type lifts struct{ most float64 }

// Ticks returns the marks.
func (l lifts) Ticks(float64, float64) []plot.Tick {
	var all []plot.Tick
	for y := 0.0; y <= l.most*1.05; y += 2 {
		all = append(all, plot.Tick{Value: y, Label: units.Millimetres(y).In(units.Millimetre, 0)[:1]})
	}
	return all
}
