// Command generate writes what is written once and needed in several places: the
// JSON writer of the sheet and the page's types of it from the Go types, the empty
// plan, the entries its lists grow by and the words of its choices from the plan's
// schema. Its files are checked in, so that building needs none of it; a test holds
// them to what they are made of.
//
//	go run ./build/generate
//
// It is a program of its own, and reads the sheet's types as text: it has to run
// while the files it writes do not compile yet.
package main

import (
	"fmt"
	"os"
)

func main() {
	changed, err := write(".")
	for _, path := range changed {
		fmt.Println(path)
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}
