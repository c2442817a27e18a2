package gear_test

import (
	"math"
	"testing"

	"example.com/benchbook/timing/gear"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
	"pgregory.net/rapid"
)

// Sizes that hang together however the teeth are shifted: the whole depth stays addendum
// and dedendum, pitches go round the reference circle, and a tooth line rises by the
// lead as it goes once round (tan b = pi d/lead).
func TestGeometryHangsTogether(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := gear.Wheel{
			Teeth: rapid.IntRange(10, 90).Draw(t, "z"), Module: mm(rapid.Float64Range(0.5, 6).Draw(t, "m")), Helix: units.Degrees(rapid.Float64Range(1, 45).Draw(t, "helix")),
			Shift: rapid.Float64Range(-0.5, 0.8).Draw(t, "x"), Addendum: rapid.Float64Range(0.7, 1.2).Draw(t, "ha"), Dedendum: rapid.Float64Range(0.9, 1.5).Draw(t, "hf"),
		}
		g, err := w.Geometry()
		if err != nil {
			t.Fatal(err)
		}
		m := w.Module.Millimetres()
		for _, c := range []struct {
			name      string
			got, want float64
		}{
			{"whole depth", (g.Tip - g.Root).Millimetres() / 2, m * (w.Addendum + w.Dedendum)},
			{"tip and root about the shifted line", (g.Tip + g.Root).Millimetres() / 2, g.Reference.Millimetres() + m*(w.Addendum-w.Dedendum+2*w.Shift)},
			{"pitches round", g.CircularPitch.Millimetres() * float64(w.Teeth), math.Pi * g.Reference.Millimetres()},
			{"lead", g.Lead.Millimetres(), math.Pi * g.Reference.Millimetres() / math.Tan(w.Helix.SI())},
			{"axial pitches in the lead", g.AxialPitch.Millimetres() * float64(w.Teeth), g.Lead.Millimetres()},
		} {
			if math.Abs(c.got-c.want) > 1e-9*math.Abs(c.want) {
				t.Fatalf("%s %v, want %v", c.name, c.got, c.want)
			}
		}
	})
}

// The anvils' two points of touch, walked round a helical wheel: at their diameter the
// angle between them is that of the teeth between and the tooth's own, less what the
// helix turns over the slant of the span.
func TestSpanTouchesBothFlanks(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		z := rapid.IntRange(14, 80).Draw(t, "z")
		helix := float64(rapid.IntRange(-35, 35).Draw(t, "helix")) * math.Pi / 180
		x := rapid.Float64Range(-0.3, 0.6).Draw(t, "x")
		const m, an = 2.0, 20 * math.Pi / 180
		w := gear.Wheel{Teeth: z, Module: mm(m), Helix: units.Radians(helix), Shift: x}
		s, err := w.Span(rapid.IntRange(1, 6).Draw(t, "k"))
		if err != nil {
			t.Fatal(err)
		}
		r := m * float64(z) / math.Cos(helix) / 2
		at := math.Atan(math.Tan(an) / math.Cos(helix))
		rb := r * math.Cos(at)
		touch := s.Touches.Millimetres() / 2
		ay := math.Acos(rb / touch)
		halfTooth := (math.Pi/2 + 2*x*math.Tan(an)) * m / math.Cos(helix) / (2 * r) // at the reference circle
		halfTooth += math.Tan(at) - at - (math.Tan(ay) - ay)                        // at theirs
		baseHelix := math.Atan(math.Tan(helix) * rb / r)                            // of one lead
		slant := s.W.Millimetres() * math.Sin(baseHelix)                            // along the axis
		want := float64(s.Over-1)*2*math.Pi/float64(z) + 2*halfTooth - slant*math.Tan(helix)/r
		if got := 2 * ay; math.Abs(got-want) > 1e-9 {
			t.Fatalf("%+v: %v of angle between the anvils, the teeth make %v", s, got, want)
		}
		g, _ := w.Geometry()
		if s.OnFlank != (s.Touches < g.Tip) {
			t.Fatalf("%+v, tip %v", s, g.Tip)
		}
	})
}

// Anvils that touch just at the tip stand on no flank; a hair more of tip, and they do.
// A module of 1 mm makes the figures exact: the tip is 20 + 2 ha.
func TestAnvilsAtTheTip(t *testing.T) {
	w := gear.Wheel{Teeth: 20, Module: 1}
	s, _ := w.Span(4)
	w.Addendum = (s.Touches.Millimetres() - 20) / 2
	if g, _ := w.Geometry(); g.Tip != s.Touches {
		t.Fatal(g.Tip, s.Touches)
	}
	if s, err := w.Span(4); err != nil || s.OnFlank {
		t.Errorf("at the tip: %+v, %v", s, err)
	}
	w.Addendum += 1e-9
	if s, err := w.Span(4); err != nil || !s.OnFlank {
		t.Errorf("below it: %+v, %v", s, err)
	}
}

// Of all numbers of teeth from two that asked for by zero touches nearest the shifted
// pitch circle.
func TestUsualSpanTouchesNearest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := gear.Wheel{
			Teeth: rapid.IntRange(5, 90).Draw(t, "z"), Module: mm(rapid.Float64Range(0.5, 6).Draw(t, "m")), Helix: units.Degrees(float64(rapid.IntRange(-40, 40).Draw(t, "helix"))),
			Shift: rapid.Float64Range(-0.4, 1).Draw(t, "x"),
		}
		g, err := w.Geometry()
		if err != nil {
			t.Fatal(err)
		}
		off := func(k int) float64 {
			s, err := w.Span(k)
			if err != nil {
				t.Fatal(err)
			}
			return math.Abs(s.Touches.Millimetres() - g.Reference.Millimetres() - 2*w.Shift*w.Module.Millimetres())
		}
		usual := off(0)
		for k := 2; k < w.Teeth; k++ {
			if off(k) < usual-1e-9 {
				s, _ := w.Span(0)
				t.Fatalf("over %d teeth it touches nearer than over %d", k, s.Over)
			}
		}
	})
}

