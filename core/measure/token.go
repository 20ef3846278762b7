package measure

import (
	"strconv"
	"unicode"
	"unicode/utf8"
)

// From characters to tokens. Compatibility normalisation (NFKC) is of no use
// here: it turns 3½ into 31⁄2. Characters are mapped one by one instead, and a
// fraction character stays a token of its own.

// longestText is how many characters a figure may have.
const longestText = 64

type tokenKind byte

const (
	tokenNumber   tokenKind = iota
	tokenFraction           // a fraction character such as ½
	tokenSlash
	tokenHyphen
	tokenUnit // a foot or inch mark, or a word
	tokenPlus
)

// token is one piece of the text. spaces counts the spaces before it.
type token struct {
	kind     tokenKind
	spaces   int
	at, end  int // bytes of the text
	number   numeral
	num, den int64
	unit     Unit
}

// numeral is a number as it was written: whole and decimals without a unit.
type numeral struct {
	whole     int64 // stops growing at tooGreat
	part      int64 // the decimals without the zeros that end them
	places    int   // how many decimals part has; more than mostPlaces: part is not kept
	wholes    int   // digits written before the decimal mark
	digits    int   // digits written in all
	decimal   bool  // a decimal mark was written
	grouped   bool  // a sign between thousands was written
	raised    int8  // +1: superscript digits, −1: subscript digits
	ambiguous bool  // one comma that could mean two things
	split     int   // bytes of the text before that comma
}

const (
	tooGreat   = 1_000_000_000_000
	mostPlaces = 12
)

// char is a character after folding, and where it stood.
type char struct {
	c       rune
	at, end int
	raised  int8 // +1 superscript, −1 subscript
}

// scanner holds a text while it is cut up. The fixed arrays keep reading free
// of allocation: this runs at every key press.
type scanner struct {
	text   string
	chars  [longestText]char
	count  int
	tokens [longestText]token
	used   int
	comma  bool // a comma is always decimal
	plain  bool // a number without a unit is asked for
}

func (s *scanner) refuse(at int, reason, do Said) error {
	return &ParseError{Text: s.text, Reason: reason, Rest: s.text[at:], Do: do}
}

// scan fills the tokens.
func (s *scanner) scan() error {
	if err := s.fold(); err != nil {
		return err
	}
	spaces := 0
	for i := 0; i < s.count; {
		if s.chars[i].c == ' ' {
			spaces++
			i++
			continue
		}
		t, next, err := s.token(i)
		if err != nil {
			return err
		}
		t.spaces, t.at, t.end = spaces, s.chars[i].at, s.chars[next-1].end
		s.tokens[s.used] = t
		s.used++
		spaces, i = 0, next
	}
	return nil
}

// fold trims the text and maps its characters.
func (s *scanner) fold() error {
	first, last := trimmed(s.text)
	for at := first; at < last; {
		r, size := utf8.DecodeRuneInString(s.text[at:])
		if s.count == longestText {
			return s.refuse(at, Say("This is longer than 64 characters."), Say("Write one figure only."))
		}
		c, raised := folded(r)
		s.chars[s.count] = char{c, at, at + size, raised}
		s.count++
		at += size
	}
	return nil
}

// trimmed is where the text starts and ends without spaces, line ends and
// invisible characters.
func trimmed(text string) (first, last int) {
	last = len(text)
	for first < last {
		r, size := utf8.DecodeRuneInString(text[first:])
		if !isBlank(r) {
			break
		}
		first += size
	}
	for last > first {
		r, size := utf8.DecodeLastRuneInString(text[:last])
		if !isBlank(r) {
			break
		}
		last -= size
	}
	return first, last
}

func isBlank(r rune) bool {
	c, _ := folded(r)
	return c == ' ' || r == '\n' || r == '\r' || isInvisible(r)
}

func isInvisible(r rune) bool {
	switch r {
	case 0x200B, 0x200C, 0x200D, 0x2060, 0xFEFF, 0x00AD:
		return true
	}
	return false
}

// folded maps every way of writing a character that is read here to one.
// Letters become small.
func folded(r rune) (c rune, raised int8) {
	switch {
	case r >= 0xFF01 && r <= 0xFF5E: // full width
		r -= 0xFEE0
	case r >= 0x2080 && r <= 0x2089:
		return '0' + r - 0x2080, -1
	case r == 0x2070 || r >= 0x2074 && r <= 0x2079:
		return '0' + r - 0x2070, 1
	}
	if r >= 'A' && r <= 'Z' {
		return r - 'A' + 'a', 0
	}
	switch r {
	case '¹':
		return '1', 1
	case '²':
		return '2', 1
	case '³':
		return '3', 1
	case '\t', 0x00A0, 0x2007, 0x2009, 0x202F, 0x3000:
		return ' ', 0
	case '’', '‘', '′', 'ʹ', '´', '`':
		return '\'', 0
	case '”', '“', '″', 'ʺ', '˝':
		return '"', 0
	case 0x2044, 0x2215:
		return '/', 0
	case 0x2010, 0x2011, 0x2013, 0x2212:
		return '-', 0
	}
	return r, 0
}

