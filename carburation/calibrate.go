package carburation

import (
	"math"
	"strconv"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// LambdaReading is a lambda read with the slide held at a lift and the engine
// at a steady speed.
type LambdaReading struct {
	Lift   units.Ratio                  `json:"lift"`   // over the bore, above 0 to 1
	Speed  units.RotationalSpeed        `json:"speed"`  // crank
	Lambda measure.Reading[units.Ratio] `json:"lambda"` // 0.5 to 2
}

// LambdaSensor reads lambda in the exhaust: u 0.02.
func LambdaSensor() measure.Instrument[units.Ratio] {
	return measure.Instrument[units.Ratio]{Name: "lambda sensor", U: 0.02}
}

// Calibration says what readings have taught a model.
type Calibration struct {
	Readings   int           `json:"readings"`
	ChiSquared float64       `json:"chi_squared"` // of the readings after the fit; near their number or below is well
	Iterations int           `json:"iterations"`
	Residuals  []units.Ratio `json:"residuals"` // read over fitted, less one
	Learnt     []Learnt      `json:"learnt"`
	Doubt      fault.Reason  `json:"doubt,omitzero"` // code "readings-disagree" or "far-from-prior"
	Basis      refdata.Basis `json:"basis"`
}

// Learnt is a figure of the model before and after. Uncertainties are standard
// shares of the figure.
type Learnt struct {
	Key    string  `json:"key"` // "suction"
	Text   string  `json:"text"`
	Before float64 `json:"before"`
	After  float64 `json:"after"`
	Was    float64 `json:"was"` // uncertainty before
	Is     float64 `json:"is"`  // and after
}

// Calibrate returns the model that the readings make likeliest, all its figures
// starting from what was held of them before: the least of
//
//	sum ((ln lambda read - ln lambda)/u)² + (k - k0)' C0^-1 (k - k0)
//
// by damped Gauss-Newton steps, with the covariance (J' W J + C0^-1)^-1 for the
// uncertainty that is left (maximum a posteriori; GUM-style linear propagation).
// One reading at full throttle settles the main jet; three at different lifts
// settle most of the map. Calibrating again goes on from there. The receiver
// does not change.
//
// Errors: no reading or more than 1000, a reading not taken or outside, a lift or speed outside,
// a point at which the model draws no fuel at all.
func (m *Model) Calibrate(readings ...LambdaReading) (Model, Calibration, error) {
	var l fault.List
	if len(readings) == 0 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "readings", Rule: "at least one lambda reading"})
	}
	if len(readings) > 1000 {
		return Model{}, Calibration{}, fault.Fault{Code: fault.OutOfRange, Path: "readings", Value: strconv.Itoa(len(readings)), Rule: "at most 1000 lambda readings"}
	}
	for i, r := range readings {
		path := "readings[" + strconv.Itoa(i) + "]"
		l.Under(path, m.inside(r.Lift, r.Speed))
		needed(&l, path+".lambda", r.Lambda)
		if r.Lambda.Taken() {
			positive(&l, path+".lambda", r.Lambda.Value(), 0.5, 2)
			if r.Lambda.IsExact() {
				l.Add(fault.Fault{Code: fault.OutOfRange, Path: path + ".lambda", Value: r.Lambda.Text(), Rule: "a reading with its uncertainty: no lambda is exact"})
			} else if r.Lambda.U().Value() < 1e-6 {
				l.Add(fault.Fault{Code: fault.OutOfRange, Path: path + ".lambda", Value: r.Lambda.Text(), Rule: "an uncertainty of 0.000001 or more"})
			}
		}
		if !m.ready {
			break
		}
	}
	if l.Len() > 0 {
		return Model{}, Calibration{}, l.Err()
	}
	for i, r := range readings {
		if m.lnLambda(r.Lift.Value(), r.Speed.RevolutionsPerSecond(), &m.knobs) == unmixed {
			l.Add(fault.Fault{Code: fault.Conflict, Path: "readings[" + strconv.Itoa(i) + "]", Value: r.Lambda.Text(), Rule: "a lift and speed at which the model draws fuel"})
		}
	}
	if l.Len() > 0 {
		return Model{}, Calibration{}, l.Err()
	}
	root, ok := cholesky((*square)(&m.cov))
	if !ok {
		return Model{}, Calibration{}, fault.Fault{Code: fault.Conflict, Path: "model", Rule: "a covariance that is positive"}
	}
	f := fit{m: m, root: &root, readings: readings}
	f.run()
	out := *m
	out.knobs, out.value = f.best, f.best.values()
	out.cov = [nKnobs][nKnobs]float64(f.posterior())
	return out, f.report(&out), nil
}

// unmixed stands for a lambda of no fuel.
const unmixed = math.MaxFloat64

func (m *Model) lnLambda(lift, speed float64, k *knobs) float64 {
	v := k.values()
	if s := m.plant.at(lift*m.plant.bore, speed, &v); s.lambda > 0 {
		return math.Log(s.lambda)
	}
	return unmixed
}

// gradient returns d ln lambda/d knob by central differences.
func (m *Model) gradient(lift, speed float64, k *knobs) (g knobs, ok bool) {
	const h = 1e-4 // knobs are of order one; truncation 1e-8, rounding 1e-12
	for i := range g {
		if m.cov[i][i] == 0 {
			continue
		}
		up, down := *k, *k
		up[i] += h
		down[i] -= h
		a, b := m.lnLambda(lift, speed, &up), m.lnLambda(lift, speed, &down)
		if a == unmixed || b == unmixed {
			return g, false
		}
		g[i] = (a - b) / (2 * h)
	}
	return g, true
}

