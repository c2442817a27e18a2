package cam_test

import (
	"math"
	"reflect"
	"testing"

	"example.com/benchbook/timing/cam"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
	"pgregory.net/rapid"
)

// Nothing a caller passes causes a panic or a NaN.
func TestWildFigures(t *testing.T) {
	whole, _ := arcCam().Curve(100)
	rapid.Check(t, func(t *rapid.T) {
		mm := func(name string) units.Length { return units.Millimetres(wild(t, name)) }
		deg := func(name string) units.Angle { return units.Degrees(wild(t, name)) }
		at := func(name string) units.CamAngle { return units.CamDegrees(wild(t, name)) }
		rpm := func(name string) units.RotationalSpeed { return units.RevolutionsPerMinute(wild(t, name)) }
		y, err := whole.Lift(at("at"))
		finite(t, "lift", err, y)
		m, err := whole.Motion(at("at"))
		finite(t, "motion", err, m)
		inTime, err := m.At(rpm("speed"))
		finite(t, "in time", err, inTime)
		c, err := whole.Advanced(at("by"))
		if err != nil {
			c = whole
		}
		e, err := c.Events(mm("check"))
		finite(t, "events", err, e)
		ce, err := c.Centres(mm("check"))
		finite(t, "centres", err, ce)
		a, err := c.Area(mm("check"), rpm("speed"))
		finite(t, "area", err, a)
		o, err := cam.OverlapOf(c, whole, mm("check"))
		finite(t, "overlap", err, o)
		k, err := c.Contact(at("at"), cam.Radiused(mm("r")), mm("base"))
		finite(t, "contact", err, k)
		if rapid.IntRange(0, 20).Draw(t, "slow ones") < 5 {
			lever := cam.Lever{}
			if rapid.Bool().Draw(t, "lever") {
				lever = cam.Lever{Pivot: mm("pivot"), Arm: mm("arm"), Output: mm("output")}
			}
			f, _, err := c.WithFollower(cam.Radiused(mm("r")), cam.Swinging(mm("s"), lever), mm("base"))
			if err == nil && f != nil {
				z, err := f.Motion(at("at"))
				finite(t, "refollowed", err, z)
			}
		}
		r := cam.Rocker{CamArm: mm("p"), ValveArm: mm("q"), CamTilt: deg("t"), ValveTilt: deg("u")}
		ro, err := r.At(mm("cam"))
		finite(t, "rocker", err, ro)
		v := cam.Valve{Cam: c, Rocker: r, Clearance: mm("clearance")}
		vl, err := v.Lift(at("at"))
		finite(t, "valve lift", err, vl)
		ve, err := v.Events(mm("check"))
		finite(t, "valve events", err, ve)
		w, err := v.WithClearance(mm("c"), mm("check"))
		finite(t, "clearance", err, w)
		cf, _, err := v.ClearanceFor(at("d"), mm("check"))
		finite(t, "clearance for", err, cf)
		lo, err := v.LiftOff(cam.SpringLoad{Seated: units.Newtons(wild(t, "F")), Rate: units.NewtonsPerMillimetre(wild(t, "k")), Mass: units.Grams(wild(t, "m"))})
		finite(t, "lift off", err, lo)
		pm, err := cam.Parts{Valve: units.Grams(wild(t, "m")), Rocker: units.Grams(wild(t, "m")), Ratio: units.Value(wild(t, "r")), ValveArm: mm("a"), CamArm: mm("b"), Follower: units.Grams(wild(t, "m"))}.AtValve()
		finite(t, "parts", err, pm)
		s := cam.Seat{Head: mm("head"), Port: mm("port"), Stem: mm("stem"), Width: mm("width"), Angle: deg("a")}
		so, err := s.Opening(mm("lift"))
		finite(t, "opening", err, so)
		sp, err := s.LiftForPort()
		finite(t, "lift for port", err, sp)
		fa, err := v.FlowArea(s, rpm("speed"))
		finite(t, "flow area", err, fa)
		rise := cam.Rise{Law: cam.Law(rapid.IntRange(0, 4).Draw(t, "law")), Lift: mm("lift"), Over: at("over")}
		rm, err := rise.At(at("from"))
		finite(t, "rise", err, rm)
		rg, err := rise.Greatest(rpm("speed"))
		finite(t, "greatest", err, rg)
		ac := cam.ArcCam{BaseRadius: mm("rb"), NoseRadius: mm("rn"), Lift: mm("h"), HalfAngle: at("half")}
		am, err := ac.At(at("x"))
		finite(t, "arcs", err, am)
		tc := cam.TangentCam{BaseRadius: mm("rb"), Lift: mm("h"), HalfAngle: at("half"), Roller: mm("rr")}
		tm, err := tc.At(at("x"))
		finite(t, "tangent", err, tm)
		pf, err := cam.PressFit{Joint: mm("d"), Hub: mm("D"), ShaftBore: mm("di"), Length: mm("L"), Interference: measure.Interval[units.Length]{High: mm("i")}, HubMetal: cam.Metal{Poisson: wild(t, "nu")}}.Hold()
		finite(t, "press fit", err, pf)
		ta := cam.Taper{HalfAngle: deg("a"), MeanDiameter: mm("d"), Friction: measure.Interval[units.Ratio]{High: units.Value(wild(t, "mu"))}}
		if rapid.Bool().Draw(t, "one in") {
			ta.HalfAngle, ta.OneIn = 0, wild(t, "n")
		}
		tg, err := ta.Hold(units.Newtons(wild(t, "W")))
		finite(t, "taper", err, tg)
		du, err := ta.DriveUp(mm("s"))
		finite(t, "drive up", err, du)
		la, err := cam.Lame(mm("a"), mm("b"), mm("r"), units.Bars(wild(t, "p")), units.Bars(wild(t, "q")))
		finite(t, "lame", err, la)
		key := cam.Key{Shaft: mm("d"), Width: mm("w"), Height: mm("h"), Length: mm("l")}
		kh, err := key.Holds(units.Bars(wild(t, "s")), units.Bars(wild(t, "b")))
		finite(t, "key", err, kh)
		kl, err := key.LengthFor(units.NewtonMetres(wild(t, "T")), units.Bars(wild(t, "s")), units.Bars(wild(t, "b")))
		finite(t, "key length", err, kl)
		ks, err := cam.KeySlack(mm("c"), mm("d"))
		finite(t, "slack", err, ks)
		st, err := cam.Splines{Number: 6, Inner: mm("d"), Outer: mm("D"), Length: mm("l")}.Torque(units.Bars(wild(t, "p")))
		finite(t, "splines", err, st)
		po, li, err := cam.PortFor(mm("bore"), units.MetresPerSecond(wild(t, "u")), units.MetresPerSecond(wild(t, "v")), deg("a"))
		finite(t, "port", err, po, li)
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
				x = wild(t, "x")
			}
			y := rapid.SampledFrom([]float64{0, 0, 0, 1, 2, 5, 8, -3, 99}).Draw(t, "y")
			if rapid.IntRange(0, 60).Draw(t, "odd") == 0 {
				y = wild(t, "y")
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
			finite(t, "motion", err, m)
		}
		finite(t, "fitted", nil, f.Noise, f.Doubt, f.Rough, f.Zero, f.RunOut, f.Parameters)
		e, err := f.Events(1)
		finite(t, "events", err, e)
		c, err := f.Centres(1)
		finite(t, "centres", err, c)
		d, err := f.Doubts(e, 0, 0)
		finite(t, "doubts", err, d)
	})
}

