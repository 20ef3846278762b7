package sheet

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
