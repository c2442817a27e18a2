package transmission

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// near compares to a few hundred roundings.
func near(t rapid.TB, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-9*math.Max(1, math.Abs(want))) {
		t.Errorf("%s: %v, want %v", what, got, want)
	}
}

// Invented data, derived by hand from the two ledgers: the demo clutch as new, ten
// turns in, which is 12.7 mm of nut: springs 31.3 mm long, pressed by 14.7 mm.
func TestBudgetByHand(t *testing.T) {
	b, err := demo().At(Condition{}, units.Turns(10))
	if err != nil {
		t.Fatal(err)
	}
	printed(t, "spring length, mm", b.SpringLength.Millimetres(), "31.3") // 44 - 12.7
	printed(t, "compression, mm", b.Compression.Millimetres(), "14.7")    // 46 - 31.3
	printed(t, "clamp, N", b.Clamp.Newtons(), "1470")                     // 4 x 25 x 14.7
	printed(t, "torque, N m", b.Torque.NewtonMetres(), "105.8")           // 0.12 x 10 x 60 x 1470 = 105 840 N mm
	printed(t, "margin", b.Margin, "1.718")                               // 105.84/61.6
	// The engine's torque needs 61 600/(0.12 x 10 x 60) = 855.56 N, 8.5556 mm.
	printed(t, "wear left, mm", b.WearLeft.Millimetres(), "6.1444")
	printed(t, "bind, mm", b.LiftBind.Millimetres(), "3.3") // 31.3 - 28
	// pull 22, free play 3, rod play 0.3 x 6 = 1.8: 17.2 mm spare. A newton at the plate
	// takes 1/(100 x 6 x 0.9 x 0.8) = 1/432 mm. Lift (17.2 - 1470/432)/(6 + 100/432) = 2.2141
	printed(t, "travel, mm", b.LiftTravel.Millimetres(), "2.2141")
	printed(t, "lift, mm", b.Lift.Millimetres(), "2.2141")
	printed(t, "free play, mm", b.PullFreePlay.Millimetres(), "3.0")
	printed(t, "play, mm", b.PullPlay.Millimetres(), "1.8")
	printed(t, "nut, mm", b.PullHubNut.Millimetres(), "0.0")
	printed(t, "lifting, mm", b.PullLift.Millimetres(), "13.285") // 6 x 2.2141
	printed(t, "stretch, mm", b.PullStretch.Millimetres(), "3.9153")
	printed(t, "left, mm", b.PullLeft.Millimetres(), "0.0")
	// tension 1691.41/(6 x 0.9 x 0.8) = 391.53 N at the bar; 1650/4.32 = 381.94 at the lift wanted
	printed(t, "tension, N", b.CableTension.Newtons(), "391.53")
	printed(t, "tension at the lift wanted, N", b.TensionWanted.Newtons(), "381.94")
	printed(t, "hand, N", b.HandForce.Newtons(), "135.75") // over 109.6/38
	printed(t, "hand at the lift wanted, N", b.HandWanted.Newtons(), "132.43")
	if b.Slips || b.ThinMargin || b.Drags || !b.Heavy || b.ShortOfBar || b.NoFreePlay {
		t.Errorf("%s", b.Symptoms())
	}
	// two turns more leave 0.76 mm to coil bind: the springs are solid before the bar
	if b, err = demo().At(Condition{}, units.Turns(12)); err != nil {
		t.Fatal(err)
	}
	printed(t, "lift to bind, mm", b.Lift.Millimetres(), "0.76")
	if !b.ShortOfBar || !b.Drags {
		t.Errorf("%s", b.Symptoms())
	}
	near(t, "pull left", b.PullLeft.Millimetres(), 22-3-1.8-6*0.76-(17.24+0.76)*100/432)
}

