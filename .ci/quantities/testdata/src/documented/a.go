// Package documented has comments, mostly.
package documented

// T has one.
type T struct{ Field int }

type U struct{} // want `U has no comment`

// Group comments serve constants.
const (
	A = 1
	B = 2
)

const C = 3 // a comment behind the line

var E, f = 5, 6 // what they are

var (
	h = 1
	i = 2
)

// F has one.
func F() {}

func G() {} // want `G has no comment`

func (T) M() {} // want `M has no comment`

func (u *U) n() {}

type hidden struct{}

func (hidden) M() {}
