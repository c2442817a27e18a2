package transmission

import (
	"math"

	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// straighten takes in a spring that is not straight, and returns its rate at no
// load.
func (s *state) straighten(e spring.Element, l *fault.List) float64 {
	rate, ok := e.RateAt(0)
	end := e.Limit()
	force, reached := e.Load(end)
	if !ok || !reached || !(rate > 0) || !(end > 0) || !(force > 0) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "springs.law", Rule: "must push harder the more it is pressed, from no deflection on"})
		return 1
	}
	s.law, s.law0, s.lawEnd, s.lawForce = e, rate.NewtonsPerMillimetre(), end.Millimetres(), force.Newtons()
	return s.law0
}

// press returns the load of all springs pressed together by x. Outside the
// spring's travel it goes on straight, below zero at its first rate and past the
// end at the mean rate to there, so that limits compare; no setting inside the
// window is out there.
func (s *state) press(v *vector, x float64) float64 {
	if s.law == nil {
		return s.count * v[springRate] * x
	}
	stiffer := s.count * v[springRate] / s.law0
	switch {
	case x <= 0:
		return stiffer * s.law0 * x
	case x >= s.lawEnd:
		return stiffer * s.lawForce * x / s.lawEnd
	}
	f, _ := s.law.Load(units.Millimetres(x))
	return stiffer * f.Newtons()
}

// pressed is the compression at which all springs push with force: the inverse
// of press.
func (s *state) pressed(v *vector, force float64) float64 {
	if s.law == nil {
		return force / (s.count * v[springRate])
	}
	one := force * s.law0 / (s.count * v[springRate])
	switch {
	case one <= 0:
		return one / s.law0
	case one >= s.lawForce:
		return one * s.lawEnd / s.lawForce
	}
	x, ok := s.law.Deflection(units.Newtons(one))
	if !ok { // within rounding of the end
		return s.lawEnd
	}
	return x.Millimetres()
}

// solid is the most a spring may be pressed: to its least length, and not past
// the end of its rising branch.
func (s *state) solid(v *vector) float64 {
	x := s.free - v[springSet] - s.shortest
	if s.law != nil {
		x = math.Min(x, s.lawEnd)
	}
	return x
}
