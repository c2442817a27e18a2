package refdata

import "slices"

// Basis is the part that every verdict has in common: what it rests on, what it
// took for granted, what it did not look at, and what can hurt.
type Basis struct {
	Sources    []Source     `json:"sources"`
	Assumed    []Assumption `json:"assumed,omitempty"`
	NotChecked []Unchecked  `json:"not_checked,omitempty"`
	Cautions   []Caution    `json:"cautions,omitempty"`
}

// Assumption is a figure that stood in for one that was not given.
type Assumption struct {
	What   string `json:"what"`  // "cable efficiency"
	Value  string `json:"value"` // "0.80 ± 0.06"
	Status Status `json:"status"`
}

// Unchecked is something a verdict could not look at. That nothing was found
// there does not mean that nothing is wrong.
type Unchecked struct {
	What   string `json:"what"`   // "piston-to-valve clearance"
	Why    string `json:"why"`    // "no lift curve given"
	Settle string `json:"settle"` // the cheapest reading that would settle it
}

// String returns text such as "cable efficiency: 0.80 ± 0.06 [common practice]".
func (a Assumption) String() string {
	if a.Status == 0 {
		return a.What + ": " + a.Value
	}
	return a.What + ": " + a.Value + " [" + a.Status.String() + "]"
}

// String returns text such as "piston-to-valve clearance: no lift curve given; to
// settle it: modelling clay on the crown".
func (u Unchecked) String() string {
	text := u.What
	if u.Why != "" {
		text += ": " + u.Why
	}
	if u.Settle != "" {
		text += "; to settle it: " + u.Settle
	}
	return text
}

// Join adds what another verdict rests on, each entry once.
func (b *Basis) Join(other Basis) {
	b.Sources = joined(b.Sources, other.Sources)
	b.Assumed = joined(b.Assumed, other.Assumed)
	b.NotChecked = joined(b.NotChecked, other.NotChecked)
	b.Cautions = joined(b.Cautions, other.Cautions)
}

func joined[T comparable](to, from []T) []T {
	for _, x := range from {
		if !slices.Contains(to, x) {
			to = append(to, x)
		}
	}
	return to
}
