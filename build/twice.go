package main

import "strings"

// twice are the packages whose tests run natively and as WebAssembly: theirs is
// what another machine could work out otherwise, which is numbers (whole, exact,
// decimal and floating), the plane, dates and text. The others put together what
// these work out. That a whole sheet comes out the same to the byte, of every plan
// that is kept and every hostile input, the tests of build/bundle hold with the
// engine as it is published.
var twice = []string{
	"./core/measure", "./core/survey", "./core/setout", "./core/register", "./core/mixing", "./core/finish", "./core/safety", "./core/days", "./core/price",
	"./core/words", "./core/jsondoc", "./wasm/bridge",
}

// golden are the tests of the core itself that run twice: the sheets that are kept.
var golden = []string{"TestGoldenSheets"}

// once are tests of those packages that run natively alone. They try everything
// there is, or very much at random, against a plainer way of finding it. That holds
// our reasoning, which no machine changes, and takes more time than all the rest:
// a program as WebAssembly is some five times as slow.
var once = []string{
	"TestSite_TakesAnything", "TestHole_CutsAgainstPoints", "TestLargest_IsLargest", "TestRoomiest_AgainstAGrid",
	"TestFind_AgainstAnotherLibrary", "TestFind_FalseAlarms",
	"TestEverySearchAgreesWithTryingEverything", "TestRemaindersAgreeWithTables", "TestBooksAgainstEveryWay", "TestPanelSectionsHold",
	"TestZonesAgreeWithGo", "TestMostLaidAgainstEveryMinute", "TestEarliestFinishAgainstEverySchedule", "TestEveryCopyAddsUp",
	"TestEveryRuleOnBothSides", "TestNothingThatFiresIsLost", "TestRulesSpeakTheCountrysWords", "TestNotesAreWhole", "TestRulesOpenWithWhatToDo",
	"TestOneBlankOneQuestion", "TestAskedAirClearsTheLimits", "TestAskedAirClearsTheCaution",
}

// named is a pattern for these tests and no others, as go test takes it.
func named(tests []string) string { return "^(" + strings.Join(tests, "|") + ")$" }
