package carburation_test

import (
	"fmt"
	"sync"
	"testing"

	"example.com/benchbook/carburation"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// One model of a carburettor tells many who ask at once what it tells one: points, its
// inverse, its calibration.
func TestModelManyAtOnce(t *testing.T) {
	m := must(carburation.NewModel(demo(), carburation.Options{}))
	tell := func() string {
		var told []string
		for _, lift := range []units.Ratio{0.125, 0.25, 0.5, 1} {
			p, err := m.At(lift, rev(4000))
			told = append(told, fmt.Sprint(p, err))
		}
		s, err := m.Settings(carburation.Targets{})
		c, made, err2 := m.Calibrate(carburation.LambdaReading{Lift: 1, Speed: rev(5200), Lambda: measure.By(units.Value(0.9), carburation.LambdaSensor())})
		p, err3 := c.At(1, rev(5200))
		return fmt.Sprintf("%v %+v %v %+v %v %v %v", told, s, err, made, err2, p, err3)
	}
	alone := tell()
	var all sync.WaitGroup
	for i := range 8 {
		all.Go(func() {
			if tell() != alone {
				t.Errorf("asker %d was told something else than one alone", i)
			}
		})
	}
	all.Wait()
}
