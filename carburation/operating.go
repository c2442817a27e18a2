package carburation

import (
	"math"
	"strconv"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Operating is the flow at one lift and speed.
type Operating struct {
	Lift       units.Ratio           `json:"lift"` // of the slide, over the bore
	Speed      units.RotationalSpeed `json:"speed"`
	Air        units.MassFlow        `json:"air"`
	MainFuel   units.MassFlow        `json:"main_fuel"`
	PilotFuel  units.MassFlow        `json:"pilot_fuel"`
	Mixture    units.Ratio           `json:"mixture"`             // kg of dry air per kg of fuel; 0 without fuel
	Lambda     units.Ratio           `json:"lambda"`              // 0 without fuel
	PilotShare float64               `json:"pilot_share"`         // of the fuel
	JetSay     float64               `json:"jet_say"`             // main jet's part in the resistance of jet and annulus, 0 to 1
	Open       units.Area            `json:"open"`                // under the slide's engine-side edge
	Over       units.Area            `json:"over"`                // under its intake-side edge, where air meets the needle jet
	Annulus    units.Area            `json:"annulus"`             // round the needle
	AirSpeed   units.Speed           `json:"air_speed"`           // over the needle jet, mean of the cycle
	Pulse      float64               `json:"pulse"`               // factor on it that the fuel feels
	Suction    units.Pressure        `json:"suction"`             // at the needle jet, lip not taken off
	Depression units.Pressure        `json:"depression"`          // behind the slide
	Choked     bool                  `json:"choked"`              // the air under the slide reaches the speed of sound
	Rough      bool                  `json:"rough"`               // below 1/8 of lift: order of magnitude only
	NoMixture  fault.Reason          `json:"no_mixture,omitzero"` // code "no-fuel": suction does not lift fuel here
}

// roughBelow is the lift below which the model is an order of magnitude only.
const roughBelow = 0.125

func noFuel() fault.Reason {
	return fault.Reason{Code: "no-fuel", Text: "suction does not lift fuel over the lip of either jet here"}
}

// At returns the flow at a lift, a share of the bore from above 0 to 1, and a
// crank speed of 200 rev/min to twice that of the peak. It allocates nothing.
//
//	air under the slide   m = Cs A(x) p/sqrt(RT) psi(pm/p) phi, met by what the
//	                      engine draws, eta rho V N/2 times pm/p
//	A(x)                  segment of the bore below the slide
//	speed at the jet      u = m/(rho C1 A(x + c)), c the cutaway
//	suction               k E² rho u²/2, E the pulses that the fuel feels
//	fuel                  jet and annulus in series, sqrt(2 rho_f (suction - lip))
//	pilot                 beside it, on its share of the depression
//
// phi and E go from steady flow at small openings to a half sine over the inlet
// stroke at large ones. Suction at the needle jet sets in between 1/32 and 1/8
// of lift (Physics.Onset): without that, main fuel would flow at tick-over,
// where real engines run on the pilot alone. Below 1/8 of lift the figures are
// an order of magnitude only, and Rough says so. Uncalibrated, the mixture is
// good to some 30 %; see Calibrate. Errors: the zero Model, figures outside.
func (m *Model) At(lift units.Ratio, speed units.RotationalSpeed) (Operating, error) {
	if err := m.inside(lift, speed); err != nil {
		return Operating{}, err
	}
	return m.operating(lift.Value(), speed.RevolutionsPerSecond()), nil
}

func (m *Model) inside(lift units.Ratio, speed units.RotationalSpeed) error {
	x, n := lift.Value(), speed.RevolutionsPerSecond()
	if m.ready && x > 0 && x <= 1 && n >= 200.0/60 && n <= 2*m.plant.peak {
		return nil
	}
	var l fault.List
	if !m.ready {
		l.Add(fault.Fault{Code: fault.Missing, Path: "model", Rule: "built by NewModel"})
		return l.Err()
	}
	if !(x > 0 && x <= 1) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "lift", Value: lift.String(), Rule: "above 0, to 1, of the bore"})
	}
	if !(n >= 200.0/60 && n <= 2*m.plant.peak) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "speed", Value: speed.String(), Unit: "rev/min", Rule: "200 rev/min to " + units.RevolutionsPerSecond(2*m.plant.peak).In(units.RevolutionPerMinute, 0)})
	}
	return l.Err()
}

