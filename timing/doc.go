// Package timing answers the restorer's first question of an engine: is the
// valve timing wrong, why, and what is to be moved?
//
//	task                                               use
//	centre, duration, overlap from event readings      LobesOf
//	what is wrong, with odds, and what to do           Diagnose
//	an event as text, "inlet opens 25 BTDC at 1 mm"    ParseEvent
//
// Angles are degrees of the crank unless the type says cam. A shift is positive
// when events come earlier: advance. The place of an event is a
// units.CrankPosition, "25 BTDC"; what a disc showed is a measure.Position,
// which carries its uncertainty and may be "not taken".
//
// Two turns of the crank make one cycle, and a disc on the crank cannot tell one
// from the other. Readings are therefore compared round a circle of one turn:
// 350° late is 10° early. Which turn is meant is asked for apart, see
// [Readings.Sequence] and [Readings.Spark].
//
// Not covered: engines whose cams do not turn at half speed, which are refused;
// sleeve and rotary valves; spring surge and valve bounce; the mechanics of
// wheels, crank, cams and spark, which are in the packages below this one.
package timing
