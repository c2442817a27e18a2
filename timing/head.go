package timing

import (
	"math"

	"example.com/benchbook/timing/crank"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// LiftCurve gives the lift of a valve along its stem, clearance taken off, with
// its cam as specified, at a camshaft angle after overlap TDC. A cam.Curve of
// readings taken at the valve and counted from there is one.
type LiftCurve interface {
	Lift(at units.CamAngle) (units.Length, error)
}

// Valve is how one valve stands to the piston. The zero value is one of which
// nothing is known.
type Valve struct {
	// ToPiston is how far the shut valve may be pushed along its stem, piston at
	// TDC, until it meets the crown or its pocket. Not taken: the gap to the
	// piston is not worked out.
	ToPiston measure.Reading[units.Length] `json:"to_piston"`
	Tilt     units.Angle                   `json:"tilt"` // of the stem from the bore, 0° to 60°
	Head     units.Length                  `json:"head"` // diameter of the head, for the gap between valves
	// Curve is its lift. Nil: a lobe of usual shape through the events, which
	// needs Lobe.MaxLift.
	Curve LiftCurve `json:"-"`
	// Least is the smallest gap to the piston to work with. Zero: 0.080 in for an
	// inlet, 0.100 in for an exhaust valve, common practice, no source.
	Least units.Length `json:"least,omitempty"`
}

// Head is what must be measured to tell how near the valves come to the piston
// and to each other.
type Head struct {
	Slider  crank.Slider `json:"slider"`
	Inlet   Valve        `json:"inlet"`
	Exhaust Valve        `json:"exhaust"`
	// Between is the gap between the rims of the heads, both valves shut. Not
	// taken: the gap between the valves is not worked out.
	Between measure.Reading[units.Length] `json:"between"`
	// Least is the smallest gap between the valves to work with. Zero: 1.0 mm,
	// common practice, no source.
	Least units.Length `json:"least,omitempty"`
}

func (h *Head) valve(c Cam) *Valve {
	if c == Exhaust {
		return &h.Exhaust
	}
	return &h.Inlet
}

// Room says whether there is room enough.
type Room uint8

// What there is of room, least first.
const (
	RoomUnknown Room = iota
	Touches          // within two standard uncertainties of touching
	Tight            // less than the smallest gap to work with
	Enough
)

// String returns "not known", "touches", "tight" or "enough".
func (r Room) String() string {
	return [...]string{"not known", "touches", "tight", "enough"}[r&3]
}

// MarshalText returns the text of String.
func (r Room) MarshalText() ([]byte, error) { return []byte(r.String()), nil }

// Gap is the least gap over the turn, and where it comes.
type Gap struct {
	// Gap is the least distance; below zero they would overlap by that much.
	Gap   measure.Reading[units.Length] `json:"gap"`
	At    units.CrankPosition           `json:"at"`    // of the crank
	Least units.Length                  `json:"least"` // to work with
	Room  Room                          `json:"room"`
	// NoAnswer says why the gap is not known.
	NoAnswer fault.Reason `json:"no_answer,omitzero"`
}

// Gaps are the three that wrong timing closes.
type Gaps struct {
	Inlet   Gap `json:"inlet"`   // inlet valve to piston
	Exhaust Gap `json:"exhaust"` // exhaust valve to piston
	Valves  Gap `json:"valves"`  // valve to valve
}

// Worst returns the least room of the three, leaving out what is not known;
// RoomUnknown if nothing is.
func (g Gaps) Worst() Room {
	worst := RoomUnknown
	for _, x := range [3]Room{g.Inlet.Room, g.Exhaust.Room, g.Valves.Room} {
		if x != RoomUnknown && (worst == RoomUnknown || x < worst) {
			worst = x
		}
	}
	return worst
}

func (h *Head) check() error {
	var l fault.List
	l.Under("slider", h.Slider.Err())
	for c := range Cam(2) {
		v, name := h.valve(c), c.String()
		if !(v.Tilt >= 0 && v.Tilt <= 60*units.Degree) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: name + ".tilt", Value: v.Tilt.String(), Unit: "°", Rule: "0° to 60°"})
		}
		if l.Under(name+".to_piston", v.ToPiston.Err()); v.ToPiston.Taken() && !(v.ToPiston.Value() >= 0 && v.ToPiston.Value() <= 50*units.Millimetre) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: name + ".to_piston", Value: v.ToPiston.Text(), Unit: "mm", Rule: "0 to 50 mm"})
		}
		if !(v.Head >= 0 && v.Head <= 100*units.Millimetre) || h.Between.Taken() && v.Head == 0 {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: name + ".head", Value: v.Head.String(), Unit: "mm", Rule: "above zero, up to 100 mm, where the gap between valves is given"})
		}
		if !(v.Least >= 0 && v.Least <= 10*units.Millimetre) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: name + ".least", Value: v.Least.String(), Unit: "mm", Rule: "0 to 10 mm"})
		}
	}
	if l.Under("between", h.Between.Err()); h.Between.Taken() && !(h.Between.Value() >= 0 && h.Between.Value() <= 100*units.Millimetre) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "between", Value: h.Between.Text(), Unit: "mm", Rule: "0 to 100 mm"})
	}
	if !(h.Least >= 0 && h.Least <= 10*units.Millimetre) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "least", Value: h.Least.String(), Unit: "mm", Rule: "0 to 10 mm"})
	}
	return l.Err()
}

