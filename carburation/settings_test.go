package carburation_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.com/benchbook/carburation"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// What the inverse asks for, put into a new model by its parts, gives the
// mixtures wanted, or as near as grooves and half numbers come, or says why not.
func TestSettingsComeBack(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 8))
	reached, not := 0, map[string]int{}
	for i := range count(600, 30) {
		s := random(r)
		m := must(carburation.NewModel(s, carburation.Options{}))
		set := must(m.Settings(carburation.Targets{}))
		w := set.Model()
		again := must(carburation.NewModel(w.Setup(), carburation.Options{}))
		for _, c := range []struct {
			name   string
			at     carburation.Target
			after  units.Ratio
			reason string
			within float64
		}{
			// jets come as fine as wanted
			{"main jet", set.MainJet.At, set.MainJet.After, set.MainJet.NotReached.Code, 1e-6},
			{"pilot jet", set.PilotJet.At, set.PilotJet.After, set.PilotJet.NotReached.Code, 1e-6},
			// a half number is up to 1.5 in AFR, half of it either way, and the pilot
			// moves after; a groove is coarser on a steep needle
			{"cutaway", set.Cutaway.At, set.Cutaway.After, set.Cutaway.NotReached.Code, 0.15},
			{"needle", set.Needle.At, set.Needle.After, set.Needle.NotReached.Code, 0.25},
		} {
			if c.reason != "" {
				not[c.reason]++
				continue
			}
			reached++
			if math.Abs(c.after.Ratio(c.at.Lambda)-1) > c.within {
				t.Errorf("%d %s: lambda %v, wanted %v: %+v", i, c.name, c.after, c.at.Lambda, set)
			}
			o := must(again.At(c.at.Lift, c.at.Speed))
			if math.Abs(o.Lambda.Ratio(c.after)-1) > 0.005 { // coefficients are worked out again for the new jets
				t.Errorf("%d %s: the parts give %v, the settings said %v", i, c.name, o.Lambda, c.after)
			}
		}
		if set.Rounds > 8 && set.Cutaway.NotReached.Code == "" && set.Needle.NotReached.Code == "" {
			not["unsettled"]++
		}
	}
	t.Logf("%d reached, not: %v", reached, not)
}

func TestCannotBeReachedBecause(t *testing.T) {
	s := demo()
	s.Carburettor.NeedleJet, s.Carburettor.Needle.Taper = mm(2.60, 0.005), angle(0.5)
	set := must(must2(carburation.NewModel(s, carburation.Options{})).Settings(carburation.Targets{Full: carburation.Target{Lambda: 0.7}}))
	if set.MainJet.NotReached.Code != "annulus-too-small" || set.Needle.NotReached.Code != "needle-cannot-reach" || set.MainJet.NotReached.Text == "" {
		t.Errorf("%+v", set)
	}
	if !(set.Needle.NeedleJet.Millimetres() > 2.6) {
		t.Errorf("needle jet %v", set.Needle.NeedleJet)
	}
	s = demo()
	s.Carburettor.NeedleJet = mm(2.9, 0.005) // far too large or worn
	set = must(must2(carburation.NewModel(s, carburation.Options{})).Settings(carburation.Targets{}))
	if set.Cutaway.NotReached.Code != "cutaway-cannot-reach" {
		t.Errorf("%+v", set.Cutaway)
	}
	var zero carburation.Model
	if _, err := zero.Settings(carburation.Targets{}); err == nil {
		t.Error("the zero Model has settings")
	}
	if _, err := must2(carburation.NewModel(demo(), carburation.Options{})).Settings(carburation.Targets{Full: carburation.Target{Lambda: 3}, Middle: carburation.Target{Lift: 2}}); err == nil {
		t.Error("lambda 3 at full throttle accepted")
	}
}

func angle(d float64) measure.Reading[units.Angle] {
	return measure.Of(units.Degrees(d), units.Degrees(0.05))
}
