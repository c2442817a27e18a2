package carburation_test

import (
	"math"
	"strconv"
	"testing"

	"example.com/benchbook/carburation"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// The books: H. N. Gupta, Fundamentals of Internal Combustion Engines (2006);
// M. L. Mathur, R. P. Sharma, Internal Combustion Engine (8th ed. 2010); R. K.
// Rajput, Internal Combustion Engines; H. B. Keswani, Internal Combustion
// Engines (4th ed. 2003); read in their public companions. Examples are named by
// author and number.

func printed(t *testing.T, what string, got float64, want string, decimals int) {
	t.Helper()
	if s := strconv.FormatFloat(got, 'f', decimals, 64); s != want {
		t.Errorf("%s = %s, source prints %s", what, s, want)
	}
}

// near is for a source that rounds on the way: its figure to a unit in its last
// place.
func near(t *testing.T, what string, got, want, unit float64) {
	t.Helper()
	if !(math.Abs(got-want) <= unit) {
		t.Errorf("%s = %v, source prints %v", what, got, want)
	}
}

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

func book(r float64) carburation.Gas {
	return carburation.Gas{RJoulesPerKilogramKelvin: r, CpJoulesPerKilogramKelvin: 1005}
}

func bore(cylinders int, bore, stroke units.Length) units.Volume {
	b := bore.Metres()
	return units.CubicMetres(float64(cylinders) * math.Pi / 4 * b * b * stroke.Metres())
}

func TestChokeAndJetPrinted(t *testing.T) {
	for _, c := range []struct {
		name                            string
		air, fuel, rhoF, p1, t1, c2, cv float64
		cd, share, r                    float64
		choke                           string
		decimals                        int
		jet                             string
		jetDecimals                     int
	}{
		{"Gupta 9.1", 5, 0.4, 780, 1.013, 300, 90, 0.8, 0.6, 0.75, 287, "3.251", 3, "2.2", 1},
		{"Mathur 11.1", 5, 0, 0, 1.013, 300, 90, 0.8, 0, 0, 287, "3.25", 2, "", 0},
		{"Mathur 11.2", 6, 0.45, 740, 1.013, 300, 92, 0.8, 0.6, 0.75, 287, "3.526", 3, "2.34", 2},
		{"Rajput 11.6", 4.6, 0, 0, 1.013, 298, 80, 0.8, 0, 0, 287, "3.278", 3, "", 0},
		{"Keswani 9.15", 6.8, 0.45, 800, 1.033 * 0.980665, 293, 97.5, 0.8, 0.65, 0.75, 287, "3.62", 2, "2.13", 2},
	} {
		choke := carburation.Choke{Coefficient: units.Value(c.cv), Pressure: units.Bars(c.p1), Temperature: units.Kelvins(c.t1), Gas: book(c.r)}
		size, err := choke.Size(units.KilogramsPerMinute(c.air), units.MetresPerSecond(c.c2), carburation.OnVelocity)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		printed(t, c.name+" choke", size.Diameter.Centimetres(), c.choke, c.decimals)
		if c.jet != "" {
			a := must(carburation.Orifice{Coefficient: units.Value(c.cd)}.Size(units.KilogramsPerMinute(c.fuel), size.Throat.Suction.Times(c.share), units.KilogramsPerCubicMetre(c.rhoF)))
			printed(t, c.name+" jet", must(carburation.CircleDiameter(a)).Millimetres(), c.jet, c.jetDecimals)
		}
	}
	// Ramalingam, Internal Combustion Engines, example 7.13: exponent 1.35, R 281
	odd := must(carburation.Choke{Coefficient: 0.85, Pressure: units.Bars(1), Temperature: units.Kelvins(300), Gas: carburation.Gas{RJoulesPerKilogramKelvin: 281, Gamma: 1.35, CpJoulesPerKilogramKelvin: 1005}}.Size(units.KilogramsPerMinute(6), units.MetresPerSecond(90), carburation.OnVelocity))
	printed(t, "Ramalingam 7.13 choke", odd.Diameter.Centimetres(), "3.55", 2)
	printed(t, "Ramalingam 7.13 jet", must(carburation.CircleDiameter(must(carburation.Orifice{Coefficient: 0.66}.Size(units.KilogramsPerMinute(0.44), odd.Throat.Suction.Times(0.8), units.KilogramsPerCubicMetre(740))))).Millimetres(), "2.218", 3)
	printed(t, "constant of the choke formula", must(carburation.Gas{RJoulesPerKilogramKelvin: 287, CpJoulesPerKilogramKelvin: 1005}.ChokeConstant()), "0.1562", 4)
	// Rajput 11.8: an emulsion tube of 0.4 of the choke stands in it; Cd on area
	drawn := must(carburation.Intake{Swept: units.CubicCentimetres(1489), Speed: units.RevolutionsPerMinute(4200), Efficiency: 0.75, Air: units.KilogramsPerCubicMetre(1.013e5 / (287 * 293))}.Flow())
	choke := carburation.Choke{Coefficient: 0.82, Pressure: units.Bars(1.013), Temperature: units.Kelvins(293), Gas: book(287)}
	size := must(choke.Size(drawn.Air, units.MetresPerSecond(85), carburation.OnArea))
	printed(t, "Rajput 11.8 choke", must(carburation.ChokeDiameter(size.Area, 0.4)).Millimetres(), "29.61", 2)
	a := must(carburation.Orifice{Coefficient: 0.65, Lip: units.Millimetres(6)}.Size(drawn.Air.Times(1/13.0), size.Throat.Suction, units.KilogramsPerCubicMetre(740)))
	printed(t, "Rajput 11.8 jet", must(carburation.CircleDiameter(a)).Millimetres(), "1.68", 2)
}

func TestIntakePrinted(t *testing.T) {
	// Gupta 9.3: fuel vapour takes room; AFR from 84 % C, 16 % H, 0.95 of the air
	afr := 0.95 * (0.84*8/3 + 0.16*8) / 0.23
	in := carburation.Intake{Swept: bore(4, units.Metres(0.08), units.Metres(0.09)), Speed: units.RevolutionsPerMinute(4000), Efficiency: 0.8,
		Air: units.KilogramsPerCubicMetre(1e5 / (287 * 298)), Vapour: units.KilogramsPerCubicMetre(1e5 / (98 * 298)), Mixture: units.Value(afr)}
	d := must(in.Flow())
	printed(t, "Gupta 9.3 fuel", d.Fuel.KilogramsPerSecond(), "0.00379", 5)
	choke := carburation.Choke{Area: units.SquareMillimetres(500), Coefficient: 1, Pressure: units.Bars(1), Temperature: units.Kelvins(298), Gas: book(287)}
	th := must(choke.At(units.Bars(0.94)))
	near(t, "Gupta 9.3 speed", th.Speed.MetresPerSecond(), 102.5, 0.06)
	size := must(choke.Size(d.Air, th.Speed, carburation.OnArea))
	near(t, "Gupta 9.3 choke", size.Diameter.Millimetres(), 24.75, 0.01)
	// Keswani 9.6: drawn at 0 °C, speed in a choke of 38.5 mm
	k := units.KilogramsForcePerSquareCentimetre(1.027).Pascals()
	in = carburation.Intake{Swept: bore(6, units.Centimetres(7.5), units.Centimetres(10)), Speed: units.RevolutionsPerMinute(3000), Efficiency: 0.8,
		Air: units.KilogramsPerCubicMetre(k / (29.27 * 9.80665 * 273)), Vapour: units.KilogramsPerCubicMetre(k / (9.9 * 9.80665 * 273)), Mixture: units.Value((0.84*8/3 + 0.16*8) / 0.23)}
	d = must(in.Flow())
	printed(t, "Keswani 9.6 fuel", d.Fuel.KilogramsPerHour(), "15.7", 1)
	rho := units.KilogramsPerCubicMetre(0.914e4 / (29.27 * 288.5))
	printed(t, "Keswani 9.6 speed", must(carburation.AirSpeed(d.Air, rho, carburation.CircleArea(units.Millimetres(38.5)))).MetresPerSecond(), "52.9", 1)
}

func TestSuctionPrinted(t *testing.T) {
	for _, c := range []struct {
		name                                       string
		bore, stroke, rpm, eta, rho, d, cd, divide float64
		want                                       string
		decimals                                   int
	}{
		{"Mathur 11.3, bar", 10, 12, 2000, 0.7, 1.2, 3, 0.8, 1e5, "0.0363", 4},
		{"Rajput 11.1, Pa", 10, 12, 1800, 0.75, 1.2, 2.8, 0.8, 1, "4447.61", 2},
		{"Keswani 9.4, kgf/m2", 10, 12, 2000, 0.7, 1.29, 3, 0.8, 9.81, "397.7", 1},
	} {
		d := must(carburation.Intake{Swept: bore(4, units.Centimetres(c.bore), units.Centimetres(c.stroke)), Speed: units.RevolutionsPerMinute(c.rpm), Efficiency: units.Value(c.eta), Air: units.KilogramsPerCubicMetre(c.rho)}.Flow())
		s := must(carburation.Suction(d.Air, units.KilogramsPerCubicMetre(c.rho), carburation.CircleArea(units.Centimetres(c.d)), units.Value(c.cd)))
		printed(t, c.name, s.Pascals()/c.divide, c.want, c.decimals)
	}
	// Gupta 9.4: suction and jet from engine data
	rho := units.KilogramsPerCubicMetre(1.013e5 / (287 * 298))
	d := must(carburation.Intake{Swept: bore(4, units.Metres(0.1), units.Metres(0.12)), Speed: units.RevolutionsPerMinute(3000), Efficiency: 0.8, Air: rho}.Flow())
	s := must(carburation.Suction(d.Air, rho, carburation.CircleArea(units.Millimetres(35)), 0.82))
	printed(t, "Gupta 9.4 suction", s.Bars(), "0.054", 3)
	a := must(carburation.Orifice{Coefficient: 0.7, Lip: units.Millimetres(5)}.Size(d.Air.Times(1/15.0), s, units.KilogramsPerCubicMetre(750)))
	near(t, "Gupta 9.4 jet", must(carburation.CircleDiameter(a)).Millimetres(), 1.953, 0.0006) // the book rounds the suction on the way
	// Keswani 9.10, g = 9.81
	s = must(carburation.SuctionAtSpeed(units.MetresPerSecond(58), units.KilogramsPerCubicMetre(1.28), 0.84))
	printed(t, "Keswani 9.10 suction", s.Pascals()/9.81, "311.03437", 5)
	m := must(carburation.Orifice{Area: units.SquareMillimetres(1.8), Coefficient: 0.6, Lip: units.Millimetres(2.8), Gravity: units.MetresPerSecondSquared(9.81)}.Flow(s, units.KilogramsPerCubicMetre(750)))
	printed(t, "Keswani 9.10 fuel", m.KilogramsPerSecond(), "0.0023027", 7)
}

func TestJetsPrinted(t *testing.T) {
	// Keswani 9.1: 104 cm of water on a 1 mm jet
	m := must(carburation.Orifice{Area: carburation.CircleArea(units.Millimetres(1)), Coefficient: 0.65}.Flow(units.MillimetresOfWater(1040), units.KilogramsPerCubicMetre(760)))
	near(t, "Keswani 9.1", m.GramsPerSecond(), 2.01, 0.005)
	// Rajput 11.2, g = 9.81
	s := must(carburation.Orifice{Area: units.SquareMetres(2e-6), Coefficient: 0.8, Lip: units.Millimetres(5), Gravity: units.MetresPerSecondSquared(9.81)}.Suction(units.KilogramsPerHour(5), units.KilogramsPerCubicMetre(750)))
	printed(t, "Rajput 11.2 suction", s.Pascals(), "539.13", 2)
	a := must(carburation.ChokeArea(units.KilogramsPerHour(80), units.KilogramsPerCubicMetre(1.2), s, 0.8))
	printed(t, "Rajput 11.2 choke", a.SquareCentimetres(), "7.72", 2)
	for _, c := range []struct {
		name                          string
		fuel, rhoF, afr, d, z, ca, cf float64
		p1, t1                        float64
		want                          string
		decimals                      int
	}{
		{"Mathur 11.4", 7.5, 750, 15, 22, 4, 0.82, 0.7, 1.013, 298, "1.228", 3},
		{"Rajput 11.3", 7.2, 750, 15, 24, 4.2, 0.8, 0.7, 1.013, 300, "1.32", 2},
	} {
		rho := units.KilogramsPerCubicMetre(c.p1 * 1e5 / (287 * c.t1))
		fuel := units.KilogramsPerHour(c.fuel)
		s := must(carburation.Suction(fuel.Times(c.afr), rho, carburation.CircleArea(units.Millimetres(c.d)), units.Value(c.ca)))
		a := must(carburation.Orifice{Coefficient: units.Value(c.cf), Lip: units.Millimetres(c.z)}.Size(fuel, s, units.KilogramsPerCubicMetre(c.rhoF)))
		printed(t, c.name, must(carburation.CircleDiameter(a)).Millimetres(), c.want, c.decimals)
	}
	// Keswani 9.5: 150 cm of water
	d := must(carburation.Intake{Swept: bore(4, units.Centimetres(8.25), units.Centimetres(11.5)), Speed: units.RevolutionsPerMinute(3000), Efficiency: 0.8, Air: units.KilogramsPerCubicMetre(1.29)}.Flow())
	a = must(carburation.Orifice{Coefficient: 0.7}.Size(d.Air.Times(1/14.0), units.MillimetresOfWater(1500), units.KilogramsPerCubicMetre(700)))
	printed(t, "Keswani 9.5", must(carburation.CircleDiameter(a)).Millimetres(), "1.35", 2)
	// Gupta 9.5: starting speed with the coefficient, suction, choke
	o := carburation.Orifice{Area: carburation.CircleArea(units.Millimetres(1.2)), Coefficient: 0.65, Lip: units.Millimetres(3)}
	rho := units.KilogramsPerCubicMetre(1.013e5 / (287 * 294))
	near(t, "Gupta 9.5 start", must(o.StartingSpeed(units.KilogramsPerCubicMetre(750), rho, 0.8)).MetresPerSecond(), 4.9, 0.06)
	s = must(o.Suction(units.KilogramsPerHour(6), units.KilogramsPerCubicMetre(750)))
	book5 := o
	book5.Gravity = 9.81
	printed(t, "Gupta 9.5 suction", must(book5.Suction(units.KilogramsPerHour(6), units.KilogramsPerCubicMetre(750))).Pascals()/9.81, "351.6", 1)
	near(t, "Gupta 9.5 choke", must(carburation.CircleDiameter(must(carburation.ChokeArea(units.KilogramsPerHour(6*15.3), rho, s, 0.8)))).Millimetres(), 21.12, 0.01)
	// Keswani 9.13
	o = carburation.Orifice{Area: carburation.CircleArea(units.Millimetres(1.27)), Coefficient: 0.6, Lip: units.Millimetres(3)}
	rho = units.KilogramsPerCubicMetre(1.027e4 / (29.27 * 288.5))
	printed(t, "Keswani 9.13 start", must(o.StartingSpeed(units.KilogramsPerCubicMetre(760), rho, 0.8)).MetresPerSecond(), "4.85", 2)
	s = must(o.Suction(units.KilogramsPerHour(6.4), units.KilogramsPerCubicMetre(760)))
	old := o // the book takes pi as 3.14 and g as 9.81
	old.Area, old.Gravity = units.SquareMillimetres(3.14/4*1.27*1.27), 9.81
	printed(t, "Keswani 9.13 suction, cm of water", must(old.Suction(units.KilogramsPerHour(6.4), units.KilogramsPerCubicMetre(760))).Pascals()/98.1, "36.96", 2)
	printed(t, "Keswani 9.13 choke", must(carburation.CircleDiameter(must(carburation.ChokeArea(units.KilogramsPerHour(6.4/0.066), rho, s, 0.8)))).Centimetres()*10, "21.4", 1)
	// Keswani 9.9
	printed(t, "Keswani 9.9", must(carburation.Orifice{Lip: units.Millimetres(5)}.StartingSpeed(units.KilogramsPerCubicMetre(720), units.KilogramsPerCubicMetre(1.29), 1)).MetresPerSecond(), "7.4", 1)
}

func TestPlainJetPrinted(t *testing.T) {
	for _, c := range []struct {
		name                      string
		choke, jet, ca, cf, z, dp float64
		level, lip, start         string
		decimals                  int
	}{
		{"Mathur 11.8", 20, 1.25, 0.85, 0.66, 5, 0.07, "13.2", "13.223", "7.83", 3},
		{"Rajput 11.9", 18, 1.2, 0.82, 0.65, 6, 0.065, "11.353846", "11.3926", "8.58", 4},
	} {
		p := carburation.PlainJet{ChokeArea: carburation.CircleArea(units.Millimetres(c.choke)), ChokeCoefficient: units.Value(c.ca), Air: units.KilogramsPerCubicMetre(1.2), Fuel: units.KilogramsPerCubicMetre(750),
			Jet: carburation.Orifice{Area: carburation.CircleArea(units.Millimetres(c.jet)), Coefficient: units.Value(c.cf)}}
		near(t, c.name+" level", must(p.Mixture(units.Bars(c.dp))).Value(), must(strconv.ParseFloat(c.level, 64)), 0.05)
		p.Jet.Lip = units.Millimetres(c.z)
		printed(t, c.name+" lip", must(p.Mixture(units.Bars(c.dp))).Value(), c.lip, c.decimals)
		printed(t, c.name+" start", must(p.Jet.StartingSpeed(p.Fuel, p.Air, 1)).MetresPerSecond(), c.start, 2)
	}
	p := carburation.PlainJet{ChokeArea: carburation.CircleArea(units.Millimetres(75)), ChokeCoefficient: 0.93, Air: units.KilogramsPerCubicMetre(1.29), Fuel: units.KilogramsPerCubicMetre(720),
		Jet: carburation.Orifice{Area: carburation.CircleArea(units.Millimetres(5)), Coefficient: 0.68}}
	near(t, "Keswani 9.2", must(p.Mixture(units.Bars(0.05))).Value(), 13.0, 0.05)
	for _, c := range []struct {
		name                 string
		afr, throat, p1, add float64
		want                 string
		decimals             int
	}{
		{"Gupta 9.8", 14.5, 0.825, 1.013, 37.5 / 750, "12.887", 3}, {"Mathur 11.9", 14, 0.834, 1.013, 30.0 / 750, "12.66", 2},
		{"Rajput 11.5", 15, 0.8, 1, 0.030 * 13600 * 9.81 / 1e5, "13.69", 2},
	} {
		printed(t, c.name, must(carburation.CleanerMixture(units.Value(c.afr), units.Bars(c.p1-c.throat), units.Bars(c.add))).Value(), c.want, c.decimals)
	}
}

func TestCoefficientsPrinted(t *testing.T) {
	// A. Lichtarowicz et al. 1965, equation 12, l/d 2, tabulated in an extraction note
	for re, want := range map[float64]string{10: "0.0817", 100: "0.4284", 10000: "0.8081"} {
		printed(t, "Cd", must(carburation.ParallelBore(re, 2)), want, 4)
	}
	// ISO 5167-4:2003, 5.6: the value of the standard
	printed(t, "expansibility", must(carburation.Expansibility(0.6, 5.95/6.0, 1.3)), "0.994236", 6)
	// still air from 101.3 kPa, by the same formula with beta 0
	for kpa, want := range map[float64]string{1: "0.995", 5: "0.973", 10: "0.946", 15: "0.917"} {
		printed(t, "expansibility of still air", must(carburation.Expansibility(0, 1-kpa/101.325, 1.4)), want, 3)
	}
	// documentation example of a public hydraulics library
	e := must(carburation.EmptyingTime(units.SquareMetres(2), units.SquareMetres(0.0005), 0.61, units.Metres(4), units.Metres(1)))
	if math.Abs(e.Seconds()/2961.3164311592627-1) > 1e-12 {
		t.Errorf("emptying time %v", e.Seconds())
	}
}

// A jet timed by its falling head gives back its own area.
func TestFallingHead(t *testing.T) {
	tube, hole := carburation.CircleArea(units.Millimetres(20)), units.SquareMillimetres(0.7)
	took := must(carburation.EmptyingTime(tube, hole, 0.78, units.Millimetres(600), units.Millimetres(300)))
	f := carburation.FallingHead{Vessel: tube, From: measure.Of(units.Millimetres(600), units.Millimetres(1)), To: measure.Of(units.Millimetres(300), units.Millimetres(1)), Time: measure.Of(took, units.Seconds(0.3))}
	e := must(f.Effective())
	if math.Abs(e.Value().SquareMillimetres()-0.78*0.7) > 1e-9 {
		t.Errorf("effective area %v", e)
	}
	q := must(carburation.FlowAt(e, measure.Exact(units.Metres(0.5))))
	if want := 0.78 * 0.7e-6 * math.Sqrt(2*9.80665*0.5); math.Abs(q.Value().CubicMetresPerSecond()/want-1) > 1e-9 || !(q.U() > 0) {
		t.Errorf("flow %v", q)
	}
	if _, err := (carburation.FallingHead{}).Effective(); len(fault.Faults(err)) != 4 {
		t.Errorf("faults of an empty test: %v", err)
	}
}

func TestEmulsion(t *testing.T) {
	e := carburation.Emulsion{Jet: units.SquareMillimetres(0.8), Outlet: units.SquareMillimetres(2.5), Head: units.Millimetres(15), Rise: units.Millimetres(5),
		Air: units.KilogramsPerCubicMetre(1.2), Fuel: units.KilogramsPerCubicMetre(745), Ambient: units.Bars(1.013)}
	// without a bleed it is two orifices in series over the lip
	d := must(e.Draw(units.Kilopascals(3)))
	ca := 1 / math.Sqrt(1/(0.8e-6*0.8e-6)+1/(2.5e-6*2.5e-6))
	want := ca * math.Sqrt(2*745*(3000-745*9.80665*0.005+745*9.80665*0.015))
	if math.Abs(d.Fuel.KilogramsPerSecond()/want-1) > 1e-9 || math.Abs(d.Braked-1) > 1e-12 {
		t.Errorf("series %v, want %v", d.Fuel.KilogramsPerSecond(), want)
	}
	// a bleed brakes, a larger one more, and more at higher suction
	last := 1.0
	for _, b := range []float64{0.1, 0.3, 0.8} {
		e.Bleed = units.SquareMillimetres(b)
		d := must(e.Draw(units.Kilopascals(3)))
		if !(d.Braked < last && d.Bled > 0) {
			t.Errorf("bleed %v mm² brakes to %v, after %v", b, d.Braked, last)
		}
		last = d.Braked
		more := must(e.Draw(units.Kilopascals(10)))
		if !(more.Fuel > d.Fuel && more.Density < d.Density) {
			t.Errorf("bleed %v mm²: %+v then %+v", b, d, more)
		}
	}
}
