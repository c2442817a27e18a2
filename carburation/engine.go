package carburation

import (
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// Engine is what the carburettor has to feed.
type Engine struct {
	// Displacement is the swept volume of one cylinder, 20 cc to 1000 cc. It is
	// needed.
	Displacement measure.Reading[units.Volume] `json:"displacement"`
	// Cylinders is how many of them the one carburettor feeds, 1 to 4; 0 is one.
	Cylinders int `json:"cylinders,omitempty"`
	// PeakSpeed is the crank speed of greatest power, 500 to 12000 rev/min. Not
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
	// Temperature of the air. Not taken, 15 °C is assumed.
	Temperature measure.Reading[units.Temperature] `json:"temperature"`
	// Humidity, relative. Not taken, dry air is assumed.
	Humidity measure.Reading[units.Ratio] `json:"humidity"`
	// Fuel is a name of the table of fuels, such as "petrol E5"; empty is petrol
	// without alcohol, and is listed as assumed.
	Fuel string `json:"fuel,omitempty"`
}
