package fuel

import (
	"math"
	"strconv"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Part is one fuel of a blend and its share, of volume or of mass.
type Part struct {
	Fuel  Fuel
	Share units.Ratio
}

// BlendByVolume returns a blend by shares of volume measured at 15 °C before
// mixing. Volumes add ideally: density is the mean by volume; all else is the
// mean by mass, viscosity by its logarithm. Shares must add up to 1 within
// 0.001. Errors: no part, a share outside 0 to 1, a sum outside, a part that is
// no fuel.
func BlendByVolume(parts ...Part) (Fuel, error) {
	if err := checkParts(parts); err != nil {
		return Fuel{}, err
	}
	by := make([]float64, len(parts))
	var total float64
	for i, p := range parts {
		d, err := p.Fuel.DensityAt(units.Celsius(15))
		if err != nil {
			return Fuel{}, err
		}
		by[i] = p.Share.Value() * d.KilogramsPerCubicMetre()
		total += by[i]
	}
	for i := range by {
		by[i] /= total
	}
	return blend(parts, by)
}

// BlendByMass is BlendByVolume with shares of mass.
func BlendByMass(parts ...Part) (Fuel, error) {
	if err := checkParts(parts); err != nil {
		return Fuel{}, err
	}
	by := make([]float64, len(parts))
	for i, p := range parts {
		by[i] = p.Share.Value()
	}
	return blend(parts, by)
}

func checkParts(parts []Part) error {
	var l fault.List
	if len(parts) == 0 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "parts", Rule: "at least one fuel"})
	}
	var sum float64
	for i, p := range parts {
		path := "parts[" + strconv.Itoa(i) + "]"
		if v := p.Share.Value(); !(v >= 0 && v <= 1) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: path + ".share", Value: p.Share.String(), Rule: "0 to 1"})
		}
		l.Under(path+".fuel", p.Fuel.Err())
		sum += p.Share.Value()
	}
	if l.Len() == 0 && !(math.Abs(sum-1) <= 0.001) {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "parts", Value: strconv.FormatFloat(sum, 'g', 6, 64), Rule: "shares that add up to 1 within 0.001"})
	}
	return l.Err()
}

func blend(parts []Part, mass []float64) (Fuel, error) {
	var b Fuel
	var volume, swell, afr, heat, latent, logNu float64
	var c [5]float64
	known := true
	for i, p := range parts {
		f, m := p.Fuel, mass[i]
		if m == 0 {
			continue
		}
		d, err := f.DensityAt(units.Celsius(15))
		if err != nil {
			return Fuel{}, err
		}
		v := m / d.KilogramsPerCubicMetre()
		volume += v
		swell += v * f.ExpansionPerKelvin
		afr += m * f.AFR.Value()
		heat += m * f.HeatingValue.JoulesPerKilogram()
		latent += m * f.LatentHeat.JoulesPerKilogram()
		if f.Viscosity > 0 {
			logNu += m * math.Log(f.Viscosity.SquareMetresPerSecond())
		} else {
			known = false
		}
		for j, x := range [5]units.Ratio{f.Composition.Carbon, f.Composition.Hydrogen, f.Composition.Oxygen, f.Composition.Nitrogen, f.Composition.Sulphur} {
			c[j] += m * x.Value()
		}
		if b.Name != "" {
			b.Name += ", "
		}
		b.Name += p.Share.In(units.Percent, 1) + " " + f.Name
		for _, x := range f.Sources {
			b.Sources = addSource(b.Sources, x)
		}
	}
	b.Key = "blend"
	b.Composition = Composition{units.Value(c[0]), units.Value(c[1]), units.Value(c[2]), units.Value(c[3]), units.Value(c[4])}
	b.AFR = units.Value(afr)
	b.Density, b.DensityTemperature = units.KilogramsPerCubicMetre(1/volume), units.Celsius(15)
	b.ExpansionPerKelvin = swell / volume
	b.HeatingValue, b.LatentHeat = units.JoulesPerKilogram(heat), units.JoulesPerKilogram(latent)
	if known {
		b.Viscosity = units.SquareMetresPerSecond(math.Exp(logNu))
	}
	b.Sources = append(b.Sources, refdata.Source{Title: "ideal mixing of the parts", Status: refdata.Derived})
	return b, nil
}

// Portion is a formula and how many molecules of it, for MixMoles.
type Portion struct {
	Formula Formula
	Moles   float64
}

// MixMoles returns the mean molecule of a blend by moles: heptane 0.4 and
// octane 0.6 give C7.6H17.2. Moles are above zero and need not add up to 1. The
// error names a portion outside 0 to 1e6 moles or a formula that is none.
func MixMoles(portions ...Portion) (Formula, error) {
	var l fault.List
	var sum Formula
	var n float64
	if len(portions) == 0 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "portions", Rule: "at least one formula"})
	}
	for i, p := range portions {
		path := "portions[" + strconv.Itoa(i) + "]"
		if !(p.Moles > 0 && p.Moles <= 1e6) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: path + ".moles", Value: strconv.FormatFloat(p.Moles, 'g', 6, 64), Rule: "above 0, to 1e6"})
		}
		l.Under(path, p.Formula.err())
		n += p.Moles
		sum.C += p.Moles * p.Formula.C
		sum.H += p.Moles * p.Formula.H
		sum.O += p.Moles * p.Formula.O
		sum.N += p.Moles * p.Formula.N
		sum.S += p.Moles * p.Formula.S
	}
	if l.Len() > 0 {
		return Formula{}, l.Err()
	}
	return Formula{sum.C / n, sum.H / n, sum.O / n, sum.N / n, sum.S / n}, nil
}
