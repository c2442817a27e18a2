// Package job runs the whole job on one file: what was read from one machine,
// what it means, how sure that is, what to do first, what was not checked.
//
//	task                                         use
//	from the bytes of a job file to a report     Run
//	the demonstration job                        Demo
//	one part of the report                       Report.Section
//
// # The job file
//
// A job file is JSON. Every figure is text with its unit, and may carry its
// standard uncertainty: "7.94 mm ± 0.02". Without one, the figure takes the
// default of the instrument it is usually read with, and the report says so.
// Every section may be left out; within a section only what the report says is
// needed must be there. A key that begins with "#" is a remark. Anything else
// that is not known, cannot be read or cannot be true is a fault with its path,
// all faults are returned together, and then nothing is computed.
//
// The embedded demonstration ([Demo]) shows every section.
//
// Not covered: electrics beyond spark timing, frame and brakes beyond a word in
// the order of work, and anything that the packages this one calls do not
// cover: see each package's own list.
package job
