package transmission

import (
	"math"
	"strings"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Diagnosis is what is probably wrong.
type Diagnosis struct {
	Causes       measure.Ranking `json:"causes"`
	Suspects     []string        `json:"suspects,omitempty"`      // keys of the causes within 20:1 of the leader, of more until they hold 97 % of belief, and of those the readings do not speak against beside it, however rare; the leader first
	Findings     []Finding       `json:"findings"`                // what to do about each cause, likeliest first, until three per cent are left
	NextReadings []measure.Gain  `json:"next_readings,omitempty"` // not yet taken, the most telling first
	Reason       fault.Reason    `json:"reason,omitzero"`         // why the causes were not weighed, if they were not
	Basis        refdata.Basis   `json:"basis"`
}

// Diagnose ranks the causes that explain the signs and readings. Each cause
// moves one figure or two of the state away from new, by a fixed amount or by one
// evenly likely between bounds, while everything else varies about new as
// [Clutch].New says; the readings of single parts, the lift and hand force of the
// whole clutch, and the rider's signs are then weighed together, and what was not
// read is averaged over. The nuts are taken to have been set within or near the
// window of the clutch as new. Bounds and priors are common practice, no source;
// Options.Priors overrides priors.
//
// Two causes at once are weighed too, where they move different figures: key
// "hub-nut+cable-soft", the weight the product of the two, such that all pairs are a
// tenth of all clutches (Options.TwoAtOnce). Pairs too unlikely to name are one entry,
// [TwoAtOnce]. Two causes that move the same figure show as the one or the other.
//
// Over ten thousand invented clutches, a tenth of them with two things wrong and a
// twentieth with something not listed, and everything read, what was planted is first
// in 79 % and within 20:1 of the leader in 96 %; counting one of the two, alone or with
// another, in 85 and 98 %. Of what owners read it is first in 54 % (60) and among the
// suspects in 95 % (98). Simulated with the same bounds and priors; a real bench was
// not there to compare with. If the clutch has no window even as new there is
// nothing to compare with: Reason says so. Errors: every figure that is missing or
// outside its range, as fault.Fault.
func Diagnose(in Input, opt Options) (Diagnosis, error) {
	s, n, err := in.resolve(opt)
	kick, err := in.looked(err)
	if err != nil {
		return Diagnosis{}, err
	}
	d := Diagnosis{Basis: in.basis(&s)}
	m, reason := newModel(&s)
	if reason.Given() {
		d.Reason = reason
		return d, nil
	}
	data := in.tellTo(&m, n, kick)
	d.Causes, err = m.rank(data, opt)
	if err != nil {
		return Diagnosis{}, err
	}
	d.Suspects = suspects(d.Causes)
	d.Findings = m.findings(d.Causes)
	d.NextReadings = m.next(data, d.Causes)
	return d, nil
}

// looked adds what is wrong with the signs to the faults of the rest, and returns
// what a kick test put the clutch to.
func (in *Input) looked(rest error) (KickProof, error) {
	var l fault.List
	l.Under("", rest)
	g := &in.Signs
	lift, lifted, err := length(&g.Lift)
	if l.Under("signs.lift", err) && lifted && !(lift.x >= 0 && lift.x <= 15) {
		l.Add(outside("signs.lift", lift.x, "mm", 0, 15))
	}
	if hand := g.HandForce.Value().Newtons(); l.Under("signs.hand_force", g.HandForce.Err()) && g.HandForce.Taken() && !(hand >= 1 && hand <= 1000) {
		l.Add(outside("signs.hand_force", hand, "N", 1, 1000))
	}
	for i, sign := range g.told() {
		if sign > Yes {
			l.Add(fault.Fault{Code: fault.UnknownName, Path: "signs." + [...]string{"slips", "drags", "heavy", "light_then"}[i], Rule: "must be yes, no or not tried"})
		}
	}
	var kick KickProof
	if g.Kick.Rider.Taken() && l.Len() == 0 { // else its faults of the clutch would come twice
		kick, err = in.Clutch.Kick(g.Kick)
		for _, f := range fault.Faults(err) {
			f.Path = "signs.kick" + strings.TrimPrefix(f.Path, "test")
			l.Add(f)
		}
	}
	return kick, l.Err()
}

func (g *Signs) told() [4]Sign { return [4]Sign{g.Slips, g.Drags, g.Heavy, g.LightThen} }

// tellTo tells the model every reading and sign that was taken.
func (in *Input) tellTo(m *model, n place, kick KickProof) measure.Data {
	data := make(measure.Data, dataLength)
	take := func(i int, f figure, finest float64) {
		data[i] = measure.Datum{Value: f.x, Taken: true}
		m.own[i] = math.Max(f.u, finest)
	}
	for p := range parts {
		if m.s.took[p] {
			take(int(p), figure{m.s.v[p], m.s.u[p]}, rules[p].finest)
		}
	}
	if n.taken {
		take(int(nuts), n.figure, finestTurn)
	}
	if lift, lifted, _ := length(&in.Signs.Lift); lifted {
		take(atLift, lift, finestLift)
	}
	if r := &in.Signs.HandForce; r.Taken() {
		take(atHand, figure{math.Log(r.Value().Newtons()), r.U().Ratio(r.Value())}, finestHand)
	}
	for i, sign := range in.Signs.told() {
		if sign != NotTried {
			data[atSlips+i] = measure.Datum{Value: float64(sign - No), Taken: true}
		}
	}
	if in.Signs.Kick.Rider.Taken() {
		m.kick = figure{kick.Tested.Value().NewtonMillimetres(), kick.Tested.U().NewtonMillimetres()}
		// a clutch that just slips is at that torque: slipping and holding are even,
		// which tells nothing by a yes or no, so it is given as its own figure
		switch in.Signs.Kick.Result {
		case Held, Turned:
			data[atKick] = measure.Datum{Value: 0, Taken: true}
		case Slid:
			data[atKick] = measure.Datum{Value: 1, Taken: true}
		case Crept:
			data[atKick] = measure.Datum{Value: crept, Taken: true}
		}
	}
	m.weigh(data)
	return data
}

// No reading is believed to better than these, even one declared exact.
const (
	finestTurn = 0.02 // turns
	finestLift = 0.02 // mm
	finestHand = 0.01 // of the force
)
