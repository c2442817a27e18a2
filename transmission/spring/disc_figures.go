package spring

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// DiscFigures is what follows from a disc spring's dimensions before any load.
type DiscFigures struct {
	Diameters   float64      `json:"diameters"` // δ = De/Di
	K1          float64      `json:"k1"`
	K2          float64      `json:"k2"`
	K3          float64      `json:"k3"`
	HeightRatio float64      `json:"height_ratio"` // h0/t: below 0.4 nearly straight, above √2 the load falls again
	Overall     units.Length `json:"overall"`      // l0 = t + h0
	FlatLoad    units.Force  `json:"flat_load"`    // pressed flat
	UsualLoad   units.Force  `json:"usual_load"`   // at three quarters of flat, where tables give it
	Snaps       bool         `json:"snaps"`        // the load has a hump and falls beyond Limit
	Limit       units.Length `json:"limit"`        // deflection where it stops rising
	LimitLoad   units.Force  `json:"limit_load"`

	Basis refdata.Basis `json:"basis"`
}

// Figures returns what follows from the dimensions.
func (d Disc) Figures() DiscFigures {
	if d.t == 0 {
		return DiscFigures{}
	}
	f := DiscFigures{
		Diameters: d.delta, K1: d.k1, K2: d.k2, K3: d.k3, HeightRatio: d.h / d.t,
		Overall:  units.Millimetres(d.h + d.t),
		FlatLoad: units.Newtons(d.load(d.h)), UsualLoad: units.Newtons(d.load(0.75 * d.h)),
		Snaps: d.h/d.t > math.Sqrt2, Limit: d.Limit(), LimitLoad: units.Newtons(d.load(d.limit)),
	}
	f.Basis = refdata.Basis{
		Sources: []refdata.Source{
			{Title: "EN 16984 (formerly DIN 2092), disc springs, calculation", Clause: "load, rate and stresses by Almen and Laszlo", Status: refdata.FromMemory},
		},
		NotChecked: []refdata.Unchecked{
			{What: "friction at edges and between discs", Why: "the load is that of the metal alone", Settle: "load the stack on a balance going in and coming out; half the difference is friction"},
		},
		Cautions: []refdata.Caution{refdata.SpringsUnderLoad, refdata.DeferToManual},
	}
	if d.spec.Young == 0 {
		f.Basis.Assumed = append(f.Basis.Assumed, refdata.Assumption{What: "Young's modulus", Value: "206 GPa, spring steel", Status: refdata.FromMemory})
	}
	if d.spec.Poisson == 0 {
		f.Basis.Assumed = append(f.Basis.Assumed, refdata.Assumption{What: "Poisson's ratio", Value: "0.3", Status: refdata.FromMemory})
	}
	if d.t > 6 {
		f.Basis.NotChecked = append(f.Basis.NotChecked, refdata.Unchecked{What: "contact flats", Why: "discs over 6 mm usually have them, and push some 10 % harder for their height", Settle: "look for a flat ring at the inner and outer edge"})
	}
	return f
}

// DiscState is a disc spring at one deflection. Tension is positive.
type DiscState struct {
	Deflection units.Length     `json:"deflection"`
	Height     units.Length     `json:"height"`     // over all, l0 - s
	FlatShare  float64          `json:"flat_share"` // s/h0
	Load       units.Force      `json:"load"`
	Rate       units.SpringRate `json:"rate"`
	PastHump   bool             `json:"past_hump"` // the load falls as it is pressed further
	OM         units.Pressure   `json:"om"`        // stress at the middle of the upper face
	I          units.Pressure   `json:"i"`         // upper inner edge: the greatest compression
	II         units.Pressure   `json:"ii"`        // lower inner edge
	III        units.Pressure   `json:"iii"`       // lower outer edge
	IV         units.Pressure   `json:"iv"`        // upper outer edge
	Reason     fault.Reason     `json:"reason,omitzero"`
}

