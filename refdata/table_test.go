package refdata

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/benchbook/units"
	"pgregory.net/rapid"
)

// Between gives the rows of All whose diameter lies in the range, in order, for
// any ends, also NaN and the wrong way round.
func TestBetweenIsAFilter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lo := units.Millimetres(rapid.Float64().Draw(t, "lo"))
		hi := units.Millimetres(rapid.Float64().Draw(t, "hi"))
		if rapid.Bool().Draw(t, "near") {
			lo, hi = units.Millimetres(rapid.Float64Range(0, 40).Draw(t, "a")), units.Millimetres(rapid.Float64Range(0, 40).Draw(t, "b"))
		}
		var want []string
		for th := range Threads().All() {
			if th.Major >= lo && th.Major <= hi {
				want = append(want, th.Name)
			}
		}
		var got []string
		last := units.Length(0)
		for th := range Threads().Between(lo, hi) {
			if th.Major < last {
				t.Fatalf("%s after a larger thread", th.Name)
			}
			last = th.Major
			got = append(got, th.Name)
		}
		slices.Sort(want)
		slices.Sort(got)
		if !slices.Equal(got, want) {
			t.Fatalf("between %v and %v: %d rows, want %d", lo, hi, len(got), len(want))
		}
	})
}

func TestSequencesStopAndStartAgain(t *testing.T) {
	count := func() (n int) {
		for range Threads().All() {
			if n++; n == 5 {
				break
			}
		}
		for range Threads().Between(0, units.Metre) {
			if n++; n == 10 {
				break
			}
		}
		return n
	}
	if a, b := count(), count(); a != 10 || b != 10 {
		t.Errorf("%d and %d rows, want 10", a, b)
	}
}

// apart finds the space that keeps two numbers of a name from running together.
var apart = regexp.MustCompile(`([0-9]) +([0-9])`)

// Every row is found by its own name, however it is spaced and capitalised, and
// changing what came out changes no table.
func TestByName(t *testing.T) {
	for th := range Threads().All() {
		for _, name := range []string{th.Name, strings.ToUpper(th.Name), " " + strings.ReplaceAll(apart.ReplaceAllString(th.Name, "$1-$2"), " ", ""), strings.ReplaceAll(th.Name, " ", "  ")} {
			got, ok := Threads().ByName(name)
			if !ok || got != th {
				t.Errorf("%q gives %q, %v", name, got.Name, ok)
			}
			got.Major = 0
		}
		if got, ok := ThreadsOf(th.System).ByName(th.Name); !ok || got != th {
			t.Errorf("%s is another thread in its own table", th.Name)
		}
	}
	for name, want := range map[string]string{
		"1/4 cei": "1/4-26 cycle", "1/4 BSC": "1/4-26 cycle", "1/4 Whitworth": "1/4 BSW", "1/4-20 BSW": "1/4 BSW", "M10 × 1.5": "M10", "m10X1.25": "M10x1.25",
		"2BA": "2 BA", "#10-32 UNF": "10-32 UNF", "No. 10 UNF": "10-32 UNF", `1/4" BSF`: "1/4 BSF", "1/4 BSP": "G 1/4", "3/8 brass": "3/8-26 brass",
		"1/2 BSC": "", "7/16-20 cycle": "", "": "", "1/4": "", "M": "", "11/4 BSW": "", "M1 0": "", "1-1/4 BSW": "1 1/4 BSW", "1 1/4 Whitworth": "1 1/4 BSW",
	} {
		got, ok := Threads().ByName(name)
		if got.Name != want || ok != (want != "") {
			t.Errorf("%q gives %q, %v; want %q", name, got.Name, ok, want)
		}
	}
	if ThreadsOf(0).Len() != 0 || ThreadsOf(200).Len() != 0 {
		t.Error("a system that does not exist has threads")
	}
	if _, ok := ThreadsOf(0).ByName("M6"); ok {
		t.Error("a system that does not exist has M6")
	}
}

// No two rows of any table answer to one name.
func TestFoldedNamesAreUnique(t *testing.T) {
	for _, table := range every() {
		seen := map[string]string{}
		for _, k := range table.keys() {
			if other, ok := seen[fold(k)]; ok {
				t.Errorf("%s: %q and %q are one name", table.Name(), k, other)
			}
			seen[fold(k)] = k
		}
	}
	seen := map[string]string{}
	for _, k := range Threads().keys() {
		if other, ok := seen[fold(k)]; ok {
			t.Errorf("threads: %q and %q are one name", k, other)
		}
		seen[fold(k)] = k
	}
}

// Cells that are plain numbers in a column with a unit never go negative but
// where a figure may: heights, temperatures and signed limits.
func TestNoNegativeFigures(t *testing.T) {
	may := []string{"geopotential_m", "t_c", "flash_low_c", "flash_high_c", "computed_sigma_om_mpa", "ivo_btdc_low", "ivo_btdc_high", "fit_low"}
	for _, table := range every() {
		for i, row := range cells(t, table.Name()) {
			for column, cell := range row {
				if x, ok := decimal(cell); ok && x < 0 && !slices.Contains(may, column) {
					t.Errorf("%s row %d: %s is %s", table.Name(), i+1, column, cell)
				}
			}
		}
	}
}

// Any text may be asked for; the exact name costs no allocation.
func TestByNameOfAnything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.OneOf(rapid.String(), rapid.Map(rapid.SliceOf(rapid.Byte()), func(b []byte) string { return string(b) })).Draw(t, "name")
		if row, ok := Threads().ByName(name); !ok && row != (Thread{}) {
			t.Fatalf("%q is not found and gives %v", name, row)
		}
	})
	if n := testing.AllocsPerRun(100, func() {
		if _, ok := Threads().ByName("1/4-26 cycle"); !ok {
			t.Error("no 1/4-26 cycle")
		}
	}); n != 0 {
		t.Errorf("%g allocations", n)
	}
	if n := testing.AllocsPerRun(10, func() {
		for th := range Threads().All() {
			if th.Major == 0 {
				t.Error("a thread of no diameter")
			}
		}
	}); n > 1 { // the iterator itself
		t.Errorf("%g allocations to walk the table", n)
	}
}
