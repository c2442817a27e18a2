package driver

import (
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"strings"
	"unicode/utf8"
)

// spoilt is one list of arguments and what is to be done to it.
type spoilt struct {
	base    []reflect.Value
	changes []change
}

type change struct {
	p    *place
	with replacement
}

// args makes the changes; one whose place an earlier one took away is left out.
func (c spoilt) args() []reflect.Value {
	args := c.base
	for _, ch := range c.changes {
		if a, ok := replaced(args, ch.p, ch.with.value()); ok {
			args = a
		}
	}
	return args
}

func (c spoilt) how() string {
	var list []string
	for _, ch := range c.changes {
		list = append(list, ch.p.text+" = "+ch.with.text)
	}
	return strings.Join(list, "; ")
}

// step is one step on the way to a place within a value.
type step struct {
	kind byte // f field, i index, p pointer, m map value, n interface
	n    int
	key  reflect.Value
}

// place is a part of the arguments that can be spoilt, and what with.
type place struct {
	arg  int
	path []step
	text string
	with []replacement
}

type replacement struct {
	v    reflect.Value
	make func() reflect.Value // for what is too large to keep
	text string
}

func (r replacement) value() reflect.Value {
	if r.make != nil {
		return r.make()
	}
	return r.v
}

// calls returns at most n argument lists: the good ones as they are, each place
// spoilt alone, then several at once.
func (s *sweep) calls(f Func, bases [][]reflect.Value, r *rand.Rand, n int) []spoilt {
	var out []spoilt
	var singles []spoilt
	var places [][]place
	for _, args := range bases {
		out = append(out, spoilt{base: args})
		var here []place
		for i, a := range args {
			w := walker{pool: s.pool, r: r, arg: i, top: a.Type(), receiver: f.Method && i == 0}
			w.walk(a, nil, fmt.Sprintf("%d", i), 0)
			here = append(here, w.places...)
		}
		places = append(places, here)
		for i := range here {
			for _, with := range here[i].with {
				singles = append(singles, spoilt{args, []change{{&here[i], with}}})
			}
		}
	}
	if len(singles) > n*2/3 {
		r.Shuffle(len(singles), func(i, j int) { singles[i], singles[j] = singles[j], singles[i] })
		singles = singles[:n*2/3]
	}
	out = append(out, singles...)
	for len(bases) > 0 && len(out) < n {
		b := r.IntN(len(bases))
		if len(places[b]) < 2 {
			if len(out) >= len(singles)+len(bases) {
				break
			}
			continue
		}
		c := spoilt{base: bases[b]}
		for range 2 + r.IntN(4) {
			p := &places[b][r.IntN(len(places[b]))]
			if len(p.with) == 0 {
				continue
			}
			c.changes = append(c.changes, change{p, p.with[r.IntN(len(p.with))]})
		}
		out = append(out, c)
	}
	return out
}

// replaced returns args with one place changed; nothing of args is written to.
func replaced(args []reflect.Value, p *place, with reflect.Value) (out []reflect.Value, ok bool) {
	out = make([]reflect.Value, len(args))
	copy(out, args)
	defer func() {
		if recover() != nil { // an earlier change has taken the place away
			out, ok = nil, false
		}
	}()
	out[p.arg] = set(args[p.arg], p.path, with)
	return out, true
}

