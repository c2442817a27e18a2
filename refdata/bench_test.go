package refdata

import (
	"encoding/csv"
	"math"
	"strings"
	"testing"
	"time"
)

// threadTexts are the texts of all thread tables.
func threadTexts() map[System]string {
	return map[System]string{
		BSW: textBSW, BSF: textBSF, Cycle: textCycle, BA: textBA, BSPP: textBSPP, MetricCoarse: textMetricCoarse,
		MetricFine: textMetricFine, UNC: textUNC, UNF: textUNF, Brass: textBrass, Spoke: textSpoke,
	}
}

// least keeps the shortest time, which other work on the machine disturbs least.
func least(a, b time.Duration) time.Duration {
	if a == 0 || b < a {
		return b
	}
	return a
}

// BenchmarkFirstUse reads all thread tables into typed rows with their indexes,
// and in the same loop splits the same text into cells with encoding/csv, which
// is only the first part of that work. It reports microseconds for 700 rows, and
// how many times as long encoding/csv takes.
func BenchmarkFirstUse(b *testing.B) {
	texts := threadTexts()
	sources()
	rows := Threads().Len()
	var own, peer time.Duration
	for b.Loop() {
		t := time.Now()
		for s, text := range texts {
			if readThreads("", s, 60, text).Len() == 0 {
				b.Fatal("no rows")
			}
		}
		own = least(own, time.Since(t))
		t = time.Now()
		for _, text := range texts {
			if _, err := csv.NewReader(strings.NewReader(text)).ReadAll(); err != nil {
				b.Fatal(err)
			}
		}
		peer = least(peer, time.Since(t))
	}
	b.ReportMetric(own.Seconds()*1e6*700/float64(rows), "µs/700rows")
	b.ReportMetric(peer.Seconds()/own.Seconds(), "csv/own")
}

// BenchmarkByName looks up a thread by its exact name, and in the same loop the
// same row in a plain map of rows.
func BenchmarkByName(b *testing.B) {
	plain := map[string]Thread{}
	var names []string
	for t := range Threads().All() {
		plain[t.Name] = t
		names = append(names, t.Name)
	}
	var own, peer time.Duration
	var sum float64
	for b.Loop() {
		t := time.Now()
		for _, name := range names {
			row, ok := Threads().ByName(name)
			if !ok {
				b.Fatal(name)
			}
			sum += row.ThreadsPerInch
		}
		own = least(own, time.Since(t))
		t = time.Now()
		for _, name := range names {
			row, ok := plain[name]
			if !ok {
				b.Fatal(name)
			}
			sum -= row.ThreadsPerInch
		}
		peer = least(peer, time.Since(t))
	}
	if math.Abs(sum) > 1e-3 {
		b.Fatal("the two look-ups differ")
	}
	b.ReportMetric(own.Seconds()*1e9/float64(len(names)), "ns/name")
	b.ReportMetric(peer.Seconds()/own.Seconds(), "map/own")
}
