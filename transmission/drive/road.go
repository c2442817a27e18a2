package drive

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
	"example.com/benchbook/units/solve"
)

const gravity = 9.80665 // m/s², standard

// Road is a machine on a road: what holds it back. What is not taken has a
// default, which results list as assumed.
type Road struct {
	Mass       measure.Reading[units.Mass]  `json:"mass"`              // machine, rider and load together
	DragArea   measure.Reading[units.Area]  `json:"drag_area"`         // drag coefficient times frontal area; not taken: 0.55 ± 0.08 m² upright, 0.9 ± 0.15 m² with sidecar
	Rolling    measure.Reading[units.Ratio] `json:"rolling"`           // rolling resistance over weight; not taken: 0.020 ± 0.003
	Pressure   units.Pressure               `json:"pressure,omitzero"` // of the tyres, above atmosphere; above zero: rolling resistance by [RollingAt] in place of Rolling
	Efficiency measure.Reading[units.Ratio] `json:"efficiency"`        // crankshaft to road; not taken: 0.88 ± 0.04
	Density    units.Density                `json:"density,omitzero"`  // of the air; zero: 1.225 kg/m³
	Climb      float64                      `json:"climb,omitzero"`    // sine of the slope, rise over road: 0.1 is one in ten; below zero: downhill; -0.5 to 0.5
	Headwind   units.Speed                  `json:"headwind,omitzero"` // below zero: following
	Sidecar    bool                         `json:"sidecar,omitzero"`  // chooses the default drag area
}

// settled is a Road with its defaults, SI.
type settled struct {
	mass, area, cr, eta measure.Input
	bar, rho, climb     float64
	wind                float64
}

// settle checks a road and puts in the defaults, noting them in b.
func (r Road) settle(l *fault.List, b *refdata.Basis) settled {
	checkReading(l, "mass", r.Mass)
	s := settled{mass: r.Mass.SI(), climb: r.Climb, wind: r.Headwind.MetresPerSecond(), rho: r.Density.KilogramsPerCubicMetre(), bar: r.Pressure.Bars()}
	assume := func(what, value string) {
		b.Assumed = append(b.Assumed, refdata.Assumption{What: what, Value: value, Status: refdata.FromMemory})
	}
	switch {
	case r.DragArea.Taken():
		checkReading(l, "drag_area", r.DragArea)
		s.area = r.DragArea.SI()
	case r.Sidecar:
		s.area = measure.Input{X: 0.9, U: 0.15}
		assume("drag area", "0.90 ± 0.15 m², with sidecar")
	default:
		s.area = measure.Input{X: 0.55, U: 0.08}
		assume("drag area", "0.55 ± 0.08 m², rider upright, no fairing")
	}
	switch {
	case r.Pressure != 0:
		if positive(l, "pressure", r.Pressure) {
			within(l, "pressure", s.bar, 0.5, 6)
		}
	case r.Rolling.Taken():
		if checkReading(l, "rolling", r.Rolling) {
			within(l, "rolling", r.Rolling.Value().SI(), 0.001, 0.3)
		}
		s.cr = r.Rolling.SI()
	default:
		s.cr = measure.Input{X: 0.020, U: 0.003}
		assume("rolling resistance over weight", "0.020 ± 0.003, on tarmac")
	}
	switch {
	case r.Efficiency.Taken():
		if checkReading(l, "efficiency", r.Efficiency) {
			within(l, "efficiency", r.Efficiency.Value().SI(), 0.2, 1)
		}
		s.eta = r.Efficiency.SI()
	default:
		s.eta = measure.Input{X: 0.88, U: 0.04}
		assume("efficiency from crankshaft to road", "0.88 ± 0.04")
	}
	if r.Density == 0 {
		s.rho = 1.225
		b.Assumed = append(b.Assumed, refdata.Assumption{What: "density of the air", Value: "1.225 kg/m³, standard atmosphere at sea level", Status: refdata.Standard})
	} else if positive(l, "density", r.Density) {
		within(l, "density", s.rho, 0.3, 2)
	}
	within(l, "climb", r.Climb, -0.5, 0.5)
	within(l, "headwind", s.wind, -40, 40)
	return s
}

