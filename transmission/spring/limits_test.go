package spring_test

import (
	"testing"

	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// only keeps the error of a call.
func only[T any](_ T, err error) error { return err }

// limit is a call that is taken at one figure and refused, with one fault at the
// path, just past it.
type limit struct {
	name        string
	call        func(x float64) error
	taken, past float64
	path        string
	code        fault.Code
}

func checkLimits(t *testing.T, all []limit) {
	t.Helper()
	for _, c := range all {
		if err := c.call(c.taken); err != nil {
			t.Errorf("%s: %v is refused: %v", c.name, c.taken, err)
		}
		faults := fault.Faults(c.call(c.past))
		if len(faults) != 1 || faults[0].Path != c.path || faults[0].Code != c.code {
			t.Errorf("%s: %v, want one fault %s at %s: %v", c.name, c.past, c.code, c.path, faults)
		}
	}
}

// What the doc comments allow is taken at the very limit.
func TestLimitsOfFormulas(t *testing.T) {
	rate := func(active float64, g units.Pressure) error { return only(spring.Rate(2*mm, 16*mm, active, g)) }
	strength := func(pulsating float64) error {
		return only(spring.Fatigue(10*newton, 20*newton, 2*mm, 16*mm, spring.FatigueStrength{Pulsating: units.Megapascals(pulsating), Yield: 500 * mpa}))
	}
	low := func(x float64) error {
		return only(spring.Fatigue(units.Newtons(x), 20*newton, 2*mm, 16*mm, spring.PatentedWire(1500*mpa)))
	}
	straight := spring.Law{Form: spring.Logarithmic, A: 1000 * mpa, B: 1000 * mpa} // no strength left at 10 mm
	checkLimits(t, []limit{
		{"least figure", func(x float64) error { return only(spring.WireFor(units.Newtons(x), 8, 400*mpa, spring.Wahl)) }, 1e-9, 0.99e-9, "load", fault.OutOfRange},
		{"greatest figure", func(x float64) error { return rate(5, units.Pascals(x)) }, 1e12, 1.01e12, "shear_modulus", fault.OutOfRange},
		{"greatest stress", func(x float64) error { return only(spring.LoadAtStress(units.Pascals(x), 2*mm, 16*mm, spring.Wahl)) }, 1e12, 1.01e12, "stress", fault.OutOfRange},
		{"fewest coils", func(x float64) error { return rate(x, 80000*mpa) }, 0.01, 0.0099, "active_coils", fault.OutOfRange},
		{"most coils", func(x float64) error { return rate(x, 80000*mpa) }, 1000, 1001, "active_coils", fault.OutOfRange},
		{"least index", func(x float64) error { return only(spring.Wahl.At(x)) }, 1.2, 1.19, "index", fault.OutOfRange},
		{"greatest index", func(x float64) error { return only(spring.Wahl.At(x)) }, 100, 100.1, "index", fault.OutOfRange},
		{"pulsating strength below twice the yield", strength, 999, 1000, "strength.pulsating", fault.Conflict},
		{"low load below the high", low, 19.99, 20, "low", fault.Conflict},
		{"strength above zero", func(x float64) error { _, _, err := straight.At(units.Millimetres(x)); return err }, 9.99, 10, "wire", fault.OutOfRange},
		{"pitch above zero", func(x float64) error {
			return only(spring.SquaredGround.Pitch(units.Millimetres(x), 2*mm, 5))
		}, 4.01, 4, "free", fault.Conflict},
		{"factor of a law's wire", func(x float64) error {
			return only(spring.WireForLaw(300*newton, 40*mm, x, 0.3, spring.Law{Form: spring.Power, A: 1700 * mpa, Exponent: 0.2}))
		}, 10, 10.1, "factor", fault.OutOfRange},
	})
}

func TestLimitsOfACoil(t *testing.T) {
	coil := func(change func(*spring.HelicalSpec, float64)) func(float64) error {
		return func(x float64) error {
			in := spring.HelicalSpec{Wire: 2 * mm, Mean: 16 * mm, Active: 9.5, Free: 60 * mm, Ends: spring.SquaredGround}
			change(&in, x)
			return only(spring.NewHelical(in))
		}
	}
	checkLimits(t, []limit{
		{"ends", coil(func(s *spring.HelicalSpec, x float64) { s.Ends = spring.Ends(x) }), float64(spring.PlainGround), 5, "ends", fault.UnknownName},
		{"seating", coil(func(s *spring.HelicalSpec, x float64) { s.Seating = spring.Seating(x) }), float64(spring.OneFree), 4, "seating", fault.UnknownName},
		{"E above G", coil(func(s *spring.HelicalSpec, x float64) {
			s.Modulus = spring.Modulus{Shear: 80000 * mpa, Young: (80000 * mpa).Times(x)}
		}), 1.011, 1.01, "modulus.young", fault.Conflict},
		{"E at most 3 G", coil(func(s *spring.HelicalSpec, x float64) {
			s.Modulus = spring.Modulus{Shear: 80000 * mpa, Young: (80000 * mpa).Times(x)}
		}), 3, 3.01, "modulus.young", fault.Conflict},
		// 11.5 coils of 2 mm cannot close to less than a tenth under ten coils
		{"solid", coil(func(s *spring.HelicalSpec, x float64) { s.Solid = units.Millimetres(x) }), 18, 17.99, "solid", fault.Conflict},
		{"free above solid", coil(func(s *spring.HelicalSpec, x float64) { s.Free = units.Millimetres(x) }), 23.01, 23, "free", fault.Conflict},
		{"total at least active", coil(func(s *spring.HelicalSpec, x float64) { s.Total = x }), 9.5, 9.49, "total", fault.Conflict},
		{"most coils", coil(func(s *spring.HelicalSpec, x float64) { s.Active, s.Total, s.Free = 0, x, 5000*mm }), 1000, 1001, "total", fault.OutOfRange},
		// two diameters may disagree by 0.1 mm and one in a hundred of the first
		{"outside beside mean", coil(func(s *spring.HelicalSpec, x float64) { s.Wire, s.Mean, s.Outside = mm, 90*mm, units.Millimetres(x) }), 92, 92.01, "outside", fault.Conflict},
		{"outside beside mean, below", coil(func(s *spring.HelicalSpec, x float64) { s.Wire, s.Mean, s.Outside = mm, 90*mm, units.Millimetres(x) }), 90, 89.99, "outside", fault.Conflict},
		{"inside beside outside", coil(func(s *spring.HelicalSpec, x float64) {
			s.Wire, s.Mean, s.Outside, s.Inside = mm, 0, 91*mm, units.Millimetres(x)
		}), 90, 90.01, "inside", fault.Conflict},
		{"linear", func(x float64) error {
			return only(spring.NewLinear(units.NewtonsPerMillimetre(5), 40*mm, units.Millimetres(x)))
		}, 39.99, 40, "least", fault.Conflict},
	})
}

func TestLimitsOfADisc(t *testing.T) {
	disc := func(change func(*spring.DiscSpec, float64)) func(float64) error {
		return func(x float64) error {
			in := spring.DiscSpec{Outside: 20 * mm, Inside: 10 * mm, Thickness: 1 * mm, ConeHeight: 0.5 * units.Millimetre}
			change(&in, x)
			return only(spring.NewDisc(in))
		}
	}
	thick := disc(func(s *spring.DiscSpec, x float64) { s.Thickness = units.Millimetres(x) })
	cone := disc(func(s *spring.DiscSpec, x float64) { s.ConeHeight = units.Millimetres(x) })
	// figures of which the differences are exact
	overall := disc(func(s *spring.DiscSpec, x float64) {
		*s = spring.DiscSpec{Outside: 2 * mm, Inside: 1 * mm, Thickness: units.Millimetres(0.02), ConeHeight: units.Millimetres(0.01), Overall: units.Millimetres(x)}
	})
	if fig := ok(spring.NewDisc(spring.DiscSpec{Outside: 20 * mm, Inside: 10 * mm, Thickness: 1 * mm, Overall: 1.5 * units.Millimetre}))(t).Figures(); fig.HeightRatio != 0.5 {
		t.Errorf("height over all 1.5 mm of 1 mm: %+v", fig)
	}
	one := ok(spring.NewDisc(spring.DiscSpec{Outside: 20 * mm, Inside: 10 * mm, Thickness: 1 * mm, ConeHeight: 0.5 * units.Millimetre}))(t)
	borne := func(outer, inner float64) error {
		return only(one.Between(units.Millimetres(outer), units.Millimetres(inner)))
	}
	checkLimits(t, []limit{
		{"thickness a quarter of De - Di", thick, 2.5, 2.51, "thickness", fault.OutOfRange},
		{"least cone", cone, 0.05, 0.049, "cone_height/thickness", fault.OutOfRange},
		{"greatest cone", cone, 3, 3.01, "cone_height/thickness", fault.OutOfRange},
		{"overall 10 µm from thickness and cone", overall, 0.04, 0.041, "overall", fault.Conflict},
		{"borne outside", func(x float64) error { return borne(x, 12) }, 20, 20.01, "outer", fault.OutOfRange},
		{"borne inside", func(x float64) error { return borne(18, x) }, 10, 9.99, "outer", fault.OutOfRange},
		{"borne apart", func(x float64) error { return borne(15, x) }, 14.5, 15, "outer", fault.OutOfRange},
		{"lever", func(x float64) error { return only(spring.NewLevered(one, x)) }, 100, 100.1, "ratio", fault.OutOfRange},
		{"discs in a packet", func(x float64) error { return only(spring.NewStack(one, int(x), 1)) }, 1000, 1001, "parallel", fault.OutOfRange},
		{"packets", func(x float64) error { return only(spring.NewStack(one, 1, int(x))) }, 1000, 1001, "series", fault.OutOfRange},
		{"losses of a packet of ten", func(x float64) error {
			_, _, err := ok(spring.NewStack(one, 10, 1))(t).Band(0, spring.StackFriction{Between: x})
			return err
		}, 0.099, 0.1, "friction", fault.OutOfRange},
	})
	if err := only(spring.Disc{}.Between(0, 0)); err == nil {
		t.Error("a disc never made is borne")
	}
}

func TestLimitsOfSets(t *testing.T) {
	coil := ok(spring.NewLinear(units.NewtonsPerMillimetre(5), 40*mm, 30*mm))(t)
	short := func(x float64) spring.Linear { // travel x
		if x == 0 {
			return spring.Linear{}
		}
		return ok(spring.NewLinear(units.NewtonsPerMillimetre(5), 40*mm, units.Millimetres(40-x)))(t)
	}
	loads := func(n float64) []measure.Reading[units.Force] {
		out := make([]measure.Reading[units.Force], int(n))
		for i := range out {
			out[i] = measure.Of(200*newton, 2*newton)
		}
		return out
	}
	even := func(opt spring.EvenOptions) error { return only(spring.Even(loads(4), opt)) }
	checkLimits(t, []limit{
		{"parallel, travel", func(x float64) error { return only(spring.NewParallel(spring.Part{Spring: short(x)})) }, 1, 0, "parts.0.spring", fault.Missing},
		{"parallel, count", func(x float64) error { return only(spring.NewParallel(spring.Part{Spring: coil, Count: int(x)})) }, 1000, 1001, "parts.0.count", fault.OutOfRange},
		{"parallel, gap", func(x float64) error {
			return only(spring.NewParallel(spring.Part{Spring: coil}, spring.Part{Spring: coil, Gap: units.Millimetres(x)}))
		}, 9.99, 10, "parts.1.gap", fault.Conflict},
		{"series, travel", func(x float64) error { return only(spring.NewSeries(coil, short(x))) }, 1, 0, "parts.1", fault.Missing},
		{"levered, travel", func(x float64) error { return only(spring.NewLevered(short(x), 2)) }, 1, 0, "spring", fault.Missing},
		{"trace, travel", func(x float64) error { return only(spring.TraceOf(short(x), 10)) }, 1, 0, "spring", fault.Missing},
		{"trace, fewest points", func(x float64) error { return only(spring.TraceOf(coil, int(x))) }, 2, 1, "points", fault.OutOfRange},
		{"trace, most points", func(x float64) error { return only(spring.TraceOf(coil, int(x))) }, 100000, 100001, "points", fault.OutOfRange},
		{"set, fewest springs", func(x float64) error { return only(spring.Even(loads(x), spring.EvenOptions{})) }, 2, 1, "loads", fault.OutOfRange},
		{"set, most springs", func(x float64) error { return only(spring.Even(loads(x), spring.EvenOptions{})) }, 100, 101, "loads", fault.OutOfRange},
		{"set, spread", func(x float64) error { return even(spring.EvenOptions{Spread: x}) }, 1, 1.01, "spread", fault.OutOfRange},
		{"set, an exact load", func(u float64) error {
			return only(spring.Even(append(loads(3), exactOr(u)), spring.EvenOptions{}))
		}, 2, 0, "loads.3", fault.Missing},
	})
	// a load of nothing is one fault, not two
	if f := fault.Faults(only(spring.Even(append(loads(2), measure.Exact(0*newton)), spring.EvenOptions{}))); len(f) != 1 || f[0].Path != "loads.2" {
		t.Error(f)
	}
}

func exactOr(u float64) measure.Reading[units.Force] {
	if u == 0 {
		return measure.Exact(200 * newton)
	}
	return measure.Of(200*newton, units.Newtons(u))
}

func TestLimitsOfALine(t *testing.T) {
	at := func(length, ul, load, u float64) spring.LoadReading {
		return spring.LoadReading{Length: measure.Of(units.Millimetres(length), units.Millimetres(ul)), Load: measure.Of(units.Newtons(load), units.Newtons(u))}
	}
	three := []spring.LoadReading{at(40, 0.1, 100, 2), at(35, 0.1, 150, 2), at(30, 0.1, 200, 2)}
	fit := func(r ...spring.LoadReading) error { return only(spring.FitLine(r, spring.FitOptions{})) }
	checkLimits(t, []limit{
		{"fewest loads", func(x float64) error { return fit(three[:int(x)]...) }, 2, 1, "loads", fault.Missing},
		{"scale", func(x float64) error { return only(spring.FitLine(three, spring.FitOptions{Scale: x})) }, 0.5, 0.51, "scale", fault.OutOfRange},
		{"uncertain length", func(x float64) error { return fit(three[0], at(35, x, 150, 2)) }, 34.9, 35, "loads.1.length", fault.OutOfRange},
		{"uncertain load", func(x float64) error { return fit(three[0], at(35, 1, 150, x)) }, 1e12, 1.01e12, "loads.1.load", fault.OutOfRange},
		{"a load that falls with the length", func(x float64) error { return fit(three[0], at(35, 0.1, x, 2)) }, 100.1, 100, "loads", fault.Conflict},
	})
	exact := spring.LoadReading{Length: measure.Exact(35 * mm), Load: measure.Exact(150 * newton)}
	if f := fault.Faults(fit(three[0], exact)); len(f) != 1 || f[0].Path != "loads.1" || f[0].Code != fault.Missing {
		t.Error(f)
	}
	unsound := spring.LoadReading{Length: three[1].Length, Load: measure.Of(150*newton, -2*newton)}
	if f := fault.Faults(fit(three[0], unsound)); len(f) != 1 || f[0].Path != "loads.1.load" {
		t.Error(f)
	}
}
