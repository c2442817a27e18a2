package picture

import (
	"strconv"

	"gonum.org/v1/plot/vg"

	"example.com/benchbook/examples/job"
	"example.com/benchbook/units/measure"
)

// mostBars is how many causes are drawn.
const mostBars = 5

// oddsPicture draws a ranking as bars, likeliest on top and dark, down to one per
// cent, each under its cause.
func oddsPicture(name, title string, r measure.Ranking) ([]Picture, error) {
	n := 0
	for n < len(r.Odds) && n < mostBars && (n == 0 || r.Odds[n].Percent >= 1) {
		n++
	}
	if n == 0 {
		return nil, nil
	}
	p := sheet("per cent", "")
	p.HideY()
	y := 0.0 // downwards, in lines of lettering
	for i, o := range r.Odds[:n] {
		lines := broken(strconv.Itoa(o.Percent)+" %: "+o.Text, 52)
		if i == 0 {
			lines = broken(strconv.Itoa(o.Percent)+" %: "+o.Text, 44)
			shout(p, 0, -y, after, below, lines...)
		} else {
			say(p, 0, -y, after, below, lines...)
		}
		y += float64(len(lines)) + 0.2
		fill := pale
		if i == 0 {
			fill = dark
		}
		if err := box(p, fill, vg.Points(0.8), 0, -y, max(100*o.Share, 0.4), -y-0.6); err != nil {
			return nil, err
		}
		y += 1.2
	}
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = -3, 104, -y, 0.1
	lead := r.Leader()
	return []Picture{{Name: name + "-odds", Title: title + ": odds of each cause", plot: p, h: vg.Points(12*y) + 12*vg.Millimeter,
		Finding: sentence(lead.Text + ", " + lead.Words())}}, nil
}

// threadPictures draws the odds of each thread.
func threadPictures(r job.ThreadsResult) ([]Picture, error) {
	var all []Picture
	for i, t := range r.Threads {
		where := t.Where
		if where == "" {
			where = "thread " + strconv.Itoa(i+1)
		}
		some, err := oddsPicture("thread-"+strconv.Itoa(i+1), "Thread, "+where, t.Identification.Causes)
		if err != nil {
			return nil, err
		}
		all = append(all, some...)
	}
	return all, nil
}
