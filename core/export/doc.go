// Package export writes what leaves the sheet for another program: tables as
// comma-separated values (RFC 4180). What goes into a table, its caller knows.
// Drawings and calendars are written elsewhere.
package export
