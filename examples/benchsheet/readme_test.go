package main

import (
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"
	"testing"
)

// The README's script is built and run in a module of its own that embeds this
// one as the README says.
func TestREADMEScript(t *testing.T) {
	if runtime.GOOS == "js" || runtime.GOOS == "wasip1" {
		t.Skip("no go command here")
	}
	if testing.Short() {
		t.Skip("builds a module of its own")
	}
	goTool, err := exec.LookPath("go")
	if err != nil {
		t.Skip("no go command here")
	}
	root, err := filepath.Abs("../..")
	if err != nil {
		t.Fatal(err)
	}
	readme, err := os.ReadFile(filepath.Join(root, "README.md"))
	if err != nil {
		t.Fatal(err)
	}
	script := regexp.MustCompile("(?s)```go\n(.*?)```").FindSubmatch(readme)
	edit := regexp.MustCompile(`go mod edit (.*)`).FindSubmatch(readme)
	if script == nil || edit == nil {
		t.Fatal("the README has no script, or does not say how to embed")
	}
	dir := t.TempDir()
	sums, err := os.ReadFile(filepath.Join(root, "go.sum"))
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string][]byte{"main.go": script[1], "go.mod": []byte("module stranger\n\ngo 1.26\n"), "go.sum": sums} {
		if err := os.WriteFile(filepath.Join(dir, name), text, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	command := func(args ...string) string {
		cmd := exec.Command(goTool, args...)
		cmd.Dir = dir
		// the machine's own target, whatever this test was built for
		cmd.Env = append(os.Environ(), "GOWORK=off", "GOOS="+runtime.GOOS, "GOARCH="+hostArch(goTool))
		out, err := cmd.CombinedOutput()
		if err != nil {
			t.Fatalf("go %s: %v\n%s", strings.Join(args, " "), err, out)
		}
		return string(out)
	}
	command(append([]string{"mod", "edit"}, strings.Fields(strings.ReplaceAll(string(edit[1]), "../benchbook", root))...)...)
	out := command("run", "-mod=mod", ".")
	if !strings.Contains(out, "1/4-26 cycle") || !strings.Contains(out, "to be surer:") {
		t.Errorf("the script prints %s", out)
	}
	t.Logf("\n%s", out)
	// twenty lines of its own, braces and imports aside
	lines := 0
	for _, l := range strings.Split(string(script[1]), "\n") {
		l = strings.TrimSpace(l)
		if l != "" && l != "}" && l != ")" && !strings.HasPrefix(l, "import") && !strings.HasPrefix(l, `"`) && !strings.HasPrefix(l, "package") {
			lines++
		}
	}
	if lines > 20 {
		t.Errorf("the twenty-line script has %d lines", lines)
	}
}

func hostArch(goTool string) string {
	out, err := exec.Command(goTool, "env", "GOHOSTARCH").Output()
	if err != nil {
		return runtime.GOARCH
	}
	return strings.TrimSpace(string(out))
}

// Every name that the README tells a reader to call is there.
func TestREADMENames(t *testing.T) {
	root := filepath.Join("..", "..")
	readme, err := os.ReadFile(filepath.Join(root, "README.md"))
	if err != nil {
		t.Skip(err)
	}
	folders := map[string]string{"gear": "timing/gear", "crank": "timing/crank", "cam": "timing/cam", "ignition": "timing/ignition", "spring": "transmission/spring",
		"drive": "transmission/drive", "fastener": "units/fastener", "measure": "units/measure", "job": "examples/job"}
	names := regexp.MustCompile("`([a-z]+)\\.([A-Z][A-Za-z]+)`").FindAllSubmatch(readme, -1)
	if len(names) < 25 {
		t.Fatalf("only %d names found", len(names))
	}
	for _, n := range names {
		folder := string(n[1])
		if f, ok := folders[folder]; ok {
			folder = f
		}
		declared := regexp.MustCompile(`(?m)^(func|type) ` + string(n[2]) + `\b`)
		files, _ := filepath.Glob(filepath.Join(root, filepath.FromSlash(folder), "*.go"))
		found := false
		for _, f := range files {
			text, err := os.ReadFile(f)
			found = found || err == nil && declared.Match(text)
		}
		if !found {
			t.Errorf("%s.%s is not there", n[1], n[2])
		}
	}
}
