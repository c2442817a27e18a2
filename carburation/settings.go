package carburation

import (
	"math"
	"strconv"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
	"example.com/benchbook/units/solve"
)

// Target is a mixture wanted at a lift and speed.
type Target struct {
	Lift   units.Ratio           `json:"lift"`
	Speed  units.RotationalSpeed `json:"speed"`
	Lambda units.Ratio           `json:"lambda"`
}

// Targets are the mixtures wanted. A field left at zero takes its default.
type Targets struct {
	Full     Target `json:"full"`      // lift 1, peak speed, lambda 0.87
	Middle   Target `json:"middle"`    // lift 1/2, 0.7 of peak speed, lambda 0.98
	PickUp   Target `json:"pick_up"`   // lift 3/16, 0.6 of peak speed, lambda 0.92 (judged, between the others)
	TickOver Target `json:"tick_over"` // 1000 rev/min, lambda 0.85; the lift is found
}

// JetSetting is a jet to fit.
type JetSetting struct {
	At         Target            `json:"at"`
	Before     units.Ratio       `json:"before"`      // lambda there as the carburettor was set
	After      units.Ratio       `json:"after"`       // and with all settings put in
	FlowFactor Band[units.Ratio] `json:"flow_factor"` // on the flow, or the flow mark, of the jet fitted; zero where the jet hardly changes the mixture
	BoreFactor Band[units.Ratio] `json:"bore_factor"` // on its bore
	Jet        Jet               `json:"jet"`         // the jet fitted, times the middle of that
	NotReached fault.Reason      `json:"not_reached,omitzero"`
}

// CutawaySetting is a slide to fit.
type CutawaySetting struct {
	At         Target       `json:"at"`
	Before     units.Ratio  `json:"before"`
	After      units.Ratio  `json:"after"`
	Wanted     units.Length `json:"wanted"`     // exactly
	Nearest    units.Length `json:"nearest"`    // whole 1/32 in
	Sixteenths float64      `json:"sixteenths"` // the number of that: 3.5
	NotReached fault.Reason `json:"not_reached,omitzero"`
}

// NeedleSetting is a groove to put the clip in.
type NeedleSetting struct {
	At         Target       `json:"at"`
	Before     units.Ratio  `json:"before"`
	After      units.Ratio  `json:"after"`
	Raise      units.Length `json:"raise"`      // from where it hangs, exactly; negative lowers it
	Groove     Groove       `json:"groove"`     // nearest
	Annulus    units.Area   `json:"annulus"`    // wanted at that lift
	NeedleJet  units.Length `json:"needle_jet"` // that would give it with the clip in the middle
	NotReached fault.Reason `json:"not_reached,omitzero"`
}

// Settings is the inverse of the model.
type Settings struct {
	MainJet  JetSetting     `json:"main_jet"`
	Cutaway  CutawaySetting `json:"cutaway"`
	Needle   NeedleSetting  `json:"needle"`
	PilotJet JetSetting     `json:"pilot_jet"`
	Rounds   int            `json:"rounds"` // through the trade's order
	Basis    refdata.Basis  `json:"basis"`

	model Model
}

// Model returns the model with all settings put in.
func (s Settings) Model() Model { return s.model }

