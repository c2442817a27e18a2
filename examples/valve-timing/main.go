// Valve-timing says what four events on the degree disc mean: how far each cam is
// out, why, and what to move.
package main

import (
	"flag"

	"example.com/benchbook/examples/internal/slip"
	"example.com/benchbook/timing"
)

func main() {
	name := []string{"io", "ic", "eo", "ec"}
	what := []string{"inlet opens", "inlet closes", "exhaust opens", "exhaust closes"}
	book, read := make([]*string, 4), make([]*string, 4)
	for i, invented := range [][2]string{{"25 BTDC", "11 BTDC"}, {"65 ABDC", "79 ABDC"}, {"65 BBDC", "66 BBDC"}, {"25 ATDC", "24 ATDC"}} {
		book[i] = flag.String("book-"+name[i], invented[0], what[i]+", as the book has it")
		read[i] = flag.String(name[i], invented[1], what[i]+", as read; empty if not read")
	}
	pinion := flag.Int("pinion", 24, "teeth of the crank pinion")
	wheel := flag.Int("camwheel", 48, "teeth of each of two camwheels")
	stop := flag.Bool("stop", true, "TDC was found with a positive stop")
	slip.Flags()

	in := timing.Input{Readings: slip.Need(timing.ReadEvents(*read[0], *read[1], *read[2], *read[3]))}
	if *stop {
		in.Readings.TDC = timing.TDCByStop
	}
	in.Engine = timing.Engine{
		Drive:   timing.TwoCamwheels(*pinion, *wheel),
		Inlet:   slip.Need(timing.ReadLobe(*book[0], *book[1])),
		Exhaust: slip.Need(timing.ReadLobe(*book[2], *book[3])),
	}
	r := slip.Need(timing.Diagnose(in, timing.Options{}))
	slip.Certain("inlet cam early by %v, exhaust cam by %v; below zero is late", r.Inlet.Crank, r.Exhaust.Crank)
	if r.NoAnswer.Given() {
		slip.Say("unknown", "%v", r.NoAnswer)
	}
	slip.Odds(r.Causes, r.NextReadings)
	if len(r.Remedies) > 0 {
		slip.Say("do", "%s", r.Remedies[0].Text)
	}
	if !r.Turning.Start {
		slip.Say("do not", "start it: %s", r.Turning.Why)
	}
	slip.Basis(r.Basis)
}
