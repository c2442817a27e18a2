// Package carburation answers where to start with a carburettor and what to
// change next, for an old single on one needle-and-slide carburettor.
//
//	task                                          use
//	starting bore, main jet, slide, needle and
//	pilot, and which parts of a carburettor from
//	another machine are outside                   Start
//	a jet in another marking                      ReadJet, Jet.Size
//	a slide's number as a height                  CutawayOf
//	a jet timed at the bench                      FallingHead, FlowAt, EmptyingTime
//	air an engine draws                           Intake
//	a choke: flow, suction, size                  Choke, Suction, ChokeArea, Expansibility
//	fuel through a jet over a lip                 Orifice, ParallelBore, Reynolds
//	choke and plain jet, air cleaner              PlainJet, CleanerMixture
//	jet, air bleed and outlet                     Emulsion
//
// What is served from the trade's table is a range to begin from and common
// practice without a source; what is computed is a band. They stand side by
// side, and where they disagree the result says so.
package carburation
