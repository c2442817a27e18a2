package timing

import (
	"math"
	"strings"

	"gonum.org/v1/gonum/mathext"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// near returns the readings with each cam brought to the turn nearest to what is
// expected, so that plain differences from it are right.
func (b *bench) near(expect column) measure.Data {
	var q [rows]float64
	var at []int
	for i, d := range b.data {
		if d.Taken {
			at = append(at, i)
		}
	}
	b.residuals(at, &expect, q[:len(at)])
	d := append(measure.Data(nil), b.data...)
	for k, i := range at {
		d[i].Value = expect[i] + q[k]
	}
	return d
}

// explain says what a verdict makes of the readings, by the part that gives most
// to it.
func (b *bench) explain(v *verdict) Explanation {
	e := Explanation{Key: v.key, Text: v.text}
	if v.best == nil {
		return e
	}
	p := v.best
	g, free := b.gaussian(p.mask, p.fixed)
	d := b.near(p.fixed)
	if v.misread >= 0 {
		d[v.misread].Taken = false
		e.Misread = EventName(v.misread).String()
	}
	e.ChiSquared, e.Readings = g.ChiSquared(d)
	e.Tail = 1
	if e.Readings > 0 && e.ChiSquared > 0 {
		e.Tail = mathext.GammaIncRegComp(float64(e.Readings)/2, e.ChiSquared/2)
	}
	late := g.Outlook(rowStop, d)
	e.TDCLate = measure.Of(units.CrankDegrees(late.Mean), units.CrankDegrees(late.SD))

	var shift, spread [2]float64
	for _, a := range v.faults {
		if a.family == reversed {
			shift[a.cams[0]] += wrap(p.fixed[rowOpens+2*int(a.cams[0])])
		}
		if a.family == tooth || a.family == keyway {
			for _, c := range a.cams {
				shift[c] += a.worth * float64(a.steps)
			}
		}
	}
	var notes []string
	say := func(what string, value, u float64) {
		r := measure.Of(units.CrankDegrees(math.Abs(value)), units.CrankDegrees(u))
		side := "early"
		if value < 0 {
			side = "late"
		}
		notes = append(notes, what+r.String()+" "+side)
	}
	for k, i := range free {
		if i != markWrong && !b.blames(v, i) {
			continue // a trifle, counted to what is left of the verdict
		}
		value, u := g.Amount(k, d)
		switch { // the same amount on flanks of another slope
		case i >= heldSteep:
			i = heldUp + i&1
		case i >= gapSteep:
			i = gapWrong + i&1
		}
		switch {
		case i == markWrong: // told by TDCLate
		case i < markWrong || (i == offset || i == offset+1) && !b.isOther(v):
			cams := []Cam{Cam(i & 1)}
			if i < markWrong && !ownShafts(b.engine.Drive) {
				cams = []Cam{Inlet, Exhaust}
			}
			value = wrap(value)
			for _, c := range cams {
				shift[c] += value
				spread[c] = math.Hypot(spread[c], min(u, 104)) // 360/sqrt(12): uniform over a turn
			}
			say("", value, min(u, 104))
		case i < liftWrong:
			gap := measure.Of(units.Millimetres(value), units.Millimetres(u))
			if i == gapWrong {
				e.InletGap = gap
			} else {
				e.ExhaustGap = gap
			}
			side := " too wide"
			if value < 0 {
				side = " too tight"
			}
			notes = append(notes, measure.Of(units.Millimetres(math.Abs(value)), units.Millimetres(u)).String()+side)
		case i >= heldUp:
			what := " of lift gone"
			if i < wornOff {
				what = " off its seat"
			}
			value, u = halfNormal(value, u)
			notes = append(notes, measure.Of(units.Millimetres(value), units.Millimetres(u)).String()+what)
		case i == longer || i == longer+1 || i >= shaped:
			side := " longer"
			if value < 0 {
				side = " shorter"
			}
			notes = append(notes, "open "+measure.Of(units.CrankDegrees(math.Abs(value)), units.CrankDegrees(u)).String()+side)
		case i == liftWrong:
			notes = append(notes, measure.Of(units.Millimetres(value), units.Millimetres(u)).String()+" of lift more")
		}
	}
	for c, at := range [2]*measure.Reading[units.CrankAngle]{&e.Inlet, &e.Exhaust} {
		if spread[c] == 0 {
			*at = measure.Exact(units.CrankDegrees(shift[c]))
		} else {
			*at = measure.Of(units.CrankDegrees(shift[c]), units.CrankDegrees(spread[c]))
		}
	}
	for _, a := range v.faults {
		if a.family == mark {
			r := measure.Of(e.TDCLate.Value().Abs(), e.TDCLate.U())
			side := " late"
			if e.TDCLate.Value() < 0 {
				side = " early"
			}
			notes = append(notes, "mark "+r.String()+side)
		}
	}
	if len(notes) > 0 {
		e.Text += ", " + strings.Join(notes, ", ")
	}
	return e
}

// isOther reports whether a verdict is that of a cam of another pattern, whose
// centre is its own and no shift.
func (b *bench) isOther(v *verdict) bool {
	return len(v.faults) > 0 && v.faults[0].family == otherCam
}

// halfNormal is the mean and spread of a normal amount given that it is above
// zero: the truncated normal's.
func halfNormal(mean, sd float64) (float64, float64) {
	a := -mean / sd
	tail := math.Erfc(a/math.Sqrt2) / 2
	if tail < 1e-12 { // far below zero: as good as none
		return sd * 1e-3, sd
	}
	h := math.Exp(-a*a/2) / math.Sqrt(2*math.Pi) / tail
	return mean + sd*h, sd * math.Sqrt(max(1+a*h-h*h, 1e-6))
}

// blames reports whether a verdict holds a fault that opens an amount: the part
// that gives most to "nothing wrong" may be a slip that is a trifle.
func (b *bench) blames(v *verdict, amount int) bool {
	for _, a := range v.faults {
		for _, w := range a.ways {
			if w.mask>>amount&1 == 1 {
				return true
			}
		}
	}
	return false
}
