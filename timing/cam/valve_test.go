package cam_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"example.com/benchbook/timing/cam"
	"example.com/benchbook/units"
	"pgregory.net/rapid"
)

// An invented cam of arcs under a flat foot.
func arcCam() cam.ArcCam {
	return cam.ArcCam{BaseRadius: 14 * units.Millimetre, NoseRadius: 4 * units.Millimetre, Lift: 8 * units.Millimetre, HalfAngle: 68 * units.CamDegree}
}

// Opening and closing of a cam of arcs, as the trade says them.
func ExampleFit() {
	whole, _ := arcCam().Curve(105 * units.CamDegree)
	var readings []cam.Sample // every 5° of the crank, two turns; invented
	for deg := 0; deg < 720; deg += 5 {
		at := units.CrankDegrees(float64(deg))
		lift, _ := whole.Lift(at.AtHalfSpeedCam())
		readings = append(readings, cam.CrankSample(at, lift))
	}
	f, err := cam.Fit(readings, cam.FitOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	e, _ := f.Events(1 * units.Millimetre)
	fmt.Println(e.Duration.In(units.CamDegree, 1), f.Criterion)
	// Output: 108.3° cam smoothed by generalised cross-validation
}

func ExampleCurve_Events() {
	c, _ := arcCam().Curve(55 * units.CamDegree)
	e, err := c.Events(1 * units.Millimetre)
	p := cam.Place(e.Opens)
	q := cam.Place(e.Closes)
	fmt.Printf("%.1f° after %v, %.1f° after %v, %v\n", p.After().Degrees(), p.Datum(), q.After().Degrees(), q.Datum(), err)
	// Output: 1.7° after TDC, 38.3° after BDC, <nil>
}

func ExampleValve_WithClearance() {
	c, _ := arcCam().Curve(55 * units.CamDegree)
	v := cam.Valve{Cam: c, Rocker: cam.Rocker{CamArm: 30 * units.Millimetre, ValveArm: 36 * units.Millimetre}, Clearance: units.Thous(4)}
	x, err := v.WithClearance(units.Thous(10), 1*units.Millimetre)
	fmt.Println(x.Opens.AtCrank().In(units.CrankDegree, 1), x.Duration.AtCrank().In(units.CrankDegree, 1), err)
	// Output: 1.8° crank -3.6° crank <nil>
}

// Bevan, The Theory of Machines, 3rd ed., chapter 9, example 5: the curvature
// formula returns the flank and nose radii themselves.
func TestArcCamCurvature(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := cam.ArcCam{
			BaseRadius: units.Millimetres(rapid.Float64Range(10, 25).Draw(t, "base")), NoseRadius: units.Millimetres(rapid.Float64Range(2, 8).Draw(t, "nose")),
			Lift: units.Millimetres(rapid.Float64Range(3, 10).Draw(t, "lift")), HalfAngle: units.CamDegrees(rapid.Float64Range(50, 85).Draw(t, "half")),
		}
		s, err := a.Shape()
		if err != nil {
			t.Skip()
		}
		perRadian := 180 / math.Pi
		for _, p := range []struct {
			at   units.CamAngle
			want units.Length
		}{
			{a.HalfAngle.Times(-1) + s.FlankAngle.Times(0.5), s.FlankRadius},
			{0, a.NoseRadius},
			{(a.HalfAngle - s.FlankAngle).Times(0.7), a.NoseRadius},
		} {
			m, err := a.At(p.at)
			if err != nil {
				t.Fatal(err)
			}
			rho := a.BaseRadius.Millimetres() + m.Lift.Millimetres() + m.AccelerationMMPerDegree2*perRadian*perRadian
			if math.Abs(rho-p.want.Millimetres()) > 1e-6*p.want.Millimetres() {
				t.Fatalf("radius %g at %v, made with %v", rho, p.at, p.want)
			}
		}
		top, _ := a.At(0)
		before, _ := a.At(s.FlankAngle - a.HalfAngle - 1e-9)
		after, _ := a.At(s.FlankAngle - a.HalfAngle + 1e-9)
		if math.Abs((top.Lift-a.Lift).Millimetres()) > 1e-9 || math.Abs((before.Lift-after.Lift).Millimetres()) > 1e-6 || math.Abs(before.VelocityMMPerDegree-after.VelocityMMPerDegree) > 1e-6 {
			t.Fatalf("arcs do not join: %+v %+v", before, after)
		}
	})
}

