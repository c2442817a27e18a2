package transmission

import (
	"math"
	"testing"

	"example.com/benchbook/units/measure"
)

// The places where nuts that were not read are looked at have together the moments of
// a normal figure, and its chances to about the hundredth they say.
func TestPlacesAreNormal(t *testing.T) {
	for left, places := range map[float64][]nutPlace{leftOfThree: threePlaces[:], leftOfFour: fourPlaces[:]} {
		sum, mean, square := 0.0, 0.0, 0.0
		for _, p := range places {
			sum += p.weight
			mean += p.weight * p.at
			square += p.weight * (p.at*p.at + left*left)
		}
		within(t, "weight", sum, 1, 0, 1e-12)
		within(t, "mean", mean, 0, 0, 1e-12)
		within(t, "square", square, 1, 0, 0.01)
		for z := -4.0; z <= 4; z += 0.05 {
			below := 0.0
			for _, p := range places {
				below += p.weight * 0.5 * math.Erfc((p.at-z)/left/math.Sqrt2)
			}
			within(t, "chance below", below, 0.5*math.Erfc(-z/math.Sqrt2), 0, 0.0105)
		}
	}
}

// What a cause leaves open, in pieces: their evidence, and their mean and variance
// together, are those of the figure the reading leaves, by integrating over the amount.
// Read badly, so that it is wide, read well, so that the bounds do not matter, with
// bounds that cut it, and not read at all.
func TestPiecesOfWhatIsOpen(t *testing.T) {
	s, _, err := (&Input{Clutch: demo()}).resolve(Options{})
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		low, high, u, by, read float64 // of the open amount; the part's own spread; what a reading is off and its error
		level                  int
	}{
		{1, 3, 0.2, 0, 0, 4}, {1, 3, 0, 0, 0, 2}, {-3, -1, 0.3, 0, 0, 1},
		{1, 3, 0.3, 2, 1.5, 4}, {1, 3, 0, 1.2, 0.8, 4}, {1, 3, 0.2, 3.4, 0.9, 4}, {-3, -1, 0.3, -0.5, 0.8, 4},
		{1, 3, 0.05, 2.1, 0.1, 1}, {1, 3, 0, 1.8, 0.2, 1},
		{1, 3, 0.3, 2, 0.4, 4}, // 4 x 0.5 is just the span: not yet told by its reading alone
	} {
		m, _ := newModel(&s)
		const p = rodPlay
		m.base[p] = figure{0.3, c.u}
		m.fineness = c.level
		open := cause{open: p, low: c.low, high: c.high}
		data := make(measure.Data, dataLength)
		var w way
		at, wide := 0.3, 1.0
		if c.read > 0 {
			data[p] = measure.Datum{Value: at + c.by, Taken: true}
			m.own[p] = c.read
		}
		m.pieces(data, &open, &w)
		total := math.Hypot(c.u, c.read)
		k := 0.0 // how far a reading moves the part, its amount given
		var weight func(a float64) float64
		if weight = func(float64) float64 { return 1 / (c.high - c.low) }; c.read > 0 {
			weight = func(a float64) float64 { return normalDensity(c.by, a, total) / (c.high - c.low) }
			k = c.u * c.u / (total * total)
			wide = fine(c.low, c.high, weight)
			within(t, "evidence", w.log, math.Log(wide), 0, 1e-6)
		}
		value := func(a float64) float64 { return at + a + k*(c.by-a) }
		mean := fine(c.low, c.high, func(a float64) float64 { return weight(a) * value(a) }) / wide
		square := fine(c.low, c.high, func(a float64) float64 { return weight(a) * (value(a) - mean) * (value(a) - mean) })/wide + c.u*c.u*(1-k)
		if w.level != c.level {
			t.Errorf("%v: %d pieces", c, w.level)
		}
		gotMean, gotSquare := 0.0, 0.0
		for _, l := range w.levels[:w.level] {
			gotMean += l.x / float64(w.level)
		}
		for _, l := range w.levels[:w.level] {
			gotSquare += (l.u*l.u + (l.x-gotMean)*(l.x-gotMean)) / float64(w.level)
		}
		// a piece is looked at in its middle, which is all there is to it unless a badly
		// read figure leans to one end: then off by a twentieth of the span
		off, spread := 0.05*(c.high-c.low), 0.09
		if c.read == 0 || c.level == 1 {
			off, spread = 1e-4, 1e-3
		}
		within(t, "mean", gotMean, mean, 0, off)
		within(t, "mean of all in one", w.whole.x, mean, 0, off)
		within(t, "deviation", math.Sqrt(gotSquare), math.Sqrt(square), 0, spread)
		if c.read == 0 || c.level == 1 { // else it is taken as wide as if nothing leant
			within(t, "deviation of all in one", w.whole.u, math.Sqrt(square), 0, spread)
		}
	}
}
