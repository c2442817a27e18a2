// Package examples_test runs every small program as a user would.
package examples_test

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"
)

// programs are the small ones, each a task of one package.
var programs = []string{
	"nearest-fraction", "unmarked-bolt", "worn-or-fit", "valve-timing", "tooth-worth", "true-top", "cam-lobe", "spark-timing",
	"slipping-clutch", "tired-springs", "road-gearing", "first-jets", "weather-jet", "other-fuel",
}

// most is how many lines a program may have.
const most = 60

// A program is one file of a task, short enough to read at a sitting, and has a script.
func TestProgramsAreShort(t *testing.T) {
	for _, p := range programs {
		files, err := os.ReadDir(p)
		if err != nil || len(files) != 1 || files[0].Name() != "main.go" {
			t.Errorf("%s: holds %v, %v; want main.go alone", p, files, err)
			continue
		}
		text, err := os.ReadFile(filepath.Join(p, "main.go"))
		if err != nil {
			t.Fatal(err)
		}
		if n := bytes.Count(text, []byte("\n")); n >= most {
			t.Errorf("%s: %d lines, to be under %d", p, n, most)
		}
		if _, err := os.Stat(filepath.Join("testdata", p+".txtar")); err != nil {
			t.Error(err)
		}
	}
}
