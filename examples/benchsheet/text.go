package main

import (
	"fmt"
	"io"
	"slices"
	"strings"
	"unicode/utf8"

	"example.com/benchbook/examples/job"
	"example.com/benchbook/refdata"
)

// width is what a terminal, a phone turned sideways and A4 all hold.
const width = 80

// writeText prints the report for reading at the bench: findings first,
// figures after.
func writeText(out io.Writer, r job.Report) error {
	p := &printer{out: out, cautions: []refdata.Caution{refdata.DeferToManual, refdata.OilBeforeStart, refdata.BrakesBeforeRoad}}
	p.line(strings.TrimSuffix("BENCH SHEET - "+r.Machine, " - "))
	if r.Note != "" {
		p.wrap("", r.Note)
	}
	p.heading("Order of work")
	for i, s := range r.Order {
		text := s.Text
		if s.Why != "" {
			text += ": " + s.Why
		}
		p.wrap(fmt.Sprintf("%2d. %-14s ", i+1, s.State), text)
	}
	p.permission("Turn the engine? ", r.Turn)
	p.permission("Start it?        ", r.Start)
	for i := range r.Sections {
		p.section(&r.Sections[i])
	}
	p.heading("Take care")
	for _, c := range p.cautions {
		p.wrap("  - ", c.Text())
	}
	p.line("")
	p.wrap("", "Library "+r.Library+", tables "+r.Tables+".")
	return p.err
}

type printer struct {
	out      io.Writer
	err      error
	cautions []refdata.Caution // of all sections, in full at the end
}

func (p *printer) line(s string) {
	if p.err == nil {
		_, p.err = fmt.Fprintln(p.out, s)
	}
}

func (p *printer) heading(s string) {
	p.line("")
	p.line(strings.ToUpper(s))
}

func (p *printer) permission(question string, answer job.Permission) {
	p.wrap(question, answer.Text)
	for _, why := range answer.Why {
		p.wrap("                 - ", why)
	}
}

func (p *printer) section(s *job.Section) {
	p.heading(s.Title)
	for _, f := range s.Findings {
		mark := "  = "
		if f.Fault {
			mark = "  ! "
		}
		text := f.Text
		if f.Sure != "" {
			text += fmt.Sprintf(" - %s (%d %%)", f.Sure, f.Percent)
		}
		p.wrap(mark, text)
	}
	p.list("Do first", s.DoFirst)
	p.list("Before turning", s.BeforeTurning)
	p.capped("Readings that would tell most", len(s.Next), func(i int) string {
		n := s.Next[i]
		return fmt.Sprintf("%s (about %.0f min, %.1f bit)", n.Text, n.Minutes, n.Bits)
	})
	if len(s.Read) > 0 {
		p.line("  Read")
		for _, r := range s.Read {
			figure := r.Figure
			if r.Note != "" {
				figure += "  (" + r.Note + ")"
			}
			p.wrap("    "+pad(r.What, 23)+" ", figure)
		}
	}
	for _, t := range s.Tables {
		p.table(t)
	}
	p.capped("Taken for granted", len(s.Assumed), func(i int) string {
		return s.Assumed[i].What + ": " + s.Assumed[i].Value + " [" + s.Assumed[i].Status.String() + "]"
	})
	p.capped("Not checked", len(s.NotChecked), func(i int) string {
		u := s.NotChecked[i]
		text := u.What
		if u.Why != "" && u.Why != "not read" {
			text += " (" + u.Why + ")"
		}
		if u.Settle != "" {
			text += "; to settle it: " + u.Settle
		}
		return text
	})
	if len(s.Sources) > 0 {
		var names []string
		for _, src := range s.Sources {
			names = append(names, src.String())
		}
		more := ""
		if len(names) > most {
			more = fmt.Sprintf("; and %d more: see -json", len(names)-most)
			names = names[:most]
		}
		p.wrap("  Sources: ", strings.Join(names, "; ")+more)
	}
	if len(s.Cautions) > 0 {
		var names []string
		for _, c := range s.Cautions {
			names = append(names, strings.ReplaceAll(string(c), "-", " "))
			if !slices.Contains(p.cautions, c) {
				p.cautions = append(p.cautions, c)
			}
		}
		p.wrap("  Take care: ", strings.Join(names, ", ")+" (in full at the end)")
	}
}

func (p *printer) list(title string, items []string) {
	if len(items) == 0 {
		return
	}
	p.line("  " + title)
	for i, item := range items {
		p.wrap(fmt.Sprintf("    %d. ", i+1), item)
	}
}

// most is how many lines of a list are printed; all of them are in the JSON.
const most = 3

// capped prints the first few items of a list and says how many were left out.
func (p *printer) capped(title string, n int, item func(i int) string) {
	if n == 0 {
		return
	}
	p.line("  " + title)
	for i := range n {
		if i == most && n > most {
			p.line(fmt.Sprintf("    - and %d more: see -json", n-most))
			return
		}
		p.wrap("    - ", item(i))
	}
}

// table prints columns as wide as their widest cell; where they do not fit, the
// widest is narrowed and its cells are broken between words.
func (p *printer) table(t job.Table) {
	p.line("  " + t.Title)
	rows := append([][]string{t.Head}, t.Rows...)
	wide := make([]int, len(t.Head))
	total := 4
	for i := range wide {
		for _, row := range rows {
			wide[i] = max(wide[i], utf8.RuneCountInString(row[i]))
		}
		total += wide[i] + 2
	}
	for total-2 > width {
		i := slices.Index(wide, slices.Max(wide))
		wide[i]--
		total--
	}
	for _, row := range rows {
		cells := make([][]string, len(row))
		tall := 1
		for i, cell := range row {
			cells[i] = broken(cell, wide[i])
			tall = max(tall, len(cells[i]))
		}
		for k := range tall {
			line := "    "
			for i := range cells {
				part := ""
				if k < len(cells[i]) {
					part = cells[i][k]
				}
				line += pad(part, wide[i]) + "  "
			}
			p.line(strings.TrimRight(line, " "))
		}
	}
}

// broken breaks text between words into lines of at most n characters.
func broken(text string, n int) []string {
	lines := []string{""}
	for _, word := range strings.Fields(text) {
		last := &lines[len(lines)-1]
		switch {
		case *last == "":
			*last = word
		case utf8.RuneCountInString(*last)+1+utf8.RuneCountInString(word) <= n:
			*last += " " + word
		default:
			lines = append(lines, word)
		}
	}
	return lines
}

// wrap prints text after lead, later lines indented as far as lead reaches.
func (p *printer) wrap(lead, text string) {
	indent := utf8.RuneCountInString(lead)
	for i, line := range broken(text, width-indent) {
		if i > 0 {
			lead = strings.Repeat(" ", indent)
		}
		p.line(strings.TrimRight(lead+line, " "))
	}
}

func pad(s string, n int) string {
	if short := n - utf8.RuneCountInString(s); short > 0 {
		return s + strings.Repeat(" ", short)
	}
	return s
}
