package spring_test

import (
	"math"
	"testing"

	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

func length(x, u float64) measure.Reading[units.Length] {
	if u == 0 {
		return measure.Exact(units.Millimetres(x))
	}
	return measure.Of(units.Millimetres(x), units.Millimetres(u))
}

func count(x, u float64) measure.Reading[units.Ratio] {
	return measure.Of(units.Value(x), units.Value(u))
}

func springOf(wire, outside, inside measure.Reading[units.Length], total measure.Reading[units.Ratio], ends spring.Ends) spring.Readings {
	return spring.Readings{Wire: wire, Outside: outside, Inside: inside, Total: total, Ends: ends, Loads: invented().Loads}
}

// The reckoned rate and its uncertainty by the derivatives of ln k = ln G + 4 ln d
// - 3 ln D - ln n, the coil being read over or inside, so that the wire comes in
// twice; then the modulus that would make both rates agree, without its own part.
func TestIdentifyByDerivatives(t *testing.T) {
	none := measure.Reading[units.Length]{}
	g := measure.Of(80000*mpa, 1500*mpa)
	for _, c := range []struct {
		in      spring.Readings
		mean    float64
		sign    float64 // of the wire in the mean diameter
		solid   float64 // coils that touch, in wires
		ucoil   float64
		settled bool
	}{
		{springOf(length(2.64, 0.02), length(17.8, 0.05), none, count(9.5, 0.1), spring.SquaredGround), 15.16, -1, 9.5, 0.05, false},
		{springOf(length(2.64, 0.02), none, length(12.52, 0.06), count(9.5, 0.1), spring.Squared), 15.16, 1, 10.5, 0.06, true},
	} {
		if c.settled {
			c.in.Free = length(46.5, 0.1)
		}
		id := ok(spring.Identify(c.in, spring.IdentifyOptions{Shear: g}))(t)
		const d, n = 2.64, 7.5
		k := 80000 * math.Pow(d, 4) / (8 * math.Pow(c.mean, 3) * n)
		wire, coil, coils, shear := (4/d-3*c.sign/c.mean)*0.02, 3/c.mean*c.ucoil, 0.1/n, 1500.0/80000
		u := math.Sqrt(wire*wire + coil*coil + coils*coils + shear*shear)
		near(t, "rate", id.ByDimensions.Value().NewtonsPerMillimetre(), k, 1e-12)
		// by numerical derivatives there, with what they leave of second order
		near(t, "its uncertainty", id.ByDimensions.U().Ratio(id.ByDimensions.Value()), u, 1e-3)
		near(t, "mean", id.Mean.Value().Millimetres(), c.mean, 1e-12)
		near(t, "its uncertainty", id.Mean.U().Millimetres(), math.Hypot(0.02, c.ucoil), 1e-6)
		near(t, "index", id.Index, c.mean/d, 1e-12)
		near(t, "active", id.Active.Value().SI(), n, 1e-12)
		near(t, "solid", id.SolidReckoned.Value().Millimetres(), c.solid*d, 1e-12)

		q := id.ByLoad.Value().NewtonsPerMillimetre() / k
		load := id.ByLoad.U().Ratio(id.ByLoad.Value())
		near(t, "difference", 1+id.Difference, q, 1e-12)
		near(t, "sigmas", id.Sigmas, math.Log(q)/math.Hypot(u, load), 2e-3)
		near(t, "modulus", id.Shear.Value().Megapascals(), 80000*q, 1e-12)
		near(t, "its uncertainty", id.Shear.U().Ratio(id.Shear.Value()), math.Sqrt(wire*wire+coil*coil+coils*coils+load*load), 2e-3)
		if c.settled {
			near(t, "settling", id.Settling.Value().Millimetres(), 46.5-id.Line.Free.Value().Millimetres(), 1e-9)
			near(t, "its uncertainty", id.Settling.U().Millimetres(), math.Hypot(0.1, id.Line.Free.U().Millimetres()), 1e-12)
		}
	}
}

// Coils that touch count themselves: ground ends are so many wires, others one
// wire more.
func TestIdentifyCountsBySolid(t *testing.T) {
	for ends, want := range map[spring.Ends]float64{spring.SquaredGround: 10 - 2, spring.Squared: 9 - 2, spring.Plain: 9} {
		in := springOf(length(2.5, 0.02), length(17.5, 0.05), measure.Reading[units.Length]{}, measure.Reading[units.Ratio]{}, ends)
		in.Solid = length(25, 0.1)
		id := ok(spring.Identify(in, spring.IdentifyOptions{}))(t)
		near(t, ends.String(), id.Active.Value().SI(), want, 1e-12)
	}
}

// Readings that cannot be true together are refused, each at its own place, and
// just before that taken.
func TestLimitsOfReadings(t *testing.T) {
	none := measure.Reading[units.Length]{}
	identify := func(in spring.Readings) error { return only(spring.Identify(in, spring.IdentifyOptions{})) }
	coils := func(x float64) error {
		return identify(springOf(length(2.5, 0.02), length(17.5, 0.05), none, count(x, 0.1), spring.SquaredGround))
	}
	solid := func(x float64) error {
		in := springOf(length(2.5, 0.02), length(17.5, 0.05), none, measure.Reading[units.Ratio]{}, spring.SquaredGround)
		in.Solid = length(x, 0.1)
		return identify(in)
	}
	// outside less inside less two wires of 2 mm
	gap := func(uwire float64) func(float64) error {
		return func(x float64) error {
			return identify(springOf(length(2, uwire), length(20, 0.03), length(16-x, 0.04), count(9, 0.1), spring.SquaredGround))
		}
	}
	checkLimits(t, []limit{
		{"more coils than dead ones", coils, 2.5, 2, "total", fault.OutOfRange},
		{"a solid length of more than the dead coils", solid, 7, 5, "solid", fault.Conflict},
		{"ends", func(x float64) error {
			return identify(spring.Readings{Ends: spring.Ends(x)})
		}, float64(spring.PlainGround), 5, "ends", fault.UnknownName},
		{"free above solid", func(x float64) error {
			return identify(spring.Readings{Free: length(x, 0.1), Solid: length(25, 0.1)})
		}, 25.1, 25, "free", fault.Conflict},
		{"index", func(x float64) error {
			return identify(springOf(length(1, 0.01), length(x, 0.1), none, count(9, 0.1), spring.SquaredGround))
		}, 101, 101.1, "outside", fault.OutOfRange},
		{"index of thick wire", func(x float64) error {
			return identify(springOf(length(12, 0.01), length(x, 0.1), none, count(9, 0.1), spring.SquaredGround))
		}, 100, 26.3, "outside", fault.OutOfRange},
		// 0.3 mm and six of their uncertainties, √(0.03² + 0.04²) = 0.05 mm of the
		// coil and, with the wire's 0.06 mm twice, 0.13 mm
		{"two diameters, wire exact", gap(0), 0.599, 0.601, "inside", fault.Conflict},
		{"two diameters, too near", gap(0), -0.599, -0.601, "inside", fault.Conflict},
		{"two diameters, wire uncertain", gap(0.06), 1.079, 1.081, "inside", fault.Conflict},
		{"two diameters, all exact", func(x float64) error { // figures of which the differences are exact
			return identify(springOf(length(0.15, 0), length(1.2, 0), length(x, 0), count(9, 0.1), spring.SquaredGround))
		}, 0.6, 0.599, "inside", fault.Conflict},
		{"priors", func(x float64) error {
			return only(spring.Identify(invented(), spring.IdentifyOptions{Priors: map[string]float64{"bronze": x}}))
		}, 1e-9, 0, "priors.bronze", fault.OutOfRange},
	})
}
