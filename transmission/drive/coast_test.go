package drive_test

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"example.com/benchbook/refdata"
	"example.com/benchbook/transmission/drive"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// rolled is the time from v1 to v2 by walking the motion in small steps, apart
// from the closed form that CoastDown fits (fourth-order Runge-Kutta on t(v)).
func rolled(m, cr, area, rho, v1, v2 float64) float64 {
	slow := func(v float64) float64 { return m * 1.04 / (m*9.80665*cr + 0.5*rho*area*v*v) }
	const steps = 400
	h, t := (v1-v2)/steps, 0.0
	for i := range steps {
		v := v1 - float64(i)*h
		t += h / 6 * (slow(v) + 4*slow(v-h/2) + slow(v-h))
	}
	return t
}

func coast(rng *rand.Rand, m, cr, area, u float64) drive.CoastInput {
	in := drive.CoastInput{Mass: measure.Exact(units.Kilograms(m))}
	for _, p := range [][2]float64{{30, 25}, {25, 20}, {20, 15}, {15, 10}, {10, 5}} {
		t := rolled(m, cr, area, 1.225, p[0], p[1])
		if rng != nil {
			t += u * rng.NormFloat64()
		}
		in.Runs = append(in.Runs, drive.Coast{From: units.MetresPerSecond(p[0]), To: units.MetresPerSecond(p[1]), Time: measure.Of(units.Seconds(t), units.Seconds(u))})
	}
	return in
}

func TestCoastDownFindsWhatItWasMadeWith(t *testing.T) {
	r := ok(drive.CoastDown(coast(nil, 245, 0.018, 0.6, 0.1), drive.CoastOptions{SpeedScale: -1}))(t)
	// Simpson's rule in 400 steps is good to far better than this
	near(t, "drag area", r.DragArea.Value().SquareMetres(), 0.6, 1e-7)
	near(t, "rolling", r.Rolling.Value().SI(), 0.018, 1e-7)
	if r.Freedom != 3 || r.Correlation > -0.3 || len(r.Misses) != 5 {
		t.Errorf("%+v", r)
	}
	if _, err := json.Marshal(r); err != nil {
		t.Error(err)
	}
}

// Times with known errors: normalised errors of the answers have mean 0 and
// spread 1, so the uncertainty told is the true one.
func TestCoastDownIsCalibrated(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	n := 1500
	if testing.Short() {
		n = 300
	}
	var a, aa, b, bb float64
	for range n {
		k := 1 + 0.02*rng.NormFloat64() // the speedometer's scale
		in := coast(rng, 245, 0.018, 0.6, 0.15)
		for i := range in.Runs {
			in.Runs[i].From, in.Runs[i].To = in.Runs[i].From.Times(k), in.Runs[i].To.Times(k)
		}
		r, err := drive.CoastDown(in, drive.CoastOptions{})
		if err != nil || r.Reason.Given() {
			t.Fatal(err, r.Reason)
		}
		x := math.Log(r.DragArea.Value().SquareMetres()/0.6) / r.DragArea.U().Ratio(r.DragArea.Value())
		y := math.Log(r.Rolling.Value().SI()/0.018) / r.Rolling.U().Ratio(r.Rolling.Value())
		a, aa, b, bb = a+x, aa+x*x, b+y, bb+y*y
	}
	N := float64(n)
	// four standard errors, and a twentieth for the bend of the model
	for _, c := range []struct {
		what       string
		mean, var_ float64
	}{{"drag area", a / N, aa / N}, {"rolling", b / N, bb / N}} {
		if math.Abs(c.mean) > 4/math.Sqrt(N)+0.05 || math.Abs(c.var_-1) > 4*math.Sqrt(2/N)+0.05 {
			t.Errorf("%s: normalised error of mean %.3f, variance %.3f", c.what, c.mean, c.var_)
		}
	}
}

