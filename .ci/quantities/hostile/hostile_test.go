package main

import (
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/benchbook/ci/quantities/hostile/driver"
)

// TestYard sweeps a module that misbehaves in every way the sweep looks for, and
// expects each misdeed and nothing else.
func TestYard(t *testing.T) {
	if testing.Short() {
		t.Skip("compiles and runs a module")
	}
	set := driver.Settings{Calls: 200, Seed: 1, Deadline: 2 * time.Second, PerFunc: 10 * time.Second}
	reports, err := run("testdata/yard", t.TempDir(), []string{"./..."}, set, append(exempt[:len(exempt):len(exempt)], exemption{keys: []string{"example.com/yard.Seal", "example.com/yard.NotThere"}}))
	if err != nil {
		t.Fatal(err)
	}
	want := []string{
		"(example.com/yard.Bench).Wait: hang",
		"(example.com/yard.Sealed).Open: not a number",
		"example.com/yard.Count: not a number",
		"example.com/yard.Deep: crash",
		"example.com/yard.Inverse: not a number",
		"example.com/yard.Largest: panic",
		"example.com/yard.NotThere: exemption",
		"example.com/yard.Pick: panic",
		"example.com/yard.Write: json",
	}
	var got []string
	for _, r := range reports {
		for _, f := range r.Findings {
			got = append(got, f.Function+": "+f.Kind)
		}
		if r.Functions != r.Called || r.Calls < 500 || r.Refused == 0 {
			t.Errorf("%+v", r)
		}
	}
	slices.Sort(got)
	if got = slices.Compact(got); !slices.Equal(got, want) {
		t.Errorf("found\n%s\nnot\n%s", strings.Join(got, "\n"), strings.Join(want, "\n"))
	}
}
