package transmission

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// anyClutch draws an invented clutch that is sound in itself; its window may be
// wide, narrow, empty or nowhere.
func anyClutch(t *rapid.T) (Clutch, Condition) {
	f := func(name string, low, high float64) float64 { return rapid.Float64Range(low, high).Draw(t, name) }
	free := f("free length", 25, 60)
	c := Clutch{
		Plates: Plates{Driving: rapid.IntRange(2, 8).Draw(t, "driving"), Outer: units.Millimetres(f("outer", 100, 180)),
			Inner: units.Millimetres(f("inner", 60, 95)), Pressure: PressureLaw(rapid.IntRange(0, 1).Draw(t, "law"))},
		Springs: Springs{Count: rapid.IntRange(3, 20).Draw(t, "count"), Rate: units.NewtonsPerMillimetre(f("rate", 3, 40)),
			FreeLength: units.Millimetres(free), Shortest: units.Millimetres(free * f("solid", 0.4, 0.8)), AtFlush: units.Millimetres(free + f("flush", -6, 6))},
		Nuts:  Nuts{Pitch: units.Millimetres(f("pitch", 0.8, 1.5)), Thread: units.Turns(f("thread", 4, 20))},
		Train: []Element{{Ratio: f("arm", 3, 8), Efficiency: f("arm efficiency", 0.7, 1), Stiffness: units.NewtonsPerMillimetre(f("arm stiffness", 200, 5000)), Lost: units.Millimetres(f("arm lost", 0, 0.3))}, {Ratio: f("rod lever", 0.8, 1.5), Stiffness: units.NewtonsPerMillimetre(f("rod stiffness", 500, 20000))}},
		Demand: Demand{EngineTorque: units.NewtonMetres(f("torque", 10, 60)), PrimaryRatio: f("primary", 1.5, 3),
			HandForce: units.Newtons(f("hand", 80, 250))},
	}
	if rapid.IntRange(0, 3).Draw(t, "kind of spring") == 0 {
		d, err := spring.NewDisc(spring.DiscSpec{Outside: units.Millimetres(f("De", 60, 120)), Inside: units.Millimetres(f("Di", 25, 45)),
			Thickness: units.Millimetres(f("t", 1.5, 3)), ConeHeight: units.Millimetres(f("h0", 1, 3.5))})
		if err != nil {
			t.Fatal(err)
		}
		stack, err := spring.NewStack(d, 1, rapid.IntRange(1, 4).Draw(t, "series"))
		if err != nil {
			t.Fatal(err)
		}
		c.Springs.Count, c.Springs.Law, c.Springs.Rate = 1, stack, 0
		c.Springs.FreeLength = stack.Height()
		c.Springs.AtFlush = stack.Height() + units.Millimetres(f("flush", -1.5, 3))
		c.Springs.Shortest = stack.Height().Times(0.2)
	}
	switch rapid.IntRange(0, 9).Draw(t, "kind of arm") {
	case 0:
		c.Train[0] = ReleaseArm(units.Millimetres(f("cable arm", 30, 80)), units.Millimetres(f("rod arm", 8, 16)), units.Degrees(f("cable rest", -40, 20)), units.Degrees(f("rod rest", -40, 20)))
		c.Train[0].Efficiency, c.Train[0].Stiffness = 0.9, units.NewtonsPerMillimetre(800)
	case 1:
		c.Train[0] = QuickThread(units.Millimetres(f("cable arm", 30, 80)), units.Millimetres(f("lead", 20, 80)), units.Degrees(f("cable rest", -40, 20)))
	}
	c.Plates.Driven = c.Plates.Driving + rapid.IntRange(-1, 1).Draw(t, "difference")
	exact := func(name string, low, high float64) measure.Reading[units.Length] {
		return measure.Exact(units.Millimetres(f(name, low, high)))
	}
	return c, Condition{
		Friction: measure.Exact(units.Value(f("friction", 0.05, 0.4))), SpringSet: exact("set", 0, 3), Wear: exact("wear", 0, 3),
		OutOfFlat: exact("out of flat", 0, 1), RodPlay: exact("rod play", 0, 1), HubNutBack: measure.Exact(units.Turns(f("nut", 0, 1))),
		FreePlay: exact("free play", 0, 6), CableStiffness: measure.Exact(units.NewtonsPerMillimetre(f("cable", 20, 300))),
		CableEfficiency: measure.Exact(units.Value(f("drag", 0.5, 0.95))), CablePull: exact("pull", 15, 35), RunOut: exact("run-out", 0, 0.5),
	}
}

// drawn is a clutch as anyClutch draws it.
type drawn struct {
	c     Clutch
	found Condition
}

