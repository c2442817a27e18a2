package fastener

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

func TestHexagonsBySystemAndEra(t *testing.T) {
	for _, c := range []struct {
		thread  string
		opt     HexOptions
		spanner string // of the first
		series  HexSeries
	}{
		{"1/4 BSW", HexOptions{Era: BeforeWar}, "1/4 W, 5/16 BS", LargeWhitworth},
		{"1/4 BSW", HexOptions{Era: AfterWar}, "3/16 W, 1/4 BS", SmallWhitworth},
		{"1/4 BSF", HexOptions{}, "3/16 W, 1/4 BS", SmallWhitworth},
		{"3/8-26 cycle", HexOptions{}, "5/16 W, 3/8 BS", SmallWhitworth},
		{"2 BA", HexOptions{}, "2 BA", BAHexagon},
		{"M10", HexOptions{}, "16 mm", MetricISO},
		{"M10", HexOptions{Era: AfterWar}, "17 mm", MetricOld},
		{"M8x1", HexOptions{}, "13 mm", MetricISO},
		{"7/16-14 UNC", HexOptions{}, "5/8 AF", UnifiedBolt},
		{"7/16-14 UNC", HexOptions{Nut: true}, "11/16 AF", UnifiedNut},
		{"3/16 BSW", HexOptions{Era: AfterWar}, "1/8 W", SmallWhitworth},
	} {
		h, err := Hexagons(MustParse(c.thread), c.opt)
		if err != nil || len(h.Hexagons) == 0 || h.Hexagons[0].Series != c.series || h.Hexagons[0].Spanner != c.spanner {
			t.Errorf("%s %+v: %+v, %v", c.thread, c.opt, h.Hexagons, err)
		}
	}
	for _, name := range []string{"G 1/4", "1/4-26 brass", "10-32 UNF"} {
		h, err := Hexagons(MustParse(name), HexOptions{})
		if err != nil || !h.Reason.Given() || len(h.Hexagons) != 0 {
			t.Errorf("%s: %+v, %v", name, h, err)
		}
	}
}

// TestSpannerGeometry: the free turn brings a corner of the hexagon to the jaw,
// checked by turning the hexagon itself.
func TestSpannerGeometry(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		ratio := rapid.Float64Range(1.0001, 1.15).Draw(r, "ratio")
		a := freeTurn(ratio)
		widest := 0.0
		for k := range 6 { // corners at 30° + 60° k, distance 1/sqrt 3 for flats of 1
			widest = max(widest, math.Abs(math.Cos(a+math.Pi/6+float64(k)*math.Pi/3))/math.Sqrt(3))
		}
		if math.Abs(2*widest-ratio) > 1e-12 { // the last bits of a cosine
			r.Fatalf("turned by %v the hexagon is %v wide, want %v", a, 2*widest, ratio)
		}
	})
}

func TestSpannersFor(t *testing.T) {
	caliper := measure.Caliper()
	for _, c := range []struct {
		flats string
		set   []Spanner
		best  string
		grip  Grip
	}{
		{"11.28 mm", nil, "3/16 W, 1/4 BS", Snug},
		{"11.28 mm", []Spanner{{"1/2 AF", units.Inches(0.5)}}, "1/2 AF", SlipsRound},
		{"11.28 mm", []Spanner{{"7/16 AF", units.Inches(7.0 / 16)}}, "7/16 AF", TooSmall},
		{"13.30 mm", []Spanner{{"13 mm", 13 * units.Millimetre}, {"14 mm", 14 * units.Millimetre}}, "14 mm", WillRound},
		{"12.73 mm", []Spanner{{"13 mm", 13 * units.Millimetre}}, "13 mm", Slack},
		{"12.95 mm", nil, "13 mm", Snug},
	} {
		f, err := SpannersFor(measure.MustRead(c.flats, caliper), c.set, FitOptions{})
		if err != nil || f.Fits[0].Spanner.Marking != c.best || f.Fits[0].Grip != c.grip {
			t.Errorf("%s: %+v, %v; want %s, %v", c.flats, f.Fits[:min(2, len(f.Fits))], err, c.best, c.grip)
			continue
		}
		if _, ok := f.Best(); ok != (c.grip <= Slack) {
			t.Errorf("%s: best given %v for grip %v", c.flats, ok, c.grip)
		}
	}
	if _, err := SpannersFor(measure.Reading[units.Length]{}, nil, FitOptions{}); err == nil {
		t.Error("flats not read were taken")
	}
}
