package spring

import (
	"testing"

	"example.com/benchbook/units/measure"
)

// Each reading that could be taken finds what it looks for and little else: the
// likeliest outcome under every cause. Of a recount the outcomes are as counted,
// one more, one fewer; of the others all well, or not.
func TestReadingsFindTheirCause(t *testing.T) {
	finds := map[string]map[string]int{
		"recount":      {"coils:+1": 1, "coils:-1": 2},
		"magnet":       {"stainless": 1, "bronze": 1},
		"known-weight": {"balance-wrong": 1},
		"bare-wire":    {"wire-misread": 1},
		"dead-coils":   {"dead:+1": 1, "dead:-1": 1},
	}
	n := 0
	for _, c := range checks(Readings{}, explanations(80.5e9), nil, nil) {
		found, listed := finds[c.Key]
		if !listed {
			continue
		}
		n++
		for _, e := range append(explanations(80.5e9), explanation{key: measure.SomethingElse}) {
			best, sum := 0, 0.0
			chances := c.Outlooks[e.key].Chances
			for i, p := range chances {
				sum += p
				if p > chances[best] {
					best = i
				}
			}
			if best != found[e.key] || sum < 1-1e-12 || sum > 1+1e-12 {
				t.Errorf("%s under %s: likeliest outcome %d, chances %v", c.Key, e.key, best, chances)
			}
		}
	}
	if n != len(finds) {
		t.Errorf("%d of %d readings", n, len(finds))
	}
}
