// Package spring is the mechanics of the two kinds of spring a clutch is
// pressed by, coil and disc, and of finding out which spring one holds.
//
//	task                                             use
//	rate of a coil spring from its dimensions        Rate, NewHelical
//	stress at a load, and the factors on it          Stress, LoadAtStress, Factor, Helical.At
//	solid length, least working length, pitch,
//	buckling, surge, strength                        Helical.Figures
//	load at a length, length at a load               Helical.At, Helical.Load, Helical.Deflection
//	a spring known by its rate alone                 NewLinear
//	a spring behind a lever                          NewLevered
//	load lost by a tired spring                      SetLoss
//	springs side by side or one inside another       NewParallel
//	springs end to end                               NewSeries
//	disc spring: load, rate, stresses, snap limit    NewDisc, Disc.At, Disc.Figures
//	discs stacked                                    NewStack
//	wire strength by size, with the fit named        Law, LawOf, Wires, Fits
//	stiffness of what it is made of                  Steel, ModulusOf
//	size a spring                                    WireFor, WireForLaw, CoilsFor, MeanFor, FreeFor
//	margin against fatigue, wire that has it         Fatigue, WireForFatigue, PatentedWire
//	rate through loads at several lengths            FitLine
//	rate by loads against rate by dimensions, and
//	what lies behind a difference                    Identify
//	which of several known springs it is, and
//	whether it is tired                              Match
//	whether the springs of a set are alike           Even
//	a line to draw                                   TraceOf
//
// Every kind of spring is an [Element]: load from deflection, deflection from
// load on the first rising branch, rate, and how far it goes. An Element never
// answers outside its travel.
//
// Not covered: extension and torsion springs, rectangular and tapered wire,
// conical coils, relaxation with heat, rubber, disc springs with contact flats
// narrower or wider than the standard's, and slotted discs beyond the change of
// lever arm in [Disc.Between].
package spring
