package gear_test

import (
	"math"
	"strings"
	"testing"

	"example.com/benchbook/timing/gear"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// refused is the path of the one fault of an error; "" if there is none.
func refused(t *testing.T, err error) string {
	t.Helper()
	f := fault.Faults(err)
	if len(f) == 0 {
		return ""
	}
	if len(f) > 1 {
		t.Errorf("%d faults: %v", len(f), err)
	}
	return f[0].Path
}

// second is the error of a call.
func second[T any](_ T, err error) error { return err }

type limit struct {
	name string
	err  error
	path string // "": taken
}

func hold(t *testing.T, limits []limit) {
	t.Helper()
	for _, c := range limits {
		if got := refused(t, c.err); got != c.path {
			t.Errorf("%s: refused at %q, want %q: %v", c.name, got, c.path, c.err)
		}
	}
}

// up and down are the next figures.
func up(x float64) float64   { return math.Nextafter(x, math.Inf(1)) }
func down(x float64) float64 { return math.Nextafter(x, math.Inf(-1)) }

// What stands at a documented limit of a wheel is taken, what stands past it refused.
func TestWheelLimits(t *testing.T) {
	wheel := func(change func(*gear.Wheel)) error {
		w := gear.Wheel{Teeth: 20, Module: 2}
		change(&w)
		return w.Err()
	}
	pressure := func(a float64) error { return wheel(func(w *gear.Wheel) { w.Pressure = units.Degrees(a) }) }
	helix := func(b units.Angle) error { return wheel(func(w *gear.Wheel) { w.Helix = b }) }
	shift := func(x float64) error { return wheel(func(w *gear.Wheel) { w.Shift = x }) }
	addendum := func(h float64) error { return wheel(func(w *gear.Wheel) { w.Addendum = h }) }
	dedendum := func(h float64) error { return wheel(func(w *gear.Wheel) { w.Dedendum = h }) }
	teeth := func(z int) error { return wheel(func(w *gear.Wheel) { w.Teeth = z }) }
	module := func(m units.Length) error { return wheel(func(w *gear.Wheel) { w.Module = m }) }
	pico := units.FromSI[units.Length](1e-12)
	hold(t, []limit{
		{"5°", pressure(5), ""}, {"less", pressure(down(5)), "pressure"}, {"35°", pressure(35), ""}, {"more", pressure(up(35)), "pressure"},
		{"60° of helix", helix(60), ""}, {"of the other hand", helix(-60), ""}, {"more", helix(units.Degrees(up(60))), "helix"},
		// A lead, about 6 mm over the sine of the helix, that is still a number, and one
		// that is not.
		{"hardly a helix", helix(units.Radians(1e-300)), ""}, {"none that can be told", helix(units.Radians(1e-307)), "helix"},
		{"a shift of 2", shift(2), ""}, {"of more", shift(up(2)), "shift"}, {"of -2", shift(-2), ""}, {"of less", shift(down(-2)), "shift"},
		{"an addendum of 4", addendum(4), ""}, {"of more", addendum(up(4)), "addendum"}, {"of less than none", addendum(-1e-9), "addendum"},
		{"a dedendum of 4", dedendum(4), ""}, {"of more", dedendum(up(4)), "dedendum"},
		{"two teeth", teeth(2), ""}, {"one", teeth(1), "teeth"}, {"100000", teeth(100_000), ""}, {"more", teeth(100_001), "teeth"},
		{"a module of a picometre", module(pico), ""}, {"of less", module(pico.Times(0.999)), "module"},
		{"a span over one tooth", second(gear.Wheel{Teeth: 20, Module: 2}.Span(1)), ""}, {"over less", second(gear.Wheel{Teeth: 20, Module: 2}.Span(-1)), "k"},
		{"over all but one", second(gear.Wheel{Teeth: 20, Module: 2}.Span(19)), ""}, {"over all", second(gear.Wheel{Teeth: 20, Module: 2}.Span(20)), "k"},
	})
}

// The same of trains and of text that holds them.
func TestTrainLimits(t *testing.T) {
	one := gear.Simple(20, 40)
	two := gear.Simple(100_000, 2)
	text := func(s string) error { return second(gear.ParseTrain(s)) }
	drive := func(eff float64) error { return second(one.Drive(1, 1, eff)) }
	hold(t, []limit{
		{"2 and 100000 teeth", two.Err(), ""}, {"one tooth", gear.Simple(1, 20).Err(), "train[0].driver"}, {"too many", gear.Simple(20, 100_001).Err(), "train[0].driven"},
		{"the spindle before all", second(one.RatioAt(0)), ""}, {"after all", second(one.RatioAt(1)), ""}, {"no spindle", second(one.RatioAt(2)), "mesh"}, {"none either", second(one.RatioAt(-1)), "mesh"},
		{"the first mesh", second(one.ToothWorth(0)), ""}, {"no mesh", second(one.ToothWorth(1)), "mesh"}, {"none either", second(one.ToothWorth(-1)), "mesh"},
		{"six digits", text("100000:050000"), ""}, {"seven", text("0000024:48"), "train"},
		{"1000 letters", text("24:48" + strings.Repeat(" ", 995)), ""}, {"more", text("24:48" + strings.Repeat(" ", 996)), "train"},
		{"nothing lost", drive(1), ""}, {"gained", drive(up(1)), "efficiency"}, {"less than nothing left", drive(-1e-9), "efficiency"},
	})
	if one.Pair(0).Driven != 40 || one.Pair(1) != (gear.Pair{}) || one.Pair(-1) != (gear.Pair{}) {
		t.Error(one.Pair(0), one.Pair(1))
	}
	for want, err := range map[string]error{
		"mesh: 2: the train has meshes 0 to 1":  second(one.RatioAt(2)), // a spindle more than meshes
		"mesh: 1: the train has meshes 0 to 0":  second(one.ToothWorth(1)),
		"mesh: -1: the train has meshes 0 to 0": second(one.ToothWorth(-1)),
	} {
		if err == nil || err.Error() != want {
			t.Errorf("%v, want %s", err, want)
		}
	}
}

// The same of what turns wheels on their spindles.
func TestPhaseLimits(t *testing.T) {
	keyed := func(teeth, keyways int, offsets ...gear.Rational) error {
		return second(gear.Keyed{Teeth: teeth, Keyways: keyways, Offsets: offsets}.Settings())
	}
	q := gear.NewRational
	k, v := gear.Keyed{Teeth: 40, Keyways: 3}, gear.Vernier{Wheel: 11, Flange: 12}
	hold(t, []limit{
		{"two teeth", keyed(2, 1), ""}, {"one", keyed(1, 1), "teeth"}, {"100000", keyed(100_000, 1), ""}, {"more", keyed(100_001, 1), "teeth"},
		{"1000 keyways", keyed(20, 1000), ""}, {"more", keyed(20, 1001), "keyways"}, {"none", keyed(20, 0), "keyways"},
		{"both ways given", keyed(20, 3, q(0, 1), q(100, 1)), "keyways"}, {"offsets", keyed(20, 0, q(0, 1), q(100, 1)), ""},
		{"a whole turn", keyed(20, 0, q(360, 1)), ""}, {"back", keyed(20, 0, q(-360, 1)), ""}, {"more", keyed(20, 0, q(0, 1), q(361, 1)), "offsets[1]"},
		{"a millionth", keyed(20, 0, q(1, 1_000_000)), ""}, {"finer", keyed(20, 0, q(1, 1_000_001)), "offsets[0]"},
		{"no one step", second(gear.Keyed{Teeth: 20, Offsets: []gear.Rational{q(0, 1)}}.Step()), "offsets"},
		{"a turn wanted", second(k.Nearest(360)), ""}, {"more", second(k.Nearest(units.Degrees(up(360)))), "want"}, {"a turn back", second(k.Nearest(-360)), ""},
		{"of a vernier", second(v.Nearest(360)), ""}, {"more", second(v.Nearest(units.Degrees(up(360)))), "want"}, {"a turn back", second(v.Nearest(-360)), ""},
		{"10000 holes", second(gear.Vernier{Wheel: 10_000, Flange: 1}.Step()), ""}, {"more", second(gear.Vernier{Wheel: 1, Flange: 10_001}.Step()), "holes"},
	})
}

// The same of helical wheels, backlash and loads.
func TestToothLimits(t *testing.T) {
	helical := func(b float64) error {
		return second(gear.Helical{Teeth: 20, Module: 2, Helix: units.Degrees(b)}.Shifted(1))
	}
	moved := func(by units.Length) error {
		return second(gear.Helical{Teeth: 20, Module: 2, Helix: 20}.Shifted(by))
	}
	normal := func(a, b float64) error { return second(gear.Normal(1, units.Degrees(a), units.Degrees(b))) }
	opened := func(a float64) error { return second(gear.BacklashOpened(1, units.Degrees(a))) }
	load := func(a, b float64) error { return second(gear.Load(1, 100, units.Degrees(a), units.Degrees(b))) }
	least := func(a, g, h float64) error {
		_, _, err := gear.LeastTeeth(units.Degrees(a), g, h)
		return err
	}
	held := func(p, in, eff float64) error {
		return second(gear.HoldTorque(units.Watts(p), units.RadiansPerSecond(in), 1, eff))
	}
	crossed := func(d2, shafts, g float64) error {
		return second(gear.CrossedFor(100, units.Millimetres(d2), units.Degrees(shafts), g, 20))
	}
	slack := func(j, m float64) error {
		return second(gear.Simple(20, 40).LostMotion(gear.Slack{Backlash: measure.Exact(units.Millimetres(j)), Module: units.Millimetres(m)}))
	}
	hold(t, []limit{
		{"a tenth of a degree", helical(0.1), ""}, {"less", helical(down(0.1)), "helix"}, {"below 80°", helical(down(80)), ""}, {"80°", helical(80), "helix"},
		{"moved by 1e12 m", moved(units.Metres(1e12)), ""}, {"by more", moved(units.Metres(1.001e12)), "by"},
		{"no pressure angle", normal(0, 0), "pressure"}, {"hardly any", normal(1e-9, 0), ""}, {"below 45°", normal(down(45), 0), ""}, {"45°", normal(45, 0), "pressure"},
		{"a helix below 80°", normal(20, -down(80)), ""}, {"of 80°", normal(20, 80), "pressure"},
		{"opened at no angle", opened(0), "working"}, {"at hardly any", opened(1e-9), ""}, {"below 45°", opened(down(45)), ""}, {"at 45°", opened(45), "working"},
		{"loaded at no angle", load(0, 0), "pressure"}, {"at hardly any", load(1e-9, 0), ""}, {"below 45°", load(down(45), 0), ""}, {"at 45°", load(45, 0), "pressure"},
		{"a helix below 80°", load(20, -down(80)), ""}, {"of 80°", load(20, 80), "pressure"},
		{"5°", least(5, 1, 1), ""}, {"less", least(down(5), 1, 1), "ratio"}, {"35°", least(35, 1, 1), ""}, {"more", least(up(35), 1, 1), "ratio"},
		{"no addendum", least(20, 1, 0), "ratio"}, {"hardly any", least(20, 1, 1e-9), ""}, {"4 modules", least(20, 1, 4), ""}, {"more", least(20, 1, up(4)), "ratio"}, {"below one to one", least(20, down(1), 1), "ratio"},
		{"no power", held(0, 1, 1), ""}, {"less", held(-1e-9, 1, 1), "power"}, {"nothing lost", held(1, 1, 1), ""}, {"gained", held(1, 1, up(1)), "efficiency"},
		{"losses not named", held(1, 1, 0), ""}, {"less than nothing left", held(1, 1, -1e-9), "efficiency"}, {"a turn in two centuries", held(1, 1e-9, 1), ""}, {"slower", held(1, down(1e-9), 1), "in"},
		{"square", crossed(100, 90, 1), ""}, {"wider", crossed(100, up(90), 1), "shafts"}, {"parallel", crossed(100, 0, 1), "shafts"}, {"hardly crossed", crossed(100, 1e-3, 1), ""},
		{"no ratio", crossed(100, 90, 0), "ratio"}, {"no room for the first", crossed(200, 90, 1), "diameter2"}, {"less", crossed(300, 90, 1), "diameter2"}, {"hardly any", crossed(199, 90, 1), ""},
		{"no slack", slack(0, 2), ""}, {"less", slack(-1e-9, 2), "slack.backlash"}, {"no module", slack(0.1, 0), "slack.module"},
	})
}

// The same of pairs of wheels.
func TestMeshLimits(t *testing.T) {
	pair := func(z1, z2 int, m1, m2 float64, ring bool) gear.Meshing {
		return gear.Meshing{Pinion: gear.Wheel{Teeth: z1, Module: mm(m1)}, Wheel: gear.Wheel{Teeth: z2, Module: mm(m2)}, Ring: ring}
	}
	base := func(x float64) error { // base circles that touch: no angle to work at
		m := pair(20, 20, 2, 2, false)
		m.Centre = mm(40 * math.Cos(units.Degrees(20).SI()) * x)
		return second(m.Contact())
	}
	part := func(p float64) error { return second(pair(20, 40, 2, 2, false).AddendaForPart(p)) }
	arc := func(p float64) error { return second(pair(20, 40, 2, 2, false).AddendumForArc(p)) }
	modules := func(m1, m2 float64) error { return second(pair(20, 40, m1, m2, false).AddendaForPart(0.5)) }
	ring := func(z int) error { return second(pair(20, z, 2, 2, true).AddendumForArc(1)) }
	ratio := func(p, q int64) error {
		_, _, err := gear.TeethFor(1, 1, gear.NewRational(p, q))
		return err
	}
	centre := func(k float64) error {
		_, _, err := gear.TeethFor(mm(k), 1, gear.NewRational(1, 1))
		return err
	}
	span := func(sun, annulus int64) error {
		return second(gear.PlanetaryFor(gear.NewRational(annulus, sun).Plus(gear.NewRational(1, 1)), int(annulus)))
	}
	hold(t, []limit{
		{"base circles that touch", base(1), "centre"}, {"closer", base(0.99), "centre"},
		// A thousand million and one part more, figures exact in binary.
		{"modules a part in 1e9 apart", modules(1e9, 1e9+1), ""}, {"two parts", modules(1e9, 1e9+2), "wheel.module"},
		{"arcs in a ring of one tooth more", ring(21), "ring"}, {"in one of as many", ring(20), "wheel.teeth"},
		{"no part of the greatest", part(0), "part"}, {"hardly any", part(1e-6), ""}, {"all of it", part(1), ""}, {"more", part(up(1)), "part"},
		{"no arc", arc(0), "pitches"}, {"less", arc(-1), "pitches"}, {"an arc out of reach", arc(10), "pitches"}, {"endless", arc(math.Inf(1)), "pitches"}, {"no number", arc(math.NaN()), "pitches"},
		{"no ratio", ratio(0, 1), "ratio"}, {"100000 to 99999", ratio(100_000, 99_999), ""}, {"99999 to 100000", ratio(99_999, 100_000), ""}, {"more", ratio(100_001, 1), "ratio"}, {"less", ratio(1, 100_001), "ratio"},
		{"wheels of 99999 and of 100000", centre(99_999), ""}, {"of more", centre(100_000), "centre"},
		{"a sun of two and planets of two", span(2, 6), ""}, {"planets of one", span(4, 6), "ratio"}, {"of none", span(6, 6), "ratio"}, {"of less", span(8, 6), "ratio"}, {"a sun of one", span(1, 5), "ratio"},
		{"halves of teeth", span(15, 60), "ratio"}, {"an annulus of 100000", span(50_000, 100_000), ""}, {"of more", span(50_000, 100_002), "ratio"},
	})
	if (gear.Planetary{Sun: 14, Planet: 21, Annulus: 56}).Assembles(0) {
		t.Error("no planets assemble")
	}
}
