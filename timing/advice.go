package timing

import (
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// remedies says what to do about the leading cause: moves, best first, where
// cams stand wrong; else what puts right what made them seem so.
func (b *bench) remedies(r *Result) ([]Remedy, error) {
	lead := r.Causes.Leader()
	i, ok := b.index[lead.Key]
	if !ok {
		r.Gaps = b.gapsAt(r, r.Inlet.Crank.Value(), r.Exhaust.Crank.Value())
		in, ex := r.shifts()
		return []Remedy{{
			Key: "read-again", Text: "nothing listed explains these readings: find top dead centre by a stop, read all four events twice, and move nothing before they agree",
			InletLeft: in, ExhaustLeft: ex, Work: units.MinutesOfTime(60),
		}}, nil
	}
	v := &b.verdicts[i]
	var all []Remedy
	do := func(key, text string, minutes float64) {
		in, ex := r.shifts()
		all = append(all, Remedy{Key: key, Text: text, InletLeft: in, ExhaustLeft: ex, Work: units.MinutesOfTime(minutes)})
	}
	inlet, exhaust := r.shifts()
	moves := false
	defer func() { r.Gaps = b.gapsAt(r, inlet, exhaust) }()
	for _, a := range v.faults {
		switch a.family {
		case tooth, keyway, slip:
			moves = true
		case wholeTurn:
			do("mesh-half-round", "lift the "+a.cams[0].String()+" camwheel out and mesh it half its teeth round", b.opt.Work.Tooth.SI()/60)
		case mark:
			do("find-tdc", "find top dead centre by a positive stop, mark it anew, and time the ignition by it", 30)
			for i, e := range r.Explained { // what is left once the mark is allowed for
				if e.Key == v.key && !b.read.TDCLate.Taken() {
					inlet -= r.Explained[i].TDCLate.Value()
					exhaust -= r.Explained[i].TDCLate.Value()
				}
			}
		case gap:
			do("set-"+a.cams[0].String()+"-clearance", "set the "+a.cams[0].String()+" clearance and read again", 15)
		case checkLift:
			do("read-again", "zero the gauge on the back of the cam and read the events again at the specification's check lift", 40)
		case disc:
			do("turn-disc", "turn the disc round, or count the other way, and read again", 30)
		case otherCam:
			do("identify-"+a.cams[0].String()+"-cam", "measure the lift curve of the "+a.cams[0].String()+" cam to say which it is; fit the right one, or time this one by its own figures", 60)
		case reversed:
			do("turn-"+a.cams[0].String()+"-cam-over", "take the "+a.cams[0].String()+" cam off its wheel and put it on the right way round", b.opt.Work.RePress.SI()/60)
		case follower:
			do("match-"+a.cams[0].String()+"-follower", "compare the "+a.cams[0].String()+" follower with the other and fit one of the right shape", 90)
		case held:
			text := "give the " + a.cams[0].String() + " valve its clearance, so that it seats"
			if a.cams[0] == Exhaust {
				text = "free the valve lifter, and " + text
			}
			do("free-"+a.cams[0].String()+"-valve", text, 20)
		case worn:
			do("renew-"+a.cams[0].String()+"-lobe", "measure the "+a.cams[0].String()+" lobe and tappet face; renew or have built up what is worn", 240)
		case exchanged:
			do("exchange-cams", "change inlet and exhaust cams over, each into its own place", b.opt.Work.RePress.SI()/60)
		}
	}
	if !moves {
		if len(v.faults) == 0 {
			do(leaveKey, leaveText, 0)
		}
		return all, nil
	}
	list, err := movesOf(b.engine, b.opt)
	if err != nil {
		return nil, err
	}
	p, err := NewPlan(list, *b.opt)
	if err != nil {
		return nil, err
	}
	menu := p.Menu(inlet, exhaust)
	// a move that leaves no room is no remedy: refused ones go to the end
	var refused []Remedy
	for i := range menu[:min(len(menu), mostRemedies)] {
		m := menu[i]
		if m.Gaps = b.gapsAt(r, m.InletLeft, m.ExhaustLeft); m.Gaps.Worst() == Touches {
			m.Refused = fault.Reason{Code: ValvesTouch, Text: "valve and piston, or the two valves, would touch or come within the uncertainty of touching"}
			refused = append(refused, m)
			continue
		}
		all = append(all, m)
	}
	return append(all, refused...), nil
}

// ValvesTouch is the code of a move refused because valves would touch.
const ValvesTouch = "valves-touch"

// gapsAt works out the room with the cams standing as given, no surer than they
// were read.
func (b *bench) gapsAt(r *Result, inlet, exhaust units.CrankAngle) Gaps {
	if b.engine.Head == nil {
		return Gaps{}
	}
	if b.room == nil {
		b.room = newRoomModel(b.engine.Head, b.engine)
	}
	at := func(p Phase, v units.CrankAngle) measure.Reading[units.CrankAngle] {
		if !p.Crank.Taken() {
			return p.Crank
		}
		return measure.Of(v, p.Crank.U())
	}
	return b.room.gaps(at(r.Inlet, inlet), at(r.Exhaust, exhaust))
}

// mostRemedies is how many sets of moves a verdict offers.
const mostRemedies = 6
