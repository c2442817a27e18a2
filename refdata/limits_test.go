package refdata

import (
	"math"
	"slices"
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
	"pgregory.net/rapid"
)

func mm(text string) measure.Reading[units.Length] {
	return measure.MustRead(text, measure.Nominal[units.Length](0.01))
}

// Every limit is a range with a fit, its limit beyond it in the direction of wear.
func TestLimitsAreInOrder(t *testing.T) {
	for l := range WorkshopLimits().All() {
		ordered(t, l.Key, l.WearsDown, l.Fit.Length, l.Renew.Length)
		ordered(t, l.Key, l.WearsDown, l.Fit.PerSize, l.Renew.PerSize)
		ordered(t, l.Key, l.WearsDown, l.Fit.Force, l.Renew.Force)
		ordered(t, l.Key, l.WearsDown, l.Fit.Share, l.Renew.Share)
		if n := len(slices.DeleteFunc([]bool{l.Fit.Length.Given(), l.Fit.PerSize.Given(), l.Fit.Force.Given(), l.Fit.Share.Given()}, func(given bool) bool { return !given })); n != 1 {
			t.Errorf("%s is read in %d quantities", l.Key, n)
		}
		if l.Origin.Status() != CommonPractice {
			t.Errorf("%s: status %v", l.Key, l.Origin.Status())
		}
		if l.Part == "" || l.ReadWith == "" || l.LowMeans == "" && l.HighMeans == "" {
			t.Errorf("%s says too little", l.Key)
		}
		if (l.Size != "") != l.Fit.PerSize.Given() {
			t.Errorf("%s: size %q", l.Key, l.Size)
		}
		if l.Caution != "" && l.Caution.Text() == string(l.Caution) {
			t.Errorf("%s: no such caution as %s", l.Key, l.Caution)
		}
	}
}

func ordered[Q units.Quantity](t *testing.T, key string, down bool, fit, renew Range[Q]) {
	t.Helper()
	if !fit.Given() {
		return
	}
	low, high, both := fit.Ends()
	if !fit.High.IsKnown() || both && low >= high {
		t.Errorf("%s: fit %v", key, fit)
	}
	if !renew.Given() {
		return
	}
	from, to, both := renew.Ends()
	if !both || from > to || !down && from <= high || down && to >= low {
		t.Errorf("%s: renew %v for a fit of %v", key, renew, fit)
	}
}

