package spring_test

import (
	"fmt"

	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// Two springs in the list, one in the hand; all figures are invented.
func ExampleMatch() {
	spec := spring.HelicalSpec{Wire: units.Millimetres(2.64), Outside: units.Millimetres(17.8), Total: 9.5, Free: 46 * units.Millimetre, Ends: spring.SquaredGround}
	heavy := spec
	heavy.Wire = units.Millimetres(2.9)
	cal := measure.Caliper()
	m, err := spring.Match(spring.Readings{
		Wire: measure.MustRead("2.66 mm", cal), Outside: measure.MustRead("17.8 mm", cal), Free: measure.MustRead("43.5 mm", cal),
	}, []spring.Known{{Key: "solo", Spec: spec}, {Key: "sidecar", Spec: heavy}}, spring.MatchOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	lead := m.Causes.Leader()
	fmt.Println(lead.Text, lead.Percent, "%, tired:", m.Tired, "- lost", m.Lost.In(units.Newton, 0))
	// Output:
	// solo 100 %, tired: true - lost 47 N
}

// Six springs on one balance at 36 mm; the loads are invented.
func ExampleEven() {
	var loads []measure.Reading[units.Force]
	for _, n := range []float64{200, 203, 199, 178, 201, 202} {
		loads = append(loads, measure.Of(units.Newtons(n), 2*units.Newton))
	}
	e, err := spring.Even(loads, spring.EvenOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("spread %.0f %%\n", 100*e.Spread)
	for _, i := range e.Odd {
		fmt.Printf("spring %d is odd: %+.0f %%\n", i+1, 100*e.Each[i].Off)
	}
	// Output:
	// spread 13 %
	// spring 4 is odd: -11 %
}
