package spring

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// HelicalFigures is what follows from a coil spring's dimensions before any
// load.
type HelicalFigures struct {
	Index   float64          `json:"index"` // C = D/d
	Mean    units.Length     `json:"mean"`
	Outside units.Length     `json:"outside"`
	Inside  units.Length     `json:"inside"`
	Active  float64          `json:"active"`
	Total   float64          `json:"total"`
	Rate    units.SpringRate `json:"rate"`
	Pitch   units.Length     `json:"pitch"`       // advance of one coil, free
	Helix   units.Angle      `json:"helix"`       // of that advance, atan(p/πD); the formulas want it small
	Wire    units.Length     `json:"wire_length"` // of all coils, uncoiled

	Solid         units.Length `json:"solid"` // as measured, else by the end type (Shigley table 10-1, from memory)
	SolidMeasured bool         `json:"solid_measured"`
	SolidEN       units.Length `json:"solid_en"`      // Lc = nt·d ground, (nt + 1.5)·d not (EN 13906-1, from memory)
	Clearance     units.Length `json:"clearance"`     // Sa = n (0.0015 D²/d + 0.1 d), least sum of gaps between coils, static (EN 13906-1, from memory)
	Least         units.Length `json:"least"`         // Ln = Lc + Sa, least length to work at, static
	LeastFatigue  units.Length `json:"least_fatigue"` // Lc + 1.5 Sa, least length to work at when the load comes and goes

	SolidLoad   units.Force    `json:"solid_load"`
	SolidStress units.Pressure `json:"solid_stress"` // uncorrected, with coils touching
	Strength    Strength       `json:"strength,omitzero"`

	Slenderness float64      `json:"slenderness"` // L0/D
	CanBuckle   bool         `json:"can_buckle"`  // bows out before it is solid, unless guided
	BucklesAt   units.Length `json:"buckles_at"`  // deflection where it does; zero if it does not

	Surge units.RotationalSpeed `json:"surge"` // lowest natural frequency, both ends seated, one cycle as one revolution

	Basis refdata.Basis `json:"basis"`
}

// Strength is a wire's strength by its size and what it allows. The zero
// Strength is not known.
type Strength struct {
	Law        string         `json:"law"`         // the fit it comes from
	InRange    bool           `json:"in_range"`    // whether the wire is of a size the fit was made for
	Tensile    units.Pressure `json:"tensile"`     // Rm
	SolidLimit units.Pressure `json:"solid_limit"` // 0.56 Rm, most uncorrected stress when solid (EN 13906-1, cold coiled, from memory)
	SolidShare float64        `json:"solid_share"` // stress when solid over Rm
	TakesSet   bool           `json:"takes_set"`   // pressing it solid would stress it beyond SolidLimit
}

// Figures returns what follows from the dimensions.
func (h Helical) Figures() HelicalFigures {
	c := h.mean / h.d
	f := HelicalFigures{
		Index: c, Mean: units.Millimetres(h.mean), Outside: units.Millimetres(h.mean + h.d), Inside: units.Millimetres(h.mean - h.d),
		Active: h.n, Total: h.total, Rate: h.Rate(), Solid: h.Solid(), SolidMeasured: h.measuredSolid,
		Slenderness: h.free / h.mean,
	}
	if h.k == 0 {
		return HelicalFigures{}
	}
	p := pitch(h.spec.Ends, h.free, h.d, h.n)
	f.Pitch, f.Helix = units.Millimetres(p), units.Radians(math.Atan(p/(math.Pi*h.mean)))
	f.Wire = units.Millimetres(math.Hypot(math.Pi*h.mean*h.total, h.free-h.d))
	lc := h.enSolid()
	sa := h.clearance()
	f.SolidEN, f.Clearance = units.Millimetres(lc), units.Millimetres(sa)
	f.Least, f.LeastFatigue = units.Millimetres(lc+sa), units.Millimetres(lc+1.5*sa)
	f.SolidLoad = units.Newtons(h.k * (h.free - h.solid))
	f.SolidStress = units.Megapascals(torsion(f.SolidLoad.Newtons(), h.d, h.mean))
	f.Strength = h.strength(f.SolidStress)
	if s := h.bucklingDeflection(); s < h.free-h.solid {
		f.CanBuckle, f.BucklesAt = true, units.Millimetres(s)
	}
	rho := h.density()
	// f = d/(2π n D²) √(G/2ρ), in metres
	hertz := h.d / 1e3 / (2 * math.Pi * h.n * h.mean * h.mean / 1e6) * math.Sqrt(h.g*1e6/(2*rho))
	f.Surge = units.RevolutionsPerSecond(hertz)
	f.Basis = h.basis(f)
	return f
}

