//go:build !js && !wasip1

package examples_test

import (
	"bytes"
	"errors"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/rogpeppe/go-internal/testscript"
)

// columns is how wide a terminal is.
const columns = 80

// The programs are built once and run by the scripts in testdata. Under -short, as
// on borrowed processors, nothing is built: the packages' own tests run there.
func TestPrograms(t *testing.T) {
	if testing.Short() {
		t.Skip("building fourteen programs takes too long for -short")
	}
	if _, err := exec.LookPath("go"); err != nil {
		t.Skip("no go command to build them with")
	}
	bin := t.TempDir()
	args := []string{"build", "-o", bin + string(filepath.Separator)}
	for _, p := range programs {
		args = append(args, "./"+p)
	}
	if out, err := exec.Command("go", args...).CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	testscript.Run(t, testscript.Params{
		Dir: "testdata",
		Setup: func(e *testscript.Env) error {
			e.Setenv("PATH", bin+string(filepath.ListSeparator)+e.Getenv("PATH"))
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"narrow":  narrow,
			"refuses": func(ts *testscript.TestScript, neg bool, args []string) { refuses(ts, bin, args) },
		},
		RequireUniqueNames: true,
	})
}

// narrow fails if a line of the last program's output is wider than a terminal.
func narrow(ts *testscript.TestScript, _ bool, _ []string) {
	for line := range strings.SplitSeq(ts.ReadFile("stdout"), "\n") {
		if n := utf8.RuneCountInString(line); n > columns {
			ts.Fatalf("%d columns: %s", n, line)
		}
	}
}

// refuses PATTERN PROGRAM ARGS fails unless the program ends with status 2, says
// what is wrong on standard error, and is not brought down by it.
func refuses(ts *testscript.TestScript, bin string, args []string) {
	if len(args) < 2 {
		ts.Fatalf("usage: refuses pattern program [args]")
	}
	name := args[1]
	if runtime.GOOS == "windows" {
		name += ".exe"
	}
	var out, errs bytes.Buffer
	cmd := exec.Command(filepath.Join(bin, name), args[2:]...)
	cmd.Dir, cmd.Stdout, cmd.Stderr = ts.MkAbs("."), &out, &errs
	err := cmd.Run()
	var exit *exec.ExitError
	if !errors.As(err, &exit) || exit.ExitCode() != 2 {
		ts.Fatalf("ended with %v, not with status 2: %s%s", err, out.String(), errs.String())
	}
	if strings.Contains(errs.String(), "goroutine") || !regexp.MustCompile(args[0]).MatchString(errs.String()) {
		ts.Fatalf("said: %s", errs.String())
	}
}
