package fastener_test

import (
	"slices"
	"testing"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fastener"
	"example.com/benchbook/units/measure"
)

// TestMemoryIsOwned follows every thread whose size is from memory, and every
// spanner whose markings are paired from memory, to the results that rest on it:
// each says so among its sources, and says nothing of the kind for a thread that is
// published.
func TestMemoryIsOwned(t *testing.T) {
	rows := 0
	for th := range fastener.Threads() {
		row, _ := th.Row()
		memory := row.ThreadOrigin.Status() == refdata.FromMemory
		if !memory && th.Name() != "1/4-26 cycle" {
			continue
		}
		rows++
		says := func(what string, b refdata.Basis, err error) {
			t.Helper()
			if err != nil {
				t.Errorf("%v: %s: %v", th, what, err)
				return
			}
			got := !slices.ContainsFunc(row.ThreadOrigin.Sources(), func(s refdata.Source) bool { return !slices.Contains(b.Sources, s) })
			if memory && !got {
				t.Errorf("%v: %s does not say that the size is from memory: %v", th, what, b.Sources)
			}
			if what == "tapping drill" && !memory && slices.ContainsFunc(b.Sources, func(s refdata.Source) bool { return s.Status == refdata.FromMemory }) {
				t.Errorf("%v: %s speaks of memory: %v", th, what, b.Sources)
			}
		}
		g, err := th.Geometry()
		says("geometry", g.Basis, err)
		tap, err := fastener.TappingDrill(th, units.Value(0.75), fastener.ChartDepth, nil)
		says("tapping drill", tap.Basis, err)
		m, err := fastener.Mate(th, th, 0, fastener.MateOptions{})
		says("mate", m.Basis, err)
		tw, err := fastener.TwinsOf(th, fastener.TwinOptions{})
		says("twins", tw.Basis, err)
		in, err := fastener.StandInsFor(th, fastener.StandInOptions{})
		says("stand-ins", in.Basis, err)
		st, err := fastener.Strip(fastener.Engaged{Thread: th, Length: th.Major(), Hole: fastener.MildSteel()})
		says("strip", st.Basis, err)
		strength := fastener.Strength{Name: "x", Proof: units.Megapascals(200), Yield: units.Megapascals(240), Tensile: units.Megapascals(400)}
		ti, err := fastener.Tighten(fastener.Joint{Thread: th, Strength: strength}, fastener.TightenOptions{})
		says("tighten", ti.Basis, err)
		id, err := fastener.Identify(fastener.Readings{Major: measure.Of(th.Major(), units.Millimetres(0.01)), Pitch: measure.Of(th.Pitch(), units.Millimetres(0.002))}, fastener.IdentifyOptions{})
		says("identify", id.Basis, err)
	}
	if rows < 7 {
		t.Errorf("only %d threads looked at", rows)
	}
	spanners := 0
	for s := range refdata.WhitworthSpanners().All() {
		if s.PairingOrigin.Status() != refdata.FromMemory {
			continue
		}
		spanners++
		f, err := fastener.SpannersFor(measure.Of(s.AcrossFlats, units.Millimetres(0.05)), nil, fastener.FitOptions{})
		if err != nil || !slices.Contains(f.Basis.Sources, s.PairingOrigin.Source()) {
			t.Errorf("%s: %v, %v", s.W, f.Basis.Sources, err)
		}
	}
	if spanners == 0 {
		t.Error("no spanner looked at")
	}
}
