package carburation

import (
	"math"

	"example.com/benchbook/carburation/air"
	"example.com/benchbook/carburation/fuel"
	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Change is a carburettor that ran well, and what has changed since.
type Change struct {
	Then, Now Surroundings
	// LambdaRead is what it runs at now, and LambdaWanted what it should; both
	// taken or neither.
	LambdaRead, LambdaWanted measure.Reading[units.Ratio]
	// Suction at the needle jet at full throttle, for the air cleaner; not taken,
	// 2.5 kPa ± 30 % is assumed, which Start or Model can better.
	Suction measure.Reading[units.Pressure]
	// CleanerThen and CleanerNow are what stood and stands before the intake. Its
	// Drop is at full throttle.
	CleanerThen, CleanerNow Cleaner
	// MainJet is the main jet that ran well; not read, factors alone are given.
	MainJet Jet
}

// Correction is what the change asks of the main jet, and of every other jet
// save for the cleaner's part, which the pilot feels less.
type Correction struct {
	Air        Factor            `json:"air"`     // pressure, temperature, humidity
	Fuel       Factor            `json:"fuel"`    // composition and density
	Cleaner    Factor            `json:"cleaner"` // drop before the choke and where the chamber is vented
	Read       Factor            `json:"read"`    // lambda read over lambda wanted
	Total      Factor            `json:"total"`
	FlowBand   Band[units.Ratio] `json:"flow_band"`  // of the total on a flow number
	MainJet    Jet               `json:"main_jet"`   // the new one, if the old was read
	Steps      float64           `json:"steps"`      // in the trade's steps of 5 % of flow; below zero is smaller
	AirHeight  units.Length      `json:"air_height"` // height in the standard atmosphere at which the air is as dense as now
	ThenHeight units.Length      `json:"then_height"`
	Basis      refdata.Basis     `json:"basis"`
}

// Factor is one part of a correction.
type Factor struct {
	Flow    float64 `json:"flow"`    // on a flow number, to keep the mixture
	Bore    float64 `json:"bore"`    // on a bore
	Mixture float64 `json:"mixture"` // of lambda with the jet left alone: above 1 is weaker
}

func factorOf(flow float64) Factor { return Factor{Flow: flow, Bore: math.Sqrt(flow), Mixture: flow} }

// Correct returns what a change of weather, height, fuel or air cleaner, or a
// lambda reading, asks of the main jet:
//
//	air      (dry density ratio)/sqrt(density ratio)
//	fuel     (AFR1/AFR2) sqrt(rho1/rho2)
//	cleaner  sqrt(suction/(suction + drop)), vent in the open; none if vented behind
//	read     lambda read/lambda wanted
//
// multiplied together; a flow number goes by that, a bore by its square root.
// The first three are good to 2 % or so, the last to the sensor. The air's part
// takes the suction to thin out with the air, which the fuel's climb to the
// needle jet does not: against the model at full throttle it is within 2 % up to
// 2000 m, 3.5 % up to 3000 m, 6 % up to 5000 m (altitude: M. L. Mathur, R. P.
// Sharma, Internal Combustion Engine, 8th ed. 2010, example 11.7; cleaner: H. N.
// Gupta, Fundamentals of Internal Combustion Engines, 2006, example 9.8).
// Errors: figures outside, one lambda without the other, readings so uncertain
// that they leave the correction open.
func Correct(c Change) (Correction, error) {
	var l, then, now fault.List
	a, b := c.Then.outside(&then), c.Now.outside(&now)
	l.Under("then", then.Err())
	l.Under("now", now.Err())
	for _, x := range []struct {
		path string
		c    Cleaner
	}{{"cleaner_then", c.CleanerThen}, {"cleaner_now", c.CleanerNow}} {
		if x.c.Drop.Taken() {
			l.Under(x.path+".drop", x.c.Drop.Err())
			positive(&l, x.path+".drop", x.c.Drop.Value(), 0, units.Kilopascals(10))
		}
	}
	for _, x := range []struct {
		path string
		r    measure.Reading[units.Ratio]
	}{{"lambda_read", c.LambdaRead}, {"lambda_wanted", c.LambdaWanted}} {
		if x.r.Taken() {
			l.Under(x.path, x.r.Err())
			positive(&l, x.path, x.r.Value(), 0.5, 2)
		}
	}
	if c.LambdaRead.Taken() != c.LambdaWanted.Taken() {
		l.Add(fault.Fault{Code: fault.Missing, Path: "lambda_wanted", Rule: "both the lambda read and the lambda wanted, or neither"})
	}
	var assumed []refdata.Assumption
	suction := c.Suction
	cleaned := c.CleanerThen.Drop.Taken() || c.CleanerNow.Drop.Taken()
	if !suction.Taken() {
		suction = measure.Of(units.Kilopascals(2.5), units.Kilopascals(0.75))
		if cleaned {
			assumed = append(assumed, refdata.Assumption{What: "suction at the needle jet at full throttle", Value: "2.5 kPa ± 30 %", Status: refdata.FromMemory})
		}
	}
	l.Under("suction", suction.Err())
	positive(&l, "suction", suction.Value(), units.Pascals(50), units.Kilopascals(20))
	if c.MainJet.Taken() {
		l.Under("main_jet", c.MainJet.Err())
	}
	if l.Len() > 0 {
		return Correction{}, l.Err()
	}
	out := Correction{Read: factorOf(1)}
	change, err := air.Compare(a.weather, b.weather, air.Options{})
	if err != nil {
		return Correction{}, err
	}
	at := a.weather.Temperature
	swap, err := fuel.JetFactor(a.fuel, b.fuel, at)
	if err != nil {
		return Correction{}, err
	}
	// the fuel warms with the day: its density goes with what is in the tank
	warm, _ := b.fuel.DensityAt(at)
	out.Air = factorOf(change.FlowFactor)
	out.Fuel = factorOf(swap.FlowFactor * math.Sqrt(warm.Ratio(b.liquid)))
	drive := func(k Cleaner) float64 {
		if k.Vented || !k.Drop.Taken() {
			return 1
		}
		return 1 + k.Drop.Value().Ratio(suction.Value())
	}
	out.Cleaner = factorOf(math.Sqrt(drive(c.CleanerThen) / drive(c.CleanerNow)))
	// a tenth of the air's part and a twentieth of the fuel's are judged; the
	// cleaner's goes with the suction
	variance := math.Pow(0.1*math.Log(out.Air.Flow), 2) + math.Pow(0.05*math.Log(out.Fuel.Flow), 2) + math.Pow(math.Log(out.Cleaner.Flow)*suction.U().Ratio(suction.Value()), 2)
	if c.LambdaRead.Taken() {
		out.Read = factorOf(c.LambdaRead.Value().Ratio(c.LambdaWanted.Value()))
		variance += math.Pow(c.LambdaRead.U().Ratio(c.LambdaRead.Value()), 2) + math.Pow(c.LambdaWanted.U().Ratio(c.LambdaWanted.Value()), 2)
	}
	if !(variance < 1) {
		return Correction{}, fault.Fault{Code: fault.OutOfRange, Path: "suction", Value: suction.String(), Rule: "with the lambda readings, good enough to tell the correction to a factor of e"}
	}
	flow := out.Air.Flow * out.Fuel.Flow * out.Cleaner.Flow * out.Read.Flow
	out.Total = factorOf(flow)
	out.FlowBand = lnBand[units.Ratio](math.Log(flow), math.Sqrt(variance))
	out.Steps = math.Log(flow) / math.Log(1.05)
	if c.MainJet.Taken() {
		out.MainJet = c.MainJet.times(flow)
	}
	out.ThenHeight, _ = air.DensityHeight(a.moist.Density)
	out.AirHeight, _ = air.DensityHeight(b.moist.Density)
	out.Basis = refdata.Basis{
		Sources:    append(append([]refdata.Source{}, a.sources...), refdata.Source{Title: "M. L. Mathur, R. P. Sharma, Internal Combustion Engine, 8th ed. 2010", Clause: "examples 11.7 and 11.9", Read: "public companion", Status: refdata.Published}),
		Assumed:    assumed,
		NotChecked: []refdata.Unchecked{{What: "the setting that ran well", Why: "the correction steps from it and keeps its faults", Settle: "a lambda reading at full throttle"}},
		Cautions:   []refdata.Caution{refdata.WeakMixture, refdata.PetrolVapour, refdata.CarbonMonoxide, refdata.DeferToManual},
	}
	for _, x := range []struct {
		when string
		a    []refdata.Assumption
	}{{"then: ", a.assumed}, {"now: ", b.assumed}} {
		for _, y := range x.a {
			y.What = x.when + y.What
			out.Basis.Assumed = append(out.Basis.Assumed, y)
		}
	}
	return out, nil
}
