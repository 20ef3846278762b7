package tell

import (
	"slices"
	"strconv"
	"strings"

	"ceilingwright/core/job"
	"ceilingwright/core/sheet"
	tellfinish "ceilingwright/core/tell/finish"
	"ceilingwright/core/tell/page"
	"ceilingwright/core/tell/shopping"

	"ceilingwright/core/words"

	"ceilingwright/core/finish"
	"ceilingwright/core/measure"
	"ceilingwright/core/plan"
	"ceilingwright/core/price"
	"ceilingwright/core/problem"

	"github.com/shopspring/decimal"
)

// costing is what a price is made from: items, and in missing the names of what
// has no price.
type costing struct {
	items   []price.Item
	missing []string
}

// price is the block Price. A plan that asks for no price gets none.
func (b *builder) price() {
	if b.Plan.Quote.Known {
		b.quotedPrice()
		return
	}
	b.rough()
	if !b.Plan.Price.IsAsked() {
		b.unasked()
		return
	}
	costs := b.costing()
	if len(costs.items) == 0 && !b.Plan.Price.Minimum.Known {
		b.unpriced(costs.missing)
		return
	}
	quote, problems, ok := price.QuoteOf(costs.items, b.terms())
	b.Report("/price", problems)
	b.leftOut(costs.missing)
	b.UnpricedParts()
	b.priceLines(quote.Lines)
	if !ok || b.unreadTerms() {
		return
	}
	b.priceFigures(&quote)
	b.priceTotals(&quote)
	b.clientCopy(&quote)
	b.payments(&quote)
	b.priced = &quote
	b.Sheet.Price.Text = b.priceText(&quote, costs.missing)
	b.whatIfs(&quote, costs.missing)
}

// unpriced is a plan whose terms find nothing to hold for: what they make of nothing
// would be a price of 0, and a client would be quoted it.
func (b *builder) unpriced(missing []string) {
	if b.Plan.Price.Rate.Known {
		b.leftOut(missing)
		return
	}
	b.unasked()
}

// unasked says what is missing where the plan says how a price is paid, rounded or
// added to, and nothing that a price could be made of. What is added to every price
// need not be spoken of beside a rough one.
func (b *builder) unasked() {
	p := &b.Plan.Price
	stage := slices.IndexFunc(p.Stages, func(s plan.Stage) bool { return s.Share.Known || s.Name != "" })
	at, what := "", ""
	switch {
	case p.Deposit.Known:
		at, what = "/price/deposit", "A deposit is given"
	case stage >= 0:
		at, what = p.Stages[stage].At+"/percent", "Payments are given"
	case p.RoundTo.Known:
		at, what = "/price/roundTo", "It is said what to round up to"
	case p.HoldsDays > 0:
		at, what = "/price/holdsDays", "It is said how long the price holds"
	case p.TravelDays > 0:
		at, what = "/price/travelDays", "Days of travel are given"
	case b.Sheet.Price.Range != "":
		return
	case p.HirePerDay.Known:
		at, what = "/price/hirePerDay", "Hire of the platform is given"
	case p.TravelPerDay.Known:
		at, what = "/price/travelPerDay", "Travel is given"
	case p.Contingency.Known:
		at, what = "/price/contingency", "A contingency is given"
	case p.Overhead.Known:
		at, what = "/price/overhead", "Overhead is given"
	case p.ProfitShare.Known:
		at, what = "/price/profitPercent", "A profit is given"
	case p.Tax.Known:
		at, what = "/price/tax", "A tax is given"
	default:
		return
	}
	b.Report(at, []problem.Problem{{Severity: problem.Caution, What: words.Raw(what + ", but nothing to make a price of."),
		Do: words.Say("Give what an hour of one person costs, or the minimum charge.")}})
}

