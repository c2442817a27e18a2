package drive_test

import (
	"math"
	"strings"
	"testing"

	"example.com/benchbook/transmission/drive"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// Road speed at peak power is one roll of the wheel for every so many turns of
// the crankshaft.
func TestSuitedSpeeds(t *testing.T) {
	s := ok(drive.Suit(drive.SuitInput{
		Line: demo(t), Peak: measure.Exact(units.Kilowatts(17)), PeakAt: units.RevolutionsPerMinute(5500), Road: solo(),
		Choice: drive.SprocketChoice{FrontLeast: 16, FrontMost: 20, RearLeast: 46},
	}, drive.SuitOptions{}))(t)
	for _, o := range s.Options {
		near(t, "at peak", o.AtPeak.MetresPerSecond(), 5500.0/60/(48.0/22*46/float64(o.Front))*1.975, 1e-12)
	}
}

// The rule of thumb is 15 to 20 per cent lower; there is nothing to compare with a
// gearing that was not found.
func TestSidecarRuleOfThumb(t *testing.T) {
	suited := func(x float64) drive.Suited {
		return drive.Suited{Fastest: measure.Of(units.Value(x), units.Value(0.01))}
	}
	for lower, want := range map[float64]bool{0.149: false, 0.151: true, 0.175: true, 0.199: true, 0.201: false, -0.17: false} {
		c := drive.Compare(suited(4), suited(4*(1+lower)))
		if math.Abs(c.Lower-lower) > 1e-12 || c.RuleOfThumb != want {
			t.Errorf("%g lower: %+v", lower, c)
		}
	}
	for _, c := range []drive.Comparison{drive.Compare(drive.Suited{}, suited(4)), drive.Compare(suited(4), drive.Suited{}), drive.Compare(drive.Suited{}, drive.Suited{})} {
		if c != (drive.Comparison{}) {
			t.Errorf("compared with nothing: %+v", c)
		}
	}
}

// A machine whose thrust just equals the resistance neither gathers speed nor
// slows down.
func TestPullThatJustHolds(t *testing.T) {
	in := drive.PullAway{Torque: units.NewtonMetres(64), Mass: units.Kilograms(256), Radius: 500 * mm, Efficiency: 0.5}
	for resistance, slows := range map[float64]bool{511: false, 512: false, 513: true} {
		in.Resistance = units.Newtons(resistance)
		p := ok(in.Pull(8))(t) // 0.5·64·8/0.5 = 512 N
		if p.Reason.Given() != slows {
			t.Errorf("%g N: %+v", resistance, p)
		}
	}
}

// A speedometer that reads true is within the rule and does not read low; the
// rule is a tenth and 8 km/h above, and nothing below.
func TestSpeedometerRule(t *testing.T) {
	// 1024 turns of the wheel a mile, exactly
	rolling := measure.Exact(units.Metres(1609.344 / 1024))
	read := func(head float64) drive.Speedometer {
		return ok(drive.ReadSpeedometer(drive.SpeedometerInput{Rolling: rolling, Drive: drive.OneToOne(), TurnsAMile: head}))(t)
	}
	for _, factor := range []float64{1, 0.99, 1.05, 1.1, 1.2, 1.3, 1.6} {
		s := read(1024 / factor)
		if s.ReadsLow != (factor < 1) {
			t.Errorf("factor %g: reads low %v", factor, s.ReadsLow)
		}
		for _, at := range s.At {
			v := at.True.KilometresPerHour()
			if want := factor >= 1 && (factor-1.1)*v <= 8; at.Within != want {
				t.Errorf("factor %g at %v: within %v", factor, at.True, at.Within)
			}
		}
	}
	// the very most at 10 mile/h is still within it: the head that shows just that
	most := ok(drive.GreatestIndicated(units.MilesPerHour(10), units.KilometresPerHour(8)))(t)
	head, found := 1024/most.Ratio(units.MilesPerHour(10)), false
	for range 40 {
		head = math.Nextafter(head, 0)
	}
	for range 80 {
		if at := read(head).At[0]; at.Indicated == most {
			found = true
			if !at.Within {
				t.Errorf("%v is not within %v", at.Indicated, most)
			}
		}
		head = math.Nextafter(head, math.Inf(1))
	}
	if !found {
		t.Error("no such head found")
	}
}

// A box that holds no gears is told how it is made, another which gears it has.
func TestGearsToChooseFrom(t *testing.T) {
	for box, want := range map[string]string{"": "make the gearbox with", "4 2": "one of the gears of the box: 1, 2"} {
		var line drive.Line
		if box != "" {
			line.Box = ok(drive.BoxOf(strings.Fields(box)...))(t)
		}
		_, err := line.Overall("reverse")
		if f := fault.Faults(err); len(f) != 1 || !strings.HasPrefix(f[0].Rule, want) {
			t.Errorf("%q: %v", box, err)
		}
	}
}
