package job

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"strconv"

	"example.com/benchbook/units/fault"
)

// node is one value of a job file. It keeps what encoding/json's maps lose: the
// order of keys and keys that stand twice.
type node struct {
	kind  kind
	text  string // of a string, number or literal
	keys  []string
	child map[string]*node
	items []*node
}

type kind uint8

const (
	isText kind = iota
	isNumber
	isBool
	isNull
	isObject
	isList
)

func (k kind) String() string {
	return [...]string{"text", "a bare number", "true or false", "null", "an object", "a list"}[k]
}

// maxDepth bounds nesting: a job file needs five levels.
const maxDepth = 32

// readTree decodes JSON whole, noting keys that stand twice. Broken JSON is one
// fault with its line and column.
func readTree(data []byte, faults *fault.List) *node {
	dec := json.NewDecoder(bytes.NewReader(data))
	dec.UseNumber()
	n, err := readNode(dec, "", faults, 0)
	if err == nil {
		if _, extra := dec.Token(); extra != io.EOF {
			err = errors.New("more text after the end of the job")
		}
	}
	if err != nil {
		if err == io.EOF || err == io.ErrUnexpectedEOF {
			err = errors.New("the file ends too soon")
		}
		faults.Add(fault.Fault{Code: fault.BadForm, Path: position(data, dec.InputOffset()), Rule: "not JSON: " + err.Error()})
		return nil
	}
	return n
}

func readNode(dec *json.Decoder, path string, faults *fault.List, depth int) (*node, error) {
	if depth > maxDepth {
		return nil, errors.New("nested too deep")
	}
	tok, err := dec.Token()
	if err != nil {
		return nil, err
	}
	switch t := tok.(type) {
	case string:
		return &node{kind: isText, text: t}, nil
	case json.Number:
		return &node{kind: isNumber, text: t.String()}, nil
	case bool:
		return &node{kind: isBool, text: strconv.FormatBool(t)}, nil
	case nil:
		return &node{kind: isNull}, nil
	case json.Delim:
		if t == '[' {
			n := &node{kind: isList}
			for dec.More() {
				item, err := readNode(dec, path+"["+strconv.Itoa(len(n.items))+"]", faults, depth+1)
				if err != nil {
					return nil, err
				}
				n.items = append(n.items, item)
			}
			_, err = dec.Token()
			return n, err
		}
		n := &node{kind: isObject, child: map[string]*node{}}
		for dec.More() {
			tok, err := dec.Token()
			if err != nil {
				return nil, err
			}
			key := tok.(string) // the decoder allows nothing else before a colon
			at := under(path, key)
			item, err := readNode(dec, at, faults, depth+1)
			if err != nil {
				return nil, err
			}
			if n.child[key] != nil {
				faults.Add(fault.Fault{Code: fault.Conflict, Path: at, Value: item.text, Rule: "this key stands twice"})
				continue
			}
			n.keys = append(n.keys, key)
			n.child[key] = item
		}
		_, err = dec.Token()
		return n, err
	}
	return nil, errors.New("unknown token")
}

func under(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}

func position(data []byte, offset int64) string {
	seen := data[:min(int(offset), len(data))]
	line := 1 + bytes.Count(seen, []byte("\n"))
	column := len(seen) - bytes.LastIndexByte(seen, '\n')
	return "line " + strconv.Itoa(line) + ", column " + strconv.Itoa(column)
}
