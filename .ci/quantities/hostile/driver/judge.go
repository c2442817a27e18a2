package driver

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"
)

type verdict struct {
	kind, what string
	refused    bool
}

var errorType = reflect.TypeFor[error]()

// judge looks through the results of one call. An error, or a last result of
// false, stands for "no answer", and what is beside it is not looked at.
func (s *sweep) judge(f Func, args, out []reflect.Value) verdict {
	if len(out) > 0 {
		last := out[len(out)-1]
		switch {
		case last.Type() == errorType && !last.IsNil():
			err := last.Interface().(error)
			if what := s.untyped(err); what != "" {
				return verdict{kind: "error", what: what, refused: true}
			}
			return verdict{refused: true}
		case last.Kind() == reflect.Bool && len(out) > 1 && !last.Bool():
			return verdict{refused: true}
		}
	}
	for i, v := range out {
		left := 20000
		path, _, bad := wild(v, 0, &left)
		if !bad || strings.Contains(path, textWith) && slices.ContainsFunc(args, func(a reflect.Value) bool { return speaks(a, path[strings.Index(path, textWith)+len(textWith):], 0) }) {
			continue
		}
		if carriesFault(v, 0) {
			return verdict{refused: true}
		}
		return verdict{kind: "not a number", what: fmt.Sprintf("result %d%s", i, path)}
	}
	for _, v := range out {
		if !v.CanInterface() {
			continue
		}
		k := v.Kind()
		if k == reflect.Pointer && !v.IsNil() {
			k = v.Elem().Kind()
		}
		if k != reflect.Struct || v.Type() == errorType {
			continue
		}
		if _, err := json.Marshal(v.Interface()); err != nil {
			var unsupported *json.UnsupportedTypeError
			if errors.As(err, &unsupported) {
				continue
			}
			if carriesFault(v, 0) {
				return verdict{refused: true}
			}
			text := err.Error()
			if i := strings.LastIndex(text, ": "); i >= 0 {
				text = text[i+2:]
			}
			return verdict{kind: "json", what: fmt.Sprintf("%v does not marshal: %s", v.Type(), tidy(text))}
		}
	}
	return verdict{}
}

// carriesFault reports whether v, or a part of it, is a value that says itself what
// is wrong with it, by a method Err: a reading made of what is no number.
func carriesFault(v reflect.Value, depth int) bool {
	if depth > 8 || !v.IsValid() {
		return false
	}
	if v.CanInterface() && (v.Kind() == reflect.Struct || v.Kind() == reflect.Pointer && !v.IsNil()) {
		if e, ok := v.Interface().(interface{ Err() error }); ok && e.Err() != nil {
			return true
		}
	}
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() && carriesFault(v.Field(i), depth+1) {
				return true
			}
		}
	case reflect.Slice, reflect.Array:
		for i := range min(v.Len(), 1000) {
			if carriesFault(v.Index(i), depth+1) {
				return true
			}
		}
	case reflect.Pointer, reflect.Interface:
		return !v.IsNil() && carriesFault(v.Elem(), depth+1)
	}
	return false
}

const textWith = " text with "

// speaks reports whether a text within v holds the word: then it is the caller's own.
func speaks(v reflect.Value, word string, depth int) bool {
	if depth > 12 || !v.IsValid() {
		return false
	}
	switch v.Kind() {
	case reflect.String:
		return strings.Contains(v.String(), word)
	case reflect.Struct:
		for i := range v.NumField() {
			if speaks(v.Field(i), word, depth+1) {
				return true
			}
		}
	case reflect.Slice, reflect.Array:
		if v.Kind() == reflect.Slice && v.Type().Elem().Kind() == reflect.Uint8 {
			return strings.Contains(string(v.Bytes()), word)
		}
		for i := range min(v.Len(), 1000) {
			if speaks(v.Index(i), word, depth+1) {
				return true
			}
		}
	case reflect.Map:
		for it := v.MapRange(); it.Next(); {
			if speaks(it.Key(), word, depth+1) || speaks(it.Value(), word, depth+1) {
				return true
			}
		}
	case reflect.Pointer, reflect.Interface:
		return !v.IsNil() && speaks(v.Elem(), word, depth+1)
	}
	return false
}

// wild returns the first figure that is not a number or is infinite in the
// exported part of v.
func wild(v reflect.Value, depth int, left *int) (path string, x float64, bad bool) {
	if *left--; *left < 0 || depth > 12 {
		return "", 0, false
	}
	switch v.Kind() {
	case reflect.Float64, reflect.Float32:
		x = v.Float()
		return "", x, math.IsNaN(x) || math.IsInf(x, 0)
	case reflect.Complex128:
		x = real(v.Complex()) + imag(v.Complex())
		return "", x, math.IsNaN(x) || math.IsInf(x, 0)
	case reflect.Struct:
		for i := range v.NumField() {
			f := v.Type().Field(i)
			if f.Name == "LogLikelihood" && f.Type.Kind() == reflect.Float64 && math.IsInf(v.Field(i).Float(), -1) {
				continue // documented: the readings rule the cause out
			}
			if f.IsExported() {
				if path, x, bad = wild(v.Field(i), depth+1, left); bad {
					return "." + f.Name + path, x, true
				}
			}
		}
	case reflect.Slice, reflect.Array:
		for i := range v.Len() {
			if path, x, bad = wild(v.Index(i), depth+1, left); bad {
				return "[]" + path, x, true
			}
		}
	case reflect.Map:
		for it := v.MapRange(); it.Next(); {
			if path, x, bad = wild(it.Value(), depth+1, left); bad {
				return "[]" + path, x, true
			}
		}
	case reflect.Pointer, reflect.Interface:
		if !v.IsNil() {
			return wild(v.Elem(), depth+1, left)
		}
	case reflect.String:
		// A figure that has become text is no better.
		for _, word := range []string{"NaN", "+Inf", "-Inf", "%!"} {
			if strings.Contains(v.String(), word) {
				return textWith + word, math.NaN(), true
			}
		}
	}
	return "", 0, false
}

// drained replaces an iterator by the first values it yields.
func drained(v reflect.Value) reflect.Value {
	if v.Kind() != reflect.Func || v.IsNil() {
		return v
	}
	t := v.Type()
	if t.NumIn() != 1 || t.NumOut() != 0 || t.In(0).Kind() != reflect.Func {
		return v
	}
	yield := t.In(0)
	if yield.NumOut() != 1 || yield.Out(0).Kind() != reflect.Bool {
		return v
	}
	got := []any{}
	v.Call([]reflect.Value{reflect.MakeFunc(yield, func(args []reflect.Value) []reflect.Value {
		for _, a := range args {
			got = append(got, a.Interface())
		}
		return []reflect.Value{reflect.ValueOf(len(got) < 5000)}
	})})
	return reflect.ValueOf(got)
}
