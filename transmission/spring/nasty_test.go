package spring_test

import (
	"encoding/json"
	"math"
	"testing"

	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
	"pgregory.net/rapid"
)

// Figures follow the definitions they are made of, by another road: the surge is
// half the root of rate over the mass of the working wire, the wire's strength
// that of its law, and a wire beyond 0.56 of it takes a set.
func TestFiguresByAnotherRoad(t *testing.T) {
	law := spring.Law{Name: "hard", Form: spring.Logarithmic, A: 1980 * mpa, B: 740 * mpa}
	h := ok(spring.NewHelical(spring.HelicalSpec{Wire: 3 * mm, Mean: 18 * mm, Active: 8, Free: 75 * mm, Ends: spring.Squared, Wires: law}))(t)
	f := h.Figures()
	mass := 7850 * math.Pi / 4 * 0.003 * 0.003 * math.Pi * 0.018 * 8
	near(t, "surge", f.Surge.RevolutionsPerSecond(), math.Sqrt(f.Rate.NewtonsPerMetre()/mass)/2, 1e-12)
	near(t, "strength", f.Strength.Tensile.Megapascals(), 1980-740*math.Log10(3), 1e-12)
	if want := f.SolidStress.Ratio(f.Strength.Tensile) > 0.56; f.Strength.TakesSet != want || !want {
		t.Errorf("solid stress %v of %v: takes set %v", f.SolidStress, f.Strength.Tensile, f.Strength.TakesSet)
	}
	near(t, "solid", f.Solid.Millimetres(), 33, 1e-12)
	near(t, "solid, EN", f.SolidEN.Millimetres(), 34.5, 1e-12)
	near(t, "clearance", f.Clearance.Millimetres(), 8*(0.0015*18*18/3+0.3), 1e-12)
	near(t, "pitch", f.Pitch.Millimetres(), (75-9)/8.0, 1e-12)
	s := h.At(40 * mm)
	near(t, "Wahl over torsion", s.Wahl.Ratio(s.Torsion), 23.0/20+0.615/6, 1e-12)
	if s.OfStrength != s.Torsion.Ratio(f.Strength.Tensile) {
		t.Errorf("share of strength %g", s.OfStrength)
	}
	at := h.AtLoad(s.Load)
	near(t, "length back", at.Length.Millimetres(), 40, 1e-12)
	if r := h.AtLoad(f.SolidLoad.Times(1.01)).Reason; r.Code != "past-solid" {
		t.Errorf("%+v", r)
	}
	if r := h.AtLoad(-1 * newton).Reason; r.Code != "pulled" {
		t.Errorf("%+v", r)
	}
	if r := h.At(76 * mm).Reason; r.Code != "beyond-free" {
		t.Errorf("%+v", r)
	}
}

// anyFigure is what a front end may pass by mistake.
var anyFigure = rapid.OneOf(rapid.Float64Range(-5, 100), rapid.Float64(), rapid.SampledFrom([]float64{0, math.NaN(), math.Inf(1), math.Inf(-1), 5e-324, 1e308}))

// No specification makes a panic or an answer that is not a number.
func TestNothingBreaks(t *testing.T) {
	figure := func(t *rapid.T, name string) float64 { return anyFigure.Draw(t, name) }
	length := func(t *rapid.T, name string) units.Length { return units.Millimetres(figure(t, name)) }
	sane := func(t *rapid.T, v any) {
		if _, err := json.Marshal(v); err != nil {
			t.Fatalf("%v: %+v", err, v)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		if h, err := spring.NewHelical(spring.HelicalSpec{
			Wire: length(t, "wire"), Mean: length(t, "mean"), Total: figure(t, "total"), Free: length(t, "free"), Solid: length(t, "solid"),
			Ends: spring.Ends(rapid.IntRange(0, 6).Draw(t, "ends")), Seating: spring.Seating(rapid.IntRange(0, 5).Draw(t, "seating")),
		}); err == nil {
			sane(t, h.Figures())
			sane(t, h.At(length(t, "at")))
		}
		if d, err := spring.NewDisc(spring.DiscSpec{
			Outside: length(t, "De"), Inside: length(t, "Di"), Thickness: length(t, "t"), ConeHeight: length(t, "h0"), Poisson: figure(t, "nu"), Young: units.Gigapascals(figure(t, "E")),
		}); err == nil {
			sane(t, d.Figures())
			sane(t, d.At(length(t, "s")))
			if s, in := d.Deflection(units.Newtons(figure(t, "F"))); in && !units.Finite(s) {
				t.Fatal(s)
			}
		}
		if k, err := spring.Rate(length(t, "d"), length(t, "D"), figure(t, "n"), units.Gigapascals(figure(t, "G"))); err == nil && !units.Finite(k) {
			t.Fatal(k)
		}
		if w, err := spring.WireForLaw(units.Newtons(figure(t, "F")), length(t, "D"), figure(t, "k"), figure(t, "share"), spring.Law{Form: spring.Form(rapid.IntRange(0, 3).Draw(t, "form")), A: units.Megapascals(figure(t, "A")), Exponent: figure(t, "m"), B: units.Megapascals(figure(t, "B"))}); err == nil && !units.Finite(w) {
			t.Fatal(w)
		}
		if m, err := spring.Match(spring.Readings{Wire: measure.Of(length(t, "wire"), length(t, "u")), Free: measure.Of(length(t, "free"), length(t, "u free"))}, list(), spring.MatchOptions{}); err == nil {
			sane(t, m)
		}
	})
}

// Figures that would pass beside a good one, or only just, are refused.
func TestBesideGoodFigures(t *testing.T) {
	good := spring.DiscSpec{Outside: 80 * units.Millimetre, Inside: 41 * units.Millimetre, Thickness: 3 * units.Millimetre, ConeHeight: 2 * units.Millimetre}
	nan := good
	nan.Overall = units.Millimetres(math.NaN())
	flat := good
	flat.ConeHeight, flat.Overall = 0, flat.Thickness
	for _, in := range []spring.DiscSpec{nan, flat} {
		if d, err := spring.NewDisc(in); err == nil {
			t.Errorf("%+v passed, %+v", in, d.Spec())
		}
	}
	coil := spring.HelicalSpec{Wire: 3 * units.Millimetre, Mean: 17 * units.Millimetre, Active: 7, Free: 46 * units.Millimetre, Ends: spring.Squared}
	if _, err := spring.NewHelical(coil); err != nil {
		t.Fatal(err)
	}
	for _, rho := range []float64{5e-324, -1, math.NaN(), math.Inf(1)} {
		coil.Density = units.KilogramsPerCubicMetre(rho)
		if h, err := spring.NewHelical(coil); err == nil {
			t.Errorf("a density of %v passed: %v", rho, h.Figures().Surge)
		}
	}
}
