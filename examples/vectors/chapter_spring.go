package main

import (
	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

func newtons(x float64) units.Force        { return units.Newtons(x) }
func rate(x float64) units.SpringRate      { return units.NewtonsPerMillimetre(x) }
func megapascals(x float64) units.Pressure { return units.Megapascals(x) }

func springCases(b *book) {
	g := units.Gigapascals(81.5)
	for _, wire := range []float64{2, 2.64, 3, 60} {
		args := in{"wire": mm(wire), "mean": mm(18), "active": 7.5, "shear_modulus": g}
		b.add("transmission/spring.Rate", args, of(spring.Rate(mm(wire), mm(18), 7.5, g)))
		for _, k := range []spring.Factor{spring.Uncorrected, spring.DirectShear, spring.Wahl, spring.Bergstraesser} {
			args := in{"load": newtons(200), "wire": mm(wire), "mean": mm(18), "factor": words(k.String())}
			b.add("transmission/spring.Stress", args, of(spring.Stress(newtons(200), mm(wire), mm(18), k)))
		}
	}
	b.add("transmission/spring.LoadAtStress", in{"stress": megapascals(650), "wire": mm(3), "mean": mm(18), "factor": words(spring.Wahl.String())}, of(spring.LoadAtStress(megapascals(650), mm(3), mm(18), spring.Wahl)))
	b.add("transmission/spring.CoilsFor", in{"rate": rate(20), "wire": mm(2.64), "mean": mm(15), "shear_modulus": g}, of(spring.CoilsFor(rate(20), mm(2.64), mm(15), g)))
	b.add("transmission/spring.MeanFor", in{"rate": rate(20), "wire": mm(2.64), "active": 7.5, "shear_modulus": g}, of(spring.MeanFor(rate(20), mm(2.64), 7.5, g)))
	b.add("transmission/spring.WireFor", in{"load": newtons(300), "index": 6.0, "stress": megapascals(600), "factor": words(spring.Wahl.String())}, of(spring.WireFor(newtons(300), 6, megapascals(600), spring.Wahl)))
	b.add("transmission/spring.SetLoss", in{"rate": rate(25), "free_new": mm(46), "free_now": mm(44.5)}, only(spring.SetLoss(rate(25), mm(46), mm(44.5))))
	for _, ends := range []spring.Ends{spring.SquaredGround, spring.Squared, spring.Plain, spring.PlainGround} {
		b.add("transmission/spring.Ends.Solid", in{"ends": words(ends.String()), "wire": mm(2.64), "total": 9.5}, of(ends.Solid(mm(2.64), 9.5)))
		b.add("transmission/spring.Ends.Pitch", in{"ends": words(ends.String()), "free": mm(46), "wire": mm(2.64), "active": 7.5}, of(ends.Pitch(mm(46), mm(2.64), 7.5)))
	}
	w := spring.PatentedWire(megapascals(1430))
	b.add("transmission/spring.Fatigue", in{"low": newtons(60), "high": newtons(140), "wire": mm(3), "mean": mm(18), "wire_strength": w}, of(spring.Fatigue(newtons(60), newtons(140), mm(3), mm(18), w)))

	spec := spring.HelicalSpec{Wire: mm(2.64), Outside: mm(17.8), Total: 9.5, Free: mm(46), Ends: spring.SquaredGround}
	h, err := spring.NewHelical(spec)
	b.add("transmission/spring.NewHelical", in{"spec": spec}, of(h.Figures(), err))
	for _, length := range []float64{42, 36, 30} {
		b.add("transmission/spring.Helical.At", in{"spec": spec, "length": mm(length)}, of(h.At(mm(length)), err))
	}
	b.add("transmission/spring.Helical.AtLoad", in{"spec": spec, "load": newtons(150)}, of(h.AtLoad(newtons(150)), err))
	bad := spring.HelicalSpec{Wire: mm(3), Total: 2, Ends: spring.Squared}
	_, err = spring.NewHelical(bad)
	b.add("transmission/spring.NewHelical", in{"spec": bad}, of(nil, err))

	disc := spring.DiscSpec{Outside: mm(50), Inside: mm(25.4), Thickness: mm(2), ConeHeight: mm(1.4)}
	d, err := spring.NewDisc(disc)
	b.add("transmission/spring.NewDisc", in{"spec": disc}, of(d.Figures(), err))
	for _, s := range []float64{0.35, 1.05} {
		b.add("transmission/spring.Disc.At", in{"spec": disc, "deflection": mm(s)}, of(d.At(mm(s)), err))
	}
	if stack, err := spring.NewStack(d, 2, 3); err == nil {
		f, ok := stack.Load(mm(3))
		b.add("transmission/spring.Stack.Load", in{"spec": disc, "parallel": 2.0, "series": 3.0, "deflection": mm(3)}, only(map[string]any{"load": f, "in_travel": ok}))
	}
	var loads []measure.Reading[units.Force]
	for _, n := range []float64{200, 203, 199, 178, 201, 202} {
		loads = append(loads, measure.Of(newtons(n), newtons(2)))
	}
	b.add("transmission/spring.Even", in{"loads": loads}, of(spring.Even(loads, spring.EvenOptions{})))
	var readings []spring.LoadReading
	for _, x := range [][2]float64{{40, 118}, {36, 200}, {32, 279}} {
		readings = append(readings, spring.LoadReading{Length: measure.By(mm(x[0]), measure.Caliper()), Load: measure.By(newtons(x[1]), measure.SpringBalance())})
	}
	b.loosely(loose, "transmission/spring.FitLine", in{"loads": readings}, of(spring.FitLine(readings, spring.FitOptions{})))
}
