// Vectors writes check values for front ends in other languages: the worked
// examples of published sources, and what every function of this library answers
// on a grid of inputs, as JSON.
//
//	go run ./examples/vectors            writes all cases to standard output
//	go run ./examples/vectors -o FILE    writes an index to FILE, and the cases to files beside it
//	go run ./examples/vectors -coverage  lists the functions it calls, with the number of cases
//
// The committed index is vectors.json; it names one file of cases for each
// package, and one for the published ones, in the folder cases. The forms are in
// index.schema.json and vectors.schema.json (JSON Schema, draft 2020-12);
// check.mjs shows a front end in JavaScript checking itself.
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
// as text alone.
//
// # Asking the same
//
// The name of an input is that of the argument, a receiver first, and below it
// the path of the field: "slider.rod". What is left out has its zero value, which
// means the default that the field's documentation states. Entries of a list are
// numbered from 0; one with nothing in it is "-". Where an argument has no form of
// its own, such as a lift curve, the inputs are what it is made of and "note"
// says how. Nothing else is needed: a test of this program asks every case again
// from the committed files alone.
//
// The name of an answer is its path in the result, or "answer" where the result
// is one figure; of several results each has a name of its own. A list has its
// "count" and its first three entries. An answer of no words and no things is
// "(nothing)". Of a long verdict only some parts are written, those that another
// program can compare.
//
// A call that is refused has the single answer "fault": each fault's path and
// code, "slider.rod out-of-range", with "; " between.
//
// # Asking more
//
// A chapter asks a function by handing it to book.ask with the names of its
// arguments and rows of values. A test fails if an exported function that computes
// something is in no chapter, is asked only once, or refuses nothing; the few
// exceptions have their reasons beside them.
//
// Not covered: sentences meant for a reader, which may change, and of a ranking
// more than its first three causes.
package main
