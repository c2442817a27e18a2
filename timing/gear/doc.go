// Package gear holds the wheels between the crank and what it drives: what a
// train turns, what a tooth is worth, and what a wheel in the hand is.
//
//	task                                            use
//	ratio of a train, as whole numbers              Simple, Train.Then, ParseTrain, Train.Ratio,
//	                                                NewRational
//	a drive with branches to both cams              Drive
//	is it a four-stroke cam train                   Train.CheckHalfSpeed, Drive.CheckHalfSpeed
//	what one tooth is worth at cam and crank        Train.ToothWorth, Train.CamToothWorth, Drive.Steps
//	the finest shift whole teeth can make           Train.FinestStep, FinestStep
//	how often marks meet                            Train.MarksMeet, Hunting
//	what keyways and vernier holes are worth        Keyed, Vernier
//	shims under a helical wheel                     Helical
//	backlash as lost motion at the crank            Train.LostMotion, Normal, Circumferential,
//	                                                BacklashOpened
//	sizes of a wheel, spans, over pins              Wheel
//	module from diametral or circular pitch         OfDiametralPitch, OfCircularPitch, DiametralPitch
//	contact ratio, working centre, sliding          Meshing
//	least teeth, addenda, teeth for a centre        LeastTeeth, Meshing.AddendumForArc, TeethFor
//	spindles that cross                             CrossedFor
//	forces between teeth                            Load
//	module of an unknown wheel                      Identify
//	sun, planets and annulus                        Planetary, PlanetaryOf, PlanetaryFor
//	any train with its arm let go                   Epicyclic, EpicyclicOf
//	torque on a member that is held                 Epicyclic.Torques, HoldTorque
//
// An advance is positive. Ratios and worths are exact fractions ([Rational]); tooth
// sizes are those of perfect involutes without backlash allowance.
//
// Not covered: bevel teeth beyond their ratio, worms, strength and wear of teeth,
// chain geometry.
package gear
