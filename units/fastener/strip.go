package fastener

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Engaged is a bolt in a nut or tapped hole of the same thread.
type Engaged struct {
	Thread Thread       `json:"thread"`
	Length units.Length `json:"length"` // of full thread engaged
	// BoltTensile is the least tensile strength of the bolt; zero: unknown.
	BoltTensile units.Pressure `json:"bolt_tensile"`
	// Hole is what the nut is made of; the zero Material: unknown.
	Hole Material `json:"hole"`
	// HoleMinor is the minor diameter of the nut as measured or drilled. Zero
	// means the largest the limits allow.
	HoleMinor units.Length `json:"hole_minor"`
	// The limits of size to reckon with, for worked examples that print them.
	// Zero means those of Thread.Limits at an engagement of one diameter, as parts
	// are made, or basic sizes where no rule is known.
	BoltEffectiveMin units.Length `json:"bolt_effective_min"`
	BoltMajorMin     units.Length `json:"bolt_major_min"`
	NutEffectiveMax  units.Length `json:"nut_effective_max"`
}

// Failure is what gives first.
type Failure uint8

// The failures. The zero value is not known.
const (
	BoltBreaks Failure = iota + 1
	BoltStrips
	HoleStrips
)

// String returns the failure in words.
func (f Failure) String() string {
	switch f {
	case BoltBreaks:
		return "the bolt breaks"
	case BoltStrips:
		return "the thread of the bolt strips"
	case HoleStrips:
		return "the thread of the hole strips"
	}
	return "not known"
}

// MarshalText returns the words of String.
func (f Failure) MarshalText() ([]byte, error) { return []byte(f.String()), nil }

// Stripping is what an engaged thread holds.
type Stripping struct {
	Engaged    Engaged    `json:"engaged"`
	StressArea units.Area `json:"stress_area"`
	BoltShear  units.Area `json:"bolt_shear"` // of the bolt's thread over the length, at the nut's minor diameter
	HoleShear  units.Area `json:"hole_shear"` // of the nut's thread over the length, at the bolt's outside diameter
	// Loads at which each gives; the shear strength taken as half the tensile.
	// Zero where the material is unknown. The range is that of the hole's material.
	BoltBreaks units.Force                   `json:"bolt_breaks"`
	BoltStrips units.Force                   `json:"bolt_strips"`
	HoleStrips measure.Interval[units.Force] `json:"hole_strips"`
	// First is what gives first with the hole at its weakest.
	First Failure `json:"first"`
	// Relative is J, the strength of the bolt's thread over that of the hole's;
	// above 1 the hole is the weaker. At the hole's weakest and strongest.
	Relative measure.Interval[units.Ratio] `json:"relative"`
	// Least is the length of full thread at which the bolt breaks before either
	// thread strips, for the hole at its strongest and weakest.
	Least  measure.Interval[units.Length] `json:"least"`
	Reason fault.Reason                   `json:"reason"` // why First and Least are not known
	Basis  refdata.Basis                  `json:"basis"`
}

