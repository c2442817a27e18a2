package ignition_test

import (
	"testing"

	"example.com/benchbook/timing/ignition"
)

// A whole verdict: its share of a demo job of 5 ms.
func BenchmarkDiagnose(b *testing.B) {
	in := ignition.Input{Spec: spec(), Read: ignition.Readings{Advanced: at("50 BTDC"), Stroke: ignition.Compression}}
	b.ReportAllocs()
	for range b.N {
		if _, err := ignition.Diagnose(in, ignition.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
