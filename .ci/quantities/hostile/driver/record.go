package driver

import (
	"sync"
	"sync/atomic"
)

// kept is how many argument lists of one function are kept: the first ones, then
// those at doubling distances, so that a function called a million times leaves
// early and late ones alike.
const kept = 8

var (
	on    atomic.Bool
	mutex sync.Mutex
	seen  = map[string][][]any{}
	count = map[string]int{}
	order []string
)

// Record switches the keeping of arguments on or off.
func Record(yes bool) { on.Store(yes) }

// On reports whether arguments are to be kept.
func On() bool { return on.Load() }

// Saw keeps the arguments of a call, the receiver first.
func Saw(key string, args ...any) {
	mutex.Lock()
	defer mutex.Unlock()
	n := count[key]
	count[key] = n + 1
	switch {
	case n == 0:
		order = append(order, key)
		fallthrough
	case n < kept/2:
		seen[key] = append(seen[key], args)
	case n&(n-1) == 0:
		if len(seen[key]) < kept {
			seen[key] = append(seen[key], args)
		} else {
			seen[key][kept/2+n%(kept/2)] = args
		}
	}
}
