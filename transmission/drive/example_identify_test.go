package drive_test

import (
	"fmt"

	"example.com/benchbook/transmission/drive"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// A run down from 50 mile/h in still air; the times are invented.
func ExampleCoastDown() {
	watch := measure.Nominal[units.Time](0.02)
	mph := units.MilesPerHour
	r, err := drive.CoastDown(drive.CoastInput{
		Mass: measure.MustRead("245 kg ± 5", measure.Nominal[units.Mass](0.02)),
		Runs: []drive.Coast{
			{From: mph(50), To: mph(40), Time: measure.MustRead("6.2 s ± 0.2", watch)},
			{From: mph(40), To: mph(30), Time: measure.MustRead("8.6 s ± 0.2", watch)},
			{From: mph(30), To: mph(20), Time: measure.MustRead("12.2 s ± 0.3", watch)},
		},
	}, drive.CoastOptions{})
	fmt.Println(r.DragArea, r.Rolling, err)
	// Output:
	// 0.53 ± 0.04 m² 0.0221 ± 0.0018 <nil>
}

// A chain without a number, read by caliper over ten pitches.
func ExampleIdentifyChain() {
	cal := measure.Caliper()
	over, err := measure.Read("159.6 mm", cal)
	if err != nil {
		fmt.Println(err)
		return
	}
	id, err := drive.IdentifyChain(drive.ChainReadings{
		Pitch:  measure.Of(over.Value().Times(0.1), over.U().Times(0.1)),
		Width:  measure.MustRead("9.6 mm", cal),
		Roller: measure.MustRead("10.1 mm", cal),
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, o := range id.Causes.LikeLeader() {
		fmt.Println(o.Percent, "%", o.Text)
	}
	for _, t := range id.Twins {
		fmt.Println("beside it", t.Number, "-", t.Why)
	}
	// Output:
	// 53 % ISO 606 and BS 228 10B, 5/8 x 3/8 (also called 5/8 x .380)
	// 47 % motor cycle series 530, 5/8 x 3/8
	// beside it 530 - inner width of 9.53 mm in place of 9.65 mm: measure the sprocket's thickness before changing
	// beside it 532 - roller of 11.10 mm in place of 10.16 mm: it does not seat on the same teeth
	// beside it 525 - inner width of 7.85 mm in place of 9.65 mm: measure the sprocket's thickness before changing
}

// Modern sizes near to an old one.
func ExampleTyre_Equivalents() {
	t, err := drive.ParseTyre("3.25-19")
	if err != nil {
		fmt.Println(err)
		return
	}
	near, err := t.Equivalents(0.03)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, e := range near[:3] {
		fmt.Printf("%s %+.1f %%, %+.0f mm wide\n", e.Tyre, 100*e.Diameter, e.Width.Millimetres())
	}
	// Output:
	// 3.60-19 -0.1 %, +9 mm wide
	// 90/90-19 -0.5 %, +7 mm wide
	// 3.00-19 -2.0 %, -6 mm wide
}

// Wide or close ratios? Crank turns counted over five turns of the wheel and
// divided; the counts are invented.
func ExampleIdentifyBox() {
	wide, err1 := drive.BoxOf("2.67", "1.77", "1.27", "1")
	close, err2 := drive.BoxOf("2.21", "1.44", "1.12", "1")
	if err1 != nil || err2 != nil {
		fmt.Println(err1, err2)
		return
	}
	count := measure.Nominal[units.Ratio](0.02)
	id, err := drive.IdentifyBox(drive.TurnReadings{
		Turns:   []measure.Reading[units.Ratio]{measure.MustRead("12.4 ± 0.2", count), {}, measure.MustRead("6.3 ± 0.1", count), measure.MustRead("5.6 ± 0.1", count)},
		Primary: drive.Train{{Driver: 22, Driven: 48}}, Final: drive.Train{{Driver: 18, Driven: 46}},
	}, []drive.GearSet{{Key: "wide", Box: wide}, {Key: "close", Box: close}})
	if err != nil {
		fmt.Println(err)
		return
	}
	lead := id.Causes.Leader()
	fmt.Println(lead.Text, lead.Percent, "%, first gear is", id.Ratios[0])
	// Output:
	// close 100 %, first gear is 2.22 ± 0.04
}
