package fastener

import (
	"slices"
	"sync"

	"example.com/benchbook/refdata"
)

type tableName struct {
	system System
	name   string
}

// remembered holds the sources of the threads whose size is from memory.
var remembered = sync.OnceValue(func() map[tableName][]refdata.Source {
	m := map[tableName][]refdata.Source{}
	for row := range refdata.Threads().All() {
		if row.ThreadOrigin.Status() == refdata.FromMemory {
			m[tableName{row.System, row.Name}] = row.ThreadOrigin.Sources()
		}
	}
	return m
})

// owned adds to the sources of a result those of a thread whose very size is from
// memory: the sources of its form, good as they are, do not tell that.
func owned(to []refdata.Source, threads ...Thread) []refdata.Source {
	for _, t := range threads {
		for _, s := range remembered()[tableName{t.system, t.name}] {
			if !slices.Contains(to, s) {
				to = append(to, s)
			}
		}
	}
	return to
}

// ownedSpanner is the same for a spanner whose two markings are paired from memory.
func ownedSpanner(to []refdata.Source, marking string) []refdata.Source {
	for s := range refdata.WhitworthSpanners().All() {
		if s.PairingOrigin.Status() == refdata.FromMemory && marking == whitworthMarks(s) {
			for _, src := range s.PairingOrigin.Sources() {
				if !slices.Contains(to, src) {
					to = append(to, src)
				}
			}
		}
	}
	return to
}

func whitworthMarks(s refdata.WhitworthSpanner) string {
	if s.BS == "" {
		return s.W
	}
	return s.W + ", " + s.BS
}
