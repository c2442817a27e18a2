package fuel

import (
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Stoichiometry is the air that burns a fuel exactly.
type Stoichiometry struct {
	OxygenMoles float64     `json:"oxygen_moles"` // per molecule of the formula
	OxygenMass  units.Ratio `json:"oxygen_mass"`  // kg of oxygen per kg of fuel
	AFR         units.Ratio `json:"afr"`          // kg of dry air per kg of fuel
	CO2Mass     units.Ratio `json:"co2_mass"`     // kg of carbon dioxide per kg of fuel
}

// Lambda returns the excess-air ratio of an air/fuel ratio by mass: one over the
// other's AFR. Errors: either ratio outside 0.1 to 1000.
func (s Stoichiometry) Lambda(afr units.Ratio) (units.Ratio, error) {
	var l fault.List
	for _, r := range [...]struct {
		path  string
		value units.Ratio
	}{{"stoichiometry.afr", s.AFR}, {"afr", afr}} {
		if !(r.value >= 0.1 && r.value <= 1000) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: r.path, Value: r.value.String(), Rule: "0.1 to 1000, kg of air to a kg of fuel"})
		}
	}
	if err := l.Err(); err != nil {
		return 0, err
	}
	return units.Value(afr.Ratio(s.AFR)), nil
}

// Stoichiometric returns the dry air that burns a fuel exactly:
//
//	AFR = (c + h/4 + s - o/2) times the mass of air per mole of oxygen
//	      over the molar mass
//
// which by shares of mass is (8/3 C + 8 H + S - O)/0.232 or so. Nitrogen is
// carried through. Errors: an atom count outside 0 to 1000, nothing to burn, a
// convention outside its range.
func Stoichiometric(f Formula, conv Convention) (Stoichiometry, error) {
	var l fault.List
	conv.faults(&l)
	l.Under("", f.err())
	if l.Len() > 0 {
		return Stoichiometry{}, l.Err()
	}
	m, mass := conv.masses(), f.MolarMass(conv)
	grams, _, _ := conv.airPerOxygen()
	o2 := f.C + f.H/4 + f.S - f.O/2
	return Stoichiometry{OxygenMoles: o2, OxygenMass: units.Value(o2 * 2 * m.o / mass), AFR: units.Value(o2 * grams / mass),
		CO2Mass: units.Value(f.C * (m.c + 2*m.o) / mass)}, nil
}
