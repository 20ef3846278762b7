package measure

import (
	"strconv"
	"strings"

	"github.com/shopspring/decimal"
)

// mostDigits is how many digits a number that is no length may have.
const mostDigits = 12

// ParseNumber reads a number without a unit, zero or more, exactly: digits with
// a decimal point or comma, and thousands apart by spaces, or by the other of
// the two. Refused with a *ParseError: nothing typed; a sign; one comma before
// exactly three digits, which could mean two things; a fraction; a per cent
// sign, a unit or a word; exponents, other bases, other scripts; over 12
// digits.
func ParseNumber(text string) (decimal.Decimal, error) {
	n, _, err := readNumber(text, false)
	return n.value(), err
}

// ParseSigned is ParseNumber for a number that may be below 0: a sign may stand
// before it, the minus written in any way that ParseOffset reads.
func ParseSigned(text string) (decimal.Decimal, error) {
	n, negative, err := readNumber(text, true)
	if negative {
		return n.value().Neg(), err
	}
	return n.value(), err
}

// between are the ways to write what stands between the two numbers of a range.
var between = [...]string{" to ", "–", "—", "-"}

// ParseSpan reads a number as ParseNumber does, or a range of two with the smaller
// first: "16 to 18", "16–18", "16-18". A single number is both ends. Refused is what
// ParseNumber refuses of either, and a range that runs from the larger to the
// smaller.
func ParseSpan(text string) (from, to decimal.Decimal, err error) {
	one, other := text, text
	for _, sign := range between {
		if low, high, ok := strings.Cut(text, sign); ok && strings.TrimSpace(low) != "" {
			one, other = low, high
			break
		}
	}
	if from, err = ParseNumber(strings.TrimSpace(one)); err != nil {
		return from, to, err
	}
	if to, err = ParseNumber(strings.TrimSpace(other)); err != nil {
		return from, to, err
	}
	if to.LessThan(from) {
		err = &ParseError{Text: text, Reason: Say("The range runs from the larger number to the smaller."), Do: Say("Write the smaller one first, such as 16 to 18.")}
	}
	return from, to, err
}

// value is a numeral of at most mostDigits digits, exactly.
func (n numeral) value() decimal.Decimal {
	return decimal.NewFromInt(n.whole).Add(decimal.New(n.part, -int32(n.places)))
}

// ParseAmount reads an amount as a recipe has it, zero or more, exactly: what
// ParseNumber reads, a fraction such as 1/4 or ⅓, or a whole number and one, 1 1/2
// or 1½. Refused is what ParseNumber refuses but fractions, and a fraction of one
// or more, or of more than 64 parts.
func ParseAmount(text string) (Number, error) {
	p := parser{scanner: scanner{text: text, plain: true}, spoons: true}
	if err := p.scan(); err != nil {
		return Number{}, err
	}
	isFraction := false
	for i := range p.tokens[:p.used] {
		kind := p.tokens[i].kind
		isFraction = isFraction || kind == tokenFraction || kind == tokenSlash
	}
	if !isFraction {
		n, err := ParseNumber(text)
		return NumberFromDecimal(n), err
	}
	if t := p.tokens[0]; t.kind == tokenHyphen || t.kind == tokenPlus {
		return Number{}, p.startRefused(t)
	}
	q, err := p.quantity()
	if err != nil {
		return Number{}, err
	}
	if t, there := p.after(0); there || q.hasFeet {
		if !there {
			t = token{at: q.at, kind: tokenNumber}
		}
		return Number{}, p.strayRefused(t)
	}
	if q.number.digits > mostDigits {
		return Number{}, p.refuse(0, Say("This has more than {most} digits.", put("most", strconv.Itoa(mostDigits))), Say("Check the number."))
	}
	return NumberFromInt(q.number.whole).Add(NumberFromFraction(q.num, q.den)), nil
}

// ParseCount reads a whole number, zero or more, of up to 9 digits. What
// ParseNumber refuses is refused, and decimals too.
func ParseCount(text string) (int, error) {
	n, _, err := readNumber(text, false)
	switch {
	case err != nil:
		return 0, err
	case n.decimal:
		return 0, &ParseError{Text: text, Rest: text, Reason: Say("This must be a whole number."), Do: Say("Write it without decimals.")}
	case n.digits > 9:
		return 0, &ParseError{Text: text, Rest: text, Reason: Say("This has more than 9 digits."), Do: Say("Check the number.")}
	}
	return int(n.whole), nil
}

