package refdata

import (
	"crypto/sha256"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"os"
	"os/exec"
	"reflect"
	"strings"
	"sync"
	"testing"

	"example.com/benchbook/units"
	"example.com/benchbook/units/measure"
)

// firstUse marks a program that the test starts anew, in which nothing has been read.
const firstUse = "BENCHBOOK_FIRST_USE"

// Every table, and what is worked out from tables, tells many who ask at once what
// it tells one: in a program that has read them all, and in one where the many are
// the first to ask. The race detector sees to what the answers do not show.
func TestManyAtOnce(t *testing.T) {
	if os.Getenv(firstUse) != "" {
		for _, text := range together(tellTables) {
			fmt.Printf("told %x\n", sha256.Sum256([]byte(text)))
		}
		return
	}
	alone := tellTables(0)
	if n := strings.Count(alone, "\n"); n < 3000 { // some 1,500 rows, each found by its name and by its size
		t.Fatalf("all tables in %d lines", n)
	}
	for i, text := range together(tellTables) {
		if text != alone {
			t.Errorf("asker %d was told something else than one alone", i)
		}
	}
	firstToAsk(t, alone)
}

// firstToAsk starts this program anew for the one test and holds what each asker
// was told there to what one alone was told here.
func firstToAsk(t *testing.T, alone string) {
	t.Helper()
	program, err := os.Executable()
	if err != nil {
		t.Skip("first use was not tried: ", err)
	}
	cmd := exec.Command(program, "-test.run=^"+t.Name()+"$")
	cmd.Env = append(os.Environ(), firstUse+"=1")
	out, err := cmd.CombinedOutput()
	if failed := new(exec.ExitError); err != nil && !errors.As(err, &failed) {
		t.Skip("first use was not tried: ", err) // wasm and a pretended processor start no programs
	}
	if told := fmt.Sprintf("told %x\n", sha256.Sum256([]byte(alone))); err != nil || strings.Count(string(out), told) != askers {
		t.Errorf("the first to ask, %v: want %d times %s%s", err, askers, told, out)
	}
}

const askers = 8

// together lets the askers go at the same moment and returns what each was told.
func together(ask func(asker int) string) []string {
	told := make([]string, askers)
	var wg sync.WaitGroup
	begin := make(chan struct{})
	for i := range told {
		wg.Go(func() {
			<-begin
			told[i] = ask(i)
		})
	}
	close(begin)
	wg.Wait()
	return told
}

// tellTables writes down all there is to be had from the tables; half of the askers
// begin at the end.
func tellTables(asker int) string {
	parts := []func() string{
		func() string { return tellTable(Threads()) },
		func() string { return fmt.Sprint(Hash(), Practice(), LeftOut(), Disagreements(), Tables()) },
		func() string { return fmt.Sprint(Friction("steel", "oiled")) },
		func() string { return fmt.Sprint(GradeAt("S", 10*units.Millimetre)) },
		func() string { return fmt.Sprint(PropertyClassAt("8.8", 10*units.Millimetre)) },
		func() string { return fmt.Sprint(BeginAt(397*units.CubicCentimetre, RoadTune)) },
		func() string {
			return fmt.Sprint(CheckLimit("ring-gap", measure.Exact(0.3*units.Millimetre), measure.Exact(78*units.Millimetre), LimitOptions[units.Length]{}))
		},
	}
	for i := range every() {
		parts = append(parts, func() string { return tellTable(every()[i]) })
	}
	told := make([]string, len(parts))
	for i := range parts {
		if asker%2 == 1 {
			i = len(parts) - 1 - i
		}
		told[i] = parts[i]()
	}
	return strings.Join(told, "\n")
}

// tellTable writes down a table: whole, whether each row is found under its name in
// capitals, which is no row's own, and the order of its leading column.
func tellTable(t common) string {
	var b strings.Builder
	text, err := json.Marshal(t)
	fmt.Fprintln(&b, t.Name(), t.Len(), t.sources(), t.fault(), string(text), err)
	for _, key := range t.keys() {
		fmt.Fprintln(&b, key, t.has(strings.ToUpper(key)+" "))
	}
	between := reflect.ValueOf(t).MethodByName("Between")
	lead := between.Type().In(0)
	for row := range between.Call([]reflect.Value{reflect.ValueOf(-math.MaxFloat64).Convert(lead), reflect.ValueOf(math.MaxFloat64).Convert(lead)})[0].Seq() {
		fmt.Fprintln(&b, row.Field(0))
	}
	return b.String()
}