// The signs turn just where the figures cross: at a limit itself the clutch is well.
func TestSignsAtTheirLimits(t *testing.T) {
	at := func(set func(c *Clutch)) Budget {
		c := demo()
		set(&c)
		b, err := c.At(Condition{}, units.Turns(10))
		if err != nil {
			t.Fatal(err)
		}
		return b
	}
	b := at(func(*Clutch) {})
	// a primary ratio of one and a margin of one, so that the torques are those told
	exactly := func(c *Clutch) { c.Demand.PrimaryRatio, c.Demand.Margin, c.Demand.EngineTorque = 1, 1, b.Torque }
	if b := at(exactly); b.Slips || b.ThinMargin || b.Margin != 1 || b.WearLeft.Abs() > units.Micrometres(0.001) {
		t.Errorf("just as much torque as wanted: %s, margin %v, wear %v", b.Symptoms(), b.Margin, b.WearLeft)
	}
	if b := at(func(c *Clutch) { exactly(c); c.Demand.EngineTorque = c.Demand.EngineTorque.Times(1 + 1e-12) }); !b.Slips || !b.ThinMargin {
		t.Error("a little too little torque is not told")
	}
	if b := at(func(c *Clutch) { c.Demand.HandForce = b.HandWanted }); b.Heavy {
		t.Error("just the hand force that may be asked is heavy")
	}
	if b := at(func(c *Clutch) { c.Demand.FreePlay = 3 * units.Millimetre }); b.NoFreePlay {
		t.Error("just the least play is too little")
	}
	if b := at(func(c *Clutch) { c.Demand.FreePlay = units.Millimetres(3 + 1e-9) }); !b.NoFreePlay {
		t.Error("too little play is not told")
	}
}

// What the budget says of a clutch holds against the clutch itself: worn by WearLeft
// it carries just the engine's torque, the springs are as long as their seat or free,
// and the pull is accounted for to its end.
func TestBudgetAgainstItself(t *testing.T) {
	rapid.Check(t, checkBudget)
}

func FuzzBudget(f *testing.F) {
	fuzzBytes(f)
	f.Fuzz(rapid.MakeFuzz(checkBudget))
}

func checkBudget(t *rapid.T) {
	c, found := anyClutch(t)
	n := rapid.Float64Range(0, c.Nuts.Thread.Turns()).Draw(t, "turns")
	b, err := c.At(found, units.Turns(n))
	if err != nil {
		t.Fatal(err)
	}
	mm := func(r measure.Reading[units.Length]) float64 { return r.Value().Millimetres() }
	seat := c.Springs.AtFlush.Millimetres() + mm(found.Wear) - n*c.Nuts.Pitch.Millimetres()
	free := c.Springs.FreeLength.Millimetres() - mm(found.SpringSet)
	near(t, "spring length", b.SpringLength.Millimetres(), math.Min(seat, free))
	near(t, "compression", b.Compression.Millimetres(), math.Max(free-seat, 0))
	near(t, "hand over tension", b.HandForce.Newtons()*2.9, b.CableTension.Newtons())
	near(t, "margin", b.Margin, b.Torque.NewtonMetres()/b.TorqueEngine.NewtonMetres())
	if law := c.Springs.Law; law == nil {
		near(t, "clamp", b.Clamp.Newtons(), float64(c.Springs.Count)*c.Springs.Rate.NewtonsPerMillimetre()*math.Max(free-seat, 0))
	} else if x := units.Millimetres(free - seat); x > 0 && x < law.Limit() {
		f, _ := law.Load(x)
		near(t, "clamp", b.Clamp.Newtons(), f.Newtons())
	}
	worn := found
	if w := mm(found.Wear) + b.WearLeft.Millimetres(); b.Compression > b.WearLeft && w > -5 && w < 30 {
		worn.Wear = measure.Exact(units.Millimetres(w))
		then, err := c.At(worn, units.Turns(n))
		if err != nil {
			t.Fatal(err)
		}
		// a disc spring's deflection is found by search, to a billionth of its load
		if r := then.Torque.Ratio(then.TorqueEngine); math.Abs(r-1) > 1e-6 {
			t.Errorf("worn by %v it carries %v of the engine's torque", b.WearLeft, r)
		}
	}
	if c.Springs.Law == nil && c.Train[0].swing == (swing{}) && b.Lift > 0 {
		// in order from the plate: rod, arm, cable
		arm, rod := c.Train[0], c.Train[1]
		ratio := arm.Ratio * rod.Ratio
		load := float64(c.Springs.Count) * c.Springs.Rate.NewtonsPerMillimetre() * math.Max(free-seat+b.Lift.Millimetres(), 0)
		atRod := load / rod.Ratio // a rod lever without efficiency told loses nothing
		tension := atRod / (arm.Ratio * arm.Efficiency * found.CableEfficiency.Value().Value())
		near(t, "tension", b.CableTension.Newtons(), tension)
		near(t, "stretch", b.PullStretch.Millimetres(), tension/found.CableStiffness.Value().NewtonsPerMillimetre()+
			arm.Ratio*atRod/arm.Stiffness.NewtonsPerMillimetre()+ratio*load/rod.Stiffness.NewtonsPerMillimetre())
		near(t, "play", b.PullPlay.Millimetres(), ratio*mm(found.RodPlay)+arm.Ratio*arm.Lost.Millimetres())
		near(t, "nut", b.PullHubNut.Millimetres(), ratio*found.HubNutBack.Value().Turns()*1.27)
		near(t, "lifting", b.PullLift.Millimetres(), ratio*b.Lift.Millimetres())
	}
	if b.Lift > 0 {
		near(t, "pull", (b.PullFreePlay + b.PullPlay + b.PullHubNut + b.PullStretch + b.PullLift + b.PullLeft).Millimetres(), mm(found.CablePull))
	}
	if b.ShortOfBar != (b.LiftBind < b.LiftTravel && b.LiftTravel > b.Lift) || b.ShortOfBar != (b.PullLeft > 0) {
		t.Errorf("short of the bar %v: bind %v, travel %v, left %v", b.ShortOfBar, b.LiftBind, b.LiftTravel, b.PullLeft)
	}
}

