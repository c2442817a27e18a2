// Package yard misbehaves in every way the sweep looks for.
package yard

import (
	"encoding/json"
	"errors"
	"iter"
	"math"
)

// Half is sound: it refuses what is no number.
func Half(x float64) (float64, error) {
	if x-x != 0 {
		return 0, errors.New("must be finite")
	}
	return x / 2, nil
}

// Inverse gives an infinite answer for nothing.
func Inverse(x float64) float64 { return 1 / x }

// Pick has no third element.
func Pick(i int) string { return []string{"a", "b"}[min(max(i, 0), 2)] }

// Bench is a receiver with a rule.
type Bench struct{ Legs int }

// Wait never comes back for a bench of no legs.
func (b Bench) Wait() int {
	for b.Legs == 0 {
		b.Legs += b.Legs
	}
	return b.Legs
}

// Deep calls itself for ever below zero, which no recover catches.
func Deep(n int) int {
	if n == 0 {
		return 0
	}
	if n > 0 {
		return 1
	}
	return 1 + Deep(n-1)
}

// Sealed shows no field.
type Sealed struct{ x float64 }

// Seal keeps anything.
func Seal(x float64) Sealed { return Sealed{x} }

// Open lets out what Seal let in.
func (s Sealed) Open() float64 { return s.x }

// Carrier says itself what is wrong with it.
type Carrier struct{ X float64 }

// Carry is sound.
func Carry(x float64) Carrier { return Carrier{x} }

// Err is nil for a figure.
func (c Carrier) Err() error {
	if c.X-c.X != 0 {
		return errors.New("must be finite")
	}
	return nil
}

// Note is text that cannot always be written.
type Note struct{ Text string }

// MarshalJSON knows no quotes.
func (n Note) MarshalJSON() ([]byte, error) { return []byte(`"` + n.Text + `"`), nil }

// Write returns a note.
func Write(text string) (n Note, _ error) {
	if !json.Valid([]byte(`"` + text[:min(1, len(text))] + `"`)) {
		return Note{}, errors.New("must begin better")
	}
	return Note{text}, nil
}

// Count yields a root that may be none.
func Count(n float64) iter.Seq[float64] {
	return func(yield func(float64) bool) { yield(math.Sqrt(n)) }
}

// Largest is generic.
func Largest[T ~float64](list []T) T {
	best := list[0]
	for _, x := range list {
		best = max(best, x)
	}
	if x := float64(best); x-x != 0 {
		return 0
	}
	return best
}

// MustHalf may panic.
func MustHalf(x float64) float64 {
	h, err := Half(x)
	if err != nil {
		panic(err)
	}
	return h
}
