package transmission

import (
	"math"
	"slices"

	"example.com/benchbook/units"
)

// Repair is one thing, or two, put back to new, and the window that leaves.
type Repair struct {
	Key    string      `json:"key"`  // "hub-nut", or "flat-plates+free-play"
	Text   string      `json:"text"` // "tighten the hub's retaining nut"
	Window Window      `json:"window"`
	Gained units.Angle `json:"gained"` // of width
	Opens  bool        `json:"opens"`  // as wide as wanted
	Work   units.Time  `json:"work"`   // hands-on, common practice, no source
}

// remedy is what a repair puts right. Those that share a bit of part exclude
// each other in a pair.
type remedy struct {
	key, text string
	minutes   float64
	parts     [3]part
	count     int
}

// remedies is read only, easiest first. The minutes are common practice, no source.
var remedies = [...]remedy{
	{"free-play", "set the free play at the lever to its least", 5, [3]part{freePlay}, 1},
	{"rod-play", "take up the push rod's play, or renew rod and ball", 20, [3]part{rodPlay}, 1},
	{"cable-drag", "oil the cable and ease its bends", 20, [3]part{cableEfficiency}, 1},
	{"cable-stretch", "renew the cable, seat its ferrules", 30, [3]part{cableStiffness}, 1},
	{"cable", "renew the cable", 35, [3]part{cableStiffness, cableEfficiency}, 2},
	{"lever", "renew the lever's pivot and nipple, or fit the lever that belongs", 20, [3]part{cablePull}, 1},
	{"even-lift", "trim the nuts until the plate lifts evenly", 25, [3]part{runOut}, 1},
	{"hub-nut", "tighten the hub's retaining nut on a new lock washer", 60, [3]part{hubNutBack}, 1},
	{"springs", "fit a new set of springs", 45, [3]part{springSet, springRate}, 2},
	{"clean-plates", "degrease and dress the plates", 90, [3]part{friction}, 1},
	{"flat-plates", "flatten or renew the bent plates", 100, [3]part{outOfFlat}, 1},
	{"dress-slots", "dress the slots of drum and hub smooth, or renew them", 150, [3]part{tongueGrip}, 1},
	{"new-plates", "fit a new set of plates", 110, [3]part{friction, outOfFlat, wear}, 3},
}

// mend puts what the remedy puts right back to new in v, and reports whether
// that changes anything.
func (r *remedy) mend(s *state, v *vector) bool {
	changed := false
	for _, p := range r.parts[:r.count] {
		to := s.fresh[p]
		if p == freePlay {
			to = min(v[p], s.leastPlay)
		}
		if v[p] != to {
			v[p], changed = to, true
		}
	}
	return changed
}

func (r *remedy) meets(o *remedy) bool {
	for _, p := range r.parts[:r.count] {
		if slices.Contains(o.parts[:o.count], p) {
			return true
		}
	}
	return false
}

// repairs tries every remedy by itself, and those that open the window in twos if no
// single one does.
func (s *state) repairs() (single, pairs []Repair) {
	now := s.bounds(&s.v)
	was := now.width()
	some := false
	useful := make([]*remedy, 0, len(remedies))
	single = make([]Repair, 0, len(remedies))
	for i := range remedies {
		r := &remedies[i]
		v := s.v
		if !r.mend(s, &v) {
			continue
		}
		useful = append(useful, r)
		w := s.window(&v)
		opens := w.Width.Turns() >= s.leastWidth
		some = some || opens
		single = append(single, Repair{Key: r.key, Text: r.text, Window: w, Gained: w.Width - units.Turns(was), Opens: opens, Work: units.MinutesOfTime(r.minutes)})
	}
	slices.SortStableFunc(single, better)
	if some {
		return single, nil
	}
	for i, a := range useful {
		for _, b := range useful[i+1:] {
			if a.meets(b) {
				continue
			}
			v := s.v
			a.mend(s, &v)
			b.mend(s, &v)
			if w := s.bounds(&v); w.width() >= s.leastWidth {
				pairs = append(pairs, Repair{Key: a.key + "+" + b.key, Text: a.text + ", and " + b.text, Window: s.window(&v), Gained: units.Turns(w.width() - was), Opens: true, Work: units.MinutesOfTime(a.minutes + b.minutes)})
			}
		}
	}
	slices.SortStableFunc(pairs, better)
	return single, pairs
}

// better puts those that open the window first, then the greater gain, then
// the quicker. A twentieth of a turn is no difference.
func better(a, b Repair) int {
	if a.Opens != b.Opens {
		if a.Opens {
			return -1
		}
		return 1
	}
	steps := func(r *Repair) int { return int(math.Round(r.Gained.Turns() * 20)) }
	if d := steps(&b) - steps(&a); d != 0 {
		return d
	}
	switch {
	case a.Work < b.Work:
		return -1
	case a.Work > b.Work:
		return 1
	}
	return 0
}
