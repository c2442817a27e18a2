package main

import (
	"fmt"
	"reflect"
	"runtime"
	"slices"
	"strings"

	"example.com/benchbook/units/fault"
)

// module is what the names of functions in the file leave out.
const module = "example.com/benchbook/"

// row is the arguments of one call, in order; a receiver comes first.
type row []any

// recipe is an argument that has no form of its own in the file: the file tells
// what it is made of, and the note how.
type recipe interface {
	make() (any, error)
	note() string
}

// asking is one function and how its answers are written down.
type asking struct {
	fn      reflect.Value
	name    string
	args    []string
	results []string
	kept    []string        // paths of the answer to write; all if empty
	hits    map[string]bool // of those paths, which some answer has
	rel     float64         // wider tolerance, if not 0
	note    string
	seen    func(any) any // what is written of the first result
	types   []reflect.Type
}

// asked is one case and how to ask it again.
type asked struct {
	*asking
	id string
}

// manner says how the answers of a function are written down.
type manner func(*asking)

// rel widens the tolerance, for iterations whose steps another program need not take.
func rel(x float64) manner { return func(a *asking) { a.rel = x } }

// keep writes only these parts of a long answer, and what lies below them.
func keep(paths ...string) manner { return func(a *asking) { a.kept = paths } }

// note tells the reader of the file what to know.
func noted(text string) manner { return func(a *asking) { a.note = text } }

// seen writes f of the result where the result itself is a thing to work with.
func seen[T any](f func(T) any) manner {
	return func(a *asking) { a.seen = func(v any) any { return f(v.(T)) } }
}

// ask calls fn once for each row, and notes what it was given and what it
// answered. The names are those of the arguments, and after ">" of the results
// where there is more than one. If fn can refuse and refused none of the rows,
// it is asked once more with nothing given.
func (b *book) ask(fn any, names string, rows []row, how ...manner) {
	a := &asking{fn: reflect.ValueOf(fn), name: nameOf(fn), hits: b.hits[nameOf(fn)]}
	if a.hits == nil {
		a.hits = map[string]bool{}
		b.hits[a.name] = a.hits
	}
	given, answer, _ := strings.Cut(names, ">")
	a.args, a.results = fields(given), fields(answer)
	for _, h := range how {
		h(a)
	}
	for _, k := range a.kept {
		if !a.hits[k] {
			a.hits[k] = false // to be found in some answer
		}
	}
	t := a.fn.Type()
	results := t.NumOut()
	if refusing(t) {
		results--
	}
	if len(a.args) != t.NumIn() || len(a.results) != results && (results > 1 || len(a.results) > 0) {
		b.keep(a.name, fmt.Errorf("%d names for %d arguments, %d for %d results", len(a.args), t.NumIn(), len(a.results), results))
		return
	}
	refused := false
	for _, r := range rows {
		refused = b.once(a, r) || refused
	}
	if refusing(t) && !refused && len(rows) > 0 {
		b.once(a, nothing(t, rows[0]))
	}
}

// once asks one row, and reports whether it was refused.
func (b *book) once(a *asking, r row) bool {
	a, was := &asking{}, a
	*a = *was
	if len(r) != len(a.args) {
		b.keep(a.name, fmt.Errorf("a row of %d for %d arguments", len(r), len(a.args)))
		return false
	}
	args := in{}
	for i, v := range r {
		v = suited(v, a.fn.Type().In(i))
		a.types = append(a.types, reflect.TypeOf(v))
		r[i], args[a.args[i]] = v, v
	}
	o := a.answer(r)
	b.add(a.name, args, o)
	c := &b.cases[len(b.cases)-1]
	c.Note = notes(a.note, r)
	a.finish(c)
	if len(c.Expected) == 0 {
		b.keep(c.ID, fmt.Errorf("nothing of the answer is kept"))
	}
	b.asked = append(b.asked, asked{a, c.ID})
	return o.err != nil
}

// finish leaves of an answer what is kept of it.
func (a *asking) finish(c *Case) {
	for name, f := range c.Expected {
		i := slices.IndexFunc(a.kept, func(k string) bool { return name == k || strings.HasPrefix(name, k+".") })
		if i >= 0 {
			a.hits[a.kept[i]] = true
		}
		if i < 0 && len(a.kept) > 0 && name != "fault" && name != "cautions" {
			delete(c.Expected, name)
		} else if f.Tol != nil && f.Tol.Rel > 0 && a.rel > 0 {
			f.Tol.Rel = a.rel
		}
	}
}