// unreadTerms tells whether a blank that makes the price could not be read: a
// price without it would be taken for the whole.
func (b *builder) unreadTerms() bool {
	for _, blank := range []string{"digits", "rate", "contingency", "overhead", "profit", "profitPercent", "minimum", "roundTo", "tax", "taxOn", "hirePerDay", "travelPerDay", "travelDays", "tapePerRoll"} {
		if b.IsRefused("/price/" + blank) {
			return true
		}
	}
	return false
}

// longestCurrency is above any code or sign of a currency.
const longestCurrency = 12

func (b *builder) currency() {
	if len(b.Plan.Price.Currency) > longestCurrency {
		b.Report("/price/currency", []problem.Problem{{Severity: problem.Caution,
			What: words.Say("This is longer than the code of a currency, so it is left out."), Do: words.Say("Write its code of three letters.")}})
		b.Plan.Price.Currency = ""
	}
}

// money is a sum with its currency.
func (b *builder) money(sum decimal.Decimal) string {
	text := b.sum(sum)
	if currency := b.Plan.Price.Currency; currency != "" {
		text += " " + currency
	}
	return text
}

// sum is a sum with the digits of its minor unit.
func (b *builder) sum(sum decimal.Decimal) string {
	return b.Notation.Number(measure.NumberFromDecimal(sum), int32(b.Plan.Price.Digits))
}

// rate is the price of one: with more digits than the minor unit where it was
// typed so.
func (b *builder) rate(each decimal.Decimal) string {
	places := max(int32(b.Plan.Price.Digits), -each.Exponent())
	return b.Notation.Number(measure.NumberFromDecimal(each), places)
}

// terms are the plan's terms of the price.
func (b *builder) terms() price.Terms {
	p := &b.Plan.Price
	terms := price.Terms{
		Digits: int32(p.Digits), Contingency: p.Contingency.Share, Overhead: p.Overhead.Share, Profit: p.Profit, ProfitShare: p.ProfitShare.Share,
		Minimum: p.Minimum.Amount, RoundTo: p.RoundTo.Amount, Tax: p.Tax.Share, TaxOn: p.TaxOn, Deposit: p.Deposit.Share,
	}
	left := measure.NumberFromInt(1).Sub(terms.Deposit)
	for i, stage := range p.Stages {
		share := stage.Share
		switch last := i == len(p.Stages)-1; {
		case share.Known:
			left = left.Sub(share.Share)
		case last && left.Sign() >= 0:
			share.Share = left
		case !last:
			b.Report(stage.At+"/percent", []problem.Problem{{Severity: problem.Caution,
				What: words.Say("This payment has no share of the price, so it asks for nothing."), Do: words.Say("Give its per cent. Only the last may stay empty: it takes the rest.")}})
		}
		terms.Stages = append(terms.Stages, price.Stage{Name: stage.Name, Share: share.Share})
	}
	return terms
}

// costing gathers what the job costs, in the order the groups are printed.
func (b *builder) costing() costing {
	var c costing
	for i := range b.Layers {
		item, ok := b.panelItem(&b.Layers[i])
		if !ok {
			c.miss(item.What)
			continue
		}
		c.add(item, b.Layers[i].Plan.Price)
	}
	for _, isLeaf := range []bool{false, true} {
		for i := range b.Plan.Steps {
			if (b.Plan.Steps[i].Kind == finish.LeafLaying) == isLeaf {
				c.packs(b.Told(shopping.Product(b.Job, i)), b.Finish.Steps[i].Packs, b.Told)
			}
		}
	}
	if pack, ok := b.TapePack(); ok {
		c.packs(b.Told(shopping.SeamTape()), []job.Pack{pack}, b.Told)
	}
	b.unbought(&c)
	b.labourCost(&c)
	b.byDay(&c)
	return c
}

// packs puts in what is bought of a thing.
func (c *costing) packs(what string, packs []job.Pack, told func(words.Text) string) {
	for i := range packs {
		p := &packs[i]
		c.add(price.Item{Group: p.Group, What: what, Count: measure.NumberFromInt(p.Count), Unit: "× " + told(shopping.Sold(p))}, plan.Money{Amount: p.Each, Known: p.Priced})
	}
}

