package carburation

import (
	"math"
	"strings"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// AdviseOptions are the choices of Advise. The zero value takes the defaults.
type AdviseOptions struct {
	// Priors are weights before anything was seen, by cause key; a cause not
	// named keeps its default, given in Advice.Basis.
	Priors map[string]float64
	// Model, if it was built, turns the amount to change into the steps of this
	// very carburettor; without it the trade's steps are given.
	Model *Model
}

// Advice is what to change next.
type Advice struct {
	Causes       measure.Ranking `json:"causes"`
	Next         Step            `json:"next"`  // do this first, then look again
	Steps        []Step          `json:"steps"` // what to do for each cause of 5 % or more: checks first, then in the trade's order
	NextReadings []measure.Gain  `json:"next_readings"`
	NoStep       fault.Reason    `json:"no_step,omitzero"` // code "nothing-seen" or "leave-alone"
	Basis        refdata.Basis   `json:"basis"`
}

// Step is one change, or one look.
type Step struct {
	Key    string            `json:"key"`    // of the cause it is for: "main-jet:small"
	Text   string            `json:"text"`   // "fit a main jet with 9 % more flow"
	Factor Band[units.Ratio] `json:"factor"` // on a jet's flow, for jets
	Steps  float64           `json:"steps"`  // grooves, half numbers or half turns, for the others; with a model, its own
	Share  float64           `json:"share"`  // of belief that the cause is true
	Look   bool              `json:"look"`   // a check, to be made before any jet is touched
}

// cause is one thing that may be wrong, with the size and shape of what it does
// to ln lambda over the zones.
type cause struct {
	key, text string
	prior     float64
	mean, sd  float64 // of the amount, above zero is weaker
	column    [nZones]float64
	fades     float64 // chance that it fades at full throttle when held
	step      string  // what to do; a part has one of its own
	part      string  // key of partStep, "" for looks
	order     int     // in the trade's order; looks come first
	found     float64 // chance that its own check finds it if it is there
}

// weighed is a cause as a hypothesis: normal mixtures and the chance of fading.
type weighed struct {
	measure.Gaussian
	fades float64
}

// LogLikelihood returns that of the mixtures plus that of fading or not.
func (w weighed) LogLikelihood(d measure.Data) float64 {
	l := w.Gaussian.LogLikelihood(d[:dFades])
	if f := d[dFades]; f.Taken {
		if f.Value > 0 {
			l += math.Log(w.fades)
		} else {
			l += math.Log1p(-w.fades)
		}
	}
	return l
}

// causes lists what may be wrong. Columns of the carburettor's parts are the
// trade's table of influence at the lifts where the zones are judged; those of
// the rest are judged.
func causes() []cause {
	var part [5][nZones]float64
	i := 0
	for row := range refdata.ThrottleInfluences().All() {
		if i < len(part) {
			for z := range nZones {
				part[i][z] = influence(row, z.lift())
			}
			i++
		}
	}
	pilot, cut, ring, needle, main := part[0], part[1], part[2], part[3], part[4]
	const size, spread = 0.12, 0.07
	c := []cause{
		{key: measure.NothingWrong, text: "mixture as it should be", prior: 1},
		{key: "main-jet:small", text: "main jet too small", prior: 1, mean: size, column: main, part: "main-jet", order: 1},
		{key: "main-jet:large", text: "main jet too large", prior: 1, mean: -size, column: main, part: "main-jet", order: 1},
		{key: "cutaway:high", text: "slide cutaway too high", prior: 0.6, mean: size, column: cut, part: "cutaway", order: 3},
		{key: "cutaway:low", text: "slide cutaway too low", prior: 0.6, mean: -size, column: cut, part: "cutaway", order: 3},
		{key: "needle:low", text: "needle too low", prior: 1, mean: size, column: needle, part: "needle", order: 4},
		{key: "needle:high", text: "needle too high", prior: 1, mean: -size, column: needle, part: "needle", order: 4},
		{key: "pilot:weak", text: "pilot set or jetted too weak", prior: 1, mean: size, column: pilot, part: "pilot-jet", order: 5},
		{key: "pilot:rich", text: "pilot set or jetted too rich", prior: 1, mean: -size, column: pilot, part: "pilot-jet", order: 5},
		{key: "needle-jet:worn", text: "needle jet worn", prior: 0.7, mean: -size, column: both(ring, needle, 0.6), step: "pass a drill shank or gauge pin through the needle jet: if it is oval or more than 0.02 mm over size, renew it with its needle", order: 0, found: 0.9},
		{key: "air-leak", text: "air leaks in behind the slide", prior: 0.7, mean: 0.15, column: [nZones]float64{1, 0.6, 0.2, 0.1}, step: "look for air leaks at flange, spacer and manifold, and for a worn slide and body, before any jet is touched", order: 0, found: 0.85},
		{key: "fuel-level:low", text: "fuel level too low", prior: 0.4, mean: size, column: [nZones]float64{1, 0.7, 0.3, 0.1}, step: "measure the fuel level and set the float", order: 0, found: 0.9},
		{key: "fuel-level:high", text: "fuel level too high, or float valve leaking", prior: 0.5, mean: -size, column: [nZones]float64{1, 0.7, 0.3, 0.1}, step: "measure the fuel level, and look at the float valve and its seat", order: 0, found: 0.9},
		{key: "fuel-feed", text: "fuel does not keep up", prior: 0.5, mean: 0.18, column: [nZones]float64{0, 0, 0.2, 1}, fades: 0.8, step: "time 500 cc out of the pipe at the carburettor, tank low and cap shut: it should be twice the need at full throttle", order: 0, found: 0.95},
		{key: "air-cleaner", text: "air cleaner choked", prior: 0.4, mean: -size, column: [nZones]float64{0.1, 0.3, 0.6, 1}, step: "try it with the air cleaner off, or clean it", order: 0, found: 0.9},
	}
	for i := range c {
		if c[i].fades == 0 {
			c[i].fades = 0.07 // a cap vent or a hot engine may do it too
		}
		c[i].sd = spread
	}
	return c
}

func both(a, b [nZones]float64, share float64) (c [nZones]float64) {
	for i := range c {
		c[i] = math.Max(a[i], share*b[i])
	}
	return c
}

// hypothesis returns a cause as a Gaussian over the data.
func (c cause) hypothesis(own []float64) weighed {
	g := measure.Gaussian{Mean: make([]float64, dFades), Own: own}
	column := make([]float64, dFades)
	for i := range column {
		column[i] = c.column[i/perZone]
		g.Mean[i] = c.mean * column[i]
	}
	if c.mean != 0 {
		g.Free = []measure.Effect{{Name: c.key, SD: c.sd, Column: column}}
	}
	// no engine holds its mixture to better than this from zone to zone
	for z := range nZones {
		one := make([]float64, dFades)
		for i := range perZone {
			one[int(z)*perZone+i] = 1
		}
		g.Shared = append(g.Shared, measure.Effect{Name: zoneNames[z], SD: 0.03, Column: one})
	}
	return weighed{g, c.fades}
}

func somethingElse(own []float64) weighed {
	g := measure.Gaussian{Mean: make([]float64, dFades), Own: own}
	for z := range nZones {
		one := make([]float64, dFades)
		for i := range perZone {
			one[int(z)*perZone+i] = 1
		}
		g.Free = append(g.Free, measure.Effect{Name: zoneNames[z], SD: 0.2, Column: one})
	}
	return weighed{g, 0.25}
}

// Advise weighs what may be wrong by what was seen at each mark of the grip,
// and says what to change next, by how much, in the trade's order: looks that
// cost no parts before any jet, then main jet, cutaway, needle, pilot; one thing
// at a time. The order and the parts' ranges are common practice; sizes and
// weights are judged and listed. Spark, timing and tappets look like mixture
// faults and are not told apart here: they come under something else. Errors:
// signs and answers that are none, lambda outside 0.5 to 2, a prior not above
// zero or for no cause.
func Advise(s Symptoms, opt AdviseOptions) (Advice, error) {
	var l fault.List
	d, own := s.data(&l)
	all := causes()
	known := map[string]bool{measure.SomethingElse: true}
	for _, c := range all {
		known[c.key] = true
	}
	for key, p := range opt.Priors {
		if !known[key] {
			l.Add(fault.Fault{Code: fault.UnknownName, Path: "options.priors." + key, Rule: "the key of a cause"})
		} else if !(p > 0 && p < 1e6) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: "options.priors." + key, Value: digits3(p), Rule: "above 0"})
		}
	}
	if opt.Model != nil && !opt.Model.ready {
		l.Add(fault.Fault{Code: fault.Missing, Path: "options.model", Rule: "built by NewModel, or nil"})
	}
	switch s.Screw.Kind {
	case ScrewNotTold, AirScrew, FuelScrew:
	default:
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "screw.kind", Value: string(s.Screw.Kind), Rule: `"air", "fuel" or nothing`})
	}
	if s.Screw.Turns.Taken() {
		l.Under("screw.turns", s.Screw.Turns.Err())
		positive(&l, "screw.turns", s.Screw.Turns.Value(), 0, 8)
	}
	if l.Len() > 0 {
		return Advice{}, l.Err()
	}
	prior := func(key string, p float64) float64 {
		if own, ok := opt.Priors[key]; ok {
			return own
		}
		return p
	}
	var list []measure.Cause
	hyp := map[string]weighed{}
	for _, c := range all {
		h := c.hypothesis(own)
		hyp[c.key] = h
		list = append(list, measure.Cause{Key: c.key, Text: c.text, Prior: prior(c.key, c.prior), Hypothesis: h})
	}
	other := somethingElse(own)
	hyp[measure.SomethingElse] = other
	r, err := measure.Rank(d, list, measure.Cause{Text: "something else: spark, timing, tappets, compression, a wet or worn part", Prior: prior(measure.SomethingElse, 0.6), Hypothesis: other})
	if err != nil {
		return Advice{}, err
	}
	a := Advice{Causes: r, Basis: adviceBasis(all, s)}
	a.steps(all, hyp, d, s, opt.Model)
	if a.NextReadings, err = nextReadings(r, all, hyp, d); err != nil {
		return Advice{}, err
	}
	return a, nil
}

