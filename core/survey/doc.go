// Package survey holds the surface as it was found: the ceiling's shape, its
// walls and corners, where the light and the obstructions are, and the triangle
// that proves a corner.
//
// A Room is what was measured, in one of five forms; Find makes a Shape of it and
// says how well it is known, what the readings miss each other by and what to
// measure again. What needs the ceiling takes the Shape: it has no opinion on
// how it was measured. Corners A, B, C and on go clockwise looking up at the
// ceiling; A is at the origin, B on +x, and the room lies on the +y side of AB,
// so that in a rectangle x runs from wall DA towards BC and y from AB towards CD.
//
// Corners are whole nanometres. A rectangle is exact; corners that take square
// roots or a least-squares adjustment are worked out in millimetres as float64,
// with every product rounded by itself so that all processors agree, and come
// back to the nearest nanometre. What is put on the ceiling, mask and setout
// know.
package survey
