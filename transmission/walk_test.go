package transmission

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

func faultsOf(err error) (paths []string) {
	for _, f := range fault.Faults(err) {
		paths = append(paths, f.Path)
	}
	return paths
}

// A pin turned past 80° goes on straight, there and back: travel is the integral of
// its slope, and the angle is found again.
func TestPinPastEighty(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		radius := rapid.Float64Range(5, 100).Draw(t, "radius")
		rest := rapid.Float64Range(-80, 80).Draw(t, "rest") * math.Pi / 180
		angle := rapid.Float64Range(-3, 3).Draw(t, "angle")
		const n = 20_000
		sum := 0.0
		for i := range n {
			at := math.Abs(rest + angle*(float64(i)+0.5)/n)
			sum += radius * math.Cos(math.Min(at, 80*math.Pi/180)) * angle / n
		}
		travel, slope := swung(radius, rest, angle)
		if want := radius * math.Cos(math.Min(math.Abs(rest+angle), 80*math.Pi/180)); math.Abs(slope-want) > 1e-9 {
			t.Errorf("slope %v, want %v", slope, want)
		}
		if math.Abs(travel-sum) > 1e-4 { // midpoints across the corner at 80°
			t.Errorf("travel %v, summed %v", travel, sum)
		}
		back, again := unswing(radius, rest, travel)
		// near 80° a travel tells its angle to a sixth of the digits less
		if math.Abs(back-angle) > 1e-9 || math.Abs(again-slope) > 1e-6 {
			t.Errorf("angle %v, was %v; slope %v, was %v", back, angle, again, slope)
		}
	})
}

// A train whose arm swings so little that its ratio is fixed to a millionth is the
// train of fixed ratio: budget and window agree, with play, nut, stretch and loss.
func TestSwingingTrainIsTheFixedOne(t *testing.T) {
	mm := units.Millimetres
	fixed := demo()
	fixed.Train = []Element{
		{Ratio: 6, Efficiency: 0.9, Stiffness: units.NewtonsPerMillimetre(900), Lost: mm(0.1)},
		{Ratio: 1.2, Efficiency: 0.95, Stiffness: units.NewtonsPerMillimetre(4000), Lost: mm(0.05)},
	}
	swinging := fixed
	arm := QuickThread(mm(200), mm(200*2*math.Pi/6), 0) // at lifts of 2 mm it turns by four degrees
	arm.Efficiency, arm.Stiffness, arm.Lost = 0.9, units.NewtonsPerMillimetre(900), mm(0.1)
	swinging.Train = []Element{arm, fixed.Train[1]}
	s, err := swinging.resolve(&Condition{})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "ratio when square", s.fresh[trainRatio], 7.2)
	for _, found := range []Condition{{}, used(), backedOff()} {
		found.RodPlay = measure.Of(mm(0.2), mm(0.05))
		for n := 0.0; n <= 10; n += 0.83 {
			a, err := fixed.At(found, units.Turns(n))
			b, err2 := swinging.At(found, units.Turns(n))
			if err != nil || err2 != nil {
				t.Fatal(err, err2)
			}
			for _, q := range []struct {
				what   string
				a, b   float64
				within float64 // 1 - cos 4° = 0.0024 of the ratio
			}{
				{"lift", a.Lift.Millimetres(), b.Lift.Millimetres(), 0.02},
				{"play", a.PullPlay.Millimetres(), b.PullPlay.Millimetres(), 0.02},
				{"nut", a.PullHubNut.Millimetres(), b.PullHubNut.Millimetres(), 0.02},
				{"stretch", a.PullStretch.Millimetres(), b.PullStretch.Millimetres(), 0.05},
				{"lifting", a.PullLift.Millimetres(), b.PullLift.Millimetres(), 0.05},
				{"tension", a.CableTension.Newtons(), b.CableTension.Newtons(), 5},
				{"hand", a.HandWanted.Newtons(), b.HandWanted.Newtons(), 2},
				{"left", a.PullLeft.Millimetres(), b.PullLeft.Millimetres(), 0.1},
			} {
				if math.Abs(q.a-q.b) > q.within {
					t.Errorf("%v turns, %s: %v fixed, %v swinging", n, q.what, q.a, q.b)
				}
			}
		}
	}
}

