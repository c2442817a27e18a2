package crank_test

import (
	"fmt"
	"math"
	"testing"

	"example.com/benchbook/timing/crank"
	"example.com/benchbook/units"
	"pgregory.net/rapid"
)

// Gupta, Fundamentals of Internal Combustion Engines, 1st ed., example 16.1,
// p. 519 (read in a textbook companion): square bore and stroke 8.6 cm, rod
// 17.2 cm, 0.32 cm down at 20° after TDC.
func ExampleSlider_Travel() {
	s := crank.Slider{Stroke: units.Centimetres(8.6), Rod: units.Centimetres(17.2)}
	x, err := s.Travel(units.After(units.TDC, 20*units.CrankDegree))
	fmt.Println(x.In(units.Centimetre, 2), err)
	// Output: 0.32 cm <nil>
}

// The invented 397 cc single: 83 mm stroke, 165 mm rod.
func ExampleSlider_Positions() {
	s := crank.Slider{Stroke: 83 * units.Millimetre, Rod: 165 * units.Millimetre}
	at, err := s.Positions(10 * units.Millimetre)
	fmt.Printf("%.2f and %.2f degrees, %v\n", at.Before.Before().Degrees(), at.After.After().Degrees(), err)
	// Output: 36.51 and 36.51 degrees, <nil>
}

func slider(t *rapid.T) crank.Slider {
	r := rapid.Float64Range(20, 60).Draw(t, "throw")
	return crank.Slider{
		Throw:  units.Millimetres(r),
		Rod:    units.Millimetres(r * rapid.Float64Range(2.5, 6).Draw(t, "rod ratio")),
		Offset: units.Millimetres(rapid.SampledFrom([]float64{0, 1}).Draw(t, "has offset") * rapid.Float64Range(-10, 10).Draw(t, "offset")),
	}
}

// Travel and Positions undo each other, on both sides of TDC. 1e-6 mm is far
// below any gauge; near the dead centres the square root loses half the digits.
func TestTravelAndBack(t *testing.T) { rapid.Check(t, checkTravel) }

func FuzzTravel(f *testing.F) {
	fuzzBytes(f)
	f.Fuzz(rapid.MakeFuzz(checkTravel))
}

func checkTravel(t *rapid.T) {
	s := slider(t)
	bottom, err := s.Travel(units.After(units.BDC, 0))
	if err != nil {
		t.Fatal(err)
	}
	x := bottom.Times(rapid.Float64Range(0, 1).Draw(t, "part of the stroke"))
	at, err := s.Positions(x)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range []units.CrankPosition{at.Before, at.After} {
		if y, _ := s.Travel(p); math.Abs((y - x).Millimetres()) > 1e-6 {
			t.Fatalf("%v at %v gives %v", x, p, y)
		}
	}
	if at.Before.Before() < 0 || at.After.After() < 0 {
		t.Fatalf("wrong sides: %v", at)
	}
}

// The throw solved from the stroke gives the stroke back.
func TestStrokeWithOffset(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := slider(t)
		stroke, _ := s.Travel(units.After(units.BDC, 0))
		again := crank.Slider{Stroke: stroke, Rod: s.Rod, Offset: s.Offset}
		back, err := again.Travel(units.After(units.BDC, 0))
		if err != nil || math.Abs((back-stroke).Millimetres()) > 1e-9 {
			t.Fatalf("%v, want %v: %v", back, stroke, err)
		}
		both := again
		both.Throw = s.Throw
		if err := both.Err(); err != nil {
			t.Fatal(err)
		}
	})
}

func TestSliderFaults(t *testing.T) {
	for _, s := range []crank.Slider{
		{},
		{Stroke: 83, Rod: -1},
		{Stroke: 83, Rod: 40},
		{Stroke: 83, Throw: 60, Rod: 165},
		{Stroke: units.Millimetres(math.NaN()), Rod: 165},
		{Stroke: units.Millimetres(math.Inf(1)), Rod: 165},
		{Stroke: 83, Rod: 165, Offset: 160},
	} {
		if s.Err() == nil {
			t.Errorf("%+v was taken", s)
		}
	}
}
