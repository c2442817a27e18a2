package gear_test

import (
	"testing"

	"example.com/benchbook/timing/gear"
	"example.com/benchbook/units/fault"
)

// A spindle the drive does not have has no train, and is not half speed either.
func TestASpindleTheDriveDoesNotHave(t *testing.T) {
	d := gear.Drive{{From: "crank", Driver: 24, To: "inlet", Driven: 48}}
	_, err := d.Train("magneto")
	if f := fault.Faults(err); len(f) != 1 || f[0].Code != fault.UnknownName || f[0].Path != "spindle" {
		t.Errorf("Train: %v", err)
	}
	if f := fault.Faults(d.CheckHalfSpeed("inlet", "magneto")); len(f) != 1 || f[0].Code != fault.UnknownName {
		t.Errorf("CheckHalfSpeed: %v", f)
	}
	if root, err := d.Train("crank"); err != nil || root.Len() != 0 {
		t.Errorf("the root has a train of %d meshes, %v", root.Len(), err)
	}
}
