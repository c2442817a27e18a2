package timing

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// LeakTest is a leak-down test: air is let into the cylinder through the tester's
// own orifice, and what the cylinder cannot keep is heard where it comes out. Give
// the two pressures, or the part lost, or only where it hissed; the zero value was
// not taken.
type LeakTest struct {
	// Supply and Held are the gauge pressures before and behind the tester's
	// orifice.
	Supply measure.Reading[units.Pressure] `json:"supply"`
	Held   measure.Reading[units.Pressure] `json:"held"`
	// Lost is the part lost, 1 - held/supply, off a tester scaled in per cent.
	Lost measure.Reading[units.Ratio] `json:"lost"`
	// HeldWet or LostWet is the same with a spoonful of oil in the bore, which seals
	// worn rings and nothing else.
	HeldWet measure.Reading[units.Pressure] `json:"held_wet"`
	LostWet measure.Reading[units.Ratio]    `json:"lost_wet"`
	// AtInlet to AtJoint say where it hissed: at the carburettor with its throttle
	// open, in the exhaust pipe, at the crankcase breather or oil filler, and by
	// bubbles of soapy water round head joint and plug.
	AtInlet    Seen `json:"at_inlet"`
	AtExhaust  Seen `json:"at_exhaust"`
	AtBreather Seen `json:"at_breather"`
	AtJoint    Seen `json:"at_joint"`
	// At is where the crank was held, from BDC up the compression stroke to 90°
	// past TDC; default TDC at the end of compression.
	At units.CrankPosition `json:"at"`
}

// Taken reports whether anything of the test was read or listened for.
func (t LeakTest) Taken() bool {
	return t.measured() || t.AtInlet != NotLooked || t.AtExhaust != NotLooked || t.AtBreather != NotLooked || t.AtJoint != NotLooked
}

// measured reports whether any of the loss itself was read.
func (t LeakTest) measured() bool {
	return t.Supply.Taken() || t.Held.Taken() || t.HeldWet.Taken() || t.Lost.Taken() || t.LostWet.Taken()
}

// listened reports whether any place was listened at.
func (t LeakTest) listened() bool { return t.seen() != [places]Seen{} }

// PartLost returns the part of the supplied pressure that the cylinder does not
// keep, dry and with oil in the bore, 1 - held/supply of the gauge pressures, with
// its uncertainty (first order, JCGM 100:2008, 5.1.2); not taken where it was not
// read. It depends on the size of the tester's orifice: see crank.LeakTester. Errors:
// a pressure missing or out of order, pressures and part both given, a part outside
// 0 to 1, a wet figure without a dry one.
func (t LeakTest) PartLost() (dry, wet measure.Reading[units.Ratio], err error) {
	if err := t.check(); err != nil {
		return dry, wet, err
	}
	if !t.Supply.Taken() {
		return t.Lost, t.LostWet, nil
	}
	part := func(held measure.Reading[units.Pressure]) measure.Reading[units.Ratio] {
		if !held.Taken() {
			return measure.Reading[units.Ratio]{}
		}
		s, h := t.Supply.Value().SI(), held.Value().SI()
		u := math.Hypot(held.U().SI()/s, t.Supply.U().SI()*h/s/s)
		if u == 0 { // both exact by name
			return measure.Exact(units.Value(1 - h/s))
		}
		return measure.Of(units.Value(1-h/s), units.Value(u))
	}
	return part(t.Held), part(t.HeldWet), nil
}

// cycle is the crank at the test in degrees from the overlap TDC.
func (t LeakTest) cycle() float64 {
	after := t.At.After().Degrees()
	if t.At.Datum() == units.BDC {
		return 180 + after
	}
	return 360 + after
}

