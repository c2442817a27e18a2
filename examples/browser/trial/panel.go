package trial

import (
	"slices"
	"strconv"
	"strings"

	"example.com/benchbook/examples/browser/draw"
	"example.com/benchbook/examples/job"
	"example.com/benchbook/refdata"
	"example.com/benchbook/units/fault"
)

// Panel is what one part of the bench says with the readings as they stand.
type Panel struct {
	Key       string        `json:"key"`
	Title     string        `json:"title"`
	Brief     string        `json:"brief"` // the finding in one sentence, for a reader who cannot look
	Findings  []job.Finding `json:"findings"`
	First     []string      `json:"first"` // what to do first
	Turning   []string      `json:"turning,omitempty"`
	Next      []string      `json:"next,omitempty"`
	Unchecked []string      `json:"unchecked,omitempty"`
	Dangers   []string      `json:"dangers,omitempty"`  // cautions, each in a few words
	Cautions  []string      `json:"cautions,omitempty"` // the same in full
	Pictures  []Picture     `json:"pictures"`
	Bars      []draw.Bar    `json:"bars"` // the odds, likeliest first
	Controls  []Control     `json:"controls"`
}

// Picture is a drawing with what it shows, in words.
type Picture struct {
	Key     string `json:"key"`
	Finding string `json:"finding"`
	SVG     string `json:"svg"`
}

// Panel works one part, one of Panels, with the readings as they stand,
// and draws it width CSS pixels wide. Errors: a part this job does not have, and
// whatever is wrong with the readings as moved.
func (t *Trial) Panel(key string, width int) (Panel, error) {
	if !slices.Contains(t.Panels(), key) {
		return Panel{}, fault.Fault{Code: fault.UnknownName, Path: key, Rule: "not a part of this job that can be moved"}
	}
	s, err := t.work(key)
	if err != nil {
		return Panel{}, err
	}
	p := PanelOf(s)
	p.Controls = t.controlsOf(key)
	p.show(s.Result, width)
	return p, nil
}

func (t *Trial) controlsOf(panel string) []Control {
	var all []Control
	for _, c := range t.Controls() {
		if c.Panel == panel {
			all = append(all, c)
		}
	}
	return all
}

// show draws a result and says what is to be seen.
func (p *Panel) show(result any, width int) {
	switch r := result.(type) {
	case job.ClutchResult:
		finding, svg := draw.Window(r, width)
		p.Pictures = []Picture{{"clutch-window", finding, svg}}
		p.Bars = draw.Bars(r.Diagnose.Causes)
	case job.TimingResult:
		finding, svg := draw.Lobes(r, width)
		_, circle := draw.Circle(r, width)
		p.Pictures = []Picture{{"valve-lift", finding, svg}, {"timing-circle", finding, circle}}
		p.Bars = draw.Bars(r.Verdict.Causes)
	case job.CarburettorResult:
		finding, svg := draw.Mixture(r, width)
		p.Pictures = []Picture{{"mixture", finding, svg}}
	default:
		return
	}
	p.Brief = p.Pictures[0].Finding
	if len(p.Bars) > 0 {
		b := p.Bars[0]
		p.Brief += ". Likeliest, " + strconv.Itoa(b.Percent) + " per cent: " + b.Text
	}
	p.Brief = strings.ToUpper(p.Brief[:1]) + p.Brief[1:]
}

// PanelOf returns a section of a report in the words of a panel, without
// pictures or controls.
func PanelOf(s *job.Section) Panel {
	p := Panel{Key: s.Key, Title: s.Title, Findings: s.Findings, First: s.DoFirst, Turning: s.BeforeTurning}
	for _, n := range s.Next {
		p.Next = append(p.Next, n.Text+" (about "+strconv.FormatFloat(n.Minutes, 'f', 0, 64)+" min, "+strconv.FormatFloat(n.Bits, 'f', 1, 64)+" bit)")
	}
	for _, u := range s.NotChecked {
		text := u.What
		if u.Why != "" {
			text += " (" + u.Why + ")"
		}
		if u.Settle != "" {
			text += "; to settle it: " + u.Settle
		}
		p.Unchecked = append(p.Unchecked, text)
	}
	for _, c := range s.Cautions {
		if c != refdata.DeferToManual { // says the page's foot, and Cautions
			p.Dangers = append(p.Dangers, strings.ReplaceAll(string(c), "-", " "))
		}
		p.Cautions = append(p.Cautions, c.Text())
	}
	return p
}

// Cautions returns the cautions of all parts of a report whole, each once.
func Cautions(r job.Report) []string {
	var all []string
	for _, s := range r.Sections {
		for _, c := range s.Cautions {
			if !slices.Contains(all, c.Text()) {
				all = append(all, c.Text())
			}
		}
	}
	return all
}
