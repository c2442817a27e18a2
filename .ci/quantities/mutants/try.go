package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"time"

	"golang.org/x/tools/go/packages"
)

type status uint8

const (
	skipped    status = iota // not asked for
	killed                   // a test failed
	timedOut                 // the tests did not end in time
	lived                    // no test failed
	equivalent               // the same: it lives, and is on the list of those that may
	uncovered                // no test comes past
	notMade                  // in a constant, or it does not compile
)

// tally counts changes by what became of them.
type tally [notMade + 1]int

func (t *tally) add(o tally) {
	for i, n := range o {
		t[i] += n
	}
}

func (t tally) all() int {
	n := 0
	for _, c := range t[killed:] {
		n += c
	}
	return n
}

// killedShare is of those that tests came past, in per cent: what ends by time is
// noticed too, and what is equivalent cannot be.
func (t tally) killedShare() float64 {
	k := t[killed] + t[timedOut]
	if k+t[lived] == 0 {
		return 100
	}
	return 100 * float64(k) / float64(k+t[lived])
}

func (t tally) String() string {
	return fmt.Sprintf("%5d killed %3d out of time %4d lived %3d equivalent %3d not covered %3d not made: %5.1f %%",
		t[killed], t[timedOut], t[lived], t[equivalent], t[uncovered], t[notMade], t.killedShare())
}

// try makes the changes of one package and shows them to its tests. What lived is
// written to out.
func try(p *packages.Package, asked func(*site) bool, tests string, known map[string]string, out *strings.Builder) (t tally, err error) {
	if len(p.GoFiles) == 0 {
		return t, nil
	}
	work, err := os.MkdirTemp("", "mutants")
	if err != nil {
		return t, err
	}
	defer os.RemoveAll(work)
	list := sites(p)
	b := &bench{p: p, work: work, dir: filepath.Dir(p.GoFiles[0]), binary: filepath.Join(work, "tests")}
	if err := b.build(list); err != nil {
		return t, err
	}
	if err := b.survey(tests); err != nil {
		return t, err
	}
	for _, s := range list {
		if !asked(s) {
			continue
		}
		if s.status != notMade {
			s.status = b.show(s)
		}
		reason, listed := known[s.key]
		if s.status == lived && listed {
			s.status = equivalent
		} else if s.status == killed && listed {
			fmt.Printf("killed, but on the list of equivalents (%s): %s\n", reason, s.key)
		}
		t[s.status]++
		if s.status == lived || s.status == uncovered {
			fmt.Fprintf(out, "%s\t%s:%d\t%s\n", s.key, s.file, s.line, map[status]string{lived: "lived", uncovered: "not covered"}[s.status])
		}
	}
	return t, nil
}

// bench is a test binary that holds every change of a package, and its tests.
type bench struct {
	p                 *packages.Package
	work, dir, binary string
	flags             []string
	tests             []test
	past              map[int][]int // tests that come past a change
}

type test struct {
	name string
	took time.Duration
}

var place = regexp.MustCompile(`(?m)^(\S+\.go):(\d+):\d+: (.*)$`)

// build compiles the changed package with its tests. A change that does not compile
// is taken out.
func (b *bench) build(list []*site) error {
	for range 40 {
		made := map[ast.Node][]*site{}
		for _, s := range list {
			if s.fixed {
				s.status = notMade
			}
			if s.status != notMade {
				made[s.node] = append(made[s.node], s)
			}
		}
		replace := map[string]string{}
		for i, f := range b.p.Syntax {
			name := b.p.Fset.Position(f.Pos()).Filename
			src, err := os.ReadFile(name)
			if err != nil {
				return err
			}
			r := rewriter{p: b.p, file: f, src: src, sites: made}
			text := string(src[:r.offset(f.Pos())]) + r.inner(f) + string(src[r.offset(f.End()):])
			to := filepath.Join(b.work, fmt.Sprint(i, "_", filepath.Base(name)))
			if err := os.WriteFile(to, []byte(text), 0o644); err != nil {
				return err
			}
			replace[name] = to
		}
		extra := filepath.Join(b.work, "mutant.go")
		if err := os.WriteFile(extra, fmt.Appendf(nil, support, b.p.Name, len(list)+1), 0o644); err != nil {
			return err
		}
		replace[filepath.Join(b.dir, "mutant_support.go")] = extra
		overlay, _ := json.Marshal(map[string]any{"Replace": replace})
		over := filepath.Join(b.work, "overlay.json")
		if err := os.WriteFile(over, overlay, 0o644); err != nil {
			return err
		}
		cmd := exec.Command("go", "test", "-c", "-vet=off", "-gcflags=-e", "-overlay", over, "-o", b.binary, ".")
		cmd.Dir = b.dir
		text, err := cmd.CombinedOutput()
		if err == nil {
			return nil
		}
		if !b.takeOut(list, made, replace, string(text)) {
			return fmt.Errorf("%s does not compile with its changes:\n%s", b.p.PkgPath, text)
		}
	}
	return errors.New("no end of changes that do not compile")
}

