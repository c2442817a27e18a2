// Package draw writes the pictures of the browser page as SVG text: small, quick
// enough to be drawn anew while a control moves, black on white, with letters of
// one size whatever the width, so that a telephone shows them as well as paper.
//
//	task                                        use
//	torque and lift over turns of the nuts      Window
//	valve lift, specified and read              Lobes
//	the same round the crank circle             Circle
//	mixture over the throttle                   Mixture
//	odds as bars                                Bars
//
// Pictures for the printed sheet are in examples/picture. Not covered: scales
// that the reader can change.
package draw
