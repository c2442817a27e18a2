package draw

import (
	"math"
	"strconv"
	"strings"

	"example.com/benchbook/examples/job"
	"example.com/benchbook/transmission"
	"example.com/benchbook/units"
)

// Narrowest is the least width of a picture in CSS pixels; a lesser one is
// drawn at this.
const Narrowest = 280

// repairsShown is how many repairs have a row.
const repairsShown = 3

// Window draws, over the turns of the spring nuts, the torque the clutch holds
// and the lift it gives, each as a share of what is wanted; below them where it
// holds, where it frees, and the window each repair would leave. An upright line
// marks where the nuts stand. Width is in CSS pixels. The finding is the same in
// words.
func Window(v job.ClutchResult, width int) (finding, svg string) {
	finding = windowFinding(v.Adjust)
	w := v.Adjust.Window
	last := max(w.CoilBind.Turns(), w.Low.Turns()+1, w.High.Turns()+1, 1)
	if b := v.Adjust.Budget; b != nil {
		last = max(last, b.Turns.Turns()+0.5)
	}
	last = 2 * math.Ceil(last/2) // so that the scale seldom jumps while a reading moves
	c := &canvas{width: float64(max(width, Narrowest)), x1: last, y1: 1.6}
	c.left, c.right = 34, c.width-12

	c.line("full", c.left, 12, c.left+30, 12)
	c.text(c.left+36, 17, from, "torque it holds")
	c.line("dash", c.left, 12+row, c.left+30, 12+row)
	c.text(c.left+36, 17+row, from, "lift, lever at the bar")
	c.line("axis", c.left, 12+2*row, c.left+30, 12+2*row)
	c.text(c.left+36, 17+2*row, from, "1.0: as much as wanted")
	c.top, c.bottom = 3*row+30, 3*row+30+190
	if w.Open() { // where it holds and where it frees
		c.box("pale", c.x(min(max(w.Low.Turns(), 0), last)), c.top, c.x(min(max(w.High.Turns(), 0), last)), c.bottom)
	}
	for _, share := range []float64{0, 0.5, 1, 1.5} {
		class := "hair"
		if share == 1 {
			class = "axis"
		}
		c.line(class, c.left, c.y(share), c.right, c.y(share))
		c.text(c.left-6, c.y(share)+5, until, strconv.FormatFloat(share, 'f', 1, 64))
	}
	c.budgets(v, last)
	rows := rowsOf(v.Adjust, last)
	y := c.bottom + 14
	for _, r := range rows {
		y += c.tall(r)
	}
	if b := v.Adjust.Budget; b != nil {
		at := c.x(b.Turns.Turns())
		c.line("now", at, c.top-6, at, y)
		c.mark(at, c.y(min(max(b.Torque.Ratio(b.TorqueWanted), c.y0), c.y1)), b.Slips || b.ThinMargin)
		c.mark(at, c.y(min(max(b.Lift.Ratio(b.LiftWanted), c.y0), c.y1)), b.Drags)
		anchor := middle
		if at < c.left+110 {
			anchor, at = from, c.left
		} else if at > c.right-110 {
			anchor, at = until, c.right
		}
		c.text(at, c.top-10, anchor, "now "+turns(b.Turns)+": "+b.Symptoms())
	}
	y = c.bottom + 14
	for _, r := range rows { // over the upright, so that their letters stay clear
		y = c.bar(y, r)
	}
	c.turnsAxis(y, last)
	c.height = y + 2*row + 6
	return finding, c.svg("Clutch window. " + finding)
}

// steps is how many points a curve has.
const steps = 60

