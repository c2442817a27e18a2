package checks_test

import (
	"fmt"

	"example.com/benchbook/refdata/checks"
)

// What a front end in another language compares with: the digits a source prints,
// and how far one may lie from them.
func ExampleCase_Figure() {
	c, ok := checks.ByID("isa-1000")
	if !ok {
		fmt.Println("no such case")
		return
	}
	f, ok := c.Figure("p")
	fmt.Println(f.Value, f.Unit, ok)
	if f.Tol != nil {
		var tol checks.Tolerance = *f.Tol
		fmt.Println("within", tol.Rel, "of it, or", tol.Abs, f.Unit)
	}
	// Output:
	// 89874.6 Pa true
	// within 5.57e-07 of it, or 0 Pa
}
