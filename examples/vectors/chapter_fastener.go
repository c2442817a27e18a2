package main

import (
	"example.com/benchbook/units"
	"example.com/benchbook/units/fastener"
	"example.com/benchbook/units/measure"
)

func fastenerCases(b *book) {
	steel := map[string]any{"class": "8.8"}
	for _, name := range []string{"1/4 BSF", "5/16-26 cycle", "3/8 BSW", "2 BA", "M8", "3/8-24 UNF", "G 1/8"} {
		t := fastener.MustParse(name)
		b.add("units/fastener.Parse", in{"text": words(name)}, only(map[string]any{"major": t.Major(), "pitch": t.Pitch(), "form": t.Form()}))
		b.add("units/fastener.Thread.Geometry", in{"thread": words(name)}, of(t.Geometry()))
		for _, share := range []float64{65, 75} {
			b.add("units/fastener.TappingHole", in{"thread": words(name), "engagement": units.Percents(share), "convention": words(fastener.ChartDepth.String())}, of(fastener.TappingHole(t, units.Percents(share), fastener.ChartDepth)))
		}
		d, err := fastener.TappingDrill(t, units.Percents(75), fastener.ChartDepth, fastener.MetricDrills())
		b.add("units/fastener.TappingDrill", in{"thread": words(name), "engagement": units.Percents(75), "convention": words(fastener.ChartDepth.String()), "set": words("metric drills")}, of(map[string]any{"hole": d.Hole, "drill": d.Choice.Drill.Name, "engagement": d.Choice.Engagement}, err))
		j := fastener.Joint{Thread: t, Friction: fastener.SameFriction(units.Value(0.12))}
		b.add("units/fastener.TorqueFor", in{"thread": words(name), "friction": units.Value(0.12), "tension": units.Kilonewtons(5)}, of(fastener.TorqueFor(j, units.Kilonewtons(5))))
		b.add("units/fastener.TensionFor", in{"thread": words(name), "friction": units.Value(0.12), "torque": units.NewtonMetres(10)}, of(fastener.TensionFor(j, units.NewtonMetres(10))))
		if s, err := fastener.Class("8.8", t); err == nil {
			j.Strength = s
			r, err := fastener.Tighten(j, fastener.TightenOptions{})
			b.add("units/fastener.Tighten", in{"thread": words(name), "friction": units.Value(0.12), "strength": steel}, of(map[string]any{"torque": r.Torque, "tension": r.Tension, "reason": r.Reason.Code}, err))
		}
		strip, err := fastener.Strip(fastener.Engaged{Thread: t, Length: t.Major(), BoltTensile: units.Megapascals(800), Hole: fastener.LightAlloy()})
		b.add("units/fastener.Strip", in{"thread": words(name), "length": t.Major(), "bolt_tensile": units.Megapascals(800), "hole": words(fastener.LightAlloy().Name)},
			of(map[string]any{"bolt_shear": strip.BoltShear, "hole_shear": strip.HoleShear, "stress_area": strip.StressArea, "first": strip.First, "least": strip.Least}, err))
		u, err := fastener.UsualEngagement(t, fastener.LightAlloy())
		b.add("units/fastener.UsualEngagement", in{"thread": words(name), "material": words(fastener.LightAlloy().Name)}, of(u, err))
	}
	for _, name := range []string{"1/2 cycle", "7/19 BSF"} {
		_, err := fastener.Parse(name)
		b.add("units/fastener.Parse", in{"text": words(name)}, of(nil, err))
	}
	for _, pair := range [][2]string{{"1/4 BSF", "1/4-26 cycle"}, {"5/16 BSW", "5/16-18 UNC"}, {"1/4 BSF", "M6"}} {
		m, err := fastener.Mate(fastener.MustParse(pair[0]), fastener.MustParse(pair[1]), mm(8), fastener.MateOptions{})
		b.add("units/fastener.Mate", in{"bolt": words(pair[0]), "nut": words(pair[1]), "length": mm(8)},
			of(map[string]any{"drift": m.Drift, "interference": m.Interference, "flank_difference": m.FlankDifference, "meeting": m.Meeting}, err))
	}
	b.add("units/fastener.TPI", in{"threads_per_inch": 26.0}, of(fastener.TPI(26)))
	b.add("units/fastener.ParsePitch", in{"text": words("26 tpi")}, of(fastener.ParsePitch("26 tpi")))
	b.add("units/fastener.Engagement", in{"thread": words("1/4 BSF"), "hole": mm(5.4), "convention": words(fastener.ChartDepth.String())}, of(fastener.Engagement(fastener.MustParse("1/4 BSF"), mm(5.4), fastener.ChartDepth)))
	for _, g := range []fastener.Gauge{fastener.SWG, fastener.NumberDrill} {
		for _, mark := range []string{"10", "20"} {
			b.add("units/fastener.Gauge.Diameter", in{"gauge": words(g.String()), "mark": words(mark)}, of(g.Diameter(mark)))
		}
		b.add("units/fastener.Gauge.At", in{"gauge": words(g.String()), "number": 10.5}, of(g.At(10.5)))
		b.add("units/fastener.Gauge.Number", in{"gauge": words(g.String()), "diameter": mm(3)}, of(g.Number(mm(3))))
	}
	for _, name := range []string{"1/4 BSF", "M8"} {
		h, err := fastener.Hexagons(fastener.MustParse(name), fastener.HexOptions{Era: fastener.AfterWar})
		b.add("units/fastener.Hexagons", in{"thread": words(name), "era": words("after the war")}, of(map[string]any{"hexagons": h.Hexagons}, err))
	}
	flats := measure.Of(mm(11.28), mm(0.02))
	fits, err := fastener.SpannersFor(flats, nil, fastener.FitOptions{})
	best, _ := fits.Best()
	b.add("units/fastener.SpannersFor", in{"flats": flats}, of(best, err))
	for _, x := range []struct{ major, pitch float64 }{{6.30, 25.4 / 26}, {4.66, 0.81}, {7.88, 25.4 / 22}} {
		r := fastener.Readings{Major: measure.By(mm(x.major), measure.Caliper()), Pitch: measure.By(mm(x.pitch), measure.PitchGauge())}
		id, err := fastener.Identify(r, fastener.IdentifyOptions{})
		b.loosely(loose, "units/fastener.Identify", in{"major": r.Major, "pitch": r.Pitch}, of(leaders{id.Causes}, err))
	}
}
