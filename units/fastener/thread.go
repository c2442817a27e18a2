package fastener

import (
	"iter"

	"example.com/benchbook/units"
)

// Thread is one thread: system, size, pitch, form and hand. Threads are
// comparable and safe to copy; the zero Thread is no thread.
type Thread struct {
	system       System
	form         Form
	hand         Hand
	name, key    string
	major, pitch units.Length
}

// Name returns the thread as the trade writes it: "1/4 BSF", "1/4-26 cycle",
// "2BA", "M8x1", "#10-32 UNF", "G 1/8".
func (t Thread) Name() string { return t.name }

// Key returns the stable key of the thread within the tables: "bsf:1/4".
func (t Thread) Key() string { return t.key }

// String returns the name, and the hand if it is left.
func (t Thread) String() string {
	switch {
	case t.IsZero():
		return "no thread"
	case t.hand == Left:
		return t.name + " left-hand"
	}
	return t.name
}

// MarshalText returns the name, and the hand if it is known: "1/4 BSF LH".
// [Parse] reads it back, but for special threads.
func (t Thread) MarshalText() ([]byte, error) {
	switch {
	case t.IsZero():
		return nil, nil
	case t.hand == Left:
		return []byte(t.name + " LH"), nil
	case t.hand == Right:
		return []byte(t.name + " RH"), nil
	}
	return []byte(t.name), nil
}

// UnmarshalText reads a name as [Parse] does; empty text is no thread.
func (t *Thread) UnmarshalText(b []byte) error {
	if len(b) == 0 {
		*t = Thread{}
		return nil
	}
	got, err := Parse(string(b))
	if err != nil {
		return err
	}
	*t = got
	return nil
}

// IsZero reports whether t is no thread.
func (t Thread) IsZero() bool { return t.pitch == 0 }

// System returns the family.
func (t Thread) System() System { return t.system }

// Form returns the shape of the section.
func (t Thread) Form() Form { return t.form }

// Hand returns which way it winds. Threads from the tables and from names are
// of unknown hand unless the name says "LH" or "RH".
func (t Thread) Hand() Hand { return t.hand }

// Major returns the basic outside diameter.
func (t Thread) Major() units.Length { return t.major }

// Pitch returns the distance from one thread to the next.
func (t Thread) Pitch() units.Length { return t.pitch }

// ThreadsPerInch returns 25.4 mm over the pitch; zero for no thread.
func (t Thread) ThreadsPerInch() float64 {
	if t.IsZero() {
		return 0
	}
	return float64((units.Inch).Ratio(t.pitch))
}

// WithHand returns the thread with its hand noted.
func (t Thread) WithHand(h Hand) Thread {
	t.hand = h
	return t
}

// Threads returns every thread of the tables, system by system, smallest first.
func Threads() iter.Seq[Thread] {
	return func(yield func(Thread) bool) {
		for _, t := range tables() {
			if !yield(t) {
				return
			}
		}
	}
}
