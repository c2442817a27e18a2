package fastener

import (
	"testing"

	"example.com/benchbook/units/measure"
)

// BenchmarkIdentify against its peer, the ranking engine over all threads with
// no first look.
func BenchmarkIdentify(b *testing.B) {
	for _, k := range []struct{ name, major, pitch string }{
		{"clear", "9.48 mm", "20 tpi"},
		{"alike", "6.30 mm ± 0.05", "26 tpi"},
	} {
		p, _ := ReadPitch(k.pitch, measure.PitchGauge())
		r := Readings{Major: measure.MustRead(k.major, measure.Caliper()), Pitch: p}
		b.Run(k.name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, err := Identify(r, IdentifyOptions{}); err != nil {
					b.Fatal(err)
				}
			}
		})
		b.Run(k.name+"/peer_all_ranked", func(b *testing.B) {
			all := tables()
			for b.Loop() {
				e, err := evidenceOf(r, IdentifyOptions{})
				if err != nil {
					b.Fatal(err)
				}
				causes := make([]measure.Cause, len(all))
				for i := range all {
					causes[i] = measure.Cause{Key: all[i].key, Text: all[i].name, Prior: 1, Hypothesis: fixed(e.logLikelihood(&all[i]))}
				}
				if _, err := measure.Rank(nil, causes, measure.Cause{Prior: 1, Hypothesis: fixed(e.elseLogLikelihood())}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
