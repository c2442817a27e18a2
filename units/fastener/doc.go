// Package fastener answers the questions a restorer asks of threads, hexagons,
// drills and bolts.
//
//	task                                              use
//	which thread is this                              Identify
//	a thread by name, "1/4 BSF"                       Parse
//	every thread of the tables                        Threads
//	its diameters, depth, radii, stress area          Thread.Geometry
//	which way it undoes                               Thread.Turn
//	drill for a wanted engagement                     TappingDrill, TappingHole
//	engagement a hole gives                           Engagement
//	hexagon and spanner for a thread                  Hexagons
//
// Lengths are quantities of package units; a pitch may be read as "26 tpi" by
// [ParsePitch].
//
// Not covered: taper pipe threads, square and trapezoidal threads, several
// starts, wood and sheet screws, and any maker's own threads.
package fastener
