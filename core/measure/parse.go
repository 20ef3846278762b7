package measure

import (
	"strconv"
	"strings"
)

// ParseError is a text that is not read. Reason says what is wrong and Do what
// to write instead, both for a person to act on. Rest is
// the text from the place where reading stopped. Answers, where the text could
// mean a few things, are what to write for each.
type ParseError struct {
	Text    string
	Reason  Said
	Rest    string
	Do      Said
	Answers []string
}

// Error is the text and the reason.
func (e *ParseError) Error() string { return strconv.Quote(e.Text) + ": " + e.Reason.String() }

// Reader reads lengths. Bare is the unit a number without one takes; with none
// such a number is refused. DecimalComma says that the person writes decimals
// with a comma, so that 1,200 m is one metre and a fifth. Total says that the
// length may be many together: as much as LongestRun is then read.
type Reader struct {
	Bare         Unit
	DecimalComma bool
	Total        bool
}

// most is the greatest length the reader reads.
func (r Reader) most() Length {
	if r.Total {
		return LongestRun
	}
	return Longest
}

// Parse reads a length as people write them.
//
//	length   = imperial | metric | bare
//	imperial = yards | feet [dash] [inches] | inches   60 yd   6' 3 1/2"   6 ft 3.5 in   6'-3½   5' 3/4"
//	         | feet "-" inches "-" fraction         7-0-1/2 is 84 1/2 in
//	metric   = metres [centimetres] [millimetres]   1 m 20 cm   3.85 m   3,85 m   3 850 mm
//	bare     = quantity in the unit given           12   3 1/2   3-1/2
//	quantity = number | number (space | "-") fraction | fraction
//
// Marks may be straight, curly or prime, and two foot marks are an inch mark;
// full-width characters and one-character fractions are read. Fractions are
// halves to 64ths, below one, and only of feet or inches. A number after feet
// is inches, below 12. With points and commas both, the last is the decimal
// mark and the others stand between threes; spaces may too.
//
// Refused with a *ParseError: nothing typed; over 64 characters; a sign; one
// comma before exactly three digits, which could mean two things, unless they are
// metres, of which no thousand is read; a dash that could be a minus; two numbers with no unit between; feet or metres with
// decimals before a smaller unit; parts out of order or mixed; a decimal with a
// fraction; exponents, other bases, other scripts, unknown words; what is not a
// whole number of nanometres; more than Longest, or than LongestRun. Zero is read. Nothing is ever
// left out or rounded.
func Parse(text string, bare Unit) (Length, error) { return Reader{Bare: bare}.Parse(text) }

// ParseOffset is Parse for a distance to either side: a sign may stand before
// the whole, and covers all of it. The minus may be a hyphen, U+2212 or an en
// dash.
func ParseOffset(text string, bare Unit) (Length, error) {
	return Reader{Bare: bare}.ParseOffset(text)
}

// Parse is the function Parse, with the reader's habits.
func (r Reader) Parse(text string) (Length, error) { return r.read(text, false) }

// ParseOffset is the function ParseOffset, with the reader's habits.
func (r Reader) ParseOffset(text string) (Length, error) { return r.read(text, true) }

// ParseMark reads the mark of a tape, such as "1/16 in" or "1 mm". It must name
// its unit and be more than none.
func ParseMark(text string) (Length, error) {
	mark, err := Parse(text, "")
	if err == nil && mark == 0 {
		return 0, &ParseError{Text: text, Rest: text, Reason: Say("A tape has no mark of nothing."), Do: Say("Write a mark such as 1/16 in or 1 mm.")}
	}
	return mark, err
}

// IsBare tells whether text is a length that names no unit of its own, such as
// "12", "3 1/2" or "−6", and so changes with the unit for bare numbers. A text
// that is no length is not bare; 7-0-1/2 is feet, inches and a fraction by its
// form, and not bare either.
func IsBare(text string) bool {
	p := parser{scanner: scanner{text: text}, bare: UnitInch}
	if p.scan() != nil || p.used == 0 {
		return false
	}
	p.sign()
	q, err := p.quantity()
	return err == nil && p.next == p.used && !q.hasFeet
}

