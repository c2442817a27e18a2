package draw

import (
	"math"
	"strconv"

	"example.com/benchbook/carburation"
	"example.com/benchbook/examples/job"
	"example.com/benchbook/units"
)

// What the paper shows of lambda.
const (
	rich = 0.2
	weak = 1.6
)

// Mixture draws lambda over the opening of the slide by the model, with the band in
// which it lies nine times of ten until a reading sets the model right, and below it
// the pilot's share of the fuel. Width is in CSS pixels. The finding is the same in
// words.
func Mixture(v job.CarburettorResult, width int) (finding, svg string) {
	c := &canvas{width: float64(max(width, Narrowest)), x1: 1, y0: rich, y1: weak}
	c.left, c.right = 34, c.width-10
	finding = mixtureFinding(v.Mixture)
	c.top = c.legends([]legend{{"full", "lambda by the model"}, {"pale", "90 % band"}}) + 14
	c.bottom = c.top + 190
	inside := func(l units.Ratio) float64 { return c.y(min(max(l.Value(), rich), weak)) }
	var middleLine, ring []float64
	for _, e := range v.Mixture {
		middleLine = append(middleLine, c.x(e.Lift.Value()), inside(e.Lambda))
		ring = append(ring, c.x(e.Lift.Value()), inside(e.LambdaBand.Low))
	}
	for i := len(v.Mixture) - 1; i >= 0; i-- {
		e := v.Mixture[i]
		ring = append(ring, c.x(e.Lift.Value()), inside(e.LambdaBand.High))
	}
	c.area("pale", ring...)
	for i := 2; i <= 16; i += 2 {
		l := float64(i) / 10
		c.line("hair", c.left, c.y(l), c.right, c.y(l))
		if i%4 == 2 {
			c.text(c.left-6, c.y(l)+5, until, strconv.FormatFloat(l, 'f', 1, 64))
		}
	}
	c.line("axis", c.left, c.y(1), c.right, c.y(1))
	c.line("full", middleLine...)
	c.text(c.left+6, c.y(1)-7, from, "weak")
	c.text(c.left+6, c.y(1)+18, from, "rich")
	y := c.shares(v.Mixture, c.bottom+row+10)
	for i := range 5 {
		x := float64(i) / 4
		c.line("axis", c.x(x), y, c.x(x), y+5)
		c.text(c.x(x), y+row+2, [5]string{middle, middle, middle, middle, until}[i], [5]string{"0", "1/4", "1/2", "3/4", "full"}[i])
	}
	c.text((c.left+c.right)/2, y+2*row+2, middle, "opening of the slide")
	c.height = y + 2*row + 12
	return finding, c.svg("Mixture over the throttle. " + finding)
}

// shares draws the pilot's share of the fuel under the mixture and returns where it
// ends.
func (c *canvas) shares(all []carburation.Explained, y float64) float64 {
	const tall = 44
	c.text(c.left, y-5, from, "dark: the pilot's share of the fuel")
	if len(all) == 0 {
		return y + tall
	}
	first, last := all[0], all[len(all)-1]
	c.box("open", c.x(first.Lift.Value()), y, c.x(last.Lift.Value()), y+tall)
	xy := []float64{c.x(first.Lift.Value()), y + tall}
	for _, e := range all {
		xy = append(xy, c.x(e.Lift.Value()), y+tall*(1-e.PilotShare))
	}
	c.area("dark", append(xy, c.x(last.Lift.Value()), y+tall)...)
	c.text(c.x(first.Lift.Value())-5, y+tall-4, until, percent(first.PilotShare))
	c.text(c.x(last.Lift.Value())-5, y+16, until, percent(last.PilotShare)+" wide open")
	return y + tall
}

func percent(share float64) string { return strconv.FormatFloat(100*share, 'f', 0, 64) + " %" }

// mixtureFinding says the mixture wide open, half way and nearly shut.
func mixtureFinding(all []carburation.Explained) string {
	text := "no mixture worked out"
	for i, at := range []struct {
		lift  float64
		words string
	}{{1, "wide open"}, {0.5, "half open"}, {0.125, "an eighth open"}} {
		e, ok := near(all, at.lift)
		switch {
		case !ok:
			continue
		case i == 0:
			text = "lambda by the model: "
		default:
			text += ", "
		}
		if !(e.Lambda > 0) {
			text += "no fuel " + at.words
			continue
		}
		text += e.Lambda.In(units.One, 2) + " " + at.words
	}
	return text
}

// near returns the point at a lift.
func near(all []carburation.Explained, lift float64) (carburation.Explained, bool) {
	for _, e := range all {
		if math.Abs(e.Lift.Value()-lift) < 0.01 {
			return e, true
		}
	}
	return carburation.Explained{}, false
}
