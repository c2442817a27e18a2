package checks

import (
	"embed"
	"encoding/json"
	"iter"
	"maps"
	"slices"
	"sync"

	"example.com/benchbook/refdata"
)

//go:embed *.json
var files embed.FS

// catalogue is the cases in the order of their files, read once.
type catalogue struct {
	cases []Case
	at    map[string]int
}

// load reads the embedded files on first use. They are part of the package and
// tested whole, so a file that cannot be read is a mistake in the build.
var load = sync.OnceValue(func() catalogue {
	c := catalogue{at: map[string]int{}}
	entries, err := files.ReadDir(".")
	if err != nil {
		panic(err)
	}
	for _, e := range entries {
		cases, err := read(e.Name())
		if err != nil {
			panic(err)
		}
		for _, one := range cases {
			c.at[one.ID] = len(c.cases)
			c.cases = append(c.cases, one)
		}
	}
	return c
})

// read reads one embedded file.
func read(name string) ([]Case, error) {
	b, err := files.ReadFile(name)
	if err != nil {
		return nil, err
	}
	var f struct {
		Schema int       `json:"schema"`
		Cases  []rawCase `json:"cases"`
	}
	if err := json.Unmarshal(b, &f); err != nil {
		return nil, err
	}
	cases := make([]Case, len(f.Cases))
	for i, r := range f.Cases {
		cases[i] = r.Case
		cases[i].Source = refdata.Source{Title: r.Source.Title, Clause: r.Source.Clause, Read: r.Source.Read, Status: status(r.Source.Status)}
	}
	return cases, nil
}

// rawCase is a case whose status is still text.
type rawCase struct {
	Case
	Source struct{ Title, Clause, Read, Status string } `json:"source"`
}

// status returns the status of that text, or the zero Status, which no case
// may have.
func status(text string) refdata.Status {
	for s := refdata.Standard; s <= refdata.FromMemory; s++ {
		if s.String() == text {
			return s
		}
	}
	return 0
}

// All returns every case, file by file.
func All() iter.Seq[Case] {
	return func(yield func(Case) bool) {
		for _, c := range load().cases {
			if !yield(c.clone()) {
				return
			}
		}
	}
}

// ByID returns the case of that identifier.
func ByID(id string) (Case, bool) {
	all := load()
	i, ok := all.at[id]
	if !ok {
		return Case{}, false
	}
	return all.cases[i].clone(), true
}

// ByTopic returns the cases of one topic, none if there is no such topic.
func ByTopic(topic string) iter.Seq[Case] {
	return func(yield func(Case) bool) {
		for _, c := range load().cases {
			if c.Topic == topic && !yield(c.clone()) {
				return
			}
		}
	}
}

// Topics returns the topics in alphabetical order.
func Topics() []string {
	seen := map[string]bool{}
	for _, c := range load().cases {
		seen[c.Topic] = true
	}
	return slices.Sorted(maps.Keys(seen))
}

// clone returns a case that shares nothing with c.
func (c Case) clone() Case {
	c.Inputs, c.Expected = cloneFigures(c.Inputs), cloneFigures(c.Expected)
	c.NotReproduced = slices.Clone(c.NotReproduced)
	return c
}

func cloneFigures(m map[string]Figure) map[string]Figure {
	m = maps.Clone(m)
	for name, f := range m {
		f.Values = slices.Clone(f.Values)
		if f.Tol != nil {
			t := *f.Tol
			f.Tol = &t
		}
		m[name] = f
	}
	return m
}
