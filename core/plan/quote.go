package plan

import (
	"ceilingwright/core/jsondoc"
	"ceilingwright/core/measure"
	"ceilingwright/core/words"
)

// Quote is what a client was quoted: amounts that stand as they are, with
// nothing of what is behind them. Known tells whether the plan is a client's:
// it then holds no rates, and its price is read here and not worked out.
//
// Date is the day of the quote, Until the last day it holds, "" where nothing
// is said, and Done the day on which the work is planned to be done, "" where
// that is not known; all three as 2027-03-01. Low and High are the rough price
// of a first visit.
type Quote struct {
	Known             bool
	Date, Until, Done string
	Currency          string
	Digits            int
	Lines             []QuoteLine
	Tax               QuoteLine // its share, where there is a tax
	Total             Money
	Payments          []QuoteLine
	Low, High         Money
}

// QuoteLine is one amount of a quote. Share is what part of the price a payment
// is, or at which rate the tax is counted.
type QuoteLine struct {
	Name  string
	Share Percent
	Sum   Money
}

const mostQuoteLines = 40

func readQuote(s section) Quote {
	q := Quote{
		Date: s.text("date"), Until: s.text("until"), Done: s.text("done"), Currency: s.text("currency"), Digits: readDigits(s),
		Tax: QuoteLine{Share: s.percent("taxPercent", 100), Sum: s.sum("tax")}, Total: s.sum("total"), Low: s.sum("low"), High: s.sum("high"),
	}
	for _, e := range s.some("lines", mostQuoteLines, words.Say("lines of the price")) {
		q.Lines = append(q.Lines, QuoteLine{Name: e.text("name"), Sum: e.sum("sum")})
	}
	for _, e := range s.some("payments", mostQuoteLines, words.Say("payments")) {
		q.Payments = append(q.Payments, QuoteLine{Name: e.text("name"), Share: e.percent("percent", 100), Sum: e.sum("sum")})
	}
	q.Known = q.Date != ""
	return q
}

// firmsOwn are the blanks that a client's plan does not have: what things cost,
// what is added to them, and how fast the firm works, from which its hourly
// rate could be told. [] stands for any entry of a list. What is below them goes
// too. A test holds the list against every number of the schema.
var firmsOwn = map[string]bool{
	"/price":                             true,
	"/days":                              true,
	"/ticked":                            true,
	"/marked":                            true,
	"/quote":                             true,
	"/mask/layers/[]/priceFor":           true,
	"/mask/layers/[]/price":              true,
	"/finish/steps/[]/cans/[]/price":     true,
	"/finish/steps/[]/rate":              true,
	"/finish/steps/[]/rateUnit":          true,
	"/finish/steps/[]/gilders":           true,
	"/finish/steps/[]/leaf/pricePerBook": true,
	"/finish/steps/[]/leaf/pricePerPack": true,
}

// ForClient is a plan as a client may have it, as JSON: the plan without the
// firm's own blanks, and with the quote in their place. What the plan holds and
// nobody here knows stays out too, since it might be anything. Its id is another
// one, so that both can be kept side by side. A text that is no plan gives nil.
func ForClient(data []byte, q *Quote) []byte {
	r := &reader{}
	node := r.document(data)
	if node == nil {
		return nil
	}
	id := r.plan(section{reader: r, node: node}).ID
	c := &copying{}
	c.w.Open('{')
	c.w.Key("ceilingwright")
	c.w.Int(Version)
	c.w.Text("id", id+"-client")
	c.fields("", node)
	q.write(&c.w)
	c.w.Close('}')
	return c.w.Bytes()
}

// copying writes a plan anew.
type copying struct{ w jsondoc.Writer }

// fields writes what is known of an object and not the firm's own.
func (c *copying) fields(at string, node *jsondoc.Node) {
	for i := range node.Fields {
		f := &node.Fields[i]
		below := at + "/" + f.Name
		if !f.Known || f.Repeated || firmsOwn[below] || below == "/ceilingwright" || below == "/id" {
			continue
		}
		c.w.Key(f.Name)
		c.value(below, f.Value)
	}
}

func (c *copying) value(at string, node *jsondoc.Node) {
	switch node.Kind {
	case jsondoc.Object:
		c.w.Open('{')
		c.fields(at, node)
		c.w.Close('}')
	case jsondoc.List:
		c.w.Open('[')
		for _, item := range node.Items {
			c.value(at+"/[]", item)
		}
		c.w.Close(']')
	case jsondoc.Null:
		c.w.Null()
	default: // a number is a blank like a text
		c.w.String(node.Text)
	}
}

// write writes the quote as a field of the plan.
func (q *Quote) write(w *jsondoc.Writer) {
	w.Key("quote")
	w.Open('{')
	w.Text("date", q.Date)
	w.Text("until", q.Until)
	w.Text("done", q.Done)
	w.Text("currency", q.Currency)
	w.Text("digits", string(rune('0'+q.Digits)))
	w.Key("lines")
	w.Open('[')
	for i := range q.Lines {
		w.Open('{')
		w.Text("name", q.Lines[i].Name)
		w.Text("sum", q.amount(q.Lines[i].Sum))
		w.Close('}')
	}
	w.Close(']')
	w.Text("taxPercent", percentText(q.Tax.Share))
	w.Text("tax", q.amount(q.Tax.Sum))
	w.Text("total", q.amount(q.Total))
	w.Key("payments")
	w.Open('[')
	for i := range q.Payments {
		w.Open('{')
		w.Text("name", q.Payments[i].Name)
		w.Text("percent", percentText(q.Payments[i].Share))
		w.Text("sum", q.amount(q.Payments[i].Sum))
		w.Close('}')
	}
	w.Close(']')
	w.Text("low", q.amount(q.Low))
	w.Text("high", q.amount(q.High))
	w.Close('}')
}

// amount is money as it is typed, "" for none. A fourth decimal tells it from a
// whole number with its thousands set apart, as a blank for money asks.
func (q *Quote) amount(m Money) string {
	switch {
	case !m.Known:
		return ""
	case q.Digits == 3:
		return m.Amount.StringFixed(4)
	}
	return m.Amount.StringFixed(int32(q.Digits))
}

func percentText(p Percent) string {
	if !p.Known {
		return ""
	}
	return p.Share.Mul(measure.NumberFromInt(100)).Trimmed(4)
}
