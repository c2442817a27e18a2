package ignition

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// remedies answers every cause that holds at least a twentieth of belief.
func (s *situation) remedies(out Result, list []cause) []Remedy {
	var all []Remedy
	early, known := 0.0, true
	switch {
	case out.Advanced.Read.Taken():
		early = out.Advanced.Early.Value().Degrees()
	case out.Retarded.Read.Taken():
		early = out.Retarded.Early.Value().Degrees()
	default:
		known = false
	}
	back := s.in.Spec.Drive.AtShaft(units.CrankDegrees(-early))
	turn := func(a units.Angle) string {
		switch by := strconv.FormatFloat(math.Abs(a.Degrees()), 'f', 1, 64) + "° of its shaft "; {
		case math.Abs(a.Degrees()) < 0.05:
			return "as it stands"
		case math.Signbit(a.Degrees()):
			return by + "later"
		default:
			return by + "earlier"
		}
	}
	for _, c := range list {
		o, _ := out.Causes.Of(c.key)
		if o.Share < 0.05 || c.key == measure.NothingWrong {
			continue
		}
		r := Remedy{Key: "turn", For: c.key, Gains: o.Share, Work: units.MinutesOfTime(45)}
		switch c.key {
		case "half-turn":
			r.Key, r.Turn = "half-turn", 180*units.Degree
			r.Text = "free the drive and turn the ignition shaft half a turn, then time it on compression at full advance"
		case "slipped":
			r.Turn = back
			r.Text = "free the drive on its taper, clean both faces dry, and set it " + turn(back)
			if !known {
				r.Text = "read full advance, then time it anew"
			}
		case "timed-on-retard", "timed-on-advance":
			r.Turn = s.in.Spec.Drive.AtShaft(units.CrankDegrees(-c.shift))
			r.Text = "time it again with the control on full advance, " + turn(r.Turn)
		case "wrong-rotation":
			r.Key, r.Work = "rotation", units.Hours(4)
			r.Text = "do not start it: fit an instrument, or points plate and advance, made for this rotation"
		case "control-short":
			r.Key, r.Work = "free-control", units.MinutesOfTime(40)
			r.Text = "free and oil the advance control or weights, see both stops reached, then read again"
		case "crank-as-shaft", "shaft-as-crank":
			r.Turn = s.in.Spec.Drive.AtShaft(units.CrankDegrees(-c.shift))
			r.Text = "time it again by the disc on the crank, " + turn(r.Turn)
		case "gap":
			r.Key, r.Work = "gap", units.MinutesOfTime(10)
			r.Text = "set the points gap, then read the timing again before moving anything else"
		case "tdc-mark":
			r.Key, r.Work = "find-tdc", units.MinutesOfTime(15)
			r.Text = "find TDC by a positive stop and mark it anew; do not move the ignition yet"
		default:
			if math.IsNaN(c.shift) {
				r.Key, r.Text, r.Work = "look-further", "take the next readings before moving anything", units.MinutesOfTime(20)
				break
			}
			r.Key = "re-mesh"
			r.Turn = s.in.Spec.Drive.AtShaft(units.CrankDegrees(-c.shift))
			r.Text = "re-mesh the drive, " + turn(r.Turn)
		}
		all = append(all, r)
	}
	slices.SortStableFunc(all, func(a, b Remedy) int {
		if d := cmp.Compare(b.Gains, a.Gains); d != 0 {
			return d
		}
		return cmp.Compare(a.Work, b.Work)
	})
	return all
}
