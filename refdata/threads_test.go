package refdata

import (
	"strings"
	"testing"

	"example.com/benchbook/units"
)

func TestThreadRows(t *testing.T) {
	all := Threads()
	if all.err != nil {
		t.Fatal(all.err)
	}
	if err := sources().err; err != nil {
		t.Fatal(err)
	}
	if all.Len() < 338 {
		t.Errorf("%d thread rows, want 338 at least", all.Len())
	}
	for _, name := range []string{"1/4 BSF", "1/4-26 cycle", "1/4 cei", "2BA", "M10x1.25", "M10", "M10 × 1.5", "10-32 UNF", "No. 10 UNF", "G 1/4", "1/4 bsp", "7/16-20 cycle 55°"} {
		th, ok := all.ByName(name)
		if !ok {
			t.Errorf("no %s", name)
		}
		t.Log(name, "->", th.Name, th.Major, th.Pitch, th.Effective, th.Minor, th.StressArea, th.TappingDrill, th.Sources())
	}
	if th, ok := all.ByName("1/2 BSC"); ok {
		t.Errorf("1/2 BSC is ambiguous, got %s", th.Name)
	}
	n := 0
	for th := range all.Between(units.Millimetres(6), units.Millimetres(6.35)) {
		n++
		t.Log(th.Name)
	}
	if n == 0 {
		t.Error("none between 6 mm and 1/4 in")
	}
}

// The origins of served rows are those of the text.
func TestServedOriginsAreThoseOfTheText(t *testing.T) {
	for _, s := range Systems() {
		table := ThreadsOf(s)
		rows := cells(t, table.Name())
		for i, row := range rows {
			th := table.rows[i]
			for _, o := range []struct {
				group string
				o     Origin
			}{{"thread", th.ThreadOrigin}, {"diameters", th.DiameterOrigin}, {"area", th.AreaOrigin}, {"drill", th.DrillOrigin}, {"minor_printed", th.PrintedOrigin}} {
				n := 0
				if keys := row["source_"+o.group]; keys != "" {
					n = strings.Count(keys, "+") + 1
				}
				if o.o.Status() != statusNamed(row["status_"+o.group]) || len(o.o.Sources()) != n {
					t.Errorf("%s, %s: %v, the text has %s, %s", th.Name, o.group, o.o, row["source_"+o.group], row["status_"+o.group])
				}
			}
			if th.Note != row["note"] {
				t.Errorf("%s: note %q", th.Name, th.Note)
			}
		}
	}
}
