package fastener

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Geometry is the basic section of a thread, before any tolerance.
type Geometry struct {
	Thread   Thread       `json:"thread"`
	Included units.Angle  `json:"included"` // angle between the flanks
	Triangle units.Length `json:"triangle"` // H, height of the sharp triangle
	// Depth is h. Rounded forms: crest to root. 60° flat forms: 5H/8, the depth
	// of the nut's thread.
	Depth     units.Length `json:"depth"`
	Effective units.Length `json:"effective"`  // diameter where ridge and groove are equally wide
	MinorBolt units.Length `json:"minor_bolt"` // K or d3, over the roots of the bolt
	MinorNut  units.Length `json:"minor_nut"`  // K or D1, over the crests of the nut
	// CrestRadius is zero for the flat crests of metric and Unified threads.
	CrestRadius units.Length `json:"crest_radius"`
	RootRadius  units.Length `json:"root_radius"` // of the bolt
	Lead        units.Angle  `json:"lead"`        // lead angle at the effective diameter
	// StressArea is the area by which tension is turned into stress, by the
	// rule named in StressRule.
	StressArea units.Area    `json:"stress_area"`
	StressRule string        `json:"stress_rule"`
	Basis      refdata.Basis `json:"basis"`
}

// section holds the same figures in millimetres, for formulas.
type section struct {
	h                      float64 // basic depth
	effective, bolt, inner float64 // E, minor diameter of bolt and of nut
	crest, root            float64 // radii
	area                   float64 // stress area, mm²
}

// roundTo rounds x to a multiple of step.
func roundTo(x, step float64) float64 { return math.Round(x/step) * step }

// section computes the basic section, with the rounding rule that belongs to
// the standard: BS 84 rounds h to 0.0001 in, ISO 228-1 to 0.001 mm, BS 93 to
// 0.005 mm, before it is doubled.
func (t Thread) section() section {
	d, p := t.major.Millimetres(), t.pitch.Millimetres()
	h := t.form.depth() * p
	switch {
	case t.system == BSPP:
		h = roundTo(h, 0.001)
	case t.form == WhitworthForm && t.system != 0:
		h = 25.4 * roundTo(h/25.4, 0.0001)
	case t.form == AssociationForm:
		h = roundTo(h, 0.005)
	}
	s := section{h: h}
	switch t.form {
	case WhitworthForm, CycleForm, AssociationForm:
		s.effective, s.bolt, s.inner = d-h, d-2*h, d-2*h
		s.area = math.Pi / 4 * sq((s.effective+s.bolt)/2)
	case MetricForm, UnifiedForm:
		tri := t.form.triangle() * p
		s.effective, s.inner = d-0.75*tri, d-1.25*tri
		if t.form == MetricForm {
			s.bolt = d - 17.0/12*tri // d3, ISO 68-1: 1.226869 P
			s.area = math.Pi / 4 * sq((s.effective+s.bolt)/2)
			s.root = tri / 6
		} else {
			s.bolt = d - 1.375*tri // UNR, 1.190786 p
			s.area = math.Pi / 4 * sq(d-0.9743*p)
			s.root = 0.144338 * p
		}
	}
	switch t.form {
	case WhitworthForm:
		s.crest = 0.137329 * p
	case CycleForm:
		s.crest = p / 6
	case AssociationForm:
		s.crest = associationRadius * p
	}
	if s.crest > 0 {
		s.root = s.crest
	}
	return s
}

// associationRadius is the radius of BA crests and roots in pitches, such that
// rounding leaves 0.6 of H = 1.13634 p: r (1/sin 23.75° - 1) = (1.13634 - 0.6)/2.
const associationRadius = 0.18083

func sq(x float64) float64 { return x * x }

// Geometry returns the basic section of the thread. The zero Thread is a fault.
//
//	Whitworth  H = p/(2 tan 27.5°), h = 2H/3, E = D - h, K = D - 2h
//	cycle      h = H - p/3, E and K as above
//	BA         h = 0.6 p, E and K as above
//	metric     E = D - 3H/4, nut K = D - 5H/4, bolt K = D - 17H/12
//	Unified    as metric, bolt K = D - 11H/8
//
// Sources: BS 84, BS 811:1950, BS 93, ISO 68-1 and ISO 724, ASME B1.1. Whitworth
// and BA depths are rounded as their standards round them; the others are not
// rounded.
func (t Thread) Geometry() (Geometry, error) {
	if t.IsZero() {
		return Geometry{}, noThread("thread")
	}
	s := t.section()
	g := Geometry{
		Thread:      t,
		Included:    t.form.Included(),
		Triangle:    t.pitch.Times(t.form.triangle()),
		Depth:       units.Millimetres(s.h),
		Effective:   units.Millimetres(s.effective),
		MinorBolt:   units.Millimetres(s.bolt),
		MinorNut:    units.Millimetres(s.inner),
		CrestRadius: units.Millimetres(s.crest),
		RootRadius:  units.Millimetres(s.root),
		Lead:        units.Radians(math.Atan(t.pitch.Millimetres() / (math.Pi * s.effective))),
		StressArea:  units.SquareMillimetres(s.area),
		StressRule:  t.form.stressRule(),
	}
	g.Basis.Sources = owned(t.form.sources(), t)
	switch t.form {
	case WhitworthForm, CycleForm, AssociationForm:
		g.Basis.Assumed = append(g.Basis.Assumed, refdata.Assumption{
			What: "stress area", Value: g.StressRule + "; no standard gives one for this form", Status: refdata.Derived,
		})
	}
	return g, nil
}

func noThread(path string) fault.Fault {
	return fault.Fault{Code: fault.Missing, Path: path, Rule: "a thread is needed"}
}

func (f Form) stressRule() string {
	switch f {
	case MetricForm:
		return "(pi/4)((d2 + d3)/2)^2, ISO 898-1"
	case UnifiedForm:
		return "(pi/4)(D - 0.9743 p)^2, ASME B1.1"
	}
	return "(pi/4)((E + K)/2)^2, an estimate"
}

// sources returns the standards a form rests on, and how far they were seen.
func (f Form) sources() []refdata.Source {
	switch f {
	case WhitworthForm:
		return []refdata.Source{{Title: "BS 84, Parallel screw threads of Whitworth form", Read: "published tables and constants reproduced", Status: refdata.Published}}
	case CycleForm:
		return []refdata.Source{{Title: "BS 811:1950, Cycle threads", Read: "title pages and note; sizes from trade tables to 0.001 in", Status: refdata.Derived}}
	case AssociationForm:
		return []refdata.Source{{Title: "BS 93:1951, British Association screw threads", Read: "Machinery's Handbook, 31st ed., p. 2115", Status: refdata.Published}}
	case MetricForm:
		return []refdata.Source{{Title: "ISO 68-1 and ISO 724, ISO general purpose metric screw threads", Status: refdata.Derived}}
	case UnifiedForm:
		return []refdata.Source{{Title: "ASME B1.1, Unified inch screw threads", Read: "Machinery's Handbook, 31st ed., pp. 1978-1979", Status: refdata.Published}}
	}
	return nil
}
