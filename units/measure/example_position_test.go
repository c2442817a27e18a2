package measure_test

import (
	"encoding/json"
	"fmt"

	"example.com/benchbook/units/measure"
)

// Where the crank stood when the inlet valve opened.
func ExamplePosition() {
	opens := measure.MustReadPosition("25 BTDC", measure.DegreeDisc())
	fmt.Println(opens.Value(), "give or take", opens.U(), "by", opens.Instrument())
	fmt.Printf("written %q, %v from TDC\n", opens.Text(), opens.Value().FromTDC())
	b, _ := json.Marshal(opens)
	fmt.Println(string(b))

	var closes measure.Position
	fmt.Println("inlet closes:", closes, closes.Taken())
	// Output:
	// 25° BTDC give or take 1° crank by degree disc
	// written "25 BTDC", -25° crank from TDC
	// {"text":"25 BTDC","value":-25,"unit":"° crank after TDC","u":1}
	// inlet closes: not taken false
}

// Text that is no place on the disc is refused with the form wanted.
func ExampleMustReadPosition() {
	fmt.Println(measure.MustReadPosition("TDC ± 0.5", measure.DegreeDisc()))
	_, err := measure.ReadPosition("25 late", measure.DegreeDisc())
	fmt.Println(err)
	// Output:
	// TDC ± 0.5°
	// 25 late: expected degrees and a side, such as 25 BTDC, 40° ABDC or TDC
}
