package draw

import "unicode/utf8"

// legend says what a kind of line means.
type legend struct{ class, words string }

// legends writes them in rows at the top and returns the height they take.
func (c *canvas) legends(all []legend) float64 {
	x, y := c.left, 12.0
	for _, l := range all {
		const each = 8.8 // of a letter, a wide guess: two in a row must not meet
		wide := 36 + each*float64(utf8.RuneCountInString(l.words)) + 10
		if x > c.left && x+wide-10 > c.width {
			x, y = c.left, y+row
		}
		switch l.class {
		case "ring":
			c.ring(x+15, y)
		case "pale", "dark", "open":
			c.box(l.class, x, y-6, x+30, y+6)
		default:
			c.line(l.class, x, y, x+30, y)
		}
		c.text(x+36, y+5, from, l.words)
		x += wide
	}
	return y + row - 6
}
