// Package setout puts a mask on a ceiling: the box it lands in and the borders
// left round it, and the marks along the four walls. The order in which the
// panels are hung is in hanging.
//
// Everything is in the room's own coordinates, looking up: x from wall DA
// towards BC, y from wall AB towards CD. Mirror gives the view looking down.
// Lengths are exact; rounding to a tape mark is asked of a Mark by name.
package setout
