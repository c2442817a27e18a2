package cam

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Sample is one reading of lift at a camshaft angle.
type Sample struct {
	At   units.CamAngle `json:"at"`
	Lift units.Length   `json:"lift"`
}

// CrankSample returns the sample read with a disc on the crank of an engine whose
// cam turns at half speed; count the angle through both turns of the cycle. Figures
// that are not finite pass into the sample, and [Fit] and [Identify] refuse it.
func CrankSample(at units.CrankAngle, lift units.Length) Sample {
	return Sample{At: at.AtHalfSpeedCam(), Lift: lift}
}

// Criterion says how much the readings are smoothed.
type Criterion uint8

// The criteria.
const (
	// CrossValidated smooths so that each reading is best foretold by the
	// others: least n RSS/(n - tr A)^2, generalised cross-validation (Craven and
	// Wahba, Numer. Math. 31 (1979) 377, from memory).
	CrossValidated Criterion = iota
	// KnownNoise smooths for least expected error given the noise of a reading:
	// least RSS/s^2 + 2 tr A, the unbiased estimate of risk (Mallows's C_p; same
	// paper, from memory).
	KnownNoise
	// Interpolated goes through every reading.
	Interpolated
)

// String returns the criterion in words.
func (c Criterion) String() string {
	switch c {
	case CrossValidated:
		return "smoothed by generalised cross-validation"
	case KnownNoise:
		return "smoothed for a known noise"
	case Interpolated:
		return "interpolated"
	}
	return "no criterion"
}

// MarshalText returns the text of String.
func (c Criterion) MarshalText() ([]byte, error) { return []byte(c.String()), nil }

// FitOptions say how a curve is drawn through readings. The zero value is the
// default throughout.
type FitOptions struct {
	Criterion Criterion    // default CrossValidated
	Noise     units.Length // standard deviation of one reading, for KnownNoise; default 0.01 mm
	// KeepZero leaves the gauge's zero as it was read, set on the base circle by
	// hand; default false: the level of the base circle is found from three readings
	// on it or more, and taken off.
	KeepZero bool
	// FillBase is the longest stretch without readings that may be taken as base
	// circle if lift at both its ends is small; default 300° of the cam. A
	// stretch elsewhere may be no longer than 20°.
	FillBase units.CamAngle
	// Small is the lift that counts as base circle beside a stretch without
	// readings; default 0.1 mm.
	Small units.Length
}

// Fitted is a curve with how it was drawn.
type Fitted struct {
	*Curve     `json:"-"`
	Criterion  Criterion      `json:"criterion"`
	Readings   int            `json:"readings"`   // used, after readings at one angle were averaged
	Parameters float64        `json:"parameters"` // equivalent number of free figures, tr A
	Noise      units.Length   `json:"noise"`      // of one reading: as found, or as given; 0 if interpolated
	Doubt      units.Length   `json:"doubt"`      // typical standard uncertainty of the curve's lift, noise sqrt(tr A/n); 0 if interpolated
	Rough      units.Length   `json:"rough"`      // root mean square of reading less curve
	Zero       units.Length   `json:"zero"`       // level of the base circle taken off the readings
	RunOut     units.Length   `json:"run_out"`    // greatest less least reading on the base circle
	Filled     units.CamAngle `json:"filled"`     // of base circle that was not read
	Basis      refdata.Basis  `json:"basis"`
}

const (
	leastReadings = 8
	mostReadings  = 100_000
	sameAngle     = 1e-6             // degrees
	longestGap    = 20.0 + sameAngle // degrees of the cam, off the base circle
	fillStep      = 5.0              // degrees between the zeros put into a stretch that was not read
)

// Fit draws a periodic curve through readings of lift, in any order and unevenly
// spaced, over one turn of the cam: the function of least integral of squared
// acceleration for its distance from the readings, which is a cubic spline with
// knots at the readings (Reinsch, Numer. Math. 10 (1967) 177, from memory). How
// close it keeps is set by the criterion. The base circle may be left unread.
//
// Errors: fewer than 8 angles; a reading that is not finite, an angle beyond
// 1000 turns; a lift beyond 100 mm; a stretch without readings; a noise not above
// zero; no base circle to take zero from.
func Fit(samples []Sample, opt FitOptions) (Fitted, error) {
	noiseGiven := opt.Noise != 0
	opt, err := opt.filled()
	var l fault.List
	l.Under("options", err)
	at, y, weight := gather(&l, samples)
	if err := l.Err(); err != nil {
		return Fitted{}, err
	}
	out := Fitted{Criterion: opt.Criterion, Readings: len(at)}
	if opt.Criterion == KnownNoise && !noiseGiven {
		out.Basis.Assumed = append(out.Basis.Assumed, refdata.Assumption{What: "noise of one reading", Value: "0.01 mm, a dial gauge", Status: refdata.CommonPractice})
	}
	if !opt.KeepZero {
		most := math.Inf(1)
		if slices.ContainsFunc(gaps(at), func(g float64) bool { return g > longestGap }) {
			most = opt.Small.Millimetres() / 2
		}
		zero, runOut := baseLevel(y, most)
		out.Zero, out.RunOut = units.Millimetres(zero), units.Millimetres(runOut)
		for i := range y {
			y[i] -= zero
		}
	}
	at, y, weight, filled, err := fillBase(at, y, weight, opt)
	if err != nil {
		return Fitted{}, err
	}
	out.Filled = units.CamDegrees(filled)
	if filled > 0 {
		out.Basis.Assumed = append(out.Basis.Assumed, refdata.Assumption{What: "lift over " + units.CamDegrees(filled).In(units.CamDegree, 0) + " that was not read", Value: "none, base circle", Status: refdata.CommonPractice})
	}
	start := at[0]
	for i := range at {
		at[i] -= start
	}
	smooth(&out, start, at, y, weight, opt)
	out.Basis.Sources = []refdata.Source{
		{Title: "C. H. Reinsch, Smoothing by spline functions, Numer. Math. 10", Clause: "p. 177", Status: refdata.FromMemory},
		{Title: "P. Craven and G. Wahba, Smoothing noisy data with spline functions, Numer. Math. 31", Clause: "p. 377", Status: refdata.FromMemory},
	}
	return out, nil
}

