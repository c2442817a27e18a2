package spring

import (
	"math"
	"strconv"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Known is a spring that the one in the hand may be: from a parts list, or
// measured new.
type Known struct {
	Key   string      `json:"key"`
	Text  string      `json:"text"` // for the reader; "": the key
	Spec  HelicalSpec `json:"spec"`
	Prior float64     `json:"prior"` // weight before the readings; zero: 1
}

// MatchOptions sets how far a spring may be from its list, as relative standard
// deviations. The defaults are this library's judgement, no source.
type MatchOptions struct {
	Wire  float64 // zero: 0.01
	Coil  float64 // of the coil diameter; zero: 0.01
	Rate  float64 // zero: 0.05
	Free  float64 // of the free length as made; zero: 0.01
	Set   float64 // of free length, one standard deviation of what it may have sunk; zero: 0.03
	Tired float64 // share of free length lost beyond which it is called tired; zero: 0.05 (common practice: "about 5 %")
	Fit   FitOptions
}

func (o MatchOptions) filled() MatchOptions {
	for _, f := range []struct {
		p *float64
		x float64
	}{{&o.Wire, 0.01}, {&o.Coil, 0.01}, {&o.Rate, 0.05}, {&o.Free, 0.01}, {&o.Set, 0.03}, {&o.Tired, 0.05}} {
		if *f.p == 0 {
			*f.p = f.x
		}
	}
	return o
}

// Matched is which known spring it is, and how it has kept.
type Matched struct {
	Causes measure.Ranking                   `json:"causes"`  // by key of the known springs
	ByLoad measure.Reading[units.SpringRate] `json:"by_load"` // rate as loaded; not taken without two loads
	Sunk   measure.Reading[units.Length]     `json:"sunk"`    // leader's free length new less that read; not taken without one
	Tired  bool                              `json:"tired"`   // it has lost more of its length than the option allows
	Lost   units.Force                       `json:"lost"`    // load lost at any set length, leader's rate × Sunk
	Basis  refdata.Basis                     `json:"basis"`
}

// Match ranks known springs by what a caliper and a balance read: wire, coil
// diameter, coils, free and solid length, rate through the loads. What was not
// read is averaged over. Springs may only have sunk, so a free length below the
// list costs less than one above it. Springs alike in all that was read come
// back as one group. Errors: unsound readings, nothing read, no known spring or
// one whose dimensions do not make sense, two of one key.
func Match(in Readings, from []Known, opt MatchOptions) (Matched, error) {
	var l fault.List
	in.check(&l)
	if len(from) == 0 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "from", Rule: "at least one known spring"})
	}
	known := make([]Helical, len(from))
	for i, k := range from {
		at := "from." + strconv.Itoa(i)
		h, err := NewHelical(k.Spec)
		l.Under(at+".spec", err)
		known[i] = h
		if k.Prior < 0 || !finite(k.Prior) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: at + ".prior", Value: number(k.Prior), Rule: "must not be below zero"})
		}
	}
	opt = opt.filled()
	for _, o := range []struct {
		path string
		x    float64
	}{{"wire", opt.Wire}, {"coil", opt.Coil}, {"rate", opt.Rate}, {"free", opt.Free}, {"set", opt.Set}, {"tired", opt.Tired}} {
		within(&l, o.path, o.x, 1e-4, 0.5)
	}
	if !in.Wire.Taken() && !in.Outside.Taken() && !in.Inside.Taken() && !in.Free.Taken() && !in.Solid.Taken() && !in.Total.Taken() && len(in.Loads) == 0 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "readings", Rule: "take at least one reading"})
	}
	if err := l.Err(); err != nil {
		return Matched{}, err
	}
	out := Matched{Basis: refdata.Basis{
		Sources:  []refdata.Source{refdata.Practice()},
		Assumed:  []refdata.Assumption{{What: "how near springs are to their list", Value: number(100*opt.Wire) + " % of wire, " + number(100*opt.Coil) + " % of coil, " + number(100*opt.Rate) + " % of rate", Status: refdata.CommonPractice}},
		Cautions: []refdata.Caution{refdata.SpringsUnderLoad},
	}}
	if len(in.Loads) > 0 {
		line, err := FitLine(in.Loads, opt.Fit)
		if err != nil {
			return Matched{}, err
		}
		out.ByLoad = line.Rate
	} else {
		out.Basis.NotChecked = append(out.Basis.NotChecked, refdata.Unchecked{What: "rate", Why: "no loads read", Settle: "load it on a balance at two lengths"})
	}
	length := func(r measure.Reading[units.Length]) measure.Datum {
		return measure.Datum{Value: r.Value().Millimetres(), Taken: r.Taken()}
	}
	data := measure.Data{
		length(in.Wire), length(in.Outside), length(in.Inside), length(in.Solid),
		{Value: in.Total.Value().SI(), Taken: in.Total.Taken()},
		{Value: out.ByLoad.Value().NewtonsPerMillimetre(), Taken: out.ByLoad.Taken()},
		length(in.Free),
	}
	var causes []measure.Cause
	wide := mixture{}
	for i, k := range from {
		h := known[i]
		text, prior := k.Text, k.Prior
		if text == "" {
			text = k.Key
		}
		if prior == 0 {
			prior = 1
		}
		e := expectation{
			mean: [6]float64{h.d, h.mean + h.d, h.mean - h.d, h.solid, h.total, h.k},
			own: [6]float64{
				math.Hypot(in.Wire.U().Millimetres(), opt.Wire*h.d), math.Hypot(in.Outside.U().Millimetres(), opt.Coil*h.mean), math.Hypot(in.Inside.U().Millimetres(), opt.Coil*h.mean),
				math.Hypot(in.Solid.U().Millimetres(), math.Hypot(opt.Wire*h.solid, h.d/4)), math.Hypot(in.Total.U().SI(), 0.1), math.Hypot(out.ByLoad.U().NewtonsPerMillimetre(), opt.Rate*h.k),
			},
			free: h.free, ufree: math.Hypot(in.Free.U().Millimetres(), opt.Free*h.free), sink: opt.Set * h.free,
		}
		causes = append(causes, measure.Cause{Key: k.Key, Text: text, Prior: prior, Hypothesis: e})
		wide = append(wide, e.widened(8))
	}
	weight := 0.0
	for _, c := range causes {
		weight += c.Prior
	}
	var err error
	if out.Causes, err = measure.Rank(data, causes, measure.Cause{Text: "none of these", Prior: 0.05 * weight, Hypothesis: wide}); err != nil {
		return Matched{}, err
	}
	for i, k := range from {
		if k.Key != out.Causes.Leader().Key {
			continue
		}
		if in.Free.Taken() {
			out.Sunk = difference(measure.Exact(known[i].Free()), in.Free)
			out.Lost = SetLoss(known[i].Rate(), known[i].Free(), in.Free.Value())
			out.Tired = out.Sunk.Value().Ratio(known[i].Free()) > opt.Tired
		} else {
			out.Basis.NotChecked = append(out.Basis.NotChecked, refdata.Unchecked{What: "whether it has taken a set", Why: "no free length read", Settle: "stand it on a flat plate and measure its length"})
		}
	}
	return out, nil
}

