package gear_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/optimize"
	"pgregory.net/rapid"

	"example.com/benchbook/timing/gear"
	"example.com/benchbook/units"
)

// A ball where [gear.Wheel.OverPins] puts it must touch the flank, neither more
// nor less: its centre lies its radius from the nearest point of an involute
// helicoid, found by gonum/optimize over the surface in space.
func TestBallTouchesTheFlank(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		z := 2 * rapid.IntRange(7, 40).Draw(t, "half the teeth")
		mn := rapid.Float64Range(1, 5).Draw(t, "module")
		helix := float64(rapid.IntRange(-40, 40).Draw(t, "helix")) * math.Pi / 180
		shift := rapid.Float64Range(-0.3, 0.5).Draw(t, "shift")
		const an = 20 * math.Pi / 180
		w := gear.Wheel{Teeth: z, Module: units.Millimetres(mn), Helix: units.Radians(helix), Shift: shift}
		ball := 1.728 * mn
		m, err := w.OverPins(units.Millimetres(ball))
		if err != nil {
			t.Fatal(err)
		}
		centre := (m.M.Millimetres() - ball) / 2

		// from the rack: transverse pressure angle, base circle, and half the
		// angle of a tooth space at the base circle
		at := math.Atan(math.Tan(an) / math.Cos(helix))
		r := float64(z) * mn / math.Cos(helix) / 2
		rb := r * math.Cos(at)
		space := (math.Pi*mn/2 - 2*shift*mn*math.Tan(an)) / math.Cos(helix) // transverse width on the reference circle
		half := space/(2*r) - (math.Tan(at) - at)
		twist := math.Tan(helix) / r // radians for each mm along the axis
		distance := func(x []float64) float64 {
			roll, along := x[0], x[1]
			// the flank on one side of a space whose middle points along x
			turn := half + roll + twist*along
			px, py := rb*(math.Cos(turn)+roll*math.Sin(turn)), rb*(math.Sin(turn)-roll*math.Cos(turn))
			return math.Sqrt((px-centre)*(px-centre) + py*py + along*along)
		}
		best, err := optimize.Minimize(optimize.Problem{Func: distance}, []float64{math.Tan(m.Pressure.SI()), 0}, nil, &optimize.NelderMead{})
		if err != nil {
			t.Fatal(err)
		}
		// a simplex ends within 1e-6 of a smooth minimum or so
		if math.Abs(best.F-ball/2) > 1e-5*mn {
			t.Fatalf("nearest point of the flank %v mm from the centre, radius %v", best.F, ball/2)
		}
	})
}

// Thicker teeth lift the pins as PerThickness says: a little shift makes the
// normal thickness greater by 2 mn tan an of it.
func TestPinsLiftedByThickness(t *testing.T) {
	for _, w := range []gear.Wheel{{Teeth: 25, Module: 2}, {Teeth: 40, Module: 3, Helix: 20 * units.Degree}} {
		pin := w.Module.Times(1.728)
		a, err := w.OverPins(pin)
		if err != nil {
			t.Fatal(err)
		}
		const step = 1e-5
		w.Shift = step
		b, _ := w.OverPins(pin)
		thicker := w.Module.Times(2 * step * math.Tan(20*math.Pi/180))
		// first order in the step
		if got := (b.M - a.M).Ratio(thicker); math.Abs(got/a.PerThickness-1) > 1e-4 {
			t.Errorf("%d teeth: %v for each unit, said to be %v", w.Teeth, got, a.PerThickness)
		}
	}
}
