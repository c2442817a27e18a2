package picture

import (
	"strconv"
	"strings"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"

	"example.com/benchbook/examples/job"
	"example.com/benchbook/units/measure"
)

// mostBars is how many causes are drawn.
const mostBars = 5

// oddsPicture draws a ranking as bars, likeliest on top and dark, down to one per
// cent, each under its cause.
func oddsPicture(name, title string, r measure.Ranking) ([]Picture, error) {
	if len(r.Odds) == 0 {
		return nil, nil
	}
	b := newBars()
	if err := b.of(r, mostBars); err != nil {
		return nil, err
	}
	lead := r.Leader()
	return b.picture(name+"-odds", title+": odds of each cause", sentence(lead.Text+", "+lead.Words())), nil
}

// threadPictures draws the odds of all threads on one paper.
func threadPictures(r job.ThreadsResult) ([]Picture, error) {
	b := newBars()
	var surest []string
	for i, t := range r.Threads {
		odds := t.Identification.Causes
		if len(odds.Odds) == 0 {
			continue
		}
		where := t.Where
		if where == "" {
			where = "thread " + strconv.Itoa(i+1)
		}
		b.heading(where)
		if err := b.of(odds, mostThreads); err != nil {
			return nil, err
		}
		lead := odds.Leader()
		surest = append(surest, lead.Text+", "+lead.Words())
	}
	if len(surest) == 0 {
		return nil, nil
	}
	return b.picture("threads-odds", "Threads: odds of each", sentence(strings.Join(surest, "; "))), nil
}

// mostThreads is how many are drawn of each thread.
const mostThreads = 3

// bars is a paper that fills with bars from the top; y is in lines of lettering.
type bars struct {
	plot *plot.Plot
	y    float64
}

func newBars() *bars {
	b := &bars{plot: sheet("per cent", "")}
	b.plot.HideY()
	return b
}

func (b *bars) heading(text string) {
	say(b.plot, 0, -b.y, after, below, broken(text, 52)...)
	b.y += float64(len(broken(text, 52))) + 0.2
}

// of adds the bars of a ranking, so many at most.
func (b *bars) of(r measure.Ranking, most int) error {
	for i, o := range r.Odds {
		if i == most || i > 0 && o.Percent < 1 {
			break
		}
		text, fill := strconv.Itoa(o.Percent)+" %: "+o.Text, pale
		lines := broken(text, 52)
		if i == 0 {
			fill, lines = dark, broken(text, 44)
			shout(b.plot, 0, -b.y, after, below, lines...)
		} else {
			say(b.plot, 0, -b.y, after, below, lines...)
		}
		b.y += float64(len(lines)) + 0.2
		if err := box(b.plot, fill, vg.Points(0.8), 0, -b.y, max(100*o.Share, 0.4), -b.y-0.6); err != nil {
			return err
		}
		b.y += 1.2
	}
	return nil
}

func (b *bars) picture(name, title, finding string) []Picture {
	p := b.plot
	p.X.Min, p.X.Max, p.Y.Min, p.Y.Max = -3, 104, -b.y, 0.1
	return []Picture{{Name: name, Title: title, Finding: finding, plot: p, h: vg.Points(12*b.y) + 12*vg.Millimeter}}
}
