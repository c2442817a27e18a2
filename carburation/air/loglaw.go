package air

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// LogLaw is the older textbook law of height: h = Scale log10(p0/p), with
// temperature falling evenly.
type LogLaw struct {
	Pressure       units.Pressure    // at sea level; 0 takes 1.013 bar
	Temperature    units.Temperature // at sea level; 0 takes 15 °C
	Scale          units.Length      // 0 takes 19200 m; some books 19300 m
	LapseKPerMetre float64           // fall of temperature in K per metre; 0 takes 0.0065
}

// At returns the dry air of the law at height h, 0 to 11 km, and its density
// over that at sea level. The air/fuel ratio of a carburettor left alone goes
// with the square root of that (H. N. Gupta, Fundamentals of Internal
// Combustion Engines, 2006, example 9.7; M. L. Mathur, R. P. Sharma, Internal
// Combustion Engine, 8th ed. 2010, example 11.7; R. K. Rajput, Internal
// Combustion Engines, example 11.11). It agrees with Standard within 1 % of
// pressure to 5 km. The error is a fault.OutOfRange.
func (m LogLaw) At(h units.Length) (w Weather, densityRatio float64, err error) {
	if m.Pressure == 0 {
		m.Pressure = units.Bars(1.013)
	}
	if m.Temperature == 0 {
		m.Temperature = units.Celsius(15)
	}
	if m.Scale == 0 {
		m.Scale = units.Metres(19200)
	}
	if m.LapseKPerMetre == 0 {
		m.LapseKPerMetre = 0.0065
	}
	var l fault.List
	if x := h.Metres(); !(x >= 0 && x <= 11000) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "height", Value: h.String(), Unit: "m", Rule: "0 m to 11000 m"})
	}
	if p := m.Pressure.Bars(); !(p >= 0.5 && p <= 1.2) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "pressure", Value: m.Pressure.String(), Unit: "bar", Rule: "0.5 bar to 1.2 bar at sea level, absolute"})
	}
	if t := m.Temperature.Celsius(); !(t >= -60 && t <= 60) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "temperature", Value: m.Temperature.String(), Unit: "°C", Rule: "-60 °C to 60 °C at sea level"})
	}
	if s := m.Scale.Metres(); !(s >= 15000 && s <= 25000) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "scale", Value: m.Scale.String(), Unit: "m", Rule: "15000 m to 25000 m"})
	}
	if !(m.LapseKPerMetre > 0 && m.LapseKPerMetre <= 0.01) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "lapse", Unit: "K/m", Rule: "above 0, to 0.01 K per metre"})
	}
	if l.Len() > 0 {
		return Weather{}, 0, l.Err()
	}
	fall := math.Pow(10, -h.Ratio(m.Scale))
	t := m.Temperature.Kelvins() - m.LapseKPerMetre*h.Metres()
	return Weather{Pressure: m.Pressure.Times(fall), Temperature: units.Kelvins(t)}, fall * m.Temperature.Kelvins() / t, nil
}
