package crank_test

import (
	"testing"

	"example.com/benchbook/timing/crank"
	"example.com/benchbook/timing/internal/wild"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
	"pgregory.net/rapid"
)

// Nothing a caller passes causes a panic or a NaN.
func TestWildFigures(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := func(name string) units.Length { return units.Millimetres(wild.Figure(t, name)) }
		s := crank.Slider{Stroke: mm("stroke"), Throw: mm("throw"), Rod: mm("rod"), Offset: mm("offset")}
		p := units.After(units.TDC, units.CrankDegrees(wild.Figure(t, "at")))
		w := rpm(wild.Figure(t, "speed"))
		x, err := s.Travel(p)
		wild.Finite(t, "travel", err, x)
		y, err := s.Positions(mm("travel"))
		wild.Finite(t, "positions", err, y)
		m, err := s.Motion(p, w)
		wild.Finite(t, "motion", err, m)
		m, err = s.TwoTermMotion(p, w)
		wild.Finite(t, "two terms", err, m)
		g, err := s.GreatestSpeed(w)
		wild.Finite(t, "greatest speed", err, g)
		v, err := s.MeanSpeed(w)
		wild.Finite(t, "mean speed", err, v)
		d, err := s.DeadCentres()
		wild.Finite(t, "dead centres", err, d)
		f, err := s.Forces(p, units.Newtons(wild.Figure(t, "force")))
		wild.Finite(t, "forces", err, f)
		u, err := s.TopDoubt(mm("resolution"))
		wild.Finite(t, "top", err, u)
		u, err = crank.EccentricDoubt(mm("off"), mm("pointer"))
		wild.Finite(t, "eccentric", err, u)
		c := crank.Cylinder{Bore: mm("bore"), Slider: s, Clearance: units.CubicCentimetres(wild.Figure(t, "clearance"))}
		r, err := c.CompressionRatio()
		wild.Finite(t, "ratio", err, r)
		vol, err := c.VolumeAt(p)
		wild.Finite(t, "volume", err, vol)
		with, err := c.WithRatio(units.Value(wild.Figure(t, "ratio")))
		wild.Finite(t, "with ratio", err, with)
		q, err := c.TrappedAt(units.After(units.BDC, units.CrankDegrees(wild.Figure(t, "ivc"))))
		wild.Finite(t, "trapped", err, q)
		k, err := c.Cranking(units.After(units.BDC, units.CrankDegrees(wild.Figure(t, "ivc"))), crank.CrankingOptions{
			Ambient: units.Bars(wild.Figure(t, "ambient")), Air: units.Kelvins(wild.Figure(t, "air")),
			Leak: measure.Interval[units.Area]{High: units.SquareMillimetres(wild.Figure(t, "leak"))},
		})
		wild.Finite(t, "cranking", err, k)
		tester := crank.LeakTester{Orifice: mm("orifice"), Ambient: units.Bars(wild.Figure(t, "ambient"))}
		hole, err := tester.Hole(units.Bars(wild.Figure(t, "supply")), units.Bars(wild.Figure(t, "held")))
		wild.Finite(t, "hole", err, hole)
		holds, err := tester.Held(units.Bars(wild.Figure(t, "supply")), units.SquareMillimetres(wild.Figure(t, "hole")))
		wild.Finite(t, "held", err, holds)
		pr, err := crank.CompressedPressure(units.Bars(wild.Figure(t, "p")), units.Value(wild.Figure(t, "r")), wild.Figure(t, "n"))
		wild.Finite(t, "pressure", err, pr)
		ra, err := crank.RatioOfTwoPressures(units.Bars(wild.Figure(t, "p")), wild.Figure(t, "f1"), units.Bars(wild.Figure(t, "q")), wild.Figure(t, "f2"), wild.Figure(t, "n"))
		wild.Finite(t, "two pressures", err, ra)
		tdc, err := crank.FindTDC(crank.StopReadings{
			Before: measure.At(p, units.CrankDegrees(wild.Figure(t, "u"))), After: measure.At(units.After(units.TDC, units.CrankDegrees(wild.Figure(t, "after"))), 1), Slider: s,
		})
		wild.Finite(t, "tdc", err, tdc)
	})
}
