package job

import (
	"slices"
	"strconv"
	"strings"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// worthNaming is the share from which a cause is named as a finding.
const worthNaming = 0.10

// ranked turns the leading causes into findings, three at most.
func ranked(r measure.Ranking) []Finding {
	var out []Finding
	for i, o := range r.Odds {
		if i > 0 && (o.Share < worthNaming || i == 3) {
			break
		}
		f := Finding{Key: o.Key, Text: o.Text, Sure: o.Words(), Percent: o.Percent, Fault: i == 0 && o.Key != measure.NothingWrong && o.Key != measure.SomethingElse}
		if i > 0 { // the leader alone decides whether there is something to put right
			f.Text = "or: " + f.Text
		}
		out = append(out, f)
	}
	return append(out, alike(r)...)
}

// alike says what the readings cannot tell from the leader, and what they cannot tell
// of being there beside it, some of each.
func alike(r measure.Ranking) []Finding {
	lead := r.Leader()
	var instead, beside []string
	for _, o := range r.LikeLeader() {
		if o.Key == lead.Key {
			continue
		}
		if also, ok := strings.CutPrefix(o.Text, lead.Text+", and "); ok {
			beside = append(beside, also)
		} else {
			instead = append(instead, o.Text)
		}
	}
	var out []Finding
	if len(instead) > 0 {
		out = append(out, Finding{Key: "alike", Text: "these readings cannot tell apart: " + some(append([]string{lead.Text}, instead...))})
	}
	if len(beside) > 0 {
		out = append(out, Finding{Key: "beside", Text: "beside it these readings leave open: " + some(beside)})
	}
	return out
}

// some names the first few of many.
func some(all []string) string {
	const named = 4
	text := strings.Join(all[:min(len(all), named)], "; ")
	if more := len(all) - named; more > 0 {
		text += "; and " + strconv.Itoa(more) + " more"
	}
	return text
}

// odds adds the table of a ranking down to one per cent, if there is a ranking.
func (s *Section) odds(r measure.Ranking) {
	if len(r.Odds) > 0 {
		s.Tables = append(s.Tables, spread(r))
	}
}

func spread(r measure.Ranking) Table {
	t := Table{Title: "Odds", Head: []string{"%", "in words", "cause"}}
	rest := 0
	for _, o := range r.Odds {
		if o.Percent < 1 || len(t.Rows) == 4 {
			rest += o.Percent
			continue
		}
		t.Rows = append(t.Rows, []string{strconv.Itoa(o.Percent), o.Words(), o.Text})
	}
	left := len(r.Odds) - len(t.Rows)
	if left > 0 {
		t.Rows = append(t.Rows, []string{strconv.Itoa(rest), "together", strconv.Itoa(left) + " more causes weighed"})
	}
	return t
}

// settle adds the readings that would tell most, two at most, and none that
// would tell next to nothing.
func (s *Section) settle(gains []measure.Gain) {
	for _, g := range gains {
		if len(s.Next) == 2 || g.Bits < 0.02 {
			return
		}
		s.Next = append(s.Next, Settle{Text: g.Text, Bits: g.Bits, Minutes: g.Work.MinutesOfTime()})
	}
}

// basis moves what a verdict rests on into the section. The default
// uncertainty of a reading stands beside the reading already.
func (s *Section) basis(b refdata.Basis) {
	s.Sources = merge(s.Sources, b.Sources)
	for _, a := range b.Assumed {
		if what, ok := strings.CutPrefix(a.What, "uncertainty of "); ok && slices.ContainsFunc(s.Read, func(r Row) bool { return r.What == what }) {
			continue
		}
		s.Assumed = merge(s.Assumed, []refdata.Assumption{a})
	}
	s.NotChecked = merge(s.NotChecked, b.NotChecked)
	s.Cautions = merge(s.Cautions, b.Cautions)
}

// merge appends what is not there yet.
func merge[T comparable](to, from []T) []T {
	for _, x := range from {
		if !slices.Contains(to, x) {
			to = append(to, x)
		}
	}
	return to
}

// row adds a reading to what was read, if it was taken.
func row[Q units.Quantity](s *Section, what string, r measure.Reading[Q]) {
	if r.Taken() {
		note := r.Note()
		if r.Instrument() != "" {
			note = defaulted(note, spreadOf(r), r.Instrument())
		}
		s.Read = append(s.Read, Row{What: what, Figure: r.Text(), Note: note})
	}
}

func rowAt(s *Section, what string, p measure.Position) {
	if p.Taken() {
		s.Read = append(s.Read, Row{What: what, Figure: p.Text(), Note: defaulted("", afterSign(p.String()), p.Instrument())})
	}
}

// defaulted says what stood in for the uncertainty of a bare figure.
func defaulted(note, u, instrument string) string {
	if instrument == "" {
		return note
	}
	return strings.TrimPrefix(note+"; ± "+u+" by default, "+instrument, "; ")
}

func afterSign(figure string) string {
	_, u, _ := strings.Cut(figure, "± ")
	return u
}

// spreadOf says the uncertainty of a reading in the unit its reader wrote, where
// that can be read off his text and is not too small in it.
func spreadOf[Q units.Quantity](r measure.Reading[Q]) string {
	usual := afterSign(r.String())
	unit := strings.TrimLeft(r.Text(), "-0123456789./ ")
	if unit == "" || strings.HasSuffix(usual, unit) {
		return usual
	}
	one, err := units.Parse[Q]("1 " + unit)
	none, _ := units.Parse[Q]("0 " + unit)
	if err != nil || !(one.SI() > 0) || none.SI() != 0 { // degrees of heat count from elsewhere
		return usual
	}
	if u := r.U().SI() / one.SI(); u >= 0.001 && u < 1000 {
		return strconv.FormatFloat(u, 'g', 2, 64) + " " + unit
	}
	return usual
}

// shift says a movement of the events in words, "9.5 ± 0.8° crank early".
func shift[Q units.Quantity](r measure.Reading[Q]) string {
	v := r.Value()
	side := " early"
	if v < 0 {
		v, side = -v, " late"
	}
	return units.WithUncertainty(v, r.U()) + side
}

// turns says an angle as turns of a nut: a tenth is less than a flat of it.
func turns(a units.Angle) string { return strconv.FormatFloat(a.Turns(), 'f', 1, 64) + " turns" }

func percent(p float64) string { return strconv.FormatFloat(100*p, 'f', 0, 64) + " %" }
