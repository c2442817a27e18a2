package transmission

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// LiningFriction returns the coefficient of friction of a lining material
// ("moulded", "woven", "cork", "paper") in a condition ("dry" or "oil") from the
// books in refdata, as a reading: the middle of their range with half its width
// over the root of three (GUM 4.3.7, every figure of a range alike likely), and
// at least a tenth of itself, since no book knows this lining. Errors: a
// material the tables do not have in that condition.
func LiningFriction(material, condition string) (measure.Reading[units.Ratio], []refdata.Source, error) {
	r, from, ok := refdata.Friction(material, condition)
	if !ok {
		return measure.Reading[units.Ratio]{}, nil, fault.Fault{Code: fault.UnknownName, Path: "material", Value: material + ", " + condition, Rule: "must be a lining in the table of friction materials, dry or oil"}
	}
	mid := (r.Low + r.High).Times(0.5)
	u := (r.High - r.Low).Times(0.5 / math.Sqrt(3))
	return measure.Of(mid, max(u, mid.Times(0.1))), from, nil
}

// CableEfficiency returns tension at the far end over tension at the lever for a
// cable whose outer bends through the given angle in all, 0 to 720°, with the
// given friction of inner in outer, 0 to 0.6: e to the power -mu theta, the law of
// the capstan (T. Bevan, The Theory of Machines, belts and ropes; from memory,
// 0.1 to 0.2 for a greased steel inner in a steel outer). Errors: a figure
// outside its range, no friction or bend taken.
func CableEfficiency(friction measure.Reading[units.Ratio], bends measure.Reading[units.Angle]) (measure.Reading[units.Ratio], error) {
	var l fault.List
	if f, ok, err := ratio(&friction); !ok {
		l.Add(fault.Fault{Code: fault.Missing, Path: "friction", Rule: "is needed"})
	} else if l.Under("friction", err) && !(f.x >= 0 && f.x <= 0.6) {
		l.Add(outside("friction", f.x, "", 0, 0.6))
	}
	if f, ok, err := turned(&bends); !ok {
		l.Add(fault.Fault{Code: fault.Missing, Path: "bends", Rule: "is needed"})
	} else if l.Under("bends", err) && !(f.x >= 0 && f.x <= 2) {
		l.Add(outside("bends", f.x*360, "°", 0, 720))
	}
	if err := l.Err(); err != nil {
		return measure.Reading[units.Ratio]{}, err
	}
	return measure.Propagate[units.Ratio](func(x []float64) float64 { return math.Exp(-x[0] * x[1]) }, friction.SI(), bends.SI())
}

// ScrewEfficiency returns work out over work in of a quick thread or a plain
// ramp driving the rod: tan h / tan(h + arctan mu), h the lead angle, tan h = lead /
// (pi d), square thread. Lead 0.5 to 300 mm, mean diameter d 3 to 200 mm,
// friction 0 to 0.6. Source: textbooks of machine design, power screws, from
// memory. Errors: figures missing or outside their range, and a screw so steep
// that it will not drive.
func ScrewEfficiency(lead, diameter units.Length, friction units.Ratio) (units.Ratio, error) {
	var l fault.List
	need(&l, "lead", lead.Millimetres(), "mm", 0.5, 300)
	need(&l, "diameter", diameter.Millimetres(), "mm", 3, 200)
	if f := friction.Value(); !(f >= 0 && f <= 0.6) {
		l.Add(outside("friction", f, "", 0, 0.6))
	}
	h := math.Atan2(lead.Millimetres(), math.Pi*diameter.Millimetres())
	turn := h + math.Atan(friction.Value())
	if l.Len() == 0 && turn >= math.Pi/2 {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "lead", Value: lead.String(), Rule: "must be less for this diameter and friction: so steep a thread does not drive the rod"})
	}
	if err := l.Err(); err != nil {
		return 0, err
	}
	return units.Value(math.Tan(h) / math.Tan(turn)), nil
}