// panelItem is what the panels of a layer are paid by: the set of them, or the area of
// the mask. ok is false where the area is not known.
func (b *builder) panelItem(l *job.Layer) (item price.Item, ok bool) {
	item = price.Item{Group: price.Masks, What: "Panels of “" + l.Panels.Name + "”", Unit: "set"}
	switch l.Plan.PriceFor {
	case plan.ForSquareFoot:
		item.Unit = "ft²"
	case plan.ForSquareMetre:
		item.Unit = "m²"
	}
	item.Count, ok = b.PanelsPaid(l)
	return item, ok
}

// unbought names the products of which it is not known what is bought.
func (b *builder) unbought(c *costing) {
	for i := range b.Plan.Steps {
		s := &b.Plan.Steps[i]
		if s.Kind != finish.LeafLaying && !s.Kind.IsLiquid() || s.Kind.IsLiquid() && s.Coats == 0 {
			continue
		}
		if owner := b.Finish.Steps[i].Owner; len(b.Finish.Steps[owner].Packs) == 0 {
			c.miss(b.Plan.Steps[owner].Name)
		}
	}
}

// add puts an item into the price, or its name among what is missing.
func (c *costing) add(item price.Item, each plan.Money) {
	if !each.Known {
		c.miss(item.What)
		return
	}
	item.Rate = each.Amount
	c.items = append(c.items, item)
}

func (c *costing) miss(what string) {
	for _, known := range c.missing {
		if known == what {
			return
		}
	}
	c.missing = append(c.missing, what)
}

// leftOut says what has no price.
func (b *builder) leftOut(missing []string) {
	if len(missing) == 0 {
		return
	}
	b.Report("/price", []problem.Problem{{Severity: problem.Caution,
		What: words.Raw("Not in the price, because what it costs is not given: " + problem.Listed(missing) + "."),
		Do:   words.Say("Give what it costs, or 0 where it costs nothing.")}})
}

// priceLines are the lines of the firm's own copy, each with its sum: a reader who
// works it out again comes to the same coin.
func (b *builder) priceLines(lines []price.Line) {
	for _, l := range lines {
		amount, rate, times := b.Notation.NumberTrimmed(l.Count, 2)+" "+l.Unit, b.rate(l.Rate), b.Notation.NumberTrimmed(l.Count, 2)
		switch l.Unit {
		case "set":
			amount, rate = "", "" // one of it: its price is the sum
		case hourUnit:
			minutes, _ := l.Count.Mul(measure.NumberFromInt(60)).Floor()
			amount, times = minutesText(minutes), b.Notation.Number(measure.NumberFromInt(minutes), 0)+" ÷ 60"
		}
		b.Sheet.Price.Lines = append(b.Sheet.Price.Lines, sheet.PriceLine{Group: groupName(l.Group), What: l.What, Amount: amount, Rate: rate, Sum: b.sum(l.Sum),
			Working: times + " × " + b.rate(l.Rate) + " = " + b.sum(l.Sum)})
	}
}

// groupName is a group as both copies of the price call it.
func groupName(group price.Group) string {
	switch group {
	case price.Masks:
		return "Masks"
	case price.Materials:
		return "Paint and other products"
	case price.Leaf:
		return "Metal leaf"
	case price.Tape:
		return "Tape"
	case price.Hire:
		return "Platform"
	case price.Travel:
		return "Travel"
	}
	return "Work"
}

const priceSource = "Arithmetic, in the usual order (common practice, no source): direct cost, contingency on it, overhead on both, profit, tax. " +
	"Each printed line is rounded once to the smallest coin, an exact half away from zero, and a total is the sum of the lines above it."

