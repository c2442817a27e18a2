// Package refdata holds reference tables with the source and status of every
// figure, and the types that carry them: [Source], [Status], [Caution], [Basis].
//
// Not covered: any maker's data.
package refdata
