package drive

import (
	"math"
	"strconv"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Coast is one stretch of a run down in neutral: the time from one speed to a
// lower one.
type Coast struct {
	From units.Speed                 `json:"from"`
	To   units.Speed                 `json:"to"`
	Time measure.Reading[units.Time] `json:"time"`
}

// CoastInput is a run down on a level road in still air, clutch out or gearbox
// in neutral, timed over two or more stretches, best both ways.
type CoastInput struct {
	Mass    measure.Reading[units.Mass] `json:"mass"` // machine and rider
	Runs    []Coast                     `json:"runs"`
	Density units.Density               `json:"density,omitzero"` // of the air; zero: 1.225 kg/m³
}

// CoastOptions sets what is taken for granted.
type CoastOptions struct {
	// Turning is the part by which turning wheels add to the mass that slows
	// down. Zero: 0.04 (from memory). Below zero: none.
	Turning float64
	// SpeedScale is the relative standard uncertainty of the speedometer's
	// scale, common to all readings. Zero: 0.02 (common practice, after
	// correcting it by a timed mile). Below zero: none.
	SpeedScale float64
}

// CoastResult is what a run down says of a machine.
type CoastResult struct {
	DragArea    measure.Reading[units.Area]  `json:"drag_area"`
	Rolling     measure.Reading[units.Ratio] `json:"rolling"`     // resistance over weight, hubs and chain with it
	Correlation float64                      `json:"correlation"` // of the two from the times, near -1: one is bought with the other
	Misses      []units.Time                 `json:"misses"`      // times as read less those of the fit
	ChiSquare   float64                      `json:"chi_square"`
	Freedom     int                          `json:"freedom"`         // stretches less two
	Reason      fault.Reason                 `json:"reason,omitzero"` // "not-a-run-down": no drag and rolling resistance above zero fit
	Basis       refdata.Basis                `json:"basis"`
}

// CoastDown returns drag area and rolling resistance from a timed run down: with
// m' dv/dt = -(a + b v²) the time from v1 to v2 is
// m'/√(ab) [atan(v1 √(b/a)) - atan(v2 √(b/a))], fitted to the times by least
// squares; a = m g cr, b = ρ CdA/2 (derived). Uncertainties are those of the
// times with those of the mass and of the speedometer's scale added in square.
// Errors: fewer than two stretches, readings not taken or not above zero, speeds
// out of order or above 100 m/s, all stretches the same, exact times only.
func CoastDown(in CoastInput, opt CoastOptions) (CoastResult, error) {
	var l fault.List
	checkReading(&l, "mass", in.Mass)
	if len(in.Runs) < 2 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "runs", Value: strconv.Itoa(len(in.Runs)), Rule: "at least two stretches"})
	}
	same := true
	for i, r := range in.Runs {
		at := "runs." + strconv.Itoa(i)
		a, b := positive(&l, at+".from", r.From), notNegative(&l, at+".to", r.To)
		if a && b && !(r.To < r.From && r.From.MetresPerSecond() <= 100) {
			l.Add(fault.Fault{Code: fault.Conflict, Path: at + ".to", Value: r.To.String(), Unit: "mile/h", Rule: "must be below the first speed, which must be below 100 m/s"})
		}
		if checkReading(&l, at+".time", r.Time) && r.Time.U() == 0 {
			l.Add(fault.Fault{Code: fault.Missing, Path: at + ".time", Value: r.Time.String(), Unit: "s", Rule: "must have an uncertainty, such as 12.4 s ± 0.3"})
		}
		same = same && r.From == in.Runs[0].From && r.To == in.Runs[0].To
	}
	if same && len(in.Runs) > 1 {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "runs", Rule: "at least two stretches must differ: one fast, one slow"})
	}
	turning, scale := opt.Turning, opt.SpeedScale
	out := CoastResult{Basis: coastBasis(opt, in.Density == 0)}
	if turning == 0 {
		turning = 0.04
	}
	if scale == 0 {
		scale = 0.02
	}
	turning, scale = max(turning, 0), max(scale, 0)
	within(&l, "turning", turning, 0, 0.5)
	within(&l, "speed_scale", scale, 0, 0.3)
	rho := 1.225
	if in.Density != 0 && positive(&l, "density", in.Density) {
		rho = in.Density.KilogramsPerCubicMetre()
		within(&l, "density", rho, 0.3, 2)
	}
	if err := l.Err(); err != nil {
		return CoastResult{}, err
	}
	m := in.Mass.Value().Kilograms()
	f := fitCoast(in.Runs, m*(1+turning), 1)
	if !f.ok {
		out.Reason = fault.Reason{Code: "not-a-run-down", Text: "no drag and rolling resistance above zero give these times: look for wind, slope, a dragging brake or a wrong time"}
		return out, nil
	}
	area, cr := 2*f.b/rho, f.a/(m*gravity)
	// relative uncertainties: of the fit, of the mass (drag area only: rolling
	// resistance is over weight), and of the speedometer
	ua, ub := f.ua, math.Hypot(f.ub, in.Mass.U().Ratio(in.Mass.Value()))
	hi, lo := fitCoast(in.Runs, m*(1+turning), 1+scale), fitCoast(in.Runs, m*(1+turning), 1-scale)
	if hi.ok && lo.ok {
		ua, ub = math.Hypot(ua, math.Log(hi.a/lo.a)/2), math.Hypot(ub, math.Log(hi.b/lo.b)/2)
	}
	out.DragArea = measure.Of(units.SquareMetres(area), units.SquareMetres(area*ub))
	out.Rolling = measure.Of(units.Value(cr), units.Value(cr*ua))
	out.Correlation, out.ChiSquare, out.Freedom = f.corr, f.chi2, len(in.Runs)-2
	for _, r := range in.Runs {
		fit := coastTime(m*(1+turning), f.a, f.b, r.From.MetresPerSecond(), r.To.MetresPerSecond())
		out.Misses = append(out.Misses, r.Time.Value()-units.Seconds(fit))
	}
	if out.Rolling.Err() != nil || out.DragArea.Err() != nil {
		return CoastResult{}, fault.Fault{Code: fault.OutOfRange, Path: "runs", Rule: "the stretches are too alike to part drag from rolling resistance"}
	}
	return out, nil
}

