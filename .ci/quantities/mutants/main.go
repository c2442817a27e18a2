// Command mutants tells how much of a package its tests hold: it changes one
// operator at a time and looks whether a test of that package fails.
//
//	go -C .ci/quantities build -o /tmp/mutants ./mutants
//	/tmp/mutants -o /tmp/lived ./units/solve ./timing/gear     # report, and those that lived
//	/tmp/mutants -again /tmp/lived ./timing/gear               # only those, after tests were added
//
// The changes are the usual ones of the trade: a comparison's boundary (< for <=)
// and its negation, + for -, * for /, * for %, ++ for --, and a sign left out. All
// changes of a package are compiled into one test binary, each behind a number of
// its own that the environment turns on (by an overlay; no file of the module is
// touched), and each is then shown only to the tests that come past it, quickest
// first. A tool that compiles anew for every change takes some twenty times as long.
// Changes in constants that the compiler must know are not made; they are counted.
//
// A change that no test can see because the program does the same stands in a list in
// the folder equivalent, under a heading (#) with the reason, and is counted apart.
package main

import (
	"errors"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"time"

	"golang.org/x/tools/go/packages"
)

func main() {
	dir := flag.String("C", ".", "directory of the module")
	again := flag.String("again", "", "try only the changes listed in this file, as -o writes it")
	out := flag.String("o", "", "file for the changes that lived")
	only := flag.String("only", "", "only files whose name holds this text")
	equivalent := flag.String("equivalent", ".ci/quantities/mutants/equivalent", "folder of lists of changes that no test can see (from the directory of the module)")
	least := flag.Float64("least", 0, "fail below this share killed, in per cent")
	tests := flag.String("tests", "", "only tests whose name matches this expression: to work on one of them")
	every := flag.Int("every", 1, "try one in so many")
	flag.Parse()

	known, err := reasons(filepath.Join(*dir, *equivalent))
	check(err)
	var wanted map[string]bool
	if *again != "" {
		wanted, err = keys(*again)
		check(err)
	}
	names, err := packages.Load(&packages.Config{Dir: *dir, Mode: packages.NeedName}, flag.Args()...)
	check(err)
	var all tally
	var lived strings.Builder
	for _, name := range names {
		start := time.Now()
		p, err := load(*dir, name.PkgPath)
		check(err)
		t, err := try(p, func(s *site) bool {
			return strings.Contains(s.file, *only) && (wanted == nil || wanted[s.key]) && s.id%*every == 0
		}, *tests, known, &lived)
		check(err)
		if t.all() == 0 {
			continue
		}
		fmt.Printf("%-44s %v  %v\n", p.PkgPath, t, time.Since(start).Round(time.Second))
		all.add(t)
		if *out != "" {
			check(os.WriteFile(*out, []byte(lived.String()), 0o644))
		}
	}
	if len(names) > 1 {
		fmt.Printf("%-44s %v\n", "in all", all)
	}
	if all.killedShare() < *least {
		os.Exit(1)
	}
}

// load reads a package just before its turn: its files may be worked on meanwhile.
func load(dir, pattern string) (*packages.Package, error) {
	list, err := packages.Load(&packages.Config{
		Dir:  dir,
		Mode: packages.NeedName | packages.NeedModule | packages.NeedFiles | packages.NeedCompiledGoFiles | packages.NeedSyntax | packages.NeedTypes | packages.NeedTypesInfo | packages.NeedImports | packages.NeedDeps,
	}, pattern)
	if err != nil {
		return nil, err
	}
	if packages.PrintErrors(list) > 0 || len(list) != 1 {
		return nil, errors.New(pattern + " does not load")
	}
	return list[0], nil
}

func check(err error) {
	if err != nil {
		fmt.Fprintln(os.Stderr, "mutants:", err)
		os.Exit(2)
	}
}

// keys reads the first column of what -o wrote.
func keys(name string) (map[string]bool, error) {
	text, err := os.ReadFile(name)
	if err != nil {
		return nil, err
	}
	m := map[string]bool{}
	for line := range strings.Lines(string(text)) {
		key, _, _ := strings.Cut(strings.TrimSpace(line), "\t")
		m[key] = key != ""
	}
	return m, nil
}

// reasons reads the lists of equivalent changes: in each file a heading for a reason,
// which starts with #, then the keys it holds for.
func reasons(folder string) (map[string]string, error) {
	m := map[string]string{}
	lists, err := filepath.Glob(filepath.Join(folder, "*.txt"))
	for _, name := range lists {
		text, err := os.ReadFile(name)
		if err != nil {
			return nil, err
		}
		reason := ""
		for line := range strings.Lines(string(text)) {
			line = strings.TrimSpace(line)
			if rest, heading := strings.CutPrefix(line, "#"); heading {
				reason = strings.TrimSpace(rest)
			} else if line != "" {
				key, _, _ := strings.Cut(line, "\t")
				m[key] = reason
			}
		}
	}
	return m, err
}
