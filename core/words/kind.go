package words

import "strings"

// Kind is what texts that say the same of other things have in common: their
// sentences, without the numbers and names in them.
func (t Text) Kind() string {
	if t.said == nil {
		return ""
	}
	kind := Blotted(t.said.sentence)
	for _, h := range t.said.holes {
		switch v := h.Value.(type) {
		case Text:
			kind += " " + v.Kind()
		case row:
			for _, one := range v.values {
				if text, ok := one.(Text); ok {
					kind += " " + text.Kind()
				}
			}
		}
	}
	if t.said.sentence == asItIs {
		kind += " " + Blotted(t.String())
	}
	return kind
}

// Blotted is a text without its numbers and without what stands between quotation
// marks.
func Blotted(text string) string {
	var out strings.Builder
	out.Grow(len(text))
	quoted := false
	for _, r := range text {
		switch {
		case r == '“':
			quoted = true
		case r == '”':
			quoted = false
		case quoted || r >= '0' && r <= '9' || strings.ContainsRune("⁄¼½¾⅛⅜⅝⅞", r):
		default:
			out.WriteRune(r)
		}
	}
	return out.String()
}
