package spring_test

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"testing"

	"example.com/benchbook/refdata"
	"example.com/benchbook/transmission/spring"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
	"pgregory.net/rapid"
)

// Every fit of the table comes out as a law with the same answer as the table's
// own, and two fits of one material differ by no more than a tenth or so.
func TestLawsOfTheTable(t *testing.T) {
	n := 0
	for row := range refdata.SpringStrengths().All() {
		w := spring.LawOf(row)
		d := units.Millimetres(math.Sqrt(row.Wire.Low.Or(units.Millimetres(0.5)).Millimetres() * row.Wire.High.Or(units.Millimetres(8)).Millimetres()))
		s, in, err := w.At(d)
		if err != nil || !in {
			t.Fatalf("%s at %v: in range %v, %v", row.Name, d, in, err)
		}
		want, known := row.Tensile(d).Get()
		if !known {
			t.Fatalf("%s at %v: not known", row.Name, d)
		}
		near(t, row.Name, s.SI(), want.SI(), 1e-13)
		n++
	}
	if n < 20 {
		t.Errorf("only %d rows", n)
	}
	for _, m := range []string{"A228", "A229", "A227"} {
		span, laws, err := spring.Wires(m, 3*mm)
		if err != nil || len(laws) != 3 {
			t.Fatalf("%s: %d laws, %v", m, len(laws), err)
		}
		if r := span.High.Ratio(span.Low); r < 1.001 || r > 1.2 {
			t.Errorf("%s at 3 mm: fits from %v to %v", m, span.Low, span.High)
		}
	}
}

// FE reference handbook constants as two published exercises use them.
func TestOlderFits(t *testing.T) {
	for _, c := range []struct {
		material string
		d, want  float64
	}{{"music wire A228", 7.25, 1492}, {"oil-tempered wire A229", 10, 1032}} {
		row, found := refdata.SpringStrengths().ByName(c.material + ", older fit")
		if !found {
			t.Fatal(c.material)
		}
		s, _, err := spring.LawOf(row).At(units.Millimetres(c.d))
		if err != nil {
			t.Fatal(err)
		}
		near(t, c.material, s.Megapascals(), c.want, 1e-3)
	}
}

func TestModuliOfTheTable(t *testing.T) {
	for _, c := range []struct {
		material  string
		d, g, rel float64
	}{{"A228", 0.5, 82.7, 0}, {"A228", 1.61, 81.7, 0}, {"A228", 5, 80.0, 0}, {"EN 10270-1 SH", 3, 81.5, 0}, {"textbook design value", 3, 81.37, 0}} {
		m, src, err := spring.ModulusOf(c.material, units.Millimetres(c.d))
		if err != nil || src.Title == "" {
			t.Fatal(err)
		}
		near(t, c.material, m.Shear.Gigapascals(), c.g, 1e-12)
	}
	if _, _, err := spring.ModulusOf("unobtainium", 3*mm); fault.Faults(err)[0].Code != fault.UnknownName {
		t.Error(err)
	}
}

// All of DIN 2093 in the table: loads as remembered within 2 % (three printed
// figures, from memory), stresses as computed apart from this package to a
// megapascal.
func TestWholeTableOfDiscs(t *testing.T) {
	n := 0
	for row := range refdata.DiscSprings().All() {
		d := ok(spring.NewDisc(spring.DiscSpec{Outside: row.Outside, Inside: row.Inside, Thickness: row.Thickness, ConeHeight: row.Cone, Overall: row.Free}))(t)
		s := d.At(row.Cone.Times(0.75))
		near(t, row.Name, s.Load.Newtons(), row.Load.Newtons(), 0.021)
		for i, p := range [][2]units.Pressure{{s.II, row.ComputedII}, {s.III, row.ComputedIII}, {s.OM, row.ComputedOM}} {
			if (p[0] - p[1]).Abs() > units.Megapascals(0.51) {
				t.Errorf("%s stress %d: %v, table %v", row.Name, i, p[0], p[1])
			}
		}
		n++
	}
	if n != 24 {
		t.Errorf("%d discs", n)
	}
}

