// Package browsertest tries the published page in a real browser, the way
// people meet it: hosted, in a frame of another site, as one file on disk, as a
// copy saved by the browser, on paper, by keyboard, and with things going
// wrong. It holds tests only. It builds the page once.
//
// Tests run side by side, as many as there are processors, each in a lane of its
// own (lane_test.go): a browser with its own profile, so that they share nothing.
// Opening a page takes a lane, until the end of the test. A test that opens its
// first page in a part (t.Run) calls beside at its start; one that measures time
// calls alone.
//
// In a lane most tests take turns on one page that runs already: a start costs more
// than most of what they try. After each the page is put back, and a page that then
// looks different from a new one is closed, as is one on which a test failed or
// left a list or an object of its own; the next test gets a new one. So a test is
// written as if the page were its own:
//
//   - open, openEmpty, openPainter and openPlan put the worked example, an empty
//     sheet or a plan on the page that runs (running_test.go);
//   - openAnew starts the page: for tests of the start itself, of what is asked
//     for at it, of the history, or of an address with more than a plan in it;
//   - newView is an empty tab, for a page that is broken on purpose before it
//     starts; anotherDevice is one that shares nothing with it.
//
// A start takes a second or two of both processors and a plan on a running page
// a tenth of a second: ask for a start only where the start is what is tried.
//
// Set CEILINGWRIGHT_PICTURES to a folder to have pictures and printed pages
// left there to look at.
package browsertest
