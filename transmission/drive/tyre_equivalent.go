package drive

import (
	"cmp"
	"math"
	"slices"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Equivalent is a tyre of the table beside another.
type Equivalent struct {
	Tyre     Tyre         `json:"tyre"`
	Diameter float64      `json:"diameter"` // over the other's, less 1: gearing and speedometer change by as much
	Width    units.Length `json:"width"`    // wider than the other, below zero narrower
	SameRim  bool         `json:"same_rim"`

	Origin refdata.Origin `json:"origin"` // of the size, as the table has it
}

// Equivalents returns the tyres of the table that are within a share of this
// one's nominal diameter, the nearest first, those for the same rim before all
// others. Whether one fits the rim's width, the fork and the load is not looked
// at. Errors: no tyre, a share outside 0 to 0.2.
func (t Tyre) Equivalents(share float64) ([]Equivalent, error) {
	var l fault.List
	if t.kind == 0 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "tyre", Rule: "read a size with ParseTyre"})
	}
	within(&l, "within", share, 0, 0.2)
	if err := l.Err(); err != nil {
		return nil, err
	}
	var out []Equivalent
	for row := range refdata.Tyres().All() {
		o, err := ParseTyre(row.Code)
		if err != nil || o.kind == t.kind && o.width == t.width && o.rim == t.rim && o.aspect == t.aspect {
			continue
		}
		e := Equivalent{Tyre: o, Diameter: o.diameter/t.diameter - 1, Width: units.Millimetres(o.width - t.width), SameRim: math.Abs(o.rim-t.rim) < 1 && (o.kind == BeadedEdge) == (t.kind == BeadedEdge), Origin: row.CodeOrigin}
		if math.Abs(e.Diameter) <= share {
			out = append(out, e)
		}
	}
	slices.SortStableFunc(out, func(a, b Equivalent) int {
		if a.SameRim != b.SameRim {
			if a.SameRim {
				return -1
			}
			return 1
		}
		return cmp.Compare(math.Abs(a.Diameter), math.Abs(b.Diameter))
	})
	return out, nil
}
