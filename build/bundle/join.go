package bundle

import (
	"regexp"
	"strings"
	"unicode/utf8"
)

// The files of the page are broken into lines where that reads well, one
// sentence a line, and indented. joinLines says what a break means:
//
//   - beside the tag of a block (a paragraph, a list, an option…) nothing; two
//     such tags stay on lines of their own;
//   - elsewhere one space, as in any HTML; but none where there is a space
//     already, and none before a mark that closes what stands before it, such as
//     a comma. So a part of a sentence that is only sometimes shown can have a
//     line of its own.
//
// Where two tags must stand without any space, the break goes inside a tag, as in
// any HTML:
//
//	one</span
//	><span>other

var (
	tag     = regexp.MustCompile(`(?s)<!--.*?-->|<[^>]*>`)
	tagName = regexp.MustCompile(`^<[/!]?([a-z0-9]+)`)
	blocks  = regexp.MustCompile(`^(?:doctype|html|head|meta|title|link|script|noscript|body|main|aside|header|footer|section|figure|figcaption|h[1-6]|p|ul|ol|li|dl|div|details|summary|option)$`)
	atoms   = regexp.MustCompile(`^(?:input|textarea|select|button)$`)
	breaks  = regexp.MustCompile(`[ \t]*\n[ \t\n]*`)
)

const closing = ",.;:?!)%°”"

// kinds of what stands beside a break
const (
	nothing = iota // inline tags only: look further
	edge           // the tag of a block, or the end of the page
	space
	mark
	word
)

// joinLines reads the breaks of lines in a page.
func joinLines(page string) string {
	pieces := split(page)
	var joined strings.Builder
	before := edge
	for i, piece := range pieces {
		if isTag(pieces, i) {
			joined.WriteString(piece)
			if kind := kindOfTag(pieces, i); kind != nothing {
				before = kind
			}
			continue
		}
		text := joinText(piece, before, after(pieces, i+1))
		if strings.TrimSpace(piece) == "" && strings.Contains(piece, "\n") && isBlock(pieces, i-1) && isBlock(pieces, i+1) {
			text = "\n"
		}
		joined.WriteString(text)
		if text != "" {
			before = kindOfText(text[len(text)-1:])
		}
	}
	return joined.String()
}

// joinText reads the breaks in one text between two tags.
func joinText(text string, before, next int) string {
	var joined strings.Builder
	last := 0
	for _, at := range breaks.FindAllStringIndex(text, -1) {
		joined.WriteString(text[last:at[0]])
		if at[0] > last {
			before = kindOfText(text[at[0]-1 : at[0]])
		}
		following := next
		if at[1] < len(text) {
			following = kindOfText(text[at[1]:])
		}
		if before != edge && before != space && (following == word) {
			joined.WriteString(" ")
			before = space
		}
		last = at[1]
	}
	return joined.String() + text[last:]
}

// split cuts a page into its tags and the texts between them.
func split(page string) []string {
	var pieces []string
	last := 0
	for _, at := range tag.FindAllStringIndex(page, -1) {
		if at[0] > last {
			pieces = append(pieces, page[last:at[0]])
		}
		pieces, last = append(pieces, page[at[0]:at[1]]), at[1]
	}
	return append(pieces, page[last:])
}

// after tells what comes next: the first piece from i on that is more than an
// inline tag or a break.
func after(pieces []string, i int) int {
	for ; i < len(pieces); i++ {
		piece := pieces[i]
		if isTag(pieces, i) {
			if kind := kindOfTag(pieces, i); kind != nothing {
				return kind
			}
		} else if text := breaks.ReplaceAllString(piece, ""); text != "" {
			return kindOfText(text)
		}
	}
	return edge
}

// kindOfTag tells what the tag at i is. An element with nothing in it is a word:
// the page's script fills it.
func kindOfTag(pieces []string, i int) int {
	name := tagName.FindStringSubmatch(pieces[i])
	switch {
	case name == nil:
		return nothing
	case blocks.MatchString(name[1]):
		return edge
	case atoms.MatchString(name[1]) || isEnd(pieces, i) && isStart(pieces, i-1) || isStart(pieces, i) && isEnd(pieces, i+1):
		return word
	}
	return nothing
}

// kindOfText tells what a text begins with.
func kindOfText(text string) int {
	first, _ := utf8.DecodeRuneInString(text)
	switch {
	case first == ' ' || first == '\n':
		return space
	case strings.ContainsRune(closing, first):
		return mark
	}
	return word
}

func isBlock(pieces []string, i int) bool {
	return i < 0 || i >= len(pieces) || isTag(pieces, i) && kindOfTag(pieces, i) == edge
}

func isTag(pieces []string, i int) bool {
	return 0 <= i && i < len(pieces) && strings.HasPrefix(pieces[i], "<")
}

func isEnd(pieces []string, i int) bool {
	return isTag(pieces, i) && strings.HasPrefix(pieces[i], "</")
}

func isStart(pieces []string, i int) bool {
	return isTag(pieces, i) && !isEnd(pieces, i)
}
