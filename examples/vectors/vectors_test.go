package main

import (
	"bytes"
	"embed"
	"encoding/json"
	"fmt"
	"math"
	"sync"
	"testing"
)

//go:embed vectors.json cases
var committed embed.FS

//go:embed vectors.schema.json
var schema []byte

//go:embed index.schema.json
var indexSchema []byte

// answers are worked out once for all tests.
var answers = sync.OnceValues(func() (made, error) {
	f, b, err := write()
	return made{f, b}, err
})

type made struct {
	file File
	*book
}

// read returns the committed cases, put together from the files of the index.
func read(t *testing.T) File {
	t.Helper()
	f, err := all()
	if err != nil {
		t.Fatal(err)
	}
	return f
}

var all = sync.OnceValues(func() (File, error) {
	var index Index
	if err := decode("vectors.json", &index); err != nil {
		return File{}, err
	}
	whole := File{Schema: index.Schema, Library: index.Library, Tables: index.Tables}
	for _, p := range index.Files {
		var f File
		if err := decode(p.File, &f); err != nil {
			return File{}, err
		}
		if f.Schema != whole.Schema || f.Library != whole.Library || f.Tables != whole.Tables || len(f.Cases) != p.Cases {
			return File{}, fmt.Errorf("%s is not the file that the index tells of", p.File)
		}
		whole.Cases = append(whole.Cases, f.Cases...)
	}
	return whole, nil
})

func decode(name string, to any) error {
	text, err := committed.ReadFile(name)
	if err != nil {
		return err
	}
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	if err := d.Decode(to); err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	return nil
}

// The committed file is what the code answers, within each figure's tolerance, on
// whatever processor the test runs on. If an answer was changed on purpose:
// go run ./examples/vectors -o examples/vectors/vectors.json
func TestCommittedFileIsWhatTheCodeGives(t *testing.T) {
	want := read(t)
	now, err := answers()
	if err != nil {
		t.Fatal(err)
	}
	got := now.file
	if got.Schema != want.Schema || got.Library != want.Library || got.Tables != want.Tables {
		t.Errorf("the file is of schema %d, library %s, tables %.8s; the code is %d, %s, %.8s: write it anew",
			want.Schema, want.Library, want.Tables, got.Schema, got.Library, got.Tables)
	}
	if len(got.Cases) != len(want.Cases) {
		t.Fatalf("%d cases, the file has %d: write it anew", len(got.Cases), len(want.Cases))
	}
	for i, w := range want.Cases {
		g := got.Cases[i]
		if g.ID != w.ID || g.Kind != w.Kind || g.Function != w.Function {
			t.Fatalf("case %d is %s, the file has %s: write it anew", i, g.ID, w.ID)
		}
		sameNames(t, w.ID, g.Inputs, w.Inputs)
		sameNames(t, w.ID, g.Expected, w.Expected)
		for name, f := range w.Expected {
			if !agrees(g.Expected[name], f) {
				t.Errorf("%s: %s is %s, the file has %s", w.ID, name, show(g.Expected[name]), show(f))
			}
		}
		for name, f := range w.Inputs {
			// Inputs are written with all their digits: the last may differ.
			f.Tol = tolerance(name, 1)
			if !agrees(g.Inputs[name], f) {
				t.Errorf("%s: the input %s is %s, the file has %s", w.ID, name, show(g.Inputs[name]), show(f))
			}
		}
	}
}

func sameNames(t *testing.T, id string, got, want map[string]Figure) {
	t.Helper()
	for name := range want {
		if _, ok := got[name]; !ok {
			t.Errorf("%s: %s is no longer there", id, name)
		}
	}
	for name := range got {
		if _, ok := want[name]; !ok {
			t.Errorf("%s: %s is new", id, name)
		}
	}
}

// agrees compares words as they stand and numbers within the tolerance.
func agrees(got, want Figure) bool {
	if want.Value == nil && want.Values == nil {
		return got.Value == nil && got.Text == want.Text
	}
	a, b := numbers(got), numbers(want)
	if len(a) != len(b) || got.Unit != want.Unit {
		return false
	}
	for i := range a {
		if math.Abs(a[i]-b[i]) > max(want.Tol.Abs, want.Tol.Rel*math.Abs(b[i])) {
			return false
		}
	}
	return true
}

func numbers(f Figure) []float64 {
	if f.Value != nil {
		return []float64{*f.Value}
	}
	return f.Values
}

func show(f Figure) string {
	b, err := json.Marshal(f)
	if err != nil {
		return err.Error()
	}
	return string(b)
}

// A wrong figure is noticed: the comparison can fail.
func TestAWrongFigureIsNoticed(t *testing.T) {
	f := read(t)
	checked := 0
	for _, c := range f.Cases {
		for name, w := range c.Expected {
			if c.Function == "" || w.Value == nil {
				continue
			}
			g, off := w, *w.Value+10*max(w.Tol.Abs, w.Tol.Rel*math.Abs(*w.Value))
			g.Value = &off
			if agrees(g, w) {
				t.Errorf("%s: %s passes as %g", c.ID, name, off)
			}
			checked++
		}
	}
	if checked < 1000 {
		t.Errorf("only %d figures", checked)
	}
}

// Every package that computes is asked, and no identifier comes twice.
func TestEveryPackageIsAsked(t *testing.T) {
	now, err := answers()
	if err != nil {
		t.Fatal(err)
	}
	asked := map[string]int{}
	for f := range now.count {
		pkg, _, _ := bytes.Cut([]byte(f), []byte("."))
		asked[string(pkg)]++
	}
	for _, pkg := range []string{
		"units", "units/measure", "units/solve", "units/fastener", "refdata", "timing", "timing/gear", "timing/crank", "timing/cam", "timing/ignition",
		"transmission", "transmission/spring", "transmission/drive", "carburation", "carburation/air", "carburation/fuel",
	} {
		if asked[pkg] == 0 {
			t.Errorf("nothing is asked of %s", pkg)
		}
	}
	seen := map[string]bool{}
	for _, c := range read(t).Cases {
		if seen[c.ID] {
			t.Errorf("%s comes twice", c.ID)
		}
		seen[c.ID] = true
	}
}
