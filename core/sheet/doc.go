// Package sheet lays out the whole answer: the figures with their workings,
// the marks, the hanging order, the shopping list, the safety notes and the
// drawings. It turns the numbers of the trade packages into words and texts in
// the notation the plan asks for. What a number is, the trade packages decide;
// what a plan is, package plan.
package sheet
