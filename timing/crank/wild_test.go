package crank_test

import (
	"math"
	"reflect"
	"testing"

	"example.com/benchbook/timing/crank"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
	"pgregory.net/rapid"
)

// Nothing a caller passes causes a panic or a NaN.
func TestWildFigures(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		mm := func(name string) units.Length { return units.Millimetres(wild(t, name)) }
		s := crank.Slider{Stroke: mm("stroke"), Throw: mm("throw"), Rod: mm("rod"), Offset: mm("offset")}
		p := units.After(units.TDC, units.CrankDegrees(wild(t, "at")))
		w := rpm(wild(t, "speed"))
		x, err := s.Travel(p)
		finite(t, "travel", err, x)
		y, err := s.Positions(mm("travel"))
		finite(t, "positions", err, y)
		m, err := s.Motion(p, w)
		finite(t, "motion", err, m)
		m, err = s.TwoTermMotion(p, w)
		finite(t, "two terms", err, m)
		g, err := s.GreatestSpeed(w)
		finite(t, "greatest speed", err, g)
		v, err := s.MeanSpeed(w)
		finite(t, "mean speed", err, v)
		d, err := s.DeadCentres()
		finite(t, "dead centres", err, d)
		f, err := s.Forces(p, units.Newtons(wild(t, "force")))
		finite(t, "forces", err, f)
		u, err := s.TopDoubt(mm("resolution"))
		finite(t, "top", err, u)
		u, err = crank.EccentricDoubt(mm("off"), mm("pointer"))
		finite(t, "eccentric", err, u)
		c := crank.Cylinder{Bore: mm("bore"), Slider: s, Clearance: units.CubicCentimetres(wild(t, "clearance"))}
		r, err := c.CompressionRatio()
		finite(t, "ratio", err, r)
		vol, err := c.VolumeAt(p)
		finite(t, "volume", err, vol)
		with, err := c.WithRatio(units.Value(wild(t, "ratio")))
		finite(t, "with ratio", err, with)
		q, err := c.TrappedAt(units.After(units.BDC, units.CrankDegrees(wild(t, "ivc"))))
		finite(t, "trapped", err, q)
		k, err := c.Cranking(units.After(units.BDC, units.CrankDegrees(wild(t, "ivc"))), crank.CrankingOptions{
			Ambient: units.Bars(wild(t, "ambient")), Air: units.Kelvins(wild(t, "air")),
			Leak: measure.Interval[units.Area]{High: units.SquareMillimetres(wild(t, "leak"))},
		})
		finite(t, "cranking", err, k)
		pr, err := crank.CompressedPressure(units.Bars(wild(t, "p")), units.Value(wild(t, "r")), wild(t, "n"))
		finite(t, "pressure", err, pr)
		ra, err := crank.RatioOfTwoPressures(units.Bars(wild(t, "p")), wild(t, "f1"), units.Bars(wild(t, "q")), wild(t, "f2"), wild(t, "n"))
		finite(t, "two pressures", err, ra)
		tdc, err := crank.FindTDC(crank.StopReadings{
			Before: measure.At(p, units.CrankDegrees(wild(t, "u"))), After: measure.At(units.After(units.TDC, units.CrankDegrees(wild(t, "after"))), 1), Slider: s,
		})
		finite(t, "tdc", err, tdc)
	})
}

// wild are figures no caller should pass, among some that one might.
func wild(t *rapid.T, name string) float64 {
	return rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, -1, 1e-300, 1e300, -1e300, 5e-324, 0.2, 1, 3, 8, 15, 20, 40, 60, 89, 150, 400}).Draw(t, name)
}

// finite fails on a result given without an error that holds a figure that is not a
// number.
func finite(t *rapid.T, what string, err error, results ...any) {
	if err != nil {
		for _, f := range fault.Faults(err) {
			if f.Code == "" || f.Rule == "" {
				t.Fatalf("%s: a fault without code or rule: %+v", what, f)
			}
		}
		return
	}
	var walk func(v reflect.Value, path string)
	walk = func(v reflect.Value, path string) {
		switch v.Kind() {
		case reflect.Float64:
			if x := v.Float(); x-x != 0 {
				t.Fatalf("%s: %s is %g", what, path, x)
			}
		case reflect.Struct:
			for i := range v.NumField() {
				walk(v.Field(i), path+"."+v.Type().Field(i).Name)
			}
		case reflect.Slice, reflect.Array:
			for i := range v.Len() {
				walk(v.Index(i), path+"[]")
			}
		case reflect.Pointer, reflect.Interface:
			if !v.IsNil() && v.Kind() == reflect.Interface {
				walk(v.Elem(), path)
			}
		}
	}
	for _, r := range results {
		walk(reflect.ValueOf(r), what)
	}
}
