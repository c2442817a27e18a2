package main

import (
	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

func refdataCases(b *book) {
	bore := measure.Of(mm(78), mm(0.02))
	for _, x := range []float64{0.2, 0.33, 0.9} {
		gap := measure.Of(mm(x), mm(0.02))
		f, err := refdata.CheckLimit("ring-gap", gap, bore, refdata.LimitOptions[units.Length]{})
		b.add("refdata.CheckLimit", in{"key": words("ring-gap"), "reading": gap, "size": bore}, of(map[string]any{"verdict": f.Verdict}, err))
	}
	for _, name := range []string{"1/4 BSF", "2 BA"} {
		row, ok := refdata.Threads().ByName(name)
		b.add("refdata.Threads", in{"name": words(name)}, only(map[string]any{"known": ok, "major": row.Major, "pitch": row.Pitch, "effective": row.Effective}))
	}
	for _, name := range []string{"10", "4/0"} {
		row, ok := refdata.WireGauge().ByName(name)
		b.add("refdata.WireGauge", in{"name": words(name)}, only(map[string]any{"known": ok, "diameter": row.Diameter}))
	}
	for _, v := range []float64{249, 397} {
		begin, err := refdata.BeginAt(units.CubicCentimetres(v), refdata.Tune(""))
		b.add("refdata.BeginAt", in{"displacement": units.CubicCentimetres(v)}, of(begin, err))
	}
}
