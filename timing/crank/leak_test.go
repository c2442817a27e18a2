package crank_test

import (
	"fmt"
	"math"
	"testing"

	"example.com/benchbook/timing/crank"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
	"pgregory.net/rapid"
)

// Six bar put in and 4.2 held, a loss of 30 %: about a square millimetre, and what a
// kick would then show on a gauge, on an invented machine.
func ExampleLeakTester() {
	var tester crank.LeakTester // an orifice of 1 mm
	hole, err := tester.Hole(6*units.Bar, units.Bars(4.2))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("leaks like a hole of", hole.In(units.SquareMillimetre, 2))
	c := crank.Cylinder{Bore: 78 * units.Millimetre, Slider: crank.Slider{Stroke: 83 * units.Millimetre, Rod: 150 * units.Millimetre}, Clearance: units.CubicCentimetres(61)}
	for _, leak := range []measure.Interval[units.Area]{{}, measure.Between(hole, hole)} {
		k, err := c.Cranking(units.After(units.BDC, 65*units.CrankDegree), crank.CrankingOptions{Leak: leak})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(k.Gauge.Low.In(units.Bar, 1), "to", k.Gauge.High.In(units.Bar, 1))
	}
	small, err := crank.LeakTester{Orifice: units.Millimetres(0.5)}.Held(6*units.Bar, hole)
	fmt.Println("a tester of half the orifice would show", small.In(units.Bar, 1), err)
	// Output:
	// leaks like a hole of 0.94 mm²
	// 7.2 bar to 9.4 bar
	// 6.3 bar to 8.4 bar
	// a tester of half the orifice would show 0.5 bar <nil>
}

// With both holes choked the areas are in the inverse ratio of the pressures before
// them; derived. There and back is the same pressure.
func TestLeakTester(t *testing.T) {
	hole, err := crank.LeakTester{}.Hole(9*units.Bar, units.Bars(3))
	want := math.Pi / 4 * (9 + 1.01325) / (3 + 1.01325)
	if err != nil || math.Abs(hole.SquareMillimetres()/want-1) > 1e-9 {
		t.Errorf("both choked: %v, %v, want %.4f mm²", hole, err, want)
	}
	rapid.Check(t, func(t *rapid.T) {
		tester := crank.LeakTester{Orifice: units.Millimetres(rapid.Float64Range(0.3, 3).Draw(t, "orifice"))}
		supply := units.Bars(rapid.Float64Range(1, 10).Draw(t, "supply"))
		held := supply.Times(rapid.Float64Range(0.02, 0.995).Draw(t, "part"))
		hole, err := tester.Hole(supply, held)
		if err != nil {
			t.Fatal(err)
		}
		back, err := tester.Held(supply, hole)
		if err != nil || math.Abs(back.Ratio(held)-1) > 1e-6 { // the root is sought to 1e-9 of the supply
			t.Fatalf("%v of %v: %v, back %v, %v", held, supply, hole, back, err)
		}
		if less, err := tester.Hole(supply, held.Times(0.99)); err != nil || less <= hole {
			t.Fatalf("holds less with a smaller hole: %v, %v, %v", less, hole, err)
		}
	})
	nan := units.Bars(math.NaN())
	for _, c := range []struct {
		t            crank.LeakTester
		supply, held units.Pressure
	}{
		{crank.LeakTester{}, 6 * units.Bar, 0}, {crank.LeakTester{}, 6 * units.Bar, 7 * units.Bar}, {crank.LeakTester{}, 0, 0}, {crank.LeakTester{}, nan, units.Bar},
		{crank.LeakTester{}, 6 * units.Bar, nan}, {crank.LeakTester{Orifice: -units.Millimetre}, 6 * units.Bar, units.Bar}, {crank.LeakTester{Ambient: nan}, 6 * units.Bar, units.Bar},
	} {
		if a, err := c.t.Hole(c.supply, c.held); err == nil {
			t.Errorf("%+v passes with %v", c, a)
		}
	}
	for _, a := range []float64{-1, math.NaN(), math.Inf(1)} {
		if p, err := (crank.LeakTester{}).Held(6*units.Bar, units.SquareMillimetres(a)); err == nil {
			t.Errorf("hole of %v: %v", a, p)
		}
	}
	if p, err := (crank.LeakTester{}).Held(6*units.Bar, 0); err != nil || p != 6*units.Bar {
		t.Errorf("no hole: %v, %v", p, err)
	}
	if p, err := (crank.LeakTester{}).Held(6*units.Bar, units.SquareMetres(1)); err != nil || !(p >= 0 && p < units.Bars(0.001)) {
		t.Errorf("a hole of a square metre: %v, %v", p, err)
	}
}
