package spring

import (
	"strconv"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Trace is a spring's load in newtons against deflection in millimetres, to be
// drawn: any plotting package that asks for Len and XY can take it.
type Trace struct{ points [][2]float64 }

// TraceOf returns the load of a spring at points evenly spaced from free to the
// end of its travel, a snap included. Errors: no spring, points outside 2 to
// 100 000.
func TraceOf(e Element, points int) (Trace, error) {
	var l fault.List
	if e == nil || !(e.Travel() > 0) {
		l.Add(fault.Fault{Code: fault.Missing, Path: "spring", Rule: "must be a spring with some travel"})
	}
	if points < 2 || points > 100000 {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "points", Value: strconv.Itoa(points), Rule: "must be 2 to 100 000"})
	}
	if err := l.Err(); err != nil {
		return Trace{}, err
	}
	t := Trace{make([][2]float64, 0, points)}
	for i := range points {
		s := e.Travel().Times(float64(i) / float64(points-1))
		if f, ok := e.Load(min(s, e.Travel())); ok {
			t.points = append(t.points, [2]float64{s.Millimetres(), f.Newtons()})
		}
	}
	return t, nil
}

// Len returns the number of points.
func (t Trace) Len() int { return len(t.points) }

// XY returns point i as millimetres and newtons, zeros where there is none.
func (t Trace) XY(i int) (x, y float64) {
	if uint(i) >= uint(len(t.points)) {
		return 0, 0
	}
	return t.points[i][0], t.points[i][1]
}

// At returns deflection and load of point i, zeros where there is none.
func (t Trace) At(i int) (units.Length, units.Force) {
	x, y := t.XY(i)
	return units.Millimetres(x), units.Newtons(y)
}
