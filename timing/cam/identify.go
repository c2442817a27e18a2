package cam

import (
	"math"
	"strconv"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Profile is a cam whose lift is known.
type Profile struct {
	Name  string
	Curve *Curve
	Prior float64 // weight before the readings; default 1
}

// IdentifyOptions are the spreads of the comparison. The zero value is the default.
type IdentifyOptions struct {
	Reading units.Length // standard deviation of one reading; default 0.01 mm
	// Make is how far a cam of the right kind may stand from its profile, by
	// grinding and wear, one standard deviation; default 0.04 mm: common practice.
	Make units.Length
	Zero units.Length // of the gauge's zero, common to all readings; default 0.03 mm
	// BothWays also tries every profile back to front; default false.
	BothWays bool
	Other    float64 // prior of "something else"; default 0.1 of all the rest
}

// Match is how a profile lies best on the readings.
type Match struct {
	Key      string                          `json:"key"` // as in the ranking
	Profile  string                          `json:"profile"`
	Reversed bool                            `json:"reversed"`
	Phase    measure.Reading[units.CamAngle] `json:"phase"`    // to be added to the profile's angles to lie on the readings
	Zero     units.Length                    `json:"zero"`     // the gauge then stands this high on the base circle
	Misfit   units.Length                    `json:"misfit"`   // root mean square of what is left
	MaxLift  units.Length                    `json:"max_lift"` // of the profile
}

// Identified is which known cam the readings are of.
type Identified struct {
	Causes  measure.Ranking `json:"causes"`
	Matches []Match         `json:"matches"` // in the order of the ranking
	Basis   refdata.Basis   `json:"basis"`
}

// independent bounds how many readings count as free of one another: what grinding
// and wear do to a cam is smooth, so that a hundred readings hold no more of it than
// a couple of dozen do.
const independent = 24

// Identify ranks known profiles by readings of an unmarked cam taken from any
// angle: each is turned to where it lies best, the gauge's zero left open, and
// weighed by what is left over, with the spread of angle counted against it. Keys
// are the names, with ":reversed" for a profile back to front. Something else is a
// cam that stands 0.5 mm from every profile. Readings of one follower say nothing of
// another: bring the profiles to it first with [Curve.WithFollower].
//
// Errors: fewer than 8 readings or one that is not finite; no profile or more than
// 1000, one without a curve, a name twice; a spread below zero.
func Identify(readings []Sample, known []Profile, opt IdentifyOptions) (Identified, error) {
	var l fault.List
	at, y, w := gather(&l, readings)
	if len(known) == 0 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "known", Rule: "at least one known profile is needed"})
	}
	if len(known) > 1000 {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "known", Value: strconv.Itoa(len(known)), Rule: "at most 1000 profiles"})
	}
	for i, p := range known {
		path := "known[" + strconv.Itoa(i) + "]"
		if p.Curve == nil || len(p.Curve.coef) == 0 {
			l.Add(fault.Fault{Code: fault.Missing, Path: path + ".curve", Value: p.Name, Rule: "a profile needs its curve"})
		}
		if !(p.Prior >= 0) || math.IsInf(p.Prior, 0) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: path + ".prior", Value: p.Name, Rule: "a prior must be finite and not below zero"})
		}
	}
	var out Identified
	def := func(path string, v units.Length, d units.Length, what string) float64 {
		positive(&l, "options."+path, v, "mm")
		if v == 0 {
			v = d
			out.Basis.Assumed = append(out.Basis.Assumed, refdata.Assumption{What: what, Value: d.String(), Status: refdata.CommonPractice})
		}
		return v.Millimetres()
	}
	own := def("reading", opt.Reading, units.Millimetre/100, "error of one reading")
	make_ := def("make", opt.Make, units.Millimetre/25, "spread of cams of one kind")
	zero := def("zero", opt.Zero, 3*units.Millimetre/100, "error of the gauge's zero")
	if !(opt.Other >= 0) || math.IsInf(opt.Other, 0) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "options.other", Rule: "a prior must be finite and not below zero"})
	}
	if err := l.Err(); err != nil {
		return Identified{}, err
	}
	spread := math.Hypot(own, make_)
	fit := fitter{at: at, y: y, w: w, zero: zero}
	var causes []measure.Cause
	matches := map[string]Match{}
	priors := 0.0
	try := func(p Profile, reversed bool) {
		prior := p.Prior
		if prior == 0 {
			prior = 1
		}
		c, key, text := p.Curve, p.Name, p.Name
		if reversed {
			c, key, text = p.Curve.Reversed(), p.Name+":reversed", p.Name+", back to front"
			prior /= 4
		}
		m, logL := fit.best(c, spread)
		m.Key, m.Profile, m.Reversed = key, p.Name, reversed
		m.MaxLift, _ = p.Curve.MaxLift()
		matches[key] = m
		priors += prior
		causes = append(causes, measure.Cause{Key: key, Text: text, Prior: prior, Hypothesis: measure.LogLikelihood(func(measure.Data) float64 { return logL })})
	}
	for _, p := range known {
		try(p, false)
		if opt.BothWays {
			try(p, true)
		}
	}
	if opt.Other == 0 {
		opt.Other = 0.1 * priors
	}
	other := fit.other(math.Hypot(spread, 0.5))
	var err error
	out.Causes, err = measure.Rank(nil, causes, measure.Cause{Text: "a cam that is not in the list", Prior: opt.Other, Hypothesis: measure.LogLikelihood(func(measure.Data) float64 { return other })})
	if err != nil {
		return Identified{}, err
	}
	for _, o := range out.Causes.Odds {
		if m, ok := matches[o.Key]; ok {
			out.Matches = append(out.Matches, m)
		}
	}
	out.Basis.Sources = []refdata.Source{{Title: "least squares over phase and zero, Gaussian evidence", Status: refdata.Derived}}
	out.Basis.NotChecked = []refdata.Unchecked{{What: "the follower the readings were taken with", Why: "a curve does not tell it", Settle: "measure the foot's radius, or see that it is flat"}}
	return out, nil
}