func TestCheckLimitVerdicts(t *testing.T) {
	bore := mm("78 mm ± 0.01")
	// Ring gap of a 78 mm bore: fit 0.234 to 0.39 mm, limit 0.78 to 1.17 mm.
	for _, c := range []struct {
		gap  string
		want LimitVerdict
	}{
		{"0.10 mm ± 0.02", Tight}, {"0.30 mm ± 0.02", Right}, {"0.55 mm ± 0.02", Serviceable}, {"0.90 mm ± 0.02", AtLimit}, {"1.4 mm ± 0.02", Renew},
	} {
		f, err := CheckLimit("ring-gap", mm(c.gap), bore, LimitOptions[units.Length]{})
		if err != nil || f.Verdict != c.want || f.Chance < 0.99 || f.Second != NotJudged {
			t.Errorf("%s: %v, %v, second %q, %v", c.gap, f.Verdict, f.Chance, f.Second, err)
		}
		if (f.Margin >= 0) != (c.want == Right) || (f.Do == "") != (c.want == Right) {
			t.Errorf("%s: margin %v, do %q", c.gap, f.Margin, f.Do)
		}
	}
	// On the edge the reading cannot tell: about even either way.
	f, err := CheckLimit("ring-gap", mm("0.389 mm ± 0.02"), bore, LimitOptions[units.Length]{})
	if err != nil || f.Verdict != Right || math.Abs(f.Chance.Value()-0.52) > 0.02 || f.Second != Serviceable || f.Words != "about even" {
		t.Errorf("at the edge: %v %v %v %q, %v", f.Verdict, f.Chance, f.Second, f.Words, err)
	}
	// The uncertainty of the bore moves the ends: 0.005 of 2 mm is 0.01 mm, and half
	// a standard deviation below an end is 0.69.
	f, err = CheckLimit("ring-gap", mm("0.385 mm ± 0.001"), mm("78 mm ± 2"), LimitOptions[units.Length]{})
	if err != nil || f.Verdict != Right || math.Abs(f.Chance.Value()-0.69) > 0.01 {
		t.Errorf("uncertain bore: %v %v, %v", f.Verdict, f.Chance, err)
	}
	// One standard deviation below an end, 0.16 lies beyond it.
	f, err = CheckLimit("ring-gap", mm("0.37 mm ± 0.02"), bore, LimitOptions[units.Length]{})
	if err != nil || f.Second != Serviceable || math.Abs(f.Chance.Value()-0.84) > 0.01 {
		t.Errorf("near the edge: %v, second %q, %v", f.Chance, f.Second, err)
	}
	// Ends are rounded to 0.001 mm: 0.003 of 78.1 mm is 0.2343 mm.
	f, err = CheckLimit("ring-gap", mm("0.3 mm ± 0.02"), mm("78.1 mm ± 0.01"), LimitOptions[units.Length]{})
	if err != nil || f.Fit.Low != Known(units.Millimetres(0.234)) {
		t.Errorf("fit %v, %v", f.Fit, err)
	}
	// Wear that makes a figure smaller.
	for _, c := range []struct {
		load string
		want LimitVerdict
	}{{"450 N ± 5", Tight}, {"300 N ± 5", Right}, {"190 N ± 2", Serviceable}, {"165 N ± 2", AtLimit}, {"120 N ± 5", Renew}} {
		f, err := CheckLimit("valve-spring-load", measure.MustRead(c.load, measure.SpringBalance()), measure.Reading[units.Length]{}, LimitOptions[units.Force]{})
		if err != nil || f.Verdict != c.want || f.Chance < 0.98 {
			t.Errorf("%s: %v, %v, %v", c.load, f.Verdict, f.Chance, err)
		}
	}
	// The machine's own figure comes first; an exact reading on its end is within.
	own := LimitOptions[units.Length]{Fit: RangeOf(units.Millimetres(0.5), units.Millimetres(0.7))}
	f, err = CheckLimit("ring-gap", measure.Exact(units.Millimetres(0.7)), measure.Reading[units.Length]{}, own)
	if err != nil || f.Verdict != Right || f.Chance != 1 || f.Margin != 0 {
		t.Errorf("own figure: %v %v %v, %v", f.Verdict, f.Chance, f.Margin, err)
	}
	f, err = CheckLimit("ring-gap", measure.Exact(units.Millimetres(0.5)), measure.Reading[units.Length]{}, own)
	if err != nil || f.Verdict != Right || f.Chance != 1 {
		t.Errorf("own figure, low end: %v %v, %v", f.Verdict, f.Chance, err)
	}
	// What is set has no limit of wear.
	f, err = CheckLimit("rear-chain-slack", mm("40 mm ± 1"), measure.Reading[units.Length]{}, LimitOptions[units.Length]{})
	if err != nil || f.Verdict != Loose {
		t.Errorf("chain slack: %v, %v", f.Verdict, err)
	}
}

