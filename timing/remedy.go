package timing

import (
	"slices"
	"strings"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// Step is one thing that is moved.
type Step struct {
	Key   string           `json:"key"`
	Text  string           `json:"text"`  // "move the inlet camwheel one tooth later"
	Count int              `json:"count"` // teeth, keyways, holes or shims, advance positive; 0 for any angle
	Shift units.CrankAngle `json:"shift"` // what it moves the cams by, advance positive
	Cams  []Cam            `json:"cams"`
}

// Remedy is a set of moves and what they leave, or something else to do.
type Remedy struct {
	Key         string           `json:"key"`
	Text        string           `json:"text"`
	Steps       []Step           `json:"steps,omitempty"`
	InletLeft   units.CrankAngle `json:"inlet_left"`   // advance left over
	ExhaustLeft units.CrankAngle `json:"exhaust_left"` // advance left over
	Work        units.Time       `json:"work"`
	// Gaps are the clearances of the valves after the move; nothing is known in
	// them without Engine.Head.
	Gaps Gaps `json:"gaps,omitzero"`
	// Refused says why the move must not be made: valves would touch.
	Refused fault.Reason `json:"refused,omitzero"`
}

// placed reports whether a cam stands somewhere within a cycle of its place.
func placed(advance units.CrankAngle) bool { return advance.Abs() <= 720*units.CrankDegree }

// unplaced is the remedy for a cam that stands nowhere.
func unplaced() Remedy {
	return Remedy{Key: leaveKey, Text: leaveText, Refused: noShift}
}

// What a remedy without steps says.
const leaveKey, leaveText = "leave", "leave the cams as they are"

func sooner(a units.CrankAngle) string {
	if a < 0 {
		return "later"
	}
	return "earlier"
}

// decode lists the steps of a combination.
func (p *Plan) decode(kinds []kind, combo int32) []Step {
	var all []Step
	for _, k := range kinds {
		base := int32(2*k.most + 1)
		n := int(combo%base) - k.most
		combo /= base
		if n == 0 {
			continue
		}
		m := &p.moves[k.at]
		shift := m.Step.Times(float64(n))
		many := m.Unit + "s"
		if m.Unit == "tooth" {
			many = "teeth"
		}
		text := "move the " + m.Text + " " + count(n, m.Unit, many) + " " + sooner(shift)
		all = append(all, Step{Key: m.Key + ":" + signed(n), Text: text, Count: n, Shift: shift, Cams: m.Cams})
	}
	return all
}

func (p *Plan) steps(c Cam, a choice) []Step {
	b := &p.arms[c]
	if a.used < 0 && a.press != 0 {
		m := &p.moves[b.press]
		shift := units.CrankDegrees(float64(a.press) / grain)
		text := "turn the " + m.Text + " " + shift.Abs().AtHalfSpeedCam().In(units.CamDegree, 1) + " (" + shift.Abs().In(units.CrankDegree, 1) + ") " + sooner(shift)
		return []Step{{Key: m.Key, Text: text, Shift: shift, Cams: m.Cams}}
	}
	return p.decode(b.kinds, a.combo)
}

// remedy writes out what a search found.
func (p *Plan) remedy(inlet, exhaust units.CrankAngle, j joint, a, b choice) Remedy {
	var r Remedy
	if p.solo {
		r.Steps = p.steps(Inlet, a)
	} else {
		r.Steps = p.decode(p.kinds, j.combo)
		r.Steps = append(r.Steps, p.steps(Inlet, a)...)
		r.Steps = append(r.Steps, p.steps(Exhaust, b)...)
	}
	r.InletLeft, r.ExhaustLeft = inlet, exhaust
	var keys, texts []string
	for _, s := range r.Steps {
		for _, c := range s.Cams {
			if c == Inlet {
				r.InletLeft += s.Shift
			} else {
				r.ExhaustLeft += s.Shift
			}
		}
		keys, texts = append(keys, s.Key), append(texts, s.Text)
	}
	r.Work = units.Seconds(float64(j.work + a.score.work + b.score.work))
	if r.Key, r.Text = strings.Join(keys, "/"), strings.Join(texts, "; "); r.Key == "" {
		r.Key, r.Text = leaveKey, leaveText
	}
	return r
}

// Menu returns the best remedy for every choice of which kinds of thing to move,
// best first as [Plan.Best] orders them, without those that another beats or
// equals in what is left beyond Options.Near, in work and in what is left. The
// first is the one Best returns, or its equal. Where Best refuses, so does the only
// one here.
func (p *Plan) Menu(inlet, exhaust units.CrankAngle) []Remedy {
	if !placed(inlet) || !placed(exhaust) {
		return []Remedy{unplaced()}
	}
	if p == nil {
		p = &Plan{}
	}
	type entry struct {
		score score
		j     joint
		a, b  choice
	}
	var all []entry
	in, ex := -grains(inlet), -grains(exhaust)
	if p.solo {
		for _, a := range p.arms[Inlet].choices(mean(in, ex), p.near) {
			all = append(all, entry{score: a.score, a: a})
		}
	} else {
		at := map[[3]int]int{}
		for i := range p.common {
			j := &p.common[i]
			as, bs := p.arms[Inlet].choices(in-j.value, p.near), p.arms[Exhaust].choices(ex-j.value, p.near)
			used := p.usedBy(j.combo)
			for _, a := range as {
				for _, b := range bs {
					s := score{work: j.work, steps: j.steps}.plus(a.score).plus(b.score)
					key := [3]int{used, a.used, b.used}
					if k, ok := at[key]; !ok {
						at[key] = len(all)
						all = append(all, entry{s, *j, a, b})
					} else if s.less(all[k].score) {
						all[k] = entry{s, *j, a, b}
					}
				}
			}
		}
	}
	slices.SortStableFunc(all, func(a, b entry) int {
		switch {
		case a.score.less(b.score):
			return -1
		case b.score.less(a.score):
			return 1
		}
		return 0
	})
	var kept []entry
	for _, e := range all {
		beaten := false
		for _, k := range kept {
			beaten = beaten || k.score.over <= e.score.over && k.score.work <= e.score.work && k.score.left <= e.score.left
		}
		if !beaten {
			kept = append(kept, e)
		}
	}
	menu := make([]Remedy, len(kept))
	for i, e := range kept {
		menu[i] = p.remedy(inlet, exhaust, e.j, e.a, e.b)
	}
	return menu
}

// usedBy returns which common kinds a combination uses, as bits.
func (p *Plan) usedBy(combo int32) int {
	used := 0
	for i, k := range p.kinds {
		base := int32(2*k.most + 1)
		if combo%base != int32(k.most) {
			used |= 1 << i
		}
		combo /= base
	}
	return used
}

// choices returns the best of every group, and of pressing.
func (b *branch) choices(need, near int64) []choice {
	all := make([]choice, 0, len(b.groups)+1)
	if b.press >= 0 && need != 0 {
		all = append(all, choice{score: score{work: b.pwork}, press: need, used: -1})
	}
	for i := range b.groups {
		m, combo := b.groups[i].nearest(need, near)
		all = append(all, choice{score: m, combo: combo, used: i})
	}
	return all
}
