// Package trial tries a job with some of its readings moved: what would the
// bench say if the spring nuts stood two flats further in, or the inlet cam ten
// degrees later, or the main jet a tenth larger? It is what the browser page of
// this folder runs on.
//
//	task                                          use
//	read a job file, list its faults              Open
//	which parts have something to move            Trial.Panels
//	which readings can be moved, and where now    Trial.Controls
//	move one                                      Trial.Move
//	put all of them back                          Trial.Back
//	what one part of the bench then says          Trial.Panel
//	its finding, picture and odds only, at once   Trial.Quick
//	the job file with the readings as moved       Trial.File
//
// A move changes the text of the job file, which is then read and worked by
// package job like any other, the sections concerned alone: the answers are
// the bench sheet's own. A reading that was not moved keeps its text.
//
// Not covered: readings without a control; edit the job file for those. What was
// seen on the road or stand is not guessed anew when an adjuster moves, since
// only trying shows it; it has controls of its own.
package trial
