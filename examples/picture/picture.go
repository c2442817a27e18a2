// Package picture draws what a bench report found: curves, windows, odds.
//
//	task                                    use
//	every picture a report gives rise to    All
//	one as SVG or PNG                       Picture.SVG, Picture.PNG
//
// Pictures are black on white and read without colour: lines differ by dash and
// by the words beside them. Each carries its finding in words.
//
// Not covered: anything the report does not hold. A picture whose section is
// not in the report is left out.
package picture

import (
	"bytes"
	"image/color"
	"strings"
	"unicode/utf8"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgimg"
	"gonum.org/v1/plot/vg/vgsvg"

	"example.com/benchbook/examples/job"
)

// Picture is one drawing with its finding in words.
type Picture struct {
	Name    string // for a file: "clutch-window"
	Section string // key of the section it belongs to
	Title   string
	Finding string // what it shows, in a sentence
	plot    *plot.Plot
	w, h    vg.Length
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
			some, err = oddsPicture("ignition", "Ignition: odds", v.Verdict.Causes)
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

// titled puts title and finding over the drawing, so that a picture by itself
// says what it shows.
func (p Picture) titled(on bool) *plot.Plot {
	p.plot.Title.Text = ""
	if on {
		p.plot.Title.Text = p.Title + "\n" + strings.Join(broken(p.Finding, 68), "\n")
	}
	return p.plot
}

// broken breaks text between words into lines of at most n characters.
func broken(text string, n int) []string {
	lines := []string{""}
	for _, word := range strings.Fields(text) {
		last := &lines[len(lines)-1]
		if *last != "" && utf8.RuneCountInString(*last)+1+utf8.RuneCountInString(word) > n {
			lines = append(lines, word)
			continue
		}
		*last = strings.TrimPrefix(*last+" "+word, " ")
	}
	return lines
}

// SVG returns the picture as an SVG document.
func (p Picture) SVG() ([]byte, error) { return p.svg(p.titled(true)) }

// Inline returns the picture as an SVG element to stand inside a page: without
// the document's prologue and without its title and finding, which the page has
// in its own words and which name it for those who cannot see it.
func (p Picture) Inline() ([]byte, error) {
	b, err := p.svg(p.titled(false))
	if err != nil {
		return nil, err
	}
	name := strings.NewReplacer("&", "&amp;", "<", "&lt;", `"`, "&quot;").Replace(p.Title + ": " + p.Finding)
	b = b[max(bytes.Index(b, []byte("<svg")), 0):]
	return bytes.Replace(b, []byte("<svg "), []byte(`<svg role="img" aria-label="`+name+`" `), 1), nil
}

func (p Picture) svg(on *plot.Plot) ([]byte, error) {
	c := vgsvg.NewWith(vgsvg.UseWH(p.w, p.h))
	on.Draw(draw.New(c))
	var b bytes.Buffer
	_, err := c.WriteTo(&b)
	// another sans serif face where this one is not installed
	return bytes.ReplaceAll(b.Bytes(), []byte("font-family:Liberation Sans"), []byte("font-family:Liberation Sans,Arial,Helvetica,sans-serif")), err
}

// PNG returns the picture as a PNG file at 144 dots to the inch.
func (p Picture) PNG() ([]byte, error) {
	c := vgimg.PngCanvas{Canvas: vgimg.NewWith(vgimg.UseWH(p.w, p.h), vgimg.UseDPI(144))}
	p.titled(true).Draw(draw.New(c))
	var b bytes.Buffer
	_, err := c.WriteTo(&b)
	return b.Bytes(), err
}

const (
	wide = 130 * vg.Millimeter // still read when a phone shrinks it
	tall = 75 * vg.Millimeter
)

var (
	black = color.Gray{0}
	grey  = color.Gray{130}
	pale  = color.Gray{215}
)

// sheet returns an empty plot in the style of all pictures.
func sheet(x, y string) *plot.Plot {
	p := plot.New()
	p.X.Label.Text, p.Y.Label.Text = x, y
	sans := font.Font{Typeface: "Liberation", Variant: "Sans", Size: 10}
	for _, s := range []*font.Font{&p.Title.TextStyle.Font, &p.X.Label.TextStyle.Font, &p.Y.Label.TextStyle.Font,
		&p.X.Tick.Label.Font, &p.Y.Tick.Label.Font, &p.Legend.TextStyle.Font} {
		*s = sans
	}
	p.Title.TextStyle.Font.Size = 11
	p.X.Tick.Label.Font.Size, p.Y.Tick.Label.Font.Size = 9, 9
	p.Title.Padding = 3 * vg.Millimeter
	return p
}

// line is a plain, dashed or dotted line by its style number.
func line(xys plotter.XYs, style int, width vg.Length) (*plotter.Line, error) {
	l, err := plotter.NewLine(xys)
	if err != nil {
		return nil, err
	}
	l.Color, l.Width = black, width
	l.Dashes = [][]vg.Length{nil, {vg.Points(5), vg.Points(3)}, {vg.Points(1.5), vg.Points(2)}}[style]
	return l, nil
}

// drawn adds a line to the plot.
func drawn(p *plot.Plot, xys plotter.XYs, style int, width vg.Length) error {
	l, err := line(xys, style, width)
	if err == nil {
		p.Add(l)
	}
	return err
}

// area is a filled polygon without an outline.
func area(fill color.Color, xys plotter.XYs) (*plotter.Polygon, error) {
	a, err := plotter.NewPolygon(xys)
	if err != nil {
		return nil, err
	}
	a.Color, a.LineStyle.Width = fill, 0
	return a, nil
}

// note writes words at a place of the plot.
func note(p *plot.Plot, x, y float64, text string, right bool) error {
	l, err := plotter.NewLabels(plotter.XYLabels{XYs: plotter.XYs{{X: x, Y: y}}, Labels: []string{text}})
	if err != nil {
		return err
	}
	l.TextStyle[0].Font = font.Font{Typeface: "Liberation", Variant: "Sans", Size: 9}
	if right {
		l.TextStyle[0].XAlign = -1
	}
	p.Add(l)
	return nil
}

// collect runs steps until one fails.
func collect(steps ...func() error) error {
	for _, s := range steps {
		if err := s(); err != nil {
			return err
		}
	}
	return nil
}
