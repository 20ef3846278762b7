package problem

import (
	"strings"
	"unicode"
)

// How much of what was typed stands in a sentence: of a name, and of anything
// else. A choice.
const (
	LongestName  = 100
	longestQuote = 40
)

// Name is a name as the sheet writes it, in a sentence or a table: on one line,
// at most LongestName characters of it, and so that it cannot turn the words
// round it. Marks that change the direction of writing are taken out; letters
// written from the right are isolated (Unicode Standard Annex 9, first strong
// isolate U+2068 to pop U+2069).
func Name(text string) string { return isolated(cut(Plain(text), LongestName)) }

// Quote is what was typed, quoted for a sentence and cut where it is long.
func Quote(text string) string { return "“" + isolated(cut(Plain(text), longestQuote)) + "”" }

// Plain is a text on one line, without control characters and without the marks
// that change the direction of writing.
func Plain(text string) string {
	if strings.IndexFunc(text, isUnruly) < 0 {
		return text
	}
	return strings.TrimSpace(strings.Map(func(r rune) rune {
		switch {
		case !isUnruly(r):
			return r
		case unicode.IsSpace(r):
			return ' '
		}
		return -1
	}, text))
}

// isUnruly tells of a character that takes no place of its own but changes how
// others are shown: a control, or one of the directional formatting characters
// of Unicode Standard Annex 9 but for the three that are marks alone.
func isUnruly(r rune) bool {
	return unicode.IsControl(r) || r >= 0x202A && r <= 0x202E || r >= 0x2066 && r <= 0x2069 || r == 0x2028 || r == 0x2029
}

// cut is the beginning of a text.
func cut(text string, most int) string {
	if len(text) <= most {
		return text
	}
	for i := range text {
		if most--; most < 0 {
			return text[:i] + "…"
		}
	}
	return text
}

// isolated keeps a text with letters written from the right from turning what
// stands beside it.
func isolated(text string) string {
	if strings.IndexFunc(text, isFromTheRight) < 0 {
		return text
	}
	return "\u2068" + text + "\u2069"
}

// isFromTheRight tells of the blocks of scripts that are written from the right:
// Hebrew to Arabic Extended-A, the presentation forms, and two stretches of the
// supplementary plane (the ranges of Bidi_Class R and AL, Unicode Character
// Database, from memory).
func isFromTheRight(r rune) bool {
	return r >= 0x0590 && r <= 0x08FF || r >= 0xFB1D && r <= 0xFDFF || r >= 0xFE70 && r <= 0xFEFF || r >= 0x10800 && r <= 0x10FFF || r >= 0x1E800 && r <= 0x1EFFF
}
