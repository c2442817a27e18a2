package main

import (
	"strconv"
	"strings"

	"example.com/benchbook/refdata/checks"
)

// published returns the cases of package refdata/checks, each figure with its text.
func published() []Case {
	var out []Case
	for c := range checks.All() {
		out = append(out, Case{
			ID: c.ID, Kind: c.Kind, Topic: c.Topic, Source: c.Source,
			Inputs: figures(c.Inputs), Expected: figures(c.Expected),
			Reproduces: c.Reproduces, NotReproduced: c.NotReproduced, Note: c.Note,
		})
	}
	return out
}

func figures(in map[string]checks.Figure) map[string]Figure {
	out := make(map[string]Figure, len(in))
	for name, f := range in {
		g := Figure{Text: f.Text, Values: f.Values, Unit: f.Unit, Printed: f.Printed, Tol: f.Tol}
		if f.U != 0 {
			u := f.U
			g.U = &u
		}
		if f.Text == "" && f.Values == nil {
			v := f.Value
			g.Value = &v
		}
		if f.Text == "" {
			g.Text = figureText(f)
		}
		out[name] = g
	}
	return out
}

// figureText writes a figure with the digits its source prints.
func figureText(f checks.Figure) string {
	number := f.Printed
	if number == "" {
		list := f.Values
		if list == nil {
			list = []float64{f.Value}
		}
		var parts []string
		for _, v := range list {
			parts = append(parts, strconv.FormatFloat(v, 'g', -1, 64))
		}
		number = strings.Join(parts, ", ")
	}
	if f.Unit == "" || f.Unit == "1" {
		return number
	}
	return number + " " + f.Unit
}
