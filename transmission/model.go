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
	return m, fault.Reason{}
}

// does returns what the whole clutch does in one state.
func (s *state) does(v *vector) effect {
	var w workings
	w.at(s, v)
	return effect{onLift: w.lift, onHand: math.Log(w.hand), onTorque: w.torque, onIdle: s.idle(v)}
}

// elsePrior is the weight of what is not listed, about a twentieth of all.
const (
	elsePrior = 6.0
	elseText  = "something not listed here"
)

// list returns the causes for the ranking, with the caller's priors.
func (m *model) list(priors map[string]float64) ([]measure.Cause, error) {
	list := make([]measure.Cause, len(m.causes))
	weighed := make([]hypothesis, len(m.causes))
	known := 0
	if _, given := priors[measure.SomethingElse]; given {
		known++
	}
	for i := range m.causes {
		c := &m.causes[i]
		if prior, given := priors[c.key]; given {
			known++
			c.prior = prior
		}
		weighed[i] = hypothesis{m, c}
		list[i] = measure.Cause{Key: c.key, Text: c.text, Prior: c.prior, Hypothesis: &weighed[i]}
	}
	if known == len(priors) {
		return list, nil
	}
	var l fault.List
	for key := range priors {
		if m.cause(key) == nil && key != measure.SomethingElse {
			l.Add(fault.Fault{Code: fault.UnknownName, Path: "options.priors", Value: key, Rule: "must be the key of a listed cause"})
		}
	}
	return nil, l.Err()
}

func (m *model) cause(key string) *cause {
	for i := range m.causes {
		if m.causes[i].key == key {
			return &m.causes[i]
		}
	}
	return nil
}
