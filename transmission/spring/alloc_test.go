package spring_test

import (
	"testing"

	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
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
