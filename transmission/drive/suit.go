package drive

import (
	"math"
	"strings"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// SuitInput is what a gearing is chosen for.
type SuitInput struct {
	Line   Line                         `json:"line"`    // Final is not used: it is what is looked for
	Gear   string                       `json:"gear"`    // to be geared for top speed; "": the highest
	Peak   measure.Reading[units.Power] `json:"peak"`    // greatest power
	PeakAt units.RotationalSpeed        `json:"peak_at"` // engine speed it comes at
	Road   Road                         `json:"road"`    // solo or with sidecar
	Choice SprocketChoice               `json:"choice"`  // sprockets to choose from
}

// SuitOptions sets how far from the fastest gearing to aim.
type SuitOptions struct {
	// Taller is how much higher to gear than the fastest, as a share: 0.03 to
	// 0.05 for cruising, below zero for hills (common practice, from memory).
	// Zero: none.
	Taller float64
	// Most is how many sprocket pairs to return; zero: 6.
	Most int
}

// Suited is a gearing that suits.
type Suited struct {
	Top     Top                          `json:"top"`     // speed at which the power is used up
	Fastest measure.Reading[units.Ratio] `json:"fastest"` // overall ratio that puts peak power there: n U/v
	Aim     float64                      `json:"aim"`     // that ratio made taller as asked
	Rest    Ratio                        `json:"rest"`    // primary × gear
	Options []SuitedOption               `json:"options"` // nearest first
	Basis   refdata.Basis                `json:"basis"`
}

// SuitedOption is a pair of sprockets and where it puts the engine.
type SuitedOption struct {
	SprocketOption
	EngineAtTop units.RotationalSpeed `json:"engine_at_top"` // engine speed at the top speed
	AtPeak      units.Speed           `json:"at_peak"`       // road speed at peak-power engine speed
}

// Suit returns the overall ratio at which peak power comes at the top speed that
// power and road load allow, and the sprockets that come nearest (common
// practice: solo, at peak power or a little below it; with a sidecar 15 to 20 %
// lower, which [Compare] holds against the sum). Errors: those of [TopSpeed] and
// [SprocketOptions], a peak speed not above zero, no circumference, no such gear.
func Suit(in SuitInput, opt SuitOptions) (Suited, error) {
	var l fault.List
	positive(&l, "peak_at", in.PeakAt)
	var line fault.List
	in.Line.checkRolling(&line)
	l.Under("line", line.Err())
	within(&l, "taller", opt.Taller, -0.3, 0.3)
	if opt.Most < 0 {
		within(&l, "most", float64(opt.Most), 0, 1000)
	}
	p, errP := in.Line.Primary.Ratio()
	l.Under("line.primary", errP)
	g, found := in.Line.Box.Top(), len(in.Line.Box.gears) > 0
	if in.Gear != "" {
		g, found = in.Line.Box.Gear(in.Gear)
	}
	if !found {
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "gear", Value: in.Gear, Rule: in.Line.Box.choices()})
	}
	top, err := TopSpeed(in.Road, in.Peak)
	for _, f := range fault.Faults(err) {
		// The caller wrote the power beside the road, under its own name.
		if rest, ok := strings.CutPrefix(f.Path, "power"); ok {
			f.Path = "peak" + rest
		} else {
			f.Path = "road." + f.Path
		}
		l.Add(f)
	}
	if err := l.Err(); err != nil {
		return Suited{}, err
	}
	out := Suited{Top: top, Basis: top.Basis}
	out.Basis.Sources = append(out.Basis.Sources, refdata.Practice())
	if out.Rest, err = p.Times(g.Ratio); err != nil {
		return Suited{}, err
	}
	if top.Reason.Given() {
		return out, nil
	}
	n := in.PeakAt.RevolutionsPerSecond()
	out.Fastest, err = measure.Propagate[units.Ratio](func(x []float64) float64 { return n * x[0] / x[1] }, in.Line.Rolling.SI(), top.Speed.SI())
	if err != nil {
		return Suited{}, err
	}
	out.Aim = out.Fastest.Value().SI() * (1 - opt.Taller)
	options, err := SprocketOptions(out.Aim, out.Rest, in.Choice)
	if err != nil {
		return Suited{}, err
	}
	most := opt.Most
	if most == 0 {
		most = 6
	}
	v, u := top.Speed.Value().MetresPerSecond(), in.Line.Rolling.Value().Metres()
	for _, o := range options[:min(most, len(options))] {
		i := o.Overall.Float()
		out.Options = append(out.Options, SuitedOption{o, units.RevolutionsPerSecond(v / u * i), units.MetresPerSecond(n * u / i)})
	}
	return out, nil
}