// fitter lays profiles on readings.
type fitter struct {
	at, y, w []float64
	zero     float64 // spread of the gauge's zero
}

// count is how many readings count as independent, over how many there are.
func (f fitter) count() (n, factor float64) {
	n = float64(len(f.at))
	return n, min(1, independent/n)
}

// miss is the sum of squares at a phase, the gauge's zero taken out within its
// spread, with that zero.
func (f fitter) miss(c *Curve, phase, spread float64) (ss, zero float64) {
	var sw, sd, sdd float64
	for i, x := range f.at {
		d := f.y[i] - c.lift(within(x-phase-c.start))
		sw += f.w[i]
		sd += f.w[i] * d
		sdd += f.w[i] * d * d
	}
	// A zero of spread z shrinks its estimate: z^2/(z^2 + s^2/n), n independent.
	n, factor := f.count()
	k := f.zero * f.zero / (f.zero*f.zero + spread*spread/(n*factor))
	zero = k * sd / sw
	return sdd - 2*zero*sd + zero*zero*sw, zero
}

// best turns the curve to where it lies best and returns the evidence: -chi^2/2 with
// a phase anywhere on the circle, its posterior spread over 360° (Laplace).
func (f fitter) best(c *Curve, spread float64) (Match, float64) {
	const coarse = 360
	score, at := math.Inf(1), 0.0
	for i := range coarse {
		p := turnDegrees * float64(i) / coarse
		if ss, _ := f.miss(c, p, spread); ss < score {
			score, at = ss, p
		}
	}
	lo, hi := at-1.5, at+1.5
	ratio := (math.Sqrt(5) - 1) / 2
	value := func(p float64) float64 { ss, _ := f.miss(c, p, spread); return ss }
	for hi-lo > 1e-5 {
		if a, b := hi-ratio*(hi-lo), lo+ratio*(hi-lo); value(a) < value(b) {
			hi = b
		} else {
			lo = a
		}
	}
	at = (lo + hi) / 2
	ss, zero := f.miss(c, at, spread)
	n, factor := f.count()
	total := 0.0
	for _, w := range f.w {
		total += w
	}
	scale := factor * n / total / (spread * spread) // sum of squares to chi^2
	const d = 0.2
	curvature := scale * (value(at+d) - 2*ss + value(at-d)) / (d * d) / 2 // of chi^2/2
	u := turnDegrees / math.Sqrt(12)                                      // a curve that tells nothing of the angle
	if curvature > 1/(u*u) {
		u = 1 / math.Sqrt(curvature)
	}
	logL := -scale*ss/2 - n*factor*math.Log(spread) + math.Log(u*math.Sqrt(2*math.Pi)/turnDegrees)
	return Match{
		Phase:  measure.Of(units.CamDegrees(half(at)), units.CamDegrees(u)),
		Zero:   units.Millimetres(zero),
		Misfit: units.Millimetres(math.Sqrt(ss / total)),
	}, logL
}

// other is the evidence of a cam that stands a wide spread from the best profile
// there could be: expected squares of that spread.
func (f fitter) other(wide float64) float64 {
	n, factor := f.count()
	return -n*factor/2 - n*factor*math.Log(wide)
}