func (t LeakTest) check() error {
	var l fault.List
	for _, x := range []struct {
		path string
		v    measure.Reading[units.Pressure]
		low  units.Pressure
	}{{"supply", t.Supply, units.Bars(0.5)}, {"held", t.Held, 0}, {"held_wet", t.HeldWet, 0}} {
		if l.Under(x.path, x.v.Err()); x.v.Taken() && !(x.v.Value() >= x.low && x.v.Value() <= units.Bars(20)) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: x.path, Value: x.v.Text(), Unit: "bar", Rule: x.low.String() + " to 20 bar above the air outside"})
		}
	}
	for _, x := range []struct {
		path string
		v    measure.Reading[units.Ratio]
	}{{"lost", t.Lost}, {"lost_wet", t.LostWet}} {
		if l.Under(x.path, x.v.Err()); x.v.Taken() && !(x.v.Value() >= 0 && x.v.Value() <= units.One) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: x.path, Value: x.v.Text(), Unit: "%", Rule: "0 % to 100 %"})
		}
		if x.v.Taken() && (t.Supply.Taken() || t.Held.Taken() || t.HeldWet.Taken()) {
			l.Add(fault.Fault{Code: fault.Conflict, Path: x.path, Value: x.v.Text(), Rule: "give pressures or parts lost, not both"})
		}
	}
	missing := func(bad bool, path, rule string) {
		if bad {
			l.Add(fault.Fault{Code: fault.Missing, Path: path, Rule: rule})
		}
	}
	missing(t.Supply.Taken() && !t.Held.Taken(), "held", "the pressures before and behind the orifice go together")
	missing(!t.Supply.Taken() && (t.Held.Taken() || t.HeldWet.Taken()), "supply", "the pressures before and behind the orifice go together")
	missing(t.LostWet.Taken() && !t.Lost.Taken(), "lost", "a figure with oil is weighed against the dry one")
	for k, held := range [...]measure.Reading[units.Pressure]{t.Held, t.HeldWet} {
		if held.Taken() && t.Supply.Taken() && held.Value() > t.Supply.Value() {
			l.Add(fault.Fault{Code: fault.Conflict, Path: [...]string{"held", "held_wet"}[k], Value: held.Text(), Unit: "bar", Rule: "the cylinder cannot hold more than is supplied"})
		}
	}
	for k, seen := range t.seen() {
		if seen > No {
			l.Add(fault.Fault{Code: fault.UnknownName, Path: [places]string{"at_inlet", "at_exhaust", "at_breather", "at_joint"}[k], Rule: "yes, no or not looked"})
		}
	}
	if x := t.cycle(); !(x >= 180 && x <= 450) || t.At.Datum() > units.BDC {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "at", Value: t.At.String(), Unit: "° crank", Rule: "from BDC up the compression stroke to 90 ATDC"})
	}
	return l.Err()
}

// The places where it may hiss.
const (
	atInlet = iota
	atExhaust
	atBreather
	atJoint
	places
)

func (t LeakTest) seen() [places]Seen {
	return [places]Seen{t.AtInlet, t.AtExhaust, t.AtBreather, t.AtJoint}
}

// The ways in which a cylinder leaks.
const (
	tight        = iota // what any engine loses past its rings
	pastRings           //
	pastInlet           // a seat that does not seal
	pastExhaust         //
	pastJoint           //
	inletOpen           // a valve that is not down on its seat at all
	exhaustOpen         //
	leakKinds    = 7
	leakOutcomes = 5 // what a listener tells apart: the first five
)

// leaks is what each way of leaking shows on a tester with an orifice of about a
// millimetre: the middle of the part lost and its spread, in log odds; what a
// spoonful of oil changes of it and the spread of that, in log odds too; and the
// chance of a hiss at each place. Common practice, no source, the figures too; an
// open valve follows from its size, since a tenth of a millimetre off its seat is ten
// times the orifice.
var leaks = [leakKinds]struct {
	lost, spread float64
	oil, oilSD   float64
	hiss         [places]float64
}{
	tight:       {0.08, 0.6, -0.3, 0.3, [places]float64{0.05, 0.05, 0.35, 0.03}},
	pastRings:   {0.30, 0.8, -1.2, 0.5, [places]float64{0.05, 0.05, 0.95, 0.03}},
	pastInlet:   {0.45, 1.1, -0.1, 0.3, [places]float64{0.93, 0.05, 0.35, 0.03}},
	pastExhaust: {0.45, 1.1, -0.1, 0.3, [places]float64{0.05, 0.93, 0.35, 0.03}},
	pastJoint:   {0.35, 1.0, -0.1, 0.3, [places]float64{0.05, 0.05, 0.35, 0.93}},
	inletOpen:   {0.97, 1.0, -0.1, 0.3, [places]float64{0.97, 0.05, 0.25, 0.03}},
	exhaustOpen: {0.97, 1.0, -0.1, 0.3, [places]float64{0.05, 0.97, 0.25, 0.03}},
}

// leakFloor is the least part lost, and the least part kept, that a gauge shows.
const leakFloor = 0.005

// leakLogs is the log likelihood of the test for each way of leaking.
func (s *sheet) leakLogs() (logs [leakKinds]float64) {
	t := &s.read.Leak
	dry, wet, err := t.PartLost()
	if err != nil {
		return logs // told by check before anything is weighed
	}
	d, du := logOdds(dry)
	w, wu := logOdds(wet)
	for k := range logs {
		x := &leaks[k]
		for place, seen := range t.seen() {
			logs[k] += look(seen, x.hiss[place])
		}
		if dry.Taken() {
			logs[k] += normal(d-math.Log(x.lost/(1-x.lost)), math.Hypot(x.spread, du))
		}
		if wet.Taken() {
			logs[k] += normal(w-d-x.oil, math.Hypot(x.oilSD, math.Hypot(du, wu)))
		}
	}
	return logs
}

// logOdds is a part lost and its uncertainty in log odds; 0 if not taken.
func logOdds(lost measure.Reading[units.Ratio]) (value, u float64) {
	if !lost.Taken() {
		return 0, 0
	}
	f := min(max(lost.Value().Value(), leakFloor), 1-leakFloor)
	return math.Log(f / (1 - f)), max(lost.U().Value(), leakFloor) / (f * (1 - f))
}

// normal is the log density of a normal figure that misses its mean, but for what is
// the same for all.
func normal(miss, sd float64) float64 { return -miss*miss/sd/sd/2 - math.Log(sd) }

