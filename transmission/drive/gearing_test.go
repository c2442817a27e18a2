package drive_test

import (
	"encoding/json"
	"math"
	"math/big"
	"testing"

	"example.com/benchbook/transmission/drive"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
	"pgregory.net/rapid"
)

// near fails if got is further than rel from want.
func near(t *testing.T, what string, got, want, rel float64) {
	t.Helper()
	if !(math.Abs(got-want) <= rel*math.Abs(want)) {
		t.Errorf("%s: got %.8g, want %.8g within %g", what, got, want, rel)
	}
}

type failer interface {
	Helper()
	Fatal(...any)
}

func ok[T any](v T, err error) func(t failer) T {
	return func(t failer) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

// Khurmi & Gupta, Theory of Machines, 2009, ex. 13.1: 975 rev/min through
// 20/50, 25/75 and 26/65 leaves 52 rev/min, exactly.
func TestCompoundTrain(t *testing.T) {
	r := ok(drive.Train{{20, 50}, {25, 75}, {26, 65}}.Ratio())(t)
	if want := ok(drive.NewRatio(75, 4))(t); r != want {
		t.Errorf("%v, want %v", r, want)
	}
	near(t, "last shaft", 975/r.Float(), 52, 1e-15)
}

// Jindal, Machine Design, 2010, ex. 29-2.
func TestThreeSpeedLayshaft(t *testing.T) {
	b := ok(drive.NewLayshaft(drive.Layshaft{
		Constant: drive.Pair{23, 47},
		Indirect: []drive.Mesh{{"first", drive.Pair{20, 50}}, {"second", drive.Pair{33, 37}}, {"reverse", drive.Pair{18, 50}}},
		Direct:   "top",
	}))(t)
	for _, c := range []struct {
		name      string
		want, rel float64
	}{{"first", 5.109, 1e-4}, {"second", 2.291, 3e-4}, {"reverse", 5.676, 1e-4}, {"top", 1, 0}} {
		g, found := b.Gear(c.name)
		if !found {
			t.Fatal(c.name)
		}
		near(t, c.name, g.Ratio.Float(), c.want, c.rel)
	}
	if b.Top().Name != "top" || b.Gears()[0].Name != "reverse" {
		t.Errorf("order: %v", b.Gears())
	}
}

// A physics forum's question of 2011: overall 13.579, 0.6 m wheel, 1500 rev/min
// is "about 12 km/h".
func TestRoadSpeed(t *testing.T) {
	line := drive.Line{Box: ok(drive.BoxOf("13.579"))(t), Rolling: measure.Exact(units.Metres(0.6 * math.Pi))}
	v := ok(line.SpeedAt("1", units.RevolutionsPerMinute(1500)))(t)
	near(t, "speed", v.Value().KilometresPerHour(), 12, 0.05)
	back := ok(line.EngineAt("1", v.Value()))(t)
	near(t, "engine", back.Value().RevolutionsPerMinute(), 1500, 1e-14)
}

// The workshop's form, n U/(26822.4 i) in mile/h with U in mm (1 mile/h is
// 26822.4 mm/min by definition).
func TestRoadSpeedInMiles(t *testing.T) {
	line := demo(t)
	i := ok(line.Overall("2"))(t)
	v := ok(line.SpeedAt("2", units.RevolutionsPerMinute(4000)))(t)
	near(t, "mile/h", v.Value().MilesPerHour(), 4000*1975/(26822.4*i.Float()), 1e-14)
	near(t, "its uncertainty", v.U().Ratio(v.Value()), 20.0/1975, 1e-12)
}

// demo is the invented machine of this library's examples.
func demo(t failer) drive.Line {
	return drive.Line{
		Primary: drive.Train{{22, 48}},
		Box:     ok(drive.BoxOf("2.42", "1.61", "1.21", "1"))(t),
		Final:   drive.Train{{18, 46}},
		Rolling: measure.Of(units.Millimetres(1975), units.Millimetres(20)),
	}
}

func TestTable(t *testing.T) {
	tab := ok(demo(t).Table(drive.TableOptions{}))(t)
	top := tab.Gears[3]
	if want := ok(drive.NewRatio(48*46, 22*18))(t); top.Overall != want {
		t.Errorf("top %v, want %v", top.Overall, want)
	}
	near(t, "drop from third", tab.Gears[2].DropsTo.RevolutionsPerMinute(), 5000/1.21, 1e-14)
	if !tab.Steady {
		// steps 1.503, 1.331, 1.21 shrink
		t.Errorf("uneven: %v", tab.Uneven)
	}
	if top.Step.Given() || top.DropsTo != 0 {
		t.Error("top has no step up")
	}
	wide := demo(t)
	wide.Box = ok(drive.BoxOf("2.4", "1.9", "1.2", "1"))(t)
	if tab := ok(wide.Table(drive.TableOptions{}))(t); tab.Steady || len(tab.Uneven) != 1 || tab.Uneven[0] != "2" {
		t.Errorf("a wide step in the middle goes unseen: %v", tab.Uneven)
	}
	none := demo(t)
	none.Rolling = measure.Reading[units.Length]{}
	tab = ok(none.Table(drive.TableOptions{}))(t)
	if tab.Gears[0].PerThousand.Taken() || tab.Basis.NotChecked[0].What != "road speeds" {
		t.Error("speeds without a circumference")
	}
	if _, err := json.Marshal(tab); err != nil {
		t.Error(err)
	}
}

func TestLineFaultsAreGathered(t *testing.T) {
	_, err := drive.Line{Primary: drive.Train{{0, 3}}, Final: drive.Train{{18, -1}}}.SpeedAt("7", units.RevolutionsPerMinute(math.NaN()))
	if n := len(fault.Faults(err)); n != 6 {
		t.Errorf("%d faults: %v", n, err)
	}
}

// Ratios are exact: products agree with math/big, and what does not fit is an
// error rather than a wrong figure.
func TestRatioAgainstBig(t *testing.T) { rapid.Check(t, checkRatioAgainstBig) }

func FuzzRatioAgainstBig(f *testing.F) {
	fuzzBytes(f)
	f.Fuzz(rapid.MakeFuzz(checkRatioAgainstBig))
}

func checkRatioAgainstBig(t *rapid.T) {
	train := drive.Train{}
	want := big.NewRat(1, 1)
	for range rapid.IntRange(0, 8).Draw(t, "pairs") {
		p := drive.Pair{rapid.IntRange(4, 1000).Draw(t, "driver"), rapid.IntRange(4, 1000).Draw(t, "driven")}
		train = append(train, p)
		want.Mul(want, big.NewRat(int64(p.Driven), int64(p.Driver)))
	}
	r, err := train.Ratio()
	if err != nil {
		if want.Num().IsInt64() && want.Denom().IsInt64() && len(train) < 5 {
			t.Fatal("a short train overflowed:", err)
		}
		return
	}
	if big.NewRat(r.Num(), r.Den()).Cmp(want) != 0 {
		t.Fatalf("%v, want %v", r, want)
	}
	back, err := r.Times(r.Inverse())
	if err != nil || back != drive.OneToOne() {
		t.Fatalf("times its inverse: %v %v", back, err)
	}
}

func TestRatioOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		side := rapid.Int64Range(1, math.MaxInt64)
		a := ok(drive.NewRatio(side.Draw(t, "a"), side.Draw(t, "b")))(t)
		b := ok(drive.NewRatio(side.Draw(t, "c"), side.Draw(t, "d")))(t)
		if got, want := a.Compare(b), big.NewRat(a.Num(), a.Den()).Cmp(big.NewRat(b.Num(), b.Den())); got != want {
			t.Fatalf("%v against %v: %d", a, b, got)
		}
	})
}

func FuzzParseRatio(f *testing.F) {
	for _, s := range []string{"46/19", "2.42", "46:19", " 1 ", ".5", "5.", "1/0", "1e9", "-1", "", "999999.999999/0.000001"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		r, err := drive.ParseRatio(s)
		if err != nil {
			if r.Given() {
				t.Fatal("a ratio with an error")
			}
			return
		}
		if !(r.Num() > 0 && r.Den() > 0) {
			t.Fatalf("%q gave %d/%d", s, r.Num(), r.Den())
		}
	})
}
