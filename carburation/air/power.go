package air

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Rule is a published rule that reduces measured power to a reference air. On
// one and the same day the rules differ by 4 %: name the rule with every
// corrected figure. None of them is for choosing jets.
type Rule string

// The rules.
const (
	SAEJ1349 Rule = "SAE J1349" // June 1990: 25 °C, 990 mbar dry
	DIN70020 Rule = "DIN 70020" // 20 °C, 1013 mbar, humidity left out
	ISO1585  Rule = "ISO 1585"  // 25 °C, 990 mbar dry; spark ignition, not blown
	SAEJ607  Rule = "SAE J607"  // withdrawn: 60 °F, 29.92 inHg dry
)

// PowerCorrection is a factor on measured power, with what it rests on.
type PowerCorrection struct {
	Rule        Rule           `json:"rule"`
	Factor      float64        `json:"factor"` // corrected power = measured power times this
	DryPressure units.Pressure `json:"dry_pressure"`
	Reference   Weather        `json:"reference"` // its pressure is dry, except that of DIN 70020
	Valid       bool           `json:"valid"`     // inside the range the rule gives, where one is known
	Range       string         `json:"range"`     // that range, for the reader
	Basis       refdata.Basis  `json:"basis"`
}

// PowerFactor returns the factor of a rule for the air of a test, pd its dry
// pressure and t its temperature:
//
//	SAE J1349  1.180 (990 mbar/pd) sqrt(T/298 K) - 0.18
//	DIN 70020  (1013 mbar/p) sqrt(T/293 K)
//	ISO 1585   (99 kPa/pd)^1.2 (T/298 K)^0.6
//	SAE J607   (29.92 inHg/pd) sqrt(T/519.67 °R)
//
// with T taken as t + 273 in the first two as they print it. The 0.18 of SAE
// J1349 stands for a mechanical efficiency of 85 %. ISO 1585 leaves motorcycles
// out by its own words; rules for them used the same form (from memory). Errors
// are those of Moist, and fault.UnknownName for another rule.
func PowerFactor(rule Rule, w Weather) (PowerCorrection, error) {
	var l fault.List
	w.faults(&l)
	c := PowerCorrection{Rule: rule, Valid: true}
	k, tc := w.Temperature.Kelvins(), w.Temperature.Celsius()
	pd := w.Pressure.Pascals() - w.Humidity.Value()*saturationCIPM(k)
	c.DryPressure = units.Pascals(pd)
	status, clause := refdata.Published, "correction formula, read in secondary sources"
	switch rule {
	case SAEJ1349:
		c.Factor = 1.180*(99000/pd)*math.Sqrt((tc+273)/298) - 0.18
		c.Reference = Weather{Pressure: units.Hectopascals(990), Temperature: units.Celsius(25)}
		c.Range = "not known here"
	case DIN70020:
		c.Factor = 101300 / w.Pressure.Pascals() * math.Sqrt((tc+273)/293)
		c.Reference = Weather{Pressure: units.Hectopascals(1013), Temperature: units.Celsius(20)}
		c.Range = "not known here"
	case ISO1585:
		c.Factor = math.Pow(99000/pd, 1.2) * math.Pow(k/298, 0.6)
		c.Reference = Weather{Pressure: units.Hectopascals(990), Temperature: units.Celsius(25)}
		c.Range = "air 283 K to 318 K, factor 0.93 to 1.07 (from memory)"
		c.Valid = k >= 283 && k <= 318 && c.Factor >= 0.93 && c.Factor <= 1.07
		status = refdata.FromMemory // the exponents were read, the range was not
	case SAEJ607:
		c.Factor = units.InchesOfMercury(29.92).Pascals() / pd * math.Sqrt(w.Temperature.Kelvins()*1.8/519.67)
		c.Reference = Weather{Pressure: units.InchesOfMercury(29.92), Temperature: units.Fahrenheit(60)}
		c.Range = "withdrawn"
	default:
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "rule", Value: string(rule), Rule: "SAE J1349, DIN 70020, ISO 1585 or SAE J607"})
	}
	if l.Len() > 0 {
		return PowerCorrection{}, l.Err()
	}
	c.Basis = refdata.Basis{Sources: []refdata.Source{{Title: string(rule), Clause: clause, Status: status}}}
	return c, nil
}
