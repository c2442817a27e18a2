package cam_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"example.com/benchbook/timing/cam"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// limit is a figure at its documented limit, which is taken, and just past it, which
// is refused at the path.
type limit struct {
	name string
	ask  func(x float64) error
	ok   []float64
	bad  []float64
	path string
}

func checkLimits(t *testing.T, limits []limit) {
	t.Helper()
	for _, c := range limits {
		for _, x := range c.ok {
			if err := c.ask(x); err != nil {
				t.Errorf("%s %g is refused: %v", c.name, x, err)
			}
		}
		for _, x := range c.bad {
			if err := c.ask(x); !refusedAt(err, c.path) {
				t.Errorf("%s %g: %v, want a fault at %q", c.name, x, err, c.path)
			}
		}
	}
}

// refusedAt reports a fault at a path, and only there.
func refusedAt(err error, path string) bool {
	all := fault.Faults(err)
	return len(all) == 1 && all[0].Path == path && all[0].Code != "" && all[0].Rule != ""
}

func second[A, B any](_ A, b B) B { return b }

func third[A, B, C any](_ A, _ B, c C) C { return c }

const (
	past = 1 + 1e-12 // just beyond a limit
	shy  = 1 - 1e-12 // just within
)

func TestLimitsOfCurves(t *testing.T) {
	c, err := arcCam().Curve(100)
	if err != nil {
		t.Fatal(err)
	}
	fitted := cam.Fitted{Curve: c}
	flanks := cam.Events{OpeningRise: 0.1, ClosingRise: 0.2}
	v := cam.Valve{Cam: c, Clearance: mm(0.1)}
	seat := cam.Seat{Head: 40, Port: 35, Stem: 8, Width: 2}
	nan, inf := math.NaN(), math.Inf(1)
	checkLimits(t, []limit{
		{"order of a trace", func(x float64) error { return second(c.Trace(int(x))) }, []float64{0, 1, 2, 3}, []float64{-1, 4}, "order"},
		{"doubt of a curve", func(x float64) error { f := fitted; f.Doubt = mm(x); return second(f.Doubts(flanks, 0, 0)) }, []float64{0, 100}, []float64{-1e-12, 100 * past, nan}, "doubt"},
		{"zero", func(x float64) error { return second(fitted.Doubts(flanks, mm(x), 0)) }, []float64{0, 1}, []float64{-1e-12, nan, inf}, "zero"},
		{"wheel", func(x float64) error { return second(fitted.Doubts(flanks, 0, units.CamDegrees(x))) }, []float64{0, 1}, []float64{-1e-12, nan, inf}, "wheel"},
		{"rise at opening", func(x float64) error {
			return second(fitted.Doubts(cam.Events{OpeningRise: mm(x), ClosingRise: 1}, 0, 0))
		}, []float64{1e-9 * past, 1}, []float64{1e-9, 0, -1, nan}, "events"},
		{"fall at closing", func(x float64) error {
			return second(fitted.Doubts(cam.Events{OpeningRise: 1, ClosingRise: mm(x)}, 0, 0))
		}, []float64{1e-9 * past, 1}, []float64{1e-9, 0, -1, nan}, "events"},
		{"speed of an area", func(x float64) error { return second(c.Area(1, units.RevolutionsPerMinute(x))) }, []float64{0, 1e-3, 3000}, []float64{1e-3 * shy, 1e-9, -1, nan, inf}, "speed"},
		{"speed of a flow area", func(x float64) error { return second(v.FlowArea(seat, units.RevolutionsPerMinute(x))) }, []float64{0, 1e-3, 3000}, []float64{1e-3 * shy, 1e-9, -1, nan, inf}, "speed"},
		{"duration", func(x float64) error { return third(v.ClearanceFor(units.CamDegrees(x), 1)) }, []float64{1e-9, 360 * shy}, []float64{0, 360, -1, nan}, "duration"},
		{"clearance", func(x float64) error { w := v; w.Clearance = mm(x); return second(w.Lift(100)) }, []float64{0, 50}, []float64{-1e-12, nan, inf}, "clearance"},
		{"check at the valve", func(x float64) error { return second(v.Events(mm(x))) }, []float64{0, 50}, []float64{-1e-12, nan, inf}, "check"},
		{"force on the seat", func(x float64) error {
			return second(v.LiftOff(cam.SpringLoad{Seated: units.Newtons(x), Mass: 0.1}))
		}, []float64{1e-9, 1e12}, []float64{0, -1, 1e12 * past, nan}, "seated"},
		{"rate", func(x float64) error {
			return second(v.LiftOff(cam.SpringLoad{Seated: 1, Rate: units.NewtonsPerMetre(x), Mass: 0.1}))
		}, []float64{0, 1e12}, []float64{-1e-9, 1e12 * past, nan}, "rate"},
		{"mass", func(x float64) error {
			return second(v.LiftOff(cam.SpringLoad{Seated: 1, Mass: units.Kilograms(x)}))
		}, []float64{1e-9, 1e12}, []float64{0, -1, 1e12 * past, nan}, "mass"},
		{"base circle", func(x float64) error {
			return second(c.Contact(100, cam.Flat(), units.FromSI[units.Length](x)))
		}, []float64{1e-12, 1}, []float64{0.9e-12, 0, -1, nan, inf}, "base"},
		{"radius of a foot", func(x float64) error { return second(c.Contact(100, cam.Radiused(mm(x)), 14)) }, []float64{0, 1}, []float64{-1e-12, nan, inf}, "follower.radius"},
		{"rise over", func(x float64) error {
			return second(cam.Rise{Lift: 1, Over: units.CamDegrees(x)}.At(0))
		}, []float64{0.01, 360}, []float64{0.01 * shy, 360 * past, 0, nan}, "rise.over"},
		{"place in a rise", func(x float64) error { return second(cam.Rise{Lift: 1, Over: 60}.At(units.CamDegrees(x))) }, []float64{0, 60}, []float64{-1e-12, 60 * past, nan}, "from"},
		{"law", func(x float64) error { return second(cam.Rise{Law: cam.Law(x), Lift: 1, Over: 60}.At(0)) }, []float64{0, 2}, []float64{3, 255}, "rise.law"},
		{"speed of a rise", func(x float64) error {
			return second(cam.Rise{Lift: 1, Over: 60}.Greatest(units.RevolutionsPerMinute(x)))
		}, []float64{0, -100}, []float64{nan, inf}, "speed"},
	})
	// A rise that is refused is not asked about a place in it as well.
	if _, err := (cam.Rise{Lift: 1}).At(5); !refusedAt(err, "rise.over") {
		t.Error(err)
	}
}