// force is the resistance at v m/s and its parts, in newtons.
func (s settled) force(v, mass, area, cr float64) (drag, rolling, slope float64) {
	air := v + s.wind
	drag = 0.5 * s.rho * area * air * math.Abs(air)
	if s.bar > 0 {
		cr = rollingAt(s.bar, v*3.6)
	}
	weight := mass * gravity
	return drag, weight * cr * math.Sqrt(1-s.climb*s.climb), weight * s.climb
}

// RollingAt returns the rolling resistance of a motorcycle tyre over the weight
// on it, at a pressure above atmosphere p and a speed v below 165 km/h:
// 0.0085 + 0.018/p + 1.59e-6 v²/p, p in bar, v in km/h (V. Cossalter, Motorcycle
// Dynamics, from memory). Errors: p outside 0.5 to 6 bar, v outside 0 to
// 165 km/h.
func RollingAt(p units.Pressure, v units.Speed) (units.Ratio, error) {
	var l fault.List
	within(&l, "pressure", p.Bars(), 0.5, 6)
	within(&l, "speed", v.KilometresPerHour(), 0, 165)
	if err := l.Err(); err != nil {
		return 0, err
	}
	return units.Value(rollingAt(p.Bars(), v.KilometresPerHour())), nil
}

func rollingAt(bar, kmh float64) float64 { return 0.0085 + 0.018/bar + 1.59e-6*kmh*kmh/bar }

// DragAreaFrom returns the drag area that a drag force at a speed in air of a
// density means: 2F/(ρ v²) (Çengel & Cimbala, Fluid Mechanics, 2nd ed. 2010,
// ex. 11-1). Over the frontal area it is the drag coefficient. Errors: figures
// not above zero.
func DragAreaFrom(f units.Force, rho units.Density, v units.Speed) (units.Area, error) {
	var l fault.List
	positive(&l, "force", f)
	positive(&l, "density", rho)
	positive(&l, "speed", v)
	if err := l.Err(); err != nil {
		return 0, err
	}
	return units.SquareMetres(2 * f.Newtons() / (rho.KilogramsPerCubicMetre() * v.MetresPerSecond() * v.MetresPerSecond())), nil
}

// Resistance is what holds a machine back at one speed.
type Resistance struct {
	Speed   units.Speed                  `json:"speed"`
	Drag    units.Force                  `json:"drag"`
	Rolling units.Force                  `json:"rolling"`
	Slope   units.Force                  `json:"slope"` // below zero: it drives
	Total   measure.Reading[units.Force] `json:"total"` // at the tyre
	Power   measure.Reading[units.Power] `json:"power"` // that the engine must give for it
	Basis   refdata.Basis                `json:"basis"`
}

// RoadLoad returns the resistance at a speed on a road and the engine power it
// takes: F = m g (cr cos θ + sin θ) + ρ CdA (v + w)|v + w|/2, P = F v/η, with
// the uncertainties of what was taken or assumed. Downhill the power may be
// below zero, efficiency being left as it is. Errors: a mass not taken, figures
// outside their ranges, a speed outside 0 to 100 m/s.
func RoadLoad(r Road, v units.Speed) (Resistance, error) {
	var l fault.List
	out := Resistance{Speed: v}
	out.Basis = roadBasis(r)
	s := r.settle(&l, &out.Basis)
	x := v.MetresPerSecond()
	within(&l, "speed", x, 0, 100)
	if err := l.Err(); err != nil {
		return Resistance{}, err
	}
	r.beyondLaw(v, &out.Basis)
	d, roll, slope := s.force(x, s.mass.X, s.area.X, s.cr.X)
	out.Drag, out.Rolling, out.Slope = units.Newtons(d), units.Newtons(roll), units.Newtons(slope)
	total := func(y []float64) float64 {
		a, b, c := s.force(x, y[0], y[1], y[2])
		return a + b + c
	}
	var err error
	if out.Total, err = measure.Propagate[units.Force](total, s.mass, s.area, s.cr); err != nil {
		return Resistance{}, err
	}
	out.Power, err = measure.Propagate[units.Power](func(y []float64) float64 { return total(y) * x / y[3] }, s.mass, s.area, s.cr, s.eta)
	if err != nil {
		return Resistance{}, err
	}
	return out, nil
}

