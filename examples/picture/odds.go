package picture

import (
	"strconv"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"

	"example.com/benchbook/examples/job"
	"example.com/benchbook/units/measure"
)

// oddsPicture draws a ranking as bars, likeliest on top, down to one per cent.
func oddsPicture(name, title string, r measure.Ranking) ([]Picture, error) {
	p, n, err := oddsPlot(r)
	if err != nil || n == 0 {
		return nil, err
	}
	lead := r.Leader()
	return []Picture{{Name: name + "-odds", Title: title, plot: p, w: wide, h: vg.Length(n)*9*vg.Millimeter + 30*vg.Millimeter,
		Finding: lead.Text + ": " + lead.Words() + ", " + strconv.Itoa(lead.Percent) + " %"}}, nil
}

const mostBars = 5

func oddsPlot(r measure.Ranking) (*plot.Plot, int, error) {
	p := sheet("per cent", "")
	n := 0
	for n < len(r.Odds) && n < mostBars && (n == 0 || r.Odds[n].Percent >= 1) {
		n++
	}
	for i, o := range r.Odds[:n] {
		y := float64(n - i)
		share := 100 * o.Share
		bar, err := area(pale, plotter.XYs{{X: 0, Y: y - 0.1}, {X: share, Y: y - 0.1}, {X: share, Y: y - 0.42}, {X: 0, Y: y - 0.42}})
		if err != nil {
			return nil, 0, err
		}
		bar.LineStyle.Width, bar.LineStyle.Color = vg.Points(0.8), black
		p.Add(bar)
		if err := note(p, 0.5, y, clipped(strconv.Itoa(o.Percent)+" %: "+o.Text, 74), false); err != nil {
			return nil, 0, err
		}
	}
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = 0, 104, 0.4, float64(n)+0.4
	p.HideY()
	return p, n, nil
}

// clipped cuts text at n characters; the table beside the picture has it whole.
func clipped(text string, n int) string {
	if r := []rune(text); len(r) > n {
		return string(r[:n-3]) + "..."
	}
	return text
}

// threadPictures draws the odds of each thread that is not plain.
func threadPictures(r job.ThreadsResult) ([]Picture, error) {
	var all []Picture
	for i, t := range r.Threads {
		where := t.Where
		if where == "" {
			where = "thread " + strconv.Itoa(i+1)
		}
		some, err := oddsPicture("thread-"+strconv.Itoa(i+1), "Thread, "+where+": odds", t.Identification.Causes)
		if err != nil {
			return nil, err
		}
		all = append(all, some...)
	}
	return all, nil
}
