// Package units holds the quantities of the workshop as types, and their text.
//
// Every quantity is a defined float64: [Length] in millimetres and angles in
// degrees, so that workshop fractions and whole degrees are exact; everything
// else in coherent SI units. A constant reads as 3 * units.Millimetre, a
// variable as [Millimetres](x); numbers come out through accessors such as
// Length.Inches. Within this module only accessors, constructors and the
// methods Times and Ratio touch the number.
//
//	task                                     use
//	read text                                ParseLength ..., Parse, ParseNoted, MustParse
//	write text                               String, In, MarshalText, WithUncertainty,
//	                                         WithUncertaintyIn
//	what to show beside an empty field       Example, Name
//	workshop fraction                        NearestFraction
//	crank and cam degrees                    CrankAngle, CamAngle, CamAngle.AtCrank
//	a place in the cycle, "25 BTDC"          CrankPosition, ParsePosition, Before, After
//	numbers in and out of generic code       FromSI, FromFigure, Finite
//	faults of the text                       package units/fault
//	readings with an uncertainty             package units/measure
//	root of a function of one quantity       package units/solve
//
// Text may hold whole numbers, decimals, fractions, mixed numbers, Unicode
// fractions and primes: 5/16 in, 1 3/8", 12.7mm, 8 thou, 5' 11½", 45°30',
// 16° crank. The wanted type leads: a Force takes "28 lb" as pounds-force,
// a Mass as pounds. A unit of several sizes (gallon, ton, hp, pint) is refused
// with the choices.
//
// Exactness: n/64 in up to 4 in, whole degrees, degrees with minutes, and the
// text of any value read back are exact; conversions are otherwise good to one
// unit in the last place.
//
// Not covered: wire, drill and thread gauges (package units/fastener),
// currency, electrical units, and arithmetic that changes dimension: formulas
// take SI numbers out, work, and put the answer back in its type.
package units
