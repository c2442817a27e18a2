// Package job runs the whole job on one file: what was read from one machine,
// what it means, how sure that is, what to do first, what was not checked.
//
//	task                                         use
//	from the bytes of a job file to a report     Run
//	the demonstration job, an empty one          Demo, Empty
//	one part of the report                       Report.Section
//	what a table of lift came to                 TimingResult, LiftCurve
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
// A cam may be read as a table of lift against the disc instead of by its events:
// at even steps, or place by place. The curve drawn through it gives the events,
// the greatest lift and the room between valve and piston; an event that was read
// by itself rules. The book's lobe may be such a table too.
//
//	"inlet_curve": {"from": "70 BTDC", "every": "10° crank", "lifts": ["0 mm", "0.02 mm", ...]}
//	"inlet_curve": [{"at": "70 BTDC", "lift": "0 mm"}, {"at": "55 BTDC", "lift": "0.04 mm"}, ...]
//
// TDC is there the one between exhaust and inlet, BDC the one of the cam's own
// stroke; 100 ATDC is as good as 80 BBDC.
//
// A leak-down test stands under first_look, two pressures or a part lost:
//
//	"leak_down": {"supply": "6 bar", "held": "4.8 bar"}, "leak_heard_at": "exhaust"
//
// The embedded demonstration ([Demo]) shows every section.
//
// Not covered: electrics beyond spark timing, frame and brakes beyond a word in
// the order of work, and anything that the packages this one calls do not
// cover: see each package's own list.
package job
