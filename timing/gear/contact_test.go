package gear_test

import (
	"math"
	"testing"

	"example.com/benchbook/timing/gear"
	"example.com/benchbook/units"
	"pgregory.net/rapid"
)

// tips is where the line of action leaves a tip circle, from its tangency with the
// base circle, in mm.
func tips(t *rapid.T, w gear.Wheel, tip func(gear.Geometry) float64) (reach float64, g gear.Geometry) {
	g, err := w.Geometry()
	if err != nil {
		t.Fatal(err)
	}
	d, b := tip(g), g.Base.Millimetres()
	return math.Sqrt(d*d-b*b) / 2, g
}

// A pinion in a ring, the line of action walked from one base circle's tangent point to
// the other's: first touch where the ring's tip circle crosses it, last touch at the
// pinion's. Sliding is the distance from the pitch point times the difference of the
// two speeds of turning.
func TestRingAlongTheLineOfAction(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		z1 := rapid.IntRange(20, 40).Draw(t, "pinion")
		z2 := z1 + rapid.IntRange(25, 80).Draw(t, "more on the ring")
		m := gear.Meshing{
			Pinion: gear.Wheel{Teeth: z1, Module: mm(rapid.Float64Range(1, 4).Draw(t, "module")), Helix: units.Degrees(float64(rapid.IntRange(0, 25).Draw(t, "helix")))},
			Ring:   true,
		}
		m.Wheel = m.Pinion
		m.Wheel.Teeth, m.Wheel.Helix, m.Wheel.Shift = z2, -m.Pinion.Helix, rapid.Float64Range(0, 0.3).Draw(t, "shift of the ring")
		c, err := m.Contact()
		if err != nil {
			t.Fatal(err)
		}
		mod := m.Pinion.Module.Millimetres()
		end, p := tips(t, m.Pinion, func(g gear.Geometry) float64 { return g.Tip.Millimetres() })
		// The teeth of a ring point in: tip circle d - 2 (ha - x) m.
		start, r := tips(t, m.Wheel, func(g gear.Geometry) float64 { return g.Reference.Millimetres() - 2*(1-m.Wheel.Shift)*mod })
		a := c.Centre.Millimetres()
		aw := math.Acos((r.Base - p.Base).Millimetres() / 2 / a)
		// Both tangent points lie on one side; they are a sin aw apart. From the pinion's,
		// the ring's crossing is at start - a sin aw, the pitch point at rb1 tan aw.
		first, pitch := start-a*math.Sin(aw), p.Base.Millimetres()/2*math.Tan(aw)
		basePitch := math.Pi * p.Base.Millimetres() / float64(z1)
		w1 := 100.0
		w2 := w1 * float64(z1) / float64(z2)
		speeds, err := m.SlideSpeeds(units.RadiansPerSecond(w1))
		if err != nil {
			t.Fatal(err)
		}
		for _, x := range []struct {
			name      string
			got, want float64
		}{
			{"working angle", c.WorkingPressure.SI(), aw},
			{"standard centre", c.StandardCentre.Millimetres(), (r.Reference - p.Reference).Millimetres() / 2},
			{"approach", c.Approach.Millimetres(), pitch - first},
			{"recess", c.Recess.Millimetres(), end - pitch},
			{"contact ratio", c.ContactRatio, (end - first) / basePitch},
			{"pinion turned", c.PinionAngle.SI(), (end - first) / (p.Base.Millimetres() / 2)}, // the string off its base circle
			{"wheel turned", c.WheelAngle.SI(), (end - first) / (r.Base.Millimetres() / 2)},
			{"sliding in", speeds.In.SI(), (pitch - first) / 1000 * (w1 - w2)},
			{"sliding out", speeds.Out.SI(), (end - pitch) / 1000 * (w1 - w2)},
		} {
			if math.Abs(x.got-x.want) > 1e-8*math.Abs(x.want) { // rounding, of differences of nearly equal figures
				t.Fatalf("%s %.12g, along the line %.12g", x.name, x.got, x.want)
			}
		}
		// The ring's tips dig in where they would touch short of the pinion's base circle.
		if math.Abs(first) > 1e-6 && c.Interference != (first < 0) {
			t.Fatalf("interference %v, first touch %g mm past the pinion's base circle", c.Interference, first)
		}
	})
}

// A ring and a wheel of endless teeth are both a rack, and the same one. With 100 000
// teeth the tips' curvature still shows in 1e-4 of the path.
func TestRingAndWheelMeetInTheRack(t *testing.T) {
	out := gear.Meshing{Pinion: gear.Wheel{Teeth: 24, Module: 2}, Wheel: gear.Wheel{Teeth: 100_000, Module: 2}}
	in := out
	in.Ring = true
	a, err1 := out.Contact()
	b, err2 := in.Contact()
	if err1 != nil || err2 != nil {
		t.Fatal(err1, err2)
	}
	// Onto a rack the approach is ha/sin a: 2 mm/sin 20°.
	near(t, "approach of the wheel", a.Approach.Millimetres(), 2/math.Sin(20*math.Pi/180), 1e-3)
	near(t, "approach of the ring", b.Approach.Millimetres(), a.Approach.Millimetres(), 1e-3)
	near(t, "recess", b.Recess.Millimetres(), a.Recess.Millimetres(), 1e-9)
}

