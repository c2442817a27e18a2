package timing

import (
	"math"
	"strings"
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// The chance that a normal amount lies outside a limit: tails of the normal table, and
// an exact amount by where it is.
func TestOutside(t *testing.T) {
	for _, c := range []struct{ mean, sd, limit, want float64 }{
		{0, 1, 1, 0.317310508}, {0, 3, 3, 0.317310508}, {1, 1, 1, 0.5 + 0.022750132}, {-1, 1, 1, 0.5 + 0.022750132},
		{20, 1, 1, 1}, {0, 1, 20, 0}, {3, 0, 3, 1}, {-3, 0, 3, 1}, {2.9, 0, 3, 0}, {3.1, 0, 3, 1}, {0, 0, 3, 0},
	} {
		if got := outside(c.mean, c.sd, c.limit); !(math.Abs(got-c.want) <= 1e-9) { // digits of the table
			t.Errorf("%+v: %v", c, got)
		}
	}
}

// An amount of the exhaust cam stands next to the inlet's, so what may be wrong with
// one cam is, for the other, the same a place further.
func TestExhaustAmountsFollowInlet(t *testing.T) {
	for _, keyed := range []bool{false, true} {
		e := Engine{
			Drive:   TwoCamwheels(24, 48),
			Inlet:   Lobe{Opens: units.After(units.TDC, -25*units.CrankDegree), Closes: units.After(units.BDC, 65*units.CrankDegree)},
			Exhaust: Lobe{Opens: units.After(units.BDC, -65*units.CrankDegree), Closes: units.After(units.TDC, 25*units.CrankDegree)},
		}
		if keyed {
			e.Inlet.KeyAngle = measure.Of(20*units.CamDegree, units.CamDegree)
			e.Exhaust.KeyAngle = e.Inlet.KeyAngle
		}
		all := map[string]atom{}
		opt := Options{}.filled()
		list, err := newSheet(&Input{Engine: e}, &opt).atoms()
		if err != nil {
			t.Fatal(err)
		}
		for _, a := range list {
			all[a.key] = a
		}
		compared := 0
		for key, in := range all {
			rest, ok := strings.CutPrefix(key, "inlet-")
			if !ok {
				continue
			}
			ex, ok := all["exhaust-"+rest]
			if !ok || len(in.ways) != len(ex.ways) || in.prior != ex.prior {
				t.Errorf("%s: no such exhaust", key)
				continue
			}
			for i, v := range in.ways {
				w, judge := ex.ways[i], v.judge
				if judge >= 0 {
					judge++
				}
				if w.mask != v.mask<<1 || w.judge != judge || w.share != v.share || w.far != v.far || w.fixed[rowWheel+1] != v.fixed[rowWheel] || v.fixed[rowWheel+1] != 0 || w.fixed[rowWheel] != 0 {
					t.Errorf("%s: %+v, exhaust %+v", key, v, w)
				}
			}
			compared++
		}
		if compared < 8 {
			t.Errorf("only %d compared", compared)
		}
		if got := all["exhaust-reversed"].ways[0].fixed[rowWheel+1]; keyed && got != -80 { // twice 20° of cam, late
			t.Errorf("on its wheel %v", got)
		}
	}
}

// Teeth are listed to less than half a turn, keyways to half of them, and a camshaft
// in one piece with its wheel does not turn on it.
func TestStepsThatAreListed(t *testing.T) {
	keys := func(e Engine) map[string]bool {
		e.Inlet = Lobe{Opens: units.After(units.TDC, -25*units.CrankDegree), Closes: units.After(units.BDC, 65*units.CrankDegree)}
		e.Exhaust = Lobe{Opens: units.After(units.BDC, -65*units.CrankDegree), Closes: units.After(units.TDC, 25*units.CrankDegree)}
		opt := Options{}.filled()
		list, err := newSheet(&Input{Engine: e}, &opt).atoms()
		if err != nil {
			t.Fatal(err)
		}
		all := map[string]bool{}
		for _, a := range list {
			all[a.key] = true
		}
		return all
	}
	coarse := keys(Engine{Drive: TwoCamwheels(6, 12), Keyways: 4}) // a tooth is 60°
	for key, want := range map[string]bool{
		"inlet-wheel:+1": true, "inlet-wheel:-2": true, "inlet-wheel:+2": true, "inlet-wheel:+3": false, "exhaust-wheel:-3": false,
		"pinion-keyway:+1": true, "pinion-keyway:-2": true, "pinion-keyway:+3": false, "pinion-keyway:-3": false,
	} {
		if coarse[key] != want {
			t.Errorf("%s: %v, want %v", key, coarse[key], want)
		}
	}
	one := Engine{Drive: OneCamwheel(24, 48)}
	if !keys(one)["camshaft-slip"] {
		t.Error("a camshaft cannot slip")
	}
	one.InletFixing = OnePiece
	if keys(one)["camshaft-slip"] {
		t.Error("a camshaft in one piece slips")
	}
}
