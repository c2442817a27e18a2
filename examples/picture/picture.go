// Package picture draws what a bench report found: curves, windows, odds.
//
//	task                                    use
//	every picture a report gives rise to    All
//	one as SVG or PNG                       Picture.SVG, Picture.PNG
//
// Pictures are black on white and read without colour: lines differ by dash, areas
// by shade and outline, and both by the words beside them. Each carries its finding
// in words, over the drawing. They are as wide as a telephone, so that their letters
// are no smaller there than on paper.
//
// Not covered: anything the report does not hold. A picture whose section is
// not in the report is left out.
package picture

import (
	"gonum.org/v1/plot"
	"gonum.org/v1/plot/vg"

	"example.com/benchbook/examples/job"
)

// Picture is one drawing with its finding in words.
type Picture struct {
	Name    string // for a file: "clutch-window"
	Section string // key of the section it belongs to
	Title   string // what is drawn, with the key to its lines
	Finding string // what it shows, in a sentence
	plot    *plot.Plot
	h       vg.Length // without the words over it
}

// All returns the pictures of a report, in the order of its sections.
func All(r job.Report) ([]Picture, error) {
	var all []Picture
	for _, s := range r.Sections {
		var some []Picture
		var err error
		switch v := s.Result.(type) {
		case job.TimingResult:
			some, err = timingPictures(v)
		case job.IgnitionResult:
			some, err = oddsPicture("ignition", "Ignition", v.Verdict.Causes)
		case job.ClutchResult:
			some, err = clutchPictures(v)
		case job.CarburettorResult:
			some, err = carburettorPictures(v)
		case job.RoadResult:
			some, err = roadPictures(v)
		case job.ThreadsResult:
			some, err = threadPictures(v)
		}
		if err != nil {
			return nil, err
		}
		for i := range some {
			some[i].Section = s.Key
		}
		all = append(all, some...)
	}
	return all, nil
}
