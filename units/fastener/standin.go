package fastener

import (
	"cmp"
	"slices"
	"strconv"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// StandIn is a thread that may take the place of another.
type StandIn struct {
	Thread Thread `json:"thread"`
	// Mating is how its bolt goes into the hole as it is; only for bolts that go
	// into the sound hole.
	Mating *Mating `json:"mating,omitempty"`
	// Hole is what to drill the old hole to, for a thread cut anew; zero otherwise.
	Hole units.Length `json:"hole"`
	// Growth is how much larger in outside diameter it is.
	Growth units.Length `json:"growth"`
	// OldThreadLeft is how much of the new depth still shows the old thread,
	// where the drill for 75 % does not clean it out.
	OldThreadLeft units.Ratio `json:"old_thread_left"`
	// Strength is its stress area over that of the thread it replaces.
	Strength units.Ratio `json:"strength"`
	For      []string    `json:"for,omitempty"`
	Against  []string    `json:"against,omitempty"`
}

// StandIns are what may replace a bolt, or be cut where its hole is stripped,
// best first.
type StandIns struct {
	Thread Thread `json:"thread"`
	// Bolts go into the sound hole as it is. Only sound ones are listed.
	Bolts []StandIn `json:"bolts"`
	// Recut are threads to drill and tap the stripped hole to.
	Recut []StandIn `json:"recut"`
	// Reason says why there is neither.
	Reason fault.Reason  `json:"reason"`
	Basis  refdata.Basis `json:"basis"`
}

// StandInOptions change what [StandInsFor] looks at.
type StandInOptions struct {
	// Length is the engaged length. Zero means one diameter.
	Length units.Length `json:"length"`
	// Growth is the most by which a recut hole may be larger. Zero means a
	// quarter of the diameter, at least 1.7 mm: 1/16 in and a little.
	Growth units.Length `json:"growth"`
	// Most is how many threads to recut are returned. Zero means eight.
	Most int `json:"most"`
	// Among are the threads looked through. Nil means all of the tables.
	Among []Thread `json:"-"`
	MateOptions
}

// oldThreadLimit is how much of the new depth may still show the old thread: a
// judgement.
const oldThreadLimit = 0.3

// StandInsFor returns what may replace a bolt of a thread, or be cut instead of
// it. Bolts that go in soundly are found by [Mate]; threads to recut are larger
// ones whose tapping hole for 75 % of the chart depth cleans out the old thread,
// or nearly. A recut hole needs the wall and the room for a larger head: neither
// is known here. A thread insert of the old size is the other way (common
// practice, no source). Faults: no thread, a length not from 0 to ten diameters,
// a growth not from 0 to 20 mm, a slack not from 0 to 2 mm, a Most below zero.
func StandInsFor(t Thread, opt StandInOptions) (StandIns, error) {
	var l fault.List
	if t.IsZero() {
		l.Add(noThread("thread"))
	} else if !(opt.Length >= 0 && opt.Length <= t.major.Times(10)) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "options.length", Value: opt.Length.String(), Unit: "mm", Rule: "0 to ten diameters"})
	}
	if !(opt.Growth >= 0 && opt.Growth <= 20*units.Millimetre) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "options.growth", Value: opt.Growth.String(), Unit: "mm", Rule: "0 to 20 mm"})
	}
	if !(opt.Slack >= 0 && opt.Slack <= 2*units.Millimetre) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "options.slack", Value: opt.Slack.String(), Unit: "mm", Rule: "0 to 2 mm"})
	}
	if opt.Most < 0 {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "options.most", Value: strconv.Itoa(opt.Most), Rule: "0 or above"})
	}
	if err := l.Err(); err != nil {
		return StandIns{}, err
	}
	if opt.Most == 0 {
		opt.Most = 8
	}
	among, growth := opt.Among, opt.Growth
	if among == nil {
		among = tables()
	}
	if growth == 0 {
		growth = max(t.major.Times(0.25), units.Millimetres(1.7))
	}
	out := StandIns{Thread: t}
	for _, u := range among {
		if u.IsZero() || u.WithHand(t.hand) == t {
			continue
		}
		if resembles(t, u) {
			if m := mate(u.WithHand(t.hand), t, opt.Length, opt.MateOptions); m.Meeting <= Sound {
				m.explain(opt.MateOptions)
				out.Bolts = append(out.Bolts, StandIn{Thread: u.WithHand(t.hand), Mating: &m, Growth: u.major - t.major, Strength: m.Strength, For: m.For, Against: m.Against})
			}
		}
		if s, ok := recut(t, u, growth); ok {
			out.Recut = append(out.Recut, s)
		}
	}
	slices.SortStableFunc(out.Bolts, func(a, b StandIn) int {
		return cmp.Compare(a.Mating.badness(), b.Mating.badness())
	})
	slices.SortStableFunc(out.Recut, func(a, b StandIn) int {
		return cmp.Compare(a.badness(t), b.badness(t))
	})
	out.Recut = out.Recut[:min(opt.Most, len(out.Recut))]
	if len(out.Bolts) == 0 && len(out.Recut) == 0 {
		out.Reason = fault.Reason{Code: "no-stand-in", Text: "nothing in the tables stands in for this thread within that growth: fit a thread insert, or make the bolt"}
	}
	out.Basis = standInBasis(t, opt)
	out.Basis.Sources = owned(out.Basis.Sources, t)
	for _, s := range slices.Concat(out.Bolts, out.Recut) {
		out.Basis.Sources = owned(out.Basis.Sources, s.Thread)
	}
	return out, nil
}

