// Command benchsheet reads one job file and prints what the bench has to say
// about it: order of work, findings with their odds, what to do first, what
// was not checked. Without -job it prints the embedded demonstration, an
// invented machine with invented readings.
//
//	benchsheet                 the demonstration
//	benchsheet -job FILE       a job of your own; "-" is standard input
//	benchsheet -json           the same as data
//	benchsheet -page FILE      the same as one printable HTML page with pictures
//	benchsheet -plots DIR      the pictures singly, as SVG; with -png as PNG too
//	benchsheet -new            an empty job to fill in
//
// Every fault of the job file is listed with its path, and the exit status is
// then 2. Status 1 is a failure to read or write.
package main

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"io"
	"os"

	"example.com/benchbook/examples/job"
	"example.com/benchbook/units/fault"
)

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

func run(args []string, in io.Reader, out, errs io.Writer) int {
	flags := flag.NewFlagSet("benchsheet", flag.ContinueOnError)
	flags.SetOutput(errs)
	file := flags.String("job", "", "job file to read; - for standard input; the demonstration if left out")
	page := flags.String("page", "", "write one printable HTML page with the pictures to this file")
	plots := flags.String("plots", "", "write the pictures singly into this folder, as SVG")
	png := flags.Bool("png", false, "with -plots, as PNG too")
	fresh := flags.Bool("new", false, "print an empty job to fill in")
	asJSON := flags.Bool("json", false, "print the report as JSON")
	if err := flags.Parse(args); err != nil {
		if err == flag.ErrHelp {
			return 0
		}
		return 2
	}
	if flags.NArg() > 0 {
		fmt.Fprintf(errs, "benchsheet: %q is not understood; name a job file with -job\n", flags.Arg(0))
		return 2
	}
	if *fresh {
		_, err := out.Write(job.Empty())
		return failed(errs, err)
	}
	data, err := read(*file, in)
	if err != nil {
		fmt.Fprintln(errs, "benchsheet:", err)
		return 1
	}
	report, err := job.Run(data)
	if err != nil {
		faults := fault.Faults(err)
		fmt.Fprintf(errs, "benchsheet: the job file has %d fault(s); nothing was computed\n", len(faults))
		for _, f := range faults {
			fmt.Fprintln(errs, "  "+f.Error())
		}
		return 2
	}
	switch {
	case *page != "":
		var b bytes.Buffer
		if err = writePage(&b, report); err == nil {
			err = os.WriteFile(*page, b.Bytes(), 0o666)
		}
	case *plots == "" && !*asJSON:
		err = writeText(out, report)
	}
	if err == nil && *plots != "" {
		err = writePictures(*plots, *png, report)
	}
	if err == nil && *asJSON {
		enc := json.NewEncoder(out)
		enc.SetEscapeHTML(false)
		enc.SetIndent("", "  ")
		err = enc.Encode(report)
	}
	return failed(errs, err)
}

// failed says an error, if there is one, and returns the exit status.
func failed(errs io.Writer, err error) int {
	if err == nil {
		return 0
	}
	fmt.Fprintln(errs, "benchsheet:", err)
	return 1
}

func read(file string, in io.Reader) ([]byte, error) {
	switch file {
	case "":
		return job.Demo(), nil
	case "-":
		return io.ReadAll(in)
	}
	return os.ReadFile(file)
}
