// Package hanging works out in which order the panels of a layer are hung, and
// what each edge of a panel is set to as it goes up.
//
// It knows the box and the layer's columns and rows, not the room: where the
// box lies on the ceiling is setout's.
package hanging
