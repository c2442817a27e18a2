package main

import (
	"example.com/benchbook/units"
	"example.com/benchbook/units/fastener"
	"example.com/benchbook/units/measure"
)

// drills is a set of drills by its name.
type drills string

func (d drills) make() (any, error) {
	switch d {
	case "metric":
		return fastener.MetricDrills(), nil
	case "number":
		return fastener.NumberDrills(), nil
	case "letter":
		return fastener.LetterDrills(), nil
	case "fraction":
		return fastener.FractionDrills(), nil
	}
	return fastener.Drills(), nil
}

// joint is a joint in a bolt of a strength that has a name.
type joint struct {
	fastener.Joint
	Class string `json:"class"` // property class, or
	Grade string `json:"grade"` // SAE grade
}

func (j joint) make() (any, error) {
	var err error
	switch {
	case j.Class != "":
		j.Strength, err = fastener.Class(j.Class, j.Thread)
	case j.Grade != "":
		j.Strength, err = fastener.Grade(j.Grade, j.Thread)
	}
	return j.Joint, err
}

// among is what one of the searches may look through.
type (
	twinAmong struct {
		fastener.TwinOptions
		Among []fastener.Thread `json:"among"`
	}
	standInAmong struct {
		fastener.StandInOptions
		Among []fastener.Thread `json:"among"`
	}
)

func (a twinAmong) make() (any, error) {
	a.TwinOptions.Among = a.Among
	return a.TwinOptions, nil
}

func (a standInAmong) make() (any, error) {
	a.StandInOptions.Among = a.Among
	return a.StandInOptions, nil
}

func thread(name string) fastener.Thread { return fastener.MustParse(name) }

func threads(names ...string) []row {
	var out []row
	for _, n := range names {
		out = append(out, row{thread(n)})
	}
	return out
}

func fastenerCases(b *book) {
	all := threads("1/4 BSF", "5/16-26 cycle", "3/8 BSW", "2 BA", "M8", "3/8-24 UNF", "G 1/8")
	threadCases(b, all)
	drillCases(b, all)
	strengthCases(b, all)
	mateCases(b)
	toolCases(b)
	identifyCases(b)
}

func threadCases(b *book, all []row) {
	b.ask(fastener.Parse, "text", each("1/4 BSF", "5/16-26 cycle", "3/8 BSW", "2 BA", "M8", "M8x1", "3/8-24 UNF", "G 1/8", "1/2 cycle", "7/19 BSF", ""), seen(size))
	b.ask(fastener.Of, "name, form, major, pitch", []row{{"", fastener.WhitworthForm, mm(12), mm(1.2)}, {"odd", fastener.MetricForm, mm(11), mm(1)}, {"", fastener.WhitworthForm, mm(-1), mm(50)}}, seen(size))
	b.ask(fastener.TPI, "threads_per_inch", each(26.0, 20.0, 0.0))
	b.ask(fastener.ParsePitch, "text", each("26 tpi", "1.25 mm", "twenty"))
	b.ask(fastener.ReadPitch, "text, instrument", cross(each("26 tpi", "1.25 mm ± 0.01", "", "26"), each(measure.PitchGauge())))
	b.ask(fastener.Thread.Geometry, "thread", append(all, row{fastener.Thread{}}))
	b.ask(fastener.Thread.Limits, "thread, engaged", cross(all, each(mm(8), mm(-1))))
	b.ask(fastener.Thread.Major, "thread", all)
	b.ask(fastener.Thread.Pitch, "thread", all)
	b.ask(fastener.Thread.ThreadsPerInch, "thread", all)
	b.ask(fastener.Thread.Form, "thread", all)
	b.ask(fastener.Thread.System, "thread", all)
	b.ask(fastener.Thread.Name, "thread", all)
	b.ask(fastener.Thread.Key, "thread", all)
	b.ask(fastener.Thread.Row, "thread > found, known", all[:4], keep("known", "found.major", "found.pitch", "found.effective", "found.minor"))
	b.ask(fastener.Thread.WithHand, "thread, hand", cross(all[:1], each(fastener.Left, fastener.Right)), seen(func(t fastener.Thread) any { return map[string]any{"hand": t.Hand(), "name": t.Name()} }))
	b.ask(fastener.Thread.IsZero, "thread", append(all[:1:1], row{fastener.Thread{}}))
	hands := each(handed{thread("1/4 BSF"), fastener.Left}, handed{thread("1/4 BSF"), fastener.Right}, handed{thread("1/4 BSF"), fastener.HandUnknown})
	b.ask(fastener.Thread.Hand, "thread", hands)
	b.ask(fastener.Thread.Turn, "thread, action > turn, no_answer", cross(hands, each(fastener.Undo, fastener.DoUp)), noted("action 1 is to undo, 2 to do up"))
	b.ask(fastener.Form.Included, "form", each(fastener.WhitworthForm, fastener.CycleForm, fastener.AssociationForm, fastener.MetricForm, fastener.UnifiedForm))
	b.ask(fastener.Threads, "", []row{{}})
}

