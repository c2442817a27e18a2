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

// Engine is what the carburettor has to feed.
type Engine struct {
	// Displacement is the swept volume of one cylinder, 20 cc to 1000 cc. It is
	// needed.
	Displacement measure.Reading[units.Volume] `json:"displacement"`
	// Cylinders is how many of them the one carburettor feeds, 1 to 4; 0 is one.
	Cylinders int `json:"cylinders,omitempty"`
	// Tune is the state of tune; "" is a road tune.
	Tune refdata.Tune `json:"tune,omitempty"`
	// PeakSpeed is the crank speed of greatest power, 1000 to 12000 rev/min. Not
	// taken, 5300 ± 700 rev/min is assumed.
	PeakSpeed measure.Reading[units.RotationalSpeed] `json:"peak_speed"`
	// VolumetricEfficiency is the air taken in at that speed over the swept
	// volume of air as it stands outside, 0.3 to 1.3. Not taken, 0.85 ± 0.07 is
	// assumed.
	VolumetricEfficiency measure.Reading[units.Ratio] `json:"volumetric_efficiency"`
}

// Surroundings is the air outside and the fuel in the tank.
type Surroundings struct {
	// Pressure of the place itself, absolute. Not taken, 1013.25 hPa is assumed.
	Pressure measure.Reading[units.Pressure] `json:"pressure"`
	// Temperature of the air and the fuel. Not taken, 15 °C is assumed.
	Temperature measure.Reading[units.Temperature] `json:"temperature"`
	// Humidity, relative, 0 to 1. Not taken, dry air is assumed.
	Humidity measure.Reading[units.Ratio] `json:"humidity"`
	// Fuel is a name of the table of fuels, such as "petrol E5"; empty is petrol
	// without alcohol, and is listed as assumed.
	Fuel string `json:"fuel,omitempty"`
}

// cylinders returns how many the carburettor feeds.
func (e Engine) cylinders() int {
	if e.Cylinders == 0 {
		return 1
	}
	return e.Cylinders
}

// filled returns the engine with defaults in place and says which.
func (e Engine) filled(l *fault.List) (Engine, []refdata.Assumption) {
	var a []refdata.Assumption
	needed(l, "engine.displacement", e.Displacement)
	if e.Displacement.Taken() {
		positive(l, "engine.displacement", e.Displacement.Value(), units.CubicCentimetres(20), units.CubicCentimetres(1000))
	}
	if e.Cylinders < 0 || e.Cylinders > 4 {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "engine.cylinders", Rule: "1 to 4 on one carburettor; 0 is one"})
		e.Cylinders = 1
	}
	switch e.Tune {
	case "", refdata.RoadTune, refdata.SideValve, refdata.SportsTune, refdata.RacingTune:
	default:
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "engine.tune", Value: string(e.Tune), Rule: "road, side-valve, sports or racing; nothing is road"})
	}
	if !e.PeakSpeed.Taken() {
		e.PeakSpeed = measure.Of(units.RevolutionsPerMinute(5300), units.RevolutionsPerMinute(700))
		a = append(a, refdata.Assumption{What: "crank speed of greatest power", Value: "5300 ± 700 rev/min", Status: refdata.FromMemory})
	}
	l.Under("engine.peak_speed", e.PeakSpeed.Err())
	positive(l, "engine.peak_speed", e.PeakSpeed.Value(), units.RevolutionsPerMinute(1000), units.RevolutionsPerMinute(12000))
	if !e.VolumetricEfficiency.Taken() {
		e.VolumetricEfficiency = measure.Of(units.Value(0.85), units.Value(0.07))
		a = append(a, refdata.Assumption{What: "volumetric efficiency at that speed", Value: "0.85 ± 0.07", Status: refdata.FromMemory})
	}
	l.Under("engine.volumetric_efficiency", e.VolumetricEfficiency.Err())
	positive(l, "engine.volumetric_efficiency", e.VolumetricEfficiency.Value(), 0.3, 1.3)
	return e, a
}

// outside is the air and fuel of Surroundings.
type outside struct {
	weather air.Weather
	moist   air.MoistAir
	fuel    fuel.Fuel
	liquid  units.Density // fuel at the temperature of the day
	change  air.Change    // from 15 °C, 1013.25 hPa, dry
	swap    fuel.Swap     // from petrol without alcohol at 15 °C
	assumed []refdata.Assumption
	sources []refdata.Source
}

func standardDay() air.Weather {
	return air.Weather{Pressure: units.Hectopascals(1013.25), Temperature: units.Celsius(15)}
}

func (s Surroundings) outside(l *fault.List) outside {
	var o outside
	o.weather = standardDay()
	for _, c := range []struct {
		taken bool
		what  string
		value string
		err   error
		set   func()
	}{
		{s.Pressure.Taken(), "air pressure", "1013.25 hPa", s.Pressure.Err(), func() { o.weather.Pressure = s.Pressure.Value() }},
		{s.Temperature.Taken(), "temperature of air and fuel", "15 °C", s.Temperature.Err(), func() { o.weather.Temperature = s.Temperature.Value() }},
		{s.Humidity.Taken(), "relative humidity", "0", s.Humidity.Err(), func() { o.weather.Humidity = s.Humidity.Value() }},
	} {
		if !c.taken {
			o.assumed = append(o.assumed, refdata.Assumption{What: c.what, Value: c.value, Status: refdata.CommonPractice})
			continue
		}
		l.Under("surroundings", c.err)
		c.set()
	}
	name := s.Fuel
	if name == "" {
		name = "petrol"
		o.assumed = append(o.assumed, refdata.Assumption{What: "fuel", Value: "petrol without alcohol", Status: refdata.CommonPractice})
	}
	var err error
	o.fuel, err = fuel.Named(name)
	if !l.Under("surroundings", err) {
		return o
	}
	o.moist, err = air.Moist(o.weather, air.Options{})
	if !l.Under("surroundings", err) {
		return o
	}
	o.change, err = air.Compare(standardDay(), o.weather, air.Options{})
	l.Under("surroundings", err)
	if o.liquid, err = o.fuel.DensityAt(o.weather.Temperature); !l.Under("surroundings", err) {
		return o
	}
	if o.swap, err = fuel.JetFactor(fuel.Petrol(), o.fuel, o.weather.Temperature); !l.Under("surroundings", err) {
		return o
	}
	// from petrol at 15 °C: fuel shrinks and swells with the day
	if day, err := fuel.Petrol().DensityAt(o.weather.Temperature); err == nil {
		if usual, err := fuel.Petrol().DensityAt(units.Celsius(15)); err == nil {
			x := math.Sqrt(usual.Ratio(day))
			o.swap.FlowFactor *= x
			o.swap.Mixture *= x
			o.swap.BoreFactor *= math.Sqrt(x)
		}
	}
	o.sources = append([]refdata.Source{{Title: "CIPM-2007, A. Picard et al., Metrologia 45 (2008) 149-155", Read: "public copies of its constants", Status: refdata.Published}}, o.fuel.Sources...)
	return o
}