func (h Helical) density() float64 {
	if h.spec.Density > 0 {
		return h.spec.Density.KilogramsPerCubicMetre()
	}
	return 7850
}

// enSolid is Lc of EN 13906-1 (from memory): an unground end takes half a wire
// and a bit; the wire's upper tolerance is not added.
func (h Helical) enSolid() float64 {
	if h.spec.Ends.Ground() {
		return h.d * h.total
	}
	return h.d * (h.total + 1.5)
}

// clearance is Sa of EN 13906-1 (from memory), static.
func (h Helical) clearance() float64 {
	return h.n * (0.0015*h.mean*h.mean/h.d + 0.1*h.d)
}

func (h Helical) strength(solid units.Pressure) Strength {
	if h.spec.Wires == (Law{}) {
		return Strength{}
	}
	rm, in, err := h.spec.Wires.At(units.Millimetres(h.d))
	if err != nil {
		return Strength{}
	}
	limit := rm.Times(0.56)
	return Strength{Law: h.spec.Wires.Name, InRange: in, Tensile: rm, SolidLimit: limit, SolidShare: solid.Ratio(rm), TakesSet: solid > limit}
}

// bucklingDeflection is s = L0 C1 [1 - √(1 - C2 (D/(ν L0))²)] with
// C1 = E/(2(E - G)) and C2 = 2π²(E - G)/(2G + E) (Shigley eq. 10-10 to 10-12,
// from memory). It is NaN, below and above nothing, where there is no real root:
// such a spring never buckles.
func (h Helical) bucklingDeflection() float64 {
	c1 := h.e / (2 * (h.e - h.g))
	c2 := 2 * math.Pi * math.Pi * (h.e - h.g) / (2*h.g + h.e)
	r := h.mean / (h.spec.Seating.LengthFactor() * h.free)
	return h.free * c1 * (1 - math.Sqrt(1-c2*r*r))
}

func (h Helical) basis(f HelicalFigures) refdata.Basis {
	b := refdata.Basis{
		Sources: []refdata.Source{
			{Title: "EN 13906-1, compression springs of round wire", Clause: "rate, stress, solid and least length", Status: refdata.FromMemory},
			{Title: "Shigley's Mechanical Engineering Design", Clause: "table 10-1 and eq. 10-10 to 10-13: ends, pitch, buckling", Status: refdata.FromMemory},
		},
		Cautions: []refdata.Caution{refdata.SpringsUnderLoad, refdata.DeferToManual},
	}
	if h.spec.Ends == EndsNotSaid {
		b.Assumed = append(b.Assumed, refdata.Assumption{What: "spring ends", Value: SquaredGround.String(), Status: refdata.CommonPractice})
	}
	if h.spec.Modulus == (Modulus{}) {
		b.Assumed = append(b.Assumed, refdata.Assumption{What: "shear modulus", Value: "81.5 GPa, patented drawn steel", Status: refdata.FromMemory})
	}
	if h.spec.Density == 0 {
		b.Assumed = append(b.Assumed, refdata.Assumption{What: "density of the wire", Value: "7850 kg/m³", Status: refdata.FromMemory})
	}
	if h.spec.Seating == BothFlat {
		b.Assumed = append(b.Assumed, refdata.Assumption{What: "seating", Value: BothFlat.String(), Status: refdata.CommonPractice})
	}
	if f.Strength == (Strength{}) {
		b.NotChecked = append(b.NotChecked, refdata.Unchecked{What: "whether pressing it solid makes it take a set", Why: "no wire given", Settle: "measure the free length, press it solid three times, measure again"})
	} else {
		b.Sources = append(b.Sources, h.spec.Wires.Source)
	}
	if !h.measuredSolid {
		b.NotChecked = append(b.NotChecked, refdata.Unchecked{What: "the true solid length", Why: "reckoned from coils and ends", Settle: "squeeze one spring solid in a vice, guided on a rod, and measure it"})
	}
	if c := f.Index; c < 4 || c > 20 {
		b.NotChecked = append(b.NotChecked, refdata.Unchecked{What: "rate from dimensions", Why: "D/d is outside 4 to 20, where the formula is sure", Settle: "load the spring on a balance at two lengths"})
	}
	return b
}