// parser reads the tokens of one text.
type parser struct {
	scanner
	next int
	bare Unit
	most Length
	// spoons tells that fractions are those of spoons and cups, not of a tape.
	spoons bool
}

// quantity is a number, a fraction or both, and the feet before it when all
// three were joined by dashes.
type quantity struct {
	number   numeral
	num, den int64 // den 0: no fraction
	feet     numeral
	hasFeet  bool
	at       int
}

func (r Reader) read(text string, signed bool) (Length, error) {
	p := parser{scanner: scanner{text: text, comma: r.DecimalComma}, bare: r.Bare, most: r.most()}
	if err := p.scan(); err != nil {
		return 0, err
	}
	if p.used == 0 {
		return 0, p.refuse(0, Say("Nothing is typed."), Say(`Type a length, such as 12' 6 1/2" or 3.81 m.`))
	}
	negative, given := p.sign()
	if given && !signed {
		return 0, p.refuse(p.tokens[0].at, Say("A length takes no sign."), Say("Leave out the sign."))
	}
	if negative && !signed {
		return 0, p.refuse(p.tokens[0].at, Say("A length cannot be negative."), Say("Leave out the minus sign."))
	}
	length, err := p.length()
	if negative {
		length = -length
	}
	return length, err
}

// sign takes a sign before everything.
func (p *parser) sign() (negative, given bool) {
	switch p.tokens[0].kind {
	case tokenHyphen:
		p.next = 1
		return true, false
	case tokenPlus:
		p.next = 1
		return false, true
	}
	return false, false
}

// after is the token that many places on, and whether there is one.
func (p *parser) after(places int) (token, bool) {
	if p.next+places >= p.used {
		return token{}, false
	}
	return p.tokens[p.next+places], true
}

// is tells whether the token that many places on is of the kind.
func (p *parser) is(places int, kind tokenKind) bool {
	t, there := p.after(places)
	return there && t.kind == kind
}

// isTight is is for a token with no space before it.
func (p *parser) isTight(places int, kind tokenKind) bool {
	t, there := p.after(places)
	return there && t.kind == kind && t.spaces == 0
}

// startsFraction tells whether a fraction starts that many places on.
func (p *parser) startsFraction(places int) bool {
	return p.is(places, tokenFraction) || p.is(places, tokenNumber) && p.is(places+1, tokenSlash)
}

// quantity reads a number, a fraction, a number and a fraction, or feet, inches
// and a fraction joined by dashes or spaces.
func (p *parser) quantity() (q quantity, err error) {
	t, there := p.after(0)
	q.at = t.at
	switch {
	case !there:
		return q, p.refuse(len(p.text), Say("A sign stands alone."), Say("Write a number after it."))
	case t.kind == tokenUnit && p.next == 0 && p.used > 1:
		return q, p.refuse(t.at, Say("A unit stands before any number."), Say("Write the number first."))
	case t.kind == tokenUnit:
		return q, p.refuse(t.at, Say("A unit stands without a number."), Say("Write the number before it."))
	case t.kind == tokenSlash:
		return q, p.refuse(t.at, Say("Nothing stands above the line of the fraction."), Say("Write a fraction such as 1/2."))
	case t.kind == tokenHyphen:
		return q, p.dashRefused(t)
	case t.kind == tokenPlus:
		return q, p.refuse(t.at, Say("Sums are not read."), Say("Write the sum as one length."))
	case p.startsFraction(0):
		err = p.fraction(&q)
		return q, err
	}
	if q.number, err = p.number(); err == nil {
		err = p.fractionAfter(&q)
	}
	return q, err
}

