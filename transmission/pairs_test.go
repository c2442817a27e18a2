package transmission

import (
	"math"
	"strings"
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// twoWrong is an invented clutch with short springs and bent plates, both read.
func twoWrong() Input {
	mm := func(x, u float64) measure.Reading[units.Length] {
		return measure.Of(units.Millimetres(x), units.Millimetres(u))
	}
	return Input{Clutch: demo(), Setting: Setting{Nuts: measure.Of(units.Turns(8.2), units.Turns(0.1))},
		Found: Condition{SpringSet: mm(2.4, 0.05), OutOfFlat: mm(1.2, 0.1), FreePlay: mm(3, 0.3)}, Signs: Signs{Slips: Yes, Drags: Yes}}
}

func TestPairLeads(t *testing.T) {
	d, err := Diagnose(twoWrong(), Options{})
	if err != nil {
		t.Fatal(err)
	}
	first := d.Causes.Leader()
	if first.Key != "springs-weak+plates-bent" || first.Share < 0.6 || d.Findings[0].Key != first.Key || d.Suspects[0] != first.Key {
		t.Errorf("%v\n%s", first, show(d))
	}
	if f := d.Findings[0]; !strings.Contains(f.Do, "springs as a set") || !strings.Contains(f.Do, "plain plates") || f.Work != units.MinutesOfTime(145) {
		t.Errorf("%+v", f)
	}
	sum := 0.0
	for _, o := range d.Causes.Odds {
		sum += o.Share
	}
	if math.Abs(sum-1) > 1e-12 {
		t.Errorf("shares add up to %v", sum)
	}
}

// One at a time there are no pairs, and the list is that of the known causes.
func TestOneAtATime(t *testing.T) {
	d, err := Diagnose(twoWrong(), Options{OneAtATime: true})
	if err != nil {
		t.Fatal(err)
	}
	if len(d.Causes.Odds) != len(KnownCauses())+1 {
		t.Errorf("%d causes", len(d.Causes.Odds))
	}
	for _, o := range d.Causes.Odds {
		if strings.Contains(o.Key, "+") || o.Key == TwoAtOnce {
			t.Error(o.Key)
		}
	}
}

// Before any reading the pairs hold the part they are said to, whatever it is.
func TestPairsPrior(t *testing.T) {
	for _, two := range []float64{0.001, 0.1, 0.3} {
		d, err := Diagnose(Input{Clutch: demo()}, Options{TwoAtOnce: two})
		if err != nil {
			t.Fatal(err)
		}
		pairs, prior := 0.0, 0.0
		for _, o := range d.Causes.Odds {
			if strings.Contains(o.Key, "+") || o.Key == TwoAtOnce {
				pairs += o.Share
				prior += o.Prior
			}
		}
		// left out are those, of some 225, that are less than e^-9 of the leader each
		if math.Abs(pairs-two) > 225*math.Exp(-noMatter)*d.Causes.Leader().Share || math.Abs(prior-two) > 1e-9 {
			t.Errorf("pairs hold %v, their prior %v, told %v", pairs, prior, two)
		}
	}
	for _, two := range []float64{-0.1, 0.6, math.NaN(), math.Inf(1)} {
		_, err := Diagnose(Input{Clutch: demo()}, Options{TwoAtOnce: two})
		if f := fault.Faults(err); len(f) != 1 || f[0].Path != "options.two_at_once" {
			t.Errorf("%v: %v", two, err)
		}
	}
}

// A pair whose causes are weighed down goes down with them; a pair is no key of a prior.
func TestPairsFollowPriors(t *testing.T) {
	d, err := Diagnose(twoWrong(), Options{Priors: map[string]float64{"plates-bent": 1e-6}})
	if err != nil {
		t.Fatal(err)
	}
	if o, _ := d.Causes.Of("springs-weak+plates-bent"); o.Share > 1e-3 {
		t.Error(o)
	}
	for _, priors := range []map[string]float64{{"springs-weak+plates-bent": 1}, {TwoAtOnce: 1}, {"hub-nut": math.NaN()}, {"hub-nut": math.Inf(1)}} {
		if _, err := Diagnose(twoWrong(), Options{Priors: priors}); err == nil {
			t.Errorf("%v was passed", priors)
		}
	}
}

// Causes that move the same figure are not paired; the tables agree with the causes.
func TestApart(t *testing.T) {
	meet := 0
	m := draw(newSource(), 1).m
	for i := range m.causes {
		for j := range m.causes {
			a, b := &m.causes[i], &m.causes[j]
			want := i != j && a.key != "nothing" && b.key != "nothing" && canMeet(a, b)
			if apart()[i][j] != want {
				t.Errorf("%s and %s: %v", a.key, b.key, !want)
			}
			if want {
				meet++
			}
		}
	}
	if meet/2 < 200 {
		t.Errorf("only %d pairs", meet/2)
	}
	if KnownCauses()[sound].Key != "nothing" {
		t.Error("the sound clutch has another place")
	}
}

// A pack of one face or two, where a plate left out leaves none: any reading and any
// signs give shares that add up to one.
func TestFewFaces(t *testing.T) {
	for faces := 1; faces <= 3; faces++ {
		c := demo()
		c.Plates = Plates{Faces: faces, Outer: 170 * units.Millimetre, Inner: 60 * units.Millimetre}
		c.Demand.EngineTorque = units.NewtonMetres(1.5 * float64(faces))
		for _, found := range []Condition{{}, {TongueGrip: measure.Of(units.Value(0), units.Value(0.02))}, {TongueGrip: measure.Of(units.Value(0.6), units.Value(0.02))}} {
			for _, s := range []Signs{{}, {Slips: Yes, Drags: Yes, Heavy: Yes, LightThen: Yes}, {Slips: No, Lift: measure.Of(0*units.Millimetre, 0.02*units.Millimetre)}, {Lift: measure.Of(15*units.Millimetre, 1e-9*units.Millimetre), HandForce: measure.Of(1000*units.Newton, 1e-9*units.Newton)}} {
				d, err := Diagnose(Input{Clutch: c, Found: found, Signs: s}, Options{})
				if err != nil || d.Reason.Given() {
					t.Fatal(d.Reason, err)
				}
				sum := 0.0
				for _, o := range d.Causes.Odds {
					sum += o.Share
				}
				if math.Abs(sum-1) > 1e-9 {
					t.Errorf("%d faces, %+v: shares add up to %v", faces, s, sum)
				}
			}
		}
	}
}
