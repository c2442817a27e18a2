package main

import (
	"bufio"
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"maps"
	"os"
	"path/filepath"
	"slices"
)

func main() {
	out := flag.String("o", "", "index `file` to write, with the files of cases in a folder beside it; default all cases on standard output")
	coverage := flag.Bool("coverage", false, "list the functions called and the number of cases of each")
	flag.Parse()
	file, b, err := write()
	if err == nil && *coverage {
		for _, f := range slices.Sorted(maps.Keys(b.count)) {
			fmt.Printf("%4d  %s\n", b.count[f], f)
		}
		return
	}
	switch {
	case err != nil:
	case *out == "":
		err = encode(os.Stdout, file)
	default:
		err = save(*out, file)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "vectors:", err)
		os.Exit(1)
	}
}

// save writes the index and the files that it names; others in their folder go.
func save(name string, file File) error {
	index, files := file.parts()
	dir := filepath.Dir(name)
	old, err := filepath.Glob(filepath.Join(dir, "cases", "*.json"))
	if err != nil {
		return err
	}
	for _, path := range old {
		if err := os.Remove(path); err != nil {
			return err
		}
	}
	if err := os.MkdirAll(filepath.Join(dir, "cases"), 0o755); err != nil {
		return err
	}
	for _, p := range index.Files {
		var text bytes.Buffer
		if err := encode(&text, files[p.File]); err != nil {
			return err
		}
		if err := os.WriteFile(filepath.Join(dir, filepath.FromSlash(p.File)), text.Bytes(), 0o644); err != nil {
			return err
		}
	}
	text, err := json.MarshalIndent(index, "", "  ")
	if err != nil {
		return err
	}
	return os.WriteFile(name, append(text, '\n'), 0o644)
}

// encode writes one case a line, so that a change of one shows as one line.
func encode(w io.Writer, file File) error {
	b := bufio.NewWriter(w)
	fmt.Fprintf(b, "{\"schema\": %d, \"library\": %q, \"tables\": %q, \"cases\": [\n", file.Schema, file.Library, file.Tables)
	for i, c := range file.Cases {
		line, err := json.Marshal(c)
		if err != nil {
			return err
		}
		b.Write(line)
		if i < len(file.Cases)-1 {
			b.WriteByte(',')
		}
		b.WriteByte('\n')
	}
	b.WriteString("]}\n")
	return b.Flush()
}