// The fewest teeth without interference are what Contact says are without: with one
// fewer the wheel's tips dig in, whichever of the two is called the pinion.
func TestInterferenceBelowLeastTeeth(t *testing.T) {
	for _, ratio := range []int{1, 2, 3, 5} {
		for _, addendum := range []float64{0.8, 1} {
			least, exact, err := gear.LeastTeeth(20*units.Degree, float64(ratio), addendum)
			if err != nil || float64(least) < exact || float64(least) >= exact+1 {
				t.Fatal(least, exact, err)
			}
			for _, z := range []int{least - 1, least} {
				small := gear.Wheel{Teeth: z, Module: 2, Addendum: addendum}
				large := gear.Wheel{Teeth: z * ratio, Module: 2, Addendum: addendum}
				for _, m := range []gear.Meshing{{Pinion: small, Wheel: large}, {Pinion: large, Wheel: small}} {
					c, err := m.Contact()
					if err != nil || c.Interference != (z < least) {
						t.Errorf("%d to %d teeth, addendum %v: interference %v, %v", z, z*ratio, addendum, c.Interference, err)
					}
				}
			}
		}
	}
	// A rack needs 2 h/sin^2 a: 8 teeth for 1 at 30°, where the sine is a half, and 4.8
	// for 0.6: five.
	for h, want := range map[float64]int{1: 8, 0.6: 5} {
		if n, exact, err := gear.LeastTeeth(30*units.Degree, math.Inf(1), h); n != want || math.Abs(exact-8*h) > 1e-12 || err != nil {
			t.Errorf("rack, addendum %v: %d, %v, %v", h, n, exact, err)
		}
	}
}

// Addenda that reach just to the base circles do not dig in, a little more does: on
// both sides of the pitch point.
func TestAddendaToTheBaseCircle(t *testing.T) {
	m := gear.Meshing{Pinion: gear.Wheel{Teeth: 30, Module: 2}, Wheel: gear.Wheel{Teeth: 30, Module: 2}}
	a, err := m.AddendaForPart(1)
	if err != nil {
		t.Fatal(err)
	}
	h := a.Pinion.Ratio(m.Pinion.Module)
	for _, c := range []struct {
		pinion, wheel float64
		digs          bool
	}{{h, h, false}, {h * 1.001, h, true}, {h, h * 1.001, true}, {1, 1, false}} {
		m.Pinion.Addendum, m.Wheel.Addendum = c.pinion, c.wheel
		got, err := m.Contact()
		if err != nil || got.Interference != c.digs {
			t.Errorf("addenda %v and %v: %v, %v", c.pinion, c.wheel, got.Interference, err)
		}
	}
}

// The overlap of helical teeth is the lesser face over their axial pitch.
func TestOverlapIsFaceOverAxialPitch(t *testing.T) {
	for _, helix := range []units.Angle{15, -15} {
		p := gear.Wheel{Teeth: 24, Module: 2, Helix: helix, Face: 20}
		w := gear.Wheel{Teeth: 48, Module: 2, Helix: -helix, Face: 18}
		g, _ := p.Geometry()
		c, err := gear.Meshing{Pinion: p, Wheel: w}.Contact()
		if err != nil || math.Abs(c.Overlap-units.Length(18).Ratio(g.AxialPitch.Abs())) > 1e-12 {
			t.Errorf("%v: %v, %v", helix, c.Overlap, err)
		}
	}
}

// The addendum found gives the arc asked for, also of wheels whose shifts leave no
// contact at all with hardly any addendum.
func TestAddendumGivesTheArc(t *testing.T) {
	for _, x := range []float64{0, 0.4} {
		m := gear.Meshing{Pinion: gear.Wheel{Teeth: 30, Module: 2, Shift: x}, Wheel: gear.Wheel{Teeth: 40, Module: 2, Shift: -x}}
		h, err := m.AddendumForArc(1.3)
		if err != nil {
			t.Fatal(err)
		}
		m.Pinion.Addendum = h.Ratio(m.Pinion.Module)
		m.Wheel.Addendum = m.Pinion.Addendum
		c, err := m.Contact()
		if err != nil || math.Abs(c.Arc.Millimetres()/(math.Pi*2)-1.3) > 1e-9 { // centre and pitch circles are the standard ones
			t.Errorf("shifts of %v: %v of arc, %v", x, c.Arc, err)
		}
	}
}

// The largest wheels on a centre, and the smallest beyond it, against trying them all.
func TestTeethForByTrying(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := gear.NewRational(rapid.Int64Range(1, 9).Draw(t, "wheel"), rapid.Int64Range(1, 9).Draw(t, "pinion"))
		tenths := rapid.IntRange(1, 40).Draw(t, "module, tenths of a mm")
		half := rapid.IntRange(1, 3000).Draw(t, "centre, twentieths of a mm")
		below, beyond, err := gear.TeethFor(mm(float64(half)/20), mm(float64(tenths)/10), r)
		if err != nil {
			t.Fatal(err)
		}
		var low, high gear.OnCentre
		for k := 1; high.Pinion == 0; k++ {
			p, w := k*int(r.Den()), k*int(r.Num())
			if min(p, w) < 2 {
				continue
			}
			if tenths*(p+w) <= half { // in whole numbers: centres that fit exactly fit
				low.Pinion, low.Wheel = p, w
			} else {
				high.Pinion, high.Wheel = p, w
			}
		}
		if below.Pinion != low.Pinion || below.Wheel != low.Wheel || beyond.Pinion != high.Pinion || beyond.Wheel != high.Wheel {
			t.Fatalf("%+v and %+v, by trying %+v and %+v", below, beyond, low, high)
		}
		for _, at := range []gear.OnCentre{below, beyond} {
			if want := float64(tenths*(at.Pinion+at.Wheel)) / 20; math.Abs(at.Centre.Millimetres()-want) > 1e-9 {
				t.Fatalf("%+v needs %v mm", at, want)
			}
		}
	})
}
