// Package shop is looked at by the test of the command. Its map: Shown, Silent
// and Inside.
package shop

// Shown is in an Example.
func Shown() []Bolt { return []Bolt{{}} }

// Silent is in an Example whose output is not checked.
func Silent() {}

// Inside is in an Example of the package's own tests.
func Inside() {}

// Tested is in a test alone.
func Tested() {}

// Bolt is held in a slice by an Example.
type Bolt struct{}

// Turn is called by an Example.
func (Bolt) Turn() {}

// Shear is not.
func (*Bolt) Shear() {}

// String is called for a reader.
func (Bolt) String() string { return "bolt" }

// Nut is in no Example.
type Nut struct{}

// Number is a constraint.
type Number interface{ ~int | ~float64 }

// Box is held with a type argument.
type Box[T any] struct{ In T }

// Open is called on an instance.
func (Box[T]) Open() T { var t T; return t }

// Washer is a type argument.
type Washer struct{}

// Size is a constant, which is not counted.
const Size = 8
