package refdata

import (
	"maps"
	"slices"
	"strings"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// LimitReadings are readings of a stripped engine, each under the key of its
// workshop limit.
type LimitReadings struct {
	Bore    measure.Reading[units.Length]            // what ring gaps and piston clearances grow with
	Lengths map[string]measure.Reading[units.Length] // "ring-gap", "guide-inlet" ...
	Forces  map[string]measure.Reading[units.Force]  // "valve-spring-load"
	Shares  map[string]measure.Reading[units.Ratio]  // "valve-spring-share", "chain-stretch" ...
}

// LimitReport is what a set of readings says, worst first within each quantity.
type LimitReport struct {
	Lengths []LimitFinding[units.Length] `json:"lengths,omitempty"`
	Forces  []LimitFinding[units.Force]  `json:"forces,omitempty"`
	Shares  []LimitFinding[units.Ratio]  `json:"shares,omitempty"`
	Basis   Basis                        `json:"basis"`
}

// CheckLimits checks readings against the workshop limits, as CheckLimit does one
// by one. Limits that nothing was read for are listed in Basis.NotChecked; where
// a limit has variants, such as the piston's material, one reading of any serves.
// Every fault of every reading is returned at once, its path beginning with the
// field and the key: "lengths.ring-gap.reading".
func CheckLimits(in LimitReadings) (LimitReport, error) {
	var l fault.List
	var r LimitReport
	r.Lengths = checkAll("lengths", in.Lengths, in.Bore, &l, &r.Basis)
	r.Forces = checkAll("forces", in.Forces, in.Bore, &l, &r.Basis)
	r.Shares = checkAll("shares", in.Shares, in.Bore, &l, &r.Basis)
	if err := l.Err(); err != nil {
		return LimitReport{}, err
	}
	read := map[string]bool{}
	for _, keys := range []map[string]bool{taken(in.Lengths), taken(in.Forces), taken(in.Shares)} {
		maps.Copy(read, keys)
	}
	for limit := range WorkshopLimits().All() {
		if k := family(limit.Key); !read[k] {
			read[k] = true
			r.Basis.NotChecked = append(r.Basis.NotChecked, Unchecked{What: limit.Part, Why: "not read", Settle: "read it with a " + limit.ReadWith})
		}
	}
	return r, nil
}

// checkAll checks the readings of one quantity, in the order of their keys, and
// puts the worst first. What the findings rest on is gathered in b, but for
// readings not taken, which the caller lists.
func checkAll[Q units.Quantity](field string, readings map[string]measure.Reading[Q], bore measure.Reading[units.Length], l *fault.List, b *Basis) []LimitFinding[Q] {
	var out []LimitFinding[Q]
	for _, key := range slices.Sorted(maps.Keys(readings)) {
		f, err := CheckLimit(key, readings[key], bore, LimitOptions[Q]{})
		if !l.Under(field+"."+key, err) {
			continue
		}
		if !readings[key].Taken() {
			f.Basis.NotChecked = nil // the caller lists it with all that was not read
			b.Join(f.Basis)
			continue
		}
		b.Join(f.Basis)
		out = append(out, f)
	}
	slices.SortStableFunc(out, func(a, b LimitFinding[Q]) int { return b.Verdict.weight() - a.Verdict.weight() })
	return out
}

// taken returns the families of the keys that were read.
func taken[Q units.Quantity](readings map[string]measure.Reading[Q]) map[string]bool {
	out := map[string]bool{}
	for key, r := range readings {
		if r.Taken() {
			if limit, ok := WorkshopLimits().ByName(key); ok {
				out[family(limit.Key)] = true
			}
		}
	}
	return out
}

// family is the part of a key before its variant.
func family(key string) string {
	k, _, _ := strings.Cut(key, ":")
	return k
}
