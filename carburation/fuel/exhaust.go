package fuel

import (
	"math"
	"strconv"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/solve"
)

// Rich is the rule that shares scarce oxygen out in a rich mixture.
type Rich uint8

// The rules.
const (
	// WaterGas lets hydrogen and carbon monoxide settle by the water-gas
	// equilibrium, as hot exhaust does.
	WaterGas Rich = iota
	// NoHydrogen burns all hydrogen to water first, as older textbook sums do.
	NoHydrogen
)

// BurnOptions are the choices of Burn. The zero value takes the defaults.
type BurnOptions struct {
	Rich             Rich    // default WaterGas
	WaterGasConstant float64 // CO x H2O/(CO2 x H2); 0 takes 3.5, a usual figure, from memory
}

// Exhaust is what leaves when a fuel has burnt, nothing left unburnt. Masses
// are per mass of fuel; nitrogen includes the rest of the air that does not
// burn.
type Exhaust struct {
	Lambda      units.Ratio `json:"lambda"`
	AFR         units.Ratio `json:"afr"`           // kg of air per kg of fuel
	AirMoles    float64     `json:"air_moles"`     // per molecule of the formula
	CarbonToCO2 units.Ratio `json:"carbon_to_co2"` // kg of carbon burnt through, per kg of fuel
	CO2         units.Ratio `json:"co2"`
	CO          units.Ratio `json:"co"`
	H2          units.Ratio `json:"h2"`
	H2O         units.Ratio `json:"h2o"`
	O2          units.Ratio `json:"o2"`
	N2          units.Ratio `json:"n2"`
	SO2         units.Ratio `json:"so2"`
	DryCO       units.Ratio `json:"dry_co"` // by volume of exhaust without its water
	DryCO2      units.Ratio `json:"dry_co2"`
	DryO2       units.Ratio `json:"dry_o2"`
	DryH2       units.Ratio `json:"dry_h2"`
	MolesBefore float64     `json:"moles_before"` // fuel as vapour and air, per molecule of the formula
	MolesAfter  float64     `json:"moles_after"`
	MassBefore  float64     `json:"molar_mass_before"` // g/mol of fuel vapour with air
	MassAfter   float64     `json:"molar_mass_after"`  // g/mol of exhaust, water as vapour

	gas float64 // J/(kmol K)
}

// AirVolume returns the volume of air per mole of fuel at a temperature and
// absolute pressure: n R T/p. One cubic metre per mole is one per kmol times a
// thousand. Errors: a temperature outside 50 to 5000 K, a pressure outside 1 Pa to
// 1 GPa, an exhaust not from [Burn].
func (e Exhaust) AirVolume(t units.Temperature, p units.Pressure) (units.Volume, error) {
	var l fault.List
	if !(t.Kelvins() >= 50 && t.Kelvins() <= 5000) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "temperature", Value: t.String(), Unit: "K", Rule: "50 to 5000 K"})
	}
	if !(p.Pascals() >= 1 && p.Pascals() <= 1e9) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "pressure", Value: p.String(), Unit: "Pa", Rule: "absolute, 1 Pa to 1 GPa"})
	}
	if !(e.AirMoles > 0 && e.AirMoles <= 1e6 && e.gas > 0 && e.gas <= 1e6) {
		l.Add(fault.Fault{Code: fault.Missing, Path: "exhaust", Rule: "what Burn returns"})
	}
	if err := l.Err(); err != nil {
		return 0, err
	}
	return units.CubicMetres(e.AirMoles * e.gas / 1000 * t.Kelvins() / p.Pascals()), nil
}