func set(v reflect.Value, path []step, with reflect.Value) reflect.Value {
	if len(path) == 0 {
		c := reflect.New(v.Type()).Elem()
		c.Set(with)
		return c
	}
	s := path[0]
	c := reflect.New(v.Type()).Elem()
	switch s.kind {
	case 'f':
		c.Set(v)
		c.Field(s.n).Set(set(v.Field(s.n), path[1:], with))
	case 'i':
		if v.Kind() == reflect.Slice {
			c.Set(reflect.MakeSlice(v.Type(), v.Len(), v.Len()))
			reflect.Copy(c, v)
		} else {
			c.Set(v)
		}
		c.Index(s.n).Set(set(v.Index(s.n), path[1:], with))
	case 'p':
		q := reflect.New(v.Type().Elem())
		q.Elem().Set(set(v.Elem(), path[1:], with))
		c.Set(q)
	case 'm':
		c.Set(reflect.MakeMap(v.Type()))
		for it := v.MapRange(); it.Next(); {
			c.SetMapIndex(it.Key(), it.Value())
		}
		c.SetMapIndex(s.key, set(v.MapIndex(s.key), path[1:], with))
	case 'n':
		c.Set(set(v.Elem(), path[1:], with))
	}
	return c
}

type walker struct {
	pool     *pool
	r        *rand.Rand
	arg      int
	top      reflect.Type
	receiver bool
	places   []place
}

func (w *walker) walk(v reflect.Value, path []step, text string, depth int) {
	if depth > 9 || len(w.places) > 3000 {
		return
	}
	t := v.Type()
	here := place{arg: w.arg, path: path, text: text}
	offer := func(x reflect.Value, text string) { here.with = append(here.with, replacement{v: x, text: text}) }
	of := func(x any, text string) { offer(reflect.ValueOf(x).Convert(t), text) }
	down := func(s step, v reflect.Value, text string) {
		w.walk(v, append(path[:len(path):len(path)], s), text, depth+1)
	}
	switch t.Kind() {
	case reflect.Float64, reflect.Float32:
		for _, x := range figures(v.Float()) {
			of(x, fmt.Sprint(x))
		}
	case reflect.Int, reflect.Int64, reflect.Int32, reflect.Int16, reflect.Int8:
		for _, x := range []int64{0, -1, 1, 2, 3, 7, 64, 1000, 100000, -1000, math.MaxInt32, math.MaxInt64, math.MinInt64, v.Int() + 1, -v.Int()} {
			of(x, fmt.Sprint(x))
		}
	case reflect.Uint, reflect.Uint64, reflect.Uint32, reflect.Uint16, reflect.Uint8:
		for _, x := range []uint64{0, 1, 2, 5, 17, 200, math.MaxUint32, math.MaxUint64} {
			of(x, fmt.Sprint(x))
		}
	case reflect.String:
		for _, x := range texts(v.String(), w.r) {
			of(x, short(x))
		}
	case reflect.Bool:
		of(!v.Bool(), fmt.Sprint(!v.Bool()))
	case reflect.Slice:
		offer(reflect.Zero(t), "nil")
		offer(reflect.MakeSlice(t, 0, 0), "empty")
		if n := v.Len(); n > 0 {
			offer(v.Slice(0, 1), "its first alone")
			offer(v.Slice(0, n/2), "its first half")
			offer(v.Slice(1, n), "without its first")
			offer(repeated(v, 2*n), "twice over")
			here.with = append(here.with, replacement{make: func() reflect.Value { return repeated(v, enormous(t)) }, text: fmt.Sprint(enormous(t), " long")})
			same := reflect.MakeSlice(t, n, n)
			for i := range n {
				same.Index(i).Set(v.Index(0))
			}
			offer(same, "all like its first")
			offer(reflect.MakeSlice(t, n, n), "all zero")
			back := reflect.MakeSlice(t, n, n)
			for i := range n {
				back.Index(i).Set(v.Index(n - 1 - i))
			}
			offer(back, "back to front")
			for _, i := range w.some(n) {
				down(step{kind: 'i', n: i}, v.Index(i), fmt.Sprintf("%s[%d]", text, i))
			}
		} else if p := w.pool.pick(t, w.r, 0); p.Len() > 0 {
			offer(p, "one from elsewhere")
			here.with = append(here.with, replacement{make: func() reflect.Value { return repeated(p, enormous(t)) }, text: fmt.Sprint(enormous(t), " from elsewhere")})
			for i := range min(2, p.Len()) {
				sub := walker{pool: w.pool, r: w.r, arg: w.arg}
				sub.walk(p.Index(i), nil, "", depth+1)
				for _, q := range sub.places {
					for _, with := range w.few(q.with, 3) {
						if x, ok := replaced([]reflect.Value{p.Index(i)}, &place{path: q.path}, with.value()); ok {
							c := reflect.MakeSlice(t, p.Len(), p.Len())
							reflect.Copy(c, p)
							c.Index(i).Set(x[0])
							offer(c, fmt.Sprintf("one with [%d]%s = %s", i, q.text, with.text))
						}
					}
				}
				here.with = w.few(here.with, 40)
			}
		}
	case reflect.Array:
		for _, i := range w.some(v.Len()) {
			down(step{kind: 'i', n: i}, v.Index(i), fmt.Sprintf("%s[%d]", text, i))
		}
	case reflect.Map:
		offer(reflect.Zero(t), "nil")
		offer(reflect.MakeMap(t), "empty")
		for it := v.MapRange(); it.Next() && v.Len() == 1; {
			down(step{kind: 'm', key: it.Key()}, it.Value(), fmt.Sprintf("%s[%v]", text, it.Key()))
		}
	case reflect.Pointer:
		// A nil of a type of its own within an interface is the fault of whoever put
		// it there, as everywhere in Go.
		within := len(path) > 0 && path[len(path)-1].kind == 'n'
		if !within && (depth > 0 || !w.receiver) {
			offer(reflect.Zero(t), "nil")
		}
		offer(reflect.New(t.Elem()), "new zero")
		w.others(t, offer)
		if !v.IsNil() && v.Elem().CanInterface() {
			down(step{kind: 'p'}, v.Elem(), text)
		}
	case reflect.Interface:
		offer(reflect.Zero(t), "nil")
		if !v.IsNil() {
			down(step{kind: 'n'}, v.Elem(), text)
		}
	case reflect.Func:
		offer(reflect.Zero(t), "nil")
		for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, 1, -1e300} {
			offer(steady(t, func(o reflect.Type) reflect.Value {
				if o.Kind() == reflect.Float64 {
					return reflect.ValueOf(x).Convert(o)
				}
				return reflect.Zero(o)
			}), fmt.Sprintf("always %v", x))
		}
	case reflect.Struct:
		offer(reflect.Zero(t), "zero")
		w.others(t, offer)
		for i := range t.NumField() {
			if f := t.Field(i); f.IsExported() && v.Field(i).CanInterface() {
				down(step{kind: 'f', n: i}, v.Field(i), text+"."+f.Name)
			}
		}
	}
	if len(here.with) > 0 {
		w.places = append(w.places, here)
	}
}

