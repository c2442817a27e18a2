package checks_test

import (
	"math"

	"example.com/benchbook/timing/gear"
	"example.com/benchbook/transmission/drive"
)

// teeth reads tooth counts of a case.
func (r *run) teeth(names ...string) []int {
	r.t.Helper()
	n := make([]int, len(names))
	for i, name := range names {
		n[i] = int(r.num(name))
	}
	return n
}

func (r *run) ratio(t gear.Train) gear.Rational {
	r.t.Helper()
	q, err := t.Ratio()
	r.ok(err)
	return q
}

var gearRunners = map[string]runner{
	"bevan-11-1a": func(r *run) {
		// The change wheel that the rest of the train leaves to be made up.
		want := gear.NewRational(int64(r.num("n_leadscrew")), int64(r.num("n_spindle")))
		rest := r.ratio(gear.Simple(r.teeth("T2", "T1")...))
		r.numbers("T4", want.Over(rest).Times(gear.NewRational(int64(r.num("T3")), 1)).Abs().Float())
	},
	"khurmi-13-1": func(r *run) {
		t := gear.Simple(r.teeth("TA", "TB")...).Then(r.teeth("TC", "TD")...).Then(r.teeth("TE", "TF")...)
		r.numbers("NF", r.num("NA")*r.ratio(t).Abs().Float())
	},
	"wentzell-11-1": func(r *run) {
		q := r.ratio(gear.Simple(r.teeth("N1", "N2")...).Then(r.teeth("N3", "N4")...)).Abs().Float()
		r.numbers("n4", r.num("n1")*q)
		r.numbers("T4", r.num("T1")/q)
		r.leave("power of a torque is not offered", "hp")
	},
	"wentzell-11-2": func(r *run) {
		q := r.ratio(gear.Simple(r.teeth("NA", "NB")...).Then(r.teeth("NC", "ND_idler", "NE")...)).Float()
		r.numbers("train_value", 1/math.Abs(q))
		r.numbers("nE", r.num("nA")*math.Abs(q))
		r.numbers("TE", r.num("TA")/math.Abs(q))
		r.numbers("sign_E_vs_A", math.Copysign(1, q))
	},
	"gear-02": func(r *run) {
		pair := func(name string) drive.Pair {
			n := r.teeth(name+"_driver", name+"_driven")
			return drive.Pair{Driver: n[0], Driven: n[1]}
		}
		b, err := drive.NewLayshaft(drive.Layshaft{Constant: pair("constant"), Indirect: []drive.Mesh{
			{Name: "first", Pair: pair("first")}, {Name: "second", Pair: pair("second")}, {Name: "reverse", Pair: pair("reverse")},
		}, Direct: "top"})
		r.ok(err)
		for gear, answer := range map[string]string{"first": "i1", "second": "i2", "reverse": "iR"} {
			g, _ := b.Gear(gear)
			r.numbers(answer, g.Ratio.Float())
		}
	},
}