// answer calls the function.
func (a *asking) answer(r row) outcome {
	t := a.fn.Type()
	var call []reflect.Value
	for i, v := range r {
		if m, ok := v.(recipe); ok {
			made, err := m.make()
			if err != nil {
				return outcome{nil, fault.Under(a.args[i], err)}
			}
			v = made
		}
		x := reflect.Zero(t.In(i))
		if v != nil {
			x = reflect.ValueOf(v)
		}
		if t.In(i).Kind() == reflect.Pointer && x.Kind() != reflect.Pointer {
			p := reflect.New(x.Type())
			p.Elem().Set(x)
			x = p
		}
		call = append(call, x)
	}
	var out []reflect.Value
	if t.IsVariadic() {
		out = a.fn.CallSlice(call)
	} else {
		out = a.fn.Call(call)
	}
	if refusing(t) {
		last := out[len(out)-1]
		out = out[:len(out)-1]
		if err, _ := last.Interface().(error); err != nil {
			return outcome{nil, err}
		}
	}
	if len(out) == 0 {
		return outcome{true, nil} // it finds nothing wrong
	}
	first := told(out[0])
	if a.seen != nil {
		first = a.seen(out[0].Interface())
	}
	if len(out) == 1 && len(a.results) == 0 {
		return outcome{first, nil}
	}
	all := map[string]any{}
	for i, x := range out {
		if a.results[i] == "_" {
			continue
		}
		all[a.results[i]] = told(x)
		if i == 0 {
			all[a.results[i]] = first
		}
	}
	return outcome{all, nil}
}

// told returns what is written of a result: a sequence as a list.
func told(x reflect.Value) any {
	if x.Kind() == reflect.Func && x.Type().CanSeq() {
		list := []any{}
		for v := range x.Seq() {
			list = append(list, v.Interface())
		}
		return list
	}
	return x.Interface()
}

// nothing returns a row in which only what is made of recipes is given.
func nothing(t reflect.Type, like row) row {
	r := make(row, len(like))
	for i, v := range like {
		if _, ok := v.(recipe); ok {
			r[i] = v
		} else {
			r[i] = reflect.Zero(reflect.TypeOf(v)).Interface()
		}
	}
	return r
}

// suited turns a count into a number where the function wants one, and nothing
// into the zero of what it wants.
func suited(v any, t reflect.Type) any {
	if v == nil {
		if t.Kind() == reflect.Interface {
			return nil
		}
		return reflect.Zero(t).Interface()
	}
	x := reflect.ValueOf(v)
	if x.Type() != t && x.Kind() == reflect.Int && (t == reflect.TypeFor[float64]() || t == reflect.TypeFor[int64]()) {
		return x.Convert(t).Interface()
	}
	if x.Kind() == reflect.String && x.Type() == reflect.TypeFor[string]() && t.Kind() == reflect.String && t != x.Type() {
		return x.Convert(t).Interface()
	}
	return v
}

func refusing(t reflect.Type) bool {
	return t.NumOut() > 0 && t.Out(t.NumOut()-1) == reflect.TypeFor[error]()
}

// nameOf returns package, type and name of a function: "timing/crank.Slider.Travel".
// Where it begins with a call that was inlined, its own name comes a few steps on.
func nameOf(fn any) string {
	entry := reflect.ValueOf(fn).Pointer()
	name := runtime.FuncForPC(entry).Name()
	for step := uintptr(1); step < 4096 && runtime.FuncForPC(entry+step) != nil && runtime.FuncForPC(entry+step).Entry() == entry; step++ {
		if frame, _ := runtime.CallersFrames([]uintptr{entry + step}).Next(); frame.Func != nil {
			name = frame.Function
			break
		}
	}
	name = strings.TrimPrefix(name, module)
	return strings.NewReplacer("[...]", "", "(*", "", ")", "").Replace(name)
}

func fields(s string) []string {
	return strings.FieldsFunc(s, func(r rune) bool { return r == ' ' || r == ',' })
}

// each makes a row of every one of some values.
func each[T any](values ...T) []row {
	var out []row
	for _, v := range values {
		out = append(out, row{v})
	}
	return out
}

// cross joins every row of one list with every row of the next.
func cross(lists ...[]row) []row {
	out := []row{{}}
	for _, list := range lists {
		var next []row
		for _, a := range out {
			for _, b := range list {
				next = append(next, slices.Concat(a, b))
			}
		}
		out = next
	}
	return out
}
