// Package price works out what a job costs and what to ask for it: lines with
// their amounts and rates, contingency, overhead, markup or margin, a least
// charge, rounding up, tax, the payments, and the client's copy without the
// rates.
//
// Money is decimal and has the digits of its currency's minor unit. One rule
// rounds it, once for each line that is printed (Round); every total is the sum
// of the lines printed above it, so a copy always adds up. Shares (overhead,
// profit, tax) are fractions: 0.12 is 12 per cent. Pointers of problems are
// relative to the plan's price block and use its names.
//
// What is used and how many hours it takes, other packages say.
package price
