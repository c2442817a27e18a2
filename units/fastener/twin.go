package fastener

import (
	"cmp"
	"math"
	"slices"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Twin is a thread so near another that the two will start together, and must
// not be mixed.
type Twin struct {
	Thread Thread `json:"thread"`
	AsBolt Mating `json:"as_bolt"` // the twin as a bolt in the nut asked for
	AsNut  Mating `json:"as_nut"`  // the bolt asked for in the twin's nut
	Text   string `json:"text"`
}

// Twins are the near-twins of a thread, the nearest first.
type Twins struct {
	Thread Thread        `json:"thread"`
	Twins  []Twin        `json:"twins"`
	Basis  refdata.Basis `json:"basis"`
}

// TwinOptions change what [TwinsOf] looks at.
type TwinOptions struct {
	// Length is the engaged length. Zero means one diameter.
	Length units.Length `json:"length"`
	// Among are the threads looked through. Nil means all of the tables.
	Among []Thread `json:"-"`
	MateOptions
}

// loosest is how many times the middle slack the loosest pair that the limits
// allow has.
const loosest = 2

// TwinsOf returns the threads that will start with one, in the loosest pair that
// everyday limits allow, engaging a quarter of the usual depth at least, but do
// not belong or hold soundly either way round. It is reckoned from the sections,
// not looked up. Faults: no thread, and those of [Mate].
func TwinsOf(t Thread, opt TwinOptions) (Twins, error) {
	var l fault.List
	if t.IsZero() {
		l.Add(noThread("thread"))
	} else if !(opt.Length >= 0 && opt.Length <= t.major.Times(10)) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "options.length", Value: opt.Length.String(), Unit: "mm", Rule: "0 to ten diameters"})
	}
	if !(opt.Slack >= 0 && opt.Slack <= 2*units.Millimetre) {
		l.Add(fault.Fault{Code: fault.OutOfRange, Path: "options.slack", Value: opt.Slack.String(), Unit: "mm", Rule: "0 to 2 mm"})
	}
	if err := l.Err(); err != nil {
		return Twins{}, err
	}
	among := opt.Among
	if among == nil {
		among = tables()
	}
	out := Twins{Thread: t}
	for _, u := range among {
		if u.IsZero() || !resembles(t, u) {
			continue
		}
		a, b := mate(u, t, opt.Length, opt.MateOptions), mate(t, u, opt.Length, opt.MateOptions)
		if a.Meeting <= Sound && b.Meeting <= Sound || !a.starts() && !b.starts() {
			continue
		}
		a.explain(opt.MateOptions)
		b.explain(opt.MateOptions)
		out.Twins = append(out.Twins, Twin{Thread: u, AsBolt: a, AsNut: b, Text: twinText(a, b)})
	}
	slices.SortStableFunc(out.Twins, func(a, b Twin) int {
		return cmp.Compare(unlike(t, a.Thread), unlike(t, b.Thread))
	})
	out.Basis = refdata.Basis{
		Sources:  []refdata.Source{{Title: "basic sections laid over one another", Clause: "geometry", Status: refdata.Derived}},
		Cautions: []refdata.Caution{refdata.OldBolts},
	}
	out.Basis.Sources = owned(out.Basis.Sources, t)
	for _, u := range out.Twins {
		out.Basis.Sources = owned(out.Basis.Sources, u.Thread)
	}
	if opt.Slack == 0 {
		out.Basis.Assumed = []refdata.Assumption{{What: "room that making leaves", Value: "the middle of metric 6g/6H, twice that at the loosest", Status: refdata.FromMemory}}
	}
	return out, nil
}

// starts reports whether the loosest everyday pair goes a turn together and holds
// at all.
func (m Mating) starts() bool {
	return m.Depth >= holdingDepth && m.AtFirst <= m.Slack.Times(loosest)
}

// resembles leaves out what cannot start with t, cheaply: outside diameters more
// than an eighth and pitches more than an eighth apart.
func resembles(t, u Thread) bool {
	return math.Abs(math.Log(u.major.Ratio(t.major))) < 0.125 && math.Abs(math.Log(u.pitch.Ratio(t.pitch))) < 0.125
}

// unlike orders twins: by how far their figures are apart.
func unlike(t, u Thread) float64 {
	x := math.Abs(math.Log(u.major.Ratio(t.major))) + math.Abs(math.Log(u.pitch.Ratio(t.pitch)))
	if t.form.Included() != u.form.Included() {
		x += 0.001
	}
	return x
}

func twinText(a, b Mating) string {
	return "never mix " + b.Bolt.name + " and " + a.Bolt.name + ": its bolt in your nut " + a.atLoosest() + "; your bolt in its nut " + b.atLoosest()
}

// atLoosest says how the two meet, loose pairs considered.
func (m Mating) atLoosest() string {
	if m.Meeting == DoesNotGo && m.starts() {
		return "starts if the pair is loose, then binds"
	}
	return m.Meeting.String()
}