// fractionAfter reads what may follow a whole number: a fraction after a space
// or a tight dash, or inches and a fraction, joined by spaces or by tight
// dashes: 15 8 1/2 can only be feet, inches and a fraction, while 5 6 could be
// anything.
func (p *parser) fractionAfter(q *quantity) error {
	t, there := p.after(0)
	switch {
	case !there || t.kind == tokenUnit:
		return nil
	case t.kind == tokenHyphen && t.spaces == 0 && p.isTight(1, tokenNumber) && p.isTight(2, tokenHyphen):
		q.feet, q.hasFeet = q.number, true
		p.next++
		var err error
		if q.number, err = p.number(); err != nil {
			return err
		}
		if !p.dashedFraction() {
			return p.dashRefused(t)
		}
		p.next++
		return p.fraction(q)
	case t.kind == tokenNumber && !p.is(1, tokenSlash) && p.startsFraction(1) && !p.bare.isMetric():
		q.feet, q.hasFeet = q.number, true
		var err error
		if q.number, err = p.number(); err != nil {
			return err
		}
		return p.fraction(q)
	case t.kind == tokenHyphen && p.dashedFraction():
		p.next++
		return p.fraction(q)
	case t.kind == tokenHyphen:
		return p.dashRefused(t)
	case p.startsFraction(0):
		return p.fraction(q)
	case t.kind == tokenPlus:
		return p.refuse(t.at, Say("Sums are not read."), Say("Write the sum as one length."))
	}
	return p.refuse(t.at, Say("Two numbers stand side by side with no unit between them."),
		Say("Write the unit after each number, or one number only."))
}

// dashedFraction tells whether a dash and a fraction come next with no spaces.
func (p *parser) dashedFraction() bool {
	return p.isTight(0, tokenHyphen) && p.startsFraction(1) &&
		(p.isTight(1, tokenNumber) || p.isTight(1, tokenFraction))
}

func (p *parser) dashRefused(t token) error {
	return p.refuse(t.at, Say("The dash could be a minus, or a break between feet and inches."),
		Say(`Write 6' 3" for feet and inches, and 6 3/4 for a whole and a fraction.`))
}

// number reads a number whose thousands may stand apart by one space.
func (p *parser) number() (numeral, error) {
	t := p.tokens[p.next]
	n := t.number
	p.next++
	parted := false
	if n.raised != 0 {
		return n, p.refuse(t.at, Say("Raised or lowered digits stand outside a fraction."), Say("Write plain digits."))
	}
	for !n.decimal && !n.grouped && n.whole > 0 && (parted || n.wholes <= 3) && p.thousandsFollow() {
		more := p.tokens[p.next].number
		more.whole = min(n.whole*1000+more.whole, tooGreat)
		more.digits += n.digits
		more.wholes += n.wholes
		more.ambiguous = false
		n, parted = more, true
		p.next++
	}
	if n.ambiguous && (p.unitAfter() != UnitMetre || p.most > Longest) {
		return n, p.commaRefused(t)
	}
	return n, nil
}

// unitAfter is the unit the number just read takes: the one written after it,
// else that of bare numbers. Of metres no thousand is read, but of many lengths
// together, so 3,805 m can only be 3.805 m.
func (p *parser) unitAfter() Unit {
	if following, there := p.after(0); there && following.kind == tokenUnit {
		return following.unit
	}
	return p.bare
}

// thousandsFollow tells whether the next token is three digits, one space away,
// that are not the top of a fraction.
func (p *parser) thousandsFollow() bool {
	t, there := p.after(0)
	return there && t.kind == tokenNumber && t.spaces == 1 && t.number.wholes == 3 &&
		!t.number.grouped && t.number.raised == 0 && !p.is(1, tokenSlash)
}

// fraction reads n/d or a fraction character into q, after the number already
// there.
func (p *parser) fraction(q *quantity) error {
	t := p.tokens[p.next]
	if q.number.decimal || t.kind == tokenNumber && t.number.decimal {
		return p.refuse(t.at, Say("There is a decimal and a fraction."), Say("Write one of the two."))
	}
	end := t.end
	if t.kind == tokenFraction {
		q.num, q.den = t.num, t.den
		p.next++
	} else {
		below, there := p.after(2)
		if !there || below.kind != tokenNumber {
			return p.refuse(p.tokens[p.next+1].at, Say("Nothing stands below the line of the fraction."), Say("Write a fraction such as 1/2."))
		}
		if below.number.decimal {
			return p.refuse(below.at, Say("There is a decimal and a fraction."), Say("Write one of the two."))
		}
		if t.number.raised < 0 || below.number.raised > 0 {
			return p.refuse(t.at, Say("The digits of the fraction are raised and lowered the wrong way round."), Say("Write a fraction such as 1/2."))
		}
		q.num, q.den, end = t.number.whole, below.number.whole, below.end
		p.next += 3
	}
	if err := p.fractionRefused(q, t.at, p.text[t.at:end]); err != nil {
		return err
	}
	if t, there := p.after(0); there && t.kind != tokenUnit {
		return p.afterFractionRefused(t)
	}
	return nil
}

