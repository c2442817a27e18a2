package main

import (
	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// Rows and tables by their names, and ranges and figures that may be open.
type (
	chainTable  struct{}
	threadTable struct{}
	tyreTable   struct{}
	threadRow   struct {
		Name string `json:"name"`
	}
	openRange struct {
		Low  *units.Length `json:"low"`
		High *units.Length `json:"high"`
	}
	openFigure struct {
		Value *units.Length `json:"value"`
	}
	limitOptions struct {
		Fit openRange `json:"fit"`
	}
)

func (chainTable) make() (any, error)  { return refdata.Chains(), nil }
func (threadTable) make() (any, error) { return refdata.Threads(), nil }
func (tyreTable) make() (any, error)   { return refdata.Tyres(), nil }

func (r threadRow) make() (any, error) {
	row, _ := refdata.Threads().ByName(r.Name)
	return row, nil
}

func (r openRange) build() refdata.Range[units.Length] {
	var out refdata.Range[units.Length]
	if r.Low != nil {
		out.Low = refdata.Known(*r.Low)
	}
	if r.High != nil {
		out.High = refdata.Known(*r.High)
	}
	return out
}

func (r openRange) make() (any, error) { return r.build(), nil }

func (f openFigure) make() (any, error) {
	if f.Value == nil {
		return refdata.Figure[units.Length]{}, nil
	}
	return refdata.Known(*f.Value), nil
}

func (o limitOptions) make() (any, error) {
	return refdata.LimitOptions[units.Length]{Fit: o.Fit.build()}, nil
}

func refdataCases(b *book) {
	tableCases(b)
	limitCases(b)
	lookUpCases(b)
}

func tableCases(b *book) {
	for _, table := range []any{
		refdata.BAHexagons, refdata.Chains, refdata.DialGauges, refdata.DiscSprings, refdata.ExhaustGases, refdata.FrictionMaterials, refdata.Fuels, refdata.GearBacklashes,
		refdata.GearModules, refdata.Grades, refdata.JetCoefficients, refdata.JetDrills, refdata.LeastBacklashes, refdata.LetterDrills, refdata.MetricDrills, refdata.MetricHexagons,
		refdata.MoistAirDensities, refdata.NumberDrills, refdata.PlugThreads, refdata.PropertyClasses, refdata.SlideCutaways, refdata.SpringModuli, refdata.SpringStrengths,
		refdata.StandardAtmosphere, refdata.StartingPoints, refdata.Threads, refdata.ThrottleInfluences, refdata.Tyres, refdata.UnifiedHexagons, refdata.ValveTimings,
		refdata.WhitworthHexagons, refdata.WhitworthSpanners, refdata.WireGauge, refdata.WorkshopLimits,
	} {
		b.ask(table, "", []row{{}})
	}
	b.ask(refdata.ThreadsOf, "system", each(refdata.BSW, refdata.BSF, refdata.Cycle, refdata.BA, refdata.MetricFine))
	b.ask(refdata.Systems, "", []row{{}})
	b.ask(refdata.Tables, "", []row{{}}, keep("answer.count"))
	b.ask(refdata.Disagreements, "", []row{{}}, keep("answer.count"))
	b.ask(refdata.LeftOut, "", []row{{}}, keep("answer.count"))
	b.ask(refdata.Hash, "", []row{{}})
	b.ask(refdata.Practice, "", []row{{}})
	chains := each(chainTable{})
	b.ask((*refdata.Table[refdata.Chain, units.Length]).ByName, "chains, name > found, known", cross(chains, each("08B", "428", "none")))
	b.ask((*refdata.Table[refdata.Chain, units.Length]).Len, "chains", chains)
	b.ask((*refdata.Table[refdata.Chain, units.Length]).Name, "chains", chains)
	b.ask((*refdata.Table[refdata.Chain, units.Length]).All, "chains", chains)
	b.ask((*refdata.Table[refdata.Tyre, units.Length]).All, "tyres", each(tyreTable{}))
	b.ask((*refdata.Table[refdata.Tyre, units.Length]).Name, "tyres", each(tyreTable{}))
	b.ask((*refdata.Table[refdata.Thread, units.Length]).Between, "threads, from, to", cross(each(threadTable{}), []row{{mm(6.3), mm(6.4)}, {mm(7.9), mm(8)}}), keep("answer.count", "answer.0.name", "answer.0.major", "answer.0.pitch", "answer.1.name", "answer.1.major", "answer.1.pitch"))
	b.ask((*refdata.Table[refdata.Thread, units.Length]).ByName, "threads, name > found, known", cross(each(threadTable{}), each("1/4 BSF", "2 BA", "M8", "9/9 BSF")))
	b.ask((*refdata.Table[refdata.Tyre, units.Length]).Len, "tyres", each(tyreTable{}))
	b.ask(refdata.Thread.Depth, "thread", each(threadRow{"1/4 BSF"}, threadRow{"2 BA"}, threadRow{"M8"}))
}

func limitCases(b *book) {
	bore, none := mmOf(78, 0.02), measure.Reading[units.Length]{}
	usual := each(limitOptions{})
	five, seven := mm(0.5), mm(0.7)
	gaps := each(mmOf(0.1, 0.02), mmOf(0.2, 0.02), mmOf(0.33, 0.02), mmOf(0.9, 0.02), none)
	b.ask(refdata.CheckLimit[units.Length], "key, reading, size, options", append(cross(each("ring-gap"), gaps, each(bore), usual),
		row{"ring-gap", gaps[1][0], none, limitOptions{}}, row{"ring-gap", gaps[3][0], bore, limitOptions{Fit: openRange{&five, &seven}}},
		row{"guide-inlet", mmOf(0.06, 0.01), none, limitOptions{}}, row{"no-such-limit", gaps[0][0], bore, limitOptions{}}, row{"ring-gap", mmOf(-0.2, 0.02), bore, limitOptions{}}),
		keep("key", "fit", "renew", "margin", "verdict", "chance", "second", "reason"))
	b.ask(refdata.CheckLimits, "readings", each(
		refdata.LimitReadings{Bore: bore, Lengths: map[string]measure.Reading[units.Length]{"ring-gap": mmOf(0.9, 0.02), "guide-inlet": mmOf(0.06, 0.01)}},
		refdata.LimitReadings{Shares: map[string]measure.Reading[units.Ratio]{"chain-stretch": ratioOf(0.015, 0.001), "valve-spring-share": ratioOf(0.97, 0.01)}},
		refdata.LimitReadings{Bore: bore, Lengths: map[string]measure.Reading[units.Length]{"ring-gapp": mmOf(0.9, 0.02)}}))
	low, high := mm(2), mm(5)
	ranges := each(openRange{&low, &high}, openRange{&low, nil}, openRange{})
	b.ask(refdata.RangeOf[units.Length], "low, high", []row{{low, high}, {mm(3), mm(3)}})
	b.ask(refdata.Range[units.Length].Ends, "range > low, high, both", ranges)
	b.ask(refdata.Range[units.Length].Given, "range", ranges)
	b.ask(refdata.Range[units.Length].Holds, "range, value", cross(ranges, each(mm(1), mm(3), mm(9))))
	figures := each(openFigure{&low}, openFigure{})
	b.ask(refdata.Known[units.Length], "value", each(low, high))
	b.ask(refdata.Figure[units.Length].Get, "figure > value, known", figures)
	b.ask(refdata.Figure[units.Length].IsKnown, "figure", figures)
	b.ask(refdata.Figure[units.Length].Or, "figure, other", cross(figures, each(high)))
}

func lookUpCases(b *book) {
	cc := units.CubicCentimetres
	b.ask(refdata.BeginAt, "displacement, tune", append(cross(each(cc(100), cc(249), cc(397), cc(499), cc(2000)), each(refdata.Tune(""), refdata.SportsTune)), row{cc(397), refdata.SideValve}, row{cc(397), refdata.Tune("silly")}, row{cc(-1), refdata.RoadTune}),
		keep("point.bore", "point.main_jet", "point.slide", "point.pilot", "point.needle", "share", "reason"))
	b.ask(refdata.Friction, "material, condition > friction, _, known", []row{{"moulded", "dry"}, {"cork", "oil"}, {"felt", "dry"}})
	b.ask(refdata.GradeAt, "grade, diameter > found, known", cross(each("5", "8", "9"), each(units.Inches(0.375), units.Inches(1.25))))
	b.ask(refdata.PropertyClassAt, "class, diameter > found, known", cross(each("8.8", "4.6", "9.9"), each(mm(8), mm(20))))
	var strengths []row
	for s := range refdata.SpringStrengths().All() {
		if len(strengths) < 3 {
			strengths = append(strengths, row{strengthRow{s.Name}})
		}
	}
	b.ask(refdata.SpringStrength.Tensile, "row, wire", cross(strengths, each(mm(0.5), mm(2), mm(90))))
	b.ask(refdata.LimitVerdict.Text, "verdict", each(refdata.Tight, refdata.Right, refdata.Serviceable, refdata.AtLimit, refdata.Renew, refdata.Loose))
	low, high := mm(2), mm(5)
	b.ask(refdata.LimitRange.Given, "range", each(givenRange{openRange{&low, &high}}, givenRange{}))
}

// givenRange is the range of a limit on a length.
type givenRange struct {
	Length openRange `json:"length"`
}

func (r givenRange) make() (any, error) { return refdata.LimitRange{Length: r.Length.build()}, nil }
