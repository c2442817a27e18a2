package draw

import "example.com/benchbook/units/measure"

// Bar is one cause of a ranking.
type Bar struct {
	Percent int    `json:"percent"` // whole
	Words   string `json:"words"`   // "very likely"
	Text    string `json:"text"`
}

// most is how many causes are shown.
const most = 5

// Bars returns the leading causes, down to one per cent.
func Bars(r measure.Ranking) []Bar {
	var all []Bar
	for i, o := range r.Odds {
		if i == most || i > 0 && o.Percent < 1 {
			break
		}
		all = append(all, Bar{o.Percent, o.Words(), o.Text})
	}
	return all
}
