package draw

import (
	"math"

	"example.com/benchbook/examples/internal/lift"
	"example.com/benchbook/examples/job"
)

// Circle draws the events round the crank circle, TDC at the top, turning clockwise:
// as read in full arcs, as specified dashed, inlet outside and exhaust inside. Each
// event is named in its own corner, with a line to it. Width is in CSS pixels. The
// finding is the same in words.
func Circle(v job.TimingResult, width int) (finding, svg string) {
	r := v.Input.Readings
	in, ex := lift.Of(v)
	finding = standings(v)
	c := &canvas{width: float64(max(width, Narrowest))}
	top := c.legends([]legend{{"heavy", "as read"}, {"dash", "as specified"}})
	c.text(0, top+10, from, "inlet "+phase(v.Verdict.Inlet))
	c.text(0, top+10+row, from, "exhaust "+phase(v.Verdict.Exhaust))
	top += 3*row - 4

	o := round{c, c.width / 2, 0, min((c.width/2-12)/outer, 150)}
	o.y = top + 2*row + 8 + (outer+0.04)*o.radius
	for _, a := range []float64{0, 90, 180, 270} {
		x, y := o.at(a, outer+0.06)
		c.line("hair", o.x, o.y, x, y)
	}
	o.turning()
	x, y := o.at(0, outer)
	c.text(x, y-8, middle, "TDC")
	x, y = o.at(180, outer)
	c.text(x, y+row+2, middle, "BDC")

	o.arc("dash", in.Book, outer)
	o.arc("dash", ex.Book, 0.72)
	edge := min(c.width/2, outer*o.radius+20)
	high, low := top+6, o.y+outer*o.radius+row+12
	if in.Read.Known {
		o.arc("heavy", in.Read, 1)
		o.corner(in.Read.Opens, 1, o.x-edge, high, "inlet opens", r.InletOpens.Value().String())
		o.corner(in.Read.Closes, 1, o.x-edge, low, "inlet closes", r.InletCloses.Value().String())
	}
	if ex.Read.Known {
		o.arc("heavy", ex.Read, 0.56)
		o.corner(ex.Read.Closes, 0.56, o.x+edge, high, "exhaust closes", r.ExhaustCloses.Value().String())
		o.corner(ex.Read.Opens, 0.56, o.x+edge, low, "exhaust opens", r.ExhaustOpens.Value().String())
	}
	c.text(o.x+0.86*o.radius, o.y-6, middle, "inlet")
	c.text(o.x-0.76*o.radius, o.y-6, until, "exhaust")
	c.height = low + row + 10
	return finding, c.svg("Timing circle. " + finding)
}

// outer is the outermost arc, the inlet's specified one, over the inlet's as read.
const outer = 1.15

// round is a circle on a canvas.
type round struct {
	*canvas
	x, y, radius float64 // centre in pixels, radius of the inlet as read
}

// at returns the place of a crank angle after TDC, clockwise from the top.
func (o round) at(a, radius float64) (x, y float64) {
	s, cos := math.Sincos(a * math.Pi / 180)
	return o.x + radius*o.radius*s, o.y - radius*o.radius*cos
}

func (o round) arc(class string, l lift.Cam, radius float64) {
	if !l.Known || l.Closes <= l.Opens {
		return
	}
	var xy []float64
	for i := range steps + 1 {
		x, y := o.at(l.Opens+(l.Closes-l.Opens)*float64(i)/steps, radius)
		xy = append(xy, x, y)
	}
	o.line(class, xy...)
	for _, end := range []float64{l.Opens, l.Closes} {
		x0, y0 := o.at(end, radius-0.05)
		x1, y1 := o.at(end, radius+0.05)
		o.line("full", x0, y0, x1, y1)
	}
}

// corner names an event at the edge of the paper and draws a line to it.
func (o round) corner(event, radius, x, y float64, name, place string) {
	anchor, inward := from, 40.0
	if x > o.x {
		anchor, inward = until, -40
	}
	c := o.canvas
	ex, ey := o.at(event, radius)
	foot := y + row + 5
	if y > o.y {
		foot = y - row + 4
	}
	c.line("thin", ex, ey, x+inward, foot)
	c.text(x, y, anchor, name)
	c.text(x, y+row, anchor, place)
}

// turning shows which way the crank turns.
func (o round) turning() {
	var xy []float64
	for a := -60.0; a <= 50; a += 10 {
		x, y := o.at(a, 0.25)
		xy = append(xy, x, y)
	}
	o.line("axis", xy...)
	x0, y0 := o.at(75, 0.25)
	x1, y1 := o.at(48, 0.32)
	x2, y2 := o.at(48, 0.18)
	o.area("black", x0, y0, x1, y1, x2, y2)
}
