package draw

import "strconv"

// canvas gathers SVG text. Lengths are CSS pixels.
type canvas struct {
	b             []byte
	width, height float64
	// The part that is plotted, and what its edges stand for.
	left, right, top, bottom float64
	x0, x1, y0, y1           float64
}

// letter is the size of all lettering, and perLetter its mean width, by which
// lines are broken; a wide guess, so that lines end too soon rather than late.
const (
	letter    = 14
	perLetter = 7.4
	row       = 19 // from one line of lettering to the next
)

func (c *canvas) x(v float64) float64 { return c.left + (v-c.x0)/(c.x1-c.x0)*(c.right-c.left) }
func (c *canvas) y(v float64) float64 { return c.bottom - (v-c.y0)/(c.y1-c.y0)*(c.bottom-c.top) }

func (c *canvas) raw(s string) { c.b = append(c.b, s...) }

// n appends a length to a tenth of a pixel.
func (c *canvas) n(v float64) { c.b = strconv.AppendFloat(c.b, v, 'f', 1, 64) }

func (c *canvas) attr(name string, v float64) {
	c.raw(" " + name + `="`)
	c.n(v)
	c.raw(`"`)
}

// line joins points already in pixels. Class is one of the page's: "full",
// "dash", "hair", "axis".
func (c *canvas) line(class string, xy ...float64) { c.poly("polyline", class, xy) }

func (c *canvas) area(class string, xy ...float64) { c.poly("polygon", class, xy) }

func (c *canvas) poly(kind, class string, xy []float64) {
	if len(xy) < 4 {
		return
	}
	c.raw("<" + kind + ` class="` + class + `" points="`)
	for i, v := range xy {
		if i > 0 {
			c.raw(" ")
		}
		c.n(v)
	}
	c.raw(`"/>`)
}

func (c *canvas) box(class string, x0, y0, x1, y1 float64) {
	c.area(class, x0, y0, x1, y0, x1, y1, x0, y1)
}

// ring is a reading.
func (c *canvas) ring(x, y float64) {
	c.raw(`<circle class="ring"`)
	c.attr("cx", x)
	c.attr("cy", y)
	c.raw(` r="3"/>`)
}

// mark puts a cross where something falls short, a dot where it is enough.
func (c *canvas) mark(x, y float64, short bool) {
	const arm = 7
	if short {
		c.line("cross", x-arm, y-arm, x+arm, y+arm)
		c.line("cross", x-arm, y+arm, x+arm, y-arm)
		return
	}
	c.raw(`<circle class="dot"`)
	c.attr("cx", x)
	c.attr("cy", y)
	c.raw(` r="5"/>`)
}

// Where text lies to its point.
const (
	from   = "start"
	middle = "middle"
	until  = "end"
)

func (c *canvas) text(x, y float64, anchor, s string) {
	c.raw("<text")
	c.attr("x", x)
	c.attr("y", y)
	c.raw(` text-anchor="` + anchor + `">`)
	c.b = appendEscaped(c.b, s)
	c.raw("</text>")
}

// svg closes the drawing; words is what a reader hears who cannot look.
func (c *canvas) svg(words string) string {
	out := canvas{b: make([]byte, 0, len(c.b)+300)}
	out.raw(`<svg xmlns="http://www.w3.org/2000/svg" role="img"`)
	out.attr("width", c.width)
	out.attr("height", c.height)
	out.raw(` viewBox="0 0 `)
	out.n(c.width)
	out.raw(" ")
	out.n(c.height)
	out.raw(`" font-size="` + strconv.Itoa(letter) + `"><title>`)
	out.b = appendEscaped(out.b, words)
	out.raw("</title>")
	out.b = append(out.b, c.b...)
	out.raw("</svg>")
	return string(out.b)
}

func appendEscaped(b []byte, s string) []byte {
	for i := range len(s) {
		switch s[i] {
		case '<':
			b = append(b, "&lt;"...)
		case '>':
			b = append(b, "&gt;"...)
		case '&':
			b = append(b, "&amp;"...)
		case '"':
			b = append(b, "&quot;"...)
		default:
			b = append(b, s[i])
		}
	}
	return b
}
