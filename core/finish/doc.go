// Package finish works out what a finish takes: paint and how many cans of it,
// mixes, metal leaf in leaves, books and packs, the size it is laid on, and
// seam tape in rolls.
//
// Areas come in as values; which area a step covers (the whole surface, the
// border, the openings of a layer) its caller knows. Everything is exact: a
// result is rounded up only where a thing is sold or laid whole, and every
// result keeps the values between, so that the working can be shown. Shares
// (loss, waste, cover, reserve) are fractions: 0.12 is 12 per cent. Pointers
// of problems are relative to the value handed in, with the names that the
// plan uses for the same blanks.
//
// When a coat dries and when a size can be gilded, and whether fumes or lead
// are a danger, other packages say. The figures here are a plan for buying:
// the label of the product decides.
package finish
