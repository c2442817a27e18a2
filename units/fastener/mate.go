package fastener

import (
	"math"
	"strings"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Meeting says how a bolt of one thread goes into a nut of another.
type Meeting uint8

// The meetings, best first. The zero value is none of them.
const (
	Belongs    Meeting = iota + 1 // the same thread but for the name
	Sound                         // screws in and holds as the right bolt does, near enough
	Weak                          // screws in, but bears on part of the thread only
	Tight                         // many pairs go together by hand, many do not
	Binds                         // starts, then jams: forced on, it ruins both
	DoesNotGo                     // does not start
	DropsIn                       // slides or wobbles in: nothing, or hardly anything, holds
	OtherWound                    // one is left-hand, the other right-hand
)

// String returns the meeting in words.
func (m Meeting) String() string {
	switch m {
	case Belongs:
		return "belongs"
	case Sound:
		return "screws in soundly"
	case Weak:
		return "screws in but holds weakly"
	case Tight:
		return "goes in tight, if at all"
	case Binds:
		return "starts, then binds"
	case DoesNotGo:
		return "does not start"
	case DropsIn:
		return "drops in, holds nothing"
	case OtherWound:
		return "wound the other way"
	}
	return "not known"
}

// MarshalText returns the words of String.
func (m Meeting) MarshalText() ([]byte, error) { return []byte(m.String()), nil }

// MateOptions change what [Mate] takes for granted.
type MateOptions struct {
	// Slack is the room, in diameter, that making leaves between an everyday bolt
	// and nut of the same thread. Zero means the middle of the limits by the
	// rule of metric 6g/6H at the bolt's size, carried over to all forms (from
	// memory).
	Slack units.Length `json:"slack"`
}

// Mating is how a bolt of one thread goes into a nut of another, reckoned from
// the basic sections of the two.
type Mating struct {
	Bolt   Thread       `json:"bolt"`
	Nut    Thread       `json:"nut"`
	Length units.Length `json:"length"` // engaged
	// Drift is how far the pitches run apart over the length.
	Drift units.Length `json:"drift"`
	// DiameterRoom is the nut's effective diameter less the bolt's; negative:
	// the bolt is too thick on the flanks.
	DiameterRoom units.Length `json:"diameter_room"`
	// FlankDifference is the nut's angle between the flanks less the bolt's.
	FlankDifference units.Angle `json:"flank_difference"`
	// Interference is how far the bolt stands into the nut, in diameter, at the
	// worst turn over the length, basic sizes; negative: the room left.
	Interference units.Length `json:"interference"`
	// AtFirst is the same for the first turn alone.
	AtFirst units.Length `json:"at_first"`
	Slack   units.Length `json:"slack"` // what making gives it
	// Turns is how many turns it goes before it binds; those of the whole
	// length if it does not.
	Turns units.Ratio `json:"turns"`
	// Depth is how much of the depth of thread engages, compared with the bolt
	// that belongs there.
	Depth units.Ratio `json:"depth"`
	// Strength is the bolt's stress area over that of the bolt that belongs there.
	Strength units.Ratio   `json:"strength"`
	Meeting  Meeting       `json:"meeting"`
	For      []string      `json:"for,omitempty"`     // what speaks for it
	Against  []string      `json:"against,omitempty"` // and against
	Basis    refdata.Basis `json:"basis"`
}

const (
	// soundDepth is the part of the usual depth of engagement below which a
	// fit is called weak; nutless threads of 60 % of full depth are usual.
	soundDepth = 0.75
	// holdingDepth is the part below which it is called nothing.
	holdingDepth = 0.25
	// tightFit is how much of the slack a stand-in may use up for interference:
	// half, so that most pairs out of two boxes go together by hand.
	tightFit = 0.5
)

// Mate returns how a bolt goes into a nut over an engaged length; zero means one
// diameter of the bolt. The sections of both basic forms, rounded crests and all,
// are laid over one another turn by turn, the bolt sitting in the middle, and the
// worst overlap is taken. It answers for sound threads; worn, plated and painted
// ones differ. The bounds between the meetings are a judgement: a sound stand-in
// has the same angle between the flanks, uses up no more than half the slack, has
// no more room than the slack at the effective diameter, and engages three
// quarters of the usual depth. Faults: no
// bolt or nut, a length not from zero to ten diameters, a slack not from 0 to 2 mm.
func Mate(bolt, nut Thread, length units.Length, opt MateOptions) (Mating, error) {
	var l fault.List
	if bolt.IsZero() {
		l.Add(noThread("bolt"))
	}
	if nut.IsZero() {
		l.Add(noThread("nut"))
	}
	if !(length >= 0 && length <= bolt.major.Times(10)) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "length", Value: length.String(), Unit: "mm", Rule: "0 to ten diameters of the bolt"})
	}
	if !(opt.Slack >= 0 && opt.Slack <= 2*units.Millimetre) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "options.slack", Value: opt.Slack.String(), Unit: "mm", Rule: "0 to 2 mm"})
	}
	if err := l.Err(); err != nil {
		return Mating{}, err
	}
	m := mate(bolt, nut, length, opt)
	m.explain(opt)
	return m, nil
}

