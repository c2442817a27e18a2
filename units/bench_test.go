package units_test

import (
	"fmt"
	"testing"
	"time"

	"example.com/benchbook/units"
)

// against times ours and a peer in turns within one run and reports the peer's
// time over ours as the metric "x-peer". ns/op is ours.
func against(b *testing.B, ours, peer func()) {
	b.Helper()
	b.ReportAllocs()
	const batch = 256
	var peerTime time.Duration
	n := 0
	for b.Loop() {
		ours()
		if n++; n%batch == 0 {
			b.StopTimer()
			start := time.Now()
			for range batch / 8 {
				peer()
			}
			peerTime += time.Since(start) * 8
			b.StartTimer()
		}
	}
	if turns := n / batch * batch; turns > 0 {
		mine := b.Elapsed().Seconds() / float64(n)
		b.ReportMetric(peerTime.Seconds()/float64(turns)/mine, "x-peer")
	}
}

var sinkLength units.Length

// BenchmarkParse reads lengths; the peer is fmt.Sscanf of the same text, told which
// form to expect. To reach: 60 ns, no allocation, 5 times the peer.
func BenchmarkParse(b *testing.B) {
	var whole, above, below float64
	var unit string
	for _, k := range []struct {
		text, form string
		into       []any
	}{
		{"5/16 in", "%f/%f %s", []any{&above, &below, &unit}},
		{"12.7mm", "%f%s", []any{&whole, &unit}},
		{"1 3/8 in", "%f %f/%f %s", []any{&whole, &above, &below, &unit}},
		{"0.3125 in", "%f %s", []any{&whole, &unit}},
		{"8 thou", "%f %s", []any{&whole, &unit}},
	} {
		if _, err := fmt.Sscanf(k.text, k.form, k.into...); err != nil {
			b.Fatal(err)
		}
		b.Run(k.text, func(b *testing.B) {
			against(b,
				func() { sinkLength, _ = units.ParseLength(k.text) },
				func() { _, _ = fmt.Sscanf(k.text, k.form, k.into...) })
		})
	}
}

// BenchmarkParseOthers reads quantities with longer lists of units.
func BenchmarkParseOthers(b *testing.B) {
	b.Run("14.7 psi", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_, _ = units.ParsePressure("14.7 psi")
		}
	})
	b.Run("30 lbf ft", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_, _ = units.ParseTorque("30 lbf ft")
		}
	})
	b.Run("16° crank", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_, _ = units.ParseCrankAngle("16° crank")
		}
	})
	b.Run("25 BTDC", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			_, _ = units.ParsePosition("25 BTDC")
		}
	})
}

var sinkText []byte

// BenchmarkText writes a length in the form that reads back; the peer is
// fmt.Appendf.
func BenchmarkText(b *testing.B) {
	l := units.Millimetres(7.9375)
	buf := make([]byte, 0, 64)
	against(b,
		func() { sinkText, _ = l.AppendText(buf[:0]) },
		func() { sinkText = fmt.Appendf(buf[:0], "%v mm", l.Millimetres()) })
}

var sinkFloat float64

// BenchmarkInches converts a column of inches to millimetres; the peer is the
// same loop with a bare multiplication. To reach: 1.5 ns each, the loop's floor.
func BenchmarkInches(b *testing.B) {
	in := make([]float64, 4096)
	for i := range in {
		in[i] = float64(i) / 64
	}
	b.Run("4096", func(b *testing.B) {
		against(b,
			func() {
				s := 0.0
				for _, x := range in {
					s += units.Inches(x).Millimetres()
				}
				sinkFloat = s
			},
			func() {
				s := 0.0
				for _, x := range in {
					s += x * 25.4
				}
				sinkFloat = s
			})
		b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/4096, "ns/conversion")
	})
}
