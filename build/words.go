package main

import (
	"encoding/json"
	"errors"
	"os"

	"ceilingwright/build/bundle"
	"ceilingwright/build/sentences"
	"ceilingwright/core"
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
	calls, err := sentences.InGo(root, "core")
	if err != nil {
		return err
	}
	page, err := bundle.PageSentences(root)
	if err != nil {
		return err
	}
	script, _, err := sentences.InScript(root, "site/src")
	if err != nil {
		return err
	}
	calls = append(append(calls, sentences.InRules()...), script...)
	list := map[string]string{core.FormKey: ""}
	for _, sentence := range page {
		list[sentence] = ""
	}
	for _, sentence := range sentences.Listed(calls) {
		list[sentence] = ""
	}
	out := json.NewEncoder(os.Stdout)
	out.SetEscapeHTML(false)
	out.SetIndent("", "\t")
	return out.Encode(list)
}