// anyClutches draws them by number, for tests that want many of them the same each time.
func anyClutches() *rapid.Generator[drawn] {
	return rapid.Custom(func(t *rapid.T) drawn {
		c, found := anyClutch(t)
		return drawn{c, found}
	})
}

// The ends of the window agree with a bisection over the ledgers themselves,
// worked out here from the clutch alone: no formula of the window is used.
func TestWindowAgainstBisection(t *testing.T) { rapid.Check(t, checkWindow) }

func FuzzWindow(f *testing.F) {
	fuzzBytes(f)
	f.Fuzz(rapid.MakeFuzz(checkWindow))
}

func checkWindow(t *rapid.T) {
	c, found := anyClutch(t)
	againstBisection(t, c, found)
}

// The same over ten thousand clutches, a tenth of them under -short, at the play as
// found and with the play adjuster turned to where the region of both adjusters says
// the window just opens, just closes, and half way.
func TestWindowAgainstBisectionTenThousand(t *testing.T) {
	clutches, n := anyClutches(), 10_000
	if testing.Short() {
		n /= 10
	}
	open, both := 0, 0
	for i := range n {
		d := clutches.Example(i)
		againstBisection(t, d.c, d.found)
		if w, _ := d.c.Window(d.found); w.Open() {
			open++
		}
		r, err := d.c.Region(d.found)
		if err != nil {
			t.Fatal(err)
		}
		if r.Reason.Given() {
			continue
		}
		least, most := r.Least.Turns(), r.Most.Turns()
		for _, m := range [...]float64{least - 0.01, least + 0.01, (least + most) / 2} {
			play := r.FreePlay.Millimetres() - m*r.PerTurn.Millimetres()
			if play < 2 || play > 40 || m > most {
				continue
			}
			at := d.found
			at.FreePlay = measure.Exact(units.Millimetres(play))
			againstBisection(t, d.c, at)
			w, _ := d.c.Window(at)
			// at the very edge rounding decides
			if inside := m >= least; inside != w.Open() && math.Abs(w.Width.Turns()) > 1e-6 {
				t.Fatalf("turns %v of %v .. %v: width %v", m, least, most, w.Width.Turns())
			}
			both++
		}
	}
	if both < n/50 {
		t.Errorf("only %d settings of both adjusters", both)
	}
	if t.Logf("%d clutches, %d with an open window, %d settings of both adjusters", n, open, both); open < n/50 || open > n-n/50 {
		t.Error("the clutches drawn are not varied enough to test both kinds")
	}
}

