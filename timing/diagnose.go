package timing

import (
	"slices"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Reasons for no verdict, by code.
const (
	TooFewReadings = "too-few-readings" // no valve event was read
)

// Causes ranks what would explain the readings, and nothing else: the part of
// [Diagnose] for those who weigh many engines. Errors: those of Diagnose; with
// no event read, fault.Missing.
func Causes(in Input, opt Options) (measure.Ranking, error) {
	opt = opt.filled()
	if err := in.check(&opt); err != nil {
		return measure.Ranking{}, err
	}
	s := newSheet(&in, &opt)
	if s.taken == 0 {
		return measure.Ranking{}, fault.Fault{Code: fault.Missing, Path: "readings", Rule: "at least one valve event must be read"}
	}
	b, err := newBench(s)
	if err != nil {
		return measure.Ranking{}, fault.Under("engine.drive", err)
	}
	return b.rank()
}

// Phases compares each cam with its specification, and nothing else: how far it
// stands from its place by its own events. Errors: those of [Diagnose].
func Phases(in Input, opt Options) (inlet, exhaust Phase, err error) {
	opt = opt.filled()
	if err := in.check(&opt); err != nil {
		return Phase{}, Phase{}, err
	}
	s := newSheet(&in, &opt)
	return s.phase(Inlet), s.phase(Exhaust), nil
}

// Diagnose compares readings with the specification: how far each cam is from
// its place, which faults explain that and with what odds, what to read next, and
// what to move.
//
// Each cause is a fixed shift of the four events, an amount left open, or both;
// readings err each by its own uncertainty, all together by that of TDC, and each
// cam's two events in opposite senses by that of its duration. Evidence of an
// open amount is averaged over it in closed form (see measure.Gaussian), a slip
// also over the whole circle. A fault that moves the opening by less than
// Options.Trifle counts as none. One event may have been misread.
//
// The error holds every fault of the input at once, a train that is not exactly
// one to two among them. Readings too few for a verdict are a result with
// NoAnswer given; a compression or leak-down test is judged all the same.
func Diagnose(in Input, opt Options) (Result, error) {
	opt = opt.filled()
	if err := in.check(&opt); err != nil {
		return Result{}, err
	}
	s := newSheet(&in, &opt)
	r := Result{Read: lobesOf(s.read, &opt.Widths), Book: booked(s), Inlet: s.phase(Inlet), Exhaust: s.phase(Exhaust)}
	r.Basis = s.basis()
	if s.taken == 0 {
		r.NoAnswer = fault.Reason{Code: TooFewReadings, Text: "no valve event was read, so nothing can be said of the timing"}
		r.Turning = Turning{ByHand: true, Why: "nothing is known of the timing: slowly, plug out, stopping at any resistance"}
		return r, s.cylinderAlone(&r)
	}
	b, err := newBench(s)
	if err != nil {
		return Result{}, fault.Under("engine.drive", err)
	}
	if r.Causes, err = b.rank(); err != nil {
		return Result{}, err
	}
	for _, o := range r.Causes.Odds {
		if o.Share < 0.01 || len(r.Explained) == mostExplained {
			break
		}
		if o.Key != measure.SomethingElse {
			r.Explained = append(r.Explained, b.explain(&b.verdicts[b.index[o.Key]]))
		}
	}
	if r.NextReadings, err = b.next(r.Causes); err != nil {
		return Result{}, err
	}
	if !s.read.Leak.Taken() && slices.ContainsFunc(r.NextReadings, func(g measure.Gain) bool { return g.Key == leakDownKey }) {
		r.Basis.Cautions = append(r.Basis.Cautions, refdata.AirTurnsCrank)
	}
	if r.Firing, err = firing(s.read); err != nil {
		return Result{}, err
	}
	if r.Compression, err = b.compression(&r); err != nil {
		return Result{}, err
	}
	if r.Remedies, err = b.remedies(&r); err != nil {
		return Result{}, err
	}
	r.Turning = turning(&r)
	return r, nil
}

// cylinderAlone says what compression and leak-down test tell with no event read:
// averaged over everything that may be wrong with the timing.
func (s *sheet) cylinderAlone(r *Result) error {
	if !s.tested() {
		return nil
	}
	b, err := newBench(s)
	if err != nil {
		return fault.Under("engine.drive", err)
	}
	causes, err := b.rank()
	if err != nil {
		return err
	}
	r.Compression, err = b.compression(&Result{Causes: causes})
	return err
}

// mostExplained is how many causes are explained; the rest can be had by asking
// again with fewer priors.
const mostExplained = 8

// shifts returns how far each cam stands from home, as measured; zero for a cam
// that was not read.
func (r *Result) shifts() (inlet, exhaust units.CrankAngle) {
	return r.Inlet.Crank.Value(), r.Exhaust.Crank.Value()
}
