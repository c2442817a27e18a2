package cam

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Bedded is a taper whose faces have worn to each other by slipping.
type Bedded struct {
	Small    units.Length                   `json:"small"` // diameters at its ends
	Large    units.Length                   `json:"large"`
	Pressure units.Pressure                 `json:"pressure"` // the greatest, at the small end
	Turning  measure.Interval[units.Torque] `json:"turning"`  // while it slips round, the force kept on
	Basis    refdata.Basis                  `json:"basis"`
}

// Bedded returns how a taper bears that has slipped round under an axial force until
// its faces wore even: wear goes with pressure times radius, so that is the same all
// along. The pressure is greatest at the small end, 2 F/(pi d (D - d)), and the torque
// while it slips mu F (D + d)/(4 sin a) (Budynas & Nisbett, Shigley's Mechanical
// Engineering Design, 8th ed., cone clutches by uniform wear, read on a copy of the
// page; Khurmi & Gupta, Theory of Machines, example 10.31). Far more at the small end
// than the same force gives on fresh faces is why a slipped cam is lapped before it is
// pressed on again. Errors: as [Taper.Hold]; a length not above zero, a cone that runs
// out to a point.
func (t Taper) Bedded(push units.Force) (Bedded, error) {
	var l fault.List
	var b refdata.Basis
	a := t.half(&l)
	above(&l, "mean_diameter", t.MeanDiameter, "mm")
	above(&l, "length", t.Length, "mm")
	above(&l, "push", push, "N")
	mu := friction(&l, &b, t.Friction)
	if err := l.Err(); err != nil {
		return Bedded{}, err
	}
	grow := t.Length.Times(math.Tan(a)) // from the mean to the large end
	out := Bedded{Small: t.MeanDiameter - grow, Large: t.MeanDiameter + grow}
	if out.Small.SI() < tiniest {
		return Bedded{}, fault.Fault{Code: fault.Conflict, Path: "length", Value: t.Length.String(), Unit: "mm", Rule: "the cone runs out to a point"}
	}
	out.Pressure = units.Pascals(push.SI() / (math.Pi * out.Small.SI() * grow.SI()))
	torque := push.SI() * t.MeanDiameter.SI() / 2 / math.Sin(a)
	out.Turning = measure.Between(units.NewtonMetres(mu.Low.Value()*torque), units.NewtonMetres(mu.High.Value()*torque))
	b.Sources = []refdata.Source{
		{Title: "Budynas & Nisbett, Shigley's Mechanical Engineering Design, 8th ed.", Clause: "cone clutches, uniform wear", Read: "a copy of the page", Status: refdata.Published},
	}
	b.NotChecked = []refdata.Unchecked{{What: "that the faces have worn even", Why: "not seen", Settle: "marking blue after wiping both faces: an even print from end to end"}}
	b.Cautions = []refdata.Caution{refdata.RetainingNuts, refdata.DeferToManual}
	out.Basis = b
	return out, nil
}
