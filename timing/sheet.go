package timing

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// sheet is one engine and its readings as numbers, ready for weighing.
type sheet struct {
	engine  *Engine
	read    *Readings
	opt     *Options
	lobes   [2]shape
	data    measure.Data
	own     []float64
	shared  []measure.Effect
	effects []effect
	tdcSD   float64
	taken   int  // events taken
	moved   bool // the events had to be moved to another check
	rates   []rate
}

// effect is an amount that a cause may leave open.
type effect struct {
	measure.Effect
	sided   bool    // the amount cannot be below zero: half a normal curve
	opening float64 // how far a unit of it moves an opening, in crank degrees; 0: not judged
}

// rate is the key of a spread that several causes share, and the spread.
type rate struct {
	mask uint32
	p    measure.Precision
	free []int // effects in the mask, in order
}

// The open amounts, by their place in sheet.effects.
const (
	slipNear  = 0  // + 1 for the exhaust cam
	slipFar   = 2  // + 1: anywhere on the circle
	markWrong = 4  // top dead centre
	gapWrong  = 5  // + 1: clearance
	liftWrong = 7  // check lift
	longer    = 8  // + 1: duration of a cam that is not known
	offset    = 10 // + 1: its centre
	higher    = 12 // + 1: its lift
	shaped    = 14 // + 1: duration, by a follower of another shape
	heldUp    = 16 // + 1: valve held off its seat
	wornOff   = 18 // + 1: lift gone from the nose
	gapSteep  = 20 // + 1: clearance, flanks steeper than the usual shape has them
	gapFlat   = 22 // + 1: flatter
	heldSteep = 24 // + 1
	heldFlat  = 26 // + 1
	amounts   = 28
)

// anywhere is a standard deviation so wide that a normal amount is as good as
// uniform over one turn; farWeight makes its density that of a uniform one. At
// 180 degrees from the middle the density is off by 0.2 %.
const anywhere = 3000.0

var farWeight = math.Log(anywhere * math.Sqrt(2*math.Pi) / 360)

// tdcWidth is the standard uncertainty of the dead centre the disc was set by.
func (t TDCBy) width(w *Widths) units.CrankAngle {
	switch t {
	case TDCByStop:
		return w.TDCByStop
	case TDCByDial:
		return w.TDCByDial
	case TDCByMark:
		return w.TDCByMark
	}
	return w.TDCByEye
}

// newSheet works out the rows. The input must be sound.
func newSheet(in *Input, opt *Options) *sheet {
	s := &sheet{engine: &in.Engine, read: &in.Readings, opt: opt, data: make(measure.Data, rows), own: make([]float64, rows)}
	e, r := s.engine, s.read
	rocker := e.ratioOf()
	s.lobes = [2]shape{shapeOf(Inlet, e.Inlet, e.Check, rocker), shapeOf(Exhaust, e.Exhaust, e.Check, rocker)}
	for i := range s.own {
		s.own[i] = 1
	}
	s.tdcSD = r.TDC.width(&opt.Widths).Degrees()
	book, found := e.Check.reach(rocker), e.Check.reach(rocker)
	if r.Check != nil {
		found = r.Check.reach(rocker)
		s.moved = found != book
	}
	for c := range Cam(2) {
		l := &s.lobes[c]
		opens, closes := l.at(book, found)
		for k, at := range [2]float64{opens, closes} {
			p := r.event(EventName(2*int(c) + k))
			if !p.Taken() {
				continue
			}
			i := rowOpens + 2*int(c) + k
			s.set(i, wrap(at-p.Value().FromTDC().Degrees()), p.U().Degrees())
			s.taken++
		}
		s.liftRows(c, rocker)
		if s.moved {
			// how far the usual shape can be trusted to move an event
			s.share("check", 0.3*math.Abs(opens-l.opens), column{}.set(rowOpens+2*int(c), -1).set(rowOpens+2*int(c)+1, 1))
		}
		s.share("duration", opt.Widths.Duration.Degrees(), column{}.set(rowOpens+2*int(c), 0.5).set(rowOpens+2*int(c)+1, -0.5))
	}
	if r.TDCLate.Taken() {
		s.set(rowStop, r.TDCLate.Value().Degrees(), max(r.TDCLate.U().Degrees(), 1e-3))
	}
	both := phase(Inlet, Exhaust)
	if r.Lag.Taken() {
		for i := range rowMaxLift {
			s.data[i].Value += r.Lag.Value().Degrees()
		}
		s.share("lag", r.Lag.U().Degrees(), both)
	}
	s.share("TDC", s.tdcSD, both.set(rowStop, 1))
	s.openAmounts()
	return s
}