// Burn returns the exhaust of a fuel at a lambda of 0.5 to 5. Weak mixtures
// leave oxygen over; rich ones leave carbon monoxide, and hydrogen by the rule
// WaterGas (H. N. Gupta, Fundamentals of Internal Combustion Engines, 2006,
// example 3.1; M. L. Mathur, R. P. Sharma, Internal Combustion Engine, 8th ed.
// 2010, example 8.6 for NoHydrogen). Errors are those of Stoichiometric, a
// lambda outside, and one so rich that carbon would be left as soot.
func Burn(f Formula, lambda units.Ratio, opt BurnOptions, conv Convention) (Exhaust, error) {
	var l fault.List
	s, err := Stoichiometric(f, conv)
	l.Under("", err)
	if v := lambda.Value(); !(v >= 0.5 && v <= 5) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "lambda", Value: lambda.String(), Rule: "0.5 to 5"})
	}
	k := opt.WaterGasConstant
	if k == 0 {
		k = 3.5
	}
	if !(k >= 0.5 && k <= 20) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "options.water_gas_constant", Value: strconv.FormatFloat(k, 'g', 5, 64), Rule: "0.5 to 20, or 0 for the default"})
	}
	if opt.Rich > NoHydrogen {
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "options.rich", Rule: "WaterGas or NoHydrogen"})
	}
	if l.Len() > 0 {
		return Exhaust{}, l.Err()
	}
	grams, airMoles, inertMass := conv.airPerOxygen()
	m, mass := conv.masses(), f.MolarMass(conv)
	o2 := s.OxygenMoles * lambda.Value() // supplied
	inert := o2 * (airMoles - 1)
	g, ok := share(f, o2, k, opt.Rich)
	if !ok {
		return Exhaust{}, fault.Fault{Code: fault.OutOfRange, Path: "lambda", Value: lambda.String(), Rule: "enough oxygen that no carbon is left as soot"}
	}
	per := func(moles, molar float64) units.Ratio { return units.Value(moles * molar / mass) }
	dry := g.co2 + g.co + g.h2 + g.o2 + f.S + inert + f.N/2
	wet := dry + g.h2o
	e := Exhaust{
		Lambda: lambda, AFR: s.AFR.Times(lambda.Value()), AirMoles: o2 * airMoles, CarbonToCO2: per(g.co2, m.c),
		CO2: per(g.co2, m.c+2*m.o), CO: per(g.co, m.c+m.o), H2: per(g.h2, 2*m.h), H2O: per(g.h2o, 2*m.h+m.o), O2: per(g.o2, 2*m.o),
		N2: units.Value((inert*inertMass + f.N*m.n) / mass), SO2: per(f.S, m.s+2*m.o),
		DryCO: units.Value(g.co / dry), DryCO2: units.Value(g.co2 / dry), DryO2: units.Value(g.o2 / dry), DryH2: units.Value(g.h2 / dry),
		MolesBefore: 1 + o2*airMoles, MolesAfter: wet, gas: conv.gas(),
	}
	total := mass + o2*grams
	e.MassBefore, e.MassAfter = total/e.MolesBefore, total/e.MolesAfter
	return e, nil
}

type gases struct{ co2, co, h2, h2o, o2 float64 } // moles per molecule of the formula

// share gives the oxygen to carbon and hydrogen; ok is false if soot would be left.
func share(f Formula, o2, k float64, rule Rich) (g gases, ok bool) {
	h2 := f.H / 2
	oxygen := 2*o2 + f.O - 2*f.S // atoms, sulphur served first
	if spare := oxygen - 2*f.C - h2; spare >= 0 {
		return gases{co2: f.C, h2o: h2, o2: spare / 2}, true
	}
	if rule == NoHydrogen {
		left := oxygen - h2 - f.C // over and above all carbon to CO
		if left < 0 {
			return gases{}, false
		}
		return gases{co2: left, co: f.C - left, h2o: h2}, true
	}
	if oxygen < f.C {
		return gases{}, false
	}
	water := func(x float64) float64 { return oxygen - f.C - x }
	x, err := solve.Root(func(x float64) float64 { return (f.C-x)*water(x) - k*x*(h2-water(x)) },
		math.Max(0, oxygen-f.C-h2), math.Min(f.C, oxygen-f.C), 1e-14)
	if err != nil {
		return gases{}, false
	}
	w := water(x)
	return gases{co2: x, co: f.C - x, h2: h2 - w, h2o: w}, true
}

// LambdaFromCO returns the lambda at which a fuel's dry exhaust holds a share
// of carbon monoxide by volume, 0.5 % to 10 %, the inverse of Burn by WaterGas.
// An even mixture and complete burning are taken: judged good to 0.02 above 1 %.
// Errors: a share outside, or one the fuel cannot give.
func LambdaFromCO(f Formula, dryCO units.Ratio, opt BurnOptions, conv Convention) (units.Ratio, error) {
	if v := dryCO.Value(); !(v >= 0.005 && v <= 0.10) {
		return 0, fault.Fault{Code: fault.OutOfRange, Path: "co", Value: dryCO.String(), Unit: "%", Rule: "0.5 % to 10 % of the dry exhaust"}
	}
	if _, err := Burn(f, 1, opt, conv); err != nil {
		return 0, err
	}
	low := 0.5
	for ; low < 0.95; low += 0.05 { // the first mixture that leaves no soot
		if _, err := Burn(f, units.Value(low), opt, conv); err == nil {
			break
		}
	}
	v, err := solve.Inverse(func(x float64) float64 {
		e, err := Burn(f, units.Value(x), opt, conv)
		if err != nil {
			return math.NaN()
		}
		return e.DryCO.Value()
	}, dryCO.Value(), low, 1, 1e-9)
	if err != nil {
		return 0, fault.Fault{Code: fault.OutOfRange, Path: "co", Value: dryCO.String(), Unit: "%", Rule: "a share this fuel can give at a lambda of 0.5 to 1"}
	}
	return units.Value(v), nil
}
