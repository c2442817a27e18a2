package picture

import (
	"image/color"
	"math"
	"strconv"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"

	"example.com/benchbook/examples/job"
	"example.com/benchbook/transmission"
	"example.com/benchbook/units"
)

func clutchPictures(v job.ClutchResult) ([]Picture, error) {
	window, err := windowPicture(v)
	if err != nil {
		return nil, err
	}
	odds, err := oddsPicture("clutch", "Clutch", v.Diagnose.Causes)
	return append([]Picture{window}, odds...), err
}

// Heights of the window's paper: curves from 0 to 1.6 of what is wanted, rows of
// words and bars below them, a line of words as high as lineTall.
const (
	most     = 1.6
	lineTall = 0.185
	barTall  = 0.12
	repairs  = 2 // rows at most
)

// windowPicture draws torque and lift over the turns of the spring nuts, each as a
// share of what is wanted: above the line at 1 it holds, or frees. Below stand where
// it holds, where it frees, and what repairs would leave.
func windowPicture(v job.ClutchResult) (Picture, error) {
	p := sheet("turns of the spring nuts, in from flush", "share of what is wanted")
	w := v.Adjust.Window
	last := max(w.CoilBind.Turns(), w.Low.Turns()+1, w.High.Turns()+1, 1)
	if b := v.Adjust.Budget; b != nil {
		last = max(last, b.Turns.Turns()+0.5)
	}
	last = 2 * math.Ceil(last/2)
	var hold, free plotter.XYs
	for i := range 101 {
		at := units.Turns(last * float64(i) / 100)
		b, err := v.Input.Clutch.At(v.Input.Found, at)
		if err != nil || b.TorqueWanted == 0 || b.LiftWanted == 0 {
			continue // a setting outside the nuts' own thread
		}
		hold = append(hold, plotter.XY{X: at.Turns(), Y: min(b.Torque.Ratio(b.TorqueWanted), most)})
		free = append(free, plotter.XY{X: at.Turns(), Y: min(max(b.Lift.Ratio(b.LiftWanted), 0), most)})
	}
	rows := rowsOf(v.Adjust, last)
	foot := 0.0
	for _, r := range rows {
		foot -= r.tall()
	}
	steps := []func() error{
		func() error {
			if !w.Open() {
				return nil
			}
			return box(p, pale, 0, min(max(w.Low.Turns(), 0), last), 0, min(w.High.Turns(), last), most)
		},
		func() error { return level1(p, last) },
		func() error { return curve(p, hold, full) },
		func() error { return curve(p, free, dashed) },
		func() error { return now(p, v.Adjust.Budget, last, foot) },
		func() error { return strips(p, rows, last) },
	}
	err := collect(steps...)
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, last, foot-0.05, most+0.22
	p.Y.Tick.Marker = shares{}
	return Picture{Name: "clutch-window", Title: "Clutch window. Full: torque it holds; dashed: lift, lever at the bar; 1 is as much as wanted", Finding: windowFinding(v), plot: p, h: vg.Length(60-24*foot) * vg.Millimeter}, err
}

// strip is a row of words with a bar below it from one turn to another.
type strip struct {
	words    []string
	from, to float64
	fill     color.Color
}

func (s strip) tall() float64 { return lineTall*float64(len(s.words)) + barTall + 0.12 }

// rowsOf returns where it holds, where it frees, and what the repairs that open a
// window leave.
func rowsOf(a transmission.Adjustment, last float64) []strip {
	w := a.Window
	rows := []strip{
		{[]string{"holds from " + number(w.Low) + " turns on"}, w.Low.Turns(), last, pale},
		{[]string{"frees up to " + number(w.High) + " turns"}, 0, w.High.Turns(), white},
	}
	for _, r := range append(append([]transmission.Repair(nil), a.Repairs...), a.Pairs...) {
		if len(rows) < 2+repairs && r.Window.Open() {
			rows = append(rows, strip{broken("after: "+r.Text+", "+number(r.Window.Low)+" to "+number(r.Window.High), 50), r.Window.Low.Turns(), r.Window.High.Turns(), dark})
		}
	}
	return rows
}

// strips draws the rows, a bar of no length as a dotted line.
func strips(p *plot.Plot, rows []strip, last float64) error {
	y := -0.08
	for _, r := range rows {
		say(p, 0, y, after, below, r.words...)
		foot := y - lineTall*float64(len(r.words)) - barTall
		from, to := min(max(r.from, 0), last), min(max(r.to, 0), last)
		var err error
		if to > from {
			err = box(p, r.fill, vg.Points(0.8), from, foot, to, foot+barTall)
		} else {
			err = drawn(p, plotter.XYs{{X: 0, Y: foot}, {X: last, Y: foot}}, dotted, vg.Points(0.8))
		}
		if err != nil {
			return err
		}
		y -= r.tall()
	}
	return nil
}

func windowFinding(v job.ClutchResult) string {
	w := v.Adjust.Window
	if w.Open() {
		finding := "Holds and frees from " + number(w.Low) + " to " + number(w.High) + " turns in"
		if b := v.Adjust.Budget; b != nil {
			finding += "; now at " + number(b.Turns)
		}
		return finding
	}
	finding := "No setting both holds and frees"
	if len(v.Adjust.Repairs) > 0 && v.Adjust.Repairs[0].Opens {
		r := v.Adjust.Repairs[0]
		finding += ". " + sentence(r.Text) + ": " + number(r.Window.Low) + " to " + number(r.Window.High) + " turns will"
	}
	return finding
}

func curve(p *plot.Plot, xys plotter.XYs, style int) error {
	if len(xys) == 0 {
		return nil
	}
	return drawn(p, xys, style, vg.Points(2))
}

// level1 draws the line of what is wanted.
func level1(p *plot.Plot, last float64) error {
	return drawn(p, plotter.XYs{{X: 0, Y: 1}, {X: last, Y: 1}}, dotted, vg.Points(1.2))
}

// now draws where the nuts stand, through the curves and all rows, with a cross on
// each curve where it falls short and a dot where it is enough.
func now(p *plot.Plot, b *transmission.Budget, last, foot float64) error {
	if b == nil {
		return nil
	}
	x := b.Turns.Turns()
	across, at := amid, x
	if x < last*0.35 {
		across, at = after, 0
	} else if x > last*0.65 {
		across, at = before, last
	}
	shout(p, at, most+0.03, across, above, "now "+number(b.Turns)+": "+b.Symptoms())
	if err := drawn(p, plotter.XYs{{X: x, Y: foot}, {X: x, Y: most}}, full, vg.Points(0.9)); err != nil {
		return err
	}
	for _, m := range []struct {
		share float64
		short bool
	}{{b.Torque.Ratio(b.TorqueWanted), b.Slips || b.ThinMargin}, {b.Lift.Ratio(b.LiftWanted), b.Drags}} {
		if err := marked(p, x, min(max(m.share, 0), most), m.short); err != nil {
			return err
		}
	}
	return nil
}

func number(a units.Angle) string { return strconv.FormatFloat(a.Turns(), 'f', 1, 64) }

// shares marks the axis beside the curves only.
type shares struct{}

// Ticks returns the marks.
func (shares) Ticks(float64, float64) []plot.Tick {
	return []plot.Tick{{Value: 0, Label: "0"}, {Value: 0.5, Label: "0.5"}, {Value: 1, Label: "1"}, {Value: 1.5, Label: "1.5"}}
}
