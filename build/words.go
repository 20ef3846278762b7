package main

import (
	"encoding/json"
	"errors"
	"os"

	"ceilingwright/build/bundle"
	"ceilingwright/build/sentences"
)

// wordsCommand prints the sentences of the page and of the engine as a JSON object with
// an empty text for each: filled in, it is another language.
func wordsCommand(arguments []string) error {
	if len(arguments) > 0 {
		return errors.New("words takes no arguments: it prints every sentence")
	}
	root, err := bundle.Root()
	if err != nil {
		return err
	}
	all, err := sentences.All(root)
	if err != nil {
		return err
	}
	list := map[string]string{}
	for _, sentence := range all {
		list[sentence] = ""
	}
	out := json.NewEncoder(os.Stdout)
	out.SetEscapeHTML(false)
	out.SetIndent("", "\t")
	return out.Encode(list)
}