// Springs that are laid in slack lift free until they touch: with 2 mm of slack and
// pull for 1.5 mm nothing presses, and the lift is the spare pull over the ratio.
func TestSlackSpringsLiftFree(t *testing.T) {
	c := demo()
	c.Springs.AtFlush = 48 * units.Millimetre
	found := Condition{CablePull: measure.Exact(units.Millimetres(3 + 1.8 + 6*1.5))}
	b, err := c.At(found, 0)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "lift", b.LiftTravel.Millimetres(), 1.5)
	if b.Clamp != 0 || b.PullStretch != 0 || b.CableTension != 0 || b.SpringLength != 46*units.Millimetre {
		t.Errorf("%+v", b)
	}
	// and with pull for 3 mm they press for the last of it: (18 - give 100 (-2))/(6 + give 100)
	found.CablePull = measure.Exact(units.Millimetres(3 + 1.8 + 6*3))
	if b, err = c.At(found, 0); err != nil {
		t.Fatal(err)
	}
	const give = 100.0 / 432
	near(t, "lift", b.LiftTravel.Millimetres(), (18+2*give)/(6+give))
}

// A spring by a law that is in truth straight gives the clutch of straight springs,
// at every setting: window, budget and what the causes are weighed on.
func TestStraightLawIsStraight(t *testing.T) {
	line := straightLaw{rate: 25, end: 18}
	for _, f := range []Condition{{}, used(), backedOff()} {
		c := demo()
		want := window(t, c, f)
		c.Springs.Rate, c.Springs.Law = 0, line
		got := window(t, c, f)
		for _, w := range []struct {
			what      string
			got, want units.Angle
		}{{"low", got.Low, want.Low}, {"high", got.High, want.High}, {"torque", got.Torque, want.Torque}, {"travel", got.Travel, want.Travel}, {"hand", got.HandForce, want.HandForce}, {"bind", got.CoilBind, want.CoilBind}} {
			near(t, w.what, w.got.Turns(), w.want.Turns())
		}
		for n := 0.0; n < 11; n += 0.37 {
			straight, err := demo().At(f, units.Turns(n))
			law, err2 := c.At(f, units.Turns(n))
			if err != nil || err2 != nil {
				t.Fatal(err, err2)
			}
			near(t, "clamp", law.Clamp.Newtons(), straight.Clamp.Newtons())
			near(t, "lift", law.Lift.Millimetres(), straight.Lift.Millimetres())
			near(t, "hand force", law.HandForce.Newtons(), straight.HandForce.Newtons())
			near(t, "wear left", law.WearLeft.Millimetres(), straight.WearLeft.Millimetres())
			near(t, "left", law.PullLeft.Millimetres(), straight.PullLeft.Millimetres())
		}
		// springs gone softer by a tenth are a tenth softer either way
		soft := f
		soft.SpringRate = measure.Of(units.NewtonsPerMillimetre(22.5), units.NewtonsPerMillimetre(0.5))
		near(t, "low, softer springs", window(t, c, soft).Low.Turns(), window(t, demo(), soft).Low.Turns())
		near(t, "travel, softer springs", window(t, c, soft).Travel.Turns(), window(t, demo(), soft).Travel.Turns())
	}
}

// straightLaw is a spring by a law that is straight, or bends by so much for each
// millimetre: load (rate + bend x) x.
type straightLaw struct{ rate, end, bend float64 }

