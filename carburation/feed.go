package carburation

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Feed is the way of the fuel from tank to float chamber.
type Feed struct {
	// Need is what the engine burns at full throttle, as Start's Demand has it.
	Need units.VolumeFlow
	// Timed is what came out of the pipe at the carburettor in a minute or so,
	// tank low and cap shut. It settles the question where it was taken.
	Timed measure.Reading[units.VolumeFlow]
	// Head is the height of the fuel in the tank over the float valve, reserve
	// level. Used with the bores where nothing was timed.
	Head measure.Reading[units.Length]
	Tap  measure.Reading[units.Length] // smallest bore of tap and pipe
	Seat measure.Reading[units.Length] // bore of the float valve's seat
}

// FeedVerdict says whether the fuel keeps up.
type FeedVerdict struct {
	Flow     measure.Reading[units.VolumeFlow] `json:"flow"`               // that the way passes
	Reserve  float64                           `json:"reserve"`            // flow over need
	Enough   bool                              `json:"enough"`             // more likely than not twice the need (common practice)
	Starving bool                              `json:"starving"`           // more likely than not less than the need itself
	Chance   float64                           `json:"chance"`             // of twice the need, 0 to 1
	Narrow   string                            `json:"narrow"`             // "tap" or "seat", where bores decide
	NoAnswer fault.Reason                      `json:"no_answer,omitzero"` // code "nothing-read"
	Basis    refdata.Basis                     `json:"basis"`
}

// FuelFeed sets what tap, pipe and float seat pass against the need:
//
//	Q = CA sqrt(2 g h), 1/(CA)² = 1/(Cd A tap)² + 1/(Cd A seat)², Cd 0.65 ± 0.05
//
// or what was timed. Twice the need on reserve is asked for (common practice).
// Errors: a need outside, readings that cannot be.
func FuelFeed(f Feed) (FeedVerdict, error) {
	var l fault.List
	positive(&l, "need", f.Need, units.CubicCentimetresPerMinute(1), units.CubicCentimetresPerMinute(5000))
	if f.Timed.Taken() {
		l.Under("timed", f.Timed.Err())
		positive(&l, "timed", f.Timed.Value(), 0, units.CubicCentimetresPerMinute(20000))
	}
	for _, x := range []struct {
		path      string
		r         measure.Reading[units.Length]
		low, high units.Length
	}{{"head", f.Head, units.Millimetres(1), units.Metres(3)}, {"tap", f.Tap, units.Millimetres(0.3), units.Millimetres(20)}, {"seat", f.Seat, units.Millimetres(0.3), units.Millimetres(10)}} {
		if x.r.Taken() {
			l.Under(x.path, x.r.Err())
			positive(&l, x.path, x.r.Value(), x.low, x.high)
		}
	}
	if l.Len() > 0 {
		return FeedVerdict{}, l.Err()
	}
	v := FeedVerdict{Basis: refdata.Basis{
		Sources:  []refdata.Source{refdata.Practice(), {Title: "outflow under a head, any hydraulics text", Status: refdata.Derived}},
		Cautions: []refdata.Caution{refdata.PetrolVapour, refdata.DeferToManual},
	}}
	settle := refdata.Unchecked{What: "flow at the carburettor", Why: "not timed: a filter, a kinked pipe or a shut cap vent is not in the bores", Settle: "time 500 cc out of the pipe, tank low, cap shut, away from any flame"}
	switch {
	case f.Timed.Taken():
		v.Flow = f.Timed
	case f.Head.Taken() && (f.Tap.Taken() || f.Seat.Taken()):
		area := func(d float64) float64 { return math.Pi / 4 * d * d }
		in := []measure.Input{f.Head.SI(), {X: 0.65, U: 0.05}, {X: 1e3}, {X: 1e3}} // a bore not read is taken as wide open
		if f.Tap.Taken() {
			in[2] = f.Tap.SI()
		}
		if f.Seat.Taken() {
			in[3] = f.Seat.SI()
		}
		r, err := measure.Propagate[units.VolumeFlow](func(x []float64) float64 {
			a, b := area(x[2]), area(x[3])
			return x[1] / math.Sqrt(1/(a*a)+1/(b*b)) * math.Sqrt(2*standardGravity*math.Max(0, x[0]))
		}, in...)
		if err != nil {
			return FeedVerdict{}, err
		}
		v.Flow = r
		v.Narrow = "seat"
		if in[2].X < in[3].X {
			v.Narrow = "tap"
		}
		v.Basis.Assumed = append(v.Basis.Assumed, refdata.Assumption{What: "discharge coefficient of tap and seat", Value: "0.65 ± 0.05", Status: refdata.FromMemory})
		v.Basis.NotChecked = append(v.Basis.NotChecked, settle)
	default:
		v.NoAnswer = fault.Reason{Code: "nothing-read", Text: "neither a timed flow nor a head with a bore was read"}
		v.Basis.NotChecked = append(v.Basis.NotChecked, settle)
		return v, nil
	}
	q := v.Flow.SI()
	need := f.Need.CubicMetresPerSecond()
	v.Reserve = q.X / need
	if q.U > 0 {
		v.Chance = normal((q.X - 2*need) / q.U)
	} else {
		v.Chance = step(q.X - 2*need)
	}
	v.Enough, v.Starving = v.Reserve >= 2, v.Reserve < 1
	return v, nil
}