// Flank and nose of a tangent cam join in lift and velocity, and the derivatives are
// those of the lift, by differences at 1e-4°.
func TestTangentCamJoins(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := cam.TangentCam{
			BaseRadius: units.Millimetres(rapid.Float64Range(10, 30).Draw(t, "base")), Lift: units.Millimetres(rapid.Float64Range(3, 12).Draw(t, "lift")),
			HalfAngle: units.CamDegrees(rapid.Float64Range(50, 85).Draw(t, "half")), Roller: units.Millimetres(rapid.Float64Range(5, 20).Draw(t, "roller")),
		}
		s, err := c.Shape()
		if err != nil {
			t.Skip()
		}
		x := units.CamDegrees(rapid.Float64Range(-1, 1).Draw(t, "at")).Times(c.HalfAngle.Degrees())
		join := s.FlankAngle - c.HalfAngle
		before, _ := c.At(join - 1e-9)
		after, _ := c.At(join + 1e-9)
		if math.Abs((before.Lift-after.Lift).Millimetres()) > 1e-6 || math.Abs(before.VelocityMMPerDegree-after.VelocityMMPerDegree) > 1e-6 {
			t.Fatalf("flank and nose do not join: %+v %+v", before, after)
		}
		const h = 1e-4
		if math.Abs((x-join).Degrees()) < 2*h || math.Abs((x+join).Degrees()) < 2*h || (c.HalfAngle-x.Abs()).Degrees() < 2*h {
			return // the acceleration steps there
		}
		m, _ := c.At(x)
		up, _ := c.At(x + h)
		down, _ := c.At(x - h)
		if v := (up.Lift - down.Lift).Millimetres() / (2 * h); math.Abs(v-m.VelocityMMPerDegree) > 1e-6 {
			t.Fatalf("velocity %g, by differences %g", m.VelocityMMPerDegree, v)
		}
		if a := (up.VelocityMMPerDegree - down.VelocityMMPerDegree) / (2 * h); math.Abs(a-m.AccelerationMMPerDegree2) > 1e-6 {
			t.Fatalf("acceleration %g, by differences %g", m.AccelerationMMPerDegree2, a)
		}
	})
}

// A cam of arcs under a radiused foot, and back under a flat one, is itself. The
// curve is a spline through 1,440 points with a step in curvature: 2 µm.
func TestFollowerThereAndBack(t *testing.T) {
	c, _ := arcCam().Curve(100 * units.CamDegree)
	base := arcCam().BaseRadius
	for _, r := range []units.Length{10, 25, 60} {
		round, why, err := c.WithFollower(cam.Flat(), cam.Radiused(r), base)
		if err != nil || why.Given() {
			t.Fatal(r, why, err)
		}
		flat, why, err := round.WithFollower(cam.Radiused(r), cam.Flat(), base)
		if err != nil || why.Given() {
			t.Fatal(r, why, err)
		}
		e, _ := c.Events(1)
		n, _ := round.Events(1)
		if !(n.Duration < e.Duration) {
			t.Errorf("radius %v: %v at 1 mm, flat %v: a rounder foot comes on later", r, n.Duration, e.Duration)
		}
		worst := 0.0
		for x := 0.0; x < 360; x += 0.37 {
			a, _ := c.Lift(units.CamDegrees(x))
			b, _ := flat.Lift(units.CamDegrees(x))
			worst = max(worst, math.Abs((a - b).Millimetres()))
		}
		if worst > 0.002 {
			t.Errorf("radius %v: back within %.4f mm", r, worst)
		}
		top, _ := c.MaxLift()
		if got, _ := round.MaxLift(); math.Abs((got - top).Millimetres()) > 0.001 {
			t.Errorf("radius %v: greatest lift %v, flat %v", r, got, top)
		}
	}
	// A tangent cam is straight-sided: a flat foot rides over its corners.
	straight, _ := cam.TangentCam{BaseRadius: 14, Lift: 8, HalfAngle: 60, Roller: 10}.Curve(100)
	if _, why, err := straight.WithFollower(cam.Roller(10), cam.Flat(), 14); err != nil || why.Given() {
		// The flank is straight: the whole flank is one direction of a flat foot.
		t.Logf("tangent cam under a flat foot: %v %v", why, err)
	}
}