func (b *builder) priceFigures(q *price.Quote) {
	added := b.sum(q.Direct)
	for _, part := range []decimal.Decimal{q.Contingency, q.Overhead, q.Profit, q.ToMinimum, q.ToStep} {
		if !part.IsZero() {
			added += " + " + b.sum(part)
		}
	}
	b.sumFigure("price.net", "price before tax", q.Net, "What the job costs, and what is added for contingency, overhead and profit, up to the minimum charge and to round up.", added, priceSource)
	if b.Plan.Price.Tax.Known {
		b.sumFigure("price.tax", "tax", q.Tax, b.taxRule(), b.taxSum(q), "Arithmetic. Which rate holds, on what, and how it is rounded, the tax office says.")
	}
	b.sumFigure("price.total", "price", q.Total, "The price before tax and the tax.", b.sum(q.Net)+" + "+b.sum(q.Tax), priceSource)
	b.perArea(q)
}

// sumFigure is a figure that is a sum of money.
func (b *builder) sumFigure(id, label string, sum decimal.Decimal, rule, working, source string) {
	b.Figure(sheet.Figure{
		ID: id, Block: page.Price, Label: label, Value: sum.StringFixed(int32(b.Plan.Price.Digits)), Unit: b.Plan.Price.Currency, Text: b.money(sum),
		Working: sheet.Working{Rule: rule, Sum: working + " = " + b.money(sum), Source: source},
	})
}

func (b *builder) taxRule() string {
	switch b.Plan.Price.TaxOn {
	case price.TaxOnLines:
		return "The tax on each line of the client's copy, each rounded."
	case price.TaxOnLinesDown:
		return "The tax on each line of the client's copy, each rounded down."
	}
	return "The tax on the price before tax, rounded once."
}

func (b *builder) taxSum(q *price.Quote) string {
	if q.TaxOn != price.TaxOnLines && q.TaxOn != price.TaxOnLinesDown {
		return b.sum(q.Net) + " × " + b.exactShare(q.Terms.Tax)
	}
	parts := make([]string, len(q.Client))
	for i, line := range q.Client {
		parts[i] = b.sum(line.Tax)
	}
	return strings.Join(parts, " + ")
}

// perArea is the price for an area of what is worked on.
func (b *builder) perArea(q *price.Quote) {
	area, names, areas := tellfinish.Worked(&b.Page, b.Job, b.WorkedOn())
	of := b.Told(names)
	each, ok := q.PerArea(area)
	if !ok {
		return
	}
	text, other := b.perUnit(each, b.Notation), b.perUnit(each, b.Other)
	value, ok := price.Round(each, q.Digits)
	if !ok || text == "" {
		return
	}
	b.Sheet.Price.PerArea = text + " of " + of
	b.Figure(sheet.Figure{
		ID: "price.perArea", Block: page.Price, Label: "by the area of " + of, Value: value.StringFixed(q.Digits), Unit: b.Plan.Price.Currency + "/m2", Text: text, Other: other,
		Working: sheet.Working{Rule: "The price by the area that is worked on: that of " + of + ".", Sum: b.money(q.Total) + " ÷ " + areas + " = " + text, Source: priceSource},
	})
}

// perUnit is a price for a square metre written for the unit of area of a
// notation, "" where it is too large.
func (b *builder) perUnit(each measure.Number, n measure.Notation) string {
	unit := " for 1\u00a0m²"
	if n.System == measure.FeetInches {
		each, unit = each.Mul(measure.SquareFoot), " for 1\u00a0ft²"
	}
	sum, ok := price.Round(each, int32(b.Plan.Price.Digits))
	if !ok {
		return ""
	}
	return b.money(sum) + unit
}

