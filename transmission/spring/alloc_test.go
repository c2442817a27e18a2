package spring_test

import (
	"testing"

	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
	"example.com/benchbook/units/solve"
)

func snapping(t failer) spring.Disc {
	return ok(spring.NewDisc(spring.DiscSpec{Outside: 80 * mm, Inside: 40 * mm, Thickness: 2 * mm, ConeHeight: 3 * mm}))(t)
}

// A clutch window asks its springs hundreds of times: none of that allocates.
func TestElementsDoNotAllocate(t *testing.T) {
	coil := ok(spring.NewHelical(spring.HelicalSpec{Wire: 3 * mm, Mean: 18 * mm, Active: 8, Free: 50 * mm}))(t)
	disc := snapping(t)
	all := map[string]spring.Element{
		"helical":  coil,
		"linear":   ok(spring.NewLinear(25*units.NewtonPerMillimetre, 46*mm, 28*mm))(t),
		"disc":     disc,
		"stack":    ok(spring.NewStack(disc, 2, 6))(t),
		"levered":  ok(disc.Between(78*mm, 42*mm))(t),
		"parallel": ok(spring.NewParallel(spring.Part{Spring: coil, Count: 6}, spring.Part{Spring: coil, Gap: 2 * mm}))(t),
		"series":   ok(spring.NewSeries(coil, disc))(t),
	}
	for name, e := range all {
		s := e.Limit().Times(0.4)
		f, _ := e.Load(s)
		if n := testing.AllocsPerRun(100, func() {
			e.Load(s)
			e.Deflection(f)
			e.RateAt(s)
		}); n != 0 {
			t.Errorf("%s: %g allocations", name, n)
		}
	}
}

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
