package core_test

import (
	"os"
	"runtime/debug"
	"testing"
)

// A sheet is looked at and thrown away, a thousand times over. The garbage is
// collected seldom: that is a quarter of the time these tests take.
func TestMain(m *testing.M) {
	debug.SetGCPercent(400)
	os.Exit(m.Run())
}
