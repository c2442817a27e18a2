package cam

import (
	"cmp"
	"math"
	"slices"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Follower is what rides on the cam, moving along a straight line through its axis,
// or swinging on a lever. The zero Follower is flat. A roller and a foot rounded to
// the same radius move alike.
type Follower struct {
	Radius units.Length `json:"radius"` // of the foot or roller; 0 is flat
	Lever  Lever        `json:"lever"`  // if it swings; its foot must be round
}

// Lever is a pivoted follower.
type Lever struct {
	Pivot units.Length `json:"pivot"` // from the cam's axis to the pivot
	Arm   units.Length `json:"arm"`   // from the pivot to the centre of the foot's radius
	// Output is from the pivot to where the pushrod or valve is pushed; lift is
	// this times the swing. Default: the same as Arm.
	Output units.Length `json:"output"`
	// ToPivot says that the cam's surface under the foot runs towards the pivot;
	// default away from it.
	ToPivot bool `json:"to_pivot"`
}

// Flat returns a follower with a flat foot, square to its line of movement.
func Flat() Follower { return Follower{} }

// Radiused returns a follower with a foot rounded to a radius, its centre on the
// line of movement.
func Radiused(radius units.Length) Follower { return Follower{Radius: radius} }

// Roller returns a follower with a roller of a radius.
func Roller(radius units.Length) Follower { return Follower{Radius: radius} }

// Swinging returns a lever with a round foot.
func Swinging(radius units.Length, l Lever) Follower { return Follower{radius, l} }

func (f Follower) err(path string) error {
	var l fault.List
	if !(f.Radius >= 0) || !sane(f.Radius) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: path + ".radius", Unit: "mm", Rule: "above zero, or zero for a flat foot"})
	}
	if f.Lever != (Lever{}) {
		above(&l, path+".radius", f.Radius, "mm")
		above(&l, path+".lever.pivot", f.Lever.Pivot, "mm")
		above(&l, path+".lever.arm", f.Lever.Arm, "mm")
		positive(&l, path+".lever.output", f.Lever.Output, "mm")
	}
	return l.Err()
}

// pitch is how the centre of a round foot stands to the cam, in mm and radians.
type pitch struct {
	rest float64 // from the axis, on the base circle
	// Of a lever: from axis to pivot, arm, output, and which way it runs.
	a, b, out, sense float64
	swing, side      float64 // at rest: at the pivot, and at the axis from the line to it
}

func (f Follower) pitch(base units.Length) (p pitch, ok bool) {
	p.rest = (base + f.Radius).Millimetres()
	l := f.Lever
	if l == (Lever{}) {
		return p, true
	}
	if l.Output == 0 {
		l.Output = l.Arm
	}
	p.a, p.b, p.out, p.sense = l.Pivot.Millimetres(), l.Arm.Millimetres(), l.Output.Millimetres(), 1
	if l.ToPivot {
		p.sense = -1
	}
	p.swing, p.side, ok = p.triangle(p.rest)
	return p, ok
}

// triangle gives the angles at pivot and axis with the foot's centre r from the axis.
func (p pitch) triangle(r float64) (swing, side float64, ok bool) {
	c := (p.a*p.a + p.b*p.b - r*r) / (2 * p.a * p.b)
	d := (p.a*p.a + r*r - p.b*p.b) / (2 * p.a * r)
	if !(math.Abs(c) < 1 && math.Abs(d) < 1) {
		return 0, 0, false
	}
	return math.Acos(c), math.Acos(d), true
}

// centre is where the foot's centre stands on the cam, as angle and distance with its
// slope by that angle, for a cam angle x with lift s and s'. On a lever the centre
// swings sideways as it lifts, with the rotation or against it.
func (p pitch) centre(x, s, s1 float64) (at, r, r1 float64, ok bool) {
	if p.a == 0 {
		return x, p.rest + s, s1, true
	}
	swing := p.swing + s/p.out
	sin, cos := math.Sincos(swing)
	r = math.Sqrt(p.a*p.a + p.b*p.b - 2*p.a*p.b*cos)
	_, side, ok := p.triangle(r)
	if !ok || !(swing > 0 && swing < math.Pi) {
		return 0, 0, 0, false
	}
	by := p.a * p.b * sin / r * s1 / p.out // dr/dx
	away := p.sense * p.slope(r, side) * by
	if !(away < 1) {
		return 0, 0, 0, false
	}
	return x - p.sense*(side-p.side), r, by / (1 - away), true
}