// A line through loads made with known errors comes back within them: the
// normalised errors of rate and free length have mean 0 and spread 1.
func TestLineIsCalibrated(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 11))
	n := 4000
	if testing.Short() {
		n = 800
	}
	var sk, skk, sf, sff, bent float64
	for range n {
		k, free := 10+40*rng.Float64(), 40+10*rng.Float64()
		scale := 1 + 0.02*rng.NormFloat64()
		var loads []spring.LoadReading
		for i := range 5 {
			length := free - 4 - 3*float64(i)
			load := k * (free - length) * scale
			loads = append(loads, spring.LoadReading{
				Length: measure.Of(units.Millimetres(length+0.1*rng.NormFloat64()), units.Millimetres(0.1)),
				Load:   measure.Of(units.Newtons(load+3*rng.NormFloat64()), units.Newtons(3)),
			})
		}
		line, err := spring.FitLine(loads, spring.FitOptions{})
		if err != nil {
			t.Fatal(err)
		}
		zk := (line.Rate.Value().NewtonsPerMillimetre() - k) / line.Rate.U().NewtonsPerMillimetre()
		zf := (line.Free.Value().Millimetres() - free) / line.Free.U().Millimetres()
		sk, skk, sf, sff = sk+zk, skk+zk*zk, sf+zf, sff+zf*zf
		if line.Bent {
			bent++
		}
	}
	N := float64(n)
	// four standard errors of a mean and of a variance of n normal draws, and
	// 0.05 for the pull that errors of length give a slope (attenuation)
	if m := sk / N; math.Abs(m) > 4/math.Sqrt(N)+0.05 {
		t.Errorf("rate: mean normalised error %.3f", m)
	}
	if v := skk / N; math.Abs(v-1) > 4*math.Sqrt(2/N)+0.05 {
		t.Errorf("rate: variance of normalised error %.3f", v)
	}
	if m := sf / N; math.Abs(m) > 4/math.Sqrt(N)+0.05 {
		t.Errorf("free length: mean normalised error %.3f", m)
	}
	if v := sff / N; math.Abs(v-1) > 4*math.Sqrt(2/N)+0.05 {
		t.Errorf("free length: variance of normalised error %.3f", v)
	}
	if p := bent / N; math.Abs(p-0.01) > 4*math.Sqrt(0.01/N)+0.002 {
		t.Errorf("bent by chance %.2f %% of the time, 1 %% promised", 100*p)
	}
}

// invented is a spring of the library's invented machine.
func invented() spring.Readings {
	return spring.Readings{
		Wire:    measure.MustRead("2.64 mm ± 0.01", measure.Micrometer()),
		Outside: measure.MustRead("17.8 mm", measure.Caliper()),
		Free:    measure.MustRead("46 mm", measure.Caliper()),
		Total:   measure.MustRead("9.5", measure.Count()),
		Ends:    spring.SquaredGround,
		Loads: []spring.LoadReading{
			{measure.MustRead("40 mm", measure.Caliper()), measure.MustRead("118 N", measure.SpringBalance())},
			{measure.MustRead("36 mm", measure.Caliper()), measure.MustRead("200 N", measure.SpringBalance())},
			{measure.MustRead("32 mm", measure.Caliper()), measure.MustRead("279 N", measure.SpringBalance())},
		},
	}
}

func TestIdentifyAgrees(t *testing.T) {
	id := ok(spring.Identify(invented(), spring.IdentifyOptions{}))(t)
	if !id.Agrees || id.Line.Bent || id.Causes.Leader().Key != "as-read" {
		t.Errorf("%v, bent %v, %+v", id, id.Line.Bent, id.Causes.Leader())
	}
	if len(id.NextReadings) == 0 || id.Reason.Given() {
		t.Error("no next reading")
	}
	if _, err := json.Marshal(id); err != nil {
		t.Error(err)
	}
}

