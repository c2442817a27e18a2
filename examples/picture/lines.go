package picture

import (
	"image/color"
	"strings"

	"gonum.org/v1/plot"
	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/plotter"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
)

var (
	black = color.Gray{0}
	dark  = color.Gray{70}
	grey  = color.Gray{150}
	pale  = color.Gray{215}
	white = color.Gray{255}
)

// Line styles.
const (
	full = iota
	dashed
	dotted
)

// sheet returns an empty plot in the style of all pictures.
func sheet(x, y string) *plot.Plot {
	p := plot.New()
	p.X.Label.Text, p.Y.Label.Text = x, y
	for _, s := range []*font.Font{&p.X.Label.TextStyle.Font, &p.Y.Label.TextStyle.Font} {
		*s = sans(usual, false)
	}
	p.X.Tick.Label.Font, p.Y.Tick.Label.Font = sans(smallest, false), sans(smallest, false)
	p.X.Padding, p.Y.Padding = vg.Points(2), vg.Points(2)
	p.X.Tick.Length, p.Y.Tick.Length = vg.Points(4), vg.Points(4)
	return p
}

func grid(p *plot.Plot) {
	g := plotter.NewGrid()
	g.Vertical.Color, g.Horizontal.Color = pale, pale
	p.Add(g)
}

// drawn adds a plain, dashed or dotted line to the plot.
func drawn(p *plot.Plot, xys plotter.XYs, style int, width vg.Length) error {
	l, err := plotter.NewLine(xys)
	if err != nil {
		return err
	}
	l.Color, l.Width = black, width
	l.Dashes = [][]vg.Length{nil, {vg.Points(5), vg.Points(3)}, {vg.Points(1.5), vg.Points(2)}}[style]
	p.Add(l)
	return nil
}

// area adds a filled polygon, with an outline if it is wide enough to be seen.
func area(p *plot.Plot, fill color.Color, outline vg.Length, xys plotter.XYs) error {
	a, err := plotter.NewPolygon(xys)
	if err != nil {
		return err
	}
	a.Color, a.LineStyle.Width, a.LineStyle.Color = fill, outline, black
	p.Add(a)
	return nil
}

func box(p *plot.Plot, fill color.Color, outline vg.Length, x0, y0, x1, y1 float64) error {
	return area(p, fill, outline, plotter.XYs{{X: x0, Y: y0}, {X: x1, Y: y0}, {X: x1, Y: y1}, {X: x0, Y: y1}})
}

// rings adds readings as small open circles.
func rings(p *plot.Plot, xys plotter.XYs) error {
	s, err := plotter.NewScatter(xys)
	if err != nil {
		return err
	}
	s.GlyphStyle = draw.GlyphStyle{Color: black, Radius: vg.Points(2.2), Shape: draw.RingGlyph{}}
	p.Add(s)
	return nil
}

// marked puts a cross where something falls short, a dot where it is enough.
func marked(p *plot.Plot, x, y float64, short bool) error {
	s, err := plotter.NewScatter(plotter.XYs{{X: x, Y: y}})
	if err != nil {
		return err
	}
	s.GlyphStyle = draw.GlyphStyle{Color: black, Radius: vg.Points(4.5), Shape: draw.CircleGlyph{}}
	if short {
		s.GlyphStyle.Shape = heavyCross{}
	}
	p.Add(s)
	return nil
}

// heavyCross is seen across a bench, which the plotting package's own is not.
type heavyCross struct{}

// DrawGlyph draws it.
func (heavyCross) DrawGlyph(c *draw.Canvas, style draw.GlyphStyle, at vg.Point) {
	c.SetLineStyle(draw.LineStyle{Color: style.Color, Width: vg.Points(2.2)})
	for _, up := range []vg.Length{1, -1} {
		var p vg.Path
		p.Move(vg.Point{X: at.X - style.Radius, Y: at.Y - up*style.Radius})
		p.Line(vg.Point{X: at.X + style.Radius, Y: at.Y + up*style.Radius})
		c.Stroke(p)
	}
}

// words is a piece of writing at a place of the plot, on white, so that no line
// runs through it. Lines of it are parted by "\n".
type words struct {
	x, y  float64
	text  string
	style text.Style
}

// How writing lies to its place.
const (
	after  = text.XAlignment(text.XLeft)
	amid   = text.XAlignment(text.XCenter)
	before = text.XAlignment(text.XRight)
	above  = text.YAlignment(text.YBottom)
	level  = text.YAlignment(text.YCenter)
	below  = text.YAlignment(text.YTop)
)

// Plot draws the writing.
func (w words) Plot(c draw.Canvas, p *plot.Plot) {
	x, y := p.Transforms(&c)
	at := vg.Point{X: x(w.x), Y: y(w.y)}
	r := w.style.Rectangle(w.text).Add(at)
	pad := vg.Points(1)
	c.SetColor(white)
	c.Fill(vg.Rectangle{Min: vg.Point{X: r.Min.X - pad, Y: r.Min.Y}, Max: vg.Point{X: r.Max.X + pad, Y: r.Max.Y}}.Path())
	c.FillText(w.style, at, w.text)
}

// say writes at a place of the plot.
func say(p *plot.Plot, x, y float64, across text.XAlignment, up text.YAlignment, lines ...string) {
	style := lettering(smallest, false)
	style.XAlign, style.YAlign = across, up
	p.Add(words{x, y, strings.Join(lines, "\n"), style})
}

// shout is say in heavy type.
func shout(p *plot.Plot, x, y float64, across text.XAlignment, up text.YAlignment, lines ...string) {
	style := lettering(usual, true)
	style.XAlign, style.YAlign = across, up
	p.Add(words{x, y, strings.Join(lines, "\n"), style})
}

// arrow draws a level arrow.
func arrow(p *plot.Plot, from, to, y, barb, half float64) error {
	if to < from {
		barb = -barb
	}
	if err := drawn(p, plotter.XYs{{X: from, Y: y}, {X: to - barb/2, Y: y}}, full, vg.Points(1.4)); err != nil {
		return err
	}
	return area(p, black, 0, plotter.XYs{{X: to, Y: y}, {X: to - barb, Y: y + half}, {X: to - barb, Y: y - half}})
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

// sentence is text with a capital letter.
func sentence(text string) string {
	if text == "" {
		return ""
	}
	return strings.ToUpper(text[:1]) + text[1:]
}
