// Package sheet is the whole answer to a plan: what it is made of, and its JSON. It
// decides nothing and words nothing; package tell fills it.
package sheet
