//go:build !js && !wasip1

package units

import (
	"math"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"
)

// gnuSI is the coherent SI unit of each kind as GNU Units writes it. The two
// shafts' degrees are compared as plain angles.
var gnuSI = map[string]string{
	"length": "m", "area": "m^2", "volume": "m^3", "angle": "radian", "crank angle": "radian", "cam angle": "radian", "mass": "kg", "force": "N", "torque": "N m",
	"pressure": "Pa", "spring rate": "N/m", "speed": "m/s", "acceleration": "m/s^2", "rotational speed": "radian/s", "power": "W", "energy": "J", "temperature": "K", "temperature delta": "K",
	"density": "kg/m^3", "specific energy": "J/kg", "kinematic viscosity": "m^2/s", "dynamic viscosity": "Pa s", "volume flow": "m^3/s", "mass flow": "kg/s", "fuel consumption": "m^3/m", "time": "s", "ratio": "1",
}

// gnuNames gives the GNU Units expression of a symbol that means something
// else, or nothing, there. Symbols with a kind before them hold for that kind
// alone. Each is written from the unit's definition, not from this package's
// factor.
var gnuNames = map[string]string{
	"in.": "inch", "ins": "inch", "\"": "inch", "″": "inch", "''": "inch", "thou": "mil", "'": "foot", "′": "foot", "µm": "micron", "μm": "micron", "um": "micron", "mi": "mile",
	"sq m": "m^2", "sq mm": "mm^2", "sq cm": "cm^2", "sq in": "inch^2", "sq ft": "ft^2", "cu m": "m^3", "cu in": "inch^3", "cu ft": "ft^3", "mL": "ml", "L": "liter", "l": "liter",
	"imp gal": "brgallon", "imperial gallon": "brgallon", "imperial gallons": "brgallon", "UK gal": "brgallon", "US gal": "usgallon", "US gallon": "usgallon", "US gallons": "usgallon",
	"imp pint": "brpint", "imperial pint": "brpint", "imperial pints": "brpint", "UK pint": "brpint", "imp pt": "brpint", "US pint": "uspint", "US pints": "uspint", "US pt": "uspint",
	"imp fl oz": "brfloz", "imperial fluid ounce": "brfloz", "imperial fluid ounces": "brfloz", "US fl oz": "usfloz", "US fluid ounce": "usfloz", "US fluid ounces": "usfloz",
	"angle °": "degree", "°": "degree", "º": "degree", "deg": "degree", "angle '": "arcmin", "angle ′": "arcmin", "angle min": "arcmin", "angle \"": "arcsec", "angle ″": "arcsec", "angle ''": "arcsec",
	"turn": "revolution", "turns": "revolution", "rev": "revolution", "revs": "revolution", "rad": "radian",
	"kilo": "kg", "kilos": "kg", "lbs": "lb", "t": "tonne", "long ton": "brton", "long tons": "brton", "imp ton": "brton", "short ton": "uston", "short tons": "uston", "US ton": "uston", "st": "stone", "cwt": "brhundredweight", "hundredweight": "brhundredweight",
	"force lb": "lbf", "force lbs": "lbf", "force pound": "lbf", "force pounds": "lbf", "ozf": "ounce force", "force oz": "ounce force", "force kg": "kilogram force", "kgf": "kilogram force", "kp": "kilogram force", "gf": "gram force", "force g": "gram force",
	"long tonf": "brton force", "short tonf": "uston force",
	"Nm": "N m", "newton metre": "N m", "newton metres": "N m", "Nmm": "N mm", "lb ft": "lbf ft", "ft lb": "lbf ft", "lbs ft": "lbf ft", "ft lbs": "lbf ft", "lb in": "lbf inch", "in lb": "lbf inch", "lbs in": "lbf inch", "in lbs": "lbf inch", "lbf in": "lbf inch", "in lbf": "lbf inch",
	"kgf m": "kilogram force m", "kg m": "kilogram force m", "m kg": "kilogram force m", "kgf cm": "kilogram force cm", "kg cm": "kilogram force cm", "cm kg": "kilogram force cm", "kNm": "kN m",
	"mb": "millibar", "lb/in²": "lbf/inch^2", "lb/in2": "lbf/inch^2", "lb/sq in": "lbf/inch^2", "lbs/sq in": "lbf/inch^2", "lbf/in²": "lbf/inch^2", "lbf/in2": "lbf/inch^2", "ksi": "1000 lbf/inch^2", "kpsi": "1000 lbf/inch^2",
	"tonf/in²": "2240 lbf/inch^2", "tonf/in2": "2240 lbf/inch^2", "tsi": "2240 lbf/inch^2", "kgf/cm²": "kilogram force/cm^2", "kgf/cm2": "kilogram force/cm^2", "kg/cm²": "kilogram force/cm^2", "kg/cm2": "kilogram force/cm^2",
	"kgf/mm²": "kilogram force/mm^2", "kgf/mm2": "kilogram force/mm^2", "kg/mm²": "kilogram force/mm^2", "kg/mm2": "kilogram force/mm^2",
	"inHg": "inch Hg", "in Hg": "inch Hg", "mm Hg": "mmHg", "inH2O": "inch water", "in H2O": "inch water", "inH₂O": "inch water", "mmH2O": "mm water", "mm H2O": "mm water", "mmH₂O": "mm water", "cmH2O": "cm water", "cm H2O": "cm water", "cmH₂O": "cm water",
	"lbf/in": "lbf/inch", "lb/in": "lbf/inch", "lbs/in": "lbf/inch", "kgf/mm": "kilogram force/mm", "kg/mm": "kilogram force/mm",
	"km/h": "km/hour", "kph": "km/hour", "kmh": "km/hour", "mile/h": "mile/hour", "mi/h": "mile/hour", "miles/h": "mile/hour", "gn": "gravity",
	"rev/min": "revolution/minute", "r/min": "revolution/minute", "revs/min": "revolution/minute", "rev/s": "revolution/s", "rps": "revolution/s", "°/s": "degree/s", "deg/s": "degree/s", "rad/s": "radian/s",
	"hp (550 ft lbf/s)": "550 ft lbf/s", "bhp": "550 ft lbf/s", "British hp": "550 ft lbf/s", "imperial hp": "550 ft lbf/s", "PS": "75 kilogram force m/s", "metric hp": "75 kilogram force m/s", "ch": "75 kilogram force m/s", "cv": "75 kilogram force m/s",
	"energy ft lb": "ft lbf", "temperature delta °C": "K", "temperature delta degC": "K", "temperature delta °F": "degF", "kg/L": "kg/liter", "kg/l": "kg/liter", "g/cc": "g/cm^3", "lb/in³": "lb/inch^3", "lb/in3": "lb/inch^3",
	"Btu/lb": "btu_IT/lb", "cSt": "centistokes", "St": "stokes", "Pa·s": "Pa s", "mPa·s": "mPa s", "cP": "centipoise", "ft lbf/min": "ft lbf/minute", "°/ms": "degree/ms", "deg/ms": "degree/ms", "imp quart": "brquart", "imperial quart": "brquart", "imperial quarts": "brquart", "imp gill": "brgill", "imperial gill": "brgill", "imperial gills": "brgill", "US quart": "usquart", "US quarts": "usquart", "cc/min": "cm^3/minute", "cm³/min": "cm^3/minute", "cm3/min": "cm^3/minute", "ml/min": "cm^3/minute", "mL/min": "cm^3/minute",
	"L/min": "liter/minute", "l/min": "liter/minute", "L/h": "liter/hour", "l/h": "liter/hour", "imp gal/h": "brgallon/hour", "kg/min": "kg/minute", "kg/h": "kg/hour", "lb/h": "lb/hour", "h": "hour", "hr": "hour", "hours": "hour", "min": "minute", "sec": "s",
	// a distance to a volume is the other way up: one of it is one of its inverse
	"L/100 km": "liter/(100 km)", "L/100km": "liter/(100 km)", "l/100 km": "liter/(100 km)", "l/100km": "liter/(100 km)", "L/(100 km)": "liter/(100 km)", "m³/m": "m^3/m", "m3/m": "m^3/m", "km/L": "liter/km", "km/l": "liter/km",
	"mile/imp gal": "brgallon/mile", "miles/imp gal": "brgallon/mile", "imp mpg": "brgallon/mile", "UK mpg": "brgallon/mile", "mile/US gal": "usgallon/mile", "miles/US gal": "usgallon/mile", "US mpg": "usgallon/mile",
	"%": "0.01", "per cent": "0.01", "percent": "0.01", "": "1", ":1": "1", ": 1": "1", "to 1": "1", "kilogram": "kg",
	"CC": "cm^3", "cu ins": "inch^3", "cubic inch": "inch^3", "cubic inches": "inch^3", "inches Hg": "inch Hg", "miles per hour": "mile/hour",
	"lbft": "lbf ft", "ftlb": "lbf ft", "ftlbs": "lbf ft", "foot pounds": "lbf ft", "pound feet": "lbf ft", "pounds feet": "lbf ft", "inlb": "lbf inch", "inlbs": "lbf inch", "inch pounds": "lbf inch", "pound inches": "lbf inch",
	"kgm": "kilogram force m", "mkg": "kilogram force m", "kp m": "kilogram force m", "m kp": "kilogram force m", "kpm": "kilogram force m", "mkp": "kilogram force m",
}

