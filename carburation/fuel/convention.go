package fuel

import (
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Convention is how a book counts: its atomic masses and its air. The zero
// value takes today's figures; the fields are there to follow a source to its
// last digit, since books differ by up to one per cent.
type Convention struct {
	WholeMasses    bool        // atomic masses 12, 1, 16, 14, 32; default 12.011, 1.008, 15.999, 14.007, 32.06
	OxygenByVolume units.Ratio // oxygen in dry air; 0 takes 0.20946 and 28.9647 g/mol for air
	OxygenByMass   units.Ratio // oxygen in dry air, the rest nitrogen; 0 leaves OxygenByVolume to decide
	GasConstant    float64     // J/(kmol K); 0 takes 8314.462618
}

// NitrogenPerOxygen is a Convention of whole atomic masses with n molecules of
// nitrogen to one of oxygen, 3.76 in most books.
func NitrogenPerOxygen(n float64) Convention {
	return Convention{WholeMasses: true, OxygenByVolume: units.Value(1 / (1 + n))}
}

type masses struct{ c, h, o, n, s float64 } // g/mol

func (v Convention) masses() masses {
	if v.WholeMasses {
		return masses{12, 1, 16, 14, 32}
	}
	// IUPAC abridged standard atomic weights, from memory.
	return masses{12.011, 1.008, 15.999, 14.007, 32.06}
}

// airPerOxygen returns grams of air and moles of air that hold one mole of O2,
// and the molar mass of what is not oxygen.
func (v Convention) airPerOxygen() (grams, moles, inert float64) {
	m := v.masses()
	if y := v.OxygenByMass.Value(); y > 0 {
		grams = 2 * m.o / y
		inert = 2 * m.n
		return grams, 1 + (grams-2*m.o)/inert, inert
	}
	x, whole := v.OxygenByVolume.Value(), 0.0
	if x == 0 {
		x = 0.20946
		if !v.WholeMasses {
			whole = 28.9647 // with argon and carbon dioxide: ISO 2533:1975 table 2, rounded
		}
	}
	moles = 1 / x
	if whole > 0 {
		grams = whole * moles
		return grams, moles, (grams - 2*m.o) / (moles - 1)
	}
	inert = 2 * m.n
	return 2*m.o + (moles-1)*inert, moles, inert
}

func (v Convention) gas() float64 {
	if v.GasConstant == 0 {
		return 8314.462618
	}
	return v.GasConstant
}

func (v Convention) faults(l *fault.List) {
	for _, p := range []struct {
		path  string
		share units.Ratio
	}{{"convention.oxygen_by_volume", v.OxygenByVolume}, {"convention.oxygen_by_mass", v.OxygenByMass}} {
		if x := p.share.Value(); x != 0 && !(x >= 0.15 && x <= 0.35) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: p.path, Value: p.share.String(), Rule: "0.15 to 0.35, or 0 for the default"})
		}
	}
	if !(v.gas() > 8000 && v.gas() < 8600) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "convention.gas_constant", Rule: "about 8314 J/(kmol K), or 0 for the default"})
	}
}
