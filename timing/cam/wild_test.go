package cam_test

import (
	"testing"

	"example.com/benchbook/timing/cam"
	"example.com/benchbook/timing/internal/wild"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
	"pgregory.net/rapid"
)

// Nothing a caller passes causes a panic or a NaN.
func TestWildFigures(t *testing.T) {
	whole, _ := arcCam().Curve(100)
	rapid.Check(t, func(t *rapid.T) {
		mm := func(name string) units.Length { return units.Millimetres(wild.Figure(t, name)) }
		deg := func(name string) units.Angle { return units.Degrees(wild.Figure(t, name)) }
		at := func(name string) units.CamAngle { return units.CamDegrees(wild.Figure(t, name)) }
		rpm := func(name string) units.RotationalSpeed { return units.RevolutionsPerMinute(wild.Figure(t, name)) }
		y, err := whole.Lift(at("at"))
		wild.Finite(t, "lift", err, y)
		m, err := whole.Motion(at("at"))
		wild.Finite(t, "motion", err, m)
		inTime, err := m.At(rpm("speed"))
		wild.Finite(t, "in time", err, inTime)
		c, err := whole.Advanced(at("by"))
		if err != nil {
			c = whole
		}
		e, err := c.Events(mm("check"))
		wild.Finite(t, "events", err, e)
		ce, err := c.Centres(mm("check"))
		wild.Finite(t, "centres", err, ce)
		a, err := c.Area(mm("check"), rpm("speed"))
		wild.Finite(t, "area", err, a)
		o, err := cam.OverlapOf(c, whole, mm("check"))
		wild.Finite(t, "overlap", err, o)
		k, err := c.Contact(at("at"), cam.Radiused(mm("r")), mm("base"))
		wild.Finite(t, "contact", err, k)
		if rapid.IntRange(0, 20).Draw(t, "slow ones") < 5 {
			lever := cam.Lever{}
			if rapid.Bool().Draw(t, "lever") {
				lever = cam.Lever{Pivot: mm("pivot"), Arm: mm("arm"), Output: mm("output")}
			}
			f, _, err := c.WithFollower(cam.Radiused(mm("r")), cam.Swinging(mm("s"), lever), mm("base"))
			if err == nil && f != nil {
				z, err := f.Motion(at("at"))
				wild.Finite(t, "refollowed", err, z)
			}
		}
		r := cam.Rocker{CamArm: mm("p"), ValveArm: mm("q"), CamTilt: deg("t"), ValveTilt: deg("u")}
		ro, err := r.At(mm("cam"))
		wild.Finite(t, "rocker", err, ro)
		v := cam.Valve{Cam: c, Rocker: r, Clearance: mm("clearance")}
		vl, err := v.Lift(at("at"))
		wild.Finite(t, "valve lift", err, vl)
		ve, err := v.Events(mm("check"))
		wild.Finite(t, "valve events", err, ve)
		w, err := v.WithClearance(mm("c"), mm("check"))
		wild.Finite(t, "clearance", err, w)
		cf, _, err := v.ClearanceFor(at("d"), mm("check"))
		wild.Finite(t, "clearance for", err, cf)
		lo, err := v.LiftOff(cam.SpringLoad{Seated: units.Newtons(wild.Figure(t, "F")), Rate: units.NewtonsPerMillimetre(wild.Figure(t, "k")), Mass: units.Grams(wild.Figure(t, "m"))})
		wild.Finite(t, "lift off", err, lo)
		pm, err := cam.Parts{Valve: units.Grams(wild.Figure(t, "m")), Rocker: units.Grams(wild.Figure(t, "m")), Ratio: units.Value(wild.Figure(t, "r")), ValveArm: mm("a"), CamArm: mm("b"), Follower: units.Grams(wild.Figure(t, "m"))}.AtValve()
		wild.Finite(t, "parts", err, pm)
		s := cam.Seat{Head: mm("head"), Port: mm("port"), Stem: mm("stem"), Width: mm("width"), Angle: deg("a")}
		so, err := s.Opening(mm("lift"))
		wild.Finite(t, "opening", err, so)
		sp, err := s.LiftForPort()
		wild.Finite(t, "lift for port", err, sp)
		fa, err := v.FlowArea(s, rpm("speed"))
		wild.Finite(t, "flow area", err, fa)
		rise := cam.Rise{Law: cam.Law(rapid.IntRange(0, 4).Draw(t, "law")), Lift: mm("lift"), Over: at("over")}
		rm, err := rise.At(at("from"))
		wild.Finite(t, "rise", err, rm)
		rg, err := rise.Greatest(rpm("speed"))
		wild.Finite(t, "greatest", err, rg)
		ac := cam.ArcCam{BaseRadius: mm("rb"), NoseRadius: mm("rn"), Lift: mm("h"), HalfAngle: at("half")}
		am, err := ac.At(at("x"))
		wild.Finite(t, "arcs", err, am)
		tc := cam.TangentCam{BaseRadius: mm("rb"), Lift: mm("h"), HalfAngle: at("half"), Roller: mm("rr")}
		tm, err := tc.At(at("x"))
		wild.Finite(t, "tangent", err, tm)
		pf, err := cam.PressFit{Joint: mm("d"), Hub: mm("D"), ShaftBore: mm("di"), Length: mm("L"), Interference: measure.Interval[units.Length]{High: mm("i")}, HubMetal: cam.Metal{Poisson: wild.Figure(t, "nu")}}.Hold()
		wild.Finite(t, "press fit", err, pf)
		ta := cam.Taper{HalfAngle: deg("a"), MeanDiameter: mm("d"), Friction: measure.Interval[units.Ratio]{High: units.Value(wild.Figure(t, "mu"))}}
		if rapid.Bool().Draw(t, "one in") {
			ta.HalfAngle, ta.OneIn = 0, wild.Figure(t, "n")
		}
		tg, err := ta.Hold(units.Newtons(wild.Figure(t, "W")))
		wild.Finite(t, "taper", err, tg)
		ta.Length = mm("L")
		worn, err := ta.Bedded(units.Newtons(wild.Figure(t, "F")))
		wild.Finite(t, "bedded", err, worn)
		du, err := ta.DriveUp(mm("s"))
		wild.Finite(t, "drive up", err, du)
		la, err := cam.Lame(mm("a"), mm("b"), mm("r"), units.Bars(wild.Figure(t, "p")), units.Bars(wild.Figure(t, "q")))
		wild.Finite(t, "lame", err, la)
		key := cam.Key{Shaft: mm("d"), Width: mm("w"), Height: mm("h"), Length: mm("l")}
		kh, err := key.Holds(units.Bars(wild.Figure(t, "s")), units.Bars(wild.Figure(t, "b")))
		wild.Finite(t, "key", err, kh)
		kl, err := key.LengthFor(units.NewtonMetres(wild.Figure(t, "T")), units.Bars(wild.Figure(t, "s")), units.Bars(wild.Figure(t, "b")))
		wild.Finite(t, "key length", err, kl)
		ks, err := cam.KeySlack(mm("c"), mm("d"))
		wild.Finite(t, "slack", err, ks)
		st, err := cam.Splines{Number: 6, Inner: mm("d"), Outer: mm("D"), Length: mm("l")}.Torque(units.Bars(wild.Figure(t, "p")))
		wild.Finite(t, "splines", err, st)
		po, li, err := cam.PortFor(mm("bore"), units.MetresPerSecond(wild.Figure(t, "u")), units.MetresPerSecond(wild.Figure(t, "v")), deg("a"))
		wild.Finite(t, "port", err, po, li)
	})
}