func againstBisection(t rapid.TB, c Clutch, found Condition) {
	w, err := c.Window(found)
	if err != nil {
		t.Fatal(err)
	}
	mm := func(r measure.Reading[units.Length]) float64 { return r.Value().Millimetres() }
	ro, ri := c.Plates.Outer.Millimetres()/2, c.Plates.Inner.Millimetres()/2
	radius := (ro + ri) / 2
	if c.Plates.Pressure == UniformPressure {
		radius = 2.0 / 3 * (ro*ro*ro - ri*ri*ri) / (ro*ro - ri*ri)
	}
	faces := float64(c.Plates.Driving + c.Plates.Driven - 1)
	lift := faces*0.15 + mm(found.OutOfFlat) + mm(found.RunOut)/2
	seat := func(n float64) float64 { // length of a spring's seat, nut to plate
		return c.Springs.AtFlush.Millimetres() + mm(found.Wear) - n*c.Nuts.Pitch.Millimetres()
	}
	load := func(n, y float64) float64 { // of all springs at lift y, in newtons; below zero means slack
		x := units.Millimetres(c.Springs.FreeLength.Millimetres() - mm(found.SpringSet) - (seat(n) - y))
		if c.Springs.Law == nil {
			return float64(c.Springs.Count) * c.Springs.Rate.NewtonsPerMillimetre() * x.Millimetres()
		}
		// past the ends of the rising branch the load goes on straight, as documented
		end := c.Springs.Law.Limit()
		most, _ := c.Springs.Law.Load(end)
		soft, _ := c.Springs.Law.RateAt(0)
		switch {
		case x < 0:
			return soft.NewtonsPerMillimetre() * x.Millimetres()
		case x > end:
			return most.Newtons() * x.Ratio(end)
		}
		f, _ := c.Springs.Law.Load(x)
		return f.Newtons()
	}
	// an arm turned by an angle: travel of a pin, straight on past 80 degrees
	pin := func(radius, rest, angle float64) float64 {
		at, edge := rest+angle, 80*math.Pi/180
		over := at - math.Max(-edge, math.Min(at, edge))
		return radius * (math.Sin(at-over) + over*math.Cos(edge) - math.Sin(rest))
	}
	through := func(e Element, travel float64) (in, ratio float64) {
		w := e.swing
		if w.in == 0 {
			return travel * e.Ratio, e.Ratio
		}
		out := func(angle float64) float64 {
			if w.out == 0 {
				return w.lead * angle
			}
			return pin(w.out, w.outRest, angle)
		}
		low, high := -1e5, 1e5
		for range 64 {
			if mid := (low + high) / 2; out(mid) < travel {
				low = mid
			} else {
				high = mid
			}
		}
		const d = 1e-6 // radians, for the slope
		return pin(w.in, w.inRest, low), (pin(w.in, w.inRest, low+d) - pin(w.in, w.inRest, low-d)) / (out(low+d) - out(low-d))
	}
	arm, rod := c.Train[0], c.Train[1]
	// cable pull that frees the plates, followed from the plate to the hand
	pulled := func(n float64) (need, tension float64) {
		force, travel := load(n, lift), lift+mm(found.RodPlay)+found.HubNutBack.Value().Turns()*1.27
		for _, e := range []Element{rod, arm} {
			if k := e.Stiffness.NewtonsPerMillimetre(); k > 0 {
				travel += force / k
			}
			in, ratio := through(e, travel+e.Lost.Millimetres())
			travel, force = in, force/ratio
			if e.Efficiency > 0 {
				force /= e.Efficiency
			}
		}
		force /= found.CableEfficiency.Value().Value()
		return travel + mm(found.FreePlay) + force/found.CableStiffness.Value().NewtonsPerMillimetre(), force
	}
	root := func(ok func(n float64) bool) float64 { // last n, upward, at which ok still holds
		low, high := -1e5, 1e5
		for range 64 { // to 1e-14 of a turn
			if mid := (low + high) / 2; ok(mid) {
				low = mid
			} else {
				high = mid
			}
		}
		return low
	}
	slips := func(n float64) bool {
		return found.Friction.Value().Value()*faces*load(n, 0)*radius < 1.3*c.Demand.EngineTorque.NewtonMillimetres()*c.Demand.PrimaryRatio
	}
	low := math.Max(root(slips), math.Max(root(func(n float64) bool { return load(n, 0) < 0 }), 0))
	high := c.Nuts.Thread.Turns()
	high = math.Min(high, root(func(n float64) bool { return seat(n)-lift >= c.Springs.Shortest.Millimetres() }))
	if law := c.Springs.Law; law != nil {
		high = math.Min(high, root(func(n float64) bool {
			return c.Springs.FreeLength.Millimetres()-mm(found.SpringSet)-seat(n)+lift <= law.Limit().Millimetres()
		}))
	}
	high = math.Min(high, root(func(n float64) bool { need, _ := pulled(n); return need <= mm(found.CablePull) }))
	high = math.Min(high, root(func(n float64) bool { _, f := pulled(n); return f/2.9 <= c.Demand.HandForce.Newtons() }))
	// a few hundred rounded operations on turns up to 100 000; where arms swing the
	// slope here is a difference quotient good to a millionth or so, on ends of
	// some tens of turns
	tol := 1e-7
	if arm.swing != (swing{}) {
		tol = 1e-5 * math.Max(1, math.Max(math.Abs(low), math.Abs(high)))
	}
	if math.Abs(w.Low.Turns()-low) > tol || math.Abs(w.High.Turns()-high) > tol {
		t.Fatalf("window %.6f .. %.6f, bisection %.6f .. %.6f", w.Low.Turns(), w.High.Turns(), low, high)
	}
	if w.Open() != (high >= low) && math.Abs(high-low) > tol {
		t.Fatalf("open %v with %v .. %v", w.Open(), low, high)
	}
}

// Inside the window the budget at every setting holds, frees and is not heavy;
// outside it fails in at least one way. The pull adds up.
func TestBudgetAgreesWithWindow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, found := anyClutch(t)
		w, err := c.Window(found)
		if err != nil {
			t.Fatal(err)
		}
		n := units.Turns(rapid.Float64Range(0, c.Nuts.Thread.Turns()).Draw(t, "turns"))
		b, err := c.At(found, n)
		if err != nil {
			t.Fatal(err)
		}
		// the ends themselves may fall on either side by rounding
		if edge := math.Min(math.Abs((n - w.Low).Turns()), math.Abs((n - w.High).Turns())); edge < 1e-9 {
			return
		}
		well := !b.ThinMargin && !b.Drags && !b.Heavy && b.Compression > 0
		if inside := n >= w.Low && n <= w.High; inside != well && b.Compression > 0 {
			t.Fatalf("%v in %v .. %v: %s", n, w.Low, w.High, b.Symptoms())
		}
		sum := b.PullFreePlay + b.PullPlay + b.PullHubNut + b.PullStretch + b.PullLift + b.PullLeft
		if b.Lift > 0 && math.Abs((sum-b.Pull).Millimetres()) > 1e-9 {
			t.Fatalf("pull %v, spent %v", b.Pull, sum)
		}
		if b.Lift < 0 || b.Clamp < 0 || b.PullStretch < 0 {
			t.Fatalf("below zero: %+v", b)
		}
	})
}

