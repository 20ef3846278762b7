package sheet

// Step is one step of the finish: Figures are the ids of its figures, Buy what
// to buy, LeftOver what will be left, Notes short remarks. Material is the step
// whose product it is bought with, its own id where it is bought for itself;
// Lean, Likely and Rich what it takes; Label the lines for the pot. Mix is the
// mix to make, Sample the mix of a sample board.
type Step struct {
	ID       string   `json:"id"`
	Name     string   `json:"name"`
	Kind     string   `json:"kind"`
	Figures  []string `json:"figures"`
	Buy      string   `json:"buy"`
	LeftOver string   `json:"leftOver"`
	Notes    []string `json:"notes"`

	Material string    `json:"material"`
	Lean     string    `json:"lean"`
	Likely   string    `json:"likely"`
	Rich     string    `json:"rich"`
	Label    []string  `json:"label"`
	Mix      []MixLine `json:"mixLines"`
	Sample   []MixLine `json:"sampleLines"`
	Sections []Section `json:"sections"`
}

// MixLine is one part of a mix, scaled: Exact what it should be, Measured what
// the kit at hand gives, Error the difference in words and per cent.
type MixLine struct {
	Name     string `json:"name"`
	Exact    string `json:"exact"`
	Measured string `json:"measured"`
	Error    string `json:"error"`
}

// Section is a part of an area that is sized and gilded in one go.
type Section struct {
	N       int      `json:"n"`
	Panels  []string `json:"panels"`
	Area    string   `json:"area"`
	Hours   string   `json:"hours"`
	SizeAt  string   `json:"sizeAt"`
	LayFrom string   `json:"layFrom"`
	LayTo   string   `json:"layTo"`
	Text    string   `json:"text"`
}

// Climate is whether it is fit to paint. Verdict is go, stop, unknown, or ""
// where nothing was measured.
type Climate struct {
	Dew     string `json:"dew"`
	Margin  string `json:"margin"`
	Verdict string `json:"verdict"`
	Text    string `json:"text"`
	Drying  string `json:"drying"`
}

// Purchase is one line of the shopping list.
type Purchase struct {
	What   string `json:"what"`
	Amount string `json:"amount"`
	Detail string `json:"detail"`
	Cost   string `json:"cost"`
}

// Days is the calendar. Tasks are in the order they begin; Waits the reasons
// for every wait, Saves what more people or longer days would save, Chart the
// calendar drawn as SVG.
type Days struct {
	Text   string   `json:"text"`
	Start  string   `json:"start"`
	Finish string   `json:"finish"`
	Tasks  []Task   `json:"tasks"`
	Waits  []string `json:"waits"`
	Saves  []string `json:"saves"`
	Chart  string   `json:"chart"`
}

// Task is one piece of work, drying or waiting. At is the pointer of what it
// comes from; Day, From and To are as shown, Start and End as
// 2027-03-01T08:00; Labour the hours of work in it; Reason why it begins when
// it does; Sum how its end comes about; Critical tells that the finish moves with it.
// Kind is work, dry or wait.
type Task struct {
	ID       string `json:"id"`
	Name     string `json:"name"`
	At       string `json:"at"`
	Kind     string `json:"kind"`
	Day      string `json:"day"`
	From     string `json:"from"`
	To       string `json:"to"`
	Start    string `json:"start"`
	End      string `json:"end"`
	Labour   string `json:"labour"`
	Reason   string `json:"reason"`
	Sum      string `json:"sum"`
	Critical bool   `json:"critical"`
}

// Price is the price. Lines are the firm's own, Client the client's, which add
// up to the same; Range the rough price of a first visit, WhatIf the price with
// one thing changed. Quoted says on which day the price was quoted and how long it
// holds: it is "" but on a client's copy, whose amounts are fixed.
type Price struct {
	Text    string      `json:"text"`
	Quoted  string      `json:"quoted"`
	Lines   []PriceLine `json:"lines"`
	Totals  []Total     `json:"totals"`
	Client  []Total     `json:"client"`
	Stages  []Total     `json:"stages"`
	PerArea string      `json:"perArea"`
	Range   string      `json:"range"`
	WhatIf  []WhatIf    `json:"whatIf"`
}

// PriceLine is one line of the firm's own price. Working is its sum, to be worked out
// again.
type PriceLine struct {
	Group   string `json:"group"`
	What    string `json:"what"`
	Amount  string `json:"amount"`
	Rate    string `json:"rate"`
	Sum     string `json:"sum"`
	Working string `json:"working"`
}

// Total is a sum with what it is, what is to be said of it in Text, and what it is
// made of in Working, "" where that is not for the reader.
type Total struct {
	What    string `json:"what"`
	Sum     string `json:"sum"`
	Text    string `json:"text"`
	Working string `json:"working"`
}

// WhatIf is the price with one thing changed: Change is the difference.
type WhatIf struct {
	What   string `json:"what"`
	Sum    string `json:"sum"`
	Change string `json:"change"`
	Text   string `json:"text"`
}

// Record is what is handed over, so that a repair in ten years matches.
type Record struct {
	Text  string       `json:"text"`
	Lines []RecordLine `json:"lines"`
}

// RecordLine is one step of the record.
type RecordLine struct {
	Step   string `json:"step"`
	Where  string `json:"where"`
	Area   string `json:"area"`
	Colour string `json:"colour"`
	Mix    string `json:"mix"`
	Batch  string `json:"batch"`
	Leaf   string `json:"leaf"`
	Date   string `json:"date"`
}
