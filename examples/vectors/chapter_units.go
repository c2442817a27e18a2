package main

import (
	"strings"

	"example.com/benchbook/units"
)

func mm(x float64) units.Length           { return units.Millimetres(x) }
func rpm(x float64) units.RotationalSpeed { return units.RevolutionsPerMinute(x) }

func unitCases(b *book) {
	parseCases(b)
	var lengths []row
	for _, x := range []float64{0, 1. / 64, 5. / 16, 1, 1.375, 12} {
		lengths = append(lengths, row{units.Inches(x) + mm(0.05)})
	}
	b.ask(units.NearestFraction, "length, denominator > fraction, left", append(cross(lengths, each(64, 16)), row{mm(5), 0}))
	b.ask(units.Fraction.Length, "fraction", each(units.Fraction{Num: 5, Den: 16}, units.Fraction{Whole: 1, Num: 3, Den: 8}, units.Fraction{Negative: true, Num: 1, Den: 64}, units.Fraction{}))
	b.ask(units.Inches, "inches", each(0.0, 1./64, 5./16, 1.0, 1.375, 12.0))
	b.ask(units.CamAngle.AtCrank, "cam", each(camDeg(7.5), camDeg(-16)))
	b.ask(units.CrankAngle.AtHalfSpeedCam, "crank", each(crankDeg(15), crankDeg(-32)))
	datums := each(units.TDC, units.BDC)
	b.ask(units.After, "datum, by", cross(datums, each(crankDeg(25), crankDeg(-40), crankDeg(700))))
	b.ask(units.Before, "datum, by", cross(datums, each(crankDeg(25), crankDeg(-40), crankDeg(700))))
	places := each(at(-25), at(0), afterBDC(65), units.Before(units.BDC, crankDeg(40)))
	for _, ask := range []func(units.CrankPosition) units.CrankAngle{units.CrankPosition.After, units.CrankPosition.Before, units.CrankPosition.FromTDC} {
		b.ask(ask, "position", places)
	}
	b.ask(units.CrankPosition.Datum, "position", places)
	b.ask(units.ParsePosition, "text", each("25 BTDC", "40° ABDC", "TDC", "10° 30' ATDC", "25", "40 cam BTDC", ""))
	b.ask(units.WithUncertainty[units.Length], "length, u", cross(each(mm(7.9412)), each(mm(0.02), mm(0.3), mm(0.0013))))
	b.ask(units.WithUncertaintyIn[units.Length], "length, u, unit", cross(each(mm(7.9412)), each(mm(0.02), mm(0)), each(1*units.Inch, 1*units.Thou, mm(2))))
	b.ask(units.WithUncertainty[units.Force], "force, u", cross(each(newtons(203.4)), each(newtons(2), newtons(15), newtons(0))))
}

// parseCases read every unit that text may carry, in each quantity's own function.
func parseCases(b *book) {
	read := func(fn any, texts string) {
		b.ask(fn, "text", each(strings.Split(texts, "|")...))
	}
	read(units.ParseLength, `5/16 in|1 3/8"|5' 11½"|8 thou|12.7mm|1 cm|3 m|2 µm|6 ft|1 yd|1 mile|2 km|-0.5 mm|2 furlong|5|`)
	read(units.ParseArea, `1 m²|95 mm2|95 mm²|2 in²|3 cm²|2 sq in|1 ft²|5 acre`)
	read(units.ParseVolume, `397 cc|24.2 cu in|24.2 in³|1 L|10 ml|1 mm³|1 ft³|3 imp gal|1 US gal|1 imp pint|1 US pint|1 imp fl oz|1 US fl oz|1 imp quart|1 imp gill|1 US quart|1 m³|1 pint|2 gal`)
	read(units.ParseAngle, `45°|45"|45°30'|0.25 turn|1 rad|30'|2°0'30"|5 grad`)
	read(units.ParseCrankAngle, `18° crank|30' crank|45" crank|0.5 rad crank|10° 30' crank|9° cam|9`)
	read(units.ParseCamAngle, `9° cam|30' cam|45" cam|0.5 rad cam|18° crank`)
	read(units.ParseMass, `1 kg|420 g|5 lb|4 oz|12 st|5 lb 4 oz|12 st 7 lb|1 cwt|1 tonne|1 long ton|1 short ton|1 ton`)
	read(units.ParseForce, `28 lb|28 lbf|8 oz|8 ozf|30 kgf|30 kg|500 gf|2 kN|12 N|1 long tonf|1 short tonf|1 tonf|12 cm`)
	read(units.ParseTorque, `30 lbf ft|30 lb ft|100 lbf in|2 kgf m|200 kgf cm|41 N m|500 N mm|1 kN m|30 lb`)
	read(units.ParsePressure, `128 psi|1008 hPa|29.92 inHg|760 mmHg|760 torr|9 bar|1 atm|1 Pa|1 kPa|1 MPa|1 GPa|1 ksi|50 tonf/in²|10 kgf/cm²|50 kgf/mm²|10 inH2O|100 mmH2O|1 cmH2O|50 ton`)
	read(units.ParseSpringRate, `25 N/mm|100 lbf/in|100 lb/in|2 kgf/mm|300 N/m|3 N`)
	read(units.ParseSpeed, `50 mile/h|100 km/h|20 m/s|3000 ft/min|60 ft/s|3 knot`)
	read(units.ParseAcceleration, `250 m/s²|30 ft/s²|1 gn|1 g`)
	read(units.ParseRotationalSpeed, `3000 rev/min|5500 rpm|50 rev/s|100 rad/s|360 °/s|1 °/ms|5 Hz`)
	read(units.ParsePower, `18 bhp|18 hp (550 ft lbf/s)|14 kW|15 PS|746 W|33000 ft lbf/min|20 hp`)
	read(units.ParseEnergy, `12 kJ|500 J|1 MJ|30 ft lbf|1 Btu|1 cal`)
	read(units.ParseTemperature, `59 °F|15 °C|288.15 K|-300 °C|15`)
	read(units.ParseTemperatureDelta, `15 K|15 °C|27 °F|5 °R`)
	read(units.ParseDensity, `745 kg/m³|0.745 g/cm³|46.5 lb/ft³|0.1 lb/in³|7 lb`)
	read(units.ParseSpecificEnergy, `43.4 MJ/kg|350 kJ/kg|500 J/kg|18600 Btu/lb|5 cal/g`)
	read(units.ParseKinematicViscosity, `0.55 mm²/s|1 cSt|1 St|1 m²/s|5 s`)
	read(units.ParseDynamicViscosity, `0.41 mPa s|1 cP|1 Pa s|1 reyn|5 P`)
	read(units.ParseVolumeFlow, `280 cc/min|5 cc/s|0.3 L/min|18 L/h|1 imp gal/h|1 m³/s|1 gal/h`)
	read(units.ParseFuelConsumption, `70 mile/imp gal|60 mile/US gal|4 L/100 km|25 km/L|1 m³/m|70 mpg`)
	read(units.ParseMassFlow, `12 g/s|40 kg/h|1 kg/min|1 kg/s|90 lb/h|3 g`)
	read(units.ParseTime, `90 s|2 h|1 h 20 min|5 ms|2 min|3 fortnights`)
	read(units.ParseRatio, `0.12|12 %|13.5:1|6.8 to 1|1/3|much`)
}
