// Package plan reads the plan, the whole input of one job: one JSON document,
// complete by itself, described by plan.schema.json. What a person typed
// stands in it as typed. The reader turns it into the values of the trade
// packages, one blank at a time: a blank that cannot be read gives a Problem
// at its own place and leaves the rest as it is.
//
// Nothing is taken in silence. A choice that is missing is named together with
// what is taken for it; a field that is not known is reported and left to
// whoever keeps the plan; a plan of a newer version is refused.
package plan
