package transmission

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// Turns and flats in words, the ends of a window in whole flats inside it.
func TestTurnsInWords(t *testing.T) {
	for flats, want := range map[int]string{0: "no turn", 1: "1 flat", 5: "5 flats", 6: "1 turn", 7: "1 turn and 1 flat", 11: "1 turn and 5 flats", 12: "2 turns", 13: "2 turns and 1 flat", 20: "3 turns and 2 flats"} {
		if got := words(flats); got != want {
			t.Errorf("%d flats: %q, want %q", flats, got, want)
		}
	}
	for _, c := range []struct {
		low, high float64
		want      string
	}{
		{1.01, 2.99, "not under 1 turn and 1 flat nor over 2 turns and 5 flats"},
		{1.01, 1.2, "not under 1 turn and 1 flat nor over 1 turn and 1 flat"},
		{1.01, 1.1, "not under 1.01 turns nor over 1.10 turns"}, // no flat is inside
		{0.9, 1.001, "not under 1 turn nor over 1 turn"},
	} {
		if got := between(c.low, c.high); got != c.want {
			t.Errorf("%v to %v: %q, want %q", c.low, c.high, got, c.want)
		}
	}
	if turns(1) != "1 turn" || turns(1.004) != "1 turn" || turns(0.5) != "0.50 turns" {
		t.Error(turns(1), turns(0.5))
	}
}

// The flats told are, of all that leave the nut inside the window, those that bring it
// nearest to the aim; a nut inside and within a flat of it already is left.
func TestFlatsAgainstAll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(0, 5).Draw(t, "low")
		high := low + rapid.Float64Range(0.02, 3).Draw(t, "width")
		aim := low + (high-low)*rapid.Float64Range(0, 0.5).Draw(t, "aim")
		n := rapid.Float64Range(0, 10).Draw(t, "nut")
		got := flats(n, aim, low, high)
		inside := func(k int) bool { at := n + float64(k)*flat; return at >= low && at <= high }
		if inside(0) && math.Abs(n-aim) < flat {
			if got != 0 {
				t.Fatalf("a nut well set is turned by %d", got)
			}
			return
		}
		best, off := 0, math.Inf(1)
		for k := -70; k <= 70; k++ {
			if d := math.Abs(n + float64(k)*flat - aim); inside(k) && d < off {
				best, off = k, d
			}
		}
		if math.IsInf(off, 1) { // no whole flat falls inside: the nearest to the aim
			if d := math.Abs(n + float64(got)*flat - aim); d > flat/2+1e-9 {
				t.Fatalf("turned by %d, %v from the aim", got, d)
			}
			return
		}
		if d := math.Abs(n + float64(got)*flat - aim); !inside(got) || d > off+1e-9 {
			t.Fatalf("turned by %d, best %d", got, best)
		}
	})
}

