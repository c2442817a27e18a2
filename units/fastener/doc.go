// Package fastener answers the questions a restorer asks of threads, hexagons,
// drills and bolts.
//
//	task                                              use
//	which thread is this                              Identify
//	a thread by name, "1/4 BSF"                       Parse, MustParse
//	a thread of no system                             Of
//	every thread of the tables                        Threads
//	a pitch as "26 tpi"                               TPI, ParsePitch, ReadPitch
//	diameters, depth, radii, stress area              Thread.Geometry
//	limits of size                                    Thread.Limits
//	which way it undoes                               Thread.WithHand, Thread.Turn
//	what must never be mixed with it                  TwinsOf
//	what may replace it or be cut instead             StandInsFor
//	how a bolt goes into another thread's nut         Mate
//	drill for a wanted engagement                     TappingDrill, TappingHole
//	engagement a hole gives                           Engagement
//	sets of drills                                    Drills, MetricDrills, FractionDrills,
//	                                                  NumberDrills, LetterDrills
//	wire and drill gauges, both ways                  Gauge
//	hexagon and spanner for a thread                  Hexagons
//	which spanner of a set fits these flats           SpannersFor, Spanners
//	how far to tighten, and by what torque            Tighten, TorqueFor, TensionFor
//	how strong a bolt of a marking is                 Class, Grade
//	friction of a joint                               Dry, Oiled, Greased, SameFriction
//	what strips first, how much thread is needed      Strip, UsualEngagement
//	what the hole is made of                          LightAlloy, CastIron, MildSteel, BrassStock,
//	                                                  MaterialOf
//
// From a box of unmarked bolts to advice is Identify, then whatever is asked of
// Identification.Thread. Nothing tells the hand of a thread but a look at it, so
// advice on turning is refused until Thread.WithHand has been told.
//
// Threads, drills, hexagons and strengths come from package refdata with their
// sources; the sections are computed from the forms and tested against the
// tables. What rests on memory or judgement says so in the basis of the result.
//
// Not covered: taper pipe threads, square and trapezoidal threads, several
// starts, wood and sheet screws, fatigue, gaskets and joints that part, and any
// maker's own threads or torques.
package fastener