// Gaps returns how near the valves of an engine come to the piston and to each
// other, with its cams advanced by the shifts given against the specification.
//
// With x the piston's travel from TDC, the gap along the stem of a valve tilted
// by t is c0 + x cos t - lift, c0 the gap of the shut valve at TDC; the pocket is
// taken as parallel to the head. Between the valves, the heads are thin discs
// seen edge on in the plane of both stems, which lean apart at the top, so that
// opening brings the rims together; the gap is the distance between the two
// lines. Both are searched over a whole turn round overlap, every degree and
// then closer. Derived from plain geometry; the uncertainty is that
// of the gap measured and of each shift, to first order. Errors: the faults of
// engine, head and shifts.
func (h Head) Gaps(e Engine, inlet, exhaust measure.Reading[units.CrankAngle]) (Gaps, error) {
	var l fault.List
	e.Head = &h
	l.Under("engine", e.check())
	for c, s := range [2]measure.Reading[units.CrankAngle]{inlet, exhaust} {
		if l.Under(Cam(c).String(), s.Err()); s.Taken() && !(s.Value().Abs() <= 360*units.CrankDegree) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: Cam(c).String(), Value: s.Text(), Unit: "° crank", Rule: "at most 360°"})
		}
	}
	if err := l.Err(); err != nil {
		return Gaps{}, err
	}
	m := newRoomModel(&h, &e)
	return m.gaps(inlet, exhaust), nil
}

// roomModel is a head ready for searching.
type roomModel struct {
	h      *Head
	e      *Engine
	lobes  [2]shape
	travel [2*roomSpan/roomStep + 1]float64 // piston, mm
	tilts  [4]float64                       // sine and cosine of the inlet's, then the exhaust's
}

const (
	roomSpan = 180 // degrees either side of overlap
	roomStep = 3   // a gap has no second dip within six degrees
)

func newRoomModel(h *Head, e *Engine) *roomModel {
	rocker := e.ratioOf()
	m := &roomModel{h: h, e: e, lobes: [2]shape{shapeOf(Inlet, e.Inlet, e.Check, rocker), shapeOf(Exhaust, e.Exhaust, e.Check, rocker)}}
	for i := range m.travel {
		m.travel[i] = m.piston(float64(i*roomStep - roomSpan))
	}
	m.tilts[0], m.tilts[1] = math.Sincos(h.Inlet.Tilt.SI())
	m.tilts[2], m.tilts[3] = math.Sincos(h.Exhaust.Tilt.SI())
	return m
}

func (m *roomModel) piston(at float64) float64 {
	x, err := m.h.Slider.Travel(units.After(units.TDC, units.CrankDegrees(at)))
	if err != nil {
		return math.Inf(1) // a sound slider has no such place
	}
	return x.Millimetres()
}

// known reports whether the lift of a valve is.
func (m *roomModel) known(c Cam) bool { return m.h.valve(c).Curve != nil || !m.lobes[c].liftAssumed }

