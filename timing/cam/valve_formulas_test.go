package cam_test

import (
	"math"
	"testing"

	"example.com/benchbook/timing/cam"
	"example.com/benchbook/units"
)

// A rocker at one place by hand: arms of 30 and 36 mm, the cam's 10° and the valve's 40°
// below square, the cam's end lifted by 30 (sin 20° + sin 10°) swings it by 30°; the
// valve's end then moves 36 (sin(-10°) + sin 40°), at 36 cos 10°/(30 cos 20°).
func TestRockerByHand(t *testing.T) {
	sin := func(deg float64) float64 { return math.Sin(deg * math.Pi / 180) }
	cos := func(deg float64) float64 { return math.Cos(deg * math.Pi / 180) }
	r := cam.Rocker{CamArm: 30, ValveArm: 36, CamTilt: 10, ValveTilt: 40}
	got, err := r.At(mm(30 * (sin(20) + sin(10))))
	if err != nil || math.Abs(got.Swing.Degrees()-30) > 1e-12 || math.Abs(got.Valve.Millimetres()-36*(sin(40)-sin(10))) > 1e-12 || math.Abs(got.Ratio-36*cos(10)/(30*cos(20))) > 1e-12 {
		t.Errorf("%+v, %v", got, err)
	}
	none, err := cam.Rocker{}.At(3)
	if err != nil || none != (cam.Rocked{Valve: 3, Ratio: 1}) {
		t.Errorf("no rocker: %+v, %v", none, err)
	}
	// Where an arm comes to stand along its line it can push no further.
	for _, c := range []struct {
		name string
		r    cam.Rocker
		move float64
	}{
		{"the cam's arm along its line", cam.Rocker{CamArm: 30, ValveArm: 36, ValveTilt: 10}, 30},
		{"the cam's end out of reach", cam.Rocker{CamArm: 30, ValveArm: 36, ValveTilt: 10}, 31},
		{"the cam's end out of reach below", cam.Rocker{CamArm: 30, ValveArm: 36, ValveTilt: 10}, -31},
		{"the valve's arm past its line", cam.Rocker{CamArm: 30, ValveArm: 36, ValveTilt: -45}, 30 * sin(46)},
		{"the valve's arm far past its line", cam.Rocker{CamArm: 30, ValveArm: 36, ValveTilt: -45}, 30 * sin(80)},
	} {
		if got, err := c.r.At(mm(c.move)); !refusedAt(err, "cam") {
			t.Errorf("%s: %+v, %v", c.name, got, err)
		}
	}
	if _, err := (cam.Rocker{CamArm: 30, ValveArm: 36, ValveTilt: -45}).At(mm(30 * sin(44))); err != nil {
		t.Error("just short of its line:", err)
	}
	// Just square to its line, at 45° either way, if a float64 has the lift for it.
	for k := -8.0; k <= 8; k++ {
		move := 30 * math.Sqrt(0.5) * (1 + k*0x1p-53)
		if math.Asin(move/30) != math.Pi/4 {
			continue
		}
		if got, err := (cam.Rocker{CamArm: 30, ValveArm: 36, ValveTilt: -45}).At(mm(move)); !refusedAt(err, "cam") {
			t.Errorf("along its line: %+v, %v", got, err)
		}
	}
	// A valve is refused a cam that lifts further than its rocker swings, and only then.
	c, _ := arcCam().Curve(100)
	short := cam.Rocker{CamArm: 7, ValveArm: 7}
	if err := (cam.Valve{Cam: c, Rocker: short}).Err(); !refusedAt(err, "rocker") {
		t.Error(err)
	}
	if err := (cam.Valve{Rocker: short}).Err(); !refusedAt(err, "cam") {
		t.Error(err)
	}
	if err := (cam.Valve{Cam: c, Rocker: short, Clearance: -1}).Err(); !refusedAt(err, "clearance") {
		t.Error(err)
	}
}

