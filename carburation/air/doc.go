// Package air gives the state of the air an engine breathes.
//
//	task                                          use
//	standard air at a height                      Standard, StandardGeometric, ISO2533
//	that air as weather                           Atmosphere.Weather
//	height at which standard air has a pressure
//	or a density                                  PressureHeight, DensityHeight
//	geometric height to geopotential and back     Geopotential, Geometric
//	older textbook law of height                  LogLaw
//	moist air by CIPM-2007                        Moist
//	moist air by the simple form                  MoistSimple
//	pressure of saturated vapour                  SaturationOverWater, SaturationOverIce, SaturationCIPM
//	how much this day's air differs from that
//	day's                                         Compare
//	power reduced to a rule's reference air       PowerFactor
//	power at another site, ISO 3046 style         SitePower
//
// Pressures are absolute and are those of the place itself: a figure from a
// weather report is reduced to sea level and must be brought back first.
//
// Not covered: dew and frost points, fog and rain, air above 32 km, and any
// correction for engines that are not blown by the atmosphere alone.
package air
