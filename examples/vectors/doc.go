// Vectors writes check values for front ends in other languages: the worked
// examples of published sources, and what this library answers on a grid of
// inputs, as one JSON file.
//
//	go run ./examples/vectors            writes the file to standard output
//	go run ./examples/vectors -o FILE    writes it to FILE
//	go run ./examples/vectors -coverage  lists the functions it calls, with the number of cases
//
// The committed file is vectors.json; vectors.schema.json is its JSON Schema
// (draft 2020-12); check.mjs shows a front end in JavaScript checking itself.
//
// # The form
//
// A file is {"schema", "library", "tables", "cases"}. A case has the form that
// package refdata/checks describes. Beyond it, a case that this library answered
// names the function as "function" and the sources of the answer, where the
// answer names them, as "rests_on"; its kind is "computed", and its source is
// this library, so that it is never mistaken for one computed apart from it.
// A figure is {text, value, unit, u}: value in the named unit, text for the
// reader, u the standard uncertainty, left out where there is none. Words stand
// as text alone; the name of a figure is its path in the arguments or in the result.
//
// A call that is refused has the single answer "fault", the codes of its faults.
//
// Not covered: sentences meant for a reader, which may change, and of a ranking
// more than its first three causes.
package main