// At returns the disc at deflection s from 0 to flat, with the stresses of
// EN 16984 (formerly DIN 2092, from memory) at its four edges and the point OM.
// Outside, the state holds the deflection and the reason "past-flat" or
// "beyond-free".
func (d Disc) At(s units.Length) DiscState {
	st := DiscState{Deflection: s}
	x := s.Millimetres()
	switch {
	case d.t == 0 || !units.Finite(s):
		st.Deflection = 0 // nothing that cannot be written down
		st.Reason = fault.Reason{Code: "no-spring", Text: "there is no disc or no deflection"}
		return st
	case x < 0:
		st.Reason = fault.Reason{Code: "beyond-free", Text: "the disc is not touched"}
		return st
	case x > d.h:
		st.Reason = fault.Reason{Code: "past-flat", Text: "the disc is flat at " + d.Travel().In(units.Millimetre, 3)}
		return st
	}
	u, v := d.h/d.t, x/d.t
	b := -d.scale / (d.t * d.t) * v // -a t²/(K1 De²) · s/t
	w := u - v/2
	st.Height = units.Millimetres(d.h + d.t - x)
	st.FlatShare = x / d.h
	st.Load, st.Rate = units.Newtons(d.load(x)), units.NewtonsPerMillimetre(d.slope(x))
	st.PastHump = x > d.limit
	st.OM = units.Megapascals(b * 3 / math.Pi)
	st.I = units.Megapascals(b * (d.k2*w + d.k3))
	st.II = units.Megapascals(b * (d.k2*w - d.k3))
	st.III = units.Megapascals(b / d.delta * ((d.k2-2*d.k3)*w - d.k3))
	st.IV = units.Megapascals(b / d.delta * ((d.k2-2*d.k3)*w + d.k3))
	return st
}

// Levered is a spring felt through a lever: a disc pressed inside its edges, a
// coil behind a rocker. It is an [Element]. The zero value has no travel.
type Levered struct {
	of Element
	q  float64
}

// NewLevered returns spring e felt through a lever that multiplies its load by
// ratio and divides its travel by it. Errors: no spring, a ratio outside 0.01 to
// 100.
func NewLevered(e Element, ratio float64) (Levered, error) {
	var l fault.List
	if e == nil || !(e.Limit() > 0) {
		l.Add(fault.Fault{Code: fault.Missing, Path: "spring", Rule: "must be a spring with some travel"})
	}
	within(&l, "ratio", ratio, 0.01, 100)
	if err := l.Err(); err != nil {
		return Levered{}, err
	}
	return Levered{e, ratio}, nil
}

// Between returns the disc borne at diameters outer and inner within its own
// edges: load F (De - Di)/(De' - Di') at deflection s (De' - Di')/(De - Di)
// (EN 16984, from memory). It serves a bridged edge, and a diaphragm spring as
// its plain outer ring. Errors: diameters that are not Di ≤ inner < outer ≤ De.
func (d Disc) Between(outer, inner units.Length) (Levered, error) {
	in := d.spec.Inside
	if !(inner >= in && inner < outer && outer <= d.spec.Outside) {
		return Levered{}, fault.Fault{Code: fault.OutOfRange, Path: "outer", Value: outer.String() + " and " + inner.String(), Unit: "mm", Rule: "must lie between the edges of the disc, " + in.String() + " and " + d.spec.Outside.String()}
	}
	return NewLevered(d, (d.spec.Outside - in).Ratio(outer-inner))
}

// Travel returns the spring's travel over the ratio.
func (v Levered) Travel() units.Length {
	if v.of == nil {
		return 0
	}
	return v.of.Travel().Times(1 / v.q)
}

// Limit returns the spring's Limit over the ratio.
func (v Levered) Limit() units.Length {
	if v.of == nil {
		return 0
	}
	return v.of.Limit().Times(1 / v.q)
}

// Load returns the spring's load times the ratio.
func (v Levered) Load(s units.Length) (units.Force, bool) {
	if v.of == nil {
		return 0, false
	}
	f, ok := v.of.Load(v.inner(s))
	return f.Times(v.q), ok
}

// inner keeps the two ends of the travel from falling outside by a last bit.
func (v Levered) inner(s units.Length) units.Length {
	if s == v.Travel() {
		return v.of.Travel()
	}
	return s.Times(v.q)
}

// Deflection returns the spring's deflection over the ratio.
func (v Levered) Deflection(f units.Force) (units.Length, bool) {
	if v.of == nil {
		return 0, false
	}
	if top, ok := v.Load(v.Limit()); !ok || f > top {
		return 0, false
	}
	top, _ := v.of.Load(v.of.Limit())
	s, ok := v.of.Deflection(min(f.Times(1/v.q), top)) // the greatest not a last bit beyond itself
	return min(s.Times(1/v.q), v.Limit()), ok
}

// RateAt returns the spring's rate times the square of the ratio.
func (v Levered) RateAt(s units.Length) (units.SpringRate, bool) {
	if v.of == nil {
		return 0, false
	}
	r, ok := v.of.RateAt(v.inner(s))
	return r.Times(v.q * v.q), ok
}
