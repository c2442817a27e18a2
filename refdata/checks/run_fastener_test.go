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
	"shigley-8-3": func(r *run) {
		t, err := fastener.Parse(r.word("thread"))
		r.ok(err)
		// The bearing's mean diameter lies halfway between these two.
		inner := get[units.Length](r, "major")
		j := fastener.Joint{
			Thread: t, Friction: fastener.SameFriction(get[units.Ratio](r, "friction_thread")), EffectiveDiameter: get[units.Length](r, "mean_diameter"),
			BearingHole: inner, BearingOutside: get[units.Length](r, "collar_mean_diameter").Times(2) - inner,
		}
		q, err := fastener.TorqueFor(j, get[units.Force](r, "tension"))
		r.ok(err)
		want(r, "torque", q.Low)
		r.leave("a nut factor multiplied out", "torque_by_nut_factor")
		r.leave("at the book's mean diameter; the library's is at the effective one, 1.6063°", "lead_angle")
	},
	"shigley-8-7": func(r *run) {
		t, err := fastener.Parse(r.word("thread"))
		r.ok(err)
		j := fastener.Joint{Thread: t, Friction: fastener.SameFriction(get[units.Ratio](r, "friction_thread")), NoHead: true, EffectiveDiameter: get[units.Length](r, "mean_diameter")}
		q, err := fastener.TorqueFor(j, 1*units.PoundForce)
		r.ok(err)
		r.numbers("torque_per_tension", q.Low.PoundForceInches())
		f, err := fastener.TensionFor(j, get[units.Torque](r, "torque"))
		r.ok(err)
		want(r, "tension", f.Low)
	},
	"thread-torque": func(r *run) {
		major, pitch := get[units.Length](r, "major"), get[units.Length](r, "pitch")
		t, err := fastener.Of("", fastener.MetricForm, major, pitch)
		r.ok(err)
		yield := get[units.Pressure](r, "proof_stress")
		got, err := fastener.Tighten(fastener.Joint{
			Thread: t, Strength: fastener.Strength{Name: "of the case", Proof: yield, Yield: yield, Tensile: yield.Times(1.25)}, Friction: fastener.SameFriction(get[units.Ratio](r, "friction_thread")),
			BearingOutside: get[units.Length](r, "bearing_outside"), BearingHole: get[units.Length](r, "bearing_hole"),
		}, fastener.TightenOptions{OfYield: get[units.Ratio](r, "utilisation")})
		r.ok(err)
		want(r, "tension", got.Limit.Low)
		want(r, "torque", got.LimitTorque.Low)
	},
	"thread-stripping": func(r *run) {
		t, err := fastener.Of("", fastener.UnifiedForm, get[units.Length](r, "major"), units.Inches(1/r.num("threads_per_inch")))
		r.ok(err)
		length := get[units.Length](r, "major").Times(1)
		steel := units.Megapascals(400) // both parts: it drops out
		s, err := fastener.Strip(fastener.Engaged{
			Thread: t, Length: length, BoltTensile: steel, Hole: fastener.MaterialOf("steel", steel), HoleMinor: get[units.Length](r, "minor_max_internal"),
			BoltEffectiveMin: get[units.Length](r, "effective_min_external"), BoltMajorMin: get[units.Length](r, "major_min_external"), NutEffectiveMax: get[units.Length](r, "effective_max_internal"),
		})
		r.ok(err)
		want(r, "stress_area", s.StressArea)
		r.numbers("external_area_per_inch", s.BoltShear.SquareInches()/length.Inches())
		r.numbers("internal_area_per_inch", s.HoleShear.SquareInches()/length.Inches())
		want(r, "least_engagement", s.Least.Low)
	},
	"wire-gauge": func(r *run) {
		d, err := fastener.SWG.Diameter(fmt.Sprint(r.num("gauge")))
		r.ok(err)
		want(r, "diameter", d)
		back, err := fastener.SWG.Number(d)
		r.ok(err)
		if math.Abs(back-r.num("gauge")) > 1e-9 {
			r.t.Errorf("%v comes back as number %v", d, back)
		}
	},
}
