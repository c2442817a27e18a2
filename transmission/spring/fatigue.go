package spring

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// FatigueStrength is what a wire stands in torsion.
type FatigueStrength struct {
	Pulsating units.Pressure `json:"pulsating"` // S'se, for a stress that comes and goes from zero
	Yield     units.Pressure `json:"yield"`     // Ssy
}

// PatentedWire returns the shares of tensile strength that Indian textbooks take
// for patented and cold drawn wire: 0.22 pulsating, 0.45 at yield (Sadhu Singh,
// Machine Design, ex. 8.2).
func PatentedWire(tensile units.Pressure) FatigueStrength {
	return FatigueStrength{tensile.Times(0.22), tensile.Times(0.45)}
}

// FatigueMargin is a spring's margin under a load that goes between two values.
type FatigueMargin struct {
	Mean      units.Pressure `json:"mean"`      // of the mean load, direct-shear factor
	Amplitude units.Pressure `json:"amplitude"` // of the half range, Wahl factor
	Safety    float64        `json:"safety"`    // below 1: breaks in time
	Basis     refdata.Basis  `json:"basis"`
}

// Fatigue returns the margin of wire d coiled to mean diameter D under a load
// between low and high:
// 1/safety = τm/Ssy + τa/S'se (2 - S'se/Ssy), with the direct-shear factor on
// the mean and Wahl's on the amplitude (Sadhu Singh, Machine Design, ex. 8.2).
// Errors: figures not above zero, low below zero or not below high, a pulsating
// strength above twice the yield.
func Fatigue(low, high units.Force, d, mean units.Length, w FatigueStrength) (FatigueMargin, error) {
	var l fault.List
	checkLoads(&l, low, high)
	checkCoil(&l, d, mean)
	w.check(&l)
	if err := l.Err(); err != nil {
		return FatigueMargin{}, err
	}
	c := mean.Ratio(d)
	tm := DirectShear.at(c) * torsion((low+high).Newtons()/2, d.Millimetres(), mean.Millimetres())
	ta := Wahl.at(c) * torsion((high-low).Newtons()/2, d.Millimetres(), mean.Millimetres())
	return FatigueMargin{units.Megapascals(tm), units.Megapascals(ta), 1 / w.used(tm, ta), refdata.Basis{
		Sources:    []refdata.Source{{Title: "Sadhu Singh, Machine Design", Clause: "ex. 8.2: spring under a load that comes and goes", Status: refdata.Published}},
		NotChecked: []refdata.Unchecked{{What: "pits, rust and nicks", Why: "the wire is taken as sound", Settle: "clean it and look along each coil with a glass"}},
		Cautions:   []refdata.Caution{refdata.SpringsUnderLoad},
	}}, nil
}

// WireForFatigue returns the wire diameter of a spring of index D/d that has the
// given safety under a load between low and high, by the rule of [Fatigue]
// (Sadhu Singh, Machine Design, ex. 8.10). Errors as there.
func WireForFatigue(low, high units.Force, index, safety float64, w FatigueStrength) (units.Length, error) {
	var l fault.List
	checkLoads(&l, low, high)
	checkIndex(&l, "index", index)
	within(&l, "safety", safety, 0.1, 100)
	w.check(&l)
	if err := l.Err(); err != nil {
		return 0, err
	}
	// stresses at a wire of 1 mm fall as 1/d² at fixed index
	tm := DirectShear.at(index) * torsion((low+high).Newtons()/2, 1, index)
	ta := Wahl.at(index) * torsion((high-low).Newtons()/2, 1, index)
	return units.Millimetres(math.Sqrt(safety * w.used(tm, ta))), nil
}

// used is the share of strength used up by the stresses, in MPa.
func (w FatigueStrength) used(mean, amplitude float64) float64 {
	return mean/w.Yield.Megapascals() + amplitude/w.Pulsating.Megapascals()*(2-w.Pulsating.Ratio(w.Yield))
}

func (w FatigueStrength) check(l *fault.List) {
	a, b := positive(l, "strength.pulsating", w.Pulsating), positive(l, "strength.yield", w.Yield)
	if a && b && w.Pulsating >= w.Yield.Times(2) {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "strength.pulsating", Value: w.Pulsating.String(), Unit: "MPa", Rule: "must be below twice the yield"})
	}
}

func checkLoads(l *fault.List, low, high units.Force) {
	if notNegative(l, "low", low) && positive(l, "high", high) && !(low < high) {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "low", Value: low.String(), Unit: "N", Rule: "must be below the high load"})
	}
}
