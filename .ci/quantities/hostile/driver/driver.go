// Package driver runs inside the test binary of a package under the hostile
// sweep. The tool above it writes calls of Saw into every exported function, so
// that the package's own Examples leave behind arguments that are known to be
// good; Main then calls every function with those arguments spoilt, one place at
// a time and several at once, and looks at what comes back.
//
// It knows nothing of the library it is put into, and imports only the standard
// library.
package driver

import (
	"encoding/json"
	"fmt"
	"hash/fnv"
	"math/rand/v2"
	"os"
	"reflect"
	"runtime"
	"runtime/debug"
	"runtime/metrics"
	"slices"
	"strconv"
	"strings"
	"sync/atomic"
	"time"
)

// Func is one exported function, or a method as a function of its receiver.
type Func struct {
	Key    string
	F      any
	Method bool   // the first argument is the receiver
	Exempt string // why figures that are no numbers may come back, or why it may panic
	Panics bool   // Exempt is about panics too
	Maker  bool   // of another package: called to have spoilt values, not judged
}

// Settings are what the tool asks for.
type Settings struct {
	Module   string // panics are placed at the first frame of this module
	Package  string
	Out      string // file for the report
	Calls    int    // of each function
	Seed     uint64
	Deadline time.Duration // of one call
	PerFunc  time.Duration // of all calls of one function
	Only     string        // keys that hold this text, if not ""
	Skip     []string      // keys that ended the process in an earlier run
}

// FromEnvironment reads the settings that the tool hands over.
func FromEnvironment() Settings {
	s := Settings{
		Module: os.Getenv("HOSTILE_MODULE"), Out: os.Getenv("HOSTILE_OUT"), Only: os.Getenv("HOSTILE_ONLY"),
		Skip:  strings.Split(os.Getenv("HOSTILE_SKIP"), ","),
		Calls: 300, Seed: 1, Deadline: 5 * time.Second, PerFunc: 4 * time.Second,
	}
	if n, err := strconv.Atoi(os.Getenv("HOSTILE_CALLS")); err == nil {
		s.Calls = n
	}
	if n, err := strconv.ParseUint(os.Getenv("HOSTILE_SEED"), 10, 64); err == nil {
		s.Seed = n
	}
	if d, err := time.ParseDuration(os.Getenv("HOSTILE_DEADLINE")); err == nil {
		s.Deadline = d
	}
	if d, err := time.ParseDuration(os.Getenv("HOSTILE_PER_FUNCTION")); err == nil {
		s.PerFunc = d
	}
	return s
}

// Finding is one way in which one function misbehaves.
type Finding struct {
	Function string
	Kind     string // panic, not a number, json, error, hang, memory, never called
	What     string
	How      string // the arguments of the first call that showed it
	Times    int
}

// Report is what one package's sweep found.
type Report struct {
	Package   string
	Functions int // exported functions and methods, a generic one once
	Called    int // of them, called at least once
	Harvested int // of them, called with arguments from an Example
	Calls     int
	Refused   int // calls that came back with an error
	Cut       int // functions whose time ran out before their calls did
	Slowest   string
	Findings  []Finding
	Exempted  map[string]int // by function: calls that an exemption let pass
}

type sweep struct {
	Settings
	report  Report
	untyped func(error) string
	pool    *pool
	by      map[string]int // index in report.Findings
	slowest time.Duration
	trail   *os.File
}

// Main sweeps funcs after the Examples have run. untyped says what is wrong with
// an error, or "".
func Main(set Settings, funcs []Func, untyped func(error) string) {
	s := &sweep{Settings: set, untyped: untyped, pool: newPool(), by: map[string]int{}}
	s.report = Report{Package: set.Package, Exempted: map[string]int{}}
	var err error
	if s.trail, err = os.Create(set.Out + ".trail"); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(2)
	}
	debug.SetMaxStack(256 << 20)
	debug.SetMemoryLimit(1 << 30)
	s.harvest()
	go s.watchMemory()

	for _, f := range funcs {
		if f.Maker && !slices.Contains(set.Skip, f.Key) {
			s.trail.WriteAt([]byte(fmt.Sprintf("%-2000s", f.Key+": as a maker")), 0)
			s.make(f)
		}
	}
	called, harvested, all := map[string]bool{}, map[string]bool{}, map[string]bool{}
	for _, methods := range []bool{false, true} {
		for _, f := range funcs {
			if f.Maker || f.Method != methods || !strings.Contains(f.Key, set.Only) {
				continue
			}
			all[f.Key] = true
			if slices.Contains(set.Skip, f.Key) {
				called[f.Key] = true
				continue
			}
			n, fromExample := s.function(f)
			called[f.Key] = called[f.Key] || n > 0
			harvested[f.Key] = harvested[f.Key] || fromExample
		}
	}
	for k := range all {
		if !called[k] {
			s.find(Finding{Function: k, Kind: "never called", What: "no arguments for it could be made"})
		}
	}
	s.report.Functions, s.report.Called, s.report.Harvested = len(all), len(called), 0
	for _, h := range harvested {
		if h {
			s.report.Harvested++
		}
	}
	s.write()
}