// priceTotals are the sums under the lines of the firm's own copy, each with what it
// is made of.
func (b *builder) priceTotals(q *price.Quote) {
	p := &b.Plan.Price
	lines := make([]string, len(q.Lines))
	for i := range q.Lines {
		lines[i] = b.sum(q.Lines[i].Sum)
	}
	b.total("Direct cost", q.Direct, "The lines together.", plus(lines...))
	cost := b.sum(q.Direct)
	if p.Contingency.Known {
		b.total("Contingency", q.Contingency, b.Share(q.Terms.Contingency)+" of the direct cost.", b.exactShare(q.Terms.Contingency)+" × "+cost)
		cost = plus(cost, b.sum(q.Contingency))
	}
	if p.Overhead.Known {
		text := b.Share(q.Terms.Overhead) + " of the cost"
		if part, ok := q.OverheadOfNet(); ok {
			text += ", which is " + b.Share(part) + " of the price before tax"
		}
		b.total("Overhead", q.Overhead, text+".", b.exactShare(q.Terms.Overhead)+" × "+inBrackets(cost))
		cost = plus(cost, b.sum(q.Overhead))
	}
	b.total("Cost", q.Cost, "", cost)
	net := b.sum(q.Cost)
	if p.ProfitShare.Known {
		b.total(page.Capital(string(q.Terms.Profit)), q.Profit, b.bothWays(q), b.profitSum(q))
		net = plus(net, b.sum(q.Profit))
	}
	if !q.ToMinimum.IsZero() {
		b.total("Up to the minimum charge", q.ToMinimum, "The minimum charge is "+b.sum(q.Minimum)+".", b.sum(q.Minimum)+" − "+inBrackets(net))
		net = plus(net, b.sum(q.ToMinimum))
	}
	if !q.ToStep.IsZero() {
		b.total("Rounded up", q.ToStep, "To a whole number of "+b.sum(q.RoundTo)+".", b.sum(q.Net)+" − "+inBrackets(net))
		net = plus(net, b.sum(q.ToStep))
	}
	b.total("Price before tax", q.Net, b.gain(q), net)
	if p.Tax.Known {
		b.total("Tax "+b.Share(q.Terms.Tax), q.Tax, b.taxRule(), b.taxSum(q))
	}
	b.total("Price", q.Total, "", b.sum(q.Net)+" + "+b.sum(q.Tax))
}

// exactShare is a fraction in per cent for a sum that is worked out again.
func (b *builder) exactShare(n measure.Number) string {
	return b.Notation.NumberTrimmed(n.Mul(measure.NumberFromInt(100)), 8) + " %"
}

// plus is parts added up.
func plus(parts ...string) string { return strings.Join(parts, " + ") }

// inBrackets is a sum as a part of another.
func inBrackets(sum string) string {
	if strings.Contains(sum, " + ") {
		return "(" + sum + ")"
	}
	return sum
}

// profitSum is how the profit comes about: the price it makes is rounded, and the
// cost taken from it.
func (b *builder) profitSum(q *price.Quote) string {
	cost, share := b.sum(q.Cost), b.exactShare(q.ProfitShare)
	if q.Terms.Profit == price.Margin {
		return cost + " ÷ (1 − " + share + ") − " + cost
	}
	return cost + " × " + share
}

// total puts a sum under the lines; working is what it is made of.
func (b *builder) total(what string, sum decimal.Decimal, text, working string) {
	b.Sheet.Price.Totals = append(b.Sheet.Price.Totals, sheet.Total{What: what, Sum: b.sum(sum), Text: text, Working: working + " = " + b.sum(sum)})
}

// bothWays is the profit as was typed and the other way: a markup is often
// taken for a margin.
func (b *builder) bothWays(q *price.Quote) string {
	one, share := measure.NumberFromInt(1), q.ProfitShare
	if q.Terms.Profit == price.Margin {
		return "A margin of " + b.Share(share) + " of the price is a markup of " + b.Share(share.Quo(one.Sub(share))) + " on the cost."
	}
	return "A markup of " + b.Share(share) + " on the cost is a margin of " + b.Share(share.Quo(one.Add(share))) + " of the price."
}

