//go:build !js && !wasip1

package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// exempt are exported functions that no chapter asks, by name or, with a star, by
// the beginning or end of it, and why not.
var exempt = map[string]string{
	"*.String": "words for a reader, which may change", "*.Error": "words for a reader", "*.Text": "words for a reader, or the user's own",
	"*.Note": "words for a reader", "*.Instrument": "the name that was given", "*.As": "the text that was given",
	"*.MarshalText": "the form of every figure in the file", "*.MarshalJSON": "the form of every figure in the file", "*.AppendText": "as MarshalText",
	"*.UnmarshalText": "reads what the file is written in: the replay reads every input by it", "*.UnmarshalJSON": "as UnmarshalText",
	"*.Sources": "citations; rests_on has those of every answer", "*.XY": "points for a drawing; the chapter of what is drawn has some", "*.Trace.Len": "as XY", "*.Trace.At": "as XY",
	"transmission/drive.Curve.Len": "as XY",
	"*.Must":                       "panics where the function without Must refuses",
	"refdata/checks.*":             "reads the published cases of this very file",
	"units/fault.*":                "carries faults; every refusal in the file is its work",
	"refdata.Basis.Join":           "gathers citations; rests_on is its work",
	"refdata.Origin.Given":         "part of a citation", "refdata.Origin.Source": "part of a citation", "refdata.Origin.Status": "part of a citation",
	"units/measure.LogLikelihood.LogLikelihood": "calls the function it is",
	// The generic forms of functions that every quantity has of its own.
	"units.Parse": "units.ParseLength and its like are asked", "units.ParseNoted": "units.ParseLength with words for a reader",
	"units.FromSI": "a number as it stands", "units.FromFigure": "a number as it stands", "units.Finite": "no figure that is not finite can stand in the file",
	"units.Name": "words for a reader", "units.Example": "words for a reader",
}

// unrefused are functions that return an error and refuse none of their cases.
var unrefused = map[string]string{
	"timing/cam.Curve.Advanced": "refuses only what is not finite, which no file can hold", "timing/cam.Curve.Area": "as Advanced", "timing/cam.Curve.Centres": "as Advanced",
	"timing/cam.Curve.Events": "as Advanced", "timing/cam.Curve.Lift": "as Advanced", "timing/cam.Curve.Motion": "as Advanced", "timing/cam.Motion.At": "as Advanced",
	"timing/cam.OverlapOf": "as Advanced", "timing.LobeOf": "as Advanced", "timing/ignition.SparkFor": "as Advanced",
	"timing.LobesOf":         "events that were not read are left out of the answer",
	"timing/gear.Train.Err":  "wheels that cannot be have no text: ParseTrain refuses them",
	"timing/gear.Train.Then": "as Train.Err", "timing/gear.Train.FinestStep": "as Train.Err", "timing/gear.Train.MarksMeet": "as Train.Err",
	"timing/gear.Train.Ratio": "as Train.Err", "timing/gear.EpicyclicOf": "as Train.Err",
	"units/measure.Reading.Err": "a reading that cannot be has no form in the file", "units/measure.Position.Err": "as Reading.Err",
}

// exported is a function of the library as its source declares it.
type exported struct {
	inputs, refuses, generated bool
}

