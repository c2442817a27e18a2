// Package measure holds readings with their uncertainty and weighs causes by
// them.
//
//	task                                        use
//	a reading from text, "7.94 mm ± 0.02"       Read, ReadPosition, MustRead, MustReadPosition
//	a reading from figures                      Of, By, Exact
//	where the crank stood, from figures         At, AtBy
//	a reading in the reader's own unit          Reading.In
//	what an instrument is good for: lengths     Caliper, Micrometer, DialGauge, FeelerGauge, Rule,
//	                                            PitchGauge
//	angles, loads, pressures, air               DegreeDisc, Protractor, SpringBalance,
//	                                            CompressionGauge, LeakGauge, Barometer, Thermometer
//	a count; a figure off a drawing; your own   Count, Nominal, Instrument
//	two bounds with nothing said between        Between
//	uncertainty of a computed figure            Propagate, MonteCarlo
//	which reading is worth taking better        BudgetOf
//	one figure read several times               Repeat
//	± that holds 95 in 100, few readings        Coverage, Freedom
//	a balance or gauge checked along its scale  Calibrate
//	which cause explains the readings           Rank
//	how many causes to keep in mind             Ranking.Within, Ranking.Suspects, Ranking.Holding
//	the leader, its rivals, what is ruled out   Ranking.Leader, Ranking.Suspects, Ranking.Within,
//	                                            Ranking.Holding, Ranking.LikeLeader
//	a cause that shifts readings by a known or
//	unknown amount                              Gaussian
//	many causes that differ only in the mean    Precision
//	the next reading to take                    Next
//
// The figure after ± is a standard uncertainty: one standard deviation, as the
// Guide to the Expression of Uncertainty in Measurement (GUM, JCGM 100:2008)
// uses the word. A bare figure takes its instrument's default and says so; it
// is never exact unless asked for by name.
//
// The ranking engine serves all trades. A cause gives the logarithm of the
// likelihood of the readings; the engine turns likelihoods and priors into
// shares that add up to one, puts the causes best first, keeps "something
// else" in the list, and groups the causes that the readings cannot tell apart.
//
// Not covered: fitting of curves other than a straight line, and correlated inputs
// beyond errors common to several readings.
package measure
