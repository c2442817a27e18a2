package drive

import (
	"strconv"

	"example.com/benchbook/units/fault"
)

// Pair is two wheels in mesh, or two sprockets on a chain, by their teeth.
type Pair struct {
	Driver int `json:"driver"` // teeth of the wheel that drives, 4 to 1000
	Driven int `json:"driven"` // teeth of the wheel that is driven, 4 to 1000
}

// Ratio returns driven over driver. Errors: teeth outside 4 to 1000.
func (p Pair) Ratio() (Ratio, error) {
	var l fault.List
	p.check(&l, "")
	if err := l.Err(); err != nil {
		return Ratio{}, err
	}
	return p.ratio(), nil
}

func (p Pair) ratio() Ratio {
	g := gcd(int64(p.Driven), int64(p.Driver))
	return Ratio{int64(p.Driven) / g, int64(p.Driver) / g}
}

func (p Pair) check(l *fault.List, path string) {
	teeth(l, join(path, "driver"), p.Driver)
	teeth(l, join(path, "driven"), p.Driven)
}

func teeth(l *fault.List, path string, z int) {
	if z < 4 || z > 1000 {
		code := fault.OutOfRange
		if z == 0 {
			code = fault.Missing
		}
		l.Add(fault.Fault{Code: code, Path: path, Value: strconv.Itoa(z), Unit: "teeth", Rule: "must be 4 to 1000 teeth"})
	}
}

func join(path, field string) string {
	if path == "" {
		return field
	}
	return path + "." + field
}

// Train is pairs one behind the other; the ratio is the product of driven over
// the product of drivers (Khurmi & Gupta, Theory of Machines, 2009, ex. 13.1).
// An idler between two wheels is left out: it changes the direction only.
type Train []Pair

// Ratio returns the ratio of the whole train, exact; an empty train is one to
// one. Errors: teeth outside 4 to 1000, more digits than stay exact.
func (t Train) Ratio() (Ratio, error) {
	var l fault.List
	for i, p := range t {
		p.check(&l, strconv.Itoa(i))
	}
	if err := l.Err(); err != nil {
		return Ratio{}, err
	}
	r := OneToOne()
	for _, p := range t {
		var err error
		if r, err = r.Times(p.ratio()); err != nil {
			return Ratio{}, err
		}
	}
	return r, nil
}
