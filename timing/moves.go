package timing

import (
	"math"
	"slices"
	"strconv"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Move is one kind of thing that can be moved to time the cams.
type Move struct {
	Key   string           `json:"key"`   // "inlet-wheel"
	Text  string           `json:"text"`  // "inlet camwheel"
	Unit  string           `json:"unit"`  // what is counted: "tooth", "keyway", "hole", "shim"
	Cams  []Cam            `json:"cams"`  // the cams it moves, one or both
	Step  units.CrankAngle `json:"step"`  // what one unit is worth, advance positive; 0: any angle
	Most  int              `json:"most"`  // units either way, if Step is not 0
	Work  units.Time       `json:"work"`  // whatever the number of units
	Shaft bool             `json:"shaft"` // a move of any angle that turns both lobes of one shaft
}

// any reports whether the move is to any angle.
func (m *Move) any() bool { return m.Step == 0 }

// MovesOf lists what can be moved on an engine: a tooth at every mesh, up to
// half a turn of the crank, keyways, verniers, shims, and pressing a cam off its
// wheel unless it is of one piece with it. Errors: the faults of the engine and
// options.
func MovesOf(e Engine, opt Options) ([]Move, error) {
	opt = opt.filled()
	var l fault.List
	l.Under("engine", e.check())
	l.Under("", opt.check())
	if err := l.Err(); err != nil {
		return nil, err
	}
	return movesOf(&e, &opt)
}

func movesOf(e *Engine, opt *Options) ([]Move, error) {
	train, err := wheels(e.Drive)
	if err != nil {
		return nil, err
	}
	var all []Move
	for _, w := range train {
		if w.made {
			all = append(all, Move{
				Key: w.key, Text: w.text, Unit: "tooth", Cams: w.cams, Step: w.crank(),
				Most: int(min(math.Ceil(180/w.worth.Float()), 60)), Work: opt.Work.Tooth,
			})
		}
	}
	if step := keyStep(e); step > 0 {
		all = append(all, Move{
			Key: "pinion-keyway", Text: "pinion", Unit: "keyway", Cams: []Cam{Inlet, Exhaust}, Step: units.CrankDegrees(step),
			Most: e.Keyways / 2, Work: opt.Work.Keyway,
		})
	}
	own := ownShafts(e.Drive)
	for c := range Cam(2) {
		cams, name := []Cam{c}, c.String()
		if !own {
			if c == Exhaust {
				break
			}
			cams, name = []Cam{Inlet, Exhaust}, "camshaft"
		}
		if n := e.vernier(c).ways(); n > 1 {
			all = append(all, Move{Key: name + "-vernier", Text: name + " vernier", Unit: "hole", Cams: cams, Step: units.CrankDegrees(720 / float64(n)), Most: n / 2, Work: opt.Work.Vernier})
		}
		if s := e.shim(c); s.Most > 0 {
			all = append(all, Move{Key: name + "-shim", Text: name + " camwheel", Unit: "shim", Cams: cams, Step: s.Each, Most: s.Most, Work: opt.Work.Shim})
		}
		if e.fixing(c) != OnePiece {
			all = append(all, Move{Key: name + "-press", Text: name + " cam on its wheel", Cams: cams, Work: opt.Work.RePress, Shaft: !own})
		}
	}
	return all, nil
}

// grain is what angles are counted in while searching: a thousand-millionth of a
// crank degree, so that sums are exact and two ways of searching agree to the
// last digit.
const grain = 1e9

func grains(a units.CrankAngle) int64 { return int64(math.Round(a.Degrees() * grain)) }

// score is how a set of moves scores: less is better, the first difference
// decides. The figures of independent moves add up, so the best of a sum is the
// sum of the bests.
type score struct {
	over  int64 // degrees beyond Options.Near left on the cams together, in grains
	work  int64 // seconds
	left  int64 // degrees left on the cams together, in grains
	steps int64
}

func (a score) plus(b score) score {
	return score{a.over + b.over, a.work + b.work, a.left + b.left, a.steps + b.steps}
}

func (a score) less(b score) bool {
	switch {
	case a.over != b.over:
		return a.over < b.over
	case a.work != b.work:
		return a.work < b.work
	case a.left != b.left:
		return a.left < b.left
	}
	return a.steps < b.steps
}

// kind is a Move in whole numbers.
type kind struct {
	step, work int64
	most       int
	any        bool
	at         int // index in Plan.moves
}

// spot is a place that moves of one cam can bring it to.
type spot struct {
	value int64
	steps int64
	combo int32 // which combination, mixed radix over the kinds
}

// group holds the spots that use the same kinds, by value; work is the same for
// all, so that the nearest spot is the best of the group.
type group struct {
	work  int64
	spots []spot
}

// branch is what moves one cam alone.
type branch struct {
	kinds  []kind
	groups []group // by work
	press  int     // index in Plan.moves of a move to any angle, -1 none
	pwork  int64
}

// Plan is a set of moves made ready for searching. It is safe for use by several
// goroutines at once.
type Plan struct {
	moves  []Move
	near   int64
	solo   bool // both lobes on one shaft, or every move moves both
	common []joint
	kinds  []kind // of the common moves
	arms   [2]branch
}

// joint is one combination of the moves that move both cams.
type joint struct {
	value, work, steps int64
	combo              int32
}

// mostSpots bounds what one plan holds; real trains stay far below.
const mostSpots = 200_000

// NewPlan makes moves ready. Where no move tells the cams apart, both lobes are
// taken to sit on one shaft: then the mean of the two is brought home, since
// their separation cannot be changed. Errors: a move without cams or with a
// count, step or work out of range, two moves to any angle for one cam, or more
// than 200 000 combinations for one cam.
func NewPlan(moves []Move, opt Options) (*Plan, error) {
	opt = opt.filled()
	var l fault.List
	l.Under("", opt.check())
	p := &Plan{moves: slices.Clone(moves), near: grains(opt.Near), solo: true}
	p.arms[0].press, p.arms[1].press = -1, -1
	for i, m := range moves {
		path := "moves[" + strconv.Itoa(i) + "]"
		bad := func(field, value, rule string) {
			l.Add(fault.Fault{Code: fault.OutOfRange, Path: path + "." + field, Value: value, Rule: rule})
		}
		if n := len(m.Cams); n < 1 || n > 2 || m.Cams[0] > Exhaust || n == 2 && m.Cams[0]+m.Cams[1] != 1 {
			bad("cams", strconv.Itoa(n), "one cam, or both")
			continue
		}
		if !(m.Step.Abs() <= 360*units.CrankDegree) {
			bad("step", m.Step.String(), "at most 360° crank")
			continue
		}
		if m.any() != (m.Most == 0) || m.Most < 0 || m.Most > 10_000 {
			bad("most", strconv.Itoa(m.Most), "1 to 10000 with a step, 0 without")
			continue
		}
		if !(m.Work >= 0 && m.Work <= units.Hours(10_000)) {
			bad("work", m.Work.String(), "zero to 10000 h")
			continue
		}
		k := kind{step: grains(m.Step), work: int64(math.Round(m.Work.SI())), most: m.Most, any: m.any(), at: i}
		arm := &p.arms[m.Cams[0]]
		if len(m.Cams) == 1 {
			p.solo = false
		} else {
			arm = &p.arms[Inlet]
			if !k.any {
				p.kinds = append(p.kinds, k)
				continue
			}
			if !m.Shaft {
				bad("shaft", "false", "a move of both cams to any angle is one of a shaft that carries both")
				continue
			}
		}
		if k.any {
			if arm.press >= 0 {
				bad("step", "any angle", "one such move for a cam is enough")
			}
			arm.press, arm.pwork = i, k.work
			continue
		}
		arm.kinds = append(arm.kinds, k)
	}
	for i, m := range moves {
		if m.Shaft && !p.solo {
			l.Add(fault.Fault{Code: fault.Conflict, Path: "moves[" + strconv.Itoa(i) + "].shaft", Rule: "lobes on one shaft cannot also be moved apart"})
		}
	}
	if p.solo {
		p.arms[Inlet].kinds, p.kinds = p.kinds, nil
	}
	if l.Len() == 0 {
		l.Under("", tooMany(moves))
	}
	if err := l.Err(); err != nil {
		return nil, err
	}
	each(p.kinds, func(combo int32, value, work, steps int64, _ uint32) {
		p.common = append(p.common, joint{value, work, steps, combo})
	})
	for i := range p.arms {
		p.arms[i].fill()
	}
	return p, nil
}

// tooMany tells whether the moves of one cam, or those of both, make more
// combinations than a plan holds.
func tooMany(moves []Move) error {
	var n [3]int
	for i := range n {
		n[i] = 1
	}
	for _, m := range moves {
		at := 2
		if len(m.Cams) == 1 {
			at = int(m.Cams[0] & 1)
		}
		if n[at] *= 2*m.Most + 1; n[at] > mostSpots {
			return fault.Fault{Code: fault.OutOfRange, Path: "moves", Value: m.Key, Rule: "teeth, vernier holes, shims and keyways may make at most 200000 combinations for one cam"}
		}
	}
	return nil
}

// each calls f for every combination of kinds, with its number in mixed radix.
func each(kinds []kind, f func(combo int32, value, work, steps int64, used uint32)) {
	total := int32(1)
	for _, k := range kinds {
		total *= int32(2*k.most + 1)
	}
	for combo := range total {
		var value, work, steps int64
		var used uint32
		rest := combo
		for i, k := range kinds {
			base := int32(2*k.most + 1)
			n := int64(rest%base) - int64(k.most)
			rest /= base
			if n == 0 {
				continue
			}
			value += n * k.step
			work += k.work
			steps += max(n, -n)
			used |= 1 << i
		}
		f(combo, value, work, steps, used)
	}
}

func (b *branch) fill() {
	at := map[uint32]int{}
	each(b.kinds, func(combo int32, value, work, steps int64, used uint32) {
		g, ok := at[used]
		if !ok {
			g = len(b.groups)
			at[used] = g
			b.groups = append(b.groups, group{work: work})
		}
		b.groups[g].spots = append(b.groups[g].spots, spot{value, steps, combo})
	})
	for i := range b.groups {
		s := b.groups[i].spots
		slices.SortFunc(s, func(a, b spot) int {
			switch {
			case a.value != b.value:
				return int(max(min(a.value-b.value, 1), -1))
			case a.steps != b.steps:
				return int(max(min(a.steps-b.steps, 1), -1))
			}
			return int(a.combo - b.combo)
		})
		b.groups[i].spots = slices.CompactFunc(s, func(a, b spot) bool { return a.value == b.value })
	}
	slices.SortStableFunc(b.groups, func(a, b group) int { return int(max(min(a.work-b.work, 1), -1)) })
}

// choice is what is done with one cam.
type choice struct {
	score score
	combo int32
	press int64 // grains, if pressed
	used  int   // group, or -1 if pressed
}

func abs(x int64) int64 { return max(x, -x) }

// nearest returns the best spot of a group for a need.
func (g *group) nearest(need, near int64) (score, int32) {
	lo, hi := 0, len(g.spots)
	for lo < hi {
		if mid := int(uint(lo+hi) >> 1); g.spots[mid].value < need {
			lo = mid + 1
		} else {
			hi = mid
		}
	}
	best, combo := score{over: math.MaxInt64}, int32(0)
	for i := max(lo-1, 0); i < min(lo+1, len(g.spots)); i++ {
		s := &g.spots[i]
		left := abs(need - s.value)
		if m := (score{max(left-near, 0), g.work, left, s.steps}); m.less(best) {
			best, combo = m, s.combo
		}
	}
	return best, combo
}

// best returns what brings one cam nearest to where it should be.
func (b *branch) best(need, near int64) choice {
	c := choice{score: score{over: math.MaxInt64}}
	if b.press >= 0 && need != 0 {
		c = choice{score: score{work: b.pwork}, press: need, used: -1}
	}
	for i := range b.groups {
		g := &b.groups[i]
		if g.work > c.score.work && c.score.over == 0 {
			break // by work: nothing later can be better
		}
		if m, combo := g.nearest(need, near); m.less(c.score) {
			c = choice{score: m, combo: combo, used: i}
		}
	}
	return c
}

// Best returns the moves that leave the cams best, given how far each stands
// advanced. Best is: least left beyond Options.Near, both cams together; then
// least work; then least left; then fewest steps. No other combination of the
// plan's moves is better by that order; the search is exhaustive over the moves
// of both cams, and for each cam alone finds the nearest place among sorted ones.
// A cam that stands beyond 720°, or nowhere, has a remedy that is refused and
// moves nothing; a nil plan has no moves.
func (p *Plan) Best(inlet, exhaust units.CrankAngle) Remedy {
	if !placed(inlet) || !placed(exhaust) {
		return unplaced()
	}
	if p == nil {
		p = &Plan{}
	}
	bestJoint, a, b := p.search(-grains(inlet), -grains(exhaust))
	return p.remedy(inlet, exhaust, bestJoint, a, b)
}

// mean is the need of both lobes of one shaft.
func mean(a, b int64) int64 { return (a + b) / 2 }

func (p *Plan) search(needIn, needEx int64) (joint, choice, choice) {
	if p.solo {
		return joint{}, p.arms[Inlet].best(mean(needIn, needEx), p.near), choice{}
	}
	best := score{over: math.MaxInt64}
	var at joint
	var in, ex choice
	for i := range p.common {
		j := &p.common[i]
		s := score{work: j.work, steps: j.steps}
		if best.over == 0 && s.work > best.work {
			continue
		}
		a := p.arms[Inlet].best(needIn-j.value, p.near)
		if s = s.plus(a.score); !s.less(best) {
			continue
		}
		b := p.arms[Exhaust].best(needEx-j.value, p.near)
		if s = s.plus(b.score); s.less(best) {
			best, at, in, ex = s, *j, a, b
		}
	}
	return at, in, ex
}