// The contact of a very large radius is that of a flat foot.
func TestContactLimit(t *testing.T) {
	c, _ := arcCam().Curve(0)
	for x := -60.0; x <= 60; x += 7 {
		flat, err1 := c.Contact(units.CamDegrees(x), cam.Flat(), 14)
		round, err2 := c.Contact(units.CamDegrees(x), cam.Radiused(1e7), 14)
		// A foot of 10 km differs by lift over radius: 1e-6 of the offset, and the
		// radius is a difference of two of 1e7 mm.
		if err1 != nil || err2 != nil || math.Abs((flat.Offset-round.Offset).Millimetres()) > 1e-4 || math.Abs((flat.Radius-round.Radius).Millimetres()) > 0.05 {
			t.Errorf("at %g: %+v, %+v", x, flat, round)
		}
	}
}

// The rocker and its reverse undo each other, and its ratio is the slope.
func TestRocker(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := cam.Rocker{
			CamArm: units.Millimetres(rapid.Float64Range(20, 50).Draw(t, "p")), ValveArm: units.Millimetres(rapid.Float64Range(20, 50).Draw(t, "q")),
			CamTilt: units.Degrees(rapid.Float64Range(-20, 20).Draw(t, "t")), ValveTilt: units.Degrees(rapid.Float64Range(-20, 20).Draw(t, "u")),
		}
		x := units.Millimetres(rapid.Float64Range(0, 9).Draw(t, "lift"))
		m, err := r.At(x)
		if err != nil {
			t.Fatal(err)
		}
		const h = 1e-5
		up, _ := r.At(x + h)
		down, _ := r.At(x - h)
		if slope := (up.Valve - down.Valve).Millimetres() / (2 * h); math.Abs(slope-m.Ratio) > 1e-7 {
			t.Fatalf("ratio %g, by differences %g", m.Ratio, slope)
		}
	})
	shut, _ := cam.Rocker{CamArm: 30, ValveArm: 36, CamTilt: 8, ValveTilt: 8}.At(0)
	if shut.Valve.Abs() > 1e-12 || math.Abs(shut.Ratio-1.2) > 1e-12 {
		t.Errorf("%+v", shut)
	}
}

// Valve events are where the valve's lift is the check, whatever the rocker.
func TestValveEvents(t *testing.T) { rapid.Check(t, checkValveEvents()) }

func FuzzValveEvents(f *testing.F) {
	fuzzBytes(f)
	f.Fuzz(rapid.MakeFuzz(checkValveEvents()))
}

func checkValveEvents() func(*rapid.T) {
	c, _ := arcCam().Curve(120)
	return func(t *rapid.T) {
		v := cam.Valve{
			Cam:       c,
			Rocker:    cam.Rocker{CamArm: 30, ValveArm: units.Millimetres(rapid.Float64Range(25, 45).Draw(t, "arm")), CamTilt: 7, ValveTilt: 5},
			Clearance: units.Millimetres(rapid.Float64Range(0.05, 0.5).Draw(t, "clearance")),
		}
		check := units.Millimetres(rapid.Float64Range(0.1, 5).Draw(t, "check"))
		e, err := v.Events(check)
		if err != nil || e.NoAnswer.Given() {
			t.Fatal(e.NoAnswer, err)
		}
		for _, at := range []units.CamAngle{e.Opens, e.Closes} {
			if y, _ := v.Lift(at); math.Abs((y - check).Millimetres()) > 1e-9 {
				t.Fatalf("%v at %v, check %v", y, at, check)
			}
		}
		back, why, err := v.ClearanceFor(e.Duration, check)
		if err != nil || why.Given() || math.Abs((back-v.Clearance).Millimetres()) > 1e-6 {
			t.Fatalf("clearance %v, set %v: %v %v", back, v.Clearance, why, err)
		}
	}
}

