// Package measure holds the numbers of the trade: lengths, areas, volumes and
// exact ratios, with the units people write them in.
//
// A Length is a whole count of nanometres, the coarsest decimal unit in which
// every mark of an inch tape down to 1/64 and every metric mark is whole.
// Areas and volumes come from Number, an exact fraction: two lengths multiplied
// as int64 nanometres overflow at 9.2 m². Nothing here rounds unless its name
// says so. What a room or a mask is, other packages know.
package measure
