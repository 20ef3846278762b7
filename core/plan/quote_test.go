package plan

import (
	"encoding/json"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ceilingwright/core/measure"
)

// harmless are the numbers of a plan that a client may see: sizes and counts, what
// labels and data sheets say, the climate, the platform. None is money, and from
// none can an hourly rate be told.
var harmless = []string{
	"/place/built", "/place/floorLoad", "/room/walls/[]/angle",
	"/mask/layers/[]/columns", "/mask/layers/[]/rows", "/mask/layers/[]/open", "/seams/pieceLength", "/seams/waste",
	"/finish/climate/humidity", "/finish/kit/[]/size", "/finish/surfaces/[]/corners", "/finish/surfaces/[]/openings/[]/count",
	"/finish/steps/[]/share", "/finish/steps/[]/typedArea", "/finish/steps/[]/coats", "/finish/steps/[]/by", "/finish/steps/[]/spread", "/finish/steps/[]/spreadUnit",
	"/finish/steps/[]/film", "/finish/steps/[]/dryFilm", "/finish/steps/[]/solids", "/finish/steps/[]/thinned", "/finish/steps/[]/loss", "/finish/steps/[]/vary",
	"/finish/steps/[]/cans/[]/size", "/finish/steps/[]/keep", "/finish/steps/[]/spare", "/finish/steps/[]/sample", "/finish/steps/[]/potLife",
	"/finish/steps/[]/mix/[]/amount", "/finish/steps/[]/mix/[]/density",
	"/finish/steps/[]/dryHours", "/finish/steps/[]/recoatHours", "/finish/steps/[]/tackHours", "/finish/steps/[]/openHours", "/finish/steps/[]/reserve",
	"/finish/steps/[]/voc", "/finish/steps/[]/waterPart", "/finish/steps/[]/exemptPart", "/finish/steps/[]/limit", "/finish/steps/[]/flash",
	"/finish/steps/[]/leaf/cover", "/finish/steps/[]/leaf/waste", "/finish/steps/[]/leaf/perBook", "/finish/steps/[]/leaf/booksPerPack",
	"/finish/steps/[]/leaf/bandCorners", "/finish/steps/[]/leaf/gramsPer1000",
	"/air/limit", "/air/shortTerm", "/air/opened", "/air/shut", "/air/mixing", "/air/fan",
	"/access/load", "/access/mass", "/access/minutes", "/access/onDeck", "/access/panel", "/access/rated",
}

// ofMoney are words by which a blank about money or about time worked is known,
// whatever it holds.
var ofMoney = regexp.MustCompile(`(?i)price|cost|\brate\b|per cent of the (cost|price)|\bpaid\b|profit|margin|markup|overhead|money|currency|\bhire\b|travel|person`)

// isFirmsOwn tells whether a place of the schema, or one that holds it, is left out
// of a client's plan.
func isFirmsOwn(at string) bool {
	for place := range firmsOwn {
		if at == place || strings.HasPrefix(at, place+"/") {
			return true
		}
	}
	return false
}

// isNumber tells whether a property is a number; lengths are none here: their
// examples begin with one in feet.
func isNumber(p property) bool {
	examples, _ := p.schema["examples"].([]any)
	return len(examples) > 0 && !strings.Contains(examples[0].(string), "'")
}

// Every number of a plan is either left out of a client's copy or named here as one
// that he may see: a new blank has to be put on one list or the other.
func TestEveryNumberIsTheFirmsOwnOrHarmless(t *testing.T) {
	known := map[string]bool{}
	for _, p := range properties(t) {
		at := p.in + "/" + p.name
		known[at] = true
		words, _ := p.schema["description"].(string)
		if !isFirmsOwn(at) && (isNumber(p) || ofMoney.MatchString(words)) {
			assert.Contains(t, harmless, at, "put it among firmsOwn, or here")
		}
	}
	for _, at := range harmless {
		assert.True(t, known[at] && !isFirmsOwn(at), "%s is not in the schema, or is the firm's own", at)
	}
	for at := range firmsOwn {
		assert.True(t, known[at], "%s is not in the schema", at)
	}
}

// places are the places of the schema that a plan fills.
func places(node any, at string) (all []string) {
	switch node := node.(type) {
	case map[string]any:
		for name, value := range node {
			all = append(all, at+"/"+name)
			all = append(all, places(value, at+"/"+name)...)
		}
	case []any:
		for _, item := range node {
			all = append(all, places(item, at+"/[]")...)
		}
	}
	slices.Sort(all)
	return slices.Compact(all)
}

func sumOf(text string) Money { return Money{Amount: decimal.RequireFromString(text), Known: true} }

func per(text string) Percent {
	return Percent{Share: measure.MustNumber(text).Quo(measure.NumberFromInt(100)), Known: true}
}

// A plan that fills every blank there is keeps just those that are not the firm's
// own, each as it was typed.
func TestForClientLeavesOutWhatIsTheFirmsOwn(t *testing.T) {
	before := whole(t)
	before["scratch"] = "45 an hour" // nobody knows what that is
	quote := Quote{Known: true, Date: "2027-03-01", Digits: 2, Total: sumOf("1680")}
	var after map[string]any
	require.NoError(t, json.Unmarshal(ForClient(marshal(t, before), &quote), &after))
	var want []string
	for _, at := range places(before, "") {
		if !isFirmsOwn(at) && at != "/scratch" {
			want = append(want, at)
		}
	}
	got := slices.DeleteFunc(places(after, ""), func(at string) bool { return isFirmsOwn(at) })
	assert.Equal(t, want, got)
	assert.Empty(t, slices.DeleteFunc(places(after, ""), func(at string) bool { return !isFirmsOwn(at) || strings.HasPrefix(at, "/quote") }))
	assert.Equal(t, "1-client", after["id"])
	assert.Equal(t, before["room"], after["room"])
	assert.Empty(t, unknown(Read(marshal(t, after))))
}

// What is written as a quote is read as it was, in money with and without minor
// digits.
func TestQuoteIsReadAsWritten(t *testing.T) {
	for _, digits := range []int{0, 2, 3} {
		cut := func(text string) Money {
			m := sumOf(text)
			m.Amount = m.Amount.Truncate(int32(digits))
			return m
		}
		quote := Quote{
			Known: true, Date: "2027-03-01", Until: "2027-03-31", Done: "2027-05-07", Currency: "GBP", Digits: digits,
			Lines:    []QuoteLine{{Name: "Masks, “both”", Sum: cut("1250.125")}, {Name: "Work", Sum: cut("12000")}},
			Tax:      QuoteLine{Share: per("8.25"), Sum: cut("103.137")},
			Total:    cut("13353.262"),
			Payments: []QuoteLine{{Name: "Deposit", Share: per("33.3333"), Sum: cut("4451")}},
			Low:      cut("900"), High: cut("1.25"),
		}
		doc := Read(ForClient([]byte(`{"ceilingwright":1,"id":"a"}`), &quote))
		require.True(t, doc.Usable)
		got := doc.Plan.Quote
		assert.Equal(t, ForClient([]byte(`{"ceilingwright":1}`), &quote), ForClient([]byte(`{"ceilingwright":1}`), &got), digits)
		for _, p := range doc.Problems {
			assert.False(t, strings.HasPrefix(p.At, "/quote"), "%v", p)
		}
		assert.True(t, quote.Total.Amount.Equal(got.Total.Amount))
	}
	assert.Nil(t, ForClient([]byte("no plan"), &Quote{}))
	assert.False(t, Read([]byte(`{"ceilingwright":1,"quote":{"total":"5"}}`)).Plan.Quote.Known, "no date, no quote")
}
