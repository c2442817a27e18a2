package checks_test

import (
	"fmt"
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fastener"
)

// thread finds the thread of a case in the tables, so that it is the table's
// own geometry that is compared.
func thread(r *run) fastener.Thread {
	r.t.Helper()
	var in func(fastener.System) bool
	switch r.word("system") {
	case "BSW":
		in = func(s fastener.System) bool { return s == fastener.BSW }
	case "BSF":
		in = func(s fastener.System) bool { return s == fastener.BSF }
	case "cycle":
		in = func(s fastener.System) bool { return s == fastener.Cycle }
	case "BA":
		t, err := fastener.Parse(fmt.Sprintf("%vBA", r.num("number")))
		r.ok(err)
		return t
	case "BSPP":
		in = func(s fastener.System) bool { return s == fastener.BSPP }
	case "UNF":
		in = func(s fastener.System) bool { return s == fastener.UNF }
	case "metric":
		in = func(s fastener.System) bool { return s == fastener.MetricCoarse || s == fastener.MetricFine }
	default:
		r.t.Fatalf("no system %q", r.word("system"))
	}
	major := get[units.Length](r, "major")
	pitch := units.Inches(1)
	if _, ok := r.Inputs["pitch"]; ok {
		pitch = get[units.Length](r, "pitch")
	} else {
		pitch = pitch.Times(1 / r.num("threads_per_inch"))
	}
	for t := range fastener.Threads() {
		if in(t.System()) && math.Abs(t.Major().Ratio(major)-1) < 1e-9 && math.Abs(t.Pitch().Ratio(pitch)-1) < 1e-3 {
			return t
		}
	}
	r.t.Fatalf("no such thread in the tables: %v, pitch %v", major, pitch)
	return fastener.Thread{}
}

// engagement runs the part of full depth that holes leave.
func engagement(form fastener.Form) runner {
	return func(r *run) {
		major, n, hole := r.list("major"), r.list("threads_per_inch"), r.list("hole")
		unit := units.Inch
		if r.Inputs["hole"].Unit == "mm" {
			unit = units.Millimetre
		}
		got := make([]float64, len(major))
		for i := range major {
			t, err := fastener.Of("", form, units.Inches(major[i]), units.Inches(1/n[i]))
			r.ok(err)
			e, err := fastener.Engagement(t, unit.Times(hole[i]), fastener.ChartDepth)
			r.ok(err)
			got[i] = e.Percents()
		}
		r.numbers("engagement", got...)
	}
}

var fastenerRunners = map[string]runner{
	"thread-form": func(r *run) {
		t := thread(r)
		g, err := t.Geometry()
		r.ok(err)
		for name := range r.Expected {
			switch name {
			case "pitch":
				want(r, name, t.Pitch())
			case "major":
				want(r, name, t.Major())
			case "effective":
				want(r, name, g.Effective)
			case "minor", "minor_external":
				want(r, name, g.MinorBolt)
			case "minor_internal":
				want(r, name, g.MinorNut)
			}
		}
	},
	"stress-area": func(r *run) {
		g, err := thread(r).Geometry()
		r.ok(err)
		want(r, "stress_area", g.StressArea)
	},
	"engagement-unified":     engagement(fastener.UnifiedForm),
	"engagement-unified-not": engagement(fastener.UnifiedForm),
	"engagement-whitworth":   engagement(fastener.WhitworthForm),
	"hole-cycle-3-8-26": func(r *run) {
		h, err := fastener.TappingHole(thread(r), get[units.Ratio](r, "engagement"), fastener.ChartDepth)
		r.ok(err)
		want(r, "hole", h)
	},
}
