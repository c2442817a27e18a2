package cam_test

import (
	"math"
	"testing"

	"example.com/benchbook/timing/cam"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// A hub twice as thick as its solid shaft, both steel of 200 GPa and 0.3, by hand:
// the hub's figure is (1600+400)/(1600-400) = 5/3, the shaft's 1; p = delta/(d (5/3 + 1)/E)
// = 0.03/20 * 200e9 * 3/8 = 112.5 MPa, and a third of that from a third of the
// interference. Friction 0.1 to 0.2 on pi 20 x 15 = 942.478 mm² holds 0.1 x 37.5 MPa x
// that = 3534.3 N to 0.2 x 112.5 MPa x that = 21205.8 N, times 10 mm of radius.
func TestPressFitByHand(t *testing.T) {
	steel := cam.Metal{Modulus: 200 * units.Gigapascal, Poisson: 0.3}
	f := cam.PressFit{
		Joint: 20, Hub: 40, Length: 15, Interference: measure.Between(mm(0.01), mm(0.03)),
		HubMetal: steel, ShaftMetal: steel, Friction: measure.Between[units.Ratio](0.1, 0.2),
	}
	g, err := f.Hold()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "pressure, low", g.Pressure.Low.Megapascals(), 37.5, 1e-9)
	near(t, "pressure, high", g.Pressure.High.Megapascals(), 112.5, 1e-9)
	near(t, "hoop, low", g.HubHoop.Low.Megapascals(), 62.5, 1e-9)
	near(t, "hoop, high", g.HubHoop.High.Megapascals(), 187.5, 1e-9)
	near(t, "solid shaft, low", g.Shaft.Low.Megapascals(), 37.5, 1e-9)
	near(t, "solid shaft, high", g.Shaft.High.Megapascals(), 112.5, 1e-9)
	near(t, "axial, low", g.Axial.Low.SI(), 3534.3, 1e-5)
	near(t, "axial, high", g.Axial.High.SI(), 21205.8, 1e-5)
	near(t, "torque, low", g.Torque.Low.SI(), 35.343, 1e-5)
	near(t, "torque, high", g.Torque.High.SI(), 212.058, 1e-5)
	// A bore of half the joint: the squeeze at it is that of Lamé's cylinder.
	f.ShaftBore = 10
	g, err = f.Hold()
	for _, p := range [][2]units.Pressure{{g.Pressure.Low, g.Shaft.Low}, {g.Pressure.High, g.Shaft.High}} {
		bore, _ := cam.Lame(5, 10, 5, 0, p[0])
		near(t, "at the bore of a hollow shaft", p[1].SI(), -bore.SI(), 1e-12)
	}
	if err != nil {
		t.Fatal(err)
	}
}

// A metal given half: its Poisson's ratio stands with the modulus of steel.
func TestMetalDefaults(t *testing.T) {
	hold := func(m cam.Metal) float64 {
		g, err := cam.PressFit{Joint: 20, Hub: 40, Length: 15, Interference: measure.Between(mm(0.01), mm(0.03)), HubMetal: m}.Hold()
		if err != nil {
			t.Fatal(err)
		}
		return g.Pressure.High.SI()
	}
	steel := cam.Metal{Modulus: 207 * units.Gigapascal, Poisson: 0.3}
	if hold(cam.Metal{}) != hold(steel) {
		t.Error("the zero metal is not steel")
	}
	other := cam.Metal{Modulus: 207 * units.Gigapascal, Poisson: 0.25}
	if hold(cam.Metal{Poisson: 0.25}) != hold(other) || hold(other) == hold(steel) {
		t.Error("a Poisson's ratio without a modulus is lost")
	}
}

