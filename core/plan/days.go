package plan

import (
	"github.com/shopspring/decimal"

	"ceilingwright/core/measure"
	"ceilingwright/core/price"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Days is when the work is done. Dates and times are kept as they were typed,
// "2027-03-01" and "08:00"; whoever makes the calendar reads them and says at
// their blanks what cannot be read.
type Days struct {
	Start, From, To string
	Pause           measure.Fact // minutes
	Weekdays        []string     // of Weekdays, in their order
	Off             []Dated
	People          int // 0 where the plan does not say
	ClockChanges    []ClockChange
	// PaintedOn is when the fresh paint the mask goes on was done, "" where it
	// is not fresh, and FilmAge how many days it must age.
	PaintedOn string
	FilmAge   measure.Fact
	MaskDays  measure.Fact // how long a layer may stay up
	Rates     Rates
}

// IsAsked tells whether the plan asks for the days: it says when the work
// begins, or how long some of it takes. Working hours alone are no question.
func (d *Days) IsAsked() bool {
	r := &d.Rates
	for _, rate := range []measure.Fact{r.Protect, r.Survey, r.Mark, r.Hang, r.Peel, r.Move, r.TouchUp, r.Clear} {
		if rate.Known {
			return true
		}
	}
	return d.Start != "" || r.Bridge > 0
}

// Dated is one date of a list with its pointer.
type Dated struct{ At, Date string }

// ClockChange is a date on which the clocks go forward by so many minutes, or
// back where it is below 0.
type ClockChange struct {
	At, Date string
	Minutes  int
}

// Rates are how long work takes that no step of the finish stands for. Hours,
// but Hang and Peel minutes a panel, Move minutes a move of the platform, and
// Bridge a length of tape an hour, 0 where the plan does not say.
type Rates struct {
	Protect, Survey, Mark, Hang, Peel, Move, TouchUp, Clear measure.Fact
	Bridge                                                  measure.Length
}

// The most entries that are read of the lists of days.
const (
	mostDaysOff      = 400
	mostClockChanges = 20
)

func readDays(s section) Days {
	d := Days{Start: s.text("start"), From: s.text("from"), To: s.text("to"), Pause: s.fact("pause")}
	for _, e := range s.list("weekdays", 7, words.Say("days of the week")) {
		d.Weekdays = append(d.Weekdays, s.typed(e.at, e.node))
	}
	for _, e := range s.list("off", mostDaysOff, words.Say("days off")) {
		if text := s.typed(e.at, e.node); text != "" {
			d.Off = append(d.Off, Dated{e.at, text})
		}
	}
	if s.text("people") != "" {
		d.People, _ = s.count("people", optional)
	}
	for _, e := range s.some("clockChanges", mostClockChanges, words.Say("changes of the clock")) {
		d.ClockChanges = append(d.ClockChanges, readClockChange(e))
	}
	fresh := s.section("freshPaint")
	d.PaintedOn, d.FilmAge = fresh.text("doneOn"), fresh.fact("filmAge")
	d.MaskDays = s.fact("maskDays")
	d.Rates = readRates(s.section("rates"))
	return d
}

func readClockChange(s section) ClockChange {
	c := ClockChange{At: s.at, Date: s.text("at")}
	text, sign := s.text("minutes"), 1
	if len(text) > 0 && text[0] == '-' {
		text, sign = text[1:], -1
	}
	n, err := measure.ParseCount(text)
	if err != nil || n > 24*60 {
		s.report(s.at+"/minutes", problem.Stop, words.Say("This is no number of minutes the clocks change by."), words.Say("Take this change of the clock out; the page puts the right ones in."))
		return c
	}
	c.Minutes = sign * n
	return c
}

func readRates(s section) Rates {
	r := Rates{
		Protect: s.fact("protect"), Survey: s.fact("survey"), Mark: s.fact("mark"), Hang: s.fact("hang"), Peel: s.fact("peel"),
		Move: s.fact("move"), TouchUp: s.fact("touchUp"), Clear: s.fact("clear"),
	}
	r.Bridge, _ = s.positive("bridge", optional)
	return r
}

// Money is an amount of money; Known tells whether the plan says it.
type Money struct {
	Amount decimal.Decimal
	Known  bool
}

// Percent is a share as a fraction; Known tells whether the plan says it.
type Percent struct {
	Share measure.Number
	Known bool
}

// Price is what the price is made from. Currency is a code of three letters,
// "" where the plan does not say; Digits its minor digits.
type Price struct {
	Currency              string
	Digits                int
	Rate                  Money // an hour of one person
	Overhead, Contingency Percent
	Profit                price.Profit
	ProfitShare           Percent
	Tax                   Percent
	TaxOn                 price.TaxOn
	RoundTo, Minimum      Money
	Deposit               Percent
	Stages                []Stage
	HirePerDay            Money
	TravelPerDay          Money
	TravelDays            int // 0: as many as there are working days
	TapePerRoll           Money
	HoldsDays             int // how many days the price holds; 0: not said
	Rough                 Rough
}

// IsAsked tells whether the plan asks for a price: it says what an hour or a day
// costs, or what is added to the cost. What cans and masks cost it may say
// for the shopping list alone.
func (p *Price) IsAsked() bool {
	for _, known := range []bool{p.Rate.Known, p.HirePerDay.Known, p.TravelPerDay.Known, p.Minimum.Known,
		p.Overhead.Known, p.Contingency.Known, p.ProfitShare.Known, p.Tax.Known} {
		if known {
			return true
		}
	}
	return false
}

// Stage is one payment by stages.
type Stage struct {
	At, Name string
	Share    Percent
}

// Rough is the price of a first visit: a size, a price for an area, and how
// much either way.
type Rough struct {
	Length, Width  measure.Length
	PerArea        Money
	PerSquareMetre bool
	Bands          []RoughBand
	Range          Percent
}

// RoughBand is another price of an area for what is above a size, both in the unit of
// the rough price.
type RoughBand struct {
	At         string
	Above      measure.Number
	AboveKnown bool
	PerArea    Money
}

const mostBands = 12

const (
	mostStages    = 20
	mostHoldsDays = 3650
)

// readDigits is how many minor digits the money has.
func readDigits(s section) int {
	switch choice(s, "digits", words.Say("how many minor digits the currency has"), "2", "0", "3") {
	case "2":
		return 2
	case "3":
		return 3
	}
	return 0
}

func readPrice(s section) Price {
	p := Price{
		Currency: s.name("currency"), Rate: s.sum("rate"), Overhead: s.percent("overhead", 1000), Contingency: s.percent("contingency", 1000),
		Profit: choice(s, "profit", words.Say("whether the profit is a markup or a margin"), price.Profits()...), ProfitShare: s.percent("profitPercent", 1000),
		Tax: s.percent("tax", 100), TaxOn: choice(s, "taxOn", words.Say("what the tax is reckoned on"), price.TaxesOn()...),
		Digits: readDigits(s), RoundTo: s.sum("roundTo"), Minimum: s.sum("minimum"), Deposit: s.percent("deposit", 100),
		HirePerDay: s.sum("hirePerDay"), TravelPerDay: s.sum("travelPerDay"), TapePerRoll: s.sum("tapePerRoll"),
		Rough: readRough(s.section("rough")),
	}
	if s.text("holdsDays") != "" {
		p.HoldsDays, _ = s.count("holdsDays", optional)
		if p.HoldsDays > mostHoldsDays {
			s.report(s.at+"/holdsDays", problem.Stop, words.Say("This is more than ten years."), words.Say("Give the days for which the price holds, such as 30."))
			p.HoldsDays = 0
		}
	}
	if s.text("travelDays") != "" {
		p.TravelDays, _ = s.count("travelDays", optional)
	}
	for _, e := range s.some("stages", mostStages, words.Say("stages")) {
		p.Stages = append(p.Stages, Stage{At: e.at, Name: e.name("name"), Share: e.percent("percent", 100)})
	}
	return p
}

func readRough(s section) Rough {
	r := Rough{PerArea: s.sum("perArea"), PerSquareMetre: choice(s, "perAreaUnit", words.Say("what the rough price is for"), "ft2", "m2") == "m2", Range: s.percent("range", 100)}
	r.Length, _ = s.positive("length", optional)
	r.Width, _ = s.positive("width", optional)
	for _, e := range s.some("bands", mostBands, words.Say("prices by size")) {
		band := RoughBand{At: e.at, PerArea: e.sum("perArea")}
		if e.text("above") != "" {
			band.Above, band.AboveKnown = e.number("above", optional)
		}
		r.Bands = append(r.Bands, band)
	}
	return r
}

// sum reads money; an empty blank is none.
func (s section) sum(name string) Money {
	amount, known := s.money(name)
	return Money{amount, known}
}

// percent reads a share in per cent; an empty blank is none.
func (s section) percent(name string, most int64) Percent {
	n, known := s.share(name, optional, most)
	return Percent{n, known}
}
