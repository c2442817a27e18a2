package spring

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Readings is what a caliper and a balance read from a spring in the hand. The
// zero value of each means not taken. Lengths are read by caliper, coils counted
// by eye, loads read at two or more lengths, between a third and two thirds of
// the way to solid, where the ends neither settle nor close.
type Readings struct {
	Wire    measure.Reading[units.Length] `json:"wire"`
	Outside measure.Reading[units.Length] `json:"outside"` // over the coils; or give Inside
	Inside  measure.Reading[units.Length] `json:"inside"`
	Free    measure.Reading[units.Length] `json:"free"`
	Solid   measure.Reading[units.Length] `json:"solid"` // coils touching, in a vice
	Total   measure.Reading[units.Ratio]  `json:"total"` // all coils: measure.Count
	Ends    Ends                          `json:"ends"`
	Loads   []LoadReading                 `json:"loads"`
}

// IdentifyOptions sets what Identify takes for granted.
type IdentifyOptions struct {
	// Shear is the shear modulus of the wire the spring should be of. Not
	// taken: 80.5 ± 1 GPa, which covers the carbon and alloy spring steels of
	// the table of moduli.
	Shear measure.Reading[units.Pressure]
	// Fit says what is common to the loads.
	Fit FitOptions
	// Priors replaces the weight of a cause by its key. The defaults are this
	// library's judgement, no source.
	Priors map[string]float64
}

// Identity is what the readings say of a spring.
type Identity struct {
	Line          Line                              `json:"line"`           // through the loads; zero if there were none
	ByLoad        measure.Reading[units.SpringRate] `json:"by_load"`        // rate as loaded
	ByDimensions  measure.Reading[units.SpringRate] `json:"by_dimensions"`  // G d⁴/(8 D³ n) with the readings' uncertainties
	Active        measure.Reading[units.Ratio]      `json:"active"`         // coils that work
	Mean          measure.Reading[units.Length]     `json:"mean"`           // coil diameter
	Index         float64                           `json:"index"`          // D/d
	SolidReckoned measure.Reading[units.Length]     `json:"solid_reckoned"` // from coils, wire and ends
	Shear         measure.Reading[units.Pressure]   `json:"shear"`          // modulus that would make the two rates agree
	Difference    float64                           `json:"difference"`     // rate as loaded over that by dimensions, less 1
	Sigmas        float64                           `json:"sigmas"`         // difference of the logarithms over its standard uncertainty
	Agrees        bool                              `json:"agrees"`         // within two standard uncertainties
	Settling      measure.Reading[units.Length]     `json:"settling"`       // free length as read less that of the line: soft ends above zero
	Causes        measure.Ranking                   `json:"causes"`         // what may lie behind the two rates
	NextReadings  []measure.Gain                    `json:"next_readings,omitempty"`
	Reason        fault.Reason                      `json:"reason,omitzero"` // why the cross-check could not be made
	Basis         refdata.Basis                     `json:"basis"`
}

