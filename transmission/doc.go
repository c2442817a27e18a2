// Package transmission answers one question about a multi-plate motorcycle
// clutch: it slips, it drags, or both - adjust it, or strip it, and what will be
// found?
//
//	task                                             use
//	between which turns of the spring nuts does it
//	both hold and free                               Clutch.Window
//	what happens at one setting: torque, lift,
//	hand load, slips, drags                          Clutch.At
//	the whole verdict on adjusting: window with its
//	uncertainty, chance that it is open, budgets,
//	repairs that reopen it, turns and flats to move  Adjust
//	which fault or mis-assembly explains the signs
//	and readings, and what to read next              Diagnose, KnownCauses
//	nuts counted by their flats                      NutTurns
//	free play and nuts set together                  Clutch.Region
//	a plate that lifts unevenly                      Clutch.Even
//	springs of a set that are not alike              Clutch.Mixed
//	what standing on the kick starter proves         Clutch.Kick
//	cable pull and leverage of the hand lever        HandLever.Pull, HandLever.Leverage
//	release arms, quick threads, ball ramps, rockers ReleaseArm, QuickThread, BallRamp, Rocker, PushRod
//	torque and pressure of a pack, its size          Plates.Carry, Plates.ClampFor, RingFor
//	what notched slots keep of it                    Plates.CarryFading
//	what a release weighed by balance and rule gives Weighed.Advantage, FitEffort
//	how many faces carry a torque                    Plates.FacesFor
//	friction of a lining, loss of a cable or screw   LiningFriction, CableEfficiency, ScrewEfficiency
//
// A clutch keeps two ledgers. Force: the springs press the plates together, and
// friction turns that into torque. Travel: the hand pulls so much cable, and
// free play, cable stretch, lost motion and plate clearance use it up. The
// spring nuts enter both, in opposite directions: further in, it holds more and
// frees less. The settings that satisfy both are the window. When faults have
// eaten it, every setting slips or drags, and at some it does both; turning
// nuts then only trades one for the other, and the useful question is which one
// repair opens it again.
//
// [Clutch] says how the clutch is made and what it is like when all is well;
// [Condition] says what was read on this one. Turns are counted inward from the
// nut flush with the end of its stud. All readings may be left out.
//
// Lengths inside the formulas are in millimetres, forces in newtons. The
// friction theory is that of the textbooks (uniform wear and uniform pressure);
// the two ledgers are plain statics and derived here.
//
// Springs by themselves are in package transmission/spring, ratios and chains
// in transmission/drive.
//
// Not covered: centrifugal and cone clutches, heat, judder, drag of cold oil, clutches
// inside an automatic drive. More than two faults at once show as the two that
// explain most, or as something not listed.
package transmission
