package shop

import "testing"

func ExampleInside() {
	Inside()
	// Output:
}

func TestTested(t *testing.T) { Tested() }
