package timing

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.com/benchbook/units"
)

// exhaustive tries every combination of every move, pressed or not, and scores
// each anew. It shares nothing with the search but the order of scores.
func exhaustive(moves []Move, near, inlet, exhaust int64, solo bool) score {
	best := score{over: math.MaxInt64}
	var try func(i int, in, ex, work, steps int64, pressed [2]bool)
	try = func(i int, in, ex, work, steps int64, pressed [2]bool) {
		if i == len(moves) {
			if solo {
				in = (inlet + exhaust) / 2 // what one shaft can bring home
				in += ex                   // ex carries the sum of moves
				if pressed[0] {
					in = 0
				}
				s := score{over: max(abs(in)-near, 0), work: work, left: abs(in), steps: steps}
				if s.less(best) {
					best = s
				}
				return
			}
			if pressed[0] {
				in = 0
			}
			if pressed[1] {
				ex = 0
			}
			s := score{over: max(abs(in)-near, 0) + max(abs(ex)-near, 0), work: work, left: abs(in) + abs(ex), steps: steps}
			if s.less(best) {
				best = s
			}
			return
		}
		m := &moves[i]
		w := int64(math.Round(m.Work.SI()))
		if m.any() {
			try(i+1, in, ex, work, steps, pressed)
			pressed[m.Cams[0]] = true
			try(i+1, in, ex, work+w, steps, pressed)
			return
		}
		for n := -m.Most; n <= m.Most; n++ {
			by, cost := int64(n)*grains(m.Step), int64(0)
			if n != 0 {
				cost = w
			}
			a, b := in, ex
			if solo {
				b += by
			} else {
				for _, c := range m.Cams {
					if c == Inlet {
						a += by
					} else {
						b += by
					}
				}
			}
			try(i+1, a, b, work+cost, steps+abs(int64(n)), pressed)
		}
	}
	if solo {
		try(0, 0, 0, 0, 0, [2]bool{})
	} else {
		try(0, inlet, exhaust, 0, 0, [2]bool{})
	}
	return best
}

// scored returns what the plan's search reached.
func (p *Plan) scored(inlet, exhaust units.CrankAngle) score {
	j, a, b := p.search(-grains(inlet), -grains(exhaust))
	return score{work: j.work, steps: j.steps}.plus(a.score).plus(b.score)
}

