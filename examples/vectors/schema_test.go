package main

import (
	"encoding/json"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// The committed files have the form of the committed schemas, checked by the few
// words of JSON Schema that the schema uses; any other word fails the test.
func TestCommittedFileHasTheFormOfTheSchema(t *testing.T) {
	check := func(name string, schema []byte) {
		text, err := committed.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		var root map[string]any
		var file any
		if err := json.Unmarshal(schema, &root); err != nil {
			t.Fatal(err)
		}
		if err := json.Unmarshal(text, &file); err != nil {
			t.Fatal(err)
		}
		faults := against(root, root, file, name)
		for _, f := range faults[:min(20, len(faults))] {
			t.Error(f)
		}
	}
	check("vectors.json", indexSchema)
	files, err := committed.ReadDir("cases")
	if err != nil {
		t.Fatal(err)
	}
	var index Index
	if err := decode("vectors.json", &index); err != nil {
		t.Fatal(err)
	}
	if len(files) != len(index.Files) {
		t.Errorf("%d files of cases, the index tells of %d", len(files), len(index.Files))
	}
	for i, f := range files {
		if testing.Short() && i%4 != 0 {
			continue // a check word by word takes long where the processor is a pretended one
		}
		check("cases/"+f.Name(), schema)
	}
}

func TestTheSchemaRefuses(t *testing.T) {
	var root map[string]any
	if err := json.Unmarshal(schema, &root); err != nil {
		t.Fatal(err)
	}
	const good = `{"schema": 1, "library": "0", "tables": "` + "0123456789abcdef0123456789abcdef0123456789abcdef0123456789abcdef" + `", "cases": [{"id": "a-1", "kind": "computed", "topic": "a",
		"source": {"title": "t", "status": "derived"}, "inputs": {}, "expected": {"answer": {"text": "1 mm", "value": 1, "unit": "mm", "tol": {"rel": 1e-9}}}, "reproduces": true}]}`
	for _, change := range [][2]string{
		{"", ""},
		{`"schema": 1`, `"schema": 2`},
		{`"library": "0", `, ``},
		{`"0123`, `"x123`},
		{`"a-1"`, `"A 1"`},
		{`"computed"`, `"guessed"`},
		{`"derived"`, `"certain"`},
		{`"answer": {`, `"answer": {"colour": "red", `},
		{`"value": 1, "unit": "mm", `, `"value": 1, `},
		{`"value": 1, `, `"value": "1", `},
		{`"value": 1, `, `"value": 1, "u": 0, `},
		{`{"rel": 1e-9}`, `{"rel": -1}`},
		{`"reproduces": true`, `"reproduces": "yes"`},
		{`"expected": {"answer": {"text": "1 mm", "value": 1, "unit": "mm", "tol": {"rel": 1e-9}}}`, `"expected": {}`},
	} {
		var file any
		if err := json.Unmarshal([]byte(strings.Replace(good, change[0], change[1], 1)), &file); err != nil {
			t.Fatal(err)
		}
		if faults := against(root, root, file, "file"); (len(faults) == 0) != (change[0] == "") {
			t.Errorf("%s: %v", change[1], faults)
		}
	}
}

// against returns what in v breaks s, a part of the schema root.
func against(root, s map[string]any, v any, path string) (faults []string) {
	say := func(format string, args ...any) { faults = append(faults, path+": "+fmt.Sprintf(format, args...)) }
	object, isObject := v.(map[string]any)
	list, isList := v.([]any)
	text, isText := v.(string)
	number, isNumber := v.(float64)
	_, isBool := v.(bool)
	for word, arg := range s {
		switch word {
		case "$schema", "$defs", "title", "description":
		case "$ref":
			name := strings.TrimPrefix(arg.(string), "#/$defs/")
			faults = append(faults, against(root, root["$defs"].(map[string]any)[name].(map[string]any), v, path)...)
		case "type":
			if !map[string]bool{"object": isObject, "array": isList, "string": isText, "number": isNumber, "boolean": isBool}[arg.(string)] {
				say("not of type %v", arg)
			}
		case "const":
			if v != arg {
				say("not %v", arg)
			}
		case "enum":
			if !slices.Contains(arg.([]any), v) {
				say("%v is none of %v", v, arg)
			}
		case "pattern":
			if isText && !regexp.MustCompile(arg.(string)).MatchString(text) {
				say("%q does not match %v", text, arg)
			}
		case "minLength":
			if isText && float64(len([]rune(text))) < arg.(float64) {
				say("too short")
			}
		case "minimum", "exclusiveMinimum":
			if isNumber && (number < arg.(float64) || word == "exclusiveMinimum" && number == arg.(float64) || math.IsNaN(number)) {
				say("%g is below %v", number, arg)
			}
		case "minItems":
			if isList && float64(len(list)) < arg.(float64) {
				say("too few")
			}
		case "minProperties":
			if isObject && float64(len(object)) < arg.(float64) {
				say("too few")
			}
		case "required":
			for _, name := range arg.([]any) {
				if _, ok := object[name.(string)]; isObject && !ok {
					say("no %v", name)
				}
			}
		case "dependentRequired":
			for name, needs := range arg.(map[string]any) {
				if _, ok := object[name]; !ok {
					continue
				}
				for _, need := range needs.([]any) {
					if _, ok := object[need.(string)]; !ok {
						say("%s without %v", name, need)
					}
				}
			}
		case "items":
			for i, w := range list {
				faults = append(faults, against(root, arg.(map[string]any), w, fmt.Sprintf("%s[%d]", path, i))...)
			}
		case "properties":
			for name, part := range arg.(map[string]any) {
				if w, ok := object[name]; ok {
					faults = append(faults, against(root, part.(map[string]any), w, path+"."+name)...)
				}
			}
		case "additionalProperties":
			known, _ := s["properties"].(map[string]any)
			for name, w := range object {
				if _, ok := known[name]; ok {
					continue
				}
				if part, ok := arg.(map[string]any); ok {
					faults = append(faults, against(root, part, w, path+"."+name)...)
				} else {
					say("%s is not known", name)
				}
			}
		default:
			say("the test does not know the word %q", word)
		}
	}
	return faults
}
