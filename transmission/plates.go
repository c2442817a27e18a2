package transmission

import (
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Plates is the pack: rings that rub, whole or as segments or inserts.
type Plates struct {
	Driving, Driven int          // plates turning with the drum and with the hub, counted whether lined or not
	Faces           int          // rubbing faces, if counted directly, 1 to 100; 0 takes Driving + Driven - 1, right if plates alternate and the outermost rub
	Outer, Inner    units.Length // diameters of the rubbed ring
	MeanRadius      units.Length // radius at which friction acts, if known, 5 to 500 mm; 0 takes it from Outer and Inner or the inserts
	Pressure        PressureLaw  // how the clamp spreads over the ring; default UniformWear
	Inserts         Inserts      // corks or segments in place of a whole ring; zero is a whole ring
	Thickness       units.Length // of one friction plate, new, to know one left out; 0 takes 3 mm
	Rim             units.Length // outer diameter of the pressure plate, for its tilt; 0 takes Outer
	Tongues         units.Length // diameter at which the driving plates' tongues bear in the drum, for their friction; 0 takes Outer, or the mean diameter if that is not known
	Splines         units.Length // diameter at which the driven plates' bear on the hub; 0 takes Inner, or the mean diameter
}

// Inserts are corks or segments of one rubbing face. They change pressure and
// wear, and the radius at which friction acts, but not the torque otherwise.
type Inserts struct {
	Count  int          // of one face
	Area   units.Area   // of one insert
	Radius units.Length // from the shaft to the middle of the inserts
}

// PressureLaw is how the clamp spreads over the rubbed ring.
type PressureLaw uint8

// The laws. Bedded-in plates follow uniform wear, which gives the lower torque;
// new, flat, stiff ones uniform pressure.
const (
	UniformWear PressureLaw = iota
	UniformPressure
)

// String returns the law in words.
func (p PressureLaw) String() string {
	switch p {
	case UniformWear:
		return "uniform wear"
	case UniformPressure:
		return "uniform pressure"
	}
	return "unknown pressure law"
}

// Capacity is what a pack carries under a clamp.
type Capacity struct {
	Faces      int            `json:"faces"`
	MeanRadius units.Length   `json:"mean_radius"`
	Clamp      units.Force    `json:"clamp"`
	Torque     units.Torque   `json:"torque"`
	Mean       units.Pressure `json:"mean"`  // pressure on the rubbed area; 0 if neither ring nor inserts are known
	Peak       units.Pressure `json:"peak"`  // at the inner edge under uniform wear
	Least      units.Pressure `json:"least"` // at the outer edge under uniform wear
}

// Carry returns what the pack carries at a coefficient of friction, 0.02 to 1,
// under a clamp of 1 N to 1 MN: torque mu z W Rm over z faces that all see the
// same clamp. Rm is (ro + ri)/2 for uniform wear, 2/3 (ro^3 - ri^3)/(ro^2 -
// ri^2) for uniform pressure. Under uniform wear pressure falls as 1/r: greatest
// W/(2 pi ri (ro - ri)), least W/(2 pi ro (ro - ri)). On inserts it is W over
// their area. Source: R. S. Khurmi and J. K. Gupta, Theory of Machines, 14th ed.
// 2009, examples 10.22 to 10.29; V. B. Bhandari, Design of Machine Elements,
// examples 11.1, 11.2, 11.8. Errors: figures missing or outside their range.
func (p Plates) Carry(friction units.Ratio, clamp units.Force) (Capacity, error) {
	var l fault.List
	n := p.check(&l)
	need(&l, "friction", friction.Value(), "", 0.02, 1)
	need(&l, "clamp", clamp.Newtons(), "N", 1, 1e6)
	if err := l.Err(); err != nil {
		return Capacity{}, err
	}
	c := Capacity{Faces: n, Clamp: clamp, MeanRadius: units.Millimetres(p.radius())}
	c.Torque = units.NewtonMillimetres(friction.Value() * float64(n) * clamp.Newtons() * p.radius())
	outer, inner := p.Outer.Metres()/2, p.Inner.Metres()/2
	w := clamp.Newtons()
	switch {
	case p.Inserts.Count > 0:
		c.Mean = units.Pascals(w / (float64(p.Inserts.Count) * p.Inserts.Area.SquareMetres()))
		c.Peak, c.Least = c.Mean, c.Mean
	case outer == 0: // only the mean radius is known
	default:
		c.Mean = units.Pascals(w / (math.Pi * (outer*outer - inner*inner)))
		c.Peak, c.Least = c.Mean, c.Mean
		if p.Pressure == UniformWear {
			c.Peak = units.Pascals(w / (2 * math.Pi * inner * (outer - inner)))
			c.Least = units.Pascals(w / (2 * math.Pi * outer * (outer - inner)))
		}
	}
	return c, nil
}

// ClampFor returns the clamp at which the greatest pressure is reached, 1 kPa to
// 100 MPa: 2 pi p ri (ro - ri) for uniform wear, pi p (ro^2 - ri^2) for uniform
// pressure, p times the area of inserts. Sources as of [Plates.Carry]. Errors:
// figures missing or outside their range.
func (p Plates) ClampFor(peak units.Pressure) (units.Force, error) {
	var l fault.List
	p.check(&l)
	need(&l, "peak", peak.Kilopascals(), "kPa", 1, 1e5)
	if p.Inserts.Count == 0 {
		need(&l, "outer", p.Outer.Millimetres(), "mm", 10, 1000)
		need(&l, "inner", p.Inner.Millimetres(), "mm", 1, 1000)
	}
	if err := l.Err(); err != nil {
		return 0, err
	}
	one, err := p.Carry(units.Value(0.1), units.Newtons(1000))
	if err != nil {
		return 0, err
	}
	return units.Newtons(1000 * peak.Ratio(one.Peak)), nil
}

// RingFor returns the ring that carries a torque at a greatest pressure, with
// its inner diameter the given part of the outer, 0.1 to 0.98: outer radius the
// cube root of T/(pi mu z p k (1 - k^2)) for uniform wear, of
// T/(2/3 pi mu z p (1 - k^3)) for uniform pressure. Sources as of [Plates.Carry].
// Errors: figures missing or outside their range.
func RingFor(torque units.Torque, friction units.Ratio, peak units.Pressure, faces int, innerToOuter float64, law PressureLaw) (Plates, error) {
	var l fault.List
	need(&l, "torque", torque.NewtonMetres(), "N m", 1e-3, 1e6)
	need(&l, "friction", friction.Value(), "", 0.02, 1)
	need(&l, "peak", peak.Kilopascals(), "kPa", 1, 1e5)
	need(&l, "faces", float64(faces), "", 1, 100)
	need(&l, "inner_to_outer", innerToOuter, "", 0.1, 0.98)
	if law > UniformPressure {
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "pressure", Rule: "must be uniform wear or uniform pressure"})
	}
	if err := l.Err(); err != nil {
		return Plates{}, err
	}
	k := innerToOuter
	shape := k * (1 - k*k)
	if law == UniformPressure {
		shape = 2.0 / 3 * (1 - k*k*k)
	}
	outer := 2 * math.Cbrt(torque.NewtonMetres()/(math.Pi*friction.Value()*float64(faces)*peak.Pascals()*shape))
	return Plates{Faces: faces, Outer: units.Metres(outer), Inner: units.Metres(outer * k), Pressure: law}, nil
}

