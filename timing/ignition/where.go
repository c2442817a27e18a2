package ignition

import (
	"cmp"
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/timing/crank"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Where is a place of the spark as a book states it or a mechanic reads it. Give
// one: degrees, piston travel before TDC, or a distance before the TDC mark along
// the rim of a flywheel or pulley on the crank. The zero Where was not taken.
type Where struct {
	At     measure.Position              `json:"at,omitzero"`
	Travel measure.Reading[units.Length] `json:"travel,omitzero"`
	Rim    measure.Reading[units.Length] `json:"rim,omitzero"`
}

// Taken reports whether a place was given.
func (w Where) Taken() bool { return w.At.Taken() || w.Travel.Taken() || w.Rim.Taken() }

// Gauges is what turns travel and rim marks into degrees.
type Gauges struct {
	// Slider is the engine's. If its rod is not known leave Rod zero: a rod of
	// 3.3 to 4.5 throws is assumed and widens the answer.
	Slider      crank.Slider                  `json:"slider"`
	RimDiameter measure.Reading[units.Length] `json:"rim_diameter,omitzero"`
}

// Located is a place of the spark in every form that could be worked out.
type Located struct {
	At     measure.Position `json:"at"`
	Travel units.Length     `json:"travel"` // of the piston, from TDC; 0 if no slider was given
	Basis  refdata.Basis    `json:"basis"`
}

// Rod ratios lam = throw/rod met in single cylinders: common practice.
const (
	leastLam = 0.22
	mostLam  = 0.30
)

// Locate returns the crank position of w with its uncertainty. Travel goes
// through the exact slider-crank, before TDC, where a reading's u is divided by
// the piston's movement per degree; a rim distance s is 2 s/D radians. Errors: not
// exactly one figure, a figure below zero or beyond the stroke or half the rim, or
// missing gauges.
func (w Where) Locate(g Gauges) (Located, error) {
	var l fault.List
	n := 0
	for _, taken := range [...]bool{w.At.Taken(), w.Travel.Taken(), w.Rim.Taken()} {
		if taken {
			n++
		}
	}
	switch {
	case n == 0:
		l.Add(fault.Fault{Code: fault.Missing, Rule: "give degrees, piston travel or a distance on the rim"})
	case n > 1:
		l.Add(fault.Fault{Code: fault.Conflict, Rule: "give only one of degrees, piston travel and distance on the rim"})
	}
	l.Under("at", w.At.Err())
	l.Under("travel", w.Travel.Err())
	l.Under("rim", w.Rim.Err())
	if err := l.Err(); err != nil {
		return Located{}, err
	}
	switch {
	case w.Travel.Taken():
		return fromTravel(w.Travel, g.Slider)
	case w.Rim.Taken():
		return fromRim(w.Rim, g)
	}
	out := Located{At: w.At}
	if s, ok := rodOr(g.Slider, (leastLam+mostLam)/2); ok && s.Err() == nil {
		out.Travel, _ = s.Travel(w.At.Value())
	}
	return out, nil
}

// rodOr fills in a rod where none was given; ok is false if there is no crank.
func rodOr(s crank.Slider, lam float64) (crank.Slider, bool) {
	if s.Rod == 0 {
		throw := s.Throw
		if throw == 0 {
			throw = s.Stroke.Times(0.5)
		}
		s.Rod = throw.Times(1 / lam)
	}
	return s, s.Stroke != 0 || s.Throw != 0
}

func fromTravel(r measure.Reading[units.Length], s crank.Slider) (Located, error) {
	out := Located{Travel: r.Value()}
	mid, ok := rodOr(s, (leastLam+mostLam)/2)
	if !ok {
		return out, fault.Fault{Code: fault.Missing, Path: "slider.stroke", Unit: "mm", Rule: "travel is degrees only with the stroke, and properly only with the rod"}
	}
	at := func(s crank.Slider, x units.Length) (float64, error) {
		p, err := s.Positions(x)
		return p.Before.Before().Degrees(), err
	}
	v, err := at(mid, r.Value())
	if err != nil {
		return out, err
	}
	spread := 0.0
	if s.Rod == 0 {
		short, _ := rodOr(s, mostLam)
		long, _ := rodOr(s, leastLam)
		a, err1 := at(short, r.Value())
		b, err2 := at(long, r.Value())
		if err := cmp.Or(err1, err2); err != nil {
			return out, fault.Under("slider", err)
		}
		spread = math.Abs(b-a) / 2 / math.Sqrt(3) // equally likely anywhere between (GUM 4.3.7)
		out.Basis.Assumed = append(out.Basis.Assumed, refdata.Assumption{What: "rod length", Value: "3.3 to 4.5 throws", Status: refdata.CommonPractice})
	}
	u := 0.0
	if !r.IsExact() {
		// Half the chord over ± u, held inside the stroke: near TDC the slope is nought.
		dc, _ := mid.DeadCentres()
		a, _ := at(mid, max(r.Value()-r.U(), 0))
		b, _ := at(mid, min(r.Value()+r.U(), dc.Stroke))
		u = (b - a) / 2
	}
	out.At = measure.At(units.Before(units.TDC, units.CrankDegrees(v)), units.CrankDegrees(max(math.Hypot(u, spread), leastU)))
	out.Basis.Sources = []refdata.Source{{Title: "slider-crank travel, exact", Status: refdata.Derived}}
	return out, nil
}

// leastU keeps the uncertainty of a figure declared exact above zero, degrees.
const leastU = 1e-3

func fromRim(r measure.Reading[units.Length], g Gauges) (Located, error) {
	var l fault.List
	if !g.RimDiameter.Taken() {
		l.Add(fault.Fault{Code: fault.Missing, Path: "rim_diameter", Unit: "mm", Rule: "a distance on the rim is degrees only with the rim's diameter"})
	}
	l.Under("rim_diameter", g.RimDiameter.Err())
	if l.Len() == 0 {
		if d := g.RimDiameter.Value(); !(d > 0 && r.Value() >= 0 && r.Value() <= d.Times(math.Pi/2)) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: "rim", Value: r.Text(), Unit: "mm", Rule: "from zero to half the rim, whose diameter is above zero"})
		}
	}
	if err := l.Err(); err != nil {
		return Located{}, err
	}
	a, err := measure.Propagate[units.CrankAngle](func(x []float64) float64 { return 2 * x[0] / x[1] }, r.SI(), g.RimDiameter.SI())
	if err != nil {
		return Located{}, err
	}
	out := Located{At: measure.At(units.Before(units.TDC, a.Value()), max(a.U(), units.CrankDegrees(leastU)))}
	if s, ok := rodOr(g.Slider, (leastLam+mostLam)/2); ok && s.Err() == nil {
		out.Travel, _ = s.Travel(out.At.Value())
	}
	return out, nil
}

