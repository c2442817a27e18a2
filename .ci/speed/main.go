// Command speed measures the hot paths of the library beside their peers and
// prints ratios: how much of its allowance each takes, and how many times as
// long its peer or floor takes in the same run. Times are of one machine and are
// left out on purpose; the kind of machine is named, because an allowance is a
// time.
//
//	go -C .ci/speed run . [-count 9] [-time 100ms] [-o summary.md]
//
// Every package is asked once a round, and the least of the rounds counts: other
// work on a machine only ever adds. Of a ratio the least is the safer claim.
package main

import (
	"bytes"
	"flag"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"time"
)

// A line is one promise: ours takes at most so many nanoseconds and allocates
// at most so often, and its peer takes at least so many times as long.
type line struct {
	work  string
	pkg   string
	ours  string // name of the benchmark, without Benchmark
	unit  string // of the figure, if not ns/op
	most  float64
	allow float64 // allocations; -1 is any number, or not of this benchmark
	peer  string  // name of the peer's benchmark, or a metric of ours that holds the ratio
	who   string
	least float64 // times as long; zero is a floor, which no promise names
}

// A metric is named in small letters, a benchmark is not.
func metric(peer string) bool { return peer != "" && peer[0] >= 'a' && peer[0] <= 'z' }

var lines = []line{
	{work: "lift of a curve of 721 knots, alone", pkg: "timing/cam", ours: "Lift/even", most: 4, peer: "Lift/gonum", who: "gonum/interp natural cubic", least: 12},
	{work: "the same, turn about", pkg: "timing/cam", ours: "LiftBesideGonum", unit: "ns/fastest", most: 4, allow: -1, peer: "x-gonum", who: "gonum/interp natural cubic", least: 12},
	{work: "periodic curve through 721 knots", pkg: "timing/cam", ours: "Fit/periodic", allow: -1, peer: "Fit/gonum-natural", who: "gonum/interp natural cubic", least: 1},
	{work: "best remedy of 10^6", pkg: "timing", ours: "BestOfAMillion/search", most: 50e3, peer: "BestOfAMillion/exhaustive", who: "exhaustive search", least: 100},
	{work: "whole demo job", pkg: "examples/job", ours: "Demo", most: 5e6, allow: -1, peer: "x-redraw", who: "a redraw at 60 Hz", least: 1},
	{work: "clutch window", pkg: "transmission", ours: "Window", most: 1e3, peer: "At", who: "one place of the window (floor)"},
	{work: "clutch diagnosis, some signs", pkg: "transmission", ours: "Diagnose", most: 50e3, allow: -1, peer: "Window", who: "its window alone (floor)"},
	{work: "clutch diagnosis, nuts read", pkg: "transmission", ours: "DiagnoseNutsRead", most: 50e3, allow: -1, peer: "Window", who: "its window alone (floor)"},
	{work: "clutch diagnosis, nothing but signs", pkg: "transmission", ours: "DiagnoseSigns", most: 50e3, allow: -1, peer: "Window", who: "its window alone (floor)"},
	{work: "clutch diagnosis, everything read", pkg: "transmission", ours: "DiagnoseThorough", most: 50e3, allow: -1, peer: "Window", who: "its window alone (floor)"},
	{work: "clutch diagnosis, as owners read", pkg: "transmission", ours: "DiagnoseOwners", most: 50e3, allow: -1, peer: "Window", who: "its window alone (floor)"},
	{work: "clutch repairs with pairs", pkg: "transmission", ours: "RepairsWithPairs", most: 50e3, allow: -1, peer: "Window", who: "one window (floor)"},
	{work: "carburettor point", pkg: "carburation", ours: "Point", most: 5e3, peer: "PortRatio/newton", who: "its port pressure alone (floor)"},
	{work: "mixture map 41 x 41", pkg: "carburation", ours: "Map41/map", most: 10e6, allow: -1, peer: "Map41/singly", who: "its points one by one", least: 1},
	{work: "port pressure", pkg: "carburation", ours: "PortRatio/newton", peer: "PortRatio/brent", who: "Brent, units/solve", least: 1},
	{work: "thread named, clear", pkg: "units/fastener", ours: "Identify/clear", most: 20e3, allow: -1, peer: "Identify/clear/peer_all_ranked", who: "ranking every thread", least: 1},
	{work: "thread named, alike", pkg: "units/fastener", ours: "Identify/alike", most: 20e3, allow: -1, peer: "Identify/alike/peer_all_ranked", who: "ranking every thread", least: 1},
	{work: "fraction read", pkg: "units", ours: "Parse/5/16_in", most: 60, peer: "x-peer", who: "fmt.Sscanf", least: 5},
	{work: "mixed number read", pkg: "units", ours: "Parse/1_3/8_in", most: 60, peer: "x-peer", who: "fmt.Sscanf", least: 5},
	{work: "decimal inches read", pkg: "units", ours: "Parse/0.3125_in", most: 60, peer: "x-peer", who: "fmt.Sscanf", least: 5},
	{work: "millimetres read", pkg: "units", ours: "Parse/12.7mm", most: 60, peer: "x-peer", who: "fmt.Sscanf", least: 5},
	{work: "length written", pkg: "units", ours: "Text", peer: "x-peer", who: "fmt.Appendf", least: 1},
	// a fifth of measuring error
	{work: "inch to mm", pkg: "units", ours: "Inches/4096", unit: "ns/conversion", most: 1.5, peer: "x-peer", who: "the bare loop (floor)", least: 0.8},
	{work: "root, above its evaluations", pkg: "units/solve", ours: "Root", unit: "ns/own", most: 250, allow: -1, peer: "evaluations-share", who: "its evaluations alone, of the whole (floor)"},
	{work: "root with its evaluations", pkg: "units/solve", ours: "Root", unit: "ns/root", allow: -1, peer: "x-peer", who: "gonum/optimize on the square", least: 50},
	{work: "tables' first use, 700 rows", pkg: "refdata", ours: "FirstUse", unit: "µs/700rows", most: 500, allow: -1, peer: "csv/own", who: "encoding/csv alone, to cells (floor)"},
	{work: "thread by its name", pkg: "refdata", ours: "ByName", unit: "ns/name", most: 15, allow: -1, peer: "map/own", who: "a plain map", least: 1},
	{work: "init work of the tables", pkg: "examples/job", ours: "Init", unit: "µs/tables", most: 10, allow: -1, peer: "standard/tables", who: "init of the standard library", least: 1},
	{work: "init work of the whole library", pkg: "examples/job", ours: "Init", unit: "µs/library", allow: -1, peer: "standard/library", who: "init of the standard library", least: 1},
}

