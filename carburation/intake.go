package carburation

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Intake is the breathing of a four-stroke engine at one speed.
type Intake struct {
	Swept      units.Volume          // all cylinders that draw through the carburettor
	Speed      units.RotationalSpeed // crank
	Efficiency units.Ratio           // air drawn over Swept of air at the density given
	Air        units.Density         // of the air as it stands outside
	// Vapour is the density of the fuel's vapour at the same pressure and
	// temperature, and Mixture the air/fuel ratio by mass; both zero leave the
	// room that vapour takes out of account. Petrol takes some 2 % of the air's
	// room, methanol some 12 %, if all of it evaporates.
	Vapour  units.Density
	Mixture units.Ratio
}

// Drawn is what an Intake takes in.
type Drawn struct {
	Volume units.VolumeFlow `json:"volume"` // of mixture, at the density of the air outside
	Air    units.MassFlow   `json:"air"`
	Fuel   units.MassFlow   `json:"fuel"` // zero without a mixture
}

// Flow returns the air drawn:
//
//	volume = efficiency x swept x speed/2 (speed in turns a second)
//	air = volume/(1/rho_air + 1/(AFR rho_vapour))
//
// (H. N. Gupta, Fundamentals of Internal Combustion Engines, 2006, example 9.3).
// Errors: any field outside its range; a vapour without a mixture.
func (d Intake) Flow() (Drawn, error) {
	var l fault.List
	positive(&l, "swept", d.Swept, units.CubicMetres(1e-6), units.CubicMetres(0.1))
	positive(&l, "speed", d.Speed, units.RevolutionsPerMinute(1), units.RevolutionsPerMinute(30000))
	positive(&l, "efficiency", d.Efficiency, 0.01, 3)
	positive(&l, "air", d.Air, units.KilogramsPerCubicMetre(0.1), units.KilogramsPerCubicMetre(5))
	if d.Mixture != 0 {
		positive(&l, "mixture", d.Mixture, 1, 100)
	}
	if d.Vapour != 0 {
		positive(&l, "vapour", d.Vapour, units.KilogramsPerCubicMetre(0.1), units.KilogramsPerCubicMetre(20))
		if d.Mixture == 0 {
			l.Add(fault.Fault{Code: fault.Missing, Path: "mixture", Rule: "the air/fuel ratio, where vapour takes room"})
		}
	}
	if l.Len() > 0 {
		return Drawn{}, l.Err()
	}
	v := d.Efficiency.Value() * d.Swept.CubicMetres() * d.Speed.RevolutionsPerSecond() / 2
	per := 1 / d.Air.KilogramsPerCubicMetre()
	if d.Vapour > 0 {
		per += 1 / (d.Mixture.Value() * d.Vapour.KilogramsPerCubicMetre())
	}
	out := Drawn{Volume: units.CubicMetresPerSecond(v), Air: units.KilogramsPerSecond(v / per)}
	if d.Mixture > 0 {
		out.Fuel = out.Air.Times(1 / d.Mixture.Value())
	}
	return out, nil
}

// EfficiencyFrom returns the volumetric efficiency that a measured flow of air
// shows: flow/(rho swept speed/2). d's own Efficiency, Vapour and Mixture are
// not used. Errors: a field outside its range, a flow that is not above zero.
func (d Intake) EfficiencyFrom(air units.MassFlow) (units.Ratio, error) {
	d.Efficiency, d.Vapour, d.Mixture = 1, 0, 0
	full, err := d.Flow()
	var l fault.List
	l.Under("", err)
	positive(&l, "flow", air, units.KilogramsPerSecond(1e-9), units.KilogramsPerSecond(100))
	if l.Len() > 0 {
		return 0, l.Err()
	}
	return units.Value(air.Ratio(full.Air)), nil
}

// AirSpeed returns the mean speed of a flow through an area: m/(rho A). Over
// the suction stroke alone, one cylinder draws at four times its cycle mean:
// the two must not be mixed. Errors: a flow outside 0 to 10,000 kg/s, a density
// outside 0.01 to 100 kg/m³, an area outside 0.001 mm² to 1 m².
func AirSpeed(flow units.MassFlow, density units.Density, area units.Area) (units.Speed, error) {
	var l fault.List
	positive(&l, "flow", flow, 0, units.KilogramsPerSecond(1e4))
	positive(&l, "density", density, units.KilogramsPerCubicMetre(0.01), units.KilogramsPerCubicMetre(100))
	positive(&l, "area", area, units.SquareMetres(1e-9), units.SquareMetres(1))
	if l.Len() > 0 {
		return 0, l.Err()
	}
	return units.MetresPerSecond(flow.KilogramsPerSecond() / (density.KilogramsPerCubicMetre() * area.SquareMetres())), nil
}

// positive notes a fault unless low <= q <= high.
func positive[Q units.Quantity](l *fault.List, path string, q, low, high Q) {
	if v := q.SI(); !(v >= low.SI() && v <= high.SI()) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: path, Value: q.String(), Rule: low.String() + " to " + high.String()})
	}
}

// CircleArea returns the area of a round hole: pi/4 d². A diameter below zero
// gives an area below zero, which whatever takes an area refuses.
func CircleArea(diameter units.Length) units.Area {
	d := diameter.Metres()
	return units.SquareMetres(math.Pi / 4 * d * math.Abs(d))
}

// CircleDiameter returns the diameter of a round hole of an area:
// sqrt(4 area/pi). Errors: an area outside 0 to 1 million square metres.
func CircleDiameter(area units.Area) (units.Length, error) {
	var l fault.List
	positive(&l, "area", area, 0, units.SquareMetres(1e6))
	if l.Len() > 0 {
		return 0, l.Err()
	}
	return circleDiameter(area), nil
}

func circleDiameter(area units.Area) units.Length {
	return units.Metres(math.Sqrt(area.SquareMetres() * 4 / math.Pi))
}

// ChokeDiameter returns the diameter of a choke that leaves an area open round
// a tube in its middle whose diameter is a share of the choke's: area =
// pi/4 d² (1 - share²). Errors: a share outside 0 to 0.99, an area outside 0 to
// 1 million square metres.
func ChokeDiameter(area units.Area, tubeShare float64) (units.Length, error) {
	var l fault.List
	positive(&l, "area", area, 0, units.SquareMetres(1e6))
	positive(&l, "tube_share", units.Value(tubeShare), 0, 0.99)
	if l.Len() > 0 {
		return 0, l.Err()
	}
	return circleDiameter(area.Times(1 / (1 - tubeShare*tubeShare))), nil
}
