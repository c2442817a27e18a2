package driver

import (
	"errors"
	"math/rand/v2"
	"reflect"
	"slices"
)

// pool holds values by type: good ones from the Examples, and spoilt ones that
// constructors made of bad arguments. The latter are all that can be done to a
// type whose fields are not exported.
type pool struct {
	good, spoilt map[reflect.Type][]reflect.Value
	types        []reflect.Type // in the order they came
}

func newPool() *pool {
	return &pool{good: map[reflect.Type][]reflect.Value{}, spoilt: map[reflect.Type][]reflect.Value{}}
}

// harvest fills the pool from what was recorded.
func (s *sweep) harvest() {
	mutex.Lock()
	defer mutex.Unlock()
	for _, key := range order {
		for _, args := range seen[key] {
			for _, a := range args {
				if a != nil {
					s.pool.add(reflect.ValueOf(a), false)
				}
			}
		}
	}
}

const goodOfType, spoiltOfType = 8, 16

func (p *pool) add(v reflect.Value, spoilt bool) { p.put(v, spoilt, 0) }

func (p *pool) put(v reflect.Value, spoilt bool, depth int) {
	if !v.IsValid() || !v.CanInterface() || depth > 6 {
		return
	}
	t := v.Type()
	switch t.Kind() {
	case reflect.Interface, reflect.Pointer:
		if v.IsNil() {
			return
		}
	case reflect.Float64, reflect.Int, reflect.String, reflect.Bool:
		if t.PkgPath() == "" {
			return
		}
	}
	if t.Kind() == reflect.Interface {
		p.put(v.Elem(), spoilt, depth)
		return
	}
	to, most := p.good, goodOfType
	if spoilt {
		to, most = p.spoilt, spoiltOfType
	}
	if len(to[t]) < most {
		if len(p.good[t])+len(p.spoilt[t]) == 0 {
			p.types = append(p.types, t)
		}
		to[t] = append(to[t], v)
	} else if spoilt {
		return
	}
	switch t.Kind() {
	case reflect.Struct:
		for i := range t.NumField() {
			if t.Field(i).IsExported() {
				p.put(v.Field(i), spoilt, depth+1)
			}
		}
	case reflect.Slice, reflect.Array:
		for i := range min(2, v.Len()) {
			p.put(v.Index(i), spoilt, depth+1)
		}
	case reflect.Pointer:
		p.put(v.Elem(), spoilt, depth+1)
	}
}

// pick returns a value of type t: a good one if there is any, else one made up.
func (p *pool) pick(t reflect.Type, r *rand.Rand, depth int) reflect.Value {
	if g := p.good[t]; len(g) > 0 {
		return g[r.IntN(len(g))]
	}
	v := reflect.New(t).Elem()
	if depth > 5 {
		return v
	}
	switch t.Kind() {
	case reflect.Float64, reflect.Float32:
		v.SetFloat([]float64{1.5, 0.3, 12, 40}[r.IntN(4)])
	case reflect.Int, reflect.Int64, reflect.Int32, reflect.Int16, reflect.Int8:
		v.SetInt([]int64{1, 2, 3, 5}[r.IntN(4)])
	case reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64, reflect.Uint:
		v.SetUint(1)
	case reflect.String:
		v.SetString("x")
	case reflect.Bool:
		v.SetBool(r.IntN(2) == 0)
	case reflect.Struct:
		for i := range t.NumField() {
			if t.Field(i).IsExported() {
				v.Field(i).Set(p.pick(t.Field(i).Type, r, depth+1))
			}
		}
	case reflect.Slice:
		v.Set(reflect.MakeSlice(t, 2, 2))
		for i := range 2 {
			v.Index(i).Set(p.pick(t.Elem(), r, depth+1))
		}
	case reflect.Array:
		for i := range v.Len() {
			v.Index(i).Set(p.pick(t.Elem(), r, depth+1))
		}
	case reflect.Pointer:
		q := reflect.New(t.Elem())
		q.Elem().Set(p.pick(t.Elem(), r, depth+1))
		v.Set(q)
	case reflect.Map:
		v.Set(reflect.MakeMap(t))
		v.SetMapIndex(p.pick(t.Key(), r, depth+1), p.pick(t.Elem(), r, depth+1))
	case reflect.Func:
		v.Set(steady(t, func(o reflect.Type) reflect.Value { return p.pick(o, r, depth+1) }))
	case reflect.Interface:
		if t == errorType {
			v.Set(reflect.ValueOf(errors.New("x")))
			break
		}
		for _, c := range p.types {
			if len(p.good[c]) > 0 && c.Implements(t) && t.NumMethod() > 0 {
				v.Set(p.good[c][0])
				break
			}
		}
		if v.IsNil() && t.NumMethod() == 0 {
			v.Set(reflect.ValueOf(1.5))
		}
	}
	return v
}

// steady is a function of type t that always returns what make gives it.
func steady(t reflect.Type, make func(reflect.Type) reflect.Value) reflect.Value {
	var out []reflect.Value
	for i := range t.NumOut() {
		o := reflect.New(t.Out(i)).Elem()
		if v := make(t.Out(i)); v.IsValid() && v.Type().AssignableTo(t.Out(i)) {
			o.Set(v)
		}
		out = append(out, o)
	}
	return reflect.MakeFunc(t, func([]reflect.Value) []reflect.Value { return slices.Clone(out) })
}
