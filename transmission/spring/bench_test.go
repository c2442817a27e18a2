package spring_test

import (
	"testing"

	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
	"example.com/benchbook/units/solve"
)

// The inverse of a disc against the same inverse by Brent's method: read
// the two as a ratio.
func BenchmarkDiscDeflection(b *testing.B) {
	d := snapping(b)
	top, _ := d.Load(d.Limit())
	f := top.Times(0.7)
	b.Run("newton", func(b *testing.B) {
		for b.Loop() {
			d.Deflection(f)
		}
	})
	b.Run("brent", func(b *testing.B) {
		for b.Loop() {
			_, err := solve.Inverse(func(s units.Length) float64 { g, _ := d.Load(s); return g.Newtons() }, f.Newtons(), 0, d.Limit(), units.Micrometres(1e-6))
			if err != nil {
				b.Fatal(err)
			}
		}
	})
}

func BenchmarkIdentify(b *testing.B) {
	in := invented()
	for b.Loop() {
		if _, err := spring.Identify(in, spring.IdentifyOptions{}); err != nil {
			b.Fatal(err)
		}
	}
}
