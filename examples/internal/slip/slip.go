// Package slip writes the slips of paper that the small example programs hand
// out: lines of at most eighty columns, each saying in a word how sure it is.
//
//	task                                          use
//	read the flags, saying if the readings are    Flags
//	the program's own invented ones
//	stop at a fault in what was given             Need, Refuse
//	what follows from arithmetic alone            Certain
//	what the odds are                             Odds
//	what was taken for granted, was not looked
//	at, may hurt someone                          Basis
//
// Not covered: pages, tables and pictures, which the bench sheet has.
package slip

import (
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"example.com/benchbook/refdata"
	"example.com/benchbook/units/fault"
	"example.com/benchbook/units/measure"
)

// columns is how wide a line may be, and indent how far what follows a word stands in.
const (
	columns = 80
	indent  = 10
)

// Flags reads the command line. Nothing but flags is understood; with none at all
// the readings are the program's own, and the slip says so.
func Flags() {
	flag.Parse()
	if flag.NArg() > 0 {
		Refuse(fmt.Errorf("%q is not understood: figures are given by name, see -h", flag.Arg(0)))
	}
	if flag.NFlag() == 0 {
		Say("invented", "no reading was given: these are of a machine that does not exist")
	}
}

// Need returns v, or refuses if there is an error.
func Need[T any](v T, err error) T {
	if err != nil {
		Refuse(err)
	}
	return v
}

// Refuse writes every fault to standard error and ends the program with status 2.
func Refuse(err error) {
	for _, f := range fault.Faults(err) {
		fmt.Fprintf(os.Stderr, "%s: %s\n", strings.TrimSuffix(filepath.Base(os.Args[0]), ".exe"), f.Error())
	}
	os.Exit(2)
}

// Say writes a text beside a word of the margin, folded.
func Say(word, format string, args ...any) {
	line, margin := "", fmt.Sprintf("%-*s", indent, word)
	for _, w := range strings.Fields(fmt.Sprintf(format, args...)) {
		if line != "" && indent+len([]rune(line))+1+len([]rune(w)) > columns {
			fmt.Println(margin + line)
			line, margin = "", strings.Repeat(" ", indent)
		}
		if line != "" {
			line += " "
		}
		line += w
	}
	fmt.Println(strings.TrimRight(margin+line, " "))
}

// Certain writes what follows from the readings by arithmetic.
func Certain(format string, args ...any) { Say("certain", format, args...) }

// Odds writes the causes that matter, likeliest first, at most four, and what
// should be read next.
func Odds(r measure.Ranking, next []measure.Gain) {
	for i, o := range r.Odds {
		if i == 4 || i > 0 && o.Percent < 2 {
			break
		}
		Say("likely", "%s: %s (%d %%)", o.Words(), o.Text, o.Percent)
	}
	if len(next) > 0 {
		Say("next", "what would tell most: %s", next[0].Text)
	}
}

// Basis writes what was taken for granted, what stays unknown and what would
// settle it, and every caution.
func Basis(b refdata.Basis) {
	for _, a := range b.Assumed {
		Say("taken", "%s: %s (%s)", a.What, a.Value, a.Status)
	}
	for _, u := range b.NotChecked {
		text := u.What + ": " + u.Why
		if u.Settle != "" {
			text += "; to settle it: " + u.Settle
		}
		Say("unknown", "%s", text)
	}
	for _, c := range b.Cautions {
		Say("care", "%s", c.Text())
	}
}

// Missing is the fault of a figure that is needed.
func Missing(name string) error {
	return fault.Fault{Code: fault.Missing, Path: name, Rule: "is needed"}
}
