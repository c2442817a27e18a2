package transmission

import (
	"math"

	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// newModel works out what the clutch does with nothing wrong and where its nuts
// should stand.
func newModel(s *state) (model, fault.Reason) {
	m := model{s: s}
	for p := range all {
		m.base[p] = s.afterUse(p)
	}
	b := s.bounds(&s.fresh)
	low, _ := b.low()
	high, _ := b.high()
	if !(high > low) {
		return m, fault.Reason{Code: "no-window-as-new", Text: "the clutch as described neither holds nor frees even with nothing wrong, so there is nothing to compare with: check how it is made, or measure its parts"}
	}
	if s.law != nil || s.train != nil {
		s = s.straight(low, high)
		m.s = s
		for p := range all {
			m.base[p] = s.afterUse(p)
		}
	}
	at := (low + high) / 2
	m.base[nuts] = figure{at, math.Hypot(nutSpread, (high-low)/4)}
	for p := range m.usual {
		m.usual[p] = m.base[p].x
	}
	m.usually = s.does(&m.usual)
	m.causes = s.causes(at, low, high)
	m.bell = newBell()
	return m, fault.Reason{}
}

// does returns what the whole clutch does in one state.
func (s *state) does(v *vector) effect {
	var w workings
	w.at(s, v)
	return effect{onLift: w.rise, onHand: math.Log(w.hand), onTorque: w.torque, onIdle: s.idle(v)}
}

// elsePrior is the weight of what is not listed, about a twentieth of all.
const (
	elsePrior = 6.0
	elseText  = "something not listed here"
)

// weights puts the caller's in place of the defaults and returns that of what is not
// listed. Errors: a cause that is not listed, a weight that is not above zero.
func (m *model) weights(priors map[string]float64) (other float64, err error) {
	other = elsePrior
	var l fault.List
	for key, prior := range priors {
		at, known := index()[key]
		switch {
		case (!known || at.a != at.b) && key != measure.SomethingElse:
			l.Add(fault.Fault{Code: fault.UnknownName, Path: "options.priors", Value: key, Rule: "must be the key of a listed cause"})
		case !(prior > 0 && prior <= 1e9):
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: "options.priors." + key, Value: number(prior), Rule: "a prior must be above zero and at most 1e9"})
		case known:
			m.causes[at.a].prior = prior
		default:
			other = prior
		}
	}
	m.elseLog += math.Log(other / elsePrior)
	for i := range m.causes {
		m.logPrior[i] = math.Log(m.causes[i].prior)
	}
	return other, l.Err()
}

// factor is what the product of two causes' weights is multiplied by for the weight of
// both at once, so that pairs together are the part two of everything, and the weight
// of all pairs.
func (m *model) factor(two, other float64) (factor, all float64) {
	apart := apart()
	for i := range m.causes {
		other += m.causes[i].prior
		for j := range m.causes[:i] {
			if apart[i][j] {
				all += m.causes[i].prior * m.causes[j].prior
			}
		}
	}
	wanted := two / (1 - two) * other
	return wanted / all, wanted
}
