package drive

import (
	"math"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/solve"
)

// Sprockets is a chain drive: two sprockets and the chain's pitch.
type Sprockets struct {
	Pitch units.Length `json:"pitch"` // above zero; 5/8 in is exact
	Front int          `json:"front"` // teeth, 4 to 1000
	Rear  int          `json:"rear"`  // teeth, 4 to 1000
}

// Method is how chain length and centre distance are reckoned.
type Method uint8

// The methods.
const (
	// Series is the usual formula, L = 2X + (z1 + z2)/2 + ((z2 - z1)/2π)²/X in
	// pitches with X = C/p (Jindal, Machine Design, 2010, ex. 30-1).
	Series Method = iota
	// Tangent goes round the pitch circles:
	// L = 2X cos φ + z1 (1/2 - φ/π) + z2 (1/2 + φ/π), sin φ = (D2 - D1)/2C
	// (derived).
	Tangent
)

// String names the method.
func (m Method) String() string {
	if m == Tangent {
		return "tangents to the pitch circles"
	}
	return "series formula"
}

// MarshalText returns the words of String.
func (m Method) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// PitchDiameter returns the diameter of the circle that the pins of a chain of
// pitch p lie on round a sprocket of z teeth: p/sin(180°/z) (ISO 606 annex A,
// from memory; maker's and library tables agree to 0.04 %). Errors: p not above
// zero, z outside 4 to 1000.
func PitchDiameter(p units.Length, z int) (units.Length, error) {
	var l fault.List
	positive(&l, "pitch", p)
	teeth(&l, "teeth", z)
	if err := l.Err(); err != nil {
		return 0, err
	}
	return units.Millimetres(pitchDiameter(p.Millimetres(), z)), nil
}

func pitchDiameter(p float64, z int) float64 { return p / math.Sin(math.Pi/float64(z)) }

// PitchFor returns the pitch of a chain whose sprocket of z teeth has pitch
// diameter d. Errors as for [PitchDiameter].
func PitchFor(d units.Length, z int) (units.Length, error) {
	var l fault.List
	positive(&l, "pitch_diameter", d)
	teeth(&l, "teeth", z)
	if err := l.Err(); err != nil {
		return 0, err
	}
	return d.Times(math.Sin(math.Pi / float64(z))), nil
}

// SprocketForm is the outline of a sprocket for roller chain.
type SprocketForm struct {
	PitchDiameter units.Length `json:"pitch_diameter"`
	TipMost       units.Length `json:"tip_most"`    // D + 1.25 p - d1
	TipLeast      units.Length `json:"tip_least"`   // D + p (1 - 1.6/z) - d1
	SeatLeast     units.Length `json:"seat_least"`  // radius, 0.505 d1
	SeatMost      units.Length `json:"seat_most"`   // radius, 0.505 d1 + 0.069 ∛d1
	RootMost      units.Length `json:"root_most"`   // D - 2 SeatLeast
	RootLeast     units.Length `json:"root_least"`  // D - 2 SeatMost
	FlankLeast    units.Length `json:"flank_least"` // radius, 0.12 d1 (z + 2)
	FlankMost     units.Length `json:"flank_most"`  // radius, 0.008 d1 (z² + 180)
}

// FormOf returns the outline of a sprocket of z teeth for a chain of pitch p and
// roller diameter roller (ISO 606 tooth form as Bhandari, Design of Machine
// Elements, ex. 14.5, prints it). Errors: figures not above zero, a roller not
// below the pitch, teeth outside 4 to 1000.
func FormOf(p, roller units.Length, z int) (SprocketForm, error) {
	var l fault.List
	okP, okR := positive(&l, "pitch", p), positive(&l, "roller", roller)
	if okP && okR && roller >= p {
		l.Add(fault.Fault{Code: fault.Conflict, Path: "roller", Value: roller.String(), Unit: "mm", Rule: "must be below the pitch"})
	}
	teeth(&l, "teeth", z)
	if err := l.Err(); err != nil {
		return SprocketForm{}, err
	}
	d, d1, n := pitchDiameter(p.Millimetres(), z), roller.Millimetres(), float64(z)
	seat, most := 0.505*d1, 0.505*d1+0.069*math.Cbrt(d1)
	mm := units.Millimetres
	return SprocketForm{
		PitchDiameter: mm(d), TipMost: mm(d + 1.25*p.Millimetres() - d1), TipLeast: mm(d + p.Millimetres()*(1-1.6/n) - d1),
		SeatLeast: mm(seat), SeatMost: mm(most), RootMost: mm(d - 2*seat), RootLeast: mm(d - 2*most),
		FlankLeast: mm(0.12 * d1 * (n + 2)), FlankMost: mm(0.008 * d1 * (n*n + 180)),
	}, nil
}

