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