func TestCheckLimitFaultsAndReasons(t *testing.T) {
	none := measure.Reading[units.Length]{}
	f, err := CheckLimit("ring-gap", none, none, LimitOptions[units.Length]{})
	if err != nil || f.Reason.Code != "not-taken" || len(f.Basis.NotChecked) != 1 {
		t.Errorf("not taken: %+v, %v", f, err)
	}
	f, err = CheckLimit("ring-gap", mm("0.3 mm"), none, LimitOptions[units.Length]{})
	if err != nil || f.Reason.Code != "size-not-taken" || len(f.Basis.NotChecked) != 1 || f.Verdict != NotJudged {
		t.Errorf("no size: %+v, %v", f, err)
	}
	for _, c := range []struct {
		what string
		err  error
		want []fault.Code
	}{
		{"unknown key", second(CheckLimit("ring", mm("1 mm"), none, LimitOptions[units.Length]{})), []fault.Code{fault.UnknownName}},
		{"wrong quantity", second(CheckLimit("valve-spring-load", mm("1 mm"), none, LimitOptions[units.Length]{})), []fault.Code{fault.Conflict}},
		{"all at once", second(CheckLimit("ring-gap", measure.Of(units.Millimetres(-1), units.Millimetres(0.1)), measure.Of(units.Millimetres(-78), 0), LimitOptions[units.Length]{})), []fault.Code{fault.OutOfRange, fault.OutOfRange, fault.OutOfRange}},
		{"own fit upside down", second(CheckLimit("ring-gap", mm("1 mm"), none, LimitOptions[units.Length]{Fit: RangeOf(units.Millimetres(2), units.Millimetres(1))})), []fault.Code{fault.Conflict}},
		{"own limit within own fit", second(CheckLimit("ring-gap", mm("1 mm"), none, LimitOptions[units.Length]{Fit: RangeOf(units.Millimetres(1), units.Millimetres(2)), Renew: RangeOf(units.Millimetres(1.5), units.Millimetres(3))})), []fault.Code{fault.Conflict}},
		{"own fit not finite", second(CheckLimit("ring-gap", mm("1 mm"), none, LimitOptions[units.Length]{Fit: Range[units.Length]{High: Known(units.Millimetres(math.NaN()))}})), []fault.Code{fault.OutOfRange}},
	} {
		var got []fault.Code
		for _, f := range fault.Faults(c.err) {
			got = append(got, f.Code)
		}
		if len(got) != len(c.want) {
			t.Errorf("%s: %v", c.what, c.err)
			continue
		}
		for i := range got {
			if got[i] != c.want[i] {
				t.Errorf("%s: %v", c.what, c.err)
			}
		}
	}
	// A plug's reach may be read below zero.
	if f, err := CheckLimit("plug-reach", mm("-0.4 mm ± 0.1"), none, LimitOptions[units.Length]{}); err != nil || f.Verdict != Right {
		t.Errorf("plug reach: %+v, %v", f, err)
	}
}

func second[F any](_ F, err error) error { return err }

// For any reading of any limit: one verdict, a chance from 0 to 1, a margin that is
// positive just where the verdict is right, and no NaN.
func TestCheckLimitHolds(t *testing.T) {
	var keys []string
	for l := range WorkshopLimits().All() {
		if l.Fit.Length.Given() || l.Fit.PerSize.Given() {
			keys = append(keys, l.Key)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		key := rapid.SampledFrom(keys).Draw(t, "key")
		x := units.Millimetres(rapid.Float64Range(0, 5).Draw(t, "x"))
		u := units.Millimetres(rapid.Float64Range(1e-6, 1).Draw(t, "u"))
		bore := measure.Of(units.Millimetres(rapid.Float64Range(20, 120).Draw(t, "bore")), units.Millimetres(0.01))
		f, err := CheckLimit(key, measure.Of(x, u), bore, LimitOptions[units.Length]{})
		if err != nil {
			t.Fatal(err)
		}
		if f.Verdict == NotJudged || !(f.Chance >= 0 && f.Chance <= 1) || !units.Finite(f.Margin) {
			t.Fatalf("%+v", f)
		}
		if (f.Verdict == Right) != f.Fit.Holds(x) || f.Verdict == Right && f.Margin < 0 {
			t.Fatalf("%s %v in %v: %v, margin %v", key, x, f.Fit, f.Verdict, f.Margin)
		}
		// The same part worn further never gets a better verdict.
		l, _ := WorkshopLimits().ByName(key)
		more := x + units.Millimetres(0.01)
		if l.WearsDown {
			more = max(0, x-units.Millimetres(0.01))
		}
		g, err := CheckLimit(key, measure.Of(more, u), bore, LimitOptions[units.Length]{})
		if err != nil || wear(g.Verdict) < wear(f.Verdict) {
			t.Fatalf("%s: %v at %v, %v at %v, %v", key, f.Verdict, x, g.Verdict, more, err)
		}
	})
}