// Strip returns what an engaged thread holds, what gives first, and the length
// that would make the bolt break before a thread strips:
//
//	A_bolt = pi n L K [1/(2n) + tan a (E_b - K)]     K the largest minor diameter of the nut
//	A_hole = pi n L D [1/(2n) + tan a (D - E_n)]     D the smallest outside diameter of the bolt
//	L_e    = 2 A_t / (pi K [1/2 + n tan a (E_b - K)]), times J = (A_bolt R_bolt)/(A_hole R_hole) if that is above 1
//
// with n threads per unit length, a the flank angle, E_b and E_n the smallest and
// largest effective diameters of bolt and nut. Sources: L_e and J, FED-STD-H28
// and Machinery's Handbook, 24th ed.; the two areas from memory, consistent with
// L_e. For rounded crests it is an approximation. Full thread across the length
// is supposed: worn, rusted or drilled-out thread holds less. Faults: no thread,
// a length not above 0 and up to 10 diameters, a hole outside the thread, a
// strength out of range.
func Strip(e Engaged) (Stripping, error) {
	var l fault.List
	if e.Thread.IsZero() {
		l.Add(noThread("thread"))
		return Stripping{}, l.Err()
	}
	t, s := e.Thread, e.Thread.section()
	d := t.major.Millimetres()
	if !(e.Length > 0 && e.Length <= t.major.Times(10)) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "length", Value: e.Length.String(), Unit: "mm", Rule: "above 0, up to ten diameters"})
	}
	if !(e.BoltTensile >= 0 && e.BoltTensile.SI() <= 3e9) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "bolt_tensile", Value: e.BoltTensile.String(), Unit: "N/mm²", Rule: "0 to 3000 N/mm²"})
	}
	e.Hole.check("hole", &l)
	tol, known := t.tolerances(d)
	// every diameter lies between the minor of the bolt and a little over the outside
	pick := func(path string, given units.Length, def float64) float64 {
		if given == 0 {
			return def
		}
		x := given.Millimetres()
		if !(x > s.bolt && x <= d+s.h) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: path, Value: given.String(), Unit: "mm", Rule: "between the minor and the outside diameter of the thread"})
		}
		return x
	}
	k := pick("hole_minor", e.HoleMinor, s.inner+nutMinorTolerance(&t))
	eb := pick("bolt_effective_min", e.BoltEffectiveMin, s.effective-tol.allowance-tol.boltE)
	dm := pick("bolt_major_min", e.BoltMajorMin, d-tol.allowance-tol.major)
	en := pick("nut_effective_max", e.NutEffectiveMax, s.effective+tol.nutE)
	if e.HoleMinor > 0 && k >= dm {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "hole_minor", Value: e.HoleMinor.String(), Unit: "mm", Rule: "smaller than the bolt, or nothing engages"})
	}
	if err := l.Err(); err != nil {
		return Stripping{}, err
	}
	p, tan, length := t.pitch.Millimetres(), t.form.tan(), e.Length.Millimetres()
	perBolt := math.Pi * k * (0.5 + tan*(eb-k)/p) // mm² a mm
	perHole := math.Pi * dm * (0.5 + tan*(dm-en)/p)
	// a hole drilled far out leaves the bolt's ridge narrower than its flank
	// line says only at the very crest; never less than nothing
	perBolt, perHole = max(perBolt, 0), max(perHole, 0)
	out := Stripping{
		Engaged: e, StressArea: units.SquareMillimetres(s.area),
		BoltShear: units.SquareMillimetres(perBolt * length), HoleShear: units.SquareMillimetres(perHole * length),
	}
	out.Basis = stripBasis(e, known)
	out.Basis.Sources = owned(out.Basis.Sources, t)
	out.BoltBreaks = units.Newtons(e.BoltTensile.SI() * s.area * 1e-6)
	out.BoltStrips = units.Newtons(0.5 * e.BoltTensile.SI() * perBolt * length * 1e-6)
	out.HoleStrips = measure.Between(units.Newtons(0.5*e.Hole.Tensile.Low.SI()*perHole*length*1e-6), units.Newtons(0.5*e.Hole.Tensile.High.SI()*perHole*length*1e-6))
	switch {
	case e.BoltTensile == 0:
		out.Reason = fault.Reason{Code: "grade-unknown", Text: "the strength of the bolt is not known"}
		return out, nil
	case !e.Hole.known():
		out.Reason = fault.Reason{Code: "material-unknown", Text: "what the hole is made of is not known"}
		return out, nil
	case perBolt == 0 || perHole == 0:
		out.Reason = fault.Reason{Code: "nothing-engaged", Text: "hardly any thread is left in engagement"}
		return out, nil
	}
	j := func(tensile units.Pressure) float64 { return perBolt * e.BoltTensile.SI() / (perHole * tensile.SI()) }
	least := func(j float64) units.Length { return units.Millimetres(2 * s.area / perBolt * max(j, 1)) }
	weak, strong := j(e.Hole.Tensile.Low), j(e.Hole.Tensile.High)
	out.Relative = measure.Between(units.Value(strong), units.Value(weak))
	out.Least = measure.Between(least(strong), least(weak))
	switch {
	case out.BoltBreaks <= min(out.BoltStrips, out.HoleStrips.Low):
		out.First = BoltBreaks
	case out.BoltStrips <= out.HoleStrips.Low:
		out.First = BoltStrips
	default:
		out.First = HoleStrips
	}
	return out, nil
}

func stripBasis(e Engaged, known bool) refdata.Basis {
	b := refdata.Basis{
		Sources: []refdata.Source{
			{Title: "FED-STD-H28, Screw-thread standards for federal services", Clause: "length of engagement", Status: refdata.Published},
			{Title: "Machinery's Handbook, 24th ed.", Clause: "length of engagement, relative strength J", Status: refdata.Published},
		},
		Assumed:  []refdata.Assumption{{What: "shear strength over tensile", Value: "0.5", Status: refdata.Published}},
		Cautions: []refdata.Caution{refdata.OldBolts},
	}
	b.NotChecked = []refdata.Unchecked{{What: "state of the threads", Why: "full, sound thread is supposed", Settle: "look down the hole; try a thread gauge or a new bolt for shake"}}
	switch {
	case !known:
		b.Assumed = append(b.Assumed, refdata.Assumption{What: "limits of size", Value: "basic sizes, nut minor diameter a quarter pitch over", Status: refdata.FromMemory})
	case e.BoltEffectiveMin == 0 || e.BoltMajorMin == 0 || e.NutEffectiveMax == 0 || e.HoleMinor == 0:
		b.Assumed = append(b.Assumed, refdata.Assumption{What: "limits of size", Value: "worst of class " + e.Thread.form.class(), Status: refdata.FromMemory})
		b.Sources = append(b.Sources, e.Thread.form.limitSources()...)
	}
	if e.Hole.Status != 0 {
		b.Assumed = append(b.Assumed, refdata.Assumption{What: "tensile strength of " + e.Hole.Name, Value: e.Hole.Tensile.String(), Status: e.Hole.Status})
	}
	return b
}

// UsualEngagement returns the length of full thread that a rule of thumb wants
// in a tapped hole: 1.5 D in cast iron and steel, 2 D + 0.062 in in light alloy
// under shock. Source: a handbook chapter on threads in castings, published.
// Faults: no thread, a material the rule does not name.
func UsualEngagement(t Thread, m Material) (units.Length, error) {
	if t.IsZero() {
		return 0, noThread("thread")
	}
	switch m.Name {
	case MildSteel().Name, CastIron().Name:
		return t.major.Times(1.5), nil
	case LightAlloy().Name:
		return t.major.Times(2) + units.Inches(0.062), nil
	}
	return 0, fault.Fault{Code: fault.UnknownName, Path: "material", Value: m.Name, Rule: "mild steel, cast iron or light alloy: the rule names no other"}
}
