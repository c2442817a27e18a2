package measure

import (
	"strconv"
	"strings"
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
