// Package fault describes what was wrong with an input, and why a sound input
// may still have no answer.
//
// A [Fault] names the field, the value as it was given with its unit, and the
// rule it broke, under a code that stays the same from release to release. A
// [List] gathers every fault of one input before anything is computed, so a
// caller sees all of them at once:
//
//	var l fault.List
//	l.Add(fault.Fault{
//		Path: "inlet.opens", Code: fault.OutOfRange,
//		Value: "400°", Rule: "0° to 180° from its dead centre",
//	})
//	return l.Err()
//
// [Under] puts a path before that of every fault of an error, and [Faults] takes
// any error of this module apart again. A [Reason] is not a
// fault: it says why a well-formed question has no answer.
//
// Not covered: faults of the machine on the bench. Those are findings, and
// each trade's package reports its own.
package fault

import (
	"errors"
	"strings"
)

// Code is the stable name of a kind of fault. Programs may compare it.
type Code string

// The codes. New ones may be added; none changes its meaning.
const (
	Missing       Code = "missing"        // a figure that is needed was not given
	NotANumber    Code = "not-a-number"   // the text does not begin with a number
	UnitMissing   Code = "unit-missing"   // a bare number where a unit is needed
	UnitUnknown   Code = "unit-unknown"   // a unit this quantity does not have
	UnitAmbiguous Code = "unit-ambiguous" // a unit with several sizes; the rule lists them
	WrongShaft    Code = "wrong-shaft"    // a cam angle for a crank angle, or the reverse
	OutOfRange    Code = "out-of-range"   // outside the range the rule gives
	Conflict      Code = "conflict"       // two figures that cannot both be true
	UnknownName   Code = "unknown-name"   // a key, table row or choice that does not exist
	BadForm       Code = "bad-form"       // text that cannot be read in the form the rule gives
)

// Fault is one thing wrong with an input.
type Fault struct {
	Code  Code   `json:"code"`            // stable kind of fault
	Path  string `json:"path,omitempty"`  // the field, dotted from the outermost: "clutch.springs.rate"
	Value string `json:"value,omitempty"` // the value as given, with its unit; "" if there was none
	Unit  string `json:"unit,omitempty"`  // the unit that was given or is wanted; "" if none applies
	Rule  string `json:"rule,omitempty"`  // what would have been right, readable after "value: "
}

// Error says the fault in one line: path, value, rule.
func (f Fault) Error() string {
	var b strings.Builder
	if f.Path != "" {
		b.WriteString(f.Path)
		b.WriteString(": ")
	}
	if f.Value != "" {
		b.WriteString(f.Value)
		b.WriteString(": ")
	}
	if f.Rule == "" {
		b.WriteString(string(f.Code))
	} else {
		b.WriteString(f.Rule)
	}
	return b.String()
}

// List gathers faults. Its zero value is empty and ready to use.
type List struct{ all []Fault }

// Add notes faults.
func (l *List) Add(f ...Fault) { l.all = append(l.all, f...) }

// Under notes every fault of err below path, and reports whether err was nil.
// An error that is not a fault is kept as one of code [BadForm], its text as
// the rule, so nothing is lost.
func (l *List) Under(path string, err error) (ok bool) {
	for _, f := range Faults(err) {
		f.Path = join(path, f.Path)
		l.all = append(l.all, f)
	}
	return err == nil
}

// Len returns the number of faults noted.
func (l *List) Len() int { return len(l.all) }

// Err returns nil if nothing was noted, else one error holding every fault in
// the order noted.
func (l *List) Err() error {
	switch len(l.all) {
	case 0:
		return nil
	case 1:
		return l.all[0]
	}
	errs := make([]error, len(l.all))
	for i, f := range l.all {
		errs[i] = f
	}
	return errors.Join(errs...)
}

// Under returns err with path put before the path of each of its faults.
// It returns nil for nil.
func Under(path string, err error) error {
	var l List
	l.Under(path, err)
	return l.Err()
}

// Faults returns every fault held in err, in order, looking through wrapped
// and joined errors. An error that holds none yields one fault of code
// [BadForm] whose rule is the error's text. Faults(nil) is empty.
func Faults(err error) []Fault {
	switch e := err.(type) {
	case nil:
		return nil
	case Fault:
		return []Fault{e}
	case *Fault:
		if e == nil {
			return nil
		}
		return []Fault{*e}
	case interface{ Unwrap() []error }:
		var all []Fault
		for _, inner := range e.Unwrap() {
			all = append(all, Faults(inner)...)
		}
		return all
	}
	if inner := errors.Unwrap(err); inner != nil && holds(inner) {
		return Faults(inner)
	}
	return []Fault{{Code: BadForm, Rule: err.Error()}}
}

// holds reports whether there is a fault in err: what wraps none, such as the error
// of a file that cannot be opened, keeps its own text.
func holds(err error) bool {
	var f Fault
	var p *Fault
	return errors.As(err, &f) || errors.As(err, &p)
}

func join(outer, inner string) string {
	switch {
	case outer == "":
		return inner
	case inner == "":
		return outer
	case strings.HasPrefix(inner, "["):
		return outer + inner
	}
	return outer + "." + inner
}

// Reason says why a sound question has no answer: an empty window, a mixture
// no jet can reach. The zero Reason means there is an answer.
type Reason struct {
	Code string `json:"code,omitempty"` // stable, lower case with hyphens: "window-empty"
	Text string `json:"text,omitempty"` // for the reader
}

// Given reports whether there is a reason, that is, no answer.
func (r Reason) Given() bool { return r.Code != "" }

// String returns the text.
func (r Reason) String() string { return r.Text }
