// Package register says how a layer lies on the one before: from check marks
// measured on the ceiling it works out the shift and the turn of the layer,
// what is left at each mark, whether that is good enough, and what to do; and it
// chooses the key, the panel kept up for the next layer to be set against.
//
// Everything is in the frame of the box: origin at the box's own corner A, x
// along its length, y along its width, looking up. Walls name the sides of the
// box; which wall of the room a side faces, setout knows. Sums of squares and
// roots are float64 of millimetres and return to a Length at the edge, rounded
// to the nearest nanometre.
package register
