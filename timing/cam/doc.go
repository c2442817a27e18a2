// Package cam holds the cam itself: its lift curve, what the valve makes of it,
// which cam it is, and what keeps it on its shaft.
//
//	task                                               use
//	a lift curve from readings, noisy and uneven       Fit
//	a lift curve from a table at even steps            InterpolateEven
//	lift, velocity, acceleration, jerk                 Curve.Lift, Curve.Motion, Motion.At
//	opening and closing at any check lift              Curve.Events, Fitted.Doubts, Place
//	centre of the lobe, by four definitions            Curve.Centres
//	area under the lift, over angle and time           Curve.Area
//	overlap of two cams                                OverlapOf
//	the cam moved, or on back to front                 Curve.Advanced, Curve.Reversed
//	lift at the valve: rocker geometry, clearance      Valve, Rocker
//	what another clearance does                        Valve.WithClearance, Valve.ClearanceFor
//	the same cam under another follower                Curve.WithFollower, Curve.Contact
//	the followers                                      Flat, Radiused, Roller, Swinging
//	the speed at which the follower leaves the cam     Valve.LiftOff, Parts
//	area opened by the valve                           Seat, Valve.FlowArea, PortFor
//	standard motions; cams of arcs and tangents        Rise, ArcCam, TangentCam
//	which known cam an unmarked one is                 Identify
//	what holds it: press fit, taper, key, splines      PressFit, Taper, Key, Splines, Friction
//	stress in a hub, what a slack key turns            Lame, KeySlack
//	how a taper bears that has slipped                 Taper.Bedded
//
// Angles are those of the camshaft, growing in the running direction; [CrankSample]
// and [Place] are the ways from and to the crank. Derivatives are by camshaft degree,
// in millimetres. Curves are ready for any drawing package that asks for Len and XY.
//
// Followers are flat, round (a roller or a radiused foot), or round on a lever.
//
// Not covered: contact pressure, strength and wear of cam and follower; followers
// offset from the cam's axis; spring surge; bending of the valve gear.
package cam
