package timing

import (
	"testing"

	"example.com/benchbook/units"
)

// BestOfAMillion returns a train of a million combinations, its plan, and two ways
// to the best of them from one start: a plan's search alone, and trying each.
func BestOfAMillion(tb testing.TB, in, ex units.CrankAngle) (moves []Move, p *Plan, search func(*Plan), exhaust func()) {
	moves, p = million(tb)
	return moves, p, func(q *Plan) { q.search(-grains(in), -grains(ex)) }, func() { exhaustive(moves, p.near, grains(in), grains(ex), false) }
}
