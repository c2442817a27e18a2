package fastener

import (
	"math"
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// bits is the information of a look by Lindley's sum: shares of the causes, and the
// chances of the outcomes under each.
func bits(shares []float64, chances [][]float64) float64 {
	b := 0.0
	for o := range chances[0] {
		p := 0.0
		for c := range shares {
			p += shares[c] * chances[c][o]
		}
		for c := range shares {
			if x := chances[c][o]; x > 0 {
				b += shares[c] * x * math.Log2(x/p)
			}
		}
	}
	return b
}

// TestNextReadingsByHand: two special threads a hundredth apart in pitch and a fiftieth
// of a millimetre in diameter, of which only a worn diameter was read. A reading comes out
// nearest to one or the other figure, with chances as exp(-x²/2u²), u being half a per cent
// of the pitch by gauge, a fifth by count, 0.02 mm by micrometer and 1.5° for the angle.
// What is of no system comes out as either.
func TestNextReadingsByHand(t *testing.T) {
	a, b := made(t, "a", MetricForm, 20, 3), made(t, "b", CycleForm, 20.02, 3.03)
	in := Readings{Major: measure.Of(units.Millimetres(19.95), units.Millimetres(0.05))}
	id, err := Identify(in, IdentifyOptions{Among: []Thread{a, b}})
	if err != nil || len(id.Candidates) != 2 {
		t.Fatal(id.Candidates, err)
	}
	first, second := id.Candidates[0], id.Candidates[1]
	other, _ := id.Causes.Of(measure.SomethingElse)
	shares := []float64{first.Odds.Share, second.Odds.Share, other.Share}
	pitch := func(t Thread) float64 { return t.Pitch().Millimetres() }
	two := func(figure, u func(Thread) float64) [][]float64 {
		x := figure(first.Thread) - figure(second.Thread)
		miss := func(t Thread) float64 { return 1 / (1 + math.Exp(x*x/(2*u(t)*u(t)))) }
		m, n := miss(first.Thread), miss(second.Thread)
		return [][]float64{{1 - m, m}, {n, 1 - n}, {0.5, 0.5}}
	}
	want := map[string]float64{
		"pitch": bits(shares, two(pitch, func(t Thread) float64 { return 0.005 * pitch(t) })),
		"count": bits(shares, two(pitch, func(t Thread) float64 { return 0.002 * pitch(t) })),
		"major": bits(shares, two(func(t Thread) float64 { return t.Major().Millimetres() }, func(Thread) float64 { return 0.02 })),
		// both are of 60°, both of no system: neither angle nor kind of part tells them apart
		"part": bits(shares, [][]float64{{0.85, 0.14, 0.01}, {0.85, 0.14, 0.01}, {1.0 / 3, 1.0 / 3, 1.0 / 3}}),
	}
	seen := 0
	for _, g := range id.NextReadings {
		seen++
		if w, ok := want[g.Key]; !ok || math.Abs(g.Bits-w) > 1e-9 {
			t.Errorf("%s tells %v bits, want %v", g.Key, g.Bits, w)
		}
	}
	for _, w := range want {
		if w >= 0.005 { // what tells less is not asked for
			seen--
		}
	}
	if seen != 0 {
		t.Errorf("%v, want %v", id.NextReadings, want)
	}
	// nothing is asked for that was read or told
	in.Part, in.Pitch = Bolt, measure.Of(units.Millimetres(3.015), units.Millimetres(0.02))
	id, err = Identify(in, IdentifyOptions{Among: []Thread{a, b}})
	if err != nil {
		t.Fatal(err)
	}
	for _, g := range id.NextReadings {
		if g.Key == "pitch" || g.Key == "part" {
			t.Errorf("%s asked for again", g.Key)
		}
	}
}

// TestOutlooks: figures that are the same are one outcome, those of shares below a
// thousandth none; chances add up to one.
func TestOutlooks(t *testing.T) {
	look := further{u: func(Thread) float64 { return 0.01 }, figure: func(t Thread) float64 { return t.Pitch().Millimetres() }}
	c := func(key string, share, pitch float64) Candidate {
		th := made(t, key, MetricForm, 20, pitch)
		return Candidate{th, measure.Odds{Key: key, Share: share}}
	}
	for _, k := range []struct {
		what     string
		list     []Candidate
		outcomes int // 0: no look worth taking
		speak    int // candidates with an outlook
	}{
		{"two of one pitch", []Candidate{c("a", 0.5, 3), c("b", 0.4, 3)}, 0, 0},
		{"two", []Candidate{c("a", 0.5, 3), c("b", 0.4, 3.001)}, 2, 2},
		{"three, two alike", []Candidate{c("a", 0.5, 3), c("b", 0.3, 3.05), c("d", 0.1, 3)}, 2, 3},
		{"one a thousandth", []Candidate{c("a", 0.9, 3), c("b", 1e-3, 3.05)}, 2, 2},
		{"one less", []Candidate{c("a", 0.9, 3), c("b", 0.9e-3, 3.05)}, 0, 0},
		{"one of the last that count", []Candidate{c("a", 0.5, 3), c("b", 0.4, 3.05), c("d", 1e-4, 3.1)}, 2, 3},
		{"one of those that do not", []Candidate{c("a", 0.5, 3), c("b", 0.4, 3.05), c("d", 0.9e-4, 3.1)}, 2, 2},
	} {
		out, ok := look.outlooks(k.list)
		if ok != (k.outcomes > 0) {
			t.Errorf("%s: %v, %v", k.what, out, ok)
			continue
		}
		if !ok {
			continue
		}
		if len(out) != k.speak+1 { // and something else
			t.Errorf("%s: %d outlooks", k.what, len(out))
		}
		for key, o := range out {
			sum := 0.0
			for _, p := range o.Chances {
				sum += p
			}
			if len(o.Chances) != k.outcomes || math.Abs(sum-1) > 1e-12 {
				t.Errorf("%s, %s: %v", k.what, key, o.Chances)
			}
		}
	}
	// figures a thousandth of the spread apart are two, less are one
	wide := further{u: func(Thread) float64 { return 1000 }, figure: look.figure}
	for pitch, ok := range map[float64]bool{4: true, 3.999: false} {
		if _, two := wide.outlooks([]Candidate{c("a", 0.5, 3), c("b", 0.4, pitch)}); two != ok {
			t.Errorf("3 and %v mm by a spread of 1000: told apart %v", pitch, two)
		}
	}
	// 3.1 between 3 and 3.05 by spreads of 0.01: 10 and 5 off
	out, _ := look.outlooks([]Candidate{c("a", 0.5, 3), c("b", 0.4, 3.05), c("d", 1e-4, 3.1)})
	if got, want := math.Log(out["d"].Chances[1]/out["d"].Chances[0]), (100.0-25)/2; math.Abs(got-want) > 1e-9 {
		t.Errorf("%v, want %v", got, want)
	}
}