// At the speed it names, spring force is mass times acceleration; below it the
// follower stays. Textbook balance, so checked against the curve's own figures.
func TestLiftOff(t *testing.T) {
	c, _ := arcCam().Curve(120)
	v := cam.Valve{Cam: c, Clearance: units.Millimetres(0.1)}
	mass, err := cam.Parts{Valve: units.Grams(90), Retainer: units.Grams(25), Spring: units.Grams(60), Follower: units.Grams(80)}.AtValve()
	if err != nil || math.Abs(mass.Grams()-(90+25+20+80)) > 1e-9 {
		t.Fatal(mass, err)
	}
	s := cam.SpringLoad{Seated: 250 * units.Newton, Rate: units.NewtonsPerMillimetre(20), Mass: mass}
	off, err := v.LiftOff(s)
	if err != nil || off.NoAnswer.Given() {
		t.Fatal(off.NoAnswer, err)
	}
	if got := -off.Acceleration.SI() * mass.SI(); math.Abs(got-off.Spring.SI()) > 1e-9*got {
		t.Errorf("%g N of inertia, %v of spring", got, off.Spring)
	}
	// Closed form on the nose of a cam of arcs: s'' = -d cos u, lift = d cos u -
	// (rb - rn): sqrt((F0 + k s)/(m d cos u)) is least where cos u is greatest or
	// least; here at the end of the nose or at its top.
	shape, _ := arcCam().Shape()
	d := shape.NoseCentre.SI()
	best := math.Inf(1)
	for u := 0.0; u <= (arcCam().HalfAngle - shape.FlankAngle).SI(); u += 1e-4 {
		lift := d*math.Cos(u) - 0.010 - 0.0001
		best = min(best, math.Sqrt((250+20000*lift)/(mass.SI()*d*math.Cos(u))))
	}
	// Within a degree of the end of the nose the flank counts in: 2 %.
	if got := off.CrankSpeed.SI() / 2; math.Abs(got-best) > 0.02*best {
		t.Errorf("%.1f rad/s of the cam, by the arcs %.1f", got, best)
	}
}

// The right cam of five leads, at the right phase, turned to any angle, with a worn
// make and a gauge not at zero; a cam that is not there is "something else".
func TestIdentify(t *testing.T) {
	var known []cam.Profile
	for i, h := range []float64{7, 7.6, 8, 8, 8.6} {
		a := arcCam()
		a.Lift = units.Millimetres(h)
		a.HalfAngle = units.CamDegrees([]float64{66, 68, 64, 70, 68}[i])
		c, err := a.Curve(0)
		if err != nil {
			t.Fatal(err)
		}
		known = append(known, cam.Profile{Name: string(rune('A' + i)), Curve: c})
	}
	rng := rand.New(rand.NewPCG(5, 5))
	right, inside := 0, 0
	const trials = 100
	for range trials {
		k := rng.IntN(len(known))
		phase := 360 * rng.Float64()
		zero := 0.03 * rng.NormFloat64()
		var s []cam.Sample
		for x := 0.0; x < 360; x += 5 {
			y, _ := known[k].Curve.Lift(units.CamDegrees(x - phase))
			s = append(s, cam.Sample{At: units.CamDegrees(x), Lift: y + units.Millimetres(zero+math.Hypot(0.01, 0.04)*rng.NormFloat64())})
		}
		got, err := cam.Identify(s, known, cam.IdentifyOptions{BothWays: true})
		if err != nil {
			t.Fatal(err)
		}
		if m := got.Matches[0]; m.Profile == known[k].Name {
			right++
			miss := math.Mod(m.Phase.Value().Degrees()-phase+900, 360) - 180
			if math.Abs(miss) < 2*m.Phase.U().Degrees() {
				inside++
			}
		}
	}
	t.Logf("right %d, phase within two u %d of %d", right, inside, trials)
	// These symmetrical cams read back to front are themselves, so Profile counts.
	if right < 97 || inside < 90 {
		t.Errorf("right %d, phase within two u %d of %d", right, inside, trials)
	}
	strange := lobe{10.5, 60, 40}
	got, err := cam.Identify(strange.read(5, 0.01, rng), known, cam.IdentifyOptions{})
	if err != nil || got.Causes.Leader().Key != "something-else" {
		t.Errorf("a strange cam: %+v %v", got.Causes.Odds, err)
	}
}

