package timing

import (
	"strings"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
)

// basis lists sources, defaults that stood in, and what was not looked at.
func (s *sheet) basis() refdata.Basis {
	b := refdata.Basis{
		Sources: []refdata.Source{
			{Title: "Evaluation of measurement data - Guide to the expression of uncertainty in measurement, JCGM 100:2008", Clause: "5.1.2 and 5.2.2", Status: refdata.FromMemory},
			{Title: "Closed-form evidence of a linear cause with normal errors", Clause: "Bayes' rule, worked from the definition", Status: refdata.Derived},
			{Title: "Event, centre, duration and overlap of a cam, from the meaning of the words", Status: refdata.Derived},
			refdata.Practice(),
		},
		Cautions: []refdata.Caution{refdata.ValveMeetsPiston, refdata.RetainingNuts, refdata.DeferToManual},
	}
	if s.read.Spark != NotLooked {
		b.Cautions = append(b.Cautions, refdata.KickBack, refdata.HighTension)
	}
	assume := func(what, value string) {
		b.Assumed = append(b.Assumed, refdata.Assumption{What: what, Value: value, Status: refdata.CommonPractice})
	}
	r, e, w := s.read, s.engine, &s.opt.Widths
	for k := range EventName(4) {
		if p := r.event(k); p.Taken() && p.Instrument() != "" {
			assume("uncertainty of "+k.String(), p.U().String()+", "+p.Instrument())
		}
	}
	if r.TDC != TDCByStop || s.tdcSD > 0 {
		assume("uncertainty of top dead centre, found "+r.TDC.String(), r.TDC.width(w).String()+", common to all events")
	}
	assume("scatter of each duration", w.Duration.String())
	for c := range Cam(2) {
		l := &s.lobes[c]
		if l.liftAssumed {
			assume("greatest "+c.String()+" lift", units.Millimetres(usualLift).String()+", for the slope of its flanks only")
		}
		if l.riseAssumed {
			assume(c.String()+" lift over one degree at the check lift", units.Millimetres(l.openRise).In(units.Millimetre, 3)+", a lobe of usual shape")
		}
		if e.fixing(c) == FixingUnknown {
			assume("fixing of the "+c.String()+" cam", "may slip on its wheel")
		}
	}
	if s.moved {
		assume("events moved to the check they were read at", "by the usual shape, to 30 % of the move")
	}
	if !e.Rocker.Taken() && (e.Check.At == AtFollower || r.Check != nil && r.Check.At == AtFollower) {
		assume("valve lift over follower lift", "1")
	}
	assume("priors of the causes", "as documented, or as given")

	skip := func(what, why, settle string) {
		b.NotChecked = append(b.NotChecked, refdata.Unchecked{What: what, Why: why, Settle: settle})
	}
	for c := range Cam(2) {
		o, k := r.event(EventName(2*c)), r.event(EventName(2*c+1))
		switch {
		case !o.Taken() && !k.Taken():
			skip(c.String()+" cam", "neither of its events was read", "read where the "+c.String()+" valve opens and closes")
		case !o.Taken() || !k.Taken():
			skip(c.String()+" duration", "one of its two events was not read", "read the other")
		}
	}
	if r.TDC != TDCByStop && !r.TDCLate.Taken() {
		skip("top dead centre", "found "+r.TDC.String(), "two readings at a positive stop, halved")
	}
	if r.MarksAlign == NotLooked {
		skip("tooth marks", "not looked at", "take the timing cover off and bring the marks into line, counting turns")
	}
	if r.Sequence == NotLooked && ownShafts(e.Drive) {
		skip("which turn each cam is on", "a disc on the crank cannot tell", "see whether the inlet valve opens as the exhaust valve closes")
	}
	if r.Spark == NotLooked {
		skip("stroke of the spark", "not looked at", "watch the points with both valves shut near TDC")
	}
	if !r.InletMaxLift.Taken() || !r.ExhaustMaxLift.Taken() {
		skip("wear and pattern of the lobes", "greatest lift not read on both cams", "dial gauge on each valve over a full turn of the cam")
	}
	if r.Leak.Taken() {
		b.Cautions = append(b.Cautions, refdata.AirTurnsCrank)
		assume("part lost by a sound cylinder, past worn rings, a leaking valve and an open one", "about 8 %, 30 %, 45 % and 97 %, by a tester with an orifice of about 1 mm")
		if r.Leak.At == (units.CrankPosition{}) {
			assume("crank at the leak-down test", "TDC at the end of compression")
		}
		if !r.Leak.listened() {
			skip("where the cylinder leaks", "nobody listened", "ear at carburettor, exhaust pipe and breather with the air on; soapy water round the head joint")
		}
	}
	switch {
	case r.Leak.Taken():
	case !r.CompressionDry.Taken():
		skip("whether rings and valves hold", "no compression reading", "plug out, throttle open, note the first and last kick; then again with oil in the bore")
	case !r.CompressionWet.Taken():
		skip("rings against valves", "no wet reading", "a spoonful of oil in the bore and the same number of kicks, or a leak-down test")
	}
	if e.Head == nil {
		skip("piston-to-valve and valve-to-valve clearance", "no measurements of the head were given", "modelling clay on the crown, two slow full turns by hand")
	} else {
		for c := range Cam(2) {
			if v := e.Head.valve(c); !v.ToPiston.Taken() || v.Curve == nil && s.lobes[c].liftAssumed {
				skip(c.String()+" valve to piston", "gap at TDC or lift not given", "push the shut valve down on the crown at TDC against a dial gauge")
			} else if v.Curve == nil {
				assume("lift of the "+c.String()+" valve", "a lobe of usual shape through its events and greatest lift")
			}
		}
		if !e.Head.Between.Taken() {
			skip("valve-to-valve clearance", "the gap between the shut valves was not given", "feelers or a wire gauge between the rims of the heads")
		}
	}
	return b
}

