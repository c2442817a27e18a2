package job_test

import (
	"fmt"
	"math"
	"os"
	"os/exec"
	"strings"
	"testing"

	"example.com/benchbook/examples/job"
)

// BenchmarkDemo runs the whole demo job, all sections; the floor is one redraw of
// a screen at 60 Hz, within which a page may ask for all of it anew. To reach: 5 ms.
func BenchmarkDemo(b *testing.B) {
	data := job.Demo()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := job.Run(data); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(float64(b.N)/60/b.Elapsed().Seconds(), "x-redraw")
}

// BenchmarkInit starts this program anew with no test to run and reads from the
// runtime's own trace what the init work of each package took, the least of all
// starts. This program links every package of the library, and none of their
// tests' own variables. The peer is the init work of the standard library in the
// same starts. To reach: 10 µs for the tables.
func BenchmarkInit(b *testing.B) {
	program, err := os.Executable()
	if err != nil {
		b.Skip(err)
	}
	took := map[string]float64{} // µs
	for b.Loop() {
		cmd := exec.Command(program, "-test.run=^$")
		cmd.Env = append(os.Environ(), "GODEBUG=inittrace=1")
		out, err := cmd.CombinedOutput()
		if err != nil {
			b.Skip(err) // no programs are started here
		}
		for row := range strings.Lines(string(out)) {
			var name string
			var at, clock float64
			if n, _ := fmt.Sscanf(row, "init %s @%f ms, %f ms clock", &name, &at, &clock); n == 3 {
				least, seen := took[name]
				if !seen {
					least = math.Inf(1)
				}
				took[name] = min(least, clock*1000)
			}
		}
	}
	const library = "example.com/benchbook/"
	var all, standard float64
	for name, t := range took {
		switch first, _, _ := strings.Cut(name, "/"); {
		case strings.HasPrefix(name, library+"examples"), name == "main":
		case strings.HasPrefix(name, library):
			all += t
		case !strings.Contains(first, "."):
			standard += t
		}
	}
	tables, ok := took[library+"refdata"]
	if !ok || standard == 0 {
		b.Fatal("the runtime traced no init work")
	}
	const finest = 1 // µs: what the trace shows at least
	b.ReportMetric(tables, "µs/tables")
	b.ReportMetric(all, "µs/library")
	b.ReportMetric(standard/max(tables, finest), "standard/tables")
	b.ReportMetric(standard/max(all, finest), "standard/library")
}
