package fastener

import "example.com/benchbook/units/fault"

// Hand says which way a thread winds. Nothing in its size tells, so it is asked
// for before any advice on turning.
type Hand uint8

// The hands.
const (
	HandUnknown Hand = iota // not looked at
	Right                   // does up clockwise
	Left                    // does up anticlockwise
)

// String returns "right", "left" or "hand unknown".
func (h Hand) String() string {
	switch h {
	case Right:
		return "right"
	case Left:
		return "left"
	}
	return "hand unknown"
}

// MarshalText returns the words of String.
func (h Hand) MarshalText() ([]byte, error) { return []byte(h.String()), nil }

// Action is what is to be done with a fastener.
type Action uint8

// The actions.
const (
	Undo Action = iota + 1
	DoUp
)

// Turn is the way to turn, seen by someone facing the head or nut.
type Turn uint8

// The turns. The zero value is no advice.
const (
	Clockwise Turn = iota + 1
	Anticlockwise
)

// String returns "clockwise", "anticlockwise" or "not known".
func (t Turn) String() string {
	switch t {
	case Clockwise:
		return "clockwise"
	case Anticlockwise:
		return "anticlockwise"
	}
	return "not known"
}

// MarshalText returns the words of String.
func (t Turn) MarshalText() ([]byte, error) { return []byte(t.String()), nil }

// Turn returns the way to turn for an action. While the hand is unknown there
// is a reason instead: look at the thread first. On a right-hand thread held
// upright the visible threads rise to the right.
func (t Thread) Turn(a Action) (Turn, fault.Reason) {
	if t.hand == HandUnknown || t.hand > Left {
		return 0, fault.Reason{Code: "hand-unknown", Text: "look first which way the thread winds: held upright, a right-hand thread rises to the right, a left-hand one to the left"}
	}
	if a != Undo && a != DoUp {
		return 0, fault.Reason{Code: "action-unknown", Text: "say whether it is to be undone or done up"}
	}
	if (t.hand == Right) == (a == DoUp) {
		return Clockwise, fault.Reason{}
	}
	return Anticlockwise, fault.Reason{}
}