// gain is what is left of the price, as a markup and as a margin.
func (b *builder) gain(q *price.Quote) string {
	text := "It leaves " + b.sum(q.Gain()) + " over the cost"
	if margin, ok := q.AsMargin(); ok {
		text += ", a margin of " + b.Share(margin)
	}
	if markup, ok := q.AsMarkup(); ok {
		text += " or a markup of " + b.Share(markup)
	}
	return text + "."
}

// clientCopy is the price without rates: one line for each group, and the tax.
func (b *builder) clientCopy(q *price.Quote) {
	for _, line := range q.Client {
		b.Sheet.Price.Client = append(b.Sheet.Price.Client, sheet.Total{What: groupName(line.Group), Sum: b.sum(line.Sum)})
	}
	if b.Plan.Price.Tax.Known {
		b.Sheet.Price.Client = append(b.Sheet.Price.Client, sheet.Total{What: "Tax " + b.Share(q.Terms.Tax), Sum: b.sum(q.Tax)})
	}
}

func (b *builder) payments(q *price.Quote) {
	left := b.sum(q.Total)
	for i, p := range q.Payments {
		working := b.exactShare(p.Share) + " × " + b.sum(q.Total)
		if i == len(q.Payments)-1 {
			working = left
		}
		b.Sheet.Price.Stages = append(b.Sheet.Price.Stages, sheet.Total{What: paymentName(p, i), Sum: b.sum(p.Sum), Text: b.Share(p.Share) + " of the price.", Working: working + " = " + b.sum(p.Sum)})
		left += " − " + b.sum(p.Sum)
	}
}

// paymentName says when a payment is due; i is its place among them, from 0.
func paymentName(p price.Payment, i int) string {
	switch {
	case p.Deposit:
		return "Deposit, before work begins"
	case p.Rest:
		return "The rest, when the work is done"
	case p.Name == "":
		return "Payment " + strconv.Itoa(i+1)
	}
	return p.Name
}

// taxWords says what tax is in the price.
func taxWords(known bool, text string, tax decimal.Decimal) string {
	switch {
	case !known:
		return "; no tax is given, so none is added"
	case tax.Sign() > 0:
		return ", tax of " + text + " included"
	}
	return ""
}

// priceText sums the price up.
func (b *builder) priceText(q *price.Quote, missing []string) string {
	text := "The price is " + b.money(q.Total) + taxWords(b.Plan.Price.Tax.Known, b.sum(q.Tax), q.Tax) + "."
	labour := decimal.Decimal{}
	for _, line := range q.Lines {
		if line.Group == price.Labour {
			labour = labour.Add(line.Sum)
		}
	}
	if labour.Sign() > 0 {
		part := measure.NumberFromDecimal(labour).Quo(measure.NumberFromDecimal(q.Direct))
		text += " Work is " + b.Notation.Number(part.Mul(measure.NumberFromInt(100)), 0) + " % of the direct cost."
	}
	if len(missing) > 0 {
		text += " Not in it: " + problem.Listed(missing) + "."
	}
	return text
}