func (s *sweep) write() {
	b, err := json.Marshal(s.report)
	if err == nil {
		err = os.WriteFile(s.Out, b, 0o644)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(2)
	}
}

func (s *sweep) find(f Finding) {
	k := f.Function + "\x00" + f.Kind + "\x00" + f.What
	if i, ok := s.by[k]; ok {
		s.report.Findings[i].Times++
		return
	}
	f.Times = 1
	s.by[k] = len(s.report.Findings)
	s.report.Findings = append(s.report.Findings, f)
}

// random is the generator of one function: the same whatever else is swept.
func (s *sweep) random(key string) *rand.Rand {
	h := fnv.New64a()
	h.Write([]byte(key))
	return rand.New(rand.NewPCG(s.Seed, h.Sum64()))
}

// watchMemory ends the process when the heap outgrows what any answer needs.
func (s *sweep) watchMemory() {
	heap := []metrics.Sample{{Name: "/memory/classes/heap/objects:bytes"}}
	for {
		time.Sleep(20 * time.Millisecond)
		if metrics.Read(heap); heap[0].Value.Uint64() > 3<<30 {
			fmt.Fprintln(os.Stderr, "hostile: more than 3 GB of memory")
			os.Exit(3)
		}
	}
}

// bases returns argument lists to start from: those the Examples used, else made
// up from values of the right types.
func (s *sweep) bases(f Func, r *rand.Rand) (list [][]reflect.Value, fromExample bool) {
	t := reflect.TypeOf(f.F)
	for _, args := range seen[f.Key] {
		if v, ok := fits(t, args); ok {
			list = append(list, v)
		}
	}
	if len(list) > 0 {
		return list, true
	}
	for range 4 {
		args := make([]reflect.Value, t.NumIn())
		for i := range args {
			args[i] = s.pool.pick(t.In(i), r, 0)
		}
		list = append(list, args)
	}
	return list, false
}

func fits(t reflect.Type, args []any) ([]reflect.Value, bool) {
	if t.NumIn() != len(args) {
		return nil, false
	}
	out := make([]reflect.Value, len(args))
	for i, a := range args {
		out[i] = reflect.New(t.In(i)).Elem()
		if a == nil {
			continue
		}
		v := reflect.ValueOf(a)
		if !v.Type().AssignableTo(t.In(i)) {
			return nil, false
		}
		out[i].Set(v)
	}
	return out, true
}

// make calls a constructor of another package for the sake of its results.
func (s *sweep) make(f Func) {
	r := s.random(f.Key + reflect.TypeOf(f.F).String())
	bases, _ := s.bases(f, r)
	for i, c := range s.calls(f, bases, r, 40) {
		out, failed, _ := call(f.F, c.args())
		if failed == nil {
			for _, v := range out {
				s.pool.add(v, i > 0 || len(c.changes) > 0)
			}
		}
	}
}

