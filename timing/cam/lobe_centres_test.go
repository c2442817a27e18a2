package cam_test

import (
	"math"
	"testing"

	"example.com/benchbook/timing/cam"
	"example.com/benchbook/units"
)

// lopsided is an invented lobe with a quick rise of 70° and a slow fall of 100°, read
// every 2° and drawn through all, its top at an angle.
func lopsided(t *testing.T, top float64) *cam.Curve {
	t.Helper()
	var s []cam.Sample
	for x := 0.0; x < 360; x += 2 {
		w := 70.0
		if half(x-top) > 0 {
			w = 100
		}
		s = append(s, cam.Sample{At: units.CamDegrees(x), Lift: mm(lobe{8, w, top}.lift(x))})
	}
	f, err := cam.Fit(s, cam.FitOptions{Criterion: cam.Interpolated})
	if err != nil {
		t.Fatal(err)
	}
	return f.Curve
}

// Each definition of a lobe's centre by a scan of the lift itself, on a lobe where they
// all differ, wherever it stands.
func TestCentresByScan(t *testing.T) {
	const check, step = 1.0, 0.01
	for _, top := range []float64{110, 20, 358} {
		c := lopsided(t, top)
		lift := func(x float64) float64 {
			y, err := c.Lift(units.CamDegrees(x))
			if err != nil {
				t.Fatal(err)
			}
			return y.Millimetres()
		}
		e, err := c.Events(check)
		if err != nil || e.NoAnswer.Given() {
			t.Fatal(e, err)
		}
		o, s := e.Opens.Degrees(), e.Closes.Degrees()
		got, err := c.Centres(check)
		if err != nil || got.NoAnswer.Given() {
			t.Fatal(got, err)
		}
		if math.Abs(got.ByEvents.Degrees()-(o+s)/2) > 1e-9 {
			t.Errorf("by events %v, halfway from %g to %g", got.ByEvents, o, s)
		}
		peak, at, area := 0.0, 0.0, 0.0
		for x := o; x < s; x += step {
			if y := lift(x); y > peak {
				peak, at = y, x
			}
			area += (lift(x) - check) * step
		}
		if math.Abs(got.ByPeak.Degrees()-at) > step || math.Abs(got.MaxLift.Millimetres()-peak) > 1e-6 {
			t.Errorf("by peak %v of %v, by scan %g of %g mm", got.ByPeak, got.MaxLift, at, peak)
		}
		below, middle := 0.0, o
		for ; below < area/2; middle += step {
			below += (lift(middle) - check) * step
		}
		if math.Abs(got.ByArea.Degrees()-middle) > 2*step {
			t.Errorf("by area %v, by sum %g", got.ByArea, middle)
		}
		// the mirror that leaves least between the lobe and its image
		least, mirror := math.Inf(1), 0.0
		for m := (o+s)/2 - (s-o)/8; m < (o+s)/2+(s-o)/8; m += 0.05 {
			sum, n := 0.0, 0
			for u := 0.05; u < (s-o)/2; u += 0.1 {
				sum += sq(max(lift(m+u), check) - max(lift(m-u), check))
				n++
			}
			if sum /= float64(n); sum < least {
				least, mirror = sum, m
			}
		}
		// The middles of 240 parts and of steps of a tenth differ by under a thousandth.
		if math.Abs(got.ByMirror.Degrees()-mirror) > 0.06 || math.Abs(got.Asymmetry.Millimetres()-math.Sqrt(least)) > 1e-3*math.Sqrt(least) {
			t.Errorf("by mirror %v ± %v, by scan %g ± %g mm", got.ByMirror, got.Asymmetry, mirror, math.Sqrt(least))
		}
		// They do differ, each way round.
		if !(got.ByPeak+1 < got.ByMirror && got.ByMirror < got.ByArea || got.ByPeak+1 < got.ByArea) || got.ByEvents == got.ByArea {
			t.Errorf("%+v", got)
		}
	}
	// A symmetrical lobe has one centre.
	c, _ := arcCam().Curve(100)
	m, err := c.Centres(1)
	for _, at := range []units.CamAngle{m.ByEvents, m.ByPeak, m.ByArea, m.ByMirror} {
		if err != nil || math.Abs((at-100).Degrees()) > 1e-5 || m.Asymmetry > 1e-6 {
			t.Errorf("%+v, %v", m, err)
		}
	}
}

