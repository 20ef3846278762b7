// Package setout puts a mask on a ceiling: the box it lands in, the borders left
// round it, the marks along the walls, and what is cut for in the panels. The
// order in which they are hung is in hanging.
//
// A Site is a ceiling of any shape with what a mask can be centred on; a Way
// says what the box is centred on and square to. Both are in the room's own
// coordinates, looking up. A Box has a frame of its own, in which panels, seams
// and pieces lie; In and Out lead from one to the other. Mirror gives the view
// looking down.
//
// Where the box stands as the walls of a rectangular room do, every length is
// exact. Elsewhere places and distances are worked out in float64, written so
// that no processor fuses them, and are right to the nearest nanometre or two.
package setout