// steps fills the steps in, looks first, then the trade's order.
func (a *Advice) steps(all []cause, hyp map[string]weighed, d measure.Data, s Symptoms, m *Model) {
	seen := false
	for _, x := range d {
		seen = seen || x.Taken
	}
	if !seen {
		a.NoStep = fault.Reason{Code: "nothing-seen", Text: "nothing was seen or read: ride it, and judge at the marks"}
		return
	}
	best := -1.0
	for order := range 6 {
		for _, c := range all {
			if c.order != order || c.key == measure.NothingWrong {
				continue
			}
			odds, ok := a.Causes.Of(c.key)
			if !ok || odds.Share < 0.05 {
				continue
			}
			st := Step{Key: c.key, Share: odds.Share, Text: c.step, Look: c.part == ""}
			if c.part != "" {
				amount, u := hyp[c.key].Amount(0, d[:dFades])
				c.change(&st, c.mean+amount, u, s, m)
			}
			a.Steps = append(a.Steps, st)
			best = math.Max(best, odds.Share)
		}
	}
	if lead := a.Causes.Leader(); lead.Key == measure.NothingWrong && lead.Share > 2*best {
		a.NoStep = fault.Reason{Code: "leave-alone", Text: "what was seen is what a right mixture shows: leave it alone"}
		return
	}
	// the first in order that is at least half as likely as the likeliest: a look
	// is cheap, and a part that acts later in the lift adds to the earlier ones
	for _, st := range a.Steps {
		if st.Share >= best/2 {
			a.Next = st
			return
		}
	}
	a.NoStep = fault.Reason{Code: "something-else", Text: "no part of the carburettor explains this: look at spark, timing, tappets and compression first"}
}

