package checks

import (
	"math"
	"regexp"
	"slices"
	"testing"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// TestForm holds every case to the form that the package documents.
func TestForm(t *testing.T) {
	name := regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)
	figure := regexp.MustCompile(`^[A-Za-z][A-Za-z0-9_]*$`)
	host := regexp.MustCompile(`(?i)https?:|www\.|[a-z]\.(com|org|net|edu|uk|in)\b`)
	seen := map[string]bool{}
	for c := range All() {
		if seen[c.ID] {
			t.Errorf("%s: used twice", c.ID)
		}
		seen[c.ID] = true
		if !name.MatchString(c.ID) || !name.MatchString(c.Topic) {
			t.Errorf("%s: id or topic %q is not lower case with hyphens", c.ID, c.Topic)
		}
		if c.Kind != Published && c.Kind != Computed {
			t.Errorf("%s: kind %q", c.ID, c.Kind)
		}
		if c.Source.Title == "" || c.Source.Status < refdata.Standard || c.Source.Status > refdata.FromMemory {
			t.Errorf("%s: no source or no status: %v", c.ID, c.Source)
		}
		if c.Kind == Computed && c.Source.Status != refdata.Derived {
			t.Errorf("%s: computed, but its status is %v", c.ID, c.Source.Status)
		}
		if s := c.Source; host.MatchString(s.Title + " " + s.Clause + " " + s.Read + " " + c.Note) {
			t.Errorf("%s: an address in its source or note", c.ID)
		}
		if len(c.Inputs) == 0 || len(c.Expected) == 0 {
			t.Errorf("%s: nothing given or nothing expected", c.ID)
		}
		if c.Reproduces == (len(c.NotReproduced) > 0) {
			t.Errorf("%s: reproduces is %v, yet these do not: %v", c.ID, c.Reproduces, c.NotReproduced)
		}
		for _, n := range c.NotReproduced {
			if _, ok := c.Expected[n]; !ok {
				t.Errorf("%s: %s is not an answer", c.ID, n)
			}
		}
		for n, f := range c.Inputs {
			checkFigure(t, c.ID+"."+n, f)
			if _, both := c.Expected[n]; both {
				t.Errorf("%s.%s: both given and expected", c.ID, n)
			}
			if f.Tol != nil {
				t.Errorf("%s.%s: a given figure has no tolerance", c.ID, n)
			}
			if !figure.MatchString(n) {
				t.Errorf("%s.%s: name", c.ID, n)
			}
		}
		for n, f := range c.Expected {
			checkFigure(t, c.ID+"."+n, f)
			if f.Tol == nil || f.Tol.Rel < 0 || f.Tol.Rel > 0.13 || f.Tol.Abs < 0 || f.Text != "" {
				t.Errorf("%s.%s: tolerance %v", c.ID, n, f.Tol)
			}
			if !figure.MatchString(n) {
				t.Errorf("%s.%s: name", c.ID, n)
			}
		}
	}
	if len(seen) < 300 {
		t.Errorf("only %d cases", len(seen))
	}
}

func checkFigure(t *testing.T, path string, f Figure) {
	t.Helper()
	words, list := f.Text != "", f.Values != nil
	switch {
	case words && (list || f.Value != 0 || f.Unit != ""):
		t.Errorf("%s: words and a figure too", path)
	case list && f.Value != 0:
		t.Errorf("%s: a list and a figure too", path)
	case !words && f.Unit == "":
		t.Errorf("%s: no unit", path)
	case f.U < 0:
		t.Errorf("%s: uncertainty", path)
	}
	for _, x := range append(slices.Clone(f.Values), f.Value) {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			t.Errorf("%s: %v", path, x)
		}
	}
}

