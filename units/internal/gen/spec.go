package main

import "strings"

// quant is one quantity type.
type quant struct {
	name, doc, stored, si, example string
	siNum, siDen                   string // stored = SI * siNum / siDen
	shaft                          string // "crank" or "cam": the word its text must carry
	affine                         bool   // a scale with a zero of its own; no constants, no scaling
	units                          []un
	prefer                         []string    // symbols String tries, first that reads back exactly
	pairs                          []string    // "ft>in": a second figure may follow in the smaller unit
	ambiguous                      [][2]string // symbol, what to write instead
}

// un is one unit: stored = (x + off) * num / den + post.
type un struct {
	one, many     string // constant and accessor names; "" for parse only
	maker         string // constructor name, if not the accessor's
	num, den, off string
	post          string
	per           bool              // the other way up: stored = num / (den * x), as miles to the gallon
	symbols       []string          // the first is the one printed
	notes         map[string]string // said when that symbol is used
	plain         string            // words for the doc comment, if not the accessor's
}

func (u un) words() string { return or(u.plain, words(u.many)) }
func (u un) says() string  { return u.symbols[0] }

func (q quant) base() int {
	for i, u := range q.units {
		if u.num == "" && u.den == "" && u.off == "" && u.post == "" {
			return i
		}
	}
	panic(q.name + " has no stored unit")
}

func (q quant) choices() string {
	var s []string
	for _, u := range q.units {
		if u.symbols[0] != "" {
			s = append(s, strings.TrimSpace(u.symbols[0]+" "+q.shaft))
		}
	}
	return strings.Join(s, ", ")
}

func sym(s ...string) []string { return s }

func note(text string, symbols ...string) map[string]string {
	m := map[string]string{}
	for _, s := range symbols {
		m[s] = text
	}
	return m
}

const lbf = "44482216152605" // over 1e13, newtons: 0.45359237 kg at 9.80665 m/s2, exact

var degrees = []un{
	{one: "Degree", many: "Degrees", symbols: sym("°", "deg", "degree", "degrees", "º")},
	{one: "Minute", many: "Minutes", den: "60", symbols: sym("'", "′", "min", "arcmin"), plain: "minutes of arc"},
	{den: "3600", symbols: sym("\"", "″", "arcsec", "''")},
	{one: "Radian", many: "Radians", num: "180", den: "math.Pi", symbols: sym("rad", "radian", "radians")},
}

func shaftDegrees(shaft string) []un {
	return []un{
		{one: shaft + "Degree", many: "Degrees", maker: shaft + "Degrees", plain: "degrees of " + strings.ToLower(shaft), symbols: degrees[0].symbols},
		{den: "60", symbols: degrees[1].symbols},
		{den: "3600", symbols: degrees[2].symbols},
		{num: "180", den: "math.Pi", symbols: degrees[3].symbols},
	}
}

