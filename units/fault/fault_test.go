package fault_test

import (
	"errors"
	"fmt"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"

	"example.com/benchbook/units/fault"
)

func anyFault(t *rapid.T, label string) fault.Fault {
	word := rapid.SampledFrom([]string{"", "a", "b.c", "[2]", "rate"})
	return fault.Fault{
		Code: rapid.SampledFrom([]fault.Code{fault.Missing, fault.OutOfRange, fault.BadForm}).Draw(t, label+" code"),
		Path: word.Draw(t, label+" path"), Value: word.Draw(t, label+" value"), Unit: word.Draw(t, label+" unit"), Rule: word.Draw(t, label+" rule"),
	}
}

// TestNothingIsLost gathers faults in a list, wraps and joins them, and takes
// all apart again.
func TestNothingIsLost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var l fault.List
		var want []fault.Fault
		for i := range rapid.IntRange(0, 5).Draw(t, "n") {
			f := anyFault(t, fmt.Sprint(i))
			l.Add(f)
			want = append(want, f)
		}
		err := l.Err()
		if (err == nil) != (len(want) == 0) || l.Len() != len(want) {
			t.Fatalf("%d faults, error %v", len(want), err)
		}
		if err == nil {
			return
		}
		wrapped := fmt.Errorf("reading the sheet: %w", errors.Join(nil, err, anyFault(t, "last")))
		got := fault.Faults(wrapped)
		if d := cmp.Diff(want, got[:len(want)]); d != "" || len(got) != len(want)+1 {
			t.Fatal(d)
		}
	})
}

func TestUnder(t *testing.T) {
	for _, c := range []struct{ outer, inner, want string }{
		{"clutch", "springs.rate", "clutch.springs.rate"}, {"", "rate", "rate"}, {"clutch", "", "clutch"}, {"springs", "[2].rate", "springs[2].rate"},
	} {
		f := fault.Faults(fault.Under(c.outer, fault.Fault{Path: c.inner}))
		if len(f) != 1 || f[0].Path != c.want {
			t.Errorf("%q under %q is %v", c.inner, c.outer, f)
		}
	}
	if fault.Under("a", nil) != nil || len(fault.Faults(nil)) != 0 {
		t.Error("nothing is a fault")
	}
	var l fault.List
	if !l.Under("a", nil) || l.Len() != 0 {
		t.Error("nothing was noted")
	}
	if l.Under("a", errors.New("disk gone")) || l.Len() != 1 {
		t.Error("a foreign error was lost")
	}
	if f := fault.Faults(l.Err())[0]; f.Code != fault.BadForm || f.Path != "a" || f.Rule != "disk gone" {
		t.Errorf("%#v", f)
	}
	if f := fault.Faults(&fault.Fault{Code: fault.Missing}); len(f) != 1 || f[0].Code != fault.Missing {
		t.Errorf("%#v", f)
	}
}

// What wraps no fault is told in its own words, not in those of what it wraps.
func TestWrappedErrorsKeepTheirText(t *testing.T) {
	plain := fmt.Errorf("open lifts.txt: %w", errors.New("no such file"))
	got := fault.Faults(plain)
	if want := []fault.Fault{{Code: fault.BadForm, Rule: "open lifts.txt: no such file"}}; !cmp.Equal(got, want) {
		t.Errorf("%v", got)
	}
	inner := fault.Fault{Code: fault.Missing, Path: "lift", Rule: "is needed"}
	if got := fault.Faults(fmt.Errorf("cam: %w", inner)); !cmp.Equal(got, []fault.Fault{inner}) {
		t.Errorf("%v", got)
	}
}
