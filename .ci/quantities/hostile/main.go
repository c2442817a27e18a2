// Command hostile calls every exported function and method of the library with
// what no caller should pass, and fails if one of them panics, hangs, or hands
// out a figure that is no number without an error.
//
//	go -C .ci/quantities build -o /tmp/hostile ./hostile && /tmp/hostile ./units/... ./timing/...
//
// Good arguments come from the Examples of each package: the tool compiles the
// package with a line in front of every exported function that keeps what it was
// called with (by an overlay; no file of the module is touched), runs the
// Examples, and then calls each function with those arguments spoilt - NaN,
// infinities, zeros, signs, the huge and the denormal in every figure, nil, empty
// and enormous slices, malformed text, zero and half-filled structs - one place
// at a time and several at once. A type that shows no fields is spoilt through
// its constructors. What is exempt stands in exempt.go with its reason.
package main

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"golang.org/x/tools/go/packages"

	"example.com/benchbook/ci/quantities/hostile/driver"
)

func main() {
	dir := flag.String("C", ".", "directory of the module to sweep")
	calls := flag.Int("calls", 300, "calls of each function, at most")
	seed := flag.Uint64("seed", 1, "seed of the choice of calls")
	deadline := flag.Duration("deadline", 10*time.Second, "time one call may take")
	perFunc := flag.Duration("time", 3*time.Second, "time all calls of one function may take")
	only := flag.String("only", "", "sweep only functions whose name holds this text")
	keep := flag.String("keep", "", "folder to keep the written programs in")
	flag.Parse()
	patterns := flag.Args()
	if len(patterns) == 0 {
		patterns = []string{"./..."}
	}
	work := *keep
	if work == "" {
		var err error
		if work, err = os.MkdirTemp("", "hostile"); err != nil {
			fatal(err)
		}
	}
	set := driver.Settings{Calls: *calls, Seed: *seed, Deadline: *deadline, PerFunc: *perFunc, Only: *only}
	reports, err := run(*dir, work, patterns, set, exempt)
	if *keep == "" {
		os.RemoveAll(work)
	}
	if err != nil {
		fatal(err)
	}
	if !print(reports, *only == "") {
		os.Exit(1)
	}
}

func fatal(err error) {
	fmt.Fprintln(os.Stderr, err)
	os.Exit(2)
}

// run writes the overlay for the packages, runs their sweeps and gathers the reports.
func run(dir, work string, patterns []string, set driver.Settings, exempt []exemption) ([]driver.Report, error) {
	m, err := load(dir, patterns)
	if err != nil {
		return nil, err
	}
	overlay, err := m.overlay(work, exempt)
	if err != nil {
		return nil, err
	}
	b, err := json.Marshal(map[string]any{"Replace": overlay})
	if err != nil {
		return nil, err
	}
	file := filepath.Join(work, "overlay.json")
	if err := os.WriteFile(file, b, 0o644); err != nil {
		return nil, err
	}
	environment := append(os.Environ(), "HOSTILE_MODULE="+m.path, "HOSTILE_WORK="+work, "HOSTILE_ONLY="+set.Only,
		fmt.Sprintf("HOSTILE_CALLS=%d", set.Calls), fmt.Sprintf("HOSTILE_SEED=%d", set.Seed),
		"HOSTILE_DEADLINE="+set.Deadline.String(), "HOSTILE_PER_FUNCTION="+set.PerFunc.String())
	var reports []driver.Report
	var crashes []driver.Finding
	var skip []string
	todo := m.swept
	for len(todo) > 0 {
		args := []string{"test", "-overlay", file, "-vet=off", "-count=1", "-timeout", "60m", "-run", "^Example"}
		for _, p := range todo {
			args = append(args, p.PkgPath)
		}
		cmd := exec.Command("go", args...)
		cmd.Dir = dir
		cmd.Env = append(slices.Clone(environment), "HOSTILE_SKIP="+strings.Join(skip, ","))
		out, failed := cmd.CombinedOutput()
		var again []*packages.Package
		for _, p := range todo {
			var r driver.Report
			at := filepath.Join(work, reportName(p.PkgPath))
			b, err := os.ReadFile(at)
			if err == nil {
				err = json.Unmarshal(b, &r)
			}
			if err == nil {
				reports = append(reports, r)
				continue
			}
			// What cannot be recovered from ended the process. Its last words say in
			// which function; the sweep goes on without that one.
			last, err := os.ReadFile(at + ".trail")
			name, how, ok := strings.Cut(strings.TrimSpace(string(last)), ": ")
			if err != nil || !ok || len(crashes) > 50 {
				return nil, fmt.Errorf("%s was not swept:\n%s", p.PkgPath, out)
			}
			crashes = append(crashes, driver.Finding{Function: name, Kind: "crash", What: fatalLine(string(out)), How: how, Times: 1})
			skip = append(skip, name)
			again = append(again, p)
		}
		if failed != nil && len(again) == 0 {
			return nil, errors.Join(failed, errors.New(string(out)))
		}
		todo = again
	}
	slices.SortFunc(reports, func(a, b driver.Report) int { return strings.Compare(a.Package, b.Package) })
	reports[0].Findings = append(append(crashes, m.stale(exempt)...), reports[0].Findings...)
	return reports, nil
}

// fatalLine is what the run time said when it gave up.
func fatalLine(out string) string {
	for line := range strings.Lines(out) {
		if strings.HasPrefix(line, "fatal error:") || strings.HasPrefix(line, "hostile:") || strings.HasPrefix(line, "panic:") {
			return strings.TrimSpace(line)
		}
	}
	return "the process ended"
}

func cut(s string) string {
	if len(s) > 90 {
		return s[:90] + "…"
	}
	return s
}

func reportName(path string) string { return strings.ReplaceAll(path, "/", "_") + ".json" }

// print writes what was found, and reports whether that is nothing.
func print(reports []driver.Report, whole bool) bool {
	var sum driver.Report
	fired := map[string]int{}
	fmt.Printf("%-36s %9s %9s %9s %9s %9s  %s\n", "package", "functions", "called", "examples'", "calls", "refused", "slowest call")
	for _, r := range reports {
		fmt.Printf("%-36s %9d %9d %9d %9d %9d  %s\n", r.Package, r.Functions, r.Called, r.Harvested, r.Calls, r.Refused, cut(r.Slowest))
		sum.Functions += r.Functions
		sum.Called += r.Called
		sum.Harvested += r.Harvested
		sum.Calls += r.Calls
		sum.Refused += r.Refused
		sum.Cut += r.Cut
		sum.Findings = append(sum.Findings, r.Findings...)
		for k, n := range r.Exempted {
			fired[k] += n
		}
	}
	fmt.Printf("%-36s %9d %9d %9d %9d %9d\n", "in all", sum.Functions, sum.Called, sum.Harvested, sum.Calls, sum.Refused)
	fmt.Printf("%d functions ran out of time before their calls were all made\n", sum.Cut)
	var names []string
	passed := 0
	for k, n := range fired {
		names = append(names, k)
		passed += n
	}
	slices.Sort(names)
	fmt.Printf("%d calls of %d functions passed by an exemption\n", passed, len(names))
	for _, f := range sum.Findings {
		fmt.Printf("\n%s: %s: %s (%d times)\n    %s\n", f.Function, f.Kind, f.What, f.Times, f.How)
	}
	fmt.Printf("\n%d findings\n", len(sum.Findings))
	return len(sum.Findings) == 0 && sum.Calls > 0
}
