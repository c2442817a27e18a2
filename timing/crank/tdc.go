package crank

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// StopReadings are what the degree disc showed with the piston against a
// positive stop in the plug hole, or with a dial gauge at one height, on either
// side of TDC. Count them from the disc's own zero, however roughly that was set.
type StopReadings struct {
	Before measure.Position `json:"before"` // reached turning forwards, piston on the way up
	After  measure.Position `json:"after"`  // reached turning backwards
	// Slider, if given, tells the height of the stop and takes out the small
	// error an offset makes. Its zero value is "not known".
	Slider Slider `json:"slider"`
}

// TDC is where true top dead centre lies on a disc.
type TDC struct {
	Disc measure.Position `json:"disc"` // what the disc shows at true TDC
	// Correction is to be added to whatever angle after TDC the disc shows.
	Correction  measure.Reading[units.CrankAngle] `json:"correction"`
	Midpoint    units.CrankPosition               `json:"midpoint"`     // halfway between the readings
	HalfArc     units.CrankAngle                  `json:"half_arc"`     // from the midpoint to either stop
	StopDepth   units.Length                      `json:"stop_depth"`   // piston below TDC at the stop; 0 if no slider was given
	OffsetError units.CrankAngle                  `json:"offset_error"` // of the midpoint, already taken out
	Basis       refdata.Basis                     `json:"basis"`
}

// FindTDC returns true top dead centre from two readings at a positive stop: it
// lies halfway between them on the arc run through from before to after (common
// practice; symmetry of the slider-crank). With an offset e the midpoint is
// atan2(e, D_stop), true TDC atan2(e, D_tdc). The uncertainty is that of a mean of
// two, sqrt(u1^2 + u2^2)/2 (GUM 5.1.2). Errors: a reading missing or bad, the two
// alike, or a bad slider.
func FindTDC(in StopReadings) (TDC, error) {
	var l fault.List
	for _, r := range [...]struct {
		path string
		p    measure.Position
	}{{"before", in.Before}, {"after", in.After}} {
		if !r.p.Taken() {
			l.Add(fault.Fault{Code: fault.Missing, Path: r.path, Unit: "° crank", Rule: "both sides of the stop must be read"})
		}
		l.Under(r.path, r.p.Err())
	}
	hasSlider := in.Slider != Slider{}
	if hasSlider {
		l.Under("slider", in.Slider.Err())
	}
	if err := l.Err(); err != nil {
		return TDC{}, err
	}
	first := in.Before.Value().FromTDC().Degrees()
	arc := turn(in.After.Value().FromTDC().Degrees() - first)
	if arc == 0 {
		return TDC{}, fault.Fault{Code: fault.Conflict, Path: "after", Value: in.After.Text(), Unit: "° crank", Rule: "the two readings must differ: the stop holds the piston on either side of the top"}
	}
	out := TDC{HalfArc: units.CrankDegrees(arc / 2)}
	mid := half(first + arc/2)
	out.Midpoint = units.After(units.TDC, units.CrankDegrees(mid))
	out.Basis.Sources = []refdata.Source{
		{Title: "symmetry of the slider-crank about its dead centre", Status: refdata.Derived},
		{Title: "JCGM 100:2008 (GUM)", Clause: "5.1.2", Status: refdata.FromMemory},
	}
	if hasSlider {
		g := in.Slider.geometry()
		x, offset := g.stop(arc / 2 * math.Pi / 180)
		out.StopDepth, out.OffsetError = units.Millimetres(x), units.FromSI[units.CrankAngle](offset)
	} else {
		out.Basis.Assumed = []refdata.Assumption{{What: "cylinder offset", Value: "none", Status: refdata.CommonPractice}}
	}
	at := half(mid - out.OffsetError.Degrees())
	u := units.CrankDegrees(math.Hypot(in.Before.U().Degrees(), in.After.U().Degrees()) / 2)
	out.Disc = measure.At(units.After(units.TDC, units.CrankDegrees(at)), u)
	out.Correction = measure.Of(units.CrankDegrees(-at), u)
	out.Basis.NotChecked = []refdata.Unchecked{{
		What: "disc centred on the crank", Why: "one pointer cannot tell",
		Settle: "a second pointer half a turn from the first: the mean of both is free of it",
	}}
	out.Basis.Cautions = []refdata.Caution{refdata.ValveMeetsPiston, refdata.DeferToManual}
	return out, nil
}

// stop returns the travel at which half the arc between the two crank positions
// is a, and how far the arc's middle then lies from TDC, in radians. Every a from
// nothing to half a turn has one: a rod that goes round is longer than r + |e|.
func (g geometry) stop(a float64) (x, offset float64) {
	// m = distance of the gudgeon pin from the crank's axis, from l - r to l + r:
	// l^2 = m^2 + r^2 - 2 m r cos a.
	sin, cos := math.Sincos(a)
	m := g.r*cos + math.Sqrt(g.l*g.l-g.r*g.r*sin*sin)
	d := math.Sqrt(max(m*m-g.e*g.e, 0)) // at either end the last bits may differ
	return max(g.top()-d, 0), math.Atan2(g.e, d) - g.lead()
}

// turn brings degrees into 0 to 360.
func turn(x float64) float64 {
	if x = math.Mod(x, 360); x < 0 {
		x += 360
	}
	return x
}

// half brings degrees into -180 to 180.
func half(x float64) float64 {
	if x = turn(x); x > 180 {
		x -= 360
	}
	return x
}

// TopDoubt returns the half-width within which a gauge of the given resolution
// leaves TDC when it is sought as the top of the stroke: sqrt(2 dx/(r (1+lam))),
// lam = r/l, about 1° for 0.01 mm, which is why a stop is used. Derived from the
// travel near TDC. Errors: those of [Slider.Err]; a resolution that is not above
// zero and below the stroke.
func (s Slider) TopDoubt(resolution units.Length) (units.CrankAngle, error) {
	var l fault.List
	l.Under("", s.Err())
	if l.Len() == 0 && !(resolution > 0 && resolution.Millimetres() < s.geometry().stroke()) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "resolution", Value: number(resolution), Unit: "mm", Rule: "above zero and below the stroke"})
	}
	if err := l.Err(); err != nil {
		return 0, err
	}
	g := s.geometry()
	return units.FromSI[units.CrankAngle](math.Sqrt(2 * resolution.Millimetres() / g.slopes(g.lead()).x2)), nil
}

// EccentricDoubt returns the greatest error of a disc reading when the disc's
// centre is off the crank's by a distance, the pointer standing at a radius:
// e/R. It comes and goes once a turn; two pointers half a turn apart cancel it.
// Derived. Errors: a distance below zero, a radius not above it.
func EccentricDoubt(off, pointer units.Length) (units.CrankAngle, error) {
	if !(off >= 0 && off < pointer) || !sane(pointer) {
		return 0, fault.Fault{Code: fault.OutOfRange, Path: "off", Value: number(off), Unit: "mm", Rule: "from zero to less than the radius of the pointer"}
	}
	return units.FromSI[units.CrankAngle](math.Asin(off.Ratio(pointer))), nil
}
