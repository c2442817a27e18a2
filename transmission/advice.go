package transmission

import (
	"math"
	"strconv"

	"example.com/benchbook/units"
)

// Advice is what to turn. The order of work is free play first, spring nuts
// second, evenness of lift last (common practice, no source; it also follows
// from the ledgers, since the least free play gives the widest window).
type Advice struct {
	Text   string       `json:"text"`
	Adjust bool         `json:"adjust"` // turning the nuts can cure it; false: repair first
	Aim    units.Angle  `json:"aim"`    // turns of each nut in from flush to set; near the low end, for a light lever and most lift
	Move   units.Angle  `json:"move"`   // of each nut from where it stands, inward positive, in whole flats; 0 if the setting was not read
	Flats  int          `json:"flats"`  // Move in flats, sixths of a turn
	Least  units.Angle  `json:"least"`  // not fewer turns from flush than this
	Most   units.Angle  `json:"most"`   // nor more than this
	Leave  units.Length `json:"leave"`  // free play to leave at the lever nipple, least
	Play   units.Angle  `json:"play"`   // turn the play adjuster first: positive takes play up, negative lets it out; 0 if play was not read or is right
}

// between says the ends of a window in whole flats inside it, or in decimals if
// there are none.
func between(low, high float64) string {
	a, b := int(math.Ceil(low/flat)), int(math.Floor(high/flat))
	if a > b {
		return "not under " + turns(low) + " nor over " + turns(high)
	}
	return "not under " + words(a) + " nor over " + words(b)
}

// slackPlay is how far above the least free play may stand before it is taken
// up: 1 mm, common practice, no source.
const slackPlay = 1.0

func alike(central bool) string {
	if central {
		return ""
	}
	return ", all alike"
}

// flat is a sixth of a turn: one flat of a hexagon nut.
const flat = 1.0 / 6

func (s *state) advise(a *Adjustment, n place) Advice {
	low, high := a.Window.Low.Turns(), a.Window.High.Turns()
	d := Advice{Least: a.Window.Low, Most: a.Window.High, Leave: units.Millimetres(s.leastPlay)}
	play := "leave at least " + d.Leave.In(units.Millimetre, 1) + " of free play at the lever"
	before := ""
	if f := s.v[freePlay]; s.took[freePlay] && (f < s.leastPlay || f > s.leastPlay+slackPlay) {
		aim := s.leastPlay + slackPlay/2
		if f < s.leastPlay {
			aim = s.leastPlay
		}
		d.Play = units.Turns((f - aim) / s.perTurn())
		before = "first take up free play by " + turns(d.Play.Turns()) + " of its adjuster; then "
		if d.Play < 0 {
			before = "first let out free play by " + turns(-d.Play.Turns()) + " of its adjuster, since none leaves the springs' load on the rod; then "
		}
	}
	nut := "every nut"
	if s.central {
		nut = "the nut"
	}
	if !a.Window.Open() {
		d.Text = before + a.Window.Reason.Text + "; leave the nuts alone and repair first" + first(a)
		return d
	}
	// a flat above the low end, or as far as that end is uncertain, but never
	// past the middle
	d.Adjust = true
	aim := low + math.Min(math.Max(flat, a.Low.U().Turns()), (high-low)/2)
	d.Aim = units.Turns(aim)
	d.Text = before + "set " + nut + " " + words(int(math.Round(aim/flat))) + " in from flush, " + between(low, high) + "; " + play
	if high-low < s.leastWidth {
		d.Text += "; the window is narrower than " + turns(s.leastWidth) + ", which leaves nothing for wear" + first(a)
	}
	if !n.taken {
		return d
	}
	d.Flats = flats(n.x, aim, low, high)
	d.Move = units.Turns(float64(d.Flats) * flat)
	switch {
	case d.Flats == 0:
		d.Text = before + "leave the nuts where they are; " + d.Text[len(before):]
	case d.Flats > 0:
		d.Text = before + "turn " + nut + " in by " + words(d.Flats) + alike(s.central) + "; " + d.Text[len(before):]
	default:
		d.Text = before + "turn " + nut + " out by " + words(-d.Flats) + alike(s.central) + "; " + d.Text[len(before):]
	}
	return d
}

// flats returns the whole flats from n nearest to the aim that stay within the
// window, and none at all if the nut stands within a flat of the aim already.
func flats(n, aim, low, high float64) int {
	if n >= low && n <= high && math.Abs(n-aim) < flat {
		return 0
	}
	k := math.Round((aim - n) / flat)
	for _, try := range [...]float64{k, k + 1, k - 1} {
		if at := n + try*flat; at >= low && at <= high {
			return int(try)
		}
	}
	return int(k)
}

func first(a *Adjustment) string {
	best := func(r []Repair) string {
		if len(r) > 0 && r[0].Opens {
			return ": " + r[0].Text
		}
		return ""
	}
	if t := best(a.Repairs); t != "" {
		return t
	}
	if t := best(a.Pairs); t != "" {
		return t
	}
	return ": none of the repairs opens it alone or in twos; strip it, and measure what was not read"
}

func turns(x float64) string {
	t := strconv.FormatFloat(x, 'f', 2, 64)
	if t == "1.00" {
		return "1 turn"
	}
	return t + " turns"
}

// words says a number of flats as turns and flats.
func words(flats int) string {
	if flats == 0 {
		return "no turn"
	}
	text := ""
	if t := flats / 6; t == 1 {
		text = "1 turn"
	} else if t > 1 {
		text = strconv.Itoa(t) + " turns"
	}
	f := flats % 6
	if f == 0 {
		return text
	}
	if text != "" {
		text += " and "
	}
	if f == 1 {
		return text + "1 flat"
	}
	return text + strconv.Itoa(f) + " flats"
}
