package crank

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// CrankingOptions are the conditions of a compression test or a kick. What is
// not known well is an interval; its zero value is the default.
type CrankingOptions struct {
	Ambient units.Pressure    // absolute; default 1.01325 bar
	Air     units.Temperature // in the cylinder as the inlet shuts; default 20 °C
	// Index is the polytropic exponent at cranking; default 1.2 to 1.3, low for
	// a cold thick-walled engine turned slowly.
	Index measure.Interval[units.Ratio]
	// Leak is all leaks past rings, valves and gasket as the area of one sharp
	// hole; default 0 to 0.3 mm². A worn engine has several times that.
	Leak measure.Interval[units.Area]
	// Speed is that of the crank over the compression stroke; default 200 to
	// 400 rev/min by kick-starter.
	Speed measure.Interval[units.RotationalSpeed]
}

// Cranking is what a sound engine should show on the gauge and ask of the leg.
// The low figure goes with low index, wide leak and slow turning; the high one
// with the opposites.
type Cranking struct {
	Trapped  Trapped                            `json:"trapped"`
	Absolute measure.Interval[units.Pressure]   `json:"absolute"` // at its greatest
	Gauge    measure.Interval[units.Pressure]   `json:"gauge"`    // above the ambient
	Lost     measure.Interval[units.Ratio]      `json:"lost"`     // part of the charge leaked by then
	Torque   measure.Interval[units.Torque]     `json:"torque"`   // greatest at the crank, from compression alone
	Hardest  measure.Interval[units.CrankAngle] `json:"hardest"`  // before TDC, where that torque is met
	Basis    refdata.Basis                      `json:"basis"`
}

// Cranking returns the pressure a compression gauge should reach on one stroke,
// and the greatest torque to turn the crank over the top, as ranges. From inlet
// closing the charge follows p = p0 [(m/m0)(V0/V)]^n while mass m escapes through
// the leak as through a nozzle with a discharge coefficient of 1, choked above
// 1.89 times the ambient pressure (compressible nozzle flow, from memory); the
// torque is (p - p0) area dx/dth. Derived; the polytropic part as
// [CompressedPressure]. Errors: those of [Cylinder.TrappedAt]; options out of
// range. A gauge with its own volume and valve reads lower on the first stroke.
func (c Cylinder) Cranking(inletCloses units.CrankPosition, opt CrankingOptions) (Cranking, error) {
	trapped, err := c.TrappedAt(inletCloses)
	var l fault.List
	l.Under("", err)
	var basis refdata.Basis
	assume := func(what, value string, s refdata.Status) {
		basis.Assumed = append(basis.Assumed, refdata.Assumption{What: what, Value: value, Status: s})
	}
	if opt.Ambient == 0 {
		opt.Ambient = units.Atmosphere
		assume("ambient pressure", "1.01325 bar", refdata.Standard)
	}
	if opt.Air == 0 {
		opt.Air = units.Celsius(20)
		assume("air as the inlet shuts", "20 °C", refdata.CommonPractice)
	}
	if !opt.Index.Given() {
		opt.Index = measure.Between(units.Value(1.2), units.Value(1.3))
		assume("polytropic index at cranking", "1.2 to 1.3", refdata.CommonPractice)
	}
	if !opt.Leak.Given() {
		opt.Leak = measure.Between(0, units.SquareMillimetres(0.3))
		assume("leak, as a hole", "0 to 0.3 mm²", refdata.CommonPractice)
	}
	if !opt.Speed.Given() {
		opt.Speed = measure.Between(units.RevolutionsPerMinute(200), units.RevolutionsPerMinute(400))
		assume("cranking speed", "200 to 400 rev/min", refdata.CommonPractice)
	}
	above(&l, "ambient", opt.Ambient, "bar, absolute")
	above(&l, "air", opt.Air, "K")
	for _, i := range [...]units.Ratio{opt.Index.Low, opt.Index.High} {
		checkPolytropic(&l, 1, i.Value())
	}
	inOrder(&l, "index", opt.Index)
	inOrder(&l, "leak", opt.Leak)
	inOrder(&l, "speed", opt.Speed)
	above(&l, "speed.low", opt.Speed.Low, "rev/min")
	if !(opt.Leak.Low >= 0) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "leak.low", Unit: "mm²", Rule: "must not be below zero"})
	}
	if err := l.Err(); err != nil {
		return Cranking{}, err
	}
	p0, t0 := opt.Ambient.SI(), opt.Air.SI()
	low := c.squeeze(inletCloses, p0, t0, opt.Index.Low.Value(), opt.Leak.High.SI(), opt.Speed.Low.SI())
	high := c.squeeze(inletCloses, p0, t0, opt.Index.High.Value(), opt.Leak.Low.SI(), opt.Speed.High.SI())
	basis.Sources = []refdata.Source{
		{Title: "slider-crank volume and polytropic compression", Status: refdata.Derived},
		{Title: "compressible nozzle flow", Status: refdata.FromMemory},
	}
	basis.NotChecked = []refdata.Unchecked{
		{What: "friction of bearings, rings and gearbox in the torque", Why: "not computed", Settle: "turn the crank with the plug out and a spring balance on the lever"},
		{What: "throttle and lifter", Why: "taken as wide open and off the valve", Settle: "open the throttle fully and see slack at the lifter"},
	}
	basis.Cautions = []refdata.Caution{refdata.KickBack, refdata.HighTension, refdata.DeferToManual}
	return Cranking{
		Trapped:  trapped,
		Absolute: measure.Between(units.Pascals(low.p), units.Pascals(high.p)),
		Gauge:    measure.Between(units.Pascals(low.p-p0), units.Pascals(high.p-p0)),
		Lost:     measure.Between(units.Value(low.lost), units.Value(high.lost)),
		Torque:   measure.Between(units.NewtonMetres(low.torque), units.NewtonMetres(high.torque)),
		Hardest:  measure.Between(units.FromSI[units.CrankAngle](low.before), units.FromSI[units.CrankAngle](high.before)),
		Basis:    basis,
	}, nil
}

