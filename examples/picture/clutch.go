package picture

import (
	"strconv"
	"strings"

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
	odds, err := oddsPicture("clutch", "Clutch: odds", v.Diagnose.Causes)
	return append([]Picture{window}, odds...), err
}

// windowPicture draws torque and lift over the turns of the spring nuts, each as
// a share of what is wanted: above the line at 1 it holds, or frees.
func windowPicture(v job.ClutchResult) (Picture, error) {
	p := sheet("turns in from flush", "share of what is wanted")
	w := v.Adjust.Window
	last := max(w.CoilBind.Turns(), w.Low.Turns()+1, 1)
	var hold, free plotter.XYs
	for i := range 101 {
		at := units.Turns(last * float64(i) / 100)
		b, err := v.Input.Clutch.At(v.Input.Found, at)
		if err != nil || b.TorqueWanted == 0 || b.LiftWanted == 0 {
			continue // a setting outside the springs' own range
		}
		hold = append(hold, plotter.XY{X: at.Turns(), Y: b.Torque.Ratio(b.TorqueWanted)})
		free = append(free, plotter.XY{X: at.Turns(), Y: b.Lift.Ratio(b.LiftWanted)})
	}
	top := 1.6
	curve := func(xys plotter.XYs, style int, words string) func() error {
		return func() error {
			if len(xys) == 0 {
				return nil
			}
			l, err := line(xys, style, vg.Points(1.8))
			if err != nil {
				return err
			}
			p.Add(l)
			if style == 0 { // below the rising line, above the falling one
				at := xys[len(xys)/3]
				return note(p, at.X+last*0.02, at.Y-0.09, words, false)
			}
			return note(p, xys[0].X+last*0.02, xys[0].Y+0.06, words, false)
		}
	}
	upright := func(x float64, style int, words string, y float64) func() error {
		return func() error {
			l, err := line(plotter.XYs{{X: x, Y: 0}, {X: x, Y: top}}, style, vg.Points(1))
			if err != nil {
				return err
			}
			p.Add(l)
			return note(p, x+last*0.01, y, words, false)
		}
	}
	shade := func(w transmission.Window, bottom, height float64, words string) func() error {
		return func() error {
			lo, hi := w.Low.Turns(), w.High.Turns()
			if !w.Open() {
				return nil
			}
			a, err := area(pale, plotter.XYs{{X: lo, Y: bottom}, {X: hi, Y: bottom}, {X: hi, Y: bottom + height}, {X: lo, Y: bottom + height}})
			if err != nil {
				return err
			}
			p.Add(a)
			return note(p, lo, bottom+height/2-0.02, words, true)
		}
	}
	one := func() error {
		l, err := line(plotter.XYs{{X: 0, Y: 1}, {X: last, Y: 1}}, 2, vg.Points(1))
		if err == nil {
			p.Add(l)
		}
		return err
	}
	steps := []func() error{shade(w, 0, top, "the window"), one, curve(hold, 0, "torque it holds (full)"), curve(free, 1, "lift with the lever at the bar (dashed)")}
	bar := 0.06
	for i, r := range append(v.Adjust.Repairs, v.Adjust.Pairs...) {
		if i == 3 {
			break
		}
		steps = append(steps, shade(r.Window, bar, 0.1, repairWords(r.Key, r.Text)))
		bar += 0.14
	}
	if b := v.Adjust.Budget; b != nil {
		steps = append(steps, upright(b.Turns.Turns(), 0, "now: "+standing(*b), top*0.94))
	}
	err := collect(steps...)
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, last, 0, top
	finding := "no setting both holds and frees"
	if w.Open() {
		finding = "holds and frees from " + number(w.Low) + " to " + number(w.High) + " turns"
	} else if len(v.Adjust.Repairs) > 0 && v.Adjust.Repairs[0].Opens {
		r := v.Adjust.Repairs[0]
		finding += "; " + r.Text + " opens " + number(r.Window.Low) + " to " + number(r.Window.High) + " turns"
	}
	return Picture{Name: "clutch-window", Title: "Clutch window", Finding: finding, plot: p, w: wide, h: 80 * vg.Millimeter}, err
}

func number(a units.Angle) string { return strconv.FormatFloat(a.Turns(), 'f', 1, 64) }

func standing(b transmission.Budget) string {
	switch {
	case b.Slips && b.Drags:
		return "slips and drags"
	case b.Slips:
		return "slips"
	case b.Drags:
		return "drags"
	}
	return "holds and frees"
}

// repairWords names a repair in as few words as fit beside its window.
func repairWords(key, text string) string {
	if len(text) > 44 {
		text = strings.ReplaceAll(key, "-", " ")
	}
	return "after: " + text + " "
}