// function sweeps one function, and returns how many calls it made.
func (s *sweep) function(f Func) (n int, fromExample bool) {
	r := s.random(f.Key + reflect.TypeOf(f.F).String())
	bases, fromExample := s.bases(f, r)
	list := s.calls(f, bases, r, s.Calls)
	if len(list) == 0 {
		return 0, fromExample
	}
	var at, began atomic.Int64
	stop := make(chan struct{})
	results := make(chan answer)
	go func() {
		defer close(results)
		for i, c := range list {
			s.trail.WriteAt([]byte(fmt.Sprintf("%-2000s", f.Key+": "+c.how())), 0)
			args := c.args()
			began.Store(time.Now().UnixNano())
			at.Store(int64(i))
			a := answer{at: i}
			since := time.Now()
			a.out, a.failed, a.where = call(f.F, args)
			if a.failed == nil {
				a.verdict = s.judge(f, args, a.out)
			}
			a.took = time.Since(since)
			select {
			case results <- a:
			case <-stop:
				return
			}
		}
	}()
	began.Store(time.Now().UnixNano())
	total := time.Duration(0)
	tick := time.NewTicker(s.Deadline / 4)
	defer tick.Stop()
	for {
		select {
		case a, ok := <-results:
			if !ok {
				return n, fromExample
			}
			n++
			s.note(f, list[a.at], a)
			if total += a.took; total > s.PerFunc && a.at < len(list)-1 {
				close(stop)
				s.report.Cut++
				return n, fromExample
			}
		case <-tick.C:
			if d := time.Since(time.Unix(0, began.Load())); d > s.Deadline {
				buf := make([]byte, 1<<20)
				buf = buf[:runtime.Stack(buf, true)]
				s.find(Finding{Function: f.Key, Kind: "hang", What: fmt.Sprintf("no answer within %v, in %s", s.Deadline, s.busy(string(buf))), How: list[at.Load()].how()})
				close(stop)
				return n + 1, fromExample
			}
		}
	}
}

// busy finds the frame of the module in which a goroutine of a dump is at work.
func (s *sweep) busy(dump string) string {
	for _, g := range strings.Split(dump, "\n\n") {
		if !strings.Contains(g, ".call(") && !strings.Contains(g, "reflect.Value.call") {
			continue
		}
		for _, line := range strings.Split(g, "\n") {
			if strings.HasPrefix(line, s.Module) && !strings.Contains(line, "/internal/hostile") {
				return line[:strings.LastIndex(line, "(")]
			}
		}
	}
	return "an unknown place"
}

type answer struct {
	at      int
	out     []reflect.Value
	failed  any
	where   string
	verdict verdict
	took    time.Duration
}

func (s *sweep) note(f Func, c spoilt, a answer) {
	s.report.Calls++
	if a.took > s.slowest {
		s.slowest = a.took
		s.report.Slowest = fmt.Sprintf("%v %s: %s", a.took.Round(time.Millisecond), f.Key, c.how())
	}
	how := c.how()
	if a.failed != nil {
		if f.Panics {
			s.report.Exempted[f.Key]++
			return
		}
		if strings.Contains(a.where, "_test.") {
			return // the caller's own function failed
		}
		s.find(Finding{Function: f.Key, Kind: "panic", What: fmt.Sprint(a.failed) + " at " + a.where, How: how})
		return
	}
	if a.verdict.refused {
		s.report.Refused++
	}
	if a.verdict.kind != "" {
		if f.Exempt != "" {
			s.report.Exempted[f.Key]++
			return
		}
		s.find(Finding{Function: f.Key, Kind: a.verdict.kind, What: a.verdict.what, How: how})
		return
	}
	if !a.verdict.refused {
		for _, v := range a.out {
			s.pool.add(v, len(c.changes) > 0)
		}
	}
}

// call calls f, and says where in the module it panicked if it did.
func call(f any, args []reflect.Value) (out []reflect.Value, failed any, where string) {
	defer func() {
		if failed = recover(); failed != nil {
			failed, where = tidy(failed), firstFrame()
		}
	}()
	v := reflect.ValueOf(f)
	if v.Type().IsVariadic() {
		out = v.CallSlice(args)
	} else {
		out = v.Call(args)
	}
	for i, o := range out {
		out[i] = drained(o)
	}
	return out, nil, ""
}

// tidy drops what differs from call to call in the text of a panic.
func tidy(p any) string {
	text := fmt.Sprint(p)
	var b strings.Builder
	for i := 0; i < len(text); i++ {
		if c := text[i]; '0' <= c && c <= '9' {
			if b.Len() == 0 || b.String()[b.Len()-1] != 'n' {
				b.WriteByte('n')
			}
			continue
		}
		b.WriteByte(text[i])
	}
	return b.String()
}

func firstFrame() string {
	pc := make([]uintptr, 64)
	frames := runtime.CallersFrames(pc[:runtime.Callers(3, pc)])
	module := os.Getenv("HOSTILE_MODULE")
	for {
		f, more := frames.Next()
		if strings.HasPrefix(f.Function, module) && !strings.Contains(f.Function, "/internal/hostile") {
			return fmt.Sprintf("%s (%s:%d)", strings.TrimPrefix(f.Function, module+"/"), f.File[strings.LastIndex(f.File, "/")+1:], f.Line)
		}
		if !more {
			return "a place outside the module"
		}
	}
}
