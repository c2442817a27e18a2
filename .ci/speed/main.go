// Command speed measures the hot paths of the library beside their peers and
// prints ratios: how much of its allowance each takes, and how many times as
// long its peer takes in the same run. Times are of one machine and are left
// out on purpose.
//
//	go -C .ci/speed run . [-count 3] [-time 100ms] [-o summary.txt]
//
// The least of the runs counts: other work on a machine only ever adds.
package main

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"slices"
	"strconv"
	"strings"
)

// A line is one promise: ours takes at most so many nanoseconds and allocates
// at most so often, and its peer takes at least so many times as long.
type line struct {
	work  string
	pkg   string
	ours  string // name of the benchmark, without Benchmark
	unit  string // of the figure, if not ns/op
	most  float64
	allow float64 // allocations; -1 is any number
	peer  string  // name of the peer's benchmark, or a metric of ours that holds the ratio
	who   string
	least float64
}

var lines = []line{
	{work: "lift of a curve of 721 knots", pkg: "timing/cam", ours: "Lift/even", most: 4, peer: "Lift/gonum", who: "gonum/interp natural cubic", least: 12},
	{work: "periodic curve through 721 knots", pkg: "timing/cam", ours: "Fit/periodic", allow: -1, peer: "Fit/gonum-natural", who: "gonum/interp natural cubic", least: 1},
	{work: "best remedy of 10^6", pkg: "timing", ours: "BestOfAMillion/search", most: 50e3, peer: "BestOfAMillion/exhaustive", who: "exhaustive search", least: 100},
	{work: "whole demo job", pkg: "examples/job", ours: "Demo", most: 5e6, allow: -1},
	{work: "clutch window", pkg: "transmission", ours: "Window", most: 1e3},
	{work: "clutch diagnosis on its signs", pkg: "transmission", ours: "Diagnose", most: 50e3, allow: -1},
	{work: "clutch diagnosis, nuts read", pkg: "transmission", ours: "DiagnoseNutsRead", most: 50e3, allow: -1},
	{work: "repairs with pairs", pkg: "transmission", ours: "RepairsWithPairs", most: 50e3, allow: -1},
	{work: "carburettor point", pkg: "carburation", ours: "Point", most: 5e3},
	{work: "mixture map 41 x 41", pkg: "carburation", ours: "Map41", most: 10e6, allow: -1},
	{work: "port pressure", pkg: "carburation", ours: "PortRatioNewton", peer: "PortRatioBrent", who: "Brent, units/solve", least: 1},
	{work: "thread named, clear", pkg: "units/fastener", ours: "Identify/clear", most: 20e3, allow: -1, peer: "Identify/clear/peer_all_ranked", who: "ranking every thread", least: 1},
	{work: "thread named, alike", pkg: "units/fastener", ours: "Identify/alike", most: 20e3, allow: -1, peer: "Identify/alike/peer_all_ranked", who: "ranking every thread", least: 1},
	{work: "fraction read", pkg: "units", ours: "Parse/5/16_in", most: 60, peer: "x-peer", who: "fmt.Sscanf", least: 5},
	{work: "mixed number read", pkg: "units", ours: "Parse/1_3/8_in", most: 60, peer: "x-peer", who: "fmt.Sscanf", least: 5},
	{work: "length written", pkg: "units", ours: "Text", peer: "x-peer", who: "fmt.Appendf"},
	{work: "inch to mm", pkg: "units", ours: "Inches/4096", unit: "ns/conversion", most: 1.5, peer: "x-peer", who: "the bare loop", least: 0.8},
	// 250 ns and some ten evaluations of a cosine
	{work: "root with its evaluations", pkg: "units/solve", ours: "Root", most: 350, peer: "x-peer", who: "gonum/optimize on the square", least: 50},
	{work: "tables' first use, 700 rows", pkg: "refdata", ours: "FirstUse", unit: "µs/700rows", most: 500, allow: -1, peer: "csv/own", who: "encoding/csv alone"},
	{work: "thread by its name", pkg: "refdata", ours: "ByName", unit: "ns/name", most: 15, allow: -1, peer: "map/own", who: "a plain map", least: 1},
}

func main() {
	count := flag.Int("count", 3, "runs, of which the least counts")
	span := flag.String("time", "100ms", "time of each run")
	out := flag.String("o", "", "write the summary here too")
	flag.Parse()
	seen := map[string]map[string]float64{} // package and benchmark, unit, least figure
	var pkgs []string
	for _, l := range lines {
		if !slices.Contains(pkgs, l.pkg) {
			pkgs = append(pkgs, l.pkg)
		}
	}
	for _, pkg := range pkgs {
		text, err := run(pkg, *count, *span)
		if err != nil {
			fmt.Fprintf(os.Stderr, "%s: %v\n%s", pkg, err, text)
			os.Exit(1)
		}
		read(seen, pkg, text)
	}
	var b bytes.Buffer
	fmt.Fprintf(&b, "%-34s %9s  %9s  %s\n", "work", "allowance", "x peer", "peer")
	missed := 0
	for _, l := range lines {
		text, ok := l.say(seen)
		if !ok {
			missed++
		}
		b.WriteString(text)
	}
	fmt.Fprintf(&b, "%d of %d within allowance and ratio; ! marks what is not\n", len(lines)-missed, len(lines))
	os.Stdout.Write(b.Bytes())
	if *out != "" {
		if err := os.WriteFile(*out, b.Bytes(), 0o644); err != nil {
			fmt.Fprintln(os.Stderr, err)
			os.Exit(1)
		}
	}
}

// run runs the benchmarks of a package that some line names.
func run(pkg string, count int, span string) ([]byte, error) {
	var names []string
	for _, l := range lines {
		if l.pkg != pkg {
			continue
		}
		for _, name := range []string{l.ours, l.peer} {
			top, _, _ := strings.Cut(name, "/")
			if name != "" && name != "x-peer" && top != "csv" && top != "map" && !slices.Contains(names, top) {
				names = append(names, top)
			}
		}
	}
	cmd := exec.Command("go", "test", "-run", "^$", "-bench", "^Benchmark("+strings.Join(names, "|")+")$", "-benchmem", "-benchtime", span, "-count", strconv.Itoa(count), "./"+pkg)
	cmd.Dir = "../.."
	return cmd.CombinedOutput()
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
		return fmt.Sprintf("%-34s was not measured\n", l.work), false
	}
	kept := true
	share, times := "-", "-"
	if l.most > 0 {
		share = mark(x/l.most, x <= l.most, "%.2f")
		kept = kept && x <= l.most
	}
	if l.peer != "" {
		ratio, ok := own[l.peer]
		if peer := seen[l.pkg+" "+l.peer]; !ok && peer != nil {
			ratio, ok = peer["ns/op"]/x, true
		}
		if !ok {
			return fmt.Sprintf("%-34s has no peer\n", l.work), false
		}
		form := "%.0f"
		if ratio < 10 {
			form = "%.1f"
		}
		times = mark(ratio, ratio >= l.least, form)
		kept = kept && ratio >= l.least
	}
	text := fmt.Sprintf("%-34s %9s  %9s  %s", l.work, share, times, l.who)
	if n, ok := own["allocs/op"]; ok && l.allow >= 0 && n > l.allow {
		text += fmt.Sprintf("  ! %v allocations", n)
		kept = false
	}
	return strings.TrimRight(text, " ") + "\n", kept
}

func mark(x float64, ok bool, form string) string {
	s := fmt.Sprintf(form, x)
	if !ok {
		s += " !"
	}
	return s
}
