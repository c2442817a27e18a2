package fastener

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Spanner is a spanner by its marking and the width over flats it is made for.
type Spanner struct {
	Marking string       `json:"marking"`
	Width   units.Length `json:"width"`
}

// Spanners returns the spanners of every series, narrowest first: Whitworth by
// both markings, BA 0 to 10, across flats 1/4 in to 1 1/2 in by 16ths, metric by
// 1 mm from 4 to 36 mm.
func Spanners() []Spanner {
	var out []Spanner
	for s := range refdata.WhitworthSpanners().All() {
		out = append(out, Spanner{whitworthMarks(s), s.AcrossFlats})
	}
	for n := range 11 {
		if h, ok := refdata.BAHexagons().ByName(strconv.Itoa(n) + " BA"); ok {
			out = append(out, Spanner{h.Name, h.AcrossFlats})
		}
	}
	for n := 4; n <= 24; n++ {
		out = append(out, Spanner{sixteenthsMixed(n) + " AF", units.Inches(float64(n) / 16)})
	}
	for n := 4; n <= 36; n++ {
		out = append(out, Spanner{strconv.Itoa(n) + " mm", units.Millimetres(float64(n))})
	}
	slices.SortStableFunc(out, func(a, b Spanner) int {
		return cmp.Compare(a.Width, b.Width)
	})
	return out
}

// Grip says how a spanner sits on a hexagon.
type Grip uint8

// The grips, best first. The zero value is none of them.
const (
	Snug       Grip = iota + 1 // as a sound pair of one series
	Slack                      // as the loosest pair the standards allow: sound corners only
	WillRound                  // bears so near the corners that it will round them
	SlipsRound                 // turns on the hexagon without biting
	TooSmall                   // does not go on
)

// String returns the grip in words.
func (g Grip) String() string {
	switch g {
	case Snug:
		return "fits"
	case Slack:
		return "slack, sound corners only"
	case WillRound:
		return "will round the corners"
	case SlipsRound:
		return "slips round"
	case TooSmall:
		return "does not go on"
	}
	return "not known"
}

// MarshalText returns the words of String.
func (g Grip) MarshalText() ([]byte, error) { return []byte(g.String()), nil }

// SpannerFit is how one spanner sits on a hexagon.
type SpannerFit struct {
	Spanner Spanner      `json:"spanner"`
	Opening units.Length `json:"opening"` // between the jaws, allowance included
	Play    units.Length `json:"play"`    // opening less flats; negative: does not go on
	// FreeTurn is how far the spanner turns before its jaws bear:
	// cos a + tan 30° sin a = opening/flats.
	FreeTurn units.Angle `json:"free_turn"`
	// Arm is how far from the middle of the flat the jaws bear, compared with
	// a spanner without play: sin(30° - a)/sin 30°. The force on the corner
	// for the same torque grows as its inverse.
	Arm  units.Ratio `json:"arm"`
	Grip Grip        `json:"grip"`
	// GoesOn is the chance that it goes on at all, the reading being uncertain.
	GoesOn units.Ratio `json:"goes_on"`
}

// Fits is how each spanner of a set sits, best first.
type Fits struct {
	Fits   []SpannerFit  `json:"fits"`
	Reason fault.Reason  `json:"reason"` // why none of the set is fit to use
	Basis  refdata.Basis `json:"basis"`
}

// Best returns the spanner to use, and whether there is one that fits.
func (f Fits) Best() (SpannerFit, bool) {
	if f.Reason.Given() || len(f.Fits) == 0 {
		return SpannerFit{}, false
	}
	return f.Fits[0], true
}

// FitOptions change what [SpannersFor] takes for granted.
type FitOptions struct {
	// Allowance is how much wider than its marked width an opening is. Zero
	// means 0.025 mm + 0.75 % of the width, the middle of the limits of open
	// jaws in ISO 691 (from memory). Use 1 µm for jaws that were measured.
	Allowance units.Length `json:"allowance"`
}

const (
	// A sound pair has up to this play over flats: a jaw in the middle of its
	// limits on a hexagon in the middle of its own.
	snugPlay = 0.025
	// The loosest pair the standards allow at 13 mm, 13.24 on 12.73 mm: from
	// memory of ISO 691 and ISO 4014.
	slackPlay = 0.040
	// Corners of real hexagons are rounded: least width across them, in flats.
	// ISO 4014 has 14.38 mm on 12.73 mm (from memory).
	cornerWidth = 1.13
)

