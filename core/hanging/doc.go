// Package hanging works out in which order the panels of a layer are hung, what
// each edge of a panel is set to as it goes up, from which place of the
// platform it is hung, and what must come down again when one is up crooked.
//
// Everything is in the box's own frame, looking up: x along the length of the
// mask, y along its width, from the box's own corner A. Sides are named by the
// walls of a box that lies as the room does. Where the box lies on the ceiling,
// and which wall of the room a side then faces, is setout's.
package hanging