func gnuName(k *kind, symbol string) string {
	family := k.name
	if k.shaft != "" {
		family = "angle"
	}
	if g, ok := gnuNames[family+" "+symbol]; ok {
		return g
	}
	if g, ok := gnuNames[symbol]; ok {
		return g
	}
	return strings.NewReplacer("²", "^2", "³", "^3").Replace(symbol)
}

// TestGNUUnits compares every symbol of every quantity with GNU Units, both
// ways. It needs the program "units"; with GNU_UNITS=require in the
// environment its absence is a failure.
func TestGNUUnits(t *testing.T) {
	path, err := exec.LookPath("units")
	if err != nil {
		if os.Getenv("GNU_UNITS") == "require" {
			t.Fatal(err)
		}
		t.Skip("GNU Units is not here")
	}
	type pair struct {
		name, from, to string
		want           float64
	}
	var pairs []pair
	for _, k := range allKinds {
		si := gnuSI[k.name]
		if si == "" {
			t.Errorf("%s: no SI unit given", k.name)
			continue
		}
		for _, u := range k.units {
			name := k.name + " " + u.symbol
			if k.affine {
				// 20 of the unit in kelvins, and 300 K in the unit
				scale := map[string]string{"°C": "tempC", "°F": "tempF"}[u.symbol]
				if scale == "" {
					continue
				}
				pairs = append(pairs, pair{name, scale + "(20)", "K", (20+u.off)*u.num/u.den + u.post},
					pair{name + " back", "300 K", scale, (300-u.post)*u.den/u.num - u.off})
				continue
			}
			g := gnuName(k, u.symbol)
			factor := u.num / u.den * k.siDen / k.siNum
			pairs = append(pairs, pair{name, g, si, factor}, pair{name + " back", si, g, 1 / factor})
		}
	}
	var in strings.Builder
	for _, p := range pairs {
		in.WriteString(p.from + "\n" + p.to + "\n")
	}
	cmd := exec.Command(path, "-t", "-q", "-o", "%.17g")
	cmd.Stdin = strings.NewReader(in.String())
	cmd.Env = append(os.Environ(), "LC_ALL=C.UTF-8", "UNITS_SYSTEM=", "UNITS_ENGLISH=US")
	out, err := cmd.Output()
	if err != nil {
		t.Fatal(err)
	}
	lines := strings.Split(strings.TrimSpace(string(out)), "\n")
	if len(lines) != len(pairs) {
		t.Fatalf("%d answers to %d questions:\n%s", len(lines), len(pairs), out)
	}
	worst := 0.0
	for i, p := range pairs {
		got, err := strconv.ParseFloat(strings.TrimSpace(lines[i]), 64)
		if err != nil {
			t.Errorf("%s: %s to %s: GNU Units says %q", p.name, p.from, p.to, lines[i])
			continue
		}
		off := math.Abs(got/p.want - 1)
		worst = max(worst, off)
		if off > 1e-12 {
			t.Errorf("%s: %s is %.17g %s here and %.17g there", p.name, p.from, p.want, p.to, got)
		}
	}
	t.Logf("%d conversions agree, the worst to %.1e", len(pairs), worst)
}
