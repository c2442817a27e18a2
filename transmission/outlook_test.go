package transmission

import (
	"math"
	"testing"

	"example.com/benchbook/units/measure"
)

// What each cause makes one expect of each reading: the chances beyond two of its usual
// deviations from new, averaged over what the cause leaves open by a sum. The usual
// deviation is that of the part as new with twice its finest reading. To the millionth
// that the sum gives.
func TestOutlooks(t *testing.T) {
	for name, sim := range told(t) {
		if name != "nothing" && name != "tight, lift" {
			continue
		}
		m := &sim.m
		below := func(z float64) float64 { return 0.5 * math.Erfc(-z/math.Sqrt2) }
		for p := range nuts + 1 {
			usual, span := math.Hypot(m.base[p].u, 0.02), 2.0 // turns of the nuts
			if p < parts {
				usual, span = math.Hypot(m.base[p].u, 2*rules[p].finest), rules[p].span
			}
			low := 0.8*below(-2) + 0.2*below(-2*usual/math.Hypot(usual, span))
			for k, want := range []float64{low, 1 - 2*low, low} {
				within(t, name+": not listed", m.strayed(p)[k], want, 0, 1e-8)
			}
			for i := range m.causes {
				c := &m.causes[i]
				by, steps := 0.0, 1
				for _, f := range c.fixed {
					if f.part == p {
						by += f.by
					}
				}
				from, to := by, by
				if c.open == p && c.low != c.high {
					steps, from, to = 20_000, by+c.low, by+c.high
				}
				if from == 0 && to == 0 {
					continue
				}
				lowest, highest := 0.0, 0.0
				for n := range steps {
					moved := (from + (float64(n)+0.5)/float64(steps)*(to-from)) / usual
					lowest += below(-2-moved) / float64(steps)
					highest += below(moved-2) / float64(steps)
				}
				for k, want := range []float64{lowest, 1 - lowest - highest, highest} {
					within(t, name+": "+c.key, m.moved(p, i)[k], want, 0, 1e-6)
				}
			}
		}
	}
}

// Chances that rounding takes past nothing or one are put right, so that they add up.
func TestOutlookAddsUp(t *testing.T) {
	for _, c := range []struct {
		low, high float64
		want      outlook
	}{
		{0.1, 0.7, outlook{0.1, 0.6, 0.3}}, {-1e-9, 0.5, outlook{0, 0.5, 0.5}}, {0.4, 0.3, outlook{0.4, 0, 0.6}},
		{1.1, 1.2, outlook{1, 0, 0}}, {0.2, 1.5, outlook{0.2, 0.8, 0}}, {0, 0, outlook{0, 0, 1}}, {1, 1, outlook{1, 0, 0}},
	} {
		got := newOutlook(c.low, c.high)
		for k := range got {
			within(t, "chance", got[k], c.want[k], 0, 2e-9)
			if got[k] < 0 || got[k] > 1 {
				t.Errorf("%v gives %v", c, got)
			}
		}
	}
}

// A cause counts from the share named slight, which itself still counts, and no more
// than so many of them do.
func TestWhichCausesCount(t *testing.T) {
	sim := told(t)["nothing"]
	m, data := &sim.m, make(measure.Data, dataLength)
	keys := []string{"hub-nut", "cable-soft", "plates-oiled", "springs-weak", "rod-worn", "plates-worn", "lever-short", "cable-drag", "lift-uneven", "nuts-out", "free-play-large", "plates-bent", "arm-out"}
	bits := func(shares ...float64) (sum float64) {
		var r measure.Ranking
		for i, s := range shares {
			r.Odds = append(r.Odds, measure.Odds{Key: keys[i], Share: s})
		}
		for _, g := range m.next(data, r) {
			sum += g.Bits
		}
		return sum
	}
	if alone := bits(0.9); bits(0.9, slight) == alone || bits(0.9, math.Nextafter(slight, 0)) != alone {
		t.Error("a cause counts from another share")
	}
	twelve := []float64{0.2, 0.1, 0.1, 0.1, 0.1, 0.1, 0.05, 0.05, 0.05, 0.05, 0.05, 0.04}
	if bits(twelve...) == bits(twelve[:11]...) || bits(append(twelve, 0.04)...) != bits(twelve...) {
		t.Error("another number of causes counts")
	}
}
