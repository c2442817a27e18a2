package fastener

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Joint is a bolt or nut that is turned to tighten it.
type Joint struct {
	Thread   Thread   `json:"thread"`
	Strength Strength `json:"strength"` // zero: unknown
	// Friction of thread and head; the zero Friction means [Oiled].
	Friction Friction `json:"friction"`
	// BearingOutside and BearingHole are the diameters between which the head
	// or nut that is turned bears. Zero means 1.5 and 1.1 times the outside
	// diameter of the thread.
	BearingOutside units.Length `json:"bearing_outside"`
	BearingHole    units.Length `json:"bearing_hole"`
	// NoHead says that nothing rubs but the thread: a stud, a joint on a thrust
	// race.
	NoHead bool `json:"no_head"`
	// EffectiveDiameter stands in for the thread's own, for worked examples that
	// take another mean diameter. Zero means the thread's own.
	EffectiveDiameter units.Length `json:"effective_diameter"`
}

// TightenOptions change how far [Tighten] goes.
type TightenOptions struct {
	// OfProof is the share of the proof load aimed at. Zero means 75 %, the usual
	// for a joint that is taken apart again (Shigley, Mechanical Engineering
	// Design, 9th ed., eq. 8-31, from memory).
	OfProof units.Ratio `json:"of_proof"`
	// OfYield is the share of yield that tension and twist together may reach
	// while tightening. Zero means 90 %, as VDI 2230 has it.
	OfYield units.Ratio `json:"of_yield"`
}

// Tightening is how far a joint may be tightened and by what torque.
type Tightening struct {
	Joint      Joint          `json:"joint"`
	StressArea units.Area     `json:"stress_area"`
	Lead       units.Angle    `json:"lead"`
	ProofLoad  units.Force    `json:"proof_load"`
	Yield      units.Pressure `json:"yield"`
	// Limit is the tension at which tension and twist together reach the share
	// of yield: the lower end at the highest thread friction, never above the
	// proof load.
	Limit measure.Interval[units.Force] `json:"limit"`
	// LimitTorque is the torque that brings the joint to its limit, at the lowest
	// and the highest friction.
	LimitTorque measure.Interval[units.Torque] `json:"limit_torque"`
	// Aim is the tension wanted, a share of the proof load but within Limit.
	Aim units.Force `json:"aim"`
	// Torque to set: it reaches the aim at the lowest friction and no friction
	// overshoots it.
	Torque units.Torque `json:"torque"`
	// Tension is what that torque gives over the range of friction; the higher
	// end is the aim.
	Tension measure.Interval[units.Force] `json:"tension"`
	// NutFactor is K in T = K F D, at the lowest and highest friction.
	NutFactor measure.Interval[units.Ratio] `json:"nut_factor"`
	// DoUp is the way to turn; not known until the hand of the thread is.
	DoUp   Turn          `json:"do_up"`
	Reason fault.Reason  `json:"reason"` // why there are no figures
	Basis  refdata.Basis `json:"basis"`
}

// screw holds a joint in SI units.
type screw struct {
	d, pitch, d2, d0, sec, lead, area float64
	bearing                           float64 // mean diameter, zero for no head
	low, high                         [2]float64
}

func (j Joint) check(l *fault.List) {
	if j.Thread.IsZero() {
		l.Add(noThread("thread"))
	}
	j.Strength.check("strength", l)
	j.Friction.check(l)
	// half a metre of diameter is no motor cycle's
	for _, d := range [...]struct {
		path string
		v    units.Length
	}{{"bearing_outside", j.BearingOutside}, {"bearing_hole", j.BearingHole}, {"effective_diameter", j.EffectiveDiameter}} {
		if !(d.v >= 0 && d.v <= units.Metre/2) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: d.path, Value: d.v.String(), Unit: "mm", Rule: "0 to 500 mm"})
		}
	}
	if j.BearingOutside > 0 && j.BearingHole >= j.BearingOutside {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "bearing_hole", Value: j.BearingHole.String(), Unit: "mm", Rule: "smaller than bearing_outside"})
	}
	if e := j.EffectiveDiameter; e > 0 && !j.Thread.IsZero() && !(e <= j.Thread.major && e >= j.Thread.major.Times(0.5)) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "effective_diameter", Value: e.String(), Unit: "mm", Rule: "half to all of the outside diameter"})
	}
}