// turning says whether the engine may be turned or started. Advanced inlet and
// retarded exhaust cams bring valves towards the piston round overlap; how near
// is not known here, so anything but small shifts is for slow turning by hand.
func turning(r *Result) Turning {
	worst, whole := 0.0, false
	for _, e := range r.Explained {
		o, _ := r.Causes.Of(e.Key)
		if o.Share < 0.03 {
			continue
		}
		worst = max(worst, e.Inlet.Value().Degrees(), -e.Exhaust.Value().Degrees(), -e.Inlet.Value().Degrees()/2, e.Exhaust.Value().Degrees()/2)
		whole = whole || strings.Contains(e.Key, ":turn") && o.Share > 0.2
	}
	lead := r.Causes.Leader()
	room := r.Gaps.Worst()
	switch {
	case room == Touches:
		return Turning{Why: "by the measurements of the head a valve would touch as the cams stand: slack the adjusters right off or take the rockers off before turning"}
	case whole:
		return Turning{Why: "a cam may be a whole turn out, so that its valve is open where the piston comes up: slack the adjusters right off or take the rockers off before turning"}
	case worst > 30 && room == RoomUnknown:
		return Turning{Why: "a cam may stand more than 30° crank out towards its piston: slack the adjusters right off or take the rockers off before turning"}
	case room == Tight:
		return Turning{ByHand: true, Why: "by the measurements of the head valves clear as the cams stand, but by less than is wanted to run: slowly by hand, plug out, stop at any resistance; do not kick or start it"}
	case worst > 5 && room == Enough:
		return Turning{ByHand: true, Why: "a cam stands out of place; by the measurements of the head the valves clear: by hand, plug out, stop at any resistance, and no start before the timing is right"}
	case worst > 5:
		return Turning{ByHand: true, Why: "a cam may stand far enough out for valve and piston to meet: slowly by hand, plug out, stop at any resistance; do not kick or start it until the gap is measured"}
	case !r.Inlet.Crank.Taken() || !r.Exhaust.Crank.Taken():
		return Turning{ByHand: true, Why: "one cam was not read: slowly by hand, plug out, stop at any resistance; no start until it is"}
	case lead.Key == nothingKey && lead.Share >= 0.6:
		return Turning{ByHand: true, Start: true, Why: "the readings show no cam out of place; two slow full turns by hand first"}
	}
	return Turning{ByHand: true, Why: "no cam is shown far out, but what is wrong is not settled: slowly by hand, plug out, and no start until it is"}
}