func TestCoastDownRefusesAndReasons(t *testing.T) {
	in := coast(nil, 245, 0.018, 0.6, 0.1)
	// it slows less at high speed than at low: a following wind or a slope
	slices.Reverse(in.Runs)
	for i, p := range [][2]float64{{10, 5}, {15, 10}, {20, 15}, {25, 20}, {30, 25}} {
		in.Runs[i].From, in.Runs[i].To = units.MetresPerSecond(p[0]), units.MetresPerSecond(p[1])
		in.Runs[i].Time = measure.Of(units.Seconds(5+3*float64(i)), units.Seconds(0.1))
	}
	r, err := drive.CoastDown(in, drive.CoastOptions{})
	if err != nil || r.Reason.Code != "not-a-run-down" {
		t.Errorf("%v, %+v", err, r)
	}
	_, err = drive.CoastDown(drive.CoastInput{Runs: []drive.Coast{{From: units.MetresPerSecond(5), To: units.MetresPerSecond(9), Time: measure.Exact(units.Seconds(3))}}}, drive.CoastOptions{})
	if n := len(fault.Faults(err)); n != 4 {
		t.Errorf("%d faults: %v", n, err)
	}
}

// Every chain of the table, worn a little and read by caliper, is found, alone
// or with those that nothing tells from it.
func TestIdentifyEveryChain(t *testing.T) {
	for c := range refdata.Chains().All() {
		id := ok(drive.IdentifyChain(drive.ChainReadings{
			Pitch: measure.Of(c.Pitch.Times(1.008), units.Millimetres(0.02)), Width: measure.Of(c.InnerWidth, units.Millimetres(0.02)), Roller: measure.Of(c.Roller, units.Millimetres(0.02)),
		}))(t)
		if c.SizeOrigin.Status() == refdata.FromMemory && !slices.ContainsFunc(id.Basis.Sources, func(s refdata.Source) bool { return s.Status == refdata.FromMemory }) {
			t.Errorf("%s: its size is from memory, and the basis does not say so: %v", c.Number, id.Basis.Sources)
		}
		found := false
		for _, o := range id.Causes.LikeLeader() {
			found = found || o.Key == c.Number
		}
		if !found {
			o, _ := id.Causes.Of(c.Number)
			t.Errorf("%s: leader %s, itself %.3f", c.Number, id.Causes.Leader().Key, o.Share)
		}
	}
	// 428 is 08B by another name; 532 has a fatter roller than 530 and does not
	// run on its sprockets
	id := ok(drive.IdentifyChain(drive.ChainReadings{Pitch: measure.Of(units.Millimetres(15.95), units.Millimetres(0.02)), Width: measure.Of(units.Millimetres(9.55), units.Millimetres(0.05)), Roller: measure.Of(units.Millimetres(10.1), units.Millimetres(0.05))}))(t)
	told := false
	for _, tw := range id.Twins {
		told = told || tw.Number == "532"
	}
	if !told {
		t.Errorf("no warning of 532: %+v", id.Twins)
	}
	if _, err := drive.IdentifyChain(drive.ChainReadings{}); err == nil {
		t.Error("nothing taken")
	}
}

// Nothing within the share is left out, nothing outside is let in.
func TestEquivalents(t *testing.T) {
	from := ok(drive.ParseTyre("3.25-19"))(t)
	got := ok(from.Equivalents(0.03))(t)
	want := 0
	for row := range refdata.Tyres().All() {
		o := ok(drive.ParseTyre(row.Code))(t)
		if row.Code != "3.25-19" && math.Abs(o.Diameter().Ratio(from.Diameter())-1) <= 0.03 {
			want++
		}
	}
	if len(got) != want || want < 5 {
		t.Errorf("%d, want %d", len(got), want)
	}
	if !got[0].SameRim || got[0].Tyre.Rim() != from.Rim() || got[len(got)-1].SameRim {
		t.Errorf("order: %+v", got)
	}
}