// fit looks for the likeliest knobs k0 + root z; the prior of z is standard
// normal.
type fit struct {
	m          *Model
	root       *square
	readings   []LambdaReading
	best       knobs
	z          knobs
	chi2       float64
	normal     square // J' W J + 1 in z
	iterations int
}

func (f *fit) knobs(z *knobs) knobs {
	k := f.m.knobs
	for i := range k {
		for j := 0; j <= i; j++ {
			k[i] += f.root[i][j] * z[j]
		}
	}
	return k
}

// cost returns the sum of squares of the readings and that of the prior.
func (f *fit) cost(z *knobs) (chi2, prior float64) {
	k := f.knobs(z)
	for _, r := range f.readings {
		l := f.m.lnLambda(r.Lift.Value(), r.Speed.RevolutionsPerSecond(), &k)
		if l == unmixed {
			return math.Inf(1), 0
		}
		d := (math.Log(r.Lambda.Value().Value()) - l) / r.Lambda.U().Ratio(r.Lambda.Value())
		chi2 += d * d
	}
	for _, x := range z {
		prior += x * x
	}
	return chi2, prior
}

// linearise sets the normal matrix at z and returns J' W r - z.
func (f *fit) linearise(z *knobs) (b knobs) {
	k := f.knobs(z)
	f.normal = square{}
	for i := range nKnobs {
		f.normal[i][i] = 1
		b[i] = -z[i]
	}
	for _, r := range f.readings {
		lift, speed := r.Lift.Value(), r.Speed.RevolutionsPerSecond()
		g, ok := f.m.gradient(lift, speed, &k)
		if !ok {
			continue
		}
		u := r.Lambda.U().Ratio(r.Lambda.Value())
		res := math.Log(r.Lambda.Value().Value()) - f.m.lnLambda(lift, speed, &k)
		var gz knobs // root' g
		for j := range nKnobs {
			for i := j; i < nKnobs; i++ {
				gz[j] += f.root[i][j] * g[i]
			}
		}
		for i := range nKnobs {
			b[i] += gz[i] * res / (u * u)
			for j := range nKnobs {
				f.normal[i][j] += gz[i] * gz[j] / (u * u)
			}
		}
	}
	return b
}

func (f *fit) run() {
	var z knobs
	chi2, prior := f.cost(&z)
	damp := 1e-6
	for f.iterations = 0; f.iterations < 60; f.iterations++ {
		b := f.linearise(&z)
		improved, small := false, false
		for range 30 {
			a := f.normal
			for i := range nKnobs {
				a[i][i] *= 1 + damp
			}
			l, ok := cholesky(&a)
			if !ok {
				damp = math.Max(damp*10, 1e-6)
				continue
			}
			inv := l.inverse()
			next, length := z, 0.0
			for i := range nKnobs {
				var d float64
				for j := range nKnobs {
					d += inv[i][j] * b[j]
				}
				next[i] += d
				length += d * d
			}
			c, p := f.cost(&next)
			if c+p <= chi2+prior {
				small = length < 1e-16 || (chi2+prior)-(c+p) < 1e-12*(1+chi2+prior)
				z, chi2, prior, improved = next, c, p, true
				damp = math.Max(damp/10, 1e-9)
				break
			}
			if length < 1e-18 {
				break
			}
			damp = math.Max(damp*10, 1e-6)
		}
		if !improved || small {
			break
		}
	}
	f.z, f.chi2 = z, chi2
	f.best = f.knobs(&z)
	f.linearise(&z)
}

// posterior returns the covariance of the knobs after the readings.
func (f *fit) posterior() square {
	l, ok := cholesky(&f.normal)
	if !ok {
		return square(f.m.cov)
	}
	inv := l.inverse()
	return f.root.congruent(&inv)
}

func (f *fit) report(out *Model) Calibration {
	c := Calibration{Readings: len(f.readings), ChiSquared: f.chi2, Iterations: f.iterations, Basis: out.basis}
	for _, r := range f.readings {
		l := f.m.lnLambda(r.Lift.Value(), r.Speed.RevolutionsPerSecond(), &f.best)
		c.Residuals = append(c.Residuals, units.Value(r.Lambda.Value().Value()/math.Exp(l)-1))
	}
	before := f.m.value
	var pull float64
	for i := range nKnobs {
		pull = math.Max(pull, math.Abs(f.z[i]))
		was, is := math.Sqrt(f.m.cov[i][i]), math.Sqrt(math.Max(0, out.cov[i][i]))
		if was == 0 || is > 0.99*was && math.Abs(f.best[i]-f.m.knobs[i]) < 0.05*was {
			continue
		}
		if i == kFollow { // of a share x, d ln x = (1 - x) d logit
			was, is = was*(1-before[i]), is*(1-out.value[i])
		}
		c.Learnt = append(c.Learnt, Learnt{Key: knobNames[i], Text: knobTexts[i], Before: before[i], After: out.value[i], Was: was, Is: is})
	}
	switch {
	case f.chi2 > float64(len(f.readings))+4*math.Sqrt(2*float64(len(f.readings)))+3:
		c.Doubt = fault.Reason{Code: "readings-disagree", Text: "no setting of the model fits these readings together: suspect an air leak in the exhaust, a misfire, or a part that is not what it is marked"}
	case pull > 3.5:
		c.Doubt = fault.Reason{Code: "far-from-prior", Text: "the readings pull the model far from what is likely: suspect a part that is not what it is marked, or wear"}
	}
	return c
}
