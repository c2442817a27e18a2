// Package carburation answers where to start with a carburettor and what to
// change next, for an old single on one needle-and-slide carburettor.
//
//	task                                          use
//	starting bore, main jet, slide, needle and
//	pilot, and which parts of a carburettor from
//	another machine are outside                   Start
//
// What is served from the trade's table is a range to begin from and common
// practice without a source; what is computed is a band. They stand side by
// side, and where they disagree the result says so.
package carburation
