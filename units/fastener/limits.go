package fastener

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Limits are the largest and smallest diameters of a sound bolt and nut of a
// thread, in the class of everyday work. A figure that no known rule gives is
// unknown.
type Limits struct {
	Thread           Thread                       `json:"thread"`
	Class            string                       `json:"class"` // "2A/2B", "6g/6H", "medium"
	BoltMajorMax     refdata.Figure[units.Length] `json:"bolt_major_max"`
	BoltMajorMin     refdata.Figure[units.Length] `json:"bolt_major_min"`
	BoltEffectiveMax refdata.Figure[units.Length] `json:"bolt_effective_max"`
	BoltEffectiveMin refdata.Figure[units.Length] `json:"bolt_effective_min"`
	NutEffectiveMin  refdata.Figure[units.Length] `json:"nut_effective_min"`
	NutEffectiveMax  refdata.Figure[units.Length] `json:"nut_effective_max"`
	NutMinorMin      refdata.Figure[units.Length] `json:"nut_minor_min"`
	NutMinorMax      refdata.Figure[units.Length] `json:"nut_minor_max"`
	Reason           fault.Reason                 `json:"reason"` // why some or all are unknown
	Basis            refdata.Basis                `json:"basis"`
}

// tolerances are in millimetres; all positive. known tells which are.
type tolerances struct {
	allowance                 float64 // of the bolt, below basic
	major, boltE, nutE, minor float64
	full                      bool // all are known, else only allowance and minor
}

// tolerances returns the rule of the form and system at an engaged length.
//
//	Unified 2A/2B  T = 0.0015 D^(1/3) + 0.0015 L^(1/2) + 0.015 p^(2/3) in; allowance 0.3 T,
//	               bolt effective T, nut 1.3 T, major 0.06 p^(2/3), nut minor
//	               0.25 p - 0.4 p² (from 1/4 in), below that 0.05 p^(2/3) + 0.03 p/D - 0.002
//	               kept between that and 0.394 p
//	metric 6g/6H   allowance 15 + 11 P µm, major 180 P^(2/3) - 3.15 P^(-1/2),
//	               bolt effective 90 P^0.4 d^0.1, nut 1.32 times that, nut minor
//	               433 P - 190 P^1.22 below 1 mm, 230 P^0.7 from there; at the
//	               diameter itself, not the mean of its range, and not rounded
//	               as the standard rounds them
//	BS 84 medium   T = 0.002 D^(1/3) + 0.003 L^(1/2) + 0.005 p^(1/2) in; bolt and nut
//	               effective T, major T + 0.01 p^(1/2), nut minor 0.2 p + 0.004, 0.005
//	               (24 and 22 tpi) or 0.007 (20 tpi and coarser)
//	BA             bolt allowance 0.025 mm for 0 to 10 BA, nut minor 0.375 p
func (t Thread) tolerances(engaged float64) (tolerances, bool) {
	d, p := t.major.Millimetres(), t.pitch.Millimetres()
	din, pin, l := d/25.4, p/25.4, engaged/25.4
	switch t.form {
	case UnifiedForm:
		e := 0.0015*math.Cbrt(din) + 0.0015*math.Sqrt(l) + 0.015*math.Cbrt(pin*pin)
		m := 0.25*pin - 0.4*pin*pin
		if din < 0.25 {
			m = min(max(0.05*math.Cbrt(pin*pin)+0.03*pin/din-0.002, m), 0.394*pin)
		}
		return tolerances{25.4 * 0.3 * e, 25.4 * 0.06 * math.Cbrt(pin*pin), 25.4 * e, 25.4 * 1.3 * e, 25.4 * m, true}, true
	case MetricForm:
		e := 0.09 * math.Pow(p, 0.4) * math.Pow(d, 0.1)
		m := 0.23 * math.Pow(p, 0.7)
		if p < 1 {
			m = 0.433*p - 0.19*math.Pow(p, 1.22)
		}
		return tolerances{0.015 + 0.011*p, 0.18*math.Cbrt(p*p) - 0.00315/math.Sqrt(p), e, 1.32 * e, m, true}, true
	case WhitworthForm:
		e := 0.002*math.Cbrt(din) + 0.003*math.Sqrt(l) + 0.005*math.Sqrt(pin)
		m := 0.2 * pin
		switch {
		case pin < 0.999/24:
			m += 0.004
		case pin < 0.999/20:
			m += 0.005
		default:
			m += 0.007
		}
		return tolerances{0, 25.4 * (e + 0.01*math.Sqrt(pin)), 25.4 * e, 25.4 * e, 25.4 * m, true}, true
	case AssociationForm:
		a := 0.0
		if d >= 1.7 { // that of 10 BA
			a = 0.025
		}
		return tolerances{allowance: a, minor: 0.375 * p}, true
	}
	return tolerances{}, false
}

