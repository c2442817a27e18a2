//go:build js && wasm

package main

import (
	"encoding/json"
	"errors"
	"slices"
	"syscall/js"

	"example.com/benchbook/examples/browser/trial"
	"example.com/benchbook/examples/job"
	"example.com/benchbook/units/fault"
)

// answer is what the page gets back, as JSON: faults, or the rest.
type answer struct {
	Faults []string      `json:"faults,omitempty"`
	Report *report       `json:"report,omitempty"`
	Panels []trial.Panel `json:"panels,omitempty"`
}

// report is the whole job in short.
type report struct {
	Machine string         `json:"machine"`
	Note    string         `json:"note"`
	Library string         `json:"library"`
	Order   []job.Step     `json:"order"`
	Turn    job.Permission `json:"turn"`
	Start   job.Permission `json:"start"`
	Rest    []trial.Panel  `json:"rest"` // the parts without controls
	// Cautions are those of every part, in full.
	Cautions []string `json:"cautions"`
}

func main() {
	var t *trial.Trial
	js.Global().Set("bench", js.ValueOf(map[string]any{
		"demo": string(job.Demo()),
		"open": answering(func(args []js.Value) (answer, error) {
			next, err := trial.Open([]byte(text(args, 0)))
			if err != nil {
				return answer{}, err // the job that was open stays open
			}
			t = next
			return whole(t, width(args, 1))
		}),
		"move": answering(func(args []js.Value) (answer, error) {
			if t == nil {
				return answer{}, errNoJob
			}
			key, err := t.Move(text(args, 0), text(args, 1))
			if err != nil {
				return answer{}, err
			}
			p, err := t.Quick(key, width(args, 2))
			return answer{Panels: []trial.Panel{p}}, err
		}),
		"panel": answering(func(args []js.Value) (answer, error) {
			if t == nil {
				return answer{}, errNoJob
			}
			p, err := t.Panel(text(args, 0), width(args, 1))
			return answer{Panels: []trial.Panel{p}}, err
		}),
		"draw": answering(func(args []js.Value) (answer, error) {
			if t == nil {
				return answer{}, errNoJob
			}
			all, err := panels(t, width(args, 0))
			return answer{Panels: all}, err
		}),
		"back": answering(func(args []js.Value) (answer, error) {
			if t == nil {
				return answer{}, errNoJob
			}
			if err := t.Back(); err != nil {
				return answer{}, err
			}
			all, err := panels(t, width(args, 0))
			return answer{Panels: all}, err
		}),
		"file": js.FuncOf(func(js.Value, []js.Value) any {
			if t == nil {
				return ""
			}
			data, err := t.File()
			if err != nil {
				return ""
			}
			return string(data)
		}),
	}))
	if ready := js.Global().Get("benchReady"); ready.Type() == js.TypeFunction {
		ready.Invoke()
	}
	select {}
}

var errNoJob = errors.New("no job is open")

// answering wraps a call from the page: any error becomes the list of faults.
func answering(f func([]js.Value) (answer, error)) js.Func {
	return js.FuncOf(func(_ js.Value, args []js.Value) any {
		a, err := f(args)
		if err != nil {
			a = answer{}
			for _, one := range fault.Faults(err) {
				a.Faults = append(a.Faults, one.Error())
			}
			if len(a.Faults) == 0 {
				a.Faults = []string{err.Error()}
			}
		}
		data, err := json.Marshal(a)
		if err != nil {
			return `{"faults":["the answer could not be written"]}`
		}
		return string(data)
	})
}

func whole(t *trial.Trial, width int) (answer, error) {
	r := t.Report()
	all, err := panels(t, width)
	short := report{Machine: r.Machine, Note: r.Note, Library: r.Library, Order: r.Order, Turn: r.Turn, Start: r.Start, Cautions: trial.Cautions(r)}
	for i := range r.Sections {
		if s := &r.Sections[i]; !slices.Contains(t.Panels(), s.Key) {
			short.Rest = append(short.Rest, trial.PanelOf(s))
		}
	}
	return answer{Report: &short, Panels: all}, err
}

func panels(t *trial.Trial, width int) ([]trial.Panel, error) {
	var all []trial.Panel
	var faults fault.List
	for _, key := range t.Panels() {
		p, err := t.Panel(key, width)
		if faults.Under("", err) {
			all = append(all, p)
		}
	}
	return all, faults.Err()
}

func text(args []js.Value, i int) string {
	if i >= len(args) || args[i].Type() != js.TypeString {
		return ""
	}
	return args[i].String()
}

func width(args []js.Value, i int) int {
	if i >= len(args) || args[i].Type() != js.TypeNumber {
		return 0
	}
	return args[i].Int()
}
