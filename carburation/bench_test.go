package carburation_test

import (
	"testing"

	"example.com/benchbook/carburation"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

func BenchmarkStart(b *testing.B) {
	d := demo()
	in := carburation.Input{Engine: d.Engine, Fitted: carburation.Fitted{Bore: d.Carburettor.Bore, MainJet: d.Carburettor.MainJet, PilotJet: d.Carburettor.PilotJet, Cutaway: d.Carburettor.Cutaway}}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := carburation.Start(in, carburation.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkNewModel(b *testing.B) {
	s := demo()
	for b.Loop() {
		if _, err := carburation.NewModel(s, carburation.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkCalibrateThree(b *testing.B) {
	m := must(carburation.NewModel(demo(), carburation.Options{}))
	read := func(x units.Ratio, n, v float64) carburation.LambdaReading {
		return carburation.LambdaReading{Lift: x, Speed: rev(n), Lambda: measure.By(units.Value(v), carburation.LambdaSensor())}
	}
	for b.Loop() {
		if _, _, err := m.Calibrate(read(1, 5200, 0.9), read(0.5, 4000, 0.97), read(0.1875, 3000, 0.92)); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSettings(b *testing.B) {
	m := must(carburation.NewModel(demo(), carburation.Options{}))
	for b.Loop() {
		if _, err := m.Settings(carburation.Targets{}); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkAdvise(b *testing.B) {
	s := carburation.Symptoms{Full: carburation.Seen{Runs: carburation.Weak}, Middle: carburation.Seen{Runs: carburation.Right}}
	for b.Loop() {
		if _, err := carburation.Advise(s, carburation.AdviseOptions{}); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkPortRatio finds the pressure behind the slide, the innermost step of a
// point; the peer is Brent's method on the same equation.
func BenchmarkPortRatio(b *testing.B) {
	b.Run("newton", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			carburation.PortRatio()
		}
	})
	b.Run("brent", func(b *testing.B) {
		for b.Loop() {
			carburation.PortRatioByBrent()
		}
	})
}

// BenchmarkPoint works out one operating point, of which the pressure behind the
// slide (BenchmarkPortRatio) is the floor. To reach: 5 µs.
func BenchmarkPoint(b *testing.B) {
	m := must(carburation.NewModel(demo(), carburation.Options{}))
	b.ReportAllocs()
	for b.Loop() {
		if _, err := m.At(0.4, units.RevolutionsPerMinute(4000)); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkMap41 works out a map of 41 lifts by 41 speeds; the peer asks for its
// 1681 points one by one. To reach: 10 ms.
func BenchmarkMap41(b *testing.B) {
	m := must(carburation.NewModel(demo(), carburation.Options{}))
	var lifts []units.Ratio
	var speeds []units.RotationalSpeed
	for i := range 41 {
		lifts = append(lifts, units.Value(float64(i+1)/41))
		speeds = append(speeds, rev(1000+float64(i)*120))
	}
	b.Run("map", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := m.Map(lifts, speeds); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("singly", func(b *testing.B) {
		for b.Loop() {
			for _, x := range lifts {
				for _, n := range speeds {
					if _, err := m.At(x, n); err != nil {
						b.Fatal(err)
					}
				}
			}
		}
	})
}

func BenchmarkExplain(b *testing.B) {
	m := must(carburation.NewModel(demo(), carburation.Options{}))
	for b.Loop() {
		if _, err := m.Explain(0.4, rev(4000)); err != nil {
			b.Fatal(err)
		}
	}
}
