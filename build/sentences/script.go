package sentences

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// Loose is a text that reads like words and is said by nobody; a value in it is …
type Loose struct{ Text, At string }

// InScript are all calls of say and saying in the TypeScript files below a folder of
// root, in the order of the files; and loose what reads like words there and is said by
// neither.
func InScript(root, folder string) (calls []Call, loose []Loose, err error) {
	err = filepath.WalkDir(filepath.Join(root, folder), func(path string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || !strings.HasSuffix(path, ".ts") {
			return err
		}
		text, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		name, err := filepath.Rel(root, path)
		if err != nil {
			return err
		}
		found, other := inScript(filepath.ToSlash(name), string(text))
		calls, loose = append(calls, found...), append(loose, other...)
		return nil
	})
	return calls, loose, err
}

// piece is one part of a script: a text in quotation marks, its quotes taken off; a
// template with its first hole on in holes; a word; or a sign.
type piece struct {
	kind  byte // '"', '`', 'a' or 0
	text  string
	holes bool // of a template: there are values in it
	line  int
}

var (
	aWord = regexp.MustCompile(`^[A-Za-z_$][\w$]*`)
	// What may stand before a regular expression, where a division cannot stand.
	beforePattern = regexp.MustCompile(`(?:^|[(,=:\[!&|?{};>]|return)\s*$`)
)

// tokensOf cuts a script up. Comments and regular expressions are left out. What
// stands in the holes of a template follows it.
func tokensOf(script string, line int) (list []piece) {
	for i := 0; i < len(script); {
		c := script[i]
		switch {
		case c == '\n':
			line++
			i++
		case c == ' ' || c == '\t':
			i++
		case strings.HasPrefix(script[i:], "//"):
			i = ends(script, i, "\n")
		case strings.HasPrefix(script[i:], "/*"):
			end := min(len(script), ends(script, i, "*/")+2)
			line += strings.Count(script[i:end], "\n")
			i = end
		case c == '/' && beforePattern.MatchString(script[:i]):
			i = patternEnd(script, i)
		case c == '"' || c == '\'':
			end := i + 1
			for end < len(script) && script[end] != c {
				if script[end] == '\\' {
					end++
				}
				end++
			}
			list = append(list, piece{kind: '"', text: unescaped(script[i+1 : end]), line: line})
			i = end + 1
		case c == '`':
			text, inner, end := template(script, i+1, line)
			list = append(list, piece{kind: '`', text: unescaped(text), holes: strings.Contains(text, "\x00"), line: line})
			list = append(list, inner...)
			line += strings.Count(script[i:end], "\n")
			i = end
		default:
			word := aWord.FindString(script[i:])
			if word == "" {
				list = append(list, piece{text: string(c), line: line})
				i++
				continue
			}
			list = append(list, piece{kind: 'a', text: word, line: line})
			i += len(word)
		}
	}
	return list
}

func ends(script string, from int, sign string) int {
	if at := strings.Index(script[from:], sign); at >= 0 {
		return from + at
	}
	return len(script)
}

func patternEnd(script string, i int) int {
	inClass := false
	for i++; i < len(script); i++ {
		switch script[i] {
		case '\\':
			i++
		case '[':
			inClass = true
		case ']':
			inClass = false
		case '/':
			if !inClass {
				return i + 1
			}
		}
	}
	return i
}

// template is the text of a template with \x00 for each value in it, the tokens of
// those values, and where it ends.
func template(script string, i, line int) (text string, inner []piece, end int) {
	var out strings.Builder
	for i < len(script) && script[i] != '`' {
		switch {
		case script[i] == '\\':
			out.WriteString(script[i : i+2])
			i += 2
		case strings.HasPrefix(script[i:], "${"):
			close := valueEnd(script, i+2)
			inner = append(inner, tokensOf(script[i+2:close], line)...)
			out.WriteByte(0)
			i = close + 1
		default:
			out.WriteByte(script[i])
			i++
		}
	}
	return out.String(), inner, i + 1
}

