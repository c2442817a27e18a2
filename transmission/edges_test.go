package transmission

import (
	"math"
	"testing"

	"example.com/benchbook/units"
)

// Which limit ends the window: the tightest of five, each in turn.
func TestWhichLimit(t *testing.T) {
	for _, c := range []struct {
		b         bounds
		low, high float64
		lower     Limit
		upper     Limit
	}{
		{bounds{torque: 2, contact: 1, bind: 5, hand: 6, travel: 7, thread: 8}, 2, 5, Torque, CoilBind},
		{bounds{torque: 1, contact: 2, bind: 6, hand: 5, travel: 7, thread: 8}, 2, 5, Contact, HandForce},
		{bounds{torque: 1, contact: 2, bind: 6, hand: 7, travel: 5, thread: 8}, 2, 5, Contact, Travel},
		{bounds{torque: 1, contact: 2, bind: 6, hand: 7, travel: 8, thread: 5}, 2, 5, Contact, Thread},
		// of equals the first in the order of the ledger is named
		{bounds{torque: 2, contact: 2, bind: 5, hand: 5, travel: 5, thread: 5}, 2, 5, Torque, CoilBind},
		{bounds{torque: 2, contact: 0, bind: 6, hand: 5, travel: 5, thread: 5}, 2, 5, Torque, HandForce},
		{bounds{torque: 2, contact: 0, bind: 6, hand: 6, travel: 5, thread: 5}, 2, 5, Torque, Travel},
	} {
		low, lower := c.b.low()
		high, upper := c.b.high()
		if low != c.low || high != c.high || lower != c.lower || upper != c.upper || c.b.width() != c.high-c.low {
			t.Errorf("%+v: %v %v to %v %v", c.b, low, lower, high, upper)
		}
	}
}

// A steep screw that would turn back on the nut is refused from a quarter turn of lead
// and friction together; a lead of 45° at a friction of 0.4 is well within.
func TestSteepScrew(t *testing.T) {
	for lead, ok := range map[float64]bool{10: true, 20: true, 23: true, 24: false, 60: false} {
		// mean diameter 3 mm: h = atan(lead/9.42); with atan 0.4 = 21.8° up to 68.2°, a lead of 23.56 mm
		e, err := ScrewEfficiency(units.Millimetres(lead), 3*units.Millimetre, units.Value(0.4))
		if (err == nil) != ok {
			t.Errorf("lead %v mm: %v, %v", lead, e, err)
		}
	}
}

// Loads found by search on a swinging train are those that just meet the limit.
func TestMostForce(t *testing.T) {
	c := demo()
	c.Train = []Element{ReleaseArm(60*units.Millimetre, 10*units.Millimetre, -10*units.Degree, -5*units.Degree)}
	s, err := c.resolve(&Condition{})
	if err != nil {
		t.Fatal(err)
	}
	y := s.lift(&s.v)
	f := s.forceByHand(&s.v, y)
	_, tension := s.walk(&s.v, y, f)
	if got := tension / s.v[leverRatio]; math.Abs(got-130) > 1e-6 {
		t.Errorf("hand force %v at the load found", got)
	}
	f = s.forceByPull(&s.v, y)
	if pull, _ := s.walk(&s.v, y, f); math.Abs(pull-s.v[cablePull]) > 1e-6 {
		t.Errorf("pull %v at the load found", pull)
	}
}