func TestOverlap(t *testing.T) {
	ex, _ := arcCam().Curve(units.CamDegrees(-54))
	in, _ := arcCam().Curve(54)
	o, err := cam.OverlapOf(ex, in, units.Millimetres(0.1))
	if err != nil || o.NoAnswer.Given() {
		t.Fatal(o.NoAnswer, err)
	}
	e, _ := in.Events(units.Millimetres(0.1))
	if want := 2 * (360 - e.Opens.Degrees()); math.Abs(o.Cam.Degrees()-want) > 1e-6 || math.Abs(math.Mod(o.SplitAt.Degrees()+180, 360)-180) > 1e-6 {
		t.Errorf("%+v, want %g about zero", o, want)
	}
	far, _ := arcCam().Curve(100)
	if o, _ := cam.OverlapOf(ex, far, units.Millimetres(0.1)); !(o.Cam < 0) || o.AreaMMDegrees != 0 {
		t.Errorf("%+v: a pause", o)
	}
	// Area against the lift formula of the arcs, by a fine sum.
	a, _ := in.Area(units.Millimetres(0.1), units.RevolutionsPerMinute(3000))
	sum := 0.0
	for x := e.Opens.Degrees(); x < e.Closes.Degrees(); x += 0.001 {
		m, _ := arcCam().At(units.CamDegrees(x - 54))
		sum += m.Lift.Millimetres() * 0.001
	}
	if math.Abs(a.LiftAngleMMDegrees-sum) > 1e-4*sum || math.Abs(a.LiftTimeMMSeconds-a.LiftAngleMMDegrees/9000) > 1e-12 {
		t.Errorf("%+v, by sum %g", a, sum)
	}
}

// Khurmi & Gupta, A Textbook of Machine Design, chapter 32, p. 1202 (seen in
// excerpts): 140 mm bore, 270 mm stroke, 475 rev/min, gas at 40 m/s: port 45 mm,
// unrounded 45.8, and a lift of 15.9 mm from the rounded one.
func ExamplePortFor() {
	port, _, err := cam.PortFor(140*units.Millimetre, units.MetresPerSecond(2*0.27*475/60), units.MetresPerSecond(40), 45*units.Degree)
	fmt.Println(port.In(units.Millimetre, 1), err)
	// Output: 45.8 mm <nil>
}

// The opening never shrinks with lift, and is the curtain's for a flat seat and
// little lift.
func TestSeat(t *testing.T) {
	s := cam.Seat{Head: 40, Port: 35, Stem: 8, Width: 2}
	last := units.Area(0)
	for x := units.Length(0); x < 14; x += 0.05 {
		o, err := s.Opening(x)
		if err != nil || o.Area < last-units.SquareMillimetres(9) { // the stages miss each other by under 2 %
			t.Fatalf("%v at %v after %v: %v", o.Area, x, last, err)
		}
		last = o.Area
	}
	x, err := s.LiftForPort()
	o, _ := s.Opening(x + 0.01)
	if err != nil || o.Stage != 3 || math.Abs(x.Millimetres()-8.5) > 1.5 {
		t.Errorf("port open at %v, stage %d: %v", x, o.Stage, err)
	}
	c, _ := arcCam().Curve(100)
	v := cam.Valve{Cam: c, Clearance: units.Millimetres(0.1)}
	a, err := v.FlowArea(s, units.RevolutionsPerMinute(3000))
	if err != nil || !(a.Mean > 0 && a.Mean < a.Greatest) || math.Abs(a.AreaTimeMM2Seconds-a.AreaAngleMM2Degrees/18000) > 1e-12 {
		t.Errorf("%+v %v", a, err)
	}
}