// SpannersFor returns how each spanner of a set sits on a hexagon of the width
// read, best first: those that go on before those that do not, the least play
// first. A nil set means all of [Spanners]. The geometry is exact for a sharp
// hexagon between parallel jaws; the bounds between the grips are those named
// in the basis, a judgement. Faults: flats not read, out of 2 mm to 150 mm; an
// allowance out of 0 to 2 mm; a spanner whose width is not above zero.
func SpannersFor(flats measure.Reading[units.Length], set []Spanner, opt FitOptions) (Fits, error) {
	var l fault.List
	if !flats.Taken() {
		l.Add(fault.Fault{Code: fault.Missing, Path: "flats", Unit: "mm", Rule: "measure across the flats"})
	}
	s, u := length(&l, "flats", flats, 2, 150, 1e-3)
	if !(opt.Allowance >= 0 && opt.Allowance <= 2*units.Millimetre) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "options.allowance", Value: opt.Allowance.String(), Unit: "mm", Rule: "0 to 2 mm"})
	}
	if set == nil {
		set = Spanners()
	}
	for i, sp := range set {
		if !(sp.Width > 0 && sp.Width <= units.Metre) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: "set[" + strconv.Itoa(i) + "].width", Value: sp.Width.String(), Unit: "mm", Rule: "above 0, up to 1 m"})
		}
	}
	if err := l.Err(); err != nil {
		return Fits{}, err
	}
	f := Fits{Fits: make([]SpannerFit, 0, len(set))}
	for _, sp := range set {
		f.Fits = append(f.Fits, fitOf(sp, s, u, opt))
	}
	slices.SortStableFunc(f.Fits, func(a, b SpannerFit) int {
		return cmp.Or(
			cmp.Compare(max(a.Grip, SlipsRound), max(b.Grip, SlipsRound)), // those that do not go on are last
			cmp.Compare(a.off(), b.off()),
		)
	})
	if len(f.Fits) == 0 || f.Fits[0].Grip > Slack {
		f.Reason = fault.Reason{Code: "no-spanner-fits", Text: "no spanner of this set is fit for these flats"}
	}
	f.Basis.Sources = []refdata.Source{{Title: "hexagon between parallel jaws", Clause: "plane geometry", Status: refdata.Derived}}
	for _, x := range f.Fits {
		if x.Grip <= Slack {
			f.Basis.Sources = ownedSpanner(f.Basis.Sources, x.Spanner.Marking)
		}
	}
	f.Basis.Assumed = []refdata.Assumption{{What: "play of a fitting pair", Value: "up to 2.5 % of the flats, slack up to 4 %, slips at 13 %", Status: refdata.FromMemory}}
	if opt.Allowance == 0 {
		f.Basis.Assumed = append(f.Basis.Assumed, refdata.Assumption{What: "opening over marked width", Value: "0.025 mm + 0.75 %", Status: refdata.FromMemory})
	}
	f.Basis.NotChecked = []refdata.Unchecked{{What: "corners", Why: "not read", Settle: "look; file a rounded head down one size rather than force it"}}
	f.Basis.Cautions = []refdata.Caution{refdata.RetainingNuts}
	return f, nil
}

// off orders fits: by play, one that goes on only if the reading was a little
// large after those that surely do.
func (f SpannerFit) off() units.Length {
	return max(f.Play, f.Play.Times(-10))
}

func fitOf(sp Spanner, s, u float64, opt FitOptions) SpannerFit {
	w := sp.Width.Millimetres()
	open := w + opt.Allowance.Millimetres()
	if opt.Allowance == 0 {
		open = w + 0.025 + 0.0075*w
	}
	f := SpannerFit{Spanner: sp, Opening: units.Millimetres(open), Play: units.Millimetres(open - s), Arm: 1, GoesOn: units.Value(tail((s - open) / u))}
	switch play := open/s - 1; {
	case play < 0:
		f.Grip = TooSmall
		// a reading a little large is not a hexagon that is too large
		if f.GoesOn > 0.05 {
			f.Grip = Snug
		}
		return f
	case open >= s*cornerWidth:
		f.Grip, f.Arm, f.FreeTurn = SlipsRound, 0, 30*units.Degree
		return f
	case play <= snugPlay:
		f.Grip = Snug
	case play <= slackPlay:
		f.Grip = Slack
	default:
		f.Grip = WillRound
	}
	a := freeTurn(open / s)
	f.FreeTurn = units.Radians(a)
	f.Arm = units.Value(math.Sin(math.Pi/6-a) / math.Sin(math.Pi/6))
	return f
}

// freeTurn solves cos a + tan 30° sin a = ratio for 0 to 30°, which is
// cos(30° - a) = ratio cos 30°.
func freeTurn(ratio float64) float64 {
	return max(math.Pi/6-math.Acos(min(ratio*math.Cos(math.Pi/6), 1)), 0) // at 1 the last bit falls below
}