// Nothing a caller passes panics or gives a figure that is not finite: either
// faults, each with path and rule, or finite ends.
func TestAnyFigures(t *testing.T) {
	wild := rapid.OneOf(rapid.Float64Range(-50, 200), rapid.SampledFrom([]float64{0, math.NaN(), math.Inf(1), math.Inf(-1), 1e300, -1e300, 5e-324}))
	rapid.Check(t, func(t *rapid.T) {
		f := func(name string) float64 { return wild.Draw(t, name) }
		mm := func(name string) measure.Reading[units.Length] {
			return measure.Of(units.Millimetres(f(name)), units.Millimetres(f(name+" u")))
		}
		c := Clutch{
			Plates:  Plates{Faces: int(rapid.Int8().Draw(t, "faces")), Outer: units.Millimetres(f("outer")), Inner: units.Millimetres(f("inner"))},
			Springs: Springs{Count: int(rapid.Int8().Draw(t, "count")), Rate: units.NewtonsPerMillimetre(f("rate")), FreeLength: units.Millimetres(f("free")), Shortest: units.Millimetres(f("shortest")), AtFlush: units.Millimetres(f("flush"))},
			Nuts:    Nuts{Pitch: units.Millimetres(f("pitch")), Thread: units.Turns(f("thread"))},
			Lever:   HandLever{Finger: mm("finger"), Nipple: mm("nipple"), Rest: measure.Of(units.Degrees(f("rest")), units.Degree), Pulled: measure.Of(units.Degrees(f("pulled")), units.Degree)},
			Train:   []Element{{Ratio: f("ratio"), Efficiency: f("efficiency"), Stiffness: units.NewtonsPerMillimetre(f("stiffness")), Lost: units.Millimetres(f("lost"))}},
			Demand:  Demand{EngineTorque: units.NewtonMetres(f("torque")), PrimaryRatio: f("primary"), Margin: f("margin")},
		}
		found := Condition{Friction: measure.Of(units.Value(f("friction")), units.Value(0.01)), Wear: mm("wear"), CablePull: mm("pull")}
		in := Input{Clutch: c, Found: found, Setting: Setting{Nuts: measure.Of(units.Turns(f("turns")), units.Turns(0.1))}}
		a, err := Adjust(in, Options{Draws: 100})
		for _, e := range fault.Faults(err) {
			if e.Path == "" || e.Rule == "" || e.Code == "" {
				t.Fatalf("a fault without path, rule or code: %#v", e)
			}
		}
		if err == nil && (!units.Finite(a.Window.Low) || !units.Finite(a.Window.High) || !units.Finite(a.Low.U())) {
			t.Fatalf("not finite: %+v", a.Window)
		}
	})
}

func TestEveryFaultIsTold(t *testing.T) {
	c := demo()
	c.Springs.Rate, c.Nuts.Pitch, c.Train[0].Ratio = 0, 90*units.Millimetre, -6
	c.Lever.Pulled = measure.Exact(units.Degrees(-10))
	found := Condition{Friction: measure.Of(units.Value(3), units.Value(0.1)), Wear: measure.Of(units.Millimetres(1), units.Millimetres(0))}
	_, err := Adjust(Input{Clutch: c, Found: found, Setting: Setting{Nuts: measure.Exact(units.Turns(-1))}}, Options{Draws: 3})
	want := map[string]fault.Code{
		"clutch.springs.rate": fault.Missing, "clutch.nuts.pitch": fault.OutOfRange, "clutch.train[0].ratio": fault.OutOfRange,
		"clutch.lever.pulled": fault.Conflict, "found.friction": fault.OutOfRange, "found.wear": fault.OutOfRange,
		"setting.nuts": fault.OutOfRange, "options.draws": fault.OutOfRange,
	}
	for _, f := range fault.Faults(err) {
		if want[f.Path] != f.Code {
			t.Errorf("unexpected: %v (%s)", f, f.Code)
		}
		delete(want, f.Path)
	}
	for p := range want {
		t.Errorf("not told: %s", p)
	}
	if _, err := (Clutch{}).Window(Condition{}); errors.Is(err, nil) {
		t.Error("an empty clutch has a window")
	}
}
