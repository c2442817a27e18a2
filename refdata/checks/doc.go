// Package checks holds check values as data: the worked examples of published
// sources, and figures computed apart from this library, each with its source,
// its tolerance and whether it reproduces.
//
//	task                                      use
//	every case, or one by its identifier      All, ByID
//	the topics, and the cases of one          Topics, ByTopic
//	a figure as a quantity                    Get
//	a figure as a place in the cycle          GetPosition
//	a figure as a pure number or list         Number, Numbers
//	whether an answer agrees with a case      Compare, Case.CompareNumbers
//
// # The form
//
// The files are JSON, one object a file: {"schema": 1, "cases": [case, ...]}.
// A case is
//
//	id          stable identifier, lower case with hyphens and points
//	kind        "published": printed by the source; "computed": computed apart
//	            from this library by the method the source names
//	topic       what is computed, lower case with hyphens
//	source      title, clause (example, table or page), read (where it was
//	            read, if not in the thing itself) and status (standard,
//	            published, derived, common practice, from memory)
//	inputs      the given figures by name
//	expected    the answers by name
//	reproduces  whether every answer comes out within its tolerance
//	not_reproduced  the names of the answers that do not, if any
//	note        what to know before using the case
//
// and a figure is
//
//	value    a number
//	values   a list of numbers, in place of value
//	unit     the unit, as package units writes it; "1" for a pure number. A
//	         unit that package units does not have stands as the trade writes it.
//	text     words, in place of value, where the given thing is not a number
//	printed  the digits the source prints
//	u        standard uncertainty, in the unit, where the source gives one
//	tol      {"rel": x} or {"abs": x}, of an answer: what the printed rounding
//	         allows, or what the note says; a few last bits of binary arithmetic
//	         are allowed besides, so {"abs": 0} is exact in that sense
//
// Not covered: any maker's data, and cases whose source does not print an
// answer unless they say "computed".
package checks
