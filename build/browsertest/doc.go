// Package browsertest tries the published page in a real browser, the way
// people meet it: hosted, in a frame of another site, as one file on disk, as a
// copy saved by the browser, on paper, by keyboard, and with things going
// wrong. It holds tests only. It builds the page once and starts one browser;
// each test gets a profile of its own.
//
// Set CEILINGWRIGHT_PICTURES to a folder to have pictures and printed pages
// left there to look at.
package browsertest