// A check that the rocker cannot reach has no answer: by the valve's arm, and by the
// cam's where the valve's would still go.
func TestCheckBeyondTheRocker(t *testing.T) {
	c, _ := arcCam().Curve(100)
	for _, r := range []cam.Rocker{
		{CamArm: 30, ValveArm: 36},
		{CamArm: 30, ValveArm: 36, CamTilt: -45, ValveTilt: 40}, // 36 (sin 40° + sin 20°) is 60° of swing: 105° from square
		{CamArm: 30, ValveArm: 36, CamTilt: 45, ValveTilt: -45},
	} {
		for _, check := range []units.Length{36, 37, 36 * 0.98} {
			v := cam.Valve{Cam: c, Rocker: r}
			if e, err := v.Events(check); err != nil || e.NoAnswer.Code != "never-reached" || e.Check != check {
				t.Errorf("%+v: %+v, %v", r, e, err)
			}
		}
	}
	straight := cam.Valve{Cam: c, Rocker: cam.Rocker{CamArm: 30, ValveArm: 36, CamTilt: 10}}
	if e, err := straight.Events(36); err != nil || e.NoAnswer.Text != "the rocker cannot lift the valve that far" {
		t.Errorf("the valve's arm along its line: %+v, %v", e, err)
	}
	askew := cam.Valve{Cam: c, Rocker: cam.Rocker{CamArm: 30, ValveArm: 36, CamTilt: -45}}
	for k := -8.0; k <= 8; k++ { // the cam's arm just along its line, if a float64 has the lift for it
		check := 36 * math.Sqrt(0.5) * (1 + k*0x1p-53)
		if math.Asin(check/36) != math.Pi/4 {
			continue
		}
		if e, err := askew.Events(mm(check)); err != nil || e.NoAnswer.Text != "the rocker cannot lift the valve that far" {
			t.Errorf("the cam's arm along its line: %+v, %v", e, err)
		}
	}
	tilted := cam.Valve{Cam: c, Rocker: cam.Rocker{CamArm: 30, ValveArm: 36, CamTilt: -45, ValveTilt: 40}}
	for _, check := range []units.Length{20, 30, 36 * 0.98} { // swings of 35°, 51° and 60°
		e, err := tilted.Events(check)
		if err != nil || e.NoAnswer.Code != "never-reached" {
			t.Fatal(e, err)
		}
		// within its swing it is the lift that falls short, beyond it the rocker
		if byRocker := e.NoAnswer.Text == "the rocker cannot lift the valve that far"; byRocker != (check > 29) {
			t.Errorf("%v: %v", check, e.NoAnswer)
		}
	}
}

// What another clearance does is the difference of two valves' events.
func TestWithClearanceIsTwoValves(t *testing.T) {
	s := lobe{8, 75, 100}.read(2, 0, fixed())
	for i := range s {
		if s[i].At > 100 { // the closing flank slower
			s[i].Lift = mm(lobe{8, 110, 100}.lift(s[i].At.Degrees()))
		}
	}
	c, err := cam.Fit(s, cam.FitOptions{Criterion: cam.Interpolated})
	if err != nil {
		t.Fatal(err)
	}
	v := cam.Valve{Cam: c.Curve, Rocker: cam.Rocker{CamArm: 30, ValveArm: 36}, Clearance: mm(0.1)}
	w := v
	w.Clearance = mm(0.4)
	a, _ := v.Events(1)
	b, _ := w.Events(1)
	x, err := v.WithClearance(mm(0.4), 1)
	if err != nil || x.NoAnswer.Given() || x.Before != a || x.After != b {
		t.Fatal(x, err)
	}
	same := func(what string, got units.CamAngle, want float64) {
		t.Helper()
		if math.Abs(got.Degrees()-want) > 1e-9 {
			t.Errorf("%s: %v, want %g", what, got, want)
		}
	}
	same("opens later", x.Opens, (b.Opens - a.Opens).Degrees())
	same("closes earlier", x.Closes, (a.Closes - b.Closes).Degrees())
	same("duration", x.Duration, (b.Duration - a.Duration).Degrees())
	same("centre", x.Centre, ((b.Opens+b.Closes)/2 - (a.Opens+a.Closes)/2).Degrees())
	same("by the rise", x.Linear, 0.3/a.OpeningRise.Millimetres())
	if !(x.Opens > 0 && x.Closes > x.Opens && x.Centre < 0) {
		t.Errorf("the slower flank moves more: %+v", x)
	}
	if want := 8*1.2 - 0.4; math.Abs(x.MaxLift.Millimetres()-want) > 0.01 { // the readings lie 2° apart about the top
		t.Errorf("greatest lift %v, want %g mm", x.MaxLift, want)
	}
	if x, err := v.WithClearance(12, 1); err != nil || !x.NoAnswer.Given() || x.MaxLift != 0 {
		t.Errorf("a clearance beyond the lift: %+v, %v", x, err)
	}
	shut := v
	shut.Clearance = 12
	if y, err := shut.Lift(100); y != 0 || err != nil {
		t.Error("a valve that never opens lifts", y, err)
	}
}

