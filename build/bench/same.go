package main

import (
	"context"
	"os"

	"ceilingwright/build/bundle"
)

// sameBytes builds the page again, in another folder and with nothing compiled
// beforehand, and compares every byte.
func sameBytes(_ context.Context, b *bench) ([]row, error) {
	folder, err := os.MkdirTemp("", "copy")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(folder)
	if err := bundle.CopySource(b.root, folder); err != nil {
		return nil, err
	}
	cache, err := os.MkdirTemp("", "cache")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(cache)
	before, set := os.LookupEnv("GOCACHE")
	os.Setenv("GOCACHE", cache)
	again, err := bundle.Build(folder)
	if set {
		os.Setenv("GOCACHE", before)
	} else {
		os.Unsetenv("GOCACHE")
	}
	if err != nil {
		return nil, err
	}
	figure := "equal"
	if again.Hash() != b.output.Hash() {
		figure = "different"
	}
	return []row{{"two clean builds, in two folders", figure, "equal", figure == "equal"}}, nil
}
