// Package small is what the test of the tool changes.
package small

const fixed = 2 * 3 // cannot be changed while running

// Larger is held by its test to the last change but one.
func Larger(a, b int) int {
	if a > b { // at a == b either will do
		return a
	}
	return b
}

// Sum loses its sign change where only zero is tried.
func Sum(a, b float64) float64 { return a + b }

// Count ends never if it counts the other way.
func Count(n int) (steps int) {
	for i := 0; i != n; i++ {
		steps += 1
	}
	return steps
}

// Alone has no test.
func Alone(a int) int { return a % fixed }