func TestLimitsOfLobes(t *testing.T) {
	arcs := func(change func(*cam.ArcCam, float64)) func(float64) error {
		return func(x float64) error { a := arcCam(); change(&a, x); return second(a.Shape()) }
	}
	tangents := func(change func(*cam.TangentCam, float64)) func(float64) error {
		return func(x float64) error {
			c := cam.TangentCam{BaseRadius: 30, Lift: 1, HalfAngle: 60, Roller: 10}
			change(&c, x)
			return second(c.Shape())
		}
	}
	checkLimits(t, []limit{
		// A lift small enough joins by a flank at any half angle whose cosine leaves room.
		{"half angle of a small lift", func(x float64) error {
			return second(cam.ArcCam{BaseRadius: 30, NoseRadius: 4, Lift: 1e-4, HalfAngle: units.CamDegrees(x)}.Shape())
		}, []float64{1, 90, 179.9}, []float64{1 * shy, 180, 0, -1, math.NaN()}, "half_angle"},
		{"half angle", arcs(func(a *cam.ArcCam, x float64) { a.HalfAngle = units.CamDegrees(x) }), []float64{68, 120, 180 * shy}, []float64{55, 180, 360}, "half_angle"},
		{"nose as round as the base", arcs(func(a *cam.ArcCam, x float64) { a.HalfAngle, a.NoseRadius = 100, mm(x) }), []float64{14 * shy}, []float64{14, 15, 40}, "half_angle"},
		// 1e8 mm and a nanometre are 1e8 mm: no flank is left.
		{"a lift lost in rounding", func(x float64) error {
			return second(cam.ArcCam{BaseRadius: mm(x), NoseRadius: 1, Lift: 1e-9, HalfAngle: 120}.Shape())
		}, []float64{20}, []float64{1e8}, "half_angle"},
		{"half angle of straight flanks", tangents(func(c *cam.TangentCam, x float64) { c.HalfAngle, c.Lift = units.CamDegrees(x), 1e-3 }), []float64{1, 90 * shy}, []float64{1 * shy, 90, 0, math.NaN()}, "half_angle"},
		{"lift of straight flanks", tangents(func(c *cam.TangentCam, x float64) { c.Lift = mm(x) }), []float64{29.9}, []float64{30.1, 60}, "half_angle"},
	})
	// Where no flank could be convex it says by what.
	steep := arcCam()
	steep.HalfAngle = 55
	if _, err := steep.Shape(); err == nil || !strings.Contains(err.Error(), "nose centre times cos(half angle) must be less than base less nose radius") {
		t.Error(err)
	}
	// The flanks meet in a point: nose radius nought. 60° has a cosine of a half but for
	// rounding, so the base is reckoned as the shape reckons it.
	point := cam.TangentCam{Lift: 20, HalfAngle: 60, Roller: 10}
	point.BaseRadius = mm(20/(1-math.Cos(point.HalfAngle.SI())) - 20)
	if _, err := point.Shape(); !refusedAt(err, "half_angle") {
		t.Errorf("flanks that meet in a point: %v", err)
	}
}

