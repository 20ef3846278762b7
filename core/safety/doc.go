// Package safety reads the facts of a job and answers with notes for the
// people who will do it: the platform to ask for, and a table of rules on old paint,
// wires, ladders, decks, air, fire, rags and dust. The air itself is worked out in
// package air.
//
// It advises and never certifies. Where a fact is missing the less safe case is taken
// and said.
// Quantities of product come in ready made from package finish, lengths from
// survey and mask; nothing here knows a plan document.
//
// Every place named by a note or a problem is a pointer into the plan, such as
// "/access/by": the rules are about the plan as a whole, so, unlike in the
// other packages, the caller puts nothing in front.
package safety
