package transmission

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// FittedSpring is one spring of a set as measured by itself.
type FittedSpring struct {
	FreeLength measure.Reading[units.Length]     // needed
	Rate       measure.Reading[units.SpringRate] // not taken: that in [Springs] ± 3 %
}

// Mix is what a set of unequal springs does in a clutch, every nut turned in alike.
type Mix struct {
	// An even set that would press the plates as this one does.
	Rate measure.Reading[units.SpringRate] `json:"rate"` // of one spring: the mean
	Set  measure.Reading[units.Length]     `json:"set"`  // how much shorter than new: free lengths averaged by rate

	Loads  []units.Force                 `json:"loads"`   // of each spring, plates closed; 0 is loose
	Tilt   units.Angle                   `json:"tilt"`    // of the plate, lifted until its middle frees
	RunOut measure.Reading[units.Length] `json:"run_out"` // that tilt as a total reading at the rim
	Lag    units.Length                  `json:"lag"`     // what the low side lifts less than the middle: half of RunOut
	Lowest int                           `json:"lowest"`  // index of the spring nearest to the side that lifts least

	// What can be done without other springs.
	Order      []int         `json:"order,omitempty"` // which spring to put on each stud in turn, for the least run-out with the nuts alike; not given for more than eight
	OrderAfter units.Length  `json:"order_after"`     // run-out that leaves
	Flats      []int         `json:"flats"`           // or, left where they are: turn each nut in by so many flats, out if negative; they add up to nothing
	FlatsAfter units.Length  `json:"flats_after"`     // run-out that leaves
	Text       string        `json:"text"`
	Basis      refdata.Basis `json:"basis"`
}

// Into returns the condition found with rate, set and run-out of the mix where the
// condition has no reading of its own, for [Clutch.Window], [Adjust] and [Diagnose].
// The run-out is that at the setting the mix was worked out for.
func (m Mix) Into(found Condition) Condition {
	found.SpringRate = found.SpringRate.Or(m.Rate)
	found.SpringSet = found.SpringSet.Or(m.Set)
	found.RunOut = found.RunOut.Or(m.RunOut)
	return found
}

