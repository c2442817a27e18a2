// Package crank holds the slider-crank: where the piston stands, how fast it
// moves, and what it squeezes.
//
//	task                                            use
//	piston travel at a crank position               Slider.Travel
//	crank position at a piston travel, both sides   Slider.Positions
//
// Positions are counted from the piston's own dead centres.
package crank
