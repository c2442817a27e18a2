// Cam-lobe draws a smooth curve through lifts read off a cam every so many crank
// degrees, and says where the valve opens and closes and how well that is known.
package main

import (
	"flag"
	"fmt"
	"os"
	"strings"

	"example.com/benchbook/examples/internal/slip"
	"example.com/benchbook/timing/cam"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// invented readings: crank degrees after the TDC of overlap, lift in mm.
const invented = `-80 0.01 -70 0.00 -60 0.00 -50 -0.01 -40 0.00 -30 0.00 -20 0.00 -10 0.06 0 0.37 10 0.97 20 1.82 30 2.87 40 3.98 50 5.06 60 6.06 70 6.88 80 7.45 90 7.79 100 7.95
110 8.00 120 7.95 130 7.78 140 7.46 150 6.87 160 6.05 170 5.07 180 3.98 190 2.86 200 1.83 210 0.96 220 0.37 230 0.05 240 0.00 250 0.01
260 0.00 270 0.00 280 -0.01 290 0.00 300 0.00`

func main() {
	file := flag.String("file", "", "text file of pairs: crank degrees after the TDC of overlap, lift in mm")
	check := flag.String("check", "1 mm", "check lift")
	slip.Flags()

	text := invented
	if *file != "" {
		text = string(slip.Need(os.ReadFile(*file)))
	}
	fields := strings.Fields(text)
	if len(fields)%2 != 0 {
		slip.Refuse(fmt.Errorf("%d figures: an angle and a lift go together", len(fields)))
	}
	var readings []cam.Sample
	for i := 0; i < len(fields); i += 2 {
		angle, lift := slip.Need(units.ParseRatio(fields[i])), slip.Need(units.ParseRatio(fields[i+1]))
		readings = append(readings, cam.CrankSample(units.CrankDegrees(angle.Value()), units.Millimetres(lift.Value())))
	}
	curve := slip.Need(cam.Fit(readings, cam.FitOptions{Criterion: cam.KnownNoise}))
	at := slip.Need(units.ParseLength(*check))
	events := slip.Need(curve.Events(at))
	if events.NoAnswer.Given() {
		slip.Say("unknown", "%v", events.NoAnswer)
		return
	}
	centres := slip.Need(curve.Centres(at))
	doubt := slip.Need(curve.Doubts(events, units.Millimetres(0.02), units.CrankDegrees(1).AtHalfSpeedCam()))
	slip.Certain("at %s opens %v, closes %v", at, measure.At(cam.Place(events.Opens), doubt.Opens.AtCrank()), measure.At(cam.Place(events.Closes), doubt.Closes.AtCrank()))
	slip.Certain("that is %s; full lift %s", events.Duration.AtCrank().In(units.CrankDegree, 0), centres.MaxLift.In(units.Millimetre, 2))
	slip.Certain("the middle of the lobe stands %s after overlap", centres.ByEvents.AtCrank().In(units.CrankDegree, 1))
	slip.Say("likely", "a reading is good to about %s: reading less curve is %s", curve.Noise.In(units.Millimetre, 3), curve.Rough.In(units.Millimetre, 3))
	slip.Basis(curve.Basis)
}
