// Command benchsheet reads one job file and prints what the bench has to say
// about it: order of work, findings with their odds, what to do first, what
// was not checked. Without -job it prints the embedded demonstration, an
// invented machine with invented readings.
//
//	benchsheet                 the demonstration
//	benchsheet -job FILE       a job of your own; "-" is standard input
//	benchsheet -json           the same as data
//
// Every fault of the job file is listed with its path, and the exit status is
// then 2. Status 1 is a failure to read or write.
package main

import (
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
	if *asJSON {
		enc := json.NewEncoder(out)
		enc.SetEscapeHTML(false)
		enc.SetIndent("", "  ")
		err = enc.Encode(report)
	} else {
		err = writeText(out, report)
	}
	if err != nil {
		fmt.Fprintln(errs, "benchsheet:", err)
		return 1
	}
	return 0
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
