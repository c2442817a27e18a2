package ignition

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Diagnose ranks what would explain the readings, and says what to turn.
//
// Causes, with their default weights (common practice, no source): nothing-wrong 0.40,
// slipped 0.12, gap 0.10, half-turn 0.08, timed-on-retard 0.08, control-short
// 0.05, tdc-mark 0.05 (only if TDC was not found by a stop), wrong-rotation 0.04,
// timed-on-advance 0.03, crank-as-shaft 0.03, shaft-as-crank 0.02, and with a
// train tooth-m:±1 0.03 and ±2 0.01 each; something-else 0.02. Those that move the
// control are listed only where there is one. A slip is half of the time within
// 12° of home, one standard deviation, else anywhere on the circle; angles are
// compared round the circle; the disc cannot tell the two TDCs of a cycle apart,
// the stroke does.
//
// Errors: neither full nor static figure; a figure that cannot be turned into
// degrees; a full advance later than the static figure; a train that does not give
// the drive's ratio; a gap below zero or of 5 mm or more; a bad option. No reading at all is a result with NoAnswer given.
func Diagnose(in Input, opt Options) (Result, error) {
	s, out, err := prepare(in, opt)
	if err != nil {
		return Result{}, err
	}
	d := make(measure.Data, components)
	s.deviations(&out, d)
	none := true
	for _, x := range d {
		none = none && !x.Taken
	}
	if none {
		out.NoAnswer = fault.Reason{Code: "nothing-read", Text: "no reading was given: find where the points open first"}
		out.MayKick = true
		return out, nil
	}
	list, other := s.causes()
	ranked := make([]measure.Cause, len(list))
	for i, c := range list {
		ranked[i] = measure.Cause{Key: c.key, Text: c.text, Prior: c.prior, Hypothesis: c}
	}
	if out.Causes, err = measure.Rank(d, ranked, measure.Cause{Text: other.text, Prior: other.prior, Hypothesis: other}); err != nil {
		return Result{}, err
	}
	other.key = measure.SomethingElse
	all := append(list, other)
	if out.NextReadings, err = measure.Next(out.Causes, s.checks(all, d)); err != nil {
		return Result{}, err
	}
	out.Remedies = s.remedies(out, all)
	out.MayKick = s.mayKick(out)
	s.notChecked(&out)
	return out, nil
}

// prepare checks the input, collects every fault, and turns figures into degrees.
func prepare(in Input, opt Options) (*situation, Result, error) {
	var l fault.List
	var out Result
	s := &situation{in: in, opt: opt}
	l.Under("spec.drive", in.Spec.Drive.Err())
	l.Under("options", opt.GapRate.err())
	for _, o := range [...]struct {
		path string
		v    units.CrankAngle
	}{{"options.setting", opt.Setting}, {"options.tdc_error", opt.TDCError}} {
		if !(o.v >= 0 && o.v <= 90*units.CrankDegree) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: o.path, Unit: "° crank", Rule: "a standard deviation from 0 (the default) to 90°"})
		}
	}
	for key, p := range opt.Priors {
		if !(p > 0) || math.IsInf(p, 0) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: "options.priors." + key, Rule: "a prior must be above zero"})
		}
	}
	l.Under("spec.range", in.Spec.Range.Err())
	if r := in.Spec.Range; r.Taken() && !(r.Value() >= 0 && r.Value() <= 90*units.Degree) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "spec.range", Value: r.Text(), Unit: "°", Rule: "0° to 90° at the ignition shaft"})
	}
	for _, g := range [...]struct {
		path string
		r    measure.Reading[units.Length]
	}{{"spec.gap", in.Spec.Gap}, {"read.gap", in.Read.Gap}} {
		if v := g.r.Value(); l.Under(g.path, g.r.Err()) && !(v >= 0 && v < widestGap) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: g.path, Value: g.r.Text(), Unit: "mm", Rule: "a points gap is not below zero and below 5 mm"})
		}
	}
	if t := in.Spec.Train; t.Len() > 0 && l.Under("spec.train", t.Err()) && in.Spec.Drive.Err() == nil {
		if r, _ := t.Ratio(); r.Abs() != in.Spec.Drive.filled().Ratio {
			l.Add(fault.Fault{Code: fault.Conflict, Path: "spec.train", Value: t.String(), Rule: "the train gives " + r.Abs().String() + " turns for one of the crank, the drive says " + in.Spec.Drive.filled().Ratio.String()})
		}
	}
	if !in.Spec.Full.Taken() && !in.Spec.Static.Taken() {
		l.Add(fault.Fault{Code: fault.Missing, Path: "spec.full", Rule: "give the figure for full advance, or the static one"})
	}
	locate := func(path string, w Where) Located {
		if !w.Taken() {
			return Located{}
		}
		at, err := w.Locate(in.Spec.Gauges)
		l.Under(path, err)
		return at
	}
	full, static := locate("spec.full", in.Spec.Full), locate("spec.static", in.Spec.Static)
	adv, ret := locate("read.advanced", in.Read.Advanced), locate("read.retarded", in.Read.Retarded)
	if err := l.Err(); err != nil {
		return nil, out, err
	}
	for _, p := range [...]Located{full, static, adv, ret} {
		for _, a := range p.Basis.Assumed {
			if len(out.Basis.Assumed) == 0 {
				out.Basis.Assumed = append(out.Basis.Assumed, a)
			}
		}
	}
	if err := s.range_(&out, full.At, static.At); err != nil {
		return nil, out, err
	}
	out.Advanced.Read, out.Retarded.Read = adv.At, ret.At
	s.uAdv, s.uRet = adv.At.U().Degrees(), ret.At.U().Degrees()
	s.options(&out)
	out.HalfTurn, _ = in.Spec.Drive.HalfTurn()
	s.halfTurn = out.HalfTurn
	s.perCycle = in.Spec.Drive.Period() == 720*units.CrankDegree
	out.Basis.Sources = []refdata.Source{
		{Title: "geometry of slider-crank and drive ratio", Status: refdata.Derived},
		refdata.Practice(),
	}
	out.Basis.Cautions = []refdata.Caution{refdata.KickBack, refdata.HighTension, refdata.PetrolVapour, refdata.DeferToManual}
	return s, out, nil
}