// others offers values of the same type from elsewhere. A type that shows its
// fields is spoilt there, so the good ones of another call do for it.
func (w *walker) others(t reflect.Type, offer func(reflect.Value, string)) {
	for i, x := range w.pool.good[t] {
		if i < 3 {
			offer(x, fmt.Sprintf("good one %d (%s)", i, short(plain(x))))
		}
	}
	for i, x := range w.pool.spoilt[t] {
		offer(x, fmt.Sprintf("bad one %d (%s)", i, short(plain(x))))
	}
}

// plain is the text of a value without its own methods, which may be at fault.
func plain(v reflect.Value) string {
	if v.Kind() == reflect.Pointer && !v.IsNil() {
		v = v.Elem()
	}
	if v.Kind() != reflect.Struct {
		return fmt.Sprint(v)
	}
	var b strings.Builder
	for i := range v.NumField() {
		if i > 0 {
			b.WriteByte(' ')
		}
		switch f := v.Field(i); f.Kind() {
		case reflect.Float64:
			fmt.Fprint(&b, f.Float())
		case reflect.Int, reflect.Int64:
			fmt.Fprint(&b, f.Int())
		case reflect.String:
			fmt.Fprintf(&b, "%q", f.String())
		case reflect.Bool:
			fmt.Fprint(&b, f.Bool())
		default:
			b.WriteString("…")
		}
	}
	return b.String()
}

