// Package cam holds the cam itself: its lift curve, what the valve makes of it,
// and what keeps it on its shaft.
package cam