// rough is the price of a first visit.
func (b *builder) rough() {
	p := &b.Plan.Price
	r := &p.Rough
	if !r.PerArea.Known && r.Length == 0 && r.Width == 0 {
		return
	}
	area := measure.AreaOf(r.Length, r.Width)
	if r.Length == 0 && r.Width == 0 && b.Room.Shape.Usable() {
		area = b.Room.Shape.Area()
	}
	if !r.Range.Known {
		b.Report("/price/rough/range", []problem.Problem{{Severity: problem.Note,
			What: words.Say("It is not said how far off the rough price may be: counted as 0."), Do: words.Say("Give a per cent, such as 20.")}})
	}
	asked := price.Rough{Area: area, PerSquareMetre: b.perSquareMetre(r.PerArea), Bands: b.roughBands(), Off: r.Range.Share}
	got, problems, ok := price.RoughOf(asked, int32(p.Digits), p.RoundTo.Amount)
	b.Report("/price/rough", problems)
	if !ok {
		return
	}
	b.roughly = got
	b.Sheet.Price.Range = b.sum(got.Low) + " to " + b.money(got.High)
	if got.Low.Equal(got.High) {
		b.Sheet.Price.Range = "about " + b.money(got.Middle)
	}
	rule := "A rough area by what such work has cost for an area, tax included, less and more what it may be off; rounded outwards."
	if len(asked.Bands) > 0 {
		rule += " Each price is charged for the area inside its size alone, so that a larger job never costs less."
	}
	b.Figure(sheet.Figure{
		ID: "price.rough", Block: page.Price, Label: "rough price", Value: got.Middle.StringFixed(int32(p.Digits)), Unit: p.Currency, Text: b.Sheet.Price.Range,
		Working: sheet.Working{
			Rule:   rule,
			Sum:    b.roughParts(&asked) + " = " + b.money(got.Middle) + b.roughRange(&got, r.Range.Share),
			Source: "Arithmetic. What such work costs is the firm's own experience.",
		},
	})
}

// roughRange goes on from the middle of a rough price to its two ends, each rounded
// outwards.
func (b *builder) roughRange(got *price.RoughPrice, off measure.Number) string {
	if got.Low.Equal(got.High) {
		return ""
	}
	one := measure.NumberFromInt(1)
	end := func(sign string, share measure.Number, to decimal.Decimal) string {
		sum := "\n" + b.sum(got.Middle)
		if off.Sign() > 0 {
			sum += " × (1 " + sign + " " + b.Share(off) + ")"
		}
		if step := b.Plan.Price.RoundTo; step.Known && measure.NumberFromDecimal(got.Middle).Mul(share).Cmp(measure.NumberFromDecimal(to)) != 0 {
			sum += ", outwards to whole " + b.sum(step.Amount)
		}
		return sum + " = " + b.money(to)
	}
	text := end("−", one.Sub(off), got.Low) + end("+", one.Add(off), got.High)
	return text
}

// roughUnit is the unit of area of the rough price.
func (b *builder) roughUnit() (unit string, squareMetres measure.Number) {
	if b.Plan.Price.Rough.PerSquareMetre {
		return "m²", measure.NumberFromInt(1)
	}
	return "ft²", measure.SquareFoot
}

func (b *builder) perSquareMetre(m plan.Money) measure.Number {
	_, unit := b.roughUnit()
	return measure.NumberFromDecimal(m.Amount).Quo(unit)
}

// roughBands are the prices for what is above a size. One with nothing in it is
// left out.
func (b *builder) roughBands() (bands []price.Band) {
	_, unit := b.roughUnit()
	for _, band := range b.Plan.Price.Rough.Bands {
		if band.AboveKnown || band.PerArea.Known {
			bands = append(bands, price.Band{Above: band.Above.Mul(unit), PerSquareMetre: b.perSquareMetre(band.PerArea)})
		}
	}
	return bands
}

// roughParts is the sum of a rough price, in the unit of its prices.
func (b *builder) roughParts(r *price.Rough) string {
	unit, squareMetres := b.roughUnit()
	sums := []string{}
	for _, part := range r.Parts() {
		each := part.PerSquareMetre.Mul(squareMetres).RoundHalfEven(4)
		sums = append(sums, b.Notation.NumberTrimmed(part.Area.SquareMetres.Quo(squareMetres), 4)+" "+unit+" × "+b.rate(trimmed(each))+" for 1 "+unit)
	}
	return strings.Join(sums, " + ")
}

// trimmed is an amount without the zeros that end its decimals.
func trimmed(amount decimal.Decimal) decimal.Decimal {
	for amount.Exponent() < 0 && amount.Equal(amount.Truncate(-amount.Exponent()-1)) {
		amount = amount.Truncate(-amount.Exponent() - 1)
	}
	return amount
}
