package main

import (
	"flag"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"text/tabwriter"

	"ceilingwright/build/bundle"
	"ceilingwright/build/serve"
)

// buildCommand makes the published folder and prints what is in it.
func buildCommand(arguments []string) error {
	flags := flag.NewFlagSet("build", flag.ExitOnError)
	out := flags.String("out", "", "folder to write (default dist in the project)")
	whole, language := wholeFlag(flags), languageFlag(flags)
	flags.Parse(arguments)
	_, err := publish(os.Stdout, *out, *whole, *language)
	return err
}

// serveCommand makes the published folder, then serves it.
func serveCommand(arguments []string) error {
	flags := flag.NewFlagSet("serve", flag.ExitOnError)
	address := flags.String("addr", serve.DefaultAddress, "where to serve")
	whole, language := wholeFlag(flags), languageFlag(flags)
	flags.Parse(arguments)
	folder, err := publish(io.Discard, "", *whole, *language)
	if err != nil {
		return err
	}
	return serve.Run(os.Stdout, os.DirFS(folder), *address)
}

// wholeFlag is how an engine is asked for whose panics say where they were.
func wholeFlag(flags *flag.FlagSet) *bool {
	return flags.Bool("whole", false, "leave the engine as it was linked, to find a fault in it")
}

// languageFlag is how another language is given.
func languageFlag(flags *flag.FlagSet) *string {
	return flags.String("language", "", "file of a language: what the command words prints, filled in")
}

// publish builds into folder ("" is dist in the project) and lists the files.
// With whole the engine is left as it was linked; language is the file of one, or "".
func publish(list io.Writer, folder string, whole bool, language string) (string, error) {
	root, err := bundle.Root()
	if err != nil {
		return "", err
	}
	if folder == "" {
		folder = filepath.Join(root, "dist")
	}
	build := bundle.Build
	if whole {
		build = bundle.BuildWhole
	}
	if language != "" {
		text, err := os.ReadFile(language)
		if err != nil {
			return "", err
		}
		build = func(root string) (bundle.Output, error) { return bundle.BuildIn(root, text) }
	}
	output, err := build(root)
	if err != nil {
		return "", err
	}
	if err := output.Write(folder); err != nil {
		return "", err
	}
	table := tabwriter.NewWriter(list, 0, 0, 2, ' ', tabwriter.AlignRight)
	for _, f := range output {
		fmt.Fprintf(table, "%d\t  %s\n", len(f.Content), f.Path)
	}
	return folder, table.Flush()
}
