package cam

import (
	"cmp"
	"math"
	"slices"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Follower is what rides on the cam, moving along a straight line through its axis.
// The zero Follower is flat. A roller and a tappet with a rounded foot of one radius
// move alike.
type Follower struct {
	Radius units.Length `json:"radius"` // of the foot or roller; 0 is flat
}

// Flat returns a follower with a flat foot, square to its line of movement.
func Flat() Follower { return Follower{} }

// Radiused returns a follower with a foot rounded to a radius, its centre on the
// line of movement.
func Radiused(radius units.Length) Follower { return Follower{radius} }

// Roller returns a follower with a roller of a radius.
func Roller(radius units.Length) Follower { return Follower{radius} }

func (f Follower) err(path string) error {
	if !(f.Radius >= 0) || !sane(f.Radius) {
		return fault.Fault{Code: fault.OutOfRange, Path: path + ".radius", Unit: "mm", Rule: "above zero, or zero for a flat foot"}
	}
	return nil
}

// Contact is where and how a follower touches its cam.
type Contact struct {
	// Offset is how far the line of contact stands from the follower's axis, on
	// the side the cam's surface comes from while it lifts: s' by cam radian for a
	// flat foot, R sin(pressure angle) for a round one. A foot must reach that far.
	Offset   units.Length `json:"offset"`
	Pressure units.Angle  `json:"pressure"` // between the line of movement and the push; 0 for a flat foot
	// Radius is that of the cam's surface there: base + s + s'' for a flat foot.
	// Below zero the surface is hollow; near zero it is a sharp edge.
	Radius units.Length `json:"radius"`
}

// Contact returns where a follower touches the cam whose curve this is, the base
// circle given. With a flat foot s', and rho = base + s + s”; with a round one of
// radius R, tan p = s'/(base + R + s), contact R sin p from the axis, pitch radius
// ((b+s)^2 + s'^2)^1.5/((b+s)^2 + 2 s'^2 - (b+s) s”), b = base + R, less R
// (textbook form, from memory; the limit for large R is the flat foot's, tested).
// Errors: an angle not finite, a base not above zero, a radius below zero.
func (c *Curve) Contact(at units.CamAngle, f Follower, base units.Length) (Contact, error) {
	var l fault.List
	l.Under("", f.err("follower"))
	above(&l, "base", base, "mm")
	m, err := c.Motion(at)
	l.Under("", err)
	if err := l.Err(); err != nil {
		return Contact{}, err
	}
	const perRadian = 180 / math.Pi
	s, s1, s2 := m.Lift.Millimetres(), m.Velocity*perRadian, m.Acceleration*perRadian*perRadian
	if f.Radius == 0 {
		return Contact{Offset: units.Millimetres(s1), Radius: units.Millimetres(base.Millimetres() + s + s2)}, nil
	}
	rf := f.Radius.Millimetres()
	b := base.Millimetres() + rf + s
	p := math.Atan2(s1, b)
	out := Contact{Offset: units.Millimetres(rf * math.Sin(p)), Pressure: units.Radians(p)}
	q := b*b + s1*s1
	if d := q + s1*s1 - b*s2; math.Abs(d) > 1e-12*q {
		out.Radius = units.Millimetres(math.Pow(q, 1.5)/d - rf)
	} else {
		out.Radius = units.Millimetres(math.MaxFloat32) // as good as straight
	}
	return out, nil
}

func above[Q units.Quantity](l *fault.List, path string, v Q, unit string) {
	if !(v.SI() >= tiniest) || !sane(v) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: path, Unit: unit, Rule: "must be finite and above zero"})
	}
}

// WithFollower returns the lift curve the same cam gives another follower. The
// cam's surface follows from the curve, its follower and the base circle: the
// centre of a round foot runs on a curve everywhere R outside the surface, a flat
// foot on the surface's own tangents. Where the centre stands b + s from the axis
// with tan p = s'/(b + s), the tangent lies p back, at (b + s) cos p - R; and the
// other way h + R and h' give place and distance of the centre (derived from the
// parallel curve). The curve is drawn through 1,440 points of the new motion.
//
// No answer where a foot would bridge a hollow flank or a corner sharper than it.
// Errors: a base not above zero, a radius below zero.
func (c *Curve) WithFollower(from, to Follower, base units.Length) (*Curve, fault.Reason, error) {
	var l fault.List
	l.Under("", from.err("from"))
	l.Under("", to.err("to"))
	above(&l, "base", base, "mm")
	if err := l.Err(); err != nil {
		return nil, fault.Reason{}, err
	}
	const points = 1440
	const perRadian = 180 / math.Pi
	rb, r0, r1 := base.Millimetres(), from.Radius.Millimetres(), to.Radius.Millimetres()
	type place struct{ at, lift float64 }
	out := make([]place, 0, points)
	for i := range points {
		x := turnDegrees * float64(i) / points
		m := c.motion(x)
		s, s1 := m[0], m[1]*perRadian
		// Tangent of the cam: its direction and distance h from the axis, h' = along it.
		dir, h, along := x, rb+s, s1
		if r0 > 0 {
			b := rb + r0 + s
			p := math.Atan2(s1, b)
			dir, h, along = x-p*perRadian, b*math.Cos(p)-r0, b*math.Sin(p)
		}
		at, lift := dir, h-rb
		if r1 > 0 {
			// Along the tangent the point of contact, and so the centre, stands h' on.
			d := math.Atan2(along, h+r1)
			at, lift = dir+d*perRadian, math.Hypot(h+r1, along)-rb-r1
		}
		out = append(out, place{at, lift})
	}
	for i := range out {
		next := out[(i+1)%points].at
		if i == points-1 {
			next += turnDegrees
		}
		if !(next-out[i].at > 1e-9) {
			return nil, fault.Reason{Code: "follower-bridges", Text: "this follower cannot touch all of the cam: it bridges a hollow or rides on a corner"}, nil
		}
	}
	// Bring the places into one turn from the first.
	start := out[0].at
	at, lift := make([]float64, points), make([]float64, points)
	slices.SortFunc(out, func(a, b place) int { return cmp.Compare(a.at, b.at) })
	for i, p := range out {
		at[i], lift[i] = p.at-start, p.lift
	}
	return newCurve(c.start+start, at, lift, seconds(at, lift)), fault.Reason{}, nil
}
