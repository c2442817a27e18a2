package fastener

import (
	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Friction is the coefficient of friction of a threaded joint as a range, since
// nobody knows it better than that without measuring.
type Friction struct {
	Name   string                        `json:"name"`
	Thread measure.Interval[units.Ratio] `json:"thread"`
	Head   measure.Interval[units.Ratio] `json:"head"`
	Status refdata.Status                `json:"status"`
}

// The three that follow are the friction classes A, B and C of VDI 2230, from
// memory; each for thread and head alike.

// Greased is a joint with molybdenum disulphide paste or wax: 0.04 to 0.10.
func Greased() Friction { return friction("greased", 0.04, 0.10) }

// Oiled is a joint lightly oiled, the usual state: 0.08 to 0.16.
func Oiled() Friction { return friction("oiled", 0.08, 0.16) }

// Dry is a clean dry joint, black or as rolled: 0.14 to 0.24.
func Dry() Friction { return friction("dry", 0.14, 0.24) }

func friction(name string, low, high units.Ratio) Friction {
	r := measure.Between(low, high)
	return Friction{name, r, r, refdata.FromMemory}
}

// SameFriction returns a friction known to be one figure in thread and under the
// head, as worked examples have it.
func SameFriction(mu units.Ratio) Friction {
	r := measure.Between(mu, mu)
	return Friction{"given", r, r, 0}
}

func (f Friction) check(l *fault.List) {
	for _, r := range [...]struct {
		path string
		r    measure.Interval[units.Ratio]
	}{{"friction.thread", f.Thread}, {"friction.head", f.Head}} {
		if !(r.r.Low >= 0 && r.r.High >= r.r.Low && r.r.High <= 1) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: r.path, Value: r.r.String(), Rule: "0 to 1, low end first"})
		}
	}
}
