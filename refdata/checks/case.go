package checks

import (
	"strconv"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Kind says where the answers of a case come from.
type Kind string

// The kinds.
const (
	Published Kind = "published" // printed by the source
	Computed  Kind = "computed"  // computed apart from this library
)

// Case is one check: given figures and the answers that a source prints for
// them. It is a copy; changing it changes nothing else.
type Case struct {
	ID            string            `json:"id"`
	Kind          Kind              `json:"kind"`
	Topic         string            `json:"topic"`
	Source        refdata.Source    `json:"source"`
	Inputs        map[string]Figure `json:"inputs"`
	Expected      map[string]Figure `json:"expected"`
	Reproduces    bool              `json:"reproduces"`
	NotReproduced []string          `json:"not_reproduced,omitempty"`
	Note          string            `json:"note,omitempty"`
}

// Figure is one figure of a case: a number, a list of numbers, or words, with
// the unit it is printed in. [Get] reads it as a quantity.
type Figure struct {
	Value   float64    `json:"value"`
	Values  []float64  `json:"values,omitempty"`  // in place of Value
	Unit    string     `json:"unit,omitempty"`    // "1" for a pure number, "" for words
	Text    string     `json:"text,omitempty"`    // in place of Value
	Printed string     `json:"printed,omitempty"` // the source's digits
	U       float64    `json:"u,omitempty"`       // standard uncertainty, in Unit
	Tol     *Tolerance `json:"tol,omitempty"`     // of an answer
}

// Tolerance is how far an answer may lie from the printed figure: the wider of
// Rel times the figure and Abs in the figure's unit.
type Tolerance struct {
	Rel float64 `json:"rel,omitempty"`
	Abs float64 `json:"abs,omitempty"`
}

// Figure returns the figure of that name, an input or else an answer.
func (c Case) Figure(name string) (Figure, bool) {
	if f, ok := c.Inputs[name]; ok {
		return f, true
	}
	f, ok := c.Expected[name]
	return f, ok
}

// Get returns a figure of the case, an input or else an answer, as a quantity.
// Errors: [fault.UnknownName] if the case has no such figure, and the faults of
// [units.Parse] if it is not a Q; both with the path "case.name".
func Get[Q units.Quantity](c Case, name string) (Q, error) {
	f, err := c.number(name)
	if err != nil {
		return 0, err
	}
	q, err := units.Parse[Q](strconv.FormatFloat(f.Value, 'g', -1, 64) + " " + unitText(f.Unit))
	return q, fault.Under(c.ID+"."+name, err)
}

// GetPosition returns a figure of the case as a place in the cycle.
// Errors as [Get].
func GetPosition(c Case, name string) (units.CrankPosition, error) {
	f, err := c.number(name)
	if err != nil {
		return units.CrankPosition{}, err
	}
	p, err := units.ParsePosition(strconv.FormatFloat(f.Value, 'g', -1, 64) + f.Unit)
	return p, fault.Under(c.ID+"."+name, err)
}

// Number returns a figure of the case in the unit the source prints it in:
// a pure number, a count of teeth, or a figure no quantity type exists for.
// Errors: [fault.UnknownName].
func Number(c Case, name string) (float64, error) {
	f, err := c.number(name)
	return f.Value, err
}

// Numbers returns a list of the case, in the unit the source prints it in. A
// single figure is a list of one. Errors: [fault.UnknownName].
func Numbers(c Case, name string) ([]float64, error) {
	f, ok := c.Figure(name)
	switch {
	case !ok || f.Text != "":
		return nil, c.noFigure(name)
	case f.Values == nil:
		return []float64{f.Value}, nil
	}
	return f.Values, nil
}

func (c Case) number(name string) (Figure, error) {
	f, ok := c.Figure(name)
	if !ok || f.Text != "" || f.Values != nil {
		return Figure{}, c.noFigure(name)
	}
	return f, nil
}

func (c Case) noFigure(name string) error {
	return fault.Fault{Code: fault.UnknownName, Path: c.ID + "." + name, Rule: "the case has no such figure in this form"}
}

func unitText(unit string) string {
	if unit == "1" {
		return ""
	}
	return unit
}