// screw takes the joint apart; it must have been checked.
func (j Joint) screw() screw {
	t, s := j.Thread, j.Thread.section()
	d2 := s.effective
	if j.EffectiveDiameter > 0 {
		d2 = j.EffectiveDiameter.Millimetres()
	}
	k := screw{
		d: t.major.SI(), pitch: t.pitch.SI(), d2: d2 / 1000, sec: t.form.sec(), area: s.area * 1e-6,
		d0: math.Sqrt(4*s.area/math.Pi) / 1000,
	}
	k.lead = math.Atan(k.pitch / (math.Pi * k.d2))
	if !j.NoHead {
		out, hole := j.BearingOutside.SI(), j.BearingHole.SI()
		if out == 0 {
			out = max(1.5*k.d, 1.2*hole)
		}
		if hole == 0 {
			hole = min(1.1*k.d, 0.95*out)
		}
		k.bearing = (out + hole) / 2
	}
	k.low = [2]float64{j.Friction.Thread.Low.SI(), j.Friction.Head.Low.SI()}
	k.high = [2]float64{j.Friction.Thread.High.SI(), j.Friction.Head.High.SI()}
	return k
}

// perForce returns torque over tension, in metres:
// (d2/2)(tan L + mu sec a)/(1 - mu tan L sec a) + mu_head D_b/2.
func (k screw) perForce(mu [2]float64) float64 {
	t := math.Tan(k.lead)
	return k.d2/2*(t+mu[0]*k.sec)/(1-mu[0]*t*k.sec) + mu[1]*k.bearing/2
}

// limit returns the tension at which tension and twist reach a stress:
// stress A / sqrt(1 + 3 [(3/2)(d2/d0)(P/(pi d2) + mu sec a)]^2), after VDI 2230.
func (k screw) limit(stress, mu float64) float64 {
	twist := 1.5 * k.d2 / k.d0 * (k.pitch/(math.Pi*k.d2) + k.sec*mu)
	return stress * k.area / math.Sqrt(1+3*twist*twist)
}

func (j Joint) orOiled() Joint {
	if j.Friction == (Friction{}) {
		j.Friction = Oiled()
	}
	return j
}

// TorqueFor returns the torque that gives a tension, at the lowest and the
// highest friction:
//
//	T = F [ (d2/2)(tan L + mu_t sec a)/(1 - mu_t tan L sec a) + mu_h D_b/2 ], tan L = P/(pi d2)
//
// a being the flank angle, 30° in 60° threads, and D_b the mean of bearing
// outside and hole. Source: Shigley, Mechanical Engineering Design, 9th ed., eq.
// 8-26, with the thread's own effective diameter. Faults: no thread, a tension
// that is not from 0 to 100 MN, friction or bearing out of range.
func TorqueFor(j Joint, tension units.Force) (measure.Interval[units.Torque], error) {
	j = j.orOiled()
	var l fault.List
	j.check(&l)
	if !(tension >= 0 && tension.SI() <= 1e8) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "tension", Value: tension.String(), Unit: "N", Rule: "0 to 100 MN"})
	}
	if err := l.Err(); err != nil {
		return measure.Interval[units.Torque]{}, err
	}
	k, f := j.screw(), tension.SI()
	return measure.Between(units.NewtonMetres(f*k.perForce(k.low)), units.NewtonMetres(f*k.perForce(k.high))), nil
}

// TensionFor returns the tension that a torque gives, at the highest and the
// lowest friction: [TorqueFor] turned round. It says nothing of whether the bolt
// bears it; [Tighten] does. Faults as there, and a torque not from 0 to 10 MN m.
func TensionFor(j Joint, torque units.Torque) (measure.Interval[units.Force], error) {
	j = j.orOiled()
	var l fault.List
	j.check(&l)
	if !(torque >= 0 && torque.SI() <= 1e7) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "torque", Value: torque.String(), Unit: "N m", Rule: "0 to 10 MN m"})
	}
	if err := l.Err(); err != nil {
		return measure.Interval[units.Force]{}, err
	}
	k, t := j.screw(), torque.SI()
	return measure.Between(units.Newtons(t/k.perForce(k.high)), units.Newtons(t/k.perForce(k.low))), nil
}

