package drive_test

import (
	"math"
	"testing"

	"example.com/benchbook/transmission/drive"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// The tooth form of ISO 606 by hand for a roller of 8 mm, whose cube root is 2, on
// 18 teeth of 12 mm pitch, whose pitch circle is 12/sin 10° = 69.1052458 mm.
func TestSprocketFormByHand(t *testing.T) {
	f := ok(drive.FormOf(12*mm, 8*mm, 18))(t)
	const d = 69.1052458
	for _, c := range []struct {
		what string
		got  units.Length
		want float64
	}{
		{"pitch circle", f.PitchDiameter, d}, {"tip, most", f.TipMost, d + 15 - 8}, {"tip, least", f.TipLeast, d + 12 - 1.0666667 - 8},
		{"seat, least", f.SeatLeast, 4.04}, {"seat, most", f.SeatMost, 4.178}, {"root, most", f.RootMost, d - 8.08}, {"root, least", f.RootLeast, d - 8.356},
		{"flank, least", f.FlankLeast, 19.2}, {"flank, most", f.FlankMost, 32.256},
	} {
		near(t, c.what, c.got.Millimetres(), c.want, 1e-8) // the figures above have nine digits
	}
}

// A chain that was chosen for a centre distance fits an adjuster that has just
// that distance, or begins or ends with it; where it lies, what it has left and
// how much longer it may wear follow from the distances.
func TestFitAtTheEnds(t *testing.T) {
	for _, m := range []drive.Method{drive.Series, drive.Tangent} {
		for n := 96; n <= 130; n += 2 {
			s := drive.Sprockets{Pitch: units.Inches(0.625), Front: 18, Rear: 46}
			at := ok(drive.CentreFor(s, float64(n), m))(t)
			near(t, "length", at.Length.Millimetres(), float64(n)*15.875, 1e-12)
			for _, by := range [][2]float64{{0, 0}, {0, 9}, {9, 0}, {4, 12}} {
				shortest, longest := at.Centre-units.Millimetres(by[0]), at.Centre+units.Millimetres(by[1])
				f := ok(drive.FitChain(s, shortest, longest, drive.FitOptions{Method: m}))(t)
				if len(f.Fits) != 1 || f.Fits[0].Pitches != n {
					t.Fatalf("%v, %d pitches between %v and %v: %+v", m, n, shortest, longest, f.Fits)
				}
				fit := f.Fits[0]
				place := 0.0
				if by[0]+by[1] > 0 {
					place = by[0] / (by[0] + by[1])
				}
				long := ok(drive.ChainLength(s, longest, m))(t).Pitches
				if !(math.Abs(fit.Adjuster-place) <= 1e-9) || math.Abs(fit.Left.Millimetres()-by[1]) > 1e-9 || math.Abs(fit.TakesUp-(long/float64(n)-1)) > 1e-12 {
					t.Fatalf("%v, %d pitches from %v: %+v", m, n, by, fit)
				}
			}
		}
	}
}

// The source that a fit names is that of its method.
func TestFitNamesItsMethod(t *testing.T) {
	s := drive.Sprockets{Pitch: units.Inches(0.625), Front: 18, Rear: 46}
	for m, want := range map[drive.Method]string{drive.Series: "Jindal, Machine Design, 1st ed. 2010", drive.Tangent: "chain round two pitch circles by its tangents"} {
		if got := ok(drive.FitChain(s, 560*mm, 590*mm, drive.FitOptions{Method: m}))(t).Basis.Sources[0].Title; got != want {
			t.Errorf("%v: %s", m, got)
		}
	}
}

// The ripple is that of the polygon the chain lies on: its greatest radius, to a
// pin, over its least, to the middle of a link. The margins are over the pull and
// over the whole; what is not known is said.
func TestPullByParts(t *testing.T) {
	in := drive.PullInput{Pitch: 100 * mm, Teeth: 10, Speed: units.RevolutionsPerSecond(1), Power: units.Watts(500), Strength: units.Newtons(8000), MassPerMetre: units.Kilograms(3)}
	p := ok(drive.ChainPull(in))(t) // at 1 m/s
	pin := ok(drive.PitchDiameter(in.Pitch, 10))(t).Millimetres() / 2
	near(t, "ripple", p.Ripple, pin/math.Sqrt(pin*pin-50*50), 1e-12)
	near(t, "pull", p.Pull.Newtons(), 500, 1e-12)
	near(t, "centrifugal", p.Centrifugal.Newtons(), 3, 1e-12)
	near(t, "total", p.Total.Newtons(), 503, 1e-12)
	near(t, "safety", p.Safety, 16, 1e-12)
	near(t, "safety over all", p.SafetyTotal, 8000.0/503, 1e-12)
	unknown := func(in drive.PullInput) (strength, mass bool) {
		for _, u := range ok(drive.ChainPull(in))(t).Basis.NotChecked {
			strength, mass = strength || u.What == "strength", mass || u.What == "centrifugal pull"
		}
		return strength, mass
	}
	if s, m := unknown(in); s || m {
		t.Errorf("given, but said not to be: strength %v, mass %v", s, m)
	}
	in.Strength, in.MassPerMetre = 0, 0
	if s, m := unknown(in); !s || !m {
		t.Errorf("not given: strength %v, mass %v", s, m)
	}
	if p := ok(drive.ChainPull(in))(t); p.Safety != 0 || p.SafetyTotal != 0 {
		t.Errorf("a margin without a strength: %+v", p)
	}
	// a millionth of a newton is the least that counts as pull
	in.Strength = units.Newtons(8000)
	for watts, pulls := range map[float64]bool{1e-6: true, 0.9e-6: false, 0: false} {
		in.Power = units.Watts(watts)
		if p := ok(drive.ChainPull(in))(t); (p.Safety > 0) != pulls {
			t.Errorf("%g W at 1 m/s: safety %g", watts, p.Safety)
		}
	}
}

// The chance of being finished is that of the bell, 0.8413 one standard
// uncertainty over (tables of the normal distribution); an exact length is over or
// not, and on the limit it is.
func TestWearAgainstItsLimits(t *testing.T) {
	read := func(l measure.Reading[units.Length], opt drive.WearOptions) drive.Wear {
		return ok(drive.ChainWear(l, 10, 10*mm, opt))(t)
	}
	over := read(measure.Of(102.3*units.Millimetre, 0.3*units.Millimetre), drive.WearOptions{})
	near(t, "one sigma over", over.Finished, 0.8413, 1e-4)
	near(t, "two under", read(measure.Of(101.4*units.Millimetre, 0.3*units.Millimetre), drive.WearOptions{}).Finished, 0.0228, 3e-3)
	near(t, "pitch as worn", over.Pitch.Value().Millimetres(), 10.23, 1e-12)
	near(t, "its uncertainty", over.Pitch.U().Millimetres(), 0.03, 1e-6)
	for length, want := range map[float64]float64{102.1: 1, 101.9: 0} {
		if w := read(measure.Exact(units.Millimetres(length)), drive.WearOptions{}); w.Finished != want {
			t.Errorf("exactly %g mm: %+v", length, w)
		}
	}
	e := read(measure.Exact(101.7*units.Millimetre), drive.WearOptions{}).Elongation.Value()
	if w := read(measure.Exact(101.7*units.Millimetre), drive.WearOptions{Watch: e, Finish: e}); w.Finished != 1 || w.Verdict != "finished" {
		t.Errorf("on the limit: %+v", w)
	}
	if w := read(measure.Exact(101.7*units.Millimetre), drive.WearOptions{Watch: e}); w.Finished != 0 || w.Verdict != "watch" {
		t.Errorf("to be watched from here: %+v", w)
	}
}