// everydaySlack is the middle of the limits of metric 6g/6H: the allowance and
// half of both effective tolerances, in millimetres.
func everydaySlack(t Thread) float64 {
	d, p := t.major.Millimetres(), t.pitch.Millimetres()
	return 0.015 + 0.011*p + 0.5*2.32*0.09*math.Pow(p, 0.4)*math.Pow(d, 0.1)
}

func mate(bolt, nut Thread, length units.Length, opt MateOptions) Mating {
	if length == 0 {
		length = bolt.major
	}
	b, n := bolt.section(), nut.section()
	bp, np := bolt.boltProfile(), nut.nutProfile()
	slack := opt.Slack.Millimetres()
	if opt.Slack == 0 {
		slack = everydaySlack(bolt)
	}
	perTurn := math.Abs(np.pitch - bp.pitch)
	turns := length.Millimetres() / bp.pitch
	// over k turns the ridges run from -k/2 to k/2 times the difference off; once
	// that reaches half a pitch, some turn meets the nut ridge on ridge
	stands := func(k float64) float64 { return 2 * overlap(bp, np, min(k*perTurn, np.pitch)/2) }
	m := Mating{
		Bolt: bolt, Nut: nut, Length: length,
		Drift:           units.Millimetres(turns * perTurn),
		DiameterRoom:    units.Millimetres(n.effective - b.effective),
		FlankDifference: nut.form.Included() - bolt.form.Included(),
		AtFirst:         units.Millimetres(stands(1)),
		Slack:           units.Millimetres(slack),
		Turns:           units.Value(turns),
		Strength:        units.Value(b.area / n.area),
	}
	worst := stands(turns)
	m.Interference = units.Millimetres(worst)
	own := (nut.major.Millimetres() - n.inner) / 2
	deep := (bolt.major.Millimetres() - max(n.inner, b.bolt)) / 2
	m.Depth = units.Value(max(deep, 0) / own)
	switch {
	case bolt.hand != HandUnknown && nut.hand != HandUnknown && bolt.hand != nut.hand:
		m.Meeting, m.Turns = OtherWound, 0
	case m.Depth < holdingDepth:
		m.Meeting = DropsIn
	case stands(1) > slack:
		m.Meeting, m.Turns = DoesNotGo, 0
	case worst > slack:
		m.Meeting, m.Turns = Binds, units.Value(bindsAfter(stands, slack, turns))
	case worst > tightFit*slack:
		m.Meeting = Tight
	case bolt.form == nut.form && same(bolt.major, nut.major) && same(bolt.pitch, nut.pitch):
		m.Meeting = Belongs
	case m.Depth < soundDepth || n.effective-b.effective > slack || m.FlankDifference != 0:
		m.Meeting = Weak
	default:
		m.Meeting = Sound
	}
	return m
}

