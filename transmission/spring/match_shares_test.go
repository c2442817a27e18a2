package spring_test

import (
	"math"
	"testing"

	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

func bell(x, mean, sd float64) float64 {
	return math.Exp(-(x-mean)*(x-mean)/(2*sd*sd)) / (sd * math.Sqrt(2*math.Pi))
}

// One reading at a time: the shares are those of Bayes' rule with the spreads the
// options name, worked here for each reading by its own bell. "None of these" is
// any of them, eight times as wide, at a twentieth of all weight.
func TestMatchSharesByBayes(t *testing.T) {
	known := list()
	made := make([]spring.Helical, len(known))
	for i := range known {
		known[i].Prior = float64(i + 1)
		made[i] = ok(spring.NewHelical(known[i].Spec))(t)
	}
	opt := spring.MatchOptions{Wire: 0.012, Coil: 0.015, Rate: 0.06, Free: 0.011, Set: 0.03}
	mmr := func(x, u float64) measure.Reading[units.Length] {
		return measure.Of(units.Millimetres(x), units.Millimetres(u))
	}
	loads := invented().Loads
	line := ok(spring.FitLine(loads, spring.FitOptions{}))(t).Rate
	for _, c := range []struct {
		what  string
		in    spring.Readings
		x, u  float64
		means func(f spring.HelicalFigures) (mean, own float64)
	}{
		{"wire", spring.Readings{Wire: mmr(2.75, 0.02)}, 2.75, 0.02, func(f spring.HelicalFigures) (float64, float64) {
			d := f.Mean.Millimetres() / f.Index
			return d, 0.012 * d
		}},
		{"outside", spring.Readings{Outside: mmr(18.1, 0.1)}, 18.1, 0.1, func(f spring.HelicalFigures) (float64, float64) {
			return f.Outside.Millimetres(), 0.015 * f.Mean.Millimetres()
		}},
		{"inside", spring.Readings{Inside: mmr(12.3, 0.1)}, 12.3, 0.1, func(f spring.HelicalFigures) (float64, float64) {
			return f.Inside.Millimetres(), 0.015 * f.Mean.Millimetres()
		}},
		{"solid", spring.Readings{Solid: mmr(25.6, 0.2)}, 25.6, 0.2, func(f spring.HelicalFigures) (float64, float64) {
			return f.Solid.Millimetres(), math.Hypot(0.012*f.Solid.Millimetres(), f.Mean.Millimetres()/f.Index/4)
		}},
		{"total", spring.Readings{Total: measure.Of(units.Value(9.2), units.Value(0.2))}, 9.2, 0.2, func(f spring.HelicalFigures) (float64, float64) {
			return f.Total, 0.1
		}},
		{"rate", spring.Readings{Loads: loads}, line.Value().NewtonsPerMillimetre(), line.U().NewtonsPerMillimetre(), func(f spring.HelicalFigures) (float64, float64) {
			return f.Rate.NewtonsPerMillimetre(), 0.06 * f.Rate.NewtonsPerMillimetre()
		}},
	} {
		m := ok(spring.Match(c.in, known, opt))(t)
		weight := map[string]float64{}
		var all, priors, wide float64
		for i := range known {
			mean, own := c.means(made[i].Figures())
			p := known[i].Prior
			weight[known[i].Key] = p * bell(c.x, mean, math.Hypot(c.u, own))
			all += weight[known[i].Key]
			priors += p
			wide += bell(c.x, mean, 8*math.Hypot(c.u, own)) / float64(len(known))
		}
		weight[measure.SomethingElse] = 0.05 * priors * wide
		all += weight[measure.SomethingElse]
		for _, o := range m.Causes.Odds {
			if want := weight[o.Key] / all; math.Abs(o.Share-want) > 1e-9 {
				t.Errorf("%s: %s has %.6f, by Bayes' rule %.6f", c.what, o.Key, o.Share, want)
			}
		}
	}
}

// The free length by brute force: as made, less a sinking of half a bell.
func TestMatchSharesOfFreeLength(t *testing.T) {
	known := list()
	opt := spring.MatchOptions{Free: 0.015, Set: 0.025}
	m := ok(spring.Match(spring.Readings{Free: measure.Of(44.2*units.Millimetre, 0.1*units.Millimetre)}, known, opt))(t)
	sunk := func(free, wider float64) float64 {
		u := wider * math.Hypot(0.1, 0.015*free)
		sum := 0.0
		for i := range 4000 {
			z := (float64(i) + 0.5) / 4000 * 9
			sum += 2 * bell(z, 0, 1) * bell(44.2, free-0.025*free*z, u) * 9 / 4000
		}
		return sum
	}
	weight, all, wide := map[string]float64{}, 0.0, 0.0
	for _, k := range known {
		free := k.Spec.Free.Millimetres()
		weight[k.Key] = sunk(free, 1)
		all += weight[k.Key]
		wide += sunk(free, 8) / 5
	}
	weight[measure.SomethingElse] = 0.05 * 5 * wide
	all += weight[measure.SomethingElse]
	for _, o := range m.Causes.Odds {
		if want := weight[o.Key] / all; math.Abs(o.Share-want) > 1e-5 { // midpoint rule, 4000 steps
			t.Errorf("%s has %.6f, by brute force %.6f", o.Key, o.Share, want)
		}
	}
}

// Two in forty lost is tired beyond the option, not at it; an exact length makes
// an exact loss; and the result says how near springs were taken to be to their
// list.
func TestMatchSunk(t *testing.T) {
	forty := []spring.Known{{Key: "forty", Spec: spring.HelicalSpec{Wire: 2 * mm, Mean: 16 * mm, Active: 8, Free: 40 * mm, Ends: spring.SquaredGround}}}
	for _, c := range []struct {
		read  measure.Reading[units.Length]
		tired bool
		u     float64
	}{{measure.Exact(38 * mm), false, 0}, {measure.Exact(37.9 * units.Millimetre), true, 0}, {measure.Of(38*mm, 0.3*units.Millimetre), false, 0.3}} {
		m := ok(spring.Match(spring.Readings{Free: c.read}, forty, spring.MatchOptions{}))(t)
		near(t, "sunk", m.Sunk.Value().Millimetres(), 40-c.read.Value().Millimetres(), 1e-12)
		if m.Tired != c.tired || m.Sunk.U().Millimetres() != c.u {
			t.Errorf("free %v: sunk %v, tired %v", c.read, m.Sunk, m.Tired)
		}
		if near := m.Basis.Assumed[0].Value; near != "1 % of wire, 1 % of coil, 5 % of rate" {
			t.Errorf("assumed %q", near)
		}
	}
}
