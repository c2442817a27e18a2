package transmission

import (
	"cmp"
	"math"
	"slices"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// class is causes that expect the same of a reading, with their share.
type class struct {
	share float64
	outlook
}

// expected is what a reading is expected to tell of the cause.
type expected struct {
	part
	bits, hundredths float64
}

// newExpected reckons as [measure.Next] does, to which every cause would have to say
// for every reading what it expects. A test holds it to that.
func newExpected(p part, classes []class) expected {
	nats := 0.0
	for k := range len(outlook{}) {
		whichever := 0.0
		for i := range classes {
			whichever += classes[i].share * classes[i].outlook[k]
		}
		for i := range classes {
			if chance := classes[i].outlook[k]; chance > 0 && whichever > 0 {
				nats += classes[i].share * chance * math.Log(chance/whichever)
			}
		}
	}
	bits := max(nats/math.Ln2, 0)
	return expected{p, bits, math.Round(bits * 100)}
}

// inOrder puts the most telling reading first, and the quicker one where a hundredth
// of a bit makes no difference.
func inOrder(told []expected) []measure.Gain {
	slices.SortStableFunc(told, func(a, b expected) int {
		switch {
		case a.hundredths > b.hundredths:
			return -1
		case a.hundredths < b.hundredths:
			return 1
		}
		return cmp.Compare(a.part.minutes(), b.part.minutes())
	})
	gains := make([]measure.Gain, len(told))
	for i := range told {
		t, g := &told[i], &gains[i]
		g.Key, g.Text = "nuts", "count the turns of one nut out to flush, and turn it back"
		if t.part < parts {
			g.Key, g.Text = rules[t.part].path, rules[t.part].settle
		}
		g.Work, g.Bits = units.MinutesOfTime(t.part.minutes()), t.bits
	}
	return gains
}

// minutes is how long it takes to read a part; the nuts 20, common practice, no source.
func (p part) minutes() float64 {
	if p < parts {
		return rules[p].minutes
	}
	return 20
}
