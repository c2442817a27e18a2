package crank_test

import (
	"math"
	"testing"

	"example.com/benchbook/timing/crank"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// The compression stroke with a leak worked again in kilograms, by the textbook's
// nozzle: A p sqrt(k/(R T)) times (2/(k+1))^((k+1)/(2(k-1))) when choked, times
// M (1 + (k-1)/2 M^2)^(-(k+1)/(2(k-1))) for the Mach number M of the pressure ratio
// when not; small steps by the midpoint rule, volumes through VolumeAt. Steps a
// twentieth as long agree to 2e-5: what flows first grows as a square root, which no
// rule takes in its stride.
func TestCrankingByAnotherRoute(t *testing.T) {
	const k, gas, p0, t0 = 1.4, 287.05, 101325.0, 293.15
	const looks, steps = 120, 20 // the greatest is sought at 120 places, about a degree apart
	for _, c := range []struct {
		offset        units.Length
		index         float64
		leak, speed   float64 // mm², rev/min
		closes, ratio float64
	}{
		{0, 1.25, 1.5, 150, 60, 7.5},
		{7, 1.3, 0.4, 300, 50, 9},
		{-7, 1.2, 4, 250, 20, 6}, // leaks so much that the greatest pressure comes early
	} {
		cyl, err := crank.Cylinder{Bore: 78, Slider: crank.Slider{Throw: 41.5, Rod: 165, Offset: c.offset}}.WithRatio(units.Value(c.ratio))
		if err != nil {
			t.Fatal(err)
		}
		dc, _ := cyl.Slider.DeadCentres()
		from, to := c.closes*math.Pi/180, (360*units.CrankDegree - dc.Down).SI()
		hole, w := c.leak*1e-6, units.RevolutionsPerMinute(c.speed).SI()
		volume := func(th float64) float64 {
			v, err := cyl.VolumeAt(units.After(units.BDC, units.FromSI[units.CrankAngle](th)))
			if err != nil {
				t.Fatal(err)
			}
			return v.CubicMetres()
		}
		v0 := volume(from)
		all := p0 * v0 / (gas * t0)
		pressure := func(th, kg float64) float64 { return p0 * math.Pow(kg/all*v0/volume(th), c.index) }
		lose := func(th, kg float64) float64 { // kg for each radian
			p := pressure(th, kg)
			if p <= p0 {
				return 0
			}
			temperature := p * volume(th) / (kg * gas)
			mach := min(math.Sqrt(2/(k-1)*(math.Pow(p/p0, (k-1)/k)-1)), 1)
			return hole * p * math.Sqrt(k/(gas*temperature)) * mach * math.Pow(1+(k-1)/2*mach*mach, -(k+1)/(2*(k-1))) / w
		}
		kg, h := all, (to-from)/float64(looks*steps)
		most, lost, torque, before := p0, 0.0, 0.0, 0.0
		for i := range looks {
			th := from + float64(i*steps)*h
			for range steps {
				half := kg - h/2*lose(th, kg)
				kg -= h * lose(th+h/2, half)
				th += h
			}
			p := pressure(th, kg)
			if p > most {
				most, lost = p, 1-kg/all
			}
			// the torque is what the gas takes for each radian: (p - p0) dV/dth
			const d = 1e-4
			if tq := (p - p0) * (volume(th-d) - volume(th+d)) / (2 * d); tq > torque {
				torque, before = tq, to-th
			}
		}
		got, err := cyl.Cranking(units.After(units.BDC, units.CrankDegrees(c.closes)), crank.CrankingOptions{
			Index: measure.Between(units.Value(c.index), units.Value(c.index)),
			Leak:  measure.Between(units.SquareMillimetres(c.leak), units.SquareMillimetres(c.leak)),
			Speed: measure.Between(rpm(c.speed), rpm(c.speed)),
		})
		if err != nil {
			t.Fatal(err)
		}
		for _, g := range []struct {
			name      string
			got, want float64
		}{
			{"greatest pressure", got.Absolute.Low.SI(), most},
			{"above ambient", got.Gauge.Low.SI(), most - p0},
			{"lost", got.Lost.Low.Value(), lost},
			{"torque", got.Torque.Low.SI(), torque},
			{"hardest", got.Hardest.Low.SI(), before},
		} {
			if math.Abs(g.got-g.want) > 2e-5*g.want {
				t.Errorf("%+v: %s %.9g, by the other route %.9g", c, g.name, g.got, g.want)
			}
		}
	}
}
