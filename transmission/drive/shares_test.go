package drive_test

import (
	"math"
	"slices"
	"testing"

	"example.com/benchbook/refdata"
	"example.com/benchbook/transmission/drive"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

func bell(x, mean, sd float64) float64 {
	return math.Exp(-(x-mean)*(x-mean)/(2*sd*sd)) / (sd * math.Sqrt(2*math.Pi))
}

func checkShares(t *testing.T, r measure.Ranking, weight map[string]float64) {
	t.Helper()
	all := 0.0
	for _, w := range weight {
		all += w
	}
	for _, o := range r.Odds {
		if want := weight[o.Key] / all; math.Abs(o.Share-want) > 1e-9 {
			t.Errorf("%s has %.6f, by Bayes' rule %.6f", o.Key, o.Share, want)
		}
	}
}

// Shares of chains by Bayes' rule with the spreads that the function's words name:
// pitch worn by 1 ± 1 %, width ± 0.1 mm, roller ± 0.15 mm, beside what was read;
// a chain of no list counts for one in twenty of all. What the sizes rest on is
// named for every chain with a share worth showing, and the likeliest in any case.
func TestChainSharesByBayes(t *testing.T) {
	read := func(x float64) measure.Reading[units.Length] {
		return measure.Of(units.Millimetres(x), units.Millimetres(0.05))
	}
	for _, in := range []drive.ChainReadings{
		{Pitch: read(12.9)}, {Pitch: read(16.1), Width: read(9.5)}, {Roller: read(8.4)}, {Pitch: read(12.8), Width: read(5), Roller: read(7.6)}, {Pitch: read(9.7)}, {Pitch: read(11), Roller: read(7)}, {Pitch: read(33)},
	} {
		id := ok(drive.IdentifyChain(in))(t)
		weight := map[string]float64{}
		sources := map[string][]refdata.Source{}
		for c := range refdata.Chains().All() {
			w := 1.0
			if p := c.Pitch.Millimetres(); in.Pitch.Taken() {
				w *= bell(in.Pitch.Value().Millimetres(), 1.01*p, math.Hypot(0.05, 0.01*p))
			}
			if in.Width.Taken() {
				w *= bell(in.Width.Value().Millimetres(), c.InnerWidth.Millimetres(), math.Hypot(0.05, 0.1))
			}
			if in.Roller.Taken() {
				w *= bell(in.Roller.Value().Millimetres(), c.Roller.Millimetres(), math.Hypot(0.05, 0.15))
			}
			weight[c.Number] = w
			sources[c.Number] = c.SizeOrigin.Sources()
		}
		other := 0.05 * float64(len(weight))
		for _, b := range []struct {
			r        measure.Reading[units.Length]
			mean, sd float64
		}{{in.Pitch, 14, 6}, {in.Width, 7, 4}, {in.Roller, 9, 4}} {
			if b.r.Taken() {
				other *= bell(b.r.Value().Millimetres(), b.mean, b.sd)
			}
		}
		weight[measure.SomethingElse] = other
		checkShares(t, id.Causes, weight)

		named, likeliest := 0, true
		for _, o := range id.Causes.Odds {
			if o.Key == measure.SomethingElse {
				continue
			}
			for _, s := range sources[o.Key] {
				has := slices.Contains(id.Basis.Sources, s)
				if (likeliest || o.Share > 0.01) && !has {
					t.Errorf("%v: %s has a share of %.3f, and what its size rests on is not named", in, o.Key, o.Share)
				}
				if has {
					named++
				}
			}
			likeliest = false
		}
		if named == 0 || len(id.Basis.Sources) == 0 {
			t.Errorf("%v: no source", in)
		}
	}
}

// Shares of boxes by Bayes' rule: turns of the crank are ratio times the rest of
// the reduction; another box has each gear anywhere, 1.8 ± 0.7, and one in ten of
// all weight.
func TestBoxSharesByBayes(t *testing.T) {
	sets := []drive.GearSet{
		{Key: "wide", Box: ok(drive.BoxOf("2.67", "1.77", "1.27", "1"))(t), Prior: 2},
		{Key: "close", Box: ok(drive.BoxOf("2.2", "1.44", "1.12", "1"))(t)},
	}
	in := drive.TurnReadings{Primary: drive.Train{{20, 44}}, Final: drive.Train{{18, 45}}}
	const rest = 44.0 / 20 * 45 / 18
	turns, u := []float64{13.6, 0, 6.7, 5.4}, 0.6
	for _, x := range turns {
		r := measure.Reading[units.Ratio]{}
		if x > 0 {
			r = measure.Of(units.Value(x), units.Value(u))
		}
		in.Turns = append(in.Turns, r)
	}
	id := ok(drive.IdentifyBox(in, sets))(t)
	weight := map[string]float64{measure.SomethingElse: 0.1 * 3}
	for _, s := range sets {
		weight[s.Key] = max(s.Prior, 1)
	}
	for i, x := range turns {
		if x == 0 {
			continue
		}
		for _, s := range sets {
			weight[s.Key] *= bell(x, s.Box.Gears()[i].Ratio.Float()*rest, u)
		}
		weight[measure.SomethingElse] *= bell(x, 1.8*rest, math.Hypot(u, 0.7*rest))
		near(t, "ratio", id.Ratios[i].Value().SI(), x/rest, 1e-12)
	}
	checkShares(t, id.Causes, weight)
}
