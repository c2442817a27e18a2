package fastener

import (
	"math"
	"strings"
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// bound is an end of what a function takes: the figure at is taken, the next
// machine number in the direction of to is refused, with the path of the field.
type bound struct {
	path   string
	at, to float64
	call   func(x float64) error
}

func holdBounds(t *testing.T, list []bound) {
	t.Helper()
	for _, b := range list {
		if err := b.call(b.at); err != nil {
			t.Errorf("%s: %v refused: %v", b.path, b.at, err)
		}
		past := math.Nextafter(b.at, b.to)
		if f := fault.Faults(b.call(past)); len(f) != 1 || f[0].Path != b.path || f[0].Rule == "" {
			t.Errorf("%s: %v gives %v", b.path, past, f)
		}
	}
}

var up, down = math.Inf(1), math.Inf(-1)

func TestBoundsOfReadings(t *testing.T) {
	identify := func(f func(r *Readings, o *IdentifyOptions, x float64)) func(x float64) error {
		return func(x float64) error {
			r, o := Readings{Major: measure.Exact(6 * units.Millimetre)}, IdentifyOptions{}
			f(&r, &o, x)
			_, err := Identify(r, o)
			return err
		}
	}
	mm := func(x float64) measure.Reading[units.Length] { return measure.Exact(units.Millimetres(x)) }
	number := func(x float64) measure.Reading[units.Ratio] { return measure.Exact(units.Value(x)) }
	major := identify(func(r *Readings, _ *IdentifyOptions, x float64) { r.Major = mm(x) })
	hole := identify(func(r *Readings, _ *IdentifyOptions, x float64) { r.Hole = mm(x) })
	pitch := identify(func(r *Readings, _ *IdentifyOptions, x float64) { r.Pitch = mm(x) })
	flank := identify(func(r *Readings, _ *IdentifyOptions, x float64) { r.Flank = measure.Exact(units.Degrees(x)) })
	// as many pitches as millimetres, so that the pitch is 1 mm
	pitches := identify(func(r *Readings, _ *IdentifyOptions, x float64) { r.Count = Count{number(x), mm(math.Round(x))} })
	over := identify(func(r *Readings, _ *IdentifyOptions, x float64) { r.Count = Count{number(1), mm(x)} })
	wear := identify(func(_ *Readings, o *IdentifyOptions, x float64) { o.Wear = units.Millimetres(x) })
	undercut := identify(func(_ *Readings, o *IdentifyOptions, x float64) { o.Undercut = units.Value(x) })
	holdBounds(t, []bound{
		{"major", 0.2, down, major}, {"major", 200, up, major},
		{"hole", 0.1, down, hole}, {"hole", 200, up, hole},
		{"pitch", 0.05, down, pitch}, {"pitch", 12, up, pitch},
		{"flank", 20, down, flank}, {"flank", 120, up, flank},
		{"count.pitches", 1, down, pitches}, {"count.pitches", 1000, up, pitches},
		{"count.over", 0.05, down, over}, {"count.over", 12, up, over},
		{"options.wear", 2, up, wear}, {"options.wear", 0, down, wear},
		{"options.undercut", 1, up, undercut}, {"options.undercut", 0, down, undercut},
	})
	for s, ok := range map[System]bool{Spoke: true, Spoke + 1: false} {
		err := identify(func(_ *Readings, o *IdentifyOptions, _ float64) { o.Weights = map[System]float64{s: 0.5} })(0)
		if (err == nil) != ok {
			t.Errorf("weight of system %d: %v", s, err)
		}
	}
}

func TestBoundsOfThreads(t *testing.T) {
	th := MustParse("M10")
	d := th.Major().Millimetres()
	of := func(major, pitch float64) error {
		_, err := Of("x", WhitworthForm, units.Millimetres(major), units.Millimetres(pitch))
		return err
	}
	tpi := func(x float64) error { _, err := TPI(x); return err }
	mate := func(length, slack float64) error {
		_, err := Mate(th, th, units.Millimetres(length), MateOptions{units.Millimetres(slack)})
		return err
	}
	twins := func(length, slack float64) error {
		_, err := TwinsOf(th, TwinOptions{Among: []Thread{th}, Length: units.Millimetres(length), MateOptions: MateOptions{units.Millimetres(slack)}})
		return err
	}
	instead := func(length, growth, slack float64) error {
		_, err := StandInsFor(th, StandInOptions{Among: []Thread{th}, Length: units.Millimetres(length), Growth: units.Millimetres(growth), MateOptions: MateOptions{units.Millimetres(slack)}})
		return err
	}
	engagement := func(x float64) error { _, err := TappingHole(th, units.Value(x), ChartDepth); return err }
	hole := func(x float64) error { _, err := Engagement(th, units.Millimetres(x), ChartDepth); return err }
	drill := func(x float64) error {
		_, err := TappingDrill(th, 1, ChartDepth, []Drill{{"x", units.Millimetres(x)}})
		return err
	}
	limits := func(x float64) error { _, err := th.Limits(units.Millimetres(x)); return err }
	least := math.SmallestNonzeroFloat64 // above zero, where zero is refused
	holdBounds(t, []bound{
		{"major", 0.2, down, func(x float64) error { return of(x, 0.05) }},
		{"major", 1000, up, func(x float64) error { return of(x, 1) }},
		{"pitch", 0.05, down, func(x float64) error { return of(10, x) }},
		{"pitch", 5, up, func(x float64) error { return of(10, x) }},
		{"threads per inch", 0.1, down, tpi}, {"threads per inch", 1e4, up, tpi},
		{"length", 0, down, func(x float64) error { return mate(x, 0) }},
		{"length", 10 * d, up, func(x float64) error { return mate(x, 0) }},
		{"options.slack", 0, down, func(x float64) error { return mate(0, x) }},
		{"options.slack", 2, up, func(x float64) error { return mate(0, x) }},
		{"options.length", 0, down, func(x float64) error { return twins(x, 0) }},
		{"options.length", 10 * d, up, func(x float64) error { return twins(x, 0) }},
		{"options.slack", 0, down, func(x float64) error { return twins(0, x) }},
		{"options.slack", 2, up, func(x float64) error { return twins(0, x) }},
		{"options.length", 0, down, func(x float64) error { return instead(x, 0, 0) }},
		{"options.length", 10 * d, up, func(x float64) error { return instead(x, 0, 0) }},
		{"options.growth", 0, down, func(x float64) error { return instead(0, x, 0) }},
		{"options.growth", 20, up, func(x float64) error { return instead(0, x, 0) }},
		{"options.slack", 0, down, func(x float64) error { return instead(0, 0, x) }},
		{"options.slack", 2, up, func(x float64) error { return instead(0, 0, x) }},
		{"engagement", 0.2, down, engagement}, {"engagement", 1, up, engagement},
		{"hole", least, down, hole}, {"hole", 1000, up, hole},
		{"set", least, down, drill}, {"set", 1000, up, drill},
		{"engaged", 0, down, limits}, {"engaged", 1000, up, limits},
	})
}

func TestBoundsOfSpanners(t *testing.T) {
	fits := func(flats, width, allowance float64) error {
		_, err := SpannersFor(measure.Exact(units.Millimetres(flats)), []Spanner{{"x", units.Millimetres(width)}}, FitOptions{units.Millimetres(allowance)})
		return err
	}
	holdBounds(t, []bound{
		{"flats", 2, down, func(x float64) error { return fits(x, 10, 0) }},
		{"flats", 150, up, func(x float64) error { return fits(x, 10, 0) }},
		{"set[0].width", math.SmallestNonzeroFloat64, down, func(x float64) error { return fits(10, x, 0) }},
		{"set[0].width", 1000, up, func(x float64) error { return fits(10, x, 0) }},
		{"options.allowance", 0, down, func(x float64) error { return fits(10, 10, x) }},
		{"options.allowance", 2, up, func(x float64) error { return fits(10, 10, x) }},
	})
	for era, ok := range map[Era]bool{Modern: true, Modern + 1: false} {
		if _, err := Hexagons(MustParse("M10"), HexOptions{Era: era}); (err == nil) != ok {
			t.Errorf("era %d: %v", era, err)
		}
	}
}

func TestBoundsOfJoints(t *testing.T) {
	th := MustParse("M10")
	d := th.Major().Millimetres()
	steel := Strength{Proof: 4e8, Yield: 5e8, Tensile: 6e8}
	joint := func(f func(j *Joint, x float64)) func(x float64) error {
		return func(x float64) error {
			j := Joint{Thread: th, Strength: steel, Friction: SameFriction(0.1)}
			f(&j, x)
			_, err := TorqueFor(j, units.Newtons(1))
			return err
		}
	}
	low := func(x float64) measure.Interval[units.Ratio] { return measure.Between(units.Value(x), 1) }
	high := func(x float64) measure.Interval[units.Ratio] { return measure.Between(0, units.Value(x)) }
	outside := joint(func(j *Joint, x float64) { j.BearingOutside = units.Millimetres(x) })
	hole := joint(func(j *Joint, x float64) { j.BearingHole = units.Millimetres(x) })
	effective := joint(func(j *Joint, x float64) { j.EffectiveDiameter = units.Millimetres(x) })
	tension := func(x float64) error { _, err := TorqueFor(Joint{Thread: th}, units.Newtons(x)); return err }
	torque := func(x float64) error { _, err := TensionFor(Joint{Thread: th}, units.NewtonMetres(x)); return err }
	tighten := func(proof, yield float64) error {
		_, err := Tighten(Joint{Thread: th, Strength: steel}, TightenOptions{units.Value(proof), units.Value(yield)})
		return err
	}
	holdBounds(t, []bound{
		{"friction.thread", 0, down, joint(func(j *Joint, x float64) { j.Friction.Thread = low(x) })},
		{"friction.thread", 1, up, joint(func(j *Joint, x float64) { j.Friction.Thread = high(x) })},
		{"friction.head", 0, down, joint(func(j *Joint, x float64) { j.Friction.Head = low(x) })},
		{"friction.head", 1, up, joint(func(j *Joint, x float64) { j.Friction.Head = high(x) })},
		{"bearing_outside", 0, down, outside}, {"bearing_outside", 500, up, outside},
		{"bearing_hole", 0, down, hole}, {"bearing_hole", 500, up, hole},
		{"effective_diameter", 0.5 * d, down, effective}, {"effective_diameter", d, up, effective},
		// a bearing of no width is none
		{"bearing_hole", math.Nextafter(16, 0), up, joint(func(j *Joint, x float64) {
			j.BearingOutside, j.BearingHole = units.Millimetres(16), units.Millimetres(x)
		})},
		{"strength", math.SmallestNonzeroFloat64, down, joint(func(j *Joint, x float64) { j.Strength.Proof = units.Pascals(x) })},
		{"strength", 4e8, down, joint(func(j *Joint, x float64) { j.Strength.Yield = units.Pascals(x) })},
		{"strength", 5e8, down, joint(func(j *Joint, x float64) { j.Strength.Tensile = units.Pascals(x) })},
		{"strength", 3e9, up, joint(func(j *Joint, x float64) { j.Strength.Tensile = units.Pascals(x) })},
		{"tension", 0, down, tension}, {"tension", 1e8, up, tension},
		{"torque", 0, down, torque}, {"torque", 1e7, up, torque},
		{"options.of_proof", 1, up, func(x float64) error { return tighten(x, 0) }},
		{"options.of_yield", 1, up, func(x float64) error { return tighten(0, x) }},
		{"options.of_proof", 0, down, func(x float64) error { return tighten(x, 0) }},
	})
	// a strength is known when all three figures are
	for _, s := range []Strength{{Proof: 1, Yield: 1}, {Proof: 1, Tensile: 1}, {Yield: 1, Tensile: 1}, {}} {
		if s.Known() {
			t.Errorf("%+v is known", s)
		}
	}
}

func TestBoundsOfEngagedThread(t *testing.T) {
	th := MustParse("M10")
	g, err := th.Geometry()
	if err != nil {
		t.Fatal(err)
	}
	d, root, depth := th.Major().Millimetres(), g.MinorBolt.Millimetres(), g.Depth.Millimetres()
	strip := func(f func(e *Engaged, x float64)) func(x float64) error {
		return func(x float64) error {
			e := Engaged{Thread: th, Length: th.Major(), BoltTensile: 8e8, Hole: MildSteel()}
			f(&e, x)
			_, err := Strip(e)
			return err
		}
	}
	length := strip(func(e *Engaged, x float64) { e.Length = units.Millimetres(x) })
	bolt := strip(func(e *Engaged, x float64) { e.BoltTensile = units.Pascals(x) })
	effective := strip(func(e *Engaged, x float64) { e.BoltEffectiveMin = units.Millimetres(x) })
	holdBounds(t, []bound{
		{"length", math.SmallestNonzeroFloat64, down, length}, {"length", 10 * d, up, length},
		{"bolt_tensile", 0, down, bolt}, {"bolt_tensile", 3e9, up, bolt},
		{"hole", 1e3, down, strip(func(e *Engaged, x float64) { e.Hole.Tensile.Low = units.Pascals(x) })},
		{"hole", 3e9, up, strip(func(e *Engaged, x float64) { e.Hole.Tensile.High = units.Pascals(x) })},
		{"bolt_effective_min", math.Nextafter(root, d), down, effective},
		{"bolt_effective_min", d + depth, up, effective},
		{"hole_minor", 9.5, up, strip(func(e *Engaged, x float64) {
			e.BoltMajorMin, e.HoleMinor = units.Millimetres(math.Nextafter(9.5, 10)), units.Millimetres(x)
		})},
	})
}

func TestBoundsOfGaugesAndNames(t *testing.T) {
	for _, g := range []Gauge{SWG, NumberDrill, LetterDrill} {
		first, last := g.Ends()
		at := func(x float64) error { _, err := g.At(x); return err }
		number := func(x float64) error { _, err := g.Number(units.Millimetres(x)); return err }
		nearest := func(x float64) error { _, _, err := g.Nearest(units.Millimetres(x)); return err }
		second, _ := g.At(first.Number + 1)
		before, _ := g.At(last.Number - 1)
		// half a step beyond either end
		a := (first.Diameter + (first.Diameter - second).Times(0.5)).Millimetres()
		b := (last.Diameter + (last.Diameter - before).Times(0.5)).Millimetres()
		small, large := first.Diameter.Millimetres(), last.Diameter.Millimetres()
		holdBounds(t, []bound{
			{"number", first.Number, down, at}, {"number", last.Number, up, at},
			{"diameter", min(small, large), down, number}, {"diameter", max(small, large), up, number},
			{"diameter", min(a, b), down, nearest}, {"diameter", max(a, b), up, nearest},
		})
	}
	for n, code := range map[int]fault.Code{64: fault.UnknownName, 65: fault.BadForm} {
		_, err := Parse(strings.Repeat("x", n))
		if f := fault.Faults(err); len(f) != 1 || f[0].Code != code {
			t.Errorf("%d letters: %v", n, err)
		}
	}
}
