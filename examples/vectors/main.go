package main

import (
	"bufio"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"maps"
	"os"
	"slices"
)

func main() {
	out := flag.String("o", "", "`file` to write; default standard output")
	coverage := flag.Bool("coverage", false, "list the functions called and the number of cases of each")
	flag.Parse()
	file, b, err := write()
	if err == nil && *coverage {
		for _, f := range slices.Sorted(maps.Keys(b.count)) {
			fmt.Printf("%4d  %s\n", b.count[f], f)
		}
		return
	}
	if err == nil {
		err = save(*out, file)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "vectors:", err)
		os.Exit(1)
	}
}

func save(name string, file File) error {
	if name == "" {
		return encode(os.Stdout, file)
	}
	f, err := os.Create(name)
	if err != nil {
		return err
	}
	if err := encode(f, file); err != nil {
		f.Close()
		return err
	}
	return f.Close()
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
