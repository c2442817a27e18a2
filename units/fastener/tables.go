package fastener

import (
	"strings"
	"sync"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units"
)

// tables returns the threads of all tables, read once. Nothing changes it.
var tables = sync.OnceValue(func() []Thread {
	list := make([]Thread, 0, refdata.Threads().Len())
	for row := range refdata.Threads().All() {
		list = append(list, fromRow(row))
	}
	return list
})

// fromRow returns the thread of a table row.
func fromRow(row refdata.Thread) Thread {
	return Thread{
		system: row.System, form: formOf(row.System, row.Included),
		name: row.Name, key: keyOf(row.Name),
		major: row.Major, pitch: row.Pitch,
	}
}

// formOf returns the form of a system's thread. Only the cycle table holds two.
func formOf(s System, included units.Angle) Form {
	switch s {
	case BSW, BSF, BSPP, Brass:
		return WhitworthForm
	case Cycle:
		if included == WhitworthForm.Included() {
			return WhitworthForm
		}
		return CycleForm
	case Spoke:
		return CycleForm
	case BA:
		return AssociationForm
	case MetricCoarse, MetricFine:
		return MetricForm
	}
	return UnifiedForm
}

// keyOf turns a name into a key: "1/2-20 cycle 55°" into "1/2-20-cycle-55".
func keyOf(name string) string {
	return strings.ToLower(strings.ReplaceAll(strings.ReplaceAll(name, " ", "-"), "°", ""))
}

// Row returns the row of the reference tables the thread comes from, with the
// figures as printed and their sources. A thread made by [Of] has none.
func (t Thread) Row() (refdata.Thread, bool) {
	if t.system == 0 {
		return refdata.Thread{}, false
	}
	return refdata.ThreadsOf(t.system).ByName(t.name)
}
