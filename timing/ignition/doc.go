// Package ignition says where the spark falls, where it should, and what would
// explain the difference.
//
//	task                                               use
//	a place as text, "38 BTDC", "11 mm BTDC"           ReadWhere, MustReadWhere
//	how magneto or distributor is driven               HalfSpeed, EngineSpeed, DriveOf
//	degrees from piston travel, or a mark on a rim     Where.Locate
//	piston travel from degrees                         TravelAt
//	a distance along a flywheel rim                    OnRim
//	degrees at magneto or distributor and at the crank Drive.AtShaft, Drive.AtCrank
//	fully retarded place from full advance and range   Drive.Retarded
//	what a change of points gap moves                  GapShift
//	spark needed earlier with speed, end of burning    SparkFor, Turned, BurnEnd
//	what is wrong, with odds, and what to turn         Diagnose
//
// Early is positive. Degrees are the crank's unless the type is units.Angle, which
// is that of the ignition shaft: magneto, distributor or points cam.
//
// Not covered: the electrical side (coil, condenser, magnet strength), the best
// advance for an engine, several cylinders fired unevenly.
package ignition
