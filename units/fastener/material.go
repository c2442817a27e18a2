package fastener

import (
	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Material is what a tapped hole or nut is made of, by its tensile strength as a
// range. The zero Material is unknown.
type Material struct {
	Name    string                           `json:"name"`
	Tensile measure.Interval[units.Pressure] `json:"tensile"`
	Status  refdata.Status                   `json:"status"`
}

// The strengths of the four that follow are from memory, wide on purpose: no
// certificate comes with a sixty-year-old casting.

// MildSteel is bright bar and plain nuts: 400 to 600 N/mm².
func MildSteel() Material { return material("mild steel", 400, 600) }

// CastIron is grey iron: 150 to 250 N/mm².
func CastIron() Material { return material("cast iron", 150, 250) }

// LightAlloy is sand-cast aluminium alloy of crankcases: 130 to 220 N/mm².
func LightAlloy() Material { return material("light alloy", 130, 220) }

// BrassStock is drawn brass: 330 to 450 N/mm².
func BrassStock() Material { return material("brass", 330, 450) }

func material(name string, low, high float64) Material {
	return Material{name, measure.Between(units.Megapascals(low), units.Megapascals(high)), refdata.FromMemory}
}

// MaterialOf returns a material of known tensile strength.
func MaterialOf(name string, tensile units.Pressure) Material {
	return Material{name, measure.Between(tensile, tensile), 0}
}

func (m Material) known() bool { return m.Tensile.Low > 0 }

func (m Material) check(path string, l *fault.List) {
	if m.Tensile.Low == 0 && m.Tensile.High == 0 {
		return
	}
	if !(m.Tensile.Low.SI() >= 1e3 && m.Tensile.High >= m.Tensile.Low && m.Tensile.High.SI() <= 3e9) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: path, Value: m.Tensile.String(), Unit: "N/mm²", Rule: "0.001 to 3000 N/mm², low end first"})
	}
}