func TestLimitsOfHolding(t *testing.T) {
	fit := func(change func(*cam.PressFit, float64)) func(float64) error {
		return func(x float64) error {
			f := cam.PressFit{Joint: 20, Hub: 40, Length: 15, Interference: measure.Interval[units.Length]{Low: mm(0.01), High: mm(0.02)}}
			change(&f, x)
			return second(f.Hold())
		}
	}
	taper := func(change func(*cam.Taper, float64)) func(float64) error {
		return func(x float64) error {
			t := cam.Taper{OneIn: 8, MeanDiameter: 16}
			change(&t, x)
			return second(t.Hold(1000))
		}
	}
	splines := cam.Splines{Number: 6, Inner: 20, Outer: 24, Length: 15}
	key := cam.Key{Shaft: 16, Width: 5, Height: 5, Length: 12}
	nan := math.NaN()
	checkLimits(t, []limit{
		{"joint in its hub", fit(func(f *cam.PressFit, x float64) { f.Joint = mm(x) }), []float64{40 * shy}, []float64{40, 41}, "joint"},
		{"bore in its shaft", fit(func(f *cam.PressFit, x float64) { f.ShaftBore = mm(x) }), []float64{0, 20 * shy}, []float64{20, 21}, "joint"},
		{"bore", fit(func(f *cam.PressFit, x float64) { f.ShaftBore = mm(x) }), nil, []float64{-1e-12, nan}, "shaft_bore"},
		{"least interference", fit(func(f *cam.PressFit, x float64) { f.Interference.Low = mm(x) }), []float64{0, 0.02}, []float64{-1e-12, 0.02 * past, nan}, "interference"},
		{"greatest interference", fit(func(f *cam.PressFit, x float64) { f.Interference = measure.Interval[units.Length]{High: mm(x)} }), []float64{1e-9, 0.4 * shy}, []float64{0, 0.4, nan}, "interference"},
		{"Poisson's ratio of the hub", fit(func(f *cam.PressFit, x float64) { f.HubMetal = cam.Metal{Modulus: 2e11, Poisson: x} }), []float64{0, 0.5 * shy}, []float64{-1e-12, 0.5, nan}, "hub_metal.poisson"},
		{"Poisson's ratio of the shaft", fit(func(f *cam.PressFit, x float64) { f.ShaftMetal = cam.Metal{Modulus: 2e11, Poisson: x} }), []float64{0, 0.5 * shy}, []float64{-1e-12, 0.5, nan}, "shaft_metal.poisson"},
		{"least friction", taper(func(f *cam.Taper, x float64) {
			f.Friction = measure.Interval[units.Ratio]{Low: units.Value(x), High: 0.5}
		}), []float64{0, 0.5}, []float64{-1e-12, 0.5 * past, nan}, "friction"},
		{"greatest friction", taper(func(f *cam.Taper, x float64) {
			f.Friction = measure.Interval[units.Ratio]{Low: 0.1, High: units.Value(x)}
		}), []float64{0.1, 1}, []float64{0.1 * shy, past, nan}, "friction"},
		{"half angle", taper(func(f *cam.Taper, x float64) { f.OneIn, f.HalfAngle = 0, units.FromSI[units.Angle](x) }), []float64{1e-6 * past, math.Pi / 4 * shy}, []float64{1e-6, 0, -1, math.Pi / 4, 1, nan}, "half_angle"},
		{"one in", taper(func(f *cam.Taper, x float64) { f.OneIn = x }), []float64{0.5 * past, 400_000}, []float64{0.5 * shy, 600_000, -8, nan}, "half_angle"},
		{"push", func(x float64) error { return second(cam.Taper{OneIn: 8, MeanDiameter: 16}.Hold(units.Newtons(x))) }, []float64{1e-12, 1e12}, []float64{1e-12 * shy, 0, 1e12 * past, nan}, "push"},
		{"driven up by", func(x float64) error { return second(cam.Taper{OneIn: 8}.DriveUp(mm(x))) }, []float64{0, 1}, []float64{-1e-12, nan}, "by"},
		{"number of splines", func(x float64) error { s := splines; s.Number = int(x); return second(s.Torque(1e6)) }, []float64{1, 24}, []float64{0, -6}, "number"},
		{"outer diameter of splines", func(x float64) error { s := splines; s.Outer = mm(x); return second(s.Torque(1e6)) }, []float64{20 * past}, []float64{20, 19, nan, math.Inf(1)}, "outer"},
		{"friction of splines", func(x float64) error { return second(splines.ShiftForce(100, units.Value(x))) }, []float64{0, 1}, []float64{-1e-12, past, nan}, "friction"},
		{"torque of splines", func(x float64) error { return second(splines.ShiftForce(units.NewtonMetres(x), 0.1)) }, []float64{0, 1e12}, []float64{-1e-12, 1e12 * past, nan}, "torque"},
		{"stress of a key", func(x float64) error { return second(key.Holds(units.Pascals(x), 1e6)) }, []float64{1e-12, 1e12}, []float64{0, 1e12 * past, nan}, "shear"},
		{"slack of a key", func(x float64) error { return second(cam.KeySlack(mm(x), 16)) }, []float64{0, 1}, []float64{-1e-12, nan}, "slack"},
		{"inner radius of a cylinder", func(x float64) error { return second(cam.Lame(mm(x), 20, 20, 1e6, 0)) }, []float64{0, 20 * (1 - 1.1e-6)}, []float64{-1e-12, 20 * (1 - 1e-6), 20 * (1 - 0.9e-6), 20, nan}, "at"},
		{"place in a cylinder", func(x float64) error { return second(cam.Lame(0, 20, mm(x), 1e6, 0)) }, []float64{1e-3, 20}, []float64{1e-3 * shy, 0, 20 * past, nan}, "at"},
	})
	// Diameters out of order are said only of diameters that are any.
	if _, err := (cam.PressFit{Joint: 20, Length: 15, Interference: measure.Interval[units.Length]{High: mm(0.02)}}).Hold(); !refusedAt(err, "hub") {
		t.Error(err)
	}
	if _, err := (cam.Taper{OneIn: 8, HalfAngle: 3, MeanDiameter: 16}).Hold(1); !refusedAt(err, "one_in") {
		t.Error("a half angle and a taper:", err)
	}
}