// Settings returns the main jet, cutaway, needle groove and pilot jet at which
// the model gives the mixtures wanted, found in the trade's order and gone
// through again until they hold together: a part that acts at one lift adds a
// little to the others. Slides come in half numbers and needles in grooves, so
// After is what is left of the wish. A target that no part reaches has
// NotReached: "annulus-too-small" if the needle jet starves the main jet,
// "pilot-too-large" if the pilot alone is too rich there, "needle-cannot-reach",
// "cutaway-cannot-reach", "pilot-cannot-reach". Bands are those of the model at
// that point: calibrate it first. Errors: the zero Model, targets outside.
func (m *Model) Settings(want Targets) (Settings, error) {
	t, err := m.targets(want)
	if err != nil {
		return Settings{}, err
	}
	s := Settings{Basis: m.basis, model: *m}
	w := &s.model
	s.MainJet.At, s.Needle.At, s.Cutaway.At, s.PilotJet.At = t.Full, t.Middle, t.PickUp, t.TickOver
	s.MainJet.Before, s.Needle.Before, s.Cutaway.Before, s.PilotJet.Before = m.lambdaAt(t.Full), m.lambdaAt(t.Middle), m.lambdaAt(t.PickUp), m.lambdaAt(t.TickOver)
	for s.Rounds = 1; s.Rounds <= 8; s.Rounds++ {
		was := w.plant
		s.MainJet.NotReached = w.setMain(t.Full)
		s.Cutaway.NotReached = w.setCutaway(t.PickUp, &s.Cutaway)
		s.Needle.NotReached = w.setNeedle(t.Middle, &s.Needle)
		s.PilotJet.NotReached = w.setPilot(t.TickOver)
		if settled(was, w.plant) {
			break
		}
	}
	s.MainJet.NotReached = w.setMain(t.Full) // jets come as fine as wanted: they have the last word
	s.PilotJet.NotReached = w.setPilot(t.TickOver)
	s.MainJet.After, s.Needle.After, s.Cutaway.After, s.PilotJet.After = w.lambdaAt(t.Full), w.lambdaAt(t.Middle), w.lambdaAt(t.PickUp), w.lambdaAt(t.TickOver)
	m.jetSetting(&s.MainJet, m.setup.Carburettor.MainJet, w.plant.mainJet.ca/m.plant.mainJet.ca, func(p *plant, k float64) { p.mainJet = p.mainJet.times(k) }, w)
	if m.plant.pilotJet.ca > 0 {
		m.jetSetting(&s.PilotJet, m.setup.Carburettor.PilotJet, w.plant.pilotJet.ca/m.plant.pilotJet.ca, func(p *plant, k float64) { p.pilotJet = p.pilotJet.times(k) }, w)
	} else {
		s.PilotJet.NotReached = fault.Reason{Code: "pilot-not-read", Text: "the pilot jet was not read: there is nothing to step from"}
	}
	c := &w.setup.Carburettor
	c.MainJet, c.PilotJet = s.MainJet.Jet, s.PilotJet.Jet
	c.Cutaway = measure.Of(units.Metres(w.plant.cutaway), c.Cutaway.U())
	c.Needle.Groove = s.Needle.Groove
	return s, nil
}

func (m *Model) lambdaAt(t Target) units.Ratio {
	return m.operating(t.Lift.Value(), t.Speed.RevolutionsPerSecond()).Lambda
}

// targets fills defaults in and checks.
func (m *Model) targets(t Targets) (Targets, error) {
	if !m.ready {
		return t, m.inside(1, 0)
	}
	peak := units.RevolutionsPerSecond(m.plant.peak)
	for _, d := range []struct {
		t    *Target
		with Target
	}{{&t.Full, Target{1, peak, 0.87}}, {&t.Middle, Target{0.5, peak.Times(0.7), 0.98}}, {&t.PickUp, Target{0.1875, peak.Times(0.6), 0.92}}, {&t.TickOver, Target{0, units.RevolutionsPerMinute(1000), 0.85}}} {
		if d.t.Lift == 0 {
			d.t.Lift = d.with.Lift
		}
		if d.t.Speed == 0 {
			d.t.Speed = d.with.Speed
		}
		if d.t.Lambda == 0 {
			d.t.Lambda = d.with.Lambda
		}
	}
	if t.TickOver.Lift == 0 {
		t.TickOver.Lift = units.Value(m.tickOverLift(t.TickOver.Speed.RevolutionsPerSecond()))
	}
	var l fault.List
	for _, d := range []struct {
		name string
		t    Target
	}{{"full", t.Full}, {"middle", t.Middle}, {"pick_up", t.PickUp}, {"tick_over", t.TickOver}} {
		l.Under(d.name, m.inside(d.t.Lift, d.t.Speed))
		positive(&l, d.name+".lambda", d.t.Lambda, 0.6, 1.3)
	}
	return t, l.Err()
}

// tickOverRatio is the pressure behind the slide over that outside at tick-over
// (judged: 0.35 to 0.55).
const tickOverRatio = 0.45

// tickOverLift returns the lift, over the bore, at which the engine finds that.
func (m *Model) tickOverLift(speed float64) float64 {
	p := &m.plant
	x, err := solve.Root(func(x float64) float64 {
		return p.at(x*p.bore, speed, &m.value).depression/p.pressure - (1 - tickOverRatio)
	}, 1e-4, 0.5, 1e-9)
	if err != nil {
		return 0.03
	}
	return x
}