// The clearance that explains a duration: none at all, one at the end of what can be,
// one at a check of nought, and one over a rough base circle, where the least do not do.
func TestClearanceFor(t *testing.T) {
	c, _ := arcCam().Curve(100)
	rough := lobe{8, 75, 100}.read(3, 0, fixed())
	for i := range rough {
		if i%2 == 0 && rough[i].Lift == 0 {
			rough[i].Lift = mm(0.4)
		}
	}
	bumpy, err := cam.Fit(rough, cam.FitOptions{Criterion: cam.Interpolated, KeepZero: true})
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range []struct {
		name      string
		curve     *cam.Curve
		clearance float64
		check     units.Length
	}{
		{"none", c, 0, 1},
		{"little", c, 0.05, 1},
		{"from the seat", c, 0.2, 0},
		{"most of the lift", c, 6.9, 1},
		{"hardly open", c, 7.999, 0},
		{"over bumps", bumpy.Curve, 0.9, 0},
		{"over bumps, at a check", bumpy.Curve, 0.5, mm(0.3)},
	} {
		v := cam.Valve{Cam: p.curve, Clearance: mm(p.clearance)}
		e, err := v.Events(p.check)
		if err != nil || e.NoAnswer.Given() {
			t.Fatal(p.name, e, err)
		}
		v.Clearance = 5 // it is not asked
		got, why, err := v.ClearanceFor(e.Duration, p.check)
		if err != nil || why.Given() || math.Abs(got.Millimetres()-p.clearance) > 1e-7 {
			t.Errorf("%s: %v, set %g mm: %v, %v", p.name, got, p.clearance, why, err)
		}
	}
	for _, d := range []units.CamAngle{137, 200} { // the whole lobe is 136°
		if got, why, err := (cam.Valve{Cam: c}).ClearanceFor(d, 1); err != nil || why.Code != "no-clearance" {
			t.Errorf("%v: %v, %v, %v", d, got, why, err)
		}
	}
}

// What a seat leaves open, by geometry: along the seat the least way is a frustum whose
// slant runs square to the seat, L cos b long, from the seat's inner edge (head less two
// widths) outwards by L sin b cos b; past it the slant from edge to edge of the seats.
func TestSeatByFrustum(t *testing.T) {
	s := cam.Seat{Head: 40, Port: 35, Stem: 8, Width: 2, Angle: 30}
	b := 30 * math.Pi / 180
	frustum := func(r1, r2, slant float64) float64 { return math.Pi * (r1 + r2) * slant }
	opening := func(x float64) cam.Opening {
		o, err := s.Opening(mm(x))
		if err != nil {
			t.Fatal(err)
		}
		return o
	}
	for _, lift := range []float64{0.5, 2, 4} {
		o := opening(lift)
		slant := lift * math.Cos(b)
		want := frustum(18, 18+slant*math.Sin(b), slant)
		if o.Stage != 1 || math.Abs(o.Area.SquareMillimetres()-want) > 1e-9 {
			t.Errorf("%g mm: %+v, by the frustum %g", lift, o, want)
		}
		if want := 40 * math.Pi * lift; math.Abs(o.Curtain.SquareMillimetres()-want) > 1e-9 {
			t.Errorf("curtain %v, want %g", o.Curtain, want)
		}
	}
	// Past it: the valve's seat has risen by L, its inner edge stands w tan b below the outer.
	for _, lift := range []float64{5, 6} {
		want := frustum(18, 20, math.Hypot(2, lift-2*math.Tan(b)))
		if o := opening(lift); o.Stage != 2 || math.Abs(o.Area.SquareMillimetres()-want) > 1e-9 {
			t.Errorf("%g mm: %+v, by the frustum %g", lift, o, want)
		}
	}
	port := math.Pi * (17.5*17.5 - 16)
	if o := opening(12); o.Stage != 3 || math.Abs(o.Area.SquareMillimetres()-port) > 1e-9 {
		t.Errorf("%+v, port %g", o, port)
	}
	// The first stage ends where the slant reaches the seat's outer edge.
	if end := 2 / (math.Sin(b) * math.Cos(b)); opening(end).Stage != 1 || opening(end*past).Stage != 2 {
		t.Error("the first stage does not end at", end)
	}
	// The zero angle is 45°.
	zero, with := s, s
	zero.Angle, with.Angle = 0, 45*units.Degree
	a, _ := zero.Opening(3)
	if c, _ := with.Opening(3); a != c {
		t.Error(a, c)
	}
}