// bindsAfter returns the turns after which the bolt stands further into the nut
// than the slack gives.
func bindsAfter(stands func(float64) float64, slack, turns float64) float64 {
	lo, hi := 1.0, turns
	for hi-lo > 0.05 { // a twentieth of a turn is closer than anyone feels
		if mid := (lo + hi) / 2; stands(mid) > slack {
			hi = mid
		} else {
			lo = mid
		}
	}
	return lo
}

// explain fills For, Against and Basis.
func (m *Mating) explain(opt MateOptions) {
	pro := func(s string) { m.For = append(m.For, s) }
	con := func(s string) { m.Against = append(m.Against, s) }
	mm := func(l units.Length) string { return l.Abs().In(units.Millimetre, 2) }
	if m.Meeting == OtherWound {
		con("one is left-hand, the other right-hand")
	}
	if same(m.Bolt.pitch, m.Nut.pitch) {
		pro("same pitch")
	} else {
		con("pitches run " + mm(m.Drift) + " apart over " + m.Length.In(units.Millimetre, 1))
	}
	if d := m.FlankDifference; d == 0 {
		pro("same angle between the flanks")
	} else {
		con("flanks differ by " + d.Abs().In(units.Degree, 1) + ": they bear on a line, not a face")
	}
	switch room := m.DiameterRoom; {
	case room.Abs() < units.Millimetres(0.02):
		pro("same effective diameter")
	case room < 0:
		con("the bolt is " + mm(room) + " too thick at the effective diameter")
	case room <= m.Slack:
		pro("effective diameters " + mm(room) + " apart, within what making leaves")
	default:
		con("slack by " + mm(room) + " at the effective diameter")
	}
	if m.Depth < soundDepth {
		con("only " + percent(m.Depth) + " of the usual depth of thread engages")
	}
	switch s := m.Strength.SI(); {
	case s < 0.95:
		con("the bolt has " + percent(m.Strength) + " of the section that belongs there")
	case s > 1.05:
		pro("the bolt has " + percent(m.Strength) + " of the section that belongs there")
	}
	if m.Meeting == Binds {
		con("binds after " + trimFloat(math.Round(m.Turns.SI()*10)/10) + " turns")
	}
	if opt.Slack == 0 {
		m.Basis.Assumed = append(m.Basis.Assumed, refdata.Assumption{What: "room that making leaves", Value: mm(m.Slack), Status: refdata.FromMemory})
	}
	m.Basis.Sources = append(m.Bolt.form.sources(), refdata.Source{Title: "basic sections laid over one another", Clause: "geometry", Status: refdata.Derived})
	if m.Bolt.form != m.Nut.form {
		m.Basis.Sources = append(m.Basis.Sources, m.Nut.form.sources()...)
	}
	m.Basis.Sources = owned(m.Basis.Sources, m.Bolt, m.Nut)
	m.Basis.NotChecked = append(m.Basis.NotChecked, refdata.Unchecked{What: "wear and making of the two in hand", Why: "basic sizes are compared", Settle: "run it in by hand, oiled: it must turn freely to the end and not shake"})
	if m.Bolt.hand == HandUnknown || m.Nut.hand == HandUnknown {
		m.Basis.NotChecked = append(m.Basis.NotChecked, refdata.Unchecked{What: "hand of the threads", Why: "not looked at", Settle: "hold them upright: right-hand threads rise to the right"})
	}
	m.Basis.Cautions = []refdata.Caution{refdata.OldBolts, refdata.RetainingNuts}
}

func percent(r units.Ratio) string { return trimFloat(math.Round(r.Percents())) + " %" }

// Text says how the two meet in one line.
func (m Mating) Text() string {
	s := "a " + m.Bolt.String() + " bolt in a " + m.Nut.String() + " nut " + m.Meeting.String()
	if len(m.Against) > 0 {
		s += ": " + strings.Join(m.Against, "; ")
	}
	return s
}
