package checks_test

import (
	"math"
	"strconv"

	"example.com/benchbook/refdata/checks"
	"example.com/benchbook/units"
)

var unitRunners = map[string]runner{"unit-conversion": convert}

// convert finds the quantity that has both units of the case and reads the
// figure in one as the other.
func convert(r *run) {
	from, to := r.Inputs["from"], r.Expected["to"]
	if from.Unit == "°F difference" {
		from.Unit = "°F"
		convertAs[units.TemperatureDelta](r, from, to)
		return
	}
	for _, as := range []func(*run, checks.Figure, checks.Figure) bool{
		convertAs[units.Length], convertAs[units.Area], convertAs[units.Volume], convertAs[units.Angle], convertAs[units.Mass],
		convertAs[units.Force], convertAs[units.Torque], convertAs[units.Pressure], convertAs[units.SpringRate], convertAs[units.Speed],
		convertAs[units.RotationalSpeed], convertAs[units.Power], convertAs[units.Energy], convertAs[units.Temperature], convertAs[units.Density],
		convertAs[units.KinematicViscosity], convertAs[units.DynamicViscosity], convertAs[units.VolumeFlow], convertAs[units.MassFlow], convertAs[units.SpecificEnergy], convertAs[units.FuelConsumption],
	} {
		if as(r, from, to) {
			return
		}
	}
	r.leave("no quantity has both units", "to")
}

func convertAs[Q units.Quantity](r *run, from, to checks.Figure) bool {
	q, err := units.Parse[Q](strconv.FormatFloat(from.Value, 'g', -1, 64) + " " + from.Unit)
	if err != nil {
		return false
	}
	if _, err := units.Parse[Q]("1 " + to.Unit); err != nil {
		return false
	}
	want(r, "to", q)
	// and the printed figure must read as the given one, as near as its digits
	back, err := units.Parse[Q](to.Printed + " " + to.Unit)
	if err != nil {
		r.t.Error(err)
	}
	if d := math.Abs(back.SI() - q.SI()); d > (to.Tol.Rel+1e-15)*math.Abs(q.SI())+to.Tol.Abs {
		r.t.Errorf("%s %s reads as %v, not %v", to.Printed, to.Unit, back, q)
	}
	return true
}
