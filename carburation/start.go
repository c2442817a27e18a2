package carburation

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Fitted is a carburettor as it was found, each part as far as it was read.
type Fitted struct {
	Bore     measure.Reading[units.Length] `json:"bore"`
	MainJet  Jet                           `json:"main_jet"`
	PilotJet Jet                           `json:"pilot_jet"`
	Cutaway  measure.Reading[units.Length] `json:"cutaway"` // height of the slide's cut; number 3 in sixteenths is 3/16 in
	Groove   Groove                        `json:"groove"`
	// NeedleJet and Needle, if both were measured, let the physics of slide and
	// clip be worked out too. Needle's own groove is not used: Groove is.
	NeedleJet measure.Reading[units.Length] `json:"needle_jet"`
	Needle    Needle                        `json:"needle"`
}

// Input is the question of Start.
type Input struct {
	Engine       Engine       `json:"engine"`
	Surroundings Surroundings `json:"surroundings"`
	// Lambda is the mixture wanted at full throttle, 0.6 to 1.2. Not taken, 0.87
	// ± 0.03 is assumed (common practice 0.85 to 0.90).
	Lambda measure.Reading[units.Ratio] `json:"lambda"`
	Fitted Fitted                       `json:"fitted"`
}

// Options are the choices of Start. The zero value takes the defaults.
type Options struct {
	// Head is the height of fuel behind flow marks that do not tell their own,
	// those of the trade's table among them. Not taken, anything from 0.4 m to
	// 1.5 m is held equally likely by its logarithm, and is listed as assumed.
	Head measure.Reading[units.Length]
	// Physics are the figures of the model. Each one not taken has a default.
	Physics Physics
}

// Standing says where a part stands to the practice range.
type Standing string

// The standings.
const (
	NotRead Standing = "not-read" // the part was not read
	Inside  Standing = "inside"   // more likely than not within the range
	Below   Standing = "below"    // smaller, more likely than not
	Above   Standing = "above"    // larger, more likely than not
	Unknown Standing = "unknown"  // nothing to compare it with
)

// Point is one starting point, by practice and by physics side by side, its
// figures to four digits.
type Point[Q units.Quantity] struct {
	Key        string             `json:"key"`       // "main-jet"
	Text       string             `json:"text"`      // "main jet, flow mark"
	Practice   refdata.Range[Q]   `json:"practice"`  // from the table, for its petrol and air
	Corrected  refdata.Range[Q]   `json:"corrected"` // for this air and fuel; equal to Practice where neither acts
	NoPractice fault.Reason       `json:"no_practice,omitzero"`
	Physics    Band[Q]            `json:"physics"`
	NoPhysics  fault.Reason       `json:"no_physics,omitzero"`
	Agree      bool               `json:"agree"`            // band and corrected range overlap
	Differ     string             `json:"differ,omitempty"` // how they lie apart, for the reader
	Fitted     measure.Reading[Q] `json:"fitted"`           // as the practice range counts it
	Standing   Standing           `json:"standing"`
	Chance     float64            `json:"chance"` // that the fitted part lies inside, 0 to 1
}

// String returns text such as "main jet, flow mark: practice 179 to 256 cc/min,
// physics 117 to 252 cc/min, middle 171 cc/min".
func (p Point[Q]) String() string {
	s := p.Text + ": practice "
	if _, _, ok := p.Corrected.Ends(); ok {
		s += rangeText(p.Corrected)
	} else {
		s += "has none, " + p.NoPractice.Text
	}
	if p.Physics.Given() {
		return s + ", physics " + p.Physics.String()
	}
	return s + ", no physics: " + p.NoPhysics.Text
}

// Starting is where to begin.
type Starting struct {
	Demand      Demand                  `json:"demand"`
	Bore        Point[units.Length]     `json:"bore"`
	MainJet     Point[units.VolumeFlow] `json:"main_jet"`      // by flow mark
	MainJetBore Band[units.Length]      `json:"main_jet_bore"` // the physics of the same, for jets marked by bore: no head enters
	Cutaway     Point[units.Length]     `json:"cutaway"`
	PilotJet    Point[units.VolumeFlow] `json:"pilot_jet"` // by flow mark
	Needle      NeedleStart             `json:"needle"`
	Head        Band[units.Length]      `json:"head"`    // taken behind flow marks
	Outside     []Part                  `json:"outside"` // fitted parts that are not inside, in the order to change them
	Basis       refdata.Basis           `json:"basis"`
}

// Demand is what the engine takes at its peak.
type Demand struct {
	AirDensity   units.Density    `json:"air_density"`
	DensityRatio float64          `json:"density_ratio"` // of the air, to 15 °C and 1013.25 hPa dry
	Air          units.MassFlow   `json:"air"`
	Mixture      units.Ratio      `json:"mixture"` // air/fuel ratio by mass
	Fuel         units.MassFlow   `json:"fuel"`
	FuelVolume   units.VolumeFlow `json:"fuel_volume"`
	SuctionSpeed units.Speed      `json:"suction_speed"` // mean air speed over the suction stroke in the bore below
	InBore       units.Length     `json:"in_bore"`       // the fitted bore, or the middle of what is served
	Suction      units.Pressure   `json:"suction"`       // at the needle jet, pulses counted
	JetFactor    float64          `json:"jet_factor"`    // on the flow marks of the table, for this air and fuel
}

