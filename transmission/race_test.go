package transmission

import (
	"encoding/json"
	"sync"
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// One clutch, its train and its springs' law shared, tells many who ask at once what it
// tells one.
func TestClutchManyAtOnce(t *testing.T) {
	c := demo()
	c.Train = []Element{ReleaseArm(60*units.Millimetre, 10*units.Millimetre, 0, 0)}
	c.Springs.Rate, c.Springs.Law = 0, straightLaw{rate: 20, end: 17, bend: 0.3}
	in := Input{Clutch: c, Found: backedOff(), Signs: Signs{Slips: Yes, Drags: Yes}, Setting: Setting{Nuts: measure.Of(units.Turns(6), units.Turns(0.1))}}
	tell := func() string {
		a, err := Adjust(in, Options{Draws: 200})
		d, err2 := Diagnose(in, Options{})
		text, err3 := json.Marshal([]any{a, d})
		if err != nil || err2 != nil || err3 != nil {
			t.Error(err, err2, err3)
		}
		return string(text)
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
