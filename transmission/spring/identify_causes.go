package spring

import (
	"math"
	"strconv"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// explanation is one cause as it moves the two data: the logarithm of the
// loaded rate over the reckoned one, and the solid length in wires.
type explanation struct {
	key, text string
	prior     float64
	coils     float64 // true total less counted
	dead      float64 // true dead coils less those taken
	shear     float64 // true modulus over that taken, less its uncertainty
	ushear    float64 // relative; 0: that of the modulus taken
	wire      float64 // standard deviation of a misreading of the wire, relative
	balance   float64 // standard deviation of a wrong balance, relative
	magnet    float64 // chance that a magnet grips it like steel
}

// explanations holds the default priors: this library's judgement, no source.
// Moduli of stainless and bronze wire are 69 ± 2 and 41.4 ± 1.5 GPa (Shigley's
// Mechanical Engineering Design, table 10-5, from memory).
func explanations(g float64) []explanation {
	return []explanation{
		{key: "as-read", text: "the spring is what its dimensions say", prior: 0.70, magnet: 0.99},
		{key: "coils:+1", text: "it has one coil more than was counted", prior: 0.05, coils: 1, magnet: 0.99},
		{key: "coils:-1", text: "it has one coil fewer than was counted", prior: 0.05, coils: -1, magnet: 0.99},
		{key: "dead:+1", text: "one coil more lies dead at its ends than was taken", prior: 0.04, dead: 1, magnet: 0.99},
		{key: "dead:-1", text: "one coil fewer lies dead at its ends than was taken", prior: 0.04, dead: -1, magnet: 0.99},
		{key: "wire-misread", text: "the wire is not as thick as it measures, under plating, paint or rust, or was misread", prior: 0.04, wire: 0.04, magnet: 0.99},
		{key: "balance-wrong", text: "the balance reads wrong", prior: 0.04, balance: 0.15, magnet: 0.99},
		{key: "stainless", text: "it is wound of stainless wire", prior: 0.02, shear: 69e9 / g, ushear: 0.03, magnet: 0.3},
		{key: "bronze", text: "it is wound of bronze wire", prior: 0.01, shear: 41.4e9 / g, ushear: 0.036, magnet: 0.002},
	}
}

const otherPrior = 0.01

// rank weighs what may lie behind the two rates. ul and ug are the relative
// uncertainties of the loaded rate and of the modulus.
func (id *Identity) rank(in Readings, m made, ul, ug float64, opt IdentifyOptions) error {
	g := id.Shear.Value().SI() / (1 + id.Difference) // the modulus taken
	data := measure.Data{
		{Value: math.Log1p(id.Difference), Taken: true},
		{Value: in.Solid.Value().Ratio(in.Wire.Value()), Taken: in.Solid.Taken()},
	}
	extra := 0.0
	if !in.Ends.Ground() {
		extra = 1
	}
	var causes []measure.Cause
	gaussians := map[string]measure.Gaussian{}
	used := explanations(g)
	kept := used[:0]
	for _, e := range used {
		n := m.active + e.coils - e.dead
		if !(n > 0.3) { // no coil left to work
			continue
		}
		kept = append(kept, e)
		mean := math.Log(m.active / n)
		us := ug
		if e.shear > 0 {
			mean += math.Log(e.shear)
			us = e.ushear
		}
		solid := m.total + e.coils + extra
		own := math.Sqrt(ul*ul + us*us + square(m.co*m.uo) + square(m.ut/n) + square(e.balance))
		// end grinding is not exact: a quarter of a wire, by this library's judgement
		ownSolid := math.Sqrt(square(in.Solid.U().Millimetres()/m.d) + m.ut*m.ut + square(0.25))
		// a wire read too thick makes the reckoned rate too high and the solid
		// length too few wires
		du := math.Hypot(m.ud/m.d, e.wire)
		gauss := measure.Gaussian{
			Mean: []float64{mean, solid}, Own: []float64{own, ownSolid},
			Shared: []measure.Effect{{Name: "wire", SD: du, Column: []float64{m.cd * m.d, solid}}},
		}
		gaussians[e.key] = gauss
		prior := e.prior
		if p, set := opt.Priors[e.key]; set {
			prior = p
		}
		causes = append(causes, measure.Cause{Key: e.key, Text: e.text, Prior: prior, Hypothesis: gauss})
	}
	otherWeight := otherPrior
	if p, set := opt.Priors[measure.SomethingElse]; set {
		otherWeight = p
	}
	// anything within about a factor of two either way, and a wire or so
	wide := measure.Gaussian{Mean: []float64{0, m.total + extra}, Own: []float64{math.Hypot(0.7, ul), 1}}
	gaussians[measure.SomethingElse] = wide
	r, err := measure.Rank(data, causes, measure.Cause{Text: "something else", Prior: otherWeight, Hypothesis: wide})
	if err != nil {
		return err
	}
	id.Causes = r
	id.NextReadings, err = measure.Next(r, checks(in, kept, gaussians, data))
	return err
}

// checks are the readings that could be taken next. Times and chances are this
// library's judgement, no source.
func checks(in Readings, causes []explanation, g map[string]measure.Gaussian, d measure.Data) []measure.Check {
	recount := measure.Check{Key: "recount", Text: "count the coils again, marking the first with chalk", Work: units.Seconds(60), Outlooks: map[string]measure.Outlook{}}
	magnet := measure.Check{Key: "magnet", Text: "hold a magnet to it", Work: units.Seconds(10), Outlooks: map[string]measure.Outlook{}}
	weight := measure.Check{Key: "known-weight", Text: "hang a known weight on the balance", Work: units.Seconds(120), Outlooks: map[string]measure.Outlook{}}
	wire := measure.Check{Key: "bare-wire", Text: "clean one coil to bare metal and read the wire by micrometer at three places", Work: units.Seconds(180), Outlooks: map[string]measure.Outlook{}}
	dead := measure.Check{Key: "dead-coils", Text: "slide a feeler in from each end to see where the coils begin to work", Work: units.Seconds(60), Outlooks: map[string]measure.Outlook{}}
	solid := measure.Check{Key: "solid-length", Text: "squeeze it solid in a vice, guided on a rod, and measure it", Work: units.Seconds(180), Outlooks: map[string]measure.Outlook{}}
	sure := func(right bool) []float64 {
		if right {
			return []float64{0.95, 0.05}
		}
		return []float64{0.1, 0.9}
	}
	for _, e := range causes {
		switch {
		case e.coils > 0:
			recount.Outlooks[e.key] = measure.Outlook{Chances: []float64{0.1, 0.88, 0.02}}
		case e.coils < 0:
			recount.Outlooks[e.key] = measure.Outlook{Chances: []float64{0.1, 0.02, 0.88}}
		default:
			recount.Outlooks[e.key] = measure.Outlook{Chances: []float64{0.96, 0.02, 0.02}}
		}
		magnet.Outlooks[e.key] = measure.Outlook{Chances: []float64{e.magnet, 1 - e.magnet}}
		weight.Outlooks[e.key] = measure.Outlook{Chances: sure(e.balance == 0)}
		wire.Outlooks[e.key] = measure.Outlook{Chances: sure(e.wire == 0)}
		dead.Outlooks[e.key] = measure.Outlook{Chances: sure(e.dead == 0)}
	}
	// whatever else it is, most of these would find nothing amiss
	recount.Outlooks[measure.SomethingElse] = measure.Outlook{Chances: []float64{0.8, 0.1, 0.1}}
	magnet.Outlooks[measure.SomethingElse] = measure.Outlook{Chances: []float64{0.9, 0.1}}
	for _, c := range []measure.Check{weight, wire, dead} {
		c.Outlooks[measure.SomethingElse] = measure.Outlook{Chances: []float64{0.8, 0.2}}
	}
	out := []measure.Check{recount, magnet, weight, wire, dead}
	if !in.Solid.Taken() {
		for key, gauss := range g {
			solid.Outlooks[key] = gauss.Outlook(1, d)
		}
		out = append(out, solid)
	}
	return out
}

// String says the identity in a line.
func (id Identity) String() string {
	switch {
	case id.Reason.Given():
		return id.Reason.Text
	case id.Agrees:
		return "rate " + id.ByLoad.String() + " by load, " + id.ByDimensions.String() + " by dimensions: they agree"
	}
	return "rate " + id.ByLoad.String() + " by load, " + id.ByDimensions.String() + " by dimensions: they differ by " + strconv.Itoa(int(math.Round(100*id.Difference))) + " %"
}
