// Package survey holds the surface as it was found: the room, its walls and
// corners, where the light fixture is, and the triangle that proves a corner.
//
// A room here is a rectangle: its length lies along walls AB and CD, its width
// along BC and DA. Corners A, B, C, D go clockwise looking up at the ceiling.
// x runs from wall DA towards BC, y from wall AB towards CD, both from corner
// A. What is put on the ceiling, mask and setout know.
package survey
