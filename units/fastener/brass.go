package fastener

import (
	"strconv"

	"example.com/benchbook/units"
)

// brassSixteenths are the diameters served of the 26 tpi brass thread, in
// sixteenths of an inch. The thread keeps its pitch and form at any diameter;
// that these are the ones met is common practice, no source.
func brassSixteenths() [10]int { return [10]int{2, 3, 4, 5, 6, 7, 8, 10, 12, 16} }

func brass(sixteenths int) Thread {
	d := units.Inches(float64(sixteenths) / 16)
	name := sixteenthsText(sixteenths) + "-26 brass"
	return Thread{system: Brass, form: WhitworthForm, name: name, key: keyOf(name), major: d, pitch: units.Millimetres(25.4 / 26)}
}

// sixteenthsText returns "1/4", "5/16", "1".
func sixteenthsText(n int) string {
	if n%16 == 0 {
		return strconv.Itoa(n / 16)
	}
	den := 16
	for n%2 == 0 {
		n, den = n/2, den/2
	}
	return strconv.Itoa(n) + "/" + strconv.Itoa(den)
}
