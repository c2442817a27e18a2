package spring_test

import (
	"testing"

	"example.com/benchbook/refdata"
	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// said is what a basis assumes and leaves unchecked.
func said(b refdata.Basis) map[string]bool {
	out := map[string]bool{}
	for _, a := range b.Assumed {
		out[a.What] = true
	}
	for _, u := range b.NotChecked {
		out[u.What] = true
	}
	return out
}

// A result says what it took for granted, and does not say it where the user gave
// it.
func TestWhatResultsTakeForGranted(t *testing.T) {
	coil := func(change func(*spring.HelicalSpec)) refdata.Basis {
		in := spring.HelicalSpec{Wire: 3 * mm, Mean: 18 * mm, Active: 8, Free: 60 * mm}
		change(&in)
		return ok(spring.NewHelical(in))(t).Figures().Basis
	}
	disc := func(change func(*spring.DiscSpec)) refdata.Basis {
		in := spring.DiscSpec{Outside: 80 * mm, Inside: 40 * mm, Thickness: 6 * mm, ConeHeight: 2 * mm}
		change(&in)
		return ok(spring.NewDisc(in))(t).Figures().Basis
	}
	identity := func(change func(*spring.Readings, *spring.IdentifyOptions)) refdata.Basis {
		in, opt := invented(), spring.IdentifyOptions{}
		change(&in, &opt)
		return ok(spring.Identify(in, opt))(t).Basis
	}
	hard := spring.Law{Form: spring.Power, A: 1700 * mpa, Exponent: 0.2}
	const outside = "rate from dimensions"
	for _, c := range []struct {
		what        string
		given, left refdata.Basis
	}{
		{"spring ends", coil(func(s *spring.HelicalSpec) { s.Ends = spring.SquaredGround }), coil(func(*spring.HelicalSpec) {})},
		{"shear modulus", coil(func(s *spring.HelicalSpec) { s.Modulus = spring.Steel() }), coil(func(*spring.HelicalSpec) {})},
		{"density of the wire", coil(func(s *spring.HelicalSpec) { s.Density = units.KilogramsPerCubicMetre(7800) }), coil(func(*spring.HelicalSpec) {})},
		{"seating", coil(func(s *spring.HelicalSpec) { s.Seating = spring.BothPivot }), coil(func(*spring.HelicalSpec) {})},
		{"whether pressing it solid makes it take a set", coil(func(s *spring.HelicalSpec) { s.Wires = hard }), coil(func(*spring.HelicalSpec) {})},
		{"the true solid length", coil(func(s *spring.HelicalSpec) { s.Solid = 30 * mm }), coil(func(*spring.HelicalSpec) {})},
		// the formula is sure from an index of 4 to 20, both among it
		{outside, coil(func(s *spring.HelicalSpec) { s.Mean = 12 * mm }), coil(func(s *spring.HelicalSpec) { s.Mean = 11.9 * units.Millimetre })},
		{outside, coil(func(s *spring.HelicalSpec) { s.Mean = 60 * mm }), coil(func(s *spring.HelicalSpec) { s.Mean = 60.1 * units.Millimetre })},
		{"Young's modulus", disc(func(s *spring.DiscSpec) { s.Young = 206 * units.Gigapascal }), disc(func(*spring.DiscSpec) {})},
		{"Poisson's ratio", disc(func(s *spring.DiscSpec) { s.Poisson = 0.3 }), disc(func(*spring.DiscSpec) {})},
		{"contact flats", disc(func(*spring.DiscSpec) {}), disc(func(s *spring.DiscSpec) { s.Thickness = 6.1 * units.Millimetre })},
		{"spring ends", identity(func(*spring.Readings, *spring.IdentifyOptions) {}), identity(func(in *spring.Readings, _ *spring.IdentifyOptions) { in.Ends = spring.EndsNotSaid })},
		{"scale error of the balance, common to all loads", identity(func(_ *spring.Readings, o *spring.IdentifyOptions) { o.Fit.Scale = 0.01 }), identity(func(*spring.Readings, *spring.IdentifyOptions) {})},
		{"shear modulus", identity(func(_ *spring.Readings, o *spring.IdentifyOptions) {
			o.Shear = measure.Of(80000*mpa, 500*mpa)
		}), identity(func(*spring.Readings, *spring.IdentifyOptions) {})},
		{"whether the spring is straight", identity(func(*spring.Readings, *spring.IdentifyOptions) {}), identity(func(in *spring.Readings, _ *spring.IdentifyOptions) { in.Loads = in.Loads[:2] })},
		{"its true solid length", identity(func(in *spring.Readings, _ *spring.IdentifyOptions) {
			in.Solid = measure.MustRead("25.1 mm", measure.Caliper())
		}), identity(func(*spring.Readings, *spring.IdentifyOptions) {})},
	} {
		if said(c.given)[c.what] {
			t.Errorf("%q is said though it was given or is sure", c.what)
		}
		if !said(c.left)[c.what] {
			t.Errorf("%q is not said: %v", c.what, said(c.left))
		}
	}
}
