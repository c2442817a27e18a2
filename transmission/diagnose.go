package transmission

import (
	"math"
	"strings"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Sign is the answer to a look or a trial.
type Sign uint8

// The answers.
const (
	NotTried Sign = iota
	No
	Yes
)

// String returns the answer in words.
func (s Sign) String() string {
	switch s {
	case NotTried:
		return "not tried"
	case No:
		return "no"
	case Yes:
		return "yes"
	}
	return "unknown answer"
}

// MarshalText returns the words of String.
func (s Sign) MarshalText() ([]byte, error) { return []byte(s.String()), nil }

// UnmarshalText reads the words of String; empty text is not tried.
func (s *Sign) UnmarshalText(b []byte) error {
	switch string(b) {
	case "", "not tried":
		*s = NotTried
	case "no":
		*s = No
	case "yes":
		*s = Yes
	default:
		return fault.Fault{Code: fault.UnknownName, Value: string(b), Rule: "must be yes, no or not tried"}
	}
	return nil
}

// Signs is what the clutch does on the road and on the stand.
type Signs struct {
	Slips     Sign                          // under full torque, warm
	Drags     Sign                          // does not free with the lever at the bar, warm
	Heavy     Sign                          // plainly heavier than a good one
	LightThen Sign                          // the lever is light over a first part of its pull, beyond the free play, then stiff
	Kick      KickTest                      // a rider's weight on the kick starter; not taken without a rider
	Lift      measure.Reading[units.Length] // of the pressure plate at its middle, lever at the bar, by dial gauge, 0 to 15 mm
	HandForce measure.Reading[units.Force]  // at the finger line with the lever at the bar, by spring balance, 1 to 1000 N
}

// Diagnosis is what is probably wrong.
type Diagnosis struct {
	Causes       measure.Ranking `json:"causes"`
	Findings     []Finding       `json:"findings"`                // what to do about each cause, likeliest first, until two per cent are left
	NextReadings []measure.Gain  `json:"next_readings,omitempty"` // not yet taken, the most telling first
	Reason       fault.Reason    `json:"reason,omitzero"`         // why the causes were not weighed, if they were not
	Basis        refdata.Basis   `json:"basis"`
}

// Finding is a cause worth acting on, and what to do.
type Finding struct {
	Key   string     `json:"key"`
	Text  string     `json:"text"`
	Share float64    `json:"share"`
	Odds  string     `json:"odds"` // in words
	Do    string     `json:"do"`
	Work  units.Time `json:"work"` // hands-on, common practice, no source
}

// Diagnose ranks the causes that explain the signs and readings. Each cause
// moves one figure or two of the state away from new, by a fixed amount or by one
// evenly likely between bounds, while everything else varies about new as
// [Clutch].New says; the readings of single parts, the lift and hand force of the
// whole clutch, and the rider's signs are then weighed together, and what was not
// read is averaged over. The nuts are taken to have been set within or near the
// window of the clutch as new. Bounds and priors are common practice, no source;
// Options.Priors overrides priors. If the clutch has no window even as new there
// is nothing to compare with: Reason says so. Errors: every figure that is
// missing or outside its range, as fault.Fault.
func Diagnose(in Input, opt Options) (Diagnosis, error) {
	s, n, err := in.resolve(opt)
	var l fault.List
	l.Under("", err)
	lift, lifted, err := length(&in.Signs.Lift)
	if l.Under("signs.lift", err) && lifted && !(lift.x >= 0 && lift.x <= 15) {
		l.Add(outside("signs.lift", lift.x, "mm", 0, 15))
	}
	hand, handed := figure{in.Signs.HandForce.Value().Newtons(), in.Signs.HandForce.U().Newtons()}, in.Signs.HandForce.Taken()
	if l.Under("signs.hand_force", in.Signs.HandForce.Err()) && handed && !(hand.x >= 1 && hand.x <= 1000) {
		l.Add(outside("signs.hand_force", hand.x, "N", 1, 1000))
	}
	signs := [...]Sign{in.Signs.Slips, in.Signs.Drags, in.Signs.Heavy, in.Signs.LightThen}
	for i, sign := range signs {
		if sign > Yes {
			l.Add(fault.Fault{Code: fault.UnknownName, Path: "signs." + [...]string{"slips", "drags", "heavy", "light_then"}[i], Rule: "must be yes, no or not tried"})
		}
	}
	var kick KickProof
	kicked := in.Signs.Kick.Rider.Taken()
	if kicked && l.Len() == 0 { // else its faults of the clutch would come twice
		kick, err = in.Clutch.Kick(in.Signs.Kick)
		for _, f := range fault.Faults(err) {
			f.Path = "signs.kick" + strings.TrimPrefix(f.Path, "test")
			l.Add(f)
		}
	}
	if l.Len() > 0 {
		return Diagnosis{}, l.Err()
	}
	d := Diagnosis{Basis: in.basis(&s)}
	m, reason := newModel(&s)
	if reason.Given() {
		d.Reason = reason
		return d, nil
	}
	data := make(measure.Data, dataLength)
	take := func(i int, f figure, finest float64) {
		data[i] = measure.Datum{Value: f.x, Taken: true}
		m.own[i] = math.Max(f.u, finest)
	}
	for p := range parts {
		if s.took[p] {
			take(int(p), figure{m.s.v[p], m.s.u[p]}, rules[p].finest)
		}
	}
	if n.taken {
		take(int(nuts), n.figure, finestTurn)
	}
	if lifted {
		take(atLift, lift, finestLift)
	}
	if handed {
		take(atHand, figure{math.Log(hand.x), hand.u / hand.x}, finestHand)
	}
	for i, sign := range signs {
		if sign != NotTried {
			data[atSlips+i] = measure.Datum{Value: float64(sign - No), Taken: true}
		}
	}
	if kicked {
		m.kick = figure{kick.Tested.Value().NewtonMillimetres(), kick.Tested.U().NewtonMillimetres()}
		slipped := in.Signs.Kick.Slipped
		// a clutch that just slips is at that torque: slipping and holding are even,
		// which tells nothing by a yes or no, so it is given as its own figure
		switch slipped {
		case Held, Turned:
			data[atKick] = measure.Datum{Value: 0, Taken: true}
		case Slid:
			data[atKick] = measure.Datum{Value: 1, Taken: true}
		case Crept:
			data[atKick] = measure.Datum{Value: crept, Taken: true}
		}
	}
	m.weigh(data)
	list, err := m.list(opt.Priors)
	if err != nil {
		return Diagnosis{}, err
	}
	other := elsePrior
	if p, given := opt.Priors[measure.SomethingElse]; given {
		other = p
	}
	d.Causes, err = measure.Rank(data, list, measure.Cause{Text: elseText, Prior: other, Hypothesis: elsewhere{&m}})
	if err != nil {
		return Diagnosis{}, err
	}
	d.Findings = m.findings(d.Causes)
	d.NextReadings, err = m.next(data, d.Causes)
	return d, err
}

// No reading is believed to better than these, even one declared exact.
const (
	finestTurn = 0.02 // turns
	finestLift = 0.02 // mm
	finestHand = 0.01 // of the force
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
	m.usualHand = m.predict(m.usual())[outHand]
	m.causes = s.causes(at, low, high)
	return m, fault.Reason{}
}

// usual is a serviceable clutch at the middle of its spread.
func (m *model) usual() *vector {
	var v vector
	for p := range v {
		v[p] = m.base[p].x
	}
	return &v
}

// elsePrior is the weight of what is not listed, about a twentieth of all.
const (
	elsePrior = 6.0
	elseText  = "something not listed here"
)

// list returns the causes for the ranking, with the caller's priors.
func (m *model) list(priors map[string]float64) ([]measure.Cause, error) {
	list := make([]measure.Cause, len(m.causes))
	known := 0
	if _, given := priors[measure.SomethingElse]; given {
		known++
	}
	for i := range m.causes {
		c := &m.causes[i]
		prior, given := priors[c.key]
		if given {
			known++
		} else {
			prior = c.prior
		}
		list[i] = measure.Cause{Key: c.key, Text: c.text, Prior: prior, Hypothesis: hypothesis{m, c}}
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

// unlisted is the share that may be left out of the findings.
const unlisted = 0.02

func (m *model) findings(r measure.Ranking) []Finding {
	var f []Finding
	left := 1.0
	for _, o := range r.Odds {
		if left < unlisted {
			break
		}
		left -= o.Share
		x := Finding{Key: o.Key, Text: o.Text, Share: o.Share, Odds: o.Words(), Do: "read what was not read, below, before taking anything apart"}
		if c := m.cause(o.Key); c != nil {
			x.Do, x.Work = c.do, units.MinutesOfTime(c.minutes)
		}
		f = append(f, x)
	}
	return f
}
