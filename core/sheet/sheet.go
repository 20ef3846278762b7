package sheet

import (
	"ceilingwright/core/jsondoc"
	"ceilingwright/core/problem"
	"ceilingwright/core/words"
)

// Format is the version of the sheet's own form. It changes only when a reader
// of sheets would have to.
const Format = 1

// Sheet is the whole answer to one plan. Texts are ready to be shown, in the
// notation the plan asks for; values are in base units for programs. Lists are
// in the order of the work, so the same plan always gives the same bytes.
type Sheet struct {
	Format   int        `json:"ceilingwright"`
	Version  string     `json:"version"`
	Plan     Heading    `json:"plan"`
	Overview Overview   `json:"overview"`
	Problems []Problem  `json:"problems"`
	Readings []Reading  `json:"readings"`
	Figures  []Figure   `json:"figures"`
	Survey   Survey     `json:"survey"`
	Objects  []Object   `json:"objects"`
	Choices  []Choice   `json:"choices"`
	Box      BoxPlace   `json:"box"`
	Walls    []Wall     `json:"walls"`
	Corners  []Corner   `json:"corners"`
	Layers   []Layer    `json:"layers"`
	Steps    []Step     `json:"steps"`
	Climate  Climate    `json:"climate"`
	Shopping []Purchase `json:"shopping"`
	Bill     Total      `json:"bill"`
	Days     Days       `json:"days"`
	Price    Price      `json:"price"`
	Record   Record     `json:"record"`
	Air      Air        `json:"air"`
	Platform Platform   `json:"platform"`
	Limits   []VOCLine  `json:"limits"`
	FindOut  []Question `json:"findOut"`
	Safety   []Advice   `json:"safety"`
	Drawings []Drawing  `json:"drawings"`
}

// JSON is the sheet as one JSON text: the same bytes for the same sheet.
func (s *Sheet) JSON() []byte {
	w := jsondoc.WriterOf(s.size())
	s.write(w)
	return w.Bytes()
}

// size is about how long the sheet is as JSON: its drawings, and what the rest
// of it takes from experience.
func (s *Sheet) size() int {
	size := 64<<10 + 700*len(s.Figures)
	for i := range s.Drawings {
		size += len(s.Drawings[i].SVG) + 200
	}
	size += 500 * len(s.Days.Tasks)
	for i := range s.Layers {
		size += 500 * s.Layers[i].Count
	}
	return size
}

// Heading says whose sheet it is.
type Heading struct {
	ID    string `json:"id"`
	Title string `json:"title"`
}

// Problem is one refusal or remark. At is the RFC 6901 pointer of its blank, Page the
// page of the job it stands on, "" for none,
// Severity "stop", "caution" or "note"; What says what is wrong and Do what to do
// about it. ToCome tells of a stop that only its blank, in which nothing is written yet,
// is to be filled in. Answers, where What asks which of a few things is meant, are what to
// write into the blank for each.
type Problem struct {
	At       string           `json:"at"`
	Page     string           `json:"page"`
	Severity problem.Severity `json:"severity"`
	What     string           `json:"what"`
	Do       string           `json:"do"`
	ToCome   bool             `json:"toCome"`
	Answers  []string         `json:"answers,omitempty"`
}

// ProblemFrom is a problem in words.
func ProblemFrom(p problem.Problem, style words.Style) Problem {
	return Problem{At: p.At, Severity: p.Severity, What: p.What.In(style), Do: p.Do.In(style), Answers: p.Answers}
}

// Reading is how a length blank of the plan was read: At is its pointer,
// Nanometres the whole count, Text the length in the notation shown and Other
// in the other one ("≈" in front where a rounding hides something). Written is
// filled where a bare number was typed: the same with its unit, to stand in
// the plan in its place before the unit of bare numbers is changed.
type Reading struct {
	At         string `json:"at"`
	Nanometres string `json:"nanometres"`
	Text       string `json:"text"`
	Other      string `json:"other"`
	Written    string `json:"written"`
}

// Figure is one number of the sheet. ID is stable and public. Value is exact
// or, where no exact decimal exists, to twelve places, in Unit: "nm" for
// lengths, "m2", "m3", "L", "kg", "kg/m2", "mg/m3", "1/h", "h", "min", "C" for
// degrees Celsius, the currency for money, "" for counts. Text is the figure as people read it, Other the same in the other
// notation, "" where there is none.
type Figure struct {
	ID      string  `json:"id"`
	Block   string  `json:"block"`
	Label   string  `json:"label"`
	Value   string  `json:"value"`
	Unit    string  `json:"unit"`
	Text    string  `json:"text"`
	Other   string  `json:"other"`
	Working Working `json:"working"`
}

// Working is how a figure came about: the rule in words, the numbers put in
// with the result, and where the rule comes from.
type Working struct {
	Rule   string `json:"rule"`
	Sum    string `json:"sum"`
	Source string `json:"source"`
}

// Drawing is one drawing as SVG. Looking is "up" or "down", or "" for what is no plan of
// the ceiling; Shows is what the list of package draw says.
type Drawing struct {
	ID      string `json:"id"`
	Layer   string `json:"layer"`
	Looking string `json:"looking" is:"up|down|"`
	Shows   string `json:"shows" is:"hanging|panels|marks|stations|sections|room|skew|side|days|air"`
	Title   string `json:"title"`
	SVG     string `json:"svg"`
}