func roadBasis(r Road) refdata.Basis {
	b := refdata.Basis{
		Sources: []refdata.Source{
			{Title: "drag areas of motorcycles, 0.18 to 0.7 m², attributed to V. Cossalter, Motorcycle Dynamics", Read: "a software maker's notes on two-wheeler aerodynamics", Status: refdata.Published},
			{Title: "power against drag, rolling and slope", Status: refdata.Derived},
		},
		NotChecked: []refdata.Unchecked{{What: "drag and rolling resistance", Why: "reckoned from typical figures unless given", Settle: "time a run down from speed on a still day, both ways, on a level road"}},
		Cautions:   []refdata.Caution{refdata.BrakesBeforeRoad, refdata.StartingPointsOnly, refdata.DeferToManual},
	}
	if r.Pressure > 0 {
		b.Sources = append(b.Sources, refdata.Source{Title: "V. Cossalter, Motorcycle Dynamics", Clause: "rolling resistance by pressure and speed", Status: refdata.FromMemory})
	}
	return b
}

// beyondLaw notes that the rolling resistance law was used where it was not made
// for.
func (r Road) beyondLaw(v units.Speed, b *refdata.Basis) {
	if r.Pressure > 0 && v > units.KilometresPerHour(165) {
		b.NotChecked = append(b.NotChecked, refdata.Unchecked{What: "rolling resistance", Why: "its law by pressure ends at 165 km/h and was carried on", Settle: "give a figure of its own for Rolling"})
	}
}

// Top is a top speed.
type Top struct {
	Speed     measure.Reading[units.Speed] `json:"speed"`
	Drag      units.Force                  `json:"drag"` // at that speed
	Rolling   units.Force                  `json:"rolling"`
	Slope     units.Force                  `json:"slope"`
	AtTyre    units.Power                  `json:"at_tyre"`    // engine power × efficiency
	DragShare float64                      `json:"drag_share"` // part of the resistance that is air
	Reason    fault.Reason                 `json:"reason,omitzero"`
	Basis     refdata.Basis                `json:"basis"`
}

const fastest = 150.0 // m/s, beyond any machine of this library

// TopSpeed returns the speed at which power, if the engine gives just that
// whatever its speed, is used up: the positive root of
// ρ CdA v³/2 + m g cr v - η P = 0 and its like with slope and wind. It is what
// ideal gearing reaches; [InGears] gives what the gears there are reach. Errors:
// as for [RoadLoad], a power not taken or not above zero. A result above 150 m/s
// has the reason "no-top-speed" in its place.
func TopSpeed(r Road, power measure.Reading[units.Power]) (Top, error) {
	var l fault.List
	out := Top{Basis: roadBasis(r)}
	s := r.settle(&l, &out.Basis)
	checkReading(&l, "power", power)
	if err := l.Err(); err != nil {
		return Top{}, err
	}
	root := func(y []float64) float64 {
		v, err := solve.Root(func(v float64) float64 {
			a, b, c := s.force(v, y[0], y[1], y[2])
			return (a+b+c)*v - y[3]*y[4]
		}, 0, 1e6, 1e-10)
		if err != nil {
			return math.NaN()
		}
		return v
	}
	// the middle figures may have a top speed and those a spread away none
	v, err := measure.Propagate[units.Speed](root, s.mass, s.area, s.cr, s.eta, power.SI())
	if err != nil || v.Value().MetresPerSecond() > fastest {
		out.Reason = fault.Reason{Code: "no-top-speed", Text: "nothing surely holds it back below " + units.MetresPerSecond(fastest).In(units.KilometrePerHour, 0)}
		return out, nil
	}
	out.Speed = v
	r.beyondLaw(out.Speed.Value(), &out.Basis)
	d, roll, slope := s.force(out.Speed.Value().MetresPerSecond(), s.mass.X, s.area.X, s.cr.X)
	out.Drag, out.Rolling, out.Slope = units.Newtons(d), units.Newtons(roll), units.Newtons(slope)
	out.AtTyre = power.Value().Times(s.eta.X)
	out.DragShare = d / (d + roll + slope)
	return out, nil
}
