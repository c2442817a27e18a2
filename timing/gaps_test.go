package timing_test

import (
	"math"
	"testing"

	"example.com/benchbook/timing"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// The gaps by another route: the piston by the closed form of a slider-crank, heads
// as stretches between complex numbers, and every half degree, then every 0.005 of a
// degree tried.

const rodLength, throw = 150.0, 41.5 // of bareHead, mm

func sinOf(deg float64) float64 { return math.Sin(deg * math.Pi / 180) }
func cosOf(deg float64) float64 { return math.Cos(deg * math.Pi / 180) }

func pistonAt(x float64) float64 {
	return rodLength + throw - throw*cosOf(x) - math.Sqrt(rodLength*rodLength-throw*throw*sinOf(x)*sinOf(x))
}

// leastOver is the least of f over a turn, and where.
func leastOver(f func(x float64) float64) (value, at float64) {
	value = math.Inf(1)
	try := func(lo, hi, step float64) {
		for x := lo; x <= hi; x += step {
			if v := f(x); v < value {
				value, at = v, x
			}
		}
	}
	try(-180, 180, 0.5)
	try(at-0.5, at+0.5, 5e-3)
	return value, at
}

// off is how far p lies from the stretch a to b: along and across it.
func off(p, a, b complex128) float64 {
	long := math.Hypot(real(b-a), imag(b-a))
	z := (p - a) / (b - a) * complex(long, 0)
	along := real(z)
	past := max(-along, along-long, 0)
	return math.Hypot(past, imag(z))
}

// rimGap is the gap between two heads: the least over one of them of the distance
// from the other, which is convex; where they cross, how deep a near rim has gone.
func rimGap(shut, in, ex, tiltIn, tiltEx, headIn, headEx float64) float64 {
	a := complex(-shut/2+in*sinOf(tiltIn), -in*cosOf(tiltIn))
	b := complex(shut/2-ex*sinOf(tiltEx), -ex*cosOf(tiltEx))
	along := func(t float64) complex128 {
		return a - complex(t*headIn*cosOf(tiltIn), t*headIn*sinOf(tiltIn))
	}
	b2 := b + complex(headEx*cosOf(tiltEx), -headEx*sinOf(tiltEx))
	lo, hi := 0.0, 1.0
	for range 90 {
		if p, q := lo+(hi-lo)/3, hi-(hi-lo)/3; off(along(p), b, b2) < off(along(q), b, b2) {
			hi = q
		} else {
			lo = p
		}
	}
	if d := min(off(along(lo), b, b2), off(a, b, b2), off(along(1), b, b2)); d > 1e-9 {
		return d
	}
	return -min(off(a, b, b2), off(b, a, along(1)))
}

func millimetres(g timing.Gap) float64 { return g.Gap.Value().Millimetres() }

// Two heads held still, apart and crossed every way.
func TestGapBetweenHeads(t *testing.T) {
	crossed := 0
	for i := range 2000 {
		// the figures come round out of step with each other
		pick := func(k int, from, to float64) float64 {
			_, part := math.Modf(float64(i+1) * math.Sqrt([...]float64{2, 3, 5, 7, 11, 13, 17}[k]))
			return from + part*(to-from)
		}
		shut, in, ex := pick(0, 0, 15), pick(1, 0, 25), pick(2, 0, 25)
		tiltIn, tiltEx, headIn, headEx := pick(3, 0, 60), pick(4, 0, 60), pick(5, 2, 60), pick(6, 2, 60)
		h := bareHead()
		h.Inlet = timing.Valve{Tilt: units.Degrees(tiltIn), Head: units.Millimetres(headIn), Curve: still(in)}
		h.Exhaust = timing.Valve{Tilt: units.Degrees(tiltEx), Head: units.Millimetres(headEx), Curve: still(ex)}
		h.Between = measure.Exact(units.Millimetres(shut))
		g, err := h.Gaps(engine(), degrees(0), degrees(0))
		if err != nil {
			t.Fatal(err)
		}
		want := rimGap(shut, in, ex, tiltIn, tiltEx, headIn, headEx)
		if want < 0 {
			crossed++
		}
		// the thirds end where the distance no longer changes: some 1e-8 of a head
		if !(math.Abs(millimetres(g.Valves)-want) <= 1e-6) {
			t.Fatalf("%v, %v and %v mm open, tilts %v and %v, heads %v and %v: %v, want %v", shut, in, ex, tiltIn, tiltEx, headIn, headEx, g.Valves.Gap, want)
		}
	}
	if crossed < 200 {
		t.Errorf("only %d crossed", crossed)
	}
}

// A far rim that just rests on the other head, whose face is level: no gap, and no
// overlap either.
func TestFarRimRests(t *testing.T) {
	tilt := 60 * units.Degree
	s, c := math.Sincos(tilt.SI())
	const lift, head = 20.0, 10.0
	leaning := timing.Valve{Tilt: tilt, Head: units.Millimetres(head), Curve: still(lift)}
	level := timing.Valve{Head: 20 * units.Millimetre, Curve: still(lift*c + head*s)} // as deep as the far rim
	for _, pair := range [2][2]timing.Valve{{level, leaning}, {leaning, level}} {
		h := bareHead()
		h.Inlet, h.Exhaust, h.Between = pair[0], pair[1], measure.Exact(0*units.Millimetre)
		g, err := h.Gaps(engine(), degrees(0), degrees(0))
		if err != nil || !(math.Abs(millimetres(g.Valves)) <= 1e-9) { // rounding
			t.Errorf("%v, %v, want 0", g.Valves.Gap, err)
		}
	}
}

// By hand. Both valves tilted by t with lift y: rims 2 y sin t nearer, and once past
// each other each lies (2 y sin t - shut) sin t inside the other head. Upright: 3 mm
// across and 4 mm down are 5 mm; so they are between heads of no size, even where the
// square of the size is nought to a float.
func TestGapBetweenHeadsByHand(t *testing.T) {
	s := math.Sqrt(0.5)
	for _, c := range []struct{ shut, in, ex, tilt, head, want float64 }{
		{8, 5, 5, 45, 40, 8 - 10*s},
		{2, 5, 5, 45, 40, -(10*s - 2) * s},
		{3, 4, 0, 0, 40, 5},
		{3, 0, 4, 0, 1e-200, 5},
	} {
		h := bareHead()
		h.Inlet = timing.Valve{Tilt: units.Degrees(c.tilt), Head: units.Millimetres(c.head), Curve: still(c.in)}
		h.Exhaust = h.Inlet
		h.Exhaust.Curve, h.Between = still(c.ex), measure.Exact(units.Millimetres(c.shut))
		g, err := h.Gaps(engine(), degrees(0), degrees(0))
		if err != nil || !(math.Abs(millimetres(g.Valves)-c.want) <= 1e-9) { // rounding
			t.Errorf("%+v: %v %v", c, g.Valves.Gap, err)
		}
	}
}

// Valves that move, with cams as they stand and by their uncertainty either way.
func TestGapsOverATurn(t *testing.T) {
	for _, c := range []struct{ lift, tilt, in, ex, u float64 }{
		{9, 0, 0, 0, 0}, {9, 25, 12, -7, 2}, {10, 40, -20, 15, 3}, {8.5, 10, 30, -30, 1},
		{9, 20, 130, 0, 2}, {9, 20, 0, -130, 2}, // past overlap, where the other way closes the gap
		{80, 0, 0, 0, 1}, // far from TDC, where a lift beyond any sense reaches the piston
	} {
		h := bareHead()
		curves := [2]humped{{c.lift, 55}, {c.lift, -55}}
		h.Inlet = timing.Valve{ToPiston: mm(12, 0.2), Tilt: units.Degrees(c.tilt), Head: 40 * units.Millimetre, Curve: curves[0]}
		h.Exhaust = timing.Valve{ToPiston: mm(13, 0.3), Tilt: units.Degrees(c.tilt + 5), Head: 36 * units.Millimetre, Curve: curves[1]}
		h.Between = mm(9, 0.1)
		shift := func(x float64) measure.Reading[units.CrankAngle] {
			if c.u == 0 {
				return degrees(x)
			}
			return measure.Of(units.CrankDegrees(x), units.CrankDegrees(c.u))
		}
		g, err := h.Gaps(engine(), shift(c.in), shift(c.ex))
		if err != nil {
			t.Fatal(err)
		}
		lift := func(k int, x float64) float64 {
			l, _ := curves[k].Lift(units.CamDegrees(x / 2))
			return l.Millimetres()
		}
		toPiston := func(k int, free, tilt, shift float64) (float64, float64) {
			return leastOver(func(x float64) float64 { return free + pistonAt(x)*cosOf(tilt) - lift(k, x+shift) })
		}
		between := func(in, ex float64) (float64, float64) {
			return leastOver(func(x float64) float64 {
				return rimGap(9, lift(0, x+in), lift(1, x+ex), c.tilt, c.tilt+5, 40, 36)
			})
		}
		check := func(name string, got timing.Gap, own float64, f func(dIn, dEx float64) (float64, float64)) {
			want, at := f(0, 0)
			u := own
			steps := [][2]float64{{c.u, 0}, {0, c.u}}
			for _, d := range steps {
				more, _ := f(d[0], d[1])
				less, _ := f(-d[0], -d[1])
				u = math.Hypot(u, max(math.Abs(more-want), math.Abs(less-want)))
			}
			// half a step of 0.005° changes a least gap by less than 1e-5 mm
			if !(math.Abs(millimetres(got)-want) <= 2e-5 && math.Abs(got.Gap.U().Millimetres()-u) <= 5e-5) {
				t.Errorf("%+v %s: %v ± %v, want %v ± %v", c, name, millimetres(got), got.Gap.U().Millimetres(), want, u)
			}
			// the place is rounded to a tenth
			if x := got.At.FromTDC().Degrees(); !(math.Abs(x-at) <= 0.06) {
				t.Errorf("%+v %s: at %v, want %v", c, name, x, at)
			}
		}
		check("inlet", g.Inlet, 0.2, func(dIn, _ float64) (float64, float64) { return toPiston(0, 12, c.tilt, c.in+dIn) })
		check("exhaust", g.Exhaust, 0.3, func(_, dEx float64) (float64, float64) { return toPiston(1, 13, c.tilt+5, c.ex+dEx) })
		check("valves", g.Valves, 0.1, func(dIn, dEx float64) (float64, float64) { return between(c.in+dIn, c.ex+dEx) })
	}
}

// A lobe of the usual shape: the lift of its events, the clearance then taken off.
func TestGapsByUsualLobe(t *testing.T) {
	e := engine()
	e.Check.Clearance = 0.3 * units.Millimetre
	e.Inlet.MaxLift, e.Exhaust.MaxLift = mm(9, 0.1), mm(8.5, 0.1)
	lobes := [2]plainLobe{newLobe(-25, 245, 9.3, 0.3), newLobe(-245, 25, 8.8, 0.3)}
	h := bareHead()
	h.Inlet = timing.Valve{ToPiston: mm(8, 0.1), Tilt: 20 * units.Degree, Head: 40 * units.Millimetre}
	h.Exhaust = timing.Valve{ToPiston: mm(9, 0.1), Tilt: 30 * units.Degree, Head: 36 * units.Millimetre}
	h.Between = mm(6, 0.1)
	for _, s := range [][2]float64{{0, 0}, {18, -12}, {-15, 20}, {110, -110}} {
		g, err := h.Gaps(e, degrees(s[0]), degrees(s[1]))
		if err != nil {
			t.Fatal(err)
		}
		lift := func(k int, x float64) float64 {
			l := &lobes[k]
			return max(usual(l.top, l.half, x+s[k]-l.middle())-0.3, 0)
		}
		in, _ := leastOver(func(x float64) float64 { return 8 + pistonAt(x)*cosOf(20) - lift(0, x) })
		ex, _ := leastOver(func(x float64) float64 { return 9 + pistonAt(x)*cosOf(30) - lift(1, x) })
		rims, _ := leastOver(func(x float64) float64 { return rimGap(6, lift(0, x), lift(1, x), 20, 30, 40, 36) })
		for name, c := range map[string][2]float64{"inlet": {millimetres(g.Inlet), in}, "exhaust": {millimetres(g.Exhaust), ex}, "valves": {millimetres(g.Valves), rims}} {
			if !(math.Abs(c[0]-c[1]) <= 2e-5) { // as above
				t.Errorf("%v %s: %v, want %v", s, name, c[0], c[1])
			}
		}
	}
}

// Room: within two standard uncertainties of touching, less than the least to work
// with, or enough; at each limit.
func TestRoom(t *testing.T) {
	inch := 25.4
	for _, c := range []struct {
		gap, u, least float64
		want          timing.Room
		inForce       [3]float64 // least gap of inlet, exhaust, valves
	}{
		{0, 0, 2, timing.Touches, [3]float64{2, 2, 2}}, {0.001, 0, 2, timing.Tight, [3]float64{2, 2, 2}}, {1.999, 0, 2, timing.Tight, [3]float64{2, 2, 2}}, {2, 0, 2, timing.Enough, [3]float64{2, 2, 2}},
		{1, 0.5, 2, timing.Touches, [3]float64{2, 2, 2}}, {1.001, 0.5, 2, timing.Tight, [3]float64{2, 2, 2}}, {4, 0.5, 2, timing.Enough, [3]float64{2, 2, 2}},
		{4, 0.5, 0, timing.Enough, [3]float64{0.080 * inch, 0.100 * inch, 1}},
	} {
		h := bareHead()
		gap := measure.Exact(units.Millimetres(c.gap))
		if c.u > 0 {
			gap = mm(c.gap, c.u)
		}
		least := units.Millimetres(c.least)
		h.Inlet = timing.Valve{ToPiston: gap, Head: 40 * units.Millimetre, Curve: still(0), Least: least}
		h.Exhaust, h.Between, h.Least = h.Inlet, gap, least
		g, err := h.Gaps(engine(), degrees(0), degrees(0))
		if err != nil {
			t.Fatal(err)
		}
		for k, x := range [3]timing.Gap{g.Inlet, g.Exhaust, g.Valves} {
			if x.Gap.Err() != nil || x.Room != c.want || !(math.Abs(x.Least.Millimetres()-c.inForce[k]) <= 1e-12) {
				t.Errorf("%v ± %v mm, gap %d: %v of %v", c.gap, c.u, k, x.Room, x.Least)
			}
		}
		if g.Worst() != c.want {
			t.Errorf("worst %v", g.Worst())
		}
	}
	for want, r := range map[string]timing.Room{"not known": timing.RoomUnknown, "touches": timing.Touches, "tight": timing.Tight, "enough": timing.Enough} {
		if text, err := r.MarshalText(); r.String() != want || string(text) != want || err != nil {
			t.Errorf("%d is %q", r, r)
		}
	}
	for _, c := range []struct{ inlet, exhaust, valves, want timing.Room }{
		{want: timing.RoomUnknown}, {valves: timing.Enough, want: timing.Enough}, {timing.Enough, timing.RoomUnknown, timing.Tight, timing.Tight},
		{timing.Touches, timing.Tight, timing.Enough, timing.Touches}, {timing.Tight, timing.Touches, timing.RoomUnknown, timing.Touches},
	} {
		g := timing.Gaps{Inlet: timing.Gap{Room: c.inlet}, Exhaust: timing.Gap{Room: c.exhaust}, Valves: timing.Gap{Room: c.valves}}
		if g.Worst() != c.want {
			t.Errorf("%+v: worst %v", c, g.Worst())
		}
	}
}

// The limits of a head and of the shifts.
func TestHeadLimits(t *testing.T) {
	type gaps struct {
		h      timing.Head
		in, ex measure.Reading[units.CrankAngle]
	}
	for _, c := range []struct {
		path           string
		set            func(g *gaps, x float64)
		taken, refused []float64
	}{
		{"engine.head.inlet.tilt", func(g *gaps, x float64) { g.h.Inlet.Tilt = units.Degrees(x) }, []float64{0, 60}, []float64{-0.1, 60.1}},
		{"engine.head.exhaust.to_piston", func(g *gaps, x float64) { g.h.Exhaust.ToPiston = mm(x, 0.1) }, []float64{0, 50}, []float64{-0.001, 50.001}},
		{"engine.head.inlet.head", func(g *gaps, x float64) { g.h.Inlet.Head = units.Millimetres(x) }, []float64{0.001, 100}, []float64{-0.001, 0, 100.001}},
		{"engine.head.inlet.head", func(g *gaps, x float64) {
			g.h.Between, g.h.Inlet.Head = measure.Reading[units.Length]{}, units.Millimetres(x)
		}, []float64{0, 100}, []float64{-0.001, 100.001}},
		{"engine.head.exhaust.least", func(g *gaps, x float64) { g.h.Exhaust.Least = units.Millimetres(x) }, []float64{0, 10}, []float64{-0.001, 10.001}},
		{"engine.head.between", func(g *gaps, x float64) { g.h.Between = mm(x, 0.1) }, []float64{0, 100}, []float64{-0.001, 100.001}},
		{"engine.head.least", func(g *gaps, x float64) { g.h.Least = units.Millimetres(x) }, []float64{0, 10}, []float64{-0.001, 10.001}},
		{"inlet", func(g *gaps, x float64) { g.in = degrees(x) }, []float64{-360, 360}, []float64{-360.1, 360.1}},
		{"exhaust", func(g *gaps, x float64) { g.ex = degrees(x) }, []float64{-360, 360}, []float64{-360.1, 360.1}},
	} {
		try := func(x float64) []fault.Fault {
			h := bareHead()
			h.Inlet = timing.Valve{ToPiston: mm(9, 0.1), Head: 40 * units.Millimetre, Curve: still(0)}
			h.Exhaust, h.Between = h.Inlet, mm(5, 0.1)
			g := gaps{h, degrees(0), degrees(0)}
			c.set(&g, x)
			_, err := g.h.Gaps(engine(), g.in, g.ex)
			return fault.Faults(err)
		}
		for _, x := range c.taken {
			if f := try(x); len(f) > 0 {
				t.Errorf("%s %v is at the limit, yet refused: %v", c.path, x, f)
			}
		}
		for _, x := range c.refused {
			if f := try(x); len(f) != 1 || f[0].Path != c.path || f[0].Code != fault.OutOfRange {
				t.Errorf("%s %v is past the limit; faults %v", c.path, x, f)
			}
		}
	}
	var h timing.Head
	if _, err := h.Gaps(engine(), degrees(0), degrees(0)); err == nil {
		t.Error("a head without a stroke")
	}
}

// What is not known has no gap, and says why.
func TestGapsNotKnown(t *testing.T) {
	whole := func() timing.Head {
		h := bareHead()
		h.Inlet = timing.Valve{ToPiston: mm(9, 0.1), Head: 40 * units.Millimetre, Curve: still(1)}
		h.Exhaust, h.Between = h.Inlet, mm(5, 0.1)
		return h
	}
	var unread measure.Reading[units.CrankAngle]
	for name, c := range map[string]struct {
		set                     func(h *timing.Head)
		in, ex                  measure.Reading[units.CrankAngle]
		inlet, exhaust, between string
	}{
		"all":                {func(*timing.Head) {}, degrees(0), degrees(0), "", "", ""},
		"inlet gap":          {func(h *timing.Head) { h.Inlet.ToPiston = measure.Reading[units.Length]{} }, degrees(0), degrees(0), "gap-not-measured", "", ""},
		"inlet lift":         {func(h *timing.Head) { h.Inlet.Curve = nil }, degrees(0), degrees(0), "lift-not-known", "", "lift-not-known"},
		"exhaust lift":       {func(h *timing.Head) { h.Exhaust.Curve = nil }, degrees(0), degrees(0), "", "lift-not-known", "lift-not-known"},
		"inlet shift":        {func(*timing.Head) {}, unread, degrees(0), "shift-not-known", "", "shift-not-known"},
		"exhaust shift":      {func(*timing.Head) {}, degrees(0), unread, "", "shift-not-known", "shift-not-known"},
		"between":            {func(h *timing.Head) { h.Between = measure.Reading[units.Length]{} }, degrees(0), degrees(0), "", "", "gap-not-measured"},
		"lift not a number":  {func(h *timing.Head) { h.Inlet.Curve = still(math.NaN()) }, degrees(0), degrees(0), "lift-not-known", "", "lift-not-known"},
		"lift without bound": {func(h *timing.Head) { h.Exhaust.Curve = still(math.Inf(1)) }, degrees(0), degrees(0), "", "lift-not-known", "lift-not-known"},
	} {
		h := whole()
		c.set(&h)
		g, err := h.Gaps(engine(), c.in, c.ex)
		if err != nil {
			t.Fatal(err)
		}
		if g.Inlet.NoAnswer.Code != c.inlet || g.Exhaust.NoAnswer.Code != c.exhaust || g.Valves.NoAnswer.Code != c.between {
			t.Errorf("%s: %q, %q, %q", name, g.Inlet.NoAnswer.Code, g.Exhaust.NoAnswer.Code, g.Valves.NoAnswer.Code)
		}
	}
}
