package carburation

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Carburettor is a needle-and-slide carburettor as it is built and set.
type Carburettor struct {
	Bore      measure.Reading[units.Length] `json:"bore"`       // at the slide, 8 mm to 60 mm; needed
	Cutaway   measure.Reading[units.Length] `json:"cutaway"`    // height of the slide's cut, 0.5 mm to 20 mm; needed
	NeedleJet measure.Reading[units.Length] `json:"needle_jet"` // bore, 1 mm to 8 mm; needed
	Needle    Needle                        `json:"needle"`     // needed
	MainJet   Jet                           `json:"main_jet"`   // needed
	// Bleed is the effective area of an air bleed into the well over the needle
	// jet, and Outlet that of the spray tube it leaves by. Not taken, none. Both
	// are figures to fit: small passages do not mix evenly.
	Bleed    measure.Reading[units.Area] `json:"bleed"`
	Outlet   measure.Reading[units.Area] `json:"outlet"`
	PilotJet Jet                         `json:"pilot_jet"` // not read, the pilot is left out and the mixture below a quarter of lift with it
	Screw    Screw                       `json:"screw"`
}

// ScrewKind is what the pilot screw meters. The two kinds turn opposite ways
// and must be told apart by where they sit, never assumed.
type ScrewKind string

// The kinds.
const (
	ScrewNotTold ScrewKind = ""     // the usual setting is assumed
	AirScrew     ScrewKind = "air"  // on the intake side of the slide: in is richer
	FuelScrew    ScrewKind = "fuel" // on the engine side of the slide: out is richer
)

// Screw is the pilot screw.
type Screw struct {
	Kind  ScrewKind                    `json:"kind,omitempty"`
	Turns measure.Reading[units.Ratio] `json:"turns"` // out from lightly shut, 0.1 to 6; not taken, 1 1/2
}

// usualTurns is the usual setting of a pilot screw (common practice).
const usualTurns = 1.5

// Cleaner is what stands in front of the intake. The zero Cleaner is nothing.
type Cleaner struct {
	// Drop is the loss of pressure through it at full throttle and peak speed, up
	// to 10 kPa. Not taken, none.
	Drop measure.Reading[units.Pressure] `json:"drop"`
	// Vented says that the float chamber's vent lies behind it, so that fuel feels
	// no part of the drop. A vent in the open air makes a dirty cleaner enrich.
	Vented bool `json:"vented,omitempty"`
}

// Setup is an engine with its carburettor, air and fuel.
type Setup struct {
	Engine       Engine       `json:"engine"`
	Surroundings Surroundings `json:"surroundings"`
	Carburettor  Carburettor  `json:"carburettor"`
	Cleaner      Cleaner      `json:"cleaner"`
}

// Model is the steady flow of air and fuel through a carburettor, with the
// uncertainty of all that goes into it. It never changes; Calibrate and the
// With methods return another. Models are safe for use by several goroutines.
type Model struct {
	plant plant
	setup Setup
	opt   Options
	knobs knobs
	value [nKnobs]float64
	cov   [nKnobs][nKnobs]float64
	basis refdata.Basis
	// ready is false for the zero Model
	ready bool
}

