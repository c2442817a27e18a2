package cam_test

import (
	"encoding/json"
	"strings"
	"testing"

	"example.com/benchbook/timing/cam"
	"example.com/benchbook/units"
)

// Results are data: they marshal, with keys in snake case and units beside figures.
func TestJSON(t *testing.T) {
	c, _ := arcCam().Curve(100)
	e, _ := c.Events(1)
	m, _ := c.Centres(1)
	g, _ := cam.Taper{OneIn: 8, MeanDiameter: 16}.Hold(5000)
	off, _ := cam.Valve{Cam: c}.LiftOff(cam.SpringLoad{Seated: 200, Rate: 20000, Mass: 0.2})
	var s []cam.Sample
	for x := units.CamAngle(0); x < 360; x += 5 {
		y, _ := c.Lift(x)
		s = append(s, cam.Sample{At: x, Lift: y})
	}
	f, err := cam.Fit(s, cam.FitOptions{})
	if err != nil {
		t.Fatal(err)
	}
	id, err := cam.Identify(s, []cam.Profile{{Name: "a", Curve: c}}, cam.IdentifyOptions{})
	if err != nil {
		t.Fatal(err)
	}
	for _, v := range []any{e, m, g, off, f, id} {
		b, err := json.Marshal(v)
		if err != nil {
			t.Errorf("%T: %v", v, err)
		}
		if text := string(b); strings.Contains(text, "NaN") || !strings.Contains(text, `"unit"`) && !strings.Contains(text, `"text"`) {
			t.Errorf("%T: %s", v, text)
		}
	}
}