// Every link loses its part: a train of two, in the order cable to plate, by hand.
// Plate 1000 N at a ratio of 2, efficiency 0.8: 625 N between; at 5 and 0.5: 250 N.
func TestTrainByHand(t *testing.T) {
	c := demo()
	c.Train = []Element{
		{Ratio: 5, Efficiency: 0.5, Stiffness: units.NewtonsPerMillimetre(100), Lost: units.Millimetres(0.2)},
		{Ratio: 2, Efficiency: 0.8, Stiffness: units.NewtonsPerMillimetre(400), Lost: units.Millimetres(0.3)},
	}
	s, err := c.resolve(&Condition{})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "ratio", s.fresh[trainRatio], 10)
	near(t, "spread of the rate, 3 %", s.freshU[springRate], 0.75)
	near(t, "efficiency", s.efficiency, 0.4)
	near(t, "lost", s.lost, 5*0.2+10*0.3)
	// 625 N on 100 N/mm is 6.25 mm, at the cable 31.25; 1000 N on 400 is 2.5, at the cable 25
	near(t, "stretch of 1000 N", s.stretch*1000, 31.25+25)
}

// The straight clutch that stands for one with a disc spring and an arm that swings
// agrees with it where it was laid: load at both ends of the stroke, pull and tension
// at full lift, in the middle of the window.
func TestStraightWhereItIsLaid(t *testing.T) {
	clutches, laid := anyClutches(), 0
	for i := range 1000 { // of which a few dozen have a window and something to lay straight
		d := clutches.Example(i)
		if i%20 == 0 { // disc springs that leave a window are rarely drawn: one that stiffens
			d.c, d.found = demo(), used()
			d.c.Springs.Rate, d.c.Springs.Law = 0, straightLaw{rate: 15 + float64(i)/100, end: 17, bend: 0.4}
			d.c.New.SpringSet = measure.Of(units.Millimetres(0.3), units.Millimetres(0.1))
			d.found.SpringRate = measure.Of(units.NewtonsPerMillimetre(20), units.NewtonsPerMillimetre(0.4))
		}
		s, err := d.c.resolve(&d.found)
		if err != nil {
			t.Fatal(err)
		}
		b := s.bounds(&s.fresh)
		low, _ := b.low()
		high, _ := b.high()
		if s.law == nil && s.train == nil || !(high > low) {
			continue
		}
		laid++
		line := s.straight(low, high)
		if line.law != nil || line.train != nil {
			t.Fatal("not straight")
		}
		y := s.lift(&s.fresh)
		at := func(s *state, n, y float64) float64 { return s.press(&s.fresh, s.off(&s.fresh)+n*s.pitch+y) }
		near(t, "load at the low end", at(line, low, 0), at(&s, low, 0))
		near(t, "load at the high end, lifted", at(line, high, y), at(&s, high, y))
		near(t, "to solid", line.solid(&line.fresh)-line.off(&line.fresh), s.solid(&s.fresh)-s.off(&s.fresh))
		near(t, "spread of the rate", line.freshU[springRate]/line.fresh[springRate], s.freshU[springRate]/s.fresh[springRate])
		near(t, "rate found", line.v[springRate]/line.fresh[springRate], s.v[springRate]/s.fresh[springRate])
		near(t, "its spread", line.u[springRate]*s.fresh[springRate], s.u[springRate]*line.fresh[springRate])
		if s.train != nil {
			load := at(&s, (low+high)/2, y)
			pull, tension := s.pull(&s.fresh, y, load)
			onLine, tight := line.pull(&line.fresh, y, load)
			near(t, "pull", onLine, pull)
			near(t, "tension", tight, tension)
			none, _ := s.pull(&s.fresh, 0, 0)
			onLine, _ = line.pull(&line.fresh, 0, 0)
			near(t, "pull for nothing", onLine, none)
		}
	}
	if laid < 10 {
		t.Errorf("only %d clutches to lay straight were drawn", laid)
	}
}

// The play adjuster at the rod of a swinging train moves the cable by the ratio there.
func TestPlayAdjusterOfASwingingTrain(t *testing.T) {
	c := demo()
	c.Train = []Element{ReleaseArm(60*units.Millimetre, 10*units.Millimetre, 0, 0)}
	c.Play = PlayAdjuster{Pitch: units.Millimetres(0.2), AtRod: true}
	r, err := c.Region(Condition{})
	if err != nil {
		t.Fatal(err)
	}
	// square at rest the ratio is 6; past 0.5 mm of rod still 6 to a hundredth
	if got := r.PerTurn.Millimetres() / 0.2; math.Abs(got-6) > 0.01 {
		t.Errorf("ratio %v", got)
	}
}