// NewModel builds the model of a setup. See At for its equations. Errors: what
// is needed and was not read, figures outside, a needle thicker than its jet;
// all are returned together.
func NewModel(s Setup, opt Options) (Model, error) {
	var l fault.List
	engine, assumed := s.Engine.filled(&l)
	out := s.Surroundings.outside(&l)
	mean, sd, priors := opt.Physics.prior(&l)
	s.Carburettor.faults(&l)
	if s.Cleaner.Drop.Taken() {
		l.Under("cleaner.drop", s.Cleaner.Drop.Err())
		positive(&l, "cleaner.drop", s.Cleaner.Drop.Value(), 0, units.Kilopascals(10))
	}
	if opt.Head.Taken() {
		l.Under("options.head", opt.Head.Err())
		positive(&l, "options.head", opt.Head.Value(), units.Metres(0.05), units.Metres(10))
	}
	if l.Len() > 0 {
		return Model{}, l.Err()
	}
	m := Model{setup: s, opt: opt, knobs: mean, ready: true}
	m.setup.Engine = engine
	c := s.Carburettor
	p := &m.plant
	*p = plant{swept: engine.Displacement.Value().CubicMetres() * float64(engine.cylinders()), cylinders: float64(engine.cylinders()), peak: engine.PeakSpeed.Value().RevolutionsPerSecond(),
		pressure: out.weather.Pressure.Pascals(), rhoAir: out.moist.Density.KilogramsPerCubicMetre(), dry: out.moist.DryMassShare,
		rhoFuel: out.liquid.KilogramsPerCubicMetre(), nu: 0.55e-6, stoich: out.fuel.AFR.Value(),
		bore: c.Bore.Value().Metres(), cutaway: c.Cutaway.Value().Metres(), needleJet: c.NeedleJet.Value().Metres(), longJet: 3, screw: 1, mixtureScrew: 1, curve: true}
	if c.Bleed.Taken() {
		p.bleed, p.outlet = c.Bleed.Value().SquareMetres(), c.Outlet.Value().SquareMetres()
	}
	if nu := out.fuel.Viscosity.SquareMetresPerSecond(); nu > 0 {
		p.nu = nu
	} else {
		m.basis.Assumed = append(m.basis.Assumed, refdata.Assumption{What: "viscosity of " + out.fuel.Name, Value: "0.55 mm²/s, as petrol", Status: refdata.FromMemory})
	}
	p.rootRT = math.Sqrt(p.pressure / p.rhoAir)
	d := c.Needle.Diameter.Value().Metres()
	p.blocked = 1 - 4*d/(math.Pi*p.bore)
	p.needle = c.Needle.shape()
	p.needle.raised = c.Needle.offset()
	if !c.Needle.TaperFrom.Taken() {
		p.needle.from = p.bore / 4
	}
	m.knobs[kEta], sd[kEta] = math.Log(engine.VolumetricEfficiency.Value().Value()), engine.VolumetricEfficiency.U().Ratio(engine.VolumetricEfficiency.Value())
	sd[kRing] = math.Hypot(c.NeedleJet.U().Metres(), c.Needle.Diameter.U().Metres()) / p.needleJet
	m.basis.Assumed = append(append(append(m.basis.Assumed, assumed...), out.assumed...), priors...)
	p.mainJet, sd[kMain] = m.jetNumbers(c.MainJet)
	if c.PilotJet.Taken() {
		p.pilotJet, sd[kPilotJet] = m.jetNumbers(c.PilotJet)
	} else {
		m.basis.NotChecked = append(m.basis.NotChecked, refdata.Unchecked{What: "pilot circuit", Why: "pilot jet not read: the mixture below a quarter of lift is without it", Settle: "read the mark on the pilot jet"})
	}
	m.screw(c.Screw)
	m.value = m.knobs.values()
	for i := range sd {
		m.cov[i][i] = sd[i] * sd[i]
	}
	m.restrict()
	m.cite(c, out)
	return m, nil
}

// jetNumbers returns a jet in SI numbers and the uncertainty of its flow, as a
// share.
func (m *Model) jetNumbers(j Jet) (jetNumbers, float64) {
	size, err := j.Size(JetOptions{Head: m.opt.Head})
	if err != nil { // the jet was checked before
		return jetNumbers{}, 0
	}
	fall := math.Sqrt(2 * standardGravity * size.Head.Value().Metres())
	return jetNumbers{ca: size.Effective.Value().SquareMetres(), bore: size.Bore.Value().Metres(), cd: size.Coefficient, fall: fall}, size.Effective.U().Ratio(size.Effective.Value())
}

func (m *Model) screw(s Screw) {
	turns := usualTurns
	if s.Turns.Taken() {
		turns = s.Turns.Value().Value()
	}
	switch s.Kind {
	case AirScrew:
		m.plant.screw = turns / usualTurns
	case FuelScrew:
		m.plant.mixtureScrew = turns / usualTurns
	default:
		m.basis.NotChecked = append(m.basis.NotChecked, refdata.Unchecked{What: "pilot screw", Why: "nobody said which side of the slide it sits on; 1 1/2 turns out is assumed", Settle: "look: on the intake side it meters air, on the engine side fuel"})
	}
}

// restrict turns the cleaner's drop at full throttle into a resistance.
func (m *Model) restrict() {
	m.plant.vented = m.setup.Cleaner.Vented
	if !m.setup.Cleaner.Drop.Taken() {
		return
	}
	st := m.plant.at(m.plant.bore, m.plant.peak, &m.value)
	if st.air > 0 {
		m.plant.restriction = m.setup.Cleaner.Drop.Value().Pascals() / (st.air * st.air)
	}
}

