package transmission

import (
	"math"
	"strings"
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Every figure is taken at the limits that its doc comment states and refused just
// past them, under its own path.
func TestLimits(t *testing.T) {
	mm, degrees := units.Millimetres, units.Degrees
	reading := func(x float64) measure.Reading[units.Length] { return measure.Of(mm(x), mm(0.1)) }
	swing := func(c *Clutch, f func(e *Element)) {
		c.Train[0] = ReleaseArm(mm(60), mm(12), 0, 0)
		f(&c.Train[0])
	}
	for _, l := range []struct {
		path      string
		low, high float64
		set       func(c *Clutch, found *Condition, x float64)
	}{
		{"plates.faces", 1, 100, func(c *Clutch, _ *Condition, x float64) { c.Plates.Faces = int(math.Round(x)) }},
		{"plates.driven", 1, 50, func(c *Clutch, _ *Condition, x float64) {
			c.Plates.Faces, c.Plates.Driving, c.Plates.Driven = 0, int(math.Round(x)), int(math.Round(x))+1
			if x < 1 {
				c.Plates.Driving, c.Plates.Driven = 0, 2
			}
			if x > 25 {
				c.Plates.Driving, c.Plates.Driven = 5, 6 // there is no upper end but that of the faces
			}
			if x > 50 {
				c.Plates.Driven = 0
			}
		}},
		{"plates.thickness", 0.5, 20, func(c *Clutch, _ *Condition, x float64) { c.Plates.Thickness = mm(x) }},
		{"plates.mean_radius", 5, 500, func(c *Clutch, _ *Condition, x float64) { c.Plates.MeanRadius = mm(x) }},
		{"plates.tongues", 10, 1000, func(c *Clutch, _ *Condition, x float64) { c.Plates.Tongues = mm(x) }},
		{"plates.splines", 10, 1000, func(c *Clutch, _ *Condition, x float64) { c.Plates.Splines = mm(x) }},
		{"plates.outer", 10, 1000, func(c *Clutch, _ *Condition, x float64) { c.Plates.Outer, c.Plates.Inner = mm(x), mm(5) }},
		{"plates.inner", 1, 999, func(c *Clutch, _ *Condition, x float64) {
			c.Plates.Outer, c.Plates.Inner = mm(1000), mm(x)
			if x > 999 {
				c.Plates.Inner = c.Plates.Outer // as large as the outer is no ring
			}
		}},
		{"plates.inserts.count", 1, 500, func(c *Clutch, _ *Condition, x float64) {
			c.Plates.Inserts = Inserts{Count: int(math.Round(x)), Area: units.SquareMillimetres(100), Radius: mm(60)}
		}},
		{"plates.inserts.area", 1, 1e5, func(c *Clutch, _ *Condition, x float64) {
			c.Plates.Inserts = Inserts{Count: 10, Area: units.SquareMillimetres(x), Radius: mm(60)}
		}},
		{"plates.inserts.radius", 5, 500, func(c *Clutch, _ *Condition, x float64) {
			c.Plates.MeanRadius, c.Plates.Inserts = 0, Inserts{Count: 10, Area: units.SquareMillimetres(100), Radius: mm(x)}
		}},
		{"springs.count", 1, 60, func(c *Clutch, _ *Condition, x float64) { c.Springs.Count = int(math.Round(x)) }},
		{"springs.rate", 0.1, 1e5, func(c *Clutch, _ *Condition, x float64) { c.Springs.Rate = units.NewtonsPerMillimetre(x) }},
		{"springs.free_length", 1, 300, func(c *Clutch, _ *Condition, x float64) { c.Springs.FreeLength, c.Springs.Shortest = mm(x), mm(0.5) }},
		{"springs.shortest", 0.1, 45, func(c *Clutch, _ *Condition, x float64) {
			c.Springs.Shortest = mm(x)
			if x > 45 {
				c.Springs.Shortest = c.Springs.FreeLength // as long as when free
			}
		}},
		{"springs.at_flush", 0.5, 400, func(c *Clutch, _ *Condition, x float64) { c.Springs.AtFlush = mm(x) }},
		{"nuts.pitch", 0.2, 5, func(c *Clutch, _ *Condition, x float64) { c.Nuts.Pitch = mm(x) }},
		{"nuts.thread", 0.5, 100, func(c *Clutch, _ *Condition, x float64) { c.Nuts.Thread = units.Turns(x) }},
		{"nuts.circle", 10, 500, func(c *Clutch, _ *Condition, x float64) { c.Nuts.Circle = mm(x) }},
		{"hub_nut.pitch", 0.2, 5, func(c *Clutch, _ *Condition, x float64) { c.HubNut.Pitch = mm(x) }},
		{"play.pitch", 0.2, 5, func(c *Clutch, _ *Condition, x float64) { c.Play.Pitch = mm(x) }},
		{"lever.finger", 20, 300, func(c *Clutch, _ *Condition, x float64) { c.Lever.Finger = reading(x) }},
		{"lever.nipple", 5, 100, func(c *Clutch, _ *Condition, x float64) { c.Lever.Nipple = reading(x) }},
		{"lever.rest", -80, 80, func(c *Clutch, _ *Condition, x float64) {
			c.Lever.Rest, c.Lever.Pulled = measure.Of(degrees(x), degrees(1)), measure.Reading[units.Angle]{}
		}},
		{"lever.pulled", -80, 80, func(c *Clutch, _ *Condition, x float64) {
			c.Lever.Pulled, c.Lever.Rest = measure.Of(degrees(x), degrees(1)), measure.Reading[units.Angle]{}
		}},
		{"train[0].ratio", 0.05, 200, func(c *Clutch, _ *Condition, x float64) { c.Train[0].Ratio = x }},
		{"train[0].efficiency", 0.05, 1, func(c *Clutch, _ *Condition, x float64) { c.Train[0].Efficiency = x }},
		{"train[0].stiffness", 10, 1e9, func(c *Clutch, _ *Condition, x float64) { c.Train[0].Stiffness = units.NewtonsPerMillimetre(x) }},
		{"train[0].lost", 0, 50, func(c *Clutch, _ *Condition, x float64) { c.Train[0].Lost = mm(x) }},
		{"train[0].cable_arm", 3, 300, func(c *Clutch, _ *Condition, x float64) {
			swing(c, func(e *Element) { *e = ReleaseArm(mm(x), mm(12), 0, 0) })
		}},
		{"train[0].cable_rest", -80, 80, func(c *Clutch, _ *Condition, x float64) {
			swing(c, func(e *Element) { *e = ReleaseArm(mm(60), mm(12), degrees(x), 0) })
		}},
		{"train[0].rod_arm", 1, 300, func(c *Clutch, _ *Condition, x float64) {
			swing(c, func(e *Element) { *e = ReleaseArm(mm(60), mm(x), 0, 0) })
		}},
		{"train[0].rod_rest", -80, 80, func(c *Clutch, _ *Condition, x float64) {
			swing(c, func(e *Element) { *e = ReleaseArm(mm(60), mm(12), 0, degrees(x)) })
		}},
		{"train[0].lead", 0.5, 300, func(c *Clutch, _ *Condition, x float64) {
			swing(c, func(e *Element) { *e = QuickThread(mm(60), mm(x), 0) })
		}},
		{"demand.engine_torque", 0.5, 1000, func(c *Clutch, _ *Condition, x float64) { c.Demand.EngineTorque = units.NewtonMetres(x) }},
		{"demand.primary_ratio", 0.2, 10, func(c *Clutch, _ *Condition, x float64) { c.Demand.PrimaryRatio = x }},
		{"demand.margin", 1, 5, func(c *Clutch, _ *Condition, x float64) { c.Demand.Margin = x }},
		{"demand.hand_force", 5, 1000, func(c *Clutch, _ *Condition, x float64) { c.Demand.HandForce = units.Newtons(x) }},
		{"demand.free_play", 0.1, 20, func(c *Clutch, _ *Condition, x float64) { c.Demand.FreePlay = mm(x) }},
		{"demand.face_gap", 0.01, 2, func(c *Clutch, _ *Condition, x float64) { c.Demand.FaceGap = mm(x) }},
		{"demand.width", 0.01, 10, func(c *Clutch, _ *Condition, x float64) { c.Demand.Width = units.Turns(x) }},
		{"found.friction", 0.02, 1, func(_ *Clutch, f *Condition, x float64) { f.Friction = measure.Of(units.Value(x), units.Value(0.01)) }},
		{"found.spring_set", -5, 30, func(_ *Clutch, f *Condition, x float64) { f.SpringSet = reading(x) }},
		{"found.spring_rate", 0.1, 1000, func(_ *Clutch, f *Condition, x float64) {
			f.SpringRate = measure.Of(units.NewtonsPerMillimetre(x), units.NewtonsPerMillimetre(1))
		}},
		{"found.wear", -5, 30, func(_ *Clutch, f *Condition, x float64) { f.Wear = reading(x) }},
		{"found.out_of_flat", 0, 10, func(_ *Clutch, f *Condition, x float64) { f.OutOfFlat = reading(x) }},
		{"found.rod_play", 0, 30, func(_ *Clutch, f *Condition, x float64) { f.RodPlay = reading(x) }},
		{"found.hub_nut_back", 0, 10, func(_ *Clutch, f *Condition, x float64) { f.HubNutBack = measure.Of(units.Turns(x), units.Turns(0.1)) }},
		{"found.free_play", 0, 40, func(_ *Clutch, f *Condition, x float64) { f.FreePlay = reading(x) }},
		{"found.cable_stiffness", 1, 1e4, func(_ *Clutch, f *Condition, x float64) {
			f.CableStiffness = measure.Of(units.NewtonsPerMillimetre(x), units.NewtonsPerMillimetre(1))
		}},
		{"found.cable_efficiency", 0.05, 1, func(_ *Clutch, f *Condition, x float64) {
			f.CableEfficiency = measure.Of(units.Value(x), units.Value(0.01))
		}},
		{"found.cable_pull", 1, 80, func(_ *Clutch, f *Condition, x float64) { f.CablePull = reading(x) }},
		{"found.run_out", 0, 10, func(_ *Clutch, f *Condition, x float64) { f.RunOut = reading(x) }},
		{"found.tongue_grip", 0, 0.6, func(_ *Clutch, f *Condition, x float64) { f.TongueGrip = measure.Of(units.Value(x), units.Value(0.01)) }},
	} {
		atLimits(t, l.path, l.low, l.high, func(x float64) error {
			c, found := demo(), Condition{}
			l.set(&c, &found, x)
			_, err := c.Window(found)
			return err
		})
	}
}

// atLimits asks at both limits and past them: a whole step past those of counts, else
// a millionth.
func atLimits(t *testing.T, path string, low, high float64, ask func(x float64) error) {
	t.Helper()
	step := func(x float64) float64 {
		switch path {
		case "plates.faces", "plates.driven", "plates.inserts.count", "springs.count", "faces":
			return 1
		}
		return 1e-6 * math.Max(math.Abs(x), 1e-3)
	}
	told := func(x float64) (f fault.Fault, is bool) {
		for _, f := range fault.Faults(ask(x)) {
			if f.Path == path {
				return f, true
			}
		}
		return fault.Fault{}, false
	}
	for _, x := range [...]float64{low, high} {
		if f, is := told(x); is {
			t.Errorf("%s of %v refused: %v", path, x, f)
		}
	}
	for _, x := range [...]float64{low - step(low), high + step(high)} {
		if f, is := told(x); !is {
			t.Errorf("%s of %v taken", path, x)
		} else if f.Rule == "" || f.Value == "" && f.Code != fault.Missing {
			t.Errorf("%s of %v: %+v", path, x, f)
		} else if f.Code == fault.OutOfRange && step(x) != 1 && path != "options.draws" {
			// told in the unit the user gave, with both limits
			if !strings.HasPrefix(f.Value, number(x)) || !strings.HasPrefix(f.Rule, "must be from "+number(low)+" to ") || x > high && !strings.Contains(f.Rule, " to "+number(high)) {
				t.Errorf("%s of %v: %s: %s", path, x, f.Value, f.Rule)
			}
		}
	}
}

// Limits of what is asked besides the clutch.
func TestLimitsOfVerdicts(t *testing.T) {
	bend := measure.Of(units.Degrees(90), units.Degrees(5))
	mu := measure.Of(units.Value(0.1), units.Value(0.02))
	kick := func(set func(k *KickTest)) error {
		k := KickTest{Rider: measure.Of(units.Kilograms(80), units.Kilograms(1)), Crank: measure.Of(units.Millimetres(200), units.Millimetres(2)), Ratio: 3}
		set(&k)
		_, err := demo().Kick(k)
		return err
	}
	for _, l := range []struct {
		path      string
		low, high float64
		ask       func(x float64) error
	}{
		{"friction", 0, 0.6, func(x float64) error {
			_, err := CableEfficiency(measure.Of(units.Value(x), units.Value(0.01)), bend)
			return err
		}},
		{"bends", 0, 720, func(x float64) error {
			_, err := CableEfficiency(mu, measure.Of(units.Degrees(x), units.Degree))
			return err
		}},
		{"friction", 0, 0.6, func(x float64) error {
			_, err := ScrewEfficiency(20*units.Millimetre, 20*units.Millimetre, units.Value(x))
			return err
		}},
		{"lead", 0.5, 300, func(x float64) error {
			_, err := ScrewEfficiency(units.Millimetres(x), 200*units.Millimetre, units.Value(0.1))
			return err
		}},
		{"diameter", 3, 200, func(x float64) error {
			_, err := ScrewEfficiency(units.Millimetres(1), units.Millimetres(x), units.Value(0.1))
			return err
		}},
		{"friction", 0.02, 1, func(x float64) error {
			_, err := demo().Plates.Carry(units.Value(x), units.Newtons(1000))
			return err
		}},
		{"clamp", 1, 1e6, func(x float64) error {
			_, err := demo().Plates.Carry(units.Value(0.1), units.Newtons(x))
			return err
		}},
		{"peak", 1, 1e5, func(x float64) error {
			_, err := Plates{Faces: 2, Outer: 100 * units.Millimetre, Inner: 60 * units.Millimetre}.ClampFor(units.Kilopascals(x))
			return err
		}},
		{"torque", 1e-3, 1e6, func(x float64) error {
			_, err := RingFor(units.NewtonMetres(x), units.Value(0.1), units.Kilopascals(100), 2, 0.5, UniformWear)
			return err
		}},
		{"friction", 0.02, 1, func(x float64) error {
			_, err := RingFor(units.NewtonMetres(10), units.Value(x), units.Kilopascals(100), 2, 0.5, UniformWear)
			return err
		}},
		{"faces", 1, 100, func(x float64) error {
			_, err := RingFor(units.NewtonMetres(10), units.Value(0.1), units.Kilopascals(100), int(math.Round(x)), 0.5, UniformWear)
			return err
		}},
		{"inner_to_outer", 0.1, 0.98, func(x float64) error {
			_, err := RingFor(units.NewtonMetres(10), units.Value(0.1), units.Kilopascals(100), 2, x, UniformWear)
			return err
		}},
		{"torque", 1e-3, 1e6, func(x float64) error {
			_, err := demo().Plates.FacesFor(units.NewtonMetres(x), units.Value(0.1), units.Newtons(1000))
			return err
		}},
		{"options.draws", 100, 1e6, func(x float64) error {
			past := math.Copysign(0.5, x-1000) // a draw too few or too many
			if x == 100 || x == 1e6 {
				past = 0
			}
			in := Input{Clutch: demo(), Found: Condition{Friction: measure.Of(units.Value(5), units.Value(1))}} // refused, so nothing is drawn
			_, err := Adjust(in, Options{Draws: int(math.Round(x + past))})
			return err
		}},
		{"options.two_at_once", 0.001, 0.5, func(x float64) error {
			_, err := Diagnose(Input{Clutch: demo()}, Options{TwoAtOnce: x})
			return err
		}},
		{"test.rider", 20, 200, func(x float64) error {
			return kick(func(k *KickTest) { k.Rider = measure.Of(units.Kilograms(x), units.Kilograms(1)) })
		}},
		{"test.crank", 80, 400, func(x float64) error {
			return kick(func(k *KickTest) { k.Crank = measure.Of(units.Millimetres(x), units.Millimetres(1)) })
		}},
		{"test.angle", 20, 160, func(x float64) error {
			return kick(func(k *KickTest) { k.Angle = measure.Of(units.Degrees(x), units.Degree) })
		}},
		{"test.ratio", 0.3, 10, func(x float64) error { return kick(func(k *KickTest) { k.Ratio = x }) }},
		{"test.losses", 0.3, 1, func(x float64) error { return kick(func(k *KickTest) { k.Losses = x }) }},
		{"test.cranking", 1, 500, func(x float64) error {
			return kick(func(k *KickTest) { k.Cranking = measure.Of(units.NewtonMetres(x), units.NewtonMetres(1)) })
		}},
	} {
		atLimits(t, l.path, l.low, l.high, l.ask)
	}
}

// A law or kind out of its list is refused under its name, and its text says so.
func TestUnknownKinds(t *testing.T) {
	c := demo()
	c.Plates.Pressure, c.Nuts.Kind, c.HubNut.Hand = UniformPressure+1, Central+1, LeftHand+1
	_, err := c.Window(Condition{})
	paths := map[string]bool{}
	for _, f := range fault.Faults(err) {
		if f.Code == fault.UnknownName {
			paths[f.Path] = true
		}
	}
	if len(paths) != 3 || !paths["plates.pressure"] || !paths["nuts.kind"] || !paths["hub_nut.hand"] {
		t.Errorf("told: %v", paths)
	}
	c.Plates.Pressure, c.Nuts.Kind, c.HubNut.Hand = UniformPressure, Central, LeftHand
	if _, err := c.Window(Condition{}); err != nil {
		t.Errorf("the last of each list: %v", err)
	}
	if _, err := RingFor(units.NewtonMetres(10), units.Value(0.1), units.Kilopascals(100), 2, 0.5, UniformPressure+1); err == nil {
		t.Error("a ring for no law")
	}
}

// Fifty links are taken, one more is not; a train of none is missing.
func TestLengthOfTrain(t *testing.T) {
	for _, n := range []int{0, 1, mostElements, mostElements + 1} {
		c := demo()
		c.Train = nil
		for range n {
			c.Train = append(c.Train, Element{Ratio: 1.03})
		}
		_, err := c.Window(Condition{})
		if ok := n >= 1 && n <= mostElements; ok != (err == nil) {
			t.Errorf("%d links: %v", n, err)
		}
	}
}

// A length that is missing is told once, not as a conflict too.
func TestMissingIsNoConflict(t *testing.T) {
	c := demo()
	c.Springs.FreeLength = 0
	_, err := c.Window(Condition{})
	if f := faultsOf(err); len(f) != 1 || f[0] != "springs.free_length" {
		t.Errorf("told: %v", f)
	}
}

// A figure that has no unit is told without one.
func TestFigureWithoutUnit(t *testing.T) {
	f := outside("ratio", 0.25, "", 0.3, 10)
	if f.Value != "0.25" || f.Rule != "must be from 0.3 to 10" {
		t.Errorf("%+v", f)
	}
	f = outside("crank", 70, "mm", 80, 400)
	if f.Value != "70 mm" || f.Rule != "must be from 80 to 400 mm" {
		t.Errorf("%+v", f)
	}
}