// Run is a chain round its sprockets.
type Run struct {
	Pitches   float64      `json:"pitches"` // length over pitch; a chain needs a whole number, even without a cranked link
	Length    units.Length `json:"length"`
	Centre    units.Length `json:"centre"`
	FrontWrap units.Angle  `json:"front_wrap"` // of chain on the front sprocket
	RearWrap  units.Angle  `json:"rear_wrap"`
	Straight  units.Length `json:"straight"` // free run between the sprockets
	Method    Method       `json:"method"`
}

// ChainLength returns the chain that a centre distance needs. The two methods
// differ by some hundredths of a pitch. Errors: figures not above zero, teeth
// outside 4 to 1000, a centre so short that the sprockets meet, an unknown
// method.
func ChainLength(s Sprockets, centre units.Length, m Method) (Run, error) {
	var l fault.List
	s.check(&l)
	if positive(&l, "centre", centre) && l.Len() == 0 {
		if least := s.leastCentre(); centre.Millimetres() <= least {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: "centre", Value: centre.String(), Unit: "mm", Rule: "the sprockets meet at " + units.Millimetres(least).In(units.Millimetre, 1)})
		}
	}
	checkMethod(&l, m)
	if err := l.Err(); err != nil {
		return Run{}, err
	}
	return s.run(centre.Millimetres(), m), nil
}

// CentreFor returns the centre distance at which a chain of a number of pitches
// is taut. By the series it is the formula's exact inverse,
// C = (p/4) [b + √(b² - 8 ((z2 - z1)/2π)²)], b = L - (z1 + z2)/2 (Jindal, Machine
// Design, 2010, ex. 30-1); by tangents it is found by root. Errors: as for
// [ChainLength], a chain too short to go round.
func CentreFor(s Sprockets, pitches float64, m Method) (Run, error) {
	var l fault.List
	s.check(&l)
	checkMethod(&l, m)
	within(&l, "pitches", pitches, 1, 1e5)
	if err := l.Err(); err != nil {
		return Run{}, err
	}
	p, short := s.Pitch.Millimetres(), fault.Fault{Code: fault.OutOfRange, Path: "pitches", Value: number(pitches), Rule: "too short to go round both sprockets"}
	least := s.leastCentre()
	if pitches <= s.pitches(least, m) {
		return Run{}, short
	}
	if m == Series {
		// The chain being longer than at the least centre, b is more than 2X + k²/X
		// there, and X more than k: so b² > 8k², and the greater root is beyond X.
		b, k := pitches-float64(s.Front+s.Rear)/2, float64(s.Rear-s.Front)/(2*math.Pi)
		return s.taut(p/4*(b+math.Sqrt(b*b-8*k*k)), pitches, m), nil
	}
	// A chain is never shorter than twice the centre distance.
	c, err := solve.Inverse(func(c float64) float64 { return s.pitches(c, m) }, pitches, least, pitches*p, 1e-12)
	if err != nil {
		return Run{}, short
	}
	return s.taut(c, pitches, m), nil
}

// taut is the run of just so many pitches at their centre distance c mm.
func (s Sprockets) taut(c, pitches float64, m Method) Run {
	r := s.run(c, m)
	r.Pitches, r.Length = pitches, s.Pitch.Times(pitches)
	return r
}

