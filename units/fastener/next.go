package fastener

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// further is a reading that could be taken next, spoken of by its outcomes:
// which of the candidates' figures it comes out nearest to.
type further struct {
	key, text string
	minutes   float64
	u         func(Thread) float64 // its spread, in the figure's own unit
	figure    func(Thread) float64
}

// nextReadings ranks the readings not yet taken by what they would tell.
func nextReadings(r Readings, ranking measure.Ranking, c []Candidate) []measure.Gain {
	if len(c) < 2 || c[0].Odds.Share > 0.999 {
		return nil
	}
	list := make([]further, 0, 4)
	if !r.Flank.Taken() {
		list = append(list, further{"flank", "flank angle, with a 55° and a 60° gauge held to the light", 5,
			func(Thread) float64 { return 1.5 }, func(t Thread) float64 { return t.form.Included().Degrees() }})
	}
	pitch := func(t Thread) float64 { return t.pitch.Millimetres() }
	if !r.Pitch.Taken() {
		list = append(list, further{"pitch", "pitch, with a thread gauge", 2,
			func(t Thread) float64 { return 0.005 * t.pitch.Millimetres() }, pitch})
	}
	if !r.Count.Pitches.Taken() {
		list = append(list, further{"count", "pitches counted over an inch or more, the length by caliper", 5,
			func(t Thread) float64 { return 0.002 * t.pitch.Millimetres() }, pitch})
	}
	if r.Hole.Taken() && !r.Major.Taken() {
		list = append(list, further{"major", "outside diameter of the bolt that belongs in it", 2,
			func(Thread) float64 { return 0.04 }, func(t Thread) float64 { return t.major.Millimetres() }})
	} else {
		list = append(list, further{"major", "outside diameter again, by micrometer on the least worn turn", 3,
			func(Thread) float64 { return 0.02 }, func(t Thread) float64 { return t.major.Millimetres() }})
	}
	checks := make([]measure.Check, 0, len(list))
	for _, f := range list {
		if o, ok := f.outlooks(c); ok {
			checks = append(checks, measure.Check{Key: f.key, Text: f.text, Work: units.MinutesOfTime(f.minutes), Outlooks: o})
		}
	}
	if r.Part == PartUnknown {
		outlooks := map[string]measure.Outlook{measure.SomethingElse: {Chances: []float64{1.0 / 3, 1.0 / 3, 1.0 / 3}}}
		for _, k := range c {
			outlooks[k.Odds.Key] = measure.Outlook{Chances: partChances(k.Thread.system)}
		}
		checks = append(checks, measure.Check{Key: "part", Text: "what kind of part it is: bolt or nut, fitting, or spoke", Work: units.MinutesOfTime(0.5), Outlooks: outlooks})
	}
	gains, err := measure.Next(ranking, checks)
	if err != nil { // the outlooks are made here and sound
		return nil
	}
	for i, g := range gains {
		if g.Bits < 0.005 {
			return gains[:i]
		}
	}
	return gains
}

// speakers is how many candidates an outlook is worked out for at most.
const speakers = 12

// outlooks returns, for each candidate, the chances that the reading comes out
// nearest to each of the candidates' figures. ok is false if there is only one.
func (f further) outlooks(c []Candidate) (map[string]measure.Outlook, bool) {
	var figures [speakers]float64
	n := 0
	for i := range c {
		if c[i].Odds.Share < 1e-3 || n == speakers {
			break
		}
		x, seen := f.figure(c[i].Thread), false
		for _, y := range figures[:n] {
			seen = seen || math.Abs(x-y) < 1e-3*f.u(c[i].Thread)
		}
		if !seen {
			figures[n] = x
			n++
		}
	}
	if n < 2 {
		return nil, false
	}
	out := make(map[string]measure.Outlook, len(c)+1)
	chances := make([]float64, 0, n*(len(c)+1))
	for i := range c {
		if c[i].Odds.Share < 1e-4 {
			break
		}
		x, u, at, sum := f.figure(c[i].Thread), f.u(c[i].Thread), len(chances), 0.0
		nearest := math.Inf(1)
		for _, y := range figures[:n] {
			nearest = min(nearest, math.Abs(y-x))
		}
		for _, y := range figures[:n] {
			p := math.Exp((sq(nearest) - sq(y-x)) / (2 * sq(u)))
			chances = append(chances, p)
			sum += p
		}
		for k := at; k < len(chances); k++ {
			chances[k] /= sum
		}
		out[c[i].Odds.Key] = measure.Outlook{Chances: chances[at:len(chances):len(chances)]}
	}
	at := len(chances)
	for range n {
		chances = append(chances, 1/float64(n))
	}
	out[measure.SomethingElse] = measure.Outlook{Chances: chances[at:]}
	return out, true
}
