package timing_test

import (
	"testing"

	"example.com/benchbook/timing"
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
