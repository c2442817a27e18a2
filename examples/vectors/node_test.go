//go:build !js && !wasip1

package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
)

// node runs a copy of check.mjs with a change on a copy of the file with a change,
// and returns what it said and whether it ended well.
func node(t *testing.T, script, file [2]string) (string, bool) {
	t.Helper()
	path, err := exec.LookPath("node")
	if err != nil {
		t.Skip("no node on the path")
	}
	dir := t.TempDir()
	if err := os.Mkdir(filepath.Join(dir, "cases"), 0o700); err != nil {
		t.Fatal(err)
	}
	copies := map[string][2]string{"check.mjs": script, "vectors.json": {}}
	names, err := filepath.Glob("cases/*.json")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range names {
		copies[name] = [2]string{}
	}
	copies[filepath.Join("cases", "units.json")] = file
	for name, change := range copies {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if change[0] != "" && !bytes.Contains(text, []byte(change[0])) {
			t.Fatalf("%s has no %s", name, change[0])
		}
		text = []byte(strings.Replace(string(text), change[0], change[1], 1))
		if err := os.WriteFile(filepath.Join(dir, name), text, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	out, err := exec.Command(path, filepath.Join(dir, "check.mjs")).CombinedOutput()
	return string(out), err == nil
}

func TestNodeChecksItself(t *testing.T) {
	said, well := node(t, [2]string{}, [2]string{})
	if !well || !strings.Contains(said, ", 0 missed") {
		t.Error(said)
	}
}

func TestNodeMissesWhatIsWrong(t *testing.T) {
	for i, c := range []struct {
		name         string
		script, file [2]string
	}{
		{"an inch of 25.5 mm", [2]string{"* 25.4", "* 25.5"}, [2]string{}},
		{"a rod left out", [2]string{"+ l - Math.sqrt(l * l - (r * Math.sin(a)) ** 2)", ""}, [2]string{}},
		{"another lapse rate", [2]string{"0.0065 * height", "0.0066 * height"}, [2]string{}},
		{"a wrong figure in the file", [2]string{}, [2]string{`"expected":{"answer":{"text":"25.4 mm","value":25.4`, `"expected":{"answer":{"text":"25.4 mm","value":25.40001`}},
	} {
		if testing.Short() && i > 0 {
			return // starting node takes most of this test's time
		}
		if said, well := node(t, c.script, c.file); well || strings.Contains(said, ", 0 missed") {
			t.Errorf("%s passed: %s", c.name, said)
		}
	}
}
