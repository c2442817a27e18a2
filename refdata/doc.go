// Package refdata holds reference tables with the source and status of every
// figure, and the types that carry them: [Source], [Status], [Caution], [Basis].
//
//	task                                       use
//	a screw thread by name                     Threads().ByName("1/4-26 cycle")
//	all threads of one system                  ThreadsOf(BSF).All()
//	threads between two outside diameters      Threads().Between(lo, hi)
//	what a figure rests on                     Thread.ThreadOrigin, Origin.Sources
//	every table with its size and sources      Tables
//
// The tables are CSV text inside the program: values as printed with the unit
// in the header, and a source and a status for each group of columns. A table
// is read once, when it is first asked for. Rows are copies; nothing a caller
// does changes a table.
//
// Not covered: any maker's data.
package refdata