// NeedleStart is where to put the clip.
type NeedleStart struct {
	Practice string   `json:"practice"` // "middle groove"
	Groove   Groove   `json:"groove"`   // that groove of the fitted needle, if its grooves were counted
	Fitted   Groove   `json:"fitted"`
	Standing Standing `json:"standing"` // Below is a needle lower, weaker, than the middle
	// Physics is the groove at which the model gives a cruising mixture at half
	// lift, where needle and needle jet were measured.
	Physics   Groove       `json:"physics"`
	NoPhysics fault.Reason `json:"no_physics,omitzero"`
}

// Part is a fitted part that lies outside.
type Part struct {
	Key      string   `json:"key"`
	Text     string   `json:"text"` // "main jet, flow mark 190 cc/min is below 200 to 290 cc/min"
	Standing Standing `json:"standing"`
	Chance   float64  `json:"chance"` // that it is outside, 0 to 1
}

// Start gives the starting bore, main jet, slide, needle and pilot as ranges of
// the trade by displacement, and as bands of physics beside them, corrected for
// air and fuel, and says which parts of a carburettor from another machine lie
// outside.
//
// The table's jets are marked by flow under a head that was never published, so
// the physics of a flow mark carries Options.Head; that of a bore does not. The
// physics of the bore asks for a mean speed over the suction stroke of 80 m/s,
// the lowest of the textbooks' examples, to 130 m/s, at which a half-sine peaks
// at six tenths of the speed of sound. That of the main jet is that of
// Model at full lift and peak speed. Nothing is fitted to the table.
//
// Errors: fault.Missing without a displacement, fault.OutOfRange and others for
// readings that cannot be; all are returned together.
func Start(in Input, opt Options) (Starting, error) {
	var l fault.List
	engine, assumed := in.Engine.filled(&l)
	out := in.Surroundings.outside(&l)
	assumed = append(assumed, out.assumed...)
	lambda := in.Lambda
	if !lambda.Taken() {
		lambda = measure.Of(units.Value(0.87), units.Value(0.03))
		assumed = append(assumed, refdata.Assumption{What: "lambda wanted at full throttle", Value: "0.87 ± 0.03", Status: refdata.CommonPractice})
	}
	l.Under("lambda", lambda.Err())
	positive(&l, "lambda", lambda.Value(), 0.6, 1.2)
	in.Fitted.faults(&l)
	if opt.Head.Taken() {
		l.Under("options.head", opt.Head.Err())
		positive(&l, "options.head", opt.Head.Value(), units.Metres(0.05), units.Metres(10))
	}
	mean, sd, priors := opt.Physics.prior(&l)
	if l.Len() > 0 {
		return Starting{}, l.Err()
	}
	swept := engine.Displacement.Value().Times(float64(engine.cylinders()))
	begin, err := refdata.BeginAt(swept, engine.Tune)
	if err != nil {
		return Starting{}, fault.Under("engine", err)
	}
	s := starter{in: in, opt: opt, engine: engine, out: out, lambda: lambda, begin: begin, mean: mean, sd: sd}
	s.mean[kEta], s.sd[kEta] = math.Log(engine.VolumetricEfficiency.Value().Value()), engine.VolumetricEfficiency.U().Ratio(engine.VolumetricEfficiency.Value())
	s.run()
	st := &s.result
	st.Basis.Sources = append(append(st.Basis.Sources, begin.Basis.Sources...), out.sources...)
	st.Basis.Sources = append(st.Basis.Sources, refdata.Source{Title: "textbook carburettor theory: H. N. Gupta, Fundamentals of Internal Combustion Engines, 2006", Clause: "chapter 9", Read: "public companions of its examples", Status: refdata.Published}, lichtarowicz())
	st.Basis.Assumed = append(append(assumed, priors...), st.Basis.Assumed...)
	st.Basis.Cautions = []refdata.Caution{refdata.StartingPointsOnly, refdata.WeakMixture, refdata.PetrolVapour, refdata.CarbonMonoxide, refdata.DeferToManual}
	return s.result, nil
}

func (f Fitted) faults(l *fault.List) {
	if f.Bore.Taken() {
		l.Under("fitted.bore", f.Bore.Err())
		positive(l, "fitted.bore", f.Bore.Value(), units.Millimetres(8), units.Millimetres(60))
	}
	if f.MainJet.Taken() {
		l.Under("fitted.main_jet", f.MainJet.Err())
	}
	if f.PilotJet.Taken() {
		l.Under("fitted.pilot_jet", f.PilotJet.Err())
	}
	if f.Cutaway.Taken() {
		l.Under("fitted.cutaway", f.Cutaway.Err())
		positive(l, "fitted.cutaway", f.Cutaway.Value(), units.Millimetres(0.5), units.Millimetres(20))
	}
	f.Groove.faults(l, "fitted.groove")
	if f.measured() {
		var n fault.List
		f.Needle.faults(&n)
		l.Under("fitted", n.Err())
		l.Under("fitted.needle_jet", f.NeedleJet.Err())
		positive(l, "fitted.needle_jet", f.NeedleJet.Value(), units.Millimetres(1), units.Millimetres(8))
		if n.Len() == 0 && !(f.Needle.Diameter.Value() < f.NeedleJet.Value()) {
			l.Add(fault.Fault{Code: fault.Conflict, Path: "fitted.needle.diameter", Value: f.Needle.Diameter.Value().String(), Rule: "thinner than the needle jet of " + f.NeedleJet.Value().String()})
		}
	}
}

// measured reports whether needle and needle jet were.
func (f Fitted) measured() bool { return f.NeedleJet.Taken() && f.Needle.Diameter.Taken() }