// wear is how far along the way of wear a verdict lies.
func wear(v LimitVerdict) int {
	return map[LimitVerdict]int{Tight: 0, Right: 1, Serviceable: 2, Loose: 2, AtLimit: 3, Renew: 4}[v]
}

// The chance is the frequency: over many draws of the true figure round a reading,
// the verdict holds as often as it says.
func TestChanceIsFrequency(t *testing.T) {
	bore := measure.Exact(units.Millimetres(78))
	for _, at := range []float64{0.22, 0.25, 0.37, 0.41, 0.75, 0.8} {
		u := 0.03
		f, err := CheckLimit("ring-gap", measure.Of(units.Millimetres(at), units.Millimetres(u)), bore, LimitOptions[units.Length]{})
		if err != nil {
			t.Fatal(err)
		}
		// Normal quantiles in place of random draws: 2000 points of equal chance.
		n, hits := 2000, 0
		for i := range n {
			x := at + u*math.Sqrt2*math.Erfinv(2*(float64(i)+0.5)/float64(n)-1)
			g, err := CheckLimit("ring-gap", measure.Exact(units.Millimetres(math.Max(0, x))), bore, LimitOptions[units.Length]{})
			if err != nil {
				t.Fatal(err)
			}
			if g.Verdict == f.Verdict {
				hits++
			}
		}
		// The grid is good to one point at each of two edges.
		if got := float64(hits) / float64(n); math.Abs(got-f.Chance.Value()) > 2.0/float64(n) {
			t.Errorf("%g mm: %v with chance %v, held in %.4f", at, f.Verdict, f.Chance, got)
		}
	}
}

func TestCheckLimits(t *testing.T) {
	in := LimitReadings{
		Bore: mm("78 mm"),
		Lengths: map[string]measure.Reading[units.Length]{
			"ring-gap": mm("0.30 mm ± 0.02"), "guide-exhaust": mm("0.25 mm ± 0.01"), "piston-clearance:forged-alloy": mm("0.12 mm ± 0.01"), "plug-gap:magneto": {},
		},
		Forces: map[string]measure.Reading[units.Force]{"valve-spring-load": measure.MustRead("300 N", measure.SpringBalance())},
	}
	r, err := CheckLimits(in)
	if err != nil {
		t.Fatal(err)
	}
	if len(r.Lengths) != 3 || r.Lengths[0].Key != "guide-exhaust" || r.Lengths[0].Verdict != Renew || len(r.Forces) != 1 {
		t.Errorf("%+v", r)
	}
	unread := map[string]int{}
	for _, u := range r.Basis.NotChecked {
		unread[u.What]++
	}
	for part, want := range map[string]int{"piston ring end gap": 0, "piston clearance": 0, "sparking plug gap, magneto": 1, "big-end side float": 1} {
		if unread[part] != want {
			t.Errorf("%s stands %d times among what was not checked, want %d", part, unread[part], want)
		}
	}
	in.Lengths["no-such"] = mm("1 mm")
	in.Lengths["ring-side"] = measure.Of(units.Millimetres(-1), units.Millimetres(1))
	if _, err := CheckLimits(in); len(fault.Faults(err)) != 2 || fault.Faults(err)[0].Path != "lengths.no-such.key" {
		t.Errorf("faults: %v", err)
	}
	if _, err := CheckLimits(LimitReadings{}); err != nil {
		t.Errorf("nothing read: %v", err)
	}
}
