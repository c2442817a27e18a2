package ignition_test

import (
	"fmt"

	"example.com/benchbook/timing/gear"
	"example.com/benchbook/timing/ignition"
	"example.com/benchbook/units"
)

// How often it sparks, and what 30° of the crank are at the shaft that carries the
// points: by chain at half speed, and on the crank's own end.
func ExampleDriveOf() {
	chain, err := ignition.DriveOf(gear.Train{}.ThenChain(15, 30))
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, d := range []ignition.Drive{chain, ignition.EngineSpeed()} {
		fmt.Println("every", d.Period(), "- 30° crank are", d.AtShaft(30*units.CrankDegree), "at the shaft")
	}
	// Output:
	// every 720° crank - 30° crank are 15° at the shaft
	// every 360° crank - 30° crank are 30° at the shaft
}

// A delay of 1.2 ms between spark and flame takes more crank the faster it turns.
func ExampleTurned() {
	for _, rpm := range []float64{1000, 5000} {
		a, err := ignition.Turned(units.Milliseconds(1.2), units.RevolutionsPerMinute(rpm))
		fmt.Println(a.In(units.CrankDegree, 1), err)
	}
	// Output:
	// 7.2° crank <nil>
	// 36.0° crank <nil>
}

// The place of the spark as a user typed it into a form; an empty field is a place
// not taken.
func ExampleWhere() {
	for _, text := range []string{"7/16 in before TDC", ""} {
		w, err := ignition.ReadWhere(text)
		fmt.Printf("%q: %v %v %v\n", text, w, w.Taken(), err)
	}
	// Output:
	// "7/16 in before TDC": 7/16 in before TDC true <nil>
	// "": not taken false <nil>
}