func (p *parser) afterFractionRefused(t token) error {
	switch t.kind {
	case tokenHyphen:
		return p.dashRefused(t)
	case tokenSlash:
		return p.refuse(t.at, Say("A fraction has one line only."), Say("Write a fraction such as 1/2."))
	}
	return p.refuse(t.at, Say("Something follows the fraction with no unit between."), Say("Write the unit after the fraction."))
}

// fractionRefused checks a fraction against the marks of a tape, or of cups and
// spoons, which have thirds too.
func (p *parser) fractionRefused(q *quantity, at int, written string) error {
	fraction := put("fraction", written)
	switch {
	case q.den == 0:
		return p.refuse(at, Say("The fraction {fraction} is divided by zero.", fraction), Say("Write halves, quarters, 8ths, 16ths, 32nds or 64ths."))
	case p.spoons && (q.den > 64 || q.den < 2):
		return p.refuse(at, Say("Nothing is measured in {fraction}.", fraction), Say("Write a fraction such as 1/4 or 1/3."))
	case !p.spoons && (q.den > 64 || q.den < 2 || q.den&(q.den-1) != 0):
		return p.refuse(at, Say("No tape has a mark for {fraction}.", fraction), Say("Write halves, quarters, 8ths, 16ths, 32nds or 64ths."))
	case q.num >= q.den:
		return p.refuse(at, Say("The fraction {fraction} is one or more.", fraction), p.topHeavy(q, at))
	}
	return nil
}

// topHeavy offers what a fraction of one or more may have meant: 17/16 is
// 1 1/16 by division, or 1 7/16 with its space lost.
func (p *parser) topHeavy(q *quantity, at int) Said {
	if q.num >= tooGreat || q.number.whole >= tooGreat {
		return Say("Write the whole number, a space and the fraction.")
	}
	divided := put("divided", mixed(q.number.whole+q.num/q.den, q.num%q.den, q.den))
	if q.at != at { // a whole number stands before it
		return Say("Write {divided}.", divided)
	}
	for power := int64(100); power >= 10; power /= 10 { // no fraction here has three digits above its line
		if rest := q.num % power; q.num > rest && rest > 0 && rest < q.den && rest*10 >= power {
			return Say("Write {parted} or {divided}.", put("parted", mixed(q.num/power, rest, q.den)), divided)
		}
	}
	return Say("Write {divided}.", divided)
}

func mixed(whole, num, den int64) string {
	if num == 0 {
		return strconv.FormatInt(whole, 10)
	}
	for num%2 == 0 && den%2 == 0 {
		num, den = num/2, den/2
	}
	return strconv.FormatInt(whole, 10) + " " + strconv.FormatInt(num, 10) + "/" + strconv.FormatInt(den, 10)
}

// length reads the parts of a length from the largest unit down and adds them.
func (p *parser) length() (Length, error) {
	var total Length
	var last Unit
	whole := true // the part before had neither decimals nor a fraction
	for first := true; first || p.next < p.used; first = false {
		if err := p.between(last); err != nil {
			return 0, err
		}
		q, err := p.quantity()
		if err != nil {
			return 0, err
		}
		unit, err := p.unitOf(q, last)
		if err == nil {
			err = p.orderRefused(q, unit, last, whole)
		}
		if err != nil {
			return 0, err
		}
		value, err := p.value(q, unit)
		if err != nil {
			return 0, err
		}
		if last != "" && value >= last.Length() {
			return 0, p.reachesRefused(q, unit, last, total+value)
		}
		total += value
		if total > p.most {
			return 0, p.tooLong()
		}
		last, whole = unit, q.number.part == 0 && q.den == 0
	}
	return total, nil
}

