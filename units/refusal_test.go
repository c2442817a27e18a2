//go:build !js && !wasip1

package units_test

import (
	"os"
	"os/exec"
	"strings"
	"testing"
)

// TestCompilerRefusesTheWrongShaft compiles a program that passes a cam angle
// for a crank angle, and the same program with the conversion said by name.
func TestCompilerRefusesTheWrongShaft(t *testing.T) {
	if _, err := exec.LookPath("go"); err != nil {
		t.Skip("no go tool here")
	}
	out, err := exec.Command("go", "build", "-o", os.DevNull, "./testdata/rightshaft").CombinedOutput()
	if err != nil {
		t.Fatalf("the right program: %v\n%s", err, out)
	}
	out, err = exec.Command("go", "build", "-o", os.DevNull, "./testdata/wrongshaft").CombinedOutput()
	if err == nil {
		t.Fatal("the compiler let a cam angle pass for a crank angle")
	}
	if s := string(out); !strings.Contains(s, "main.go:9:34: cannot use tooth (variable of float64 type units.CamAngle) as units.CrankAngle value in argument to units.Before") {
		t.Errorf("refused for another reason:\n%s", s)
	}
}
