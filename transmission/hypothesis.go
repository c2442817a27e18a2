package transmission

import (
	"math"

	"example.com/benchbook/units/measure"
)

// weighed is a hypothesis worked out before it is ranked.
type weighed struct{ log float64 }

func (w *weighed) LogLikelihood(measure.Data) float64 { return w.log }

// alone weighs each cause by itself. The readings of single parts are independent,
// and an open amount's evidence has a closed form (a normal smeared evenly over its
// bounds). What the whole clutch does is then averaged over the open amount, over the
// turns of nuts that were not read, and over all other parts to first order about
// their means; signs are taken one after the other, each a normal figure cut at an
// uncertain place, with moments matched in between. The cause that the parts speak for
// comes first, since one whose share cannot matter beside it is looked at in one place
// only, or not at all.
func (m *model) alone(d measure.Data, ways *[causeCount]way) (logs [causeCount]float64) {
	first := 0
	for i := range ways {
		logs[i] = m.toldSum + ways[i].log
		if logs[i]+m.logPrior[i] > logs[first]+m.logPrior[first] {
			first = i
		}
	}
	if m.sights.taken == 0 {
		return logs
	}
	best := m.elseLog
	for n := range ways {
		i := (first + n) % causeCount
		ahead := logs[i] + m.logPrior[i] + m.most - best
		if ahead < -2*hopeless {
			logs[i] += m.most // which is too much, and still as good as nothing
			continue
		}
		looks := mostLevels
		if ahead < -hopeless {
			looks = 0
		}
		st := m.known
		ways[i].put(&st)
		logs[i] += m.average(&st, &ways[i], nil, looks, 2*(ahead+hopeless))
		best = max(best, logs[i]+m.logPrior[i])
	}
	return logs
}

// hopeless is how far behind the likeliest, in natural logarithms, the share of a
// cause does not matter: 1/3000 of its share.
const hopeless = 8

// rank weighs all causes, alone and two at a time.
func (m *model) rank(data measure.Data, opt Options) (measure.Ranking, error) {
	other, err := m.weights(opt.Priors)
	if err != nil {
		return measure.Ranking{}, err
	}
	var ways [causeCount]way
	for i := range ways {
		ways[i] = m.way(data, &m.causes[i])
	}
	logs := m.alone(data, &ways)
	list := make([]measure.Cause, 0, causeCount+closely+1)
	room := make([]weighed, 0, causeCount+closely+1)
	add := func(key, text string, prior, log float64) {
		room = append(room, weighed{log})
		list = append(list, measure.Cause{Key: key, Text: text, Prior: prior, Hypothesis: &room[len(room)-1]})
	}
	best, total := m.elseLog, 0.0
	for i := range logs {
		c := &m.causes[i]
		add(c.key, c.text, c.prior, logs[i])
		best = max(best, logs[i]+m.logPrior[i])
	}
	if !opt.OneAtATime {
		factor, left := m.factor(or(opt.TwoAtOnce, twoTogether), other)
		p := m.together(data, &ways, factor, best)
		for i := range logs {
			total += m.causes[i].prior * math.Exp(logs[i]-best)
		}
		total += math.Exp(m.elseLog-best) + p.left
		for i := range p.near[:p.count] {
			total += p.near[i].part
		}
		for i := range p.near[:p.count] {
			n := &p.near[i]
			if n.part < worthName*total {
				p.left += n.part
				continue
			}
			prior := math.Exp(n.prior)
			left -= prior
			both := &named()[n.a][n.b]
			add(both.key, both.text, prior, n.log)
		}
		add(TwoAtOnce, twoText, left, math.Log(p.left)+best-math.Log(left))
	}
	return measure.Rank(data, list, measure.Cause{Text: elseText, Prior: other, Hypothesis: &weighed{m.elseLog - math.Log(other)}})
}
