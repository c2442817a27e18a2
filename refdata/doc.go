// Package refdata holds reference tables with the source and status of every
// figure, and the types that carry them: [Source], [Status], [Caution], [Basis].
//
//	task                                          use
//	a screw thread by name                        Threads().ByName("1/4-26 cycle")
//	all threads of one system, the systems        ThreadsOf(BSF).All(), Systems
//	threads between two outside diameters         Threads().Between(lo, hi)
//	drills and wire by number, letter, gauge      NumberDrills, LetterDrills, MetricDrills, WireGauge
//	hexagons and spanners                         WhitworthHexagons, WhitworthSpanners,
//	                                              UnifiedHexagons, BAHexagons, MetricHexagons
//	strength of a bolt by its marking             PropertyClassAt, GradeAt, PropertyClasses, Grades
//	linings, springs, chain, tyres                Friction, FrictionMaterials, SpringModuli,
//	                                              SpringStrengths, DiscSprings, Chains, Tyres
//	fuels, exhaust, jets, slides                  Fuels, ExhaustGases, JetDrills, JetCoefficients,
//	                                              SlideCutaways, ThrottleInfluences
//	where to begin with a carburettor             BeginAt, StartingPoints
//	air                                           StandardAtmosphere, MoistAirDensities
//	gears, dial gauges, valve timings of books    GearModules, GearBacklashes, LeastBacklashes,
//	                                              DialGauges, ValveTimings
//	is this part worn, is this gap right          CheckLimit, CheckLimits, WorkshopLimits, PlugThreads
//	what a figure rests on                        Origin.Sources, the Sources method of every row,
//	                                              Practice
//	a figure or range that may be open            Known, RangeOf
//	every table with its size, hash and sources   Tables, Hash
//	figures on which published tables differ      Disagreements
//	what was left out on purpose                  LeftOut
//
// The tables are CSV text inside the program: values as printed with the unit in
// the header, and a source and a status for each group of columns. Printed and
// derived columns stand apart: a derived one says so in its status, or in its name,
// which begins with computed. A table is read once, when it is first asked for.
// Rows are copies; nothing a caller does changes a table.
//
// A row holds what the table has and nothing else. A figure that the table does
// not have is a [Figure] that is unknown. Where two sources differ both are served
// or the difference is listed, and no figure is mended in silence.
//
// Not covered: any maker's data; tolerances of threads; anything that is computed
// from a row, such as the tapping drill for an engagement, which is the business of
// the package whose question it is. LeftOut has the whole list.
package refdata
