package measure

import (
	"strconv"
	"strings"

	"example.com/benchbook/units"
)

// String returns text such as "94 % inlet camwheel one tooth early: very likely".
func (o Odds) String() string {
	if o.Key == "" && o.Text == "" {
		return "nothing ranked"
	}
	text := o.Text
	if text == "" {
		text = o.Key
	}
	return strconv.Itoa(o.Percent) + " % " + text + ": " + o.Words()
}

// String returns the causes of one per cent or more, one a line, likeliest
// first; the leader alone if none has as much.
func (r Ranking) String() string {
	var b strings.Builder
	for i, o := range r.Odds {
		if i > 0 {
			if o.Percent < 1 {
				break
			}
			b.WriteByte('\n')
		}
		b.WriteString(o.String())
	}
	if len(r.Odds) == 0 {
		return "nothing ranked"
	}
	return b.String()
}

// String returns text such as "find top dead centre by a positive stop, 20 min,
// 0.05 bit".
func (g Gain) String() string {
	work := g.Work.In(units.Hour, 1)
	switch {
	case g.Work < 90*units.Second:
		work = g.Work.In(units.Second, 0)
	case g.Work < 90*units.MinuteOfTime:
		work = g.Work.In(units.MinuteOfTime, 0)
	}
	return g.Text + ", " + work + ", " + strconv.FormatFloat(g.Bits, 'f', 2, 64) + " bit"
}