func (s Sprockets) check(l *fault.List) {
	positive(l, "pitch", s.Pitch)
	teeth(l, "front", s.Front)
	teeth(l, "rear", s.Rear)
}

func checkMethod(l *fault.List, m Method) {
	if m > Tangent {
		l.Add(fault.Fault{Code: fault.UnknownName, Path: "method", Rule: "Series or Tangent"})
	}
}

// leastCentre is where the pitch circles touch.
func (s Sprockets) leastCentre() float64 {
	p := s.Pitch.Millimetres()
	return (pitchDiameter(p, s.Front) + pitchDiameter(p, s.Rear)) / 2
}

// pitches is the length at centre distance c mm.
func (s Sprockets) pitches(c float64, m Method) float64 {
	p := s.Pitch.Millimetres()
	x := c / p
	if m == Series {
		k := float64(s.Rear-s.Front) / (2 * math.Pi)
		return 2*x + float64(s.Front+s.Rear)/2 + k*k/x
	}
	phi := s.lean(c)
	return 2*x*math.Cos(phi) + float64(s.Front)*(0.5-phi/math.Pi) + float64(s.Rear)*(0.5+phi/math.Pi)
}

// lean is the angle of the runs to the line of centres.
func (s Sprockets) lean(c float64) float64 {
	p := s.Pitch.Millimetres()
	return math.Asin((pitchDiameter(p, s.Rear) - pitchDiameter(p, s.Front)) / (2 * c))
}

func (s Sprockets) run(c float64, m Method) Run {
	phi, n := s.lean(c), s.pitches(c, m)
	return Run{
		Pitches: n, Length: units.Millimetres(n * s.Pitch.Millimetres()), Centre: units.Millimetres(c),
		FrontWrap: units.Radians(math.Pi - 2*phi), RearWrap: units.Radians(math.Pi + 2*phi),
		Straight: units.Millimetres(c * math.Cos(phi)), Method: m,
	}
}

// ChainFit is one whole number of pitches and where it puts the wheel.
type ChainFit struct {
	Pitches  int          `json:"pitches"`
	Centre   units.Length `json:"centre"`
	Adjuster float64      `json:"adjuster"` // place between the shortest centre, 0, and the longest, 1
	Cranked  bool         `json:"cranked"`  // an odd number needs a cranked half link, which is some 20 % weaker (from memory)
	Left     units.Length `json:"left"`     // movement left to the longest centre, to take up wear
	TakesUp  float64      `json:"takes_up"` // elongation that uses it all
	Front    Sharing      `json:"front"`    // how the front sprocket's teeth share the links
	Rear     Sharing      `json:"rear"`
}

// ChainFits is the chains that suit an adjuster.
type ChainFits struct {
	Fits   []ChainFit    `json:"fits"`            // shortest first; even ones only, unless there are none
	Reason fault.Reason  `json:"reason,omitzero"` // why there is none
	Basis  refdata.Basis `json:"basis"`
}

// FitOptions sets how [FitChain] looks.
type FitOptions struct {
	Method Method // zero: Series
	Odd    bool   // odd numbers of pitches too; zero: only if no even one fits
}