func advised(t *testing.T, set func(in *Input)) Adjustment {
	t.Helper()
	in := Input{Clutch: demo(), Found: used()}
	set(&in)
	a, err := Adjust(in, Options{Draws: 100})
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// Free play comes first: too much is taken up to half a millimetre above the least, too
// little let out to the least, what lies between is left. The demo wants 1.5 mm and its
// adjuster has a thread of 1 mm.
func TestFreePlayFirst(t *testing.T) {
	for _, c := range []struct{ play, turns float64 }{{1.5, 0}, {1.4, -0.1}, {0.5, -1}, {2.5, 0}, {2.6, 0.6}, {4, 2}} {
		a := advised(t, func(in *Input) {
			in.Found.FreePlay = measure.Of(units.Millimetres(c.play), units.Millimetres(0.1))
		})
		near(t, "turns of the play adjuster", a.Advice.Play.Turns(), c.turns)
		text := a.Advice.Text
		if up, out := strings.Contains(text, "first take up free play by "+turns(c.turns)), strings.Contains(text, "first let out free play by "+turns(-c.turns)); up != (c.turns > 0) || out != (c.turns < 0) {
			t.Errorf("%v mm: %s", c.play, text)
		}
		if !strings.Contains(text, "leave at least 1.5 mm of free play") {
			t.Errorf("%v mm: %s", c.play, text)
		}
	}
	// at the rod, behind a train of 6 to 1, a turn takes six times as much
	a := advised(t, func(in *Input) {
		in.Clutch.Play = PlayAdjuster{AtRod: true}
		in.Found.FreePlay = measure.Of(units.Millimetres(8), units.Millimetres(0.1))
	})
	near(t, "at the rod", a.Advice.Play.Turns(), 1)
}

// The aim is a flat above the low end or as far as that end is uncertain, and never
// past the middle; the text says which way each nut goes.
func TestAim(t *testing.T) {
	exact := func(in *Input) {
		*in = Input{Clutch: demo(), Found: Condition{}}
		in.Clutch.New.Friction = measure.Of(units.Value(0.12), units.Value(1e-6))
		for _, r := range []*measure.Reading[units.Length]{&in.Clutch.New.SpringSet, &in.Clutch.New.Wear} {
			*r = measure.Of(units.Length(0), units.Micrometres(1))
		}
		in.Clutch.New.SpringRate = measure.Of(units.NewtonsPerMillimetre(25), units.NewtonsPerMillimetre(1e-4))
	}
	a := advised(t, exact)
	near(t, "a flat above a sharp end", a.Advice.Aim.Turns(), a.Window.Low.Turns()+1.0/6)
	a = advised(t, func(in *Input) { *in = Input{Clutch: demo()} })
	if u := a.Low.U().Turns(); u > 1.0/6 && u < a.Window.Width.Turns()/2 {
		near(t, "as far as the end is uncertain", a.Advice.Aim.Turns(), a.Window.Low.Turns()+u)
	} else {
		t.Errorf("the end is uncertain by %v", u)
	}
	// a window narrower than twice that: the middle, and the first repair is named
	a = advised(t, func(in *Input) {
		in.Found.CablePull = measure.Of(units.Millimetres(20.15), units.Millimetres(0.2))
	})
	if w := a.Window.Width.Turns(); !(w > 0 && w < 0.5) {
		t.Fatalf("width %v", w)
	}
	near(t, "the middle", a.Advice.Aim.Turns(), (a.Window.Low.Turns()+a.Window.High.Turns())/2)
	if !strings.Contains(a.Advice.Text, "narrower than 0.50 turns, which leaves nothing for wear: ") || !strings.Contains(a.Advice.Text, a.Repairs[0].Text) {
		t.Error(a.Advice.Text)
	}
	aim := advised(t, exact).Advice.Aim.Turns()
	for _, c := range []struct {
		from    float64
		central bool
		flats   int
		want    string
	}{
		{aim - 1, false, 6, "turn every nut in by 1 turn, all alike; set every nut "},
		{aim + 2, false, -12, "turn every nut out by 2 turns, all alike; set every nut "},
		{aim + 0.01, false, 0, "leave the nuts where they are; set every nut "},
		{aim - 1, true, 6, "turn the nut in by 1 turn; set the nut "},
	} {
		a := advised(t, func(in *Input) {
			exact(in)
			in.Setting.Nuts = measure.Of(units.Turns(c.from), units.Turns(0.05))
			if c.central {
				in.Clutch.Nuts.Kind = Central
			}
		})
		near(t, "move", a.Advice.Move.Turns(), float64(c.flats)/6)
		if a.Advice.Flats != c.flats || !strings.HasPrefix(a.Advice.Text, c.want) {
			t.Errorf("from %v: %d flats, %s", c.from, a.Advice.Flats, a.Advice.Text)
		}
	}
}

// What the verdict assumed is what was not given: each default of the demand and the
// threads by name, and each part that neither the clutch nor a reading told.
func TestAssumedIsWhatWasNotGiven(t *testing.T) {
	assumed := func(in Input) (list string) {
		a, err := Adjust(in, Options{Draws: 100})
		if err != nil {
			t.Fatal(err)
		}
		for _, x := range a.Basis.Assumed {
			list += x.What + " = " + x.Value + "\n"
		}
		return list
	}
	all := Input{Clutch: demo()}
	all.Clutch.Demand = Demand{EngineTorque: 28 * units.NewtonMetre, PrimaryRatio: 2.2}
	all.Clutch.HubNut.Pitch = 0
	for _, d := range []struct {
		line string
		give func(c *Clutch)
	}{
		{"torque margin = 1.3\n", func(c *Clutch) { c.Demand.Margin = 1.4 }},
		{"most hand force = 200 N\n", func(c *Clutch) { c.Demand.HandForce = 150 * units.Newton }},
		{"least free play = 2 mm\n", func(c *Clutch) { c.Demand.FreePlay = units.Millimetre }},
		{"clearance of each rubbing face = 0.15 mm\n", func(c *Clutch) { c.Demand.FaceGap = units.Millimetres(0.2) }},
		{"least width of a workable window = 0.5 turn\n", func(c *Clutch) { c.Demand.Width = units.Turns(0.3) }},
		{"pitch of the hub's retaining nut = 1.27 mm\n", func(c *Clutch) { c.HubNut.Pitch = units.Millimetre }},
		{"thickness of a friction plate = 3 mm\n", func(c *Clutch) { c.Plates.Thickness = 4 * units.Millimetre }},
		{"pitch of the play adjuster = 1 mm\n", func(c *Clutch) { c.Play.Pitch = units.Millimetres(0.75) }},
	} {
		in := all
		if !strings.Contains(assumed(in), d.line) {
			t.Errorf("not told: %s", d.line)
		}
		d.give(&in.Clutch)
		if what, _, _ := strings.Cut(d.line, " ="); strings.Contains(assumed(in), what) {
			t.Errorf("given and yet assumed: %s", what)
		}
	}
	for p := range parts {
		in := all
		in.Clutch.New, in.Clutch.Lever = Condition{}, HandLever{}
		line := rules[p].what + " = "
		if told := strings.Contains(assumed(in), line); told != (p != springRate) { // the rate is in Springs
			t.Errorf("%s assumed: %v", rules[p].what, told)
		}
		in.Clutch.Lever = demo().Lever
		if told := strings.Contains(assumed(in), line); told != (p != springRate && p != cablePull && p != leverRatio) {
			t.Errorf("%s assumed with the lever known: %v", rules[p].what, told)
		}
	}
	// the leverage needs both arms
	in := all
	in.Clutch.Lever = HandLever{Finger: demo().Lever.Finger}
	if !strings.Contains(assumed(in), "leverage of the hand lever = ") {
		t.Error("leverage of half a lever")
	}
}

// The hand of the hub's nut is asked for until it is known.
func TestHandOfTheNut(t *testing.T) {
	for hand, asks := range map[Hand]bool{UnknownHand: true, RightHand: false, LeftHand: false} {
		a := advised(t, func(in *Input) { in.Clutch.HubNut.Hand = hand })
		found := false
		for _, u := range a.Basis.NotChecked {
			found = found || u.What == "hand of the hub's retaining nut"
		}
		if found != asks {
			t.Errorf("%v: asked %v", hand, found)
		}
	}
}
