// Package safety reads the facts of a job and answers with notes for the
// people who will do it: the platform to ask for, the air the room needs, and
// a table of rules on old paint, wires, ladders, decks, air, fire, rags and dust.
//
// It advises and never certifies. What it works out about air is a screening
// figure from a well mixed room: the painter's face is nearer the wet film than
// the model is. Where a fact is missing the less safe case is taken and said.
// Quantities of product come in ready made from package finish, lengths from
// survey and mask; nothing here knows a plan document.
//
// Every place named by a note or a problem is a pointer into the plan, such as
// "/access/by": the rules are about the plan as a whole, so, unlike in the
// other packages, the caller puts nothing in front.
package safety
