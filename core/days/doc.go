// Package days works out when the work can be done: tasks with their labour,
// drying on elapsed hours, waits on calendar days, the time leaf has to meet,
// and the hours in which people work. It gives the earliest finish, why each
// task starts when it does, and what more hands would save.
//
// It knows no clock: dates and times of day are data, and so are the nights on
// which the clocks change. How much labour a step is, package finish and the
// plan say; what a day costs, package price.
package days
