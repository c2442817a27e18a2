package transmission

import (
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// Finding is a cause worth acting on, and what to do.
type Finding struct {
	Key   string     `json:"key"`
	Text  string     `json:"text"`
	Share float64    `json:"share"`
	Odds  string     `json:"odds"` // in words
	Do    string     `json:"do"`
	Work  units.Time `json:"work"` // hands-on, common practice, no source
}

// unlisted is the share that may be left out of the findings.
const unlisted = 0.02

func (m *model) findings(r measure.Ranking) []Finding {
	n, left := 0, 1.0
	for n < len(r.Odds) && left >= unlisted {
		left -= r.Odds[n].Share
		n++
	}
	f := make([]Finding, 0, n)
	for _, o := range r.Odds[:n] {
		x := Finding{Key: o.Key, Text: o.Text, Share: o.Share, Odds: o.Words(), Do: "read what was not read, below, before taking anything apart"}
		if c := m.cause(o.Key); c != nil {
			x.Do, x.Work = c.do, units.MinutesOfTime(c.minutes)
		}
		f = append(f, x)
	}
	return f
}

// suspectOdds is how far behind the leader a cause is still suspected.
const suspectOdds = 20
