package main

import (
	"errors"
	"fmt"
	"strings"

	"example.com/benchbook/examples/job"
	"example.com/benchbook/refdata"
	"example.com/benchbook/refdata/checks"
)

// fileSchema is the version of the form that doc.go describes.
const fileSchema = 1

// File is check values with what they were made from.
type File struct {
	Schema  int    `json:"schema"`
	Library string `json:"library"` // version of the library
	Tables  string `json:"tables"`  // hash of its tables
	Cases   []Case `json:"cases"`
}

// Index names the files of check values.
type Index struct {
	Schema  int    `json:"schema"`
	Library string `json:"library"`
	Tables  string `json:"tables"`
	Files   []Part `json:"files"`
}

// Part is one of those files.
type Part struct {
	File    string `json:"file"`              // path from the index
	Package string `json:"package,omitempty"` // none for the published cases
	Cases   int    `json:"cases"`
}

// parts splits a file by package, in the order of its cases.
func (f File) parts() (Index, map[string]File) {
	index := Index{Schema: f.Schema, Library: f.Library, Tables: f.Tables}
	files := map[string]File{}
	for _, c := range f.Cases {
		pkg, _, _ := strings.Cut(c.Function, ".")
		name := "cases/" + strings.ReplaceAll(pkg, "/", "-") + ".json"
		if pkg == "" {
			name = "cases/published.json"
		}
		part, ok := files[name]
		if !ok {
			part = File{Schema: f.Schema, Library: f.Library, Tables: f.Tables}
			index.Files = append(index.Files, Part{File: name, Package: pkg})
		}
		part.Cases = append(part.Cases, c)
		files[name] = part
	}
	for i, p := range index.Files {
		index.Files[i].Cases = len(files[p.File].Cases)
	}
	return index, files
}

// Case is one check, in the form of package refdata/checks.
type Case struct {
	ID            string            `json:"id"`
	Kind          checks.Kind       `json:"kind"`
	Topic         string            `json:"topic"`
	Function      string            `json:"function,omitempty"` // of this library, that gave the answers
	Source        refdata.Source    `json:"source"`
	RestsOn       []string          `json:"rests_on,omitempty"` // sources the answer names
	Inputs        map[string]Figure `json:"inputs"`
	Expected      map[string]Figure `json:"expected"`
	Reproduces    bool              `json:"reproduces"`
	NotReproduced []string          `json:"not_reproduced,omitempty"`
	Note          string            `json:"note,omitempty"`
}

// Figure is one figure: a number, a list of numbers, or words alone.
type Figure struct {
	Text    string            `json:"text,omitempty"`
	Value   *float64          `json:"value,omitempty"`
	Values  []float64         `json:"values,omitempty"`
	Unit    string            `json:"unit,omitempty"`
	U       *float64          `json:"u,omitempty"`
	Printed string            `json:"printed,omitempty"`
	Tol     *checks.Tolerance `json:"tol,omitempty"`
}

// in names the arguments of a call.
type in map[string]any

// outcome is what a call gave.
type outcome struct {
	result any
	err    error
}

// book gathers cases.
type book struct {
	cases []Case
	count map[string]int
	asked []asked
	hits  map[string]map[string]bool // by function: see asking
	err   error                      // what could not be written down
}

// add notes one call of a public function, "timing/crank.Slider.Travel". Cases are
// numbered for each function, so that new questions go after the old ones and no
// identifier changes.
func (b *book) add(function string, args in, o outcome) {
	b.count[function]++
	pkg, name, _ := strings.Cut(function, ".")
	topic := strings.ToLower(strings.NewReplacer("/", "-", ".", "-").Replace(function))
	c := Case{
		ID: fmt.Sprintf("%s-%d", topic, b.count[function]), Kind: checks.Computed, Topic: topic, Function: function,
		Source: refdata.Source{Title: "benchbook, package " + pkg, Clause: name, Status: refdata.Derived},
		Inputs: map[string]Figure{}, Expected: map[string]Figure{}, Reproduces: true,
	}
	for name, v := range args {
		b.keep(c.ID, flatten(c.Inputs, name, v, given))
	}
	if o.err != nil {
		c.Expected["fault"] = Figure{Text: codes(o.err)}
	} else {
		b.keep(c.ID, flatten(c.Expected, "", o.result, answered))
		c.RestsOn = restsOn(o.result)
	}
	if len(c.Expected) == 0 {
		b.keep(c.ID, fmt.Errorf("no answer to check"))
	}
	b.cases = append(b.cases, c)
}

func (b *book) keep(id string, err error) {
	if err != nil {
		b.err = errors.Join(b.err, fmt.Errorf("%s: %w", id, err))
	}
}

// write returns all cases.
func write() (File, *book, error) {
	b := &book{cases: published(), count: map[string]int{}, hits: map[string]map[string]bool{}}
	for _, chapter := range chapters() {
		chapter(b)
	}
	for name, hits := range b.hits {
		for path, hit := range hits {
			if !hit {
				b.keep(name, fmt.Errorf("%s is in no answer", path))
			}
		}
	}
	return File{Schema: fileSchema, Library: job.Version, Tables: refdata.Hash(), Cases: b.cases}, b, b.err
}