// HelicalState is a coil spring at one length.
type HelicalState struct {
	Length        units.Length   `json:"length"`
	Deflection    units.Length   `json:"deflection"`
	Load          units.Force    `json:"load"`
	Torsion       units.Pressure `json:"torsion"`         // uncorrected
	DirectShear   units.Pressure `json:"direct_shear"`    // with that factor
	Wahl          units.Pressure `json:"wahl"`            // with that factor
	Bergstraesser units.Pressure `json:"bergstraesser"`   // with that factor
	OfStrength    float64        `json:"of_strength"`     // uncorrected stress over tensile strength; 0 if strength is not known
	ToSolid       units.Length   `json:"to_solid"`        // movement left
	ToLeast       units.Length   `json:"to_least"`        // movement left to the least working length, below zero if past it
	ClashShare    float64        `json:"clash_share"`     // movement left over deflection; at least 0.15 is asked for (Jindal, Machine Design, 2010, ex. 8-6)
	Buckles       bool           `json:"buckles"`         // bows out here unless guided
	Reason        fault.Reason   `json:"reason,omitzero"` // why there is no such state
}

// At returns the spring at a length from solid to free. Outside, the state holds
// the length and a reason, "past-solid" or "beyond-free", and nothing else.
func (h Helical) At(length units.Length) HelicalState {
	s := HelicalState{Length: length}
	x := h.free - length.Millimetres()
	switch {
	case h.k == 0 || !units.Finite(length):
		s.Length = 0 // nothing that cannot be written down
		s.Reason = fault.Reason{Code: "no-spring", Text: "there is no spring or no length"}
		return s
	case x < 0:
		s.Reason = fault.Reason{Code: "beyond-free", Text: "the spring is only " + h.Free().In(units.Millimetre, 2) + " long and does not reach that far"}
		return s
	case x > h.free-h.solid:
		s.Reason = fault.Reason{Code: "past-solid", Text: "the coils touch at " + h.Solid().In(units.Millimetre, 2)}
		return s
	}
	c := h.mean / h.d
	t := torsion(h.k*x, h.d, h.mean)
	s.Deflection, s.Load = units.Millimetres(x), units.Newtons(h.k*x)
	s.Torsion = units.Megapascals(t)
	s.DirectShear = units.Megapascals(t * DirectShear.at(c))
	s.Wahl = units.Megapascals(t * Wahl.at(c))
	s.Bergstraesser = units.Megapascals(t * Bergstraesser.at(c))
	if st := h.strength(s.Torsion); st != (Strength{}) {
		s.OfStrength = st.SolidShare
	}
	s.ToSolid = length - h.Solid()
	s.ToLeast = length - units.Millimetres(h.enSolid()+h.clearance())
	if x > 0 {
		s.ClashShare = s.ToSolid.Millimetres() / x
	}
	s.Buckles = x >= h.bucklingDeflection()
	return s
}

// AtLoad returns the spring at a load from 0 to that at solid. Beyond, the state
// holds the load and the reason "past-solid" or "pulled"; without a spring or a
// finite load, the reason "no-spring" alone.
func (h Helical) AtLoad(f units.Force) HelicalState {
	if x, ok := h.Deflection(f); ok {
		return h.At(h.Free() - x)
	}
	s := HelicalState{Load: f, Reason: fault.Reason{Code: "past-solid", Text: "the coils touch at " + h.Figures().SolidLoad.In(units.Newton, 1)}}
	if h.k == 0 || !units.Finite(f) {
		s.Load = 0 // nothing that cannot be written down
		s.Reason = fault.Reason{Code: "no-spring", Text: "there is no spring or no load"}
	} else if f < 0 {
		s.Reason = fault.Reason{Code: "pulled", Text: "a compression spring takes no pull"}
	}
	return s
}
