package timing

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Lobes is where a pair of cams opens and shuts its valves. Figures that need a
// reading that was not taken are not taken either.
type Lobes struct {
	InletCentre     measure.Reading[units.CrankAngle] `json:"inlet_centre"`     // after the overlap TDC
	ExhaustCentre   measure.Reading[units.CrankAngle] `json:"exhaust_centre"`   // before the overlap TDC
	InletDuration   measure.Reading[units.CrankAngle] `json:"inlet_duration"`   // opening to closing
	ExhaustDuration measure.Reading[units.CrankAngle] `json:"exhaust_duration"` // opening to closing
	Separation      measure.Reading[units.CamAngle]   `json:"separation"`       // between the lobe centres, on the cam
	Overlap         measure.Reading[units.CrankAngle] `json:"overlap"`          // both valves open; negative: neither
}

// LobesOf returns centre, duration, separation and overlap from the events as
// read, with their standard uncertainties. With inlet opening b before TDC and
// closing c after BDC, exhaust opening d before BDC and closing e after TDC:
//
//	inlet duration 180 + b + c      exhaust duration 180 + d + e
//	inlet centre (180 + c - b)/2    exhaust centre (180 + d - e)/2
//	overlap b + e                   separation (inlet + exhaust centre)/2, cam
//
// Derived from the meaning of the words. A dead centre wrongly set moves both
// events of a cam alike: it counts in the centres and cancels in durations,
// separation and overlap (GUM, JCGM 100:2008, 5.2.2, correlated inputs). Where
// Readings.TDCLate was taken, centres are corrected by it. Of the readings only
// events and TDC are looked at. Errors: the faults of the
// readings and options.
func LobesOf(r Readings, opt Options) (Lobes, error) {
	opt = opt.filled()
	var l fault.List
	l.Under("readings", r.check())
	l.Under("", opt.check())
	if err := l.Err(); err != nil {
		return Lobes{}, err
	}
	return lobesOf(&r, &opt.Widths), nil
}

// figure is an event in crank degrees after the overlap TDC.
type figure struct {
	at, u float64
	taken bool
}

func (r *Readings) figure(e EventName) figure {
	p := r.event(e)
	return figure{p.Value().FromTDC().Degrees(), p.U().Degrees(), p.Taken()}
}

// centre returns how far past true TDC the disc stood, and the uncertainty that
// is left in its TDC.
func (r *Readings) centre(w *Widths) (late, u float64) {
	if r.TDCLate.Taken() {
		return r.TDCLate.Value().Degrees(), r.TDCLate.U().Degrees()
	}
	return 0, r.TDC.width(w).Degrees()
}

func lobesOf(r *Readings, w *Widths) Lobes {
	late, tdc := r.centre(w)
	io, ic, eo, ec := r.figure(InletOpens), r.figure(InletCloses), r.figure(ExhaustOpens), r.figure(ExhaustCloses)
	var all Lobes
	crank := func(v, u float64) measure.Reading[units.CrankAngle] {
		return measure.Of(units.CrankDegrees(v), units.CrankDegrees(u))
	}
	var in, ex float64
	if io.taken && ic.taken {
		d := turn(ic.at - io.at)
		all.InletDuration = crank(d, math.Hypot(io.u, ic.u))
		// between 90 before TDC and 270 after it: where any inlet lobe has its centre
		in = turn(io.at+late+d/2+90) - 90
		all.InletCentre = crank(in, math.Hypot(math.Hypot(io.u, ic.u)/2, tdc))
	}
	if eo.taken && ec.taken {
		d := turn(ec.at - eo.at)
		all.ExhaustDuration = crank(d, math.Hypot(eo.u, ec.u))
		ex = turn(d/2-ec.at-late+90) - 90
		all.ExhaustCentre = crank(ex, math.Hypot(math.Hypot(eo.u, ec.u)/2, tdc))
	}
	if all.InletCentre.Taken() && all.ExhaustCentre.Taken() {
		u := math.Sqrt(io.u*io.u+ic.u*ic.u+eo.u*eo.u+ec.u*ec.u) / 4
		all.Separation = measure.Of(units.CamDegrees((in+ex)/2), units.CamDegrees(u))
	}
	if io.taken && ec.taken {
		all.Overlap = crank(wrap(ec.at-io.at), math.Hypot(io.u, ec.u))
	}
	return all
}

// booked returns the lobes of the specification, which are exact.
func booked(s *sheet) Lobes {
	in, ex := &s.lobes[Inlet], &s.lobes[Exhaust]
	crank := func(v float64) measure.Reading[units.CrankAngle] { return measure.Exact(units.CrankDegrees(v)) }
	return Lobes{
		InletCentre: crank(in.centre()), ExhaustCentre: crank(-ex.centre()),
		InletDuration: crank(in.duration()), ExhaustDuration: crank(ex.duration()),
		Separation: measure.Exact(units.CamDegrees((in.centre() - ex.centre()) / 2)), Overlap: crank(ex.closes - in.opens),
	}
}

// Phase is how far one cam is from its specification, advance positive.
type Phase struct {
	Opens    measure.Reading[units.CrankAngle] `json:"opens"`     // opening, early positive
	Closes   measure.Reading[units.CrankAngle] `json:"closes"`    // closing, early positive
	Crank    measure.Reading[units.CrankAngle] `json:"crank"`     // shift of the lobe centre
	Cam      measure.Reading[units.CamAngle]   `json:"cam"`       // the same at the camshaft
	LongerBy measure.Reading[units.CrankAngle] `json:"longer_by"` // duration beyond the specification's
}

// phase compares one cam with its specification. Shifts are brought to within
// half a turn, both events together, and corrected by Readings.TDCLate. One event alone gives the shift too, less
// surely: the duration is then taken as the specification's, give or take
// Widths.Duration.
func (s *sheet) phase(c Cam) Phase {
	i := rowOpens + 2*int(c)
	o, k := s.data[i], s.data[i+1]
	uo, uk := s.own[i], s.own[i+1]
	crank := func(v, u float64) measure.Reading[units.CrankAngle] {
		return measure.Of(units.CrankDegrees(v), units.CrankDegrees(u))
	}
	late, common := s.read.centre(&s.opt.Widths)
	if s.read.Lag.Taken() {
		common = math.Hypot(common, s.read.Lag.U().Degrees())
	}
	o.Value, k.Value = wrap(o.Value-late), wrap(k.Value-late)
	var p Phase
	var v, u float64
	half := s.opt.Widths.Duration.Degrees() / 2
	switch {
	case o.Taken && k.Taken:
		k.Value = o.Value + wrap(k.Value-o.Value)
		v, u = (o.Value+k.Value)/2, math.Hypot(uo, uk)/2
		p.LongerBy = crank(o.Value-k.Value, math.Hypot(uo, uk))
	case o.Taken:
		v, u = o.Value, math.Hypot(uo, half)
	case k.Taken:
		v, u = k.Value, math.Hypot(uk, half)
	default:
		return Phase{}
	}
	if o.Taken {
		p.Opens = crank(o.Value, math.Hypot(uo, common))
	}
	if k.Taken {
		p.Closes = crank(k.Value, math.Hypot(uk, common))
	}
	p.Crank = crank(v, math.Hypot(u, common))
	p.Cam = measure.Of(p.Crank.Value().AtHalfSpeedCam(), p.Crank.U().AtHalfSpeedCam())
	return p
}