func main() {
	count := flag.Int("count", 9, "rounds, of which the least counts")
	span := flag.String("time", "100ms", "time of each run of a benchmark")
	out := flag.String("o", "", "write the summary here too")
	flag.Parse()
	text, missed, err := measure(*count, *span)
	if err == nil && *out != "" {
		err = os.WriteFile(*out, []byte(text), 0o644)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
	fmt.Print(text)
	if missed > 0 {
		fmt.Fprintln(os.Stderr, missed, "lines outside their allowance or ratio") // said, and not a failure
	}
}

// measure runs every benchmark that a line names and puts the lines into words.
func measure(count int, span string) (string, int, error) {
	dir, err := os.MkdirTemp("", "speed")
	if err != nil {
		return "", 0, err
	}
	defer os.RemoveAll(dir)
	var pkgs []string
	for _, l := range lines {
		if !slices.Contains(pkgs, l.pkg) {
			pkgs = append(pkgs, l.pkg)
		}
	}
	for i, pkg := range pkgs {
		cmd := exec.Command("go", "test", "-c", "-o", program(dir, i), "./"+pkg)
		cmd.Dir = "../.."
		if text, err := cmd.CombinedOutput(); err != nil {
			return "", 0, fmt.Errorf("%s: %w\n%s", pkg, err, text)
		}
	}
	seen := map[string]map[string]float64{} // package and benchmark, unit, least figure
	cpu := "?"
	for range count {
		for i, pkg := range pkgs {
			cmd := exec.Command(program(dir, i), "-test.run", "^$", "-test.bench", "^Benchmark("+strings.Join(named(pkg), "|")+")$", "-test.benchmem", "-test.benchtime", span, "-test.cpu", "1")
			cmd.Dir = filepath.Join("../..", pkg)
			text, err := cmd.CombinedOutput()
			if err != nil {
				return "", 0, fmt.Errorf("%s: %w\n%s", pkg, err, text)
			}
			read(seen, pkg, text)
			for row := range strings.Lines(string(text)) {
				if kind, ok := strings.CutPrefix(row, "cpu: "); ok {
					cpu = strings.TrimSpace(kind)
				}
			}
		}
	}
	var b bytes.Buffer
	fmt.Fprintf(&b, "# Ratios\n\nWritten by `go -C .ci/speed run . -o summary.md`: %s, %s, %s/%s, %s; the least of %d rounds of %s.\n\n", time.Now().UTC().Format(time.DateOnly), runtime.Version(), runtime.GOOS, runtime.GOARCH, cpu, count, span)
	b.WriteString("Allowance is the share of the time allowed that the work takes, x peer how many times as long the peer takes.\nA floor is a part of the work or the least there is to do.\n\n")
	b.WriteString("| work | of allowance | x peer | peer or floor |\n| --- | ---: | ---: | --- |\n")
	missed := 0
	for _, l := range lines {
		text, ok := l.say(seen)
		if !ok {
			missed++
		}
		b.WriteString(text)
	}
	fmt.Fprintf(&b, "\n%d of %d within allowance and ratio; ! marks what is not.\n", len(lines)-missed, len(lines))
	return b.String(), missed, nil
}

func program(dir string, i int) string { return filepath.Join(dir, "p"+strconv.Itoa(i)) }

// named lists the benchmarks of a package that some line names.
func named(pkg string) []string {
	var names []string
	for _, l := range lines {
		if l.pkg != pkg {
			continue
		}
		for _, name := range []string{l.ours, l.peer} {
			top, _, _ := strings.Cut(name, "/")
			if name != "" && !metric(name) && !slices.Contains(names, top) {
				names = append(names, top)
			}
		}
	}
	return names
}

// read keeps the least of each figure; of a ratio that is the safer claim.
func read(seen map[string]map[string]float64, pkg string, text []byte) {
	for row := range strings.Lines(string(text)) {
		f := strings.Fields(row)
		name, ok := strings.CutPrefix(row, "Benchmark")
		if !ok || len(f) < 4 {
			continue
		}
		name, _, _ = strings.Cut(name, "\t")
		name = strings.TrimSpace(name)
		if at := strings.LastIndexByte(name, '-'); at > 0 {
			if _, err := strconv.Atoi(name[at+1:]); err == nil {
				name = name[:at]
			}
		}
		at := pkg + " " + name
		if seen[at] == nil {
			seen[at] = map[string]float64{}
		}
		for i := 2; i+1 < len(f); i += 2 {
			x, err := strconv.ParseFloat(f[i], 64)
			if err != nil {
				continue
			}
			if old, ok := seen[at][f[i+1]]; !ok || x < old {
				seen[at][f[i+1]] = x
			}
		}
	}
}

// say puts a line into words and reports whether it is kept.
func (l line) say(seen map[string]map[string]float64) (string, bool) {
	own := seen[l.pkg+" "+l.ours]
	unit := l.unit
	if unit == "" {
		unit = "ns/op"
	}
	x, ok := own[unit]
	if !ok {
		return fmt.Sprintf("| %s | | | ! was not measured |\n", l.work), false
	}
	kept := true
	share, who := "", l.who
	if l.most > 0 {
		share = mark(x/l.most, x <= l.most)
		kept = x <= l.most
	}
	ratio, ok := own[l.peer]
	if peer := seen[l.pkg+" "+l.peer]; !ok && peer != nil {
		ratio, ok = peer["ns/op"]/x, true
	}
	if !ok {
		return fmt.Sprintf("| %s | %s | | ! has no peer |\n", l.work, share), false
	}
	kept = kept && ratio >= l.least
	if n := own["allocs/op"]; l.allow >= 0 && n > l.allow {
		who += fmt.Sprintf(" ! %v allocations", n)
		kept = false
	}
	return fmt.Sprintf("| %s | %s | %s | %s |\n", l.work, share, mark(ratio, ratio >= l.least), who), kept
}

// mark writes two figures of x, and all of a number above a hundred.
func mark(x float64, ok bool) string {
	s := strconv.FormatFloat(x, 'f', max(0, 1-int(math.Floor(math.Log10(x)))), 64)
	if !ok {
		s += " !"
	}
	return s
}
