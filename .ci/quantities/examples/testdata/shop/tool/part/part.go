// Package part belongs to a program.
package part

// Of is not counted.
func Of() {}
