package units

import (
	"math"
	"strconv"
	"testing"

	"pgregory.net/rapid"

	"example.com/benchbook/units/fault"
)

// TestTextReadsBack holds the text of any finite value of any quantity to
// reading back to the same bits.
func TestTextReadsBack(t *testing.T) {
	for _, k := range allKinds {
		t.Run(k.name, rapid.MakeCheck(func(t *rapid.T) {
			v := rapid.Float64().Draw(t, "value")
			if v-v != 0 || v < 0 && k.affine {
				t.Skip("no text stands for it")
			}
			s := string(text(k, nil, v))
			back, _, err := parse(k, s)
			if err != nil || back != v {
				t.Fatalf("%v is %q, which reads as %v, %v", v, s, back, err)
			}
		}))
	}
}

// TestUsualTextReadsBack does the same in the range of the workshop, where the
// text is in a handy unit.
func TestUsualTextReadsBack(t *testing.T) {
	for _, k := range allKinds {
		t.Run(k.name, rapid.MakeCheck(func(t *rapid.T) {
			u := rapid.SampledFrom(k.units).Draw(t, "unit")
			x := float64(rapid.IntRange(-999_999, 999_999).Draw(t, "figure")) / float64(rapid.SampledFrom([]int{1, 10, 100, 1000, 64}).Draw(t, "over"))
			v := (x+u.off)*u.num/u.den + u.post
			if v < 0 && k.affine {
				t.Skip("below absolute zero")
			}
			s := string(text(k, nil, v))
			back, _, err := parse(k, s)
			if err != nil || back != v {
				t.Fatalf("%v is %q, which reads as %v, %v", v, s, back, err)
			}
		}))
	}
}

// TestUnitsReadThemselves reads one of every unit by every spelling and holds
// it to the unit's size: one rounding, or two where there is an offset.
func TestUnitsReadThemselves(t *testing.T) {
	for _, k := range allKinds {
		for _, u := range k.units {
			s := u.symbol
			if k.shaft != "" {
				s += " " + k.shaft
			}
			for _, text := range []string{"1 " + s, "1" + s, "1.0 " + s, "  1  " + s + " "} {
				if s != "" && s[0] == 'e' || u.symbol == "" && text == "1" {
					continue
				}
				got, _, err := parse(k, text)
				want := (1+u.off)*u.num/u.den + u.post
				if err != nil || math.Abs(got-want) > 0x1p-52*math.Abs(want) {
					t.Errorf("%s: %q reads as %v, %v, not %v", k.name, text, got, err, want)
				}
			}
		}
	}
}

// TestSixtyFourths holds n/64 in to be exact both ways: n times 127/320 mm is
// rounded once, and comes back whole.
func TestSixtyFourths(t *testing.T) {
	for n := range 4*64 + 1 {
		l, err := ParseLength(strconv.Itoa(n) + "/64 in")
		if err != nil {
			t.Fatal(err)
		}
		if want := float64(n*127) / 320; l.Millimetres() != want {
			t.Errorf("%d/64 in is %v mm, not %v", n, l.Millimetres(), want)
		}
		if back := l.Inches() * 64; back != float64(n) {
			t.Errorf("%d/64 in comes back as %v/64", n, back)
		}
		if Inches(float64(n)/64) != l {
			t.Errorf("%d/64 in differs as text and as number", n)
		}
		f, rest, err := NearestFraction(l, 64)
		if err != nil || rest != 0 || f.Length() != l {
			t.Errorf("%d/64 in is nearest to %v with %v over, %v", n, f, rest, err)
		}
	}
}

// TestDegrees holds whole degrees with minutes to be exact.
func TestDegrees(t *testing.T) {
	for d := range 361 {
		for m := range 60 {
			a, err := ParseAngle(strconv.Itoa(d) + "°" + strconv.Itoa(m) + "'")
			if want := float64(d) + float64(m)/60; err != nil || a.Degrees() != want {
				t.Fatalf("%d°%d' is %v, %v, not %v", d, m, a.Degrees(), err, want)
			}
		}
	}
}

// TestNearestFraction holds the remainder to half a division, and fraction and
// remainder to add up.
func TestNearestFraction(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := Millimetres(rapid.Float64Range(-5000, 5000).Draw(t, "mm"))
		den := 1 << rapid.IntRange(0, 10).Draw(t, "bits")
		f, rest, err := NearestFraction(l, den)
		if err != nil {
			t.Fatal(err)
		}
		// Half a division, and a last bit of the length for the division itself.
		if math.Abs(rest.Inches()) > 0.5/float64(den)+0x1p-52*math.Abs(l.Inches()) {
			t.Errorf("%v over of 1/%d in", rest, den)
		}
		if d := math.Abs(float64(f.Length() + rest - l)); d > 0x1p-52*math.Abs(float64(l)) {
			t.Errorf("%v and %v do not make %v", f, rest, l)
		}
		if f.Num != 0 && (f.Num%2 == 0 || f.Num >= f.Den) || f.Den > den || f.Whole < 0 || f.Num < 0 {
			t.Errorf("%#v is not in lowest terms", f)
		}
		back, err := ParseLength(f.String())
		if err != nil || math.Abs(float64(back-f.Length())) > 0x1p-52*math.Abs(float64(back)) {
			t.Errorf("%v reads as %v, %v", f, back, err)
		}
	})
	for _, bad := range []int{-1, 0, 3, 2048} {
		if _, _, err := NearestFraction(Inch, bad); len(fault.Faults(err)) != 1 {
			t.Errorf("1/%d passed: %v", bad, err)
		}
	}
	for _, l := range []Length{Length(math.NaN()), Length(math.Inf(1)), 20 * Kilometre} {
		if _, _, err := NearestFraction(l, 64); len(fault.Faults(err)) != 1 {
			t.Errorf("%v passed", float64(l))
		}
	}
}

// TestPositionReadsBack holds the text of any place of the crank to reading back.
func TestPositionReadsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := After(rapid.SampledFrom([]Datum{TDC, BDC}).Draw(t, "datum"), CrankDegrees(rapid.Float64Range(-360, 360).Draw(t, "after")))
		back, err := ParsePosition(p.String())
		if err != nil || back != p {
			t.Fatalf("%v reads as %v, %v", p, back, err)
		}
	})
}

// TestJSONReadsBack holds every quantity's JSON to reading back.
func TestJSONReadsBack(t *testing.T) { rapid.Check(t, checkJSON) }

func FuzzJSON(f *testing.F) {
	fuzzBytes(f)
	f.Fuzz(rapid.MakeFuzz(checkJSON))
}

func checkJSON(t *rapid.T) {
	p := Pascals(rapid.Float64().Draw(t, "Pa"))
	b, err := p.MarshalJSON()
	if !Finite(p) {
		if err == nil {
			t.Fatalf("%v was written as %s", float64(p), b)
		}
		return
	}
	var back Pressure
	if err != nil || back.UnmarshalJSON(b) != nil || back != p {
		t.Fatalf("%s, %v reads as %v", b, err, back)
	}
}
