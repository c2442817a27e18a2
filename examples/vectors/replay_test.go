package main

import (
	"encoding"
	"encoding/json"
	"fmt"
	"maps"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"example.com/benchbook/transmission/drive"
	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// Each case is asked again with nothing but what the committed file tells, read
// by rules that know only the types of the arguments: the answer is the file's.
// So the file holds all that a front end needs to ask the same.
func TestTheFileAloneIsEnoughToAsk(t *testing.T) {
	now, err := answers()
	if err != nil {
		t.Fatal(err)
	}
	byID := map[string]Case{}
	for _, c := range read(t).Cases {
		byID[c.ID] = c
	}
	for i, a := range now.asked {
		if testing.Short() && i%10 != 0 {
			continue // asking all twice takes long where the processor is a pretended one
		}
		c, ok := byID[a.id]
		if !ok {
			t.Errorf("%s is not in the file: write it anew", a.id)
			continue
		}
		got, err := a.again(c.Inputs)
		if err != nil {
			t.Errorf("%s: %v", a.id, err)
			continue
		}
		sameNames(t, a.id, got, c.Expected)
		for name, f := range c.Expected {
			if !agrees(got[name], f) {
				t.Errorf("%s asked from the file: %s is %s, the file has %s", a.id, name, show(got[name]), show(f))
			}
		}
	}
}

// again asks with the inputs of the file.
func (a asked) again(from map[string]Figure) (map[string]Figure, error) {
	var r row
	for j, name := range a.args {
		v, err := fromFile(from, name, a.types[j])
		if err != nil {
			return nil, err
		}
		r = append(r, v)
	}
	c := Case{Expected: map[string]Figure{}}
	if o := a.answer(r); o.err != nil {
		c.Expected["fault"] = Figure{Text: codes(o.err)}
	} else if err := flatten(c.Expected, "", o.result, answered); err != nil {
		return nil, err
	}
	a.finish(&c)
	return c.Expected, nil
}

// The replay reads the inputs: another rod gives another travel.
func TestAWrongInputIsNoticed(t *testing.T) {
	now, err := answers()
	if err != nil {
		t.Fatal(err)
	}
	for _, a := range now.asked {
		if a.name != "timing/crank.Slider.Travel" {
			continue
		}
		for _, c := range now.file.Cases {
			if c.ID != a.id {
				continue
			}
			inputs := maps.Clone(c.Inputs)
			rod, other := inputs["slider.rod"], 150.0
			rod.Value = &other
			inputs["slider.rod"] = rod
			got, err := a.again(inputs)
			if err != nil || agrees(got["answer"], c.Expected["answer"]) {
				t.Errorf("%s: a rod of 150 mm gives %s, %v", a.id, show(got["answer"]), err)
			}
		}
		return
	}
	t.Error("nobody asks for the travel of a piston")
}

// fromFile reads the argument at a path of the inputs.
func fromFile(from map[string]Figure, path string, t reflect.Type) (any, error) {
	if t == nil {
		return nil, nil
	}
	v := reflect.New(t).Elem()
	err := fill(from, path, v)
	return v.Interface(), err
}

// readings reads those types that have no way back of their own.
var readings = func() map[reflect.Type]func(Figure) (any, error) {
	m := map[reflect.Type]func(Figure) (any, error){
		reflect.TypeFor[measure.Position](): func(f Figure) (any, error) {
			datum, ok := strings.CutPrefix(f.Unit, "° crank after ")
			if !ok || f.Value == nil {
				return nil, fmt.Errorf("%s is no position", show(f))
			}
			p, err := units.ParsePosition(strconv.FormatFloat(*f.Value, 'f', -1, 64) + " A" + datum)
			if err != nil || f.U == nil {
				return measure.At(p, 0), err
			}
			return measure.At(p, units.CrankDegrees(*f.U)), nil
		},
	}
	readBack[units.Length](m)
	readBack[units.Area](m)
	readBack[units.Volume](m)
	readBack[units.Angle](m)
	readBack[units.CrankAngle](m)
	readBack[units.CamAngle](m)
	readBack[units.Mass](m)
	readBack[units.Force](m)
	readBack[units.Torque](m)
	readBack[units.Pressure](m)
	readBack[units.SpringRate](m)
	readBack[units.Speed](m)
	readBack[units.RotationalSpeed](m)
	readBack[units.Power](m)
	readBack[units.Temperature](m)
	readBack[units.Time](m)
	readBack[units.VolumeFlow](m)
	readBack[units.Ratio](m)
	return m
}()

func readBack[Q units.Quantity](m map[reflect.Type]func(Figure) (any, error)) {
	m[reflect.TypeFor[measure.Reading[Q]]()] = func(f Figure) (any, error) {
		if f.Value == nil {
			return nil, fmt.Errorf("%s is no reading", show(f))
		}
		q, err := quantity[Q](*f.Value, f.Unit)
		if err != nil || f.U == nil {
			return measure.Exact(q), err
		}
		zero, err := quantity[Q](0, f.Unit)
		if err != nil {
			return nil, err
		}
		u, err := quantity[Q](*f.U, f.Unit)
		return measure.Of(q, u-zero), err
	}
}

func quantity[Q units.Quantity](x float64, unit string) (Q, error) {
	if unit == "1" {
		unit = ""
	}
	return units.Parse[Q](strings.TrimSpace(strconv.FormatFloat(x, 'g', -1, 64) + " " + unit))
}

// others reads those that are written as what they are made of.
func others(from map[string]Figure, path string, v reflect.Value) (bool, error) {
	var err error
	switch p := v.Addr().Interface().(type) {
	case *drive.Ratio:
		var made struct{ Num, Den int64 }
		if below(from, path) {
			if err = fill(from, path, reflect.ValueOf(&made).Elem()); err == nil {
				*p, err = drive.NewRatio(made.Num, made.Den)
			}
		}
	case *drive.Box:
		var gears []drive.Gear
		if below(from, path) {
			if err = fill(from, path, reflect.ValueOf(&gears).Elem()); err == nil {
				*p, err = drive.NewBox(gears...)
			}
		}
	case *drive.Curve:
		var points []drive.PowerPoint
		if err = fill(from, path, reflect.ValueOf(&points).Elem()); err == nil {
			*p, err = drive.NewCurve(points...)
		}
	default:
		return false, nil
	}
	return true, err
}

// fill reads what lies at and below a path into v.
func fill(from map[string]Figure, path string, v reflect.Value) error {
	f, here := from[path]
	t := v.Type()
	if here && f.Text == untold && f.Value == nil && f.Values == nil {
		return nil
	}
	if read := readings[t]; read != nil {
		if !here {
			return nil
		}
		x, err := read(f)
		if err == nil {
			v.Set(reflect.ValueOf(x))
		}
		return err
	}
	if done, err := others(from, path, v); done || err != nil {
		return err
	}
	if !here && !below(from, path) && t.Kind() != reflect.Struct {
		return nil
	}
	if p, ok := v.Addr().Interface().(json.Unmarshaler); ok && here {
		if f.Unit == "1" {
			f.Unit = ""
		}
		if f.Value == nil {
			return fmt.Errorf("%s: %s has no value", path, show(f))
		}
		// The value counts, not the words beside it.
		raw, err := json.Marshal(strings.TrimSpace(strconv.FormatFloat(*f.Value, 'g', -1, 64) + " " + f.Unit))
		if err != nil {
			return err
		}
		return p.UnmarshalJSON(raw)
	}
	if p, ok := v.Addr().Interface().(encoding.TextUnmarshaler); ok && here {
		return p.UnmarshalText([]byte(f.Text))
	}
	if _, ok := v.Interface().(encoding.TextMarshaler); ok && here && (v.CanInt() || v.CanUint()) {
		for i := range 256 {
			if v.CanUint() {
				v.SetUint(uint64(i))
			} else {
				v.SetInt(int64(i - 128))
			}
			m := v.Interface().(encoding.TextMarshaler)
			if text, err := m.MarshalText(); err == nil && string(text) == f.Text {
				return nil
			}
		}
		return fmt.Errorf("%s: %q names nothing of %v", path, f.Text, t)
	}
	switch t.Kind() {
	case reflect.String:
		v.SetString(f.Text)
	case reflect.Bool:
		v.SetBool(f.Text == "true")
	case reflect.Float64, reflect.Int, reflect.Int64, reflect.Uint8, reflect.Uint64, reflect.Int8:
		if f.Value == nil {
			return fmt.Errorf("%s: %s is no number", path, show(f))
		}
		v.Set(reflect.ValueOf(*f.Value).Convert(t))
	case reflect.Struct:
		for i := range t.NumField() {
			field := t.Field(i)
			name, _, _ := strings.Cut(field.Tag.Get("json"), ",")
			if !field.IsExported() || name == "-" {
				continue
			}
			below := path
			if name != "" || !field.Anonymous {
				if name == "" {
					name = field.Name
				}
				below = join(path, snake(name))
			}
			if err := fill(from, below, v.Field(i)); err != nil {
				return err
			}
		}
	case reflect.Pointer:
		v.Set(reflect.New(t.Elem()))
		return fill(from, path, v.Elem())
	case reflect.Slice:
		return fillList(from, path, v)
	case reflect.Array:
		for i, x := range f.Values {
			v.Index(i).Set(reflect.ValueOf(x).Convert(t.Elem()))
		}
	case reflect.Map:
		v.Set(reflect.MakeMap(t))
		for name := range from {
			if key, ok := strings.CutPrefix(name, path+"."); ok {
				if t.Elem().Kind() == reflect.Struct && readings[t.Elem()] == nil {
					key, _, _ = strings.Cut(key, ".")
					name = join(path, key)
				}
				x := reflect.New(t.Elem()).Elem()
				if err := fill(from, name, x); err != nil {
					return err
				}
				v.SetMapIndex(reflect.ValueOf(key).Convert(t.Key()), x)
			}
		}
	default:
		return fmt.Errorf("%s: a %v cannot be read", path, t)
	}
	return nil
}

func below(from map[string]Figure, path string) bool {
	for name := range from {
		if strings.HasPrefix(name, path+".") {
			return true
		}
	}
	return false
}

func fillList(from map[string]Figure, path string, v reflect.Value) error {
	f, here := from[path]
	switch {
	case here && f.Values != nil:
		for _, x := range f.Values {
			v.Set(reflect.Append(v, reflect.ValueOf(x).Convert(v.Type().Elem())))
		}
	case here:
		for _, word := range strings.Split(f.Text, ", ") {
			x := reflect.New(v.Type().Elem()).Elem()
			if err := fill(map[string]Figure{"": {Text: word}}, "", x); err != nil {
				return err
			}
			v.Set(reflect.Append(v, x))
		}
	default:
		n := 0
		for name := range from {
			if rest, ok := strings.CutPrefix(name, path+"."); ok {
				number, _, _ := strings.Cut(rest, ".")
				if i, err := strconv.Atoi(number); err == nil {
					n = max(n, i+1)
				}
			}
		}
		for i := range n {
			x := reflect.New(v.Type().Elem()).Elem()
			if err := fill(from, join(path, strconv.Itoa(i)), x); err != nil {
				return err
			}
			v.Set(reflect.Append(v, x))
		}
	}
	return nil
}
