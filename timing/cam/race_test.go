package cam_test

import (
	"fmt"
	"sync"
	"testing"

	"example.com/benchbook/timing/cam"
	"example.com/benchbook/units"
)

// One curve, and what hangs on it, tells many who ask at once what it tells one.
func TestCurveManyAtOnce(t *testing.T) {
	lift, _, _ := evenLobe(361)
	c, err := cam.InterpolateEven(lift)
	if err != nil {
		t.Fatal(err)
	}
	v := cam.Valve{Cam: c, Clearance: units.Millimetres(0.1)}
	tell := func(from int) string {
		var told [360]string
		for i := range told {
			at := (i + from) % len(told)
			l, err := c.Lift(units.CamDegrees(float64(at)))
			m, _ := c.Motion(units.CamDegrees(float64(at)))
			told[at] = fmt.Sprint(l, m, err)
		}
		top, at := c.MaxLift()
		e, err := c.Events(units.Millimetres(1))
		ve, verr := v.Events(units.Millimetres(0.5))
		turned, _ := c.Advanced(units.CamDegrees(4))
		return fmt.Sprint(told, top, at, e, err, ve, verr, turned.Len(), c.Reversed().Len())
	}
	alone := tell(0)
	var all sync.WaitGroup
	for i := range 8 {
		all.Go(func() {
			if tell(45*i) != alone {
				t.Errorf("asker %d was told something else than one alone", i)
			}
		})
	}
	all.Wait()
}
