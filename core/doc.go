// Package core is the engine of Ceilingwright: a plan goes in, a sheet comes
// out, both as JSON.
//
//	plan   reads the plan into the values of the trade
//	survey, mask, setout, finish, safety   work out the numbers
//	drawing   draws; drawing/svg writes SVG
//	sheet  lays out the answer in words and figures
//
// measure and problem lie under all of them; jsondoc reads and writes JSON.
// Nothing here knows a browser, a clock, a file or a random number: the same
// plan gives the same bytes everywhere.
package core
