package drive

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// PullInput is a chain at work.
type PullInput struct {
	Pitch        units.Length          `json:"pitch"`
	Teeth        int                   `json:"teeth"`                   // of the driving sprocket
	Speed        units.RotationalSpeed `json:"speed"`                   // of that sprocket
	Power        units.Power           `json:"power"`                   // carried
	Strength     units.Force           `json:"strength,omitzero"`       // least breaking load; zero: from Number, or not known
	MassPerMetre units.Mass            `json:"mass_per_metre,omitzero"` // zero: from Number, or not known
	Number       string                `json:"number,omitempty"`        // chain number in the table: "08B", "428"
}

// Pull is what a chain carries.
type Pull struct {
	Velocity    units.Speed   `json:"velocity"`    // mean, z p n
	Ripple      float64       `json:"ripple"`      // greatest over least velocity through a tooth, 1/cos(180°/z)
	Pull        units.Force   `json:"pull"`        // power over velocity
	Centrifugal units.Force   `json:"centrifugal"` // q v²; zero if the mass is not known
	Total       units.Force   `json:"total"`
	Strength    units.Force   `json:"strength"`     // zero if not known
	Safety      float64       `json:"safety"`       // strength over pull; zero if not known
	SafetyTotal float64       `json:"safety_total"` // strength over total; zero if not known
	Basis       refdata.Basis `json:"basis"`
}

// ChainPull returns the speed and pull of a chain: v = z p n, F = P/v,
// centrifugal q v² (Jindal, Machine Design, 2010, ex. 30-3), and the margin to
// its least breaking load, from the table of ISO 606 and BS 228 chains if a
// number is given. A single's torque comes in pulses: the peak pull is several
// times this mean. Errors: figures not above zero, teeth outside 4 to 1000, an
// unknown number, a number whose pitch disagrees with Pitch.
func ChainPull(in PullInput) (Pull, error) {
	var l fault.List
	out := Pull{Strength: in.Strength}
	mass := in.MassPerMetre
	pitch := in.Pitch
	b := refdata.Basis{
		Sources:    []refdata.Source{{Title: "Jindal, Machine Design, 1st ed. 2010", Clause: "ex. 30-3: speed, pull and safety of a chain", Status: refdata.Published}},
		NotChecked: []refdata.Unchecked{{What: "peak pull", Why: "the pull is the mean over a cycle; a single's peaks are several times that", Settle: "compare with the safety figure, 7 and more being usual for power chains (common practice)"}},
		Cautions:   []refdata.Caution{refdata.BrakesBeforeRoad, refdata.DeferToManual},
	}
	if in.Number != "" {
		c, found := refdata.Chains().ByName(in.Number)
		if !found {
			l.Add(fault.Fault{Code: fault.UnknownName, Path: "number", Value: in.Number, Rule: "a number in the table of chains, such as 08B or 428"})
		} else {
			if pitch == 0 {
				pitch = c.Pitch
			} else if (pitch - c.Pitch).Abs() > c.Pitch.Times(0.005) {
				l.Add(fault.Fault{Code: fault.Conflict, Path: "pitch", Value: pitch.String(), Unit: "mm", Rule: "chain " + in.Number + " has " + c.Pitch.String()})
			}
			b.Sources = append(b.Sources, c.SizeOrigin.Sources()...)
			if f, known := c.Strength.Get(); known && in.Strength == 0 {
				out.Strength = f
				b.Sources = append(b.Sources, c.StrengthOrigin.Sources()...)
			}
			if m, known := c.MassPerMetre.Get(); known && in.MassPerMetre == 0 {
				mass = m
			}
		}
	}
	positive(&l, "pitch", pitch)
	teeth(&l, "teeth", in.Teeth)
	positive(&l, "speed", in.Speed)
	notNegative(&l, "power", in.Power)
	notNegative(&l, "strength", in.Strength)
	notNegative(&l, "mass_per_metre", in.MassPerMetre)
	if err := l.Err(); err != nil {
		return Pull{}, err
	}
	v := float64(in.Teeth) * pitch.Metres() * in.Speed.RevolutionsPerSecond()
	out.Velocity = units.MetresPerSecond(v)
	out.Ripple = 1 / math.Cos(math.Pi/float64(in.Teeth))
	out.Pull = units.Newtons(in.Power.Watts() / v)
	out.Centrifugal = units.Newtons(mass.Kilograms() * v * v)
	out.Total = out.Pull + out.Centrifugal
	if out.Pull.Newtons() >= 1e-6 { // less is no pull, and its safety no number
		out.Safety, out.SafetyTotal = out.Strength.Ratio(out.Pull), out.Strength.Ratio(out.Total)
	}
	if out.Strength == 0 {
		b.NotChecked = append(b.NotChecked, refdata.Unchecked{What: "strength", Why: "no chain number or breaking load given", Settle: "read the number on a side plate"})
	}
	if mass == 0 {
		b.NotChecked = append(b.NotChecked, refdata.Unchecked{What: "centrifugal pull", Why: "no mass per metre", Settle: "weigh a length of chain"})
	}
	out.Basis = b
	return out, nil
}