// Comparison is a sidecar gearing against a solo one.
type Comparison struct {
	Lower       float64 `json:"lower"`         // sidecar's ratio over solo's, less 1
	RuleOfThumb bool    `json:"rule_of_thumb"` // within the 15 to 20 % of common practice
}

// Compare holds a sidecar's gearing against the solo one (common practice: 15 to
// 20 % lower). The result is zero if either has no top speed.
func Compare(solo, sidecar Suited) Comparison {
	a, b := solo.Fastest.Value(), sidecar.Fastest.Value()
	if !(a > 0 && b > 0) {
		return Comparison{}
	}
	x := b.Ratio(a) - 1
	return Comparison{Lower: x, RuleOfThumb: x >= 0.15 && x <= 0.20}
}

// PullAway is a machine in one gear, for its strongest pull.
type PullAway struct {
	Torque     units.Torque `json:"torque"`     // at the crankshaft
	Mass       units.Mass   `json:"mass"`       // all-up
	Resistance units.Force  `json:"resistance"` // at the tyre: rolling, air and slope together
	Radius     units.Length `json:"radius"`     // rolling radius
	Efficiency float64      `json:"efficiency"` // crankshaft to road, above 0 to 1
	// Moments of inertia, kg m², a pair that has no type of its own.
	WheelsKilogramSquareMetres float64 `json:"wheels_kg_m2"` // all wheels together
	EngineKilogramSquareMetres float64 `json:"engine_kg_m2"` // crankshaft and flywheels
}

// PulledAway is the gearing of the strongest pull.
type PulledAway struct {
	Overall      float64            `json:"overall"`      // crankshaft turns for one of the wheel
	Acceleration units.Acceleration `json:"acceleration"` // with it
	Thrust       units.Force        `json:"thrust"`       // at the tyre, η T i/r
	Felt         units.Mass         `json:"felt"`         // mass with the turning parts reckoned in
	Reason       fault.Reason       `json:"reason,omitzero"`
}

// BestPull returns the overall ratio i at which a machine gathers speed
// soonest: with a = (η T i/r - R)/(m + Iw/r² + η Ie i²/r²) it is where da/di = 0,
// i = (R + √(R² + A² M/B))/A with A = η T/r, B = η Ie/r², M = m + Iw/r² (Khurmi &
// Gupta, Theory of Machines, 2009, ex. 3.15; solved here). Errors: figures not
// above zero, an efficiency outside 0.01 to 1.
func BestPull(in PullAway) (PulledAway, error) {
	l := in.check()
	within(l, "engine_kg_m2", in.EngineKilogramSquareMetres, 1e-6, 1e3)
	if err := l.Err(); err != nil {
		return PulledAway{}, err
	}
	r := in.Radius.Metres()
	a, b := in.Efficiency*in.Torque.NewtonMetres()/r, in.Efficiency*in.EngineKilogramSquareMetres/(r*r)
	m, res := in.Mass.Kilograms()+in.WheelsKilogramSquareMetres/(r*r), in.Resistance.Newtons()
	return in.at((res + math.Sqrt(res*res+a*a*m/b)) / a), nil
}

// Pull returns the acceleration with a given overall ratio, by the same sum.
// Errors as for [BestPull], a ratio not above zero.
func (in PullAway) Pull(overall float64) (PulledAway, error) {
	l := in.check()
	within(l, "overall", overall, 0.01, 1000)
	within(l, "engine_kg_m2", in.EngineKilogramSquareMetres, 0, 1e3)
	if err := l.Err(); err != nil {
		return PulledAway{}, err
	}
	return in.at(overall), nil
}

func (in PullAway) check() *fault.List {
	var l fault.List
	positive(&l, "torque", in.Torque)
	positive(&l, "mass", in.Mass)
	notNegative(&l, "resistance", in.Resistance)
	positive(&l, "radius", in.Radius)
	within(&l, "efficiency", in.Efficiency, 0.01, 1)
	within(&l, "wheels_kg_m2", in.WheelsKilogramSquareMetres, 0, 1e3)
	return &l
}

func (in PullAway) at(i float64) PulledAway {
	r := in.Radius.Metres()
	f := in.Efficiency * in.Torque.NewtonMetres() * i / r
	felt := in.Mass.Kilograms() + (in.WheelsKilogramSquareMetres+in.Efficiency*in.EngineKilogramSquareMetres*i*i)/(r*r)
	out := PulledAway{Overall: i, Thrust: units.Newtons(f), Felt: units.Kilograms(felt), Acceleration: units.MetresPerSecondSquared((f - in.Resistance.Newtons()) / felt)}
	if out.Acceleration < 0 {
		out.Reason = fault.Reason{Code: "does-not-pull", Text: "the resistance is more than the thrust: it slows down"}
	}
	return out
}