func TestLimitsOfValveGear(t *testing.T) {
	rocker := func(change func(*cam.Rocker, float64)) func(float64) error {
		return func(x float64) error {
			r := cam.Rocker{CamArm: 30, ValveArm: 36}
			change(&r, x)
			return second(r.At(0))
		}
	}
	parts := func(change func(*cam.Parts, float64)) func(float64) error {
		return func(x float64) error { var p cam.Parts; change(&p, x); return second(p.AtValve()) }
	}
	seat := func(change func(*cam.Seat, float64)) func(float64) error {
		return func(x float64) error {
			s := cam.Seat{Head: 40, Port: 35, Stem: 8, Width: 2}
			change(&s, x)
			return second(s.Opening(1))
		}
	}
	nan := math.NaN()
	checkLimits(t, []limit{
		{"cam arm", rocker(func(r *cam.Rocker, x float64) { r.CamArm = mm(x) }), []float64{1e-3, 1e4}, []float64{1e-3 * shy, 1e4 * past, 0, -30, nan}, "cam_arm"},
		{"valve arm", rocker(func(r *cam.Rocker, x float64) { r.ValveArm = mm(x) }), []float64{1e-3, 1e4}, []float64{1e-3 * shy, 1e4 * past, 0, -30, nan}, "valve_arm"},
		{"cam tilt", rocker(func(r *cam.Rocker, x float64) { r.CamTilt = units.Degrees(x) }), []float64{45, -45}, []float64{45 * past, -45 * past, nan}, "cam_tilt"},
		{"valve tilt", rocker(func(r *cam.Rocker, x float64) { r.ValveTilt = units.Degrees(x) }), []float64{45, -45}, []float64{45 * past, -45 * past, nan}, "valve_tilt"},
		{"ratio of the parts", parts(func(p *cam.Parts, x float64) { p.Ratio = units.Value(x) }), []float64{0, 0.05, 20}, []float64{0.05 * shy, 20 * past, -1, nan}, "ratio"},
		{"valve arm of the parts", parts(func(p *cam.Parts, x float64) { p.ValveArm = mm(x) }), []float64{0, 1e-3, 1e4}, []float64{1e-3 * shy, 1e4 * past, -1, nan}, "valve_arm"},
		{"cam arm of the parts", parts(func(p *cam.Parts, x float64) { p.CamArm = mm(x) }), []float64{0, 1e-3, 1e4}, []float64{1e-3 * shy, 1e4 * past, -1, nan}, "cam_arm"},
		{"mass of the rocker", parts(func(p *cam.Parts, x float64) { p.Rocker = units.Kilograms(x) }), []float64{0, 1e12}, []float64{-1e-12, 1e12 * past, nan}, "rocker"},
		{"port in its head", seat(func(s *cam.Seat, x float64) { s.Port = mm(x) }), []float64{40, 8 * past}, []float64{40 * past, 8}, "seat.port"},
		{"width of a seat", seat(func(s *cam.Seat, x float64) { s.Width = mm(x) }), []float64{20 * shy}, []float64{20, 30}, "seat.port"},
		{"angle of a seat", seat(func(s *cam.Seat, x float64) { s.Angle = units.Degrees(x) }), []float64{0, 1e-9, 80 * shy}, []float64{80, -1e-12, nan}, "seat.angle"},
		{"head", seat(func(s *cam.Seat, x float64) { s.Head = mm(x) }), nil, []float64{0, -1, nan}, "seat.head"},
		{"lift", func(x float64) error {
			return second(cam.Seat{Head: 40, Port: 35, Width: 2}.Opening(mm(x)))
		}, []float64{0, 100}, []float64{-1e-12, nan}, "lift"},
		{"seat of a port", func(x float64) error { return third(cam.PortFor(80, 10, 60, units.Degrees(x))) }, []float64{0, 80 * shy}, []float64{-1e-12, 80, nan}, "seat"},
		{"bore", func(x float64) error { return third(cam.PortFor(units.FromSI[units.Length](x), 10, 60, 45)) }, []float64{1e-3}, []float64{0, -1, nan}, "bore"},
	})
}