// handed is a thread whose hand was looked at.
type handed struct {
	Thread fastener.Thread `json:"thread"`
	Hand   fastener.Hand   `json:"hand"`
}

func (h handed) make() (any, error) { return h.Thread.WithHand(h.Hand), nil }

func size(t fastener.Thread) any {
	return map[string]any{"major": t.Major(), "pitch": t.Pitch(), "form": t.Form()}
}

func drillCases(b *book, all []row) {
	shares := each(units.Percents(65), units.Percents(75), units.Percents(180))
	chart, basic := fastener.ChartDepth, fastener.BasicHeight
	b.ask(fastener.TappingHole, "thread, engagement, convention", cross(all, shares, each(chart, basic)))
	b.ask(fastener.TappingDrill, "thread, engagement, convention, drills", cross(all, shares[1:], each(chart), each(drills("metric"), drills("all"))))
	b.ask(fastener.Engagement, "thread, hole, convention", cross(all[:3], each(mm(5.4), mm(7), mm(-1)), each(chart, basic)))
	for _, set := range []func() []fastener.Drill{fastener.Drills, fastener.FractionDrills, fastener.LetterDrills, fastener.MetricDrills, fastener.NumberDrills} {
		b.ask(set, "", []row{{}})
	}
	gauges := each(fastener.SWG, fastener.NumberDrill, fastener.LetterDrill)
	b.ask(fastener.Gauge.Diameter, "gauge, mark", cross(gauges, each("10", "20", "F", "4/0")))
	b.ask(fastener.Gauge.At, "gauge, number", cross(gauges, each(10.5, 900.0)))
	b.ask(fastener.Gauge.Number, "gauge, diameter", cross(gauges, each(mm(3), mm(8), mm(90))))
	b.ask(fastener.Gauge.Nearest, "gauge, diameter > size, over", cross(gauges, each(mm(3.2), mm(7), mm(-1))))
	b.ask(fastener.Gauge.Ends, "gauge > first, last", gauges)
}