func isDigit(c rune) bool { return c >= '0' && c <= '9' }

// token reads the token at character i and answers where the next one starts.
func (s *scanner) token(i int) (token, int, error) {
	here := s.chars[i]
	switch c := here.c; {
	case isDigit(c) || c == '.' || c == ',':
		number, next, err := s.numeral(i)
		return token{kind: tokenNumber, number: number}, next, err
	case c == '/':
		return token{kind: tokenSlash}, i + 1, nil
	case c == '-':
		return token{kind: tokenHyphen}, i + 1, nil
	case c == '+':
		return token{kind: tokenPlus}, i + 1, nil
	case c == '"':
		return token{kind: tokenUnit, unit: UnitInch}, i + 1, nil
	case c == '\'':
		if i+1 < s.count && s.chars[i+1].c == '\'' {
			return token{kind: tokenUnit, unit: UnitInch}, i + 2, nil
		}
		return token{kind: tokenUnit, unit: UnitFoot}, i + 1, nil
	case c >= 'a' && c <= 'z':
		return s.word(i)
	}
	if num, den, known := fractionOf(here.c); known {
		return token{kind: tokenFraction, num: num, den: den}, i + 1, nil
	}
	reason, do := strangerRefused(here.c, s.text[here.at:here.end])
	return token{}, i, s.refuse(here.at, reason, do)
}

// fractionOf is the value of a fraction character.
func fractionOf(c rune) (num, den int64, known bool) {
	switch c {
	case '½':
		return 1, 2, true
	case '¼':
		return 1, 4, true
	case '¾':
		return 3, 4, true
	case '⅛':
		return 1, 8, true
	case '⅜':
		return 3, 8, true
	case '⅝':
		return 5, 8, true
	case '⅞':
		return 7, 8, true
	case '⅓':
		return 1, 3, true
	case '⅔':
		return 2, 3, true
	case '⅕':
		return 1, 5, true
	case '⅖':
		return 2, 5, true
	case '⅗':
		return 3, 5, true
	case '⅘':
		return 4, 5, true
	case '⅙':
		return 1, 6, true
	case '⅚':
		return 5, 6, true
	case '⅐':
		return 1, 7, true
	case '⅑':
		return 1, 9, true
	case '⅒':
		return 1, 10, true
	}
	return 0, 0, false
}

// strangerRefused is why a character is not read.
func strangerRefused(c rune, written string) (reason, do Said) {
	switch {
	case c == '_':
		return Say("An underscore is not read."), Say("Write the digits without it.")
	case c == '~' || c == '≈':
		return Say("A sign for “about” is not read."), Say("Measure it, and write the figure alone.")
	case c == '∞':
		return Say("This is not a number."), Say("Write the figure in digits.")
	case c == '%':
		return Say("A per cent sign is not read here."), Say("Write the figure alone.")
	case unicode.Is(unicode.Sc, c):
		return Say("A currency sign is not read here."), Say("Write the figure alone.")
	case c >= 0x3371 && c <= 0x33DF:
		return Say("The unit is written as one character, which is not read."), Say("Write the unit in letters, such as mm.")
	case unicode.Is(unicode.Nd, c):
		return Say("These are digits of another script."), Say("Write the figure with the digits 0 to 9.")
	case c == utf8.RuneError:
		return Say("One character is damaged."), Say("Delete this and type it again.")
	case !strconv.IsPrint(c): // line ends, and marks that would turn our own sentence round
		return Say("There is a character in it that cannot be seen."), Say("Delete this and type it again.")
	}
	return Say("The character {character} is not read here.", put("character", written)), Say("Write digits, and a unit where one is needed.")
}

// word reads letters and the point that may end an abbreviation.
func (s *scanner) word(i int) (token, int, error) {
	var letters [longestText]byte
	next := i
	for next < s.count && s.chars[next].c >= 'a' && s.chars[next].c <= 'z' {
		letters[next-i] = byte(s.chars[next].c)
		next++
	}
	word := letters[:next-i]
	unit := unitNamed(string(word))
	if unit == "" {
		reason, do := s.wordRefused(i, next, string(word))
		return token{}, i, s.refuse(s.chars[i].at, reason, do)
	}
	if next < s.count && s.chars[next].c == '.' {
		next++
		if next < s.count && isDigit(s.chars[next].c) {
			return token{}, i, s.refuse(s.chars[next-1].at,
				Say("The point could end the unit or start a decimal."),
				Say("Put a space after the unit and its point."))
		}
	}
	return token{kind: tokenUnit, unit: unit}, next, nil
}

