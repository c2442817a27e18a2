package fastener

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Convention says what "100 % of thread" means. For Whitworth, cycle and BA
// threads both are twice the basic depth; for the 60° flat forms they differ,
// 75 % by one being 90 % by the other, so it must be named.
type Convention uint8

// The conventions. The zero value is none of them.
const (
	ChartDepth  Convention = iota + 1 // 60° flat forms: 3H/4 a side, 1.299038 p in all, as the usual drill charts
	BasicHeight                       // 60° flat forms: 5H/8 a side, 1.082532 p in all, the basic height
)

// String returns the convention in words.
func (c Convention) String() string {
	switch c {
	case ChartDepth:
		return "of the charts' depth, 3H/4 a side on 60° flat forms"
	case BasicHeight:
		return "of the basic height, 5H/8 a side on 60° flat forms"
	}
	return "no convention"
}

// MarshalText returns the words of String.
func (c Convention) MarshalText() ([]byte, error) { return []byte(c.String()), nil }

// doubleDepth returns what counts as 100 %, in millimetres of diameter.
func (t Thread) doubleDepth(c Convention) float64 {
	switch t.form {
	case MetricForm, UnifiedForm:
		tri := t.form.triangle() * t.pitch.Millimetres()
		if c == ChartDepth {
			return 1.5 * tri
		}
		return 1.25 * tri
	}
	return 2 * t.section().h
}

// Tapping is a drill for a thread and what it gives.
type Tapping struct {
	Thread     Thread       `json:"thread"`
	Convention Convention   `json:"convention"`
	Hole       units.Length `json:"hole"` // that gives exactly what was wanted
	Choice     Choice       `json:"choice"`
	// Smaller and Larger are the drills of the set on either side of the choice,
	// the zero Choice if there is none.
	Smaller Choice        `json:"smaller"`
	Larger  Choice        `json:"larger"`
	Reason  fault.Reason  `json:"reason"` // why no drill of the set serves
	Basis   refdata.Basis `json:"basis"`
}

// Choice is a drill and the engagement it gives, the hole taken to be of the
// drill's size.
type Choice struct {
	Drill      Drill       `json:"drill"`
	Engagement units.Ratio `json:"engagement"`
}

func checkTapping(t Thread, c Convention, l *fault.List) {
	if t.IsZero() {
		l.Add(noThread("thread"))
	}
	if c != ChartDepth && c != BasicHeight {
		l.Add(fault.Fault{Code: fault.Missing, Path: "convention", Rule: "say which depth 100 % means: ChartDepth or BasicHeight"})
	}
}

func checkEngagement(e units.Ratio, l *fault.List) {
	if !(e >= 0.2 && e <= 1) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "engagement", Value: e.String(), Rule: "20 % to 100 %"})
	}
}

// TappingHole returns the hole for a wanted engagement of a thread, 20 % to
// 100 %: D - engagement × 2h, where 2h is 1.280655 p Whitworth, 1.065384 p cycle,
// 1.2 p BA (depths rounded as their standards round them), and 1.299038 p or
// 1.082532 p for metric and Unified as the convention has it. For Unified threads
// the former is that of Machinery's Handbook, 31st ed., p. 2155. Faults: no
// thread, no convention, engagement out of range.
func TappingHole(t Thread, engagement units.Ratio, c Convention) (units.Length, error) {
	var l fault.List
	checkTapping(t, c, &l)
	checkEngagement(engagement, &l)
	if err := l.Err(); err != nil {
		return 0, err
	}
	return t.hole(engagement, c), nil
}

func (t Thread) hole(engagement units.Ratio, c Convention) units.Length {
	return t.major - units.Millimetres(engagement.SI()*t.doubleDepth(c))
}

func (t Thread) engagement(hole units.Length, c Convention) units.Ratio {
	return units.Value((t.major - hole).Millimetres() / t.doubleDepth(c))
}

// Engagement returns the part of full thread depth that a hole leaves:
// (D - hole)/2h, with 2h as for [TappingHole]. It is negative if the hole is
// larger than the thread, and above 100 % if smaller than its minor diameter.
// Faults: no thread, no convention, a hole that is not above zero.
func Engagement(t Thread, hole units.Length, c Convention) (units.Ratio, error) {
	var l fault.List
	checkTapping(t, c, &l)
	if !(hole > 0 && hole <= units.Metre) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "hole", Value: hole.String(), Unit: "mm", Rule: "above 0, up to 1 m"})
	}
	if err := l.Err(); err != nil {
		return 0, err
	}
	return t.engagement(hole, c), nil
}

// TappingDrill returns the drill of a set that comes nearest to a wanted
// engagement, and its neighbours. A nil set means all of [Drills]. 65 % to 80 %
// of the chart depth is usual, less for small taps in tough stuff (common
// practice, no source). If the nearest drill misses by more than 15 points, or
// would leave the tap more than its full depth to cut, there is a Reason and no
// choice. Faults as for [TappingHole], and a drill that is not above zero.
func TappingDrill(t Thread, engagement units.Ratio, c Convention, set []Drill) (Tapping, error) {
	var l fault.List
	checkTapping(t, c, &l)
	checkEngagement(engagement, &l)
	if set == nil {
		set = allDrills()
	}
	for _, d := range set {
		if !(d.Diameter > 0 && d.Diameter <= units.Metre) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: "set", Value: d.Name + " " + d.Diameter.String(), Unit: "mm", Rule: "every drill is above 0, up to 1 m"})
		}
	}
	if err := l.Err(); err != nil {
		return Tapping{}, err
	}
	tap := Tapping{Thread: t, Convention: c, Hole: t.hole(engagement, c)}
	tap.Basis.Sources = owned(t.form.sources(), t)
	tap.Basis.NotChecked = []refdata.Unchecked{{What: "size of the hole", Why: "drills cut large in soft and thin stuff", Settle: "measure a trial hole, then Engagement"}}
	var best, under, over Drill
	for _, d := range set {
		if best.Diameter == 0 || (d.Diameter-tap.Hole).Abs() < (best.Diameter-tap.Hole).Abs() {
			best = d
		}
	}
	for _, d := range set {
		if d.Diameter < best.Diameter && d.Diameter > under.Diameter {
			under = d
		}
		if d.Diameter > best.Diameter && (over.Diameter == 0 || d.Diameter < over.Diameter) {
			over = d
		}
	}
	got := t.engagement(best.Diameter, c)
	if best.Diameter == 0 || math.Abs((got-engagement).SI()) > 0.15 || best.Diameter < t.minimumHole() {
		tap.Reason = fault.Reason{Code: "no-drill-near", Text: "no drill of this set comes near enough to the hole wanted"}
		return tap, nil
	}
	choice := func(d Drill) Choice {
		if d.Diameter == 0 {
			return Choice{}
		}
		return Choice{d, t.engagement(d.Diameter, c)}
	}
	tap.Choice, tap.Smaller, tap.Larger = choice(best), choice(under), choice(over)
	return tap, nil
}

// minimumHole is the basic minor diameter of the nut, less a hundredth of a
// millimetre for the rounding of drill sizes.
func (t Thread) minimumHole() units.Length { return units.Millimetres(t.section().inner - 0.01) }
