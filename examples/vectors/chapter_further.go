package main

import (
	"example.com/benchbook/units/fastener"
)

// furtherCases ask what is asked less often.
func furtherCases(b *book) {
	furtherTables(b)
}

func furtherTables(b *book) {
	for _, name := range []string{"1/4 BSF", "M8"} {
		t := fastener.MustParse(name)
		limits, err := t.Limits(mm(8))
		b.add("units/fastener.Thread.Limits", in{"thread": words(name), "engaged": mm(8)}, of(limits, err))
	}
	s, err := fastener.Class("8.8", fastener.MustParse("M8"))
	b.add("units/fastener.Class", in{"class": words("8.8"), "thread": words("M8")}, of(map[string]any{"proof": s.Proof, "yield": s.Yield, "tensile": s.Tensile}, err))
	s, err = fastener.Grade("5", fastener.MustParse("3/8-24 UNF"))
	b.add("units/fastener.Grade", in{"grade": words("5"), "thread": words("3/8-24 UNF")}, of(map[string]any{"proof": s.Proof, "yield": s.Yield, "tensile": s.Tensile}, err))
	size, over, err := fastener.SWG.Nearest(mm(3.2))
	b.add("units/fastener.Gauge.Nearest", in{"gauge": words(fastener.SWG.String()), "diameter": mm(3.2)}, of(map[string]any{"mark": words(size.Mark), "over": over}, err))
}