// faces is how many faces rub, or 0 if that was not told.
func (p *Plates) faces() int {
	if p.Faces == 0 && (p.Driving != 0 || p.Driven != 0) {
		return p.Driving + p.Driven - 1
	}
	return p.Faces
}

// radius is where friction acts, in mm.
func (p *Plates) radius() float64 {
	switch {
	case p.MeanRadius != 0:
		return p.MeanRadius.Millimetres()
	case p.Inserts.Count > 0:
		return p.Inserts.Radius.Millimetres()
	}
	return meanRadius(p.Outer.Millimetres()/2, p.Inner.Millimetres()/2, p.Pressure)
}

// meanRadius returns the radius at which the friction of a ring acts: half the
// sum of the radii for uniform wear, 2/3 (ro^3 - ri^3)/(ro^2 - ri^2) for uniform
// pressure.
func meanRadius(outer, inner float64, law PressureLaw) float64 {
	if law == UniformPressure {
		// the cubes over the squares with ro - ri divided out, so thin rings lose no digits
		return 2 * (outer*outer + outer*inner + inner*inner) / (3 * (outer + inner))
	}
	return (outer + inner) / 2
}

// check notes what is wrong and returns the faces.
func (p *Plates) check(l *fault.List) int {
	n := p.faces()
	if p.Faces == 0 && n != 0 {
		if p.Driving < 1 || p.Driven < 1 {
			l.Add(outside("driven", float64(min(p.Driving, p.Driven)), "", 1, 50))
		} else if d := p.Driving - p.Driven; d < -1 || d > 1 {
			l.Add(fault.Fault{Code: fault.Conflict, Path: "driven", Value: number(float64(p.Driven)),
				Rule: "must differ by one at most from the " + number(float64(p.Driving)) + " driving plates if plates alternate; else count the rubbing faces and give those"})
		}
	}
	need(l, "faces", float64(n), "", 1, 100)
	if p.Thickness != 0 {
		need(l, "thickness", p.Thickness.Millimetres(), "mm", 0.5, 20)
	}
	if p.Pressure > UniformPressure {
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "pressure", Rule: "must be uniform wear or uniform pressure"})
	}
	if i := &p.Inserts; *i != (Inserts{}) {
		need(l, "inserts.count", float64(i.Count), "", 1, 500)
		need(l, "inserts.area", i.Area.SquareMillimetres(), "mm²", 1, 1e5)
		if p.MeanRadius == 0 {
			need(l, "inserts.radius", i.Radius.Millimetres(), "mm", 5, 500)
		}
	}
	if p.MeanRadius != 0 {
		need(l, "mean_radius", p.MeanRadius.Millimetres(), "mm", 5, 500)
	}
	for _, d := range [...]struct {
		path string
		units.Length
	}{{"tongues", p.Tongues}, {"splines", p.Splines}} {
		if d.Length != 0 {
			need(l, d.path, d.Millimetres(), "mm", 10, 1000)
		}
	}
	if ring := p.MeanRadius == 0 && p.Inserts.Count == 0; ring || p.Outer != 0 || p.Inner != 0 {
		outer, inner := p.Outer.Millimetres(), p.Inner.Millimetres()
		need(l, "outer", outer, "mm", 10, 1000)
		need(l, "inner", inner, "mm", 1, 1000)
		if inner >= outer && outer > 0 {
			l.Add(fault.Fault{Code: fault.Conflict, Path: "inner", Value: number(inner) + " mm", Unit: "mm", Rule: "must be smaller than the outer diameter of " + number(outer) + " mm"})
		}
	}
	return n
}

// FacesFor returns how many rubbing faces carry a torque at a coefficient of friction
// under a clamp, as the figure comes out: T/(mu W Rm). Round it up; one fewer slips.
// The faces of p itself do not count. Ranges and source as of [Plates.Carry], torque
// 1 mN m to 1 MN m; U. C. Jindal, Machine Design, example 22-6. Errors: figures
// missing or outside their range.
func (p Plates) FacesFor(torque units.Torque, friction units.Ratio, clamp units.Force) (float64, error) {
	var l fault.List
	need(&l, "torque", torque.NewtonMetres(), "N m", 1e-3, 1e6)
	p.Faces = 1
	one, err := p.Carry(friction, clamp)
	l.Under("", err)
	if err := l.Err(); err != nil {
		return 0, err
	}
	return torque.Ratio(one.Torque), nil
}
