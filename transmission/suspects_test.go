package transmission

import (
	"slices"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/units/measure"
)

// The suspects are those the ranking holds until there is belief enough and those it
// suspects beside the leader, no more and no fewer, in its order.
func TestSuspectsOfTheRanking(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		causes := make([]measure.Cause, rapid.IntRange(2, 60).Draw(t, "causes"))
		for i := range causes {
			l := rapid.Float64Range(-8, 0).Draw(t, "log likelihood")
			causes[i] = measure.Cause{Key: string(rune('a' + i)), Prior: rapid.Float64Range(0.01, 100).Draw(t, "prior"), Hypothesis: measure.LogLikelihood(func(measure.Data) float64 { return l })}
		}
		r, err := measure.Rank(nil, causes[1:], causes[0])
		if err != nil {
			t.Fatal(err)
		}
		var want []string
		either := slices.Concat(r.Holding(suspectBelief), r.Suspects(suspectOdds))
		for _, o := range r.Odds {
			if slices.Contains(either, o) {
				want = append(want, o.Key)
			}
		}
		if got := suspects(r); !slices.Equal(got, want) {
			t.Errorf("%v, want %v", got, want)
		}
	})
}
