package carburation

import (
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Jet is a fuel jet as it is marked or measured. What a bare number on a jet
// means depends on its maker: hundredths of a millimetre of bore, or cubic
// centimetres a minute under a head that was not published. It must be said,
// and is never guessed. The zero Jet was not read.
type Jet struct {
	bore measure.Reading[units.Length]
	flow measure.Reading[units.VolumeFlow]
	head measure.Reading[units.Length]
	text string
}

// BoreJet is a jet whose bore was measured or is marked on it: a jet numbered
// in hundredths of a millimetre, 110, has a bore of 1.10 mm.
func BoreJet(bore measure.Reading[units.Length]) Jet { return Jet{bore: bore} }

// FlowJet is a jet marked by what it passes. head is the height of fuel that
// the mark belongs to; not taken, the prior of Options.Head stands in for it.
func FlowJet(flow measure.Reading[units.VolumeFlow], head measure.Reading[units.Length]) Jet {
	return Jet{flow: flow, head: head}
}

// ReadJet reads "280 cc/min", "280 cc/min at 0.5 m", "1.10 mm", "bore 110"
// (hundredths of a millimetre) or "drill 57" (a number drill). Empty text, or
// "-", is a jet not read. A bare number is refused: the rule lists the choices.
func ReadJet(text string) (Jet, error) {
	return Jet{}, fault.Fault{Code: fault.BadForm, Path: "jet", Value: text, Rule: "not computed yet"}
}

// Taken reports whether the jet was read.
func (j Jet) Taken() bool { return j.bore.Taken() || j.flow.Taken() }

// Groove is the clip groove of a needle, counted from the blunt top end: a
// clip in a lower groove holds the needle higher, which is richer. The zero
// Groove was not read.
type Groove struct {
	FromTop int `json:"from_top"` // 1 is nearest the top
	Of      int `json:"of"`       // grooves in all
}

// Taken reports whether the groove was read.
func (g Groove) Taken() bool { return g != Groove{} }