// Pins laid in every space, the two farthest apart measured: over odd teeth too. Their
// centres lie where the pressure angle says.
func TestPinsFarthestApart(t *testing.T) {
	for z := 11; z <= 40; z++ {
		w := gear.Wheel{Teeth: z, Module: 2}
		g, _ := w.Geometry()
		m, err := w.OverPins(mm(3.456))
		if err != nil {
			t.Fatal(err)
		}
		r := g.Base.Millimetres() / 2 / math.Cos(m.Pressure.SI())
		most := 0.0
		for i := range z {
			sin, cos := math.Sincos(2 * math.Pi * float64(i) / float64(z))
			most = max(most, math.Hypot(r*cos-r, r*sin))
		}
		if math.Abs(m.M.Millimetres()-most-3.456) > 1e-9 {
			t.Errorf("%d teeth: %v over pins, laid out %v", z, m.M, most+3.456)
		}
		// As in the test of thickness: half of what the centres move apart.
		w.Shift = 1e-5
		more, _ := w.OverPins(mm(3.456))
		if got := (more.M - m.M).Millimetres() / (2 * 2 * 1e-5 * math.Tan(20*math.Pi/180)); math.Abs(got/m.PerThickness-1) > 1e-4 {
			t.Errorf("%d teeth: %v for each unit, said to be %v", z, got, m.PerThickness)
		}
	}
}

// normal is the direction square to a helical flank at the pitch circle, as parts
// round the rim, outwards and along the axis: square to the tooth line and to the
// profile that slopes by the pressure angle in the normal plane.
func normal(pressure, helix float64) (round, out, along float64) {
	line := [3]float64{math.Sin(helix), 0, math.Cos(helix)}
	profile := [3]float64{math.Sin(pressure) * math.Cos(helix), math.Cos(pressure), -math.Sin(pressure) * math.Sin(helix)}
	return profile[1]*line[2] - profile[2]*line[1], profile[2]*line[0] - profile[0]*line[2], profile[0]*line[1] - profile[1]*line[0]
}

// Loads stand to each other as the parts of the flank's normal do, the one round the
// rim being torque over radius; and backlash square to the flank is what a shift round
// the rim has along that normal.
func TestLoadsAndBacklashAlongTheNormal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := rapid.Float64Range(10, 30).Draw(t, "pressure"), rapid.Float64Range(-45, 45).Draw(t, "helix")
		torque, d := rapid.Float64Range(1, 200).Draw(t, "torque"), rapid.Float64Range(20, 300).Draw(t, "diameter")
		round, out, along := normal(a*math.Pi/180, b*math.Pi/180)
		load, err := gear.Load(units.NewtonMetres(torque), mm(d), units.Degrees(a), units.Degrees(b))
		if err != nil {
			t.Fatal(err)
		}
		ft := torque / (d / 2000)
		j, err := gear.Normal(mm(0.1), units.Degrees(a), units.Degrees(b))
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range []struct {
			name      string
			got, want float64
		}{
			{"tangential", load.Tangential.SI(), ft},
			{"radial", load.Radial.SI(), ft * math.Abs(out/round)},
			{"axial", math.Abs(load.Axial.SI()), ft * math.Abs(along/round)},
			{"backlash", j.Millimetres(), 0.1 * round},
		} {
			if math.Abs(c.got-c.want) > 1e-9*math.Abs(c.want)+1e-12 {
				t.Fatalf("%s %v, along the normal %v", c.name, c.got, c.want)
			}
		}
	})
}

// Crossed wheels that mesh have one normal pitch, worked out here on the first, and
// helices that make up the shaft angle.
func TestCrossedWheelsHaveOnePitch(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		z1, z2 := rapid.IntRange(10, 60).Draw(t, "z1"), rapid.IntRange(10, 60).Draw(t, "z2")
		shafts := rapid.Float64Range(20, 90).Draw(t, "shafts")
		c, err := gear.CrossedFor(mm(150), mm(rapid.Float64Range(60, 240).Draw(t, "d2")), units.Degrees(shafts), float64(z1)/float64(z2), z2)
		if err != nil {
			t.Fatal(err)
		}
		first := math.Pi * c.Diameter1.Millimetres() * math.Cos(c.Helix1.SI()) / float64(z1)
		if math.Abs(c.NormalPitch.Millimetres()-first) > 1e-9*math.Abs(first)+1e-9 || math.Abs((c.Helix1+c.Helix2).Degrees()-shafts) > 1e-9 || math.Abs((c.Diameter1+c.Diameter2).Millimetres()-300) > 1e-9 {
			t.Fatalf("%+v, pitch of the first %v", c, first)
		}
	})
}

// A module so small that slack over it is the crank's own angle: 1e-9 of slack on a
// wheel of 40 of 1e-9, a fortieth of a diameter, is a twentieth of a radian at the
// wheel, a tenth at the crank.
func TestSlackOfTinyWheels(t *testing.T) {
	pico := units.FromSI[units.Length](1e-12)
	got, err := gear.Simple(20, 40).LostMotion(gear.Slack{Backlash: measure.Exact(pico), Module: pico})
	if err != nil || math.Abs(got.Value().SI()-0.1) > 1e-9 {
		t.Errorf("%v, %v", got, err)
	}
}
