package lift

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/examples/job"
)

// A plain lobe passes its check lift at its events, is highest half way, and
// lies where it does whichever lift it has.
func TestLobeMeetsItsEvents(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := Cam{Opens: rapid.Float64Range(-300, 100).Draw(t, "opens"), Max: rapid.Float64Range(2, 15).Draw(t, "lift"), Known: true}
		l.Closes = l.Opens + rapid.Float64Range(100, 320).Draw(t, "open for")
		l.Check = l.Max * rapid.Float64Range(0, 0.5).Draw(t, "check")
		const near = 1e-9 // of millimetres of lift, in sums of a few hundred degrees
		for _, at := range []float64{l.Opens, l.Closes} {
			if got := l.At(at); math.Abs(got-l.Check) > near {
				t.Fatalf("lift %g at an event, check lift %g", got, l.Check)
			}
		}
		if got := l.At(l.Centre()); math.Abs(got-l.Max) > near {
			t.Fatalf("lift %g half way, greatest %g", got, l.Max)
		}
		if from, to, ok := l.Span(); !ok || l.At(from) > near || l.At(to) > near {
			t.Fatalf("lift %g and %g at the ends of the lobe", l.At(from), l.At(to))
		}
	})
	for _, none := range []Cam{{}, {Opens: 10, Closes: 5, Max: 8, Check: 1, Known: true}, {Closes: 200, Max: 1, Check: 2, Known: true}} {
		if _, _, ok := none.Span(); ok || none.At(5) != 0 {
			t.Errorf("%v has a shape", none)
		}
	}
}

// The demonstration's inlet was read as a table: what is drawn keeps to its readings,
// and passes the check lift where the verdict says it does.
func TestReadTable(t *testing.T) {
	r, err := job.Run(job.Demo())
	if err != nil {
		t.Fatal(err)
	}
	inlet, exhaust := Of(r.Section("timing").Result.(job.TimingResult))
	if !inlet.Read.Measured() || exhaust.Read.Measured() || len(inlet.Read.Points) < 30 {
		t.Fatalf("inlet through %d readings, exhaust through %d", len(inlet.Read.Points), len(exhaust.Read.Points))
	}
	for _, p := range inlet.Read.Points {
		// invented readings scatter by two hundredths and half a degree on the flank
		if off := math.Abs(inlet.Read.At(p.At) - p.Lift); off > 0.08 {
			t.Errorf("curve %.3f mm from the reading at %g°", off, p.At)
		}
	}
	// events are told to a tenth of a degree, which is worth half a hundredth here
	for _, at := range []float64{inlet.Read.Opens, inlet.Read.Closes} {
		if l := inlet.Read.At(at); math.Abs(l-inlet.Read.Check) > 0.006 {
			t.Errorf("lift %.4f mm at the event at %g°", l, at)
		}
	}
	if from, to, ok := Overlap(inlet.Read, exhaust.Read); !ok || math.Abs(to-from-41) > 1 {
		t.Errorf("both open from %g to %g", from, to)
	}
}
