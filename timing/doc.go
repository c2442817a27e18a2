// Package timing answers the restorer's first question of an engine: is the
// valve timing wrong, why, and what is to be moved?
//
//	task                                               use
//	readings and a specification from text             ReadEvents, ReadLobe
//	a specification from a lift curve                  LobeOf
//	centre, duration, overlap from event readings      LobesOf
//	what is wrong, with odds, and what to do           Diagnose
//	compression dry and wet, leak-down test            Readings, LeakTest, Compression
//	only the odds, only the shifts                     Causes, Phases
//	what can be moved on an engine                     MovesOf
//	the best combination of moves, and the choices     NewPlan, Plan.Best, Plan.Menu
//	room between valves and piston                     Head.Gaps
//	an event as text, "inlet opens 25 BTDC at 1 mm"    ParseEvent
//	a drive by its teeth                               TwoCamwheels, OneCamwheel
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
// Causes are the mistakes the declared drive allows - a tooth at each mesh, the
// whole train, a keyway, a cam slipped on its wheel, two of these at once - and
// the others that make cams seem wrong: a mark, a disc read backwards, a
// clearance, a check lift, another cam, cams exchanged or back to front, a worn
// lobe, another follower, a valve held off its seat, a misread event. What the
// readings cannot tell apart carries the same Group in Result.Causes.
//
// A compression test and a leak-down test weigh beside the events: a valve that
// stands open where the air was let in, by its lifter, a tight clearance or a cam on
// the wrong turn, against rings, seats and joint, which are no fault of the timing.
// What was not tested is averaged over.
//
// The ranking is judged in this package's tests on engines made up at random,
// against an exact posterior that shares no code with it.
//
// Not covered: engines whose cams do not turn at half speed, which are refused;
// sleeve and rotary valves; spring surge and valve bounce; the mechanics of
// wheels, crank, cams and spark, which are in the packages below this one.
package timing
