package transmission

import (
	"math"

	"example.com/benchbook/units/measure"
)

// elsewhere is the cause that is not listed: most figures are about new, any
// may be far from it, and any sign may be told.
type elsewhere struct{ m *model }

// strays is the chance that, with something unlisted wrong, a given figure is
// far from new: common practice, no source.
const strays = 0.2

// What something unlisted does to the whole clutch, as standard deviations.
const (
	elseTurns  = 2.0 // turns of the nuts
	elseLift   = 0.8 // mm
	elseHand   = 0.4 // of the force
	elseTorque = 0.5 // of the torque tested
)

func (e elsewhere) LogLikelihood(d measure.Data) float64 {
	m := e.m
	total := 0.0
	for p := range nuts + 1 {
		if !d[p].Taken {
			continue
		}
		span := elseTurns
		if p < parts {
			span = rules[p].span
		}
		near := math.Hypot(m.base[p].u, m.own[p])
		a := math.Log(1-strays) + logNormal(d[p].Value, m.base[p].x, near)
		b := math.Log(strays) + logNormal(d[p].Value, m.base[p].x, math.Hypot(near, span))
		top := math.Max(a, b)
		total += top + math.Log(math.Exp(a-top)+math.Exp(b-top))
	}
	for _, t := range m.sights.list[:m.sights.taken] {
		switch {
		case t.side != 0:
			total += math.Log(0.5)
		case t.on == onLift:
			total += logNormal(-t.offset, m.usually[onLift], math.Sqrt(elseLift*elseLift+t.variance))
		case t.on == onHand:
			total += logNormal(-t.offset, m.usually[onHand], math.Sqrt(elseHand*elseHand+t.variance))
		default: // just slipped under a kick test: the clutch may carry anything
			total += logNormal(0, t.offset+t.factor*m.usually[t.on], math.Hypot(1, elseTorque/slipSpread))
		}
	}
	return total
}
