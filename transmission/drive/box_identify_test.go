package drive_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.com/benchbook/transmission/drive"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// Counts made with known errors: of the sets given a share, that share are true;
// a set with another number of gears never is.
func TestIdentifyBoxIsCalibrated(t *testing.T) {
	rng := rand.New(rand.NewPCG(8, 8))
	sets := []drive.GearSet{
		{Key: "wide", Box: ok(drive.BoxOf("2.67", "1.77", "1.27", "1"))(t)}, {Key: "medium", Box: ok(drive.BoxOf("2.55", "1.7", "1.25", "1"))(t)},
		{Key: "close", Box: ok(drive.BoxOf("2.2", "1.44", "1.12", "1"))(t)}, {Key: "three", Box: ok(drive.BoxOf("2.5", "1.5", "1"))(t)},
	}
	var claimed, right float64
	const n = 3000
	for range n {
		s := sets[rng.IntN(3)]
		in := drive.TurnReadings{Primary: drive.Train{{20, 44}}, Final: drive.Train{{18, 45}}}
		for i, g := range s.Box.Gears() {
			if i == 3 || rng.IntN(2) == 0 {
				in.Turns = append(in.Turns, measure.Of(units.Value(5.5*g.Ratio.Float()+0.4*rng.NormFloat64()), units.Value(0.4)))
			} else {
				in.Turns = append(in.Turns, measure.Reading[units.Ratio]{})
			}
		}
		id := ok(drive.IdentifyBox(in, sets))(t)
		var best measure.Odds
		total := 0.0
		for _, o := range id.Causes.Odds {
			if o.Key == measure.SomethingElse { // never true here
				continue
			}
			if o.Key == "three" && o.Share > 0 {
				t.Fatal("four gears counted, three allowed")
			}
			total += o.Share
			if o.Share > best.Share {
				best = o
			}
		}
		claimed += best.Share / total
		if best.Key == s.Key {
			right++
		}
	}
	t.Logf("leader true %.1f %%, claimed %.1f %%", 100*right/n, 100*claimed/n)
	if math.Abs(right-claimed)/n > 0.02+3*math.Sqrt(0.25/n) {
		t.Errorf("true %.3f, claimed %.3f", right/n, claimed/n)
	}
	if _, err := drive.IdentifyBox(drive.TurnReadings{}, nil); err == nil {
		t.Error("nothing given")
	}
}