// between takes the dash that may stand between feet and inches, and refuses a
// fraction after the inch mark.
func (p *parser) between(last Unit) error {
	if last == UnitFoot && p.is(0, tokenHyphen) {
		p.next++
		if p.next == p.used {
			return p.refuse(p.tokens[p.next-1].at, Say("Nothing follows the dash."), Say("Write the inches after it, or leave it out."))
		}
	}
	if last == UnitInch && p.startsFraction(0) {
		return p.refuse(p.tokens[p.next].at, Say("A fraction stands after the inch mark."), Say("Write the fraction before the inch mark."))
	}
	return nil
}

// unitOf is the unit of a quantity: its own, inches after feet, or the one for
// bare numbers.
func (p *parser) unitOf(q quantity, last Unit) (Unit, error) {
	t, there := p.after(0)
	switch {
	case there && t.kind == tokenUnit:
		p.next++
		if q.hasFeet && t.unit != UnitInch {
			return "", p.refuse(t.at, Say("Feet, inches and a fraction joined by dashes end in inches."), Say(`Write 7' 0 1/2".`))
		}
		return t.unit, nil
	case q.hasFeet || last == UnitFoot:
		return UnitInch, nil
	case last != "":
		return "", p.refuse(q.at, Say("The number {number} has no unit.", put("number", p.text[q.at:p.tokens[p.next-1].end])), Say("Write the unit after each number."))
	case p.bare.Length() == 0:
		return "", p.refuse(q.at, Say("The number has no unit."), Say("Write its unit, such as in or mm."))
	}
	return p.bare, nil
}

// orderRefused checks a part against the one before it.
func (p *parser) orderRefused(q quantity, unit, last Unit, whole bool) error {
	switch {
	case q.den != 0 && unit.isMetric():
		return p.refuse(q.at, Say("A fraction does not go with a metric unit."), Say("Write a decimal, such as 0.5, or the length in inches."))
	case last == "":
		return nil
	case unit.isMetric() != last.isMetric():
		return p.refuse(q.at, Say("Feet or inches stand beside a metric unit."), Say("Write the whole length in one system. The mark ' means feet."))
	case unit == last && unit == UnitFoot:
		return p.refuse(q.at, Say("Both parts are in feet."), Say("Write ' after feet and \" after inches."))
	case unit == last:
		return p.refuse(q.at, Say("The same unit stands twice: {unit}.", put("unit", string(unit))), Say("Write one unit for each part, the larger first."))
	case unit.Length() > last.Length():
		return p.refuse(q.at, Say("The smaller unit stands first."), Say("Write the larger unit first."))
	case q.hasFeet:
		return p.refuse(q.at, Say("Feet are written twice."), Say(`Write 7' 0 1/2".`))
	case !whole:
		return p.refuse(0, Say("Only the last part may have decimals or a fraction."), Say("Write whole {units}, or one unit only.", putSaid("units", plural(last))))
	}
	return nil
}

// plural is a unit as one speaks of many of it.
func plural(unit Unit) Said {
	switch unit {
	case UnitFoot:
		return Say("feet")
	case UnitYard:
		return Say("yards")
	case UnitMetre:
		return Say("metres")
	}
	return Said{Sentence: string(unit)}
}

// reachesRefused offers the sum carried over. The sum is offered only where it
// is within reach, so that what is offered is read.
func (p *parser) reachesRefused(q quantity, unit, last Unit, sum Length) error {
	reason := Say("The part in {unit} reaches one {larger} or more.", put("unit", string(unit)), put("larger", string(last)))
	n := Notation{System: Metric, Plain: true}
	if unit == UnitInch {
		reason, n.System = Say("Inches after feet must be below 12."), FeetInches
	}
	if sum > p.most {
		return p.refuse(q.at, reason, Say("Check the figures."))
	}
	return p.refuse(q.at, reason, Say("If you mean their sum, write {sum}.", put("sum", n.Exact(sum))))
}

