package transmission

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Rim is what a dial gauge read on the rim of the pressure plate with the lever
// tied back and the clutch turned by hand: one reading against each spring nut,
// in order round the plate, the gauge fixed. Higher is lifted further.
type Rim struct {
	Heights []measure.Reading[units.Length]
}

// Trim is how to make the plate lift evenly.
type Trim struct {
	Tilt   units.Angle                   `json:"tilt"`    // of the plate
	RunOut measure.Reading[units.Length] `json:"run_out"` // highest to lowest that the tilt makes at the rim, a total reading
	Lag    units.Length                  `json:"lag"`     // what the low side lifts less than the middle: half of RunOut
	Lowest int                           `json:"lowest"`  // index of the nut nearest to the side that lifts least
	Warp   units.Length                  `json:"warp"`    // root mean square of what no tilt explains: a plate that is not flat
	Moves  []units.Angle                 `json:"moves"`   // of each nut, inward positive, in whole flats; they add up to nothing
	Flats  []int                         `json:"flats"`   // the same in flats
	After  units.Length                  `json:"after"`   // run-out left after the whole flats
	OneNut units.Angle                   `json:"one_nut"` // the same tilt, if a single nut were out by this much
	Text   string                        `json:"text"`
	Reason fault.Reason                  `json:"reason,omitzero"` // why there is nothing to trim, if there is not
	Basis  refdata.Basis                 `json:"basis"`
}