// Limits returns the limits of size of a bolt and nut engaged over a length, in
// class 2A/2B for Unified, 6g/6H for metric, medium for Whitworth form; zero
// means one diameter. The rules for Unified are from memory of ASME B1.1 and
// reproduce the published limits of 2 1/2-4 UNC and 2-56 UNC; those for metric
// (ISO 965-1) and Whitworth (BS 84) are from memory and not checked. Of BA the
// bolt's allowance and the nut's minor diameter are known (BS 93, as printed),
// of cycle threads nothing: then there is a Reason. Faults: no thread, a length
// that is not from zero to a metre.
func (t Thread) Limits(engaged units.Length) (Limits, error) {
	var l fault.List
	if t.IsZero() {
		l.Add(noThread("thread"))
	}
	if !(engaged >= 0 && engaged <= units.Metre) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "engaged", Value: engaged.String(), Unit: "mm", Rule: "0 to 1 m"})
	}
	if err := l.Err(); err != nil {
		return Limits{}, err
	}
	if engaged == 0 {
		engaged = t.major
	}
	out := Limits{Thread: t, Class: t.form.class()}
	tol, ok := t.tolerances(engaged.Millimetres())
	if !ok {
		out.Reason = fault.Reason{Code: "limits-unknown", Text: "no rule for the limits of cycle threads is known here"}
		return out, nil
	}
	s, mm := t.section(), func(x float64) refdata.Figure[units.Length] { return refdata.Known(units.Millimetres(x)) }
	d := t.major.Millimetres()
	out.BoltMajorMax, out.BoltEffectiveMax = mm(d-tol.allowance), mm(s.effective-tol.allowance)
	out.NutEffectiveMin, out.NutMinorMin, out.NutMinorMax = mm(s.effective), mm(s.inner), mm(s.inner+tol.minor)
	if tol.full {
		out.BoltMajorMin, out.BoltEffectiveMin = mm(d-tol.allowance-tol.major), mm(s.effective-tol.allowance-tol.boltE)
		out.NutEffectiveMax = mm(s.effective + tol.nutE)
	} else {
		out.Reason = fault.Reason{Code: "limits-part", Text: "of BA threads only the bolt's allowance and the nut's minor diameter are known here"}
	}
	out.Basis.Sources = owned(t.form.limitSources(), t)
	return out, nil
}

func (f Form) class() string {
	switch f {
	case UnifiedForm:
		return "2A/2B"
	case MetricForm:
		return "6g/6H"
	case WhitworthForm:
		return "medium"
	case AssociationForm:
		return "normal"
	}
	return ""
}

func (f Form) limitSources() []refdata.Source {
	switch f {
	case UnifiedForm:
		return []refdata.Source{{Title: "ASME B1.1, tolerance formulas of classes 2A and 2B", Status: refdata.FromMemory}}
	case MetricForm:
		return []refdata.Source{{Title: "ISO 965-1, tolerance formulas of classes 6g and 6H", Status: refdata.FromMemory}}
	case WhitworthForm:
		return []refdata.Source{{Title: "BS 84, tolerance formulas of the medium class", Status: refdata.FromMemory}}
	case AssociationForm:
		return []refdata.Source{{Title: "BS 93, nut minor diameter tolerance 0.375 p, bolt allowance 0.025 mm for 0 to 10 BA", Status: refdata.Published}}
	}
	return nil
}

// nutMinorTolerance returns how far over its basic size the minor diameter of a
// nut may be, in millimetres; a quarter of the pitch where no rule is known.
func nutMinorTolerance(t *Thread) float64 {
	if tol, ok := t.tolerances(t.major.Millimetres()); ok {
		return tol.minor
	}
	return 0.25 * t.pitch.Millimetres()
}
