package air

import (
	"math"

	"example.com/benchbook/units/fault"
)

// Change is how one day's air differs from another's, as a carburettor feels
// it. All figures are now over then.
type Change struct {
	Density    float64 `json:"density"`
	DryDensity float64 `json:"dry_density"`
	Mixture    float64 `json:"mixture"`     // of the air/fuel ratio, jets left alone: below 1 is richer
	FlowFactor float64 `json:"flow_factor"` // for a jet's flow number, to keep the mixture
	BoreFactor float64 `json:"bore_factor"` // for a jet's bore, to keep the mixture
}

// Compare returns what a change of air does to the mixture. Air speed for a
// given engine speed stays, so suction goes with the density rho, fuel with its
// square root, and the air that burns with the dry density:
//
//	mixture = (rho_dry'/rho_dry)/sqrt(rho'/rho)
//
// and the flow a jet must pass changes alike, its bore by the square root of
// that. For dry air it is the rule of the square root of density (M. L. Mathur,
// R. P. Sharma, Internal Combustion Engine, 8th ed. 2010, example 11.7). It
// holds within 2 % or so: the compression of the air in the choke is left out.
// Errors are those of Moist, with "then" or "now" before the path.
func Compare(then, now Weather, opt Options) (Change, error) {
	var l fault.List
	a, errA := Moist(then, opt)
	b, errB := Moist(now, opt)
	l.Under("then", errA)
	l.Under("now", errB)
	if l.Len() > 0 {
		return Change{}, l.Err()
	}
	c := Change{Density: b.Density.Ratio(a.Density), DryDensity: b.DryDensity.Ratio(a.DryDensity)}
	c.Mixture = c.DryDensity / math.Sqrt(c.Density)
	c.FlowFactor = c.Mixture
	c.BoreFactor = math.Sqrt(c.FlowFactor)
	return c, nil
}