// change says how far to move a part for ln lambda to move by -amount.
func (c cause) change(st *Step, amount, u float64, s Symptoms, m *Model) {
	more := amount > 0 // weak: more fuel
	switch c.part {
	case "main-jet":
		st.Factor = lnBand[units.Ratio](amount, u)
		st.Text = "fit a main jet with " + percent(amount) + " flow"
		if more {
			st.Text += "; too rich only wastes fuel, too weak melts pistons"
		}
	case "pilot-jet":
		st.Factor = lnBand[units.Ratio](amount, u)
		st.Text, st.Steps = pilotStep(amount, s.Screw)
	case "cutaway":
		st.Steps = halfSteps(amount, 0.04, m, "cutaway", PickUp)
		st.Text = "fit a slide " + countOf(st.Steps, "half number", "half numbers") + map[bool]string{true: " lower", false: " higher"}[more]
	case "needle":
		st.Steps = halfSteps(amount, 0.06, m, "needle", Middle)
		st.Text = map[bool]string{true: "raise", false: "lower"}[more] + " the needle " + countOf(st.Steps, "groove", "grooves") + map[bool]string{true: " (clip lower)", false: " (clip higher)"}[more]
	}
}

// halfSteps returns how many steps undo an amount, at least one. Without a model
// one step is taken as per of lambda (judged).
func halfSteps(amount, per float64, m *Model, key string, z Zone) float64 {
	if m != nil {
		if e, err := m.Explain(units.Value(z.lift()), units.RevolutionsPerSecond(m.plant.peak*0.65)); err == nil {
			for _, x := range e.Sensitivities {
				if v := math.Abs(x.Effect.Value()); x.Key == key && v > 0.002 {
					per = v
				}
			}
		}
	}
	return math.Max(1, math.Round(math.Abs(amount)/per))
}