// Identify finds a spring's rate from loads and from dimensions, holds the one
// against the other, and ranks what may lie behind a difference: a coil counted
// wrongly, another number of dead coils, wire misread under paint or rust, a
// balance that reads wrong, stainless or bronze wire. What was not read is not
// used; without loads or without dimensions there is no cross-check, and Reason
// says so. Errors: unsound readings, readings that cannot be true together,
// fewer than two loads unless none.
func Identify(in Readings, opt IdentifyOptions) (Identity, error) {
	var l fault.List
	in.check(&l)
	for key, p := range opt.Priors {
		if !(p > 0) || math.IsInf(p, 0) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: "priors." + key, Value: number(p), Rule: "must be above zero"})
		}
	}
	if opt.Shear.Taken() {
		checkReading(&l, "shear", opt.Shear, true)
	}
	if err := l.Err(); err != nil {
		return Identity{}, err
	}
	id := Identity{Basis: refdata.Basis{
		Sources: []refdata.Source{
			{Title: "EN 13906-1, compression springs of round wire", Clause: "rate", Status: refdata.FromMemory},
			{Title: "least squares with effective variance, J. Orear, Am. J. Phys. 50 (1982) 912", Status: refdata.FromMemory},
		},
		Cautions: []refdata.Caution{refdata.SpringsUnderLoad},
	}}
	g := opt.Shear
	if !g.Taken() {
		g = measure.Of(units.Gigapascals(80.5), units.Gigapascals(1))
		id.Basis.Assumed = append(id.Basis.Assumed, refdata.Assumption{What: "shear modulus", Value: "80.5 ± 1 GPa, spring steel", Status: refdata.Derived})
	}
	if in.Ends == EndsNotSaid {
		id.Basis.Assumed = append(id.Basis.Assumed, refdata.Assumption{What: "spring ends", Value: SquaredGround.String(), Status: refdata.CommonPractice})
	}
	if len(in.Loads) > 0 {
		line, err := FitLine(in.Loads, opt.Fit)
		if err != nil {
			return Identity{}, err
		}
		if opt.Fit.Scale == 0 {
			id.Basis.Assumed = append(id.Basis.Assumed, refdata.Assumption{What: "scale error of the balance, common to all loads", Value: "± 2 %", Status: refdata.CommonPractice})
		}
		id.Line, id.ByLoad = line, line.Rate
		if in.Free.Taken() {
			id.Settling = difference(in.Free, line.Free)
		}
	}
	m, whole, err := in.dimensions(&id, g)
	if err != nil {
		return Identity{}, err
	}
	switch {
	case !whole:
		id.Reason = fault.Reason{Code: "no-dimensions", Text: "wire, coil diameter and coil count are all needed to reckon a rate"}
	case !id.ByLoad.Taken():
		id.Reason = fault.Reason{Code: "no-loads", Text: "no loads were read"}
	default:
		if err := id.compare(in, m, g, opt); err != nil {
			return Identity{}, err
		}
	}
	id.unchecked(in)
	return id, nil
}

func (in Readings) check(l *fault.List) {
	for _, r := range []struct {
		path string
		r    measure.Reading[units.Length]
	}{{"wire", in.Wire}, {"outside", in.Outside}, {"inside", in.Inside}, {"free", in.Free}, {"solid", in.Solid}} {
		if r.r.Taken() {
			checkReading(l, r.path, r.r, true)
		}
	}
	if in.Total.Taken() && checkReading(l, "total", in.Total, true) && !(in.Total.Value().SI() > in.Ends.Dead()) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "total", Value: in.Total.Value().String(), Rule: "must be more than the " + number(in.Ends.Dead()) + " dead coils"})
	}
	if in.Ends >= endKinds {
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "ends", Value: in.Ends.String(), Rule: "one of the end types of this package"})
	}
	if in.Free.Taken() && in.Solid.Taken() && in.Free.Value() <= in.Solid.Value() {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "free", Value: in.Free.Value().String(), Unit: "mm", Rule: "must be longer than the solid length"})
	}
}

// made is the spring by its dimensions, in mm and N.
type made struct {
	d, mean, total, active float64
	ud, uo, ut             float64 // standard uncertainties of wire, coil diameter as read, and count
	cd, co                 float64 // d ln k/d wire, and the size of that /d the diameter read, in 1/mm
	uk                     float64 // relative uncertainty of the rate, all causes
}

func difference(a, b measure.Reading[units.Length]) measure.Reading[units.Length] {
	u := units.Millimetres(math.Hypot(a.U().Millimetres(), b.U().Millimetres()))
	if u == 0 {
		return measure.Exact(a.Value() - b.Value())
	}
	return measure.Of(a.Value()-b.Value(), u)
}