// FitChain returns every number of pitches whose centre distance lies between
// the shortest and longest that the adjuster allows. An even number comes first
// (common practice); a position near the short end leaves movement for wear.
// Errors: as for [ChainLength], a longest below the shortest.
func FitChain(s Sprockets, shortest, longest units.Length, opt FitOptions) (ChainFits, error) {
	var l fault.List
	s.check(&l)
	checkMethod(&l, opt.Method)
	if positive(&l, "shortest", shortest) && positive(&l, "longest", longest) && l.Len() == 0 {
		if longest < shortest {
			l.Add(fault.Fault{Code: fault.Conflict, Path: "longest", Value: longest.String(), Unit: "mm", Rule: "must not be below the shortest"})
		}
		if least := s.leastCentre(); shortest.Millimetres() <= least {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: "shortest", Value: shortest.String(), Unit: "mm", Rule: "the sprockets meet at " + units.Millimetres(least).In(units.Millimetre, 1)})
		}
		if longest.Ratio(s.Pitch) > 1e4 {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: "longest", Value: longest.String(), Unit: "mm", Rule: "must be below 10 000 pitches"})
		}
	}
	if err := l.Err(); err != nil {
		return ChainFits{}, err
	}
	var out ChainFits
	out.Basis = chainBasis(opt.Method)
	from, to := s.pitches(shortest.Millimetres(), opt.Method), s.pitches(longest.Millimetres(), opt.Method)
	var odd []ChainFit
	for n := int(math.Ceil(from - 1e-9)); n <= int(math.Floor(to+1e-9)); n++ {
		r, err := CentreFor(s, float64(n), opt.Method)
		if err != nil {
			continue // the very end of a series that turns back on itself
		}
		f := ChainFit{Pitches: n, Centre: r.Centre, Cranked: n%2 == 1, Left: longest - r.Centre, TakesUp: to/float64(n) - 1}
		if longest > shortest {
			f.Adjuster = (r.Centre - shortest).Ratio(longest - shortest)
		}
		f.Front, _ = WearSharing(n, s.Front)
		f.Rear, _ = WearSharing(n, s.Rear)
		if f.Cranked {
			odd = append(odd, f)
			if !opt.Odd {
				continue
			}
		}
		out.Fits = append(out.Fits, f)
	}
	if len(out.Fits) == 0 {
		out.Fits = odd
	}
	if len(out.Fits) == 0 {
		out.Reason = fault.Reason{Code: "no-chain-fits", Text: "no whole number of pitches falls within the adjuster: change a sprocket by a tooth"}
	}
	return out, nil
}

func chainBasis(m Method) refdata.Basis {
	src := refdata.Source{Title: "Jindal, Machine Design, 1st ed. 2010", Clause: "ex. 30-1: chain length and centre distance", Status: refdata.Published}
	if m == Tangent {
		src = refdata.Source{Title: "chain round two pitch circles by its tangents", Status: refdata.Derived}
	}
	return refdata.Basis{
		Sources: []refdata.Source{src, refdata.Practice()},
		NotChecked: []refdata.Unchecked{
			{What: "slack", Why: "the centre distance is that of a taut chain", Settle: "set 20 to 25 mm up and down at mid run, at the tightest place, rider's weight on"},
			{What: "line of the sprockets", Why: "not asked", Settle: "lay a straight edge across both"},
		},
		Cautions: []refdata.Caution{refdata.BrakesBeforeRoad, refdata.DeferToManual},
	}
}

// Sharing is how the teeth of a sprocket share out the links of a chain.
type Sharing struct {
	Common        int  `json:"common"`           // greatest common divisor of pitches and teeth; 1 is best
	LinksATooth   int  `json:"links_a_tooth"`    // different links that each tooth meets
	Circuits      int  `json:"circuits"`         // of the chain before a link meets the same tooth again
	Even          bool `json:"even"`             // every tooth meets every link
	OneKindOfLink bool `json:"one_kind_of_link"` // each tooth meets inner links only, or outer links only
}

// WearSharing returns how a sprocket shares wear with a chain of a number of
// pitches: each tooth meets pitches/g different links, g being the greatest
// common divisor, and even pitches with even teeth bring each tooth one kind of
// link for ever (derived). Errors: pitches outside 4 to 100 000, teeth outside 4
// to 1000.
func WearSharing(pitches, z int) (Sharing, error) {
	var l fault.List
	within(&l, "pitches", float64(pitches), 4, 1e5)
	teeth(&l, "teeth", z)
	if err := l.Err(); err != nil {
		return Sharing{}, err
	}
	g := int(gcd(int64(pitches), int64(z)))
	return Sharing{Common: g, LinksATooth: pitches / g, Circuits: z / g, Even: g == 1, OneKindOfLink: pitches%2 == 0 && z%2 == 0}, nil
}