// InterpolateEven returns the periodic cubic spline through lifts read at even
// spacing over one turn of the cam, the first at angle zero: the quick way for a
// table of lift. Errors: fewer than 8, more than 100 000, or a lift that is not
// finite or beyond 100 mm.
func InterpolateEven(lift []units.Length) (*Curve, error) {
	n := len(lift)
	if n < leastReadings || n > mostReadings {
		return nil, tooFew(n)
	}
	at, y := make([]float64, n), make([]float64, n)
	for i, v := range lift {
		if !(v >= -100*units.Millimetre && v <= 100*units.Millimetre) {
			return nil, fault.Fault{Code: fault.OutOfRange, Path: "lift[" + strconv.Itoa(i) + "]", Unit: "mm", Rule: "must be finite and within 100 mm"}
		}
		at[i], y[i] = turnDegrees*float64(i)/float64(n), v.Millimetres()
	}
	return newCurve(0, at, y, seconds(at, y)), nil
}

func tooFew(n int) error {
	return fault.Fault{Code: fault.OutOfRange, Path: "readings", Value: strconv.Itoa(n), Rule: "a curve needs 8 to 100000 readings at different angles"}
}

func (o FitOptions) filled() (FitOptions, error) {
	var l fault.List
	if o.Criterion > Interpolated {
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "criterion", Value: strconv.Itoa(int(o.Criterion)), Rule: "CrossValidated, KnownNoise or Interpolated"})
	}
	positive(&l, "noise", o.Noise, "mm")
	positive(&l, "fill_base", o.FillBase, "° cam")
	positive(&l, "small", o.Small, "mm")
	if o.Noise == 0 {
		o.Noise = units.Millimetre / 100
	}
	if o.FillBase == 0 {
		o.FillBase = 300 * units.CamDegree
	}
	if o.Small == 0 {
		o.Small = units.Millimetre / 10
	}
	return o, l.Err()
}

func positive[Q units.Quantity](l *fault.List, path string, v Q, unit string) {
	if !(v >= 0) || !sane(v) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: path, Unit: unit, Rule: "must be finite and not below zero"})
	}
}

// gather brings the readings into one turn, in order, those at one angle averaged.
func gather(l *fault.List, samples []Sample) (at, y, weight []float64) {
	if len(samples) < leastReadings || len(samples) > mostReadings {
		l.Add(fault.Faults(tooFew(len(samples)))...)
		return nil, nil, nil
	}
	type point struct{ at, y float64 }
	points := make([]point, 0, len(samples))
	for i, s := range samples {
		path := "readings[" + strconv.Itoa(i) + "]"
		if a := s.At.Degrees(); !(a >= -1000*turnDegrees && a <= 1000*turnDegrees) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: path + ".at", Unit: "° cam", Rule: "must be finite and within 1000 turns"})
		}
		if y := s.Lift.Millimetres(); !(y >= -100 && y <= 100) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: path + ".lift", Unit: "mm", Rule: "must be finite and within 100 mm"})
		}
		points = append(points, point{within(s.At.Degrees()), s.Lift.Millimetres()})
	}
	if l.Len() > 0 {
		return nil, nil, nil
	}
	slices.SortStableFunc(points, func(a, b point) int { return cmp.Compare(a.at, b.at) })
	for _, p := range points {
		if n := len(at); n > 0 && p.at-at[n-1] < sameAngle {
			y[n-1] = (y[n-1]*weight[n-1] + p.y) / (weight[n-1] + 1)
			weight[n-1]++
			continue
		}
		at, y, weight = append(at, p.at), append(y, p.y), append(weight, 1)
	}
	// The last may be the first a turn on.
	if n := len(at); at[0]+turnDegrees-at[n-1] < sameAngle {
		y[0] = (y[0]*weight[0] + y[n-1]*weight[n-1]) / (weight[0] + weight[n-1])
		weight[0] += weight[n-1]
		at, y, weight = at[:n-1], y[:n-1], weight[:n-1]
	}
	if len(at) < leastReadings {
		l.Add(fault.Faults(tooFew(len(at)))...)
	}
	return at, y, weight
}