// The lift for the port is the least that opens it all: past the seat, and along a seat so
// wide that the first stage comes to it, by its quadratic.
func TestLiftForPort(t *testing.T) {
	s := cam.Seat{Head: 40, Port: 35, Stem: 8, Width: 2, Angle: 30}
	port := math.Pi * (17.5*17.5 - 16)
	x, err := s.LiftForPort()
	// pi 38 sqrt((L - 2 tan 30°)² + 4) is the port
	if want := 2*math.Tan(math.Pi/6) + math.Sqrt(sq(port/(38*math.Pi))-4); err != nil || math.Abs(x.Millimetres()-want) > 1e-6 {
		t.Errorf("%v, want %g mm: %v", x, want, err)
	}
	s = cam.Seat{Head: 40, Port: 20, Stem: 8, Width: 8}
	port = math.Pi * (100 - 16)
	x, err = s.LiftForPort()
	// pi L cos 45° (24 + L/2) is the port: L² + 48 L - 2 port/(pi cos 45°) = 0
	if want := -24 + math.Sqrt(576+2*port/(math.Pi*math.Sqrt(0.5))); err != nil || math.Abs(x.Millimetres()-want) > 1e-6 {
		t.Errorf("%v, want %g mm: %v", x, want, err)
	}
	if _, err := (cam.Seat{}).LiftForPort(); err == nil {
		t.Error("no seat has a lift for its port")
	}
}

// Flow area against the sum of the openings themselves every quarter of a degree of the
// cam; the mean is over what is open, which a table that is just nought is not.
func TestFlowAreaBySum(t *testing.T) {
	c := hump(t, 0.2, 1, 3, 5, 6, 5, 3, 1, 0.2)
	s := cam.Seat{Head: 40, Port: 35, Stem: 8, Width: 2}
	v := cam.Valve{Cam: c, Rocker: cam.Rocker{CamArm: 30, ValveArm: 36}}
	sum, open, greatest := 0.0, 0.0, 0.0
	const step = 0.25
	for x := units.CamAngle(0); x < 360; x += step {
		y, _ := v.Lift(x)
		if y == 0 {
			continue
		}
		o, err := s.Opening(y)
		if err != nil {
			t.Fatal(err)
		}
		sum += o.Area.SquareMillimetres() * 2 * step
		open += 2 * step
		greatest = max(greatest, o.Area.SquareMillimetres())
	}
	f, err := v.FlowArea(s, 0)
	if err != nil || math.Abs(f.AreaAngleMM2Degrees-sum) > 1e-9*sum || math.Abs(f.Mean.SquareMillimetres()-sum/open) > 1e-9*sum/open || math.Abs(f.Greatest.SquareMillimetres()-greatest) > 1e-9*greatest {
		t.Errorf("%+v, by sum %g, mean %g, greatest %g: %v", f, sum, sum/open, greatest, err)
	}
	if f.AreaTimeMM2Seconds != 0 {
		t.Error("no speed, yet a time:", f.AreaTimeMM2Seconds)
	}
	v.Clearance = 12
	f, err = v.FlowArea(s, units.RevolutionsPerMinute(3000))
	if err != nil || f.AreaAngleMM2Degrees != 0 || f.Mean != 0 || f.Greatest != 0 || f.AreaTimeMM2Seconds != 0 {
		t.Errorf("a valve that stays shut passes %+v: %v", f, err)
	}
}

// Khurmi & Gupta, A Textbook of Machine Design, chapter 32, p. 1202 (seen in excerpts):
// port 45 mm and seat 45° give a lift of 15.9 mm.
func TestLiftOfAPort(t *testing.T) {
	_, lift, err := cam.PortFor(45, 40, 40, 45)
	if err != nil || math.Abs(lift.Millimetres()-15.9) > 0.05 {
		t.Error(lift, err)
	}
	// Flat, a cylinder of port/4 has the port's area round it.
	if _, lift, err := cam.PortFor(40, 40, 40, 0); err != nil || math.Abs(lift.Millimetres()-10) > 1e-12 {
		t.Error(lift, err)
	}
}