// expectation is a known spring as a hypothesis: six normal figures, and a free
// length that is normal as made less a one-sided sinking.
type expectation struct {
	mean, own         [6]float64
	free, ufree, sink float64
}

// LogLikelihood is the log density of the readings taken. The sinking is half a
// normal curve, so length read = made - |sink × normal|, a skew-normal density:
// 2/w φ((y - free)/w) Φ(-sink (y - free)/(u w)), w² = u² + sink² (A. Azzalini,
// Scand. J. Statist. 12 (1985) 171, from memory).
func (e expectation) LogLikelihood(d measure.Data) float64 {
	sum := 0.0
	for i := range e.mean {
		if d[i].Taken {
			sum += logNormal(d[i].Value, e.mean[i], e.own[i])
		}
	}
	if f := d[len(e.mean)]; f.Taken {
		w := math.Hypot(e.ufree, e.sink)
		z := f.Value - e.free
		tail := e.sink / (e.ufree * w) * z / math.Sqrt2
		sum += math.Ln2 + logNormal(f.Value, e.free, w) + logErfcHalf(tail)
	}
	return sum
}

// widened is the same with every spread so many times wider.
func (e expectation) widened(k float64) expectation {
	for i := range e.own {
		e.own[i] *= k
	}
	e.ufree *= k
	return e
}

// mixture is any of several, equally likely.
type mixture []expectation

// LogLikelihood is the logarithm of the mean of the densities.
func (m mixture) LogLikelihood(d measure.Data) float64 {
	best, sum := math.Inf(-1), 0.0
	each := make([]float64, len(m))
	for i, e := range m {
		each[i] = e.LogLikelihood(d)
		best = max(best, each[i])
	}
	for _, x := range each {
		sum += math.Exp(x - best)
	}
	return best + math.Log(sum/float64(len(m)))
}

func logNormal(x, mean, sd float64) float64 {
	z := (x - mean) / sd
	return -z*z/2 - math.Log(sd*math.Sqrt(2*math.Pi))
}

// logErfcHalf is ln(erfc(x)/2) without underflow: beyond 25 the leading term of
// the asymptotic series is right to a part in a thousand of the density.
func logErfcHalf(x float64) float64 {
	if x > 25 {
		return -x*x - math.Log(2*x*math.SqrtPi)
	}
	return math.Log(math.Erfc(x) / 2)
}