// On random trains the search finds what trying everything finds.
func TestPlanEqualsExhaustiveSearch(t *testing.T) {
	trains := 10_000
	if testing.Short() {
		trains = 200 // emulated processors take long
	}
	rng := rand.New(rand.NewPCG(4, 1))
	pick := func(x ...float64) float64 { return x[rng.IntN(len(x))] }
	for range trains {
		var moves []Move
		shaft := rng.IntN(5) == 0
		combos := 1
		for range 1 + rng.IntN(4) {
			m := Move{Key: "m", Unit: "tooth", Work: units.Hours(pick(0.5, 1, 1, 2, 3)), Most: 1 + rng.IntN(4)}
			m.Step = units.CrankDegrees(720 / float64(12+rng.IntN(60)))
			if rng.IntN(3) == 0 {
				m.Step = units.CrankDegrees(720 / float64(110+rng.IntN(200)))
			}
			m.Cams = [][]Cam{{Inlet}, {Exhaust}, {Inlet, Exhaust}}[rng.IntN(3)]
			if shaft {
				m.Cams = []Cam{Inlet, Exhaust}
			}
			if combos *= 2*m.Most + 1; combos > 4000 {
				break
			}
			moves = append(moves, m)
		}
		switch {
		case shaft && rng.IntN(2) == 0:
			moves = append(moves, Move{Key: "press", Cams: []Cam{Inlet, Exhaust}, Shaft: true, Work: units.Hours(pick(1, 3, 4))})
		case !shaft:
			for c := range Cam(2) {
				if rng.IntN(2) == 0 {
					moves = append(moves, Move{Key: "press", Cams: []Cam{c}, Work: units.Hours(pick(1, 3, 4))})
				}
			}
		}
		opt := Options{Near: units.CrankDegrees(pick(0.1, 1, 2, 4))}
		p, err := NewPlan(moves, opt)
		if err != nil {
			t.Fatal(err)
		}
		// two decimals, so that ties happen
		in, ex := units.CrankDegrees(math.Round(rng.Float64()*6000-3000)/100), units.CrankDegrees(math.Round(rng.Float64()*6000-3000)/100)
		want := exhaustive(moves, p.near, grains(in), grains(ex), p.solo)
		if got := p.scored(in, ex); got != want {
			t.Fatalf("moves %+v from %v and %v: %+v, exhaustive search %+v", moves, in, ex, got, want)
		}
		// what is written out is what was scored, and leads the menu
		r := p.Best(in, ex)
		var steps int64
		for _, s := range r.Steps {
			steps += abs(int64(s.Count))
		}
		left := abs(grains(r.InletLeft)) + abs(grains(r.ExhaustLeft))
		if p.solo {
			left = abs(grains(r.InletLeft)+grains(r.ExhaustLeft)) / 2
		}
		if steps != want.steps || int64(math.Round(r.Work.SI())) != want.work || abs(left-want.left) > 4000 { // sums of float degrees against sums of grains
			t.Fatalf("%+v does not say what was found: %+v", r, want)
		}
		m := p.Menu(in, ex)[0]
		first := abs(grains(m.InletLeft)) + abs(grains(m.ExhaustLeft))
		if p.solo {
			first = abs(grains(m.InletLeft)+grains(m.ExhaustLeft)) / 2
		}
		if m.Work != r.Work || abs(first-left) > 4000 {
			t.Fatalf("menu begins with %+v, best is %+v", m, r)
		}
	}
}

// million is a train of 10^6 combinations: pinion teeth and keyways move both
// cams, each camwheel has its own teeth and a vernier.
func million(tb testing.TB) ([]Move, *Plan) {
	both := []Cam{Inlet, Exhaust}
	moves := []Move{
		{Key: "whole-train", Unit: "tooth", Cams: both, Step: 15 * units.CrankDegree, Most: 2, Work: units.Hours(1)},
		{Key: "pinion-keyway", Unit: "keyway", Cams: both, Step: 3 * units.CrankDegree, Most: 2, Work: units.Hours(1.5)},
	}
	for c := range Cam(2) {
		moves = append(moves,
			Move{Key: "wheel", Unit: "tooth", Cams: []Cam{c}, Step: units.CrankDegrees(720.0 / 50), Most: 3, Work: units.Hours(1)},
			Move{Key: "vernier", Unit: "hole", Cams: []Cam{c}, Step: units.CrankDegrees(720.0 / 132), Most: 14, Work: units.Hours(1)})
	}
	n := 1
	for _, m := range moves {
		n *= 2*m.Most + 1
	}
	if n < 1_000_000 {
		tb.Fatal("too few combinations: ", n)
	}
	p, err := NewPlan(moves, Options{Near: 0.05 * units.CrankDegree})
	if err != nil {
		tb.Fatal(err)
	}
	return moves, p
}

// The million agree too, from a few starts.
func TestBestOfAMillion(t *testing.T) {
	if testing.Short() {
		t.Skip("each start tries a million combinations")
	}
	moves, p := million(t)
	rng := rand.New(rand.NewPCG(9, 9))
	for range 5 {
		in, ex := units.CrankDegrees(rng.Float64()*40-20), units.CrankDegrees(rng.Float64()*40-20)
		want := exhaustive(moves, p.near, grains(in), grains(ex), false)
		if got := p.scored(in, ex); got != want {
			t.Fatalf("from %v and %v: %+v, exhaustive search %+v", in, ex, got, want)
		}
	}
}