func (m *Model) cite(c Carburettor, out outside) {
	b := &m.basis
	if !c.Needle.Groove.Taken() {
		b.Assumed = append(b.Assumed, refdata.Assumption{What: "needle clip", Value: "middle groove", Status: refdata.CommonPractice})
	}
	if !c.Needle.TaperFrom.Taken() && len(c.Needle.Profile) == 0 {
		b.Assumed = append(b.Assumed, refdata.Assumption{What: "lift at which the needle's taper enters its jet", Value: "a quarter of the bore", Status: refdata.FromMemory})
	}
	if c.MainJet.flow.Taken() && !c.MainJet.head.Taken() && !m.opt.Head.Taken() {
		b.Assumed = append(b.Assumed, headAssumption())
	}
	b.Assumed = append(b.Assumed, refdata.Assumption{What: "breathing over engine speed", Value: "best at three quarters of peak speed, 1.03 - 0.48 (n - 0.75)² of that at the peak", Status: refdata.FromMemory})
	b.Sources = append(append(b.Sources, out.sources...), lichtarowicz(),
		refdata.Source{Title: "textbook carburettor theory: H. N. Gupta, Fundamentals of Internal Combustion Engines, 2006", Clause: "chapter 9", Read: "public companions of its examples", Status: refdata.Published},
		refdata.Source{Title: "J. B. Heywood, Internal Combustion Engine Fundamentals", Clause: "appendix C", Status: refdata.FromMemory},
		refdata.Source{Title: "form factor of a half sine, cutaway and pilot well from geometry", Status: refdata.Derived})
	b.NotChecked = append(b.NotChecked,
		refdata.Unchecked{What: "air leaks, wear of slide and body, spark, compression", Why: "each looks like a mixture fault and none is in the model", Settle: "look for them before a jet is touched"},
		refdata.Unchecked{What: "spit-back, long tracts, wet walls", Why: "the flow is taken as steady over the cycle", Settle: "a lambda reading at the speed that matters"})
	b.Cautions = append(b.Cautions, refdata.WeakMixture, refdata.PetrolVapour, refdata.CarbonMonoxide, refdata.StartingPointsOnly, refdata.DeferToManual)
}

// Basis returns what the model rests on, what it took for granted and what it
// does not look at.
func (m Model) Basis() refdata.Basis { return m.basis }

// Setup returns the setup as it was given, with the engine's defaults filled in.
func (m Model) Setup() Setup { return m.setup }

func (c Carburettor) faults(l *fault.List) {
	for _, r := range []struct {
		path      string
		r         measure.Reading[units.Length]
		low, high units.Length
	}{{"carburettor.bore", c.Bore, 8 * units.Millimetre, 60 * units.Millimetre}, {"carburettor.cutaway", c.Cutaway, units.Millimetres(0.5), 20 * units.Millimetre},
		{"carburettor.needle_jet", c.NeedleJet, 1 * units.Millimetre, 8 * units.Millimetre}} {
		needed(l, r.path, r.r)
		if r.r.Taken() {
			positive(l, r.path, r.r.Value(), r.low, r.high)
		}
	}
	var n fault.List
	c.Needle.faults(&n)
	l.Under("carburettor", n.Err())
	if c.NeedleJet.Taken() && c.Needle.Diameter.Taken() && !(c.Needle.Diameter.Value() < c.NeedleJet.Value()) {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "carburettor.needle.diameter", Value: c.Needle.Diameter.Value().String(), Rule: "thinner than the needle jet of " + c.NeedleJet.Value().String()})
	}
	if c.Bore.Taken() && c.NeedleJet.Taken() && !(c.NeedleJet.Value() < c.Bore.Value().Times(0.3)) {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "carburettor.needle_jet", Value: c.NeedleJet.Value().String(), Rule: "less than three tenths of the bore of " + c.Bore.Value().String()})
	}
	if c.Bore.Taken() && c.Cutaway.Taken() && !(c.Cutaway.Value() < c.Bore.Value().Times(0.6)) {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "carburettor.cutaway", Value: c.Cutaway.Value().String(), Rule: "less than six tenths of the bore of " + c.Bore.Value().String()})
	}
	if c.Bleed.Taken() {
		l.Under("carburettor.bleed", c.Bleed.Err())
		positive(l, "carburettor.bleed", c.Bleed.Value(), 0, units.SquareMillimetres(20))
		needed(l, "carburettor.outlet", c.Outlet)
		if c.Outlet.Taken() {
			positive(l, "carburettor.outlet", c.Outlet.Value(), units.SquareMillimetres(0.1), units.SquareMillimetres(200))
		}
	}
	if !c.MainJet.Taken() {
		l.Add(fault.Fault{Code: fault.Missing, Path: "carburettor.main_jet", Rule: jetForms})
	}
	l.Under("carburettor.main_jet", c.MainJet.Err())
	l.Under("carburettor.pilot_jet", c.PilotJet.Err())
	switch c.Screw.Kind {
	case ScrewNotTold, AirScrew, FuelScrew:
	default:
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "carburettor.screw.kind", Value: string(c.Screw.Kind), Rule: `"air", "fuel" or nothing`})
	}
	if c.Screw.Turns.Taken() {
		l.Under("carburettor.screw.turns", c.Screw.Turns.Err())
		positive(l, "carburettor.screw.turns", c.Screw.Turns.Value(), 0.1, 6)
	}
}
