package main

import (
	"example.com/benchbook/carburation/air"
	"example.com/benchbook/carburation/fuel"
	"example.com/benchbook/transmission"
	"example.com/benchbook/transmission/drive"
	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fastener"
	"example.com/benchbook/units/measure"
)

// furtherCases ask what is asked less often.
func furtherCases(b *book) {
	furtherTransmission(b)
	furtherTables(b)
}

func furtherTransmission(b *book) {
	test := transmission.KickTest{Rider: measure.Of(units.Kilograms(80), units.Kilograms(2)), Crank: measure.Of(mm(220), mm(3)), Angle: measure.Of(units.Degrees(90), units.Degrees(5)), Ratio: 3, Result: transmission.Held}
	kick, err := clutch().Kick(test)
	b.loosely(loose, "transmission.Clutch.Kick", in{"clutch": clutch(), "test": test}, of(kick, err))
	friction, _, err := transmission.LiningFriction("woven", "dry")
	b.add("transmission.LiningFriction", in{"material": words("woven"), "condition": words("dry")}, of(friction, err))
	one, err := spring.NewLinear(rate(20), mm(50), mm(30))
	two, err2 := spring.NewLinear(rate(8), mm(45), mm(28))
	if err == nil && err2 == nil {
		both, err := spring.NewParallel(spring.Part{Spring: one}, spring.Part{Spring: two, Gap: mm(5)})
		row, err2 := spring.NewSeries(one, two)
		for _, s := range []float64{4, 10} {
			f, _ := both.Load(mm(s))
			g, _ := row.Load(mm(s))
			args := in{"first.rate": rate(20), "first.free": mm(50), "second.rate": rate(8), "second.free": mm(45), "deflection": mm(s)}
			b.add("transmission/spring.Series.Load", args, of(map[string]any{"load": g}, err2))
			args = in{"first.rate": rate(20), "first.free": mm(50), "second.rate": rate(8), "second.free": mm(45), "second.gap": mm(5), "deflection": mm(s)}
			b.add("transmission/spring.Parallel.Load", args, of(map[string]any{"load": f}, err))
		}
	}
	b.add("transmission/spring.FreeFor", in{"solid": mm(25), "deflection": mm(15), "total": 9.5, "gap": mm(1)}, of(spring.FreeFor(mm(25), mm(15), 9.5, spring.Clash{Gap: mm(1)})))
	m, _, err := spring.ModulusOf("A228", mm(2))
	b.add("transmission/spring.ModulusOf", in{"material": words("A228"), "wire": mm(2)}, of(map[string]any{"shear": m.Shear, "young": m.Young}, err))
	away := drive.PullAway{Torque: units.NewtonMetres(28), Mass: units.Kilograms(245), Resistance: newtons(60), Radius: mm(323), Efficiency: 0.88, WheelsKilogramSquareMetres: 2, EngineKilogramSquareMetres: 0.06}
	b.add("transmission/drive.PullAway.Pull", in{"pull": away, "overall": 14.3}, of(away.Pull(14.3)))
	runs := drive.CoastInput{Mass: measure.Of(units.Kilograms(245), units.Kilograms(5)), Runs: []drive.Coast{
		{From: mph(50), To: mph(40), Time: measure.Of(units.Seconds(6.2), units.Seconds(0.2))},
		{From: mph(40), To: mph(30), Time: measure.Of(units.Seconds(8.6), units.Seconds(0.2))},
		{From: mph(30), To: mph(20), Time: measure.Of(units.Seconds(12.2), units.Seconds(0.3))},
	}}
	coast, err := drive.CoastDown(runs, drive.CoastOptions{})
	b.loosely(1e-4, "transmission/drive.CoastDown", in{"coast": runs}, of(map[string]any{"drag_area": coast.DragArea, "rolling": coast.Rolling}, err))
	chain := drive.ChainReadings{Pitch: measure.Of(mm(15.96), mm(0.01)), Width: measure.Of(mm(9.6), mm(0.05)), Roller: measure.Of(mm(10.1), mm(0.05))}
	id, err := drive.IdentifyChain(chain)
	b.loosely(loose, "transmission/drive.IdentifyChain", in{"chain": chain}, of(leaders{id.Causes}, err))
}

func furtherTables(b *book) {
	w, ratio, err := air.LogLaw{}.At(units.Metres(1500))
	b.add("carburation/air.LogLaw.At", in{"height": units.Metres(1500)}, of(map[string]any{"weather": w, "density_ratio": ratio}, err))
	day := air.Weather{Pressure: units.Hectopascals(1010), Temperature: units.Celsius(28), Humidity: units.Percents(60)}
	b.add("carburation/air.Weather.At", in{"weather": day}, of(day.At()))
	for f := range fuel.All() {
		b.add("carburation/fuel.Fuel.LatentHeatPerAir", in{"fuel": words(f.Name)}, only(f.LatentHeatPerAir()))
	}
	shares := fuel.Composition{Carbon: units.Percents(86), Hydrogen: units.Percents(14)}
	b.add("carburation/fuel.Composition.Formula", in{"shares": shares}, of(shares.Formula(fuel.Convention{})))
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
