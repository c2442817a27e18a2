package units_test

import (
	"math"
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

func TestParse(t *testing.T) {
	for _, c := range []struct {
		text string
		want float64
		unit func(string) (float64, error)
	}{
		{"5/16 in", 7.9375, mm}, {`5/16"`, 7.9375, mm}, {"1 3/8 in", 34.925, mm}, {"1-3/8 in", 34.925, mm}, {"12.7mm", 12.7, mm},
		{"8 thou", 0.2032, mm}, {"½ in", 12.7, mm}, {"1½\"", 38.1, mm}, {"1 ½ ″", 38.1, mm}, {`5' 11 1/2"`, 1816.1, mm}, {"5 ft 11 in", 1803.4, mm}, {"5 ft. 11 in.", 1803.4, mm}, {"3 ft 6", 1066.8, mm}, {"3' 6 1/2", 1079.5, mm},
		{"−3 mm", -3, mm}, {"1e2 mm", 100, mm}, {"5⁄16 in", 7.9375, mm}, {"0.3937 in", 9.99998, mm},
		{"45°30'", 45.5, deg}, {"45° 30′", 45.5, deg}, {"45.5 deg", 45.5, deg}, {"-0°30'", -0.5, deg}, {"10°20'30\"", 10 + 20.0/60 + 30.0/3600, deg}, {"1/4 turn", 90, deg},
		{"18° crank", 18, crank}, {"18 deg crank", 18, crank}, {"45°30' crank", 45.5, crank},
		{"28 lb", 28 * 4.4482216152605, newton}, {"68 °F", 293.15, kelvin}, {"20°C", 293.15, kelvin}, {"-40 °F", 233.15, kelvin}, {"-459.67 °F", 0, kelvin}, {"-273.15 °C", 0, kelvin},
		{"10 stone 4", 144 * 0.45359237, kilogram}, {"10 st. 4 lb.", 144 * 0.45359237, kilogram},
	} {
		got, err := c.unit(c.text)
		// one unit in the last place where two units are added, else exact
		if err != nil || math.Abs(got-c.want) > 2e-16*math.Abs(c.want)+0 {
			t.Errorf("%s = %v, %v; want %v", c.text, got, err, c.want)
		}
	}
}

func mm(s string) (float64, error)     { v, err := units.ParseLength(s); return v.Millimetres(), err }
func deg(s string) (float64, error)    { v, err := units.ParseAngle(s); return v.Degrees(), err }
func crank(s string) (float64, error)  { v, err := units.ParseCrankAngle(s); return v.Degrees(), err }
func newton(s string) (float64, error) { v, err := units.ParseForce(s); return v.Newtons(), err }
func kilogram(s string) (float64, error) {
	v, err := units.ParseMass(s)
	return v.Kilograms(), err
}
func kelvin(s string) (float64, error) { v, err := units.ParseTemperature(s); return v.Kelvins(), err }

func TestParseFaults(t *testing.T) {
	for _, c := range []struct {
		err  error
		code fault.Code
	}{
		{second(units.ParseLength("12")), fault.UnitMissing},
		{second(units.ParseLength("mm")), fault.NotANumber},
		{second(units.ParseLength("12 furlongs")), fault.UnitUnknown},
		{second(units.ParseLength("12,7 mm")), fault.NotANumber},
		{second(units.ParseLength("1/0 in")), fault.NotANumber},
		{second(units.ParseLength(`5' 13"`)), fault.OutOfRange},
		{second(units.ParseLength("1e999 mm")), fault.OutOfRange},
		{second(units.ParseVolume("2 gallons")), fault.UnitAmbiguous},
		{second(units.ParsePower("18 hp")), fault.UnitAmbiguous},
		{second(units.ParseCrankAngle("8° cam")), fault.WrongShaft},
		{second(units.ParseCrankAngle("8°")), fault.UnitMissing},
		{second(units.ParseAngle("8° crank")), fault.WrongShaft},
		{second(units.ParseTemperature("-500 °C")), fault.OutOfRange},
		{second(units.ParseAngle("45° 30")), fault.UnitUnknown},
		{second(units.ParseLength("3 ft 12")), fault.OutOfRange},
		{second(units.ParsePosition("25")), fault.BadForm},
		{second(units.ParsePosition("400 BTDC")), fault.OutOfRange},
	} {
		faults := fault.Faults(c.err)
		if len(faults) != 1 || faults[0].Code != c.code {
			t.Errorf("got %v, want code %s", c.err, c.code)
		}
	}
}

func second[T any](_ T, err error) error { return err }

func TestSixtyFourths(t *testing.T) {
	for n := 1; n <= 256; n++ {
		l := units.Inches(float64(n) / 64)
		f, left, err := units.NearestFraction(l, 64)
		if err != nil || left != 0 || f.Length() != l {
			t.Errorf("%d/64: %v left %v, %v", n, f, left, err)
		}
		if back, err := units.ParseLength(f.String()); err != nil || back != l {
			t.Errorf("%v reads back as %v, want %v", f, back, l)
		}
		if l.Inches() != float64(n)/64 {
			t.Errorf("%d/64 comes out as %v in", n, l.Inches())
		}
	}
}

func TestPosition(t *testing.T) {
	for _, c := range []struct{ in, out string }{
		{"25 BTDC", "25° BTDC"}, {"25° BTDC", "25° BTDC"}, {"12½ atdc", "12.5° ATDC"}, {"-5 BTDC", "5° ATDC"}, {"TDC", "TDC"},
		{"0 ABDC", "BDC"}, {"25BTDC", "25° BTDC"}, {"40 deg ABDC", "40° ABDC"},
	} {
		p, err := units.ParsePosition(c.in)
		if err != nil || p.String() != c.out {
			t.Errorf("%s = %v, %v; want %s", c.in, p, err, c.out)
		}
	}
}

func TestText(t *testing.T) {
	for _, c := range []struct{ got, want string }{
		{units.RevolutionsPerMinute(3000).String(), "3000 rev/min"},
		{units.Celsius(20).String(), "20 °C"},
		{units.CrankDegrees(16).String(), "16° crank"},
		{units.NewtonsPerMillimetre(25).String(), "25 N/mm"},
		{units.CubicCentimetresPerMinute(280).String(), "280 cc/min"},
		{units.CubicCentimetres(397).String(), "397 cc"},
		{(5 * units.Inch / 16).In(units.Inch, 4), "0.3125 in"},
		{units.CrankDegrees(16).In(units.CrankDegree, 1), "16.0° crank"},
		{units.RevolutionsPerMinute(3000).In(units.RevolutionPerMinute, 0), "3000 rev/min"},
		{units.Pascals(101325).String(), "1.01325 bar"},
		{units.Value(0.12).String(), "0.12"},
		{units.Newtons(100).String(), "100 N"},
	} {
		if c.got != c.want {
			t.Errorf("got %q, want %q", c.got, c.want)
		}
	}
}
