// Package judges has programs of others read back what the engine writes: a
// calendar reader, a reader of comma-separated values and a solver of linear
// programmes, all from npm (package.json) and run by Node. It holds tests only;
// nothing of it is shipped. Like the browser's tests these never skip.
package judges