// Of lifts as high as each other the first counts.
func TestTopOfAPlateau(t *testing.T) {
	flat, err := cam.InterpolateEven([]units.Length{2, 2, 2, 2, 2, 2, 2, 2})
	if err != nil {
		t.Fatal(err)
	}
	if y, at := flat.MaxLift(); y != 2 || at != 0 {
		t.Errorf("%v at %v", y, at)
	}
}

// The area of a part of a lobe that stands over the curve's own start.
func TestAreaOverTheStart(t *testing.T) {
	for _, top := range []float64{20, 350, 0} {
		c := lopsided(t, top)
		a, err := c.Area(1, units.RevolutionsPerMinute(3000))
		b, err2 := lopsided(t, 150).Area(1, 0)
		if err != nil || err2 != nil || math.Abs(a.LiftAngleMMDegrees-b.LiftAngleMMDegrees) > 1e-9 || math.Abs((a.MeanLift-b.MeanLift).Millimetres()) > 1e-9 {
			t.Errorf("top at %g: %+v, elsewhere %+v", top, a, b)
		}
		// 3000 rev/min of the crank are 9000° of the cam a second; no speed, no time
		if math.Abs(a.LiftTimeMMSeconds-a.LiftAngleMMDegrees/9000) > 1e-12 || b.LiftTimeMMSeconds != 0 {
			t.Errorf("%+v and %+v in time", a, b)
		}
	}
}

// Overlap by a fine sum of the lesser lift, and the same wherever the two cams stand
// together; a pause as well.
func TestOverlapAnywhere(t *testing.T) {
	const check = 0.2
	for _, apart := range []float64{-20, 60, 95, 120, 150, 175} {
		for turn := -180.0; turn < 360; turn += 15 {
			ex, in := lopsided(t, 0), lopsided(t, 0)
			ex, _ = ex.Advanced(units.CamDegrees(-turn))
			in, _ = in.Advanced(units.CamDegrees(-turn - apart))
			o, err := cam.OverlapOf(ex, in, check)
			if err != nil || o.NoAnswer.Given() {
				t.Fatal(o, err)
			}
			e, _ := ex.Events(check)
			i, _ := in.Events(check)
			want := half(e.Closes.Degrees() - i.Opens.Degrees())
			if math.Abs(o.Cam.Degrees()-want) > 1e-9 || math.Abs(o.Crank.Degrees()-2*want) > 1e-9 || (want > 0) != (apart < 126) {
				t.Errorf("%g° apart, turned by %g: %+v, want %g", apart, turn, o, want)
			}
			if want < 0 {
				if o.AreaMMDegrees != 0 || o.SplitAt != 0 || o.SplitBy != 0 {
					t.Errorf("a pause with %+v", o)
				}
				continue
			}
			if math.Mod(turn, 90) != 0 {
				continue
			}
			const parts = 20_000
			sum := 0.0
			for k := range parts {
				x := i.Opens + units.CamDegrees(want*(float64(k)+0.5)/parts)
				a, _ := ex.Lift(x)
				b, _ := in.Lift(x)
				sum += min(a, b).Millimetres() * want / parts
			}
			if math.Abs(o.AreaMMDegrees-sum) > 5e-6*sum {
				t.Errorf("%g° apart, turned by %g: %.9g mm deg, by sum %.9g", apart, turn, o.AreaMMDegrees, sum)
			}
			a, _ := ex.Lift(o.SplitAt)
			b, _ := in.Lift(o.SplitAt)
			if math.Abs((a-b).Millimetres()) > 1e-7 || math.Abs((a-o.SplitBy).Millimetres()) > 1e-7 || !(a > check) || o.SplitAt < 0 || o.SplitAt >= 360 {
				t.Errorf("split by %v at %v, where they stand at %v and %v", o.SplitBy, o.SplitAt, a, b)
			}
		}
	}
}

