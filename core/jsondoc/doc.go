// Package jsondoc reads a JSON text into a tree that knows the place of every
// value, and writes JSON.
//
// It exists because of what it leaves out: the standard encoding/json brings
// reflection into the page, about 120 kB compressed of the 800 kB the whole
// engine may weigh, and its trees lose repeated names and the order of fields,
// which a plan's reader has to report. Texts are judged the same way as by the
// standard package, and the tests hold the two against each other.
package jsondoc
