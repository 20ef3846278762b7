package bundle

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

func TestBreaksOfLines(t *testing.T) {
	for _, row := range []struct{ name, written, want string }{
		{"one space in a sentence", "one\n   two", "one two"},
		{"no second space", "one \n  two", "one two"},
		{"nothing beside the tag of a block", "<p>\n  One.\n  Two.\n</p>", "<p>One. Two.</p>"},
		{"blocks keep their lines", "<ul>\n  <li>a</li>\n\n  <li>b</li>\n</ul>\n", "<ul>\n<li>a</li>\n<li>b</li>\n</ul>\n"},
		{"none before a comma", "there\n<span data-when=\"x=y\">, its middle</span>\n<b>on</b>", `there<span data-when="x=y">, its middle</span> <b>on</b>`},
		{"none where a space begins the part", "tall\n<span> or taller</span>\nthan that", "tall<span> or taller</span> than that"},
		{"none where a space ends the part", "<span>wide, </span>\n<span>high</span>", "<span>wide, </span><span>high</span>"},
		{"none before a full stop", "<b>tall</b>\n.", "<b>tall</b>."},
		{"blanks are words", "<p>\n  <input>\n  by\n  <select>\n    <option>a</option>\n  </select>\n  <input></p>", "<p><input> by <select><option>a</option></select> <input></p>"},
		{"what a script fills is a word", "on <span></span>\n<button>more</button>", "on <span></span> <button>more</button>"},
		{"a space within a tag stays", "<b\n  >a</b\n  ><b>c</b>", "<b\n  >a</b\n  ><b>c</b>"},
		{"letters beyond ASCII", "“one”\n“two”", "“one” “two”"},
		{"a comment is as if not there", "one\n<!-- aside -->\ntwo", "one <!-- aside -->two"},
	} {
		assert.Equal(t, row.want, joinLines(row.written), row.name)
	}
}
