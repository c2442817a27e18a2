package refdata

import (
	_ "embed" // the register
	"slices"
	"sync"
)

// TableInfo says what a table is.
type TableInfo struct {
	Name          string         `json:"name"` // of the CSV file: "threads_bsf"
	Title         string         `json:"title"`
	Rows          int            `json:"rows"`
	Version       string         `json:"version"` // raised whenever the text changes
	SHA256        string         `json:"sha256"`  // of the CSV text, in hexadecimal
	Sources       []Source       `json:"sources"`
	Disagreements []Disagreement `json:"disagreements,omitempty"`
}

// Disagreement is a figure on which published tables differ.
type Disagreement struct {
	Table  string `json:"table"`
	Row    string `json:"row,omitempty"` // "" for the whole table
	What   string `json:"what"`
	Served string `json:"served"` // what the table has
	Other  string `json:"other"`  // what is printed elsewhere, and where
	Note   string `json:"note,omitempty"`
}

// Omission is something left out on purpose.
type Omission struct {
	What string `json:"what"`
	Why  string `json:"why"`
}

// Tables returns every table with its number of rows, version, hash, sources and
// disagreements. It reads every table that was not in use yet.
func Tables() []TableInfo {
	out := make([]TableInfo, 0, 48)
	for _, t := range every() {
		entry := register()[t.Name()]
		out = append(out, TableInfo{
			Name: t.Name(), Title: entry.title, Rows: t.Len(), Version: entry.version, SHA256: entry.sha256,
			Sources: slices.Clone(t.sources()), Disagreements: disagreementsOf(t.Name()),
		})
	}
	return out
}

// Hash returns a SHA-256 over the names and hashes of all tables, in hexadecimal:
// two programs with the same one rest on the same figures. It reads no table.
func Hash() string { return register()["all"].sha256 }

// Disagreements returns the figures on which published tables differ.
func Disagreements() []Disagreement { return append([]Disagreement(nil), disagreements()...) }

func disagreementsOf(table string) []Disagreement {
	var out []Disagreement
	for _, d := range disagreements() {
		if d.Table == table {
			out = append(out, d)
		}
	}
	return out
}

// LeftOut returns what the tables leave out on purpose, and why.
func LeftOut() []Omission { return append([]Omission(nil), leftOut()...) }

// every returns every table, each file once.
func every() []common {
	var out []common
	for _, s := range Systems() {
		out = append(out, ThreadsOf(s))
	}
	return append(out,
		WhitworthHexagons(), WhitworthSpanners(), UnifiedHexagons(), BAHexagons(), MetricHexagons(),
		NumberDrills(), LetterDrills(), MetricDrills(), WireGauge(), PropertyClasses(), Grades(),
		FrictionMaterials(), SpringModuli(), SpringStrengths(), DiscSprings(), Chains(), Tyres(),
		Fuels(), ExhaustGases(), SlideCutaways(), ThrottleInfluences(), JetDrills(), JetCoefficients(), StartingPoints(),
		StandardAtmosphere(), MoistAirDensities(),
		GearModules(), GearBacklashes(), LeastBacklashes(), DialGauges(), ValveTimings(),
		WorkshopLimits(), PlugThreads(),
	)
}

type registerEntry struct{ title, version, sha256 string }

var (
	//go:embed tables/register.csv
	textRegister string
	//go:embed tables/disagreements.csv
	textDisagreements string
	//go:embed tables/left_out.csv
	textLeftOut string

	register = sync.OnceValue(func() map[string]registerEntry {
		s := scan(textRegister)
		name, title, version, sum := s.must("name"), s.must("title"), s.must("version"), s.must("sha256")
		m := map[string]registerEntry{}
		for s.next() {
			m[s.text(name)] = registerEntry{s.text(title), s.text(version), s.text(sum)}
		}
		return m
	})

	disagreements = sync.OnceValue(func() []Disagreement {
		s := scan(textDisagreements)
		table, row, what, served, other, note := s.must("table"), s.must("row"), s.must("what"), s.must("served"), s.must("other"), s.must("note")
		var out []Disagreement
		for s.next() {
			out = append(out, Disagreement{s.text(table), s.text(row), s.text(what), s.text(served), s.text(other), s.text(note)})
		}
		return out
	})

	leftOut = sync.OnceValue(func() []Omission {
		s := scan(textLeftOut)
		what, why := s.must("what"), s.must("why")
		var out []Omission
		for s.next() {
			out = append(out, Omission{s.text(what), s.text(why)})
		}
		return out
	})
)
