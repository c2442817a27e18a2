package gear_test

import (
	"testing"

	"example.com/benchbook/timing/gear"
	"example.com/benchbook/timing/internal/wild"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
	"pgregory.net/rapid"
)

// Nothing a caller passes causes a panic or a NaN.
func TestWildFigures(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := func(name string) units.Length { return units.Millimetres(wild.Figure(t, name)) }
		deg := func(name string) units.Angle { return units.Degrees(wild.Figure(t, name)) }
		z := func(name string) int {
			return rapid.SampledFrom([]int{-1, 0, 1, 2, 3, 17, 40, 99_999, 1<<31 - 1}).Draw(t, name)
		}
		w := gear.Wheel{Teeth: z("z"), Module: mm("m"), Pressure: deg("a"), Helix: deg("b"), Shift: wild.Figure(t, "x"), Addendum: wild.Figure(t, "h"), Dedendum: wild.Figure(t, "f"), Face: mm("face")}
		if rapid.Bool().Draw(t, "plain") {
			w = gear.Wheel{Teeth: w.Teeth, Module: w.Module}
		}
		v := w
		v.Teeth = z("z2")
		g, err := w.Geometry()
		wild.Finite(t, "geometry", err, g)
		s, err := w.Span(rapid.IntRange(-1, 20).Draw(t, "k"))
		wild.Finite(t, "span", err, s)
		o, err := w.OverPins(mm("pin"))
		wild.Finite(t, "pins", err, o)
		m := gear.Meshing{Pinion: w, Wheel: v, Ring: rapid.Bool().Draw(t, "ring"), Centre: mm("centre")}
		c, err := m.Contact()
		wild.Finite(t, "contact", err, c)
		sl, err := m.SlideSpeeds(units.RadiansPerSecond(wild.Figure(t, "n")))
		wild.Finite(t, "sliding", err, sl)
		h, err := m.AddendumForArc(wild.Figure(t, "arc"))
		wild.Finite(t, "addendum", err, h)
		ad, err := m.AddendaForPart(wild.Figure(t, "part"))
		wild.Finite(t, "addenda", err, ad)
		n, exact, err := gear.LeastTeeth(deg("a"), wild.Figure(t, "g"), wild.Figure(t, "h"))
		wild.Finite(t, "least teeth", err, n, exact)
		under, over, err := gear.TeethFor(mm("c"), mm("m"), gear.NewRational(int64(z("p")), int64(z("q"))))
		wild.Finite(t, "teeth", err, under, over)
		x, err := gear.CrossedFor(mm("c"), mm("d"), deg("s"), wild.Figure(t, "g"), z("t"))
		wild.Finite(t, "crossed", err, x)
		l, err := gear.Load(units.NewtonMetres(wild.Figure(t, "T")), mm("d"), deg("a"), deg("b"))
		wild.Finite(t, "load", err, l)
		tr := gear.Simple(z("a"), z("b")).Then(z("c"), z("d"))
		worth, err := tr.ToothWorth(z("mesh"))
		wild.Finite(t, "worth", err, worth)
		marks, err := tr.MarksMeet()
		wild.Finite(t, "marks", err, marks)
		d, err := tr.Drive(units.RadiansPerSecond(wild.Figure(t, "w")), units.NewtonMetres(wild.Figure(t, "T")), wild.Figure(t, "e"))
		wild.Finite(t, "drive", err, d)
		held, err := gear.HoldTorque(units.Watts(wild.Figure(t, "P")), units.RadiansPerSecond(wild.Figure(t, "in")), units.RadiansPerSecond(wild.Figure(t, "out")), wild.Figure(t, "eta"))
		wild.Finite(t, "held", err, held)
		lost, err := tr.LostMotion(gear.Slack{Backlash: measure.Of(mm("j"), mm("u")), Module: mm("m")}, gear.Slack{})
		wild.Finite(t, "lost motion", err, lost)
		e, err := gear.EpicyclicOf(tr)
		if err == nil {
			a, err := e.Arm(units.RadiansPerSecond(wild.Figure(t, "1")), units.RadiansPerSecond(wild.Figure(t, "2")))
			wild.Finite(t, "arm", err, a)
			q, err := e.Torques(units.NewtonMetres(wild.Figure(t, "T")))
			wild.Finite(t, "torques", err, q)
		}
		k, err := gear.Keyed{Teeth: z("z"), Keyways: z("k") % 1000}.Nearest(deg("want"))
		wild.Finite(t, "keyed", err, k)
		vn, err := gear.Vernier{Wheel: z("p"), Flange: z("q")}.Nearest(deg("want"))
		wild.Finite(t, "vernier", err, vn)
		hel := gear.Helical{Teeth: z("z"), Module: mm("m"), Helix: deg("b")}
		turn, err := hel.Shifted(mm("by"))
		wild.Finite(t, "shifted", err, turn)
		shim, err := hel.ShimFor(deg("by"))
		wild.Finite(t, "shim", err, shim)
		id, err := gear.Identify(gear.Found{Teeth: z("z"), Tip: measure.Of(mm("tip"), mm("u")), Span: measure.Of(mm("span"), mm("u")), Helix: deg("b")}, gear.IdentifyOptions{Shift: wild.Figure(t, "s"), Thinning: mm("th")})
		wild.Finite(t, "identify", err, id.Sizes, id.Base, id.Module)
	})
}