// Mixed returns what springs of different rate or length do: one to each stud in
// order round the plate, evenly spaced, every nut the given turns in from flush.
// With plates closed spring i is pressed by x_i = free length less seat and the clamp
// is the sum of k_i x_i, which an even set of the mean rate and the mean length
// weighed by rate gives as well. Lifted by y at its middle, a rigid plate free to
// tilt on a central rod stands where the moments of the springs balance:
//
//	sum k_i (x_i + y + a cos t_i + b sin t_i) (cos t_i, sin t_i) = 0, tilt = hypot(a, b)/Rs
//
// (statics, derived here); a spring that comes loose pushes no more. A nut turned in
// by (a cos t + b sin t)/pitch balances its side. The lift y is that which found says
// is wanted. Errors: as [Clutch.Window], springs that are not one to each stud, fewer
// than three, springs by a law, missing circle or rim, and readings outside 1 to 300
// mm or 0.1 to 1000 N/mm; Conflict if no spring is pressed.
func (c Clutch) Mixed(springs []FittedSpring, turns units.Angle, found Condition) (Mix, error) {
	var l fault.List
	s, err := c.resolve(&found)
	l.Under("", err)
	if err == nil {
		l.Under("", s.reach(turns))
	}
	n := len(springs)
	if n != c.Springs.Count || n < 3 {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "springs", Value: number(float64(n)), Rule: "must be one to each of three or more studs; the clutch has " + number(float64(c.Springs.Count))})
	}
	if c.Springs.Law != nil {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "springs.law", Rule: "must be coil springs told by rate and length"})
	}
	need(&l, "nuts.circle", c.Nuts.Circle.Millimetres(), "mm", 10, 500)
	rim := or(c.Plates.Rim.Millimetres(), c.Plates.Outer.Millimetres())
	need(&l, "plates.rim", rim, "mm", 10, 1000)
	in := make([]measure.Input, 2*n)
	for i := range springs {
		f := &springs[i]
		path := "springs[" + number(float64(i)) + "]"
		given(&l, path+".free_length", &f.FreeLength, "mm", 1000, 1, 300)
		rate := f.Rate
		if !rate.Taken() {
			rate = measure.Of(c.Springs.Rate, c.Springs.Rate.Times(0.03))
		}
		given(&l, path+".rate", &rate, "N/mm", 1e-3, 0.1, 1000)
		in[i], in[n+i] = f.FreeLength.SI(), rate.SI()
	}
	if err := l.Err(); err != nil {
		return Mix{}, err
	}
	set := newUneven(in, (s.flush+s.v[wear]-turns.Turns()*s.pitch)/1000, s.lift(&s.v)/1000, rim/c.Nuts.Circle.Millimetres())
	clamp := 0.0
	m := Mix{Loads: make([]units.Force, n)}
	for i := range m.Loads {
		f := set.rate[i] * math.Max(set.free[i]-set.seat, 0)
		clamp += f
		m.Loads[i] = units.Newtons(f)
	}
	if clamp == 0 {
		return Mix{}, fault.Fault{Code: fault.Conflict, Path: "turns", Value: turns.String(), Rule: "must be enough for the springs to touch"}
	}
	of := func(f func(free, rate []float64) float64) func([]float64) float64 {
		return func(x []float64) float64 { return f(x[:n], x[n:]) }
	}
	m.Rate, err = measure.Propagate[units.SpringRate](of(func(_, rate []float64) float64 { return mean(rate, nil) }), in...)
	l.Under("springs", err)
	m.Set, err = measure.Propagate[units.Length](of(func(free, rate []float64) float64 { return s.free/1000 - mean(free, rate) }), in...)
	l.Under("springs", err)
	m.RunOut, err = measure.Propagate[units.Length](of(func(free, rate []float64) float64 {
		t := set
		t.free, t.rate = free, rate
		return t.runOut(nil, nil)
	}), in...)
	l.Under("springs", err)
	a, b := set.balance(nil, nil)
	lowest, turnBack := math.Inf(1), make([]float64, n)
	for i := range n {
		up := a*set.cos[i] + b*set.sin[i]
		turnBack[i] = up * 1000 / s.pitch
		if up < lowest {
			lowest, m.Lowest = up, i
		}
	}
	m.Lag = m.RunOut.Value().Times(0.5)
	m.Tilt = units.Radians(math.Hypot(a, b) / c.Nuts.Circle.Metres() * 2)
	m.Flats = make([]int, n)
	whole(turnBack, m.Flats)
	for i, f := range m.Flats {
		turnBack[i] = float64(f) * flat * s.pitch / 1000
	}
	m.FlatsAfter = units.Metres(set.runOut(nil, turnBack))
	if m.FlatsAfter >= m.RunOut.Value() {
		clear(m.Flats)
		m.FlatsAfter = m.RunOut.Value()
	}
	order, after := set.order()
	m.Order, m.OrderAfter = order, units.Metres(after)
	m.Text = m.words(s.gap)
	m.Basis = refdata.Basis{
		Sources:  []refdata.Source{{Title: "balance of a rigid plate on unequal springs, statics", Status: refdata.Derived}},
		Cautions: []refdata.Caution{refdata.SpringsUnderLoad, refdata.DeferToManual},
	}
	return m, l.Err()
}

// words says what to do; gap is the clearance of a face in mm.
func (m *Mix) words(gap float64) string {
	text := "the plate lifts " + m.RunOut.Value().In(units.Millimetre, 2) + " out of true"
	if m.RunOut.Value().Millimetres() < gap {
		return text + ", less than the clearance of one face: leave it"
	}
	if m.Order != nil && m.OrderAfter < m.RunOut.Value().Times(0.7) {
		text += "; put on the studs in turn, springs"
		for _, i := range m.Order {
			text += " " + number(float64(i+1))
		}
		text += " leave " + m.OrderAfter.In(units.Millimetre, 2)
	}
	trim := (&Trim{Flats: m.Flats}).words()
	if trim == "leave the nuts" {
		return text
	}
	return text + "; or as they stand, " + trim + ", which leaves " + m.FlatsAfter.In(units.Millimetre, 2) + " at this setting"
}

func mean(x, weight []float64) float64 {
	sum, all := 0.0, 0.0
	for i := range x {
		w := 1.0
		if weight != nil {
			w = weight[i]
		}
		sum += w * x[i]
		all += w
	}
	return sum / all
}
