package picture

import (
	"math"

	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"

	"example.com/benchbook/examples/job"
	"example.com/benchbook/timing"
	"example.com/benchbook/units"
)

// events is one cam's opening and closing in crank degrees of the cycle, 0 at
// the top dead centre between exhaust and inlet.
type events struct{ opens, closes, lift float64 }

func inletOf(opens, closes units.CrankPosition, lift units.Length) events {
	return events{opens.After().Degrees() + bdc(opens), closes.After().Degrees() + bdc(closes), lift.Millimetres()}
}

// An exhaust cam opens before and closes after the same dead centres, half a
// cycle earlier: from 180° before the overlap TDC.
func exhaustOf(opens, closes units.CrankPosition, lift units.Length) events {
	return events{opens.After().Degrees() - bdc(opens), closes.After().Degrees() - bdc(closes), lift.Millimetres()}
}

func bdc(p units.CrankPosition) float64 {
	if p.Datum() == units.BDC {
		return 180
	}
	return 0
}

// curve draws a lobe of plain shape, lift times cos², through its events at the
// check lift. It shows where the lobe lies, not how it was ground.
func (e events) curve(check float64) plotter.XYs {
	if e.lift <= check {
		return nil
	}
	centre, half := (e.opens+e.closes)/2, (e.closes-e.opens)/2
	reach := half / (2 / math.Pi * math.Acos(math.Sqrt(check/e.lift)))
	xys := make(plotter.XYs, 121)
	for i := range xys {
		x := float64(i)/60 - 1
		c := math.Cos(math.Pi / 2 * x)
		xys[i].X, xys[i].Y = centre+reach*x, e.lift*c*c
	}
	return xys
}

type pair struct{ inlet, exhaust events }

// specified and found return both cams by the book and as read; ok is false
// where a reading is missing.
func specified(e timing.Engine) pair {
	return pair{inletOf(e.Inlet.Opens, e.Inlet.Closes, liftOr(e.Inlet.MaxLift.Value())), exhaustOf(e.Exhaust.Opens, e.Exhaust.Closes, liftOr(e.Exhaust.MaxLift.Value()))}
}

func found(v job.TimingResult) (pair, bool) {
	r, book := v.Input.Readings, specified(v.Input.Engine)
	ok := r.InletOpens.Taken() && r.InletCloses.Taken() && r.ExhaustOpens.Taken() && r.ExhaustCloses.Taken()
	p := pair{inletOf(r.InletOpens.Value(), r.InletCloses.Value(), r.InletMaxLift.Value()), exhaustOf(r.ExhaustOpens.Value(), r.ExhaustCloses.Value(), r.ExhaustMaxLift.Value())}
	if !r.InletMaxLift.Taken() {
		p.inlet.lift = book.inlet.lift
	}
	if !r.ExhaustMaxLift.Taken() {
		p.exhaust.lift = book.exhaust.lift
	}
	return p, ok
}

// liftOr stands in for a greatest lift that was not given, so that the lobes
// can still be drawn.
func liftOr(l units.Length) units.Length {
	if l <= 0 {
		return 8 * units.Millimetre
	}
	return l
}

func timingPictures(v job.TimingResult) ([]Picture, error) {
	all, err := oddsPicture("timing", "Valve timing: odds", v.Verdict.Causes)
	if err != nil {
		return nil, err
	}
	read, ok := found(v)
	if !ok {
		return all, nil
	}
	lift, err := liftPicture(v, read)
	if err != nil {
		return nil, err
	}
	circle, err := circlePicture(v, read)
	if err != nil {
		return nil, err
	}
	return append([]Picture{lift, circle}, all...), nil
}

func phaseFinding(v job.TimingResult) string {
	in, ex := v.Verdict.Inlet.Crank.Value(), v.Verdict.Exhaust.Crank.Value()
	return "inlet " + shift(in) + ", exhaust " + shift(ex)
}

func shift(a units.CrankAngle) string {
	switch {
	case a.Abs() < units.CrankDegree:
		return "as specified"
	case a < 0:
		return (-a).In(units.CrankDegree, 1) + " late"
	}
	return a.In(units.CrankDegree, 1) + " early"
}

func liftPicture(v job.TimingResult, read pair) (Picture, error) {
	p := sheet("degrees of the crank, 0 = TDC between exhaust and inlet", "lift, mm")
	book, check := specified(v.Input.Engine), v.Input.Engine.Check.Lift.Millimetres()
	top := max(book.inlet.lift, book.exhaust.lift)
	draw := func(e events, style int, width vg.Length) func() error {
		return func() error {
			xys := e.curve(check)
			if xys == nil {
				return nil
			}
			l, err := line(xys, style, width)
			if err != nil {
				return err
			}
			p.Add(l)
			return nil
		}
	}
	overlap := func() error {
		from, to := read.inlet.opens, read.exhaust.closes
		if from >= to {
			return nil
		}
		a, err := area(pale, plotter.XYs{{X: from, Y: 0}, {X: to, Y: 0}, {X: to, Y: check}, {X: from, Y: check}})
		if err != nil {
			return err
		}
		p.Add(a)
		return note(p, (from+to)/2-38, -top*0.055, "overlap as read", false)
	}
	mark := func(x float64, text string, right bool) func() error {
		return func() error {
			l, err := line(plotter.XYs{{X: x, Y: 0}, {X: x, Y: check}}, 0, vg.Points(1))
			if err != nil {
				return err
			}
			p.Add(l)
			if right {
				return note(p, x+3, top*0.02, text, false)
			}
			return note(p, x-16, top*0.02, text, true)
		}
	}
	r := v.Input.Readings
	err := collect(overlap,
		draw(book.exhaust, 1, vg.Points(1)), draw(book.inlet, 1, vg.Points(1)),
		draw(read.exhaust, 0, vg.Points(1.8)), draw(read.inlet, 0, vg.Points(1.8)),
		mark(read.exhaust.opens, "opens "+r.ExhaustOpens.Value().String(), true), mark(read.inlet.closes, "closes "+r.InletCloses.Value().String(), false),
		func() error {
			return note(p, (read.exhaust.opens+read.exhaust.closes)/2-14, top*1.03, "exhaust", false)
		},
		func() error { return note(p, (read.inlet.opens+read.inlet.closes)/2-8, top*1.03, "inlet", false) },
	)
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = -300, 300, -top*0.07, top*1.12
	p.X.Tick.Marker = degrees{}
	grid := plotter.NewGrid()
	grid.Vertical.Color, grid.Horizontal.Color = pale, pale
	p.Add(grid)
	return Picture{Name: "valve-lift", Title: "Valve lift against specification", Finding: phaseFinding(v) +
		"; full: as read, dashed: as specified, to a plain lobe shape", plot: p, w: wide, h: tall}, err
}
