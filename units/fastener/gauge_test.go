package fastener

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/units"
)

func TestGaugesAreInvertible(t *testing.T) {
	for _, g := range []Gauge{SWG, NumberDrill, LetterDrill} {
		s := g.sizes()
		for i := 1; i < len(s); i++ {
			if s[i].Number != s[i-1].Number+1 || (s[i].Diameter > s[i-1].Diameter) != (g == LetterDrill) {
				t.Errorf("%v: %v after %v", g, s[i], s[i-1])
			}
		}
		for _, z := range s {
			d, err := g.Diameter(z.Mark)
			if err != nil || d != z.Diameter {
				t.Errorf("%v %s = %v, %v", g, z.Mark, d, err)
			}
			back, off, err := g.Nearest(d)
			if err != nil || back != z || off != 0 {
				t.Errorf("%v %s back as %v", g, z.Mark, back)
			}
		}
		first, last := g.Ends()
		rapid.Check(t, func(r *rapid.T) {
			n := rapid.Float64Range(first.Number, last.Number).Draw(r, "number")
			d, err := g.At(n)
			if err != nil {
				r.Fatal(err)
			}
			back, err := g.Number(d)
			if err != nil || math.Abs(back-n) > 1e-9 { // the finest step is 0.4 thou of a millimetre, so last bits grow by 1e4 at most
				r.Fatalf("%v: %v = %v, back as %v, %v", g, n, d, back, err)
			}
		})
	}
	for _, d := range []units.Length{0, -1, units.Millimetres(math.NaN()), units.Millimetres(math.Inf(1)), units.Metre} {
		if _, _, err := SWG.Nearest(d); err == nil {
			t.Errorf("%v mm has a wire gauge", d.Millimetres())
		}
		if _, err := SWG.Number(d); err == nil {
			t.Errorf("%v mm has a wire gauge number", d.Millimetres())
		}
	}
	if _, err := SWG.At(math.NaN()); err == nil {
		t.Error("NaN is a gauge number")
	}
	if _, err := Gauge(0).Diameter("1"); err == nil {
		t.Error("no gauge has sizes")
	}
}

// TestGaugeSizes: BS 3737 prints 0.128 in for 10 SWG and 0.5 in for 7/0; ASME
// B94.11M 0.2010 in for #7 and 0.257 in for F.
func TestGaugeSizes(t *testing.T) {
	for _, c := range []struct {
		g    Gauge
		mark string
		inch float64
	}{{SWG, "10", 0.128}, {SWG, "7/0", 0.5}, {NumberDrill, "7", 0.2010}, {NumberDrill, "#7", 0.2010}, {LetterDrill, "f", 0.257}} {
		if d, err := c.g.Diameter(c.mark); err != nil || math.Abs(d.Inches()-c.inch) > 1e-12 {
			t.Errorf("%v %s = %v, %v", c.g, c.mark, d, err)
		}
	}
}
