package main

import (
	"example.com/benchbook/carburation/air"
	"example.com/benchbook/carburation/fuel"
	"example.com/benchbook/timing/cam"
	"example.com/benchbook/timing/gear"
	"example.com/benchbook/timing/ignition"
	"example.com/benchbook/transmission"
	"example.com/benchbook/transmission/drive"
	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fastener"
	"example.com/benchbook/units/measure"
)

// furtherCases ask what is asked less often.
func furtherCases(b *book) {
	furtherTiming(b)
	furtherTransmission(b)
	furtherTables(b)
}

func furtherTiming(b *book) {
	below, beyond, err := gear.TeethFor(mm(72.5), mm(2), gear.NewRational(2, 1))
	b.add("timing/gear.TeethFor", in{"centre": mm(72.5), "module": mm(2), "ratio": "2"}, of(map[string]any{"below": below, "beyond": beyond}, err))
	p := gear.PlanetaryOf(24, 18)
	b.add("timing/gear.PlanetaryOf", in{"sun": 24.0, "planet": 18.0}, only(p))
	for _, n := range []int{3, 4} {
		b.add("timing/gear.Planetary.Assembles", in{"planetary": p, "planets": float64(n)}, only(p.Assembles(n)))
	}
	b.add("timing/gear.Planetary.PlanetSpeed", in{"planetary": p, "sun": rpm(1000), "arm": rpm(200)}, of(p.PlanetSpeed(rpm(1000), rpm(200))))
	c, err := arcCam().Curve(camDeg(55))
	if err != nil {
		b.keep("timing-cam-curve", err)
		return
	}
	cam1 := func(more in) in {
		more["cam"], more["nose_at"] = arcCam(), camDeg(55)
		return more
	}
	centres, err := c.Centres(mm(1))
	b.loosely(loose, "timing/cam.Curve.Centres", cam1(in{"check": mm(1)}), of(map[string]any{"by_events": centres.ByEvents, "by_area": centres.ByArea, "max_lift": centres.MaxLift}, err))
	contact, err := c.Contact(camDeg(40), cam.Flat(), arcCam().BaseRadius)
	b.loosely(1e-4, "timing/cam.Curve.Contact", cam1(in{"at": camDeg(40), "follower": words("flat")}), of(contact, err))
	set := cam.Valve{Cam: c, Clearance: mm(0.1)}
	b.add("timing/cam.Valve.Lift", cam1(in{"clearance": set.Clearance, "at": camDeg(40)}), of(set.Lift(camDeg(40))))
	clearing, err := set.WithClearance(mm(0.3), mm(1))
	b.loosely(loose, "timing/cam.Valve.WithClearance", cam1(in{"clearance": set.Clearance, "new_clearance": mm(0.3), "check": mm(1)}), of(clearing, err))
	key := cam.Key{Shaft: mm(16), Width: mm(4), Height: mm(4), Length: mm(12)}
	b.add("timing/cam.Key.LengthFor", in{"key": key, "torque": units.NewtonMetres(20), "shear": megapascals(60), "bearing": megapascals(120)}, of(key.LengthFor(units.NewtonMetres(20), megapascals(60), megapascals(120))))
	splines := cam.Splines{Number: 6, Inner: mm(21), Outer: mm(25), Length: mm(20)}
	b.add("timing/cam.Splines.ShiftForce", in{"splines": splines, "torque": units.NewtonMetres(60), "friction": units.Value(0.08)}, of(splines.ShiftForce(units.NewtonMetres(60), units.Value(0.08))))
	b.add("timing/ignition.BurnEnd", in{"spark": at(-37), "delay": units.CrankDegrees(10), "distance": mm(60), "flame": units.MetresPerSecond(25), "speed": rpm(4000)},
		of(ignition.BurnEnd(at(-37), units.CrankDegrees(10), mm(60), units.MetresPerSecond(25), rpm(4000))))
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
