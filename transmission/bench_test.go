package transmission

import (
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
