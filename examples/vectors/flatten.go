package main

import (
	"encoding/json"
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"
	"unicode"

	"example.com/benchbook/refdata/checks"
	"example.com/benchbook/units"
	"example.com/benchbook/units/fault"
)

// side says whether a figure was given or is an answer.
type side int

const (
	given side = iota
	answered
)

const (
	// near is the tolerance of every answer. The same sums on another processor
	// differ in the last bits, since some fuse a product with a sum; iterations
	// stop at about 1e-12. A front end that computes the same in double precision
	// meets 1e-9 without effort, and no slip in a formula hides below it.
	near = 1e-9
	// loose is that of shares of belief, which come through exponentials of sums.
	loose = 1e-6
	// digits are what is written of an answer: more than near asks for, fewer than
	// the bits that processors disagree on.
	digits = 12
	// most is how many entries of a list of things are written.
	most = 3
	// empty is an answer of no words or no things.
	empty = "(nothing)"
	// untold is an entry of a list that was given with nothing in it.
	untold = "-"
)

// sentences are the keys of texts meant for a reader, and of what is said
// elsewhere: they may change while the answer does not.
var sentences = map[string]bool{
	"basis": true, "text": true, "note": true, "notes": true, "for": true, "against": true, "source": true,
	"sources": true, "why": true, "prior": true, "percent": true, "group": true, "next_readings": true, "status": true, "origin": true, "rule": true, "stress_rule": true, "row": true,
}

// flatten notes every figure of v under its path.
func flatten(to map[string]Figure, path string, v any, s side) error {
	raw, err := json.Marshal(v)
	if err != nil {
		return fmt.Errorf("%s: %w", path, err)
	}
	var tree any
	if err := json.Unmarshal(raw, &tree); err != nil {
		return fmt.Errorf("%s: %w", path, err)
	}
	walk(to, path, tree, s, 0)
	if s == answered {
		if top, ok := tree.(map[string]any); ok {
			cautions(to, top)
		}
		if len(to) == 0 {
			to["answer"] = Figure{Text: empty}
		}
	}
	return nil
}

func walk(to map[string]Figure, path string, v any, s side, depth int) {
	if path == "" {
		if _, object := v.(map[string]any); !object || isFigure(v) {
			path = "answer"
		}
	}
	switch v := v.(type) {
	case nil:
	case bool:
		if s == given && depth > 0 && !v {
			return
		}
		to[path] = Figure{Text: strconv.FormatBool(v)}
	case float64:
		note(to, path, v, pureUnit(path), "", nil, s, depth)
	case string:
		if p, err := units.ParsePosition(v); err == nil && positionText.MatchString(v) {
			note(to, path, p.After().Degrees(), "° crank after "+p.Datum().String(), v, nil, s, depth)
		} else if v != "" && !(s == given && depth > 0 && v == "0") {
			to[path] = Figure{Text: v}
		}
	case []any:
		list(to, path, v, s, depth)
	case map[string]any:
		if isFigure(v) {
			var u *float64
			x, uncertain := v["u"].(float64)
			if uncertain && x != 0 {
				u = &x
			}
			if uncertain && s == given {
				depth = 0 // a reading of zero was taken all the same
			}
			note(to, path, v["value"].(float64), unitOf(v["unit"].(string)), v["text"].(string), u, s, depth)
			return
		}
		for key, w := range v {
			if s == answered && sentences[key] {
				continue
			}
			walk(to, join(path, snake(key)), w, s, depth+1)
		}
	}
}

var positionText = regexp.MustCompile(`^([0-9.]+° )?[AB]?[TB]DC$`)

// note writes one number. A zero inside a struct that was given is its default,
// which needs no telling.
func note(to map[string]Figure, path string, value float64, unit, text string, u *float64, s side, depth int) {
	if s == given && depth > 0 && value == 0 {
		return
	}
	f := Figure{Value: &value, Unit: unit, Text: text, U: u}
	if s == answered {
		value = rounded(value)
		if u != nil {
			*u = rounded(*u)
		}
		f.Tol = tolerance(path, value)
	}
	if text == "" {
		f.Text = strings.TrimSuffix(strconv.FormatFloat(value, 'g', -1, 64)+" "+unit, " 1")
	} else if s == answered {
		f.Text = longNumber.ReplaceAllStringFunc(text, func(n string) string {
			x, err := strconv.ParseFloat(n, 64)
			if err != nil {
				return n
			}
			return strconv.FormatFloat(rounded(x), 'g', -1, 64)
		})
	}
	to[path] = f
}

var longNumber = regexp.MustCompile(`-?[0-9]*\.[0-9]{6,}(e[-+]?[0-9]+)?`)