func strengthCases(b *book, all []row) {
	b.ask(fastener.Class, "class, thread", []row{{"8.8", thread("M8")}, {"10.9", thread("M8")}, {"4.6", thread("3/8 BSW")}, {"9.9", thread("M8")}})
	b.ask(fastener.Grade, "grade, thread", []row{{"5", thread("3/8-24 UNF")}, {"8", thread("3/8-24 UNF")}, {"77", thread("3/8-24 UNF")}})
	b.ask(fastener.Strength.Known, "strength", each(fastener.Strength{Tensile: megapascals(800)}, fastener.Strength{}))
	dry := fastener.SameFriction(one(0.12))
	var joints, strong []row
	for _, t := range all {
		joints = append(joints, row{joint{Joint: fastener.Joint{Thread: t[0].(fastener.Thread), Friction: dry}}})
		strong = append(strong, row{joint{Joint: fastener.Joint{Thread: t[0].(fastener.Thread), Friction: dry}, Class: "8.8"}})
	}
	oiled := joint{Joint: fastener.Joint{Thread: thread("3/8 BSF"), Friction: fastener.Oiled(), BearingOutside: mm(16), BearingHole: mm(10)}, Grade: "5"}
	weak := joint{Joint: fastener.Joint{Thread: thread("M8"), Friction: dry}}
	strong = append(strong, row{oiled}, row{weak}, row{joint{}})
	b.ask(fastener.TorqueFor, "joint, tension", cross(joints, each(units.Kilonewtons(5), units.Kilonewtons(-1))))
	b.ask(fastener.TensionFor, "joint, torque", cross(joints, each(newtonMetres(10), newtonMetres(-1))))
	kept := keep("stress_area", "proof_load", "limit", "limit_torque", "aim", "torque", "tension", "nut_factor", "reason", "do_up")
	b.ask(fastener.Tighten, "joint, options", cross(strong, each(fastener.TightenOptions{})), kept)
	b.ask(fastener.Tighten, "joint, options", cross(strong[:1], each(fastener.TightenOptions{OfProof: units.Percents(60)}, fastener.TightenOptions{OfYield: units.Percents(80)}, fastener.TightenOptions{OfProof: one(9)})), kept)
	for _, ask := range []func() fastener.Friction{fastener.Dry, fastener.Greased, fastener.Oiled} {
		b.ask(ask, "", []row{{}})
	}
	b.ask(fastener.SameFriction, "friction", each(one(0.12), one(0.2)))
	for _, ask := range []func() fastener.Material{fastener.BrassStock, fastener.CastIron, fastener.LightAlloy, fastener.MildSteel} {
		b.ask(ask, "", []row{{}})
	}
	b.ask(fastener.MaterialOf, "name, tensile", []row{{"bronze", megapascals(280)}, {"cast steel", megapascals(500)}})
	b.ask(fastener.UsualEngagement, "thread, material", cross(all, each(fastener.LightAlloy(), fastener.CastIron(), fastener.Material{Name: "butter"})))
	var engaged []row
	for _, t := range all {
		x := t[0].(fastener.Thread)
		engaged = append(engaged, row{fastener.Engaged{Thread: x, Length: x.Major(), BoltTensile: megapascals(800), Hole: fastener.LightAlloy()}})
	}
	engaged = append(engaged, row{fastener.Engaged{Thread: thread("M8"), Length: mm(3), BoltTensile: megapascals(800), Hole: fastener.MildSteel(), HoleMinor: mm(6.9)}}, row{fastener.Engaged{Thread: thread("M8"), Length: mm(8)}}, row{fastener.Engaged{Thread: thread("M8"), Length: mm(-8), BoltTensile: megapascals(800)}})
	b.ask(fastener.Strip, "engaged", engaged, keep("stress_area", "bolt_shear", "hole_shear", "bolt_breaks", "bolt_strips", "hole_strips", "first", "relative", "least", "reason"))
}

func mateCases(b *book) {
	var pairs []row
	for _, p := range [][2]string{{"1/4 BSF", "1/4-26 cycle"}, {"5/16 BSW", "5/16-18 UNC"}, {"1/4 BSF", "M6"}, {"1/4 BSF", "1/4 BSF"}, {"1/2 BSW", "1/2 UNC"}, {"M8", "M6"}} {
		pairs = append(pairs, row{thread(p[0]), thread(p[1])})
	}
	usual := each(fastener.MateOptions{})
	b.ask(fastener.Mate, "bolt, nut, length, options", append(cross(pairs, each(mm(8)), usual), cross(pairs[:2], each(mm(4), mm(-1)), each(fastener.MateOptions{Slack: mm(0.1)}))...))
	of := threads("1/4 BSF", "5/16 BSW", "M6", "2 BA")
	few := []fastener.Thread{thread("1/4-26 cycle"), thread("1/4 UNF"), thread("M6"), thread("5/16 BSF"), thread("5/16-18 UNC"), thread("0 BA"), thread("3/8 BSF"), thread("M8")}
	b.ask(fastener.TwinsOf, "thread, options", append(cross(of, each(twinAmong{}, twinAmong{TwinOptions: fastener.TwinOptions{Length: mm(12)}, Among: few})), row{fastener.Thread{}, twinAmong{}}))
	b.ask(fastener.StandInsFor, "thread, options", append(cross(of, each(standInAmong{}, standInAmong{StandInOptions: fastener.StandInOptions{Most: 2, Growth: mm(3)}, Among: few})), row{thread("M6"), standInAmong{StandInOptions: fastener.StandInOptions{Most: -1}}}))
}