// library reads the exported functions and methods of every package.
func library(t *testing.T) map[string]exported {
	t.Helper()
	out := map[string]exported{}
	for _, top := range []string{"units", "refdata", "timing", "transmission", "carburation"} {
		root := filepath.Join("..", "..", top)
		err := filepath.WalkDir(root, func(name string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() && (d.Name() == "internal" || d.Name() == "testdata") {
				if err == nil {
					err = filepath.SkipDir
				}
				return err
			}
			if d.IsDir() || !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
				return nil
			}
			f, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ParseComments|parser.SkipObjectResolution)
			if err != nil {
				return err
			}
			in, err := filepath.Rel(filepath.Join("..", ".."), filepath.Dir(name))
			if err != nil {
				return err
			}
			for _, decl := range f.Decls {
				if fn, ok := decl.(*ast.FuncDecl); ok && fn.Name.IsExported() {
					if name, ok := full(fn); ok {
						out[filepath.ToSlash(in)+"."+name] = exported{len(fn.Type.Params.List) > 0 || fn.Recv != nil, refusingSource(fn), ast.IsGenerated(f)}
					}
				}
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	return out
}

// full returns type and name of a function, and whether both are exported.
func full(fn *ast.FuncDecl) (string, bool) {
	if fn.Recv == nil {
		return fn.Name.Name, true
	}
	of := fn.Recv.List[0].Type
	for {
		switch t := of.(type) {
		case *ast.StarExpr:
			of = t.X
		case *ast.IndexExpr:
			of = t.X
		case *ast.IndexListExpr:
			of = t.X
		case *ast.Ident:
			return t.Name + "." + fn.Name.Name, t.IsExported()
		default:
			return "", false
		}
	}
}

func refusingSource(fn *ast.FuncDecl) bool {
	if fn.Type.Results == nil {
		return false
	}
	list := fn.Type.Results.List
	id, ok := list[len(list)-1].Type.(*ast.Ident)
	return ok && id.Name == "error"
}

// exemptions returns the entries of exempt that a function falls under.
func exemptions(name string) (keys []string) {
	_, last, _ := strings.Cut(path.Base(name), ".")
	for key := range exempt {
		switch {
		case key == name,
			key == "*.Must" && strings.HasPrefix(last, "Must"),
			strings.HasPrefix(key, "*") && strings.HasSuffix(name, key[1:]),
			strings.HasSuffix(key, "*") && strings.HasPrefix(name, key[:len(key)-1]):
			keys = append(keys, key)
		}
	}
	return keys
}

// Every exported function and method that computes something is asked, on more
// than one case where there is more than one to ask, one of them refused where it
// can refuse; and nothing is asked, or excused, that there is not.
func TestEveryFunctionIsAsked(t *testing.T) {
	file := read(t)
	answers, refusals := map[string]int{}, map[string]int{}
	for _, c := range file.Cases {
		if _, refused := c.Expected["fault"]; refused {
			refusals[c.Function]++
		} else {
			answers[c.Function]++
		}
	}
	all := library(t)
	if len(all) < 500 {
		t.Fatalf("only %d functions found", len(all))
	}
	used := map[string]bool{}
	for _, name := range slices.Sorted(maps.Keys(all)) {
		f, n := all[name], answers[name]+refusals[name]
		excused := exemptions(name)
		for _, key := range excused {
			used[key] = true
		}
		if n == 0 && len(excused) > 0 {
			continue
		}
		_, last, _ := strings.Cut(path.Base(name), ".")
		if f.generated && !strings.HasPrefix(last, "Parse") && n == 0 {
			continue // conversions: the units that ParseLength and its like read have the same factors
		}
		switch {
		case n == 0:
			t.Errorf("%s is asked in no chapter: give it one, or a reason in exempt", name)
		case f.inputs && n < 2:
			t.Errorf("%s is asked only once", name)
		case f.refuses && refusals[name] == 0 && unrefused[name] == "":
			t.Errorf("%s refuses none of its %d cases: ask something that it must refuse", name, n)
		case f.refuses && refusals[name] > 0 && unrefused[name] != "":
			t.Errorf("%s is excused from refusing and refuses", name)
		case answers[name] == 0 && !strings.HasSuffix(name, ".Err"):
			t.Errorf("%s answers none of its %d cases", name, n)
		}
		delete(answers, name)
		delete(refusals, name)
	}
	delete(answers, "") // published cases
	for _, left := range []map[string]int{answers, refusals} {
		for name := range left {
			t.Errorf("the file asks %s, which the library does not have", name)
		}
	}
	for key := range exempt {
		if !used[key] {
			t.Errorf("%s is excused and does not exist", key)
		}
	}
	for name := range unrefused {
		if _, ok := all[name]; !ok {
			t.Errorf("%s is excused from refusing and does not exist", name)
		}
	}
}
