package transmission

import (
	"slices"

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
	f := make([]Finding, n)
	for i := range f {
		o, x := &r.Odds[i], &f[i]
		x.Key, x.Text, x.Share, x.Odds = o.Key, o.Text, o.Share, o.Words()
		switch at, listed := index()[o.Key]; {
		case listed:
			x.Do, x.Work = m.todo(at)
		case o.Key == TwoAtOnce:
			x.Do = "put right the likeliest of the others, then look again"
		default:
			x.Do = "read what was not read, below, before taking anything apart"
		}
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
	plainlyLess   = 1.0986122886681098 // logarithm of 3, by which the readings tell causes apart
)

// suspects returns the keys of the causes not ruled out, in the order of the ranking:
// those that hold enough belief, and those of [measure.Ranking.Suspects]. It picks them
// here, since it wants no more than their keys.
func suspects(r measure.Ranking) []string {
	held := 0.0
	var room [causeCount + closely + 2]string // as many as are ever ranked
	keys := room[:0]
	for i := range r.Odds {
		o, first := &r.Odds[i], &r.Odds[0]
		if held < suspectBelief || o.Share*suspectOdds >= first.Share || first.LogLikelihood-o.LogLikelihood < plainlyLess {
			keys = append(keys, o.Key)
		}
		held += o.Share
	}
	return slices.Clone(keys)
}