func (s *scanner) wordRefused(i, next int, word string) (reason, do Said) {
	glued := i > 0 && isDigit(s.chars[i-1].c)
	switch {
	case word == "nan" || word == "inf" || word == "infinity":
		return Say("This is not a number."), Say("Write the figure in digits.")
	case word == "e" && glued:
		return Say("A number with an exponent is not read."), Say("Write all its digits.")
	case word == "x" && glued && s.chars[i-1].c == '0':
		return Say("This is not a decimal number."), Say("Write the figure with the digits 0 to 9 only.")
	case word == "x" || word == "by":
		return Say("There is more than one length here."), Say("Write one length only.")
	case word == "e":
		return Say("A number with an exponent is not read."), Say("Write all its digits.")
	}
	typed := put("word", s.text[s.chars[i].at:s.chars[next-1].end])
	if s.plain {
		return Say("The word {word} is no part of a number.", typed), Say("Write the figure in digits, such as 12 or 4.5.")
	}
	return Say("The word {word} is not a unit that is read here.", typed), Say("Use ft, in, m, cm or mm.")
}

// numeral reads digits with points and commas.
func (s *scanner) numeral(i int) (numeral, int, error) {
	raised := s.chars[i].raised
	end := i
	points, commas, lastMark := 0, 0, -1
	for ; end < s.count && s.chars[end].raised == raised; end++ {
		c := s.chars[end].c
		if c == '.' || c == ',' {
			lastMark = end
			if c == '.' {
				points++
			} else {
				commas++
			}
		} else if !isDigit(c) {
			break
		}
	}
	decimalAt, err := s.decimalMark(i, end, points, commas, lastMark)
	if err != nil {
		return numeral{}, i, err
	}
	n := s.collect(i, end, decimalAt)
	n.raised = raised
	n.grouped = points+commas > 1 || points+commas == 1 && decimalAt == end
	if n.decimal && n.digits == n.wholes {
		return numeral{}, i, s.refuse(s.chars[decimalAt].at,
			Say("Nothing stands after the decimal mark."), Say("Write the decimals, or leave the mark out."))
	}
	if commas == 1 && points == 0 && !s.comma && n.whole > 0 && n.digits-n.wholes == 3 {
		n.ambiguous, n.split = true, s.chars[decimalAt].at
	}
	return n, end, nil
}

// decimalMark finds which of the marks in characters i to end is the decimal
// one; end says that none is. With points and commas both, the last one is; a
// point alone always is; one comma alone is, or might be.
func (s *scanner) decimalMark(i, end, points, commas, last int) (int, error) {
	switch {
	case points+commas == 0:
		return end, nil
	case points+commas == 1:
		return last, nil
	case points > 0 && commas > 0:
		kind := s.chars[last].c
		if kind == '.' && points > 1 || kind == ',' && commas > 1 || !s.inThrees(i, last) {
			return 0, s.refuse(s.chars[i].at, Say("The points and commas do not part the digits in threes."),
				Say("Write the number with one decimal point and nothing else."))
		}
		return last, nil
	case points > 1 || s.comma:
		return 0, s.refuse(s.chars[last].at, Say("There are two decimal marks."), Say("Write the number with one decimal mark."))
	}
	if !s.inThrees(i, end) {
		return 0, s.refuse(s.chars[i].at, Say("The commas do not part the digits in threes."),
			Say("Write the number with one decimal point and nothing else."))
	}
	return end, nil
}

// inThrees tells whether characters i to end are one to three digits and then
// marks each followed by three.
func (s *scanner) inThrees(i, end int) bool {
	run, groups := 0, 0
	for ; i < end; i++ {
		if isDigit(s.chars[i].c) {
			run++
			continue
		}
		if run == 0 || run > 3 || groups > 0 && run != 3 {
			return false
		}
		run, groups = 0, groups+1
	}
	return run == 3 && groups > 0
}

// collect adds up the digits of characters i to end, the decimal mark at mark.
func (s *scanner) collect(i, end, mark int) numeral {
	n := numeral{decimal: mark < end}
	zeros := 0
	for at := i; at < end; at++ {
		c := s.chars[at].c
		if !isDigit(c) {
			continue
		}
		n.digits++
		digit := int64(c - '0')
		switch {
		case at < mark:
			n.wholes++
			n.whole = min(n.whole*10+digit, tooGreat)
		case digit == 0:
			zeros++
		default:
			n.places += zeros + 1
			for ; n.places <= mostPlaces && zeros > 0; zeros-- {
				n.part *= 10
			}
			zeros = 0
			if n.places <= mostPlaces {
				n.part = n.part*10 + digit
			}
		}
	}
	return n
}