func (s straightLaw) Load(x units.Length) (units.Force, bool) {
	mm := x.Millimetres()
	return units.Newtons((s.rate + s.bend*mm) * mm), mm >= 0 && mm <= s.end
}

func (s straightLaw) RateAt(x units.Length) (units.SpringRate, bool) {
	return units.NewtonsPerMillimetre(s.rate + 2*s.bend*x.Millimetres()), true
}

func (s straightLaw) Deflection(f units.Force) (units.Length, bool) {
	n := f.Newtons()
	x := 2 * n / (s.rate + math.Sqrt(s.rate*s.rate+4*s.bend*n))
	return units.Millimetres(x), x >= 0 && x <= s.end
}

func (s straightLaw) Limit() units.Length { return units.Millimetres(s.end) }

func (s straightLaw) Travel() units.Length { return s.Limit() }

var _ spring.Element = straightLaw{}

// A spring by a law that does not push is refused.
func TestLawThatDoesNotPush(t *testing.T) {
	for _, law := range []straightLaw{{0, 10, 0}, {-1, 10, 0}, {5, 0, 0}, {5, -1, 0}, {5, 10, -0.5}, {5, 10, -0.6}} {
		c := demo()
		c.Springs.Law = law
		if _, err := c.Window(Condition{}); err == nil {
			t.Errorf("%+v was taken", law)
		}
	}
}

// Outside its travel a spring by a law goes on straight: below nought at its first
// rate, past the end along the line from nought to there; all springs together, softer
// or stiffer as read.
func TestLawGoesOnStraight(t *testing.T) {
	c := demo()
	c.Springs.Rate, c.Springs.Law = 0, straightLaw{rate: 20, end: 10, bend: 1}
	s, err := c.resolve(&Condition{SpringRate: measure.Of(units.NewtonsPerMillimetre(22), units.NewtonsPerMillimetre(1))})
	if err != nil {
		t.Fatal(err)
	}
	const all = 4 * 1.1 // four, a tenth stiffer
	for _, p := range []struct{ x, one float64 }{{-3, -60}, {-1e-9, -20e-9}, {0, 0}, {4, 96}, {10, 300}, {12, 360}, {20, 600}} {
		near(t, "load", s.press(&s.v, p.x), all*p.one)
		near(t, "back", s.pressed(&s.v, all*p.one), p.x)
	}
	near(t, "solid", s.solid(&s.v), 10) // the end of the rise, before the springs are solid
}

// A train of fixed ratio, followed link by link, takes the pull that the ledger says,
// whatever a cause moves: ratio, slack behind the hub, preload, play.
func TestWalkIsTheLedger(t *testing.T) {
	c := demo()
	c.Train = []Element{
		{Ratio: 6, Efficiency: 0.9, Stiffness: units.NewtonsPerMillimetre(900), Lost: units.Millimetres(0.1)},
		{Ratio: 1.2, Stiffness: units.NewtonsPerMillimetre(4000), Lost: units.Millimetres(0.05)},
	}
	s, err := c.resolve(&Condition{})
	if err != nil {
		t.Fatal(err)
	}
	walked := s
	walked.train = c.Train
	for _, set := range []func(v *vector){
		func(*vector) {},
		func(v *vector) { v[slack] = 0.4 },
		func(v *vector) { v[preload] = 1.5 },
		func(v *vector) { v[hubNutBack], v[rodPlay], v[freePlay] = 0.3, 0.7, 4 },
		func(v *vector) { v[trainRatio] *= 1.3 },
	} {
		v := s.v
		set(&v)
		for _, y := range []float64{0, 1, 2.5} {
			for _, load := range []float64{0, 500, 2000} {
				got, tight := walked.pull(&v, y, load)
				want, tension := s.pull(&v, y, load)
				near(t, "tension", tight, tension)
				if v[trainRatio] == s.v[trainRatio] { // else what the links lose is counted at the ratio as made
					near(t, "pull", got, want)
					a, b := walked.spend(&v, y, load), s.spend(&v, y, load)
					near(t, "play", a.play, b.play)
					near(t, "nut", a.nut, b.nut)
					near(t, "lift", a.lift, b.lift)
					near(t, "stretch", a.stretch, b.stretch)
				}
			}
		}
	}
	v := s.v
	v[trainRatio] *= 1.3
	most, _ := walked.pull(&v, 2, 0)
	none, _ := walked.pull(&v, 1, 0)
	near(t, "a millimetre at another ratio", most-none, 6*1.2*1.3)
}