// TravelAt returns how far the piston is below TDC at a read crank position, with
// the uncertainty that the position's gives. Errors: a position not taken or bad,
// those of crank.Slider.Err.
func TravelAt(at measure.Position, s crank.Slider) (measure.Reading[units.Length], error) {
	var l fault.List
	if !at.Taken() {
		l.Add(fault.Fault{Code: fault.Missing, Path: "at", Unit: "° crank", Rule: "a crank position is needed"})
	}
	l.Under("at", at.Err())
	l.Under("slider", s.Err())
	if err := l.Err(); err != nil {
		return measure.Reading[units.Length]{}, err
	}
	x, err := s.Travel(at.Value())
	if err != nil {
		return measure.Reading[units.Length]{}, err
	}
	v := at.Value()
	up, err1 := s.Travel(units.After(v.Datum(), v.After()+at.U()))
	down, err2 := s.Travel(units.After(v.Datum(), v.After()-at.U()))
	if err := cmp.Or(err1, err2); err != nil {
		return measure.Reading[units.Length]{}, fault.Under("at", err)
	}
	u := max((up - down).Abs().Times(0.5), units.Micrometre) // at TDC the slope is nought, the reading is not exact
	return measure.Of(x, u), nil
}

// Rim is a distance on a rim, along it and straight across.
type Rim struct {
	Arc   units.Length `json:"arc"`   // with a strip of paper or a tape: D x degrees x pi/360
	Chord units.Length `json:"chord"` // with dividers: D sin(degrees/2)
}

// OnRim returns how far a crank angle is on a rim of a diameter. Errors: an angle
// outside ± 180°, a diameter not above zero.
func OnRim(by units.CrankAngle, diameter units.Length) (Rim, error) {
	var l fault.List
	if !(by >= -180*units.CrankDegree && by <= 180*units.CrankDegree) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "by", Value: by.String(), Unit: "° crank", Rule: "at most half a turn"})
	}
	if !(diameter > 0) || !sane(diameter) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "diameter", Unit: "mm", Rule: "must be finite and above zero"})
	}
	if err := l.Err(); err != nil {
		return Rim{}, err
	}
	return Rim{Arc: diameter.Times(by.SI() / 2), Chord: diameter.Times(math.Sin(by.SI() / 2))}, nil
}
