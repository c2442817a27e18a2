package transmission

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// place is where the nuts stand, in turns from flush.
type place struct {
	figure
	taken bool
}

// place returns where the nuts stand, and notes what cannot be.
func (p *Setting) place(s *state, l *fault.List) place {
	if p.Nuts.Taken() && p.FromTouch.Taken() {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "setting.from_touch", Value: p.FromTouch.Text(), Rule: "give the turns from flush or those from first touch, not both"})
		return place{}
	}
	one := func(path string, r *measure.Reading[units.Angle], from, u float64) place {
		f, taken, err := turned(r)
		f = figure{f.x + from, math.Hypot(f.u, u)}
		switch {
		case !taken:
			return place{}
		case err != nil:
			l.Under(path, err)
		case s.pitch > 0:
			most := math.Min(s.thread, 200)
			if !(f.x >= 0 && f.x <= most) {
				l.Add(outside(path, f.x-from, "turn", -from, most-from))
			}
		}
		return place{f, true}
	}
	if p.FromTouch.Taken() && s.pitch > 0 {
		// counted from flush, what set and wear leave open comes back in
		return one("setting.from_touch", &p.FromTouch, -s.off(&s.v)/s.pitch, math.Hypot(s.u[springSet], s.u[wear])/s.pitch)
	}
	return one("setting.nuts", &p.Nuts, 0, 0)
}
