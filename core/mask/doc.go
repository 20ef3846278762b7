// Package mask holds the stencil itself: its layers, the panels each is cut
// into, their labels, the seams between them, and what the panels add up to
// against the box they must land in.
//
// A mask knows no room. Columns are counted along its length, rows along its
// width; where it goes on the ceiling, setout knows.
package mask