func toolCases(b *book) {
	eras := noted("era 1 is before the war, 2 after it, 3 modern; 0 not known")
	b.ask(fastener.Hexagons, "thread, options", append(cross(threads("1/4 BSF", "3/8 BSW", "M10", "2 BA", "3/8-24 UNF"), each(fastener.HexOptions{}, fastener.HexOptions{Era: fastener.BeforeWar}, fastener.HexOptions{Era: fastener.AfterWar, Nut: true}, fastener.HexOptions{Era: fastener.Modern})), row{fastener.Thread{}, fastener.HexOptions{}}), eras)
	flats := each(mmOf(11.28, 0.02), mmOf(13, 0.05), mmOf(18.03, 0.1), mmOf(-1, 0.1))
	set := []fastener.Spanner{{Marking: "13 mm", Width: mm(13)}, {Marking: "1/2 AF", Width: mm(12.7)}}
	b.ask(fastener.SpannersFor, "flats, spanners, options", append(cross(flats, each([]fastener.Spanner(nil), set), each(fastener.FitOptions{})), row{flats[1][0], set, fastener.FitOptions{Allowance: mm(0.01)}}))
	b.ask(fastener.Spanners, "", []row{{}})
	b.ask(fastener.Fits.Best, "fits > best, fits", each(fastener.Fits{Fits: []fastener.SpannerFit{{Spanner: set[1], Grip: fastener.TooSmall}, {Spanner: set[0], Grip: fastener.Snug}}}, fastener.Fits{}))
}

// found is a stud by what was read on it.
type found struct {
	Readings fastener.Readings        `json:"readings"`
	Options  fastener.IdentifyOptions `json:"options"`
}

func (f found) make() (any, error) { return fastener.Identify(f.Readings, f.Options) }

func identifyCases(b *book) {
	read := func(major, pitch float64) fastener.Readings {
		return fastener.Readings{Major: measure.By(mm(major), measure.Caliper()), Pitch: measure.By(mm(pitch), measure.PitchGauge())}
	}
	left := read(7.88, 25.4/26)
	left.Hand, left.Part = fastener.Left, fastener.Bolt
	hole := fastener.Readings{Hole: mmOf(5.5, 0.05), Flank: rad(55, 2)}
	counted := fastener.Readings{Major: mmOf(9.4, 0.05), Count: fastener.Count{Pitches: ratioOf(10, 0.1), Over: mmOf(12.7, 0.3)}}
	all := each(read(6.30, 25.4/26), read(4.66, 0.81), read(7.88, 25.4/22), read(12, 1.0), left, hole, counted, fastener.Readings{Major: mmOf(6.3, 0.02)}, fastener.Readings{}, fastener.Readings{Major: mmOf(-6.3, 0.02)})
	b.ask(fastener.Identify, "readings, options", append(cross(all, each(fastener.IdentifyOptions{})), row{read(6.30, 25.4/26), fastener.IdentifyOptions{Wear: mm(0.3)}}), rel(loose))
	b.ask(fastener.Identification.Thread, "identification", each(found{Readings: read(6.30, 25.4/26)}, found{Readings: left}), seen(func(t fastener.Thread) any { return map[string]any{"name": t.Name(), "hand": t.Hand()} }))
}
