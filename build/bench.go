package main

import (
	"os"
	"os/exec"
)

// benchCommand runs the bench as a program of its own: what it needs to drive
// a browser would otherwise be compiled for every build of the page.
func benchCommand(arguments []string) error {
	command := exec.Command("go", append([]string{"run", "ceilingwright/build/bench"}, arguments...)...)
	command.Stdin, command.Stdout, command.Stderr = os.Stdin, os.Stdout, os.Stderr
	return command.Run()
}