// Doubts of events by small changes: each flank's figures are moved by their own doubt
// and the zero, the events' angles follow by the rise, and squares add.
func TestDoubtsByChanges(t *testing.T) {
	const d, z, w = 0.02, 0.03, 0.05 // mm, mm, degrees
	f := cam.Fitted{Doubt: mm(d)}
	e := cam.Events{OpeningRise: mm(0.2), ClosingRise: mm(0.125)}
	got, err := f.Doubts(e, mm(z), w)
	if err != nil {
		t.Fatal(err)
	}
	// Opening and closing, in degrees, for an error of the lift at the opening, at the
	// closing, of the zero, and of the wheel. A zero too high closes the lobe from both sides.
	changes := [][2]float64{{d / 0.2, 0}, {0, d / 0.125}, {z / 0.2, -z / 0.125}, {w, w}}
	var opens, closes, duration, centre float64
	for _, c := range changes {
		opens += sq(c[0])
		closes += sq(c[1])
		duration += sq(c[1] - c[0])
		centre += sq((c[0] + c[1]) / 2)
	}
	for _, p := range []struct {
		what string
		got  units.CamAngle
		want float64
	}{{"opens", got.Opens, opens}, {"closes", got.Closes, closes}, {"duration", got.Duration, duration}, {"centre", got.Centre, centre}} {
		near(t, p.what, p.got.Degrees(), math.Sqrt(p.want), 1e-12)
	}
	none := cam.Events{}
	none.NoAnswer.Code = "never-reached"
	if got, err := f.Doubts(none, 0, 0); err != nil || got != (cam.Doubts{}) {
		t.Errorf("no event, yet a doubt: %+v, %v", got, err)
	}
}

// Places by the nearest dead centre, the crank turning twice for the cam's once; halfway
// between two from the one to come.
func TestPlaceFromTheNearestDeadCentre(t *testing.T) {
	for _, c := range []struct {
		at    units.CamAngle
		datum units.Datum
		after float64
	}{
		{0, units.TDC, 0}, {44, units.TDC, 88}, {45, units.BDC, -90}, {50, units.BDC, -80}, {100, units.BDC, 20}, {134, units.BDC, 88},
		{135, units.TDC, -90}, {140, units.TDC, -80}, {180, units.TDC, 0}, {190, units.TDC, 20}, {224, units.TDC, 88},
		{225, units.BDC, -90}, {260, units.BDC, -20}, {300, units.BDC, 60}, {315, units.TDC, -90}, {350, units.TDC, -20}, {360, units.TDC, 0}, {-10, units.TDC, -20},
	} {
		p := cam.Place(c.at)
		if p.Datum() != c.datum || math.Abs(p.After().Degrees()-c.after) > 1e-9 {
			t.Errorf("%v: %v after %v, want %g° after %v", c.at, p.After(), p.Datum(), c.after, c.datum)
		}
	}
}

// A curve as a drawing: every half degree from 0 to 360, and nothing outside.
func TestDrawing(t *testing.T) {
	c := lopsided(t, 20) // lift at 0
	traces := make([]cam.Trace, 4)
	for k := range traces {
		traces[k], _ = c.Trace(k)
	}
	for _, i := range []int{0, 1, 39, 719, 720} {
		at := float64(i) / 2
		m, _ := c.Motion(units.CamDegrees(at))
		want := [4]float64{m.Lift.Millimetres(), m.VelocityMMPerDegree, m.AccelerationMMPerDegree2, m.JerkMMPerDegree3}
		if x, y := c.XY(i); x != at || y == 0 || math.Abs(y-want[0]) > 1e-12 {
			t.Errorf("point %d: %g at %g, want %g at %g", i, y, x, want[0], at)
		}
		for k, trace := range traces {
			if x, y := trace.XY(i); x != at || y == 0 || math.Abs(y-want[k]) > 1e-12 {
				t.Errorf("order %d, point %d: %g at %g, want %g at %g", k, i, y, x, want[k], at)
			}
		}
	}
	for _, i := range []int{-1, 721, 5000} {
		x, y := c.XY(i)
		v, w := traces[1].XY(i)
		if x != 0 || y != 0 || v != 0 || w != 0 {
			t.Errorf("point %d is drawn at %g, %g and %g, %g", i, x, y, v, w)
		}
	}
	if c.Len() != 721 || traces[0].Len() != 721 || (cam.Trace{}).Len() != 0 {
		t.Error(c.Len(), traces[0].Len(), (cam.Trace{}).Len())
	}
}

// A cam moved on by any number of whole turns is where it was, to the last digit.
func TestAdvancedByTurns(t *testing.T) {
	c := lopsided(t, 20)
	for _, turns := range []float64{1, -1, 2, 1e6, -1e9} {
		moved, err := c.Advanced(units.CamDegrees(360 * turns))
		if err != nil {
			t.Fatal(err)
		}
		for _, x := range []units.CamAngle{0, 10.1, 200.7, 355} {
			a, _ := c.Lift(x)
			if b, err := moved.Lift(x); err != nil || math.Abs((a-b).Millimetres()) > 1e-12 {
				t.Errorf("%g turns on, at %v: %v, was %v", turns, x, b, a)
			}
		}
	}
}