// valueEnd is where the value that begins at i ends: at the brace that closes it.
func valueEnd(script string, i int) int {
	for depth := 0; i < len(script); i++ {
		switch script[i] {
		case '{':
			depth++
		case '}':
			if depth == 0 {
				return i
			}
			depth--
		case '`':
			_, _, end := template(script, i+1, 0)
			i = end - 1
		case '"':
			for i++; i < len(script) && script[i] != '"'; i++ {
				if script[i] == '\\' {
					i++
				}
			}
		}
	}
	return i
}

func unescaped(text string) string {
	return strings.NewReplacer(`\"`, `"`, `\n`, "\n", `\\`, `\`, "\\`", "`").Replace(text)
}

func inScript(name, script string) (calls []Call, loose []Loose) {
	list := tokensOf(script, 1)
	said := map[int]bool{}
	for i, t := range list {
		if t.kind != 'a' || t.text != "say" && t.text != "saying" || i+2 >= len(list) || list[i+1].text != "(" || i > 0 && (list[i-1].text == "function" || list[i-1].text == "." && (i < 2 || list[i-2].text != ".")) || list[i+2].text == "sentence" {
			continue
		}
		call := Call{At: fmt.Sprintf("%s:%d", name, t.line)}
		first := list[i+2]
		if first.kind != '"' && first.kind != '`' || first.holes || !slices.Contains([]string{",", ")"}, list[i+3].text) {
			call.Faults = []string{"the sentence is put together when it is said: write it whole"}
			calls = append(calls, call)
			continue
		}
		said[i+2] = true
		call.Sentence, call.Given = first.text, given(list[i+3:])
		call.Faults = faultsOf(call.Sentence, call.Given)
		calls = append(calls, call)
	}
	for i, t := range list {
		if (t.kind == '"' || t.kind == '`') && !said[i] && readsLikeWords(t) && !isForProgrammers(list[:i]) {
			loose = append(loose, Loose{strings.ReplaceAll(t.text, "\x00", "…"), fmt.Sprintf("%s:%d", name, t.line)})
		}
	}
	return calls, loose
}

// given are the names of the values of a call, whose tokens after the sentence these
// are.
func given(rest []piece) (names []string) {
	if len(rest) < 2 || rest[0].text != "," || rest[1].text != "{" {
		return nil
	}
	depth := 0
	for i, t := range rest {
		switch {
		case t.kind != 0:
		case strings.Contains("({[", t.text):
			depth++
		case strings.Contains(")}]", t.text):
			if depth--; depth == 0 {
				return names
			}
		}
		if depth == 1 && t.kind == 'a' && (rest[i-1].text == "{" || rest[i-1].text == ",") && strings.Contains(":,}", rest[i+1].text) {
			names = append(names, t.text)
		}
	}
	return names
}

var (
	twoWords   = regexp.MustCompile(`\pL[’”)]?[,.;:]? \x00?[“(]?\pL|\pL \x00|\x00[,.]? \pL|^\pL+[.:]$`)
	capital    = regexp.MustCompile(`^[“]?\p{Lu}\p{Ll}+\b`)
	noSentence = regexp.MustCompile(`cw-|\[|^[.#:]|data-|^M\d|=|/|^(?:[a-z]+, )+[a-z.-]+$|:is\(|^svg|^details|application|charset`)
	keyNames   = regexp.MustCompile(`^(?:Enter|Escape|Tab|Alt\+.*|Control\+.*|Arrow(?:Up|Down|Left|Right)|Files|Content-Type|Ceilingwright|A|WXYZ.*)$`)
)

// readsLikeWords tells whether a text is likely to be read by people: more words than
// one, or one that begins like a sentence.
func readsLikeWords(t piece) bool {
	if noSentence.MatchString(t.text) || keyNames.MatchString(t.text) {
		return false
	}
	return twoWords.MatchString(t.text) || capital.MatchString(t.text)
}

// isForProgrammers tells whether the next text goes to whoever mends the page: it is
// what an error says, or names a file.
func isForProgrammers(before []piece) bool {
	n := len(before)
	return n >= 1 && (before[n-1].text == "from" || before[n-1].text == "import") || n >= 2 && before[n-1].text == "(" && before[n-2].text == "Error"
}