func (c column) set(i int, v float64) column {
	c[i] = v
	return c
}

func (s *sheet) set(i int, v, u float64) {
	s.data[i] = measure.Datum{Value: v, Taken: true}
	s.own[i] = u
}

func (s *sheet) share(name string, sd float64, c column) {
	if sd > 0 {
		s.shared = append(s.shared, measure.Effect{Name: name, SD: sd, Column: c[:]})
	}
}

// shapeDoubt is how far, in crank degrees, the usual shape may be from the real
// one where a lift is turned into an angle: common practice, no source.
const shapeDoubt = 3.0

// gapScatter is how well, in mm, feelers find a clearance: common practice, no
// source.
const gapScatter = 0.03

// liftRows puts in greatest lift, lift at TDC, and the cam on its wheel.
func (s *sheet) liftRows(c Cam, rocker float64) {
	l, r := &s.lobes[c], s.read
	top, rest, wheel, gap := r.InletMaxLift, r.InletLiftAtTDC, r.InletOnWheel, r.InletClearance
	if c == Exhaust {
		top, rest, wheel, gap = r.ExhaustMaxLift, r.ExhaustLiftAtTDC, r.ExhaustOnWheel, r.ExhaustClearance
	}
	check := s.engine.Check
	if r.Check != nil {
		check = *r.Check
	}
	onScale := func(q units.Length) float64 {
		at := check
		at.Lift = q
		return at.reach(rocker)
	}
	scale := onScale(1*units.Millimetre) - onScale(0)
	scatter := math.Hypot(s.opt.Widths.MaxLift.Millimetres(), s.engine.lobe(c).MaxLift.U().Millimetres()*scale)
	s.own[rowMaxLift+int(c)] = scatter
	if top.Taken() && !l.liftAssumed {
		s.set(rowMaxLift+int(c), onScale(top.Value())-l.top, math.Hypot(top.U().Millimetres()*scale, scatter))
	}
	s.own[rowTDCLift+int(c)] = math.Hypot(shapeDoubt, 1)
	if advance, u, ok := s.advanceByLift(c, onScale); rest.Taken() && ok {
		s.set(rowTDCLift+int(c), advance, u)
	}
	if wheel.Taken() {
		s.set(rowWheel+int(c), wheel.Value().AtCrank().Degrees(), max(wheel.U().AtCrank().Degrees(), 1e-3))
	} else {
		s.own[rowWheel+int(c)] = 2
	}
	if gap.Taken() {
		s.set(rowGap+int(c), (gap.Value() - check.Clearance).Millimetres(), max(gap.U().Millimetres(), gapScatter))
	} else {
		s.own[rowGap+int(c)] = gapScatter
	}
	s.own[rowStop] = s.opt.Widths.TDCByStop.Degrees()
}

// advanceByLift turns the lift at the overlap TDC into an advance by the usual
// shape. ok is false where the valve is shut or nearly at full lift there, since
// such a lift says little of the angle.
func (s *sheet) advanceByLift(c Cam, onScale func(units.Length) float64) (advance, u float64, ok bool) {
	l, rest := &s.lobes[c], s.read.InletLiftAtTDC
	if c == Exhaust {
		rest = s.read.ExhaustLiftAtTDC
	}
	lift := onScale(rest.Value())
	if l.liftAssumed || rest.Value().Millimetres() <= 0 || lift < flatLift || lift > 0.9*l.top {
		return 0, 0, false
	}
	x := l.from(lift)
	if c == Inlet {
		advance = l.centre() - x
	} else {
		advance = x + l.centre()
	}
	return advance, math.Hypot(rest.U().Millimetres()/l.rise(lift), shapeDoubt), true
}

