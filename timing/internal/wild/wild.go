// Package wild is for the tests of the timing elements: figures that no caller
// should pass, and a look through what comes back for one that is no number. It
// holds nothing that a program calls.
package wild

import (
	"math"
	"reflect"

	"pgregory.net/rapid"

	"example.com/benchbook/units/fault"
)

// Figure draws a figure no caller should pass, or one that a caller might.
func Figure(t *rapid.T, name string) float64 {
	return rapid.SampledFrom([]float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, -1, 1e-300, 1e300, -1e300, 5e-324, 0.2, 1, 3, 8, 15, 20, 40, 60, 89, 150, 400}).Draw(t, name)
}

// Finite fails on a result given without an error that holds a figure that is not a
// number.
func Finite(t *rapid.T, what string, err error, results ...any) {
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
