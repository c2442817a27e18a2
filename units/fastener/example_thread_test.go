package fastener_test

import (
	"fmt"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fastener"
)

func ExampleThreads() {
	n := 0
	for t := range fastener.Threads() {
		if t.System() == fastener.BA {
			n++
		}
	}
	fmt.Println(n, "BA threads")
	// Output: 17 BA threads
}

func ExampleMustParse() {
	t := fastener.MustParse("2BA")
	fmt.Println(t, t.Major(), t.Pitch())
	// Output: 2 BA 4.7 mm 0.81 mm
}

// An invented adjuster, 14 mm by 24 threads an inch, of no system.
func ExampleOf() {
	p, err := fastener.TPI(24)
	if err != nil {
		fmt.Println(err)
		return
	}
	t, err := fastener.Of("cable adjuster", fastener.CycleForm, 14*units.Millimetre, p)
	if err != nil {
		fmt.Println(err)
		return
	}
	g, err := t.Geometry()
	fmt.Println(t, g.MinorBolt.In(units.Millimetre, 2), err)
	// Output: cable adjuster 12.87 mm <nil>
}

func ExampleTPI() {
	p, err := fastener.TPI(26)
	fmt.Println(p.In(units.Millimetre, 4), err)
	// Output: 0.9769 mm <nil>
}

// FED-STD-H28 prints 0.0813 and 0.0772 in for 2-56 UNC 2A/2B.
func ExampleThread_Limits() {
	l, err := fastener.MustParse("2-56 UNC").Limits(0)
	fmt.Println(l.Class, l.BoltMajorMin.Or(0).In(units.Inch, 4), l.NutEffectiveMax.Or(0).In(units.Inch, 4), err)
	// Output: 2A/2B 0.0813 in 0.0772 in <nil>
}

func ExampleMate() {
	m, err := fastener.Mate(fastener.MustParse("1/4 BSF"), fastener.MustParse("1/4-26 cycle"), 0, fastener.MateOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(m.Meeting)
	for _, why := range m.Against {
		fmt.Println("-", why)
	}
	// Output:
	// screws in but holds weakly
	// - flanks differ by 5.0°: they bear on a line, not a face
	// - the bolt has 94 % of the section that belongs there
}

func ExampleTwinsOf() {
	tw, err := fastener.TwinsOf(fastener.MustParse("5/16-26 cycle"), fastener.TwinOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, t := range tw.Twins {
		if t.Thread.Name() == "M8x1" {
			fmt.Println(t.Text)
		}
	}
	// Output: never mix 5/16-26 cycle and M8x1: its bolt in your nut starts, then binds; your bolt in its nut starts, then binds
}

func ExampleStandInsFor() {
	s, err := fastener.StandInsFor(fastener.MustParse("5/16-26 cycle"), fastener.StandInOptions{Most: 1})
	if err != nil {
		fmt.Println(err)
		return
	}
	r := s.Recut[0]
	fmt.Println("recut to", r.Thread, "in a hole of", r.Hole.In(units.Millimetre, 2))
	for _, why := range r.For {
		fmt.Println("-", why)
	}
	// Output:
	// recut to 3/8-26 cycle in a hole of 8.74 mm
	// - only 1.59 mm larger
	// - the tapping hole cleans out the old thread
	// - of the same family of threads
}

func ExampleGauge() {
	d, err := fastener.SWG.Diameter("10")
	fmt.Println(d.In(units.Inch, 3), err)
	size, over, err := fastener.NumberDrill.Nearest(5.1 * units.Millimetre)
	fmt.Println(size.Mark, over.In(units.Thou, 1), err)
	// Output:
	// 0.128 in <nil>
	// #7 -0.2 thou <nil>
}

func ExampleDrills() {
	fmt.Println(len(fastener.NumberDrills()), len(fastener.LetterDrills()), len(fastener.FractionDrills()), len(fastener.MetricDrills()) > 100)
	for _, d := range fastener.Drills() {
		if d.Diameter > 6.7*units.Millimetre {
			fmt.Println(d.Name)
			break
		}
	}
	// Output:
	// 97 26 64 true
	// 17/64 in
}

func ExampleSpanners() {
	for _, s := range fastener.Spanners() {
		if s.Width > 11.2*units.Millimetre && s.Width < 11.4*units.Millimetre {
			fmt.Println(s.Marking)
		}
	}
	// Output: 3/16 W, 1/4 BS
}
