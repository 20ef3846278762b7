// Package tell puts a job into words: the figures with their workings, the marks,
// the hanging order, the shopping list, the safety notes and the drawings, in the
// notation the plan asks for. What a number is, the trade packages decide; what a
// plan is, package plan; what a sheet is made of, package sheet.
package tell
