package transmission

import (
	"math"
	"testing"
)

// Where a cause leaves the parts that it moves for certain: play gone is none, a plate
// left out is two faces fewer and its own thickness off the pack, two plates together
// are two faces fewer, one at least left.
func TestWhereCausesLeaveTheParts(t *testing.T) {
	c := demo()
	s, _, err := (&Input{Clutch: c}).resolve(Options{})
	if err != nil {
		t.Fatal(err)
	}
	list := s.causes(8, 7, 9)
	for _, w := range []struct {
		key  string
		p    part
		want float64
	}{
		{"free-play-none", freePlay, 0}, {"rod-long", freePlay, 0}, {"rod-long", rodPlay, 0},
		{"plate-left-out", faces, 8}, {"plates-together", faces, 8}, {"plate-left-out", wear, s.plate},
		{"ball-lost", rodPlay, 0.3 + 25.4/4}, {"springs-mixed", springSet, 0.02 * 46}, {"slots-notched", outOfFlat, 0.7},
	} {
		got := s.fresh[w.p] + list[index()[w.key].a].shift(w.p)
		within(t, w.key, got, w.want, 0, 1e-12)
	}
	// a cause that takes a part of a figure away leaves some of it
	for _, key := range []string{"plates-oiled", "cable-soft", "cable-drag", "lever-short", "arm-out"} {
		k := &list[index()[key].a]
		if f := s.fresh[k.open]; !(f+k.low > 0 && k.low < k.high && f+k.high < f) {
			t.Errorf("%s leaves %v to %v of %v", key, f+k.low, f+k.high, f)
		}
	}
}

// A prior is above nothing and at most 1e9.
func TestPriorAtItsLimits(t *testing.T) {
	for prior, taken := range map[float64]bool{5e-324: true, 1e9: true, 0: false, math.Nextafter(1e9, 2e9): false} {
		_, err := Diagnose(Input{Clutch: demo()}, Options{Priors: map[string]float64{"hub-nut": prior}, OneAtATime: true})
		if (err == nil) != taken {
			t.Errorf("%v: %v", prior, err)
		}
	}
}
