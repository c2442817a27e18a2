package checks_test

import (
	"slices"
	"strings"
	"testing"

	"example.com/benchbook/refdata/checks"
	"example.com/benchbook/units"
)

// A runner feeds the inputs of a case through the public API of this module
// and compares the answers. It must compare every answer of the case that is
// said to reproduce, or name those it does not compute.
type runner func(r *run)

// run is one case being run. Its methods end the case at the first fault.
type run struct {
	t *testing.T
	checks.Case
	compared map[string]bool
	left     map[string]string // answers not compared, and why
}

// runners holds what the library computes, by case or, failing that, by topic.
var runners = joined(unitRunners, measureRunners, gearRunners, crankRunners, springRunners, carburationRunners, fastenerRunners, camRunners, phaseRunners, driveRunners, clutchRunners)

func joined(maps ...map[string]runner) map[string]runner {
	all := map[string]runner{}
	for _, m := range maps {
		for k, r := range m {
			if all[k] != nil {
				panic("two runners for " + k)
			}
			all[k] = r
		}
	}
	return all
}

// TestChecks runs every case the library computes and lists the rest.
func TestChecks(t *testing.T) {
	var ran, published, answers, total int
	var waiting, partly []string
	used := map[string]bool{}
	for c := range checks.All() {
		total++
		key := c.ID
		if runners[key] == nil {
			key = c.Topic
		}
		do := runners[key]
		if do == nil {
			waiting = append(waiting, c.ID)
			continue
		}
		used[key] = true
		r := &run{t: t, Case: c, compared: map[string]bool{}, left: map[string]string{}}
		ok := t.Run(c.ID, func(t *testing.T) {
			r.t = t
			do(r)
			if len(r.compared) == 0 && len(r.left) < len(c.Expected) {
				t.Error("nothing was compared")
			}
			for name := range c.Expected {
				if !r.compared[name] && r.left[name] == "" {
					t.Errorf("answer %s was neither compared nor left out by name", name)
				}
			}
		})
		if len(r.compared) == 0 {
			if ok {
				waiting = append(waiting, c.ID)
			}
			continue
		}
		ran++
		answers += len(r.compared)
		if c.Kind == checks.Published {
			published++
		}
		for _, name := range sorted(r.left) {
			partly = append(partly, c.ID+"."+name+" ("+r.left[name]+")")
		}
	}
	for key := range runners {
		if !used[key] {
			t.Errorf("runner %s has no case", key)
		}
	}
	slices.Sort(waiting)
	t.Logf("%d of %d cases run, %d of them published, %d answers compared", ran, total, published, answers)
	t.Logf("answers of those not computed: %d: %s", len(partly), strings.Join(partly, ", "))
	t.Logf("not computed yet: %d: %s", len(waiting), strings.Join(waiting, ", "))
}

func sorted(m map[string]string) []string {
	var keys []string
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}

// get returns a given figure as a quantity.
func get[Q units.Quantity](r *run, name string) Q {
	r.t.Helper()
	q, err := checks.Get[Q](r.Case, name)
	if err != nil {
		r.t.Fatal(err)
	}
	return q
}

// num returns a given figure as a number in its printed unit.
func (r *run) num(name string) float64 {
	r.t.Helper()
	x, err := checks.Number(r.Case, name)
	if err != nil {
		r.t.Fatal(err)
	}
	return x
}

// position returns a given place in the cycle.
func position(r *run, name string) units.CrankPosition {
	r.t.Helper()
	p, err := checks.GetPosition(r.Case, name)
	if err != nil {
		r.t.Fatal(err)
	}
	return p
}

// list returns a given list in its printed unit.
func (r *run) list(name string) []float64 {
	r.t.Helper()
	x, err := checks.Numbers(r.Case, name)
	if err != nil {
		r.t.Fatal(err)
	}
	return x
}

// word returns a given text.
func (r *run) word(name string) string {
	r.t.Helper()
	f, ok := r.Case.Figure(name)
	if !ok || f.Text == "" {
		r.t.Fatalf("no words under %s", name)
	}
	return f.Text
}

// want compares a quantity with an answer.
func want[Q units.Quantity](r *run, answer string, got Q) {
	r.t.Helper()
	r.told(answer, checks.Compare(r.Case, answer, got))
}

// numbers compares figures in the answer's printed unit.
func (r *run) numbers(answer string, got ...float64) {
	r.t.Helper()
	r.told(answer, r.Case.CompareNumbers(answer, got...))
}

// told takes the outcome of a comparison. An answer said not to reproduce must
// not: otherwise the case is out of date.
func (r *run) told(answer string, err error) {
	r.t.Helper()
	r.compared[answer] = true
	switch not := slices.Contains(r.Case.NotReproduced, answer); {
	case err != nil && !not:
		r.t.Error(err)
	case err == nil && not:
		r.t.Errorf("%s is said not to reproduce, yet it does", answer)
	}
}

// leave names answers that nothing computes.
func (r *run) leave(why string, answers ...string) {
	for _, a := range answers {
		r.left[a] = why
	}
}

// ok ends the case on an error of the library.
func (r *run) ok(err error) {
	r.t.Helper()
	if err != nil {
		r.t.Fatal(err)
	}
}
