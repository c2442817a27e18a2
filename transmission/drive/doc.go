// Package drive is the gearing of a motorcycle from crankshaft to road.
//
//	task                                             use
//	exact ratio of pairs and trains                  Pair, Train, Ratio, NewRatio, ParseRatio, OneToOne
//	gearbox from teeth, or from its printed ratios   NewLayshaft, BoxOf, NewBox
//	which set of gears a box holds                   IdentifyBox
//	overall ratios, road speed and engine speed in
//	each gear, gaps                                  Line.Table, Line.SpeedAt, Line.EngineAt
//	which sprockets give a wanted overall ratio      SprocketOptions
//	chain length, centre distance, link parity       ChainLength, CentreFor, FitChain
//	chain wear by measured length, tooth sharing     ChainWear, WearSharing
//	chain speed, pull and safety                     ChainPull
//	which chain an unmarked one is                   IdentifyChain
//	outline of a sprocket, pitch of an unmarked one  FormOf, PitchDiameter, PitchFor
//	tyre by its code                                 ParseTyre
//	rolling circumference                            Tyre.Rolling, RollOut
//	modern sizes near to an old one                  Tyre.Equivalents
//	road load, top speed                             RoadLoad, TopSpeed
//	drag and rolling resistance from a run down      CoastDown, DragAreaFrom, RollingAt
//	gearing for solo and sidecar                     Suit, Compare
//	top speed in each gear on a power curve          InGears, NewCurve
//	ratio for the strongest pull                     BestPull
//	speedometer drive and error                      ReadSpeedometer, SpeedometerDrive,
//	                                                 GreatestIndicated
//	lines to draw                                    Line.Sawtooth, Thrusts, Curve
//
// Ratios are driven over driver: above one is a reduction. They are exact
// fractions, so that products never round.
//
// Not covered: belts, shaft drive's bevel geometry, epicyclic hub gears, chain
// power rating charts, tyre slip and growth, and transient acceleration times.
package drive
