package drive

import (
	"strconv"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Trace is a line to be drawn: any plotting package that asks for Len and XY can
// take it.
type Trace struct {
	Name   string       `json:"name"`
	XLabel string       `json:"x_label"` // with its unit
	YLabel string       `json:"y_label"` // with its unit
	Points [][2]float64 `json:"points"`
}

// Len returns the number of points.
func (t Trace) Len() int { return len(t.Points) }

// XY returns point i, zeros where there is none.
func (t Trace) XY(i int) (x, y float64) {
	if uint(i) >= uint(len(t.Points)) {
		return 0, 0
	}
	return t.Points[i][0], t.Points[i][1]
}

// Sawtooth returns road speed in mile/h against engine speed in rev/min when the
// gears are gone through, changing up at an engine speed: each gear's line from
// where it is entered. Errors: those of [Line.SpeedAt], a change not above zero.
func (n Line) Sawtooth(changeAt units.RotationalSpeed) (Trace, error) {
	var l fault.List
	positive(&l, "change_at", changeAt)
	if len(n.Box.gears) == 0 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "box", Rule: "make the gearbox with NewBox, BoxOf or NewLayshaft"})
	}
	if err := l.Err(); err != nil {
		return Trace{}, err
	}
	t := Trace{Name: "through the gears", XLabel: "road speed, mile/h", YLabel: "engine speed, rev/min", Points: [][2]float64{{0, 0}}}
	for k, g := range n.Box.gears {
		top, err := n.SpeedAt(g.Name, changeAt)
		if err != nil {
			return Trace{}, err
		}
		v := top.Value().MilesPerHour()
		t.Points = append(t.Points, [2]float64{v, changeAt.RevolutionsPerMinute()})
		if k+1 < len(n.Box.gears) {
			e, err := n.EngineAt(n.Box.gears[k+1].Name, top.Value())
			if err != nil {
				return Trace{}, err
			}
			t.Points = append(t.Points, [2]float64{v, e.Value().RevolutionsPerMinute()})
		}
	}
	return t, nil
}

// Thrusts returns the thrust at the tyre in newtons against road speed in mile/h:
// one trace for each gear on a power curve, and one for the resistance of the
// road. Where thrust meets resistance is the top speed in that gear. Errors:
// those of [InGears], steps outside 2 to 10 000.
func Thrusts(n Line, c Curve, r Road, steps int) ([]Trace, error) {
	var l fault.List
	if steps < 2 || steps > 10000 {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "steps", Value: strconv.Itoa(steps), Rule: "must be 2 to 10 000"})
	}
	basis := roadBasis(r)
	s := r.settle(&l, &basis)
	n.checkRolling(&l)
	if len(c.points) == 0 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "curve", Rule: "make it with NewCurve"})
	}
	if len(n.Box.gears) == 0 {
		l.Add(fault.Fault{Code: fault.Missing, Path: "box", Rule: "make the gearbox with NewBox, BoxOf or NewLayshaft"})
	}
	if err := l.Err(); err != nil {
		return nil, err
	}
	const x, y = "road speed, mile/h", "force at the tyre, N"
	first, last := c.points[0].Speed, c.points[len(c.points)-1].Speed
	var fastest units.Speed
	var out []Trace
	for _, g := range n.Box.gears {
		i := n.overall(&l, g.Name)
		if err := l.Err(); err != nil {
			return nil, err
		}
		t := Trace{Name: "gear " + g.Name, XLabel: x, YLabel: y}
		for k := range steps {
			w := first + (last - first).Times(float64(k)/float64(steps-1))
			p, ok := c.At(min(w, last))
			v := n.speed(w.RevolutionsPerSecond() / i.Float()).Value()
			if !ok {
				continue
			}
			fastest = max(fastest, v)
			t.Points = append(t.Points, [2]float64{v.MilesPerHour(), p.Watts() * s.eta.X / v.MetresPerSecond()})
		}
		out = append(out, t)
	}
	t := Trace{Name: "road", XLabel: x, YLabel: y}
	for k := range steps {
		v := fastest.Times(float64(k) / float64(steps-1))
		d, roll, slope := s.force(v.MetresPerSecond(), s.mass.X, s.area.X, s.cr.X)
		t.Points = append(t.Points, [2]float64{v.MilesPerHour(), d + roll + slope})
	}
	return append(out, t), nil
}