// WearOptions sets what a worn chain is.
type WearOptions struct {
	Watch  units.Ratio // elongation from which to watch it; zero: 1.5 %
	Finish units.Ratio // elongation at which it is finished; zero: 2 % (common practice: 2 to 3, less on short or fixed centres)
}

// Wear is a chain's wear.
type Wear struct {
	Elongation measure.Reading[units.Ratio]  `json:"elongation"` // L/(N p) - 1
	Pitch      measure.Reading[units.Length] `json:"pitch"`      // as worn
	Finished   float64                       `json:"finished"`   // chance that it is past the limit, from the reading's uncertainty
	Verdict    string                        `json:"verdict"`    // "good", "watch", "finished"
	Basis      refdata.Basis                 `json:"basis"`
}

// ChainWear returns how far a chain has worn long: e = L/(N p) - 1, L being read
// over N pitches, pin centre to pin centre, pulled taut. Errors: a reading not
// taken or not above zero, N outside 1 to 100 000, a pitch not above zero,
// limits out of order, a length that is not that many pitches at all (off by
// more than 10 %).
func ChainWear(length measure.Reading[units.Length], pitches int, pitch units.Length, opt WearOptions) (Wear, error) {
	var l fault.List
	if opt.Watch == 0 {
		opt.Watch = units.Percents(1.5)
	}
	if opt.Finish == 0 {
		opt.Finish = units.Percents(2)
	}
	within(&l, "pitches", float64(pitches), 1, 1e5)
	okP := positive(&l, "pitch", pitch)
	okL := checkReading(&l, "length", length)
	if within(&l, "finish", opt.Finish.SI(), 0.001, 0.1) && within(&l, "watch", opt.Watch.SI(), 0, 0.1) && opt.Watch > opt.Finish {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "watch", Value: opt.Watch.String(), Rule: "must not be above the limit"})
	}
	if okP && okL && l.Len() == 0 {
		if r := length.Value().Ratio(pitch) / float64(pitches); r < 0.9 || r > 1.1 {
			l.Add(fault.Fault{Code: fault.Conflict, Path: "length", Value: length.Value().String(), Unit: "mm", Rule: "is not that many pitches: count again, pin to pin"})
		}
	}
	if err := l.Err(); err != nil {
		return Wear{}, err
	}
	n, p := float64(pitches), pitch.Metres()
	e, err := measure.Propagate[units.Ratio](func(x []float64) float64 { return x[0]/(n*p) - 1 }, length.SI())
	if err != nil {
		return Wear{}, err
	}
	w := Wear{Elongation: e, Verdict: "good", Basis: refdata.Basis{
		Sources: []refdata.Source{refdata.Practice()},
		Assumed: []refdata.Assumption{{What: "elongation of a finished chain", Value: opt.Finish.In(units.Percent, 1), Status: refdata.CommonPractice}},
		NotChecked: []refdata.Unchecked{
			{What: "tight places and stiff links", Why: "one length was read", Settle: "read it again over other stretches; the longest counts"},
			{What: "hooked sprocket teeth", Why: "not asked", Settle: "look at both sprockets: a new chain on worn teeth wears as they do"},
		},
		Cautions: []refdata.Caution{refdata.BrakesBeforeRoad},
	}}
	w.Pitch, err = measure.Propagate[units.Length](func(x []float64) float64 { return x[0] / n }, length.SI())
	if err != nil {
		return Wear{}, err
	}
	over := e.Value() - opt.Finish
	switch {
	case e.U() > 0:
		w.Finished = math.Erfc(-over.Ratio(e.U())/math.Sqrt2) / 2
	case over >= 0:
		w.Finished = 1
	}
	switch {
	case over >= 0:
		w.Verdict = "finished"
	case e.Value() >= opt.Watch:
		w.Verdict = "watch"
	}
	return w, nil
}

// checkReading notes what is wrong with a reading that must be there, above zero
// and more than its uncertainty.
func checkReading[Q units.Quantity](l *fault.List, path string, r measure.Reading[Q]) bool {
	switch {
	case !r.Taken():
		l.Add(fault.Fault{Code: fault.Missing, Path: path, Unit: units.Example(r.Value()), Rule: "must be taken"})
		return false
	case r.Err() != nil:
		return l.Under(path, r.Err())
	case !positive(l, path, r.Value()):
		return false
	case r.U() >= r.Value():
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: path, Value: r.String(), Unit: units.Example(r.Value()), Rule: "its uncertainty must be below the figure itself"})
		return false
	}
	return true
}
