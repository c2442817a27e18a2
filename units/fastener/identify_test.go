package fastener

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// trial draws what a mechanic would read from a thread: outside diameter with
// wear even up to 0.1 mm and a normal error of 0.05 mm, pitch by gauge with a
// normal error of half a per cent.
func trial(r *rand.Rand, t Thread) Readings {
	p := t.Pitch().Times(1 + 0.005*r.NormFloat64())
	return Readings{
		Major: measure.Of(t.Major()-units.Millimetres(0.1*r.Float64()-0.05*r.NormFloat64()), units.Millimetres(0.05)),
		Pitch: measure.By(p, measure.PitchGauge()),
	}
}

// TestIdentifyTrials is the acceptance trial: 20,000 threads drawn evenly from
// the reference tables (2,000 under -short), read with error and wear.
func TestIdentifyTrials(t *testing.T) {
	n := 20000
	if testing.Short() {
		n = 2000
	}
	threads := tables()
	if len(threads) < 338 {
		t.Fatalf("only %d threads", len(threads))
	}
	type bin struct {
		n, hit int
		stated float64
	}
	var bins [20]bin
	var sizes [40]int
	first, inSet, largest, kept := 0, 0, 0, 0
	r := rand.New(rand.NewPCG(3, 20000))
	missed := map[string]int{}
	for i := range n {
		truth := threads[i%len(threads)]
		if i >= n/len(threads)*len(threads) {
			truth = threads[r.IntN(len(threads))]
		}
		id, err := Identify(trial(r, truth), IdentifyOptions{})
		if err != nil {
			t.Fatal(err)
		}
		sizes[min(len(id.Alike), len(sizes)-1)]++
		largest = max(largest, len(id.Alike))
		kept += len(id.Candidates)
		hit := len(id.Candidates) > 0 && id.Candidates[0].Thread == truth
		in := hit
		for _, a := range id.Alike {
			in = in || a == truth
		}
		if hit {
			first++
		}
		if in {
			inSet++
		} else {
			missed[truth.Name()]++
		}
		for _, c := range id.Candidates {
			b := &bins[min(int(c.Odds.Share*20), 19)]
			b.n++
			b.stated += c.Odds.Share
			if c.Thread == truth {
				b.hit++
			}
		}
	}
	t.Logf("%d trials: first %.2f %%, first or alike %.2f %%, %.1f kept", n, 100*float64(first)/float64(n), 100*float64(inSet)/float64(n), float64(kept)/float64(n))
	for k, s := range sizes {
		if s > 0 {
			t.Logf("  set of %d: %.1f %%", k, 100*float64(s)/float64(n))
		}
	}
	t.Logf("missed: %v", missed)
	if got := float64(inSet) / float64(n); got < 0.995 {
		t.Errorf("true thread first or alike in %.4f of trials, want 0.995", got)
	}
	for i, b := range bins {
		if b.n < 100 {
			continue
		}
		stated, seen := b.stated/float64(b.n), float64(b.hit)/float64(b.n)
		slack := 0.02 + 3*math.Sqrt(stated*(1-stated)/float64(b.n))
		t.Logf("  stated %.3f, seen %.3f, cases %d", stated, seen, b.n)
		if math.Abs(stated-seen) > slack {
			t.Errorf("bin %d: stated %.3f, seen %.3f over %d cases, allowed %.3f", i, stated, seen, b.n, slack)
		}
	}
}