// lift of a valve at a crank angle after overlap TDC, cam advanced.
func (m *roomModel) lift(c Cam, at, advance float64) float64 {
	if curve := m.h.valve(c).Curve; curve != nil {
		l, err := curve.Lift(units.CrankDegrees(at + advance).AtHalfSpeedCam())
		if err != nil || !units.Finite(l) {
			return math.Inf(1) // not known: as if it hit, so that nothing is recommended
		}
		return max(l.Millimetres(), 0)
	}
	return max(m.lobes[c].lift(at, advance)-m.e.Check.Clearance.Millimetres(), 0)
}

func (m *roomModel) gaps(inlet, exhaust measure.Reading[units.CrankAngle]) Gaps {
	var g Gaps
	shift := [2]measure.Reading[units.CrankAngle]{inlet, exhaust}
	for c, out := range [2]*Gap{&g.Inlet, &g.Exhaust} {
		*out = m.toPiston(Cam(c), shift[c])
	}
	g.Valves = m.between(inlet, exhaust)
	return g
}

var (
	noLift  = fault.Reason{Code: "lift-not-known", Text: "neither a lift curve nor a greatest lift was given"}
	noGap   = fault.Reason{Code: "gap-not-measured", Text: "the gap with the valves shut was not measured"}
	noShift = fault.Reason{Code: "shift-not-known", Text: "how far the cam stands from its place is not known"}
)

func (m *roomModel) toPiston(c Cam, shift measure.Reading[units.CrankAngle]) Gap {
	v := m.h.valve(c)
	out := Gap{Least: v.Least}
	if out.Least == 0 {
		out.Least = units.Inches([2]float64{0.080, 0.100}[c])
	}
	switch {
	case !v.ToPiston.Taken():
		out.NoAnswer = noGap
	case !m.known(c):
		out.NoAnswer = noLift
	case !shift.Taken():
		out.NoAnswer = noShift
	}
	if out.NoAnswer.Given() {
		return out
	}
	cos := math.Cos(v.Tilt.SI())
	free := v.ToPiston.Value().Millimetres()
	search := func(advance float64) (float64, float64) {
		return least(func(at float64, i int, limit float64) float64 {
			x := 0.0
			if i >= 0 {
				x = m.travel[i]
			} else {
				x = m.piston(at)
			}
			gap := free + x*cos
			if gap-m.most(c) > limit { // whatever the lift
				return gap
			}
			return gap - m.lift(c, at, advance)
		})
	}
	advance, u := shift.Value().Degrees(), shift.U().Degrees()
	gap, at := search(advance)
	var slope float64
	if u > 0 {
		more, _ := search(advance + u)
		less, _ := search(advance - u)
		slope = math.Max(math.Abs(more-gap), math.Abs(less-gap))
	}
	return out.judge(gap, math.Hypot(v.ToPiston.U().Millimetres(), slope), at)
}

func (m *roomModel) between(inlet, exhaust measure.Reading[units.CrankAngle]) Gap {
	out := Gap{Least: m.h.Least}
	if out.Least == 0 {
		out.Least = 1 * units.Millimetre
	}
	switch {
	case !m.h.Between.Taken():
		out.NoAnswer = noGap
	case !m.known(Inlet) || !m.known(Exhaust):
		out.NoAnswer = noLift
	case !inlet.Taken() || !exhaust.Taken():
		out.NoAnswer = noShift
	}
	if out.NoAnswer.Given() {
		return out
	}
	shut := m.h.Between.Value().Millimetres()
	search := func(in, ex float64) (float64, float64) {
		return least(func(at float64, _ int, limit float64) float64 {
			a, b := m.lift(Inlet, at, in), m.lift(Exhaust, at, ex)
			if shut-a-b > limit { // each rim moves no further than its valve
				return shut
			}
			return m.rims(shut, a, b)
		})
	}
	in, ex := inlet.Value().Degrees(), exhaust.Value().Degrees()
	gap, at := search(in, ex)
	u := m.h.Between.U().Millimetres()
	for _, d := range [2][2]float64{{inlet.U().Degrees(), 0}, {0, exhaust.U().Degrees()}} {
		if d[0]+d[1] > 0 {
			more, _ := search(in+d[0], ex+d[1])
			less, _ := search(in-d[0], ex-d[1])
			u = math.Hypot(u, math.Max(math.Abs(more-gap), math.Abs(less-gap)))
		}
	}
	return out.judge(gap, u, at)
}

