package sentences

import (
	"ceilingwright/build/bundle"
	"ceilingwright/core"
	"ceilingwright/core/words"
)

// All is everything that the page of the project at root and its engine say, each text
// once: what another language has its own for. It begins with the entry that tells
// which form of a noun goes with a count.
func All(root string) ([]string, error) {
	page, err := bundle.PageSentences(root)
	if err != nil {
		return nil, err
	}
	engine, err := InGo(root, "core")
	if err != nil {
		return nil, err
	}
	script, _, err := InScript(root, "site/src")
	if err != nil {
		return nil, err
	}
	list := append([]string{core.FormKey}, page...)
	for _, pair := range words.InUS() {
		list = append(list, pair[0], pair[1])
	}
	seen := map[string]bool{"": true}
	var once []string
	for _, sentence := range append(list, Listed(append(append(engine, InRules()...), script...))...) {
		if !seen[sentence] {
			seen[sentence] = true
			once = append(once, sentence)
		}
	}
	return once, nil
}