// takeOut marks the changes in lines that the compiler complains of.
func (b *bench) takeOut(list []*site, made map[ast.Node][]*site, replace map[string]string, text string) bool {
	any := false
	for _, m := range place.FindAllStringSubmatch(text, -1) {
		n, _ := strconv.Atoi(m[2])
		for name, to := range replace {
			if filepath.Base(name) != filepath.Base(m[1]) && filepath.Base(to) != filepath.Base(m[1]) {
				continue
			}
			src, err := os.ReadFile(to)
			if err != nil {
				continue
			}
			lines := bytes.Split(src, []byte("\n"))
			if n < 1 || n > len(lines) {
				continue
			}
			for _, id := range number.FindAllSubmatch(lines[n-1], -1) {
				k, _ := strconv.Atoi(string(id[1]))
				if s := list[k-1]; s.status != notMade {
					for _, o := range made[s.node] {
						o.status = notMade
					}
					any = true
				}
			}
		}
	}
	return any
}

var number = regexp.MustCompile(`mutant\w+(?:\[[^\]]*\])?\((\d+)`)

// survey runs every test by itself, sees what changes it comes past and how long it
// takes. A test that fails with nothing changed is an error.
func (b *bench) survey(only string) error {
	wanted, err := regexp.Compile(only)
	if err != nil {
		return err
	}
	names, err := exec.Command(b.binary, "-test.list", "^(Test|Example|Fuzz)").Output()
	if err != nil {
		return fmt.Errorf("%s: %w", b.p.PkgPath, err)
	}
	b.flags = []string{"-test.short", "-test.failfast"}
	// Random tests start the same each time and do not look for a smaller example.
	random := []string{"-rapid.seed=1", "-rapid.shrinktime=0s", "-rapid.nofailfile"}
	if exec.Command(b.binary, append(random, "-test.list", "^$")...).Run() == nil {
		b.flags = append(b.flags, random...)
	}
	b.past = map[int][]int{}
	for name := range strings.Lines(string(names)) {
		t := test{name: strings.TrimSpace(name)}
		if !wanted.MatchString(t.name) {
			continue
		}
		seen := filepath.Join(b.work, "seen")
		os.Remove(seen)
		start := time.Now()
		if failed, text := b.run([]string{t.name}, 10*time.Minute, "MUTANT_SEEN="+seen); failed != lived {
			return fmt.Errorf("%s: %s fails with nothing changed:\n%s", b.p.PkgPath, t.name, text)
		}
		t.took = time.Since(start)
		b.tests = append(b.tests, t)
		ids, _ := os.ReadFile(seen)
		for id := range strings.Lines(string(ids)) {
			k, _ := strconv.Atoi(strings.TrimSpace(id))
			b.past[k] = append(b.past[k], len(b.tests)-1)
		}
	}
	return nil
}

// show runs the tests that come past a change, the quick ones together first.
func (b *bench) show(s *site) status {
	tests := slices.Clone(b.past[s.id])
	if len(tests) == 0 {
		return uncovered
	}
	slices.SortStableFunc(tests, func(i, j int) int { return int(b.tests[i].took - b.tests[j].took) })
	for len(tests) > 0 {
		var group []string
		var took time.Duration
		for len(tests) > 0 && (len(group) == 0 || took+b.tests[tests[0]].took < together) {
			group = append(group, b.tests[tests[0]].name)
			took += b.tests[tests[0]].took
			tests = tests[1:]
		}
		if r, _ := b.run(group, 4*time.Second+10*took, "MUTANT="+strconv.Itoa(s.id)); r != lived {
			return r
		}
	}
	return lived
}

// together is how long tests that run in one process took when alone: each then
// also paid for its start.
const together = 500 * time.Millisecond

func (b *bench) run(names []string, limit time.Duration, env string) (status, string) {
	ctx, cancel := context.WithTimeout(context.Background(), limit)
	defer cancel()
	// The shell limits the memory that a loop without end may take.
	args := append([]string{"-c", `ulimit -v 6000000; exec "$0" "$@"`, b.binary, "-test.run", "^(" + strings.Join(names, "|") + ")$"}, b.flags...)
	cmd := exec.CommandContext(ctx, "sh", args...)
	cmd.Dir = b.dir
	cmd.Env = append(os.Environ(), env, "GOMAXPROCS=1")
	text, err := cmd.CombinedOutput()
	switch {
	case ctx.Err() != nil:
		return timedOut, string(text)
	case err != nil:
		return killed, string(text)
	}
	return lived, string(text)
}