// ParseMoney reads an amount without its currency, exactly, with up to 4
// decimals. What ParseNumber refuses is refused, currency signs too, and so is one
// point before exactly three digits as well as one comma: half the world writes a
// thousand with either. A fourth decimal tells them apart.
func ParseMoney(text string) (decimal.Decimal, error) {
	amount, err := ParseNumber(text)
	if whole, decimals, ok := thousandsMark(text); err == nil && ok {
		answers := []string{whole + decimals, amount.StringFixed(max(2, -amount.Exponent())) + afterThree(decimals)}
		return decimal.Decimal{}, &ParseError{Text: text, Rest: text,
			Reason:  Say("{number} could mean {one} or {other}.", put("number", strings.TrimSpace(text)), put("one", whole+decimals), put("other", amount.String())),
			Do:      oneOf(answers),
			Answers: answers}
	}
	if err == nil && amount.Exponent() < -4 {
		return decimal.Decimal{}, &ParseError{Text: text, Rest: text, Reason: Say("This has more than 4 decimals."), Do: Say("Write the amount with two decimals.")}
	}
	return amount, err
}

// thousandsMark splits a number at the only mark in it where that may part
// thousands: one to three digits that do not begin with 0 before it, three after.
func thousandsMark(text string) (whole, decimals string, ok bool) {
	text = strings.TrimSpace(text)
	at := strings.IndexAny(text, ".,")
	if at < 1 || at > 3 || len(text) != at+4 || text[0] == '0' || strings.Trim(text[:at]+text[at+1:], "0123456789") != "" {
		return "", "", false
	}
	return text[:at], text[at+1:], true
}

// afterThree is the zero that is written after three decimals that are meant.
func afterThree(decimals string) string {
	if decimals[2] == '0' {
		return ""
	}
	return "0"
}

// ParseYear reads a year of four digits. What ParseCount refuses is refused.
func ParseYear(text string) (int, error) {
	n, _, err := readNumber(text, false)
	switch {
	case err != nil:
		return 0, err
	case n.decimal || n.digits != 4 || n.whole < 1000:
		return 0, &ParseError{Text: text, Rest: text, Reason: Say("A year has four digits."), Do: Say("Write it such as 1931.")}
	}
	return int(n.whole), nil
}

// readNumber reads one number and nothing else, with the sign before it where
// signed allows one. What is refused is 0.
func readNumber(text string, signed bool) (n numeral, negative bool, err error) {
	p := parser{scanner: scanner{text: text, plain: true}}
	if err := p.scan(); err != nil {
		return numeral{}, false, err
	}
	if p.used == 0 {
		return numeral{}, false, p.refuse(0, Say("Nothing is typed."), Say("Type a number, such as 12 or 4.5."))
	}
	if signed {
		negative, _ = p.sign()
	}
	t, there := p.after(0)
	switch {
	case !there:
		return numeral{}, false, p.refuse(len(p.text), Say("A sign stands alone."), Say("Write a number after it."))
	case t.kind != tokenNumber:
		return numeral{}, false, p.startRefused(t)
	}
	if n, err = p.number(); err == nil {
		if t, there := p.after(0); there {
			err = p.strayRefused(t)
		} else if n.digits > mostDigits {
			err = p.refuse(0, Say("This has more than {most} digits.", put("most", strconv.Itoa(mostDigits))), Say("Check the number."))
		}
	}
	if err != nil {
		return numeral{}, false, err
	}
	return n, negative, nil
}

// startRefused is why no plain number begins with a token.
func (p *parser) startRefused(t token) error {
	switch t.kind {
	case tokenHyphen:
		return p.refuse(t.at, Say("This number cannot be negative."), Say("Leave out the minus sign."))
	case tokenPlus:
		return p.refuse(t.at, Say("This number takes no sign."), Say("Leave out the sign."))
	}
	return p.strayRefused(t)
}

// strayRefused is why a token has no place in a plain number.
func (p *parser) strayRefused(t token) error {
	switch t.kind {
	case tokenSlash, tokenFraction:
		return p.refuse(t.at, Say("A fraction is not read here."), Say("Write plain digits."))
	case tokenUnit:
		return p.refuse(t.at, Say("A unit is not read here."), Say("Write the number alone."))
	case tokenNumber:
		return p.refuse(t.at, Say("There are two numbers."), Say("Write one number only."))
	}
	return p.refuse(t.at, Say("Sums and ranges are not read here."), Say("Write one number only."))
}