// A bronze spring is soft by half, which no miscount of a long spring explains.
func TestIdentifyBronze(t *testing.T) {
	in := invented()
	for i := range in.Loads {
		in.Loads[i].Load = measure.By(in.Loads[i].Load.Value().Times(41.4/80.5), measure.SpringBalance())
	}
	id := ok(spring.Identify(in, spring.IdentifyOptions{}))(t)
	if lead := id.Causes.Leader(); lead.Key != "bronze" || id.Agrees {
		t.Errorf("%+v", id.Causes.Odds[:3])
	}
	if g := id.Shear; math.Abs((g.Value() - units.Gigapascals(41.4)).Ratio(g.U())) > 2 {
		t.Errorf("modulus %v", g)
	}
	if k := id.NextReadings[0].Key; k != "magnet" {
		t.Errorf("next reading %s", k)
	}
}

// What was not read is not used, and said.
func TestIdentifyWithLess(t *testing.T) {
	in := invented()
	in.Loads = nil
	id := ok(spring.Identify(in, spring.IdentifyOptions{}))(t)
	if id.Reason.Code != "no-loads" || !id.ByDimensions.Taken() || id.ByLoad.Taken() || len(id.Causes.Odds) > 0 {
		t.Errorf("%+v", id)
	}
	in = invented()
	in.Wire = measure.Reading[units.Length]{}
	id = ok(spring.Identify(in, spring.IdentifyOptions{}))(t)
	if id.Reason.Code != "no-dimensions" || !id.ByLoad.Taken() || id.ByDimensions.Taken() {
		t.Errorf("%+v", id)
	}
	// coils counted by the solid length
	in = invented()
	in.Total = measure.Reading[units.Ratio]{}
	in.Solid = measure.MustRead("25.1 mm", measure.Caliper())
	id = ok(spring.Identify(in, spring.IdentifyOptions{}))(t)
	near(t, "coils", id.Active.Value().SI(), 25.1/2.64-2, 1e-12)
	if !id.Agrees {
		t.Error(id)
	}
	if _, err := spring.Identify(spring.Readings{}, spring.IdentifyOptions{}); err != nil {
		t.Error(err)
	}
}