// pilotStep turns the screw, or changes the jet where the screw has no way left
// (common practice: within half a turn of shut, or beyond 3 turns).
func pilotStep(amount float64, s Screw) (string, float64) {
	more := amount > 0
	turns, told := s.Turns.Value().Value(), s.Turns.Taken()
	in := more // an air screw goes in for more fuel
	if s.Kind == FuelScrew {
		in = !more
	}
	if s.Kind == ScrewNotTold {
		return "find out which side of the slide the pilot screw sits on: on the intake side in is richer, on the engine side out is; then turn it a quarter " + map[bool]string{true: "richer", false: "weaker"}[more], 0.5
	}
	if told && (in && turns <= 0.5 || !in && turns >= 3) {
		return "fit a pilot jet with " + percent(amount) + " flow, since the screw has no way left, and set the screw to 1 1/2 turns out", 0
	}
	return "turn the pilot screw a quarter turn " + map[bool]string{true: "in", false: "out"}[in] + ", and again while it gets better", 0.5
}

func percent(amount float64) string {
	p := digits3(math.Abs(math.Round(100 * math.Expm1(amount))))
	if amount >= 0 {
		return p + " % more"
	}
	return p + " % less"
}

func countOf(n float64, one, many string) string {
	if n == 1 {
		return "one " + one
	}
	return digits3(n) + " " + many
}

// nextReadings ranks lambda in each zone not yet read, and each cause's own
// check, by what they are expected to tell.
func nextReadings(r measure.Ranking, all []cause, hyp map[string]weighed, d measure.Data) ([]measure.Gain, error) {
	var checks []measure.Check
	for z := range nZones {
		at := int(z)*perZone + dLambda
		if d[at].Taken {
			continue
		}
		c := measure.Check{Key: "lambda:" + strings.ReplaceAll(zoneNames[z], "_", "-"), Text: "lambda at " + z.String(), Work: units.MinutesOfTime(20), Outlooks: map[string]measure.Outlook{}}
		for key, h := range hyp {
			c.Outlooks[key] = h.Outlook(at, d[:dFades])
		}
		checks = append(checks, c)
	}
	for _, look := range all {
		if look.found == 0 {
			continue
		}
		c := measure.Check{Key: "look:" + look.key, Text: look.step, Work: units.MinutesOfTime(15), Outlooks: map[string]measure.Outlook{}}
		for key := range hyp {
			p := 0.05
			if key == look.key {
				p = look.found
			}
			c.Outlooks[key] = measure.Outlook{Chances: []float64{p, 1 - p}}
		}
		checks = append(checks, c)
	}
	return measure.Next(r, checks)
}

func adviceBasis(all []cause, s Symptoms) refdata.Basis {
	b := refdata.Basis{Sources: []refdata.Source{refdata.Practice()}, Cautions: []refdata.Caution{refdata.WeakMixture, refdata.PetrolVapour, refdata.CarbonMonoxide, refdata.BrakesBeforeRoad, refdata.DeferToManual}}
	var p []string
	for _, c := range all {
		p = append(p, c.key+" "+digits3(c.prior))
	}
	b.Assumed = []refdata.Assumption{
		{What: "weights before anything was seen", Value: strings.Join(p, ", ") + ", " + measure.SomethingElse + " 0.6", Status: refdata.FromMemory},
		{What: "a mixture that shows", Value: "12 % off, give or take 8 %; a plug's colour 12 %; a part that is wrong, 12 % ± 7 % in its range", Status: refdata.FromMemory},
	}
	for z, seen := range s.zones() {
		if seen.Runs == NotLooked && seen.Plug == NotLooked && !seen.Lambda.Taken() {
			b.NotChecked = append(b.NotChecked, refdata.Unchecked{What: "mixture at " + Zone(z).String(), Why: "nothing was seen there", Settle: "hold the grip at its mark, engine hot, and close the air a little: better means weak"})
		}
	}
	if s.Fades == NotAsked {
		b.NotChecked = append(b.NotChecked, refdata.Unchecked{What: "whether it fades at full throttle", Why: "not tried", Settle: "time the flow of fuel at the carburettor instead"})
	}
	b.NotChecked = append(b.NotChecked, refdata.Unchecked{What: "spark, timing, tappets, compression", Why: "each looks like a mixture fault", Settle: "check them before a jet is touched"})
	return b
}
