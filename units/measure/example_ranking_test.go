package measure_test

import (
	"fmt"
	"math"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// A cylinder read 8.1 bar at cranking where 8.5 is usual: sound, leaking by
// some amount, or a gauge that reads low? The readings are invented.
func ExampleRanking() {
	read := measure.Data{{Value: 8.1, Taken: true}}
	normal := func(mean, sd float64) measure.LogLikelihood {
		return func(d measure.Data) float64 {
			z := (d[0].Value - mean) / sd
			return -z*z/2 - math.Log(sd)
		}
	}
	r, err := measure.Rank(read, []measure.Cause{
		{Key: measure.NothingWrong, Text: "nothing is wrong", Prior: 6, Hypothesis: normal(8.5, 0.5)},
		{Key: "gauge", Text: "the gauge reads low", Prior: 2, Hypothesis: normal(8.0, 0.6)},
		{Key: "valve", Text: "a valve leaks", Prior: 2, Hypothesis: normal(5.0, 1.0)},
	}, measure.Cause{Text: "something else", Prior: 0.3, Hypothesis: normal(7, 4)})
	fmt.Println(err)

	better := normal(8.5, 0.5).LogLikelihood(read) - normal(5, 1).LogLikelihood(read)
	fmt.Printf("the reading speaks %.0f to 1 against a leaking valve\n", math.Exp(better))
	first := r.Leader()
	fmt.Println(first.Text+":", first.Words())
	for _, o := range r.LikeLeader()[1:] {
		fmt.Println("  not to be told from:", o.Text)
	}
	for _, o := range r.Within(10) {
		fmt.Printf("%2d %% %s\n", o.Percent, o.Text)
	}
	if o, ok := r.Of("valve"); ok {
		fmt.Println(o.Text+":", o.Words())
	}
	// Output:
	// <nil>
	// the reading speaks 177 to 1 against a leaking valve
	// nothing is wrong: likely
	//   not to be told from: the gauge reads low
	// 72 % nothing is wrong
	// 27 % the gauge reads low
	// a valve leaks: hardly
}

// A ranking prints as a list, which is all that a short script needs.
func ExampleRanking_String() {
	d := measure.Data{{Value: 2, Taken: true}}
	at := func(mean float64) measure.Gaussian { return measure.Gaussian{Mean: []float64{mean}, Own: []float64{1}} }
	r, err := measure.Rank(d, []measure.Cause{
		{Key: measure.NothingWrong, Text: "nothing is wrong", Prior: 1, Hypothesis: at(0)},
		{Key: "bent", Text: "the rod is bent", Prior: 1, Hypothesis: at(2)},
	}, measure.Cause{Text: "something else", Prior: 0.1, Hypothesis: at(6)})
	fmt.Println(err)
	fmt.Println(r)
	// Output:
	// <nil>
	// 88 % the rod is bent: very likely
	// 12 % nothing is wrong: unlikely
}

// Does a cause of one's own fit at all, and what should the next reading be if
// it is true? The inlet opened 16° early; the exhaust has not been read.
// A washer left out does what a loose nut does, and is only seldomer done: odds
// alone would drop it from the list. Invented readings.
func ExampleRanking_Suspects() {
	read := measure.Data{{Value: 0.9, Taken: true}} // mm of lift
	lift := func(mean float64) measure.LogLikelihood {
		return func(d measure.Data) float64 {
			z := (d[0].Value - mean) / 0.3
			return -z * z / 2
		}
	}
	r, err := measure.Rank(read, []measure.Cause{
		{Key: "nut", Text: "the hub's nut is loose", Prior: 40, Hypothesis: lift(1)},
		{Key: "washer", Text: "the washer behind it was left out", Prior: 1, Hypothesis: lift(1)},
		{Key: "plates", Text: "the plates are bent", Prior: 40, Hypothesis: lift(2)},
	}, measure.Cause{Text: "something else", Prior: 0.1, Hypothesis: lift(2)})
	fmt.Println(len(r.Within(20)), err)
	for _, o := range r.Suspects(20) {
		fmt.Println(o.Text)
	}
	// Output:
	// 1 <nil>
	// the hub's nut is loose
	// the washer behind it was left out
}

func ExampleGaussian_Outlook() {
	mark := measure.Effect{Name: "TDC mark", SD: 1, Column: []float64{1, 1}}
	tooth := measure.Gaussian{Mean: []float64{15, 15}, Own: []float64{1, 1}, Shared: []measure.Effect{mark}}
	right := measure.Gaussian{Mean: []float64{0, 0}, Own: []float64{1, 1}, Shared: []measure.Effect{mark}}
	read := measure.Data{{Value: 16, Taken: true}, {}}

	next := tooth.Outlook(1, read)
	fmt.Printf("a tooth out: the exhaust should read %.1f ± %.1f early\n", next.Mean, next.SD)
	fmt.Printf("better than as it should be by a factor of e^%.0f\n", tooth.LogLikelihood(read)-right.LogLikelihood(read))

	// Both may be put to work on the next reading.
	r := measure.Ranking{Odds: []measure.Odds{{Key: "tooth", Share: 0.5}, {Key: "right", Share: 0.5}}}
	gain, err := measure.Next(r, []measure.Check{{
		Key: "exhaust", Text: "read where the exhaust closes", Work: units.MinutesOfTime(5),
		Outlooks: map[string]measure.Outlook{"tooth": next, "right": right.Outlook(1, measure.Data{{}, {}})},
	}})
	fmt.Printf("%s: %.1f bit %v\n", gain[0].Text, gain[0].Bits, err)
	// Output:
	// a tooth out: the exhaust should read 15.5 ± 1.2 early
	// better than as it should be by a factor of e^64
	// read where the exhaust closes: 1.0 bit <nil>
}

// Where nothing leads, a ratio to the leader leaves much belief outside; the set
// that holds 85 % of it goes on until it does. Invented causes.
func ExampleRanking_Holding() {
	same := measure.LogLikelihood(func(measure.Data) float64 { return 0 })
	causes := []measure.Cause{
		{Key: "nuts", Text: "the nuts", Prior: 30, Hypothesis: same},
		{Key: "oil", Text: "oil", Prior: 25, Hypothesis: same},
	}
	for _, rare := range []string{"rod", "ball", "arm", "cable", "hub", "plate"} {
		causes = append(causes, measure.Cause{Key: rare, Text: "the " + rare, Prior: 7, Hypothesis: same})
	}
	r, err := measure.Rank(nil, causes, measure.Cause{Text: "something else", Prior: 3, Hypothesis: same})
	fmt.Println(err)
	share := func(list []measure.Odds) (sum float64) {
		for _, o := range list {
			sum += o.Share
		}
		return sum
	}
	near, held := r.Within(4), r.Holding(0.85)
	fmt.Printf("within 4:1: %d of %d, who hold %.0f %%\n", len(near), len(r.Odds), 100*share(near))
	fmt.Printf("holding 85 %%: %d, who hold %.0f %%\n", len(held), 100*share(held))
	// Output:
	// <nil>
	// within 4:1: 2 of 9, who hold 55 %
	// holding 85 %: 7, who hold 90 %
}
