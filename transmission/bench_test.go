package transmission

import (
	"testing"

	"example.com/benchbook/units"
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
