package transmission

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// CarryFading returns what the pack carries when the tongues of its plates grip
// in their slots with a coefficient of friction grip, 0 to 0.6: [Capacity.Torque]
// is then less than [Plates.Carry] says, and the pressures are those at the face
// next to the pressure plate. A plate that takes torque on both faces presses its
// tongues sideways, and their friction keeps part of the clamp from the next
// face. With e = mu mu_t Rm/Rt, clamp W in and W' out of it:
//
//	W' = W (1 - e)/(1 + e), and over z faces T = mu Rm W (1 - q^z)/(1 - q), q = (1 - e)/(1 + e)
//
// (statics, derived here; every plate resists at once, the least the pack can
// carry). Rt is the root of the product of the radii at which driving and driven
// plates bear. Notched slots also hold the plates together when they should part,
// which is travel: [Condition].OutOfFlat. Errors: figures missing or outside
// their range.
func (p Plates) CarryFading(friction, grip units.Ratio, clamp units.Force) (Capacity, error) {
	c, err := p.Carry(friction, clamp)
	var l fault.List
	l.Under("", err)
	need(&l, "grip", grip.Value(), "", 0, rules[tongueGrip].high)
	if err := l.Err(); err != nil {
		return Capacity{}, err
	}
	rm := p.radius()
	e := friction.Value() * grip.Value() * rm / p.tongueRadius(rm)
	c.Torque = units.NewtonMillimetres(friction.Value() * rm * fading(float64(c.Faces), e) * clamp.Newtons())
	return c, nil
}

// tongueRadius is where the tongues bear, in mm; mean where nothing is known.
func (p *Plates) tongueRadius(mean float64) float64 {
	of := func(given, ring units.Length) float64 {
		return or(or(given.Millimetres(), ring.Millimetres()), 2*mean) / 2
	}
	return math.Sqrt(of(p.Tongues, p.Outer) * of(p.Splines, p.Inner))
}

// fading is how many faces under the full clamp carry what z faces do under one
// that fades by e at each plate: (1 - q^z)/(1 - q), q = (1 - e)/(1 + e), with
// ln q = -2 artanh e. From e = 1 on nothing passes the first plate.
func fading(z, e float64) float64 {
	switch {
	case e <= 0:
		return z
	case e >= 1:
		return 1
	}
	return -math.Expm1(-2*z*artanh(e)) * (1 + e) / (2 * e)
}

// artanh is math.Atanh, of small figures by its series: to 1e-12 of itself.
func artanh(e float64) float64 {
	if e > 0.02 {
		return math.Atanh(e)
	}
	s := e * e
	return e * (1 + s*(1.0/3+s*(1.0/5+s/7)))
}

// fadingSlope is how fast [fading] changes with e.
func fadingSlope(z, e float64) float64 {
	switch {
	case e >= 1:
		return 0
	case e < 1e-6: // the difference below would lose its digits
		return -z * (z - 1)
	}
	left := math.Exp(-2 * z * artanh(e))
	return z*left/(e*(1-e)) - (1-left)/(2*e*e)
}

// carried is the torque for a newton of clamp, in mm.
func (s *state) carried(v *vector) float64 {
	z := v[faces]
	if g := v[tongueGrip]; g > 0 && s.tongues > 0 {
		z = fading(z, v[friction]*g*s.radius/s.tongues)
	}
	return v[friction] * z * s.radius
}

// hold is what a newton of clamp carries and how that spreads, with what it hangs on:
// most causes and levels leave that as it was at the look before.
type hold struct {
	friction, grip figure
	faces          float64
	per, variance  float64 // torque in mm; variance in parts of its square
}

// take works it out anew where it has to be.
func (h *hold) take(s *state, st *spread) {
	f, g, z := figure{st.mean[friction], st.sd[friction]}, figure{st.mean[tongueGrip], st.sd[tongueGrip]}, st.mean[faces]
	if f != h.friction || g != h.grip || z != h.faces {
		*h = hold{f, g, z, s.carried(&st.mean), s.gripped(&st.mean, &st.sd)}
	}
}

// gripped is the variance, in parts of itself, by which the torque spreads with friction and the
// tongues' grip.
func (s *state) gripped(v, u *vector) float64 {
	mu := u[friction] / v[friction]
	if u[tongueGrip] == 0 && v[tongueGrip] == 0 || s.tongues == 0 || v[faces] <= 0 {
		return mu * mu
	}
	per := v[friction] * s.radius / s.tongues
	e := math.Max(per*v[tongueGrip], 0)
	k := fadingSlope(v[faces], e) / fading(v[faces], e)
	mu *= 1 + e*k
	grip := k * per * u[tongueGrip]
	return mu*mu + grip*grip
}