// Simulated springs of every listed kind: the share given to the truth is
// honest (of causes given p, about p are true), whatever was read.
func TestIdentifyIsCalibrated(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 5))
	n := 6000
	if testing.Short() { // a tenth, wider bounds below
		n = 600
	}
	type kind struct {
		key                string
		prior              float64
		coils, dead        float64
		shear, wire, scale float64
		ushear             float64
	}
	kinds := []kind{
		{"as-read", 0.70, 0, 0, 80.5, 0, 0, 1}, {"coils:+1", 0.05, 1, 0, 80.5, 0, 0, 1}, {"coils:-1", 0.05, -1, 0, 80.5, 0, 0, 1},
		{"dead:+1", 0.04, 0, 1, 80.5, 0, 0, 1}, {"dead:-1", 0.04, 0, -1, 80.5, 0, 0, 1}, {"wire-misread", 0.04, 0, 0, 80.5, 0.04, 0, 1},
		{"balance-wrong", 0.04, 0, 0, 80.5, 0, 0.15, 1}, {"stainless", 0.02, 0, 0, 69, 0, 0, 0.03 * 69}, {"bronze", 0.01, 0, 0, 41.4, 0, 0, 0.036 * 41.4},
	}
	var claimed, right float64
	bins := make([][2]float64, 10)
	for range n {
		p := rng.Float64() * 0.99
		var k kind
		for _, k = range kinds {
			if p -= k.prior; p < 0 {
				break
			}
		}
		d, outside, total, free := 2.5+rng.Float64(), 18+4*rng.Float64(), math.Round(7+4*rng.Float64()), 60.0
		g := k.shear + k.ushear*rng.NormFloat64()
		trueTotal := total + k.coils
		ks := g * 1e3 * math.Pow(d, 4) / (8 * math.Pow(outside-d, 3) * (trueTotal - 2 - k.dead))
		read := spring.Readings{
			Wire:    measure.Of(units.Millimetres(d*(1+k.wire*rng.NormFloat64())+0.02*rng.NormFloat64()), units.Millimetres(0.02)),
			Outside: measure.Of(units.Millimetres(outside+0.02*rng.NormFloat64()), units.Millimetres(0.02)),
			Total:   measure.Of(units.Value(total+0.1*rng.NormFloat64()), units.Value(0.1)),
			Ends:    spring.SquaredGround,
		}
		if rng.IntN(2) == 0 {
			read.Solid = measure.Of(units.Millimetres(d*(trueTotal+0.25*rng.NormFloat64())+0.05*rng.NormFloat64()), units.Millimetres(0.05))
		}
		scale := 1 + 0.02*rng.NormFloat64() + k.scale*rng.NormFloat64()
		for i := range 3 {
			length := free - 8 - 5*float64(i)
			read.Loads = append(read.Loads, spring.LoadReading{
				Length: measure.Of(units.Millimetres(length+0.02*rng.NormFloat64()), units.Millimetres(0.02)),
				Load:   measure.Of(units.Newtons(ks*(free-length)*scale+2*rng.NormFloat64()), units.Newtons(2)),
			})
		}
		id, err := spring.Identify(read, spring.IdentifyOptions{})
		if err != nil {
			t.Fatal(err)
		}
		lead := id.Causes.Leader()
		claimed += lead.Share
		if lead.Key == k.key {
			right++
		}
		for _, o := range id.Causes.Odds {
			b := min(int(o.Share*10), 9)
			bins[b][0]++
			hit := 0.0
			if o.Key == k.key {
				hit = 1
			}
			bins[b][1] += hit - o.Share
		}
	}
	N := float64(n)
	t.Logf("leader true %.1f %%, claimed %.1f %%", 100*right/N, 100*claimed/N)
	if gap := math.Abs(right-claimed) / N; gap > 0.02+3*math.Sqrt(0.25/N) {
		t.Errorf("leader claimed %.3f, true %.3f", claimed/N, right/N)
	}
	for i, b := range bins {
		if b[0] < 50 {
			continue
		}
		p := (float64(i) + 0.5) / 10
		if miss := math.Abs(b[1]) / b[0]; miss > 0.02+3*math.Sqrt(p*(1-p)/b[0]) {
			t.Errorf("shares near %.2f: off by %.3f over %.0f", p, miss, b[0])
		}
	}
}

// No input whatever makes Identify panic or answer with what is not a number.
func TestIdentifyNeverBreaks(t *testing.T) { rapid.Check(t, checkIdentify) }

func FuzzIdentify(f *testing.F) {
	fuzzBytes(f)
	f.Fuzz(rapid.MakeFuzz(checkIdentify))
}

func checkIdentify(t *rapid.T) {
	figure := rapid.OneOf(rapid.Float64Range(-1, 60), rapid.SampledFrom([]float64{0, math.NaN(), math.Inf(1), 1e300, 1e-300}))
	length := func(name string) measure.Reading[units.Length] {
		if rapid.Bool().Draw(t, name+" taken") {
			return measure.Of(units.Millimetres(figure.Draw(t, name)), units.Millimetres(figure.Draw(t, name+" u")))
		}
		return measure.Reading[units.Length]{}
	}
	in := spring.Readings{Wire: length("wire"), Outside: length("outside"), Inside: length("inside"), Free: length("free"), Solid: length("solid"), Ends: spring.Ends(rapid.IntRange(0, 6).Draw(t, "ends"))}
	if rapid.Bool().Draw(t, "counted") {
		in.Total = measure.Of(units.Value(figure.Draw(t, "total")), units.Value(0.1))
	}
	for range rapid.IntRange(0, 4).Draw(t, "loads") {
		in.Loads = append(in.Loads, spring.LoadReading{Length: length("length"), Load: measure.Of(units.Newtons(figure.Draw(t, "load")), units.Newtons(figure.Draw(t, "load u")))})
	}
	id, err := spring.Identify(in, spring.IdentifyOptions{})
	if err == nil {
		if _, err := json.Marshal(id); err != nil {
			t.Fatalf("%v: %+v", err, id)
		}
	}
}
