package fastener

import (
	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
)

// spoke is the thread rolled on a spoke of a wire gauge. Rolling moves metal
// from root to crest and removes none, so the effective diameter is the wire's,
// and the outside diameter stands a depth above it. The threads per inch are
// from memory; other pitches were made.
type spoke struct {
	gauge string
	tpi   float64
}

func spokes() [4]spoke {
	return [4]spoke{{"8", 32}, {"10", 40}, {"14", 56}, {"15", 56}}
}

func (s spoke) thread() Thread {
	w, _ := refdata.WireGauge().ByName(s.gauge)
	p := units.Millimetres(25.4 / s.tpi)
	name := s.gauge + " SWG spoke"
	return Thread{system: Spoke, form: CycleForm, name: name, key: keyOf(name), major: w.Diameter + p.Times(CycleForm.depth()), pitch: p}
}
