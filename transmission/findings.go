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

func (m *model) findings(r measure.Ranking) []Finding {
	n, left := 0, 1.0
	for n < len(r.Odds) && left > 1-suspectBelief {
		left -= r.Odds[n].Share
		n++
	}
	f := make([]Finding, 0, n)
	for _, o := range r.Odds[:n] {
		x := Finding{Key: o.Key, Text: o.Text, Share: o.Share, Odds: o.Words()}
		switch at, listed := index()[o.Key]; {
		case listed:
			x.Do, x.Work = m.todo(at)
		case o.Key == TwoAtOnce:
			x.Do = "put right the likeliest of the others, then look again"
		default:
			x.Do = "read what was not read, below, before taking anything apart"
		}
		f = append(f, x)
	}
	return f
}

// todo is what to do about a cause, or about two.
func (m *model) todo(at members) (do string, work units.Time) {
	a, b := &m.causes[at.a], &m.causes[at.b]
	if a == b {
		return a.do, units.MinutesOfTime(a.minutes)
	}
	return named()[at.a][at.b].do, units.MinutesOfTime(a.minutes + b.minutes)
}

// How far behind the leader a cause is still suspected, and how much belief the
// suspects hold at least.
const (
	suspectOdds   = 20
	suspectBelief = 0.97
)

// suspects returns the causes not ruled out, in the order of the ranking.
func suspects(r measure.Ranking) []measure.Odds {
	near, list := r.Suspects(suspectOdds), r.Holding(suspectBelief)
	for _, o := range near {
		if _, in := (measure.Ranking{Odds: list}).Of(o.Key); !in {
			list = append(list, o)
		}
	}
	return list
}
