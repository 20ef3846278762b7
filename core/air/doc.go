// Package air works out what the paints of a job do to the air of a room: how much
// solvent is in it from the first coat on, how that stands against what people may
// breathe, how much fresh air it takes, and what the law lets a coating hold.
//
// All of it is screening figures from a well mixed room: the painter's face is nearer
// the wet film than the model is. Where a fact is missing the less safe case is taken
// and said.
package air
