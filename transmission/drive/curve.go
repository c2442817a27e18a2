package drive

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/solve"
)

// PowerPoint is what an engine gives at one speed.
type PowerPoint struct {
	Speed units.RotationalSpeed `json:"speed"`
	Power units.Power           `json:"power"`
}

// Curve is a power curve, straight between its points. It can be plotted: rev/min
// against kW. The zero value has no points.
type Curve struct{ points []PowerPoint }

// NewCurve returns a power curve through two or more points, put in order of
// speed. Errors: fewer than two, speeds not above zero or alike, powers below
// zero.
func NewCurve(points ...PowerPoint) (Curve, error) {
	var l fault.List
	if len(points) < 2 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "points", Value: strconv.Itoa(len(points)), Rule: "at least two points"})
	}
	for i, p := range points {
		at := "points." + strconv.Itoa(i)
		positive(&l, at+".speed", p.Speed)
		notNegative(&l, at+".power", p.Power)
	}
	c := Curve{slices.Clone(points)}
	slices.SortFunc(c.points, func(a, b PowerPoint) int { return cmp.Compare(a.Speed, b.Speed) })
	for i := 1; i < len(c.points); i++ {
		if c.points[i].Speed == c.points[i-1].Speed {
			l.Add(fault.Fault{Code: fault.Conflict, Path: "points", Value: c.points[i].Speed.String(), Rule: "two points have the same speed"})
		}
	}
	if err := l.Err(); err != nil {
		return Curve{}, err
	}
	return c, nil
}

// At returns the power at an engine speed, and whether the curve reaches there.
func (c Curve) At(n units.RotationalSpeed) (units.Power, bool) {
	k := len(c.points)
	if k == 0 || !(n >= c.points[0].Speed && n <= c.points[k-1].Speed) {
		return 0, false
	}
	i := max(1, sortSearch(c.points, n))
	a, b := c.points[i-1], c.points[i]
	return a.Power + (b.Power - a.Power).Times((n - a.Speed).Ratio(b.Speed-a.Speed)), true
}

// sortSearch is the first point at n or above.
func sortSearch(p []PowerPoint, n units.RotationalSpeed) int {
	i, _ := slices.BinarySearchFunc(p, n, func(a PowerPoint, n units.RotationalSpeed) int { return cmp.Compare(a.Speed, n) })
	return i
}

// Peak returns the point of greatest power, the slowest of equals; the zero point
// of no curve.
func (c Curve) Peak() PowerPoint {
	var best PowerPoint
	for _, p := range c.points {
		if p.Power > best.Power {
			best = p
		}
	}
	return best
}

// Points returns the points in order of speed.
func (c Curve) Points() []PowerPoint { return slices.Clone(c.points) }

// Len returns the number of points.
func (c Curve) Len() int { return len(c.points) }

// XY returns point i as rev/min and kW, zeros where there is none.
func (c Curve) XY(i int) (x, y float64) {
	if uint(i) >= uint(len(c.points)) {
		return 0, 0
	}
	return c.points[i].Speed.RevolutionsPerMinute(), c.points[i].Power.Kilowatts()
}

// MarshalJSON writes the points as a list.
func (c Curve) MarshalJSON() ([]byte, error) { return marshal(c.points) }

// GearTop is how fast a machine goes in one gear.
type GearTop struct {
	Gear    string                `json:"gear"`
	Overall Ratio                 `json:"overall"`
	Speed   units.Speed           `json:"speed"`
	Engine  units.RotationalSpeed `json:"engine"`
	Limit   string                `json:"limit"`           // "power": resistance uses it all; "engine speed": the end of the curve
	Spare   units.Power           `json:"spare"`           // at the crankshaft, when engine speed is the limit
	Reason  fault.Reason          `json:"reason,omitzero"` // "does-not-pull": not enough power anywhere on the curve
}

// GearTops is how fast a machine goes in each gear.
type GearTops struct {
	Gears   []GearTop     `json:"gears"`   // lowest first
	Fastest string        `json:"fastest"` // the gear of the greatest speed, "" if none pulls
	Basis   refdata.Basis `json:"basis"`
}

// InGears returns how fast a machine goes in each gear on a power curve: the
// greatest engine speed of the curve at which η P covers the road load, found
// from the top end down. It is for the middle values of what was read; the
// uncertainty of a top speed is that of [TopSpeed]. Errors: those of
// [Line.SpeedAt] and [RoadLoad], no curve.
func InGears(n Line, c Curve, r Road) (GearTops, error) {
	var l fault.List
	out := GearTops{Basis: roadBasis(r)}
	s := r.settle(&l, &out.Basis)
	n.checkRolling(&l)
	if len(c.points) == 0 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "curve", Rule: "make it with NewCurve"})
	}
	if len(n.Box.gears) == 0 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "box", Rule: "make the gearbox with NewBox, BoxOf or NewLayshaft"})
	}
	if err := l.Err(); err != nil {
		return GearTops{}, err
	}
	var best units.Speed
	for _, g := range n.Box.gears {
		i := n.overall(&l, g.Name)
		if err := l.Err(); err != nil {
			return GearTops{}, err
		}
		t := c.top(s, n.Rolling.Value().Metres()/i.Float())
		t.Gear, t.Overall = g.Name, i
		if t.Speed > best {
			best, out.Fastest = t.Speed, g.Name
		}
		out.Gears = append(out.Gears, t)
	}
	return out, nil
}

// top finds the fastest the curve pulls with the given metres of road a turn of
// the crankshaft.
func (c Curve) top(s settled, metres float64) GearTop {
	// power left at the crankshaft, engine speed in rad/s
	spare := func(w float64) float64 {
		p, _ := c.At(units.RadiansPerSecond(w))
		v := w / (2 * math.Pi) * metres
		d, roll, slope := s.force(v, s.mass.X, s.area.X, s.cr.X)
		return p.Watts() - (d+roll+slope)*v/s.eta.X
	}
	at := func(w float64) GearTop {
		return GearTop{Engine: units.RadiansPerSecond(w), Speed: units.MetresPerSecond(w / (2 * math.Pi) * metres), Limit: "power"}
	}
	end := c.points[len(c.points)-1].Speed.RadiansPerSecond()
	if left := spare(end); left >= 0 {
		t := at(end)
		t.Limit, t.Spare = "engine speed", units.Watts(left)
		return t
	}
	// Straight pieces against a cubic cross at most three times in each; sixteen
	// steps a piece cannot miss one that matters.
	const steps = 16
	above := end
	for k := len(c.points) - 1; k > 0; k-- {
		hi, lo := c.points[k].Speed.RadiansPerSecond(), c.points[k-1].Speed.RadiansPerSecond()
		for j := steps - 1; j >= 0; j-- {
			below := lo + (hi-lo)*float64(j)/steps
			if spare(below) >= 0 {
				w, err := solve.Root(spare, below, above, 1e-9)
				if err != nil {
					w = below
				}
				return at(w)
			}
			above = below
		}
	}
	return GearTop{Reason: fault.Reason{Code: "does-not-pull", Text: "the road takes more than the engine gives anywhere on its curve"}}
}