// TestCopies shows that a caller cannot spoil the cases for the next one.
func TestCopies(t *testing.T) {
	c, ok := ByID("chain-11")
	if !ok {
		t.Fatal("no chain-11")
	}
	c.Inputs["z"].Values[0] = -1
	c.Expected["pcd"].Tol.Rel = 1
	delete(c.Inputs, "p")
	again, _ := ByID("chain-11")
	if again.Inputs["z"].Values[0] == -1 || again.Expected["pcd"].Tol.Rel == 1 {
		t.Error("a change reached the catalogue")
	}
	if _, ok := again.Inputs["p"]; !ok {
		t.Error("a deletion reached the catalogue")
	}
}

func TestTopics(t *testing.T) {
	all := 0
	for _, topic := range Topics() {
		n := 0
		for c := range ByTopic(topic) {
			if c.Topic != topic {
				t.Errorf("%s came with topic %s", c.ID, topic)
			}
			n++
		}
		if n == 0 {
			t.Errorf("topic %s is empty", topic)
		}
		all += n
	}
	cases := 0
	for range All() {
		cases++
	}
	if all != cases {
		t.Errorf("%d cases by topic, %d in all", all, cases)
	}
	for range ByTopic("no such topic") {
		t.Error("a case of no topic")
	}
	for range All() { // an early stop must be heard
		break
	}
}

func TestGet(t *testing.T) {
	c := Case{ID: "x", Inputs: map[string]Figure{
		"l": {Value: 2.5, Unit: "in"}, "angle": {Value: 20, Unit: "° ATDC"}, "words": {Text: "no"}, "list": {Values: []float64{1, 2}, Unit: "mm"}, "r": {Value: 3, Unit: "1"},
	}}
	if l, err := Get[units.Length](c, "l"); err != nil || l != units.Inches(2.5) {
		t.Error(l, err)
	}
	if r, err := Get[units.Ratio](c, "r"); err != nil || r.Value() != 3 {
		t.Error(r, err)
	}
	if p, err := GetPosition(c, "angle"); err != nil || p != units.After(units.TDC, units.CrankDegrees(20)) {
		t.Error(p, err)
	}
	if x, err := Numbers(c, "list"); err != nil || len(x) != 2 {
		t.Error(x, err)
	}
	for _, name := range []string{"words", "list", "none"} {
		if _, err := Get[units.Length](c, name); !hasCode(err, fault.UnknownName) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := Get[units.Mass](c, "l"); !hasCode(err, fault.UnitUnknown) {
		t.Errorf("a length as a mass: %v", err)
	}
	if _, err := Get[units.Angle](c, "angle"); err == nil {
		t.Error("a position passed for an angle")
	}
}

func TestCompare(t *testing.T) {
	tol := &Tolerance{Abs: 0.05}
	c := Case{ID: "x", Expected: map[string]Figure{
		"l": {Value: 2.5, Unit: "in", Tol: tol}, "t": {Value: 20, Unit: "°C", Tol: tol}, "list": {Values: []float64{1, 2}, Unit: "mm", Tol: &Tolerance{Rel: 0.01}},
	}}
	for _, e := range []error{
		Compare(c, "l", units.Inches(2.549)), Compare(c, "l", units.Inches(2.45)), Compare(c, "t", units.Kelvins(293.19)), c.CompareNumbers("list", 1.009, 1.981),
	} {
		if e != nil {
			t.Error(e)
		}
	}
	for _, e := range []error{
		Compare(c, "l", units.Inches(2.551)), Compare(c, "t", units.Kelvins(293.21)), c.CompareNumbers("list", 1, 2.03), c.CompareNumbers("l", math.NaN()),
	} {
		if !hasCode(e, fault.OutOfRange) {
			t.Error(e)
		}
	}
	if e := c.CompareNumbers("list", 1); !hasCode(e, fault.Conflict) {
		t.Error(e)
	}
	if e := c.CompareNumbers("none", 1); !hasCode(e, fault.UnknownName) {
		t.Error(e)
	}
	if e := Compare(c, "l", units.Kilograms(1)); !hasCode(e, fault.UnitUnknown) {
		t.Error(e)
	}
}

func hasCode(err error, code fault.Code) bool {
	for _, f := range fault.Faults(err) {
		if f.Code == code {
			return true
		}
	}
	return false
}