// Float is a float chamber.
type Float struct {
	Area      units.Area   // of the float at the fuel's surface
	Submerged units.Volume // of the float under the surface, valve shut, in the first fuel
}

// LevelShift returns how much a denser fuel lowers the level at which the float
// shuts its valve, and what that does to lip and mixture: V (1 - rho1/rho2)/A,
// positive for a lower level. Errors: figures outside.
func (f Float) LevelShift(from, to units.Density) (units.Length, error) {
	var l fault.List
	positive(&l, "area", f.Area, units.SquareMillimetres(20), units.SquareMillimetres(10000))
	positive(&l, "submerged", f.Submerged, units.CubicMillimetres(10), units.CubicCentimetres(200))
	positive(&l, "from", from, units.KilogramsPerCubicMetre(400), units.KilogramsPerCubicMetre(1300))
	positive(&l, "to", to, units.KilogramsPerCubicMetre(400), units.KilogramsPerCubicMetre(1300))
	if l.Len() > 0 {
		return 0, l.Err()
	}
	return units.Metres(f.Submerged.CubicMetres() * (1 - from.Ratio(to)) / f.Area.SquareMetres()), nil
}

// LevelEffect returns what a change of fuel level does to the fuel a suction
// draws, as a factor: sqrt((dp - rho g (z - dz))/(dp - rho g z)), dz upwards. It
// matters at a few hundred pascals, at tick-over and an eighth of lift, and is
// under one per cent at full throttle (H. B. Keswani, Internal Combustion
// Engines, 4th ed. 2003, example 9.8). Errors: figures outside, a suction that
// does not lift fuel over the lip at either level.
func LevelEffect(suction units.Pressure, fuel units.Density, lip, rise units.Length) (float64, error) {
	var l fault.List
	positive(&l, "suction", suction, units.Pascals(1), units.Kilopascals(100))
	positive(&l, "fuel", fuel, units.KilogramsPerCubicMetre(400), units.KilogramsPerCubicMetre(2000))
	positive(&l, "lip", lip, units.Millimetres(-50), units.Millimetres(100))
	positive(&l, "rise", rise, units.Millimetres(-50), units.Millimetres(50))
	before := Orifice{Lip: lip}.lip(fuel)
	after := Orifice{Lip: lip - rise}.lip(fuel)
	if l.Len() == 0 && !(suction > before && suction > after) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "suction", Value: suction.String(), Unit: "Pa", Rule: "above what lifts fuel over the lip at both levels"})
	}
	if l.Len() > 0 {
		return 0, l.Err()
	}
	return math.Sqrt((suction - after).Ratio(suction - before)), nil
}