func coastBasis(opt CoastOptions, still bool) refdata.Basis {
	b := refdata.Basis{
		Sources: []refdata.Source{{Title: "time of a run down against constant and square-law resistance", Status: refdata.Derived}},
		NotChecked: []refdata.Unchecked{
			{What: "slope and wind", Why: "one way was timed, or both together", Settle: "time each stretch both ways and compare"},
			{What: "dragging brakes and dry hubs", Why: "they count as rolling resistance here", Settle: "spin each wheel off the ground"},
		},
		Cautions: []refdata.Caution{refdata.BrakesBeforeRoad, refdata.DeferToManual},
	}
	if opt.Turning == 0 {
		b.Assumed = append(b.Assumed, refdata.Assumption{What: "mass added by turning wheels", Value: "4 %", Status: refdata.FromMemory})
	}
	if opt.SpeedScale == 0 {
		b.Assumed = append(b.Assumed, refdata.Assumption{What: "speedometer, common to all readings", Value: "± 2 %", Status: refdata.CommonPractice})
	}
	if still {
		b.Assumed = append(b.Assumed, refdata.Assumption{What: "density of the air", Value: "1.225 kg/m³, standard atmosphere at sea level", Status: refdata.Standard})
	}
	return b
}

// coastFit holds a in N, b in N s²/m², their relative uncertainties and more.
type coastFit struct {
	a, b, ua, ub, corr, chi2 float64
	ok                       bool
}

// coastTime is the time from v1 to v2 for mass m.
func coastTime(m, a, b, v1, v2 float64) float64 {
	k := math.Sqrt(b / a)
	return m / math.Sqrt(a*b) * (math.Atan(v1*k) - math.Atan(v2*k))
}

// fitCoast fits the logarithms of a and b by Gauss and Newton's steps, halved
// until they help. The speeds read are taken times scale.
func fitCoast(runs []Coast, m, scale float64) coastFit {
	sum := func(p, q float64) float64 {
		s := 0.0
		for _, r := range runs {
			e := (r.Time.Value().Seconds() - coastTime(m, math.Exp(p), math.Exp(q), r.From.MetresPerSecond()*scale, r.To.MetresPerSecond()*scale)) / r.Time.U().Seconds()
			s += e * e
		}
		return s
	}
	// start from typical figures: cr 0.02, CdA 0.5 m²
	p, q := math.Log(m*gravity*0.02), math.Log(0.3)
	best := sum(p, q)
	var pp, pq, qq float64
	for range 100 {
		var gp, gq float64
		pp, pq, qq = 0, 0, 0
		for _, r := range runs {
			v1, v2, u := r.From.MetresPerSecond()*scale, r.To.MetresPerSecond()*scale, r.Time.U().Seconds()
			t := coastTime(m, math.Exp(p), math.Exp(q), v1, v2)
			const h = 1e-5
			dp := (coastTime(m, math.Exp(p+h), math.Exp(q), v1, v2) - coastTime(m, math.Exp(p-h), math.Exp(q), v1, v2)) / (2 * h * u)
			dq := (coastTime(m, math.Exp(p), math.Exp(q+h), v1, v2) - coastTime(m, math.Exp(p), math.Exp(q-h), v1, v2)) / (2 * h * u)
			e := (r.Time.Value().Seconds() - t) / u
			gp, gq = gp+dp*e, gq+dq*e
			pp, pq, qq = pp+dp*dp, pq+dp*dq, qq+dq*dq
		}
		det := pp*qq - pq*pq
		if !(det > 1e-12*pp*qq) {
			return coastFit{}
		}
		sp, sq := (gp*qq-gq*pq)/det, (gq*pp-gp*pq)/det
		tried := func() float64 { return sum(p+sp, q+sq) }
		next := tried()
		for range 20 {
			if next <= best {
				break
			}
			sp, sq = sp/2, sq/2
			next = tried()
		}
		if !(next <= best) {
			break
		}
		p, q, best = p+sp, q+sq, next
		if math.Hypot(sp, sq) < 1e-10 {
			break
		}
		// a thousandth of anything a machine has: the fit is running off to nil
		if p < math.Log(m*gravity*2e-5) || q < math.Log(3e-4) || p > 12 || q > 6 {
			return coastFit{}
		}
	}
	f := coastFit{a: math.Exp(p), b: math.Exp(q), chi2: best, ok: true}
	det := pp*qq - pq*pq
	f.ua, f.ub, f.corr = math.Sqrt(qq/det), math.Sqrt(pp/det), -pq/math.Sqrt(pp*qq)
	return f
}