// recut weighs u as the thread to cut where t is stripped.
func recut(t, u Thread, growth units.Length) (StandIn, bool) {
	g := u.major - t.major
	// a spoke thread is rolled; pipe and brass threads are for fittings and
	// stand in only for their own kind
	if u.system == Spoke || (u.system == Brass || u.system == BSPP) && u.system != t.system || g > growth {
		return StandIn{}, false
	}
	s, old := u.section(), t.section()
	hole := u.hole(0.75, ChartDepth)
	left := (t.major - hole).Ratio(u.major - hole) // 1 and more where u is not larger
	if left > oldThreadLimit || hole.Millimetres() < old.inner {
		return StandIn{}, false
	}
	c := StandIn{
		Thread: u.WithHand(t.hand), Hole: hole, Growth: g,
		OldThreadLeft: units.Value(max(left, 0)), Strength: units.Value(s.area / old.area),
	}
	c.For = append(c.For, "only "+g.In(units.Millimetre, 2)+" larger")
	if left <= 0 {
		c.For = append(c.For, "the tapping hole cleans out the old thread")
	} else {
		c.Against = append(c.Against, percent(c.OldThreadLeft)+" of the new depth still shows the old thread")
	}
	if family(u.system) == family(t.system) {
		c.For = append(c.For, "of the same family of threads")
	} else {
		c.Against = append(c.Against, "a "+u.system.String()+" bolt on a machine of "+t.system.String()+" threads: mark it")
	}
	if c.Strength < 1 {
		c.Against = append(c.Against, "the bolt has "+percent(c.Strength)+" of the old section")
	}
	if u.pitch < u.major.Times(finePitch) {
		c.Against = append(c.Against, "very fine for its size: shallow, and soon stripped in light alloy")
	}
	c.Against = append(c.Against, "needs the wall round the hole, and room for its head")
	return c, true
}

// badness orders bolts: interference and room as parts of the slack, missing
// depth and section.
func (m *Mating) badness() float64 {
	return max(m.Interference.Ratio(m.Slack), 0) + m.DiameterRoom.Abs().Ratio(m.Slack) + max(1-m.Depth.SI(), 0) + max(1-m.Strength.SI(), 0)
}

// finePitch is the pitch, in diameters, below which a thread counts as very fine:
// UNF, BSF and the 26 tpi cycle series up to 7/16 in lie above it.
const finePitch = 0.085

// family is a system's first relative: those whose bolts belong on one machine.
func family(s System) System {
	switch s {
	case BSF:
		return BSW
	case MetricFine:
		return MetricCoarse
	case UNF:
		return UNC
	}
	return s
}

// badness orders threads to recut: growth first, in diameters; a foreign family
// or a very fine pitch counts as an eighth of the diameter each, old thread left
// as half of itself.
func (s StandIn) badness(t Thread) float64 {
	x := s.Growth.Ratio(t.major) + 0.5*s.OldThreadLeft.SI()
	if family(s.Thread.system) != family(t.system) {
		x += 0.125
	}
	if s.Thread.pitch < s.Thread.major.Times(finePitch) {
		x += 0.125
	}
	return x
}

func standInBasis(t Thread, opt StandInOptions) refdata.Basis {
	b := refdata.Basis{
		Sources:  []refdata.Source{{Title: "basic sections laid over one another", Clause: "geometry", Status: refdata.Derived}},
		Cautions: []refdata.Caution{refdata.OldBolts, refdata.DeferToManual},
		NotChecked: []refdata.Unchecked{
			{What: "strength of the steel", Why: "sections are compared, not grades", Settle: "use a marked bolt at least as strong"},
			{What: "wall round a recut hole", Why: "not read", Settle: "measure the boss: a wall of half the new diameter is usual"},
			{What: "hand of the thread", Why: "a stand-in must be wound the same way", Settle: "hold it upright: right-hand threads rise to the right"},
		},
	}
	if t.hand != HandUnknown {
		b.NotChecked = b.NotChecked[:2]
	}
	if opt.Slack == 0 {
		b.Assumed = append(b.Assumed, refdata.Assumption{What: "room that making leaves", Value: "the middle of metric 6g/6H", Status: refdata.FromMemory})
	}
	return b
}
