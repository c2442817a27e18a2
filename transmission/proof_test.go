package transmission

import (
	"math"
	"slices"
	"strings"
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// What a test proves turns just at twice the uncertainty: 60 ± 5 N m held is at least
// 50, crept at most 70.
func TestProofTurns(t *testing.T) {
	tested := measure.Of(units.NewtonMetres(60), units.NewtonMetres(5))
	for _, c := range []struct {
		b       Bound
		against float64
		want    Proof
	}{
		{AtLeast, 50, Shown}, {AtLeast, 50.001, Unproven}, {AtLeast, 70.001, Unproven},
		{About, 50, Shown}, {About, 50.001, Unproven}, {About, 69.999, Unproven}, {About, 70, Disproved},
		{Below, 50, Unproven}, {Below, 69.999, Unproven}, {Below, 70, Disproved},
	} {
		if got := proof(tested, c.b, c.against); got != c.want {
			t.Errorf("%v 60 ± 5 against %v: %v, want %v", c.b, c.against, got, c.want)
		}
	}
}

// The verdict of a kick in words, the lever out of level, and the rider who would prove.
func TestKickInWords(t *testing.T) {
	at := func(kg float64, r KickResult, set func(k *KickTest)) KickProof { return kicked(t, kg, r, set) }
	for _, c := range []struct {
		kg   float64
		r    KickResult
		want string
	}{
		{75, Held, "143 % of the engine's greatest torque there: it carries the engine with its margin"},
		{60, Held, ": it carries the engine; the margin is not proved either way"},
		{60, Crept, ": it carries the engine; the margin is disproved"},
		{40, Slid, ": it will slip under the engine"},
		{60, Slid, ": it has not the margin wanted; whether it carries the engine is not proved either way"},
		{40, Held, ": this does not prove that it carries the engine; a rider of 68 kg would put the torque with its margin on it"},
	} {
		if got := at(c.kg, c.r, nil).Verdict; !strings.Contains(got, c.want) {
			t.Errorf("%v kg %v: %s", c.kg, c.r, got)
		}
	}
	// a lever 30° from plumb takes half: sin 30°
	level, steep := at(75, Held, nil), at(75, Held, func(k *KickTest) { k.Angle = measure.Of(units.Degrees(30), units.Degree) })
	near(t, "torque 30° from plumb", steep.Rider.Value().NewtonMetres()/level.Rider.Value().NewtonMetres(), 0.5)
	near(t, "rider 30° from plumb", steep.ToProve.Kilograms()/level.ToProve.Kilograms(), 2)
	// not told, it is level to 15°: the same torque, less surely
	free := at(75, Held, func(k *KickTest) { k.Angle = measure.Reading[units.Angle]{} })
	near(t, "torque, angle not told", free.Rider.Value().NewtonMetres(), level.Rider.Value().NewtonMetres())
	// an even count of angles of a normal law: the root mean square of what the sine misses
	miss, all := 0.0, 0.0
	for z := -6.0; z <= 6; z += 0.01 {
		d := 1 - math.Cos(z*15*math.Pi/180)
		miss, all = miss+d*d*math.Exp(-z*z/2), all+math.Exp(-z*z/2)
	}
	want := math.Sqrt(miss/all + 1.0/(75*75) + 0.01*0.01)
	if u := free.Rider.U().Ratio(free.Rider.Value()); math.Abs(u/want-1) > 0.06 { // the next order, u² in parts
		t.Errorf("known to %v, want %v", u, want)
	}
	// the engine turning over is the lesser of the two, or what was seen to happen
	turn := func(nm float64) func(*KickTest) {
		return func(k *KickTest) { k.Cranking = measure.Of(units.NewtonMetres(nm), units.NewtonMetres(1)) }
	}
	near(t, "held, engine stiff", at(75, Held, turn(100)).Tested.Value().NewtonMetres(), level.Rider.Value().NewtonMetres())
	near(t, "held, engine light", at(75, Held, turn(20)).Tested.Value().NewtonMetres(), 44)
	near(t, "turned, engine stiff", at(75, Turned, turn(100)).Tested.Value().NewtonMetres(), 220)
	near(t, "engine", at(75, Held, turn(20)).Engine.Value().NewtonMetres(), 44)
	for _, c := range []struct {
		losses, margin float64
		want           []string
	}{
		{0, 0, []string{"losses of the kick starter 0.9", "torque margin 1.3"}}, {0.8, 0, []string{"torque margin 1.3"}},
		{0, 1.5, []string{"losses of the kick starter 0.9"}}, {0.8, 1.5, nil},
	} {
		cl, k := demo(), kick()
		k.Losses, cl.Demand.Margin = c.losses, c.margin
		p, err := cl.Kick(k)
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		for _, a := range p.Basis.Assumed {
			got = append(got, a.What+" "+a.Value)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("assumed %v, want %v", got, c.want)
		}
	}
}

// Repairs in pairs: each gains what its window is wider, takes the minutes of both, and
// none that a single one would open is needed. Two causes keep this one shut.
func TestPairsOfRepairs(t *testing.T) {
	found := backedOff()
	found.OutOfFlat = measure.Of(units.Millimetres(1.6), units.Millimetres(0.05))
	a, err := Adjust(Input{Clutch: demo(), Found: found}, Options{Draws: 100})
	if err != nil {
		t.Fatal(err)
	}
	if len(a.Pairs) < 2 {
		t.Fatalf("%d pairs; singly %v", len(a.Pairs), a.Repairs)
	}
	minutes := map[string]float64{}
	for _, r := range a.Repairs {
		if r.Opens || r.Opens != (r.Window.Width.Turns() >= 0.5) {
			t.Errorf("%s opens alone", r.Key)
		}
		near(t, r.Key+" gains", r.Gained.Turns(), r.Window.Width.Turns()-a.Window.Width.Turns())
		minutes[r.Key] = r.Work.Seconds()
	}
	for _, p := range a.Pairs {
		near(t, p.Key+" gains", p.Gained.Turns(), p.Window.Width.Turns()-a.Window.Width.Turns())
		one, other, _ := strings.Cut(p.Key, "+")
		near(t, p.Key+" takes", p.Work.Seconds(), minutes[one]+minutes[other])
		if !p.Opens || p.Window.Width < units.Turns(0.5) {
			t.Errorf("%s does not open", p.Key)
		}
	}
	if !strings.Contains(a.Advice.Text, a.Pairs[0].Text) {
		t.Error(a.Advice.Text)
	}
}

// A window just as wide as wanted is open enough: nothing to repair, and the repair
// that makes it so opens it.
func TestJustWideEnough(t *testing.T) {
	w := window(t, demo(), used())
	c := demo()
	c.Demand.Width = w.Width
	a, err := Adjust(Input{Clutch: c, Found: used()}, Options{Draws: 100})
	if err != nil || len(a.Repairs) != 0 {
		t.Errorf("repairs %v, %v", a.Repairs, err)
	}
	if a, err = Adjust(Input{Clutch: c, Found: backedOff()}, Options{Draws: 100}); err != nil {
		t.Fatal(err)
	}
	for _, r := range a.Repairs {
		if r.Key == "hub-nut" && !r.Opens {
			t.Error("a nut put tight does not open it")
		}
	}
}

// Those that open come first, then the greater gain by a twentieth of a turn, then the
// quicker, then as they are listed.
func TestBetterRepair(t *testing.T) {
	r := func(opens bool, gained, minutes float64) Repair {
		return Repair{Opens: opens, Gained: units.Turns(gained), Work: units.MinutesOfTime(minutes)}
	}
	for _, c := range []struct {
		a, b Repair
		want int
	}{
		{r(true, 1, 90), r(false, 5, 5), -1}, {r(false, 5, 5), r(true, 1, 90), 1},
		{r(true, 2, 90), r(true, 1, 5), -1}, {r(true, 1, 5), r(true, 2, 90), 1},
		{r(true, 1.01, 90), r(true, 1, 5), 1}, {r(true, 1, 5), r(true, 1.01, 90), -1},
		{r(true, 1, 5), r(true, 1, 5), 0},
	} {
		got := better(c.a, c.b)
		if got > 1 { // how much greater is no matter
			got = 1
		} else if got < -1 {
			got = -1
		}
		if got != c.want {
			t.Errorf("%+v before %+v: %d, want %d", c.a, c.b, got, c.want)
		}
	}
}

// The chance that it is workable counts windows at least as wide as wanted: 40 N m of
// spread in nothing but friction, by the normal law through the width's own slope.
func TestChanceOfWorkable(t *testing.T) {
	c := demo()
	sharp := func(r *measure.Reading[units.Length], mm float64) {
		*r = measure.Of(units.Millimetres(mm), units.Micrometres(0.001))
	}
	found := Condition{
		Friction: measure.Of(units.Value(0.12), units.Value(0.004)), HubNutBack: measure.Of(units.Turns(0), units.Turns(1e-9)),
		SpringRate:     measure.Of(units.NewtonsPerMillimetre(25), units.NewtonsPerMillimetre(1e-6)),
		CableStiffness: measure.Of(units.NewtonsPerMillimetre(100), units.NewtonsPerMillimetre(1e-6)), CableEfficiency: measure.Of(units.Value(0.8), units.Value(1e-9)),
	}
	for r, mm := range map[*measure.Reading[units.Length]]float64{&found.SpringSet: 0, &found.Wear: 0, &found.OutOfFlat: 0.3, &found.RodPlay: 0.3, &found.FreePlay: 3, &found.CablePull: 22, &found.RunOut: 0.05} {
		sharp(r, mm)
	}
	w := window(t, c, found)
	high := w.High.Turns()
	// low end: wanted/(mu z Rm N k P) + what it takes to touch; a friction that leaves just
	// the width wanted, and one that leaves none
	low := func(mu float64) float64 { return (80080/(mu*10*60*4*25) - 2) / 1.27 }
	near(t, "low end", w.Low.Turns(), low(0.12))
	mu := func(width float64) float64 { return 80080 / ((1.27*(high-width) + 2) * 10 * 60 * 4 * 25) }
	c.Demand.Width = units.Turns(w.Width.Turns() - 0.2)
	a, err := Adjust(Input{Clutch: c, Found: found}, Options{Draws: 40000})
	if err != nil {
		t.Fatal(err)
	}
	want := 1 - phi((mu(w.Width.Turns()-0.2)-0.12)/0.004)
	if math.Abs(a.ChanceWorkable-want) > 0.01 { // four spreads of 40 000 draws
		t.Errorf("workable %v, want %v", a.ChanceWorkable, want)
	}
	if want := 1 - phi((mu(0)-0.12)/0.004); math.Abs(a.ChanceOpen-want) > 0.01 {
		t.Errorf("open %v, want %v", a.ChanceOpen, want)
	}
}

// The pull that disagrees is told by how much, and which way.
func TestPullInWords(t *testing.T) {
	for pull, want := range map[float64]string{
		18: "the cable moves 4.0 mm less than the lever's radius and sweep give: worn pivot or nipple, an outer that gives, or another lever",
		26: "the cable moves 4.0 mm more than the lever's radius and sweep give: measure both again, or this is another lever", 22: "",
	} {
		a, err := Adjust(Input{Clutch: demo(), Found: Condition{CablePull: measure.Of(units.Millimetres(pull), units.Millimetres(0.5))}}, Options{Draws: 100})
		if err != nil || a.Pull.Text != want {
			t.Errorf("%v mm: %q, %v", pull, a.Pull.Text, err)
		}
	}
}

// A clutch lever that does not sweep, or one that goes back, is refused.
func TestLeverThatDoesNotSweep(t *testing.T) {
	for rest, ok := range map[float64]bool{9: true, 10: false, 11: false} {
		h := HandLever{Nipple: measure.Exact(38 * units.Millimetre), Rest: measure.Exact(units.Degrees(rest)), Pulled: measure.Exact(units.Degrees(10))}
		if _, err := h.Pull(); (err == nil) != ok {
			t.Errorf("from %v° to 10°: %v", rest, err)
		}
	}
	// a plain lever by the chord of its pin: 38 (sin 20° + sin 10°), and leverage a/(r cos 20°)
	h := HandLever{Finger: measure.Exact(110 * units.Millimetre), Nipple: measure.Exact(38 * units.Millimetre), Rest: measure.Exact(units.Degrees(-10)), Pulled: measure.Exact(units.Degrees(20))}
	p, err := h.Pull()
	if err != nil {
		t.Fatal(err)
	}
	printed(t, "pull", p.Value().Millimetres(), "19.595")
	i, err := h.Leverage()
	if err != nil {
		t.Fatal(err)
	}
	printed(t, "leverage", i.Value().Value(), "3.0805")
}