// What leaks where a valve, seat or gasket does: most often the exhaust valve,
// which runs hottest; the shares are common practice, no source.
var leakOfValves = [leakKinds]float64{pastInlet: 0.35, pastExhaust: 0.50, pastJoint: 0.15}

// heldShare is how often the valve that a verdict holds up is the one that leaks,
// where a valve leaks.
const heldShare = 0.85

// eventDoubt is how sharply, in crank degrees, an event says whether the valve is
// open: it was read at a lift above the seat, by a crank that was held by hand.
const eventDoubt = 6.0

// condition is one thing that may be the matter with the cylinder under a verdict.
type condition struct {
	state int // what a compression gauge shows: sound, rings or valves
	leak  int // what a leak-down tester shows; -1: no such test
	shown int // what the reader is told
	share float64
}

// conditions lists what may be the matter with the cylinder if a verdict is true,
// with shares that add up to one.
func (b *bench) conditions(v *verdict) []condition {
	shares := v.stateShares()
	if !b.read.Leak.Taken() {
		all := make([]condition, 0, states)
		for i, p := range shares {
			all = append(all, condition{state: i, leak: -1, shown: i, share: p})
		}
		return all
	}
	return b.leakConditions(v, shares)
}

// leakConditions is conditions with a leak-down test in view, taken or to be taken.
func (b *bench) leakConditions(v *verdict, shares [states]float64) []condition {
	open := b.openAt(v, b.read.Leak.cycle())
	if both := open[Inlet] + open[Exhaust]; both > 1 {
		open[Inlet], open[Exhaust] = open[Inlet]/both, open[Exhaust]/both
	}
	heldCam, turned := -1, -1
	for _, a := range v.faults {
		switch a.family {
		case held:
			heldCam = int(a.cams[0])
		case wholeTurn:
			turned = int(a.cams[0])
		}
	}
	shut := 1 - open[Inlet] - open[Exhaust]
	all := make([]condition, 0, 16)
	add := func(state, leak, shown int, share float64) {
		if share > 0 {
			all = append(all, condition{state, leak, shown, share})
		}
	}
	for i, p := range shares {
		add(i, inletOpen, inletValve, p*open[Inlet])
		add(i, exhaustOpen, exhaustValve, p*open[Exhaust])
		if i != valves {
			add(i, [states]int{tight, pastRings}[i], i, p*shut)
			continue
		}
		rest := p * shut
		switch {
		case heldCam >= 0:
			add(i, inletOpen+heldCam, inletValve+heldCam, rest*heldShare)
			rest *= 1 - heldShare
		case turned >= 0: // it leaks on its own turn, and seals where the test was made
			add(i, tight, inletValve+turned, rest*heldShare)
			rest *= 1 - heldShare
		}
		for leak, q := range leakOfValves {
			add(i, leak, inletValve+leak-pastInlet, rest*q)
		}
	}
	return all
}

// openAt is the chance that each valve stands open by its timing at a place of the
// cycle, if a verdict is true.
func (b *bench) openAt(v *verdict, at float64) (open [2]float64) {
	early := b.earliness(v)
	for c := range Cam(2) {
		l := &b.lobes[c]
		opens, closes := l.opens-early[2*c], l.closes-early[2*c+1]
		for _, a := range v.faults {
			if a.family == wholeTurn && a.cams[0] == c {
				opens, closes = opens+360, closes+360
			}
		}
		x := at - opens
		x -= 720 * math.Floor(x/720)
		length := closes - opens
		inside := min(x, length-x)
		if x > length {
			inside = -min(x-length, 720-x)
		}
		open[c] = math.Erfc(-inside/eventDoubt/math.Sqrt2) / 2
	}
	return open
}

// leakAnyhow is the log likelihood of the test if the cause is not listed: any way
// of leaking alike.
func (b *bench) leakAnyhow() float64 {
	logs := b.leakLogs()
	return logSum(logs[:]) - math.Log(leakKinds)
}

// leakOutlook is what a verdict makes one expect to hear: the chances of little
// lost, and of a loss at the breather, the carburettor, the exhaust pipe and the
// joint. A listener is right about nine times in ten: common practice, no source.
func (b *bench) leakOutlook(v *verdict) measure.Outlook {
	const right, wrong = 0.88, 0.03
	chances := make([]float64, leakOutcomes)
	all := b.leakConditions(v, v.stateShares())
	logs := make([]float64, len(all))
	var told [states]float64
	if b.tested() {
		told = b.stateLogs(v)
	}
	for i, c := range all {
		logs[i] = math.Log(c.share) + told[c.state]
	}
	sum := logSum(logs)
	for i, c := range all {
		heard := c.leak
		if heard >= leakOutcomes {
			heard += pastInlet - inletOpen
		}
		for k := range chances {
			p := wrong
			if k == heard {
				p = right
			}
			chances[k] += math.Exp(logs[i]-sum) * p
		}
	}
	return measure.Outlook{Chances: chances}
}
