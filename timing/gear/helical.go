package gear

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Hand is the hand of a helical wheel's teeth.
type Hand int8

// The hands. A right-hand tooth, the axis upright, rises to the right.
const (
	RightHand Hand = 1
	LeftHand  Hand = -1
)

// Helical is a helical wheel that can be shifted along its spindle by shims.
type Helical struct {
	Teeth  int
	Module units.Length // normal module
	Helix  units.Angle  // at the reference cylinder
	Hand   Hand         // default right
}

func (h Helical) err() error {
	var l fault.List
	checkTeeth(&l, h.Teeth)
	above(&l, "module", h.Module, "mm")
	if !(h.Helix >= units.Degree/10 && h.Helix < 80*units.Degree) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "helix", Unit: "°", Rule: "0.1° to below 80°"})
	}
	if h.Hand < -1 || h.Hand > 1 {
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "hand", Rule: "RightHand or LeftHand"})
	}
	return l.Err()
}

// turn is radians for a shift of a millimetre.
func (h Helical) turn() float64 {
	hand := 1.0
	if h.Hand == LeftHand {
		hand = -1
	}
	return hand * 2 * math.Sin(h.Helix.SI()) / (h.Module.Millimetres() * float64(h.Teeth))
}

// Shifted returns how far the wheel turns when it is moved along its spindle while
// its mate stands still: 2 dz sin b/(m_n z) radians, one tooth for an axial pitch
// pi m_n/sin b (derived; axial pitch as in Jindal, Machine Design, example 26-1).
// Seen from the end the wheel moves towards, with right-hand teeth it turns
// anticlockwise, which is positive; moving the mate the other way does the same.
// Errors: teeth, module or helix out of range; a shift not finite.
func (h Helical) Shifted(by units.Length) (units.Angle, error) {
	err := h.err()
	var l fault.List
	l.Under("", err)
	if !sane(by) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "by", Unit: "mm", Rule: "must be finite"})
	}
	if err := l.Err(); err != nil {
		return 0, err
	}
	return units.Radians(h.turn() * by.Millimetres()), nil
}

// ShimFor returns the shift along the spindle that turns the wheel by an angle, the
// reverse of [Helical.Shifted]. Errors: as there.
func (h Helical) ShimFor(turn units.Angle) (units.Length, error) {
	var l fault.List
	l.Under("", h.err())
	if !sane(turn) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "turn", Unit: "°", Rule: "must be finite"})
	}
	if err := l.Err(); err != nil {
		return 0, err
	}
	return units.Millimetres(turn.SI() / h.turn()), nil
}

// Normal returns the backlash a feeler reads between flanks for one along the pitch
// circle: jt cos an cos b (from memory of ISO 21771; clause not seen). A dial set at
// another radius R reads jt R/r. Errors: angles out of range.
func Normal(circumferential units.Length, pressure, helix units.Angle) (units.Length, error) {
	if !(pressure > 0 && pressure < 45*units.Degree && helix.Abs() < 80*units.Degree && sane(circumferential)) {
		return 0, fault.Fault{Code: fault.OutOfRange, Path: "pressure", Unit: "°", Rule: "a pressure angle of 0° to 45° and a helix below 80°"}
	}
	return circumferential.Times(math.Cos(pressure.SI()) * math.Cos(helix.SI())), nil
}

// Circumferential is the reverse of [Normal].
func Circumferential(normal units.Length, pressure, helix units.Angle) (units.Length, error) {
	c, err := Normal(units.Millimetre, pressure, helix)
	if err != nil || !sane(normal) {
		return 0, fault.Fault{Code: fault.OutOfRange, Path: "pressure", Unit: "°", Rule: "a pressure angle of 0° to 45° and a helix below 80°"}
	}
	return normal.Times(1 / c.Millimetres()), nil
}

// BacklashOpened returns how much the backlash along the pitch circle grows when
// the centres are moved apart by a little: 2 da tan a (first order, from memory).
// Errors: angle out of range.
func BacklashOpened(apart units.Length, working units.Angle) (units.Length, error) {
	if !(working > 0 && working < 45*units.Degree && sane(apart)) {
		return 0, fault.Fault{Code: fault.OutOfRange, Path: "working", Unit: "°", Rule: "a pressure angle of 0° to 45°"}
	}
	return apart.Times(2 * math.Tan(working.SI())), nil
}

// Slack is the play of one mesh.
type Slack struct {
	Backlash measure.Reading[units.Length] // along the pitch circle
	Module   units.Length                  // of the mesh, transverse; with the teeth it gives the pitch radius
}

// LostMotion returns the whole free movement that the backlash of the meshes leaves
// between the first spindle and the last, in degrees of the first, which is the
// crank: the sum over meshes of 2 j/(m z) at the driven wheel, brought to the first
// spindle by the ratio (derived; either wheel of a mesh gives the same). Readings
// taken forwards and backwards differ by it. Give one Slack for each mesh, in order;
// one not read counts as none. Errors: those of [Train.Err]; another number of
// meshes; a backlash below zero; a module not above it.
func (t Train) LostMotion(slack ...Slack) (measure.Reading[units.CrankAngle], error) {
	var none measure.Reading[units.CrankAngle]
	var l fault.List
	l.Under("", t.Err())
	if len(slack) != len(t.pairs) {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "slack", Rule: "one figure for each mesh, in order"})
	}
	for _, s := range slack {
		l.Under("slack.backlash", s.Backlash.Err())
		if s.Backlash.Taken() {
			positive(&l, "slack.backlash", s.Backlash.Value(), "mm")
			above(&l, "slack.module", s.Module, "mm")
		}
	}
	if err := l.Err(); err != nil {
		return none, err
	}
	in := make([]measure.Input, 0, len(slack))
	factor := make([]float64, 0, len(slack))
	for i, s := range slack {
		if !s.Backlash.Taken() {
			continue
		}
		r := s.Module.SI() * float64(t.pairs[i].Driven) / 2
		in = append(in, s.Backlash.SI())
		factor = append(factor, 1/(r*t.ratio(i+1).Abs().Float()))
	}
	return measure.Propagate[units.CrankAngle](func(x []float64) float64 {
		sum := 0.0
		for i, f := range factor {
			sum += x[i] * f
		}
		return sum
	}, in...)
}

func checkTeeth(l *fault.List, z int) {
	if z < 2 || z > mostTeeth {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "teeth", Unit: "teeth", Rule: "a wheel has 2 to 100000 teeth"})
	}
}

func above[Q units.Quantity](l *fault.List, path string, v Q, unit string) {
	if !(v.SI() >= tiniest) || !sane(v) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: path, Unit: unit, Rule: "must be finite and above zero"})
	}
}

func positive[Q units.Quantity](l *fault.List, path string, v Q, unit string) {
	if !(v >= 0) || !sane(v) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: path, Unit: unit, Rule: "must be finite and not below zero"})
	}
}