func (m *Model) operating(lift, speed float64) Operating {
	p := &m.plant
	s := p.at(lift*p.bore, speed, &m.value)
	o := Operating{
		Lift: units.Value(lift), Speed: units.RevolutionsPerSecond(speed), Air: units.KilogramsPerSecond(s.air), MainFuel: units.KilogramsPerSecond(s.main), PilotFuel: units.KilogramsPerSecond(s.pilot),
		Open: units.SquareMetres(s.open), Over: units.SquareMetres(s.over), Annulus: units.SquareMetres(s.annulus), AirSpeed: units.MetresPerSecond(s.speed), Pulse: s.pulse,
		Suction: units.Pascals(s.suction), Depression: units.Pascals(s.depression), Choked: s.choked, Rough: lift < roughBelow,
	}
	if f := s.main + s.pilot; f > 0 {
		o.PilotShare = s.pilot / f
		o.Lambda, o.Mixture = units.Value(s.lambda), units.Value(s.lambda*p.stoich)
	} else {
		o.NoMixture = noFuel()
	}
	if ring, jet := m.value[kAnnulus]*s.annulus, p.mainJet.ca*m.value[kMain]; ring > 0 && jet > 0 {
		o.JetSay = ring * ring / (ring*ring + jet*jet)
	}
	return o
}

// Map is the mixture over lifts and speeds.
type Map struct {
	Lifts  []units.Ratio           `json:"lifts"`
	Speeds []units.RotationalSpeed `json:"speeds"`
	Points []Operating             `json:"points"` // lift by lift: Points[i*len(Speeds)+j]
}

// Point returns the flow at Lifts[i] and Speeds[j]; the zero Operating outside.
func (g Map) Point(i, j int) Operating {
	if i < 0 || j < 0 || i >= len(g.Lifts) || j >= len(g.Speeds) || i*len(g.Speeds)+j >= len(g.Points) {
		return Operating{}
	}
	return g.Points[i*len(g.Speeds)+j]
}

// Map returns the flow at every lift and speed, at most 100 000 points in all.
// Errors are those of At, all together.
func (m *Model) Map(lifts []units.Ratio, speeds []units.RotationalSpeed) (Map, error) {
	var l fault.List
	if n := len(lifts) * len(speeds); n > 100_000 {
		return Map{}, fault.Fault{Code: fault.OutOfRange, Path: "points", Value: strconv.Itoa(n), Rule: "at most 100 000 points of lift and speed"}
	}
	for _, x := range lifts {
		l.Under("", m.inside(x, units.RevolutionsPerSecond(m.plant.peak)))
		if !m.ready {
			return Map{}, l.Err()
		}
	}
	for _, n := range speeds {
		l.Under("", m.inside(1, n))
	}
	if l.Len() > 0 {
		return Map{}, l.Err()
	}
	g := Map{Lifts: append([]units.Ratio(nil), lifts...), Speeds: append([]units.RotationalSpeed(nil), speeds...), Points: make([]Operating, 0, len(lifts)*len(speeds))}
	for _, x := range lifts {
		for _, n := range speeds {
			g.Points = append(g.Points, m.operating(x.Value(), n.RevolutionsPerSecond()))
		}
	}
	return g, nil
}

// Bands returns the band of lambda at every point of a map, in its order: some
// thirty times the work of the map itself. A point without a mixture, or at the
// edge of having none, has the zero Band. Errors are those of Map.
func (m *Model) Bands(g Map) ([]Band[units.Ratio], error) {
	var l fault.List
	if len(g.Points) != len(g.Lifts)*len(g.Speeds) {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "points", Rule: "one for every lift and speed"})
	}
	for _, p := range g.Points {
		l.Under("points", m.inside(p.Lift, p.Speed))
	}
	if !m.ready && l.Len() == 0 {
		l.Under("", m.inside(1, 0))
	}
	if l.Len() > 0 {
		return nil, l.Err()
	}
	out := make([]Band[units.Ratio], len(g.Points))
	for i, p := range g.Points {
		x, n := p.Lift.Value(), p.Speed.RevolutionsPerSecond()
		s := m.plant.at(x*m.plant.bore, n, &m.value)
		if sd, ok := m.relative(x, n); ok && s.lambda > 0 {
			out[i] = lnBand[units.Ratio](math.Log(s.lambda), sd)
		}
	}
	return out, nil
}
