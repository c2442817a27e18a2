package timing_test

import (
	"flag"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"example.com/benchbook/timing"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// The ranking is judged on engines made up at random, in three modes:
//
//	ideal     1.0° own error on every event, TDC by a stop
//	workshop  the same, read to whole degrees, TDC by eye with 1.5° common to all
//	          events, and lost motion known as 0.6° ± 0.4°
//	nasty     workshop, with one event misread by 10° in 5 % of engines, and a
//	          cause outside the list in another 5 %
//
// Priors, widths, slopes and rival cams are known to the ranking. A fault that
// moves the opening by less than 3° counts as none. The peer is an exact
// posterior: sums over grids of every unknown, sharing no code with the library.
//
//	go test ./timing -run Simulation -v -timeout 0 -seeds 200
//
// prints each seed and then all of them together, in about two hours on one core.
var (
	seeds   = flag.Int("seeds", 1, "seeds of the ranking simulation")
	engines = flag.Int("engines", 10_000, "engines of each seed and mode")
	exactly = flag.Int("exact", 120, "of them also weighed by the exact posterior")
)

const (
	simRise = 0.03 // mm per degree, all flanks
	simGap  = 0.25 / simRise
	trifle  = 3.0
)

// simFault is one fault of the simulated world.
type simFault struct {
	key      string
	prior    float64
	in, ex   float64 // fixed shifts, crank degrees
	slip     int     // 1 inlet, 2 exhaust
	gap      int
	rival    int
	mark     bool
	disc     bool
	cams     int // bits of the cams it moves
	isWheel  bool
	isWhole  bool
	teeth    int
	movesCam bool
}

type simClass struct {
	key    string
	prior  float64
	faults []*simFault
}

type simMode struct {
	name             string
	whole            bool // whole degrees
	tdc, lag, lagU   float64
	misread, outside float64
	stop             bool
}

var simModes = []simMode{
	{name: "ideal", tdc: 0.3, stop: true},
	{name: "workshop", whole: true, tdc: 1.5, lag: 0.6, lagU: 0.4},
	{name: "nasty", whole: true, tdc: 1.5, lag: 0.6, lagU: 0.4, misread: 0.05, outside: 0.05},
}

// Priors of the simulated world.
const (
	simNothing, simWhole, simWheel, simSlip  = 0.40, 0.02, 0.08, 0.06
	simMark, simClear, simRival, simBackward = 0.06, 0.04, 0.03, 0.02
	simFar                                   = 0.3
)

func (m simMode) options() timing.Options {
	o := timing.Options{
		Misread: timing.Misread{Chance: -1},
		Priors: timing.Priors{
			Nothing: simNothing, WholeTrain: 4 * simWhole, Wheel: simWheel, Slip: simSlip, TDC: simMark, Clearance: simClear, OtherCam: simRival,
			Disc: simBackward, UnknownCam: -1, CheckLift: -1, Exchanged: -1, WholeTurn: -1, Else: 1e-3,
			Reversed: -1, Follower: -1, Held: -1, Worn: -1,
		},
	}
	if m.misread > 0 {
		o.Misread = timing.Misread{Chance: m.misread, By: 10 * units.CrankDegree, Wild: -1}
	}
	if m.outside > 0 { // the listed causes, pairs and all, share the rest
		total := 0.0
		for _, c := range m.classes() {
			total += c.prior
		}
		o.Priors.Else = total * m.outside / (1 - m.outside)
	}
	return o
}

func (m simMode) faults() []*simFault {
	var all []*simFault
	teeth := func(key string, prior float64, in, ex float64, cams int, whole bool) {
		for n := -3; n <= 3; n++ {
			if n == 0 {
				continue
			}
			w := math.Pow(3, -math.Abs(float64(n))+1) / (2 * (1 + 1.0/3 + 1.0/9))
			all = append(all, &simFault{key: fmt.Sprintf("%s:%+d", key, n), prior: prior * w, in: in * float64(n), ex: ex * float64(n), cams: cams, isWheel: !whole, isWhole: whole, teeth: n, movesCam: true})
		}
	}
	teeth("inlet-wheel", simWheel, 15, 0, 1, false)
	teeth("exhaust-wheel", simWheel, 0, 15, 2, false)
	teeth("whole-train", simWhole, 15, 15, 3, true)
	for c, name := range []string{"inlet", "exhaust"} {
		all = append(all, &simFault{key: name + "-slip", prior: simSlip, slip: c + 1, cams: c + 1, movesCam: true})
	}
	if !m.stop {
		all = append(all, &simFault{key: "tdc-mark", prior: simMark, mark: true})
	}
	for c, name := range []string{"inlet", "exhaust"} {
		all = append(all, &simFault{key: name + "-clearance", prior: simClear, gap: c + 1})
	}
	for c, name := range []string{"inlet", "exhaust"} {
		all = append(all, &simFault{key: name + "-cam:longer", prior: simRival, rival: c + 1})
	}
	return append(all, &simFault{key: "disc-backwards", prior: simBackward, disc: true})
}

// classes is every single fault and the pairs that the documentation of
// Options.SingleFaults names.
func (m simMode) classes() []simClass {
	f := m.faults()
	all := []simClass{{"nothing-wrong", simNothing, nil}}
	for i, a := range f {
		all = append(all, simClass{a.key, a.prior, []*simFault{a}})
		for _, b := range f[i+1:] {
			ok := false
			switch {
			case a.isWheel && b.isWheel:
				ok = a.cams != b.cams && a.teeth != b.teeth // else it is the whole train
			case a.isWheel && b.isWhole || a.isWhole && b.isWheel || a.isWhole && b.isWhole:
			case a.movesCam && b.movesCam:
				ok = true
			case a.movesCam && b.gap > 0:
				ok = true
			case a.movesCam && b.mark:
				ok = a.cams != 3
			}
			if ok {
				all = append(all, simClass{a.key + "/" + b.key, a.prior * b.prior / simNothing, []*simFault{a, b}})
			}
		}
	}
	return all
}

func simEngine() timing.Engine {
	e := engine()
	rise := units.Millimetres(simRise)
	e.Inlet.OpeningRise, e.Inlet.ClosingRise, e.Exhaust.OpeningRise, e.Exhaust.ClosingRise = rise, rise, rise, rise
	e.Rivals = []timing.Rival{
		{Name: "longer", Cam: timing.Inlet, Lobe: timing.Lobe{Opens: units.Before(units.TDC, 35), Closes: units.After(units.BDC, 75)}},
		{Name: "longer", Cam: timing.Exhaust, Lobe: timing.Lobe{Opens: units.Before(units.BDC, 75), Closes: units.After(units.TDC, 35)}},
	}
	return e
}

// book is where the events stand, degrees after the overlap TDC.
var simBook = [4]float64{-25, 245, -245, 25}

func simWrap(x float64) float64 { return math.Mod(math.Mod(x+180, 360)+360, 360) - 180 }

// simCase is one engine with its truth and what was read.
type simCase struct {
	truth    string
	read     [4]float64 // advance against the book, wrapped
	shift    [2]float64 // of the cams against the mark used
	readings timing.Readings
}

// normal draws until it is in the part wanted; the truth is relabelled instead.
func (m simMode) draw(rng *rand.Rand, classes []simClass, total float64) simCase {
	var c simCase
	var adv [4]float64 // true advance of each event
	var faults []*simFault
	outside := rng.Float64() < m.outside
	if !outside {
		x := rng.Float64() * total
		for _, k := range classes {
			if x -= k.prior; x < 0 {
				faults = k.faults
				break
			}
		}
	}
	var real []string
	backwards := false
	t := rng.NormFloat64() * m.tdc
	mark := 0.0
	for _, f := range faults {
		counts := true
		c.shift[0] += f.in
		c.shift[1] += f.ex
		switch {
		case f.slip > 0:
			s := rng.NormFloat64() * 10
			if rng.Float64() < simFar {
				s = rng.Float64()*360 - 180
			}
			c.shift[f.slip-1] += s
			counts = math.Abs(s) >= trifle
		case f.mark:
			mark = rng.NormFloat64() * 8
			counts = math.Abs(mark) >= trifle
		case f.gap > 0:
			g := rng.NormFloat64() * simGap
			adv[2*f.gap-2] -= g
			adv[2*f.gap-1] += g
			counts = math.Abs(g) >= trifle
		case f.rival > 0:
			adv[2*f.rival-2] += 10
			adv[2*f.rival-1] -= 10
		case f.disc:
			backwards = true
		}
		if counts {
			real = append(real, f.key)
		}
	}
	if c.truth = strings.Join(real, "/"); c.truth == "" {
		c.truth = "nothing-wrong"
	}
	c.shift[0] += mark
	c.shift[1] += mark
	lag := m.lag + rng.NormFloat64()*m.lagU
	for cam := range 2 {
		d := rng.NormFloat64() * 2 // of the duration
		adv[2*cam] += c.shift[cam] + d/2
		adv[2*cam+1] += c.shift[cam] - d/2
	}
	if outside {
		c.truth = measure.SomethingElse
		for i := range adv {
			adv[i] += rng.NormFloat64() * 30
		}
		for cam := range 2 {
			c.shift[cam] = (adv[2*cam] + adv[2*cam+1]) / 2
		}
	}
	misread := -1
	if rng.Float64() < m.misread {
		misread = rng.IntN(4)
	}
	for i := range adv {
		at := simBook[i] - (adv[i] + t - lag)
		if backwards {
			at = -at
		}
		at += rng.NormFloat64()
		if i == misread {
			at += []float64{10, -10}[rng.IntN(2)]
		}
		if m.whole {
			at = math.Round(at)
		}
		c.read[i] = simWrap(simBook[i] - at)
		d, home := units.TDC, 0.0
		if i == 1 || i == 2 {
			d, home = units.BDC, 180
		}
		u := 1.0
		if m.whole {
			u = math.Sqrt(1 + 1.0/12) // own error, and a whole degree's
		}
		p := measure.At(units.After(d, units.CrankDegrees(simWrap(at-home))), units.CrankDegrees(u))
		switch i {
		case 0:
			c.readings.InletOpens = p
		case 1:
			c.readings.InletCloses = p
		case 2:
			c.readings.ExhaustOpens = p
		case 3:
			c.readings.ExhaustCloses = p
		}
	}
	if m.stop {
		c.readings.TDC = timing.TDCByStop
	}
	if m.lag > 0 {
		c.readings.Lag = measure.Of(units.CrankDegrees(m.lag), units.CrankDegrees(m.lagU))
	}
	return c
}

// tally is what the simulation prints.
type tally struct {
	n, top1, near3, near10 int
	outside3, right3       int
	outside10, right10     int
	holds, size            int
	covered, shifts        int
	logLoss                float64
	bins                   [10]struct {
		n, right int
		stated   float64
	}
	exactN                   int
	exactLoss, libraryOnSame float64
	exactOut, exactRight     int // outside 10:1 by the exact posterior
}

// add counts the engines of another seed in.
func (t *tally) add(u *tally) {
	for _, x := range [...]struct{ at, by *int }{
		{&t.n, &u.n}, {&t.top1, &u.top1}, {&t.near3, &u.near3}, {&t.near10, &u.near10}, {&t.outside3, &u.outside3}, {&t.right3, &u.right3},
		{&t.outside10, &u.outside10}, {&t.right10, &u.right10}, {&t.holds, &u.holds}, {&t.size, &u.size}, {&t.covered, &u.covered}, {&t.shifts, &u.shifts},
		{&t.exactN, &u.exactN}, {&t.exactOut, &u.exactOut}, {&t.exactRight, &u.exactRight},
	} {
		*x.at += *x.by
	}
	t.logLoss += u.logLoss
	t.exactLoss += u.exactLoss
	t.libraryOnSame += u.libraryOnSame
	for i := range t.bins {
		b, c := &t.bins[i], &u.bins[i]
		b.n, b.right, b.stated = b.n+c.n, b.right+c.right, b.stated+c.stated
	}
}

func (m simMode) run(tb testing.TB, seed uint64, engines, exact int) tally {
	rng := rand.New(rand.NewPCG(seed, uint64(len(m.name))))
	classes := m.classes()
	total := 0.0
	for _, c := range classes {
		total += c.prior
	}
	opt, e := m.options(), simEngine()
	var t tally
	for n := range engines {
		c := m.draw(rng, classes, total)
		in := timing.Input{Engine: e, Readings: c.readings}
		r, err := timing.Causes(in, opt)
		if err != nil {
			tb.Fatal(err)
		}
		lead := r.Leader()
		right := lead.Key == c.truth
		t.n++
		if right {
			t.top1++
		}
		ratio := lead.Share / r.Odds[1].Share
		if ratio <= 3 {
			t.near3++
		} else if t.outside3++; right {
			t.right3++
		}
		if ratio <= 10 {
			t.near10++
		} else if t.outside10++; right {
			t.right10++
		}
		group := r.Within(20)
		t.size += len(group)
		if slices.ContainsFunc(group, func(o measure.Odds) bool { return o.Key == c.truth }) {
			t.holds++
		}
		truth, _ := r.Of(c.truth) // a pair ruled out is not in the list: no share
		loss := -math.Log(max(truth.Share, 1e-12))
		t.logLoss += loss
		b := &t.bins[min(int(lead.Share*10), 9)]
		b.n++
		b.stated += lead.Share
		if right {
			b.right++
		}
		if c.truth != "disc-backwards" { // no shift of a cam
			inlet, exhaust, err := timing.Phases(in, opt)
			if err != nil {
				tb.Fatal(err)
			}
			for k, p := range []timing.Phase{inlet, exhaust} {
				// the events are late by the lag, which is known
				t.shifts++
				if math.Abs(simWrap(p.Crank.Value().Degrees()-c.shift[k])) <= 1.96*p.Crank.U().Degrees() {
					t.covered++
				}
			}
		}
		if n < exact {
			t.exactN++
			t.libraryOnSame += loss
			p := m.posterior(&c, classes, total)
			t.exactLoss += -math.Log(max(p[c.truth], 1e-12))
			best, second, key := 0.0, 0.0, ""
			for k, v := range p {
				if v > best {
					best, second, key = v, best, k
				} else {
					second = max(second, v)
				}
			}
			if best > 10*second {
				t.exactOut++
				if key == c.truth {
					t.exactRight++
				}
			}
		}
	}
	return t
}

func (t *tally) print(m simMode) string {
	pc := func(a, b int) float64 { return 100 * float64(a) / float64(max(b, 1)) }
	var b strings.Builder
	fmt.Fprintf(&b, "%s, %d engines: top-1 right %.1f %%; leaders within 3:1 %.1f %%, else right %.1f %%; within 10:1 %.1f %%, else right %.1f %%\n",
		m.name, t.n, pc(t.top1, t.n), pc(t.near3, t.n), pc(t.right3, t.outside3), pc(t.near10, t.n), pc(t.right10, t.outside10))
	fmt.Fprintf(&b, "  log loss %.4f nat; on %d of them %.4f, exact posterior %.4f, which is right in %.1f %% of the %.1f %% outside 10:1\n",
		t.logLoss/float64(t.n), t.exactN, t.libraryOnSame/float64(max(t.exactN, 1)), t.exactLoss/float64(max(t.exactN, 1)), pc(t.exactRight, t.exactOut), pc(t.exactOut, t.exactN))
	fmt.Fprintf(&b, "  the 20:1 group holds the truth in %.1f %%, mean size %.2f; the shift is covered in %.1f %%\n", pc(t.holds, t.n), float64(t.size)/float64(t.n), pc(t.covered, t.shifts))
	for i, x := range t.bins {
		if x.n >= 100 {
			fmt.Fprintf(&b, "  stated %d to %d %%: %5d engines, stated %.1f %%, right %.1f %%\n", 10*i, 10*i+10, x.n, 100*x.stated/float64(x.n), pc(x.right, x.n))
		}
	}
	return b.String()
}

func (t *tally) check(tb testing.TB, m simMode) {
	within := func(what string, got, lo, hi float64) {
		if !(got >= lo && got <= hi) {
			tb.Errorf("%s: %s %.4f, to reach %.3f to %.3f", m.name, what, got, lo, hi)
		}
	}
	f := func(a, b int) float64 { return float64(a) / float64(max(b, 1)) }
	right, holds, lo, hi, loss := 0.95, 0.97, 0.94, 0.96, 0.02
	if m.misread > 0 {
		right, holds, lo, hi, loss = 0.93, 0.95, 0.92, 0.96, 0.10
	}
	// Chance of the draw: three standard errors, 0.8 % of the engines outside
	// 10:1. The workshop's seed 1 falls short of 95 % by less than that, and so
	// does the exact posterior on its first 4,000 engines, with 94.8 %.
	se := func(p float64, n int) float64 { return 3 * math.Sqrt(p*(1-p)/float64(max(n, 1))) }
	within("right outside 10:1", f(t.right10, t.outside10), right-se(right, t.outside10), 1)
	within("20:1 group holds the truth", f(t.holds, t.n), holds-se(holds, t.n), 1)
	within("mean size of the 20:1 group", float64(t.size)/float64(t.n), 1, 2.5)
	within("coverage", f(t.covered, t.shifts), lo-se(0.95, t.n), hi+se(0.95, t.n))
	if t.exactN > 0 {
		within("log loss beyond exact", (t.libraryOnSame-t.exactLoss)/float64(t.exactN), -0.05, loss)
	}
	for i, x := range t.bins {
		if x.n >= 100 {
			stated, seen := x.stated/float64(x.n), f(x.right, x.n)
			if d := math.Abs(stated - seen); d > 0.02+3*math.Sqrt(stated*(1-stated)/float64(x.n)) {
				tb.Errorf("%s: stated %.3f, seen %.3f in bin %d of %d engines", m.name, stated, seen, i, x.n)
			}
		}
	}
}

func TestSimulation(t *testing.T) {
	n, exact := *engines, *exactly
	if testing.Short() {
		n, exact = min(n, 120), 4 // emulated processors take long
	}
	for _, m := range simModes {
		var all tally
		for seed := range *seeds {
			r := m.run(t, uint64(seed+1), n, exact)
			t.Log(r.print(m))
			r.check(t, m)
			all.add(&r)
		}
		if *seeds > 1 {
			t.Logf("%d seeds together: %s", *seeds, all.print(m))
			all.check(t, m)
		}
	}
}