// wild are figures no caller should pass, among some that one might.
func wild(t *rapid.T, name string) float64 {
	return rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, -1, 1e-300, 1e300, -1e300, 5e-324, 0.2, 1, 3, 8, 15, 20, 40, 60, 89, 150, 400}).Draw(t, name)
}

// finite fails on a result given without an error that holds a figure that is not a
// number.
func finite(t *rapid.T, what string, err error, results ...any) {
	if err != nil {
		for _, f := range fault.Faults(err) {
			if f.Code == "" || f.Rule == "" {
				t.Fatalf("%s: a fault without code or rule: %+v", what, f)
			}
		}
		return
	}
	var walk func(v reflect.Value, path string)
	walk = func(v reflect.Value, path string) {
		switch v.Kind() {
		case reflect.Float64:
			if x := v.Float(); x-x != 0 {
				t.Fatalf("%s: %s is %g", what, path, x)
			}
		case reflect.Struct:
			for i := range v.NumField() {
				walk(v.Field(i), path+"."+v.Type().Field(i).Name)
			}
		case reflect.Slice, reflect.Array:
			for i := range v.Len() {
				walk(v.Index(i), path+"[]")
			}
		case reflect.Pointer, reflect.Interface:
			if !v.IsNil() && v.Kind() == reflect.Interface {
				walk(v.Elem(), path)
			}
		}
	}
	for _, r := range results {
		walk(reflect.ValueOf(r), what)
	}
}