// range_ settles full advance, full retard and the range between from what the
// book gives.
func (s *situation) range_(out *Result, full, static measure.Position) error {
	drive := s.in.Spec.Drive
	r, ur := drive.AtCrank(s.in.Spec.Range.Value()).Degrees(), drive.AtCrank(s.in.Spec.Range.U()).Degrees()
	f, st := full.Value().FromTDC().Degrees(), static.Value().FromTDC().Degrees()
	switch {
	case full.Taken() && static.Taken():
		between := wrap(st - f)
		if between < 0 {
			return fault.Fault{Code: fault.Conflict, Path: "spec.static", Value: static.Text(), Rule: "the retarded spark must not be earlier than the advanced one"}
		}
		ub := math.Hypot(full.U().Degrees(), static.U().Degrees())
		if s.in.Spec.Range.Taken() && math.Abs(between-r) > 3*math.Hypot(ub, ur)+1 {
			return fault.Fault{Code: fault.Conflict, Path: "spec.range", Value: s.in.Spec.Range.Text(), Rule: "the two figures leave " + units.CrankDegrees(between).String() + " between them"}
		}
		r = between
		s.uFull, s.uRetard = full.U().Degrees(), static.U().Degrees()
	default:
		if !s.in.Spec.Range.Taken() {
			r, ur = drive.AtCrank(units.Degrees(assumedRange)).Degrees(), drive.AtCrank(units.Degrees(assumedU)).Degrees()
			out.Basis.Assumed = append(out.Basis.Assumed, refdata.Assumption{What: "range of the advance, at the ignition shaft", Value: "12.5° ± 4°", Status: refdata.CommonPractice})
		}
		if full.Taken() {
			st, s.uFull = f+r, full.U().Degrees()
			s.uRetard = math.Hypot(s.uFull, ur)
		} else {
			f, s.uRetard = st-r, static.U().Degrees()
			s.uFull = math.Hypot(s.uRetard, ur)
		}
	}
	s.full, s.travel = f, r
	s.movable = r > 0
	out.Full = measure.At(units.After(units.TDC, units.CrankDegrees(f)), units.CrankDegrees(s.uFull))
	out.Retard = measure.At(units.After(units.TDC, units.CrankDegrees(st)), units.CrankDegrees(s.uRetard))
	out.Range = units.CrankDegrees(r)
	return nil
}

