// Command build makes, serves, tests and measures the project, and prints the
// sheet of one plan. It needs Go and nothing else to build and serve:
//
//	go run ./build                  makes dist/
//	go run ./build serve            makes dist/ and serves it (-addr to choose where)
//	go run ./build test             sets up what the tests need and runs all of them
//	go run ./build bench            measures and prints the table
//	go run ./build sheet PLAN.json  prints a plan's sheet (-json, -drawing)
//	go run ./build rules            prints the safety rules, to be read without Go
//	go run ./build words            prints every sentence of page and engine, to be put into another language
package main

import (
	"fmt"
	"os"
)

func main() {
	if err := run(os.Args[1:]); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func run(arguments []string) error {
	name := "build"
	if len(arguments) > 0 {
		name, arguments = arguments[0], arguments[1:]
	}
	switch name {
	case "build":
		return buildCommand(arguments)
	case "serve":
		return serveCommand(arguments)
	case "test":
		return testCommand(arguments)
	case "bench":
		return benchCommand(arguments)
	case "sheet":
		return sheetCommand(arguments)
	case "rules":
		return rulesCommand(arguments)
	case "words":
		return wordsCommand(arguments)
	}
	return fmt.Errorf("no command %q: use build, serve, test, bench, sheet, rules or words", name)
}
