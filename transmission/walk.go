package transmission

import "math"

// walk follows a lift of y against a load at the plate back to the hand through
// a train whose ratio changes on the way: cable pull taken and tension at the
// lever. Each link stretches, loses its motion, then turns travel and force into
// those at its input.
func (s *state) walk(v *vector, y, force float64) (pull, tension float64) {
	travel := y + v[rodPlay] + v[hubNutBack]*s.hubPitch + v[slack]
	for i := len(s.train) - 1; i >= 0; i-- {
		e := &s.train[i]
		if k := e.Stiffness.NewtonsPerMillimetre(); k > 0 {
			travel += force / k
		}
		travel += e.Lost.Millimetres()
		in, ratio := e.turn(travel)
		travel, force = in, force/(ratio*or(e.Efficiency, 1))
	}
	// a cause may have moved the whole train's ratio
	change := v[trainRatio] / s.fresh[trainRatio]
	travel, force = travel*change, force/change
	tension = force / v[cableEfficiency]
	return travel + v[freePlay] - v[preload] + tension/v[cableStiffness], tension
}

// mostForce is the greatest load at the plate that is still within, by
// bisection; within holds below it. Loads below zero stand for pull that is not
// there.
func (s *state) mostForce(within func(float64) bool) float64 {
	low, high := -1e6, 1e6 // a hundred tonnes either way
	for range 60 {         // to 1e-12 of it
		if mid := (low + high) / 2; within(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

// swing is the geometry of a link whose ratio changes as it turns: an arm driven
// by the cable that drives the rod by a second arm, or by a screw or ramp. The
// zero swing is none.
type swing struct {
	in, inRest   float64 // radius in mm, and its angle at rest from square to the cable, radians
	out, outRest float64 // the same of the arm that drives the rod
	lead         float64 // rod travel per radian, if there is no such arm
}

// steepest is how far from square an arm still works as drawn. Past it the
// figures go on as there, so that limits compare.
const steepest = 80 * math.Pi / 180

// turn returns the input travel that gives an output travel, and the ratio of
// travels there.
func (e *Element) turn(travel float64) (in, ratio float64) {
	w := &e.swing
	if w.in == 0 {
		return travel * e.Ratio, e.Ratio
	}
	angle, rod := travel/w.lead, w.lead
	if w.out > 0 {
		angle, rod = unswing(w.out, w.outRest, travel)
	}
	cable, arm := swung(w.in, w.inRest, angle)
	return cable, arm / rod
}

// swung is the travel of a pin on a radius turned from rest, and its slope.
func swung(radius, rest, angle float64) (travel, slope float64) {
	at := rest + angle
	switch {
	case at > steepest:
		slope = radius * math.Cos(steepest)
		return radius*(math.Sin(steepest)-math.Sin(rest)) + slope*(at-steepest), slope
	case at < -steepest:
		slope = radius * math.Cos(steepest)
		return radius*(-math.Sin(steepest)-math.Sin(rest)) + slope*(at+steepest), slope
	}
	return radius * (math.Sin(at) - math.Sin(rest)), radius * math.Cos(at)
}

// unswing is the angle that gives a travel, and the slope there: the inverse of
// swung.
func unswing(radius, rest, travel float64) (angle, slope float64) {
	at := travel/radius + math.Sin(rest)
	edge := math.Sin(steepest)
	switch {
	case at > edge:
		slope = radius * math.Cos(steepest)
		return steepest - rest + (at-edge)*radius/slope, slope
	case at < -edge:
		slope = radius * math.Cos(steepest)
		return -steepest - rest + (at+edge)*radius/slope, slope
	}
	a := math.Asin(at)
	return a - rest, radius * math.Cos(a)
}