func TestLimitsOfTables(t *testing.T) {
	table := func(n int, y float64) error {
		lift := make([]units.Length, n)
		lift[n/2] = mm(y)
		return second(cam.InterpolateEven(lift))
	}
	fit := func(n int, at, y float64) error {
		s := make([]cam.Sample, n)
		for i := range s {
			s[i].At = units.CamDegrees(360 * float64(i) / float64(n))
		}
		s[3].At += units.CamDegrees(at)
		s[3].Lift = mm(y)
		return second(cam.Fit(s, cam.FitOptions{Criterion: cam.Interpolated, KeepZero: true, FillBase: 360, Small: 1e3}))
	}
	profiles := func(n int) error {
		c := hump(t, 1, 3, 6, 3, 1)
		known := make([]cam.Profile, n)
		for i := range known {
			known[i] = cam.Profile{Name: "cam " + strconv.Itoa(i), Curve: c}
		}
		s := make([]cam.Sample, 8)
		for i := range s {
			s[i].At = units.CamDegrees(45 * float64(i))
		}
		return second(cam.Identify(s, known, cam.IdentifyOptions{}))
	}
	checkLimits(t, []limit{
		{"lifts of a table", func(x float64) error { return table(int(x), 1) }, []float64{8, 100_000}, []float64{7, 100_001}, "readings"},
		{"a lift of a table", func(x float64) error { return table(8, x) }, []float64{100, -100}, []float64{100 * past, -100 * past, math.NaN()}, "lift[4]"},
		{"readings of a fit", func(x float64) error { return fit(int(x), 0, 1) }, []float64{8, 100_000}, []float64{7, 100_001}, "readings"},
		{"a lift of a fit", func(x float64) error { return fit(40, 0, x) }, []float64{100, -100}, []float64{100 * past, -100 * past, math.NaN()}, "readings[3].lift"},
		{"an angle of a fit", func(x float64) error { return fit(40, x-27, 0) }, []float64{360_000, -360_000}, []float64{360_000 * past, -360_000 * past, math.NaN(), math.Inf(1)}, "readings[3].at"},
		{"known profiles", func(x float64) error { return profiles(int(x)) }, []float64{1, 1000}, []float64{0, 1001}, "known"},
	})
}
