package refdata

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// statusCounts counts the cells of each table by status, for each column group that
// has a status of its own.
func statusCounts(t *testing.T) map[string]map[Status]int {
	files, err := filepath.Glob("tables/*.csv")
	if err != nil || len(files) == 0 {
		t.Fatal(files, err)
	}
	out := map[string]map[Status]int{}
	for _, f := range files {
		name := strings.TrimSuffix(filepath.Base(f), ".csv")
		for _, row := range cells(t, name) {
			for column, words := range row {
				if column != "status" && !strings.HasPrefix(column, "status_") || words == "" {
					continue
				}
				s := statusNamed(words)
				if s == 0 {
					t.Errorf("%s: no such status: %q", name, words)
				}
				key := name
				if group := strings.TrimPrefix(column, "status"); group != "" {
					key += " (" + strings.TrimPrefix(group, "_") + ")"
				}
				if out[key] == nil {
					out[key] = map[Status]int{}
				}
				out[key][s]++
			}
		}
	}
	return out
}

// TestStatuses counts what the tables rest on, group by group, and holds the count
// to the file in testdata: a row whose status rises or falls shows in a review of
// that file. It prints the table under -v; UPDATE_STATUSES=1 writes the file anew.
func TestStatuses(t *testing.T) {
	counts := statusCounts(t)
	statuses := []Status{Standard, Published, Derived, CommonPractice, FromMemory}
	var b strings.Builder
	line := func(name string, n map[Status]int) {
		fmt.Fprintf(&b, "%-44s", name)
		for _, s := range statuses {
			fmt.Fprintf(&b, " %9d", n[s])
		}
		b.WriteByte('\n')
	}
	fmt.Fprintf(&b, "%-44s %9s %9s %9s %9s %9s\n", "table (column group)", "standard", "published", "derived", "practice", "memory")
	sum := map[Status]int{}
	for _, name := range slices.Sorted(maps.Keys(counts)) {
		line(name, counts[name])
		for s, n := range counts[name] {
			sum[s] += n
		}
	}
	line("all", sum)
	t.Log("\n" + b.String())
	const golden = "testdata/statuses.txt"
	if os.Getenv("UPDATE_STATUSES") != "" {
		if err := os.WriteFile(golden, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(golden)
	if err != nil {
		t.Fatal(err)
	}
	if b.String() != string(want) {
		t.Errorf("the statuses of the tables have changed; if that is meant, UPDATE_STATUSES=1 writes %s:\n%s", golden, b.String())
	}
}

func (t *Table[Row, Q]) rowSources(i int) []Source { return t.rows[i].Sources() }

// TestMemoryIsOwned holds every row that has a cell from memory to saying so: one
// of the sources the row gives for itself has that status.
func TestMemoryIsOwned(t *testing.T) {
	rows := 0
	for _, table := range every() {
		for i, row := range cells(t, table.Name()) {
			memory := false
			for column, words := range row {
				memory = memory || strings.HasPrefix(column, "status") && words == FromMemory.String()
			}
			if !memory {
				continue
			}
			rows++
			weakest := Status(0)
			for _, s := range table.(interface{ rowSources(i int) []Source }).rowSources(i) {
				weakest = max(weakest, s.Status)
			}
			if weakest != FromMemory {
				t.Errorf("%s, row %d (%s): its sources do not say that it is from memory", table.Name(), i, table.keys()[i])
			}
		}
	}
	if rows < 100 {
		t.Errorf("only %d rows looked at", rows)
	}
}
