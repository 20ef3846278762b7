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
	Verdict string `json:"verdict" is:"go|stop|unknown|"`
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