// reach looks for the k, between two ends, at which change makes lambda what is
// wanted. ok is false if it does not; then low and high are lambda at the ends.
func (m *Model) reach(t Target, low, high float64, change func(p *plant, k float64)) (k, lambdaLow, lambdaHigh float64, ok bool) {
	speed := t.Speed.RevolutionsPerSecond()
	var p plant // one for all trials
	at := func(k float64) float64 {
		p = m.plant
		change(&p, k)
		s := p.at(t.Lift.Value()*p.bore, speed, &m.value)
		if s.lambda == 0 {
			return 1e3 // no fuel is weaker than anything
		}
		return s.lambda
	}
	k, err := solve.Root(func(k float64) float64 { return math.Log(at(k) / t.Lambda.Value()) }, low, high, 1e-10)
	if err != nil {
		return 0, at(low), at(high), false
	}
	return k, 0, 0, true
}

func (m *Model) setMain(t Target) fault.Reason {
	change := func(p *plant, k float64) { p.mainJet = p.mainJet.times(math.Exp(k)) }
	k, weak, rich, ok := m.reach(t, -5, 5, change)
	if ok {
		change(&m.plant, k)
		return fault.Reason{}
	}
	if rich > t.Lambda.Value() {
		return fault.Reason{Code: "annulus-too-small", Text: "no main jet reaches lambda " + digits3(t.Lambda.Value()) + ": with the jet out it is still " + digits3(rich) + ", since the needle jet passes too little; a larger needle jet or a thinner needle comes first"}
	}
	return fault.Reason{Code: "pilot-too-large", Text: "no main jet reaches lambda " + digits3(t.Lambda.Value()) + ": with none at all it is " + digits3(weak) + " from the pilot alone"}
}

func (m *Model) setPilot(t Target) fault.Reason {
	if m.plant.pilotJet.ca == 0 {
		return fault.Reason{Code: "pilot-not-read", Text: "the pilot jet was not read: there is nothing to step from"}
	}
	change := func(p *plant, k float64) { p.pilotJet = p.pilotJet.times(math.Exp(k)) }
	k, weak, _, ok := m.reach(t, -4, 4, change)
	if ok {
		change(&m.plant, k)
		return fault.Reason{}
	}
	if weak < t.Lambda.Value() {
		return fault.Reason{Code: "pilot-cannot-reach", Text: "main fuel alone makes lambda " + digits3(weak) + " at tick-over: suspect the fuel level or a worn needle jet"}
	}
	return fault.Reason{Code: "pilot-cannot-reach", Text: "the pilot's suction does not lift enough fuel at tick-over: suspect the fuel level or a blocked outlet"}
}

func (m *Model) setCutaway(t Target, out *CutawaySetting) fault.Reason {
	most := math.Min(0.5*m.plant.bore, 15e-3)
	k, rich, weak, ok := m.reach(t, 1e-3, most, func(p *plant, k float64) { p.cutaway = k })
	var why fault.Reason
	if !ok {
		if rich > t.Lambda.Value() {
			k = 1e-3
			why = fault.Reason{Code: "cutaway-cannot-reach", Text: "even with hardly a cutaway lambda is " + digits3(rich) + " where " + digits3(t.Lambda.Value()) + " is wanted: the needle jet round the straight of the needle, or the pilot, is too small"}
		} else {
			k = most
			why = fault.Reason{Code: "cutaway-cannot-reach", Text: "even with a cutaway of " + digits3(most*1000) + " mm lambda is " + digits3(weak) + " where " + digits3(t.Lambda.Value()) + " is wanted: the needle jet round the straight of the needle is too large or worn, or the pilot too rich"}
		}
	}
	const step = 25.4e-3 / 32
	n := math.Max(2, math.Round(k/step)) // from number 1 up
	out.Wanted, out.Nearest, out.Sixteenths = units.Metres(k), units.Metres(n*step), n/2
	m.plant.cutaway = n * step
	return why
}