// Factors: the inch, foot, yard and mile of 1959 (25.4 mm), the pound of 1959
// (0.45359237 kg), standard gravity 9.80665 m/s2 (CGPM 1901) and the imperial
// gallon of 4.54609 L (UK Units of Measurement Regulations 1995) are exact by
// definition, and so is everything built from them.
var spec = []quant{
	{name: "Length", doc: "a length", stored: "millimetres", si: "metres", siNum: "1000", example: "5/16 in",
		units: []un{
			{one: "Millimetre", many: "Millimetres", symbols: sym("mm", "millimetre", "millimetres")},
			{one: "Inch", many: "Inches", num: "127", den: "5", symbols: sym("in", "\"", "″", "inch", "inches", "ins", "in.", "''")},
			{one: "Thou", many: "Thous", num: "127", den: "5000", symbols: sym("thou", "mil"), plain: "thousandths of an inch"},
			{one: "Metre", many: "Metres", num: "1000", symbols: sym("m", "metre", "metres")},
			{one: "Centimetre", many: "Centimetres", num: "10", symbols: sym("cm", "centimetre", "centimetres")},
			{one: "Micrometre", many: "Micrometres", den: "1000", symbols: sym("µm", "μm", "um", "micron", "microns")},
			{one: "Foot", many: "Feet", num: "1524", den: "5", symbols: sym("ft", "'", "′", "foot", "feet")},
			{one: "Yard", many: "Yards", num: "4572", den: "5", symbols: sym("yd", "yard", "yards")},
			{one: "Mile", many: "Miles", num: "1609344", symbols: sym("mile", "miles", "mi")},
			{one: "Kilometre", many: "Kilometres", num: "1e6", symbols: sym("km", "kilometre", "kilometres")},
		}, pairs: []string{"ft>in", "yd>ft"}},
	{name: "Area", doc: "an area", stored: "square metres", si: "square metres", example: "20.1 mm²", prefer: sym("mm²"),
		units: []un{
			{one: "SquareMetre", many: "SquareMetres", symbols: sym("m²", "m2", "sq m", "m^2")},
			{one: "SquareMillimetre", many: "SquareMillimetres", den: "1e6", symbols: sym("mm²", "mm2", "sq mm", "mm^2")},
			{one: "SquareCentimetre", many: "SquareCentimetres", den: "1e4", symbols: sym("cm²", "cm2", "sq cm", "cm^2")},
			{one: "SquareInch", many: "SquareInches", num: "64516", den: "1e8", symbols: sym("in²", "in2", "sq in", "in^2")},
			{one: "SquareFoot", many: "SquareFeet", num: "9290304", den: "1e8", symbols: sym("ft²", "ft2", "sq ft", "ft^2")},
		}},
	{name: "Volume", doc: "a volume", stored: "cubic metres", si: "cubic metres", example: "397 cc", prefer: sym("cc", "L"),
		units: []un{
			{one: "CubicMetre", many: "CubicMetres", symbols: sym("m³", "m3", "cu m", "m^3")},
			{one: "CubicCentimetre", many: "CubicCentimetres", den: "1e6", symbols: sym("cc", "CC", "cm³", "cm3", "ml", "mL", "cm^3")},
			{one: "Litre", many: "Litres", den: "1000", symbols: sym("L", "l", "litre", "litres", "dm³", "dm3")},
			{one: "CubicMillimetre", many: "CubicMillimetres", den: "1e9", symbols: sym("mm³", "mm3", "mm^3")},
			{one: "CubicInch", many: "CubicInches", num: "16387064", den: "1e12", symbols: sym("in³", "in3", "cu in", "cu ins", "in^3", "cubic inch", "cubic inches")},
			{one: "CubicFoot", many: "CubicFeet", num: "28316846592", den: "1e12", symbols: sym("ft³", "ft3", "cu ft", "ft^3")},
			{one: "ImperialGallon", many: "ImperialGallons", num: "454609", den: "1e8", symbols: sym("imp gal", "imperial gallon", "imperial gallons", "UK gal")},
			{one: "USGallon", many: "USGallons", num: "3785411784", den: "1e12", symbols: sym("US gal", "US gallon", "US gallons")},
			{one: "ImperialPint", many: "ImperialPints", num: "56826125", den: "1e11", symbols: sym("imp pint", "imperial pint", "imperial pints", "UK pint", "imp pt")},
			{one: "USPint", many: "USPints", num: "473176473", den: "1e12", symbols: sym("US pint", "US pints", "US pt")},
			{one: "ImperialFluidOunce", many: "ImperialFluidOunces", num: "284130625", den: "1e13", symbols: sym("imp fl oz", "imperial fluid ounce", "imperial fluid ounces")},
			{one: "USFluidOunce", many: "USFluidOunces", num: "295735295625", den: "1e16", symbols: sym("US fl oz", "US fluid ounce", "US fluid ounces")},
			{num: "454609", den: "4e8", symbols: sym("imp quart", "imperial quart", "imperial quarts")},
			{num: "454609", den: "32e8", symbols: sym("imp gill", "imperial gill", "imperial gills")},
			{num: "946352946", den: "1e12", symbols: sym("US quart", "US quarts")},
		}, ambiguous: [][2]string{{"gal", "imp gal or US gal"}, {"gallon", "imp gal or US gal"}, {"gallons", "imp gal or US gal"},
			{"pint", "imp pint or US pint"}, {"pints", "imp pint or US pint"}, {"pt", "imp pint or US pint"},
			{"quart", "imp quart or US quart"}, {"quarts", "imp quart or US quart"}, {"fl oz", "imp fl oz or US fl oz"}, {"oz", "imp fl oz or US fl oz"}}},
	{name: "Angle", doc: "a plain angle, of no particular shaft", stored: "degrees", si: "radians", siNum: "180", siDen: "math.Pi", example: "45°30'",
		units: append(append([]un{}, degrees...), un{one: "Turn", many: "Turns", num: "360", symbols: sym("turn", "turns", "rev", "revs")}),
		pairs: []string{"°>'", "'>\"", "turn>°"}},
	{name: "CrankAngle", doc: "an angle turned by the crankshaft", stored: "degrees of crank", si: "radians", siNum: "180", siDen: "math.Pi", example: "16° crank", shaft: "crank",
		units: shaftDegrees("Crank"), pairs: []string{"°>'", "'>\""}},
	{name: "CamAngle", doc: "an angle turned by the camshaft or camwheel", stored: "degrees of cam", si: "radians", siNum: "180", siDen: "math.Pi", example: "8° cam", shaft: "cam",
		units: shaftDegrees("Cam"), pairs: []string{"°>'", "'>\""}},
	{name: "Mass", doc: "a mass", stored: "kilograms", si: "kilograms", example: "165 kg", prefer: sym("kg"),
		units: []un{
			{one: "Kilogram", many: "Kilograms", symbols: sym("kg", "kilogram", "kilograms", "kilo", "kilos")},
			{one: "Gram", many: "Grams", den: "1000", symbols: sym("g", "gram", "grams")},
			{one: "Pound", many: "Pounds", num: "45359237", den: "1e8", symbols: sym("lb", "lbs", "pound", "pounds")},
			{one: "Ounce", many: "Ounces", num: "45359237", den: "16e8", symbols: sym("oz", "ounce", "ounces")},
			{one: "Tonne", many: "Tonnes", num: "1000", symbols: sym("tonne", "tonnes", "t"), plain: "tonnes of 1000 kg"},
			{one: "LongTon", many: "LongTons", num: "10160469088", den: "1e7", symbols: sym("long ton", "long tons", "imp ton"), plain: "long tons of 2240 lb"},
			{one: "ShortTon", many: "ShortTons", num: "90718474", den: "1e5", symbols: sym("short ton", "short tons", "US ton"), plain: "short tons of 2000 lb"},
			{one: "Stone", many: "Stones", num: "635029318", den: "1e8", symbols: sym("st", "stone"), plain: "stones of 14 lb"},
			{one: "Hundredweight", many: "Hundredweights", num: "5080234544", den: "1e8", symbols: sym("cwt", "hundredweight"), plain: "hundredweights of 112 lb"},
		}, pairs: []string{"lb>oz", "st>lb", "cwt>lb"}, ambiguous: [][2]string{{"ton", "long ton, short ton or tonne"}, {"tons", "long ton, short ton or tonne"}}},
	{name: "Force", doc: "a force", stored: "newtons", si: "newtons", example: "28 lbf", prefer: sym("N"),
		units: []un{
			{one: "Newton", many: "Newtons", symbols: sym("N", "newton", "newtons")},
			{one: "Kilonewton", many: "Kilonewtons", num: "1000", symbols: sym("kN")},
			{one: "PoundForce", many: "PoundsForce", num: lbf, den: "1e13", symbols: sym("lbf", "lb", "lbs", "pound", "pounds"), notes: note("lb read as pounds-force", "lb", "lbs", "pound", "pounds"), plain: "pounds-force"},
			{one: "OunceForce", many: "OuncesForce", num: lbf, den: "16e13", symbols: sym("ozf", "oz"), notes: note("oz read as ounces-force", "oz"), plain: "ounces-force"},
			{one: "KilogramForce", many: "KilogramsForce", num: "980665", den: "1e5", symbols: sym("kgf", "kg", "kp"), notes: note("kg read as kilograms-force", "kg"), plain: "kilograms-force"},
			{one: "GramForce", many: "GramsForce", num: "980665", den: "1e8", symbols: sym("gf", "g"), notes: note("g read as grams-force", "g"), plain: "grams-force"},
			{one: "LongTonForce", many: "LongTonsForce", num: "2240 * " + lbf, den: "1e13", symbols: sym("long tonf"), plain: "long tons-force"},
			{one: "ShortTonForce", many: "ShortTonsForce", num: "2000 * " + lbf, den: "1e13", symbols: sym("short tonf"), plain: "short tons-force"},
		}, ambiguous: [][2]string{{"ton", "long tonf, short tonf or kN"}, {"tons", "long tonf, short tonf or kN"}, {"tonf", "long tonf, short tonf or kN"}}},
	{name: "Torque", doc: "a torque", stored: "newton metres", si: "newton metres", example: "30 lbf ft", prefer: sym("N m"),
		units: []un{
			{one: "NewtonMetre", many: "NewtonMetres", symbols: sym("N m", "Nm", "newton metre", "newton metres", "m N")},
			{one: "NewtonMillimetre", many: "NewtonMillimetres", den: "1000", symbols: sym("N mm", "Nmm")},
			{one: "PoundForceFoot", many: "PoundForceFeet", num: "3048 * " + lbf, den: "1e17", symbols: sym("lbf ft", "ft lbf", "lb ft", "ft lb", "lbs ft", "ft lbs", "lbft", "ftlb", "ftlbs", "foot pounds", "pound feet", "pounds feet"), notes: note("lb ft read as pounds-force feet", "lb ft", "ft lb", "lbs ft", "ft lbs", "lbft", "ftlb", "ftlbs", "foot pounds", "pound feet", "pounds feet"), plain: "pounds-force feet"},
			{one: "PoundForceInch", many: "PoundForceInches", num: "254 * " + lbf, den: "1e17", symbols: sym("lbf in", "in lbf", "lb in", "in lb", "lbs in", "in lbs", "inlb", "inlbs", "inch pounds", "pound inches"), notes: note("lb in read as pounds-force inches", "lb in", "in lb", "lbs in", "in lbs", "inlb", "inlbs", "inch pounds", "pound inches"), plain: "pounds-force inches"},
			{one: "KilogramForceMetre", many: "KilogramForceMetres", num: "980665", den: "1e5", symbols: sym("kgf m", "kg m", "m kg", "kgm", "mkg", "kp m", "m kp", "kpm", "mkp"), notes: note("kg m read as kilograms-force metres", "kg m", "m kg", "kgm", "mkg"), plain: "kilograms-force metres"},
			{one: "KilogramForceCentimetre", many: "KilogramForceCentimetres", num: "980665", den: "1e7", symbols: sym("kgf cm", "kg cm", "cm kg"), notes: note("kg cm read as kilograms-force centimetres", "kg cm", "cm kg"), plain: "kilograms-force centimetres"},
			{num: "1000", symbols: sym("kN m", "kNm")},
		}},
	{name: "Pressure", doc: "a pressure or stress; whether absolute or above atmosphere is said by the field that holds it", stored: "pascals", si: "pascals", example: "120 psi", prefer: sym("bar", "kPa", "Pa"),
		units: []un{
			{one: "Pascal", many: "Pascals", symbols: sym("Pa")},
			{one: "Kilopascal", many: "Kilopascals", num: "1000", symbols: sym("kPa")},
			{one: "Megapascal", many: "Megapascals", num: "1e6", symbols: sym("MPa", "N/mm²", "N/mm2")},
			{one: "Gigapascal", many: "Gigapascals", num: "1e9", symbols: sym("GPa", "kN/mm²", "kN/mm2")},
			{one: "Bar", many: "Bars", num: "1e5", symbols: sym("bar")},
			{one: "Hectopascal", many: "Hectopascals", num: "100", symbols: sym("hPa", "mbar", "mb")},
			{one: "Atmosphere", many: "Atmospheres", num: "101325", symbols: sym("atm")},
			{one: "PoundForcePerSquareInch", many: "PoundsForcePerSquareInch", num: lbf, den: "64516e5", symbols: sym("psi", "lbf/in²", "lbf/in2", "lb/in²", "lb/in2", "lb/sq in", "lbs/sq in"), notes: note("lb/in² read as pounds-force per square inch", "lb/in²", "lb/in2", "lb/sq in", "lbs/sq in"), plain: "pounds-force per square inch"},
			{one: "KilopoundForcePerSquareInch", many: "KilopoundsForcePerSquareInch", num: "1000 * " + lbf, den: "64516e5", symbols: sym("ksi", "kpsi"), plain: "thousands of pounds-force per square inch"},
			{one: "LongTonForcePerSquareInch", many: "LongTonsForcePerSquareInch", num: "2240 * " + lbf, den: "64516e5", symbols: sym("tonf/in²", "tonf/in2", "tsi"), plain: "long tons-force per square inch"},
			{one: "KilogramForcePerSquareCentimetre", many: "KilogramsForcePerSquareCentimetre", num: "980665", den: "10", symbols: sym("kgf/cm²", "kgf/cm2", "kg/cm²", "kg/cm2"), notes: note("kg/cm² read as kilograms-force per square centimetre", "kg/cm²", "kg/cm2"), plain: "kilograms-force per square centimetre"},
			{one: "InchOfMercury", many: "InchesOfMercury", num: "3386388640341", den: "1e9", symbols: sym("inHg", "in Hg", "inch Hg", "inches Hg"), plain: "inches of mercury at 0 °C (conventional)"},
			{one: "MillimetreOfMercury", many: "MillimetresOfMercury", num: "133322387415", den: "1e9", symbols: sym("mmHg", "mm Hg"), plain: "millimetres of mercury at 0 °C (conventional)"},
			{num: "101325", den: "760", symbols: sym("torr")}, // a part in 7 million less than the conventional millimetre
			{one: "InchOfWater", many: "InchesOfWater", num: "24908891", den: "1e5", symbols: sym("inH2O", "in H2O", "inH₂O"), plain: "inches of water (conventional)"},
			{one: "MillimetreOfWater", many: "MillimetresOfWater", num: "980665", den: "1e5", symbols: sym("mmH2O", "mm H2O", "mmH₂O"), plain: "millimetres of water (conventional)"},
			{num: "980665", den: "1e4", symbols: sym("cmH2O", "cm H2O", "cmH₂O")},
			{num: "9806650", symbols: sym("kgf/mm²", "kgf/mm2", "kg/mm²", "kg/mm2"), notes: note("kg/mm² read as kilograms-force per square millimetre", "kg/mm²", "kg/mm2")},
		}, ambiguous: [][2]string{{"ton", "tonf/in² (long tons) or MPa"}, {"tons", "tonf/in² (long tons) or MPa"}}},
	{name: "SpringRate", doc: "the rate of a spring or the stiffness of a part", stored: "newtons per metre", si: "newtons per metre", example: "25 N/mm", prefer: sym("N/mm"),
		units: []un{
			{one: "NewtonPerMetre", many: "NewtonsPerMetre", symbols: sym("N/m")},
			{one: "NewtonPerMillimetre", many: "NewtonsPerMillimetre", num: "1000", symbols: sym("N/mm", "kN/m")},
			{one: "PoundForcePerInch", many: "PoundsForcePerInch", num: lbf, den: "254e9", symbols: sym("lbf/in", "lb/in", "lbs/in"), notes: note("lb/in read as pounds-force per inch", "lb/in", "lbs/in"), plain: "pounds-force per inch"},
			{one: "KilogramForcePerMillimetre", many: "KilogramsForcePerMillimetre", num: "980665", den: "100", symbols: sym("kgf/mm", "kg/mm"), notes: note("kg/mm read as kilograms-force per millimetre", "kg/mm"), plain: "kilograms-force per millimetre"},
		}},
	{name: "Speed", doc: "a speed", stored: "metres per second", si: "metres per second", example: "60 mile/h", prefer: sym("m/s", "km/h", "mile/h"),
		units: []un{
			{one: "MetrePerSecond", many: "MetresPerSecond", symbols: sym("m/s")},
			{one: "KilometrePerHour", many: "KilometresPerHour", num: "5", den: "18", symbols: sym("km/h", "kph", "kmh")},
			{one: "MilePerHour", many: "MilesPerHour", num: "1397", den: "3125", symbols: sym("mile/h", "mph", "mi/h", "miles/h", "miles per hour")},
			{one: "FootPerSecond", many: "FeetPerSecond", num: "381", den: "1250", symbols: sym("ft/s")},
			{one: "FootPerMinute", many: "FeetPerMinute", num: "127", den: "25000", symbols: sym("ft/min")},
		}},
	{name: "Acceleration", doc: "an acceleration", stored: "metres per second squared", si: "metres per second squared", example: "250 m/s²", prefer: sym("m/s²"),
		units: []un{
			{one: "MetrePerSecondSquared", many: "MetresPerSecondSquared", symbols: sym("m/s²", "m/s2", "m/s^2")},
			{one: "FootPerSecondSquared", many: "FeetPerSecondSquared", num: "381", den: "1250", symbols: sym("ft/s²", "ft/s2", "ft/s^2")},
			{one: "StandardGravity", many: "StandardGravities", num: "980665", den: "1e5", symbols: sym("gn")},
		}},
	{name: "RotationalSpeed", doc: "a speed of rotation", stored: "radians per second", si: "radians per second", example: "3000 rev/min", prefer: sym("rev/min"),
		units: []un{
			{one: "RadianPerSecond", many: "RadiansPerSecond", symbols: sym("rad/s")},
			{one: "RevolutionPerMinute", many: "RevolutionsPerMinute", num: "math.Pi", den: "30", symbols: sym("rev/min", "rpm", "r/min", "revs/min")},
			{one: "RevolutionPerSecond", many: "RevolutionsPerSecond", num: "2 * math.Pi", symbols: sym("rev/s", "rps")},
			{one: "DegreePerSecond", many: "DegreesPerSecond", num: "math.Pi", den: "180", symbols: sym("°/s", "deg/s")},
			{num: "1000 * math.Pi", den: "180", symbols: sym("°/ms", "deg/ms")},
		}},
	{name: "Power", doc: "a power", stored: "watts", si: "watts", example: "16 kW", prefer: sym("kW", "W"),
		units: []un{
			{one: "Watt", many: "Watts", symbols: sym("W", "watt", "watts")},
			{one: "Kilowatt", many: "Kilowatts", num: "1000", symbols: sym("kW")},
			{one: "BritishHP", many: "BritishHorsepower", num: "550 * 3048 * " + lbf, den: "1e17", symbols: sym("hp (550 ft lbf/s)", "bhp", "British hp", "imperial hp"), plain: "horsepower of 550 ft lbf/s"},
			{one: "MetricHP", many: "MetricHorsepower", num: "73549875", den: "1e5", symbols: sym("PS", "metric hp", "ch", "cv"), plain: "horsepower of 75 kgf m/s"},
			{num: "3048 * " + lbf, den: "60e17", symbols: sym("ft lbf/min")},
		}, ambiguous: [][2]string{{"hp", "bhp (550 ft lbf/s, 745.7 W) or metric hp (75 kgf m/s, 735.5 W)"}, {"HP", "bhp (550 ft lbf/s, 745.7 W) or metric hp (75 kgf m/s, 735.5 W)"}, {"horsepower", "bhp (550 ft lbf/s, 745.7 W) or metric hp (75 kgf m/s, 735.5 W)"}}},
	{name: "Energy", doc: "an energy", stored: "joules", si: "joules", example: "12 kJ", prefer: sym("kJ", "J"),
		units: []un{
			{one: "Joule", many: "Joules", symbols: sym("J", "joule", "joules")},
			{one: "Kilojoule", many: "Kilojoules", num: "1000", symbols: sym("kJ")},
			{one: "Megajoule", many: "Megajoules", num: "1e6", symbols: sym("MJ")},
			{one: "FootPoundForce", many: "FootPoundsForce", num: "3048 * " + lbf, den: "1e17", symbols: sym("ft lbf", "ft lb"), notes: note("ft lb read as foot pounds-force", "ft lb"), plain: "foot pounds-force"},
		}, ambiguous: [][2]string{{"Btu", "kJ (several thermal units exist; the international table one is 1.05505585262 kJ)"}, {"cal", "J (several calories exist; the thermochemical one is 4.184 J)"}}},
	{name: "Temperature", doc: "a temperature", stored: "kelvins", si: "kelvins", example: "20 °C", affine: true, prefer: sym("°C"),
		units: []un{
			{many: "Kelvins", symbols: sym("K", "kelvin")},
			{many: "Celsius", post: "273.15", symbols: sym("°C", "degC", "C", "deg C", "ºC", "Celsius"), plain: "degrees Celsius"},
			{many: "Fahrenheit", off: "-32", num: "5", den: "9", post: "273.15", symbols: sym("°F", "degF", "F", "deg F", "ºF", "Fahrenheit"), plain: "degrees Fahrenheit"},
		}},
	{name: "TemperatureDelta", doc: "a difference of temperature", stored: "kelvins", si: "kelvins", example: "15 K", prefer: sym("K"),
		units: []un{
			{one: "Kelvin", many: "KelvinsDelta", symbols: sym("K", "kelvin", "°C", "degC"), plain: "kelvins of difference"},
			{one: "FahrenheitDegree", many: "FahrenheitDegrees", num: "5", den: "9", symbols: sym("°F", "degF"), plain: "Fahrenheit degrees of difference"},
		}},
	{name: "Density", doc: "a density", stored: "kilograms per cubic metre", si: "kilograms per cubic metre", example: "745 kg/m³", prefer: sym("kg/m³"),
		units: []un{
			{one: "KilogramPerCubicMetre", many: "KilogramsPerCubicMetre", symbols: sym("kg/m³", "kg/m3")},
			{one: "GramPerCubicCentimetre", many: "GramsPerCubicCentimetre", num: "1000", symbols: sym("g/cm³", "g/cm3", "kg/L", "kg/l", "g/cc", "g/ml")},
			{one: "PoundPerCubicFoot", many: "PoundsPerCubicFoot", num: "45359237", den: "2831684.6592", symbols: sym("lb/ft³", "lb/ft3")},
			{num: "453592370000", den: "16387064", symbols: sym("lb/in³", "lb/in3")},
		}},
	{name: "SpecificEnergy", doc: "an energy per mass: a heating value, a latent heat", stored: "joules per kilogram", si: "joules per kilogram", example: "43.4 MJ/kg", prefer: sym("MJ/kg", "kJ/kg"),
		units: []un{
			{one: "JoulePerKilogram", many: "JoulesPerKilogram", symbols: sym("J/kg")},
			{one: "KilojoulePerKilogram", many: "KilojoulesPerKilogram", num: "1000", symbols: sym("kJ/kg")},
			{one: "MegajoulePerKilogram", many: "MegajoulesPerKilogram", num: "1e6", symbols: sym("MJ/kg")},
			// 2326 J/kg is exact: it defines the international table Btu (ISO 31-4:1992 annex A, from memory).
			{one: "BtuPerPound", many: "BtusPerPound", num: "2326", symbols: sym("Btu/lb"), plain: "international table Btu per pound"},
		}},
	{name: "KinematicViscosity", doc: "a kinematic viscosity", stored: "square metres per second", si: "square metres per second", example: "0.55 mm²/s", prefer: sym("mm²/s"),
		units: []un{
			{one: "SquareMetrePerSecond", many: "SquareMetresPerSecond", symbols: sym("m²/s", "m2/s")},
			{one: "SquareMillimetrePerSecond", many: "SquareMillimetresPerSecond", den: "1e6", symbols: sym("mm²/s", "mm2/s", "cSt")},
			{den: "1e4", symbols: sym("St")},
		}},
	{name: "DynamicViscosity", doc: "a dynamic viscosity", stored: "pascal seconds", si: "pascal seconds", example: "0.41 mPa s", prefer: sym("mPa s"),
		units: []un{
			{one: "PascalSecond", many: "PascalSeconds", symbols: sym("Pa s", "Pa·s")},
			{one: "MillipascalSecond", many: "MillipascalSeconds", den: "1000", symbols: sym("mPa s", "mPa·s", "cP")},
			{num: lbf, den: "64516e5", symbols: sym("reyn")}, // lbf s/in²
		}},
	{name: "VolumeFlow", doc: "a flow by volume", stored: "cubic metres per second", si: "cubic metres per second", example: "280 cc/min", prefer: sym("cc/min"),
		units: []un{
			{one: "CubicMetrePerSecond", many: "CubicMetresPerSecond", symbols: sym("m³/s", "m3/s")},
			{one: "CubicCentimetrePerMinute", many: "CubicCentimetresPerMinute", den: "6e7", symbols: sym("cc/min", "cm³/min", "cm3/min", "ml/min", "mL/min")},
			{one: "CubicCentimetrePerSecond", many: "CubicCentimetresPerSecond", den: "1e6", symbols: sym("cc/s", "cm³/s", "cm3/s", "ml/s")},
			{one: "LitrePerMinute", many: "LitresPerMinute", den: "6e4", symbols: sym("L/min", "l/min")},
			{one: "LitrePerHour", many: "LitresPerHour", den: "36e5", symbols: sym("L/h", "l/h")},
			{one: "ImperialGallonPerHour", many: "ImperialGallonsPerHour", num: "454609", den: "36e10", symbols: sym("imp gal/h")},
		}, ambiguous: [][2]string{{"gal/h", "imp gal/h or L/h"}}},
	{name: "FuelConsumption", doc: "a volume of fuel used over a distance", stored: "cubic metres per metre", si: "cubic metres per metre", example: "4.5 L/100 km", prefer: sym("L/100 km"),
		units: []un{
			{one: "CubicMetrePerMetre", many: "CubicMetresPerMetre", symbols: sym("m³/m", "m3/m")},
			{one: "LitrePer100Kilometres", many: "LitresPer100Kilometres", den: "1e8", symbols: sym("L/100 km", "L/100km", "l/100 km", "l/100km", "L/(100 km)"), plain: "litres per 100 kilometres"},
			{many: "MilesPerImperialGallon", num: "454609", den: "1609344e5", per: true, symbols: sym("mile/imp gal", "miles/imp gal", "imp mpg", "UK mpg")},
			{many: "MilesPerUSGallon", num: "3785411784", den: "1609344e9", per: true, symbols: sym("mile/US gal", "miles/US gal", "US mpg"), plain: "miles per US gallon"},
			{many: "KilometresPerLitre", den: "1e6", per: true, symbols: sym("km/L", "km/l")},
		}, ambiguous: [][2]string{{"mpg", "mile/imp gal or mile/US gal"}, {"mile/gal", "mile/imp gal or mile/US gal"}, {"miles/gal", "mile/imp gal or mile/US gal"}}},
	{name: "MassFlow", doc: "a flow by mass", stored: "kilograms per second", si: "kilograms per second", example: "12 g/s", prefer: sym("g/s", "kg/h", "kg/s"),
		units: []un{
			{one: "KilogramPerSecond", many: "KilogramsPerSecond", symbols: sym("kg/s")},
			{one: "GramPerSecond", many: "GramsPerSecond", den: "1000", symbols: sym("g/s")},
			{one: "KilogramPerMinute", many: "KilogramsPerMinute", den: "60", symbols: sym("kg/min")},
			{one: "KilogramPerHour", many: "KilogramsPerHour", den: "3600", symbols: sym("kg/h")},
			{one: "PoundPerHour", many: "PoundsPerHour", num: "45359237", den: "36e10", symbols: sym("lb/h")},
		}},
	{name: "Time", doc: "a span of time", stored: "seconds", si: "seconds", example: "90 s", prefer: sym("s"),
		units: []un{
			{one: "Second", many: "Seconds", symbols: sym("s", "sec", "second", "seconds")},
			{one: "Millisecond", many: "Milliseconds", den: "1000", symbols: sym("ms")},
			{one: "MinuteOfTime", many: "MinutesOfTime", num: "60", symbols: sym("min", "minute", "minutes"), plain: "minutes"},
			{one: "Hour", many: "Hours", num: "3600", symbols: sym("h", "hour", "hours", "hr")},
		}, pairs: []string{"h>min", "min>s"}},
	{name: "Ratio", doc: "a pure number that is read from text or carries an uncertainty: a friction coefficient, a mixture ratio, a share", stored: "its own value", si: "its own value", example: "0.12", prefer: sym(""),
		units: []un{
			{one: "One", many: "Value", symbols: sym("", ":1", ": 1", "to 1"), plain: "its own value"},
			{one: "Percent", many: "Percents", den: "100", symbols: sym("%", "per cent", "percent")},
		}},
}