func (s *situation) options(out *Result) {
	assume := func(what, value string) {
		out.Basis.Assumed = append(out.Basis.Assumed, refdata.Assumption{What: what, Value: value, Status: refdata.CommonPractice})
	}
	s.setting = s.opt.Setting.Degrees()
	if s.setting == 0 {
		s.setting = 1.5
		assume("how well a good setting sits", "1.5° of the crank")
	}
	s.tdc = s.opt.TDCError.Degrees()
	if s.tdc == 0 {
		s.tdc = 1.5
		if s.in.Read.TDCByStop {
			s.tdc = 0.5
		}
		assume("error of TDC", units.CrankDegrees(s.tdc).String())
	}
	rate := s.opt.GapRate.filled()
	if s.opt.GapRate == (GapRate{}) {
		assume("slope of the points cam", "15° to 50° of its shaft per mm")
	}
	s.gapRate = s.in.Spec.Drive.AtCrank(units.Degrees((rate.LowDegreesPerMM + rate.HighDegreesPerMM) / 2)).Degrees()
	s.gapRateU = s.in.Spec.Drive.AtCrank(units.Degrees((rate.HighDegreesPerMM-rate.LowDegreesPerMM)/2)).Degrees() / math.Sqrt(3)
}

// deviations fills in the readings against what they should be.
func (s *situation) deviations(out *Result, d measure.Data) {
	set := func(i int, dev *Deviation, want measure.Position, uWant float64) {
		dev.Want = want
		if !dev.Read.Taken() {
			return
		}
		early := wrap(want.Value().FromTDC().Degrees() - dev.Read.Value().FromTDC().Degrees())
		d[i] = measure.Datum{Value: early, Taken: true}
		u := math.Hypot(math.Hypot(dev.Read.U().Degrees(), uWant), s.tdc)
		dev.Early = measure.Of(units.CrankDegrees(early), units.CrankDegrees(u))
		dev.Shaft = s.in.Spec.Drive.AtShaft(units.CrankDegrees(early))
	}
	set(advanced, &out.Advanced, out.Full, s.uFull)
	set(retarded, &out.Retarded, out.Retard, s.uRetard)
	if g, want := s.in.Read.Gap, s.in.Spec.Gap; g.Taken() && want.Taken() {
		d[gap] = measure.Datum{Value: (g.Value() - want.Value()).Millimetres(), Taken: true}
		s.uGap = math.Hypot(g.U().Millimetres(), want.U().Millimetres())
	}
	if s.perCycle && s.in.Read.Stroke != StrokeUnknown {
		d[stroke].Taken = true
		if s.in.Read.Stroke == Overlap {
			d[stroke].Value = 1
		}
	}
}

// mayKick: the spark on the retarded control may fall 5° before its place, or is
// not known well enough to say. 5° is a figure of prudence, common practice.
func (s *situation) mayKick(out Result) bool {
	const margin = 5
	switch at := out.Retarded; {
	case at.Read.Taken():
		return at.Early.Value().Degrees()+at.Early.U().Degrees() > margin
	case s.movable:
		return true // full advance alone does not say where retard falls
	default:
		return !out.Advanced.Read.Taken() || out.Advanced.Early.Value().Degrees()+out.Advanced.Early.U().Degrees() > margin
	}
}

func (s *situation) notChecked(out *Result) {
	miss := func(what, why, settle string) {
		out.Basis.NotChecked = append(out.Basis.NotChecked, refdata.Unchecked{What: what, Why: why, Settle: settle})
	}
	if !out.Advanced.Read.Taken() {
		miss("full advance", "not read", "control on advance, turn forwards until the points part")
	}
	if s.movable && !out.Retarded.Read.Taken() {
		miss("full retard, where a start is made", "not read", "control on retard, turn forwards until the points part")
	}
	if s.perCycle && s.in.Read.Stroke == StrokeUnknown {
		miss("which stroke the spark falls on", "a disc cannot tell", "thumb on the plug hole: it must fall as compression ends")
	}
	if !s.in.Read.Gap.Taken() || !s.in.Spec.Gap.Taken() {
		miss("points gap", "not read, or no figure to set it against", "feeler gauge at the widest opening")
	}
	miss("strength of the spark", "not part of the timing", "spark at a plug laid on the head, seen in the shade")
}