// dimensions reckons the rate from what was read, and reports whether it could.
func (in Readings) dimensions(id *Identity, g measure.Reading[units.Pressure]) (made, bool, error) {
	total := in.Total
	if !total.Taken() && in.Solid.Taken() && in.Wire.Taken() {
		// coils that touch count themselves
		extra := 0.0
		if !in.Ends.Ground() {
			extra = 1
		}
		n, err := measure.Propagate[units.Ratio](func(x []float64) float64 { return x[0]/x[1] - extra }, in.Solid.SI(), in.Wire.SI())
		if err != nil || !(n.Value().SI() > in.Ends.Dead()) {
			return made{}, false, fault.Fault{Code: fault.Conflict, Path: "solid", Value: in.Solid.Value().String(), Unit: "mm", Rule: "too short for any coil of that wire"}
		}
		total = n
		id.Basis.Assumed = append(id.Basis.Assumed, refdata.Assumption{What: "number of coils", Value: n.String() + ", solid length over wire", Status: refdata.Derived})
	}
	across, sign := in.Outside, -1.0
	if !across.Taken() {
		across, sign = in.Inside, 1
	}
	if !in.Wire.Taken() || !across.Taken() || !total.Taken() {
		return made{}, false, nil
	}
	m := made{d: in.Wire.Value().Millimetres(), total: total.Value().SI(), ud: in.Wire.U().Millimetres(), uo: across.U().Millimetres(), ut: total.U().SI()}
	m.mean = across.Value().Millimetres() + sign*m.d
	m.active = m.total - in.Ends.Dead()
	var l fault.List
	if checkIndex(&l, "outside", m.mean/m.d); l.Len() > 0 {
		return made{}, false, l.Err()
	}
	if in.Outside.Taken() && in.Inside.Taken() {
		gap := difference(in.Outside, in.Inside).Value().Millimetres() - 2*m.d
		if math.Abs(gap) > 0.3+6*math.Hypot(math.Hypot(m.uo, in.Inside.U().Millimetres()), 2*m.ud) {
			return made{}, false, fault.Fault{Code: fault.Conflict, Path: "inside", Value: in.Inside.Value().String(), Unit: "mm", Rule: "outside less inside must be two wires"}
		}
	}
	id.Index = m.mean / m.d
	dead := in.Ends.Dead()
	var err error
	if id.Mean, err = measure.Propagate[units.Length](func(x []float64) float64 { return x[0] + sign*x[1] }, across.SI(), in.Wire.SI()); err != nil {
		return made{}, false, err
	}
	if id.Active, err = measure.Propagate[units.Ratio](func(x []float64) float64 { return x[0] - dead }, total.SI()); err != nil {
		return made{}, false, err
	}
	id.SolidReckoned, err = measure.Propagate[units.Length](func(x []float64) float64 { return solidLength(in.Ends, x[0], x[1]) }, in.Wire.SI(), total.SI())
	if err != nil {
		return made{}, false, err
	}
	id.ByDimensions, err = measure.Propagate[units.SpringRate](func(x []float64) float64 {
		return rate(x[0], x[1]+sign*x[0], x[2]-dead, x[3])
	}, in.Wire.SI(), across.SI(), total.SI(), g.SI())
	if err != nil {
		return made{}, false, err
	}
	m.cd, m.co = 4/m.d-3*sign/m.mean, 3/m.mean
	m.uk = id.ByDimensions.U().Ratio(id.ByDimensions.Value())
	return m, true, nil
}

// compare holds the loaded rate against the reckoned one.
func (id *Identity) compare(in Readings, m made, g measure.Reading[units.Pressure], opt IdentifyOptions) error {
	q := id.ByLoad.Value().Ratio(id.ByDimensions.Value())
	ul := id.ByLoad.U().Ratio(id.ByLoad.Value())
	id.Difference = q - 1
	id.Sigmas = math.Log(q) / math.Hypot(ul, m.uk)
	id.Agrees = math.Abs(id.Sigmas) <= 2
	// what G would have to be; its own uncertainty leaves out that of G itself
	ug := g.U().Ratio(g.Value())
	id.Shear = measure.Of(g.Value().Times(q), g.Value().Times(q*math.Sqrt(max(m.uk*m.uk-ug*ug, 0)+ul*ul)))
	return id.rank(in, m, ul, ug, opt)
}

func (id *Identity) unchecked(in Readings) {
	add := func(what, why, settle string) {
		id.Basis.NotChecked = append(id.Basis.NotChecked, refdata.Unchecked{What: what, Why: why, Settle: settle})
	}
	if id.Reason.Given() {
		add("rate by loads against rate by dimensions", id.Reason.Text, "read two loads on a balance, and wire, outside diameter and coils")
	}
	if len(in.Loads) == 2 {
		add("whether the spring is straight", "two loads always lie on a line", "read a third load half way between")
	}
	if id.Line.Bent {
		add("the rate outside the lengths loaded", "the loads do not lie on a line: coils may be closing, the ends settling, or a reading wrong", "repeat the loads, going in and coming out")
	}
	if !in.Free.Taken() {
		add("whether it has taken a set", "no free length read", "stand it on a flat plate and measure its length")
	} else {
		add("whether it has taken a set", "what it was when new is not known", "compare with a new spring, or load it to its listed length")
	}
	if !in.Solid.Taken() {
		add("its true solid length", "not read", "squeeze it solid in a vice, guided on a rod, and measure it")
	}
}
