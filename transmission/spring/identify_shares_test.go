package spring_test

import (
	"math"
	"testing"

	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// The shares of every cause by brute force: for each misreading of the wire in
// turn, so many times likely, the chance of the rate read and of the solid length
// read with that wire. What a cause does to the spring stands here in words of its
// own: rates go as G over the working coils, and a wire read w too thick makes the
// reckoned rate too high by its fourth power and, read over the coils, the coil
// too narrow.
func TestIdentifySharesByBruteForce(t *testing.T) {
	type cause struct {
		prior, coils, dead, shear, ushear, wire, balance float64
	}
	const g, ug = 80.5, 1.0
	causes := map[string]cause{
		"as-read": {0.70, 0, 0, g, ug / g, 0, 0}, "coils:+1": {0.05, 1, 0, g, ug / g, 0, 0}, "coils:-1": {0.05, -1, 0, g, ug / g, 0, 0},
		"dead:+1": {0.04, 0, 1, g, ug / g, 0, 0}, "dead:-1": {0.04, 0, -1, g, ug / g, 0, 0}, "wire-misread": {0.04, 0, 0, g, ug / g, 0.04, 0},
		"balance-wrong": {0.04, 0, 0, g, ug / g, 0, 0.15}, "stainless": {0.02, 0, 0, 69, 0.03, 0, 0}, "bronze": {0.01, 0, 0, 41.4, 0.036, 0, 0},
	}
	const d, outside, total = 2.64, 17.8, 9.5
	for _, c := range []struct {
		ends              spring.Ends
		soft              float64 // of the loads
		solid, ud, uo, ut float64
	}{
		{spring.SquaredGround, 1, 0, 0.01, 0.05, 0.1}, {spring.SquaredGround, 0.9, 25.1, 0.02, 0.02, 0.1}, {spring.Squared, 1.13, 27.2, 0.03, 0.1, 0.2}, {spring.Squared, 0.52, 28, 0.005, 0.3, 0.05},
	} {
		in := springOf(length(d, c.ud), length(outside, c.uo), measure.Reading[units.Length]{}, count(total, c.ut), c.ends)
		for i := range in.Loads {
			in.Loads[i].Load = measure.Of(in.Loads[i].Load.Value().Times(c.soft), 2*newton)
		}
		extra := 0.0
		if !c.ends.Ground() {
			extra = 1
		}
		const usolid = 0.4
		if c.solid > 0 {
			in.Solid = length(c.solid, usolid)
		}
		id := ok(spring.Identify(in, spring.IdentifyOptions{}))(t)
		mean, active := outside-d, total-2
		k := g * 1000 * math.Pow(d, 4) / (8 * math.Pow(mean, 3) * active)
		read := math.Log(id.ByLoad.Value().NewtonsPerMillimetre() / k)
		ul := id.ByLoad.U().Ratio(id.ByLoad.Value())
		weight, all := map[string]float64{}, 0.0
		for key, e := range causes {
			n := active + e.coils - e.dead
			shift := math.Log(active/n) + math.Log(e.shear/g)
			own := math.Sqrt(ul*ul + e.ushear*e.ushear + math.Pow(3/mean*c.uo, 2) + math.Pow(c.ut/n, 2) + e.balance*e.balance)
			wires := total + e.coils + extra
			// a quarter of a wire for how the ends are ground
			ownSolid := math.Sqrt(math.Pow(usolid/d, 2) + c.ut*c.ut + 0.25*0.25)
			sum, sd := 0.0, math.Hypot(c.ud/d, e.wire)
			for i := range 2001 {
				z := float64(i-1000) / 125 // ± 8 standard deviations
				w := z * sd
				p := bell(z, 0, 1) / 125 * bell(read, shift+w*d*(4/d+3/mean), own)
				if c.solid > 0 {
					p *= bell(c.solid/d, wires*(1+w), ownSolid)
				}
				sum += p
			}
			weight[key] = e.prior * sum
			all += weight[key]
		}
		other := 0.01 * bell(read, 0, math.Hypot(0.7, ul))
		if c.solid > 0 {
			other *= bell(c.solid/d, total+extra, 1)
		}
		weight[measure.SomethingElse] = other
		all += other
		for _, o := range id.Causes.Odds {
			if want := weight[o.Key] / all; math.Abs(o.Share-want) > 1e-6 { // a sum over ± 8 sigmas, by steps of 1/125
				t.Errorf("%v, solid %g: %s has %.7f, by brute force %.7f", c.ends, c.solid, o.Key, o.Share, want)
			}
		}
	}
}