// A cone of 1 in 8 on the diameter, 16 mm, pushed on by 5 kN, friction 0.1 to 0.2, by
// the balance of forces along the axis on and off: tan a = 1/16. The force between the
// faces is W/(sin a + mu cos a); with sin a = 0.0623783 and cos a = 0.9980526 that is
// 5000/0.1621836 = 30829.3 N at 0.1 and 5000/0.2619888 = 19084.8 N at 0.2. Drawing off
// takes N (mu cos a - sin a): times 0.0374270 1153.85 N, times 0.1372322 2619.05 N.
func TestTaperByHand(t *testing.T) {
	c := cam.Taper{OneIn: 8, MeanDiameter: 16, Length: 20, Friction: measure.Between[units.Ratio](0.1, 0.2)}
	g, err := c.Hold(5000)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "needs", g.Needs.Value(), 1.0/16, 1e-12)
	near(t, "normal, less", g.Normal.Low.SI(), 19084.8, 1e-5)
	near(t, "normal, more", g.Normal.High.SI(), 30829.3, 1e-5)
	near(t, "release, low", g.Release.Low.SI(), 1153.85, 1e-5)
	near(t, "release, high", g.Release.High.SI(), 2619.05, 1e-5)
	// Slipping round: mu W r/sin a.
	near(t, "turning, low", g.Turning.Low.SI(), 0.1*5000*0.008/0.0623783, 1e-6)
	near(t, "turning, high", g.Turning.High.SI(), 0.2*5000*0.008/0.0623783, 1e-6)
	near(t, "torque, low", g.Torque.Low.SI(), 0.1*30829.3*0.008, 1e-5)
	near(t, "torque, high", g.Torque.High.SI(), 0.2*19084.8*0.008, 1e-5)
	// Worn even it slips at the same: mu F (D + d)/(4 sin a), D + d twice the mean; the
	// ends are the mean less and more half of 20/8 mm.
	b, err := c.Bedded(5000)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "worn, turning, low", b.Turning.Low.SI(), g.Turning.Low.SI(), 1e-12)
	near(t, "worn, turning, high", b.Turning.High.SI(), g.Turning.High.SI(), 1e-12)
	near(t, "small end", b.Small.Millimetres(), 14.75, 1e-12)
	near(t, "large end", b.Large.Millimetres(), 17.25, 1e-12)
	// The pressure worn even, p r = constant, carries the push: F = 2 pi (p r) (R - r).
	near(t, "worn, push", 2*math.Pi*b.Pressure.SI()*b.Small.SI()/2*(b.Large-b.Small).SI()/2, 5000, 1e-12)
}

// A taper locks itself where tan a is below the friction: at either end itself it does
// not, nor for the worse friction.
func TestLockingAtItsLimits(t *testing.T) {
	c := cam.Taper{OneIn: 8, MeanDiameter: 16}
	g, err := c.Hold(1)
	if err != nil {
		t.Fatal(err)
	}
	need := g.Needs
	for _, f := range []struct {
		low, high units.Ratio
		want      cam.Locking
	}{
		{need * past, need * 2, cam.SelfLocking},
		{need, need * 2, cam.Doubtful},
		{need * shy, need * past, cam.Doubtful},
		{need / 2, need, cam.Releases},
		{need / 2, need * shy, cam.Releases},
	} {
		c.Friction = measure.Between(f.low, f.high)
		g, err := c.Hold(1)
		if l, err2 := c.Locks(); err != nil || err2 != nil || l != f.want || g.Locking != f.want {
			t.Errorf("friction %v to %v of %v: %v and %v, want %v", f.low, f.high, need, l, g.Locking, f.want)
		}
		// Within rounding of the limit the force is nought but for rounding.
		if held := f.high > 1.5*need; (g.Release.High.SI() > 1e-9) != held || g.Release.Low.SI() > 1e-9 {
			t.Errorf("friction %v to %v of %v: drawn off by %v", f.low, f.high, need, g.Release)
		}
	}
	texts := map[cam.Locking]string{cam.Releases: "releases by itself", cam.SelfLocking: "holds by itself", cam.Doubtful: "doubtful: holds only with good friction"}
	for l, want := range texts {
		if b, err := l.MarshalText(); l.String() != want || string(b) != want || err != nil {
			t.Error(l.String(), string(b), err)
		}
	}
}
