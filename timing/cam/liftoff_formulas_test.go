package cam_test

import (
	"math"
	"testing"

	"example.com/benchbook/timing/cam"
	"example.com/benchbook/units"
	"pgregory.net/rapid"
)

// The mass of moving parts by their energy at a valve speed of 1: each part's m v², the
// bar of the rocker cut into ten thousand lengths from the one end to the other.
func TestPartsByEnergy(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := func(name string) float64 { return rapid.Float64Range(1, 200).Draw(t, name) }
		p := cam.Parts{
			Valve: units.Grams(g("valve")), Retainer: units.Grams(g("retainer")), Spring: units.Grams(g("spring")), Follower: units.Grams(g("follower")), Rocker: units.Grams(g("rocker")),
			ValveArm: mm(rapid.Float64Range(20, 60).Draw(t, "valve arm")), CamArm: mm(rapid.Float64Range(1, 60).Draw(t, "cam arm")),
		}
		ratio := 1.0
		if rapid.Bool().Draw(t, "with a ratio") {
			ratio = rapid.Float64Range(0.5, 2).Draw(t, "ratio")
			p.Ratio = units.Value(ratio)
		}
		const cuts = 10_000
		a, b := p.ValveArm.Millimetres(), p.CamArm.Millimetres()
		swing := 1 / a // of the rocker for a valve speed of 1
		// The far turn of a spring stands still, the near one moves with the valve: the
		// speed grows evenly and its square comes to a third, here as a sum as well.
		spring, rocker := 0.0, 0.0
		for i := range cuts {
			part := (float64(i) + 0.5) / cuts
			spring += p.Spring.Grams() / cuts * part * part
			rocker += p.Rocker.Grams() / cuts * sq(swing*(-b+(a+b)*part))
		}
		want := p.Valve.Grams() + p.Retainer.Grams() + spring + rocker + p.Follower.Grams()/sq(ratio)
		got, err := p.AtValve()
		// A sum of middles is off by 1/(12 cuts²).
		if err != nil || math.Abs(got.Grams()-want) > 1e-7*want {
			t.Fatalf("%v, by energy %.6f g: %v", got, want, err)
		}
	})
	// Of a rocker whose arms were not measured half counts.
	if m, err := (cam.Parts{Valve: units.Grams(10), Rocker: units.Grams(60)}).AtValve(); err != nil || math.Abs(m.Grams()-40) > 1e-12 {
		t.Error(m, err)
	}
}

// Lift-off against the valve's own lift: its second difference over the same 2° of the
// cam, place by place, under a rocker whose ratio changes much as it swings.
func TestLiftOffByTheValvesLift(t *testing.T) {
	smooth, err := cam.Fit(lobe{8, 75, 100}.read(1, 0, fixed()), cam.FitOptions{Criterion: cam.Interpolated})
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range []struct {
		by           units.CamAngle
		rocker       cam.Rocker
		seated, rate float64 // N, N/m
	}{
		{0, cam.Rocker{CamArm: 25, ValveArm: 32, CamTilt: -10, ValveTilt: 40}, 200, 15_000},
		// A spring weak at the start lets go on the flank, where what the ratio loses as the
		// rocker swings slows the valve too.
		{70, cam.Rocker{CamArm: 20, ValveArm: 25, CamTilt: 30, ValveTilt: -30}, 5, 40_000},
	} {
		c, err := smooth.Advanced(p.by)
		if err != nil {
			t.Fatal(err)
		}
		v := cam.Valve{Cam: c, Rocker: p.rocker, Clearance: mm(0.3)}
		s := cam.SpringLoad{Seated: units.Newtons(p.seated), Rate: units.NewtonsPerMetre(p.rate), Mass: units.Grams(180)}
		off, err := v.LiftOff(s)
		if err != nil || off.NoAnswer.Given() {
			t.Fatal(off.NoAnswer, err)
		}
		lift := func(x units.CamAngle) float64 {
			y, err := v.Lift(x)
			if err != nil {
				t.Fatal(err)
			}
			return y.SI()
		}
		const places, apart = 3600, 10 // a tenth of a degree, and a degree to either side
		lifts := make([]float64, places)
		for i := range lifts {
			lifts[i] = lift(units.CamDegrees(float64(i) / 10))
		}
		best, at, height := math.Inf(1), units.CamAngle(0), 0.0
		for i, y := range lifts {
			before, after := lifts[(i+places-apart)%places], lifts[(i+apart)%places]
			if y == 0 || before == 0 || after == 0 {
				continue
			}
			if bend := (before - 2*y + after) / sq(math.Pi/180); bend < 0 {
				if w := math.Sqrt((p.seated + p.rate*y) / (0.18 * -bend)); w < best {
					best, at, height = w, units.CamDegrees(float64(i)/10), y
				}
			}
		}
		// The second difference weighs the middle of the 2° more than the mean does: they
		// part by the fourth derivative, under 0.1 % here. The speed's least is flat.
		if got := off.CrankSpeed.SI() / 2; math.Abs(got-best) > 1e-3*best || math.Abs(half((off.At-at).Degrees())) > 1 {
			t.Errorf("%.2f rad/s of the cam at %v, by the valve's lift %.2f at %v", got, off.At, best, at)
		}
		if math.Abs(lift(off.At)-off.Lift.SI()) > 1e-9 || math.Abs(off.Lift.SI()-height) > 1e-4 {
			t.Errorf("lets go at %v of lift, there the valve stands at %g m", off.Lift, lift(off.At))
		}
		if want := p.seated + p.rate*off.Lift.SI(); math.Abs(off.Spring.SI()-want) > 1e-9*want || math.Abs(off.Acceleration.SI()*0.18+want) > 1e-9*want {
			t.Errorf("%+v: the spring presses with %g N", off, want)
		}
	}
	// A valve that never opens is never slowed.
	shut := cam.Valve{Cam: smooth.Curve, Clearance: 9}
	if off, err := shut.LiftOff(cam.SpringLoad{Seated: 200, Mass: 0.1}); err != nil || off.NoAnswer.Code != "never-slowed" || off.CrankSpeed != 0 {
		t.Errorf("%+v, %v", off, err)
	}
}
