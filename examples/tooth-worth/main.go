// Tooth-worth says what a tooth, a keyway and a vernier hole of a cam drive are
// worth in crank degrees, and after how many turns its marks meet again.
package main

import (
	"flag"

	"example.com/benchbook/examples/internal/slip"
	"example.com/benchbook/refdata"
	"example.com/benchbook/timing/gear"
	"example.com/benchbook/units"
)

func main() {
	text := flag.String("train", "24:31:48", "teeth from the crank to the cam; 24:31:48 has an idler of 31")
	keyways := flag.Int("keyways", 5, "equally spaced keyways in the camwheel; 1 if there is nothing to choose")
	out := flag.String("out", "7°", "how far the cam is to be moved, in degrees of the cam")
	slip.Flags()

	train := slip.Need(gear.ParseTrain(*text))
	want := slip.Need(units.ParseAngle(*out))
	if err := train.CheckHalfSpeed(); err != nil {
		slip.Refuse(err)
	}
	last := train.Len() - 1
	worth := slip.Need(train.ToothWorth(last))
	slip.Certain("one tooth at the camwheel is %s of the cam, %s", worth.Last, worth.Crank)
	meet := slip.Need(train.MarksMeet())
	slip.Certain("the marks meet every %d turns of the crank", meet.Turns)
	if meet.Turns > 2 {
		slip.Say("", "so marks that do not meet prove nothing until %d turns have been made", meet.Turns)
	}
	if *keyways != 1 {
		k := gear.Keyed{Teeth: train.Pair(last).Driven, Keyways: *keyways}
		step := slip.Need(k.Step())
		best := slip.Need(k.Nearest(want))
		slip.Certain("keyways and teeth together give steps of %v° of the cam", step)
		slip.Certain("nearest to %s: %d keyways and %d teeth on, %s of the cam", want, best.Keyways, best.Teeth, best.Shift)
	}
	slip.Basis(refdata.Basis{Cautions: []refdata.Caution{refdata.ValveMeetsPiston, refdata.RetainingNuts, refdata.DeferToManual}})
}