func inOrder[Q units.Quantity](l *fault.List, path string, i measure.Interval[Q]) {
	if !(i.Low <= i.High) || !sane(i.Low) || !sane(i.High) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: path, Rule: "an interval runs from low to high, both finite"})
	}
}

type squeezed struct{ p, lost, torque, before float64 }

// squeeze runs the compression stroke in SI units by fourth-order Runge-Kutta on
// the part of the charge left. Halving the step changes
// no digit anyone reads.
func (c Cylinder) squeeze(from units.CrankPosition, p0, t0, n, leak, w float64) squeezed {
	g, a, vc := c.Slider.geometry(), c.area(), c.Clearance.SI()
	start, end := g.theta(from), 2*math.Pi+g.lead()
	volume := func(th float64) float64 { return vc + a*g.travel(th)/1000 }
	v0 := volume(start)
	m0 := p0 * v0 / (gasConstant * t0)
	pressure := func(th, m float64) float64 { return p0 * math.Pow(max(m, 0)*v0/volume(th), n) }
	rate := func(th, m float64) float64 { // of the part left, per radian
		p := pressure(th, m)
		if !(p > p0) {
			return 0
		}
		t := t0 * p / p0 * volume(th) / (m * v0) // by the gas law
		return -leak * p / math.Sqrt(gasConstant*t) * nozzle(p0/p) / (m0 * w)
	}
	const steps = 120 // about a degree each, which the fourth-order rule makes plenty
	h := (end - start) / steps
	out := squeezed{p: p0}
	m := 1.0
	for i := range steps {
		th := start + float64(i)*h
		k1 := rate(th, m)
		k2 := rate(th+h/2, m+h/2*k1)
		k3 := rate(th+h/2, m+h/2*k2)
		k4 := rate(th+h, m+h*k3)
		m += h / 6 * (k1 + 2*k2 + 2*k3 + k4)
		at := th + h
		p := pressure(at, m)
		if p > out.p {
			out.p, out.lost = p, 1-m
		}
		if t := -(p - p0) * a * g.slopes(at).x1 / 1000; t > out.torque {
			out.torque, out.before = t, end-at
		}
	}
	return out
}

// gasConstant is that of dry air, J/(kg K), to four figures (from memory).
const gasConstant = 287.05

// nozzle is the flow function sqrt(2 k/(k-1) (r^(2/k) - r^((k+1)/k))) of the
// pressure ratio r, at its choked value below 0.528, k = 1.4.
func nozzle(r float64) float64 {
	const k = 1.4
	r = max(r, 0.5282817877171742) // (2/(k+1))^(k/(k-1))
	root := math.Pow(r, 1/k)
	return math.Sqrt(2 * k / (k - 1) * (root*root - r*root))
}