// Tighten returns how far a joint may be tightened, and the torque to set so
// that no friction within the range overshoots the aim. Without a known strength
// there are no figures but a Reason: the strength of an old or unmarked bolt is
// not to be guessed.
//
// The limit is that of VDI 2230: tension and twist together at a share of yield,
//
//	F = share × R_p0.2 A_s / sqrt(1 + 3 [ (3/2)(d2/d0)(P/(pi d2) + mu_t sec a) ]^2)
//
// with d0 the diameter of the stress area. Faults: as for [TorqueFor], a strength
// out of order, shares not above 0 and up to 1.
func Tighten(j Joint, opt TightenOptions) (Tightening, error) {
	assumedFriction := j.Friction == (Friction{})
	j = j.orOiled()
	var l fault.List
	j.check(&l)
	for _, s := range [...]struct {
		path string
		v    *units.Ratio
		def  units.Ratio
	}{{"options.of_proof", &opt.OfProof, 0.75}, {"options.of_yield", &opt.OfYield, 0.90}} {
		if *s.v == 0 {
			*s.v = s.def
		}
		if !(*s.v > 0 && *s.v <= 1) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: s.path, Value: s.v.String(), Rule: "above 0, up to 100 %"})
		}
	}
	if err := l.Err(); err != nil {
		return Tightening{}, err
	}
	k := j.screw()
	out := Tightening{Joint: j, StressArea: units.SquareMetres(k.area), Lead: units.Radians(k.lead)}
	out.Basis = tightenBasis(j, assumedFriction)
	out.Basis.Sources = owned(out.Basis.Sources, j.Thread)
	out.DoUp, _ = j.Thread.Turn(DoUp) // the basis says if it is not known
	low, high := k.perForce(k.low), k.perForce(k.high)
	out.NutFactor = measure.Between(units.Value(low/k.d), units.Value(high/k.d))
	if !j.Strength.Known() {
		out.Reason = fault.Reason{Code: "grade-unknown", Text: "the strength of this bolt is not known, so no torque is given: take it from the machine's manual, or fit a marked bolt"}
		return out, nil
	}
	out.ProofLoad = units.Newtons(j.Strength.Proof.SI() * k.area)
	out.Yield = j.Strength.Yield
	stress := opt.OfYield.SI() * j.Strength.Yield.SI()
	most := out.ProofLoad.SI()
	a, b := min(k.limit(stress, k.high[0]), most), min(k.limit(stress, k.low[0]), most)
	out.Limit = measure.Between(units.Newtons(a), units.Newtons(b))
	out.LimitTorque = measure.Between(units.NewtonMetres(b*low), units.NewtonMetres(a*high))
	// at the torque set here the tension is highest at the lowest friction, and
	// the limit is then b; at the highest friction it is lower, and so must be
	// held against a
	aim := min(opt.OfProof.SI()*most, b, a*high/low)
	out.Aim = units.Newtons(aim)
	out.Torque = units.NewtonMetres(aim * low)
	out.Tension = measure.Between(units.Newtons(aim*low/high), units.Newtons(aim))
	return out, nil
}

func tightenBasis(j Joint, assumedFriction bool) refdata.Basis {
	b := refdata.Basis{
		Sources: append([]refdata.Source{
			{Title: "Shigley, Mechanical Engineering Design, 9th ed.", Clause: "eq. 8-26", Status: refdata.Published},
			{Title: "VDI 2230, tension under combined stress while tightening", Status: refdata.Published},
		}, j.Strength.Sources...),
		Cautions: []refdata.Caution{refdata.OldBolts, refdata.DeferToManual},
		NotChecked: []refdata.Unchecked{
			{What: "the hole that holds the bolt", Why: "stripping is a question of its own", Settle: "Strip, with the length of full thread"},
			{What: "prevailing torque", Why: "stiff nuts and damaged threads take part of the torque", Settle: "turn it home with the wrench and add what it reads"},
		},
	}
	if assumedFriction {
		b.Assumed = append(b.Assumed, refdata.Assumption{What: "friction", Value: "oiled, 0.08 to 0.16", Status: refdata.FromMemory})
	} else if j.Friction.Status != 0 {
		b.Assumed = append(b.Assumed, refdata.Assumption{What: "friction", Value: j.Friction.Name, Status: j.Friction.Status})
	}
	if !j.NoHead && (j.BearingOutside == 0 || j.BearingHole == 0) {
		b.Assumed = append(b.Assumed, refdata.Assumption{What: "bearing of the head", Value: "from 1.1 to 1.5 times the outside diameter", Status: refdata.CommonPractice})
	}
	switch j.Thread.form {
	case WhitworthForm, CycleForm, AssociationForm:
		b.Assumed = append(b.Assumed, refdata.Assumption{What: "stress area", Value: j.Thread.form.stressRule(), Status: refdata.Derived})
	}
	if j.Thread.hand == HandUnknown {
		b.NotChecked = append(b.NotChecked, refdata.Unchecked{What: "hand of the thread", Why: "not looked at", Settle: "hold it upright: right-hand threads rise to the right"})
		b.Cautions = append(b.Cautions, refdata.RetainingNuts)
	}
	return b
}
