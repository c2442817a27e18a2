package main

import (
	"example.com/benchbook/refdata"
	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

func newtons(x float64) units.Force        { return units.Newtons(x) }
func rate(x float64) units.SpringRate      { return units.NewtonsPerMillimetre(x) }
func megapascals(x float64) units.Pressure { return units.Megapascals(x) }

// The springs by what they are made from.
type (
	coil struct {
		Spec spring.HelicalSpec `json:"spec"`
	}
	disc1 struct {
		Spec spring.DiscSpec `json:"spec"`
	}
	linear struct {
		Rate  units.SpringRate `json:"rate"`
		Free  units.Length     `json:"free"`
		Least units.Length     `json:"least"`
	}
	stack struct {
		Spec     spring.DiscSpec `json:"spec"`
		Parallel int             `json:"parallel"`
		Series   int             `json:"series"`
	}
	levered struct {
		Spring linear  `json:"spring"`
		Ratio  float64 `json:"ratio"`
	}
	inRow    []linear
	together []beside
	beside   struct {
		Spring linear       `json:"spring"`
		Count  int          `json:"count"`
		Gap    units.Length `json:"gap"`
	}
	// parts and elements are springs before they are put together.
	parts    []beside
	elements []linear
)

func (c coil) make() (any, error)   { return spring.NewHelical(c.Spec) }
func (d disc1) make() (any, error)  { return spring.NewDisc(d.Spec) }
func (l linear) make() (any, error) { return spring.NewLinear(l.Rate, l.Free, l.Least) }

func (s stack) make() (any, error) {
	d, err := spring.NewDisc(s.Spec)
	if err != nil {
		return nil, err
	}
	return spring.NewStack(d, s.Parallel, s.Series)
}

func (v levered) make() (any, error) {
	e, err := spring.NewLinear(v.Spring.Rate, v.Spring.Free, v.Spring.Least)
	if err != nil {
		return nil, err
	}
	return spring.NewLevered(e, v.Ratio)
}

func (e elements) make() (any, error) {
	var out []spring.Element
	for _, l := range e {
		s, err := spring.NewLinear(l.Rate, l.Free, l.Least)
		if err != nil {
			return nil, err
		}
		out = append(out, s)
	}
	return out, nil
}

func (p parts) make() (any, error) {
	var out []spring.Part
	for _, x := range p {
		s, err := spring.NewLinear(x.Spring.Rate, x.Spring.Free, x.Spring.Least)
		if err != nil {
			return nil, err
		}
		out = append(out, spring.Part{Spring: s, Count: x.Count, Gap: x.Gap})
	}
	return out, nil
}

func (r inRow) make() (any, error) {
	e, err := elements(r).make()
	if err != nil {
		return nil, err
	}
	return spring.NewSeries(e.([]spring.Element)...)
}

func (t together) make() (any, error) {
	p, err := parts(t).make()
	if err != nil {
		return nil, err
	}
	return spring.NewParallel(p.([]spring.Part)...)
}

func springCases(b *book) {
	formulaCases(b)
	wireCases(b)
	coilCases(b)
	discCases(b)
	elementCases(b)
	springVerdictCases(b)
}

func formulaCases(b *book) {
	g := each(units.Gigapascals(81.5), units.Gigapascals(71))
	sizes := each(mm(2), mm(2.64), mm(3), mm(60))
	factors := each(spring.Uncorrected, spring.DirectShear, spring.Wahl, spring.Bergstraesser)
	b.ask(spring.Rate, "wire, mean, active, shear_modulus", cross(sizes, each(mm(18)), each(7.5), g))
	b.ask(spring.Stress, "load, wire, mean, factor", cross(each(newtons(200)), sizes, each(mm(18)), factors))
	b.ask(spring.LoadAtStress, "stress, wire, mean, factor", cross(each(megapascals(650)), sizes[1:], each(mm(18)), factors))
	b.ask(spring.CoilsFor, "rate, wire, mean, shear_modulus", cross(each(rate(20), rate(0)), each(mm(2.64)), each(mm(15), mm(18)), g))
	b.ask(spring.MeanFor, "rate, wire, active, shear_modulus", cross(each(rate(20), rate(35)), each(mm(2.64)), each(7.5, 0.0), g))
	b.ask(spring.WireFor, "load, index, stress, factor", cross(each(newtons(300)), each(6.0, 8.0, 0.5), each(megapascals(600)), factors))
	b.ask(spring.Factor.At, "factor, index", cross(factors, each(4.0, 6.0, 12.0, 0.5)))
	b.ask(spring.SetLoss, "rate, free_new, free_now", cross(each(rate(25)), each(mm(46)), each(mm(44.5), mm(46), mm(46.5))))
	ends := each(spring.SquaredGround, spring.Squared, spring.Plain, spring.PlainGround)
	b.ask(spring.Ends.Solid, "ends, wire, total", cross(ends, each(mm(2.64)), each(9.5, 0.0)))
	b.ask(spring.Ends.Pitch, "ends, free, wire, active", cross(ends, each(mm(46), mm(10)), each(mm(2.64)), each(7.5)))
	b.ask(spring.Ends.Dead, "ends", ends)
	b.ask(spring.Ends.Ground, "ends", ends)
	b.ask(spring.Seating.LengthFactor, "seating", each(spring.BothFlat, spring.FlatAndPivot, spring.BothPivot, spring.OneFree))
	b.ask(spring.FreeFor, "solid, deflection, total, clash", cross([]row{{mm(25), mm(15), 9.5}, {mm(25), mm(-1), 9.5}}, each(spring.Clash{Gap: mm(1)}, spring.Clash{Share: 0.15}, spring.Clash{})))
	strength := spring.PatentedWire(megapascals(1430))
	b.ask(spring.PatentedWire, "tensile", each(megapascals(1430), megapascals(1700)))
	b.ask(spring.Fatigue, "low, high, wire, mean, wire_strength", cross([]row{{newtons(60), newtons(140)}, {newtons(0), newtons(200)}, {newtons(140), newtons(60)}}, each(mm(3)), each(mm(18)), each(strength)))
	b.ask(spring.WireForFatigue, "low, high, index, safety, wire_strength", cross([]row{{newtons(60), newtons(140)}, {newtons(140), newtons(60)}}, each(6.0), each(1.3, 2.0), each(strength)), rel(1e-8))
}

func wireCases(b *book) {
	b.ask(spring.Steel, "", []row{{}})
	b.ask(spring.ModulusOf, "material, wire > modulus, _", []row{{"A228", mm(2)}, {"A228", mm(4)}, {"phosphor bronze", mm(2)}, {"302", mm(2)}, {"wood", mm(2)}})
	b.ask(spring.Fits, "material, wire", []row{{"A228", mm(2)}, {"EN 10270-1 SH", mm(3)}, {"oil-tempered", mm(0)}, {"A228", mm(60)}, {"wood", mm(2)}})
	b.ask(spring.Wires, "material, wire > tensile, laws", []row{{"A228", mm(2)}, {"EN 10270-1 SH", mm(3)}, {"A228", mm(0)}})
	own := refdata.Source{Title: "made up for these cases", Status: refdata.CommonPractice}
	power := spring.Law{Source: own, Name: "a power law", A: megapascals(2170), Exponent: 0.146, From: mm(0.1), To: mm(6.5)}
	log := spring.Law{Source: own, Name: "a logarithmic law", Form: spring.Logarithmic, A: megapascals(1980), B: megapascals(740), From: mm(1), To: mm(10)}
	laws := each(power, log)
	b.ask(spring.Law.At, "law, wire > strength, in_range", cross(laws, each(mm(2), mm(8))))
	b.ask(spring.WireForLaw, "load, mean, factor, share, law", cross([]row{{newtons(300), mm(18), 1.25, 0.45}, {newtons(200), mm(22), 1.2, 0.4}, {newtons(200), mm(30), 1.2, 0.5}, {newtons(300), mm(18), 1.25, 4000.0}}, laws), rel(1e-8))
	var rows []row
	for s := range refdata.SpringStrengths().All() {
		if len(rows) < 4 {
			rows = append(rows, row{strengthRow{s.Name}})
		}
	}
	b.ask(spring.LawOf, "row", rows)
}

// strengthRow is a row of the table of wire strengths by its name.
type strengthRow struct {
	Name string `json:"name"`
}

func (r strengthRow) make() (any, error) {
	row, _ := refdata.SpringStrengths().ByName(r.Name)
	return row, nil
}

func specs() []row {
	return each(
		coil{spring.HelicalSpec{Wire: mm(2.64), Outside: mm(17.8), Total: 9.5, Free: mm(46), Ends: spring.SquaredGround}},
		coil{spring.HelicalSpec{Wire: mm(3), Mean: mm(22), Active: 6, Free: mm(60), Ends: spring.Plain, Seating: spring.FlatAndPivot, Modulus: spring.Modulus{Shear: units.Gigapascals(79)}}},
		coil{spring.HelicalSpec{Wire: mm(4), Inside: mm(20), Total: 8, Free: mm(70), Solid: mm(31), Ends: spring.Squared}},
	)
}

func coilCases(b *book) {
	sound := specs()
	var bare []row
	for _, s := range sound {
		bare = append(bare, row{s[0].(coil).Spec})
	}
	bare = append(bare, row{spring.HelicalSpec{Wire: mm(3), Total: 2, Ends: spring.Squared}}, row{spring.HelicalSpec{Wire: mm(3), Outside: mm(20), Inside: mm(15), Total: 8, Free: mm(20), Ends: spring.SquaredGround}})
	b.ask(spring.NewHelical, "spec", bare, seen(func(h spring.Helical) any { return h.Figures() }))
	b.ask(spring.Helical.Figures, "spring", sound)
	b.ask(spring.Helical.Spec, "spring", sound)
	for _, ask := range []func(spring.Helical) units.Length{spring.Helical.Free, spring.Helical.Limit, spring.Helical.Solid, spring.Helical.Travel} {
		b.ask(ask, "spring", sound)
	}
	b.ask(spring.Helical.Rate, "spring", sound)
	b.ask(spring.Helical.At, "spring, length", cross(sound, each(mm(44), mm(36), mm(30), mm(5), mm(90))))
	b.ask(spring.Helical.AtLoad, "spring, load", cross(sound, each(newtons(0), newtons(150), newtons(9000))))
	deflect(b, spring.Helical.Load, spring.Helical.Deflection, spring.Helical.RateAt, sound)
}

// deflect asks what every spring answers.
func deflect[T any](b *book, load func(T, units.Length) (units.Force, bool), deflection func(T, units.Force) (units.Length, bool), rateAt func(T, units.Length) (units.SpringRate, bool), springs []row) {
	places := each(mm(0), mm(1.2), mm(4), mm(10), mm(200))
	b.ask(load, "spring, deflection > load, in_travel", cross(springs, places))
	b.ask(deflection, "spring, load > deflection, reached", cross(springs, each(newtons(0), newtons(60), newtons(300), newtons(50000))), rel(1e-8))
	b.ask(rateAt, "spring, deflection > rate, in_travel", cross(springs, places[:4]), rel(1e-8))
}

func discCases(b *book) {
	flat := spring.DiscSpec{Outside: mm(50), Inside: mm(25.4), Thickness: mm(2), ConeHeight: mm(1.4)}
	snap := spring.DiscSpec{Outside: mm(150), Inside: mm(110), Thickness: mm(2), ConeHeight: mm(4)}
	american := flat
	american.Formula = spring.AlmenLaszlo
	bad := spring.DiscSpec{Outside: mm(20), Inside: mm(25), Thickness: mm(2)}
	discs := each(disc1{flat}, disc1{snap}, disc1{american})
	b.ask(spring.NewDisc, "spec", each(flat, snap, american, bad), seen(func(d spring.Disc) any { return d.Figures() }))
	b.ask(spring.Disc.Figures, "spring", discs)
	b.ask(spring.Disc.Spec, "spring", discs)
	b.ask(spring.Disc.Limit, "spring", discs)
	b.ask(spring.Disc.Travel, "spring", discs)
	b.ask(spring.Disc.At, "spring, deflection", cross(discs, each(mm(0.35), mm(1.05), mm(2.5), mm(9))))
	deflect(b, spring.Disc.Load, spring.Disc.Deflection, spring.Disc.RateAt, discs)
	b.ask(spring.Disc.Between, "spring, outer, inner", cross(discs, []row{{mm(48), mm(28)}, {mm(30), mm(40)}}), seen(func(v spring.Levered) any {
		f, _ := v.Load(mm(0.8))
		return map[string]any{"travel": v.Travel(), "load_at_0.8_mm": f}
	}))
	stacks := each(stack{flat, 2, 3}, stack{snap, 1, 2})
	b.ask(spring.NewStack, "disc, parallel, series", cross(discs[:2], []row{{2, 3}, {1, 1}, {0, 3}}), seen(func(k spring.Stack) any {
		f, _ := k.Load(mm(1))
		return map[string]any{"height": k.Height(), "travel": k.Travel(), "load_at_1_mm": f}
	}))
	b.ask(spring.Stack.Height, "spring", stacks)
	b.ask(spring.Stack.Limit, "spring", stacks)
	b.ask(spring.Stack.Travel, "spring", stacks)
	b.ask(spring.Stack.Disc, "spring", stacks, seen(func(d spring.Disc) any { return d.Figures().FlatLoad }))
	deflect(b, spring.Stack.Load, spring.Stack.Deflection, spring.Stack.RateAt, stacks)
	b.ask(spring.Stack.Band, "spring, deflection, friction > pressing, opening", cross(stacks, each(mm(1), mm(90)), each(spring.StackFriction{Between: 0.02, Edge: 0.03}, spring.StackFriction{}, spring.StackFriction{Between: 2})))
}

func elementCases(b *book) {
	soft, stiff := linear{rate(8), mm(45), mm(28)}, linear{rate(20), mm(50), mm(30)}
	lines := each(soft, stiff)
	b.ask(spring.NewLinear, "rate, free, least", []row{{rate(8), mm(45), mm(28)}, {rate(20), mm(50), mm(0)}, {rate(20), mm(50), mm(60)}}, seen(func(e spring.Linear) any {
		return map[string]any{"rate": e.Rate(), "free": e.Free(), "least": e.Least(), "travel": e.Travel()}
	}))
	for _, ask := range []func(spring.Linear) units.Length{spring.Linear.Free, spring.Linear.Least, spring.Linear.Limit, spring.Linear.Travel} {
		b.ask(ask, "spring", lines)
	}
	b.ask(spring.Linear.Rate, "spring", lines)
	deflect(b, spring.Linear.Load, spring.Linear.Deflection, spring.Linear.RateAt, lines)
	arms := each(levered{soft, 2}, levered{stiff, 0.6})
	b.ask(spring.NewLevered, "spring, ratio", cross(each(soft), each(2.0, 0.6, 0.0)), seen(func(v spring.Levered) any {
		f, _ := v.Load(mm(3))
		return map[string]any{"travel": v.Travel(), "load_at_3_mm": f}
	}))
	b.ask(spring.Levered.Limit, "spring", arms)
	b.ask(spring.Levered.Travel, "spring", arms)
	deflect(b, spring.Levered.Load, spring.Levered.Deflection, spring.Levered.RateAt, arms)
	rows := each(inRow{stiff, soft}, inRow{soft, soft, stiff})
	b.ask(spring.NewSeries, "springs", each(elements{stiff, soft}, elements{soft}, elements{}), seen(func(s spring.Series) any {
		f, _ := s.Load(mm(6))
		return map[string]any{"travel": s.Travel(), "limit": s.Limit(), "load_at_6_mm": f}
	}))
	b.ask(spring.Series.Limit, "spring", rows)
	b.ask(spring.Series.Travel, "spring", rows)
	deflect(b, spring.Series.Load, spring.Series.Deflection, spring.Series.RateAt, rows)
	pairs := each(together{{Spring: stiff}, {Spring: soft, Gap: mm(5)}}, together{{Spring: soft, Count: 4}})
	b.ask(spring.NewParallel, "parts", each(parts{{Spring: stiff}, {Spring: soft, Gap: mm(5)}}, parts{{Spring: soft, Count: 4}}, parts{{Spring: soft, Count: -1}}, parts{}), seen(func(p spring.Parallel) any {
		f, _ := p.Load(mm(6))
		return map[string]any{"travel": p.Travel(), "limit": p.Limit(), "load_at_6_mm": f}
	}))
	b.ask(spring.Parallel.Limit, "spring", pairs)
	b.ask(spring.Parallel.Travel, "spring", pairs)
	deflect(b, spring.Parallel.Load, spring.Parallel.Deflection, spring.Parallel.RateAt, pairs)
	b.ask(spring.TraceOf, "spring, points", cross([]row{{stiff}, {disc1{spring.DiscSpec{Outside: mm(150), Inside: mm(110), Thickness: mm(2), ConeHeight: mm(4)}}}}, each(5, 1)), seen(func(t spring.Trace) any {
		s, f := t.At(3)
		return map[string]any{"points": t.Len(), "point_3": map[string]any{"deflection": s, "load": f}}
	}))
}

func springVerdictCases(b *book) {
	weigh := func(pairs ...[2]float64) []spring.LoadReading {
		var out []spring.LoadReading
		for _, x := range pairs {
			out = append(out, spring.LoadReading{Length: measure.By(mm(x[0]), measure.Caliper()), Load: measure.By(newtons(x[1]), measure.SpringBalance())})
		}
		return out
	}
	straight := weigh([2]float64{40, 118}, [2]float64{36, 200}, [2]float64{32, 279})
	bent := weigh([2]float64{42, 80}, [2]float64{38, 150}, [2]float64{34, 260}, [2]float64{30, 420})
	b.ask(spring.FitLine, "loads, options", cross(each(straight, bent, straight[:1]), each(spring.FitOptions{}, spring.FitOptions{Scale: 0.02})), rel(loose))
	var loads []measure.Reading[units.Force]
	for _, n := range []float64{200, 203, 199, 178, 201, 202} {
		loads = append(loads, measure.Of(newtons(n), newtons(2)))
	}
	b.ask(spring.Even, "loads, options", cross(each(loads, loads[:3], loads[:1]), each(spring.EvenOptions{}, spring.EvenOptions{Spread: 0.1})))
	read := spring.Readings{Wire: mmOf(2.64, 0.02), Outside: mmOf(17.8, 0.05), Free: mmOf(45.9, 0.1), Total: ratioOf(9.5, 0.25), Ends: spring.SquaredGround, Loads: straight}
	noLoads := read
	noLoads.Loads = nil
	paint := read
	paint.Wire = mmOf(2.9, 0.02)
	odd := read
	odd.Wire, odd.Outside = mmOf(2.64, 0.02), mmOf(2, 0.05)
	b.ask(spring.Identify, "readings, options", cross(each(read, noLoads, paint, odd, spring.Readings{Loads: straight[:1]}), each(spring.IdentifyOptions{})), rel(loose))
	known := []spring.Known{
		{Key: "standard", Spec: spring.HelicalSpec{Wire: mm(2.64), Outside: mm(17.8), Total: 9.5, Free: mm(46), Ends: spring.SquaredGround}},
		{Key: "racing", Spec: spring.HelicalSpec{Wire: mm(2.9), Outside: mm(18), Total: 9.5, Free: mm(46), Ends: spring.SquaredGround}},
		{Key: "long", Spec: spring.HelicalSpec{Wire: mm(2.64), Outside: mm(17.8), Total: 10.5, Free: mm(52), Ends: spring.SquaredGround}, Prior: 0.5},
	}
	sunk := read
	sunk.Free, sunk.Loads = mmOf(44, 0.1), nil
	b.ask(spring.Match, "readings, known, options", cross(each(read, noLoads, sunk, spring.Readings{Free: mmOf(46, 0.1)}, spring.Readings{}), each(known), each(spring.MatchOptions{})), rel(loose))
}
