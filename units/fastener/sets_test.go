package fastener

import (
	"fmt"
	"math"
	"math/big"
	"slices"
	"strconv"
	"strings"
	"testing"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
)

// inSixteenths writes n/16 as a workshop does, "1 5/16", by exact fractions.
func inSixteenths(n int64) string {
	whole, rest := n/16, big.NewRat(n%16, 16)
	switch {
	case rest.Sign() == 0:
		return strconv.FormatInt(whole, 10)
	case whole == 0:
		return rest.RatString()
	}
	return fmt.Sprint(whole, " ", rest.RatString())
}

func TestFractionDrillsAreInLowestTerms(t *testing.T) {
	for i, d := range FractionDrills() {
		n := big.NewRat(int64(i+1), 64)
		inches, _ := n.Float64()
		if d.Name != n.RatString()+" in" || d.Diameter != units.Inches(inches) {
			t.Errorf("%d/64 is %s, %v", i+1, d.Name, d.Diameter)
		}
	}
}

// TestMetricDrillsAreThoseOfTheDoc counts them out in hundredths of a millimetre:
// by 0.1 to 14 mm, by 0.5 to 50 mm, and those of ISO 2306.
func TestMetricDrillsAreThoseOfTheDoc(t *testing.T) {
	hundredths := map[int]bool{}
	for n := 50; n <= 1400; n += 10 {
		hundredths[n] = true
	}
	for n := 1450; n <= 5000; n += 50 {
		hundredths[n] = true
	}
	for d := range refdata.MetricDrills().All() {
		hundredths[int(math.Round(d.Diameter.Millimetres()*100))] = true
	}
	var want []string
	for n := range 7000 {
		if hundredths[n] {
			want = append(want, strings.TrimSuffix(strings.TrimRight(fmt.Sprintf("%.2f", float64(n)/100), "0"), ".")+" mm")
		}
	}
	var got []string
	for _, d := range MetricDrills() {
		got = append(got, d.Name)
		if mm, err := strconv.ParseFloat(strings.TrimSuffix(d.Name, " mm"), 64); err != nil || math.Abs(mm-d.Diameter.Millimetres()) > 1e-12 { // the last bit
			t.Errorf("%s is %v", d.Name, d.Diameter)
		}
	}
	if !slices.Equal(got, want) {
		t.Errorf("drills %v, want %v", got, want)
	}
}

func TestDrillsRise(t *testing.T) {
	all := Drills()
	if n := len(NumberDrills()) + len(LetterDrills()) + len(FractionDrills()) + len(MetricDrills()); len(all) != n {
		t.Errorf("%d drills of %d", len(all), n)
	}
	for _, set := range [][]Drill{all, NumberDrills(), LetterDrills(), MetricDrills()} {
		for i := range set[1:] {
			if set[i].Diameter > set[i+1].Diameter {
				t.Errorf("%v before %v", set[i], set[i+1])
			}
		}
	}
}

// TestSpannersAreThoseOfTheDoc: BA 0 to 10, across flats by sixteenths, metric by
// millimetres, and the Whitworth ones of the table with both markings.
func TestSpannersAreThoseOfTheDoc(t *testing.T) {
	width := map[string]units.Length{}
	for n := int64(4); n <= 24; n++ {
		width[inSixteenths(n)+" AF"] = units.Inches(float64(n) / 16)
	}
	for n := 4; n <= 36; n++ {
		width[strconv.Itoa(n)+" mm"] = units.Millimetres(float64(n))
	}
	for n := 0; n <= 10; n++ {
		name := strconv.Itoa(n) + " BA"
		width[name] = MustParse(name).Major().Times(1.75)
	}
	for s := range refdata.WhitworthSpanners().All() {
		width[strings.TrimSuffix(s.W+", "+s.BS, ", ")] = s.AcrossFlats
	}
	got := Spanners()
	if len(got) != len(width) {
		t.Errorf("%d spanners, want %d", len(got), len(width))
	}
	for i, s := range got {
		w, ok := width[s.Marking]
		if !ok || (s.Width-w).Abs() > units.Millimetres(0.0051) { // BA widths are rounded to 0.01 mm
			t.Errorf("%s is %v wide, want %v", s.Marking, s.Width, w)
		}
		if i > 0 && s.Width < got[i-1].Width {
			t.Errorf("%v after %v", s, got[i-1])
		}
	}
}

// TestGaugeMarksAreCounted: 1/0 is 0, 7/0 is -6; A is 1 and Z 26; between marks the
// diameter runs straight, as between 10 and 11 SWG (0.128 and 0.116 in, BS 3737).
func TestGaugeMarksAreCounted(t *testing.T) {
	for _, c := range []struct {
		g      Gauge
		number float64
		inch   float64
	}{
		{SWG, -6, 0.5}, {SWG, 0, 0.324}, {SWG, 10.25, 0.125},
		{LetterDrill, 1, 0.234}, {LetterDrill, 26, 0.413}, {NumberDrill, 7, 0.201},
	} {
		d, err := c.g.At(c.number)
		if err != nil || math.Abs(d.Inches()-c.inch) > 1e-12 { // last bits of the inch
			t.Errorf("%v %v is %v in, %v", c.g, c.number, d.Inches(), err)
		}
	}
	_, err := SWG.Diameter("51")
	if err == nil || err.Error() != "mark: 51: SWG runs from 7/0 to 50" {
		t.Error(err)
	}
	_, err = LetterDrill.At(27)
	if err == nil || err.Error() != "number: 27: 1 to 26" {
		t.Error(err)
	}
}

// TestNearestTakesTheFirstOfTwo: half way between two marks the earlier one is named.
func TestNearestTakesTheFirstOfTwo(t *testing.T) {
	ties := 0
	for _, g := range []Gauge{SWG, NumberDrill, LetterDrill} {
		s := g.sizes()
		for i := range s[1:] {
			a, b := s[i], s[i+1]
			mid := (a.Diameter + b.Diameter).Times(0.5)
			if (mid - a.Diameter).Abs() != (mid - b.Diameter).Abs() {
				continue // rounding has moved it to one side
			}
			ties++
			if got, off, err := g.Nearest(mid); err != nil || got != a || off != mid-a.Diameter {
				t.Errorf("%v: %v is nearest to %v, %v", g, mid, got, err)
			}
		}
	}
	if ties < 10 {
		t.Errorf("only %d ties", ties)
	}
}