func tolerance(path string, value float64) *checks.Tolerance {
	switch {
	case strings.HasSuffix(path, "share"):
		return &checks.Tolerance{Abs: loose}
	case value == 0:
		return &checks.Tolerance{Abs: near}
	case value == math.Trunc(value) && math.Abs(value) < 1e6:
		return &checks.Tolerance{Rel: near, Abs: near}
	}
	return &checks.Tolerance{Rel: near}
}

// list writes numbers as one list, words as one text, and of things the first few.
func list(to map[string]Figure, path string, v []any, s side, depth int) {
	if len(v) == 0 {
		return
	}
	switch first := v[0].(type) {
	case float64:
		f := Figure{Unit: "1"}
		var text []string
		for _, x := range v {
			y := x.(float64)
			if s == answered {
				y = rounded(y)
			}
			f.Values = append(f.Values, y)
			text = append(text, strconv.FormatFloat(y, 'g', -1, 64))
		}
		f.Text = strings.Join(text, ", ")
		if s == answered {
			f.Tol = &checks.Tolerance{Rel: near, Abs: near}
		}
		to[path] = f
	case string:
		var words []string
		for _, x := range v {
			words = append(words, fmt.Sprint(x))
		}
		to[path] = Figure{Text: strings.Join(words, ", ")}
	default:
		n := len(v)
		if s == answered {
			n = min(n, most)
			// How many causes a ranking weighs is its own affair.
			if !isFigure(first) && !strings.HasSuffix(path, "odds") {
				to[join(path, "count")] = Figure{Text: strconv.Itoa(len(v)), Value: ptr(float64(len(v))), Unit: "1", Tol: &checks.Tolerance{Abs: near}}
			}
		}
		for i := range n {
			if o, ok := v[i].(map[string]any); ok && s == answered {
				// The end of a ranking holds shares that are all but zero.
				if share, ok := o["share"].(float64); ok && share < 0.02 {
					break
				}
			}
			at, before := join(path, strconv.Itoa(i)), len(to)
			walk(to, at, v[i], s, depth+1)
			if len(to) == before && s == given {
				to[at] = Figure{Text: untold}
			}
		}
	}
}

func ptr(x float64) *float64 { return &x }

// cautions writes the cautions that must be shown with the answer.
func cautions(to map[string]Figure, top map[string]any) {
	basis, _ := top["basis"].(map[string]any)
	given, _ := basis["cautions"].([]any)
	var words []string
	for _, c := range given {
		words = append(words, fmt.Sprint(c))
	}
	if words != nil {
		to["cautions"] = Figure{Text: strings.Join(words, ", ")}
	}
}

// restsOn returns the sources that an answer names.
func restsOn(result any) []string {
	var r struct {
		Basis struct {
			Sources []struct{ Title, Clause string }
		}
	}
	raw, err := json.Marshal(result)
	if err != nil || json.Unmarshal(raw, &r) != nil {
		return nil
	}
	var out []string
	for _, s := range r.Basis.Sources {
		out = append(out, strings.TrimSuffix(s.Title+", "+s.Clause, ", "))
	}
	return out
}

func codes(err error) string {
	var out []string
	for _, f := range fault.Faults(err) {
		out = append(out, strings.TrimSpace(f.Path+" "+string(f.Code)))
	}
	return strings.Join(out, "; ")
}

func isFigure(v any) bool {
	o, ok := v.(map[string]any)
	if !ok {
		return false
	}
	_, value := o["value"].(float64)
	_, unit := o["unit"].(string)
	_, text := o["text"].(string)
	return value && unit && text
}

func unitOf(unit string) string {
	if unit == "" {
		return "1"
	}
	return unit
}

// pureUnit returns the unit of a plain number: most are pure, the rare composites
// end in theirs.
func pureUnit(path string) string {
	for end, unit := range map[string]string{
		"_deg_per_mm": "°/mm", "_kg_m2": "kg m²", "_mm_deg": "mm °", "_mm_s": "mm s",
		"_m_per_s3": "m/s³", "_rad_per_s2": "rad/s²", "_mm_per_deg": "mm/°", "_mm_per_deg2": "mm/°²", "_mm_per_deg3": "mm/°³",
	} {
		if strings.HasSuffix(path, end) {
			return unit
		}
	}
	return "1"
}

// rounded returns x to the digits that are written; less than any quantity here
// can mean is zero.
func rounded(x float64) float64 {
	if math.Abs(x) < 1e-14 {
		return 0
	}
	y, err := strconv.ParseFloat(strconv.FormatFloat(x, 'g', digits, 64), 64)
	if err != nil {
		return x
	}
	return y
}

func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

// snake turns the name of a field without a tag into the form of those with one.
func snake(key string) string {
	var b strings.Builder
	for i, r := range key {
		if unicode.IsUpper(r) {
			if i > 0 && b.Len() > 0 && !unicode.IsUpper(rune(key[i-1])) {
				b.WriteByte('_')
			}
			r = unicode.ToLower(r)
		}
		b.WriteRune(r)
	}
	return b.String()
}