// gaps are the stretches from each angle to the next, round the turn.
func gaps(at []float64) []float64 {
	all := make([]float64, len(at))
	for i := range at {
		if i+1 < len(at) {
			all[i] = at[i+1] - at[i]
		} else {
			all[i] = at[0] + turnDegrees - at[i]
		}
	}
	return all
}

// baseLevel finds the level of the base circle from lifts in the order of angle: the
// place where a tenth of them lie closest together in the lower half, then the mean
// of all within 2.5 standard deviations of it, by turns. The noise is judged from
// second differences among the low readings. Of a lobe whose base circle was hardly
// read, most says how far above the level a reading and its neighbours may be to
// count for that: its flanks bend and are no noise.
func baseLevel(y []float64, most float64) (level, runOut float64) {
	n := len(y)
	s := slices.Clone(y)
	slices.Sort(s)
	k := max(n/10, 3)
	best := math.Inf(1)
	for i := 0; i+k <= max(n/2, k); i++ {
		if w := s[i+k-1] - s[i]; w < best {
			best, level = w, (s[i]+s[i+k-1])/2
		}
	}
	var bends []float64
	for i := range n {
		before, after := y[(i+n-1)%n], y[(i+1)%n]
		if y[i] <= s[n/3] && max(before, y[i], after) <= level+most {
			bends = append(bends, math.Abs(before-2*y[i]+after))
		}
	}
	near := 1e-6
	if len(bends) > 0 {
		slices.Sort(bends)
		// The median size of a second difference is 0.6745 sqrt(6) of the noise.
		near += 2.5 * bends[len(bends)/2] / (0.6745 * math.Sqrt(6))
	}
	near = max(near, best)
	for range 8 {
		sum, count, lo, hi := 0.0, 0, math.Inf(1), math.Inf(-1)
		for _, v := range s {
			if math.Abs(v-level) <= near {
				sum += v
				count++
				lo, hi = min(lo, v), max(hi, v)
			}
		}
		if count == 0 { // the mean of two clusters fell between them
			break
		}
		level, runOut = sum/float64(count), hi-lo
	}
	return level, runOut
}

// fillBase puts zeros into a long stretch without readings between two low ones.
func fillBase(at, y, weight []float64, opt FitOptions) (a, b, w []float64, filled float64, err error) {
	small := opt.Small.Millimetres()
	var front []float64 // zeros past the turn, which belong before the first reading
	for i, gap := range gaps(at) {
		next := (i + 1) % len(at)
		a, b, w = append(a, at[i]), append(b, y[i]), append(w, weight[i])
		if gap <= longestGap {
			continue
		}
		if tooLong(gap, opt) || math.Abs(y[i]) > small || math.Abs(y[next]) > small {
			return nil, nil, nil, 0, unread(at[i], gap, y[i], y[next], opt)
		}
		filled += gap
		steps := int(math.Ceil((gap - sameAngle) / fillStep)) // not one more for rounding
		for k := 1; k < steps; k++ {
			x := at[i] + gap*float64(k)/float64(steps)
			if x >= turnDegrees {
				front = append(front, x-turnDegrees)
				continue
			}
			a, b, w = append(a, x), append(b, 0), append(w, 1)
		}
	}
	zeros, ones := make([]float64, len(front)), make([]float64, len(front))
	for i := range ones {
		ones[i] = 1
	}
	return append(front, a...), append(zeros, b...), append(ones, w...), filled, nil
}

// tooLong reports a stretch longer than may be taken as base circle.
func tooLong(gap float64, opt FitOptions) bool { return gap > opt.FillBase.Degrees()+sameAngle }

// unread is the fault of a stretch without readings that cannot be taken as base
// circle, with what would settle it.
func unread(from, gap, before, after float64, opt FitOptions) fault.Fault {
	f := fault.Fault{
		Code: fault.Missing, Path: "readings",
		Value: units.CamDegrees(gap).In(units.CamDegree, 1) + " from " + units.CamDegrees(from).In(units.CamDegree, 1) +
			", lift " + units.Millimetres(before).In(units.Millimetre, 2) + " and " + units.Millimetres(after).In(units.Millimetre, 2) + " at its ends",
		Rule: "off the base circle no stretch may be longer than 20° of the cam without a reading",
	}
	switch {
	case tooLong(gap, opt):
		f.Rule += ", and on it none longer than " + opt.FillBase.In(units.CamDegree, 0)
	case opt.KeepZero:
		f.Rule += "; if this one is base circle, the gauge must show at most " + opt.Small.In(units.Millimetre, 2) + " at both its ends"
	default:
		f.Rule += "; if this one is base circle, too little of it was read to find its level: read three places on it, one of them at each end, or set the gauge to zero there and keep that zero"
	}
	return f
}