func (c *canvas) budgets(v job.ClutchResult, last float64) {
	var hold, free []float64
	for i := range steps + 1 {
		at := units.Turns(last * float64(i) / steps)
		b, err := v.Input.Clutch.At(v.Input.Found, at)
		if err != nil || b.TorqueWanted == 0 || b.LiftWanted == 0 {
			continue // outside the nuts' own thread
		}
		x := c.x(at.Turns())
		hold = append(hold, x, c.y(min(max(b.Torque.Ratio(b.TorqueWanted), c.y0), c.y1)))
		free = append(free, x, c.y(min(max(b.Lift.Ratio(b.LiftWanted), c.y0), c.y1)))
	}
	c.line("full", hold...)
	c.line("dash", free...)
}

// strip is a row of words with a bar below it from one turn to another.
type strip struct {
	class    string
	from, to float64
	words    string
}

// rowsOf returns where it holds, where it frees, and what the repairs that open
// a window leave; the best one also if it does not.
func rowsOf(a transmission.Adjustment, last float64) []strip {
	w := a.Window
	rows := []strip{
		{"pale", w.Low.Turns(), last, "holds from " + turns(w.Low) + " on"},
		{"open", 0, w.High.Turns(), "frees up to " + turns(w.High)},
	}
	for _, r := range append(append([]transmission.Repair(nil), a.Repairs...), a.Pairs...) {
		if len(rows) == 2+repairsShown {
			break
		}
		if r.Window.Open() {
			rows = append(rows, strip{"dark", r.Window.Low.Turns(), r.Window.High.Turns(), "after: " + r.Text + ", " + turns(r.Window.Low) + " to " + turns(r.Window.High)})
		}
	}
	if len(rows) == 2 && len(a.Repairs) > 0 && !w.Open() {
		rows = append(rows, strip{"open", 0, 0, a.Repairs[0].Text + ": still no window"})
	}
	return rows
}

func (c *canvas) lines(r strip) []string { return broken(r.words, int((c.right-c.left)/perLetter)) }

// tall is the height of one row.
func (c *canvas) tall(r strip) float64 { return row*float64(len(c.lines(r))) + 18 }

// bar draws a row and returns where the next begins. A bar of no length is a
// thin line.
func (c *canvas) bar(y float64, r strip) float64 {
	for _, l := range c.lines(r) {
		c.text(c.left, y+12, from, l)
		y += row
	}
	a, b := min(max(r.from, c.x0), c.x1), min(max(r.to, c.x0), c.x1)
	if b > a {
		c.box(r.class, c.x(a), y, c.x(b), y+10)
	} else {
		c.line("hair", c.left, y+5, c.right, y+5)
	}
	return y + 18
}

func (c *canvas) turnsAxis(y, last float64) {
	c.line("axis", c.left, y, c.right, y)
	step := 1.0
	for last/step > 8 {
		step *= 2
	}
	for t := 0.0; t <= last; t += step {
		c.line("axis", c.x(t), y, c.x(t), y+5)
		c.text(c.x(t), y+row, middle, strconv.FormatFloat(t, 'f', 0, 64))
	}
	c.text((c.left+c.right)/2, y+2*row, middle, "turns of the spring nuts, in from flush")
}

func windowFinding(a transmission.Adjustment) string {
	w := a.Window
	text := "holds and frees from " + turns(w.Low) + " to " + turns(w.High) + " turns in"
	if !w.Open() {
		text = "no setting both holds and frees: it holds from " + turns(w.Low) + " turns on and frees only up to " + turns(w.High)
	}
	if b := a.Budget; b != nil {
		text += "; now, " + turns(b.Turns) + " in: " + b.Symptoms()
	}
	return text
}

func turns(a units.Angle) string { return strconv.FormatFloat(a.Turns(), 'f', 1, 64) }

// broken breaks text between words into lines of at most so many letters; a
// longer word has a line of its own.
func broken(text string, letters int) []string {
	var lines []string
	line := ""
	for word := range strings.FieldsSeq(text) {
		if line != "" && len(line)+1+len(word) > letters {
			lines, line = append(lines, line), ""
		}
		if line != "" {
			line += " "
		}
		line += word
	}
	return append(lines, line)
}
