package transmission

import (
	"math/rand/v2"
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

func BenchmarkWindow(b *testing.B) {
	c, found := demo(), backedOff()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := c.Window(found); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkAt(b *testing.B) {
	c, found := demo(), backedOff()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := c.At(found, units.Turns(6)); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkAdjust(b *testing.B) {
	in := Input{Clutch: demo(), Found: backedOff()}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Adjust(in, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

func TestWindowAllocatesNothing(t *testing.T) {
	c, found := demo(), backedOff()
	if n := testing.AllocsPerRun(100, func() { _, _ = c.Window(found); _, _ = c.At(found, units.Turns(6)) }); n != 0 {
		t.Errorf("%v allocations", n)
	}
}

func BenchmarkDiagnose(b *testing.B) {
	in := Input{Clutch: demo(), Found: backedOff(), Signs: Signs{Slips: Yes, Drags: Yes, Heavy: No}}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Diagnose(in, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

// Every remedy singly and, since none opens this one, in twos.
func BenchmarkRepairsWithPairs(b *testing.B) {
	c, found := demo(), backedOff()
	found.OutOfFlat = used().OutOfFlat.Or(found.OutOfFlat)
	found.Friction = measure.Exact(units.Value(0.07))
	s, err := c.resolve(&found)
	if err != nil {
		b.Fatal(err)
	}
	if _, pairs := s.repairs(); len(pairs) == 0 {
		b.Fatal("no pairs were tried")
	}
	b.ReportAllocs()
	for b.Loop() {
		s.repairs()
	}
}

func BenchmarkDiagnoseNutsRead(b *testing.B) {
	in := Input{Clutch: demo(), Setting: Setting{Nuts: measure.Of(units.Turns(6), units.Turns(0.05))}, Found: backedOff(), Signs: Signs{Slips: Yes, Drags: Yes, Heavy: No}}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Diagnose(in, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

// Nothing but what the rider tells: the turns of the nuts are open too.
func BenchmarkDiagnoseSigns(b *testing.B) {
	in := Input{Clutch: demo(), Signs: Signs{Slips: Yes, Drags: Yes, Heavy: No, LightThen: No}}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Diagnose(in, Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

// Two hundred invented clutches of the simulation, everything read.
func BenchmarkDiagnoseThorough(b *testing.B) {
	benchmarkDrawn(b, func(*rand.Rand) float64 { return readAll })
}

// The same as owners read them.
func BenchmarkDiagnoseOwners(b *testing.B) {
	benchmarkDrawn(b, func(rng *rand.Rand) float64 { return 0.7 + 1.8*rng.Float64() })
}

func benchmarkDrawn(b *testing.B, care func(*rand.Rand) float64) {
	rng := rand.New(rand.NewPCG(5, 2026))
	var list [200]simulated
	for i := range list {
		list[i] = draw(rng, care(rng))
	}
	b.ReportAllocs()
	i := 0
	for b.Loop() {
		if _, err := Diagnose(list[i%len(list)].in, Options{}); err != nil {
			b.Fatal(err)
		}
		i++
	}
}