func (g Gap) judge(gap, u, at float64) Gap {
	if math.IsInf(gap, 0) || math.IsNaN(gap+u) {
		g.NoAnswer = noLift
		return g
	}
	if u > 0 {
		g.Gap = measure.Of(units.Millimetres(gap), units.Millimetres(u))
	} else {
		g.Gap = measure.Exact(units.Millimetres(gap))
	}
	g.At = units.After(units.TDC, units.CrankDegrees(math.Round(at*10)/10)) // as near as a disc shows
	switch {
	case gap-2*u <= 0:
		g.Room = Touches
	case gap < g.Least.Millimetres():
		g.Room = Tight
	default:
		g.Room = Enough
	}
	return g
}

// most is a lift that a valve never exceeds, mm.
func (m *roomModel) most(c Cam) float64 {
	if m.h.valve(c).Curve != nil {
		return math.Inf(1)
	}
	return m.lobes[c].top
}

// least searches a whole turn round overlap: every three degrees, then by the
// golden section in the six degrees round the smallest. i is the place in travel, -1
// between places. Where the gap cannot be as small as the limit any larger figure will do.
func least(f func(at float64, i int, limit float64) float64) (value, at float64) {
	value = math.Inf(1)
	limit := f(0, roomSpan/roomStep, value) + 1e-9 // valves come nearest round overlap; a little more for rounding
	for i := 0; i <= 2*roomSpan/roomStep; i++ {
		x := float64(i*roomStep - roomSpan)
		if v := f(x, i, limit); v < value {
			value, at = v, x
			limit = min(limit, v+1e-9)
		}
	}
	const part = 0.6180339887498949 // (sqrt 5 - 1)/2
	lo, hi := at-roomStep, at+roomStep
	a, b := hi-part*(hi-lo), lo+part*(hi-lo)
	fa, fb := f(a, -1, math.Inf(1)), f(b, -1, math.Inf(1))
	for range 25 { // 0.618^25 of six degrees is far below what a disc shows
		if fa < fb {
			hi, b, fb = b, a, fa
			a = hi - part*(hi-lo)
			fa = f(a, -1, math.Inf(1))
		} else {
			lo, a, fa = a, b, fb
			b = lo + part*(hi-lo)
			fb = f(b, -1, math.Inf(1))
		}
	}
	if v := f((lo+hi)/2, -1, math.Inf(1)); v < value {
		value, at = v, (lo+hi)/2
	}
	return value, at
}

type point struct{ x, y float64 }

// rims is the distance between the two heads, seen edge on, below zero if they
// overlap. The inlet valve is on the left; each opens down and inwards.
func (m *roomModel) rims(shut, in, ex float64) float64 {
	si, ci, se, ce := m.tilts[0], m.tilts[1], m.tilts[2], m.tilts[3]
	a := point{-shut/2 + in*si, -in * ci}
	b := point{shut/2 - ex*se, -ex * ce}
	di, de := m.h.Inlet.Head.Millimetres(), m.h.Exhaust.Head.Millimetres()
	// the far rims: inlet head falls away to the lower left of its near rim
	a2 := point{a.x - di*ci, a.y - di*si}
	b2 := point{b.x + de*ce, b.y - de*se}
	if crossed(a, a2, b, b2) {
		return -math.Sqrt(min(toLine(a, b, b2), toLine(b, a, a2)))
	}
	return math.Sqrt(min(toLine(a, b, b2), toLine(a2, b, b2), toLine(b, a, a2), toLine(b2, a, a2)))
}

// toLine is the square of the distance of p from the stretch between a and b.
func toLine(p, a, b point) float64 {
	dx, dy := b.x-a.x, b.y-a.y
	t := 0.0
	if d := dx*dx + dy*dy; d > 0 {
		t = min(max(((p.x-a.x)*dx+(p.y-a.y)*dy)/d, 0), 1)
	}
	x, y := p.x-a.x-t*dx, p.y-a.y-t*dy
	return x*x + y*y
}

// crossed reports whether two stretches cross.
func crossed(a, b, c, d point) bool {
	side := func(p, q, r point) float64 { return (q.x-p.x)*(r.y-p.y) - (q.y-p.y)*(r.x-p.x) }
	return side(a, b, c)*side(a, b, d) < 0 && side(c, d, a)*side(c, d, b) < 0
}