// The same bounds on a cam of arcs, whose curvature steps and which no spline can
// follow exactly there, read without a base circle and with the gauge off zero.
func TestSmoothingOnArcs(t *testing.T) {
	trials := 200
	if testing.Short() {
		trials = 30 // under emulation
	}
	rng := rand.New(rand.NewPCG(8, 8))
	whole, _ := arcCam().Curve(0)
	exact, _ := whole.Events(1)
	ok := 0
	for range trials {
		centre, zero := 360*rng.Float64(), 0.05*rng.NormFloat64()
		var s []cam.Sample
		for x := -84.0; x <= 84; x++ { // 2° of the crank
			m, _ := arcCam().At(units.CamDegrees(x))
			s = append(s, cam.Sample{At: units.CamDegrees(centre + x), Lift: m.Lift + units.Millimetres(zero+0.01*rng.NormFloat64())})
		}
		f, err := cam.Fit(s, cam.FitOptions{})
		if err != nil {
			t.Fatal(err)
		}
		e, err := f.Events(1)
		if err != nil || e.NoAnswer.Given() {
			t.Fatal(e.NoAnswer, err)
		}
		opening := 2 * math.Abs(math.Mod(e.Opens.Degrees()-centre-exact.Opens.Degrees()+1260, 360)-180)
		middle := 2 * math.Abs(math.Mod(e.Opens.Degrees()+e.Duration.Degrees()/2-centre+900, 360)-180)
		if opening <= 0.2 && middle <= 0.15 {
			ok++
		}
	}
	t.Logf("both within bounds in %.1f %% of %d", 100*float64(ok)/float64(trials), trials)
	if float64(ok) < 0.95*float64(trials) && !(testing.Short() && ok >= trials-4) {
		t.Errorf("only %d of %d", ok, trials)
	}
}

// outline is the invented cam of arcs as points of its circles, the nose on the x axis.
func outline(t *testing.T) (px, py []float64) {
	t.Helper()
	a := arcCam()
	shape, _ := a.Shape()
	rb, rn, rf := a.BaseRadius.Millimetres(), a.NoseRadius.Millimetres(), shape.FlankRadius.Millimetres()
	d, alpha := shape.NoseCentre.Millimetres(), a.HalfAngle.SI()
	// The nose lies on the x axis. A flank's centre is opposite the start of lift.
	type circle struct{ x, y, r, from, to float64 }
	op := rf - rb
	cx, cy := -op*math.Cos(alpha), -op*math.Sin(alpha)
	phi := shape.FlankAngle.SI()
	circles := []circle{
		{0, 0, rb, alpha, 2*math.Pi - alpha},
		{cx, cy, rf, alpha - phi, alpha}, {cx, -cy, rf, -alpha, -alpha + phi},
		{d, 0, rn, -(alpha - phi), alpha - phi},
	}
	for _, c := range circles {
		const n = 4000
		for i := range n + 1 {
			u := c.from + (c.to-c.from)*float64(i)/n
			px, py = append(px, c.x+c.r*math.Cos(u)), append(py, c.y+c.r*math.Sin(u))
		}
	}
	return px, py
}

