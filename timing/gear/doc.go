// Package gear holds the wheels between the crank and what it drives: what a
// train turns, what a tooth is worth, and what a wheel in the hand is.
//
//	task                                            use
//	ratio of a train, as whole numbers              Simple, Train.Then, Train.Ratio
//	a drive with branches to both cams              Drive
//	is it a four-stroke cam train                   Train.CheckHalfSpeed, Drive.CheckHalfSpeed
//	what one tooth is worth at cam and crank        Train.ToothWorth, Train.CamToothWorth, Drive.Steps
//
// An advance is positive. Ratios and worths are exact fractions ([Rational]).
package gear