// slope is the change of the angle at the axis with r.
func (p pitch) slope(r, side float64) float64 {
	return -(1/(2*p.a) - (p.a*p.a-p.b*p.b)/(2*p.a*r*r)) / math.Sin(side)
}

// lift is the way back: the cam angle and lift for the foot's centre at an angle and
// distance.
func (p pitch) lift(at, r float64) (x, s float64, ok bool) {
	if p.a == 0 {
		return at, r - p.rest, true
	}
	swing, side, ok := p.triangle(r)
	return at + p.sense*(side-p.side), p.out * (swing - p.swing), ok
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
// circle given. With s1 and s2 the first and second derivative of lift s by cam
// radian: with a flat foot contact s1 from the axis and radius base + s + s2; with a
// round one of radius R, tan p = s1/(base + R + s), contact R sin p, pitch radius
// ((b+s)^2 + s1^2)^1.5/((b+s)^2 + 2 s1^2 - (b+s) s2), b = base + R, less R (textbook
// form, from memory; the limit for large R is the flat foot's, tested).
// Errors: an angle not finite, a base not above zero, a radius below zero.
func (c *Curve) Contact(at units.CamAngle, f Follower, base units.Length) (Contact, error) {
	var l fault.List
	l.Under("", f.err("follower"))
	if f.Lever != (Lever{}) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "follower.lever", Rule: "contact is worked out for followers that move in a straight line"})
	}
	above(&l, "base", base, "mm")
	m, err := c.Motion(at)
	l.Under("", err)
	if err := l.Err(); err != nil {
		return Contact{}, err
	}
	const perRadian = 180 / math.Pi
	s, s1, s2 := m.Lift.Millimetres(), m.VelocityMMPerDegree*perRadian, m.AccelerationMMPerDegree2*perRadian*perRadian
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
// parallel curve). On a lever the centre is the tip of a triangle of axis, pivot and
// arm, sqrt(A^2 + B^2 - 2 A B cos swing) from the axis, and moves sideways as well
// (derived). The curve is drawn through 1,440 points of the new motion.
//
// No answer where a foot would bridge a hollow flank or a corner sharper than it, or a
// lever cannot reach.
// Errors: a base not above zero, a radius below zero.
func (c *Curve) WithFollower(from, to Follower, base units.Length) (*Curve, fault.Reason, error) {
	if c.none() {
		return nil, fault.Reason{}, noCurve()
	}
	var l fault.List
	l.Under("", from.err("from"))
	l.Under("", to.err("to"))
	above(&l, "base", base, "mm")
	if err := l.Err(); err != nil {
		return nil, fault.Reason{}, err
	}
	const points = 1440
	const perRadian = 180 / math.Pi
	bridges := fault.Reason{Code: "follower-bridges", Text: "this follower cannot touch all of the cam: it bridges a hollow or rides on a corner"}
	beyond := fault.Reason{Code: "lever-too-short", Text: "the lever cannot swing that far on this base circle"}
	rb, r0, r1 := base.Millimetres(), from.Radius.Millimetres(), to.Radius.Millimetres()
	p0, ok0 := from.pitch(base)
	p1, ok1 := to.pitch(base)
	if !ok0 || !ok1 {
		return nil, beyond, nil
	}
	type place struct{ at, lift float64 }
	out := make([]place, 0, points)
	for i := range points {
		x := turnDegrees * float64(i) / points / perRadian
		m := c.motion(x * perRadian)
		s, s1 := m[0], m[1]*perRadian
		// Tangent of the cam: its direction, h from the axis, h' along it.
		dir, h, along := x, rb+s, s1
		if r0 > 0 {
			at, r, slope, ok := p0.centre(x, s, s1)
			if !ok {
				return nil, beyond, nil
			}
			p := math.Atan2(slope, r)
			dir, h, along = at-p, r*math.Cos(p)-r0, r*math.Sin(p)
		}
		at, lift := dir, h-rb
		if r1 > 0 {
			// The centre stands h' on along the tangent, r1 outside it.
			var ok bool
			if at, lift, ok = p1.lift(dir+math.Atan2(along, h+r1), math.Hypot(h+r1, along)); !ok {
				return nil, beyond, nil
			}
		}
		out = append(out, place{at * perRadian, lift})
	}
	for i := range out {
		next := out[(i+1)%points].at
		if i == points-1 {
			next += turnDegrees
		}
		if !(next-out[i].at > 1e-9) {
			return nil, bridges, nil
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