// Radiused lift by brute force: the cam's outline as points of its circles, and the
// foot's centre on its line where it just clears them all.
func TestFollowerByOutline(t *testing.T) {
	a := arcCam()
	rb := a.BaseRadius.Millimetres()
	px, py := outline(t)
	curve, _ := a.Curve(0)
	for _, r := range []float64{8, 25} {
		round, why, err := curve.WithFollower(cam.Flat(), cam.Radiused(mm(r)), a.BaseRadius)
		if err != nil || why.Given() {
			t.Fatal(why, err)
		}
		for x := -80.0; x <= 80; x += 7.3 {
			sin, cos := math.Sincos(x * math.Pi / 180)
			far := 0.0
			for i := range px {
				along, across := px[i]*cos+py[i]*sin, -px[i]*sin+py[i]*cos
				if across < r && across > -r {
					far = max(far, along+math.Sqrt(r*r-across*across))
				}
			}
			got, _ := round.Lift(units.CamDegrees(x))
			// Points 0.02 mm apart on the outline, and the spline's own 2 µm.
			if want := far - rb - r; math.Abs(got.Millimetres()-want) > 0.003 {
				t.Errorf("radius %g at %g: %v, by the outline %.4f mm", r, x, got, want)
			}
		}
	}
}

// The lift of a lever by brute force: the swing at which its foot just clears the
// outline of the cam, turned under it either way.
func TestLeverByOutline(t *testing.T) {
	a := arcCam()
	px, py := outline(t)
	curve, _ := a.Curve(0)
	const pivot, arm, r, output = 45.0, 40.0, 15.0, 36.0
	for _, toPivot := range []bool{false, true} {
		lever := cam.Swinging(mm(r), cam.Lever{Pivot: mm(pivot), Arm: mm(arm), Output: mm(output), ToPivot: toPivot})
		swung, why, err := curve.WithFollower(cam.Flat(), lever, a.BaseRadius)
		if err != nil || why.Given() {
			t.Fatal(why, err)
		}
		back, why, err := swung.WithFollower(lever, cam.Flat(), a.BaseRadius)
		if err != nil || why.Given() {
			t.Fatal(why, err)
		}
		// The pivot lies on the x axis at A; the foot's centre stands above it, at the
		// angle side from that axis. Rotation towards the pivot is clockwise there.
		rest := a.BaseRadius.Millimetres() + r
		side := math.Acos((pivot*pivot + rest*rest - arm*arm) / (2 * pivot * rest))
		swing0 := math.Acos((pivot*pivot + arm*arm - rest*rest) / (2 * pivot * arm))
		sense := 1.0
		if toPivot {
			sense = -1
		}
		for x := -80.0; x <= 80; x += 9.1 {
			clear := func(swing float64) bool {
				fx, fy := pivot-arm*math.Cos(swing), arm*math.Sin(swing)
				// The nose stands under the resting foot at x = 0 and turns on with x.
				sin, cos := math.Sincos(side + sense*x*math.Pi/180)
				for i := range px {
					// The outline is symmetrical, so it need not be mirrored.
					ox, oy := px[i]*cos-py[i]*sin, px[i]*sin+py[i]*cos
					if (ox-fx)*(ox-fx)+(oy-fy)*(oy-fy) < r*r {
						return false
					}
				}
				return true
			}
			lo, hi := swing0-0.001, swing0+0.6
			for range 30 {
				if mid := (lo + hi) / 2; clear(mid) {
					hi = mid
				} else {
					lo = mid
				}
			}
			got, _ := swung.Lift(units.CamDegrees(x))
			if want := output * (hi - swing0); math.Abs(got.Millimetres()-want) > 0.003 {
				t.Errorf("to pivot %v at %g: %v, by the outline %.4f mm", toPivot, x, got, want)
			}
			flat, _ := back.Lift(units.CamDegrees(x))
			if want, _ := curve.Lift(units.CamDegrees(x)); math.Abs((flat - want).Millimetres()) > 0.003 {
				t.Errorf("there and back at %g: %v, was %v", x, flat, want)
			}
		}
	}
}

func mm(x float64) units.Length { return units.Millimetres(x) }
