package sheet

import "ceilingwright/core/problem"

// Overview is the job at a glance: Answers are what people come for, as far as they are
// known, Pages the pages of the job in the order of the work, First what to see to
// before anything else.
type Overview struct {
	Answers []Answer    `json:"answers"`
	Pages   []PageState `json:"pages"`
	First   []ToSee     `json:"first"`
}

// Answer is one of the answers of a job. ID is stable, Figure the id of the figure that
// has its working, "" where it is made of several, Page where more is told. Fills are what
// to write into the plan to have it so, where it only could be so.
type Answer struct {
	ID     string `json:"id"`
	Label  string `json:"label"`
	Text   string `json:"text"`
	Figure string `json:"figure"`
	Page   string `json:"page"`
	Fills  []Fill `json:"fills,omitempty"`
}

// Fill is a text for a blank, by its pointer.
type Fill struct {
	At   string `json:"at"`
	Text string `json:"text"`
}

// PageState is a page of the job in a line: Text is the answer it gives, "" where there
// is none yet, Ticked that it was ticked as done, Stops and Cautions how many of each
// stand on it. State is the worst of it: stop, look (a caution), begun (something is
// answered) or empty.
type PageState struct {
	Page     string `json:"page" is:"room|mask|setting|hanging|finish|days|price|record|safety"`
	Text     string `json:"text"`
	State    string `json:"state" is:"empty|begun|look|stop"`
	Ticked   bool   `json:"ticked"`
	Stops    int    `json:"stops"`
	Cautions int    `json:"cautions"`
}

// ToSee is one thing to see to: what it is in a sentence, the place in the plan, and the
// page on which the rest is told.
type ToSee struct {
	At       string           `json:"at"`
	Page     string           `json:"page"`
	Severity problem.Severity `json:"severity"`
	Words    string           `json:"words"`
}