// Even returns how to trim the spring nuts so that the plate lifts evenly. A nut
// further in holds its side back. With N >= 3 equal springs on a circle of radius
// Rs and a rigid plate free to tilt on a central rod, nuts out of true by dn tilt
// it by 2 P/(N Rs) hypot(sum dn cos, sum dn sin); one nut alone by 2 dn P/(N Rs),
// which a gauge at radius Ro reads as 4 dn P Ro/(N Rs) (statics, derived here).
// The least turning that takes a tilt out turns the nuts as its own slope:
// dn = tilt Rs/P cos. Heights are split into mean, one wave round the rim, and a
// rest. Tilt within twice its uncertainty, or less than half a flat could mend, is
// left. Errors: fewer than three nuts or readings, one that was not taken, missing
// circle or rim, one central nut.
func (c Clutch) Even(rim Rim) (Trim, error) {
	var l fault.List
	n := len(rim.Heights)
	if c.Nuts.Kind == Central {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "nuts.kind", Value: c.Nuts.Kind.String(), Rule: "must be a nut to each spring for there to be anything to trim"})
	}
	if n != c.Springs.Count || n < 3 {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "rim.heights", Value: number(float64(n)), Rule: "must be one reading to each of three or more spring nuts; the clutch has " + number(float64(c.Springs.Count))})
	}
	need(&l, "nuts.pitch", c.Nuts.Pitch.Millimetres(), "mm", 0.2, 5)
	need(&l, "nuts.circle", c.Nuts.Circle.Millimetres(), "mm", 10, 500)
	over := c.Plates.Rim
	if over == 0 {
		over = c.Plates.Outer
	}
	need(&l, "plates.rim", over.Millimetres(), "mm", 10, 1000)
	in := make([]measure.Input, n)
	for i := range rim.Heights {
		path := "rim.heights[" + number(float64(i)) + "]"
		given(&l, path, &rim.Heights[i], "mm", 1000, -50, 50)
		in[i] = rim.Heights[i].SI()
	}
	if err := l.Err(); err != nil {
		return Trim{}, err
	}
	ro, rs, pitch := over.Metres()/2, c.Nuts.Circle.Metres()/2, c.Nuts.Pitch.Metres()
	around := func(i int) float64 { return 2 * math.Pi * float64(i) / float64(n) }
	wave := func(h []float64) (cos, sin float64) { // the one wave round the rim: its two halves
		for i, x := range h {
			cos += 2 * x * math.Cos(around(i)) / float64(n)
			sin += 2 * x * math.Sin(around(i)) / float64(n)
		}
		return cos, sin
	}
	h := make([]float64, n)
	mean := 0.0
	for i := range in {
		h[i] = in[i].X
		mean += h[i] / float64(n)
	}
	a, b := wave(h)
	size := math.Hypot(a, b)
	t := Trim{Tilt: units.Radians(size / ro), Lag: units.Metres(size), Moves: make([]units.Angle, n), Flats: make([]int, n)}
	var err error
	if t.RunOut, err = measure.Propagate[units.Length](func(x []float64) float64 { a, b := wave(x); return 2 * math.Hypot(a, b) }, in...); err != nil {
		return Trim{}, fault.Under("rim", err)
	}
	rest, lowest := 0.0, 0
	for i := range h {
		at := a*math.Cos(around(i)) + b*math.Sin(around(i))
		rest += (h[i] - mean - at) * (h[i] - mean - at) / float64(n)
		if at < a*math.Cos(around(lowest))+b*math.Sin(around(lowest)) {
			lowest = i
		}
	}
	t.Warp, t.Lowest = units.Metres(math.Sqrt(rest)), lowest
	t.OneNut = units.Turns(size / ro * float64(n) * rs / (2 * pitch))
	t.Basis = refdata.Basis{
		Sources:  []refdata.Source{{Title: "tilt of a rigid plate on equal springs, statics", Status: refdata.Derived}, refdata.Practice()},
		Cautions: []refdata.Caution{refdata.SpringsUnderLoad, refdata.DeferToManual},
	}
	if size <= 2*t.RunOut.U().Metres()/2 {
		t.Reason = fault.Reason{Code: "even-within-reading", Text: "the plate lifts evenly as near as the gauge can tell"}
		t.Text = t.Reason.Text
		t.After = units.Metres(2 * size)
		return t, nil
	}
	// a side that is high is turned in, one that is low out
	exact := make([]float64, n)
	for i := range exact {
		exact[i] = (a*math.Cos(around(i)) + b*math.Sin(around(i))) / ro * rs / pitch
	}
	whole(exact, t.Flats)
	var left [2]float64
	for i, f := range t.Flats {
		t.Moves[i] = units.Turns(float64(f) * flat)
		left[0] += float64(f) * flat * math.Cos(around(i))
		left[1] += float64(f) * flat * math.Sin(around(i))
	}
	k := 2 * pitch / (float64(n) * rs) * ro
	t.After = units.Metres(2 * math.Hypot(a-k*left[0], b-k*left[1]))
	t.Text = t.words()
	if t.After >= t.RunOut.Value() {
		clear(t.Moves)
		clear(t.Flats)
		t.After = t.RunOut.Value()
		t.Reason = fault.Reason{Code: "even-within-a-flat", Text: "the plate lifts evenly to within what a flat of one nut would change"}
		t.Text = t.Reason.Text
	}
	return t, nil
}

// whole rounds turns to flats that add up to nothing, so that the clamp stays:
// each to the nearest, then those nearest to the other side give way.
func whole(turns []float64, flats []int) {
	sum := 0
	for i, x := range turns {
		flats[i] = int(math.Round(x / flat))
		sum += flats[i]
	}
	for ; sum != 0; sum -= sign(sum) {
		best, cost := 0, math.Inf(1)
		for i, x := range turns {
			if c := math.Abs(float64(flats[i]-sign(sum)) - x/flat); c < cost {
				best, cost = i, c
			}
		}
		flats[best] -= sign(sum)
	}
}

func sign(x int) int {
	if x < 0 {
		return -1
	}
	return 1
}

func (t *Trim) words() string {
	text := ""
	for i, f := range t.Flats {
		if f == 0 {
			continue
		}
		if text != "" {
			text += ", "
		}
		text += "nut " + number(float64(i+1))
		if f > 0 {
			text += " in by " + words(f)
		} else {
			text += " out by " + words(-f)
		}
	}
	if text == "" {
		return "leave the nuts"
	}
	return text
}