// Wild readings give a fault or a curve of numbers.
func TestWildReadings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 40).Draw(t, "n")
		var s []cam.Sample
		for i := range n {
			x := float64(i * 10)
			if rapid.IntRange(0, 30).Draw(t, "odd") == 0 {
				x = wild.Figure(t, "x")
			}
			y := rapid.SampledFrom([]float64{0, 0, 0, 1, 2, 5, 8, -3, 99}).Draw(t, "y")
			if rapid.IntRange(0, 60).Draw(t, "odd") == 0 {
				y = wild.Figure(t, "y")
			}
			s = append(s, cam.Sample{At: units.CamDegrees(x), Lift: units.Millimetres(y)})
		}
		opt := cam.FitOptions{Criterion: cam.Criterion(rapid.IntRange(0, 3).Draw(t, "criterion")), KeepZero: rapid.Bool().Draw(t, "keep")}
		f, err := cam.Fit(s, opt)
		if err != nil {
			return
		}
		for x := -5.0; x < 370; x += 3.3 {
			m, err := f.Motion(units.CamDegrees(x))
			wild.Finite(t, "motion", err, m)
		}
		wild.Finite(t, "fitted", nil, f.Noise, f.Doubt, f.Rough, f.Zero, f.RunOut, f.Parameters)
		e, err := f.Events(1)
		wild.Finite(t, "events", err, e)
		c, err := f.Centres(1)
		wild.Finite(t, "centres", err, c)
		d, err := f.Doubts(e, 0, 0)
		wild.Finite(t, "doubts", err, d)
	})
}