func (m *Model) setNeedle(t Target, out *NeedleSetting) fault.Reason {
	n := m.setup.Carburettor.Needle
	g := n.Groove
	if !g.Taken() {
		g = Groove{FromTop: 3, Of: 5}
	}
	pitch := n.pitch()
	middle := float64(g.Of+1) / 2
	lowest, highest := (1-middle)*pitch, (float64(g.Of)-middle)*pitch // how the needle hangs, top groove to bottom one
	wanted, weak, rich, ok := m.reach(t, lowest-pitch/2, highest+pitch/2, func(p *plant, k float64) { p.needle.raised = k })
	var why fault.Reason
	if !ok {
		wanted = lowest
		text := "even with the needle in its top groove lambda is " + digits3(weak)
		if rich > t.Lambda.Value() {
			wanted, text = highest, "even with the needle in its bottom groove lambda is "+digits3(rich)
		}
		why = fault.Reason{Code: "needle-cannot-reach", Text: text + " where " + digits3(t.Lambda.Value()) + " is wanted: another needle jet, or needle"}
	}
	groove := math.Min(float64(g.Of), math.Max(1, math.Round(wanted/pitch+middle)))
	from := n.offset()
	out.Raise = units.Metres(wanted - from)
	out.Groove = Groove{FromTop: int(groove), Of: g.Of}
	if j, _, _, ok := m.reach(t, m.plant.needle.diameter*1.0005, m.plant.needle.diameter*2, func(p *plant, k float64) { p.needleJet = k; p.needle.raised = 0 }); ok {
		out.NeedleJet = units.Metres(j)
	}
	m.plant.needle.raised = wanted
	out.Annulus = units.SquareMetres(m.plant.annulusAt(t.Lift.Value()*m.plant.bore, m.value[kRing]))
	m.plant.needle.raised = (groove - middle) * pitch
	return why
}

func settled(a, b plant) bool {
	near := func(x, y float64) bool { return math.Abs(x-y) <= 1e-4*math.Abs(y) }
	return near(a.mainJet.ca, b.mainJet.ca) && near(a.pilotJet.ca, b.pilotJet.ca) && a.cutaway == b.cutaway && a.needle.raised == b.needle.raised
}

// jetSetting fills factor, band and jet in. What is uncertain is how far lambda
// is from the wish now, over what a step of the jet does to it. A jet that hardly
// changes the mixture, behind an annulus or a bleed that has the say, has no band.
func (m *Model) jetSetting(s *JetSetting, fitted Jet, factor float64, change func(*plant, float64), after *Model) {
	s.Jet = fitted.times(factor)
	u, ok := after.relative(s.At.Lift.Value(), s.At.Speed.RevolutionsPerSecond())
	if !ok {
		return
	}
	p := after.plant
	change(&p, 1.01)
	st := p.at(s.At.Lift.Value()*p.bore, s.At.Speed.RevolutionsPerSecond(), &after.value)
	say := -math.Log(st.lambda/s.After.Value()) / math.Log(1.01)
	if sd := u / say; say > 0 && sd <= openEnded {
		s.FlowFactor = lnBand[units.Ratio](math.Log(factor), sd)
		s.BoreFactor = lnBand[units.Ratio](math.Log(factor)/2, sd/2)
	}
}

// times returns a jet that passes k times as much.
func (j Jet) times(k float64) Jet {
	switch {
	case j.bore.Taken():
		return Jet{bore: measure.Of(j.bore.Value().Times(math.Sqrt(k)), units.Millimetres(math.Max(1e-9, j.bore.U().Millimetres())).Times(math.Sqrt(k)))}
	case j.effective.Taken():
		return Jet{effective: measure.Of(j.effective.Value().Times(k), units.SquareMillimetres(math.Max(1e-9, j.effective.U().SquareMillimetres())).Times(k))}
	case j.flow.Taken():
		return Jet{flow: measure.Of(j.flow.Value().Times(k), units.CubicCentimetresPerMinute(math.Max(1e-9, j.flow.U().CubicCentimetresPerMinute())).Times(k)), head: j.head}
	}
	return j
}

// String returns text such as "3 of 5 from the top".
func (g Groove) String() string {
	if !g.Taken() {
		return "not read"
	}
	return strconv.Itoa(g.FromTop) + " of " + strconv.Itoa(g.Of) + " from the top"
}