func (w *walker) some(n int) []int {
	switch {
	case n == 0:
		return nil
	case n <= 3:
		return []int{0, 1, 2}[:n]
	}
	return []int{0, 1 + w.r.IntN(n-2), n - 1}
}

func (w *walker) few(list []replacement, n int) []replacement {
	if len(list) <= n {
		return list
	}
	w.r.Shuffle(len(list), func(i, j int) { list[i], list[j] = list[j], list[i] })
	return list[:n]
}

// enormous is how many elements an enormous slice has: more than any bench gives,
// and no more than memory bears where several come together.
func enormous(t reflect.Type) int {
	return min(20_000, max(1000, 4<<20/max(1, int(t.Elem().Size()))))
}

func repeated(v reflect.Value, n int) reflect.Value {
	c := reflect.MakeSlice(v.Type(), n, n)
	for i := 0; i < n; i += v.Len() {
		reflect.Copy(c.Slice(i, n), v)
	}
	return c
}

func figures(x float64) []float64 {
	return []float64{
		math.NaN(), math.Inf(1), math.Inf(-1), 0, math.Copysign(0, -1), -x, x / 1000, x * 1000, x * 1e6, x * (1 + 1e-12),
		math.MaxFloat64, -math.MaxFloat64, math.SmallestNonzeroFloat64, 1e-310, 1e300, -1e300, 1e160, 1e-160, 1e20, 1e-9, -1, 1, 90, 180, 359.9999999, 720, 1e5,
	}
}

// Made once: there is a place for them in every text of every argument.
var (
	nines  = strings.Repeat("9", 5000)
	opens  = strings.Repeat("(", 5000)
	ones   = strings.Repeat("1 ", 3000) + "mm"
	mega   = strings.Repeat("a", 1<<20)
	nested = strings.Repeat("[", 20000)
)

// texts returns malformed texts, some of them made of a good one.
func texts(good string, r *rand.Rand) []string {
	list := []string{
		"", " ", "\x00", "NaN", "Inf", "-Inf", "1e999", "1/0", "1e999 mm", "NaN mm", "Inf mm", "1/0 in", "0/0 in", "-", "±", "1 ± NaN", "25 BTDC ± Inf", "1 mm ± -1 mm",
		"9999999999999999999999999999999999999999 in", nines, opens, ones, "\xff\xfe", "½½", "1 1/2/3 in", "٣ mm", "x", "0x1p-1074 mm", "1_000 mm",
		mega, "M1e400", "-1 mm", "1e308 mile", "1e-400 in", "\n", "null", "{", `{"text":`, "[]", nested,
	}
	if good != "" {
		cut := r.IntN(len(good))
		at := r.IntN(len(good))
		list = append(list, good+good, good[:cut], good[cut:], good+" ", strings.ToUpper(good), strings.ReplaceAll(good, " ", ""),
			good[:at]+string(rune(33+r.IntN(90)))+good[at:], strings.Map(func(c rune) rune {
				if '0' <= c && c <= '9' {
					return '0' + rune(r.IntN(10))
				}
				return c
			}, good), strings.Map(func(c rune) rune {
				if '0' <= c && c <= '9' {
					return '0'
				}
				return c
			}, good), strings.NewReplacer("1", "1e300", "2", "-2", "5", "NaN").Replace(good))
	}
	return list
}

func short(s string) string {
	if !utf8.ValidString(s) {
		s = fmt.Sprintf("%q", s)
	}
	if len(s) > 60 {
		return fmt.Sprintf("%q… (%d bytes)", s[:40], len(s))
	}
	return fmt.Sprintf("%q", s)
}
