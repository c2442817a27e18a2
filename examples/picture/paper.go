package picture

import (
	"bytes"
	"html"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"gonum.org/v1/plot/font"
	"gonum.org/v1/plot/text"
	"gonum.org/v1/plot/vg"
	"gonum.org/v1/plot/vg/draw"
	"gonum.org/v1/plot/vg/vgimg"
	"gonum.org/v1/plot/vg/vgsvg"
)

// A page on a telephone 360 CSS pixels wide leaves a picture some 330 of them, which
// shrinks points by 330/283: the smallest letters, of 9 points, stay above 10 pixels.
const (
	wide     = 100 * vg.Millimeter
	tall     = 76 * vg.Millimeter
	smallest = 9
	usual    = 10
)

func sans(size vg.Length, bold bool) font.Font {
	f := font.Font{Typeface: "Liberation", Variant: "Sans", Size: size}
	if bold {
		f.Weight = 3 // bold, on the scale of golang.org/x/image/font
	}
	return f
}

func lettering(size vg.Length, bold bool) text.Style {
	return text.Style{Color: black, Font: sans(size, bold), Handler: text.Plain{Fonts: font.DefaultCache}}
}

// headed is the height of the words over the drawing, and draws them.
func (p Picture) headed(c *draw.Canvas) vg.Length {
	y := vg.Length(2 * vg.Millimeter)
	for i, words := range []string{p.Finding, p.Title} {
		style, letters := lettering(11, true), 46
		if i == 1 {
			style, letters = lettering(usual, false), 54
		}
		for _, line := range broken(words, letters) {
			if c != nil {
				style.YAlign = text.YTop
				c.FillText(style, vg.Point{X: c.Min.X + 2*vg.Millimeter, Y: c.Max.Y - y}, line)
			}
			y += style.Font.Size * 1.2
		}
	}
	return y + 2*vg.Millimeter
}

// on draws the picture on a canvas, with the words over it if they are wanted.
func (p Picture) on(canvas vg.CanvasSizer, words bool) {
	c := draw.New(canvas)
	if words {
		c = draw.Crop(c, 0, 0, 0, -p.headed(&c))
	}
	if p.plot.Y.Label.Text != "" { // which would else stand on the very edge
		c = draw.Crop(c, 1.2*vg.Millimeter, 0, 0, 0)
	}
	p.plot.Draw(c)
}

// broken breaks text between words into lines of at most n characters.
func broken(text string, n int) []string {
	lines := []string{""}
	for word := range strings.FieldsSeq(text) {
		last := &lines[len(lines)-1]
		if *last != "" && utf8.RuneCountInString(*last)+1+utf8.RuneCountInString(word) > n {
			lines = append(lines, word)
			continue
		}
		*last = strings.TrimPrefix(*last+" "+word, " ")
	}
	return lines
}

// SVG returns the picture as an SVG document, finding and title over it.
func (p Picture) SVG() ([]byte, error) { return p.svg(true) }

// Inline returns the picture as an SVG element to stand inside a page: without
// the document's prologue and without its title and finding, which the page has
// in its own words and which name it for those who cannot see it.
func (p Picture) Inline() ([]byte, error) {
	b, err := p.svg(false)
	if err != nil {
		return nil, err
	}
	name := strings.NewReplacer("&", "&amp;", "<", "&lt;", `"`, "&quot;").Replace(p.Finding + ". " + p.Title)
	b = b[max(bytes.Index(b, []byte("<svg")), 0):]
	return bytes.Replace(b, []byte("<svg "), []byte(`<svg role="img" aria-label="`+name+`" `), 1), nil
}

func (p Picture) svg(words bool) ([]byte, error) {
	h := p.h
	if words {
		h += p.headed(nil)
	}
	c := vgsvg.NewWith(vgsvg.UseWH(wide, h))
	p.on(c, words)
	var b bytes.Buffer
	_, err := c.WriteTo(&b)
	return fitted(b.Bytes()), err
}

// PNG returns the picture as a PNG file at 200 dots to the inch, finding and title
// over it.
func (p Picture) PNG() ([]byte, error) {
	c := vgimg.PngCanvas{Canvas: vgimg.NewWith(vgimg.UseWH(wide, p.h+p.headed(nil)), vgimg.UseDPI(200))}
	p.on(c, true)
	var b bytes.Buffer
	_, err := c.WriteTo(&b)
	return b.Bytes(), err
}

// written is one piece of text as the SVG canvas writes it.
var written = regexp.MustCompile(`(?s)<text (x="[^"]*" y="[^"]*" transform="[^"]*")\s*style="font-family:Liberation Sans;([^"]*)font-size:([0-9.]+)px">([^<]*)</text>`)

// fitted names other sans serif faces for a reader who has not got this one, and
// gives each piece of text the length it has in this one, so that in whichever face
// it is set it ends where the drawing expects it to.
func fitted(svg []byte) []byte {
	return written.ReplaceAllFunc(svg, func(piece []byte) []byte {
		m := written.FindSubmatch(piece)
		size, err := strconv.ParseFloat(string(m[3]), 64)
		if err != nil {
			return piece
		}
		face := font.DefaultCache.Lookup(sans(vg.Points(size), bytes.Contains(m[2], []byte("bold"))), vg.Points(size))
		length := strconv.FormatFloat(face.Width(html.UnescapeString(string(m[4]))).Points(), 'f', 2, 64)
		return []byte("<text " + string(m[1]) + ` textLength="` + length + `" lengthAdjust="spacingAndGlyphs" style="font-family:Liberation Sans,Arial,Helvetica,sans-serif;` +
			string(m[2]) + "font-size:" + string(m[3]) + `px">` + string(m[4]) + "</text>")
	})
}
