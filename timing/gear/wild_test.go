package gear_test

import (
	"math"
	"reflect"
	"testing"

	"example.com/benchbook/timing/gear"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
	"pgregory.net/rapid"
)

// Nothing a caller passes causes a panic or a NaN.
func TestWildFigures(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := func(name string) units.Length { return units.Millimetres(wild(t, name)) }
		deg := func(name string) units.Angle { return units.Degrees(wild(t, name)) }
		z := func(name string) int {
			return rapid.SampledFrom([]int{-1, 0, 1, 2, 3, 17, 40, 99_999, 1<<31 - 1}).Draw(t, name)
		}
		w := gear.Wheel{Teeth: z("z"), Module: mm("m"), Pressure: deg("a"), Helix: deg("b"), Shift: wild(t, "x"), Addendum: wild(t, "h"), Dedendum: wild(t, "f"), Face: mm("face")}
		if rapid.Bool().Draw(t, "plain") {
			w = gear.Wheel{Teeth: w.Teeth, Module: w.Module}
		}
		v := w
		v.Teeth = z("z2")
		g, err := w.Geometry()
		finite(t, "geometry", err, g)
		s, err := w.Span(rapid.IntRange(-1, 20).Draw(t, "k"))
		finite(t, "span", err, s)
		o, err := w.OverPins(mm("pin"))
		finite(t, "pins", err, o)
		m := gear.Meshing{Pinion: w, Wheel: v, Ring: rapid.Bool().Draw(t, "ring"), Centre: mm("centre")}
		c, err := m.Contact()
		finite(t, "contact", err, c)
		sl, err := m.SlideSpeeds(units.RadiansPerSecond(wild(t, "n")))
		finite(t, "sliding", err, sl)
		h, err := m.AddendumForArc(wild(t, "arc"))
		finite(t, "addendum", err, h)
		ad, err := m.AddendaForPart(wild(t, "part"))
		finite(t, "addenda", err, ad)
		n, exact, err := gear.LeastTeeth(deg("a"), wild(t, "g"), wild(t, "h"))
		finite(t, "least teeth", err, n, exact)
		under, over, err := gear.TeethFor(mm("c"), mm("m"), gear.NewRational(int64(z("p")), int64(z("q"))))
		finite(t, "teeth", err, under, over)
		x, err := gear.CrossedFor(mm("c"), mm("d"), deg("s"), wild(t, "g"), z("t"))
		finite(t, "crossed", err, x)
		l, err := gear.Load(units.NewtonMetres(wild(t, "T")), mm("d"), deg("a"), deg("b"))
		finite(t, "load", err, l)
		tr := gear.Simple(z("a"), z("b")).Then(z("c"), z("d"))
		worth, err := tr.ToothWorth(z("mesh"))
		finite(t, "worth", err, worth)
		marks, err := tr.MarksMeet()
		finite(t, "marks", err, marks)
		d, err := tr.Drive(units.RadiansPerSecond(wild(t, "w")), units.NewtonMetres(wild(t, "T")), wild(t, "e"))
		finite(t, "drive", err, d)
		lost, err := tr.LostMotion(gear.Slack{Backlash: measure.Of(mm("j"), mm("u")), Module: mm("m")}, gear.Slack{})
		finite(t, "lost motion", err, lost)
		e, err := gear.EpicyclicOf(tr)
		if err == nil {
			a, err := e.Arm(units.RadiansPerSecond(wild(t, "1")), units.RadiansPerSecond(wild(t, "2")))
			finite(t, "arm", err, a)
			q, err := e.Torques(units.NewtonMetres(wild(t, "T")))
			finite(t, "torques", err, q)
		}
		k, err := gear.Keyed{Teeth: z("z"), Keyways: z("k") % 1000}.Nearest(deg("want"))
		finite(t, "keyed", err, k)
		vn, err := gear.Vernier{Wheel: z("p"), Flange: z("q")}.Nearest(deg("want"))
		finite(t, "vernier", err, vn)
		hel := gear.Helical{Teeth: z("z"), Module: mm("m"), Helix: deg("b")}
		turn, err := hel.Shifted(mm("by"))
		finite(t, "shifted", err, turn)
		shim, err := hel.ShimFor(deg("by"))
		finite(t, "shim", err, shim)
		id, err := gear.Identify(gear.Found{Teeth: z("z"), Tip: measure.Of(mm("tip"), mm("u")), Span: measure.Of(mm("span"), mm("u")), Helix: deg("b")}, gear.IdentifyOptions{Shift: wild(t, "s"), Thinning: mm("th")})
		finite(t, "identify", err, id.Sizes, id.Base, id.Module)
	})
}

// wild are figures no caller should pass, among some that one might.
func wild(t *rapid.T, name string) float64 {
	return rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, -1, 1e-300, 1e300, -1e300, 5e-324, 0.2, 1, 3, 8, 15, 20, 40, 60, 89, 150, 400}).Draw(t, name)
}

// finite fails on a result given without an error that holds a figure that is not a
// number.
func finite(t *rapid.T, what string, err error, results ...any) {
	if err != nil {
		for _, f := range fault.Faults(err) {
			if f.Code == "" || f.Rule == "" {
				t.Fatalf("%s: a fault without code or rule: %+v", what, f)
			}
		}
		return
	}
	var walk func(v reflect.Value, path string)
	walk = func(v reflect.Value, path string) {
		switch v.Kind() {
		case reflect.Float64:
			if x := v.Float(); x-x != 0 {
				t.Fatalf("%s: %s is %g", what, path, x)
			}
		case reflect.Struct:
			for i := range v.NumField() {
				walk(v.Field(i), path+"."+v.Type().Field(i).Name)
			}
		case reflect.Slice, reflect.Array:
			for i := range v.Len() {
				walk(v.Index(i), path+"[]")
			}
		case reflect.Pointer, reflect.Interface:
			if !v.IsNil() && v.Kind() == reflect.Interface {
				walk(v.Elem(), path)
			}
		}
	}
	for _, r := range results {
		walk(reflect.ValueOf(r), what)
	}
}
