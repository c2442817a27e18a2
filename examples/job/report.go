package job

import "example.com/benchbook/refdata"

// Report is what the bench has to say about one job: the order of work, whether
// the engine may be turned, and one section for each part of the machine that
// the job file speaks of. It marshals to JSON as it stands.
type Report struct {
	Schema   string     `json:"schema"`
	Library  string     `json:"library"`
	Tables   string     `json:"tables"` // hash over all reference tables used
	Machine  string     `json:"machine"`
	Note     string     `json:"note,omitempty"`
	Order    []Step     `json:"order"`
	Turn     Permission `json:"turn"`
	Start    Permission `json:"start"`
	Sections []Section  `json:"sections"`
}

// Step is one step of the order of work.
type Step struct {
	Key   string `json:"key"`
	Text  string `json:"text"`
	State State  `json:"state"`
	Why   string `json:"why,omitempty"`
}

// State says how a step stands.
type State string

// The states of a step.
const (
	Open   State = "not looked at" // nothing in the job file speaks of it
	Good   State = "in order"      // looked at, nothing found; not proof
	Wrong  State = "put right"     // a fault was found
	Unsure State = "settle"        // looked at, but the readings leave it open
)

// Permission says whether something may be done as the machine stands.
type Permission struct {
	Allowed bool     `json:"allowed"`
	Text    string   `json:"text"` // the answer in a sentence
	Why     []string `json:"why,omitempty"`
}

// Section is what one part of the machine has to say: findings first, then
// what to do, then the figures they rest on.
type Section struct {
	Key           string               `json:"key"`
	Title         string               `json:"title"`
	Findings      []Finding            `json:"findings"`
	Open          bool                 `json:"open"` // the readings were too few to say anything
	DoFirst       []string             `json:"do_first,omitempty"`
	BeforeTurning []string             `json:"before_turning,omitempty"`
	Read          []Row                `json:"read,omitempty"`
	Tables        []Table              `json:"tables,omitempty"`
	Next          []Settle             `json:"next,omitempty"` // readings that would tell most
	NotChecked    []refdata.Unchecked  `json:"not_checked,omitempty"`
	Assumed       []refdata.Assumption `json:"assumed,omitempty"`
	Sources       []refdata.Source     `json:"sources,omitempty"`
	Cautions      []refdata.Caution    `json:"cautions,omitempty"`
	Result        any                  `json:"result,omitempty"` // the package's own result, whole: a TimingResult, ClutchResult ...
}

// Finding is one sentence of meaning with how sure it is.
type Finding struct {
	Key     string `json:"key"`
	Text    string `json:"text"`
	Sure    string `json:"sure,omitempty"`    // in words: "very likely"
	Percent int    `json:"percent,omitempty"` // whole per cent; 0 with Sure empty if not a matter of odds
	Fault   bool   `json:"fault"`             // something to put right
}

// Row is one line of figures, such as a reading: what, figure, remark.
type Row struct {
	What   string `json:"what"`
	Figure string `json:"figure"`
	Note   string `json:"note,omitempty"`
}

// Table is a small table of figures.
type Table struct {
	Title string     `json:"title"`
	Head  []string   `json:"head"`
	Rows  [][]string `json:"rows"`
}

// Settle is a reading that could be taken next and what it would tell.
type Settle struct {
	Text    string  `json:"text"`
	Bits    float64 `json:"bits"` // expected information; 1 bit halves the doubt
	Minutes float64 `json:"minutes"`
}

// Section returns the section with the key, nil if the job has none.
func (r Report) Section(key string) *Section {
	for i := range r.Sections {
		if r.Sections[i].Key == key {
			return &r.Sections[i]
		}
	}
	return nil
}

// Faulty reports whether the section found something to put right.
func (s *Section) Faulty() bool {
	for _, f := range s.Findings {
		if f.Fault {
			return true
		}
	}
	return false
}
