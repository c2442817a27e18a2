package gear_test

import (
	"fmt"
	"testing"

	"example.com/benchbook/timing/gear"
	"example.com/benchbook/units"
	"pgregory.net/rapid"
)

// Khurmi & Gupta, Theory of Machines, 14th ed., example 13.1, p. 432 (read in a
// textbook companion): 975 rev/min in, 52 out.
func ExampleSimple() {
	t := gear.Simple(20, 50).Then(25, 75).Then(26, 65)
	r, err := t.Ratio()
	fmt.Println(r, 975*r.Abs().Float(), err)
	// Output: -4/75 52 <nil>
}

// Wentzell, Machine Design, 1st ed., example 11.2, p. 219 (read in a textbook
// companion): train value 9.75, the last wheel against the first.
func ExampleTrain_Ratio() {
	r, _ := gear.Simple(20, 65).Then(20, 22, 60).Ratio()
	fmt.Println(r, -1/r.Float())
	// Output: -4/39 9.75
}

// A 45-tooth camwheel cannot be driven at half speed by one pinion; 24 to 32
// with 30 to 45 is a compound train that does. Arithmetic.
func ExampleTrain_CamToothWorth() {
	t := gear.Simple(24, 32).Then(30, 45)
	cam, err := t.CamToothWorth(1)
	fmt.Println(cam, cam.AtCrank(), err)
	fmt.Println(gear.Simple(24, 45).CheckHalfSpeed())
	// Output:
	// 8° cam 16° crank <nil>
	// train: 24:45: a four-stroke cam must turn exactly 1/2 turn for each turn of the crank; these wheels give 8/15
}

func ExampleDrive() {
	d := gear.Drive{
		{From: "crank", Driver: 24, To: "inlet", Driven: 48},
		{From: "inlet", Driver: 48, To: "exhaust", Driven: 48},
	}
	fmt.Println(d.CheckHalfSpeed("inlet", "exhaust"))
	steps, _ := d.Steps()
	for _, s := range steps {
		fmt.Println(s.Crank, s.Moves)
	}
	// Output:
	// <nil>
	// 15° crank [inlet exhaust]
	// 15° crank [exhaust]
}

// An idler changes neither the ratio nor what a tooth is worth; it turns the
// sense over.
func TestIdlerCancels(t *testing.T) { rapid.Check(t, checkTrain) }

func FuzzTrain(f *testing.F) {
	fuzzBytes(f)
	f.Fuzz(rapid.MakeFuzz(checkTrain))
}

func checkTrain(t *rapid.T) {
	teeth := rapid.IntRange(6, 200)
	a, b, c := teeth.Draw(t, "a"), teeth.Draw(t, "b"), teeth.Draw(t, "c")
	plain, idle := gear.Simple(a, c), gear.Simple(a, b, c)
	r, _ := plain.Ratio()
	s, _ := idle.Ratio()
	if r.Num() != -s.Num() || r.Den() != s.Den() {
		t.Fatalf("%v with idler %v", r, s)
	}
	w, _ := plain.ToothWorth(0)
	for i := range 2 {
		if v, _ := idle.ToothWorth(i); v.CrankExact != w.CrankExact {
			t.Fatalf("mesh %d: %v against %v", i, v.CrankExact, w.CrankExact)
		}
	}
}

// Every tooth of the last wheel, moved one after another, is a whole turn.
func TestToothWorthIsATurnOverTeeth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		teeth := rapid.IntRange(6, 120)
		tr := gear.Simple(teeth.Draw(t, "a"), teeth.Draw(t, "b")).Then(teeth.Draw(t, "c"), teeth.Draw(t, "d"))
		w, err := tr.ToothWorth(1)
		if err != nil {
			t.Fatal(err)
		}
		if got := w.LastExact.Times(gear.NewRational(int64(tr.Pair(1).Driven), 1)); got != gear.NewRational(360, 1) {
			t.Fatalf("%v", got)
		}
		r, _ := tr.Ratio()
		if w.CrankExact.Times(r.Abs()) != w.LastExact {
			t.Fatalf("crank %v, last %v, ratio %v", w.CrankExact, w.LastExact, r)
		}
	})
}

func TestFaults(t *testing.T) {
	for _, bad := range []gear.Train{gear.Simple(24), gear.Simple(0, 48), gear.Simple(24, -1), gear.Simple(24, 200_000)} {
		if bad.Err() == nil || bad.IsHalfSpeed() || bad.CheckHalfSpeed() == nil {
			t.Errorf("%v was taken", bad)
		}
	}
	deep := gear.Simple(99991, 99989)
	for range 4 {
		deep = deep.Then(99991, 99989)
	}
	if deep.Err() == nil {
		t.Error("a ratio beyond 63 bits was taken")
	}
	for _, bad := range []gear.Drive{
		nil,
		{{From: "a", Driver: 20, To: "b", Driven: 40}, {From: "b", Driver: 20, To: "a", Driven: 40}},
		{{From: "a", Driver: 20, To: "b", Driven: 40}, {From: "c", Driver: 20, To: "b", Driven: 40}},
		{{From: "a", Driver: 20, To: "b", Driven: 40}, {From: "c", Driver: 20, To: "d", Driven: 40}},
		{{From: "a", Driver: 20, To: "", Driven: 40}},
		{{From: "a", Driver: 20, To: "b", Driven: 0}},
	} {
		if bad.Err() == nil {
			t.Errorf("%v was taken", bad)
		}
	}
}

// Worths are fractions rounded once: 720/N of the crank for N teeth at half speed.
func TestWorthIsCorrectlyRounded(t *testing.T) {
	for n := 20; n <= 120; n++ {
		w, err := gear.Simple(n, 2*n).ToothWorth(0)
		if err != nil || w.Crank != units.CrankDegrees(360/float64(n)) {
			t.Errorf("%d: %v %v", n, w.Crank, err)
		}
	}
}
