package timing

import "example.com/benchbook/units/measure"

// firing ranks why the spark comes on the stroke it was seen on. Cams a whole
// crank turn out are no valve fault: the valves open and shut at the same places
// of the crank, and only the spark, if it is not driven from the cams, is then on
// the wrong turn. Whichever it is, the spark is what is re-timed; the odds tell
// where a hand was last at work. Chances and priors are common practice, no
// source.
func firing(r *Readings) (measure.Ranking, error) {
	if r.Spark == NotLooked {
		return measure.Ranking{}, nil
	}
	seen := func(align, magneto, right float64) measure.LogLikelihood {
		ll := look(r.MarksAlign, align) + look(r.MagnetoMarks, magneto) + look(r.Spark, right)
		return func(measure.Data) float64 { return ll }
	}
	const right = 1 - lookWrong
	// a camwheel half its teeth round brings its mark to the pinion's on the other
	// turn, so the marks of both cams a whole turn out still meet
	return measure.Rank(nil, []measure.Cause{
		{Key: "spark-right", Text: "the spark comes on the right stroke", Prior: 0.80, Hypothesis: seen(right, right, right)},
		{Key: "magneto-half-turn", Text: "the magneto or its drive is half a turn out", Prior: 0.10, Hypothesis: seen(right, lookWrong, lookWrong)},
		{Key: "cams-whole-turn", Text: "the cams are a whole turn of the crank out against the magneto; no valve fault", Prior: 0.08, Hypothesis: seen(right, right, lookWrong)},
	}, measure.Cause{Text: "something else", Prior: 0.02, Hypothesis: seen(0.5, 0.5, 0.5)})
}
