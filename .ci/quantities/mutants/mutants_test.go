package main

import (
	"strings"
	"testing"
)

// TestSmall changes a package of which every test is known to be too weak for one
// change, and expects just those.
func TestSmall(t *testing.T) {
	if testing.Short() {
		t.Skip("compiles and runs a package")
	}
	p, err := load(".", "./testdata/small")
	if err != nil {
		t.Fatal(err)
	}
	known := map[string]string{"mutants/testdata/small/small Larger: a > b -> >=": "either will do"}
	var out strings.Builder
	got, err := try(p, func(*site) bool { return true }, "", known, &out)
	if err != nil {
		t.Fatal(err)
	}
	if want := (tally{killed: 2, timedOut: 1, lived: 1, equivalent: 1, uncovered: 1, notMade: 1}); got != want {
		t.Errorf("%v\nwant\n%v", got, want)
	}
	const want = `mutants/testdata/small/small Sum: a + b -> -	small.go:15	lived
mutants/testdata/small/small Alone: a % fixed -> *	small.go:26	not covered
`
	if out.String() != want {
		t.Errorf("lived:\n%swant:\n%s", out.String(), want)
	}
}
