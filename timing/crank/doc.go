// Package crank holds the slider-crank: where the piston stands, how fast it
// moves, where its dead centres are, and what it squeezes.
//
//	task                                               use
//	piston travel at a crank position                  Slider.Travel
//	crank position at a piston travel, both sides      Slider.Positions
//	velocity, acceleration, jerk, swing of the rod     Slider.Motion
//	the textbook's two-term series                     Slider.TwoTermMotion
//	greatest and mean piston speed                     Slider.GreatestSpeed, Slider.MeanSpeed
//	stroke and dead centres with an offset cylinder    Slider.DeadCentres
//	side thrust and torque from a force on the piston  Slider.Forces
//	true TDC from a positive stop                      FindTDC
//	how far off TDC a gauge alone may be               Slider.TopDoubt, EccentricDoubt
//	displacement, volume, compression ratio            Cylinder
//	compression left from inlet closing                Cylinder.TrappedAt
//	what the gauge should show, what the leg must do   Cylinder.Cranking
//	what a leak-down test says as a hole               LeakTester
//	pressure, heat and ratio by a polytropic           CompressedPressure, CompressedTemperature,
//	                                                   RatioOfPressures, RatioOfTwoPressures
//
// Positions are counted from the piston's own dead centres; travel is positive
// downwards from TDC. Formulas are for a rigid crank without bearing play.
//
// Not covered: balance, bearing loads, the gas side once the mixture burns, and
// the volume and valve of a compression gauge itself.
package crank