func (p *parser) tooLong() error {
	written := put("length", p.text[p.chars[0].at:p.chars[p.count-1].end])
	reason := Say("{length} is more than 100 m (328 ft), the longest length that is read.", written)
	if p.most > Longest {
		reason = Say("{length} is more than 10 km (6.2 miles), the longest length that is read.", written)
	}
	return p.refuse(0, reason, Say("Check the figure and its unit."))
}

// value is a quantity in nanometres. No product here can pass an int64: whole
// is below 10^8 by the first check, part below 10^9, and a unit at most 10^9.
func (p *parser) value(q quantity, unit Unit) (Length, error) {
	const most = 10_000_000 // of the smallest unit, 10 km
	if q.number.whole > most || q.feet.whole > most {
		return 0, p.tooLong()
	}
	length := unit.Length()
	value := Length(q.number.whole) * length
	if q.den != 0 {
		value += Length(q.num) * length / Length(q.den)
	}
	if q.number.places > 9 {
		return 0, p.tooFine(q, unit)
	}
	if q.number.places > 0 {
		product, below := Length(q.number.part)*length, power10(q.number.places)
		if product%below != 0 {
			return 0, p.tooFine(q, unit)
		}
		value += product / below
	}
	if q.hasFeet {
		if q.feet.decimal {
			return 0, p.refuse(q.at, Say("Feet must be whole when inches follow."), Say("Write whole feet."))
		}
		if value >= Foot {
			return 0, p.reachesRefused(q, UnitInch, UnitFoot, value+Length(q.feet.whole)*Foot)
		}
		value += Length(q.feet.whole) * Foot
	}
	return value, nil
}

func (p *parser) tooFine(q quantity, unit Unit) error {
	return p.refuse(q.at, Say("This is finer than a nanometre."),
		Say("Write at most {most} decimals of {units}.", put("most", strconv.Itoa(unit.decimals())), putSaid("units", plural(unit))))
}

func power10(places int) Length {
	power := Length(1)
	for ; places > 0; places-- {
		power *= 10
	}
	return power
}

// commaRefused offers both readings of the number of t, in the unit it would
// have taken.
func (p *parser) commaRefused(t token) error {
	unit := string(p.unitAfter())
	if unit != "" {
		unit = " " + unit
	}
	whole, decimals := p.digits(t.at, t.number.split), p.digits(t.number.split, t.end)
	decimal := whole
	if kept := strings.TrimRight(decimals, "0"); kept != "" {
		decimal += "." + kept
	}
	answers := p.readable(whole+decimals+unit, decimal+unit)
	if len(answers) == 0 {
		return p.tooLong()
	}
	err := &ParseError{Text: p.text, Rest: p.text[t.at:],
		Reason: Say("{number} could mean {one} or {other}.", put("number", p.text[t.at:t.end]), put("one", whole+decimals), put("other", decimal)),
		Do:     oneOf(answers)}
	if p.used == 1 || p.used == 2 && p.tokens[1].kind == tokenUnit { // the answers are the whole of it
		err.Answers = answers
	}
	return err
}

// oneOf offers one or two texts to write.
func oneOf(answers []string) Said {
	if len(answers) == 1 {
		return Say("Write {one}.", put("one", answers[0]))
	}
	return Say("Write {one} or {other}.", put("one", answers[0]), put("other", answers[1]))
}

// readable is those of some texts that can be read where this one was not.
func (p *parser) readable(texts ...string) []string {
	if p.plain {
		return texts
	}
	var can []string
	for _, text := range texts {
		if _, err := (Reader{Bare: p.bare, Total: p.most > Longest}).Parse(text); err == nil || p.bare == "" {
			can = append(can, text)
		}
	}
	return can
}

// digits is the digits between two places of the text.
func (s *scanner) digits(from, to int) string {
	var out strings.Builder
	for _, c := range s.chars[:s.count] {
		if c.at >= from && c.at < to && isDigit(c.c) {
			out.WriteByte(byte(c.c))
		}
	}
	return out.String()
}
