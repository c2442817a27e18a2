package refdata_test

import (
	"fmt"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// An invented reading: the ring gap of a 78 mm bore.
func ExampleCheckLimit() {
	gap := measure.MustRead("0.55 mm", measure.FeelerGauge())
	bore := measure.MustRead("78 mm", measure.Caliper())
	f, err := refdata.CheckLimit("ring-gap", gap, bore, refdata.LimitOptions[units.Length]{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(f.Verdict.Text()+",", f.Words)
	fmt.Println(f.Do)
	// Output:
	// worn, and still serviceable, as good as certain
	// gas and oil pass: fit new rings, and measure the bore
}

// The machine's own figures come before the table's.
func ExampleLimitOptions() {
	own := refdata.LimitOptions[units.Length]{Fit: refdata.RangeOf(units.Millimetres(0.30), units.Millimetres(0.36))}
	gap := measure.MustRead("0.30 mm", measure.FeelerGauge())
	f, _ := refdata.CheckLimit("points-gap:magneto", gap, measure.Reading[units.Length]{}, own)
	fmt.Println(f.Verdict, f.Words, "or", f.Second)
	// Output:
	// right about even or tight
}

// A stripped engine, worst first. All readings are invented.
func ExampleCheckLimits() {
	r, err := refdata.CheckLimits(refdata.LimitReadings{
		Bore: measure.MustRead("78.1 mm", measure.Caliper()),
		Lengths: map[string]measure.Reading[units.Length]{
			"ring-gap":      measure.MustRead("0.35 mm", measure.FeelerGauge()),
			"guide-exhaust": measure.MustRead("0.24 mm", measure.DialGauge()),
			"piston-clearance:solid-skirt-cast-alloy": measure.MustRead("0.08 mm", measure.FeelerGauge()),
		},
		Forces: map[string]measure.Reading[units.Force]{"valve-spring-load": measure.MustRead("52 lbf", measure.SpringBalance())},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, f := range r.Lengths {
		fmt.Println(f.Part+":", f.Verdict)
	}
	fmt.Println(r.Forces[0].Part+":", r.Forces[0].Verdict)
	fmt.Println(len(r.Basis.NotChecked) > 0, r.Basis.Cautions[0])
	// Output:
	// exhaust valve stem clearance in its guide: renew
	// piston clearance: right
	// piston ring end gap: right
	// load of one valve's springs, valve shut: right
	// true defer-to-manual
}

func ExampleWorkshopLimits() {
	l, _ := refdata.WorkshopLimits().ByName("guide-inlet")
	fmt.Println(l.Part, l.Fit, "renew", l.Renew, "|", l.Origin.Status())
	// Output:
	// inlet valve stem clearance in its guide 0.025 mm to 0.065 mm renew 0.12 mm to 0.18 mm | common practice
}

func ExamplePlugThreads() {
	for p := range refdata.PlugThreads().All() {
		if p.Thread == "M14x1.25" {
			fmt.Println(p.Name)
		}
	}
	// Output:
	// 14 mm, 9.5 mm reach
	// 14 mm, 11.1 mm reach
	// 14 mm, 12.7 mm reach
	// 14 mm, 19.0 mm reach
}