// slopeDoubt is the factor either way by which the flanks of a real lobe may be
// steeper or flatter than those of the usual shape: common practice, no source.
const slopeDoubt = 1.7

// openAmounts lists what causes may leave open.
func (s *sheet) openAmounts() {
	w := &s.opt.Widths
	s.effects = make([]effect, amounts)
	put := func(i int, name string, sd, opening float64, c column) {
		s.effects[i] = effect{measure.Effect{Name: name, SD: sd, Column: c[:]}, sidedMask>>i&1 == 1, opening}
	}
	put(markWrong, "TDC", w.TDCWrong.Degrees(), 1, phase(Inlet, Exhaust).set(rowStop, 1))
	wider := column{}
	for c := range Cam(2) {
		l, k := &s.lobes[c], int(c)
		slip := phase(c).set(rowWheel+k, 1)
		if !ownShafts(s.engine.Drive) {
			slip = phase(Inlet, Exhaust).set(rowWheel, 1).set(rowWheel+1, 1)
		}
		put(slipNear+k, c.String()+" slip", w.Slip.Degrees(), 1, slip)
		put(slipFar+k, c.String()+" slip", anywhere, 1, slip)
		// a clearance wider by 1 mm
		gap := column{}.set(rowOpens+2*k, -1/l.openRise).set(rowOpens+2*k+1, 1/l.shutRise)
		wider = wider.plus(gap)
		atTDC := l.rise(max(l.lift(0, 0), flatLift))
		if c == Inlet {
			atTDC = -atTDC
		}
		gapAt := func(at int, rises float64) {
			put(at+k, c.String()+" clearance", w.Clearance.Millimetres(), 1/l.openRise/rises, gap.set(rowTDCLift+k, 1/atTDC).times(1/rises).set(rowMaxLift+k, -1).set(rowGap+k, 1))
		}
		// held up by 1 mm: as a clearance less by as much, but there is no
		// clearance left for feelers, whatever was supposed
		heldAt := func(at int, rises float64) {
			put(at+k, c.String()+" held", w.Held.Millimetres(), 1/l.openRise/rises, gap.set(rowTDCLift+k, 1/atTDC).times(-1/rises))
		}
		gapAt(gapWrong, 1)
		gapAt(gapSteep, 1*slopeDoubt)
		gapAt(gapFlat, 1/slopeDoubt)
		heldAt(heldUp, 1)
		heldAt(heldSteep, 1*slopeDoubt)
		heldAt(heldFlat, 1/slopeDoubt)
		put(longer+k, c.String()+" duration", w.UnknownCam.Degrees(), 0, column{}.set(rowOpens+2*k, 0.5).set(rowOpens+2*k+1, -0.5).set(rowTDCLift+k, sign(c)*0.5))
		put(offset+k, c.String()+" centre", w.UnknownCam.Degrees()/4, 0, phase(c))
		put(shaped+k, c.String()+" follower", w.Follower.Degrees(), 0.5, column{}.set(rowOpens+2*k, 0.5).set(rowOpens+2*k+1, -0.5).set(rowTDCLift+k, sign(c)*0.5))
		// wear at the nose takes lift there; the flanks lose a third as much on the
		// opening side, which carries the spring's force, and a tenth on the other:
		// common practice as to the side, no source for the shares
		put(wornOff+k, c.String()+" wear", w.Worn.Millimetres(), 0, column{}.set(rowMaxLift+k, -1).set(rowOpens+2*k, -0.3/l.openRise).set(rowOpens+2*k+1, 0.1/l.shutRise))
		put(higher+k, c.String()+" lift", 1, 0, column{}.set(rowMaxLift+k, 1))
	}
	put(liftWrong, "check lift", w.Lift.Millimetres(), 1/s.lobes[Inlet].openRise, wider)
}

// sign is +1 for the inlet cam, whose opening lies at overlap, -1 for the
// exhaust cam, whose closing does.
func sign(c Cam) float64 {
	if c == Exhaust {
		return -1
	}
	return 1
}
