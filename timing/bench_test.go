package timing_test

import (
	"testing"

	"example.com/benchbook/timing"
	"example.com/benchbook/units"
)

func BenchmarkCauses(b *testing.B) {
	in := timing.Input{Engine: engine(), Readings: events("34 BTDC", "56 ABDC", "50 BBDC", "40 ATDC")}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := timing.Causes(in, timing.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkDiagnose(b *testing.B) {
	in := timing.Input{Engine: engine(), Readings: events("34 BTDC", "56 ABDC", "50 BBDC", "40 ATDC")}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := timing.Diagnose(in, timing.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkBestOfAMillion finds the best remedy among a million combinations; the
// peer tries each. To reach: 50 µs, 100 times the peer.
func BenchmarkBestOfAMillion(b *testing.B) {
	in, ex := 11.37*units.CrankDegree, -8.21*units.CrankDegree
	moves, p, search, exhaust := timing.BestOfAMillion(b, in, ex)
	b.Run("search", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			search(p)
		}
	})
	b.Run("search-and-words", func(b *testing.B) {
		for b.Loop() {
			p.Best(in, ex)
		}
	})
	b.Run("plan-made-anew", func(b *testing.B) {
		for b.Loop() {
			q, _ := timing.NewPlan(moves, timing.Options{Near: 0.05 * units.CrankDegree})
			search(q)
		}
	})
	b.Run("exhaustive", func(b *testing.B) {
		for b.Loop() {
			exhaust()
		}
	})
}
